//! One entry of a line: one amount and the foods that have it.

use super::foods::{kind_after, names};
use super::name::{Context, named, nounlike};
use super::quantity::{Measured, measured};
use super::unit::unit;
use super::{Line, tail};
use crate::lexicon::{self, Class, class};
use crate::number;
use crate::token::{Gap, Kind, Token};
use crate::{Ingredient, Item, Span, Words};
use potwright_measure::{Dimension, Unit};

/// An entry in the making.
#[derive(Clone, Debug, Default)]
pub(crate) struct Draft {
    pub(crate) made: Ingredient,
    /// Work told, and of which of the items alone.
    pub(crate) prepared: Vec<(Option<usize>, Words)>,
    /// 'all finely diced': the work is told of every food on the line.
    pub(crate) shared: bool,
    /// 'one of flour': the unit is that of the entry before.
    ellipsis: bool,
    /// The context in which names are read.
    pub(crate) context: Context,
}

/// The entries of a line whose amounts stand in front.
pub(crate) fn entries(line: &Line, whole: Span) -> Vec<Ingredient> {
    let mut drafts: Vec<Draft> = Vec::new();
    let mut at = 0;
    while at < line.tokens.len() {
        let (mut draft, next) = entry(line, at, !drafts.is_empty());
        // 'dissolved in 1 tbsp hot water': the water is an entry of its own, and the work is told whole.
        let worked = at > 0 && line.tokens[at - 1].is_any(&["with", "in", "into"]);
        if let Some((_, words)) = drafts.last_mut().and_then(|d| d.prepared.last_mut()).filter(|_| worked) {
            *words = Words::at(line.text, words.span.join(draft.made.span));
        }
        let before = drafts.last().and_then(|d| d.made.quantity).and_then(|q| q.unit);
        if let (true, Some(quantity), Some(unit)) = (draft.ellipsis, &mut draft.made.quantity, before) {
            quantity.unit = quantity.unit.or(Some(unit));
        }
        drafts.push(draft);
        at = next.max(at + 1);
    }
    share(&mut drafts);
    let words = Words::at(line.text, whole);
    let divided = drafts.iter().any(|d| d.made.divided);
    let finish = |mut draft: Draft| {
        draft.made.preparation = preparation(&draft);
        // A page that is one line is not kept once more with every entry.
        let whole = words.text.len() < 2000;
        draft.made.line = if whole {
            words.clone()
        } else {
            Words::at(line.text, draft.made.span)
        };
        draft.made.divided |= divided;
        draft.made
    };
    drafts.into_iter().map(finish).collect()
}

/// '1 onion, 1 carrot, both diced': the last work is that of all.
fn share(drafts: &mut [Draft]) {
    let Some(last) = drafts.last().filter(|d| d.shared).cloned() else {
        return;
    };
    for draft in drafts.iter_mut().rev().skip(1) {
        draft.prepared.extend(last.prepared.iter().cloned());
    }
}

fn preparation(draft: &Draft) -> Option<Words> {
    let own: std::collections::BTreeSet<usize> = draft.prepared.iter().filter_map(|(item, _)| *item).collect();
    // Of three foods and more, the one that is worked on is named.
    let named = own.len() > 1 || own.len() == 1 && draft.made.items.len() > 2;
    let texts = draft.prepared.iter().map(|(item, words)| {
        let item = item.filter(|_| named).and_then(|item| draft.made.items.get(item));
        item.map_or(words.text.clone(), |item| format!("{} {}", item.name, words.text))
    });
    let text = texts.collect::<Vec<_>>().join(", ");
    let span = draft.prepared.iter().map(|(_, words)| words.span).reduce(Span::join)?;
    Some(Words { text, span })
}

/// The entry at a token, and the index at which the next one starts.
fn entry(line: &Line, at: usize, further: bool) -> (Draft, usize) {
    if let Some(found) = part_of_counted(line, at).or_else(|| portion_of_counted(line, at)) {
        return found;
    }
    let measure = measured(line, at, false);
    let start = measure.as_ref().map_or(at, |m| m.next);
    let (end, next) = entry_end(line, start, further && measure.is_some());
    let mut draft = Draft::default();
    let lists = measure.as_ref().is_none_or(|m| m.each);
    if let Some(measure) = measure {
        take_measure(&mut draft, measure);
    }
    body(line, start, end, lists, &mut draft);
    draft.made.span = line.span(at, end).unwrap_or_default();
    (draft, next)
}

fn take_measure(draft: &mut Draft, measure: Measured) {
    let unit = measure.quantity.and_then(|q| q.unit);
    draft.context.counted =
        measure.quantity.is_some() && unit.is_none() || measure.open.as_ref().is_some_and(|o| o.unit.is_none());
    draft.context.packed =
        measure.package.is_some() || matches!(unit, Some(Unit::Can | Unit::Jar | Unit::Carton | Unit::Packet));
    draft.ellipsis = measure.ellipsis;
    let made = &mut draft.made;
    made.to_taste |= measure
        .open
        .as_ref()
        .is_some_and(|open| open.words.text.eq_ignore_ascii_case("to taste"));
    (made.quantity, made.open, made.also) = (measure.quantity, measure.open, measure.also);
    (made.package, made.size) = (measure.package, measure.size);
}

/// 'juice of 2 lemons', 'yolks 3 eggs', 'the zest and juice of 1 orange': a part of what is counted.
fn part_of_counted(line: &Line, at: usize) -> Option<(Draft, usize)> {
    let tokens = &line.tokens;
    let is = |index: usize, words: &[&str]| tokens.get(index).is_some_and(|t| t.is_any(words));
    let mut start = at + usize::from(is(at, &["the"]));
    let from = start;
    while tokens
        .get(start)
        .is_some_and(|t| t.class.is(Class::PREPARED | Class::MANNER | Class::STATE) && !t.class.is(Class::PART))
    {
        start += 1;
    }
    let mut next = start;
    while tokens.get(next).is_some_and(|t| t.class.is(Class::PART))
        || (next > start
            && (is(next, &["and", "of"])
                || tokens
                    .get(next)
                    .is_some_and(|t| matches!(t.sign(), Some('&' | '+' | ','))))
            && tokens.get(next + 1).is_some_and(|t| t.class.is(Class::PART)))
    {
        next += 1;
    }
    if next == start {
        return None;
    }
    let part = (start, next);
    let next = next + usize::from(is(next, &["of"]));
    let counted = number::amount(tokens, next)?;
    let measure = measured(line, next, false)?;
    let (end, resume) = entry_end(line, measure.next, false);
    let mut draft = Draft::default();
    take_measure(&mut draft, measure.clone());
    body(line, measure.next, end, false, &mut draft);
    let parts = line.span(part.0, part.1)?;
    let words: Vec<&str> = line.tokens[part.0..part.1]
        .iter()
        .filter_map(|t| (t.is_word()).then_some(t.lower.as_str()))
        .map(|w| if w == "&" { "and" } else { w })
        .collect();
    let joined = if tokens[part.0..part.1]
        .iter()
        .any(|t| matches!(t.sign(), Some('&' | '+')))
        && words.len() == 2
    {
        words.join(" and ")
    } else {
        words.join(" ")
    };
    for item in &mut draft.made.items {
        let name = match item.name.rsplit_once(' ') {
            Some((before, last)) => format!("{before} {}", lexicon::singular(last)),
            None => lexicon::singular(&item.name).into_owned(),
        };
        *item = Item {
            name: format!("{name} {joined}"),
            state: item.state.clone(),
            span: item.span.join(parts),
        };
    }
    if let Some(span) = line.span(from, start).filter(|_| start > from) {
        let words = Words::at(line.text, span);
        let only_state = tokens[from..start].iter().all(|t| t.class.is(Class::STATE));
        if !only_state {
            draft.prepared.insert(0, (None, words));
        }
    }
    draft.made.span = line.span(at, end).unwrap_or_default();
    let whole = counted.amount.low.is_positive() && !draft.made.items.is_empty();
    whole.then_some((draft, resume))
}

/// 'white part only of 2 leeks', 'the green tops of 3 scallions': which part is used is work on what is counted.
fn portion_of_counted(line: &Line, at: usize) -> Option<(Draft, usize)> {
    let tokens = &line.tokens;
    let words = tokens.get(at..)?.iter().take(5).take_while(|t| t.is_word());
    let of = at + words.take_while(|t| !t.is("of")).count();
    let part = |t: &Token| t.is_any(&["part", "parts", "only", "tops", "ends"]);
    tokens
        .get(of)
        .filter(|t| t.is("of") && of > at && part(&tokens[of - 1]))?;
    number::amount(tokens, of + 1)?;
    let (mut draft, next) = entry(line, of + 1, false);
    let from = at + usize::from(tokens[at].is("the"));
    draft
        .prepared
        .insert(0, (None, Words::at(line.text, line.span(from, of)?)));
    draft.made.span = line.span(at, of)?.join(draft.made.span);
    (!draft.made.items.is_empty()).then_some((draft, next))
}

/// Where the entry that starts here is over, and where the next one starts.
///
/// On a line of several entries a bare food after a comma is one of its own.
fn entry_end(line: &Line, start: usize, further: bool) -> (usize, usize) {
    let tokens = &line.tokens;
    let mut noun = false;
    for at in start..tokens.len() {
        let token = &tokens[at];
        let joins = matches!(token.sign(), Some('+' | '&' | ',' | ';')) || token.is_any(&["and", "plus"]);
        if noun && joins {
            let next = at
                + 1
                + usize::from(
                    tokens
                        .get(at + 1)
                        .is_some_and(|t| t.is_any(&["and", "plus"]) || matches!(t.sign(), Some('&' | '+'))),
                );
            let comma = matches!(token.sign(), Some(',' | ';')) && next == at + 1;
            let own = comma && (further && bare_food(line, next) || measured_behind(line, next));
            if starts_entry(line, next, comma) || own {
                return (at, next);
            }
        }
        if noun && token.is_any(&["with", "in", "into"]) && worked_with(line, start, at) {
            return (at, at + 1);
        }
        noun |= nounlike(token);
    }
    (tokens.len(), tokens.len())
}

/// 'beaten with 3 tbsp milk', 'dissolved in ½ cup water': what it is worked with is measured out too.
fn worked_with(line: &Line, start: usize, at: usize) -> bool {
    let tokens = &line.tokens;
    let before = tokens.get(at.wrapping_sub(1)).filter(|_| at > start);
    let worked = before.is_some_and(|t| t.class.is(Class::PREPARED) && !t.class.is(Class::FOOD));
    let Some(measure) = measured(line, at + 1, false).filter(|m| !m.of_the && m.size.is_none()) else {
        return false;
    };
    let unit = measure.quantity.and_then(|q| q.unit);
    let weighed = unit.is_some_and(|unit| unit.dimension() != Dimension::Piece);
    let food = tokens[measure.next..]
        .iter()
        .take(4)
        .take_while(|t| t.is_word())
        .any(|t| t.class.is(Class::FOOD));
    worked && weighed && food
}

/// 'salt' or 'black pepper' up to the next comma, and nothing else.
fn bare_food(line: &Line, at: usize) -> bool {
    let rest = line.tokens.get(at..).unwrap_or(&[]);
    let words: Vec<&Token> = rest.iter().take_while(|t| t.is_word()).take(4).collect();
    let describes = Class::FOOD | Class::KIND | Class::STATE;
    let ends = rest
        .get(words.len())
        .is_none_or(|t| matches!(t.sign(), Some(',' | ';' | '.')));
    ends && words.last().is_some_and(|t| t.class.is(Class::FOOD))
        && words.iter().all(|t| t.class.is(describes) || t.is("and"))
}

/// 'spuds if you want (4 or so)': a bare food after a comma whose amount or wish stands behind it.
fn measured_behind(line: &Line, at: usize) -> bool {
    let rest = line.tokens.get(at..).unwrap_or(&[]);
    let stretch: Vec<&Token> = rest
        .iter()
        .take_while(|t| !matches!(t.sign(), Some(',' | ';' | '.')))
        .take(12)
        .collect();
    let describes = Class::FOOD | Class::KIND | Class::STATE;
    let words = stretch
        .iter()
        .take_while(|t| t.is_word() && t.class.is(describes))
        .count();
    let food = words > 0 && stretch[words - 1].class.is(Class::FOOD);
    // 'skin on (about 1.2 kg)' goes on about the food before it.
    let amount = stretch.get(words).is_some_and(|t| match t.kind {
        Kind::Aside(index) => line.asides.get(index).is_some_and(counts),
        _ => false,
    });
    let wish = stretch.get(words).is_some_and(|t| t.is_any(&["if", "optional"]));
    food && (amount || wish)
}

/// Whether brackets hold an amount and nothing else: '(4 or so)', '(about 200 g)'.
fn counts(aside: &Line) -> bool {
    let measure = measured(aside, 0, true).filter(|m| !m.implied);
    measure.is_some_and(|m| m.next >= aside.tokens.len())
}

/// Whether a new amount with a food of its own stands here.
fn starts_entry(line: &Line, at: usize, comma: bool) -> bool {
    let Some(first) = line.tokens.get(at) else { return false };
    if first.is_any(&["some", "enough", "few"]) {
        return false;
    }
    if let Some((draft, _)) = part_of_counted(line, at) {
        return !draft.made.items.is_empty();
    }
    let Some(measure) = measured(line, at, false) else {
        return false;
    };
    let vague = measure.implied && !measure.has_unit;
    let Some(noun) = line.tokens.get(measure.next).filter(|t| t.is_word()) else {
        return false;
    };
    if unit(&line.tokens, measure.next).is_some() && !noun.class.is(Class::FOOD) {
        // 'about 3 lb' at the end says the amount again.
        return false;
    }
    let of = noun.class;
    let food = line.tokens[measure.next..]
        .iter()
        .take(4)
        .take_while(|t| t.is_word())
        .any(|t| t.class.is(Class::FOOD));
    let other = of.is(Class::PREPARED | Class::SHAPE | Class::MANNER) && !food
        || noun.is_any(&[
            "them", "for", "to", "in", "at", "per", "a", "more", "extra", "or", "and", "by", "of", "on", "if", "hours",
            "hour", "minutes", "days",
        ]);
    let about = measure
        .quantity
        .is_some_and(|q| q.unit.is_some_and(|u| u.dimension() == Dimension::Mass))
        && comma
        && !food;
    (food || !vague) && !other && !about
}

/// The words after the measure: names, then what is told of them.
fn body(line: &Line, start: usize, end: usize, lists: bool, draft: &mut Draft) {
    let segments = merged(line, segments(line, start, end));
    for (index, segment) in segments.iter().enumerate() {
        let words: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
        let food =
            index == 0 || (lists && (draft.made.items.is_empty() || foodlike(&words, draft.made.quantity.is_none())));
        if food && !tail::flagged(line, segment, draft) {
            names(line, segment, draft);
        } else if !food && !kind_after(line, segment, draft) {
            tail::apply(line, segment, draft);
        }
    }
    for at in start..end {
        if let Kind::Aside(index) = line.tokens[at].kind
            && let Some(aside) = line.asides.get(index)
        {
            tail::aside(aside, draft);
        }
    }
    if let Some(item) = draft.made.items.first()
        && draft.made.quantity.is_none_or(|q| q.unit.is_none())
        && is_equipment(item)
    {
        draft.made.equipment = true;
        draft.made.items.clear();
    }
}

fn is_equipment(item: &Item) -> bool {
    let last = item.name.rsplit(' ').next().unwrap_or("");
    let of = class(&last.to_lowercase());
    of.is(Class::EQUIPMENT) && !of.is(Class::FOOD)
}

/// The stretches between commas, without brackets, as token indices.
fn segments(line: &Line, start: usize, end: usize) -> Vec<Vec<usize>> {
    let mut found = vec![Vec::new()];
    for at in start..end {
        let token = &line.tokens[at];
        let spaced =
            token.is_dash() && token.gap > Gap::None && line.tokens.get(at + 1).is_some_and(|t| t.gap > Gap::None);
        let cuts = matches!(token.sign(), Some(',' | ';' | '|')) || spaced;
        if cuts || token.gap == Gap::Wide && at > start {
            found.push(Vec::new());
        }
        if !cuts
            && !matches!(token.kind, Kind::Aside(_))
            && let Some(last) = found.last_mut()
        {
            last.push(at);
        }
    }
    found.retain(|segment| !segment.is_empty());
    found
}

/// 'large, ripe tomatoes': a first stretch without a noun belongs to the next.
fn merged(line: &Line, mut segments: Vec<Vec<usize>>) -> Vec<Vec<usize>> {
    while segments.len() > 1 && !segments[0].iter().any(|at| nounlike(&line.tokens[*at])) {
        let next = segments.remove(1);
        let describes = next.iter().any(|at| nounlike(&line.tokens[*at]));
        segments[0].extend(next);
        if describes {
            break;
        }
    }
    segments
}

/// Whether a stretch after a comma names another food rather than telling of the one before.
fn foodlike(words: &[&Token], bare: bool) -> bool {
    let words: Vec<&Token> = words
        .iter()
        .copied()
        .skip_while(|t| t.is_any(&["and", "or", "&"]))
        .collect();
    let Some(first) = words.first() else { return false };
    if first.is_one_of("for to if with without plus or in on at from about not preferably cut no until all both") {
        return false;
    }
    let Some(found) = named("", &words, Context::default()) else {
        return false;
    };
    let head = words[..found.used].iter().rev().find(|t| t.is_word());
    let Some(head) = head else { return false };
    let of = head.class;
    let tells = Class::PREPARED | Class::SHAPE | Class::MANNER | Class::STATE | Class::SIZE | Class::KIND;
    if of.is(Class::FOOD)
        && !words
            .iter()
            .any(|t| t.is_any(&["off", "on", "removed", "discarded", "reserved", "left", "its", "their"]))
    {
        return true;
    }
    bare && !of.is(tells)
        && words.len() <= 3
        && !words.iter().any(|t| {
            t.class.is(Class::PREPARED | Class::SHAPE)
                || t.is_any(&[
                    "temperature",
                    "tt",
                    "off",
                    "on",
                    "out",
                    "in",
                    "tbc",
                    "please",
                    "whatever",
                ])
        })
}
