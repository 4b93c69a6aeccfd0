//! How much is wanted, against what the page makes.

use potwright_manuscript::{Quantity, Recipe};
use potwright_measure::{Amount, Exact, Unit, fractions};

use super::food::Known;
use super::line::{Setting, Task};
use super::phrase::Phrase;
use super::warn::{Warning, WarningKind};
use super::{BatchSize, MeasuresWanted};
use crate::splice::Splices;

/// The factor and where it is from.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Size {
    pub(super) factor: Exact,
    /// Servings as listed.
    pub(super) listed: Option<Amount>,
    /// Servings as wanted, when they were asked for.
    pub(super) wanted: Option<Exact>,
    /// Why the page stays at its own size although another was asked for.
    pub(super) refused: Option<&'static str>,
}

impl Size {
    pub(super) fn of(recipe: &Recipe, asked: BatchSize) -> Size {
        let yields = recipe.yields.as_ref();
        let listed = yields
            .filter(|yields| yields.servings().is_some())
            .and_then(|yields| yields.amount);
        let plain = Size {
            factor: Exact::ONE,
            listed,
            wanted: None,
            refused: None,
        };
        let refused = |why| Size {
            refused: Some(why),
            ..plain.clone()
        };
        match asked {
            BatchSize::AsWritten => plain,
            BatchSize::Times(factor) if factor.is_positive() => Size { factor, ..plain },
            BatchSize::ForServings(wanted) if wanted.is_positive() => match listed.map(middle) {
                Some(Some(middle)) if middle.is_positive() => match wanted.checked_div(middle) {
                    Some(factor) => Size {
                        factor,
                        wanted: Some(wanted),
                        ..plain
                    },
                    None => refused("the numbers are beyond counting"),
                },
                _ if yields.is_some() => {
                    refused("its yield line does not count people; ask for so many times the page instead")
                }
                _ => refused("it does not say for how many it is; ask for so many times the page instead"),
            },
            BatchSize::Times(_) | BatchSize::ForServings(_) => refused("the size asked for is not more than nought"),
        }
    }

    /// What stands under the title.
    pub(super) fn label(&self, measures: MeasuresWanted) -> String {
        let measures = match measures {
            MeasuresWanted::Metric => "in metric measures",
            MeasuresWanted::Us => "in US measures",
            MeasuresWanted::Both => "in both measures",
            MeasuresWanted::AsWritten => "in its own measures",
        };
        if self.factor == Exact::ONE {
            let same = self
                .refused
                .map_or(String::new(), |why| format!(" The size is the page's own: {why}."));
            return format!("The page {measures}, rounded to what a kitchen has.{same}");
        }
        let people = match (self.wanted, self.listed) {
            (Some(wanted), Some(listed)) if listed.is_single() => {
                format!(
                    "For {} instead of {}: every",
                    fractions::cook(wanted),
                    fractions::cook(listed.low)
                )
            }
            (Some(wanted), Some(listed)) => {
                let middle = middle(listed).map_or(String::new(), fractions::cook);
                format!(
                    "For {} instead of {listed}, taken as {middle}: every",
                    fractions::cook(wanted)
                )
            }
            _ => "Every".to_owned(),
        };
        format!(
            "{people} amount times {} by the trade's plain factor method, {measures}, rounded to what a kitchen has. \
             This method solves neither evaporation nor pots nor times: see the end of the page.",
            times(self.factor)
        )
    }

    pub(super) fn warning(&self) -> Option<Warning> {
        let why = self.refused?;
        Some(Warning::plain(
            WarningKind::Size,
            format!("The page stays at its own size: {why}."),
            "size",
        ))
    }

    /// The number of the yield line; what is not servings is measured like an amount.
    pub(super) fn set_yield(&self, setting: &Setting<'_>, recipe: &Recipe, splices: &mut Splices) {
        let Some(yields) = &recipe.yields else { return };
        let Some(amount) = yields.amount else { return };
        let unit = yields.unit.as_deref().and_then(Unit::from_spelling);
        if yields.servings().is_none() {
            let quantity = Quantity {
                amount,
                unit,
                span: yields.words.span,
            };
            Task::whole(setting, &quantity, &Known::liquid(), &[]).set(setting, splices);
            return;
        }
        if self.factor == Exact::ONE {
            return;
        }
        let Some(scaled) = amount.checked_scale(self.factor) else {
            return;
        };
        let now = match self.wanted {
            Some(wanted) => setting.fractions.number(wanted),
            None => {
                let whole = |number: Exact| {
                    Exact::nearest(number.to_f64(), 1)
                        .filter(|n| n.is_positive())
                        .unwrap_or(number)
                };
                let (low, high) = (whole(scaled.low), whole(scaled.high));
                let number = |n| setting.fractions.number(n);
                if low == high {
                    number(low)
                } else {
                    format!("{}–{}", number(low), number(high))
                }
            }
        };
        if let Some(place) = Phrase::find(setting.text, yields.words.span, None, &[]).number {
            splices.add(setting.text, place, now);
        }
    }
}

/// Half way between the ends, exactly.
fn middle(amount: Amount) -> Option<Exact> {
    amount.low.checked_add(amount.high)?.checked_div(Exact::whole(2))
}

/// A factor in a cook's numbers: `3½`, `6⅔`, `0.35`, else to two decimals.
pub(super) fn times(factor: Exact) -> String {
    if factor.denominator() <= 8 {
        fractions::cook(factor)
    } else {
        fractions::decimal(factor, 2)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_factor_is_wanted_over_listed() {
        let page = |first: &str| potwright_manuscript::read(&format!("Soup\n\n{first}\n\n1 leek\n\nChop the leek.\n"));
        let of = |first: &str, wanted: i64| Size::of(&page(first), BatchSize::ForServings(Exact::whole(wanted)));
        assert_eq!(of("Serves 6", 40).factor.to_string(), "20/3");
        assert_eq!(of("Serves 4 to 6", 40).factor.to_string(), "8");
        let refused = of("Makes about 2 litres", 40);
        assert_eq!(refused.factor, Exact::ONE);
        assert!(refused.label(MeasuresWanted::Metric).contains("so many times"));
        assert!(of("", 40).refused.is_some() && of("Serves 6", 0).refused.is_some());
        assert!(
            of("Serves 6", 40)
                .label(MeasuresWanted::Metric)
                .starts_with("For 40 instead of 6: every amount times 6⅔ ")
        );
    }
}
