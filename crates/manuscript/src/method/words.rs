//! The words the method is read by, from the tables under `data/`: verbs with their conditions, small words, vessels,
//! words for several foods, words for how often.

use rustc_hash::{FxHashMap, FxHashSet};
use std::sync::OnceLock;

use crate::Verb;

/// What a row of the verb table says is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Meaning {
    /// An operation.
    Do(Verb),
    /// The heat under the vessel is changed; no operation of its own.
    Heat,
    /// The heat is turned off.
    HeatOff,
    /// The vessel comes off the heat.
    OffHeat,
    /// The vessel comes out of the oven.
    OutOfOven,
    /// The lid goes on, not quite.
    CoverAjar,
    /// Nothing is done to the food.
    Nothing,
}

/// The form in which a verb stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Inflection {
    /// 'add'.
    Base,
    /// 'adding'.
    Ing,
    /// 'added'.
    Past,
}

/// Marks of a word or of one of its rows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Marks {
    /// It also names a thing.
    pub(super) noun: bool,
    /// It names a food: an order needs an article after it.
    pub(super) food: bool,
    /// It also describes.
    pub(super) describes: bool,
    /// It may follow 'until' without an object.
    pub(super) in_cue: bool,
    /// Another verb carries the meaning.
    pub(super) lets: bool,
    /// Its -ing form is an operation.
    pub(super) ing: bool,
    /// Its -ing form is an operation before 'in'.
    pub(super) ing_in: bool,
    /// Its past participle is an operation.
    pub(super) past: bool,
}

/// One row of the verb table.
#[derive(Debug)]
pub(super) struct Row {
    /// What must hold, all of it; each is a choice of atoms.
    pub(super) when: Vec<Need>,
    pub(super) meaning: Meaning,
    pub(super) marks: Marks,
}

/// One thing that must hold (or must not).
#[derive(Debug)]
pub(super) struct Need {
    pub(super) not: bool,
    pub(super) any: Vec<&'static str>,
}

/// A verb of the page: its rows from the top, and the marks that any of them carries.
#[derive(Debug, Default)]
pub(super) struct Entry {
    pub(super) rows: Vec<Row>,
    pub(super) marks: Marks,
}

/// What a vessel is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum VesselKind {
    Cook,
    Bowl,
    Holder,
    Serving,
    Oven,
    Broiler,
    Cold,
    Frozen,
    Sink,
    Tool,
}

/// Words for how often, and what they say.
pub(super) type Way = (Vec<&'static str>, &'static str);

struct Tables {
    verbs: FxHashMap<&'static str, Entry>,
    forms: FxHashMap<String, (&'static str, Inflection)>,
    vessels: FxHashMap<&'static str, VesselKind>,
    /// Vessels of two words, by the first.
    paired: FxHashMap<&'static str, Vec<(&'static str, VesselKind)>>,
    groups: FxHashMap<&'static str, Vec<&'static str>>,
    /// Words with another name that lists use more.
    others: FxHashMap<&'static str, &'static str>,
    kinds: FxHashSet<&'static str>,
    repeats: FxHashMap<&'static str, Vec<Way>>,
}

fn tables() -> &'static Tables {
    static READ: OnceLock<Tables> = OnceLock::new();
    READ.get_or_init(|| {
        let (verbs, forms) = verb_tables();
        let mut groups: FxHashMap<&str, Vec<&str>> = FxHashMap::default();
        let mut others: FxHashMap<&str, &str> = FxHashMap::default();
        for [word, group, ..] in rows(include_str!("../../data/groups.tsv")) {
            groups.entry(word).or_default().push(group);
            if let Some(same) = group.strip_prefix("same ") {
                others.entry(word).or_insert(same);
            }
        }
        let vessels = rows(include_str!("../../data/vessels.tsv"));
        let mut paired: FxHashMap<&str, Vec<(&str, VesselKind)>> = FxHashMap::default();
        for [words, kind, ..] in rows(include_str!("../../data/vessels.tsv")) {
            if let (Some((first, second)), Some(kind)) = (words.split_once(' '), vessel_kind(kind)) {
                paired.entry(first).or_default().push((second, kind));
            }
        }
        let mut repeats: FxHashMap<&str, Vec<Way>> = FxHashMap::default();
        for [words, times, ..] in rows(include_str!("../../data/repeats.tsv")) {
            let words: Vec<&str> = words.split(' ').collect();
            repeats.entry(words[0]).or_default().push((words, times));
        }
        Tables {
            verbs,
            forms,
            vessels: vessels
                .filter_map(|[word, kind, ..]| Some((word, vessel_kind(kind)?)))
                .collect(),
            kinds: groups.values().flatten().copied().collect(),
            groups,
            others,
            paired,
            repeats,
        }
    })
}

type Forms = FxHashMap<String, (&'static str, Inflection)>;

fn verb_tables() -> (FxHashMap<&'static str, Entry>, Forms) {
    let mut verbs: FxHashMap<&str, Entry> = FxHashMap::default();
    let mut forms = Forms::default();
    for [word, when, meaning, marks, ..] in rows(include_str!("../../data/verbs.tsv")) {
        let Some(meaning) = meaning_of(meaning) else { continue };
        for (form, inflection) in inflected(word) {
            forms.entry(form).or_insert((word, inflection));
        }
        let irregular = marks.split(' ').filter_map(|mark| mark.strip_prefix("past="));
        for form in irregular {
            // 'cut' and 'put' are their own past: those stand as base forms and are told apart by their place.
            forms.entry(form.to_owned()).or_insert((word, Inflection::Past));
        }
        let row = Row {
            when: needs(when),
            meaning,
            marks: marks_of(marks),
        };
        let entry = verbs.entry(word).or_default();
        entry.marks = joined(entry.marks, row.marks);
        entry.rows.push(row);
    }
    (verbs, forms)
}

fn needs(when: &'static str) -> Vec<Need> {
    let atoms = when.split(' ').filter(|atom| *atom != "-");
    atoms
        .map(|atom| {
            let plain = atom.strip_prefix('!');
            Need {
                not: plain.is_some(),
                any: plain.unwrap_or(atom).split('|').collect(),
            }
        })
        .collect()
}

fn marks_of(text: &str) -> Marks {
    let has = |mark: &str| text.split(' ').any(|m| m == mark);
    Marks {
        noun: has("noun"),
        food: has("food"),
        describes: has("adj"),
        in_cue: has("cue"),
        lets: has("let"),
        ing: has("ing"),
        ing_in: has("ing-in"),
        past: has("past"),
    }
}

fn joined(a: Marks, b: Marks) -> Marks {
    Marks {
        noun: a.noun || b.noun,
        food: a.food || b.food,
        describes: a.describes || b.describes,
        in_cue: a.in_cue || b.in_cue,
        lets: a.lets || b.lets,
        ing: a.ing || b.ing,
        ing_in: a.ing_in || b.ing_in,
        past: a.past || b.past,
    }
}

fn meaning_of(name: &str) -> Option<Meaning> {
    Some(match name {
        "none" => Meaning::Nothing,
        "heat-change" => Meaning::Heat,
        "heat-off" => Meaning::HeatOff,
        "remove-heat" => Meaning::OffHeat,
        "remove-oven" => Meaning::OutOfOven,
        "cover-ajar" => Meaning::CoverAjar,
        verb => Meaning::Do(Verb::from_name(verb)?),
    })
}

fn vessel_kind(name: &str) -> Option<VesselKind> {
    Some(match name {
        "cook" => VesselKind::Cook,
        "bowl" => VesselKind::Bowl,
        "holder" => VesselKind::Holder,
        "serving" => VesselKind::Serving,
        "oven" => VesselKind::Oven,
        "broiler" => VesselKind::Broiler,
        "cold" => VesselKind::Cold,
        "frozen" => VesselKind::Frozen,
        "sink" => VesselKind::Sink,
        "tool" => VesselKind::Tool,
        _ => return None,
    })
}

/// The forms of a verb: regular endings, with and without a doubled letter; a form that is no word does no harm.
fn inflected(word: &str) -> Vec<(String, Inflection)> {
    let mut forms = vec![(word.to_owned(), Inflection::Base)];
    let stem = word.strip_suffix('e').unwrap_or(word);
    let doubled = word
        .chars()
        .last()
        .map_or(String::new(), |last| format!("{word}{last}"));
    for stem in [stem, doubled.as_str()] {
        forms.push((format!("{stem}ing"), Inflection::Ing));
        forms.push((format!("{stem}ed"), Inflection::Past));
    }
    if let Some(stem) = word.strip_suffix('y') {
        forms.push((format!("{stem}ied"), Inflection::Past));
    }
    forms
}

/// The cells of the rows of a table, comments and header left out.
fn rows(table: &'static str) -> impl Iterator<Item = [&'static str; 5]> {
    let lines = table
        .lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .skip(1);
    lines.map(|line| {
        let mut cells = line.split('\t');
        std::array::from_fn(|_| cells.next().unwrap_or(""))
    })
}

/// The verb of which this is a form.
///
/// 'stick-blend', 'pan-fry', 're-boil': a compound without a row is what its last part is.
pub(crate) fn verb(word: &str) -> Option<(&'static str, Inflection)> {
    let forms = &tables().forms;
    let last = || {
        let (_, last) = word.rsplit_once('-')?;
        forms.get(last).copied().filter(|(_, form)| *form == Inflection::Base)
    };
    forms.get(word).copied().or_else(last)
}

/// The rows and marks of a verb in its base form.
pub(super) fn entry(base: &str) -> Option<&'static Entry> {
    tables().verbs.get(base)
}

/// Whether a word, in the singular, is in a group of foods.
pub(super) fn in_group(word: &str, group: &str) -> bool {
    tables().groups.get(word).is_some_and(|groups| groups.contains(&group))
}

/// The groups of foods that a word, in the singular, is in.
pub(super) fn groups_of(word: &str) -> &'static [&'static str] {
    tables().groups.get(word).map_or(&[], Vec::as_slice)
}

/// Whether a word, in the singular, names a kind that others are of: 'nut', 'noodle'.
pub(super) fn is_kind(word: &str) -> bool {
    const ROLES: [&str; 4] = ["derived", "liquid", "dry", "topping"];
    tables().kinds.contains(word) && !ROLES.contains(&word)
}

/// The other name of a food word, where it has one that lists use more.
pub(super) fn other_name(word: &str) -> Option<&'static str> {
    tables().others.get(word).copied()
}

/// The name that lists use more for a food word: its other name where it has one, else itself.
pub(super) fn same(word: &str) -> &str {
    other_name(word).unwrap_or(word)
}

/// The kind of the vessel of one word.
pub(crate) fn vessel(word: &str) -> Option<VesselKind> {
    tables().vessels.get(word).copied()
}

/// The kind of the vessel of two words.
pub(crate) fn vessel_of_two(first: &str, second: &str) -> Option<VesselKind> {
    let paired = tables().paired.get(first)?;
    paired
        .iter()
        .rev()
        .find(|(word, _)| *word == second)
        .map(|(_, kind)| *kind)
}

/// The ways to say how often that begin with this word: the words (`#` is a number) and how often that is (`#`, a figure
/// or `-`).
pub(super) fn repeats(first: &str) -> &'static [Way] {
    tables().repeats.get(first).map_or(&[], Vec::as_slice)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole_and_known() {
        for (table, width) in [
            (include_str!("../../data/verbs.tsv"), 5),
            (include_str!("../../data/method.tsv"), 3),
            (include_str!("../../data/vessels.tsv"), 3),
            (include_str!("../../data/groups.tsv"), 3),
            (include_str!("../../data/repeats.tsv"), 3),
        ] {
            for line in table.lines().filter(|line| !line.starts_with('#')) {
                let cells: Vec<&str> = line.split('\t').collect();
                assert_eq!(cells.len(), width, "{line}");
                assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{line}");
            }
        }
        for [word, _, meaning, ..] in rows(include_str!("../../data/verbs.tsv")) {
            assert!(meaning_of(meaning).is_some(), "{word}: {meaning}");
        }
        for [word, kind, ..] in rows(include_str!("../../data/vessels.tsv")) {
            assert!(vessel_kind(kind).is_some(), "{word}: {kind}");
        }
    }

    #[test]
    fn the_last_row_of_a_verb_always_fits() {
        let sorted: std::collections::BTreeMap<_, _> = tables().verbs.iter().collect();
        for (word, entry) in sorted {
            let last = entry.rows.last().unwrap();
            assert!(last.when.is_empty(), "{word} has no row without a condition at its end");
        }
    }

    #[test]
    fn forms_lead_to_their_verb() {
        for (form, base, inflection) in [
            ("chopping", "chop", Inflection::Ing),
            ("sliced", "slice", Inflection::Past),
            ("fried", "fry", Inflection::Past),
            ("beaten", "beat", Inflection::Past),
            ("add", "add", Inflection::Base),
        ] {
            assert_eq!(verb(form), Some((base, inflection)), "{form}");
        }
    }
}
