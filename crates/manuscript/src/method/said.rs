//! What a clause says: foods and vessels with the part they play, time, heat, lid, cue, how often.

use super::clauses::Clause;
use super::degrees;
use super::nouns;
pub(super) use super::parts::{Role, Said, Timed};
use super::phrases::{self, Found};
use super::vessels;
use super::words::{self, Inflection};
use crate::Minutes;
use crate::lexicon::{Class, class, singular};
use crate::speech::{Speech, speech};
use crate::token::{Gap, Token};

/// Reads what stands before the verb, its object and what follows it.
pub(super) struct Reader<'t> {
    pub(super) text: &'t str,
    pub(super) tokens: &'t [Token<'t>],
    /// The verb goes on for a time, so that a bare number after 'for' counts minutes.
    pub(super) lasts: bool,
    /// The verb puts things somewhere, so that 'in', 'on' and 'over' right after it belong to it.
    pub(super) puts: bool,
}

/// Where the reading of a stretch stands.
struct At {
    index: usize,
    role: Role,
    /// The role that a comma leads back to.
    after: Role,
    /// The role is that of a phrase which has its noun already.
    filled: bool,
    /// 'stirring with a spoon': what follows is by the way, up to the next sign.
    aside: bool,
    /// What fills the role is a food, so that a list goes on in it.
    food: bool,
    apart: bool,
    /// Inside brackets, or between dashes that hold a remark.
    brackets: bool,
}

/// What was done with a token.
#[derive(PartialEq, Eq)]
enum Taken {
    No,
    /// It joins or ends something and says nothing itself.
    Passed,
    Said,
}

impl Reader<'_> {
    /// What the clause says after its verb, and before it where words stand between 'let' and the verb.
    pub(super) fn said(&self, clause: &Clause) -> Said {
        let mut said = Said {
            end: clause.at,
            ..Said::default()
        };
        let ahead = self.tokens.get(clause.from..clause.at).unwrap_or_default();
        said.gentle = ahead.iter().any(|token| is_gentle(&token.lower));
        self.read_into(&mut said, clause.object, Role::Object);
        let start = if clause.lead == super::clauses::Lead::Done {
            Role::Aside
        } else {
            Role::Object
        };
        self.read_into(&mut said, clause.body, start);
        said
    }

    /// What a stretch without a verb says.
    pub(super) fn stretch(&self, range: (usize, usize)) -> Said {
        let mut said = Said {
            end: range.0,
            ..Said::default()
        };
        self.read_into(&mut said, range, Role::Object);
        said
    }

    pub(super) fn word(&self, index: usize) -> &str {
        self.tokens.get(index).map_or("", |token| token.lower.as_str())
    }

    fn read_into(&self, said: &mut Said, (from, to): (usize, usize), role: Role) {
        let mut at = At {
            index: from,
            role,
            after: if role == Role::Aside { Role::Rest } else { Role::Object },
            filled: false,
            aside: false,
            food: false,
            apart: false,
            brackets: false,
        };
        while at.index < to {
            let before = at.index;
            let mut taken = self.phrase(said, &mut at, to);
            if taken == Taken::No {
                taken = self.sign(&mut at, to);
            }
            if taken == Taken::No {
                taken = self.small(said, &mut at, to);
            }
            if taken == Taken::No {
                taken = self.noun(said, &mut at, to);
            }
            if at.index <= before {
                at.index = before + 1;
            }
            if !at.brackets {
                let words = self.tokens.get(before..at.index.min(to)).unwrap_or_default();
                said.words.extend(words.iter().map(|token| token.lower.to_string()));
            }
            if taken == Taken::Said {
                said.end = said.end.max(at.index.min(to) - 1);
            }
        }
    }

    /// Times, temperatures, heats, lids, repeats and cues.
    fn phrase(&self, said: &mut Said, at: &mut At, to: usize) -> Taken {
        let tokens = self.tokens.get(..to).unwrap_or_default();
        let from = at.index;
        if let Some(Found { value, next }) = phrases::minutes(tokens, from) {
            let then = from > 0 && self.word(from - 1) == "then";
            said.times.push(Timed {
                minutes: value,
                apart: at.apart || at.brackets,
                then,
            });
            return moved(at, next);
        }
        if let Some(Found { value, next }) = self.shorthand(tokens, from) {
            said.times.push(Timed {
                minutes: value,
                apart: at.apart,
                then: false,
            });
            return moved(at, next);
        }
        if let Some(Found { value, next }) = degrees::temperature(tokens, from) {
            // A second temperature says the first again, in another scale or for a fan.
            if degrees::is_inside(tokens, from, next) {
                said.core.get_or_insert(value.0);
            } else {
                said.temperature.add(value);
            }
            return moved(at, next);
        }
        if let Some(found) = self.cue(tokens, from) {
            said.core = said.core.or_else(|| degrees::core_in(tokens, from, found.next));
            said.cue.get_or_insert(found.value);
            return moved(at, found.next);
        }
        if let Some(Found { value, next }) = phrases::repeat(self.text, tokens, from) {
            said.repeat.get_or_insert(value);
            return moved(at, next);
        }
        if let Some(Found { value, next }) = phrases::cover(tokens, from) {
            said.covers.push(value);
            return moved(at, next);
        }
        if let Some(Found { value, next }) = phrases::heat(tokens, from) {
            // 'on low or on high': the first.
            let other = from > 0 && self.word(from - 1) == "or" && said.heat.is_some();
            if !other {
                said.heat = Some(value);
            }
            return moved(at, next);
        }
        Taken::No
    }

    /// 'simmer 10': a bare number right behind a verb of cooking counts minutes.
    fn shorthand(&self, tokens: &[Token], from: usize) -> Option<Found<Minutes>> {
        let before = from.checked_sub(1)?;
        let verb = words::verb(self.word(before)).filter(|(_, form)| *form == Inflection::Base);
        let row = verb.and_then(|(base, _)| words::entry(base)?.rows.last());
        let cooks = row.is_some_and(|row| lasts(row.meaning)) || (self.lasts && self.word(before) == "for");
        let counted = crate::number::amount(tokens, from).filter(|counted| cooks && !counted.article)?;
        let ends = self
            .tokens
            .get(counted.next)
            .is_none_or(|t| t.sign().is_some() || t.is("then"));
        let span = phrases::span(tokens, from, counted.next);
        let value = Minutes {
            low: counted.amount.low.to_f64(),
            high: counted.amount.high.to_f64(),
            span,
            from_end: false,
        };
        (ends && value.low >= 1.0).then_some(Found {
            value,
            next: counted.next,
        })
    }

    fn sign(&self, at: &mut At, to: usize) -> Taken {
        let Some(sign) = self.tokens.get(at.index).and_then(Token::sign) else {
            return Taken::No;
        };
        let spaced = self.tokens.get(at.index).is_some_and(|token| token.gap != Gap::None);
        let dash = matches!(sign, '–' | '—' | '-') && spaced;
        if dash && (at.brackets || self.remark_follows(at.index, to)) {
            at.brackets = !at.brackets;
        }
        at.brackets |= sign == ':' && self.remark_follows(at.index, to);
        match sign {
            '(' => at.brackets = true,
            ')' => at.brackets = false,
            ',' | ':' | '–' | '—' => {
                (at.apart, at.aside) = (true, false);
                let list =
                    at.food && matches!(at.role, Role::With | Role::In | Role::Over | Role::Discard | Role::Keep);
                let done = at.after == Role::Rest && !list;
                if (at.filled || done) && at.role != Role::Object && !list {
                    (at.role, at.filled, at.food) = (at.after, false, false);
                }
            }
            _ => {}
        }
        at.index += 1;
        if sign == ')' { Taken::Said } else { Taken::Passed }
    }

    /// Whether a sentence of its own follows the dash, up to the next one.
    fn remark_follows(&self, dash: usize, to: usize) -> bool {
        let rest = self.tokens.get(dash + 1..to).unwrap_or_default();
        let remark = rest
            .iter()
            .take_while(|token| !token.is_dash() || token.gap == Gap::None);
        remark
            .take(20)
            .any(|token| token.speech.is(Speech::FINITE.or(Speech::PERSON).or(Speech::NEVER)))
    }

    /// Prepositions, and words that turn to something by the way.
    fn small(&self, said: &mut Said, at: &mut At, to: usize) -> Taken {
        let word = self.word(at.index).to_owned();
        said.gentle |= is_gentle(&word);
        said.heat_object |= matches!(word.as_str(), "heat" | "flame" | "gas" | "fire") && at.role == Role::Object;
        said.optional |= word == "if" && !at.aside;
        if nouns::is_adjectival(self.tokens, at.index) {
            return Taken::No;
        }
        // 'about 2 litres of water' is an amount.
        let about = matches!(
            word.as_str(),
            "about" | "around" | "abt" | "approximately" | "approx" | "over" | "under"
        );
        if about
            && crate::number::number(self.tokens, at.index + 1).is_some_and(|(_, next)| next < to)
            && !self.follows_verb(at.index)
        {
            at.index += 1;
            return Taken::Passed;
        }
        // 'a piece of butter the size of a walnut'.
        if let Some(next) = crate::likened::likened(self.tokens, at.index).filter(|next| *next <= to) {
            at.index = next;
            return Taken::Passed;
        }
        if let Some((taken, length)) = self.particle(at.index) {
            at.index += length;
            return taken;
        }
        let Some(role) = self.role_of(&word, at) else {
            return self.joiner(at, to);
        };
        // 'stir in the flour', 'pour over the stock': right after the verb, the preposition belongs to it.
        let open = at.role == Role::Object
            && !at.filled
            && !at.apart
            && !said.foods.iter().any(|(role, _)| *role == Role::Object);
        let off = word == "off" || (self.puts && matches!(word.as_str(), "in" | "on" | "over" | "through" | "round"));
        let vessel = vessels::vessel(self.tokens, at.index + 1, to).is_some();
        let own = open && off && self.follows_verb(at.index) && !vessel && at.index + 1 < to;
        at.aside |= role == Role::Aside && (speech(&word).is(Speech::MANNER) || word == "to" || self.is_manner(at));
        at.index += 1;
        let leads = matches!(role, Role::With | Role::In | Role::Over | Role::To);
        if !own {
            (at.role, at.filled, at.food) = (if at.aside && leads { Role::Aside } else { role }, false, false);
        }
        let silent = speech(&word).is(Speech::CLAUSE.or(Speech::FINITE).or(Speech::PERSON));
        if at.role == Role::Aside && !silent {
            Taken::Said
        } else {
            Taken::Passed
        }
    }

    /// Words that belong to the verb and lead nowhere.
    fn particle(&self, index: usize) -> Option<(Taken, usize)> {
        match self.word(index) {
            "out" | "up" | "down" | "away" | "back" | "together" | "aside" | "apart" => Some((Taken::Said, 1)),
            "all" if self.word(index + 1) == "over" => Some((Taken::Said, 2)),
            "of" => Some((Taken::Passed, 1)),
            _ => None,
        }
    }

    /// The role that a small word gives to what follows it.
    fn role_of(&self, word: &str, at: &At) -> Option<Role> {
        const ASIDE: Speech = Speech::MANNER
            .or(Speech::CLAUSE)
            .or(Speech::NEVER)
            .or(Speech::PREPOSITION)
            .or(Speech::FINITE)
            .or(Speech::PERSON);
        Some(match word {
            "with" | "w" | "plus" | "along" | "including" => Role::With,
            "in" | "inside" | "among" | "through" | "thru" => Role::In,
            "to" if self.is_purpose(at.index + 1) => Role::Aside,
            "to" | "into" | "onto" | "on" => Role::To,
            "over" | "upon" | "across" | "around" | "round" | "under" => Role::Over,
            "from" | "off" => Role::From,
            "except" | "excepting" | "excluding" => Role::Except,
            "but" | "bar" | "save" if self.after_all(at.index) => Role::Except,
            // 'smoked ham, cut small': the preparation of what was named.
            "cut" if at.apart => Role::Aside,
            _ if speech(word).is(Speech::DISCARDING) => Role::Discard,
            _ if speech(word).is(Speech::KEEPING) => Role::Keep,
            _ if speech(word).is(ASIDE) || self.is_manner(at) => Role::Aside,
            _ => return None,
        })
    }

    /// ', crushing them in your fist as they go': how it is done.
    fn is_manner(&self, at: &At) -> bool {
        let apart = at.index.checked_sub(1).is_some_and(|before| self.word(before) == ",");
        let doing = words::verb(self.word(at.index)).is_some_and(|(_, form)| form == Inflection::Ing);
        let object = self
            .tokens
            .get(at.index + 1)
            .is_some_and(|next| next.speech.is(Speech::PRONOUN) || nouns::is_determiner(next));
        apart && doing && object
    }

    /// 'everything but', 'all the vegetables bar'.
    fn after_all(&self, index: usize) -> bool {
        let near = (index.saturating_sub(4)..index).rev();
        let mut words = near.map(|at| self.word(at)).take_while(|word| !word.is_empty());
        words.any(|word| speech(word).is(Speech::ALL) || matches!(word, "all" | "both"))
    }

    /// 'to cover', 'to make a paste': what for.
    fn is_purpose(&self, index: usize) -> bool {
        let word = self.word(index);
        let verb = words::verb(word).is_some_and(|(_, form)| form == Inflection::Base);
        verb && words::vessel(word).is_none() && !class(word).is(Class::FOOD)
    }

    /// Whether the verb, or the verb with a particle, stands right before.
    fn follows_verb(&self, index: usize) -> bool {
        let before = |back: usize| index.checked_sub(back).map_or("", |at| self.word(at));
        words::verb(before(1)).is_some()
            || (speech(before(1)).is(Speech::PREPOSITION) && words::verb(before(2)).is_some())
            || (speech(before(1)).is(Speech::ADVERB) && words::verb(before(2)).is_some())
    }

    /// Whether the clause, or a part of it, ends before this word.
    fn ends(&self, index: usize, to: usize) -> bool {
        index >= to || self.tokens.get(index).is_none_or(|token| token.sign().is_some())
    }

    fn joiner(&self, at: &mut At, to: usize) -> Taken {
        let word = self.word(at.index);
        // 'then half | cover' belongs to what follows.
        let joins = speech(word).is(Speech::JOINER) || word == "then" || (word == "half" && at.index + 1 == to);
        if !(joins || speech(word).is(Speech::ADVERB)) || class(word).is(Class::FOOD) {
            return Taken::No;
        }
        at.index += 1;
        if joins || at.apart { Taken::Passed } else { Taken::Said }
    }

    /// A vessel or a food.
    fn noun(&self, said: &mut Said, at: &mut At, to: usize) -> Taken {
        if let Some((vessel, next)) = vessels::vessel(self.tokens, at.index, to) {
            let role = if at.brackets && at.role == Role::Object {
                Role::Aside
            } else {
                at.role
            };
            said.vessels.push((role, vessel));
            (at.filled, at.food) = (true, false);
            return moved(at, next);
        }
        let Some((mention, next)) = nouns::mention(self.tokens, at.index, to) else {
            return Taken::No;
        };
        // 'breasts down', 'skin side up': how it lies.
        let lies = matches!(self.word(next), "down" | "up" | "downwards" | "upwards" | "side") && next < to;
        let part = mention
            .words
            .last()
            .is_some_and(|word| class(word).is(Class::PART) || speech(word).is(Speech::PLAIN));
        let only = next + 1 >= to || self.tokens.get(next + 1).is_some_and(|t| t.sign().is_some());
        if lies && part && !mention.determined && only {
            return moved(at, next + 1);
        }
        // 'add to the meat remaining fat': the place is named, what follows is what goes there.
        let before = at.index.checked_sub(1).map_or("", |before| self.word(before));
        let over_food = said.foods.last().is_some_and(|(role, _)| *role == Role::Over);
        let next_to = !speech(before).is(Speech::JOINER) && before != "," && at.filled && !at.apart;
        if at.filled && at.role == Role::To || at.role == Role::Over && next_to && over_food && self.puts {
            at.role = Role::Object;
        }
        at.filled = true;
        at.food = mention
            .words
            .last()
            .is_some_and(|word| class(word).is(Class::FOOD) || class(&singular(word)).is(Class::FOOD));
        said.heat_object |= at.role == Role::Object
            && mention
                .words
                .last()
                .is_some_and(|w| matches!(w.as_str(), "heat" | "flame" | "gas" | "fire"));
        // 'boiled in their skins' is how; 'bread, crusts and all' is all of it.
        let skins = mention.words.last().is_some_and(|word| {
            matches!(
                word.as_str(),
                "skin" | "skins" | "jackets" | "shell" | "shells" | "pods"
            )
        });
        let all = self.word(next) == "and" && self.word(next + 1) == "all" && self.ends(next + 2, to);
        let aside =
            at.brackets || all || (at.role == Role::In && skins && matches!(self.word(at.index), "their" | "its"));
        let role = if aside { Role::Aside } else { at.role };
        said.foods.push((role, mention));
        moved(at, if all { next + 2 } else { next })
    }
}

/// Whether what is done goes on for a time.
pub(super) fn lasts(meaning: words::Meaning) -> bool {
    matches!(meaning, words::Meaning::Do(verb) if super::takes::cooks(verb) || verb == crate::Verb::Rest)
}

fn is_gentle(word: &str) -> bool {
    matches!(word, "gently" | "slowly" | "barely" | "low" | "softly")
}

fn moved(at: &mut At, next: usize) -> Taken {
    at.index = next;
    Taken::Said
}
