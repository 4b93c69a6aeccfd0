//! The method beside its cooking: which stretch on the heat belongs to which words, and what those words say.

use potwright_manuscript::{Operation, Span, Verb};
use potwright_pot::{Doing, Place, Stretch};

use crate::Manuscript;

/// A stretch of the simulation that an operation of the page asks for.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Cooked<'a> {
    /// Index into the process's acts.
    pub(crate) act: usize,
    /// Index into the process's vessels.
    pub(crate) vessel: usize,
    /// Index into the recipe's operations.
    pub(crate) index: usize,
    /// The operation.
    pub(crate) operation: &'a Operation,
    /// Where, at what, how long.
    pub(crate) stretch: &'a Stretch,
    /// Minutes from the start.
    pub(crate) start_min: f64,
    /// Minutes from the start.
    pub(crate) end_min: f64,
}

impl Cooked<'_> {
    /// Minutes it lasts in the central run.
    pub(crate) fn minutes(&self) -> f64 {
        (self.end_min - self.start_min).max(0.0)
    }
}

/// Every stretch on the hob or in the oven that words of the page ask for, in the order of cooking.
pub(crate) fn on_the_heat<'a>(manuscript: &Manuscript<'a>) -> Vec<Cooked<'a>> {
    let (process, trace) = (&manuscript.reckoned.process, &manuscript.reckoned.trace);
    let acts = process.acts.iter().zip(&trace.acts).enumerate();
    acts.filter_map(|(at, (act, times))| {
        let Doing::Cook(stretch) = &act.doing else { return None };
        let index = act.operation?;
        matches!(stretch.place, Place::Hob | Place::Oven).then_some(Cooked {
            act: at,
            vessel: act.vessel,
            index,
            operation: manuscript.recipe.operations.get(index)?,
            stretch,
            start_min: times.start_s / 60.0,
            end_min: times.end_s / 60.0,
        })
    })
    .collect()
}

/// Minute from the start at which the page has come to an operation: the start of the first act of it or of a later one.
pub(crate) fn comes_to_min(manuscript: &Manuscript<'_>, operation: usize) -> Option<f64> {
    let acts = &manuscript.reckoned.process.acts;
    let at = acts
        .iter()
        .position(|act| act.operation.is_some_and(|index| index >= operation))?;
    Some(manuscript.reckoned.trace.acts.get(at)?.start_s / 60.0)
}

/// Whether a verb cooks food for a while: not warming a pan, melting butter or bringing something to the boil.
pub(crate) fn cooks(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Sweat
            | Verb::Saute
            | Verb::Fry
            | Verb::Brown
            | Verb::Boil
            | Verb::Parboil
            | Verb::Simmer
            | Verb::Steam
            | Verb::Poach
            | Verb::Braise
            | Verb::Bake
            | Verb::Roast
            | Verb::Broil
            | Verb::Toast
            | Verb::Render
            | Verb::Reduce
    )
}

/// The words from an operation to the next one that takes time, within its step: what is said of its time, heat and sign
/// to stop stands there.
pub(crate) fn said_of(manuscript: &Manuscript<'_>, index: usize) -> String {
    let recipe = manuscript.recipe;
    let Some(operation) = recipe.operations.get(index) else {
        return String::new();
    };
    let step_end = recipe
        .steps
        .get(operation.step)
        .map_or(operation.span.end, |step| step.words.span.end);
    let next = recipe.operations.iter().skip(index + 1).find(|later| {
        later.step == operation.step
            && later.span.start > operation.span.start
            && (cooks(later.verb) || later.minutes.is_some() || later.cue.is_some())
    });
    let end = next.map_or(step_end, |later| later.span.start.min(step_end));
    lower(manuscript.text, operation.span.start, end.max(operation.span.end))
}

/// The words of an operation's step up to its end.
pub(crate) fn said_before(manuscript: &Manuscript<'_>, index: usize) -> String {
    let recipe = manuscript.recipe;
    let Some(operation) = recipe.operations.get(index) else {
        return String::new();
    };
    let start = recipe
        .steps
        .get(operation.step)
        .map_or(operation.span.start, |step| step.words.span.start);
    lower(manuscript.text, start, operation.span.end)
}

/// A stretch of the text in small letters, empty where the places make no sense.
pub(crate) fn lower(text: &str, start: usize, end: usize) -> String {
    text.get(start..end).unwrap_or("").to_lowercase()
}

/// Whether one of the words, or a word that begins with one that ends in `*`, stands in the text.
pub(crate) fn says(text: &str, words: &[&str]) -> bool {
    text.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .any(|word| {
            words.iter().any(|sought| match sought.strip_suffix('*') {
                Some(stem) => word.starts_with(stem),
                None => word == *sought,
            })
        })
}

/// The words of the method that first speak of the oven, up to those of a stretch: an operation's, else their sentence.
pub(crate) fn oven_named_at(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> Option<Span> {
    let from = manuscript.recipe.steps.first()?.words.span.start;
    let before = lower(manuscript.text, from, cooked.operation.span.end);
    let at = from + before.find("oven")?;
    let operations = &manuscript.recipe.operations;
    let holds = |span: Span| span.start <= at && at < span.end;
    let by_reading = operations
        .iter()
        .map(|operation| operation.span)
        .find(|span| holds(*span));
    let stops = ['.', '\n'];
    let start = manuscript.text.get(..at)?.rfind(stops).map_or(0, |stop| stop + 1);
    let end = manuscript
        .text
        .get(at..)?
        .find(stops)
        .map_or(manuscript.text.len(), |stop| at + stop);
    let sentence = Span::new(start, end);
    let blank = sentence.of(manuscript.text).len() - sentence.of(manuscript.text).trim_start().len();
    by_reading.or(Some(Span::new(start + blank, end)))
}

/// Minutes as a page prints them: to five from ten on, to half an hour from two hours on.
pub(crate) fn printed(minutes: f64) -> String {
    let step = match minutes {
        m if m < 10.0 => 1.0,
        m if m < 120.0 => 5.0,
        _ => 30.0,
    };
    let rounded = ((minutes / step).round() * step).max(1.0);
    if rounded < 120.0 {
        return format!("{rounded:.0} minutes");
    }
    let hours = rounded / 60.0;
    if hours.fract() < 0.01 {
        format!("{hours:.0} hours")
    } else {
        format!("{hours:.1} hours")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_found_whole_or_by_their_beginning() {
        assert!(says("cook gently until soft", &["gentl*"]));
        assert!(says("over a low heat", &["low"]));
        assert!(!says("pour in slowly; allow", &["low"]));
    }

    /// 12 to the nearest five is 10, 43 is 45, 150 minutes are two hours and a half.
    #[test]
    fn minutes_as_printed() {
        assert_eq!(printed(7.4), "7 minutes");
        assert_eq!(printed(12.0), "10 minutes");
        assert_eq!(printed(43.0), "45 minutes");
        assert_eq!(printed(150.0), "2.5 hours");
        assert_eq!(printed(121.0), "2 hours");
    }
}
