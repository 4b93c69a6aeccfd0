//! Which dish every stretch of a take is about, and what went into each: mentions bound to foods, repairs settled.

use std::collections::BTreeMap;

use potwright_measure::{Exact, Unit};

use crate::speech::Speech;
use crate::token::Token;

use super::clause::Clause;
use super::food::Food;
use super::mention::{Mention, Said};
use super::topic::{self, Name};
use super::transcript::Heard;
use super::vessel;
use super::words::{self, Role};

/// Something that goes into a dish.
#[derive(Clone, Debug)]
pub(super) struct Item {
    pub(super) food: Food,
    pub(super) said: Option<Said>,
    pub(super) vague: Option<String>,
    /// The same amount in another measure.
    pub(super) also: Option<Said>,
    /// More of it, later on.
    pub(super) more: Vec<Said>,
    /// 'a neck bone or a ham hock'.
    pub(super) or: Option<Food>,
    /// Index of the word with which it goes in, and of the one after its last mention.
    pub(super) at: usize,
    pub(super) last: usize,
    /// Words from its first mention to the end of its amount, for queries.
    pub(super) words: (usize, usize),
}

/// A dish of the take, or a part of one.
#[derive(Clone, Debug, Default)]
pub(super) struct Topic {
    pub(super) title: String,
    pub(super) words: Vec<String>,
    /// The dish it is a part of.
    pub(super) part_of: Option<usize>,
    pub(super) announced: bool,
    pub(super) items: Vec<Item>,
    pub(super) vessels: Vec<String>,
    /// Foods that were made here and are not bought: the stock that was strained.
    pub(super) made: Vec<String>,
}

/// A food that is spoken of: which topic and item, or a food of no list.
#[derive(Clone, Debug)]
pub(super) struct Touch {
    pub(super) topic: usize,
    pub(super) item: Option<usize>,
    pub(super) name: String,
    /// It goes in here for the first time, or more of it does.
    pub(super) enters: bool,
    /// 'half of the', 'the rest of the'.
    pub(super) share: Option<String>,
}

/// What was gathered.
#[derive(Debug, Default)]
pub(super) struct Gathered {
    pub(super) topics: Vec<Topic>,
    /// For every word the topic it belongs to.
    pub(super) owner: Vec<usize>,
    /// Foods spoken of, by the index of the word.
    pub(super) touches: BTreeMap<usize, Touch>,
    /// Mentions that were set aside, as word ranges.
    pub(super) aside: Vec<(usize, usize)>,
    /// Vessels and their sizes: topic, name, size, word index.
    pub(super) vessels: Vec<Pan>,
}

/// A vessel of a dish.
#[derive(Clone, Debug)]
pub(super) struct Pan {
    pub(super) topic: usize,
    pub(super) name: String,
    pub(super) noun: String,
    pub(super) size: Option<String>,
    pub(super) from: usize,
    pub(super) next: usize,
    pub(super) cooks: bool,
}

/// A food may be repaired, and an amount may find its food, within so many words.
const NEAR: usize = 40;
/// An announcement is looked for in so many words from the start.
const OPENING: usize = 300;
/// A part is begun when an amount follows within so many words.
const PART_NEAR: usize = 24;

/// Gathers a take.
pub(super) fn gather(heard: &Heard, clauses: &[Clause], asides: &[bool], mentions: &[Mention]) -> Gathered {
    let mut work = Work::new(heard, asides, mentions);
    work.announce();
    let mut at = 0;
    for (index, clause) in clauses.iter().enumerate() {
        if clause.from >= work.announced_to {
            work.turn(clause, clauses.get(index + 1));
        }
        let end = clause.next;
        if let Some(owner) = work.out.owner.get_mut(clause.from..end) {
            owner.fill(work.current);
        }
        work.vessels(clause);
        while let Some(mention) = mentions.get(at).filter(|mention| mention.from < end) {
            work.mention(at, mention);
            at += 1;
        }
    }
    work.out
}

struct Work<'a, 't> {
    heard: &'a Heard<'t>,
    asides: &'a [bool],
    mentions: &'a [Mention],
    out: Gathered,
    current: usize,
    announced_to: usize,
    /// The food last spoken of: topic, item if any, the food, index after it.
    last: Option<(usize, Option<usize>, Food, usize)>,
    /// Words that size a vessel and measure no food.
    sized: Vec<(usize, usize)>,
}

impl<'a, 't> Work<'a, 't> {
    fn new(heard: &'a Heard<'t>, asides: &'a [bool], mentions: &'a [Mention]) -> Self {
        let out = Gathered {
            topics: vec![Topic::default()],
            owner: vec![0; heard.tokens.len()],
            ..Gathered::default()
        };
        Work {
            heard,
            asides,
            mentions,
            out,
            current: 0,
            announced_to: 0,
            last: None,
            sized: Vec::new(),
        }
    }

    fn tokens(&self) -> &'a [Token<'t>] {
        &self.heard.tokens
    }

    /// The dishes the speaker announces; the first is begun.
    fn announce(&mut self) {
        let first_measured = self.mentions.iter().find(|mention| {
            mention.food.is_some() && mention.said.as_ref().is_some_and(|said| said.unit.is_some())
        });
        let end = first_measured.map_or(OPENING, |mention| mention.from.min(OPENING));
        let (names, next) = topic::announced(self.tokens(), end);
        self.announced_to = next;
        if names.is_empty() {
            return;
        }
        self.out.topics.clear();
        for name in names {
            self.out.topics.push(Topic {
                title: name.title,
                words: name.words,
                announced: true,
                ..Topic::default()
            });
        }
    }

    /// Turns to another dish or part where the clause says so.
    fn turn(&mut self, clause: &Clause, after: Option<&Clause>) {
        let aside = self.asides.get(clause.from).copied().unwrap_or(false);
        if let Some(brought) = topic::brought(self.tokens(), clause.from, clause.next).filter(|_| !aside) {
            if self.brought(&brought, clause, after) {
                return;
            }
        }
        if !aside && (clause.opens || after.is_some()) {
            self.part_begun(clause);
        }
        if clause.opens {
            self.owned(clause);
        }
    }

    fn brought(&mut self, brought: &topic::Brought, clause: &Clause, after: Option<&Clause>) -> bool {
        let name = &brought.name;
        if name.part && self.measured_soon(name.next) && !name.dish {
            self.begin_part(name);
            return true;
        }
        let opens = clause.opens || brought.begins || brought.heading;
        if let Some(known) = self.known(name).filter(|_| opens) {
            self.current = known;
            return true;
        }
        if self.known_here(name) {
            return false;
        }
        let course = name.course && brought.heading;
        if course {
            let following = after.and_then(|after| topic::name(self.tokens(), after.from));
            let following = following.filter(|following| following.food || following.dish);
            self.begin(following.as_ref().unwrap_or(name));
            return true;
        }
        let announced = self.out.topics.iter().any(|topic| topic.announced);
        let dish = name.dish && (brought.begins || brought.heading) && !self.listed(name);
        let plain = name.food && brought.begins && !announced && !name.dish && !self.listed(name) && self.strong(name);
        if dish || plain {
            self.begin(name);
            return true;
        }
        false
    }

    /// Whether 'do the' or 'make the' stands right before.
    fn strong(&self, name: &Name) -> bool {
        let before = name.from.checked_sub(1).and_then(|at| self.tokens().get(at));
        before.is_some_and(|t| t.is_any(&["do", "doing", "is", "make", "making"]))
    }

    /// A dish of the take other than the current one that this name means.
    fn known(&self, name: &Name) -> Option<usize> {
        let share = |topic: &Topic| {
            let own = topic.words.iter().filter(|word| name.words.contains(word)).count();
            own * 2 >= name.words.len().min(2) && own > 0
        };
        let root = self.root(self.current);
        let fits = |index: &usize| {
            let topic = self.out.topics.get(*index);
            topic.is_some_and(|topic| share(topic))
        };
        let parts = (0..self.out.topics.len()).rev();
        let here = |index: &usize| self.root(*index) == root && self.out.topics.get(*index).is_some_and(share);
        if self.out.topics.get(self.current).is_some_and(share) || here(&root) && self.current == root {
            return None;
        }
        parts.filter(fits).max_by_key(|index| {
            let topic = self.out.topics.get(*index);
            topic.map_or(0, |topic| topic.words.iter().filter(|word| name.words.contains(word)).count())
        })
    }

    /// Whether the name means the dish at hand.
    fn known_here(&self, name: &Name) -> bool {
        let root = self.root(self.current);
        [self.current, root].iter().any(|index| {
            self.out.topics.get(*index).is_some_and(|topic| topic.words.iter().any(|word| name.words.contains(word)))
        })
    }

    /// Whether the name is that of a food which is in the dish at hand.
    fn listed(&self, name: &Name) -> bool {
        let topic = self.out.topics.get(self.current);
        let last = name.words.last();
        topic.is_some_and(|topic| topic.items.iter().any(|item| Some(item.food.noun()) == last.map(String::as_str)))
    }

    fn root(&self, topic: usize) -> usize {
        self.out.topics.get(topic).and_then(|topic| topic.part_of).unwrap_or(topic)
    }

    fn begin(&mut self, name: &Name) {
        // What was begun and holds nothing gives way.
        let empty = self.out.topics.first().is_some_and(|topic| topic.title.is_empty() && topic.items.is_empty());
        let fresh = Topic {
            title: name.title.clone(),
            words: name.words.clone(),
            ..Topic::default()
        };
        if empty && let Some(first) = self.out.topics.first_mut() {
            *first = fresh;
            self.current = 0;
            return;
        }
        self.out.topics.push(fresh);
        self.current = self.out.topics.len() - 1;
    }

    fn begin_part(&mut self, name: &Name) {
        let root = self.root(self.current);
        let same = self.out.topics.iter().position(|topic| topic.part_of == Some(root) && topic.words == name.words);
        if let Some(same) = same {
            self.current = same;
            return;
        }
        self.out.topics.push(Topic {
            title: name.title.clone(),
            words: name.words.clone(),
            part_of: Some(root),
            ..Topic::default()
        });
        self.current = self.out.topics.len() - 1;
    }

    /// A part of a dish is named somewhere in the clause and measured out at once.
    fn part_begun(&mut self, clause: &Clause) {
        for at in clause.from..clause.next {
            let earlier = self.made_earlier(at, clause);
            let Some(name) = topic::name(self.tokens(), at).filter(|name| name.part && !name.dish || earlier) else {
                continue;
            };
            let current = self.out.topics.get(self.current);
            let here = current.is_some_and(|topic| topic.part_of.is_some() && topic.words == name.words);
            if here || !self.measured_soon(name.next) {
                continue;
            }
            self.begin_part(&name);
            return;
        }
        // 'it's just pickled shallots. so two banana shallots': named, then measured out.
        let at = clause.from;
        let is = self.tokens().get(at).is_some_and(|t| t.is_any(&["it's", "that's"]));
        let at = at + 1 + usize::from(self.tokens().get(at + 1).is_some_and(|t| t.is_any(&["just", "only"])));
        if let Some(name) = topic::name(self.tokens(), at).filter(|name| is && name.food && !name.article && name.words.len() > 1) {
            let measured = self.next_measured(name.next, 8).and_then(|mention| mention.food.as_ref());
            if measured.is_some_and(|food| Some(food.noun()) == name.words.last().map(String::as_str)) {
                self.begin_part(&name);
            }
        }
    }

    /// 'I made the stock earlier'.
    fn made_earlier(&self, at: usize, clause: &Clause) -> bool {
        let before = at.checked_sub(1).and_then(|before| self.tokens().get(before));
        before.is_some_and(|t| t.is("made"))
            && (at..clause.next + 4).any(|at| words::at(self.tokens(), at, Role::Earlier).is_some())
    }

    fn next_measured(&self, at: usize, within: usize) -> Option<&'a Mention> {
        let from = self.mentions.partition_point(|mention| mention.from < at);
        let near = self.mentions.get(from..)?.iter().take_while(|mention| mention.from <= at + within);
        near.into_iter().find(|mention| mention.said.as_ref().is_some_and(|said| said.unit.is_some() || !said.article) && mention.food.is_some())
    }

    fn measured_soon(&self, at: usize) -> bool {
        self.next_measured(at, PART_NEAR).is_some()
    }

    /// Comes back to the dish whose food or vessel a sentence opens with.
    fn owned(&mut self, clause: &Clause) {
        let tokens = self.tokens();
        let end = clause.next.min(clause.from + 7);
        for at in clause.from..end {
            if !tokens.get(at).is_some_and(|t| t.is_one_of("the these my those this")) {
                continue;
            }
            let vessel = vessel::at(tokens, at);
            let words: Vec<String> = match &vessel {
                Some(vessel) => vec![vessel.name.clone()],
                None => topic::name(tokens, at).map_or(Vec::new(), |name| name.words),
            };
            let Some(word) = words.last() else { continue };
            let owns = |topic: &Topic| {
                let food = |item: &Item| item.food.words.contains(word);
                match &vessel {
                    Some(_) => topic.vessels.contains(word),
                    None => topic.items.iter().any(food) || topic.words.contains(word) || topic.made.contains(word),
                }
            };
            let root = self.root(self.current);
            let here = (0..self.out.topics.len()).any(|index| self.root(index) == root && self.out.topics.get(index).is_some_and(owns));
            if here {
                let main = self.out.topics.get(root).is_some_and(owns) && !self.out.topics.get(self.current).is_some_and(owns);
                if main && clause.fresh {
                    self.current = root;
                }
                return;
            }
            let owners: Vec<usize> = (0..self.out.topics.len()).filter(|index| self.out.topics.get(*index).is_some_and(owns)).collect();
            if let [one] = owners.as_slice() {
                self.current = *one;
                return;
            }
        }
    }

    /// Vessels of a clause and the sizes said of them.
    fn vessels(&mut self, clause: &Clause) {
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

    fn vessel(&mut self, vessel: &vessel::Vessel) {
        use crate::method::words::VesselKind;
        let cooks = matches!(vessel.kind, VesselKind::Cook);
        let known = self.out.vessels.iter_mut().rev().find(|pan| pan.topic == self.current && pan.noun == vessel.noun && (pan.name == vessel.name || vessel.definite && vessel.name == vessel.noun));
        if known.is_some() || vessel.kind == VesselKind::Oven {
            return;
        }
        if let Some(topic) = self.out.topics.get_mut(self.current) {
            topic.vessels.push(vessel.name.clone());
        }
        self.out.vessels.push(Pan {
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
    fn sizes(&self, at: usize, next: usize) -> bool {
        let tokens = self.tokens();
        let after = tokens.get(next);
        let of = after.is_some_and(|t| t.is("of"));
        let near = tokens.get(at.saturating_sub(4)..at).unwrap_or_default();
        let holds = near.iter().any(|t| t.is_any(&["holds", "one's", "pot's", "pan's", "takes"]));
        let the = near.last().is_some_and(|t| t.is("the"));
        let one = after.is_some_and(|t| t.is("one")) || vessel::at(tokens, next).is_some();
        !of && (holds || the || one)
    }

    /// A size belongs to the vessel named last, or to the one it stands before.
    fn size(&mut self, size: &str, noun: Option<&str>, at: usize, next: usize) {
        let current = self.current;
        let fits = |pan: &&mut Pan| pan.topic == current && pan.from + NEAR > at && pan.cooks && noun.is_none_or(|noun| noun == pan.noun);
        if let Some(pan) = self.out.vessels.iter_mut().rev().find(fits) {
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
        });
    }

    fn mention(&mut self, index: usize, mention: &Mention) {
        let aside = self.asides.get(mention.from).copied().unwrap_or(false);
        let sized = self.sized.iter().rev().take(4).any(|(from, next)| *from < mention.next && mention.from < *next);
        if sized {
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
            (None, Some(said)) => self.dangling(mention, said),
            (None, None) => {}
        }
    }

    /// An amount and its food.
    fn measured(&mut self, mention: &Mention, food: &Food, said: &Said) {
        self.title_begun(food);
        let made = self.is_made(food);
        if let Some(place) = self.find(food) {
            self.again(place, mention, food, said);
            return;
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
        self.enter(mention, food, Some(said.clone()));
    }

    /// A measured food that is the title of a dish not begun yet begins it.
    fn title_begun(&mut self, food: &Food) {
        let root = self.root(self.current);
        let noun = food.noun();
        let begins = self.out.topics.iter().position(|topic| {
            topic.announced && topic.items.is_empty() && topic.words.last().is_some_and(|word| word == noun)
        });
        if let Some(begins) = begins.filter(|begins| *begins != root)
            && !self.out.topics.get(root).is_some_and(|topic| topic.words.iter().any(|word| word == noun))
        {
            self.current = begins;
        }
    }

    /// Whether a food came about in the pot: 'the fat', or the broth of a dish that water went into.
    fn is_made(&self, food: &Food) -> bool {
        let noun = food.noun();
        let off = food.definite && food.words.len() == 1 && crate::speech::speech(noun).is(Speech::MADE);
        let topic = self.out.topics.get(self.root(self.current));
        let water = topic.is_some_and(|topic| topic.items.iter().any(|item| item.food.noun() == "water"));
        let broth = matches!(noun, "broth" | "stock") && water && !self.made_elsewhere();
        off || broth
    }

    fn made_elsewhere(&self) -> bool {
        let root = self.root(self.current);
        self.out.topics.iter().enumerate().any(|(index, topic)| {
            index != root && topic.words.iter().any(|word| matches!(word.as_str(), "stock" | "broth")) && !topic.items.is_empty()
        })
    }

    /// The item of the topic at hand that this food is.
    fn find(&self, food: &Food) -> Option<usize> {
        let topic = self.out.topics.get(self.current)?;
        topic.items.iter().rposition(|item| item.food.same(food))
    }

    /// More words on a food that is in: filled in, said again, repaired, added to, or a share of it.
    fn again(&mut self, place: usize, mention: &Mention, food: &Food, said: &Said) {
        let tokens = self.tokens();
        let Some(item) = self.out.topics.get_mut(self.current).and_then(|topic| topic.items.get_mut(place)) else {
            return;
        };
        let repaired = mention.from < item.last + NEAR && repairs(tokens, item.last, mention.from);
        let same = |old: &Said| old.amount.low == said.amount.low && (old.unit == said.unit || said.unit.is_none());
        let mut enters = false;
        if mention.again {
            item.more.push(said.clone());
            enters = true;
        } else if item.said.is_none() {
            item.said = Some(said.clone());
            item.words.1 = mention.next;
            enters = mention.from > item.last + NEAR;
        } else if item.said.as_ref().is_some_and(same) || item.more.iter().any(same) {
            // Said again.
        } else if repaired {
            item.said = Some(said.clone());
            item.words = (mention.from, mention.next);
        } else if mention.part || food.definite || said.article && said.unit.is_none() {
            // A share of what is in.
        } else {
            item.more.push(said.clone());
            enters = true;
        }
        if item.food.words.len() < food.words.len() && food.heard.is_none() {
            item.food.name.clone_from(&food.name);
            item.food.words.clone_from(&food.words);
        }
        item.last = mention.next;
        self.touch(mention, Some(place), food, enters);
        self.last = Some((self.current, Some(place), food.clone(), mention.next));
    }

    /// 'a neck bone or a ham hock, I have a ham hock': the one that is had.
    fn replaces_alternative(&mut self, food: &Food, mention: &Mention, said: &Said) -> bool {
        let Some(topic) = self.out.topics.get_mut(self.current) else {
            return false;
        };
        let open = topic.items.iter_mut().find(|item| item.or.as_ref().is_some_and(|or| or.same(food)) && item.last + 12 > mention.from);
        let Some(item) = open else {
            return false;
        };
        item.food = food.clone();
        item.said = Some(said.clone());
        item.or = None;
        item.last = mention.next;
        true
    }

    fn enter(&mut self, mention: &Mention, food: &Food, said: Option<Said>) {
        let tokens = self.tokens();
        // 'a neck bone or a ham hock': the second is another way.
        let or_before = mention.from.checked_sub(1).and_then(|at| tokens.get(at)).is_some_and(|t| t.is("or"));
        if let Some((topic, Some(item), _, next)) = self.last.clone().filter(|_| or_before)
            && next + 1 == mention.from
            && let Some(item) = self.out.topics.get_mut(topic).and_then(|topic| topic.items.get_mut(item))
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
    fn unmeasured(&mut self, index: usize, mention: &Mention, food: &Food) {
        if let Some(place) = self.find(food) {
            if let Some(item) = self.out.topics.get_mut(self.current).and_then(|topic| topic.items.get_mut(place)) {
                if item.said.is_none() && item.vague.is_none() {
                    item.vague.clone_from(&mention.vague);
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

    fn is_title(&self, food: &Food) -> bool {
        let root = self.root(self.current);
        let titles = [self.current, root];
        titles.iter().any(|index| self.out.topics.get(*index).is_some_and(|topic| topic.words.iter().any(|word| word == food.noun())))
    }

    /// Whether a food that is named without an amount goes in: by habit, or because the words say so.
    fn goes_in(&self, index: usize, mention: &Mention, food: &Food) -> bool {
        let tokens = self.tokens();
        let word = |at: usize| tokens.get(at).map_or("", |t| t.lower.as_str());
        let before = mention.from.checked_sub(1).map_or("", word);
        let stop = |at: usize| tokens.get(at).is_none_or(|t| t.sign().is_some());
        let seasoning = words::is(food.noun(), Role::Season);
        let measured_next = self.mentions.get(index + 1).is_some_and(|next| {
            next.food.is_none() && next.said.as_ref().is_some_and(|said| said.unit.is_some()) && next.from < mention.next + 5
        });
        if measured_next {
            return true;
        }
        let opens = mention.from == 0 || matches!(before, "and" | "then" | "with" | "add" | "of" | "," | "." | "in" | "needs") || stop(mention.from.wrapping_sub(1));
        let ends = stop(mention.next) || matches!(word(mention.next), "and" | "a" | "on" | "over" | "to" | "at" | "after" | "with" | "chopped" | "grated" | "then" | "because");
        let in_a_row = seasoning && opens && ends && !food.definite;
        let goes = matches!(word(mention.next), "goes" | "go") && matches!(word(mention.next + 1), "in" | "on" | "over")
            || word(mention.next) == "with" && word(mention.next + 1) == "it";
        in_a_row || goes && !food.definite
    }

    /// An amount without a food: it belongs to the food spoken of last.
    fn dangling(&mut self, mention: &Mention, said: &Said) {
        let tokens = self.tokens();
        let Some((topic, place, food, next)) = self.last.clone().filter(|_| !mention.part) else {
            return;
        };
        if said.unit == Some(Unit::Cube) && matches!(food.noun(), "stock" | "water") {
            let mut cube = food;
            (cube.name, cube.words) = ("stock cubes".into(), vec!["stock".into(), "cube".into()]);
            self.measured(mention, &cube, said);
            return;
        }
        let counted = said.unit.is_none();
        let single = counted && (said.article || mention.from > next + 3 || said.amount.low > Exact::whole(12));
        if single || topic != self.current || mention.from > next + NEAR {
            return;
        }
        let Some(place) = place else {
            if !counted && !self.is_made(&food) {
                let mut at_food = mention.clone();
                at_food.vague = None;
                self.enter(&at_food, &food, Some(said.clone()));
            }
            return;
        };
        let Some(item) = self.out.topics.get_mut(topic).and_then(|topic| topic.items.get_mut(place)) else {
            return;
        };
        let repaired = repairs(tokens, item.last, mention.from) || mention.from <= item.last + 6;
        match &item.said {
            None => item.said = Some(said.clone()),
            Some(_) if counted => return,
            Some(_) if mention.again => item.more.push(said.clone()),
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

    /// 'cider vinegar no red wine vinegar sorry': the last item is the other food.
    fn food_repaired(&mut self, mention: &Mention) -> bool {
        let tokens = self.tokens();
        let no = mention.from.checked_sub(1).and_then(|at| tokens.get(at)).is_some_and(|t| t.is("no"));
        let (Some(food), Some((topic, Some(place), _, next)), true) = (&mention.food, self.last.clone(), no) else {
            return false;
        };
        if mention.from > next + 3 || mention.said.is_some() && mention.food.is_none() {
            return false;
        }
        let Some(item) = self.out.topics.get_mut(topic).and_then(|topic| topic.items.get_mut(place)) else {
            return false;
        };
        // 'butter, no salt': two foods, one of them left out.
        let kin = item.food.noun() == food.noun() || repairs(tokens, mention.next, mention.next + 3) || mention.said.is_some();
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

    fn touch(&mut self, mention: &Mention, item: Option<usize>, food: &Food, enters: bool) {
        let share = words::at(self.tokens(), mention.from.saturating_sub(2), Role::Use).map(|_| String::from("some of"));
        self.out.touches.insert(
            mention.from,
            Touch {
                topic: self.current,
                item,
                name: food.name.clone(),
                enters,
                share,
            },
        );
    }
}

/// The kind of measure: volume, mass or pieces.
fn kind(said: &Said) -> Option<potwright_measure::Dimension> {
    said.unit.map(Unit::dimension)
}

/// Whether something between these words takes back what was said.
fn repairs(tokens: &[Token], from: usize, next: usize) -> bool {
    (from..next.min(from + NEAR)).any(|at| words::at(tokens, at, Role::Repair).is_some())
}
