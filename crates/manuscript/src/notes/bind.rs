//! Mentions bound to the foods of the dish at hand: what goes in, what is in already, what is only spoken of.

use potwright_measure::{Amount, Exact, Unit};

use crate::speech::Speech;

use super::food::Food;
use super::gather::{Item, NEAR, Touch, Work, kind, repairs};
use super::mention::{Mention, Said};
use super::words::{self, Role};

impl Work<'_, '_> {
    pub(super) fn mention(&mut self, index: usize, mention: &Mention) {
        let aside = self.asides.get(mention.from).copied().unwrap_or(false);
        let sized = self
            .sized
            .iter()
            .rev()
            .take(4)
            .any(|(from, next)| *from < mention.next && mention.from < *next);
        if sized {
            return;
        }
        if self.not_had(mention) || self.is_reason(mention) {
            self.out.aside.push((mention.from, mention.next));
            return;
        }
        if aside || mention.negated || mention.likened || mention.each || mention.from < self.announced_to {
            // 'no red wine vinegar, sorry': another food in the place of the last.
            if mention.negated && self.food_repaired(mention) {
                return;
            }
            if mention.food.is_some() || mention.said.as_ref().is_some_and(|said| said.unit.is_some()) {
                self.out.aside.push((mention.from, mention.next));
            }
            return;
        }
        match (&mention.food, &mention.said) {
            (Some(food), Some(said)) => self.measured(mention, food, said),
            (Some(food), None) => self.unmeasured(index, mention, food),
            (None, Some(said)) => self.dangling(index, mention, said),
            (None, None) => self.some_of_it(mention),
        }
    }

    /// 'because of the olives': why, not what of.
    fn is_reason(&self, mention: &Mention) -> bool {
        let word = |back: usize| mention.from.checked_sub(back).and_then(|at| self.tokens().get(at));
        let of = self.tokens().get(mention.from).is_some_and(|t| t.is("of"));
        let because = |back: usize| word(back).is_some_and(|t| t.is("because"));
        of && because(1) || because(2) && word(1).is_some_and(|t| t.is("of"))
    }

    /// An amount and its food.
    pub(super) fn measured(&mut self, mention: &Mention, food: &Food, said: &Said) {
        if matches!(said.unit, Some(Unit::Gram | Unit::Millilitre)) {
            self.metric = said.unit;
        }
        // 'two hundred grams of flour and a hundred and fifty of butter'.
        let mut said = said.clone();
        if said.unit.is_none() && said.amount.low >= Exact::whole(super::mention::MANY) {
            let told = self.out.topics.get(self.current).is_some_and(|topic| {
                topic.items.iter().any(|item| {
                    item.said.as_ref().is_some_and(|old| old.amount.low == said.amount.low)
                        && item.last + NEAR > mention.from
                })
            });
            if told || self.metric.is_none() {
                self.out.aside.push((mention.from, mention.next));
                return;
            }
            said.unit = self.metric;
        }
        let said = &said;
        self.title_begun(food);
        let made = self.is_made(food);
        if let Some(place) = self.find(food).filter(|place| !self.beside(*place, mention, food)) {
            self.again(place, mention, food, said);
            return;
        }
        if made && let Some(topic) = self.out.topics.get_mut(self.current) {
            topic.made.push(food.noun().to_owned());
        }
        if mention.part || made {
            self.touch(mention, None, food, false);
            self.last = Some((self.current, None, food.clone(), mention.next));
            return;
        }
        // 'a hundred and fifty of wine' with a number that was said before: the same.
        if self.replaces_alternative(food, mention, said) {
            return;
        }
        if mention.of_one {
            let one = Said {
                amount: Amount::single(Exact::ONE),
                unit: None,
                package: None,
                manner: None,
                article: true,
            };
            self.enter(mention, food, Some(one));
            let item = self
                .out
                .topics
                .get_mut(self.current)
                .and_then(|topic| topic.items.last_mut());
            if let Some(item) = item {
                item.also = Some(said.clone());
            }
            return;
        }
        self.enter(mention, food, Some(said.clone()));
    }

    /// A measured food that is the title of a dish not begun yet begins it.
    pub(super) fn title_begun(&mut self, food: &Food) {
        let root = self.root(self.current);
        let noun = food.noun();
        let begins = self.out.topics.iter().position(|topic| {
            let all = topic.words.iter().all(|word| food.words.contains(word));
            topic.announced && topic.items.is_empty() && all && topic.words.last().is_some_and(|word| word == noun)
        });
        if let Some(begins) = begins.filter(|begins| *begins != root)
            && !self
                .out
                .topics
                .get(root)
                .is_some_and(|topic| topic.words.iter().any(|word| word == noun))
        {
            self.current = begins;
        }
    }

    /// Whether a food came about in the pot: 'the fat', or the broth of a dish that water went into.
    pub(super) fn is_made(&self, food: &Food) -> bool {
        let noun = food.noun();
        let off = food.definite && food.words.len() == 1 && crate::speech::speech(noun).is(Speech::MADE);
        let topic = self.out.topics.get(self.root(self.current));
        let water = topic.is_some_and(|topic| topic.items.iter().any(|item| item.food.noun() == "water"));
        let broth = matches!(noun, "broth" | "stock") && water && !self.made_elsewhere();
        off || broth
    }

    pub(super) fn made_elsewhere(&self) -> bool {
        let root = self.root(self.current);
        self.out.topics.iter().enumerate().any(|(index, topic)| {
            index != root
                && topic
                    .words
                    .iter()
                    .any(|word| matches!(word.as_str(), "stock" | "broth"))
                && !topic.items.is_empty()
        })
    }

    /// The item of the topic at hand that this food is.
    pub(super) fn find(&self, food: &Food) -> Option<usize> {
        let topic = self.out.topics.get(self.current)?;
        topic.items.iter().rposition(|item| item.food.same(food))
    }

    /// Whether a food goes in beside one of the same noun: 'three cups of water', then 'a cup of hot water'.
    pub(super) fn beside(&self, place: usize, mention: &Mention, food: &Food) -> bool {
        let item = self
            .out
            .topics
            .get(self.current)
            .and_then(|topic| topic.items.get(place));
        item.is_some_and(|item| {
            let other = item.food.words != food.words && food.words.len() > 1 && food.noun() == "water";
            let repaired = mention.from < item.last + NEAR && repairs(self.tokens(), item.last, mention.from);
            other && item.said.is_some() && !food.definite && !repaired
        })
    }

    /// More words on a food that is in: filled in, said again, repaired, added to, or a share of it.
    pub(super) fn again(&mut self, place: usize, mention: &Mention, food: &Food, said: &Said) {
        let tokens = self.tokens();
        let Some(item) = self
            .out
            .topics
            .get_mut(self.current)
            .and_then(|topic| topic.items.get_mut(place))
        else {
            return;
        };
        let repaired = mention.from < item.last + NEAR && repairs(tokens, item.last, mention.from);
        let same = |old: &Said| old.amount.low == said.amount.low && (old.unit == said.unit || said.unit.is_none());
        let mut enters = false;
        if mention.of_one {
            item.also.get_or_insert_with(|| said.clone());
        } else if mention.again {
            item.add(said);
            enters = true;
        } else if item.said.is_none() {
            item.said = Some(said.clone());
            item.words.1 = mention.next;
            enters = mention.from > item.last + NEAR;
        } else if item.said.iter().chain(&item.also).chain(&item.more).any(same) {
            // Said again.
        } else if repaired {
            item.said = Some(said.clone());
            if item.food.noun() == food.noun() && item.food.words.len() <= food.words.len() {
                item.food.name.clone_from(&food.name);
            }
            item.words = (mention.from, mention.next);
        } else if item.said.as_ref().is_some_and(|old| kind(old) != kind(said)) && !food.definite && !said.article {
            item.also.get_or_insert_with(|| said.clone());
        } else if mention.part || food.definite || said.article && said.unit.is_none() {
            // A share of what is in.
        } else {
            item.add(said);
            enters = true;
        }
        if item.food.words.len() < food.words.len() && food.heard.is_none() && said.unit.is_some() {
            item.food.name.clone_from(&food.name);
            item.food.words.clone_from(&food.words);
        }
        if item.vague.is_none() && mention.vague.is_some() {
            item.vague.clone_from(&mention.vague);
        }
        item.last = mention.next;
        self.touch(mention, Some(place), food, enters);
        self.last = Some((self.current, Some(place), food.clone(), mention.next));
    }

    /// 'a neck bone or a ham hock, I have a ham hock': the one that is had.
    pub(super) fn replaces_alternative(&mut self, food: &Food, mention: &Mention, said: &Said) -> bool {
        let Some(topic) = self.out.topics.get_mut(self.current) else {
            return false;
        };
        let open = topic
            .items
            .iter_mut()
            .find(|item| item.or.as_ref().is_some_and(|or| or.same(food)) && item.last + 12 > mention.from);
        let Some(item) = open else {
            return false;
        };
        item.food = food.clone();
        item.said = Some(said.clone());
        item.or = None;
        item.last = mention.next;
        true
    }

    pub(super) fn enter(&mut self, mention: &Mention, food: &Food, said: Option<Said>) {
        let tokens = self.tokens();
        // 'a neck bone or a ham hock': the second is another way.
        let or_before = mention
            .from
            .checked_sub(1)
            .and_then(|at| tokens.get(at))
            .is_some_and(|t| t.is("or"));
        if let Some((topic, Some(item), _, next)) = self.last.clone().filter(|_| or_before)
            && next + 1 == mention.from
            && let Some(item) = self
                .out
                .topics
                .get_mut(topic)
                .and_then(|topic| topic.items.get_mut(item))
        {
            item.or = Some(food.clone());
            item.last = mention.next;
            return;
        }
        let current = self.current;
        let Some(topic) = self.out.topics.get_mut(current) else {
            return;
        };
        topic.items.push(Item {
            food: food.clone(),
            said,
            vague: mention.vague.clone(),
            also: None,
            more: Vec::new(),
            more_vague: None,
            or: None,
            at: mention.from,
            last: mention.next,
            words: (mention.from, mention.next),
        });
        let place = topic.items.len() - 1;
        self.touch(mention, Some(place), food, true);
        self.last = Some((current, Some(place), food.clone(), mention.next));
    }

    /// A food without an amount: one that is in already, one that goes in by habit, or one that is only spoken of.
    pub(super) fn unmeasured(&mut self, index: usize, mention: &Mention, food: &Food) {
        if let Some(place) = self.find(food) {
            if let Some(item) = self
                .out
                .topics
                .get_mut(self.current)
                .and_then(|topic| topic.items.get_mut(place))
            {
                if item.said.is_none() && item.vague.is_none() {
                    item.vague.clone_from(&mention.vague);
                }
                let more = mention
                    .vague
                    .as_deref()
                    .is_some_and(|vague| vague.split(' ').any(|word| words::is(word, Role::Again)));
                if item.said.is_some() && more {
                    item.more_vague = Some((mention.from, mention.next));
                }
                item.last = item.last.max(mention.next);
            }
            self.touch(mention, Some(place), food, false);
            self.last = Some((self.current, Some(place), food.clone(), mention.next));
            return;
        }
        let goes_in = mention.vague.is_some() || self.goes_in(index, mention, food);
        if goes_in && !self.is_made(food) && !self.is_title(food) {
            self.enter(mention, food, None);
            return;
        }
        self.touch(mention, None, food, false);
        self.last = Some((self.current, None, food.clone(), mention.next));
    }

    pub(super) fn is_title(&self, food: &Food) -> bool {
        let root = self.root(self.current);
        let earlier = |topic: &super::gather::Topic| {
            topic.earlier && topic.part_of == Some(root) && topic.words.iter().all(|word| food.words.contains(word))
        };
        let titles = [self.current, root];
        self.out.topics.iter().any(earlier)
            || titles.iter().any(|index| {
                self.out
                    .topics
                    .get(*index)
                    .is_some_and(|topic| topic.words.iter().any(|word| word == food.noun()))
            })
    }

    /// Whether a food that is named without an amount goes in: by habit, or because the words say so.
    pub(super) fn goes_in(&self, index: usize, mention: &Mention, food: &Food) -> bool {
        let tokens = self.tokens();
        let word = |at: usize| tokens.get(at).map_or("", |t| t.lower.as_str());
        let before = mention.from.checked_sub(1).map_or("", word);
        let stop = |at: usize| tokens.get(at).is_none_or(|t| t.sign().is_some());
        let seasoning = food.words.iter().any(|word| words::is(word, Role::Season));
        if matches!(word(mention.next), "size" | "sized") {
            return false;
        }
        let sized = (mention.next..mention.next + 5).any(|at| matches!(word(at), "size" | "sized"));
        if sized && !food.definite {
            return true;
        }
        let measured_next = self.mentions.get(index + 1).is_some_and(|next| {
            let measures = |said: &Said| said.unit.is_some_and(|unit| !matches!(unit, Unit::Bit | Unit::Piece));
            next.food.is_none() && next.said.as_ref().is_some_and(measures) && next.from < mention.next + 5
        });
        if measured_next {
            return true;
        }
        let opens = mention.from == 0
            || matches!(
                before,
                "and" | "then" | "with" | "add" | "of" | "," | "." | "in" | "needs" | "wants" | "want"
            )
            || stop(mention.from.wrapping_sub(1));
        let ends = stop(mention.next)
            || matches!(
                word(mention.next),
                "and"
                    | "a"
                    | "on"
                    | "over"
                    | "to"
                    | "at"
                    | "after"
                    | "with"
                    | "chopped"
                    | "grated"
                    | "then"
                    | "because"
                    | "if"
                    | "some"
            );
        let listed = self.last.as_ref().is_some_and(|(topic, item, _, next)| {
            *topic == self.current && item.is_some() && mention.from <= next + 1 && mention.from > *next
        });
        let in_list = listed
            && (before == "," || before == "and")
            && (stop(mention.next) || word(mention.next) == "and")
            && !words::is(food.noun(), Role::Dish);
        let in_a_row = seasoning && opens && ends && !food.definite;
        let goes = matches!(word(mention.next), "goes" | "go")
            && matches!(word(mention.next + 1), "in" | "on" | "over")
            || word(mention.next) == "with"
                && word(mention.next + 1) == "it"
                && !matches!(before, "do" | "have" | "serve" | "eat");
        in_a_row || (goes || in_list) && !food.definite
    }

    pub(super) fn touch(&mut self, mention: &Mention, item: Option<usize>, food: &Food, enters: bool) {
        self.out.touches.insert(
            mention.from,
            Touch {
                topic: self.current,
                item,
                name: food.name.clone(),
                enters,
            },
        );
    }
}
