//! The process a recipe describes: lots of food, vessels, and acts in order.

use potwright_larder::{Absorbs, Allergen, Contains, FoodId, Hazard, Kind, Shape, Softens, StarchKind};
use potwright_manuscript::{Cover, HeatWord, Span};
use potwright_measure::{Duration, Mass, Money, Spread, Temperature, Volume};
use serde::{Deserialize, Serialize};

use crate::{Matter, Pot};

/// A process, ready to be cooked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Process {
    /// The dish's title.
    pub title: String,
    /// Foods with their masses, one for each resolved ingredient and item.
    pub lots: Vec<Lot>,
    /// Vessels used, in order of first use; plates and bowls that only hold things are among them.
    pub vessels: Vec<Vessel>,
    /// What is done, in order.
    pub acts: Vec<Act>,
    /// The vessel that holds the finished dish.
    pub dish_vessel: usize,
    /// What the page says it serves, low and high.
    pub servings: Option<(f64, f64)>,
    /// What else the page says it makes.
    pub makes: Option<Makes>,
    /// Foods that the page lets stand in the place of a lot. They are not cooked, but whoever eats may meet them.
    pub alternatives: Vec<Alternative>,
    /// Lots whose amount is 'to taste' and is solved for; their `mass` is a first guess of nought.
    pub to_taste: Vec<usize>,
    /// What had to be assumed, each with the words it concerns.
    pub assumptions: Vec<Assumption>,
    /// Names the larder could not place for sure, and acts that had to be left out: for the author.
    pub open: Vec<Assumption>,
}

/// What a page says a dish makes: 'about 3 litres', '1 loaf, 12 slices'.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Makes {
    /// The words.
    pub words: String,
    /// The number that counts what is eaten at once, low and high end: the 12 of '1 loaf, 12 slices'.
    pub amount: (f64, f64),
    /// What is counted, singular: `litre`, `slice`, `dumpling`.
    pub unit: String,
}

/// A food that may take the place of a lot: the 'or olive oil' of 'butter or olive oil'.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Alternative {
    /// Index into [`Process::lots`]: what it stands for.
    pub lot: usize,
    /// Name as printed.
    pub name: String,
    /// What it is.
    pub source: Source,
    /// Why that is not sure; none when it may be taken without asking.
    pub doubt: Option<Doubt>,
}

/// A name that may be another food than the one it was taken for, or one that nobody knows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Doubt {
    /// What it was taken for; none when the larder has nothing like it.
    pub taken_for: Option<String>,
    /// What else it may be, likeliest first.
    pub rivals: Vec<Rival>,
    /// What the answer may change of the allergens: a food it may be holds or may hold one, or little of the name is known.
    pub allergens_hang: bool,
    /// The words.
    pub span: Option<Span>,
}

/// Another food that a name may stand for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Rival {
    /// The food of the larder.
    pub food: FoodId,
    /// Its name there.
    pub name: String,
}

/// Something assumed or left open.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Assumption {
    /// One sentence in the cook's words.
    pub text: String,
    /// The words it concerns, if any.
    pub span: Option<Span>,
}

/// A food of the recipe with its mass and make-up.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lot {
    /// Index into the recipe's ingredients; none for what only the method names (water).
    pub ingredient: Option<usize>,
    /// Name as printed.
    pub name: String,
    /// Where it comes from.
    pub source: Source,
    /// Why that is not sure; none when it may be taken without asking. A doubtful lot is never known to be free of
    /// anything.
    pub doubt: Option<Doubt>,
    /// Kind of food, for group words and retention factors.
    pub kind: Kind,
    /// Central mass as it goes in: prepared, edible part and bones or shells that go along. This is what is cooked:
    /// `matter` and `inedible` give the make-up and are scaled to it.
    pub mass: Mass,
    /// Mass as purchased: refuse included.
    pub purchased: Mass,
    /// Relative spread of the mass (1 = central), from the words of the line and the weight table.
    pub spread: Spread,
    /// How the mass was found, in one phrase: 'weighed on the page', '2 medium at 110 g'.
    pub how: String,
    /// Temperature at which it goes in.
    pub temperature: Temperature,
    /// Make-up of the central mass, without what is never eaten. A lot that is solved for ('to taste') carries the
    /// make-up of any convenient amount, a gram or a kilogram: only the proportions count.
    pub matter: Matter,
    /// Bone and shell that goes along and is never eaten; belongs to the same amount as `matter`.
    pub inedible: Mass,
    /// Which starch it carries, whether it disperses or stays in pieces.
    pub starch: Option<StarchKind>,
    /// Pieces; none for what disperses in the liquid.
    pub pieces: Option<Pieces>,
    /// Minutes of one pair of hands to prepare it.
    pub preparation: Duration,
    /// Never goes into the pot: it is scattered on or eaten with the dish.
    pub for_serving: bool,
    /// The page says it may be left out.
    pub optional: bool,
}

/// Where a lot comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// A food of the larder.
    Larder(FoodId),
    /// Index into the `made` dishes that were given.
    Made(usize),
    /// Nothing that is known: counts with its mass as water and is listed as open.
    Unknown,
}

/// Pieces of a food, with what they do in the pot; `None` where it does not apply. Each spread is read at the deviate
/// of [`crate::Draw::food`].
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pieces {
    /// Shape and least dimension.
    pub shape: Shape,
    /// Relative spread of the least dimension (1 = as given).
    pub size_spread: Spread,
    /// What must be made safe.
    pub hazard: Option<Hazard>,
    /// Softening with time and temperature.
    pub softens: Option<Softens>,
    /// Uptake of water.
    pub absorbs: Option<Absorbs>,
    /// Share of its own water it loses when cooked through or sweated, 0–1.
    pub sheds_water: Option<Spread>,
    /// Share of its own fat that leaves it on frying or long simmering, 0–1.
    pub renders: Option<Spread>,
    /// Share that goes over into the liquid when fully cooked, 0–1.
    pub falls_apart: Option<Spread>,
}

/// A dish or component that another dish uses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Made {
    /// Title by which other dishes name it, and other names.
    pub names: Vec<String>,
    /// Make-up of the whole yield.
    pub matter: Matter,
    /// Density of the yield, g/ml.
    pub density_g_ml: f64,
    /// Allergens with what caused each.
    pub allergens: Vec<(Allergen, Contains, String)>,
    /// Whether any animal product went in.
    pub animal: bool,
    /// Sulphite in mg in the whole yield, no credit for boiling off.
    pub sulphite_mg: f64,
    /// Cost of the whole yield; none when a price is missing.
    pub cost: Option<Money>,
}

/// A vessel in use.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Vessel {
    /// What the page calls it: 'large heavy pot'.
    pub name: String,
    /// The pot of the kitchen that stands for it; none for plates, bowls, blenders that only hold.
    pub pot: Option<Pot>,
}

/// One act of the process.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Act {
    /// The vessel it happens in.
    pub vessel: usize,
    /// What is done.
    pub doing: Doing,
    /// Index into the recipe's operations; none for what is implied.
    pub operation: Option<usize>,
    /// The words it comes from.
    pub span: Option<Span>,
    /// Time of one pair of hands it takes by itself (adding, turning, straining); preparation is with the lots.
    pub hands: Duration,
    /// Said to happen while the act before goes on.
    pub meanwhile: bool,
}

/// What is done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(
    clippy::large_enum_variant,
    reason = "a process has some dozens of acts; few shape a dough, and none is moved about while it cooks"
)]
pub enum Doing {
    /// Shares of lots go in.
    Add(Vec<Portion>),
    /// Time passes.
    Cook(Stretch),
    /// Contents go to another vessel.
    Transfer {
        /// The other vessel.
        to: usize,
        /// What goes.
        what: Part,
    },
    /// Contents are thrown away.
    Discard(Part),
    /// Pieces become part of the liquid: blended, mashed, rubbed through a sieve. The share of each piece group.
    Puree(f64),
    /// Everything in the vessel becomes pieces of one make-up: dough, dumplings, meatballs.
    Shape {
        /// The lot it goes by from then on, index into [`Process::lots`].
        lot: usize,
        /// What its pieces are like.
        pieces: Pieces,
        /// A dough with leavening: it bakes to a crumb.
        risen: bool,
        /// How many pieces it makes, where that is known.
        count: Option<u32>,
    },
    /// Fat on top is taken off.
    Skim(FatOff),
    /// The dish is finished.
    Serve,
}

/// How much of the free fat of a vessel is taken off.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FatOff {
    /// A share of it, 0–1.
    Share(f64),
    /// So much, as far as there is so much.
    Amount(Mass),
    /// All but so much: 'all but a tablespoon of the fat'.
    AllBut(Mass),
}

/// A share of a lot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Portion {
    /// Index into [`Process::lots`].
    pub lot: usize,
    /// Share of the whole lot, 0–1.
    pub share: f64,
}

/// Part of a vessel's contents.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// All.
    All,
    /// The liquid, less what clings to the solids.
    Liquid,
    /// All pieces, with what clings to them.
    Solids,
    /// The pieces of these lots, with what clings to them.
    Lots(Vec<usize>),
    /// A share of everything, 0–1.
    Share(f64),
}

/// A stretch of time at one vessel.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Stretch {
    /// Where the vessel stands.
    pub place: Place,
    /// What the cook aims at.
    pub aim: Aim,
    /// How long.
    pub lasts: Lasts,
    /// Lid.
    pub cover: Cover,
    /// The page does not say how long, or where it stands: a default of the tables does.
    pub assumed: bool,
    /// How often the batch is repeated: 2 for 'in two batches' (pieces share the pan in turn).
    pub batches: u32,
}

/// Where a vessel stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the place of its name")]
pub enum Place {
    Hob,
    Oven,
    Counter,
    Sink,
    IceBath,
    Refrigerator,
    Freezer,
}

/// What the cook aims at.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Aim {
    /// The burner at a setting; nothing is controlled.
    Setting(HeatWord),
    /// Frying, sweating or browning at a setting: the pan's surface is dry or oily, not under liquid.
    Fry(HeatWord),
    /// A full rolling boil.
    Boil,
    /// A simmer: the cook turns the knob so that it just bubbles.
    Simmer,
    /// Heated through, kept below the boil ('do not let it boil').
    BelowBoil,
    /// Under a locked lid at the low or the high pressure of a pressure cooker; minutes count from when it is up, and
    /// `Boils` means that.
    Pressure(HeatWord),
    /// A temperature of the liquid held.
    Hold(Temperature),
    /// An oven at this temperature.
    Oven(Temperature),
    /// No heat.
    Off,
}

/// How long a stretch lasts: the minutes if given, else until the cue; with both, the minutes rule and the cue is
/// checked against them ([`crate::Happening::CueNotReached`]).
///
/// Minutes of a boil or a simmer count from the start when the liquid is within 15 K of it, else from when it is
/// reached: 'simmer for ten minutes' said over a cold pot does not mean ten minutes of warming up. With batches the
/// minutes are those of one batch. A cue is waited for up to a stated longest time. `Boils` under an aim below the
/// boil means that the aim is reached. With neither, or with a cue in other words, a default stands in.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Lasts {
    /// Minutes as written, low to high.
    pub minutes: Option<Spread>,
    /// The sign to stop.
    pub cue: Option<Cue>,
}

/// A sign to stop, as far as it can be computed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cue {
    /// It boils.
    Boils,
    /// The contents reach a temperature (upwards or downwards).
    Reaches(Temperature),
    /// Free water is gone and the surface browns.
    Browned,
    /// Softened without colour: the pieces have shed their water and are tender enough.
    Softened,
    /// The liquid is reduced to this share of its volume at the start of the stretch.
    ReducedTo(f64),
    /// The liquid is reduced to this volume.
    ReducedToVolume(Volume),
    /// Pieces of these lots are tender (all pieces when empty).
    Tender(Vec<usize>),
    /// Pieces of these lots are cooked through, by the rule of their hazard (all pieces when empty).
    CookedThrough(Vec<usize>),
    /// Some other sign, kept in its words: it cannot be computed, so a default time stands in.
    Other(String),
}
