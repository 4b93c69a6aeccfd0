//! Whole numbers written out: 'twelve', 'twenty-five'.

const ONES: [&str; 20] = [
    "nought",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 8] = [
    "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
];

/// The whole number that a word in small letters says, 0 to 99: one word, or tens and ones with a hyphen or a space.
///
/// ```
/// use potwright_measure::in_words::whole;
/// assert_eq!(whole("twelve"), Some(12));
/// assert_eq!(whole("twenty-five"), Some(25));
/// assert_eq!(whole("twenty-ten"), None);
/// ```
#[must_use]
pub fn whole(word: &str) -> Option<u32> {
    // No other letters begin a number: most words are turned away here.
    if !word.starts_with(['n', 'o', 't', 'f', 's', 'e']) {
        return None;
    }
    if let Some(one) = place(&ONES, word) {
        return Some(one);
    }
    let (ten, one) = match word.split_once(['-', ' ']) {
        Some((ten, one)) => (ten, place(&ONES, one).filter(|one| (1..10).contains(one))?),
        None => (word, 0),
    };
    Some((place(&TENS, ten)? + 2) * 10 + one)
}

fn place(list: &[&str], word: &str) -> Option<u32> {
    list.iter()
        .position(|known| *known == word)
        .and_then(|at| u32::try_from(at).ok())
}
