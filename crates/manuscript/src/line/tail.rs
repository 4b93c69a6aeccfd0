//! What follows the name of a food: after commas and in brackets.

use super::Line;
use super::again::aside_quantities;
use super::alternative::alternatives;
use super::entry::Draft;
use super::name::nounlike;
use super::quantity::measured;
use super::unit::{is_package, size_word};
use crate::lexicon::Class;
use crate::likened::likened;
use crate::number;
use crate::token::{Kind, Token};
use crate::{Quantity, Span, Words};

/// A stretch that holds flags alone ('to taste', 'optional') even where a name is expected.
pub(crate) fn flagged(line: &Line, segment: &[usize], draft: &mut Draft) -> bool {
    let words: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
    if words.first().is_some_and(|t| t.is("as")) && words.get(1).is_some_and(|t| t.is_any(&["much", "many"])) {
        return as_much(line, segment, draft);
    }
    let flags = ["optional", "opt", "divided"];
    words.len() == 1 && words[0].is_any(&flags) && {
        apply(line, segment, draft);
        true
    }
}

/// 'as much bacon as you want to garnish'.
fn as_much(line: &Line, segment: &[usize], draft: &mut Draft) -> bool {
    let until = segment
        .iter()
        .skip(2)
        .position(|at| line.tokens[*at].is("as"))
        .map_or(segment.len(), |i| i + 2);
    let words: Vec<&Token> = segment[2.min(until)..until]
        .iter()
        .map(|at| &line.tokens[*at])
        .collect();
    let Some(found) = super::name::named(line.text, &words, draft.context) else {
        return false;
    };
    draft.made.items.push(found.item);
    draft.made.for_serving |= segment[until..].iter().any(|at| serves(&line.tokens[*at]));
    true
}

fn serves(token: &Token) -> bool {
    token.is_one_of("serve serving garnish garnishing table decorate pass eat finish top topping scatter sprinkle")
}

/// Reads one stretch after the name.
pub(crate) fn apply(line: &Line, segment: &[usize], draft: &mut Draft) {
    // What is told of one food is never longer; a page may be one line.
    let mut segment = &segment[..segment.len().min(120)];
    while let Some((first, rest)) = segment.split_first() {
        let token = &line.tokens[*first];
        let skip = token.sign().is_some_and(|s| !matches!(s, '~' | '+'))
            || token.is_any(&["and", "then", "but", "&", "that's"])
                && !rest
                    .first()
                    .is_some_and(|at| line.tokens[*at].is_any(&["more", "extra"]));
        if !skip {
            break;
        }
        segment = rest;
    }
    // 'about the size of a hazelnut' measures by the eye.
    if let Some(next) = segment.first().and_then(|at| likened(&line.tokens, *at)) {
        let rest = segment.iter().position(|at| *at >= next).unwrap_or(segment.len());
        apply(line, &segment[rest..], draft);
        return;
    }
    let Some(first) = segment.first().map(|at| &line.tokens[*at]) else {
        return;
    };
    let has = |word: &str| segment.iter().any(|at| line.tokens[*at].is(word));
    let second = segment.get(1).map(|at| &line.tokens[*at]);
    let second_is = |words: &[&str]| second.is_some_and(|t| t.is_any(words));
    let made = &mut draft.made;
    if let Some(at) = segment
        .iter()
        .position(|at| line.tokens[*at].is_any(&["optional", "opt", "divided"]))
    {
        made.optional |= has("optional") || has("opt");
        made.divided |= has("divided");
        let (before, after) = (&segment[..at], &segment[at + 1..]);
        apply(line, before, draft);
        // 'optional, but do': the writer's opinion.
        if !after
            .iter()
            .take(2)
            .any(|at| line.tokens[*at].is_any(&["but", "though"]))
        {
            apply(line, after, draft);
        }
    } else if let Some(at) = position(line, segment, "to", &["taste"]) {
        made.to_taste = true;
        let before: Vec<usize> = segment[..at]
            .iter()
            .copied()
            .filter(|at| !line.tokens[*at].is("or"))
            .collect();
        apply(line, &before, draft);
        apply(line, &segment[at + 2..], draft);
    } else if let Some(at) = plus_more(line, segment) {
        let from = segment[at];
        made.plus_more = line
            .span(from, last(segment) + 1)
            .map(|span| Words::at(line.text, span));
        apply(line, &segment[..at], draft);
    } else if first.is("if") || first.is("when") && second_is(&["available"]) {
        let wish = [
            "liked",
            "like",
            "desired",
            "wish",
            "wished",
            "want",
            "wanted",
            "using",
            "have",
            "available",
            "can",
            "preferred",
        ];
        made.optional |= segment.iter().any(|at| line.tokens[*at].is_any(&wish));
    } else if first.is("for") || first.is("to") && !second_is(&["a", "the"]) {
        made.for_serving |= segment.iter().any(|at| serves(&line.tokens[*at]));
    } else if first.is("of") && second.is_some_and(|t| t.class.is(Class::SIZE)) {
        made.size = made.size.take().or(second.and_then(|t| size_word(t.class)));
    } else if first.is("tt") || first.is("at") && second_is(&["discretion"]) {
        made.to_taste = true;
    } else if first.is("size") || first.is("the") && second_is(&["size"]) || second_is(&["size"]) && segment.len() == 2
    {
        // 'the size of an egg', 'walnut size' measures by the eye.
    } else if remark(line, segment) {
        // 'see Index', 'page 12', 'save the rest for the stock': not of this food.
    } else if first.is("in") && second_is(&["all", "total"]) {
        apply(line, &segment[2..], draft);
    } else if first
        .is_one_of("until till as per enough tbc which such like i.e e.g each depending is are can may you without by")
        && !(first.is("each") && segment.len() > 1)
    {
        if first.is_any(&["such", "like", "e.g"]) {
            // Examples of the kind that is meant, no other food.
        }
    } else if first.is_any(&["or", "preferably", "ideally"]) || first.sign() == Some('/') {
        other(line, segment, draft);
    } else if !again(line, segment, draft) {
        tell(line, segment, draft);
    }
}

fn last(segment: &[usize]) -> usize {
    segment.last().copied().unwrap_or(0)
}

fn position(line: &Line, segment: &[usize], word: &str, then: &[&str]) -> Option<usize> {
    let fits = |pair: &[usize]| line.tokens[pair[0]].is(word) && line.tokens[pair[1]].is_any(then);
    segment.windows(2).position(fits)
}

/// Words to the reader: where something is told ('page 12', 'see step 3', 'No. 12'), or what to do with the rest of it.
fn remark(line: &Line, segment: &[usize]) -> bool {
    let word = |at: usize| segment.get(at).map(|at| &line.tokens[*at]);
    let is = |at: usize, words: &[&str]| word(at).is_some_and(|t| t.is_any(words));
    let stop = usize::from(word(1).is_some_and(|t| t.sign() == Some('.')));
    let figure = word(1 + stop).is_some_and(|t| t.number().is_some());
    let told = is(0, &["page", "pages", "p", "pp", "no", "step", "note", "card", "recipe"]) && figure;
    let rest = is(0, &["save", "keep", "use"]) && is(1, &["the", "your", "any", "what", "all", "it", "them"]);
    told || is(0, &["see"]) || rest
}

/// 'plus more for dusting', 'and extra to serve', 'extra for the tin'.
fn plus_more(line: &Line, segment: &[usize]) -> Option<usize> {
    let is = |at: Option<&usize>, words: &[&str]| at.is_some_and(|at| line.tokens[*at].is_any(words));
    let plus = segment.iter().enumerate().position(|(i, at)| {
        let sign = line.tokens[*at].sign() == Some('+') && is(segment.get(i + 1), &["more", "extra"]);
        line.tokens[*at].is("plus") || sign
    });
    let more = segment
        .iter()
        .position(|at| line.tokens[*at].is_any(&["more", "extra"]));
    match (plus, more) {
        (Some(plus), _) => Some(plus),
        (None, Some(more)) if more <= 1 && segment.len() > more => Some(0),
        _ => None,
    }
}

/// After 'or' or 'preferably': another food, or another way to prepare this one.
fn other(line: &Line, segment: &[usize], draft: &mut Draft) {
    let rest: Vec<&Token> = segment[1..].iter().map(|at| &line.tokens[*at]).collect();
    let Some(first) = rest.first() else { return };
    if first.is_any(&["so", "more", "less", "thereabouts"]) {
        return;
    }
    if first.is_any(&["none", "nothing", "omit", "not"]) {
        draft.made.optional = true;
        return;
    }
    // 'preferably fresh' asks for a better one of the same.
    if line.tokens[segment[0]].is_any(&["preferably", "ideally"]) && !rest.iter().any(|t| nounlike(t)) {
        return;
    }
    let of = first.class;
    let foods = rest.iter().any(|t| t.class.is(Class::FOOD));
    if of.is(Class::PREPARED | Class::MANNER) && !of.is(Class::BOUGHT | Class::FOOD) && !foods {
        tell(line, segment, draft);
        return;
    }
    let own = draft.made.items.last().cloned().unwrap_or_default();
    let found = alternatives(line, segment[1], last(segment) + 1, &own);
    draft.made.alternatives.extend(found);
}

/// 'about 3 lb', '4 or 5 of them', 'weighing 2 kg': the amount told in another measure.
fn again(line: &Line, segment: &[usize], draft: &mut Draft) -> bool {
    let start = usize::from(line.tokens[segment[0]].is_any(&["weighing", "total", "totalling", "from"]));
    let Some(at) = segment.get(start).copied() else {
        return false;
    };
    let Some(counted) = number::amount(&line.tokens, at).filter(|c| !c.article) else {
        return false;
    };
    let measure = measured(line, at, true);
    let unit = measure.as_ref().and_then(|m| m.quantity).and_then(|q| q.unit);
    let next = if unit.is_some() {
        measure.as_ref().map_or(counted.next, |m| m.next)
    } else {
        counted.next
    };
    let rest: Vec<&Token> = segment
        .iter()
        .filter(|i| **i >= next)
        .map(|i| &line.tokens[*i])
        .collect();
    let of_them = rest.first().is_some_and(|t| t.is("of") || t.is("them")) && rest.iter().any(|t| t.is("them"));
    let each = rest.iter().any(|t| t.is("each")) || measure.as_ref().is_some_and(|m| m.each);
    let done = rest
        .iter()
        .all(|t| t.is_one_of("of them each in all total altogether ear ears cob cobs"));
    let taken = done && (unit.is_some() || of_them || start > 0 || rest.is_empty());
    if !taken {
        return false;
    }
    let span = line.span(at, next).unwrap_or_default();
    let summed = measure.as_ref().and_then(|m| m.quantity).filter(|_| unit.is_some());
    add_quantity(
        draft,
        Quantity {
            amount: summed.map_or(counted.amount, |quantity| quantity.amount),
            unit,
            span,
        },
        each,
    );
    true
}

fn add_quantity(draft: &mut Draft, quantity: Quantity, each: bool) {
    let made = &mut draft.made;
    if each {
        made.package = made.package.or(Some(quantity));
    } else if made.quantity.is_none() {
        made.quantity = Some(quantity);
    } else {
        made.also.push(quantity);
    }
}

/// Everything else tells of work or state.
fn tell(line: &Line, segment: &[usize], draft: &mut Draft) {
    let mut segment = segment;
    if let Some(first) = segment.first().map(|at| &line.tokens[*at])
        && first.is_any(&["all", "both", "each"])
        && segment.len() > 1
    {
        draft.shared = true;
        segment = &segment[1..];
    }
    let tokens: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
    let sold = |t: &&Token| t.class.is(Class::STATE | Class::BOUGHT) && !t.class.is(Class::PREPARED);
    let state =
        tokens.iter().all(|t| sold(t) || t.is_any(&["and", "or"])) && tokens.iter().any(|t| t.class.is(Class::STATE));
    let size = tokens
        .iter()
        .all(|t| t.class.is(Class::SIZE) && !t.class.is(Class::FOOD));
    if let (true, Some(item)) = (state, draft.made.items.last_mut()) {
        item.state.extend(tokens.iter().map(|t| t.lower.to_string()));
        return;
    }
    if size && !tokens.is_empty() {
        draft.made.size = draft.made.size.take().or(size_word(tokens[0].class));
        return;
    }
    // 'shin is best', 'these should be firm': the writer's remark.
    if tokens
        .iter()
        .any(|t| t.is_any(&["is", "are", "will", "should", "works", "work", "you're", "they're"]))
    {
        return;
    }
    // The work is over where a purpose or a condition follows: 'chopped, to serve', 'diced if large'.
    let end = tokens.iter().position(|t| t.is("if")).unwrap_or(tokens.len());
    // 'cooked till soft' is how far the work goes; 'milk, until it covers' is none.
    let until =
        |at: &usize| tokens[*at].is_any(&["until", "till"]) && !(*at > 0 && tokens[at - 1].class.is(Class::PREPARED));
    let end = end.min((0..tokens.len()).find(until).unwrap_or(tokens.len()));
    let end = end.min(purpose(&tokens).unwrap_or(tokens.len()));
    let end = end.min(aside_of_work(&tokens).unwrap_or(tokens.len()));
    // A stretch that begins with its purpose has been asked for it already.
    if (1..tokens.len()).contains(&end) {
        tell(line, &segment[..end], draft);
        apply(line, &segment[end..], draft);
        return;
    }
    let span = tokens.iter().map(|t| t.span).reduce(Span::join);
    if let Some(span) = span {
        let item = None;
        draft.prepared.push((item, Words::at(line.text, span)));
    }
}

/// Where 'for you', 'by the butcher', 'without letting it brown' starts: who does it, and what to mind.
fn aside_of_work(tokens: &[&Token]) -> Option<usize> {
    let at = |pair: &[&Token]| {
        let who = pair[0].is_any(&["for", "by"]) && pair[1].is_any(&["you", "me", "us", "your", "the"]);
        let mind = pair[0].is("without") && pair[1].lower.ends_with("ing");
        who || mind
    };
    tokens.windows(2).position(at)
}

/// Where 'to serve', 'for garnish' starts.
fn purpose(tokens: &[&Token]) -> Option<usize> {
    tokens
        .windows(2)
        .position(|pair| pair[0].is_any(&["to", "for"]) && serves(pair[1]))
        .or_else(|| {
            tokens
                .windows(3)
                .position(|pair| pair[0].is_any(&["to", "for"]) && pair[1].is("the") && serves(pair[2]))
        })
}

/// Reads what stands in brackets.
pub(crate) fn aside(aside: &Line, draft: &mut Draft) {
    let Some(first) = aside.tokens.first() else { return };
    let has = |words: &[&str]| aside.tokens.iter().any(|t| t.is_any(words));
    let quantities = aside_quantities(aside);
    if !quantities.is_empty() {
        let known = |q: &Quantity| draft.made.also.contains(q) || draft.made.package.as_ref() == Some(q);
        let fresh: Vec<Quantity> = quantities.into_iter().filter(|q| !known(q)).collect();
        // '6 cans corn (15 oz)' tells what one can holds, unless it says that all do.
        let unit = draft.made.quantity.and_then(|q| q.unit);
        let each = unit.is_some_and(is_package) && !has(&["total", "all", "altogether"]);
        for quantity in fresh {
            add_quantity(draft, quantity, each && draft.made.package.is_none());
        }
        return;
    }
    let all: Vec<usize> = (0..aside.tokens.len())
        .filter(|at| !matches!(aside.tokens[*at].kind, Kind::Aside(_)))
        .collect();
    if has(&["optional", "opt"]) && aside.tokens.len() <= 3 {
        draft.made.optional = true;
    } else if first.is("or") {
        in_brackets_or(aside, &all, draft);
    } else if first.is_any(&["preferably", "ideally"]) {
        // A preference for a kind of the same food.
    } else if let Some(end) = stand_in(aside) {
        let own = draft.made.items.last().cloned().unwrap_or_default();
        let others = alternatives(aside, 0, end, &own);
        draft.made.alternatives.extend(others);
    } else if first.number().is_some() || first.class.is(Class::ABOUT) || first.is("weighing") {
        let before = draft.prepared.len();
        if !again(aside, &all, draft) {
            draft.prepared.truncate(before);
        }
    } else if told(aside) {
        apply(aside, &all, draft);
    }
}

/// Whether the words in brackets are of the kind that stands after commas too; others are the writer's remarks.
fn told(aside: &Line) -> bool {
    let Some(first) = aside.tokens.first() else {
        return false;
    };
    let flags = aside.tokens.iter().any(|t| t.is_any(&["optional", "divided", "taste"]));
    let of = first.class;
    flags
        || first.is_any(&["for", "to", "plus", "if", "cut", "extra"])
        || of.is(Class::PREPARED | Class::MANNER)
            && !aside.tokens.iter().any(|t| t.sign() == Some('*') || t.is("weight"))
}

/// '(or 2, or none)', '(or olive oil)', '(or oil, for vegans)'.
fn in_brackets_or(aside: &Line, all: &[usize], draft: &mut Draft) {
    let none = aside.tokens.iter().any(|t| t.is_any(&["none", "omit", "nothing"]));
    draft.made.optional |= none;
    let end = all.iter().copied().find(|at| {
        aside.tokens[*at].sign() == Some(',')
            && aside
                .tokens
                .get(at + 1)
                .is_some_and(|t| t.is_any(&["for", "if", "but", "to"]))
    });
    let segment: Vec<usize> = all.iter().copied().take_while(|at| Some(*at) != end).collect();
    if aside.tokens.iter().any(|t| t.is("taste")) {
        draft.made.to_taste = true;
    } else if !none && segment.len() > 1 {
        other(aside, &segment, draft);
    }
}

/// 'escarole can also be used', 'red is fine', 'parsley if you can't get it': where the names end.
fn stand_in(aside: &Line) -> Option<usize> {
    let at = aside
        .tokens
        .iter()
        .position(|t| t.is_any(&["can", "is", "are", "will", "works", "work", "if", "instead"]))?;
    let rest = &aside.tokens[at..];
    let said = rest.iter().any(|t| {
        t.is_any(&[
            "used", "fine", "ok", "okay", "do", "works", "work", "can't", "cannot", "instead", "good",
        ])
    });
    let food = aside.tokens[..at]
        .iter()
        .any(|t| nounlike(t) && t.class.is(Class::FOOD) || t.class.is(Class::KIND));
    (said && food && at > 0).then_some(at)
}
