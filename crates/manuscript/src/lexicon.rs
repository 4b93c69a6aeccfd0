//! The words the reader knows, from the tables under `data/`; the grammar asks only which classes a word is in.

use rustc_hash::{FxHashMap, FxHashSet};
use std::borrow::Cow;
use std::sync::OnceLock;

/// A set of word classes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Class(u32);

impl Class {
    pub(crate) const STATE: Class = Class(1);
    pub(crate) const SMALL: Class = Class(1 << 1);
    pub(crate) const MEDIUM: Class = Class(1 << 2);
    pub(crate) const LARGE: Class = Class(1 << 3);
    pub(crate) const ABOUT: Class = Class(1 << 4);
    pub(crate) const EXACTLY: Class = Class(1 << 5);
    pub(crate) const PREPARED: Class = Class(1 << 6);
    pub(crate) const TEMPERATURE: Class = Class(1 << 7);
    pub(crate) const KIND: Class = Class(1 << 8);
    pub(crate) const BOUGHT: Class = Class(1 << 9);
    pub(crate) const MANNER: Class = Class(1 << 10);
    pub(crate) const SHAPE: Class = Class(1 << 11);
    pub(crate) const FOOD: Class = Class(1 << 12);
    pub(crate) const LIQUID: Class = Class(1 << 13);
    pub(crate) const MEAT: Class = Class(1 << 14);
    pub(crate) const CARRIER: Class = Class(1 << 15);
    pub(crate) const PART: Class = Class(1 << 16);
    pub(crate) const CONTAINER: Class = Class(1 << 17);
    pub(crate) const EQUIPMENT: Class = Class(1 << 18);
    pub(crate) const OIL: Class = Class(1 << 19);
    pub(crate) const LOOSE: Class = Class(1 << 20);
    pub(crate) const ABBREVIATED: Class = Class(1 << 21);

    /// The sizes.
    pub(crate) const SIZE: Class = Class(Self::SMALL.0 | Self::MEDIUM.0 | Self::LARGE.0);

    /// Whether the two sets share a class.
    pub(crate) fn is(self, other: Class) -> bool {
        self.0 & other.0 != 0
    }

    /// The names of the classes in the set, as the tables have them.
    pub(crate) fn names(self) -> impl Iterator<Item = &'static str> {
        const NAMES: &[&str] = &[
            "state",
            "small",
            "medium",
            "large",
            "about",
            "exactly",
            "prepared",
            "temperature",
            "kind",
            "bought",
            "manner",
            "shape",
            "food",
            "carrier",
            "part",
            "container",
            "equipment",
            "oil",
            "loose",
        ];
        NAMES.iter().copied().filter(move |name| self.is(Class::of_name(name)))
    }

    fn of_name(name: &str) -> Class {
        match name {
            "state" => Class::STATE,
            "small" => Class::SMALL,
            "medium" => Class::MEDIUM,
            "large" => Class::LARGE,
            "about" => Class::ABOUT,
            "exactly" => Class::EXACTLY,
            "prepared" => Class::PREPARED,
            "temperature" => Class::TEMPERATURE,
            "kind" => Class::KIND,
            "bought" => Class::BOUGHT,
            "manner" => Class::MANNER,
            "shape" => Class::SHAPE,
            "food" => Class::FOOD,
            "liquid" => Class(Class::LIQUID.0 | Class::FOOD.0),
            "meat" => Class(Class::MEAT.0 | Class::FOOD.0),
            "carrier" => Class::CARRIER,
            "part" => Class::PART,
            "container" => Class::CONTAINER,
            "equipment" => Class::EQUIPMENT,
            "oil" => Class::OIL,
            "loose" => Class::LOOSE,
            "abbreviated" => Class::ABBREVIATED,
            _ => Class::default(),
        }
    }
}

impl std::ops::BitOr for Class {
    type Output = Class;
    fn bitor(self, other: Class) -> Class {
        Class(self.0 | other.0)
    }
}

/// What a heading says that follows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Part {
    List,
    Method,
    Closing,
    Equipment,
    Variation,
    /// What a web page has around the recipe: 'Advertisement', 'Print'.
    Furniture,
}

struct Lexicon {
    words: FxHashMap<&'static str, Class>,
    names: FxHashMap<&'static str, (&'static str, bool)>,
    kept: FxHashMap<&'static str, Vec<Vec<&'static str>>>,
    headings: FxHashMap<&'static str, Part>,
    verbs: FxHashSet<&'static str>,
}

fn lexicon() -> &'static Lexicon {
    static READ: OnceLock<Lexicon> = OnceLock::new();
    READ.get_or_init(|| {
        let mut words: FxHashMap<&'static str, Class> = FxHashMap::default();
        let describing = include_str!("../data/describing.tsv");
        for row in rows(describing).chain(rows(include_str!("../data/foods.tsv"))) {
            let class = words.entry(row[0]).or_default();
            *class = *class | Class::of_name(row[1]);
        }
        let names = rows(include_str!("../data/names.tsv")).map(|row| (row[0], (row[1], row[2] == "name")));
        let mut kept: FxHashMap<&'static str, Vec<Vec<&'static str>>> = FxHashMap::default();
        for row in rows(include_str!("../data/kept.tsv")) {
            let words: Vec<&str> = row[0].split(' ').collect();
            kept.entry(words[0]).or_default().push(words);
        }
        let headings = rows(include_str!("../data/headings.tsv")).filter_map(|row| Some((row[0], part(row[1])?)));
        Lexicon {
            words,
            names: names.collect(),
            kept,
            headings: headings.collect(),
            verbs: rows(include_str!("../data/verbs.tsv")).map(|row| row[0]).collect(),
        }
    })
}

/// The cells of the rows of a table, comments and header left out; short rows are padded with empty cells.
fn rows(table: &'static str) -> impl Iterator<Item = [&'static str; 4]> {
    let lines = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.map(|line| {
        let mut cells = line.split('\t');
        std::array::from_fn(|_| cells.next().unwrap_or(""))
    })
}

fn part(name: &str) -> Option<Part> {
    match name {
        "list" => Some(Part::List),
        "method" => Some(Part::Method),
        "closing" => Some(Part::Closing),
        "equipment" => Some(Part::Equipment),
        "variation" => Some(Part::Variation),
        "furniture" => Some(Part::Furniture),
        _ => None,
    }
}

/// The classes a word in small letters has in the tables themselves; none when it has no row.
pub(crate) fn listed(word: &str) -> Class {
    lexicon().words.get(word).copied().unwrap_or_default()
}

/// The classes of a word in small letters. A hyphened word without a row has those of its last part.
pub(crate) fn class(word: &str) -> Class {
    let words = &lexicon().words;
    let own = |word: &str| words.get(word).copied();
    if let Some(class) = own(word) {
        return class;
    }
    if let Some((_, last)) = word.rsplit_once('-') {
        let class = own(last).unwrap_or_default();
        if class.is(Class::PREPARED | Class::BOUGHT) {
            return class;
        }
        if participle(last) {
            return Class::PREPARED;
        }
        return if class.is(Class::FOOD) { class } else { Class::default() };
    }
    if participle(word) {
        // 'undyed', 'unwaxed': what has not been done to it says how it is sold.
        return if word.starts_with("un") {
            Class::BOUGHT
        } else {
            Class::PREPARED
        };
    }
    if word.len() > 4 && word.ends_with("ly") {
        return Class::MANNER;
    }
    // A plural the table does not have is as good as its singular.
    let singular = singular(word);
    if singular != word {
        return own(&singular).unwrap_or_default();
    }
    Class::default()
}

/// Whether a word without a row has the ending of a past participle.
fn participle(word: &str) -> bool {
    word.len() > 4 && word.ends_with("ed") && !word.ends_with("eed")
}

/// The name as meant, for a misprint or an abbreviation; `whole` says that it is all of the name.
pub(crate) fn meant(word: &str, whole: bool) -> Option<&'static str> {
    let (meant, only_whole) = lexicon().names.get(word)?;
    (whole || !only_whole).then_some(*meant)
}

/// The names of several words that start with this one and are kept whole, each as its words in small letters.
pub(crate) fn kept(first: &str) -> &'static [Vec<&'static str>] {
    lexicon().kept.get(first).map_or(&[], Vec::as_slice)
}

/// Whether a word can tell the cook to do something.
pub(crate) fn verb(word: &str) -> bool {
    lexicon().verbs.contains(word)
}

/// What follows a heading of these words (small letters, bare).
pub(crate) fn heading(words: &str) -> Option<Part> {
    lexicon().headings.get(words).copied()
}

/// One of them: `leaves` to `leaf`, `tomatoes` to `tomato`, `berries` to `berry`.
pub(crate) fn singular(word: &str) -> Cow<'_, str> {
    if !word.ends_with('s') {
        return Cow::Borrowed(word);
    }
    for (end, put) in [("leaves", "leaf"), ("loaves", "loaf"), ("halves", "half"), ("ies", "y")] {
        if let Some(stem) = word.strip_suffix(end) {
            return Cow::Owned(format!("{stem}{put}"));
        }
    }
    if ["oes", "ches", "shes"].iter().any(|end| word.ends_with(end)) {
        return Cow::Borrowed(&word[..word.len() - 2]);
    }
    match word.strip_suffix('s') {
        Some(stem) if word.len() > 3 && !stem.ends_with('s') && !stem.ends_with('u') => Cow::Borrowed(stem),
        _ => Cow::Borrowed(word),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole_and_known() {
        for table in [
            include_str!("../data/describing.tsv"),
            include_str!("../data/foods.tsv"),
            include_str!("../data/names.tsv"),
            include_str!("../data/kept.tsv"),
            include_str!("../data/headings.tsv"),
        ] {
            let mut lines = table.lines().filter(|line| !line.starts_with('#'));
            let width = lines.next().unwrap().split('\t').count();
            for line in lines {
                let cells: Vec<&str> = line.split('\t').collect();
                assert_eq!(cells.len(), width, "{line}");
                assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{line}");
            }
        }
        for row in rows(include_str!("../data/describing.tsv")).chain(rows(include_str!("../data/foods.tsv"))) {
            assert_ne!(Class::of_name(row[1]), Class::default(), "{row:?}");
        }
    }

    #[test]
    fn endings_speak_for_words_without_a_row() {
        assert!(class("spatchcocked").is(Class::PREPARED));
        assert!(class("small-diced").is(Class::PREPARED));
        assert!(!class("linseed").is(Class::PREPARED));
        assert!(class("sparingly").is(Class::MANNER));
        assert!(!class("parsley").is(Class::MANNER));
        assert!(class("quinces").is(Class::FOOD));
    }
}
