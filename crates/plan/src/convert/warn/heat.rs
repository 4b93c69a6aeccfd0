//! Steam, heating up, ovens, cooling, and the times that stay.

use potwright_manuscript::{Cover, Operation, Verb};
use potwright_measure::Duration;

use super::contents::Contents;
use super::{About, Warning, WarningKind, in_dish, in_oven, minutes, percent, short, steps, vessel};

/// Open pots: the rate goes by surface and burner (see `data/scaling.tsv`).
pub(super) fn evaporation(about: &About<'_>) -> Option<Warning> {
    /// Shorter than this nothing much leaves a pot (common practice, no source).
    const MINUTES: f64 = 5.0;
    let wet = [Verb::Simmer, Verb::Boil, Verb::Poach, Verb::Braise];
    let open = about.operations(|operation| {
        wet.contains(&operation.verb)
            && operation.cover != Some(Cover::On)
            && !in_dish(operation)
            && operation
                .minutes
                .as_ref()
                .is_some_and(|minutes| minutes.high >= MINUTES)
    });
    if open.is_empty() {
        return None;
    }
    let told: Vec<String> = open.iter().map(|operation| told(operation)).collect();
    let factor = about.factor();
    let similar = percent(1.0 / libm::cbrt(factor));
    let direction = if about.bigger() {
        format!(
            "a pot of the same shape loses only {similar} as much steam for each litre, the same pot {}. The liquid \
             will come out thinner and there will be more of it: hold some back",
            percent(1.0 / factor)
        )
    } else {
        format!(
            "a pot of the same shape loses {similar} as much steam for each litre, the same pot {}. It will boil down \
             further: watch it and keep some liquid at hand",
            percent(1.0 / factor)
        )
    };
    let text = format!("Steam ({}): {direction}.", told.join("; "));
    Some(Warning::at(
        WarningKind::Evaporation,
        open.iter().map(|operation| operation.step).collect(),
        text,
        "evaporation",
    ))
}

/// 'step 3: 12 minutes, lid ajar'.
fn told(operation: &Operation) -> String {
    let time = operation
        .minutes
        .as_ref()
        .map_or(String::new(), |m| minutes(m.low, m.high));
    let lid = if operation.cover == Some(Cover::Ajar) {
        ", lid ajar"
    } else {
        ""
    };
    format!("{}: {time}{lid}", steps(&[operation.step]))
}

/// Boiling down on the same burner.
pub(super) fn reduction(about: &About<'_>) -> Option<Warning> {
    let reducing = about.operations(|operation| operation.verb == Verb::Reduce);
    if reducing.is_empty() {
        return None;
    }
    let at: Vec<usize> = reducing.iter().map(|operation| operation.step).collect();
    let text = format!(
        "Boiling down ({}): on the same burner at full it takes {} as long, for there is as much more water to drive \
         off. Go by the volume left, not by the clock.",
        steps(&at),
        about.times()
    );
    Some(Warning::at(WarningKind::Reduction, at, text, "reduction"))
}

/// Coming to the boil, with the time the kitchen's strongest burner needs for as much water.
pub(super) fn heating(about: &About<'_>, contents: &Contents) -> Option<Warning> {
    let boil = |operation: &Operation| {
        let words = operation.span.of(about.setting.text).to_lowercase();
        let brings = matches!(operation.verb, Verb::Heat | Verb::Boil | Verb::Scald | Verb::Reheat);
        brings && !in_dish(operation) && ["boil", "simmer", "steaming"].iter().any(|word| words.contains(word))
    };
    let heated = about.operations(boil);
    let first = heated.first()?;
    let at: Vec<usize> = heated.iter().map(|operation| operation.step).collect();
    let estimate = estimate(about, contents).map_or(String::new(), |(before, now)| {
        format!(
            " If all of it went in cold: about {} instead of {} on the strongest burner.",
            now.words(),
            before.words()
        )
    });
    let text = format!(
        "Coming to the boil ({}): on the same burner it takes {} as long.{estimate}",
        steps(&at),
        about.times()
    );
    Some(Warning::at(
        WarningKind::Heating,
        vec![first.step].into_iter().chain(at).collect(),
        text,
        "heating",
    ))
}

/// Time for the batch as written and as wanted: m c ΔT / P, all of it taken as water (specific heat 4.18 kJ/(kg·K), which
/// no food exceeds, so the time is an upper one), from the tap's temperature to 100 °C.
fn estimate(about: &About<'_>, contents: &Contents) -> Option<(Duration, Duration)> {
    const KILOJOULES_PER_KG_K: f64 = 4.18;
    let burner = about.kitchen.burners.first()?;
    let watts = burner.power.watts() * burner.efficiency.mid;
    let rise_k = 100.0 - about.kitchen.tap.celsius();
    let known = contents.litres > 0.0 && contents.unweighed.is_empty() && watts > 0.0 && rise_k > 0.0;
    known.then(|| {
        let seconds = contents.litres * KILOJOULES_PER_KG_K * 1000.0 * rise_k / watts;
        (
            Duration::from_seconds(seconds / about.factor()),
            Duration::from_seconds(seconds),
        )
    })
}

/// More in the oven.
pub(super) fn oven(about: &About<'_>) -> Option<Warning> {
    let in_oven = about.operations(|operation| {
        let baked = matches!(operation.verb, Verb::Bake | Verb::Roast) || in_oven(operation);
        baked && operation.minutes.is_some()
    });
    if in_oven.is_empty() {
        return None;
    }
    let at: Vec<usize> = in_oven.iter().map(|operation| operation.step).collect();
    let text = if about.bigger() {
        let one = short(libm::pow(about.factor(), 2.0 / 3.0));
        format!(
            "The oven ({}): more pieces of the same size need the time given and what the oven loses to a fuller \
             load; one piece {} as heavy needs about {one} times as long.",
            steps(&at),
            about.times()
        )
    } else {
        let one = percent(libm::pow(about.factor(), 2.0 / 3.0));
        format!(
            "The oven ({}): pieces of the same size need the time given; one smaller piece about {one} of it.",
            steps(&at)
        )
    };
    Some(Warning::at(WarningKind::Oven, at, text, "oven"))
}

/// A bigger pot cools more slowly.
pub(super) fn cooling(about: &About<'_>) -> Option<Warning> {
    let cooled = about.operations(|operation| {
        matches!(operation.verb, Verb::Cool | Verb::Chill | Verb::Freeze) && !vessel(operation).contains("rack")
    });
    if cooled.is_empty() || !about.has_a_pot() || !about.bigger() {
        return None;
    }
    let at: Vec<usize> = cooled.iter().map(|operation| operation.step).collect();
    let text = format!(
        "Cooling ({}): in one pot of the same shape it takes about {} times as long, which matters for safety. Divide \
         it into vessels no deeper than the tested one.",
        steps(&at),
        short(libm::cbrt(about.factor()))
    );
    Some(Warning::at(WarningKind::Cooling, at, text, "cooling"))
}

/// All other times are those of pieces, which do not grow.
pub(super) fn times(about: &About<'_>) -> Option<Warning> {
    let timed = about.operations(|operation| operation.minutes.is_some());
    timed.first()?;
    let text = "Times stand as written. They hold for pieces of the same size once the pot is as hot as it was; all \
                that is named above takes longer or comes out otherwise.";
    Some(Warning::plain(WarningKind::Times, text.to_owned(), "pieces"))
}
