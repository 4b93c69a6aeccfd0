//! Misspelling at distance one: a letter too many, one missing, one wrong, two changed over.

/// Whether two words differ by exactly one slip.
pub(crate) fn one_slip(a: &str, b: &str) -> bool {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    let (short, long) = if a.len() <= b.len() { (a, b) } else { (b, a) };
    let start = short.iter().zip(long).take_while(|(x, y)| x == y).count();
    let (short, long) = (short.get(start..).unwrap_or(&[]), long.get(start..).unwrap_or(&[]));
    match long.len() - short.len() {
        0 => match (short, long) {
            ([], []) => false,
            ([x, y, rest @ ..], [u, v, other @ ..]) if x == v && y == u && rest == other => true,
            ([_, rest @ ..], [_, other @ ..]) => rest == other,
            _ => false,
        },
        1 => long.get(1..) == Some(short),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::one_slip;

    #[test]
    fn slips() {
        for (a, b) in [
            ("carot", "carrot"),
            ("onoin", "onion"),
            ("leak", "leek"),
            ("potatto", "potato"),
        ] {
            assert!(one_slip(a, b) && one_slip(b, a), "{a} {b}");
        }
        for (a, b) in [
            ("onion", "onion"),
            ("leek", "lack"),
            ("", ""),
            ("ab", "abcd"),
            ("pea", "bean"),
        ] {
            assert!(!one_slip(a, b), "{a} {b}");
        }
    }
}
