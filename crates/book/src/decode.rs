//! From the bytes of a typed page to text.

use encoding_rs::{Encoding, UTF_16BE, UTF_16LE, WINDOWS_1252};
use potwright_manuscript::files::Letters;

/// A page as text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decoded {
    /// The text.
    pub text: String,
    /// What was taken for granted about the bytes or left out, in a sentence or two; none for plain UTF-8.
    pub note: Option<String>,
}

/// Turns the bytes of a page into text; never fails.
///
/// UTF-8 and UTF-16 with or without their byte-order mark; anything else is taken for the Western European set of
/// older word processors (Windows-1252, which holds all printable characters of Latin-1). Characters that nobody sees
/// – NUL and other controls, marks of writing direction, width nought – are left out and counted in the note.
#[must_use]
pub fn decode(bytes: &[u8]) -> Decoded {
    let (encoding, rest) = match Encoding::for_bom(bytes) {
        Some((encoding, length)) => (Some(encoding), bytes.get(length..).unwrap_or(&[])),
        None => (unmarked(bytes), bytes),
    };
    let (text, taken) = match (encoding, std::str::from_utf8(rest)) {
        (Some(utf16), _) if utf16 == UTF_16LE || utf16 == UTF_16BE => {
            let (text, _) = utf16.decode_without_bom_handling(rest);
            (text.into_owned(), Some("the page is UTF-16 text"))
        }
        (_, Ok(text)) => (text.to_owned(), None),
        (_, Err(_)) => {
            let (text, _) = WINDOWS_1252.decode_without_bom_handling(rest);
            let says = "the page is no Unicode text; it was read as Western European (Windows-1252)";
            (text.into_owned(), Some(says))
        }
    };
    let (text, left_out) = Letters::plain(&text);
    let notes: Vec<String> = taken.map(str::to_owned).into_iter().chain(left_out).collect();
    Decoded {
        text,
        note: (!notes.is_empty()).then(|| notes.join("; ")),
    }
}

/// UTF-16 without a mark: of letters below 256 every other byte is nought, and no other byte is.
fn unmarked(bytes: &[u8]) -> Option<&'static Encoding> {
    const ENOUGH: usize = 4096;
    let near = bytes.get(..bytes.len().min(ENOUGH)).unwrap_or(bytes);
    let noughts = |from: usize| near.iter().skip(from).step_by(2).filter(|byte| **byte == 0).count();
    let (even, odd, pairs) = (noughts(0), noughts(1), near.len() / 2);
    let most = |count: usize| pairs > 1 && count * 10 >= pairs * 7;
    let few = |count: usize| count * 50 <= pairs;
    match () {
        () if most(odd) && few(even) => Some(UTF_16LE),
        () if most(even) && few(odd) => Some(UTF_16BE),
        () => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn plain_pages_need_no_note() {
        for bytes in ["½ cup purée".as_bytes(), "\u{feff}½ cup purée".as_bytes()] {
            assert_eq!(
                decode(bytes),
                Decoded {
                    text: "½ cup purée".into(),
                    note: None
                }
            );
        }
    }

    /// The byte values are those of the code charts: ½ is BD, é E9, – 96 in Windows-1252.
    #[test]
    fn older_word_processors() {
        let page = decode(b"\xBD cup pur\xE9e, 2\x963 tbsp");
        assert_eq!(page.text, "½ cup purée, 2–3 tbsp");
        assert!(page.note.is_some());
    }

    #[test]
    fn utf_16_both_ways() {
        assert_eq!(decode(b"\xFF\xFE\xBD\x00 \x00c\x00").text, "½ c");
        assert_eq!(decode(b"\xFE\xFF\x00\xBD\x00 \x00c").text, "½ c");
        assert_eq!(decode(b"\xFF\xFEc\x00\x00").text, "c\u{fffd}");
    }

    /// As above, but with nothing to tell it by.
    #[test]
    fn utf_16_without_a_mark() {
        let page = "Leek soup\r\n\r\n½ cup purée – 2 leeks\r\n";
        let little: Vec<u8> = page.encode_utf16().flat_map(u16::to_le_bytes).collect();
        let big: Vec<u8> = page.encode_utf16().flat_map(u16::to_be_bytes).collect();
        for bytes in [little, big] {
            let decoded = decode(&bytes);
            assert_eq!(decoded.text, page);
            assert_eq!(decoded.note.as_deref(), Some("the page is UTF-16 text"));
        }
    }

    /// The characters are those of the Unicode charts: U+200E is LEFT-TO-RIGHT MARK.
    #[test]
    fn what_nobody_sees_is_left_out_and_told() {
        let decoded = decode("2\0 leeks\u{200e}, sliced\r\n".as_bytes());
        assert_eq!(decoded.text, "2 leeks, sliced\r\n");
        let note = decoded.note.expect("is told");
        assert!(
            note.contains("1 mark without width") && note.contains("1 control character"),
            "{note}"
        );
    }

    #[test]
    fn no_bytes_is_an_empty_page() {
        assert_eq!(decode(b"").text, "");
    }
}
