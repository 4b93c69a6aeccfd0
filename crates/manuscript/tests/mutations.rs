//! Damaged files: 100,000 seeded mutations over all forms. Each gives a page or a clear message, none a panic.

use std::fs;
use std::io::{Read as _, Write as _};
use std::path::Path;

use potwright_manuscript::Span;
use potwright_manuscript::files::{Remark, extract, to_docx};
use potwright_manuscript::structured::pages;
use zip::write::{SimpleFileOptions, ZipWriter};
use zip::{CompressionMethod, ZipArchive};

/// The xorshift generator of Marsaglia (2003), with his triple 13, 7, 17: the same damage on every machine.
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0
    }

    fn below(&mut self, most: usize) -> usize {
        usize::try_from(self.next() % most.max(1) as u64).unwrap_or(0)
    }
}

/// Bits that mean something in one form or another.
const BITS: [&[u8]; 24] = [
    b"<w:p>",
    b"</w:p>",
    b"<w:tbl>",
    b"</w:tc>",
    b"<w:del>",
    b"<text:p>",
    b"</text:p>",
    b"&amp;",
    b"&#0;",
    b"<!DOCTYPE",
    b"{",
    b"}",
    b"\\par",
    b"\\u-1?",
    b"\\'",
    b"\\bin9",
    b"\\cell",
    b"\\row",
    b"[",
    b"\"",
    b"null",
    b"\xff",
    b"\0",
    b"<",
];

/// The bytes with one to four changes: a bit, a byte, a stretch gone, doubled or moved, a meaningful bit put in.
fn damaged(bytes: &[u8], chance: &mut Chance) -> Vec<u8> {
    let mut out = bytes.to_vec();
    for _ in 0..=chance.below(4) {
        let at = chance.below(out.len());
        let end = (at + 1 + chance.below(40)).min(out.len());
        match chance.below(6) {
            0 if !out.is_empty() => out[at] ^= 1 << chance.below(8),
            1 if !out.is_empty() => out[at] = u8::try_from(chance.below(256)).unwrap_or(0),
            2 => _ = out.drain(at.min(end)..end),
            3 => {
                let piece = out[at.min(end)..end].to_vec();
                let place = chance.below(out.len());
                out.splice(place..place, piece);
            }
            4 => out.truncate(at),
            _ => _ = out.splice(at..at, BITS[chance.below(BITS.len())].iter().copied()),
        }
    }
    out
}

/// A packed file with one part damaged, the packing whole.
fn damaged_part(bytes: &[u8], part: &str, chance: &mut Chance) -> Vec<u8> {
    let mut archive = ZipArchive::new(std::io::Cursor::new(bytes)).expect("is whole");
    let mut inner = Vec::new();
    archive
        .by_name(part)
        .expect("is there")
        .read_to_end(&mut inner)
        .expect("is whole");
    let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    let mut writer = ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for name in ["[Content_Types].xml", part] {
        writer.start_file(name, stored).expect("in memory");
        writer.write_all(&damaged(&inner, chance)).expect("in memory");
    }
    writer.finish().expect("in memory").into_inner()
}

fn fixture(name: &str) -> Vec<u8> {
    fs::read(Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files").join(name)).expect("is there")
}

/// Whatever comes of a file: places that fit, no control characters.
fn look(bytes: &[u8]) -> bool {
    match extract(bytes) {
        Ok(taken) => {
            assert!(
                taken
                    .comments
                    .iter()
                    .all(|comment| !comment.span.of(&taken.text).is_empty())
            );
            assert!(
                !taken
                    .text
                    .contains(|letter: char| letter.is_control() && !matches!(letter, '\n' | '\t'))
            );
            true
        }
        Err(error) => {
            assert!(!error.to_string().is_empty());
            false
        }
    }
}

/// Damages a whole file so many times; how many of them were still read.
fn whole(bytes: &[u8], seed: u64, times: usize) -> usize {
    let mut chance = Chance(seed);
    (0..times).filter(|_| look(&damaged(bytes, &mut chance))).count()
}

#[test]
fn rich_text() {
    assert!(whole(&fixture("parsnip.rtf"), 0x5075_7001, 30_000) > 1000);
}

#[test]
fn packed_files() {
    for (name, seed) in [("parsnip.docx", 0x5075_7002), ("parsnip.odt", 0x5075_7003)] {
        assert!(whole(&fixture(name), seed, 5_000) > 100, "{name}");
    }
}

#[test]
fn parts_of_packed_files() {
    let text = "Leek soup\n\n2 leeks\n\nSlice the leeks.\n";
    let remark = Remark {
        span: Span::new(11, 18),
        author: "Ed".into(),
        text: "how large?".into(),
    };
    let own = to_docx(text, &[remark]).expect("is packed");
    let mut chance = Chance(0x5075_7004);
    let mut read = 0;
    for (bytes, part, times) in [
        (own, "word/document.xml", 10_000),
        (fixture("parsnip.docx"), "word/document.xml", 10_000),
        (fixture("parsnip.odt"), "content.xml", 10_000),
    ] {
        read += (0..times)
            .filter(|_| look(&damaged_part(&bytes, part, &mut chance)))
            .count();
    }
    assert!(read > 1000, "{read}");
}

#[test]
fn structured_data() {
    let data = r##"<html><script type="application/ld+json">{"@graph": [{"@type": "Recipe", "name": "Soup &amp; bread",
        "recipeYield": ["4", {"value": 4, "unitText": "bowls"}], "totalTime": "P1DT2H30M", "recipeIngredient": ["2 leeks"],
        "recipeInstructions": [{"@id": "#s"}, "<p>Stir.</p>"]}, {"@id": "#s", "@type": "HowToSection", "name": "a",
        "itemListElement": [{"@type": "HowToStep", "text": "Boil."}, {"@type": "HowToTip", "text": "Hot."}]}]}</script>"##;
    let mut chance = Chance(0x5075_7005);
    let mut read = 0;
    for _ in 0..30_000 {
        let bytes = damaged(data.as_bytes(), &mut chance);
        match pages(&String::from_utf8_lossy(&bytes)) {
            Ok(found) => {
                assert!(!found.is_empty());
                read += 1;
            }
            Err(error) => assert!(!error.to_string().is_empty()),
        }
    }
    assert!(read > 1000, "{read}");
}
