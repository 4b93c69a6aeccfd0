//! From the amount of a line to grams: which of its measures is leaned on, and how far it may be off.

use potwright_larder::{Food, Kind, State};
use potwright_manuscript::{Ingredient, Quantity, Size};
use potwright_measure::{Dimension, Mass, Measures, Spread, Unit};

use super::table::{self, Row};
use super::words::{has, plain};

/// Drained weight of a tin of pulses, vegetables or fish as a share of what the tin holds: 240 g of 400 g is on most
/// labels (common practice, no source; spread as 'counted by size').
const DRAINED_SHARE: f64 = 0.6;

/// What is weighed: the food, if it is known, and the words of its line.
pub(super) struct Asked<'a> {
    /// The line.
    pub(super) line: &'a Ingredient,
    /// The food of the larder, when there is one.
    pub(super) food: Option<&'a Food>,
    /// Density of a dish made before, g/ml.
    pub(super) made_g_ml: Option<f64>,
    /// The line's words and what the method does to the food, from [`plain`].
    pub(super) words: &'a str,
    /// The words of its cut alone, for a name may look like one ('whole milk').
    pub(super) cut: &'a str,
    /// The market.
    pub(super) measures: Measures,
}

/// An amount in grams.
pub(super) struct Weighed {
    /// Central mass.
    pub(super) mass: Mass,
    /// Relative spread.
    pub(super) spread: Spread,
    /// How it was found.
    pub(super) how: String,
    /// Whether the figure is of the prepared food (cups, pieces) or of the food as bought (weighed).
    pub(super) prepared: bool,
    /// A guess that the cook should hear of.
    pub(super) guess: bool,
}

/// The mass of an amount; `None` when the line gives no amount.
pub(super) fn weigh(asked: &Asked) -> Option<Weighed> {
    let line = asked.line;
    let all = || line.quantity.iter().chain(&line.also);
    let weighed = all().find(|q| dimension(q) == Some(Dimension::Mass));
    let by_volume = all().find(|q| dimension(q) == Some(Dimension::Volume));
    let first = line.quantity.as_ref();
    // A weight on the line is worth more than a count or a cup; a package more than a bare count of packages.
    if let Some(quantity) = weighed {
        return by_weight(asked, quantity, first);
    }
    if let (Some(count), Some(package)) = (first, &line.package) {
        return by_package(asked, count, package);
    }
    by_volume
        .and_then(|quantity| by_measure(asked, quantity))
        .or_else(|| first.and_then(|quantity| by_piece(asked, quantity)))
}

/// What a quantity's unit measures; `None` for a plain count.
fn dimension(quantity: &Quantity) -> Option<Dimension> {
    quantity.unit.map(Unit::dimension)
}

/// Low, middle and high number of an amount, as finite numbers.
fn numbers(quantity: &Quantity) -> Option<(f64, f64, f64)> {
    let amount = quantity.amount;
    let (low, high) = (amount.low.to_f64(), amount.high.to_f64());
    let mid = amount.midpoint();
    (low.is_finite() && high.is_finite() && (0.0..1e7).contains(&mid)).then_some((low, mid, high))
}

/// A weight on the page: of all, or of each when it says so.
fn by_weight(asked: &Asked, quantity: &Quantity, first: Option<&Quantity>) -> Option<Weighed> {
    let (low, mid, high) = numbers(quantity)?;
    let gram = quantity.unit?.mass(asked.measures)?.to_f64();
    // '8 thighs (about 150 g each)', 'two 400 g tins': the weight is of one.
    let each = has(asked.words, "each") && first.is_some_and(|first| first.span != quantity.span);
    let count = first.filter(|_| each).and_then(numbers).map_or(1.0, |(_, mid, _)| mid);
    let kind = if quantity.amount.about {
        "weighed by the cook's word 'about'"
    } else {
        "weighed"
    };
    let spread = range(low, mid, high, spread_of(kind));
    let how = if each {
        format!("{} at {} on the page", tidy(count), grams(mid * gram))
    } else {
        "weighed on the page".to_owned()
    };
    let mass = Mass::from_grams(mid * gram * count);
    Some(Weighed {
        mass,
        spread,
        how,
        prepared: says_prepared(asked.words) || is_done_before(asked.line),
        guess: false,
    })
}

/// Packages of a stated size.
fn by_package(asked: &Asked, count: &Quantity, package: &Quantity) -> Option<Weighed> {
    let (low, mid, high) = numbers(count)?;
    let (_, held, _) = numbers(package)?;
    let one = match dimension(package)? {
        Dimension::Mass => held * package.unit?.mass(asked.measures)?.to_f64(),
        Dimension::Volume => held * package.unit?.volume(asked.measures)?.to_f64() * density(asked).0.mid,
        Dimension::Piece => return None,
    };
    let share = drained_share(asked);
    let name = count.unit.map_or("package", Unit::name);
    let drained = if share < 1.0 { ", drained" } else { "" };
    let how = format!("{} {name} of {}{drained}", tidy(mid), grams(one));
    let factor = if share < 1.0 {
        spread_of("counted by size")
    } else {
        spread_of("packages")
    };
    let mass = Mass::from_grams(mid * one * share);
    Some(Weighed {
        mass,
        spread: range(low, mid, high, factor),
        how,
        prepared: true,
        guess: false,
    })
}

/// What is left of a tin once its liquid is poured away; tomatoes are used with theirs.
fn drained_share(asked: &Asked) -> f64 {
    let in_brine = asked.food.is_some_and(|food| {
        food.state == State::Canned
            && matches!(
                food.kind,
                Kind::Pulse | Kind::Vegetable | Kind::Root | Kind::Mushroom | Kind::Fish
            )
            && !has(&plain(&food.name), "tomato")
            && !has(&plain(&food.plural), "tomatoes")
    });
    if in_brine && !has(asked.words, "undrained") {
        DRAINED_SHARE
    } else {
        1.0
    }
}

/// Cups, spoons, litres.
fn by_measure(asked: &Asked, quantity: &Quantity) -> Option<Weighed> {
    let (low, mid, high) = numbers(quantity)?;
    let unit = quantity.unit?;
    let millilitres = unit.volume(asked.measures)?.to_f64();
    let (g_ml, known) = density(asked);
    let (factor, word_spread) = amount_word(asked.words, unit);
    let liquid = asked.made_g_ml.is_some() || asked.food.is_some_and(is_liquid);
    let salt = asked.food.is_some_and(|food| food.kind == Kind::Salt);
    let kind = match (liquid, salt) {
        (true, _) => "liquid by volume",
        (_, true) => "salt by volume",
        _ => "solid by volume",
    };
    let measured = product(&[spread_of(kind), unit.spread(), word_spread, about(quantity)]);
    let spread = both(range(low, mid, high, measured), relative(g_ml));
    let how = format!(
        "{} {} at {}",
        tidy(mid),
        plural(unit, mid),
        grams(millilitres * factor * g_ml.mid)
    );
    let mass = Mass::from_grams(mid * millilitres * factor * g_ml.mid);
    Some(Weighed {
        mass,
        spread,
        how,
        prepared: true,
        guess: !known,
    })
}

/// Grams of a millilitre, and whether the figure is the food's own: of a made dish its own, of a food the larder's
/// for the cut, else that of its kind.
fn density(asked: &Asked) -> (Spread, bool) {
    if let Some(g_ml) = asked.made_g_ml {
        return (Spread::exact(g_ml), true);
    }
    asked
        .food
        .map_or((Spread::exact(1.0), false), |food| grams_per_ml(food, asked.cut))
}

/// Grams of a millilitre of a food as it lies in a cup, for a cut (empty for none), and whether the figure is the
/// food's own or, for what pours, surely near it: the larder's, else that of its kind.
#[must_use]
pub fn grams_per_ml(food: &Food, cut: &str) -> (Spread, bool) {
    if let Some(heaped) = food.density(cut).filter(|heaped| is_sound(heaped.g_per_ml)) {
        return (heaped.g_per_ml, true);
    }
    let fluid = is_liquid(food);
    let of_kind = by_kind(&table::DENSITIES, food.kind).and_then(|row| row.number("g_ml"));
    let g_ml = of_kind
        .filter(|_| !fluid || has_liquid_density(food.kind))
        .unwrap_or(1.0);
    (Spread::exact(g_ml), fluid)
}

/// Kinds whose row in the table of densities is of a liquid.
fn has_liquid_density(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Water | Kind::Stock | Kind::Milk | Kind::Wine | Kind::Beer | Kind::Spirit | Kind::Vinegar | Kind::Oil
    )
}

/// Whether a food pours.
pub(super) fn is_liquid(food: &Food) -> bool {
    let wet = food.composition.water_g.is_some_and(|g| g > 50.0);
    has_liquid_density(food.kind) || (food.behaviour.disperses && wet)
}

/// Pieces: cloves, sticks, or counted without a unit.
fn by_piece(asked: &Asked, quantity: &Quantity) -> Option<Weighed> {
    let (low, mid, high) = numbers(quantity)?;
    if let Some(juice) = juice(asked) {
        let one = juice.number("grams")?;
        let how = format!("juice of {} at {}", tidy(mid), grams(one));
        let spread = range(low, mid, high, juice.factor("spread"));
        return Some(Weighed {
            mass: Mass::from_grams(mid * one),
            spread,
            how,
            prepared: true,
            guess: false,
        });
    }
    let (one, name, known) = one_piece(asked, quantity.unit, mid)?;
    let (factor, word_spread) = quantity.unit.map_or((1.0, 1.0), |unit| amount_word(asked.words, unit));
    let counted = product(&[word_spread, about(quantity)]);
    let spread = both(range(low, mid, high, counted), relative(one));
    let share = if quantity.unit.is_some_and(is_tin) {
        drained_share(asked)
    } else {
        1.0
    };
    let how = format!("{} {name} at {}", tidy(mid), grams(one.mid * factor)).replace("  ", " ");
    let mass = Mass::from_grams(mid * one.mid * factor * share);
    Some(Weighed {
        mass,
        spread,
        how,
        prepared: true,
        guess: !known,
    })
}

/// Grams of one piece, its name, and whether the larder knows it.
fn one_piece(asked: &Asked, unit: Option<Unit>, number: f64) -> Option<(Spread, String, bool)> {
    let size = match asked.line.size {
        Some(Size::Small) => "small",
        Some(Size::Medium) => "medium",
        Some(Size::Large) => "large",
        _ => "",
    };
    let name = unit.map_or("", |unit| plural(unit, number));
    // '1 cinnamon stick' counts sticks, though the stick belongs to the name.
    let stick = asked.food.is_some_and(|food| food.kind == Kind::Spice) && has(asked.words, "stick");
    let unit = unit.or(stick.then_some(Unit::Stick));
    let own = asked.food.and_then(|food| food.weight_of(unit, asked.cut, size));
    if let Some(own) = own.filter(|own| is_sound(own.mass_g)) {
        let narrow = own.mass_g.high <= own.mass_g.low * 1.01;
        let mass = if narrow {
            Spread::within_factor(own.mass_g.mid, spread_of("counted by size"))
        } else {
            own.mass_g
        };
        return Some((mass, format!("{size} {name}").trim().to_owned(), true));
    }
    let row = match unit {
        Some(unit) => loose(unit.name(), asked.food.map(|food| food.kind)),
        None => by_kind(&table::PIECE_WEIGHTS, asked.food.map_or(Kind::Other, |food| food.kind)),
    }?;
    let grams = Spread::within_factor(row.number("grams")?, row.factor("spread"));
    Some((grams, name.to_owned(), false))
}

fn is_tin(unit: Unit) -> bool {
    matches!(unit, Unit::Can | Unit::Jar)
}

/// The row of a fruit whose juice is asked for by the count of fruits.
fn juice(asked: &Asked) -> Option<Row<'static>> {
    let counted = asked.line.quantity.is_some_and(|quantity| quantity.unit.is_none());
    if !counted || !has(asked.words, "juice") {
        return None;
    }
    table::JUICE_OF.rows().find(|row| {
        let fruit = row.text("food");
        has(asked.words, fruit) || has(asked.words, &format!("{fruit}s"))
    })
}

/// The row of a loose measure for a kind of food, or for any kind.
pub(super) fn loose(unit: &str, kind: Option<Kind>) -> Option<Row<'static>> {
    let kind = kind.map_or(String::new(), kind_name);
    let rows = || table::LOOSE_UNITS.rows().filter(|row| row.text("unit") == unit);
    rows()
        .find(|row| row.text("kind") == kind)
        .or_else(|| rows().find(|row| row.text("kind").is_empty()))
}

/// The row of a kind, or of `other`.
pub(super) fn by_kind(table: &'static table::Table, kind: Kind) -> Option<Row<'static>> {
    let name = kind_name(kind);
    let find = |name: &str| table.rows().find(|row| row.text("kind") == name);
    find(&name).or_else(|| find("other"))
}

/// The name of a kind as the tables spell it: `dried_fruit`.
pub(super) fn kind_name(kind: Kind) -> String {
    let mut name = String::new();
    for c in format!("{kind:?}").chars() {
        if c.is_uppercase() && !name.is_empty() {
            name.push('_');
        }
        name.extend(c.to_lowercase());
    }
    name
}

/// Factor and spread of a word that stands before the unit: 'heaped tablespoon', 'small bunch'.
fn amount_word(words: &str, unit: Unit) -> (f64, f64) {
    let before = |row: &Row| {
        let word = row.text("words");
        [unit.name(), unit.plural(), unit.abbreviation()]
            .iter()
            .any(|unit| has(words, &format!("{word} {unit}")))
    };
    table::AMOUNT_WORDS
        .rows()
        .find(before)
        .map_or((1.0, 1.0), |row| (row.factor("factor"), row.factor("spread")))
}

/// Whether the line names the food with what takes its refuse off done: '500 g peeled potatoes' are weighed peeled, '500 g
/// potatoes, peeled' as bought.
fn is_done_before(line: &Ingredient) -> bool {
    let Some(item) = line.items.first() else { return false };
    let length = item.span.end.saturating_sub(line.line.span.start);
    let head = line.line.text.get(..length).unwrap_or(&line.line.text);
    let head = plain(head.split(", ").next().unwrap_or(""));
    [
        "peeled", "trimmed", "podded", "shelled", "shucked", "hulled", "cored", "pitted", "stoned", "skinned", "boned",
        "filleted", "deseeded", "seeded", "cleaned", "husked",
    ]
    .iter()
    .any(|done| has(&head, done))
}

/// Whether the words say that the weight is of the prepared food.
fn says_prepared(words: &str) -> bool {
    [
        "prepared weight",
        "trimmed weight",
        "peeled weight",
        "weight when peeled",
        "weight prepared",
        "net weight",
    ]
    .iter()
    .any(|said| has(words, said))
}

/// The factor of a way of measuring.
pub(super) fn spread_of(what: &str) -> f64 {
    table::AMOUNT_SPREADS
        .rows()
        .find(|row| row.text("what") == what)
        .map_or(1.2, |row| row.factor("spread"))
}

/// The extra factor of an amount that is said to be 'about'.
fn about(quantity: &Quantity) -> f64 {
    if quantity.amount.about {
        spread_of("weighed by the cook's word 'about'")
    } else {
        1.0
    }
}

/// Independent factors together: their logarithms add in quadrature.
fn product(factors: &[f64]) -> f64 {
    let square: f64 = factors
        .iter()
        .map(|factor| libm::log(factor.max(1.0)))
        .map(|log| log * log)
        .sum();
    libm::exp(square.sqrt())
}

/// Relative spread of a number or range, widened by a factor.
fn range(low: f64, mid: f64, high: f64, factor: f64) -> Spread {
    let relative = |end: f64| if mid > 0.0 && end > 0.0 { end / mid } else { 1.0 };
    let down = product(&[1.0 / relative(low), factor]);
    let up = product(&[relative(high), factor]);
    Spread {
        low: 1.0 / down,
        mid: 1.0,
        high: up,
    }
}

/// Two independent relative spreads together.
fn both(one: Spread, other: Spread) -> Spread {
    let low = product(&[1.0 / one.low, 1.0 / other.low]);
    Spread {
        low: 1.0 / low,
        mid: 1.0,
        high: product(&[one.high, other.high]),
    }
}

/// A spread as shares of its middle; nought and below are cut off at a hundredth.
fn relative(spread: Spread) -> Spread {
    let share = |end: f64| {
        if spread.mid > 0.0 && end.is_finite() {
            (end / spread.mid).clamp(0.01, 100.0)
        } else {
            1.0
        }
    };
    Spread {
        low: share(spread.low).min(1.0),
        mid: 1.0,
        high: share(spread.high).max(1.0),
    }
}

/// Whether a spread is of something: finite and above nought.
fn is_sound(spread: Spread) -> bool {
    spread.mid.is_finite() && spread.mid > 0.0
}

/// A spread of a factor around one.
pub(super) fn around_one(factor: f64) -> Spread {
    Spread::within_factor(1.0, factor)
}

/// '110 g', '0.4 g', '1.2 kg'.
pub(super) fn grams(g: f64) -> String {
    match g {
        g if g >= 1000.0 => format!("{} kg", tidy((g / 10.0).round() / 100.0)),
        g if g >= 10.0 => format!("{} g", tidy(g.round())),
        g => format!("{} g", tidy((g * 10.0).round() / 10.0)),
    }
}

/// A number without needless noughts.
pub(super) fn tidy(number: f64) -> String {
    let text = format!("{number:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text.is_empty() {
        "0".to_owned()
    } else {
        text.to_owned()
    }
}

/// The unit's name for so many of it.
fn plural(unit: Unit, number: f64) -> &'static str {
    if number > 1.0 { unit.plural() } else { unit.name() }
}
