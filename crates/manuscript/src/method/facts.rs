//! What holds when a verb is read: the conditions of the verb table.

use super::said::{Role, Said};
use super::scene::{Focus, Scene, acts};
use super::words::{self, Meaning, Need, Row, VesselKind};
use crate::{Cover, FoodRef, Share, Target};

/// Everything a condition may ask.
pub(super) struct Facts<'a> {
    pub(super) said: &'a Said,
    pub(super) foods: &'a [(Role, FoodRef)],
    pub(super) names: &'a super::foods::Names,
    pub(super) scene: &'a Scene,
    /// The vessel the work is done in.
    pub(super) vessel: Option<usize>,
    /// The work goes on in the oven, said or begun earlier.
    pub(super) oven: bool,
    /// It has been covered, or is said to be.
    pub(super) covered: bool,
    /// The verb stood inside 'let' or 'leave'.
    pub(super) inner: bool,
    /// The heat was set and nothing has been cooked on it yet.
    pub(super) pending: bool,
    /// '-ing', so that only rows that work in that form count.
    pub(super) doing: bool,
}

impl Facts<'_> {
    /// What the verb means here: the first row that fits.
    pub(super) fn meaning(&self, verb: &str) -> Option<Meaning> {
        let entry = words::entry(verb)?;
        let row = entry.rows.iter().find(|row| self.fits(row))?;
        Some(row.meaning)
    }

    fn fits(&self, row: &Row) -> bool {
        let form = !self.doing || row.marks.ing || row.marks.ing_in;
        form && row.when.iter().all(|need| self.holds(need))
    }

    fn holds(&self, need: &Need) -> bool {
        need.any.iter().any(|atom| self.atom(atom)) != need.not
    }

    fn atom(&self, atom: &str) -> bool {
        let Some(name) = atom.strip_prefix('@') else {
            // A Dutch oven is a pot.
            return self.said.says(atom) && !(atom == "oven" && self.said.says("dutch"));
        };
        let objects = || {
            self.foods
                .iter()
                .filter(|(role, _)| matches!(role, Role::Object | Role::With))
        };
        match name {
            "food" => objects().any(|(_, food)| food.target != Target::Pot),
            "pot" => objects().any(|(role, food)| *role == Role::Object && food.target == Target::Pot),
            "none" => self.foods.is_empty(),
            "component" => objects().any(|(_, food)| matches!(food.target, Target::Component(_))),
            "water" | "flour" | "butter" | "eggs" => self.names_a(name.trim_end_matches('s')),
            "liquid" => self.liquid(),
            "fat" => !self.liquid() && (self.fat() || self.vessel.is_none()),
            "dry" => !self.liquid(),
            "time" => self.said.times.iter().any(|timed| !timed.minutes.from_end),
            "cue" => self.said.cue.is_some(),
            "heat" => self.said.heat.is_some(),
            "lid" => self.covered,
            "vessel" => !self.said.vessels.is_empty(),
            "holder" => self.vessel_of(VesselKind::Holder),
            "oven" => self.oven || self.vessel_of(VesselKind::Oven),
            "broiler" => self.vessel_of(VesselKind::Broiler),
            "sink" => self.vessel_of(VesselKind::Sink),
            "heatplace" => self.heatplace(),
            "heatobject" => self.said.heat_object,
            "inner" => self.inner,
            "pending" => self.pending,
            "starch" => self.names_starch(),
            "herb" => self.names_herb(),
            "together" => self.said.says("together") || self.said.says("dough"),
            "apart" => self.said.says("from") || self.said.says("off"),
            "degrees" => self.said.temperature.is_said(),
            "steaming" => self.steaming(),
            _ => false,
        }
    }

    fn vessel_of(&self, kind: VesselKind) -> bool {
        self.said
            .vessels
            .iter()
            .any(|(role, vessel)| vessel.kind == kind && !matches!(role, Role::From | Role::Aside))
    }

    /// A vessel, or what is in it, is set over a heat or on the hob.
    fn heatplace(&self) -> bool {
        let place = self.said.heat.is_some()
            || ["hob", "stove", "fire", "range", "heat", "burner"]
                .iter()
                .any(|word| self.said.says(word));
        let food = self
            .foods
            .iter()
            .any(|(role, food)| *role == Role::Object && food.target != Target::Pot);
        let led = ["on", "over"].iter().any(|word| self.said.says(word)) || self.said.heat.is_some();
        let vessel_over = self
            .said
            .vessel(&[Role::Over])
            .is_some_and(|v| v.kind == VesselKind::Cook);
        (place && led && !food) || vessel_over
    }

    fn steaming(&self) -> bool {
        self.said.vessels.iter().any(|(_, vessel)| vessel.noun == "steamer")
    }

    fn names_a(&self, word: &str) -> bool {
        self.foods.iter().any(|(_, food)| match &food.target {
            Target::Ingredient { index, item } => self.names.get((*index, *item)).is_some_and(|name| name.has(word)),
            Target::Unlisted(name) => super::foods::plain(name).iter().any(|own| own == word),
            _ => false,
        })
    }

    /// Noodles, pasta, rice, grains and pulses, which are cooked in water.
    fn names_starch(&self) -> bool {
        const KINDS: [&str; 5] = ["noodle", "pasta", "rice", "grain", "pulse"];
        let starch = |word: &str| {
            KINDS
                .iter()
                .any(|kind| super::words::in_group(word, kind) || word == *kind)
        };
        self.foods.iter().any(|(role, food)| {
            *role == Role::Object
                && match &food.target {
                    Target::Ingredient { index, item } => self
                        .names
                        .get((*index, *item))
                        .is_some_and(|name| name.words().last().is_some_and(|word| starch(word))),
                    Target::Unlisted(name) => super::foods::plain(name).last().is_some_and(|word| starch(word)),
                    _ => false,
                }
        })
    }

    /// Bay, thyme, a bouquet: what is taken out, not cut up.
    fn names_herb(&self) -> bool {
        let herb =
            |word: &str| super::words::in_group(word, "herb") || matches!(word, "bouquet" | "stick" | "pod" | "sprig");
        self.foods.iter().any(|(role, food)| {
            *role == Role::Object
                && match &food.target {
                    Target::Ingredient { index, item } => self
                        .names
                        .get((*index, *item))
                        .is_some_and(|name| name.words().iter().any(|word| herb(word))),
                    Target::Unlisted(name) | Target::Component(name) => {
                        super::foods::plain(name).iter().any(|word| herb(word))
                    }
                    Target::Pot => false,
                }
        })
    }

    fn liquid(&self) -> bool {
        let here = self.vessel.and_then(|index| self.scene.vessels.get(index));
        let elsewhere = self.in_hand();
        // Cooked on in another vessel, it is as wet as it was.
        let moved = self.foods.is_empty() && here.is_none_or(|vessel| vessel.contents.is_empty());
        let from = self
            .scene
            .here()
            .filter(|_| moved && matches!(self.scene.focus, Focus::Pot));
        let wet = (here.is_some_and(|vessel| vessel.liquid) && !elsewhere) || from.is_some_and(|vessel| vessel.liquid);
        let boiling = self.said.words.iter().any(|word| word == "boiling");
        // 'in butter' is frying, even of wet things.
        let fat = |food: &FoodRef| acts(&food.target, self.names) == (false, true);
        if self.foods.iter().any(|(role, food)| *role == Role::In && fat(food)) {
            return false;
        }
        wet || boiling
            || self
                .foods
                .iter()
                .any(|(role, food)| *role != Role::To && acts(&food.target, self.names).0)
    }

    /// The foods named, or those in hand when none is, are not in the vessel whose liquid could be meant.
    fn in_hand(&self) -> bool {
        let here = self.vessel.and_then(|index| self.scene.vessels.get(index));
        let foreign = |food: &FoodRef| {
            let held = here.is_some_and(|vessel| vessel.contents.iter().any(|held| held.target == food.target));
            food.target != Target::Pot && here.is_some() && (!held || !matches!(food.share, Share::Whole))
        };
        if !self.said.vessels.is_empty() {
            return false;
        }
        let objects: Vec<&FoodRef> = self
            .foods
            .iter()
            .filter(|(role, _)| *role == Role::Object)
            .map(|(_, food)| food)
            .collect();
        match &self.scene.focus {
            Focus::Hand(foods) if objects.is_empty() => foods.iter().all(foreign),
            _ => !objects.is_empty() && objects.iter().all(|food| foreign(food)),
        }
    }

    fn fat(&self) -> bool {
        let here = self.vessel.and_then(|index| self.scene.vessels.get(index));
        here.is_some_and(|vessel| vessel.fat) || self.foods.iter().any(|(_, food)| acts(&food.target, self.names).1)
    }
}

/// Whether the lid is said to be on.
pub(super) fn lid_on(said: &Said) -> bool {
    matches!(said.cover(), Some(Cover::On | Cover::Ajar))
}
