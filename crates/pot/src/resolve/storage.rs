//! How warm a food is when it goes in.

use potwright_larder::{Kind, State};
use potwright_measure::Temperature;

use super::amount::kind_name;
use super::table;
use super::words::longest;
use crate::Kitchen;

/// The temperature of a food of this kind and state, by the words of its line first, then by where it stands.
pub(super) fn temperature(kind: Kind, state: State, words: &str, kitchen: &Kitchen) -> Temperature {
    if let Some(celsius) = longest(&table::WARM_WORDS, words).and_then(|row| row.number("celsius")) {
        return Temperature::from_celsius(celsius);
    }
    let (kind, state) = (kind_name(kind), format!("{state:?}").to_lowercase());
    let fits = |cell: &str, value: &str| cell.is_empty() || cell == value;
    let place = |exact: bool| {
        table::STORAGE
            .rows()
            .filter(|row| !exact || !row.text("state").is_empty())
            .find(|row| fits(row.text("kind"), &kind) && fits(row.text("state"), &state))
            .map(|row| row.text("where"))
    };
    match place(true).or_else(|| place(false)) {
        Some("refrigerator") => kitchen.refrigerator,
        Some("freezer") => kitchen.freezer,
        Some("tap") => kitchen.tap,
        _ => kitchen.room,
    }
}
