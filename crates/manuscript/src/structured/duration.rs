//! Durations of ISO 8601-1:2019 (5.5.2): 'PT1H30M', 'P1DT2H', 'PT0.5H', 'P1W'.

/// The length of a duration in minutes; `None` for what is none, and for years and months, whose length varies.
pub(super) fn minutes(text: &str) -> Option<f64> {
    let text = text.trim().to_ascii_uppercase();
    let rest = text.strip_prefix('P')?;
    let (days, hours) = rest
        .split_once('T')
        .map_or((rest, None), |(days, hours)| (days, Some(hours)));
    let mut total = parts(days, &[('W', 10080.0), ('D', 1440.0)])?;
    if let Some(hours) = hours {
        total += parts(hours, &[('H', 60.0), ('M', 1.0), ('S', 1.0 / 60.0)])?;
    }
    let any = text.contains(|letter: char| letter.is_ascii_digit());
    // Nothing is cooked for ten years.
    (any && total.is_finite() && total < 5_256_000.0).then_some(total)
}

/// The sum of numbers, each before its letter.
fn parts(text: &str, letters: &[(char, f64)]) -> Option<f64> {
    let mut total = 0.0;
    let mut number = String::new();
    let mut letters = letters.iter();
    for sign in text.chars() {
        match sign {
            '0'..='9' => number.push(sign),
            '.' | ',' => number.push('.'),
            _ => {
                let (_, each) = letters.find(|(letter, _)| *letter == sign)?;
                total += number.parse::<f64>().ok()? * each;
                number.clear();
            }
        }
    }
    number.is_empty().then_some(total)
}

/// So many minutes as a duration, to the whole minute.
pub(super) fn iso(minutes: f64) -> String {
    let whole = minutes.max(0.0).round();
    let (days, rest) = ((whole / 1440.0).floor(), whole % 1440.0);
    let (hours, left) = ((rest / 60.0).floor(), rest % 60.0);
    let mut text = String::from("P");
    if days > 0.0 {
        text.push_str(&format!("{days}D"));
    }
    if hours > 0.0 || left > 0.0 || days == 0.0 {
        text.push('T');
        if hours > 0.0 {
            text.push_str(&format!("{hours}H"));
        }
        if left > 0.0 || hours == 0.0 {
            text.push_str(&format!("{left}M"));
        }
    }
    text
}

/// So many minutes in a cook's words: '1 hour 30 minutes'.
pub(super) fn words(minutes: f64) -> String {
    let (days, rest) = ((minutes / 1440.0).floor(), minutes % 1440.0);
    let (hours, left) = ((rest / 60.0).floor(), rest % 60.0);
    let left = (left * 10.0).round() / 10.0;
    let counted = |count: f64, one: &str| match count {
        0.0 => None,
        1.0 => Some(format!("1 {one}")),
        more => Some(format!("{more} {one}s")),
    };
    let parts = [counted(days, "day"), counted(hours, "hour"), counted(left, "minute")];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The forms are those of the standard's examples, worked by hand.
    #[test]
    fn durations_in_and_out() {
        for (text, expected) in [
            ("PT1H30M", 90.0),
            ("PT90M", 90.0),
            ("P1DT2H", 1560.0),
            ("P1W", 10080.0),
            ("PT0.5H", 30.0),
            ("PT0,5H", 30.0),
            ("PT30S", 0.5),
            ("pt5m", 5.0),
            ("PT0M", 0.0),
            ("P0DT0H20M", 20.0),
        ] {
            assert_eq!(minutes(text), Some(expected), "{text}");
        }
        for text in [
            "",
            "P",
            "PT",
            "1 hour",
            "P1M",
            "PT5",
            "PTM",
            "PT-5M",
            "PT1.2.3M",
            "P1Y",
            "PT5M3H",
            "PT99999999999H",
        ] {
            assert_eq!(minutes(text), None, "{text}");
        }
        for (given, text, said) in [
            (90.0, "PT1H30M", "1 hour 30 minutes"),
            (60.0, "PT1H", "1 hour"),
            (1440.0, "P1D", "1 day"),
            (3000.0, "P2DT2H", "2 days 2 hours"),
            (45.0, "PT45M", "45 minutes"),
            (0.0, "PT0M", ""),
        ] {
            assert_eq!((iso(given).as_str(), words(given).as_str()), (text, said));
        }
    }
}
