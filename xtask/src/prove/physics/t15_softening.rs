//! Table 15: softening with time and temperature, cooking times of pulses.

use potwright_larder::{Behaviour, Hints, Larder};
use potwright_pot::physics::softening::time_multiple;
use potwright_pot::physics::water;

use super::check::{CLOSED_FORM, Check, Judged};
use super::held;
use super::row::Row;

/// 15a: rate constants at 90 and 95 °C from that at 100 °C and the activation energy. Only their ratios are the
/// engine's: its times come from cooks.
pub(super) fn kinetics(row: &Row) -> Judged {
    let Some((rate, energy)) = row.number("k_100C_per_min").zip(row.number("Ea_kJ_mol")) else {
        return held([]);
    };
    let at = |temp_c| rate / time_multiple(temp_c, energy);
    held([
        Check::column(row, "k_90C_per_min", at(90.0), CLOSED_FORM),
        Check::column(row, "k_95C_per_min", at(95.0), CLOSED_FORM),
    ])
}

/// 15b: how many times as long it takes at a temperature as at 100 °C.
pub(super) fn equivalence(row: &Row) -> Judged {
    let ours = row.number("T_C").zip(row.number("Ea_kJ_mol"));
    let ours = ours.map(|(temp_c, energy)| time_multiple(temp_c, energy));
    held([ours.and_then(|ours| Check::column(row, "time_multiple_of_100C", ours, CLOSED_FORM))])
}

/// 15c: of these the engine computes the boil alone.
pub(super) fn temperatures(row: &Row) -> Judged {
    match row.id() {
        "boil" => held([Check::column(row, "value", water::boiling_c(101.325), CLOSED_FORM)]),
        _ => Judged::LeftOut("collagen, proteins, pectin and firmness by mechanism: not computed"),
    }
}

/// The larder's name for a pulse of the table; none for those it has no own time for.
fn pulse(name: &str) -> Option<&'static str> {
    let names = [
        ("black beans", "dried black beans"),
        ("black-eyed peas", "black-eyed peas"),
        ("cranberry beans", "dried borlotti beans"),
        ("chickpeas", "dried chickpeas"),
        ("great northern", "dried cannellini beans"),
        ("red kidney", "dried kidney beans"),
        ("lentils brown", "brown lentils"),
        ("lentils red split", "red lentils"),
        ("lima baby", "dried baby lima beans"),
        ("split peas", "split peas"),
        ("pinto", "dried pinto beans"),
        ("navy", "dried haricot beans"),
    ];
    let named = names.iter().find(|(theirs, _)| name.starts_with(theirs));
    named.map(|(_, ours)| *ours)
}

fn behaviour(name: &str) -> Option<&'static Behaviour> {
    let larder = Larder::built_in();
    let found = larder.find(name, &Hints::default()).best?;
    larder.get(found).map(|food| &food.behaviour)
}

/// 15d: the minutes the engine softens a pulse in at a simmer, within those that growers print.
pub(super) fn pulses(row: &Row) -> Judged {
    let printed = row.text("simmer_min_after_soak");
    let Some(name) = pulse(row.text("pulse")) else {
        return Judged::LeftOut("yields by the cup, soaking, a pulse that the larder has no own time for");
    };
    let Some(softens) = behaviour(name).and_then(|behaviour| behaviour.softens) else {
        return Judged::LeftOut("yields by the cup, soaking, a pulse that the larder has no own time for");
    };
    let (low, high) = printed.split_once('-').unwrap_or((printed, printed));
    let (Ok(low), Ok(high)) = (low.parse(), high.parse()) else {
        return held([]);
    };
    // Two pages print two ranges for one lentil: both count.
    let also = row
        .text("note")
        .split_once("page ")
        .and_then(|(_, range)| range.trim_end_matches(')').split_once('-'));
    let high = also
        .and_then(|(_, end)| end.parse::<f64>().ok())
        .map_or(high, |end| end.max(high));
    let minutes = softens.minutes_at_simmer.mid;
    held([Some(Check::between(
        "minutes of simmering",
        minutes,
        printed,
        low,
        high,
    ))])
}
