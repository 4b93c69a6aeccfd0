//! Every reader on damaged and hostile input: the seeds of the fuzz targets, 100,000 seeded mutations of them, and cases
//! that were thought up. Each gives a reading or a clear message.

use std::fs;
use std::path::{Path, PathBuf};

#[path = "../../../fuzz/readers.rs"]
mod readers;

use readers::READERS;

/// How many mutations all readers get together.
const ALL: usize = 100_000;

/// The xorshift generator of Marsaglia (2003), with his triple 13, 7, 17: the same damage on every machine.
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % most.max(1) as u64).unwrap_or(0)
    }
}

/// Bits that mean something to one reader or another.
const BITS: &[&str] = &[
    "½",
    "1/0",
    "99999999999999999999",
    "-",
    "–",
    "(",
    "[",
    "]",
    ")",
    "\t",
    "\n",
    "\r",
    "\0",
    "\u{feff}",
    "\u{202e}",
    "é",
    "\"",
    "{",
    "}",
    "\\u-1?",
    "&#0;",
    "&amp;",
    "=",
    "[[pot]]",
    "00:00:01,000 --> ",
    "°C",
    " or ",
    " to taste",
    "%",
    "İ",
    "<p>",
    "1e308",
];

fn seeds(folders: &[&str]) -> Vec<Vec<u8>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let in_folder = |folder: &&str| {
        let found = fs::read_dir(root.join(folder)).expect("seeds are there");
        let mut files: Vec<PathBuf> = found.map(|entry| entry.expect("is read").path()).collect();
        files.retain(|file| file.is_file());
        files.sort();
        files
    };
    let files: Vec<PathBuf> = folders.iter().flat_map(in_folder).collect();
    files.iter().map(|file| fs::read(file).expect("is read")).collect()
}

/// One to four changes: a bit, a stretch gone, doubled, cut off, a meaningful bit put in. At most 2 kB, to keep the
/// replay short; whole files are replayed undamaged.
fn damaged(bytes: &[u8], chance: &mut Chance) -> Vec<u8> {
    let from = chance.below(bytes.len().saturating_sub(2048));
    let mut out = bytes
        .get(from..(from + 2048).min(bytes.len()))
        .unwrap_or(bytes)
        .to_vec();
    for _ in 0..=chance.below(4) {
        let at = chance.below(out.len());
        let end = (at + 1 + chance.below(40)).min(out.len());
        match chance.below(5) {
            0 if !out.is_empty() => out[at] ^= 1 << chance.below(8),
            1 => _ = out.drain(at.min(end)..end),
            2 => {
                let piece = out[at.min(end)..end].to_vec();
                out.splice(at..at, piece);
            }
            3 if chance.below(4) == 0 => out.truncate(at),
            _ => _ = out.splice(at..at, BITS[chance.below(BITS.len())].bytes()),
        }
    }
    out
}

#[test]
fn seeds_and_their_damage() {
    let mut chance = Chance(0x5075_7071);
    for (name, folders, read) in READERS {
        let seeds = seeds(folders);
        assert!(!seeds.is_empty(), "{name} has no seeds");
        seeds.iter().for_each(|seed| read(seed));
        // Writing back reads a page several times over.
        let times = if *name == "house_style" {
            ALL / 100
        } else {
            (ALL - ALL / 100).div_ceil(READERS.len() - 1)
        };
        for _ in 0..times {
            read(&damaged(&seeds[chance.below(seeds.len())], &mut chance));
        }
    }
}

/// Input that somebody thought up to hurt.
fn hostile() -> Vec<(&'static str, String)> {
    let entities: String = (1..12)
        .map(|n| format!("<!ENTITY a{n} \"&a{0};&a{0};&a{0};&a{0};&a{0};&a{0};\">", n - 1))
        .collect();
    vec![
        ("nothing", String::new()),
        ("a line of twenty kilobytes", "leek ".repeat(4_000)),
        ("a word of twenty kilobytes", "l".repeat(20_000)),
        ("ten thousand brackets opened", "([".repeat(5_000)),
        (
            "ten thousand brackets in brackets",
            format!("{}{}", "(".repeat(5_000), ")".repeat(5_000)),
        ),
        ("ten thousand braces", format!("{{\"@type\":{}", "[{".repeat(5_000))),
        ("ten thousand groups", format!("{{\\rtf1 {}", "{".repeat(10_000))),
        (
            "right to left",
            "\u{202e}2 \u{5d1}\u{5e6}\u{5dc}\u{202c}\n\n\u{5d1}\u{5e6}\u{5dc}, 200 g\n".repeat(200),
        ),
        ("NUL bytes", "2 le\0eks\0\n\0\n\0Slice\0 the leeks.\0".repeat(200)),
        (
            "an entity bomb",
            format!("<?xml version=\"1.0\"?><!DOCTYPE r [<!ENTITY a0 \"soup\">{entities}]><r>&a11;</r>"),
        ),
        ("figures without end", "9".repeat(10_000)),
        ("fractions without end", "1/2 ".repeat(2_000)),
        ("columns without end", "a\t".repeat(2_000)),
    ]
}

#[test]
fn hostile_input() {
    for (name, text) in hostile() {
        for (reader, _, read) in READERS {
            println!("{reader}: {name}");
            read(text.as_bytes());
        }
    }
}

/// Takes minutes: the reader needs time as the square of the length of one line.
#[test]
fn a_line_of_a_hundred_kilobytes() {
    let text = "leek ".repeat(20_000);
    for (reader, _, read) in READERS {
        println!("{reader}");
        read(text.as_bytes());
    }
}
