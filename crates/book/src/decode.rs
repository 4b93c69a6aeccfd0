//! From the bytes of a typed page to text.

/// A page as text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decoded {
    /// The text.
    pub text: String,
    /// What was taken for granted about the bytes, in one sentence; none for plain UTF-8.
    pub note: Option<String>,
}

/// Turns the bytes of a page into text; never fails.
///
/// UTF-8 with or without its byte-order mark, UTF-16 with one; anything else is taken for the Western European set
/// of older word processors (Windows-1252, which holds all printable characters of Latin-1).
#[must_use]
pub fn decode(bytes: &[u8]) -> Decoded {
    match bytes {
        [0xFF, 0xFE, rest @ ..] => utf16(rest, u16::from_le_bytes),
        [0xFE, 0xFF, rest @ ..] => utf16(rest, u16::from_be_bytes),
        [0xEF, 0xBB, 0xBF, rest @ ..] => utf8(rest),
        _ => utf8(bytes),
    }
}

fn utf8(bytes: &[u8]) -> Decoded {
    match std::str::from_utf8(bytes) {
        Ok(text) => Decoded {
            text: text.to_owned(),
            note: None,
        },
        Err(_) => Decoded {
            text: bytes.iter().map(|byte| western(*byte)).collect(),
            note: Some("the page is no Unicode text; it was read as Western European (Windows-1252)".into()),
        },
    }
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Decoded {
    let pairs = bytes.chunks(2).map(|pair| match pair {
        [a, b] => unit([*a, *b]),
        _ => 0xFFFD,
    });
    let text = char::decode_utf16(pairs)
        .map(|c| c.unwrap_or(char::REPLACEMENT_CHARACTER))
        .collect();
    Decoded {
        text,
        note: Some("the page is UTF-16 text".into()),
    }
}

/// A byte of Windows-1252 (the WHATWG Encoding Standard's index, where the five unassigned bytes stay controls).
fn western(byte: u8) -> char {
    const HIGH: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}', '\u{90}', '‘',
        '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
    ];
    match byte {
        0x80..=0x9F => HIGH[usize::from(byte - 0x80)],
        other => char::from(other),
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

    #[test]
    fn no_bytes_is_an_empty_page() {
        assert_eq!(decode(b"").text, "");
    }
}
