//! An amount given in both systems is one amount, said twice.

use potwright_manuscript::{Quantity, Span};
use potwright_measure::{Dimension, Unit};

use super::MeasuresWanted;
use super::food::Known;
use super::line::{Outcome, Setting, Task};
use super::phrase::Phrase;
use crate::splice::Splices;

/// An amount given twice, once in each system: '225 g / 8 oz', '8 oz (225 g)'.
pub(super) struct Double<'a> {
    pub(super) first: &'a Quantity,
    pub(super) second: &'a Quantity,
    /// From the first to the second, with the bracket that closes it.
    span: Span,
}

impl<'a> Double<'a> {
    /// Two amounts in page order that say the same in two systems, with nothing but marks between them.
    pub(super) fn of(setting: &Setting<'_>, first: &'a Quantity, second: &'a Quantity) -> Option<Double<'a>> {
        let kind = |quantity: &Quantity| {
            quantity
                .unit
                .map(Unit::dimension)
                .filter(|kind| *kind != Dimension::Piece)
        };
        let loose = |quantity: &Quantity| quantity.unit.is_some_and(|unit| unit.spread() > 1.0);
        if loose(first)
            || loose(second)
            || kind(first).is_none()
            || kind(second).is_none()
            || metric(first) == metric(second)
        {
            return None;
        }
        // 'about' before the first is said of both; the second may stand within the words of the first.
        let own = Phrase::find(setting.text, first.span, first.unit, &[second.span]).whole()?;
        let between = setting.text.get(own.end..second.span.start)?;
        if between.contains(char::is_alphanumeric) {
            return None;
        }
        let closing = between.chars().rev().find_map(|c| match c {
            '(' => Some(')'),
            '[' => Some(']'),
            _ => None,
        });
        let rest = setting.text.get(second.span.end..)?;
        let end = second.span.end + closing.filter(|c| rest.starts_with(*c)).map_or(0, char::len_utf8);
        Some(Double {
            first,
            second,
            span: Span::new(own.start, end),
        })
    }

    /// The half in the wanted system is kept and the other dropped; both are kept where both are wanted.
    pub(super) fn set(&self, setting: &Setting<'_>, known: &Known<'_>, splices: &mut Splices) -> Outcome {
        let first = match setting.wanted {
            MeasuresWanted::Metric => metric(self.first),
            MeasuresWanted::Us => !metric(self.first),
            MeasuresWanted::Both | MeasuresWanted::AsWritten => {
                let second = [self.second.span];
                let own = |quantity, others| Task {
                    wanted: MeasuresWanted::AsWritten,
                    ..Task::whole(setting, quantity, known, others)
                };
                let outcome = own(self.first, &second).set(setting, splices);
                own(self.second, &[]).set(setting, splices);
                return outcome;
            }
        };
        let kept = if first { self.first } else { self.second };
        let mut inner = Splices::default();
        let others: &[Span] = if first { &[self.second.span] } else { &[] };
        let outcome = Task::whole(setting, kept, known, others).set(setting, &mut inner);
        let place = Phrase::find(setting.text, kept.span, kept.unit, others)
            .whole()
            .unwrap_or(kept.span);
        splices.add(setting.text, self.span, inner.render(setting.text, place));
        outcome
    }
}

fn metric(quantity: &Quantity) -> bool {
    quantity.unit.is_some_and(Unit::is_metric)
}
