//! An official table in the layout of a book's own foods.

use std::fmt::Write as _;

use super::groups::{Groups, NOTHING};
use super::household::{said, words};
use super::{COLUMNS, Official, OfficialFood, balance};
use crate::{Kind, State};

/// Kinds whose official refuse is not what a cook throws away: of meat it is bone and separable fat of a cut that may
/// be bought boned and trimmed, or may go into the pot on the bone; of nuts and dried fruit shell and stone that the
/// shop has taken off.
pub const NO_OFFICIAL_REFUSE: [Kind; 5] = [Kind::Meat, Kind::Poultry, Kind::Bacon, Kind::Nut, Kind::DriedFruit];

/// The table as the text of a file that [`crate::own::read`] reads, its remarks in front; `from` says in a few words
/// what it was made from.
///
/// A row whose parts are off 100 g by more than one is balanced by its water, see [`balance()`], and its source says so.
#[must_use]
pub fn table(official: &Official, from: &str) -> String {
    let mut out = format!(
        "# {} foods of {from}, put here by `potwright larder import`. Figures per 100 g edible portion; an empty cell is\n\
         # not determined. Allergens are not known. Each food can be named on a page by its key or its whole name.\n",
        official.foods.len()
    );
    let figures: Vec<&str> = COLUMNS.iter().map(|(ours, _)| *ours).collect();
    let heading = format!(
        "key\tname\tkind\tstate\tanimal\thazard\tshop\t{}\trefuse_percent\tweights\tsource\n",
        figures.join("\t")
    );
    out.push_str(&heading);
    let groups = Groups::built_in().ok();
    for (key, food) in &official.foods {
        row(&mut out, key, food, groups.as_ref());
    }
    out
}

fn row(out: &mut String, key: &str, food: &OfficialFood, groups: Option<&Groups<'_>>) {
    let told = groups.map_or(NOTHING, |groups| groups.of(food));
    let animal = match told.animal {
        Some(true) => "yes",
        Some(false) => "no",
        None => "not known",
    };
    let mut figures = food.figures;
    let mut source = plain(&food.source);
    if let Some(added) = balance(&mut figures) {
        _ = write!(source, "; water {} g to make 100 g", signed(added));
    }
    let figures: Vec<String> = figures
        .iter()
        .map(|figure| figure.map(cell).unwrap_or_default())
        .collect();
    let refuse = food.refuse_percent.filter(|_| !NO_OFFICIAL_REFUSE.contains(&told.kind));
    _ = writeln!(
        out,
        "{key}\t{}\t{}\t{}\t{animal}\t{}\t{}\t{}\t{}\t{}\t{source}",
        plain(&food.description),
        told.kind_word,
        state_word(told.state),
        told.hazard,
        told.shop,
        figures.join("\t"),
        refuse.map(cell).unwrap_or_default(),
        weights(food),
    );
}

/// Whether any of a food's household weights is a kitchen measure.
#[must_use]
pub fn is_weighed(food: &OfficialFood) -> bool {
    !weights(food).is_empty()
}

/// Household weights in our units and cuts, one a unit and cut: `cup chopped=160; each large=150`.
fn weights(food: &OfficialFood) -> String {
    let own = words(food.description.split(',').next().unwrap_or(""));
    let own: Vec<String> = own.iter().map(|word| crate::words::singular(word)).collect();
    let mut seen = Vec::new();
    let mut cells = Vec::new();
    for weight in &food.weights {
        let Some(said) = said(&weight.text, &own).filter(|said| !seen.contains(said)) else {
            continue;
        };
        let grams = cell((weight.grams / weight.amount * 100.0).round() / 100.0);
        let gap = if said.cut.is_empty() { "" } else { " " };
        cells.push(format!("{}{gap}{}={grams}", said.unit, said.cut));
        seen.push(said);
    }
    cells.join("; ")
}

/// A name or source that may stand in a cell.
fn plain(text: &str) -> String {
    let text: String = text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect();
    text.trim().trim_start_matches('#').to_owned()
}

/// The word of a state in tables.
const fn state_word(state: State) -> &'static str {
    match state {
        State::Raw => "raw",
        State::Cooked => "cooked",
        State::Dried => "dried",
        State::Canned => "canned",
        State::Frozen => "frozen",
        State::Smoked => "smoked",
        State::Prepared => "prepared",
    }
}

/// At most four decimals, no trailing noughts.
#[must_use]
pub fn cell(value: f64) -> String {
    let text = format!("{value:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// With its sign, two decimals.
#[must_use]
pub fn signed(value: f64) -> String {
    if value < 0.0 {
        format!("−{:.2}", -value)
    } else {
        format!("+{value:.2}")
    }
}
