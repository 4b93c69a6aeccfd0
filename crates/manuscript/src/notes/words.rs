//! Words of speech, from `data/notes.tsv`: which phrases open an aside, take something back, leave an amount open.

use std::sync::OnceLock;

use rustc_hash::FxHashMap;

use crate::token::Token;

/// What a word or phrase does in a take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    Dish,
    Part,
    Course,
    Person,
    Aside,
    Turn,
    Repair,
    Filler,
    Vague,
    VesselSize,
    Again,
    VagueTime,
    Earlier,
    Season,
}

fn role(name: &str) -> Option<Role> {
    Some(match name {
        "dish" => Role::Dish,
        "part" => Role::Part,
        "course" => Role::Course,
        "person" => Role::Person,
        "aside" => Role::Aside,
        "turn" => Role::Turn,
        "repair" => Role::Repair,
        "filler" => Role::Filler,
        "vague" => Role::Vague,
        "vessel-size" => Role::VesselSize,
        "again" => Role::Again,
        "vague-time" => Role::VagueTime,
        "earlier" => Role::Earlier,
        "season" => Role::Season,
        _ => return None,
    })
}

type Phrases = FxHashMap<&'static str, Vec<(Vec<&'static str>, Role)>>;

/// The phrases by their first word.
fn phrases() -> &'static Phrases {
    static READ: OnceLock<Phrases> = OnceLock::new();
    READ.get_or_init(|| {
        let mut read = Phrases::default();
        for (words, class) in rows() {
            let words: Vec<&str> = words.split(' ').collect();
            if let (Some(first), Some(role)) = (words.first().copied(), role(class)) {
                read.entry(first).or_default().push((words, role));
            }
        }
        read
    })
}

fn rows() -> impl Iterator<Item = (&'static str, &'static str)> {
    let table = include_str!("../../data/notes.tsv");
    let lines = table.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    lines.skip(1).map(|line| {
        let mut cells = line.split('\t');
        (cells.next().unwrap_or(""), cells.next().unwrap_or(""))
    })
}

/// The index after the longest phrase of this role that stands at this word.
pub(super) fn at(tokens: &[Token], at: usize, role: Role) -> Option<usize> {
    let first = tokens.get(at)?;
    let here = phrases().get(first.lower.as_str())?;
    let stands = |words: &[&str]| {
        let part = tokens.get(at..at + words.len());
        part.is_some_and(|part| part.iter().zip(words).all(|(token, word)| token.is(word)))
    };
    let fitting = here.iter().filter(|(words, of)| *of == role && stands(words));
    fitting.map(|(words, _)| at + words.len()).max()
}

/// Whether one word by itself has this role.
pub(super) fn is(word: &str, role: Role) -> bool {
    let here = phrases().get(word);
    here.is_some_and(|here| here.iter().any(|(words, of)| *of == role && words.len() == 1))
}

/// One of them: 'leeks' to 'leek'.
pub(super) fn singular(word: &str) -> String {
    crate::lexicon::singular(word).into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_has_a_role_and_a_source() {
        for line in include_str!("../../data/notes.tsv")
            .lines()
            .filter(|line| !line.starts_with('#'))
            .skip(1)
        {
            let cells: Vec<&str> = line.split('\t').collect();
            assert_eq!(cells.len(), 3, "{line}");
            assert!(role(cells[1]).is_some() && !cells[2].is_empty(), "{line}");
        }
    }
}
