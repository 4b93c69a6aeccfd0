//! The bytes of a Rich Text file as tokens (Rich Text Format Specification 1.9, 'RTF syntax').

/// A token.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Token<'b> {
    /// '{'.
    Open,
    /// '}'.
    Close,
    /// A control word and its number: `\fs24`.
    Word(&'b str, Option<i32>),
    /// A control symbol: `\~`.
    Symbol(u8),
    /// `\'e9`: a byte in the text's code page.
    Byte(u8),
    /// Plain bytes; line ends are no part of them.
    Plain(&'b [u8]),
}

/// Takes a file apart from its start.
pub(super) struct Tokens<'b> {
    bytes: &'b [u8],
    at: usize,
}

impl<'b> Tokens<'b> {
    pub(super) fn new(bytes: &'b [u8]) -> Self {
        Tokens { bytes, at: 0 }
    }

    fn rest(&self) -> &'b [u8] {
        self.bytes.get(self.at..).unwrap_or(&[])
    }

    /// The bytes from here while they fit, which are passed.
    fn while_fits(&mut self, fits: impl Fn(u8) -> bool) -> &'b [u8] {
        let rest = self.rest();
        let length = rest.iter().position(|byte| !fits(*byte)).unwrap_or(rest.len());
        self.at += length;
        rest.get(..length).unwrap_or(&[])
    }

    /// What begins with a backslash, which is passed already.
    fn control(&mut self) -> Option<Token<'b>> {
        let first = *self.rest().first()?;
        if first == b'\'' {
            self.at += 1;
            let digits = self.rest().get(..2).and_then(|digits| std::str::from_utf8(digits).ok());
            let byte = digits.and_then(|digits| u8::from_str_radix(digits, 16).ok());
            self.at += if byte.is_some() { 2 } else { 0 };
            return Some(Token::Byte(byte.unwrap_or(b'?')));
        }
        if !first.is_ascii_alphabetic() {
            self.at += 1;
            return Some(Token::Symbol(first));
        }
        let word = std::str::from_utf8(self.while_fits(|byte| byte.is_ascii_alphabetic())).unwrap_or("");
        let before = self.at;
        let minus = self.rest().first() == Some(&b'-');
        self.at += usize::from(minus);
        let digits = std::str::from_utf8(self.while_fits(|byte| byte.is_ascii_digit())).unwrap_or("");
        let number: Option<i32> = if digits.is_empty() {
            self.at = before;
            None
        } else {
            Some(digits.parse::<i32>().unwrap_or(i32::MAX)).map(|number| if minus { -number } else { number })
        };
        if self.rest().first() == Some(&b' ') {
            self.at += 1;
        }
        // `\bin`: so many bytes of a picture follow, whatever they look like.
        if word == "bin" {
            let length = number.and_then(|number| usize::try_from(number).ok()).unwrap_or(0);
            self.at = self.at.saturating_add(length).min(self.bytes.len());
        }
        Some(Token::Word(word, number))
    }
}

impl<'b> Iterator for Tokens<'b> {
    type Item = Token<'b>;

    fn next(&mut self) -> Option<Token<'b>> {
        self.while_fits(|byte| matches!(byte, b'\r' | b'\n' | 0));
        let first = *self.rest().first()?;
        match first {
            b'{' => {
                self.at += 1;
                Some(Token::Open)
            }
            b'}' => {
                self.at += 1;
                Some(Token::Close)
            }
            b'\\' => {
                self.at += 1;
                self.control()
            }
            _ => {
                Some(Token::Plain(self.while_fits(|byte| {
                    !matches!(byte, b'{' | b'}' | b'\\' | b'\r' | b'\n' | 0)
                })))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The forms are those of the specification's syntax.
    #[test]
    fn a_file_taken_apart() {
        let tokens: Vec<Token> = Tokens::new(b"{\\b-1 caf\\'e9\r\n\\~x\\bin3 {{{\\u-10179?}").collect();
        assert_eq!(
            tokens,
            [
                Token::Open,
                Token::Word("b", Some(-1)),
                Token::Plain(b"caf"),
                Token::Byte(0xe9),
                Token::Symbol(b'~'),
                Token::Plain(b"x"),
                Token::Word("bin", Some(3)),
                Token::Word("u", Some(-10179)),
                Token::Plain(b"?"),
                Token::Close,
            ]
        );
        for broken in [
            &b"\\"[..],
            b"\\'",
            b"\\'e",
            b"\\-",
            b"\\b-",
            b"\\bin99999999999 x",
            b"\\u",
        ] {
            _ = Tokens::new(broken).count();
        }
    }
}
