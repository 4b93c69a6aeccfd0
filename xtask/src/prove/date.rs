//! Today's date, from the clock.

use std::time::{SystemTime, UNIX_EPOCH};

/// Today (UTC) as `2031-05-09`.
pub(super) fn today() -> String {
    let seconds = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .map_or(0, |since| since.as_secs());
    let (year, month, day) = civil(seconds / 86_400);
    format!("{year:04}-{month:02}-{day:02}")
}

/// Year, month and day of a number of days since 1 January 1970, by counting off whole years and months.
fn civil(mut days: u64) -> (u64, u64, u64) {
    let mut year = 1970;
    while days >= year_days(year) {
        days -= year_days(year);
        year += 1;
    }
    let mut month = 1;
    while days >= month_days(year, month) {
        days -= month_days(year, month);
        month += 1;
    }
    (year, month, days + 1)
}

fn leap(year: u64) -> bool {
    year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400))
}

fn year_days(year: u64) -> u64 {
    365 + u64::from(leap(year))
}

fn month_days(year: u64, month: u64) -> u64 {
    match month {
        2 => 28 + u64::from(leap(year)),
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Day numbers as `date -u -d @SECONDS` gives them.
    #[test]
    fn days_are_dates() {
        assert_eq!(civil(0), (1970, 1, 1));
        assert_eq!(civil(951_782_400 / 86_400), (2000, 2, 29));
        assert_eq!(civil(1_000_000_000 / 86_400), (2001, 9, 9));
        assert_eq!(civil(4_107_542_400 / 86_400), (2100, 3, 1));
    }
}
