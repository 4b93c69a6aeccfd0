//! What a cup, a spoon or a piece of a food weighs.

use potwright_measure::{Dimension, Measures, Spread, Unit};
use serde::{Deserialize, Serialize};

use crate::load::weights::{LEAST, MOST};
use crate::words::{fold, singular};
use crate::{Food, Weight};

/// The weight of one unit of a food, and how it was come by.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Weighed {
    /// Grams of one unit, edible part.
    pub mass_g: Spread,
    /// Source of the row the figure comes from.
    pub source: String,
    /// How well the row fits what was asked.
    pub fit: Fit,
}

/// Grams to the millilitre of a food as it lies in a cup, and how it was come by.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Heaped {
    /// Grams per millilitre.
    pub g_per_ml: Spread,
    /// Source of the row the figure comes from.
    pub source: String,
    /// How well the row fits what was asked.
    pub fit: Fit,
}

/// How well a weight's row fits what was asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fit {
    /// Unit, cut and size are those of the row.
    Same,
    /// The page does not say the cut or size: the usual one, with the spread of all that are on record.
    Unsaid,
    /// The page says a cut that is not on record: another stands in, with a wide spread.
    OtherCut,
}

/// Half-width of a weight nobody has put a figure on: common practice, no source.
const UNKNOWN: f64 = 1.5;
/// A small piece against a medium one, where only one size is on record: onions of 70 and 110 g (USDA SR28 WEIGHT,
/// NDB 11282) and the like; common practice, hence still with [`UNKNOWN`].
const SMALL: f64 = 0.65;
/// A large piece against a medium one: onions of 150 and 110 g, as [`SMALL`].
const LARGE: f64 = 1.4;

impl Food {
    /// The weight of one `unit` of this food.
    ///
    /// `unit`: none for a piece that is counted ('2 onions'). `cut`: the words of preparation or cut as they stand
    /// (`finely chopped`), empty when the line has none. `size`: `small`, `medium`, `large` or empty.
    ///
    /// * A unit of volume takes the cup or spoon whose cut fits best; cups and spoons stand in for each other by
    ///   their US volumes (cup 236.588 ml), see [`Food::density`]. A unit that holds more on another market is to be
    ///   computed by the caller as [`Food::density`] times its volume.
    /// * A piece takes the row of its size. When the size is not said: medium, with a spread from small to large.
    ///   With only one row on record the spread is ×/÷1.5, and another size is guessed at 0.65 or 1.4 of it (common
    ///   practice, no source).
    ///
    /// `None` when nothing on record says it; a unit of mass is none of the larder's business.
    #[must_use]
    pub fn weight_of(&self, unit: Option<Unit>, cut: &str, size: &str) -> Option<Weighed> {
        match unit {
            Some(unit) if unit.dimension() == Dimension::Mass => None,
            Some(unit) if unit.dimension() == Dimension::Volume => self.spooned(unit, cut),
            piece => self.piece(piece, cut, size),
        }
    }

    /// Grams to the millilitre of the food as it lies in a cup or spoon, for the cut that fits best.
    ///
    /// A cut on record: that row, exactly. No cut said: the row without a cut, or else the middle one; the spread
    /// runs over all cuts on record. A cut that is not on record: the middle of all, with a spread of at least
    /// ×/÷1.5 (common practice, no source). `None` when the food is on record with no volume at all.
    #[must_use]
    pub fn density(&self, cut: &str) -> Option<Heaped> {
        let mut heaps: Vec<(f64, &Weight)> = self
            .weights
            .iter()
            .filter_map(|weight| heap(weight).map(|g_per_ml| (g_per_ml, weight)))
            .collect();
        let ends: Vec<f64> = heaps.iter().map(|(density, _)| *density).collect();
        heaps.retain(|(_, weight)| !is_end(&weight.cut));
        let asked = cuts(cut);
        let (fit, best) = choose(&heaps, &asked)?;
        let (mid, row) = *best;
        let spread = match fit {
            Fit::Same => self.own_ends(row, mid),
            Fit::Unsaid => around(mid, &ends, 1.0),
            Fit::OtherCut => around(mid, &ends, UNKNOWN),
        };
        Some(Heaped {
            g_per_ml: spread,
            source: row.source.clone(),
            fit,
        })
    }

    /// The spread of a row that fits: its own ends where the table gives them.
    fn own_ends(&self, row: &Weight, mid: f64) -> Spread {
        let end = |word: &str| {
            let cut = if row.cut.is_empty() {
                word.to_owned()
            } else {
                format!("{} {word}", row.cut)
            };
            let its = self
                .weights
                .iter()
                .find(|weight| weight.unit == row.unit && weight.cut == cut);
            its.map_or(mid, |weight| mid * (weight.mass / row.mass))
        };
        Spread {
            low: end(LEAST),
            mid,
            high: end(MOST),
        }
    }

    /// A cup or spoon: a loose measure by its own row where there is one, else by density.
    fn spooned(&self, unit: Unit, cut: &str) -> Option<Weighed> {
        let loose = self
            .weights
            .iter()
            .find(|weight| weight.unit == Some(unit) && unit.spread() > 1.0);
        if let Some(row) = loose {
            let ends = self.own_ends(row, row.mass.grams());
            return Some(weighed(row, ends, Fit::Same));
        }
        let millilitres = unit.volume(Measures::Us)?.to_f64();
        let heaped = self.density(cut)?;
        Some(Weighed {
            mass_g: scaled(heaped.g_per_ml, millilitres),
            source: heaped.source,
            fit: heaped.fit,
        })
    }

    /// A piece under its unit, or under one that cooks use for the same piece.
    fn piece(&self, unit: Option<Unit>, cut: &str, size: &str) -> Option<Weighed> {
        let own = self.piece_of(unit, cut, size);
        own.or_else(|| {
            same_piece(unit)
                .iter()
                .find_map(|other| self.piece_of(*other, cut, size))
        })
    }

    fn piece_of(&self, unit: Option<Unit>, cut: &str, size: &str) -> Option<Weighed> {
        let rows: Vec<&Weight> = self.weights.iter().filter(|weight| weight.unit == unit).collect();
        let sized = |wanted: &str| rows.iter().find(|row| row.cut == wanted).copied();
        if !size.is_empty()
            && let Some(row) = sized(size)
        {
            return Some(weighed(row, Spread::exact(row.mass.grams()), Fit::Same));
        }
        let asked = cuts(cut);
        let fitting = |row: &&&Weight| !is_end(&row.cut) && overlap(&cuts(&row.cut), &asked) > 0;
        let usual = rows
            .iter()
            .find(fitting)
            .copied()
            .or_else(|| sized(""))
            .or_else(|| sized("medium"));
        let row = usual.or_else(|| rows.iter().find(|row| !is_end(&row.cut)).copied())?;
        let grams = row.mass.grams();
        if !size.is_empty() {
            let by = match size {
                "small" => SMALL,
                "large" => LARGE,
                _ => 1.0,
            };
            return Some(weighed(row, Spread::within_factor(grams * by, UNKNOWN), Fit::OtherCut));
        }
        let ends: Vec<f64> = [LEAST, MOST, "small", "large"]
            .iter()
            .filter_map(|end| sized(end))
            .map(|row| row.mass.grams())
            .collect();
        let spread = if ends.is_empty() {
            Spread::within_factor(grams, UNKNOWN)
        } else {
            around(grams, &ends, 1.0)
        };
        Some(weighed(row, spread, Fit::Unsaid))
    }
}

/// Units that mean the same piece of a food: a stick of celery is a stalk, a bulb of fennel is one fennel.
fn same_piece(unit: Option<Unit>) -> &'static [Option<Unit>] {
    match unit {
        Some(Unit::Stalk) => &[Some(Unit::Stick), Some(Unit::Rib)],
        Some(Unit::Stick) => &[Some(Unit::Stalk), Some(Unit::Rib), None],
        Some(Unit::Rib) => &[Some(Unit::Stalk), Some(Unit::Stick)],
        Some(Unit::Bulb) => &[Some(Unit::Head), None],
        Some(Unit::Head) => &[Some(Unit::Bulb), None],
        Some(Unit::Rasher) => &[Some(Unit::Slice), Some(Unit::Strip)],
        Some(Unit::Slice) => &[Some(Unit::Rasher)],
        Some(Unit::Strip) => &[Some(Unit::Slice), Some(Unit::Rasher)],
        Some(Unit::Fillet | Unit::Piece | Unit::Cube | Unit::Loaf) => &[None],
        Some(Unit::Leaf) => &[None],
        None => &[
            Some(Unit::Head),
            Some(Unit::Bulb),
            Some(Unit::Fillet),
            Some(Unit::Leaf),
            Some(Unit::Loaf),
            Some(Unit::Cube),
            Some(Unit::Piece),
        ],
        _ => &[],
    }
}

fn weighed(row: &Weight, mass_g: Spread, fit: Fit) -> Weighed {
    Weighed {
        mass_g,
        source: row.source.clone(),
        fit,
    }
}

/// Grams per millilitre of a volume row; none for a piece, and none for a pinch or a splash, whose volume is a guess.
fn heap(weight: &Weight) -> Option<f64> {
    let unit = weight.unit?;
    let millilitres = unit.volume(Measures::Us)?.to_f64();
    (millilitres > 0.0 && unit.spread() <= 1.0).then(|| weight.mass.grams() / millilitres)
}

/// The row whose cut fits best: `Same` when it names a cut that was asked for, or none was asked and it names none.
fn choose<'a, 'w>(heaps: &'a [(f64, &'w Weight)], asked: &[String]) -> Option<(Fit, &'a (f64, &'w Weight))> {
    let bare = || heaps.iter().find(|(_, weight)| cuts(&weight.cut).is_empty());
    if asked.is_empty() {
        return match bare() {
            Some(heap) if heaps.iter().all(|(_, weight)| cuts(&weight.cut).is_empty()) => Some((Fit::Same, heap)),
            Some(heap) => Some((Fit::Unsaid, heap)),
            None => middle(heaps).map(|heap| (Fit::Unsaid, heap)),
        };
    }
    let best = heaps.iter().enumerate().max_by_key(|(place, (_, weight))| {
        let its = cuts(&weight.cut);
        (overlap(&its, asked), usize::MAX - its.len(), usize::MAX - place)
    });
    match best {
        Some((_, heap)) if overlap(&cuts(&heap.1.cut), asked) > 0 => Some((Fit::Same, heap)),
        _ => bare().or_else(|| middle(heaps)).map(|heap| (Fit::OtherCut, heap)),
    }
}

/// The heap in the middle by density; the lower of two.
fn middle<'a, 'w>(heaps: &'a [(f64, &'w Weight)]) -> Option<&'a (f64, &'w Weight)> {
    let mut order: Vec<&(f64, &Weight)> = heaps.iter().collect();
    order.sort_by(|a, b| a.0.total_cmp(&b.0));
    order.get(order.len().saturating_sub(1) / 2).copied()
}

/// A spread about `mid` that reaches over all of `ends` and at least `factor` either way.
fn around(mid: f64, ends: &[f64], factor: f64) -> Spread {
    let least = ends.iter().copied().fold(mid / factor, f64::min);
    let most = ends.iter().copied().fold(mid * factor, f64::max);
    Spread {
        low: least,
        mid,
        high: most,
    }
}

fn scaled(spread: Spread, by: f64) -> Spread {
    Spread {
        low: spread.low * by,
        mid: spread.mid * by,
        high: spread.high * by,
    }
}

fn is_end(cut: &str) -> bool {
    cut.ends_with(LEAST) || cut.ends_with(MOST)
}

/// The words of a cut that change how a food lies in a cup; words that mean the same bulk are one word.
fn cuts(words: &str) -> Vec<String> {
    let known = |word: &str| {
        Some(match singular(word).as_str() {
            "chopped" | "minced" | "snipped" | "crushed" => "chopped",
            "diced" | "cube" | "cubed" | "chunk" | "piece" => "diced",
            "sliced" | "slice" | "shaved" | "julienned" | "strip" => "sliced",
            "grated" | "shredded" => "shredded",
            "mashed" | "pureed" | "puree" => "mashed",
            "whole" => "whole",
            "half" | "halved" => "halves",
            "ground" | "powdered" => "ground",
            "packed" => "packed",
            "sifted" => "sifted",
            "cooked" | "boiled" => "cooked",
            "drained" => "drained",
            "floret" => "floret",
            "crumbled" => "crumbled",
            "melted" => "melted",
            "whipped" => "whipped",
            "slivered" => "slivered",
            _ => return None,
        })
    };
    let mut found: Vec<String> = fold(words).split(' ').filter_map(known).map(str::to_owned).collect();
    found.dedup();
    found
}

fn overlap(its: &[String], asked: &[String]) -> usize {
    its.iter().filter(|word| asked.contains(word)).count()
}
