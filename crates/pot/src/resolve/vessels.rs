//! Vessel words, and which pot of the kitchen stands for them.

use potwright_manuscript::Cover;
use potwright_measure::{Length, Mass};

use super::table::{self, Row};
use super::words::{has, longest, numbers, plain, stem};
use super::{Notes, verbs};
use crate::{Kitchen, Material, Place, Pot, PotKind, Vessel};

/// What kind of vessel a word means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Style {
    /// Deep, for liquid.
    Pot,
    /// Wide and low, for frying.
    Pan,
    /// A dish or tin for the oven.
    Oven,
    /// Only holds: bowl, plate.
    Hold,
}

/// What a vessel word means: a vessel or a place.
pub(super) enum Meaning {
    Vessel(Style),
    Place(Place),
}

/// What a vessel of these words is made for.
pub(super) fn kind_of(words: &str) -> PotKind {
    match longest(&table::VESSELS, &plain(words)).map(|row| row.text("style")) {
        Some("pressure") => PotKind::PressureCooker,
        Some("slow") => PotKind::SlowCooker,
        _ => PotKind::Plain,
    }
}

/// Share of a pot that is filled at most: between two thirds, where it boils without care, and four fifths, where it
/// must be watched (common practice, no source).
const FILL: f64 = 0.75;

/// A pan is lower than this share of its width (common practice, no source).
const PAN_HEIGHT: f64 = 0.4;

/// How far a printed size may be from a pot's own for it to be the same pot, millimetres (pots are sold in steps of
/// 20 mm; common practice, no source).
const SAME_SIZE_MM: f64 = 12.0;

/// What words mean; a vessel that is not known is a pot.
pub(super) fn meaning(words: &str) -> Option<Meaning> {
    let row = longest(&table::VESSELS, &plain(words))?;
    Some(match row.text("style") {
        "pan" => Meaning::Vessel(Style::Pan),
        "oven" => Meaning::Vessel(Style::Oven),
        "hold" => Meaning::Vessel(Style::Hold),
        style => match style.strip_prefix("place:") {
            Some("oven") => Meaning::Place(Place::Oven),
            Some("refrigerator") => Meaning::Place(Place::Refrigerator),
            Some("freezer") => Meaning::Place(Place::Freezer),
            Some("ice_bath") => Meaning::Place(Place::IceBath),
            Some("sink") => Meaning::Place(Place::Sink),
            Some(_) => Meaning::Place(Place::Hob),
            None => Meaning::Vessel(Style::Pot),
        },
    })
}

/// A vessel in use while the method is followed.
#[derive(Clone, Debug)]
pub(super) struct Use {
    /// What the page calls it.
    pub(super) name: String,
    pub(super) style: Style,
    /// A pot of this size, from the page or a note to the desk.
    pub(super) asked: Asked,
    /// Most that is ever in it, litres.
    pub(super) most_l: f64,
    /// The act in which it is used first and last.
    pub(super) used: (usize, usize),
}

/// A size that is asked for.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Asked {
    pub(super) diameter_mm: Option<f64>,
    pub(super) litres: Option<f64>,
}

/// The size in words: '28 cm pot', 'a 5.5 litre pot', '12-inch skillet'.
pub(super) fn size_in(words: &str) -> Asked {
    let mut asked = Asked::default();
    for (number, unit) in numbers(&plain(words)) {
        match unit.as_str() {
            "cm" => asked.diameter_mm = Some(number * 10.0),
            "mm" => asked.diameter_mm = Some(number),
            "inch" | "inches" | "in" => asked.diameter_mm = Some(number * 25.4),
            "l" | "litre" | "litres" | "liter" | "liters" => asked.litres = Some(number),
            "quart" | "quarts" | "qt" => asked.litres = Some(number * 0.946),
            _ => {}
        }
    }
    asked.diameter_mm = asked.diameter_mm.filter(|mm| (80.0..=800.0).contains(mm));
    asked.litres = asked.litres.filter(|litres| (0.2..=100.0).contains(litres));
    asked
}

/// The size that stands behind a vessel's name: 'a saucepan (3 litres)', 'a pot that holds 2 litres', 'a dish of 30 cm'.
pub(super) fn size_after(said: &str, name: &str) -> Asked {
    let behind = said.split_once(name).map_or("", |(_, behind)| behind.trim_start());
    let told = match behind.strip_prefix('(') {
        Some(bracket) => bracket.split(')').next(),
        None => ["that holds ", "holding ", "of "]
            .iter()
            .find_map(|lead| behind.strip_prefix(lead))
            .and_then(|told| told.split([',', '.', ';']).next()),
    };
    size_in(told.unwrap_or(""))
}

/// The lid in the words of a note: 'lid ajar', 'covered'.
pub(super) fn lid_in(words: &str) -> Option<Cover> {
    let hay = plain(words);
    let said = |list: &[&str]| list.iter().any(|words| has(&hay, words));
    if said(&["ajar", "half covered", "partly covered", "lid tilted"]) {
        verbs::lid("ajar")
    } else if said(&["uncovered", "lid off", "no lid", "without lid", "without a lid"]) {
        verbs::lid("off")
    } else if said(&["covered", "lid on", "lidded", "cover"]) {
        verbs::lid("on")
    } else {
        None
    }
}

/// Whether two names are of the same vessel: the last word of one stands in the other ('large heavy pot', 'the pot').
pub(super) fn same_vessel(one: &str, other: &str) -> bool {
    let (one, other) = (plain(one), plain(other));
    let noun = |words: &str| words.split_whitespace().last().map(|word| stem(word).to_owned());
    let holds = |words: &str, noun: &str| words.split_whitespace().any(|word| stem(word) == noun);
    let ask = |noun: Option<String>, words: &str| noun.is_some_and(|noun| holds(words, &noun));
    ask(noun(&one), &other) || ask(noun(&other), &one)
}

/// Gives every vessel in use the pot that stands for it.
pub(super) fn assign(uses: &[Use], kitchen: &Kitchen, notes: &mut Notes) -> Vec<Vessel> {
    let mut taken: Vec<Option<usize>> = Vec::new();
    let mut vessels = Vec::new();
    for (place, used) in uses.iter().enumerate() {
        let busy: Vec<usize> = taken
            .iter()
            .zip(uses)
            .filter(|(_, other)| other.used.0 <= used.used.1 && used.used.0 <= other.used.1)
            .filter_map(|(pot, _)| *pot)
            .collect();
        let (pot, index) = match used.style {
            Style::Hold => (None, None),
            Style::Oven => (Some(stand_in(&used.name, used)), None),
            Style::Pot | Style::Pan => choose(used, kitchen, &busy, notes),
        };
        debug_assert_eq!(taken.len(), place);
        taken.push(index);
        vessels.push(Vessel {
            name: used.name.clone(),
            pot,
        });
    }
    vessels
}

/// The pot of the kitchen for a use, and its index; a stand-in when the kitchen has none of the kind.
fn choose(used: &Use, kitchen: &Kitchen, busy: &[usize], notes: &mut Notes) -> (Option<Pot>, Option<usize>) {
    if let Some(found) = asked_for(used, kitchen) {
        return (kitchen.pots.get(found).cloned(), Some(found));
    }
    let kind = kind_of(&used.name);
    let fits = |pot: &Pot| pot.kind == kind;
    if used.asked.diameter_mm.is_some() || used.asked.litres.is_some() {
        return (Some(stand_in(&used.name, used)), None);
    }
    if kind != PotKind::Plain && !kitchen.pots.iter().any(fits) {
        let pot = stand_in(&used.name, used);
        let litres = pot.litres().round();
        notes.assume(
            format!("The kitchen has no {}: one of {litres} litres is taken.", used.name),
            None,
        );
        return (Some(pot), None);
    }
    let low = |pot: &Pot| pot.height.metres() < PAN_HEIGHT * pot.diameter.metres();
    let want_low = used.style == Style::Pan;
    let mut fitting: Vec<usize> = (0..kitchen.pots.len())
        .filter(|i| fits(&kitchen.pots[*i]) && (kind != PotKind::Plain || low(&kitchen.pots[*i]) == want_low))
        .collect();
    // A casserole is of iron where the kitchen has one: what a word is made of comes before the size.
    let made_of = material_of(&used.name);
    let another = |i: usize| made_of.is_some_and(|of| kitchen.pots[i].material != of);
    let order = |i: usize| (another(i), kitchen.pots[i].litres());
    fitting.sort_by(|a, b| {
        let ((a_other, a_l), (b_other, b_l)) = (order(*a), order(*b));
        a_other.cmp(&b_other).then(a_l.total_cmp(&b_l))
    });
    let holds = |i: &&usize| used.most_l <= FILL * kitchen.pots[**i].litres();
    let free = |i: &&usize| !busy.contains(*i);
    let found = fitting
        .iter()
        .filter(holds)
        .find(free)
        .or_else(|| fitting.iter().rev().find(free))
        .or_else(|| fitting.last())
        .copied();
    let Some(found) = found else {
        return (Some(stand_in(&used.name, used)), None);
    };
    let pot = kitchen.pots[found].clone();
    if used.most_l > FILL * pot.litres() && used.style == Style::Pot {
        let litres = (used.most_l * 10.0).round() / 10.0;
        notes.assume(
            format!(
                "About {litres} litres go into the {}: more than three quarters of the {} taken for it.",
                used.name, pot.name
            ),
            None,
        );
    } else {
        notes.assume(format!("For the {} the {} is taken.", used.name, pot.name), None);
    }
    (Some(pot), Some(found))
}

/// The kitchen's pot of the size that is asked for.
fn asked_for(used: &Use, kitchen: &Kitchen) -> Option<usize> {
    let kind = kind_of(&used.name);
    let off = |pot: &Pot| match (used.asked.diameter_mm, used.asked.litres) {
        (Some(mm), _) => {
            let off = (pot.diameter.millimetres() - mm).abs();
            (off <= SAME_SIZE_MM).then_some(off)
        }
        // A pot's litres are printed to the brim or to the rim: a fifth either way is the same pot.
        (None, Some(litres)) => {
            let off = (pot.litres() / litres - 1.0).abs();
            (off <= 0.2).then_some(off)
        }
        (None, None) => None,
    };
    let mut best: Option<(usize, f64)> = None;
    for (index, pot) in kitchen.pots.iter().enumerate().filter(|(_, pot)| pot.kind == kind) {
        if let Some(off) = off(pot).filter(|off| best.is_none_or(|(_, held)| *off < held)) {
            best = Some((index, off));
        }
    }
    best.map(|(index, _)| index)
}

/// What a vessel of these words is made of, where that is not the usual thin steel.
fn material_of(words: &str) -> Option<Material> {
    match longest(&table::VESSELS, &plain(words))?.text("material") {
        "cast_iron" => Some(Material::CastIron),
        "earthenware" => Some(Material::Earthenware),
        "aluminium" => Some(Material::Aluminium),
        _ => None,
    }
}

/// A vessel of the usual size for its word, or of the size asked for in the usual shape.
fn stand_in(name: &str, used: &Use) -> Pot {
    let row = longest(&table::VESSELS, &plain(name)).filter(|row| row.number("diameter_cm").is_some());
    let usual = |column: &str, otherwise: f64| row.and_then(|row: Row| row.number(column)).unwrap_or(otherwise);
    let (mut d, mut h, mut tare) = (
        usual("diameter_cm", 24.0),
        usual("height_cm", 13.0),
        usual("tare_g", 1900.0),
    );
    let held_l = std::f64::consts::PI / 4.0 * d * d * h / 1000.0;
    let larger = match used.asked {
        Asked {
            diameter_mm: Some(mm), ..
        } => mm / 10.0 / d,
        Asked {
            litres: Some(litres), ..
        } => libm::cbrt(litres / held_l),
        // A stand-in is never too small.
        _ => libm::cbrt((used.most_l / FILL / held_l).max(1.0)),
    };
    d *= larger;
    h *= larger;
    tare *= larger * larger;
    let material = material_of(name).unwrap_or(Material::Steel);
    Pot {
        name: name.to_owned(),
        diameter: Length::from_centimetres(d),
        height: Length::from_centimetres(h),
        material,
        tare: Mass::from_grams(tare),
        kind: kind_of(name),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 'Large pot (5 litres or more)': the size is not always before the name.
    #[test]
    fn a_size_behind_the_name() {
        let litres = |said: &str, name: &str| size_after(said, name).litres;
        let butter = "Melt the butter in a large pot (5 litres or more) over a low heat";
        assert_eq!(litres(butter, "large pot"), Some(5.0));
        assert_eq!(litres("Put it in a pot that holds 2 litres", "pot"), Some(2.0));
        assert_eq!(litres("Pour 2 litres of stock into a pot and boil", "pot"), None);
        assert_eq!(size_after("a tin (230 mm across)", "tin").diameter_mm, Some(230.0));
    }
}
