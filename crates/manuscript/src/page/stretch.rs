//! The stretches of a sentence that name a food: with its amount, or alone.

use potwright_measure::{Dimension, Unit};

use crate::lexicon::{Class, class};
use crate::likened::likened;
use crate::line::name::nounlike;
use crate::line::quantity::measured;
use crate::line::{self, Line};
use crate::token::{Kind, Token};
use crate::{Ingredient, Span};

/// Words that name what is being cooked rather than something to buy.
const MADE: &str = "forcemeat stuffing roux dressing marinade tempering slurry soup stew sauce gravy broth vegetables vegetable liquid juices juice dough batter crust paste garnish \
    greens toppings seasoning seasonings ice mixture pie roll rolls split spring meat fish";
/// Words that name a part of something bought, unless that is named with them: 'bones', but 'a ham bone'.
const PARTS: &str = "fat bones bone skin skins shells leaves stalks stems seeds peel tops chops steak mince neck breasts \
    breast thighs legs yolks whites crust crusts rind rinds";

pub(crate) fn names_food(name: &str) -> bool {
    name.split(' ').any(|word| class(&word.to_lowercase()).is(Class::FOOD))
}

/// What one stretch of a sentence names.
pub(super) struct Mention {
    pub(super) entries: Vec<Ingredient>,
    /// 'a cup of the stock': of something that may have been named before.
    pub(super) of_the: bool,
}

/// The foods a sentence names, stretch by stretch.
pub(super) fn mentions(text: &str, span: Span) -> Vec<Mention> {
    let line = Line::new(text, span);
    let tokens = &line.tokens;
    let mut found = Vec::new();
    let mut serves = false;
    let mut at = 0;
    while at < tokens.len() {
        serves |= tokens[at].is_any(&["serve", "eat", "serving"]);
        let Some(stretch) = stretch(&line, at) else {
            at += 1;
            continue;
        };
        let place = line.span(at, stretch.end).unwrap_or(span);
        let bare = stretch.measure == Measure::None;
        let before = at.checked_sub(1).map(|before| &tokens[before]);
        let denied = before.is_some_and(|t| t.is_any(&["no", "without", "not", "less", "like", "than"]));
        // 'in their skins', 'with its tail': of what was named.
        let denied = denied || bare && before.is_some_and(|t| t.is_any(&["its", "their", "whose"]));
        if !(denied || bare && serves) {
            let mut entries = line::read(text, place, &[]).entries;
            let food = |entry: &Ingredient| entry.items.iter().any(|item| names_food(&item.name));
            entries.retain(|entry| {
                (food(entry) || stretch.measure == Measure::Weighed && !entry.items.is_empty())
                    && !(bare && general(entry))
            });
            let of_the = stretch.measure == Measure::Part;
            found.push(Mention { entries, of_the });
        }
        at = stretch.end.max(at + 1);
    }
    found
}

/// Whether a name is that of something made on the way, or of a part of what was bought.
fn general(entry: &Ingredient) -> bool {
    let one_of = |list: &str, word: &str| list.split(' ').any(|one| one == word);
    entry.items.iter().all(|item| {
        let (before, last) = item.name.rsplit_once(' ').unwrap_or(("", &item.name));
        one_of(MADE, last) || one_of(PARTS, last) && !names_food(before)
    })
}

/// How much of a food a stretch asks for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Measure {
    None,
    Counted,
    /// In a unit of its own, so that even a noun without a row is a food.
    Weighed,
    /// So much 'of the' food.
    Part,
}

/// A stretch that names a food.
struct Stretch {
    /// The index after it.
    end: usize,
    measure: Measure,
}

/// The stretch that starts here.
fn stretch(line: &Line, at: usize) -> Option<Stretch> {
    let tokens = &line.tokens;
    let counted = |end: usize| Stretch {
        end,
        measure: Measure::Counted,
    };
    if let Some(start) = part_start(tokens, at) {
        let measure = measured(line, start, false)?;
        return Some(counted(told(line, noun_phrase(line, measure.next)?)));
    }
    if let Some(end) = enumerated(line, at) {
        return Some(counted(end));
    }
    if let Some(measure) = measured(line, at, false) {
        if measure.of_the {
            measure
                .quantity?
                .unit
                .filter(|unit| unit.dimension() != Dimension::Piece)?;
            let end = told(
                line,
                instead(line, noun_phrase(line, measure.next)?).unwrap_or(noun_phrase(line, measure.next)?),
            );
            return Some(Stretch {
                end,
                measure: Measure::Part,
            });
        }
        let Some(end) = noun_phrase(line, measure.next) else {
            let unit = measure
                .quantity
                .and_then(|q| q.unit)
                .filter(|unit| unit.dimension() != Dimension::Piece)?;
            let end = unknown_noun(line, measure.next)?;
            return Some(Stretch {
                end: told(line, end),
                measure: Measure::Weighed,
            })
            .filter(|_| unit != Unit::Drop);
        };
        let plain = measure.implied && !measure.has_unit;
        let named = tokens[measure.next..end]
            .iter()
            .filter(|t| t.class.is(Class::FOOD))
            .count();
        if named == 0 || plain && general_noun(tokens, measure.next, end) {
            return None;
        }
        return Some(counted(told(line, joined(line, end))));
    }
    bare(line, at)
}

/// A food without an amount.
fn bare(line: &Line, at: usize) -> Option<Stretch> {
    let tokens = &line.tokens;
    let first = &tokens[at];
    let of = first.class;
    let describes = Class::FOOD
        | Class::KIND
        | Class::STATE
        | Class::TEMPERATURE
        | Class::BOUGHT
        | Class::PREPARED
        | Class::MANNER
        | Class::OIL;
    if !first.is_word() || !of.is(describes) || verb_use(tokens, at) {
        return None;
    }
    let end = noun_phrase(line, at)?;
    // 'breasts down', 'skin side up': how it lies.
    let lies = tokens
        .get(end)
        .is_some_and(|t| t.is_any(&["down", "up", "side", "sides", "downwards", "upwards"]));
    if lies && general_noun(tokens, at, end) {
        return None;
    }
    // 'clams: 48 of them, scrubbed' says the rest after a colon.
    if tokens.get(end).is_some_and(|t| t.sign() == Some(':'))
        && measured(line, end + 1, true).is_some_and(|m| !m.implied)
    {
        return Some(Stretch {
            end: tokens.len(),
            measure: Measure::Counted,
        });
    }
    if let Some(end) = to_taste(line, end) {
        return Some(Stretch {
            end,
            measure: Measure::Counted,
        });
    }
    Some(Stretch {
        end: told(line, end),
        measure: Measure::None,
    })
}

/// 'Pepper and salt to taste': the index after it, when one or two foods stand before 'to taste'.
fn to_taste(line: &Line, end: usize) -> Option<usize> {
    let is = |at: usize, word: &str| line.tokens.get(at).is_some_and(|t| t.is(word));
    let end = if is(end, "and") {
        noun_phrase(line, end + 1)?
    } else {
        end
    };
    (is(end, "to") && is(end + 1, "taste")).then_some(end + 2)
}

/// Whether a phrase ends in the name of something made, or is a part alone.
fn general_noun(tokens: &[Token], from: usize, end: usize) -> bool {
    let last = &tokens[end - 1];
    let before = tokens[from..end - 1].iter().any(|t| t.class.is(Class::FOOD));
    last.is_one_of(MADE) || last.is_one_of(PARTS) && !before
}

/// 'two carrots, a turnip and an onion, all sliced': the end of counted foods that share their work.
fn enumerated(line: &Line, at: usize) -> Option<usize> {
    let tokens = &line.tokens;
    let mut end = at;
    let mut foods = 0;
    while let Some(next) = measured(line, end, false)
        .filter(|m| !m.of_the)
        .and_then(|m| noun_phrase(line, m.next))
    {
        foods += 1;
        let comma = usize::from(tokens.get(next).is_some_and(|t| t.sign() == Some(',')));
        let and = usize::from(tokens.get(next + comma).is_some_and(|t| t.is("and")));
        let shared = and == 0
            && foods > 1
            && tokens
                .get(next + comma)
                .is_some_and(|t| t.is_any(&["both", "all", "each"]));
        if shared {
            let end = told(line, next);
            return (end > next).then_some(end);
        }
        if comma + and == 0 || foods > 12 {
            return None;
        }
        end = next + comma + and;
    }
    None
}

/// The index after a noun that no table knows: 'a tablespoon of gochujang'.
fn unknown_noun(line: &Line, from: usize) -> Option<usize> {
    let tokens = &line.tokens;
    let names = |t: &&Token| {
        let of = t.class;
        t.is_word()
            && !small(t)
            && !crate::lexicon::verb(&t.lower)
            && !of.is(Class::EQUIPMENT | Class::CONTAINER | Class::SHAPE | Class::MANNER)
            && !t.is_one_of(MADE)
            && Unit::from_spelling(t.text).is_none()
            && !t.is_any(&[
                "each", "water", "more", "less", "mark", "deep", "wide", "long", "thick", "batch", "batches",
            ])
    };
    let length = tokens.get(from..)?.iter().take(3).take_while(names).count();
    let noun = tokens[from..from + length].iter().any(nounlike);
    noun.then_some(from + length)
}

/// 'the zest and juice of 1 orange', 'yolks of four eggs': where the amount stands.
pub(super) fn part_start(tokens: &[Token], at: usize) -> Option<usize> {
    let the = usize::from(tokens[at].is("the"));
    let mut next = at + the;
    while tokens
        .get(next)
        .is_some_and(|t| t.class.is(Class::PART) || t.is("and") && next > at + the)
    {
        next += 1;
    }
    let of = tokens.get(next).is_some_and(|t| t.is("of"));
    let counted = of && crate::number::amount(tokens, next + 1).is_some();
    (next > at + the && counted).then_some(next + 1)
}

/// 'Butter a dish', 'Salt the water', 'and butter it': the word tells the cook to do something.
fn verb_use(tokens: &[Token], at: usize) -> bool {
    let opens = at == 0
        || matches!(tokens[at - 1].sign(), Some(',' | ';' | ':' | '–'))
        || tokens[at - 1].is_any(&["and", "then", "to"]);
    opens
        && tokens
            .get(at + 1)
            .is_some_and(|t| t.is_any(&["a", "an", "the", "it", "them", "your", "over", "well"]))
}

/// Words that stand in no name.
fn small(token: &Token) -> bool {
    token.is_one_of(
        "and or with in into to for on at the of from by over until till is are it them that which as minutes minute \
        hours hour a an if when per then so but about off up down out like than",
    )
}

/// The index after a noun phrase that holds a food; `None` when it holds none.
fn noun_phrase(line: &Line, from: usize) -> Option<usize> {
    let tokens = &line.tokens;
    let mut end = None;
    let mut at = from;
    while let Some(token) = tokens.get(at) {
        let of = token.class;
        if matches!(token.kind, Kind::Aside(_)) {
            at += 1;
            continue;
        }
        if !token.is_word() {
            break;
        }
        if crate::number::number(tokens, at).is_some() {
            break;
        }
        let part = token.is("of") && at > from && tokens[at - 1].class.is(Class::PART);
        let of_food = part
            && tokens
                .get(at + 1)
                .is_some_and(|t| t.class.is(Class::FOOD | Class::KIND | Class::STATE));
        if of.is(Class::FOOD) {
            end = Some(at + 1);
        } else if end.is_some() && !of_food {
            break;
        } else {
            let describes = Class::KIND
                | Class::STATE
                | Class::SIZE
                | Class::PREPARED
                | Class::TEMPERATURE
                | Class::BOUGHT
                | Class::MANNER
                | Class::OIL
                | Class::ABOUT
                | Class::EXACTLY
                | Class::PART;
            let soon = tokens.get(at + 1).is_some_and(|t| t.class.is(Class::FOOD));
            let verb = crate::lexicon::verb(&token.lower) && !of.is(describes);
            if !part && (!(of.is(describes) || soon && nounlike(token)) || small(token) || verb) {
                return None;
            }
        }
        at += 1;
    }
    end
}

/// Over 'and' to a second counted food: '2 onions and 2 peppers, both sliced'.
fn joined(line: &Line, end: usize) -> usize {
    if !line.tokens.get(end).is_some_and(|t| t.is("and")) {
        return end;
    }
    let second = measured(line, end + 1, false).filter(|m| !m.implied);
    second.and_then(|m| noun_phrase(line, m.next)).unwrap_or(end)
}

/// Over brackets and the work that is told after the noun: ', cut into matchsticks', 'chopped fine, if liked'.
fn told(line: &Line, end: usize) -> usize {
    let tokens = &line.tokens;
    let mut end = end;
    loop {
        if tokens.get(end).is_some_and(|t| matches!(t.kind, Kind::Aside(_))) {
            end += 1;
            continue;
        }
        let comma = usize::from(tokens.get(end).is_some_and(|t| t.sign() == Some(',')));
        if let Some(next) = likened(tokens, end + comma).or_else(|| instead(line, end)) {
            end = next;
            continue;
        }
        let Some(first) = tokens.get(end + comma) else {
            return end;
        };
        let of = first.class;
        let work = of.is(Class::PREPARED) && !of.is(Class::FOOD)
            || of.is(Class::MANNER) && tokens.get(end + comma + 1).is_some_and(|t| t.class.is(Class::PREPARED));
        // 'oil poured over the bowls', 'parsley scattered on top' tell what is done with it at the table.
        let over = tokens
            .get(end + comma + 1)
            .is_some_and(|t| t.is_any(&["over", "onto", "on", "upon"]));
        let work = work && !over;
        let all = tokens.get(end + comma + 1).is_some_and(|t| t.is("and"))
            && tokens.get(end + comma + 2).is_some_and(|t| t.is("all"));
        if comma == 1 && all && first.is_word() {
            // ', crusts and all'.
            end += 4;
            continue;
        }
        let both = first.is_any(&["both", "all"])
            && tokens
                .get(end + comma + 1)
                .is_some_and(|t| t.class.is(Class::PREPARED | Class::MANNER));
        let liked = first.is("if")
            && tokens
                .get(end + comma + 1)
                .is_some_and(|t| t.is_any(&["liked", "desired", "you", "available"]))
            || first.is("optional");
        // 'in small dice', 'in chunks'.
        let shape = first.is("in")
            && tokens[end + comma..]
                .iter()
                .skip(1)
                .take(3)
                .take_while(|t| t.class.is(Class::SIZE | Class::SHAPE | Class::STATE | Class::KIND))
                .any(|t| t.class.is(Class::SHAPE));
        if !(work || both && comma == 1 || liked || shape) {
            return end;
        }
        // A bare base form such as 'cut' after a comma is the next thing to do.
        if work && comma == 1 && crate::lexicon::verb(&first.lower) && !first.is("cut") {
            return end;
        }
        let stop = (end + comma..tokens.len()).find(|i| {
            let t = &tokens[*i];
            matches!(t.sign(), Some(',' | ';' | '.' | ':' | '–' | '—' | '!'))
                || t.is_any(&["and", "with"]) && *i > end + comma && !(t.is("and") && works_on(tokens, i + 1))
                || t.is_any(&["into", "in"]) && tokens.get(i + 1).is_some_and(|t| t.is_any(&["the", "a"]))
        });
        let next = stop.unwrap_or(tokens.len());
        if next <= end {
            return end;
        }
        end = next;
    }
}

/// 'washed and sliced': more work on the same food, and no new order.
fn works_on(tokens: &[Token], at: usize) -> bool {
    let manner = usize::from(tokens.get(at).is_some_and(|t| t.class.is(Class::MANNER)));
    let work = tokens.get(at + manner);
    let order = tokens
        .get(at + manner + 1)
        .is_some_and(|t| t.is_any(&["the", "it", "them", "a", "an", "your", "all"]));
    work.is_some_and(|t| t.class.is(Class::PREPARED) && !t.class.is(Class::FOOD)) && !order
}

/// 'gravy or stock': the index after what may take its place.
fn instead(line: &Line, end: usize) -> Option<usize> {
    let or = line.tokens.get(end).is_some_and(|t| t.is("or"));
    or.then(|| noun_phrase(line, end + 1)).flatten()
}
