//! Which dish the speaker turns to: announcements, headings, numbers, parts told on the way, and coming back.

use crate::token::Token;

use super::clause::Clause;
use super::food;
use super::gather::{Item, NEAR, Topic, Work};
use super::mention::Mention;
use super::topic::{self, Name};
use super::vessel;
use super::words::{self, Role};

/// An announcement is looked for in so many words from the start.
const OPENING: usize = 300;
/// After so many seconds of silence the speaker is done with a part (common practice, no source; 200 to 450 would do).
const PAUSE: f64 = 300.0;
/// No take has more dishes and parts: what comes after stays with the last.
const MOST: usize = 100;
/// A part is begun when an amount follows within so many words.
const PART_NEAR: usize = 24;
/// A dish that follows one called done is begun when an amount follows within so many words.
const NEXT_NEAR: usize = 6;

impl<'a> Work<'a, '_> {
    /// The dishes the speaker announces; the first is begun.
    pub(super) fn announce(&mut self) {
        let first_measured = self
            .mentions
            .iter()
            .find(|mention| mention.food.is_some() && mention.said.as_ref().is_some_and(|said| said.unit.is_some()));
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
    pub(super) fn turn(&mut self, clause: &Clause, after: Option<&Clause>) {
        if clause.fresh && self.pause(clause.from) > PAUSE {
            self.current = self.root(self.current);
        }
        // 'I did that this morning. It's a bunch of parsley': still told.
        let tells_on = self
            .tokens()
            .get(clause.from)
            .is_some_and(|t| t.is_any(&["it's", "that's", "it"]));
        if clause.opens && !tells_on && std::mem::take(&mut self.told_aside) {
            self.current = self.root(self.current);
        }
        self.closes(clause);
        if self.numbered(clause) {
            return;
        }
        let aside = self.asides.get(clause.from).copied().unwrap_or(false);
        let brought = topic::brought(self.tokens(), clause.from, clause.next, clause.opens).filter(|_| !aside);
        if brought.is_some_and(|brought| self.brought(&brought, clause, after)) {
            return;
        }
        if !aside && (clause.opens || after.is_some()) {
            self.part_begun(clause);
        }
        if clause.opens {
            self.owned(clause);
        }
    }

    /// 'Number two, leek soup', 'five's the squash', 'Eight. Apple crumble': the next of a row of dishes.
    pub(super) fn numbered(&mut self, clause: &Clause) -> bool {
        let tokens = self.tokens();
        let lead = |t: &Token| {
            words::is(&t.lower, Role::Turn)
                || words::is(&t.lower, Role::Filler)
                || t.is_any(&["number", "and", "then"])
                || t.sign() == Some(',')
        };
        let at = clause.from
            + tokens
                .get(clause.from..clause.next)
                .map_or(0, |words| words.iter().take_while(|t| lead(t)).count());
        let Some(token) = tokens.get(at) else {
            return false;
        };
        let number = potwright_measure::in_words::whole(&topic::plain(token));
        let is = token.lower.ends_with("'s");
        let after = tokens.get(at + 1);
        let parted = after.is_some_and(|t| matches!(t.sign(), Some('.' | ',' | ':')) || t.is("is"));
        // One or two of the row may have been begun without their number.
        let next = number.filter(|number| (self.counted + 1..self.counted + 4).contains(number));
        let Some(next) = next.filter(|_| is || parted) else {
            return false;
        };
        let Some(name) =
            topic::name(tokens, at + 1 + usize::from(parted)).filter(|name| name.food || name.dish || name.course)
        else {
            return false;
        };
        self.counted = next;
        match self.known(&name) {
            Some(known) => self.current = known,
            None => self.begin(&name),
        }
        true
    }

    /// Seconds between the stamp at this word and the one before it.
    pub(super) fn pause(&self, at: usize) -> f64 {
        let time = |at: usize| self.heard.times.get(at).copied().flatten();
        let before = at.checked_sub(1).and_then(time);
        time(at).zip(before).map_or(0.0, |(now, before)| now - before)
    }

    pub(super) fn brought(&mut self, brought: &topic::Brought, clause: &Clause, after: Option<&Clause>) -> bool {
        let name = &brought.name;
        // 'let that toast a minute' is work, not toast.
        let from = self
            .tokens()
            .get(name.from.saturating_sub(1)..name.next)
            .unwrap_or_default();
        let work = from.iter().any(|t| t.is_any(&["let", "that", "it"]));
        if name.part && !work && self.measured_soon(name.next) && !name.dish {
            self.begin_part(name);
            return true;
        }
        let turns = self
            .tokens()
            .get(clause.from)
            .is_some_and(|t| words::is(&t.lower, Role::Turn) || t.is("oh"));
        let opens = clause.opens || brought.begins || brought.heading || turns;
        if let Some(known) = self.known(name).filter(|_| opens) {
            // 'The tadka. For the dal.'
            let root = self.root(known);
            if let Some(part) = self.out.topics.get_mut(self.current)
                && part.part_of.is_some_and(|of| of != root)
                && part.items.is_empty()
                && brought.begins
            {
                part.part_of = Some(root);
                return true;
            }
            self.current = known;
            return true;
        }
        if self.known_here(name) {
            self.called_in_full(name);
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
        if dish || plain || self.follows(brought) {
            self.closed = None;
            self.begin(name);
            return true;
        }
        false
    }

    /// 'That is the soup': the dish at hand is done.
    fn closes(&mut self, clause: &Clause) {
        let tokens = self.tokens();
        let at = clause.from
            + usize::from(
                tokens
                    .get(clause.from)
                    .is_some_and(|t| t.is_any(&["and", "so", "right"])),
            );
        let word = |at: usize, words: &[&str]| tokens.get(at).is_some_and(|t| t.is_any(words));
        let from = if word(at, &["that's"]) {
            at + 1
        } else if word(at, &["that", "this"]) && word(at + 1, &["is"]) {
            at + 2
        } else {
            return;
        };
        if topic::name(tokens, from).is_some_and(|name| name.dish && name.article && self.known_here(&name)) {
            self.closed = Some(from);
        }
    }

    /// 'That is the soup … so for the chicken it's eight thighs': after a dish is done, a food with amounts begins the next.
    fn follows(&self, brought: &topic::Brought) -> bool {
        let name = &brought.name;
        let done = self.closed.is_some_and(|closed| name.from < closed + NEAR);
        let led = brought.begins || brought.heading && name.article;
        done && led
            && name.food
            && !name.part
            && !self.listed(name)
            && self.next_measured(name.next, NEXT_NEAR).is_some()
    }

    /// Whether 'do the' or 'make the' stands right before.
    pub(super) fn strong(&self, name: &Name) -> bool {
        let before = name.from.checked_sub(1).and_then(|at| self.tokens().get(at));
        before.is_some_and(|t| t.is_any(&["do", "doing", "is", "make", "making"]))
    }

    /// A dish of the take other than the current one that this name means.
    pub(super) fn known(&self, name: &Name) -> Option<usize> {
        let share = |topic: &Topic| {
            let own = topic.words.iter().filter(|word| name.words.contains(word)).count();
            own * 2 >= name.words.len().min(2) && own > 0
        };
        let root = self.root(self.current);
        let fits = |index: &usize| {
            let topic = self.out.topics.get(*index);
            // 'the dal water' is no way to call the dal.
            let meant = |topic: &Topic| !topic.earlier || topic.words.iter().all(|word| name.words.contains(word));
            topic.is_some_and(|topic| {
                share(topic) && meant(topic) && name.words.last().is_some_and(|last| topic.words.contains(last))
            })
        };
        let parts = (0..self.out.topics.len()).rev();
        let here = |index: &usize| self.root(*index) == root && self.out.topics.get(*index).is_some_and(share);
        if self.out.topics.get(self.current).is_some_and(share) || here(&root) && self.current == root {
            return None;
        }
        parts.filter(fits).max_by_key(|index| {
            let topic = self.out.topics.get(*index);
            topic.map_or(0, |topic| {
                topic.words.iter().filter(|word| name.words.contains(word)).count()
            })
        })
    }

    /// Whether the name means the dish at hand.
    pub(super) fn known_here(&self, name: &Name) -> bool {
        let root = self.root(self.current);
        [self.current, root].iter().any(|index| {
            self.out
                .topics
                .get(*index)
                .is_some_and(|topic| topic.words.iter().any(|word| name.words.contains(word)))
        })
    }

    /// Whether the name is that of a food which is in the dish at hand.
    pub(super) fn listed(&self, name: &Name) -> bool {
        let topic = self.out.topics.get(self.current);
        let last = name.words.last();
        topic.is_some_and(|topic| {
            topic
                .items
                .iter()
                .any(|item| Some(item.food.noun()) == last.map(String::as_str))
        })
    }

    /// A dish that holds nothing yet takes the fuller of two names.
    pub(super) fn called_in_full(&mut self, name: &Name) {
        if let Some(topic) = self.out.topics.get_mut(self.current)
            && topic.items.is_empty()
            && !topic.announced
            && name.dish
            && topic.words.len() < name.words.len()
        {
            (topic.title, topic.words) = (name.title.clone(), name.words.clone());
        }
    }

    pub(super) fn begin(&mut self, name: &Name) {
        // What was begun and holds nothing gives way.
        let empty = self
            .out
            .topics
            .first()
            .is_some_and(|topic| topic.title.is_empty() && topic.items.is_empty());
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
        if self.out.topics.len() >= MOST {
            return;
        }
        self.out.topics.push(fresh);
        self.current = self.out.topics.len() - 1;
    }

    pub(super) fn begin_part(&mut self, name: &Name) {
        let word = name.words.last();
        let called = self
            .out
            .topics
            .iter()
            .position(|topic| topic.part_of.is_none() && word.is_some_and(|word| topic.words.contains(word)));
        let root = called.unwrap_or_else(|| self.root(self.current));
        let same = self
            .out
            .topics
            .iter()
            .position(|topic| topic.part_of == Some(root) && topic.words == name.words);
        if let Some(same) = same {
            self.current = same;
            return;
        }
        if self.out.topics.len() >= MOST {
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
    pub(super) fn part_begun(&mut self, clause: &Clause) {
        for at in clause.from..clause.next {
            // 'let that toast a minute' is work.
            let before = at.checked_sub(1).and_then(|before| self.tokens().get(before));
            if before.is_some_and(|t| t.is_any(&["that", "it", "them", "to", "let"])) {
                continue;
            }
            // 'I taste the sauce': it is there.
            let the = usize::from(before.is_some_and(|t| t.is("the")));
            let worked = at.checked_sub(1 + the).and_then(|before| self.tokens().get(before));
            if worked.is_some_and(|t| t.is_one_of("taste tasted stir check skim")) {
                continue;
            }
            let made = self.made_earlier(at, clause);
            let Some(name) = topic::name(self.tokens(), at) else {
                continue;
            };
            let earlier = made || self.told_of(&name);
            if !(name.part && !name.dish || earlier) {
                continue;
            }
            let current = self.out.topics.get(self.current);
            let here = current.is_some_and(|topic| topic.part_of.is_some() && topic.words == name.words);
            if here || !self.measured_soon(name.next) {
                continue;
            }
            self.begin_part(&name);
            self.told_aside = earlier;
            if let Some(topic) = self.out.topics.get_mut(self.current) {
                topic.earlier |= earlier && topic.part_of.is_some();
            }
            return;
        }
        // 'it's just pickled shallots. so two banana shallots': named, then measured out.
        let at = clause.from;
        let is = self.tokens().get(at).is_some_and(|t| t.is_any(&["it's", "that's"]));
        let at = at + 1 + usize::from(self.tokens().get(at + 1).is_some_and(|t| t.is_any(&["just", "only"])));
        if let Some(name) =
            topic::name(self.tokens(), at).filter(|name| is && name.food && !name.article && name.words.len() > 1)
        {
            let measured = self
                .next_measured(name.next, 8)
                .and_then(|mention| mention.food.as_ref());
            if measured.is_some_and(|food| Some(food.noun()) == name.words.last().map(String::as_str)) {
                self.begin_part(&name);
            }
        }
    }

    /// 'I made the stock earlier'.
    pub(super) fn made_earlier(&self, at: usize, clause: &Clause) -> bool {
        let before = at.checked_sub(1).and_then(|before| self.tokens().get(before));
        before.is_some_and(|t| t.is("made"))
            && (at..clause.next + 4).any(|at| words::at(self.tokens(), at, Role::Earlier).is_some())
    }

    /// 'A green sauce goes with it, I did that this morning': a thing made before, told of after its name.
    fn told_of(&self, name: &Name) -> bool {
        const WORDS: usize = 12;
        let tokens = self.tokens();
        let word = |at: usize, words: &[&str]| tokens.get(at).is_some_and(|t| t.is_any(words));
        let share = name
            .from
            .checked_sub(1)
            .is_some_and(|before| word(before, &["of", "the"]));
        let thing = name.article && (name.part || name.dish) && !share && !self.known_here(name);
        let did = |at: usize| {
            let by = word(at, &["i", "we"]) && word(at + 1, &["did", "made"]) && word(at + 2, &["that", "it", "this"]);
            by && (at + 3..at + 6).any(|at| words::at(tokens, at, Role::Earlier).is_some())
        };
        thing && (name.next..name.next + WORDS).any(did)
    }

    pub(super) fn next_measured(&self, at: usize, within: usize) -> Option<&'a Mention> {
        let from = self.mentions.partition_point(|mention| mention.from < at);
        let near = self
            .mentions
            .get(from..)?
            .iter()
            .take_while(|mention| mention.from <= at + within);
        near.into_iter().find(|mention| {
            mention
                .said
                .as_ref()
                .is_some_and(|said| said.unit.is_some() || !said.article)
                && mention.food.is_some()
        })
    }

    pub(super) fn measured_soon(&self, at: usize) -> bool {
        self.next_measured(at, PART_NEAR).is_some()
    }

    /// Comes back to the dish whose food or vessel a sentence opens with.
    pub(super) fn owned(&mut self, clause: &Clause) {
        let tokens = self.tokens();
        if tokens
            .get(clause.from)
            .is_some_and(|t| t.is_any(&["before", "if", "when", "after", "while", "because", "until"]))
        {
            return;
        }
        let mut settled = false;
        for at in clause.from..clause.from + 12 {
            let measured = super::numbers::amount(tokens, at)
                .is_some_and(|number| super::mention::unit(tokens, number.next).is_some());
            if measured || at > clause.from && tokens.get(at).is_none_or(|t| matches!(t.sign(), Some('.' | '?' | '!')))
            {
                return;
            }
            if !tokens.get(at).is_some_and(|t| t.is_one_of("the these my those this")) {
                continue;
            }
            let vessel = vessel::at(tokens, at);
            // 'that serves six with the flatbreads' is not about them.
            let feeds = tokens
                .get(clause.from..at)
                .is_some_and(|before| before.iter().any(|t| t.is_any(&["serves", "feeds", "does"])));
            if feeds && vessel.is_none() {
                continue;
            }
            let words: Vec<String> = match &vessel {
                Some(vessel) => vec![vessel.name.clone()],
                None => named(tokens, at),
            };
            let Some(word) = words.last() else { continue };
            if vessel.is_none() && (settled || at > clause.from + 6) {
                continue;
            }
            let owns = |topic: &Topic| {
                let food = |item: &Item| item.food.noun() == word && !common(word);
                match &vessel {
                    Some(_) => topic.vessels.contains(word),
                    None if topic
                        .vessels
                        .iter()
                        .any(|name| name.split(' ').count() > 1 && name.split(' ').next() == Some(word)) =>
                    {
                        true
                    }
                    None => {
                        let called = topic.words.contains(word) && !topic.earlier;
                        topic.items.iter().any(food) || called || topic.made.contains(word)
                    }
                }
            };
            let root = self.root(self.current);
            let here = (0..self.out.topics.len())
                .any(|index| self.root(index) == root && self.out.topics.get(index).is_some_and(owns));
            if here {
                let main =
                    self.out.topics.get(root).is_some_and(owns) && !self.out.topics.get(self.current).is_some_and(owns);
                if main && clause.fresh {
                    self.current = root;
                }
                settled = true;
                continue;
            }
            let owners: Vec<usize> = (0..self.out.topics.len())
                .filter(|index| self.out.topics.get(*index).is_some_and(owns))
                .collect();
            if let [one] = owners.as_slice() {
                self.current = *one;
                return;
            }
        }
    }
}

/// Foods that many dishes have say nothing of which one is meant.
fn common(word: &str) -> bool {
    words::is(word, Role::Season) || matches!(word, "water" | "sugar" | "flour" | "salt")
}

/// The words of the name or food at this article, or the word after it.
fn named(tokens: &[Token], at: usize) -> Vec<String> {
    let food = || food::food(tokens, at, food::How::Bare, false).map(|food| food.words);
    // 'the bay leaf'; 'the stalks' alone are those of any food.
    let food = || food().filter(|words| words.len() > 1);
    let name = topic::name(tokens, at).map(|name| name.words);
    name.or_else(food).unwrap_or_else(|| next_word(tokens, at + 1))
}

/// The word here, alone.
fn next_word(tokens: &[Token], at: usize) -> Vec<String> {
    tokens
        .get(at)
        .filter(|t| t.is_word())
        .map(topic::plain)
        .into_iter()
        .collect()
}
