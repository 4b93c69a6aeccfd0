//! What each verb does in the pot, from `data/verbs.tsv`.

use potwright_manuscript::{Cover, HeatWord, Verb};
use potwright_measure::{Duration, Spread};

use super::table;

/// The class of a verb: which way it is resolved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Class {
    /// Work on food before it goes in: hands, no act on a pot.
    Prepare,
    /// Goes in.
    Put,
    /// Goes in and is cooked a moment: deglazing, thickening.
    Loosen,
    /// Foods are mixed among themselves.
    Mix,
    /// Salt, flour and the like go on a food.
    Dress,
    /// Heat and time.
    Cook,
    /// Time without heat.
    Wait,
    /// Out of the pot, to be kept.
    Lift,
    /// Thrown away.
    Throw,
    /// Liquid poured off, solids kept.
    Drain,
    /// Solids held back, liquid kept.
    Strain,
    /// Blended, mashed.
    Blend,
    /// Fat and scum off.
    Skim,
    /// 'Do not let it boil.'
    Guard,
    /// Lid on or off.
    Lid,
    /// To the table.
    Serve,
    /// Hands only.
    Nothing,
}

/// How a cook verb heats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    Setting,
    Fry,
    Boil,
    Simmer,
    BelowBoil,
    Oven,
    Hold,
    Counter,
    Refrigerator,
    Freezer,
}

/// What the table says of a verb.
#[derive(Clone, Copy, Debug)]
pub(super) struct Manner {
    pub(super) class: Class,
    pub(super) way: Option<Way>,
    pub(super) heat: Option<HeatWord>,
    /// The lid when the page says nothing; none keeps it as it is.
    pub(super) lid: Option<Cover>,
    /// Minutes when the page gives neither time nor cue.
    pub(super) minutes: Option<Spread>,
    pub(super) hands: Duration,
}

/// What the table says of a verb.
pub(super) fn manner(verb: Verb) -> Manner {
    let Some(row) = table::VERBS.rows().find(|row| row.text("verb") == verb.name()) else {
        let hands = Duration::ZERO;
        return Manner {
            class: Class::Nothing,
            way: None,
            heat: None,
            lid: None,
            minutes: None,
            hands,
        };
    };
    Manner {
        class: class(row.text("class")),
        way: way(row.text("aim")),
        heat: heat(row.text("heat")),
        lid: lid(row.text("lid")),
        minutes: row.minutes(),
        hands: Duration::from_minutes(row.number("hands_min").unwrap_or(0.0)),
    }
}

fn class(word: &str) -> Class {
    match word {
        "prepare" => Class::Prepare,
        "put" => Class::Put,
        "loosen" => Class::Loosen,
        "mix" => Class::Mix,
        "dress" => Class::Dress,
        "cook" => Class::Cook,
        "wait" => Class::Wait,
        "lift" => Class::Lift,
        "throw" => Class::Throw,
        "drain" => Class::Drain,
        "strain" => Class::Strain,
        "blend" => Class::Blend,
        "skim" => Class::Skim,
        "guard" => Class::Guard,
        "lid" => Class::Lid,
        "serve" => Class::Serve,
        _ => Class::Nothing,
    }
}

fn way(word: &str) -> Option<Way> {
    Some(match word {
        "setting" => Way::Setting,
        "fry" => Way::Fry,
        "boil" => Way::Boil,
        "simmer" => Way::Simmer,
        "below_boil" => Way::BelowBoil,
        "oven" => Way::Oven,
        "hold" => Way::Hold,
        "counter" => Way::Counter,
        "refrigerator" => Way::Refrigerator,
        "freezer" => Way::Freezer,
        _ => return None,
    })
}

fn heat(word: &str) -> Option<HeatWord> {
    Some(match word {
        "low" => HeatWord::Low,
        "medium-low" => HeatWord::MediumLow,
        "medium" => HeatWord::Medium,
        "medium-high" => HeatWord::MediumHigh,
        "high" => HeatWord::High,
        _ => return None,
    })
}

/// A lid word of a table: `keep` and an empty cell leave it as it is.
pub(super) fn lid(word: &str) -> Option<Cover> {
    match word {
        "on" => Some(Cover::On),
        "off" => Some(Cover::Off),
        "ajar" => Some(Cover::Ajar),
        _ => None,
    }
}

/// One step lower on the knob.
pub(super) fn lower(heat: HeatWord) -> HeatWord {
    match heat {
        HeatWord::High => HeatWord::Medium,
        HeatWord::MediumHigh | HeatWord::Medium => HeatWord::MediumLow,
        HeatWord::MediumLow | HeatWord::Low | HeatWord::Lower => HeatWord::Low,
        HeatWord::Off => HeatWord::Off,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_verb_has_its_row() {
        for verb in Verb::ALL {
            let rows = table::VERBS
                .rows()
                .filter(|row| row.text("verb") == verb.name())
                .count();
            assert_eq!(rows, 1, "{}", verb.name());
        }
        for row in table::VERBS.rows() {
            assert!(Verb::from_name(row.text("verb")).is_some(), "{}", row.text("verb"));
            let class = class(row.text("class"));
            assert!(
                (class == Class::Nothing) == (row.text("class") == "none"),
                "{}",
                row.text("verb")
            );
        }
    }

    #[test]
    fn what_cooks_or_waits_has_a_way_and_minutes() {
        for verb in Verb::ALL {
            let manner = manner(*verb);
            if matches!(manner.class, Class::Cook | Class::Wait | Class::Loosen) {
                assert!(manner.way.is_some() && manner.minutes.is_some(), "{}", verb.name());
            }
        }
    }
}
