//! What a label prints: rounding of US and EU law.

mod eu;
mod us;

pub use eu::{EuEnergy, EuRow, eu_energy, eu_text};
pub use us::{DailyValue, UsRow, us_daily_value, us_text};

/// The nearest step, half way up, as FDA's label guide rounds (NLEA inspection guide, Attachment 6).
pub(crate) fn nearest(value: f64, step: f64) -> f64 {
    // The small part keeps 0.15 ÷ 0.1, which binary numbers put just below 1.5, on the side a reader expects.
    (value / step + 0.5 + 1e-9).floor() * step
}

/// A number without needless noughts: `4.5`, `150`.
pub(crate) fn plain(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    if !text.contains('.') {
        return text;
    }
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
