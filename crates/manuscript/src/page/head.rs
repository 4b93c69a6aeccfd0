//! Yield lines and declared times.

use potwright_measure::{Amount, Exact, Unit};

use crate::lexicon;
use crate::number;
use crate::token::{Gap, Token, tokens};
use crate::{DeclaredTime, Span, Words, YieldLine};

/// Words that open a yield line.
const YIELDS: &[&str] = &[
    "serves", "serve", "feeds", "makes", "yield", "yields", "servings", "serving", "portions", "batch", "covers",
    "does",
];
/// Words for those who eat.
const PEOPLE: &[&str] = &[
    "people", "persons", "person", "servings", "serving", "portions", "portion", "covers", "guests", "eaters",
    "helpings", "adults", "diners", "cov", "covs", "cvrs", "ptn", "ptns", "pax",
];
/// Words of time labels, and what they are the time of.
const TIMES: &[(&str, &str)] = &[
    ("prep", "preparation"),
    ("preparation", "preparation"),
    ("cook", "cooking"),
    ("cooking", "cooking"),
    ("total", "total"),
    ("active", "active"),
    ("hands-on", "active"),
    ("soaking", "soaking"),
    ("soak", "soaking"),
    ("chilling", "chilling"),
    ("resting", "resting"),
    ("marinating", "marinating"),
    ("time", "total"),
    ("inactive", "waiting"),
    ("rest", "resting"),
    ("chill", "chilling"),
    ("simmering", "cooking"),
    ("baking", "cooking"),
    ("oven", "cooking"),
    ("elapsed", "total"),
    ("ready", "total"),
];

/// What a row says of yield and time.
#[derive(Clone, Debug, Default)]
pub(crate) struct Head {
    pub(crate) yields: Option<YieldLine>,
    pub(crate) times: Vec<DeclaredTime>,
}

/// Reads a row as yield and time; `None` when it is neither.
pub(crate) fn head(text: &str, span: Span) -> Option<Head> {
    if span.end - span.start > 400 {
        return None;
    }
    opening(text, span).or_else(|| between_dashes(text, span))
}

/// 'Gluten-free – serves 8 – 2 hours': short remarks between dashes, one of them a yield or a time.
fn between_dashes(text: &str, span: Span) -> Option<Head> {
    const WORDS: usize = 6;
    let mut start = span.start;
    let mut pieces = Vec::new();
    for piece in span.of(text).split(" – ") {
        let end = start + piece.len();
        pieces.push(Span::new(start, end));
        start = end + " – ".len();
    }
    let short = |piece: &Span| piece.of(text).split_whitespace().count() <= WORDS;
    if pieces.len() < 2 || !pieces.iter().all(short) {
        return None;
    }
    let mut found = Head::default();
    for one in pieces.into_iter().filter_map(|piece| opening(text, piece)) {
        found.yields = found.yields.or(one.yields);
        found.times.extend(one.times);
    }
    (found.yields.is_some() || !found.times.is_empty()).then_some(found)
}

/// A row, or a piece of one, that opens with a yield or a time.
fn opening(text: &str, span: Span) -> Option<Head> {
    if !may_open(span.of(text)) {
        return None;
    }
    let mut all = tokens(text, span);
    all.retain(|t| !matches!(t.sign(), Some('*' | '_')));
    let words: Vec<&Token> = all.iter().filter(|t| t.is_word() || t.number().is_some()).collect();
    let first = words.first()?;
    let second = words.get(1);
    let counts = second.is_some_and(|t| t.number().is_some() || t.is_any(&["about", "around", "approximately", "up"]))
        || all
            .iter()
            .position(|t| t.span == first.span)
            .and_then(|i| number::number(&all, i + 1))
            .is_some()
        || second.is_some_and(|t| number::is_article(t));
    let label = |t: &Token| TIMES.iter().any(|(word, _)| t.is(word));
    let colon = all.iter().take(5).any(|t| t.sign() == Some(':'));
    let opens = first.is_any(YIELDS) && (counts || colon)
        || first.is("for") && for_people(&all)
        || first.is_any(&["enough", "sufficient"]) && second.is_some_and(|t| t.is("for"))
        || whole_count(&all);
    let timed = label(first) && (second.is_some_and(|t| t.is("time")) || colon || counts || first.is("time"));
    if !opens && !timed {
        return None;
    }
    let times = times(text, &all);
    let yields = yields(text, &all).filter(|_| opens || all.iter().any(|t| t.is_any(YIELDS)));
    (yields.is_some() || !times.is_empty()).then_some(Head { yields, times })
}

/// Whether the first word can open a yield line or a time; most rows are turned away here.
fn may_open(row: &str) -> bool {
    let mut words = row
        .split(|c: char| !c.is_alphanumeric() && c != '-')
        .filter(|word| !word.is_empty());
    let Some(first) = words.next().map(str::to_lowercase) else {
        return false;
    };
    let first = first.as_str();
    // A row that begins with a number is a yield only where it counts people.
    let counted = first.starts_with(|c: char| c.is_numeric()) || number::is_number_word(first);
    counted && words.any(|word| PEOPLE.iter().any(|people| people.eq_ignore_ascii_case(word)))
        || YIELDS.contains(&first)
        || matches!(first, "for" | "enough" | "sufficient")
        || TIMES.iter().any(|(word, _)| *word == first)
}

/// 'For 4', 'For four, as a side', 'for two people'.
fn for_people(all: &[Token]) -> bool {
    let Some((_, next)) = all
        .first()
        .and_then(|_| number::amount(all, 1))
        .map(|c| (c.amount, c.next))
    else {
        return false;
    };
    all.get(next)
        .is_none_or(|t| t.is_any(PEOPLE) || t.is("as") || matches!(t.sign(), Some(',' | '.' | ';' | '(')))
}

/// 'Enough for six', 'sufficient for eight persons', 'a supper for four', 'For four people': the 'for'.
pub(crate) fn for_so_many(all: &[Token], at: usize) -> bool {
    const MEALS: &[&str] = &[
        "supper",
        "dinner",
        "lunch",
        "meal",
        "starter",
        "enough",
        "sufficient",
        "plenty",
        "breakfast",
        "tea",
    ];
    let Some(counted) = all
        .get(at)
        .filter(|t| t.is("for"))
        .and_then(|_| number::amount(all, at + 1))
    else {
        return false;
    };
    let before = at.checked_sub(1).and_then(|before| all.get(before));
    let meal = before.is_some_and(|t| t.is_any(MEALS));
    let opens = before.is_none_or(|t| t.sign() == Some('.'));
    let next = all.get(counted.next);
    let people = next.is_some_and(|t| t.is_any(PEOPLE));
    let time = next.is_some_and(|t| minutes_of(t).is_some());
    !counted.article && !time && (meal || people && opens)
}

/// '6 to 8 servings', '10 portions' and nothing else.
fn whole_count(all: &[Token]) -> bool {
    number::amount(all, 0).filter(|c| !c.article).is_some_and(|c| {
        all.get(c.next).is_some_and(|t| t.is_any(PEOPLE)) && all.get(c.next + 1).is_none_or(|t| t.sign().is_some())
    })
}

/// The stretches of a row between strokes, bars, dots and columns.
fn parts<'a, 't>(all: &'a [Token<'t>]) -> Vec<&'a [Token<'t>]> {
    let mut found = Vec::new();
    let mut from = 0;
    for (at, token) in all.iter().enumerate() {
        let cuts = matches!(token.sign(), Some('|' | '·' | '/' | ';' | '•' | ',' | '.' | '(' | ')'));
        // 'Prep: 15 min  Cook: 2 hr': a new label opens a new stretch.
        let label = at > from && all.get(at + 1).is_some_and(|t| t.sign() == Some(':')) && !token.is("time");
        if cuts || label || token.gap == Gap::Wide {
            found.push(&all[from..at]);
            from = if cuts { at + 1 } else { at };
        }
    }
    found.push(&all[from..]);
    found.retain(|part| !part.is_empty());
    found
}

/// The yield a row or sentence states; what counts people before what counts pots.
pub(crate) fn yields(text: &str, all: &[Token]) -> Option<YieldLine> {
    let found: Vec<YieldLine> = parts(all)
        .into_iter()
        .filter_map(|part| yield_part(text, part))
        .collect();
    let people = found.iter().position(|y| y.unit.as_deref() == Some("serving"));
    found.into_iter().nth(people.unwrap_or(0))
}

fn yield_part(text: &str, part: &[Token]) -> Option<YieldLine> {
    let opens = |t: &Token| t.is_any(YIELDS) || t.is_any(&["for", "enough"]);
    let counted_after = |at: usize| (at + 1..part.len().min(at + 4)).any(|i| number::amount(part, i).is_some());
    let open = (0..part.len())
        .find(|at| opens(&part[*at]) && counted_after(*at))
        .unwrap_or(0);
    let opener = part.get(open)?;
    let opened = opener.is_any(YIELDS) || opener.is_any(&["for", "enough"]);
    let from = if opened { open + 1 } else { open };
    let start = (from..part.len().min(from + 3)).find(|at| number::amount(part, *at).is_some())?;
    let counted = number::amount(part, start)?;
    if counted.article && !opener.is_any(&["makes", "yields", "yield"]) {
        return None;
    }
    let mut amount = counted.amount;
    // '2/3 servings' are two or three.
    if let Some((low, high)) = part[start].text.split_once('/').filter(|_| counted.next == start + 1) {
        let whole = |text: &str| text.parse::<i64>().ok().map(Exact::whole);
        if let Some(range) = whole(low)
            .zip(whole(high))
            .and_then(|(low, high)| Amount::range(low, high))
        {
            amount = range;
        }
    }
    let noun = part.get(counted.next).filter(|t| t.is_word());
    let unit = match noun {
        Some(noun) if minutes_of(noun).is_some() => return None,
        Some(noun) if noun.is_any(PEOPLE) => "serving".to_owned(),
        Some(noun)
            if opener.is_any(&["makes", "yield", "yields", "batch"])
                || !opened
                || opener.is_any(&["servings", "serving"]) =>
        {
            unit_name(noun)
        }
        Some(noun) if opened && opener.is("for") && !noun.is_any(&["as", "or"]) => return None,
        _ if opener.is_any(&["makes", "yield", "yields"]) => "piece".to_owned(),
        _ => "serving".to_owned(),
    };
    let span = part.iter().map(|t| t.span).reduce(Span::join)?;
    Some(YieldLine {
        words: Words::at(text, span),
        amount: Some(amount),
        unit: Some(unit),
    })
}

fn unit_name(noun: &Token) -> String {
    Unit::from_spelling(noun.text).map_or_else(
        || lexicon::singular(&noun.lower).into_owned(),
        |unit| unit.name().to_owned(),
    )
}

/// The times that a sentence of the method declares: 'Time, about three hours', 'Cooking time: 40 minutes'. 'Time the
/// eggs' is an order.
pub(crate) fn times_said(text: &str, all: &[Token]) -> Vec<DeclaredTime> {
    let label = |t: &&Token| TIMES.iter().any(|(word, _)| t.is(word));
    let labels = all.iter().take(2).take_while(label).count();
    let named = all[..labels].iter().any(|t| t.is("time"));
    let about = |t: &Token| t.is_dash() || matches!(t.sign(), Some(',' | ':')) || t.is_any(&["about", "required"]);
    if !named || !all.get(labels).is_some_and(about) {
        return Vec::new();
    }
    times(text, all)
}

/// The times a row declares.
fn times(text: &str, all: &[Token]) -> Vec<DeclaredTime> {
    let mut found = Vec::new();
    // 'Time, about three hours': the label stands before a comma.
    let mut open = None;
    for part in parts(all) {
        let own = part.iter().find_map(|t| TIMES.iter().find(|(word, _)| t.is(word)));
        let label = own.or(open.take());
        if part.iter().all(|t| TIMES.iter().any(|(word, _)| t.is(word))) {
            open = own;
        }
        let start = (0..part.len()).find(|at| duration(part, *at).is_some());
        let Some((start, minutes)) = start.and_then(|at| Some((at, duration(part, at)?))) else {
            let overnight = part.iter().any(|t| t.is("overnight"));
            if let (true, Some((_, what)), Some(span)) =
                (overnight, label, part.iter().map(|t| t.span).reduce(Span::join))
            {
                found.push(DeclaredTime {
                    words: Words::at(text, span),
                    what: (*what).to_owned(),
                    minutes: OVERNIGHT,
                });
            }
            continue;
        };
        let after = part[start..].iter().find_map(|t| match t.lower.as_str() {
            "work" | "prep" | "preparation" | "hands-on" => Some("active"),
            "stove" | "hob" | "oven" | "cooking" => Some("cooking"),
            _ => None,
        });
        let what = label.map(|(_, what)| *what).or(after);
        if let (Some(what), Some(span)) = (what, part.iter().map(|t| t.span).reduce(Span::join)) {
            found.push(DeclaredTime {
                words: Words::at(text, span),
                what: what.to_owned(),
                minutes: minutes.0,
            });
        }
    }
    found
}

/// 'Overnight' in minutes: 8 to 12 hours, common practice, no source.
const OVERNIGHT: (f64, f64) = (480.0, 720.0);

/// A length of time in minutes and the index after it: '2 hrs 45 mins', 'an hour and a half', '8 to 10 minutes'.
fn duration(part: &[Token], at: usize) -> Option<((f64, f64), usize)> {
    let counted = number::amount(part, at)?;
    let per = minutes_of(part.get(counted.next)?)?;
    let (mut low, mut high) = (counted.amount.low.to_f64() * per, counted.amount.high.to_f64() * per);
    let mut next = counted.next + 1;
    loop {
        let and = usize::from(part.get(next).is_some_and(|t| t.is("and")));
        let Some((more, after)) = number::number(part, next + and) else {
            break;
        };
        let unit = part.get(after).and_then(minutes_of);
        // 'an hour and a half' has no second unit; 'an hour and ten minutes' has.
        let (per_more, after) = match unit {
            Some(unit) if unit < per => (unit, after + 1),
            None if and == 1 && more < Exact::ONE => (per, after),
            _ => break,
        };
        (low, high, next) = (low + more.to_f64() * per_more, high + more.to_f64() * per_more, after);
    }
    Some(((low, high), next))
}

fn minutes_of(token: &Token) -> Option<f64> {
    Some(match token.lower.as_str() {
        "minute" | "minutes" | "min" | "mins" | "m" => 1.0,
        "hour" | "hours" | "hr" | "hrs" | "h" => 60.0,
        "day" | "days" | "d" => 1440.0,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn show(text: &str) -> String {
        let Some(found) = head(text, Span::new(0, text.len())) else {
            return "none".to_owned();
        };
        let yields = found.yields.map(|y| {
            let amount = y.amount.unwrap();
            format!("{}..{} {}", amount.low, amount.high, y.unit.unwrap())
        });
        let times = found
            .times
            .iter()
            .map(|t| format!("{} {}..{}", t.what, t.minutes.0, t.minutes.1));
        yields.into_iter().chain(times).collect::<Vec<_>>().join("; ")
    }

    #[test]
    fn yields_and_times() {
        for (text, expected) in [
            ("Serves 4 to 6", "4..6 serving"),
            ("Servings: 2/3", "2..3 serving"),
            ("Makes about 2 litres", "2..2 litre"),
            ("For four, as a first course", "4..4 serving"),
            ("For the dumplings", "none"),
            ("makes 20 dumplings / serves 5", "5..5 serving"),
            ("10 portions", "10..10 serving"),
            ("Yield: 12 portions @ 300 g", "12..12 serving"),
            (
                "SERVES 4   PREP 15 MINS   COOK 1 HR 20 MINS",
                "4..4 serving; preparation 15..15; cooking 80..80",
            ),
            (
                "Active time: 30 minutes | Total time: 2 hours",
                "active 30..30; total 120..120",
            ),
            ("Soaking time: overnight", "soaking 480..720"),
            ("Time about an hour and a half.", "total 90..90"),
            ("Batch: 6 L (24 cov @ 250 ml)", "24..24 serving"),
            ("Batch: 4 L", "4..4 litre"),
            ("Enough for six.", "6..6 serving"),
            ("Sufficient for eight persons.", "8..8 serving"),
            ("30 ptn", "30..30 serving"),
            ("gluten-free – serves 8 – 2 hours", "8..8 serving"),
            (
                "A soup for a cold day – and one that our street has eaten for years – serves six",
                "none",
            ),
            ("Melt the butter.", "none"),
            ("4 leeks", "none"),
        ] {
            assert_eq!(show(text), expected, "{text}");
        }
    }
}
