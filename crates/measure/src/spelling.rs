//! How the units are spelled on a writer's page: the table `data/units.tsv`, and looking a spelling up in it.

use rustc_hash::FxHashMap;
use std::sync::OnceLock;

use crate::Unit;
use crate::names::NAMES;

/// The table: spelling, unit, case (`exact` or `any`), source. The printed names of the units need no row.
const TABLE: &str = include_str!("../data/units.tsv");

/// Spellings with their meaning: those whose case matters as they stand, the others in small letters.
struct Spellings {
    /// By the first letter of a spelling, the lengths that occur: most words are turned away here.
    lengths: [u32; 256],
    exact: FxHashMap<String, Unit>,
    any: FxHashMap<String, Unit>,
}

impl Unit {
    /// The unit meant by a written word or two: `tbsp`, `T`, `fl. oz.`, `Cups`, `tablespoonful`, `tins`.
    ///
    /// Full stops, hyphens and doubled spaces make no difference; case does only where it has to (`T` is a
    /// tablespoon, `t` a teaspoon). `None` when no unit is spelled so. No spelling has more than two words.
    #[must_use]
    pub fn from_spelling(text: &str) -> Option<Unit> {
        let spellings = spellings();
        let simple = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit();
        if text.chars().all(simple) {
            // Most words that are asked for are typed plainly: nothing to copy.
            return spellings.of(text, text);
        }
        let plain = plain(text);
        spellings.of(&plain, &plain.to_lowercase())
    }
}

impl Spellings {
    /// By the spelling as it stands, else by its small letters.
    fn of(&self, plain: &str, small: &str) -> Option<Unit> {
        let known = |text: &str| self.lengths[first(text)] & (1 << text.len().min(31)) != 0;
        if !known(plain) && !known(small) {
            return self.filled(small);
        }
        let found = self.exact.get(plain).or_else(|| self.any.get(small));
        found.copied().or_else(|| self.filled(small))
    }

    /// 'wineglassful', 'cupsful', 'handfulls': what the vessel named before it holds.
    fn filled(&self, small: &str) -> Option<Unit> {
        let ends = ["ful", "fuls", "full", "fulls"];
        let stem = ends
            .iter()
            .find_map(|end| small.strip_suffix(end))
            .filter(|stem| stem.len() > 1)?;
        let one = format!("{stem}ful");
        self.any.get(stem.trim_end()).or_else(|| self.any.get(&one)).copied()
    }
}

/// The first byte of a spelling.
fn first(spelling: &str) -> usize {
    spelling.bytes().next().map_or(0, usize::from)
}

fn spellings() -> &'static Spellings {
    static READ: OnceLock<Spellings> = OnceLock::new();
    READ.get_or_init(|| {
        let mut read = Spellings {
            lengths: [0; 256],
            exact: FxHashMap::default(),
            any: FxHashMap::default(),
        };
        for name in &NAMES {
            read.any.insert(name.one.to_owned(), name.unit);
            read.any.insert(name.several.to_owned(), name.unit);
        }
        for (spelling, unit, case) in rows() {
            if case == "exact" {
                read.exact.insert(plain(spelling), unit);
            } else {
                read.any.insert(plain(spelling).to_lowercase(), unit);
            }
        }
        for spelling in read.any.keys().chain(read.exact.keys()) {
            read.lengths[first(spelling)] |= 1 << spelling.len().min(31);
        }
        read
    })
}

/// The rows of the table as (spelling, unit, case). A row that names no unit is left out; a test sees to it that
/// there is none.
fn rows() -> impl Iterator<Item = (&'static str, Unit, &'static str)> {
    let lines = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.filter_map(|line| {
        let mut cells = line.split('\t');
        let (spelling, unit, case) = (cells.next()?, cells.next()?, cells.next()?);
        let unit = NAMES.iter().find(|name| name.one == unit)?.unit;
        Some((spelling, unit, case))
    })
}

/// Full stops and hyphens to spaces, spaces single, none at the ends.
fn plain(text: &str) -> String {
    let spaced = text.replace(['.', '-', '\u{2010}', '\u{2011}'], " ");
    spaced.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole() {
        let lines = || TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
        assert_eq!(rows().count(), lines().count(), "a row names no unit");
        let mut seen = std::collections::BTreeSet::new();
        for line in lines() {
            let cells: Vec<&str> = line.split('\t').collect();
            assert_eq!(cells.len(), 4, "{line}");
            assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{line}");
            assert!(matches!(cells[2], "exact" | "any"), "{line}");
            assert!(plain(cells[0]).split(' ').count() <= 2, "{line}");
            assert!(seen.insert(cells[0]), "twice: {line}");
        }
    }

    #[test]
    fn no_row_repeats_a_printed_name() {
        for (spelling, _, _) in rows() {
            let spelling = plain(spelling).to_lowercase();
            assert!(
                NAMES.iter().all(|n| n.one != spelling && n.several != spelling),
                "{spelling}"
            );
        }
    }

    #[test]
    fn case_matters_only_where_it_must() {
        assert_eq!(Unit::from_spelling("T"), Some(Unit::Tablespoon));
        assert_eq!(Unit::from_spelling("t"), Some(Unit::Teaspoon));
        assert_eq!(Unit::from_spelling("TBSP."), Some(Unit::Tablespoon));
        assert_eq!(Unit::from_spelling("Cups"), Some(Unit::Cup));
    }

    #[test]
    fn stops_hyphens_and_spaces_make_no_difference() {
        for text in ["fl oz", "fl. oz.", "Fl.oz.", "fl-oz", " fl  oz "] {
            assert_eq!(Unit::from_spelling(text), Some(Unit::FluidOunce), "{text}");
        }
    }

    #[test]
    fn what_fills_a_measure_is_that_measure() {
        for (text, unit) in [
            ("wineglassful", Unit::Wineglass),
            ("Wineglassfuls", Unit::Wineglass),
            ("saltspoonful", Unit::Saltspoon),
            ("dessert spoonful", Unit::Dessertspoon),
            ("handfull", Unit::Handful),
            ("handfulls", Unit::Handful),
            ("ladlefulls", Unit::Ladle),
            ("cupsful", Unit::Cup),
            ("gillful", Unit::Gill),
        ] {
            assert_eq!(Unit::from_spelling(text), Some(unit), "{text}");
        }
        for text in ["careful", "full", "fulls", "plateful", "tful", "mouthful"] {
            assert_eq!(Unit::from_spelling(text), None, "{text}");
        }
    }

    #[test]
    fn what_is_no_unit_is_none() {
        for text in ["", " ", ".", "onion", "large", "tbspx", "🥄"] {
            assert_eq!(Unit::from_spelling(text), None, "{text}");
        }
    }

    #[test]
    fn every_printed_spelling_reads_back() {
        for unit in Unit::ALL {
            for text in [unit.name(), unit.plural(), unit.abbreviation()] {
                assert_eq!(Unit::from_spelling(text), Some(unit), "{text}");
            }
        }
    }
}
