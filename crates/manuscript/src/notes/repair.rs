//! Amounts without a food, and what is taken back: 'garlic, four cloves', 'two, no, three cups', 'I've not got raisins'.

use potwright_measure::{Exact, Unit};

use crate::lexicon::Class;

use super::food::Food;
use super::gather::{NEAR, OpenShare, Work, kind, repairs};
use super::mention::{Mention, Said};

impl Work<'_, '_> {
    /// 'the juice, some of it': how much of the food spoken of last was left open.
    pub(super) fn some_of_it(&mut self, mention: &Mention) {
        let Some((topic, _, food, next)) = self.last.clone() else {
            return;
        };
        if mention.from <= next + 2 {
            self.out.open.push(OpenShare {
                topic,
                name: food.name,
                from: next.saturating_sub(2),
                next: mention.next,
            });
        }
    }

    /// An amount without a food: it belongs to the food spoken of last.
    pub(super) fn dangling(&mut self, index: usize, mention: &Mention, said: &Said) {
        let tokens = self.tokens();
        if self.begun_wrong(index, mention, said) {
            return;
        }
        let Some((topic, place, food, next)) = self.last.clone().filter(|_| !mention.part) else {
            return;
        };
        if self.unit_is_the_food(mention, said, &food) || self.measures_something_else(mention, said) {
            return;
        }
        let counted = said.unit.is_none();
        if counted && self.number_again(mention, said, topic, place) {
            return;
        }
        let of_one = tokens.get(mention.next).is_some_and(|t| t.is("of"))
            && tokens.get(mention.next + 1).is_some_and(|t| t.is("one"));
        let single = counted && (said.article || mention.from > next + 3 || said.amount.low > Exact::whole(12));
        if single || topic != self.current || mention.from > next + NEAR {
            return;
        }
        let Some(place) = place else {
            let liquid = crate::lexicon::class(food.noun()).is(Class::LIQUID);
            let close =
                counted && mention.from <= next + 1 && said.amount.low > Exact::ONE && !food.definite && !liquid;
            if (!counted || of_one || close) && !self.is_made(&food) {
                let mut at_food = mention.clone();
                at_food.vague = None;
                self.enter(&at_food, &food, Some(said.clone()));
            }
            return;
        };
        self.amount_of(topic, place, mention, said);
    }

    /// 'two cubes' after stock, 'six cloves' without garlic: the unit names the food.
    fn unit_is_the_food(&mut self, mention: &Mention, said: &Said, food: &Food) -> bool {
        let (name, words) = match said.unit {
            Some(Unit::Cube) if matches!(food.noun(), "stock" | "water") => ("stock cubes", vec!["stock", "cube"]),
            Some(Unit::Clove) if food.noun() != "garlic" => ("cloves", vec!["clove"]),
            _ => return false,
        };
        let named = Food {
            name: name.into(),
            words: words.into_iter().map(str::to_owned).collect(),
            definite: false,
            ..food.clone()
        };
        let unit = said.unit.filter(|unit| *unit == Unit::Cube);
        let said = Said { unit, ..said.clone() };
        self.measured(mention, &named, &said);
        true
    }

    /// 'for one and a half cups I put …', 'a litre left', 'keep a spoonful', 'push a spoon through': no amount of the food spoken of.
    fn measures_something_else(&self, mention: &Mention, said: &Said) -> bool {
        let tokens = self.tokens();
        let before = mention.from.checked_sub(1).and_then(|at| tokens.get(at));
        let tool = said.article
            && mention
                .next
                .checked_sub(1)
                .and_then(|at| tokens.get(at))
                .is_some_and(|t| t.is("spoon"));
        matches!(said.unit, Some(Unit::Bit | Unit::Piece))
            || tool
            || before.is_some_and(|t| t.is_one_of("for serves feeds keep keeping save reserve"))
            || tokens.get(mention.next).is_some_and(|t| t.is_any(&["left", "over"]))
    }

    /// An amount for an item that is in: its first, its right one, the same in another measure, or more of it.
    fn amount_of(&mut self, topic: usize, place: usize, mention: &Mention, said: &Said) {
        let tokens = self.tokens();
        let counted = said.unit.is_none();
        let Some(item) = self
            .out
            .topics
            .get_mut(topic)
            .and_then(|topic| topic.items.get_mut(place))
        else {
            return;
        };
        let before = mention.from.checked_sub(1).and_then(|at| tokens.get(at));
        let set_right = before.is_some_and(|t| t.is_any(&["so", "say", "it's", "well"]));
        let only_one = item
            .said
            .as_ref()
            .is_some_and(|old| old.article && old.unit == said.unit && !said.article);
        let repaired =
            repairs(tokens, item.last, mention.from) || mention.from <= item.last + 6 || set_right || only_one;
        // 'Four hundred gram tins': what one of them holds.
        let package = super::mention::unit(tokens, mention.next).map(|(unit, _)| unit);
        if package.is_some() && item.said.as_ref().is_some_and(|old| old.unit == package) {
            if let (Some(old), Some(unit)) = (&mut item.said, said.unit) {
                old.package.get_or_insert((said.amount, unit));
            }
            return;
        }
        match &item.said {
            None => item.said = Some(said.clone()),
            Some(_) if counted => return,
            Some(_) if mention.again => item.add(said),
            Some(old) if kind(old) == kind(said) && repaired => item.said = Some(said.clone()),
            Some(old) if kind(old) != kind(said) => {
                item.also.get_or_insert_with(|| said.clone());
            }
            Some(_) => return,
        }
        item.words.1 = mention.next;
        item.last = mention.next;
        if let Some((_, _, _, next)) = &mut self.last {
            *next = mention.next;
        }
    }

    /// 'fifty grams, no, sixty grams of butter': the first number belongs to no food.
    fn begun_wrong(&self, index: usize, mention: &Mention, said: &Said) -> bool {
        let next = self.mentions.get(index + 1).filter(|next| next.food.is_some());
        next.is_some_and(|next| {
            let alike = next
                .said
                .as_ref()
                .is_some_and(|next| next.unit.is_some() && kind(next) == kind(said));
            alike && next.from < mention.next + 8 && repairs(self.tokens(), mention.next, next.from)
        })
    }

    /// 'a hundred mils of oil, a hundred and twenty': another number for the unit that was said.
    pub(super) fn number_again(&mut self, mention: &Mention, said: &Said, topic: usize, place: Option<usize>) -> bool {
        const WORDS: usize = 24;
        let tokens = self.tokens();
        let before = mention.from.checked_sub(1).and_then(|at| tokens.get(at));
        let led = before
            .is_some_and(|t| t.sign() == Some(',') || t.is_any(&["say", "so", "no", "it", "well", "yes", "it's"]));
        let of = tokens.get(mention.next).is_some_and(|t| t.is("of"));
        let alone = tokens
            .get(mention.next)
            .is_none_or(|t| t.sign().is_some() || t.is_any(&["after", "because", "yes", "no"]));
        let led = led && alone;
        let item = place.and_then(|place| self.out.topics.get_mut(topic)?.items.get_mut(place));
        let Some(item) = item.filter(|item| led && !of && !said.article && mention.from < item.last + WORDS) else {
            return false;
        };
        let Some(old) = item.said.as_mut().filter(|old| old.unit.is_some()) else {
            return false;
        };
        let ratio = said.amount.low.to_f64() / old.amount.low.to_f64().max(0.001);
        if !(0.4..=2.5).contains(&ratio) {
            return false;
        }
        old.amount = said.amount;
        item.last = mention.next;
        true
    }

    /// 'I've not got raisins': what was said to go in does not.
    pub(super) fn not_had(&mut self, mention: &Mention) -> bool {
        let tokens = self.tokens();
        let before = tokens
            .get(mention.from.saturating_sub(2)..mention.from)
            .unwrap_or_default();
        let [first, second] = before else { return false };
        let none = second.is("got") && first.is_any(&["not", "haven't", "never"])
            || second.is("no") && first.is("got")
            || second.is("of") && first.is("out");
        let Some(place) = mention.food.as_ref().filter(|_| none).and_then(|food| self.find(food)) else {
            return false;
        };
        let topic = self.out.topics.get_mut(self.current);
        if let Some(topic) = topic.filter(|topic| {
            topic.items.len() == place + 1 && topic.items.last().is_some_and(|item| item.last + NEAR > mention.from)
        }) {
            let from = topic.items.pop().map_or(0, |item| item.at);
            let current = self.current;
            for (_, touch) in self.out.touches.range_mut(from..) {
                if touch.topic == current && touch.item == Some(place) {
                    touch.item = None;
                }
            }
            self.last = None;
        }
        true
    }

    /// 'cider vinegar no red wine vinegar sorry': the last item is the other food.
    pub(super) fn food_repaired(&mut self, mention: &Mention) -> bool {
        let tokens = self.tokens();
        let no = mention
            .from
            .checked_sub(1)
            .and_then(|at| tokens.get(at))
            .is_some_and(|t| t.is("no"));
        let (Some(food), Some((topic, Some(place), _, next)), true) = (&mention.food, self.last.clone(), no) else {
            return false;
        };
        if mention.from > next + 3 || mention.said.is_some() && mention.food.is_none() {
            return false;
        }
        let Some(item) = self
            .out
            .topics
            .get_mut(topic)
            .and_then(|topic| topic.items.get_mut(place))
        else {
            return false;
        };
        // 'butter, no salt': two foods, one of them left out.
        let kin = item.food.noun() == food.noun()
            || repairs(tokens, mention.next, mention.next + 3)
            || mention.said.is_some();
        if !kin {
            return false;
        }
        item.food = food.clone();
        if let Some(said) = &mention.said {
            item.said = Some(said.clone());
        }
        item.last = mention.next;
        self.last = Some((topic, Some(place), food.clone(), mention.next));
        true
    }
}
