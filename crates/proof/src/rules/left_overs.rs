//! Left-overs kept longer than the chart.

use potwright_larder::Hazard;
use potwright_manuscript::BlockKind;

use crate::prose::{Sentence, sentences};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S05",
    name: "left-overs kept beyond the chart",
    finds: "A dish said to keep in the refrigerator for longer than the chart: 4 days, cooked shellfish 2. Pickles and breads are left alone.",
    why: "Listeria grows in the refrigerator, and nobody smells it.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nKeeps for ten days in the fridge.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nKeeps for three days in the fridge.\n",
    instead: "'Up to 4 days in the refrigerator at 4 °C, or frozen'.",
    source: "FoodSafety.gov cold food storage chart: soups, stews, cooked meat 3-4 days; Oregon and Nevada pages: cooked shellfish 2 days",
    check,
};

const KEEPS: &[&str] = &[
    "keep*|kept",
    "store*|stored",
    "last|lasts",
    "good|fine|sound|safe|happy|happily",
    "hold|holds",
    "refrigerat*|fridge|chilled|icebox",
    "eat|eaten|use|used|finish|finished … within|in|by|up",
    "ahead",
    "leftover*",
    "left overs",
    "in advance",
];
/// Dishes for which the chart has no row: below pH 4.2 most likely, or dry (shares of the mass, percent).
const SOUR_PERCENT: f64 = 1.2;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let dossier = &manuscript.reckoned.dossier;
    if dossier.acid.value >= SOUR_PERCENT
        || dossier.body.word.is_none() && dossier.doneness.iter().all(|row| row.hazard.is_none())
    {
        return Vec::new();
    }
    let shell = dossier
        .doneness
        .iter()
        .any(|row| matches!(row.hazard, Some(Hazard::Bivalve | Hazard::Crustacean)));
    let limit = if shell { 2.0 } else { 4.0 };
    let said = sentences(manuscript.recipe, manuscript.text);
    let kept = said.iter().filter(|sentence| {
        let apart = matches!(
            sentence.part,
            BlockKind::Headnote | BlockKind::Closing | BlockKind::Step | BlockKind::Variation
        );
        apart && sentence.says(KEEPS)
    });
    kept.filter_map(|sentence| {
        let (days, span) = longest_days(sentence)?;
        (days > limit).then(|| {
            let mut query = RULE.query(
                Weight::MustSettle,
                span,
                "Does it keep for so long? The cold storage chart allows less.",
                format!("the chart has {limit:.0} days at 4 °C for such a dish, the page {days:.0}; freezing keeps it longer"),
            );
            query.see.push((sentence.span, "the advice".into()));
            query
        })
    })
    .collect()
}

/// The longest stretch of days or weeks a sentence names before it speaks of freezing.
fn longest_days(sentence: &Sentence) -> Option<(f64, potwright_manuscript::Span)> {
    let words: Vec<_> = sentence.words().collect();
    let end = words
        .iter()
        .position(|(word, _)| word.starts_with("freez") || word.starts_with("frozen"));
    let cold = words
        .iter()
        .position(|(word, _)| word.starts_with("fridge") || word.starts_with("refrigerat"));
    // Of freezing the chart speaks apart; what is said of it before or after is no matter of days.
    let words = match (end, cold) {
        (Some(end), Some(cold)) if end < cold => words.get(end + 1..).unwrap_or(&[]),
        (Some(end), _) => words.get(..end).unwrap_or(&[]),
        (None, _) => &words[..],
    };
    let unit = |word: &str| match word {
        "day" | "days" => Some(1.0),
        "week" | "weeks" => Some(7.0),
        "fortnight" | "fortnights" => Some(14.0),
        "month" | "months" => Some(30.0),
        _ => None,
    };
    let found = words.iter().enumerate().filter_map(|(at, (word, span))| {
        let days = unit(word)?;
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        let (number, from) = match before.and_then(|(word, from)| Some((number(word)?, *from))) {
            Some(found) => found,
            None if word.ends_with('s') => (2.0, *span),
            None if *word == "fortnight" => (1.0, *span),
            None => return None,
        };
        Some((number * days, from.join(*span)))
    });
    found.max_by(|a, b| a.0.total_cmp(&b.0))
}

fn number(word: &str) -> Option<f64> {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    ];
    let of_word = WORDS.iter().position(|one| *one == word).map(|at| at as f64);
    of_word.or(match word {
        "a" | "whole" | "full" | "working" | "another" => Some(1.0),
        "couple" | "of" => Some(2.0),
        "few" | "several" => Some(3.0),
        "fourteen" => Some(14.0),
        _ => word.parse().ok(),
    })
}
