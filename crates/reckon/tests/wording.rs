//! No text says that spores or toxins are done away with: heat that a kitchen has leaves them. All that the program can
//! print is searched: the strings of its source and the cells of its tables.

use std::fs;
use std::path::{Path, PathBuf};

/// What stands heat.
const WHAT_STAYS: [&str; 6] = ["spore", "toxin", "poison", "haemagglutinin", "lectin", "botulin"];

/// What must not be said of it.
const CLAIMS: [&str; 10] = [
    "kill",
    "destroy",
    "eliminat",
    "inactivat",
    "steril",
    "neutralis",
    "get rid",
    "rendered harmless",
    "made safe",
    "removed",
];

/// Whether a sentence claims it.
fn claims(text: &str) -> bool {
    text.to_lowercase().split(['.', ';', '\n']).any(|sentence| {
        WHAT_STAYS.iter().any(|word| sentence.contains(word)) && CLAIMS.iter().any(|claim| sentence.contains(claim))
    })
}

/// The string literals of a source file, comments left out.
fn strings(source: &str) -> Vec<String> {
    let code: String = source
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| [line, "\n"])
        .collect();
    let (mut found, mut inside, mut escaped) = (Vec::new(), None::<String>, false);
    for (at, letter) in code.char_indices() {
        match &mut inside {
            Some(text) if escaped => {
                text.push(letter);
                escaped = false;
            }
            Some(_) if letter == '\\' => escaped = true,
            Some(_) if letter == '"' => found.extend(inside.take()),
            Some(text) => text.push(letter),
            // A quotation mark as a letter is no string.
            None if letter == '"' && !code[..at].ends_with('\'') => inside = Some(String::new()),
            None => {}
        }
    }
    found
}

/// Files under a folder whose name ends so.
fn files(folder: &Path, ends: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(files(&path, ends));
        } else if path.to_string_lossy().ends_with(ends) {
            found.push(path);
        }
    }
    found.sort();
    found
}

#[test]
fn the_search_finds_a_claim() {
    assert!(claims("Boil for ten minutes: this kills the spores."));
    assert!(claims("Toxins are destroyed by the heat"));
    assert!(!claims("Spores stand the boil. The heat kills growing cells."));
    assert_eq!(
        strings("// \"toxins are killed\"\nlet a = \"spores \\\"stay\\\"\";"),
        ["spores \"stay\""]
    );
}

#[test]
fn no_text_says_that_spores_or_toxins_are_killed() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let (mut texts, mut bad) = (0_usize, Vec::new());
    for path in files(&crates, ".rs")
        .into_iter()
        .filter(|path| path.components().any(|part| part.as_os_str() == "src"))
    {
        for text in strings(&fs::read_to_string(&path).unwrap()) {
            texts += 1;
            if claims(&text) {
                bad.push(format!("{}: {text}", path.display()));
            }
        }
    }
    for path in files(&crates, ".tsv") {
        for line in fs::read_to_string(&path)
            .unwrap()
            .lines()
            .filter(|line| !line.starts_with('#'))
        {
            texts += 1;
            if line.split('\t').any(claims) {
                bad.push(format!("{}: {line}", path.display()));
            }
        }
    }
    assert!(texts > 10_000, "only {texts} texts were searched");
    assert!(bad.is_empty(), "{}", bad.join("\n"));
}
