//! What was said of foods and amounts, one mention after another: 'a pound and a half of shrimp', 'garlic four cloves',
//! 'some thyme', 'the bacon', 'about fifteen grams'.

use potwright_measure::{Amount, Exact, Unit};

use crate::lexicon::Class;
use crate::token::Token;

use super::food::{self, Food, How};
use super::numbers;
use super::transcript::Heard;
use super::vessel;
use super::words::{self, Role};

/// An amount that was said.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Said {
    pub(super) amount: Amount,
    pub(super) unit: Option<Unit>,
    /// What one of the packages holds: 'two four hundred gram tins'.
    pub(super) package: Option<(Amount, Unit)>,
    /// 'heaped', 'level', 'big': goes on the page with the unit.
    pub(super) manner: Option<String>,
    /// Nothing but 'a' or 'an'.
    pub(super) article: bool,
}

/// A food, an amount, or both.
#[derive(Clone, Debug)]
pub(super) struct Mention {
    /// Index of its first word and after its last.
    pub(super) from: usize,
    pub(super) next: usize,
    pub(super) said: Option<Said>,
    /// The words of an amount without a number: 'a few sprigs of'.
    pub(super) vague: Option<String>,
    pub(super) food: Option<Food>,
    /// 'another half teaspoon'.
    pub(super) again: bool,
    /// A part of what is known: 'half of the', 'two of them'.
    pub(super) part: bool,
    /// 'no clove', 'not a can'.
    pub(super) negated: bool,
    /// 'like a tamarind seed', 'as wide as your finger'.
    pub(super) likened: bool,
    /// Each gets so much: 'two plums each'.
    pub(super) each: bool,
    /// 'a five pound hen': what one of them weighs or holds.
    pub(super) of_one: bool,
}

/// So many without a unit are no pieces but grams or millilitres left unsaid (common practice, no source; 15 to 40
/// would do).
pub(super) const MANY: i64 = 20;

/// Every mention of a take, in order.
pub(super) fn mentions(heard: &Heard) -> Vec<Mention> {
    let tokens = &heard.tokens;
    let mut found: Vec<Mention> = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let next = mention(tokens, at, !heard.punctuated);
        match next {
            Some(mention) if mention.next > at => {
                at = mention.next;
                found.push(mention);
            }
            _ => at += 1,
        }
    }
    found
}

fn mention(tokens: &[Token], at: usize, listed: bool) -> Option<Mention> {
    let mut found = vague(tokens, at, listed)
        .or_else(|| measured(tokens, at, listed))
        .or_else(|| of_a_part(tokens, at, listed))
        .or_else(|| bare(tokens, at, listed))?;
    found.negated = negated(tokens, found.from);
    let before = found.from.checked_sub(1).and_then(|before| tokens.get(before));
    let article = found.said.as_ref().is_none_or(|said| said.article);
    found.likened = article && before.is_some_and(|t| t.is_any(&["like", "as"]));
    found.each = tokens.get(found.next).is_some_and(|t| t.is("each"));
    Some(found)
}

fn of(from: usize, next: usize) -> Mention {
    Mention {
        from,
        next,
        said: None,
        vague: None,
        food: None,
        again: false,
        part: false,
        negated: false,
        likened: false,
        each: false,
        of_one: false,
    }
}

/// 'some thyme', 'a few sprigs of thyme', 'a bit of rosemary'.
fn vague(tokens: &[Token], at: usize, listed: bool) -> Option<Mention> {
    let mut next = words::at(tokens, at, Role::Vague)?;
    let it = tokens.get(next + 1).is_some_and(|t| t.is_any(&["it", "them", "that"]));
    if it && tokens.get(next).is_some_and(|t| t.is("of")) {
        let mut found = of(at, next + 2);
        found.vague = Some(text(tokens, at, next));
        return Some(found);
    }
    let unit = unit(tokens, next).filter(|(_, after)| *after < tokens.len());
    let mut measured = false;
    if let Some((_, after)) = unit {
        measured = tokens.get(after).is_some_and(|t| t.is("of"));
        next = if measured || food::food(tokens, after, How::Counted, listed).is_some() {
            after
        } else {
            next
        };
    }
    let how = if measured { How::Measured } else { How::Counted };
    let food = food::food(tokens, next, how, listed)?;
    let mut found = of(at, food.next);
    found.vague = Some(text(tokens, at, next));
    found.food = Some(food);
    Some(found)
}

/// An amount, with the food behind it if there is one.
fn measured(tokens: &[Token], at: usize, listed: bool) -> Option<Mention> {
    let again = usize::from(words::at(tokens, at, Role::Again).is_some_and(|next| next == at + 1));
    let number = numbers::amount(tokens, at + again);
    let number = match number {
        Some(number) => number,
        None if again > 0 && unit(tokens, at + 1).is_some() => numbers::Number {
            amount: Amount::single(Exact::ONE),
            next: at + 1,
            article: true,
        },
        None if implied(tokens, at) => numbers::Number {
            amount: Amount::single(Exact::ONE),
            next: at,
            article: true,
        },
        None => return None,
    };
    let more_before = tokens.get(number.next).is_some_and(|t| t.is("more")) && unit(tokens, number.next + 1).is_some();
    let number = numbers::Number {
        next: number.next + usize::from(more_before),
        ..number
    };
    let (said, next) = said(tokens, number)?;
    let loose = matches!(
        said.unit,
        Some(Unit::Piece | Unit::Bit | Unit::Knob | Unit::Glug | Unit::Splash | Unit::Thumb)
    );
    if said.article && loose {
        return loosely(tokens, at, next, listed);
    }
    let part = tokens.get(next).is_some_and(|t| t.is("of"))
        && tokens.get(next + 1).is_some_and(|t| {
            t.is_any(&[
                "it", "it's", "them", "that", "that's", "those", "these", "this", "you", "us",
            ])
        })
        && food::food(tokens, next, How::Bare, listed).is_none();
    let must = said.unit.is_some_and(|unit| !matches!(unit, Unit::Bit | Unit::Piece))
        && tokens.get(next).is_some_and(|t| t.is("of"));
    let food = match food::food(tokens, next, if must { How::Measured } else { How::Counted }, listed) {
        Some(food)
            if said.unit.is_none()
                && said.amount.low >= Exact::whole(MANY)
                && tokens.get(next).is_some_and(|t| t.is("of")) =>
        {
            Some(food)
        }
        Some(food) if said.unit.is_none() && !countable(&said, &food) => None,
        None if said.unit.is_none() && !said.article && said.amount.low >= Exact::ONE => {
            super::misheard::counted(tokens, next)
        }
        None if weighed(&said) => super::misheard::sure(tokens, next),
        other => other,
    };
    // 'in three waters', 'soaked in two changes'.
    if said.unit.is_none() && food.as_ref().is_some_and(|food| food.noun() == "water") {
        return None;
    }
    if said.article && said.unit.is_none() && food.is_none() {
        return None;
    }
    let mut found = of(at, food.as_ref().map_or(next, |food| food.next));
    let article = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|t| t.is_any(&["a", "an"]));
    let weighs = said
        .unit
        .is_some_and(|unit| unit.dimension() != potwright_measure::Dimension::Piece);
    found.of_one = article && weighs && food.is_some() && !tokens.get(next).is_some_and(|t| t.is("of"));
    let more = tokens.get(next).is_some_and(|t| t.is("more"));
    found.again = again > 0 || more || more_before;
    found.part = part || fraction_of_known(&said, food.as_ref());
    found.said = Some(said);
    found.food = food;
    Some(found)
}

/// A unit said without a number, of which one is meant: 'pinch of sugar'.
fn implied(tokens: &[Token], at: usize) -> bool {
    let one = tokens.get(at).is_some_and(|t| {
        t.is_any(&[
            "pinch", "handful", "bunch", "dash", "sprig", "splash", "knob", "drizzle",
        ])
    });
    let spoon = tokens
        .get(at)
        .is_some_and(|t| t.is_any(&["teaspoon", "tablespoon", "cup"]));
    let begins = at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_none_or(|t| t.sign().is_some() || t.is("and"));
    (one || spoon && begins) && tokens.get(at + 1).is_some_and(|t| t.is("of"))
}

fn weighed(said: &Said) -> bool {
    said.unit
        .is_some_and(|unit| unit.dimension() != potwright_measure::Dimension::Piece)
}

/// 'a small piece of jaggery', 'a good splash of stock': an amount without a number.
fn loosely(tokens: &[Token], at: usize, next: usize, listed: bool) -> Option<Mention> {
    let food = food::food(tokens, next, How::Counted, listed)?;
    let mut found = of(at, food.next);
    found.vague = Some(text(tokens, at, next));
    found.food = Some(food);
    Some(found)
}

/// 'half of the mushrooms', 'a quarter of them': no unit, and the food is known.
fn fraction_of_known(said: &Said, food: Option<&Food>) -> bool {
    said.unit.is_none() && said.amount.high < Exact::ONE && food.is_some_and(|food| food.definite)
}

/// Whether a number without a unit can count this food.
fn countable(said: &Said, food: &Food) -> bool {
    if said.article && words::is(food.noun(), Role::Dish) {
        return false;
    }
    let liquid = crate::lexicon::class(food.noun()).is(Class::LIQUID);
    !liquid && said.amount.high < Exact::whole(50)
}

/// The measure that begins with a number: package, manner, unit, 'and a half' after the unit.
fn said(tokens: &[Token], number: numbers::Number) -> Option<(Said, usize)> {
    let mut said = Said {
        amount: number.amount,
        unit: None,
        package: None,
        manner: None,
        article: number.article,
    };
    let mut next = number.next;
    if not_a_food(tokens, next) {
        return None;
    }
    if let Some((inner, unit, package, after)) = packed(tokens, next) {
        (said.package, said.unit) = (Some((inner, unit)), Some(package));
        return Some((said, after));
    }
    let manner = tokens.get(next).filter(|t| {
        t.class.is(Class::SIZE | Class::ABOUT | Class::EXACTLY)
            || t.is_any(&["good", "real", "well", "packed", "dessert"])
    });
    let behind = usize::from(manner.is_some());
    // 'half a stick', 'three quarters of a cup', 'half an onion'.
    let mut behind = behind;
    if said.amount.high < Exact::ONE
        || said.amount.high == Exact::whole(12)
        || said.amount.high == Exact::ratio(1, 2).unwrap_or(Exact::ONE)
    {
        let of = usize::from(tokens.get(next).is_some_and(|t| t.is("of")));
        if tokens.get(next + of).is_some_and(|t| t.is_any(&["a", "an"])) {
            next += of + 1;
            behind = usize::from(
                tokens
                    .get(next)
                    .is_some_and(|t| t.class.is(Class::SIZE | Class::ABOUT | Class::EXACTLY)),
            );
        }
    }
    // The manner may not be a part of the unit: 'dessert spoon'.
    let direct = unit(tokens, next);
    let (found, manner_words) = match direct {
        Some(found) => (Some(found), None),
        None if behind > 0 => (unit(tokens, next + 1), tokens.get(next).map(|t| t.lower.to_string())),
        None => (None, None),
    };
    let Some((unit, after)) = found else {
        if not_a_food(tokens, next) {
            return None;
        }
        return Some((said, next));
    };
    said.unit = Some(unit);
    said.amount.about |= manner_words
        .as_deref()
        .is_some_and(|word| crate::lexicon::class(word).is(Class::ABOUT));
    said.manner = manner_words;
    next = after;
    let whole = said.amount.is_single().then_some(said.amount.low);
    if let Some((amount, after)) = whole.and_then(|whole| numbers::and_part(tokens, next, whole)) {
        (said.amount.low, said.amount.high, next) = (amount, amount, after);
    }
    let or_so = tokens.get(next).is_some_and(|t| t.is("or"))
        && tokens.get(next + 1).is_some_and(|t| t.is_any(&["so", "thereabouts"]));
    if or_so {
        (said.amount.about, next) = (true, next + 2);
    }
    Some((said, next))
}

/// 'four hundred gram tins', 'fourteen ounce can': what one holds, its unit, the package and the index after it.
fn packed(tokens: &[Token], at: usize) -> Option<(Amount, Unit, Unit, usize)> {
    let (inner, next) = numbers::one(tokens, at)?;
    let (measure, next) = unit(tokens, next)?;
    let (package, next) = unit(tokens, next)?;
    let packs = matches!(
        package,
        Unit::Can | Unit::Jar | Unit::Bottle | Unit::Packet | Unit::Carton | Unit::Tub | Unit::Bag | Unit::Box
    );
    packs.then_some((Amount::single(inner), measure, package, next))
}

/// A unit in one or two words at this word, never a single letter.
pub(super) fn unit(tokens: &[Token], at: usize) -> Option<(Unit, usize)> {
    let first = tokens.get(at).filter(|t| t.is_word() && t.lower.len() > 1)?;
    if let Some(second) = tokens.get(at + 1).filter(|t| t.is_word() && t.lower.len() > 2)
        && let Some(unit) = Unit::from_spelling(&format!("{} {}", first.lower.as_str(), second.lower.as_str()))
    {
        return Some((unit, at + 2));
    }
    if first.is_any(&["bun", "head", "heads", "lit", "lug", "stem"]) && !tokens.get(at + 1).is_some_and(|t| t.is("of"))
    {
        return None;
    }
    // 'bay leaf', 'a glass dish': the unit has a food behind it or stands at the end.
    Some((Unit::from_spelling(&first.lower)?, at + 1))
}

/// Numbers of minutes, degrees, inches, people and the like measure no food.
fn not_a_food(tokens: &[Token], at: usize) -> bool {
    let more = usize::from(
        tokens
            .get(at)
            .is_some_and(|t| t.is_any(&["more", "good", "whole", "long"])),
    );
    tokens.get(at + more).is_some_and(|t| {
        t.is_one_of(
            "minute minutes hour hours second seconds day days week weeks year years degree degrees inch inches \
             centimetre centimetres centimeter centimeters cm mm millimetres percent people dollars times time o'clock \
             count fan by one ones of-them waters lots goes batches",
        ) || t.sign() == Some('%')
    }) && !(tokens.get(at + more).is_some_and(|t| t.is("one")) && unit(tokens, at + more + 1).is_some())
}

/// 'the juice of a lemon', 'zest of two oranges'.
fn of_a_part(tokens: &[Token], at: usize, listed: bool) -> Option<Mention> {
    let start = at + usize::from(tokens.get(at).is_some_and(|t| t.is("the")));
    let part = tokens
        .get(start)
        .filter(|t| t.is_any(&["juice", "zest", "rind", "peel", "yolk", "yolks", "whites"]))?;
    let of_next = tokens.get(start + 1).is_some_and(|t| t.is("of"));
    let number = numbers::amount(tokens, start + 2).filter(|_| of_next)?;
    let (said, next) = said(tokens, number)?;
    let mut food = food::food(tokens, next, How::Counted, listed)?;
    food.words.insert(0, part.lower.to_string());
    food.name = food.name.clone();
    let mut found = of(at, food.next);
    found.vague = Some(format!("{} of", part.lower.as_str()));
    found.said = Some(said);
    found.food = Some(food);
    Some(found)
}

/// A food without an amount before it; one may follow: 'garlic four cloves', 'salt, a teaspoon'.
fn bare(tokens: &[Token], at: usize, listed: bool) -> Option<Mention> {
    if vessel::at(tokens, at).is_some() {
        return None;
    }
    let food = food::food(tokens, at, How::Bare, listed)?;
    let mut found = of(at, food.next);
    found.food = Some(food);
    Some(found)
}

/// Whether 'no', 'not', 'without' or 'don't' stands right before.
fn negated(tokens: &[Token], at: usize) -> bool {
    let near = at.saturating_sub(4)..at;
    let Some(words) = tokens.get(near) else {
        return false;
    };
    let from = words.iter().rposition(|t| t.sign().is_some()).map_or(0, |at| at + 1);
    let joined = words
        .iter()
        .rposition(|t| t.is_any(&["and", "but", "so", "because"]))
        .map_or(0, |at| at + 1);
    let said: Vec<&str> = words.iter().skip(from.max(joined)).map(|t| t.lower.as_str()).collect();
    let never = |word: &&str| matches!(*word, "don't" | "never" | "won't" | "didn't");
    said.last()
        .is_some_and(|word| matches!(*word, "no" | "not" | "without" | "never"))
        || said.iter().rev().skip(1).take(2).any(never)
}

/// The words from one place to another, small, with single spaces.
pub(super) fn text(tokens: &[Token], from: usize, next: usize) -> String {
    let words = tokens.get(from..next).unwrap_or_default().iter();
    words.map(|t| t.lower.as_str()).collect::<Vec<_>>().join(" ")
}
