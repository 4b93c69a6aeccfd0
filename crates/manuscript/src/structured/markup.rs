//! What is left of a web page in data: scripts, entities, tags.

/// Elements that stand on lines of their own.
const BLOCKS: [&str; 18] = [
    "br",
    "p",
    "li",
    "ul",
    "ol",
    "div",
    "tr",
    "table",
    "h1",
    "h2",
    "h3",
    "h4",
    "h5",
    "h6",
    "section",
    "blockquote",
    "dt",
    "dd",
];
/// Further elements that stand in texts; what else stands between angle brackets is words.
const OTHERS: [&str; 38] = [
    "a",
    "abbr",
    "article",
    "b",
    "button",
    "cite",
    "code",
    "del",
    "em",
    "figcaption",
    "figure",
    "font",
    "footer",
    "header",
    "hr",
    "i",
    "iframe",
    "img",
    "input",
    "ins",
    "label",
    "main",
    "mark",
    "noscript",
    "picture",
    "q",
    "s",
    "script",
    "small",
    "source",
    "span",
    "strong",
    "style",
    "sub",
    "sup",
    "time",
    "u",
    "wbr",
];
/// No tag is longer, in bytes: a sign of 'less than' must not swallow a text.
const LONGEST_TAG: usize = 2000;
/// No name of an entity is longer: the longest of HTML has 32 letters.
const LONGEST_NAME: usize = 33;

/// Whether a text is a web page.
pub(super) fn is_web_page(text: &str) -> bool {
    let start: String = text.chars().take(4096).collect::<String>().to_ascii_lowercase();
    let known = [
        "<!doctype html",
        "<html",
        "<head",
        "<body",
        "<script",
        "<meta",
        "<title",
    ];
    start.starts_with('<') && known.iter().any(|tag| start.contains(tag))
}

/// The scripts of a web page that hold JSON-LD, without the wrappings of older pages.
pub(super) fn scripts(page: &str) -> Vec<&str> {
    let small = page.to_ascii_lowercase();
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(open) = small.get(at..).and_then(|rest| rest.find("<script")) {
        let start = at + open + "<script".len();
        let Some(head) = tag_end(&small, start) else { break };
        let end = small
            .get(head..)
            .and_then(|rest| rest.find("</script"))
            .map_or(page.len(), |end| head + end);
        let kind = small.get(start..head).unwrap_or("");
        if kind.contains("ld+json") {
            found.push(unwrapped(page.get(head..end).unwrap_or("")));
        }
        at = end;
    }
    found
}

/// Where the head of a tag ends; signs inside quotes count nothing.
fn tag_end(text: &str, from: usize) -> Option<usize> {
    let mut quote = None;
    for (at, byte) in text.as_bytes().get(from..)?.iter().enumerate() {
        match (quote, byte) {
            (None, b'>') => return Some(from + at + 1),
            (None, b'"' | b'\'') => quote = Some(*byte),
            (Some(open), byte) if open == *byte => quote = None,
            _ => {}
        }
    }
    None
}

/// A script without `<!-- -->`, `<![CDATA[ ]]>` and the slashes before them.
fn unwrapped(script: &str) -> &str {
    let mut script = script.trim();
    for (before, after) in [
        ("<!--", "-->"),
        ("//<![CDATA[", "//]]>"),
        ("/*<![CDATA[*/", "/*]]>*/"),
        ("<![CDATA[", "]]>"),
    ] {
        if let Some(inner) = script.strip_prefix(before) {
            script = inner.strip_suffix(after).unwrap_or(inner).trim();
        }
    }
    script.trim_end_matches(';')
}

/// The plain words of a text of the web: entities resolved, tags taken out, one line a paragraph, no blank ones.
pub(super) fn plain(text: &str) -> String {
    let mut text = resolved(&without_tags(text));
    // Escaped once more than need be: '&amp;frac12;', '&lt;p&gt;'.
    for _ in 0..2 {
        let again = resolved(&without_tags(&text));
        if again == text {
            break;
        }
        text = again;
    }
    let lines = text
        .lines()
        .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "));
    lines.filter(|line| !line.is_empty()).collect::<Vec<_>>().join("\n")
}

/// The text without tags; those of blocks end a line.
fn without_tags(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut at = 0;
    let mut close = 0;
    while let Some(open) = text[at..].find('<').map(|open| at + open) {
        out.push_str(&text[at..open]);
        if close <= open {
            close = text[open..].find('>').map_or(text.len(), |close| open + close);
        }
        let inner = text
            .get(open + 1..close)
            .filter(|inner| inner.len() < LONGEST_TAG && close < text.len());
        match inner.and_then(tag) {
            Some(block) => {
                if block {
                    out.push('\n');
                }
                at = close + 1;
            }
            None => {
                out.push('<');
                at = open + 1;
            }
        }
    }
    out.push_str(&text[at..]);
    out
}

/// Whether what stands between angle brackets is the tag of an element that ends a line; `None` for words.
fn tag(inner: &str) -> Option<bool> {
    if inner.starts_with("!--") {
        return Some(false);
    }
    let name = inner
        .strip_prefix('/')
        .unwrap_or(inner)
        .chars()
        .take_while(char::is_ascii_alphanumeric);
    let name = name.collect::<String>().to_ascii_lowercase();
    let block = BLOCKS.contains(&name.as_str());
    (block || OTHERS.contains(&name.as_str())).then_some(block)
}

/// The text with its entities resolved; what is none stays.
fn resolved(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find('&') {
        out.push_str(&rest[..at]);
        rest = &rest[at..];
        let end = rest.bytes().take(LONGEST_NAME + 1).position(|byte| byte == b';');
        match end.and_then(|end| Some((entity(rest.get(1..end)?)?, end + 1))) {
            Some((letters, length)) => {
                out.push_str(&letters);
                rest = &rest[length..];
            }
            None => {
                out.push('&');
                rest = &rest[1..];
            }
        }
    }
    out.push_str(rest);
    out
}

/// What an entity stands for, by the names of HTML 5 or by number.
fn entity(name: &str) -> Option<String> {
    let Some(number) = name.strip_prefix('#') else {
        return quick_xml::escape::resolve_html5_entity(name).map(str::to_owned);
    };
    let code = match number.strip_prefix(['x', 'X']) {
        Some(digits) => u32::from_str_radix(digits, 16).ok()?,
        None => number.parse().ok()?,
    };
    // Numbers 128 to 159 are those of Windows-1252 (HTML 5, 13.2.5.80).
    if let Ok(byte @ 0x80..=0x9f) = u8::try_from(code) {
        return Some(
            encoding_rs::WINDOWS_1252
                .decode_without_bom_handling(&[byte])
                .0
                .into_owned(),
        );
    }
    char::from_u32(code).map(String::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The entities are those of the HTML 5 standard's table.
    #[test]
    fn words_of_the_web() {
        for (text, words) in [
            ("&frac12; cup &amp; a bit", "½ cup & a bit"),
            ("&amp;frac12; cup", "½ cup"),
            ("<p>Stir.</p><p>Serve&nbsp;hot.</p>", "Stir.\nServe hot."),
            ("heat to &lt; 80 &#176;C", "heat to < 80 °C"),
            ("5 < 6 and 7 > 6", "5 < 6 and 7 > 6"),
            ("R&D &unknown; &#x2153;", "R&D &unknown; ⅓"),
            ("it&#146;s", "it’s"),
            ("one<br/>two<b>!</b>", "one\ntwo!"),
            ("&", "&"),
            ("stir <and serve> <!-- not --> it", "stir <and serve> it"),
            ("<", "<"),
        ] {
            assert_eq!(plain(text), words, "{text}");
        }
    }

    #[test]
    fn scripts_of_a_page() {
        let page = "<html><script>var a = '<script>';</script><SCRIPT type='application/ld+json' data-x=\">\">\n\
            <!-- {\"a\": 1} --></SCRIPT><script type=\"application/ld+json\">{\"b\": 2}";
        assert_eq!(scripts(page), ["{\"a\": 1}", "{\"b\": 2}"]);
    }
}
