//! New words put in the place of old ones, with everything between them kept.

use potwright_manuscript::Span;

/// Replacements in one text, in order of place, none overlapping another.
#[derive(Clone, Debug, Default)]
pub(crate) struct Splices {
    list: Vec<(Span, String)>,
}

impl Splices {
    /// Puts `now` in the place of `span`; an empty span is an insertion. False, and nothing is done, where something
    /// else stands in that place already or the span does not fit the text.
    pub(crate) fn add(&mut self, text: &str, span: Span, now: String) -> bool {
        if text.get(span.start..span.end).is_none() {
            return false;
        }
        let at = self
            .list
            .partition_point(|(other, _)| (other.start, other.end) < (span.start, span.end));
        let clear = |other: Option<&(Span, String)>| {
            other.is_none_or(|(other, _)| (other.end <= span.start || span.end <= other.start) && *other != span)
        };
        let before = at.checked_sub(1).and_then(|before| self.list.get(before));
        if !clear(before) || !clear(self.list.get(at)) {
            return false;
        }
        self.list.insert(at, (span, now));
        true
    }

    /// The text at `span` with all replacements that lie in it. One that reaches over its edge is left out; an insertion
    /// belongs to the stretch that begins there, not to the one that ends there.
    pub(crate) fn render(&self, text: &str, span: Span) -> String {
        let mut out = String::new();
        let mut at = span.start;
        let within = |place: &Span| span.contains(*place) && (place.start < span.end || place.start < place.end);
        for (place, now) in self.list.iter().filter(|(place, _)| within(place)) {
            out.push_str(Span::new(at, place.start).of(text));
            out.push_str(now);
            at = place.end;
        }
        out.push_str(Span::new(at, span.end).of(text));
        out
    }

    /// Whether something at this place is replaced.
    pub(crate) fn touches(&self, span: Span) -> bool {
        self.list
            .iter()
            .any(|(other, _)| other.start < span.end && span.start < other.end)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_between_is_kept() {
        let text = "2 sticks celery, diced";
        let mut splices = Splices::default();
        assert!(splices.add(text, Span::new(2, 8), "stick".into()));
        assert!(splices.add(text, Span::new(0, 1), "1".into()));
        assert!(!splices.add(text, Span::new(4, 10), "no".into()));
        assert!(!splices.add(text, Span::new(0, 1), "again".into()));
        assert!(!splices.add(text, Span::new(20, 90), "beyond".into()));
        assert_eq!(splices.render(text, Span::new(0, text.len())), "1 stick celery, diced");
        assert_eq!(splices.render(text, Span::new(2, 15)), "stick celery");
        assert!(splices.touches(Span::new(0, 3)) && !splices.touches(Span::new(8, 22)));
    }
}
