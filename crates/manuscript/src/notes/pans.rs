//! The vessels of a dish and the sizes said of them.

use super::clause::Clause;
use super::gather::{NEAR, Pan, Work};
use super::vessel;
use super::words::{self, Role};

/// So many vessels back are looked at.
const MOST: usize = 60;

impl Work<'_, '_> {
    /// Vessels of a clause and the sizes said of them.
    pub(super) fn vessels(&mut self, clause: &Clause) {
        let tokens = self.tokens();
        let mut at = clause.from;
        while at < clause.next {
            if let Some(vessel) = vessel::at(tokens, at) {
                at = vessel.next.max(at + 1);
                self.vessel(&vessel);
                continue;
            }
            if let Some((_, size, next)) = vessel::size(tokens, at) {
                if self.sizes(at, next) {
                    self.sized.push((at, next));
                    let noun = vessel::at(tokens, next).map(|vessel| vessel.noun);
                    self.size(&size, noun.as_deref(), at, next);
                }
                at = next;
                continue;
            }
            at += 1;
        }
    }

    pub(super) fn vessel(&mut self, vessel: &vessel::Vessel) {
        use crate::method::words::VesselKind;
        let cooks = matches!(vessel.kind, VesselKind::Cook);
        let known = self.out.vessels.iter().rev().take(MOST).find(|pan| {
            pan.topic == self.current
                && pan.noun == vessel.noun
                && (pan.name == vessel.name || vessel.definite && vessel.name == vessel.noun)
        });
        if known.is_some() || vessel.kind == VesselKind::Oven {
            return;
        }
        if let Some(topic) = self.out.topics.get_mut(self.current) {
            topic.vessels.push(vessel.name.clone());
        }
        let before = vessel.from.checked_sub(1).and_then(|at| self.tokens().get(at));
        let used = vessel.name.split(' ').any(|word| words::is(word, Role::VesselSize))
            || before.is_none_or(|t| {
                t.is_one_of("in into to on onto now then") || matches!(t.sign(), Some('.' | '?' | '!'))
            });
        self.out.vessels.push(Pan {
            used,
            topic: self.current,
            name: vessel.name.clone(),
            noun: vessel.noun.clone(),
            size: None,
            from: vessel.from,
            next: vessel.next,
            cooks,
        });
    }

    /// Whether these words size a vessel: 'the ten inch one', 'holds four litres', 'a six quart pot'.
    pub(super) fn sizes(&self, at: usize, next: usize) -> bool {
        let tokens = self.tokens();
        let after = tokens.get(next);
        let of = after.is_some_and(|t| t.is("of"));
        let near = tokens.get(at.saturating_sub(4)..at).unwrap_or_default();
        let holds = near
            .iter()
            .any(|t| t.is_any(&["holds", "one's", "pot's", "pan's", "takes"]));
        let the = near.last().is_some_and(|t| t.is("the"));
        let one = after.is_some_and(|t| t.is("one")) || vessel::at(tokens, next).is_some();
        let food_behind = super::food::food(tokens, next, super::food::How::Bare, false).is_some();
        let named = self
            .out
            .vessels
            .last()
            .is_some_and(|pan| pan.topic == self.current && pan.next <= at && at < pan.next + 9);
        let stop = after.is_none_or(|t| t.sign().is_some());
        let pan_end = self.out.vessels.last().map_or(0, |pan| pan.next);
        let from = self.mentions.partition_point(|mention| mention.from < pan_end);
        let near = self.mentions.get(from..).unwrap_or_default().iter();
        let mut near = near.take_while(|mention| mention.from < at);
        let between = named && near.any(|mention| mention.food.is_some());
        !of && (holds || the || one || named && stop && !food_behind && !between)
    }

    /// A size belongs to the vessel named last, or to the one it stands before.
    pub(super) fn size(&mut self, size: &str, noun: Option<&str>, at: usize, next: usize) {
        let current = self.current;
        let fits = |pan: &&mut Pan| {
            pan.topic == current && pan.from + NEAR > at && pan.cooks && noun.is_none_or(|noun| noun == pan.noun)
        };
        if let Some(pan) = self.out.vessels.iter_mut().rev().take(MOST).find(fits) {
            pan.size.get_or_insert_with(|| size.to_owned());
            return;
        }
        self.out.vessels.push(Pan {
            topic: current,
            name: noun.unwrap_or("pot").to_owned(),
            noun: noun.unwrap_or("pot").to_owned(),
            size: Some(size.to_owned()),
            from: at,
            next,
            cooks: true,
            used: true,
        });
    }
}
