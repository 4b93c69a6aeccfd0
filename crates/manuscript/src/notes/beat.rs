//! The method: what was done to the foods of a dish, beat by beat, with time, heat, lid and cue.

use crate::lexicon::Class;
use crate::method::words::{Inflection, verb};
use crate::token::Token;
use crate::{Cover, HeatWord};

use super::gather::Gathered;
use super::phrase::{self, Degrees, Time};
use super::transcript::Heard;
use super::words::{self, Role};

/// Something that is done and, if it is, waited for.
#[derive(Clone, Debug, Default)]
pub(super) struct Beat {
    /// The topic: a dish or a part of one.
    pub(super) topic: usize,
    /// Words it was told in.
    pub(super) from: usize,
    pub(super) next: usize,
    /// Items that go in.
    pub(super) puts: Vec<usize>,
    /// Other foods spoken of, in the words they were named by.
    pub(super) names: Vec<String>,
    /// What is done, as base verbs in the order they were said.
    pub(super) verbs: Vec<&'static str>,
    pub(super) heat: Option<HeatWord>,
    pub(super) cover: Option<Cover>,
    pub(super) oven: Option<Degrees>,
    pub(super) in_oven: bool,
    pub(super) time: Option<Time>,
    /// 'a bit', 'a good while': word range.
    pub(super) vague_time: Option<(usize, usize)>,
    pub(super) cue: Option<(usize, usize)>,
    /// Index of the vessel.
    pub(super) vessel: Option<usize>,
    /// Minutes by the stamps, when no time was said.
    pub(super) observed: Option<f64>,
}

/// Verbs that take time: while they go on the cook waits.
pub(super) const LASTING: &str = "simmer boil fry brown bake roast toast grill broil soak steam poach braise sweat soften saute sauté \
    melt reduce bubble stew rest stand sit leave cool chill go cook heat warm infuse steep rise prove render marinate pickle let wait";
/// Verbs that change the food and take no time worth speaking of.
pub(super) const SHORT: &str = "stir skim strain mash smash whisk fold beat scrape pour drain rinse shred roll spread toss blend puree purée \
    sprinkle drizzle season squeeze knead shape baste turn discard serve garnish";

pub(super) fn is_one_of(word: &str, list: &str) -> bool {
    list.split_whitespace().any(|known| known == word)
}

/// The beats of a take in the order they were told.
pub(super) fn beats(heard: &Heard, gathered: &Gathered, asides: &[bool]) -> Vec<Beat> {
    let mut found: Vec<Beat> = Vec::new();
    let mut open: Option<Beat> = None;
    let tokens = &heard.tokens;
    let mut at = 0;
    while at < tokens.len() {
        if asides.get(at).copied().unwrap_or(false) && !gathered.touches.contains_key(&at) {
            at += 1;
            continue;
        }
        let topic = gathered.owner.get(at).copied().unwrap_or(0);
        let fresh = heard.fresh.get(at).copied().unwrap_or(false);
        if open
            .as_ref()
            .is_some_and(|beat| beat.topic != topic || fresh && (beat.waits() || beat.holds()))
        {
            found.extend(open.take().filter(Beat::says));
        }
        let beat = open.get_or_insert_with(|| Beat {
            topic,
            from: at,
            next: at,
            ..Beat::default()
        });
        if !beat.says() && beat.names.is_empty() {
            beat.from = at;
        }
        let (next, closes) = beat.take(tokens, gathered, at);
        if closes {
            let fresh = Beat {
                topic,
                from: at,
                next: at,
                ..Beat::default()
            };
            let full = std::mem::replace(beat, fresh);
            found.extend(Some(full).filter(Beat::says));
            let (next, _) = beat.take(tokens, gathered, at);
            let next = beat.within(heard, next);
            beat.next = next;
            at = next.max(at + 1);
            continue;
        }
        let next = beat.within(heard, next);
        beat.next = next;
        at = next.max(at + 1);
    }
    found.extend(open.filter(Beat::says));
    observe(heard, &mut found);
    found
}

impl Beat {
    /// Whether it is waited for.
    pub(super) fn waits(&self) -> bool {
        self.time.is_some() || self.cue.is_some() || self.vague_time.is_some()
    }

    /// A cue ends where the speaker starts afresh.
    fn within(&mut self, heard: &Heard, next: usize) -> usize {
        let Some((from, end)) = self.cue.filter(|(_, end)| *end == next) else {
            return next;
        };
        let fresh = (from..end).find(|at| heard.fresh.get(*at).copied().unwrap_or(false));
        let end = fresh.unwrap_or(end);
        self.cue = Some((from, end)).filter(|_| end > from);
        end
    }

    fn holds(&self) -> bool {
        !self.puts.is_empty() || self.oven.is_some() || !self.verbs.is_empty()
    }

    fn says(&self) -> bool {
        let idle = |verb: &&str| {
            matches!(
                *verb,
                "turn" | "go" | "let" | "wait" | "leave" | "cook" | "sit" | "serve" | "heat" | "stand" | "pour"
            )
        };
        let only_idle =
            self.puts.is_empty() && self.oven.is_none() && self.names.is_empty() && self.verbs.iter().all(idle);
        self.waits() || self.holds() && !only_idle
    }

    /// Takes in what stands at this word; whether a new beat has to begin there instead.
    fn take(&mut self, tokens: &[Token], gathered: &Gathered, at: usize) -> (usize, bool) {
        if let Some(touch) = gathered.touches.get(&at) {
            if touch.enters && self.waits() {
                return (at, true);
            }
            match touch.item {
                Some(item) if touch.enters => self.puts.push(item),
                _ => {
                    if !self.names.contains(&touch.name) {
                        self.names.push(touch.name.clone());
                    }
                }
            }
        }
        if let Some(time) = phrase::time(tokens, at) {
            // 'it's been forty two minutes', 'that's had its two hours', 'not yet, half an hour': a report, no order.
            let near = tokens.get(at.saturating_sub(3)..at).unwrap_or_default();
            let answer = near
                .windows(2)
                .any(|pair| matches!(pair, [not, yet] if not.is("not") && yet.is("yet")));
            if answer || near.iter().any(|t| t.is_one_of("had been hasn't took")) {
                return (time.next, false);
            }
            if self.time.is_some() {
                return (at, true);
            }
            self.time = Some(time);
            return (time.next, false);
        }
        if let Some((from, next)) = phrase::cue(tokens, at).or_else(|| phrase::let_it(tokens, at)) {
            if let Some((first, end)) = self.cue.filter(|(_, end)| end + 3 >= from) {
                let _ = end;
                self.cue = Some((first, next));
                return (next, false);
            }
            if self.cue.is_some() {
                return (at, true);
            }
            self.cue = Some((from, next));
            return (next, false);
        }
        if let Some((cover, next)) = phrase::cover(tokens, at) {
            if self.cover.is_some_and(|old| old != cover) && self.waits() {
                return (at, true);
            }
            self.cover = Some(cover);
            return (next, false);
        }
        let oven_near = tokens
            .get(at.saturating_sub(12)..at)
            .is_some_and(|near| near.iter().any(|t| t.is("oven")));
        let oven_near = oven_near
            || at
                .checked_sub(1)
                .and_then(|before| tokens.get(before))
                .is_some_and(|t| t.is("at"));
        if let Some(degrees) = phrase::degrees(tokens, at, oven_near) {
            self.oven.get_or_insert(degrees);
            return (degrees.next, false);
        }
        if let Some((heat, next)) = phrase::heat(tokens, at) {
            if self.waits() {
                return (at, true);
            }
            self.heat = Some(heat);
            return (next, false);
        }
        if let Some(next) = words::at(tokens, at, Role::VagueTime) {
            let lasts = tokens.get(next).is_none_or(|t| !t.is_any(&["of", "more", "flat"]));
            if lasts && self.time.is_none() && self.verbs.iter().any(|verb| is_one_of(verb, LASTING)) {
                self.vague_time = Some((at, next));
                return (next, false);
            }
        }
        self.verb(tokens, gathered, at)
    }

    fn verb(&mut self, tokens: &[Token], gathered: &Gathered, at: usize) -> (usize, bool) {
        let pan = gathered.vessels.partition_point(|pan| pan.from < at);
        if gathered.vessels.get(pan).is_some_and(|pan| pan.from == at && pan.cooks) {
            self.vessel = Some(pan);
        }
        let Some(token) = tokens.get(at) else {
            return (at + 1, false);
        };
        self.in_oven |= token.is("oven")
            && at
                .checked_sub(1)
                .is_some_and(|before| tokens.get(before).is_some_and(|t| t.is("the")))
            && at > 1
            && tokens.get(at - 2).is_some_and(|t| t.is_any(&["in", "into"]));
        let hot = token.is("hot")
            && at
                .checked_sub(1)
                .and_then(|before| tokens.get(before))
                .is_some_and(|t| t.is_any(&["get", "gets", "getting", "back"]));
        let stays = token.is("left") && tokens.get(at + 1).is_some_and(|t| t.is_any(&["it", "them", "that"]));
        let base = match (hot, stays) {
            (true, _) => Some("heat"),
            (_, true) => Some("leave"),
            _ => base_of(&token.lower),
        };
        if hot && !self.waits() {
            self.vague_time = Some((at - 1, at + 1));
        }
        let before = at.checked_sub(1).and_then(|before| tokens.get(before));
        let base = base.filter(|_| hot || !only_describes(tokens, at, before));
        let Some(base) = base.filter(|base| is_one_of(base, LASTING) || is_one_of(base, SHORT)) else {
            return (at + 1, false);
        };
        let next_is = |words: &[&str]| tokens.get(at + 1).is_some_and(|t| t.is_any(words));
        let no_work = base == "let" && next_is(&["me", "us", "alone"])
            || base == "turn" && next_is(&["this", "that", "the"])
            || base == "go" && next_is(&["on", "to", "and", "off", "with"])
            || base == "wait" && words::at(tokens, at, Role::Repair).is_some()
            || before.is_some_and(|t| t.is_any(&["self", "can", "could", "would", "half"]));
        let negated = no_work
            || tokens
                .get(at.saturating_sub(3)..at)
                .is_some_and(|near| near.iter().any(|t| t.is_any(&["don't", "not", "can't", "never", "no"])));
        let noun = before.is_some_and(|t| t.is_one_of("the a an of my that to-the"));
        if negated || noun && base != "simmer" && base != "boil" {
            return (at + 1, false);
        }
        if self.waits() && !self.verbs.contains(&base) {
            return (at, true);
        }
        if !self.verbs.contains(&base) {
            self.verbs.push(base);
        }
        (at + 1, false)
    }
}

/// 'beans drained and rinsed', 'boiling water', 'tomato purée': words of the food, not what is done next.
fn only_describes(tokens: &[Token], at: usize, before: Option<&Token>) -> bool {
    let Some(token) = tokens.get(at) else {
        return true;
    };
    let past = verb(&token.lower).is_some_and(|(_, form)| form == Inflection::Past);
    let told = before.is_some_and(|t| t.is_any(&["i", "we", "i've", "we've", "and"]));
    let left = token.is("left") && !tokens.get(at + 1).is_some_and(|t| t.is_any(&["it", "them", "that"]));
    let and = before.is_some_and(|t| t.is("and"))
        && at > 1
        && tokens.get(at - 2).is_some_and(|t| t.class.is(Class::PREPARED));
    let of_food = before.is_some_and(|t| t.class.is(Class::FOOD)) && token.class.is(Class::FOOD);
    let water = tokens.get(at + 1).is_some_and(|t| t.class.is(Class::LIQUID));
    past && (!told || and) || left || of_food || water && token.class.is(Class::TEMPERATURE)
}

/// The verb of which this is a form, 'simmers' among them.
fn base_of(word: &str) -> Option<&'static str> {
    let third = || verb(word.strip_suffix('s')?);
    verb(word).or_else(third).map(|(base, _)| base)
}

/// Minutes between the stamp of a beat that waits without a time and the next stamp of its dish.
fn observe(heard: &Heard, beats: &mut [Beat]) {
    let stamp = |at: usize| heard.times.get(at).copied().flatten();
    let starts: Vec<(usize, Option<f64>)> = beats.iter().map(|beat| (beat.topic, stamp(beat.from))).collect();
    for (index, beat) in beats.iter_mut().enumerate() {
        if beat.time.is_some()
            || !(beat.cue.is_some()
                || beat.vague_time.is_some()
                || beat.verbs.iter().any(|verb| is_one_of(verb, LASTING)))
        {
            continue;
        }
        let Some(start) = stamp(beat.from) else { continue };
        let later = starts
            .iter()
            .skip(index + 1)
            .find(|(topic, time)| *topic == beat.topic && time.is_some_and(|time| time > start));
        let next = later.and_then(|(_, time)| *time);
        beat.observed = next.map(|next| (next - start) / 60.0).filter(|minutes| *minutes >= 1.0);
    }
}
