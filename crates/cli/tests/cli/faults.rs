//! Wrong input: the line, the words, what to do; exit code 2; nothing printed, nothing written.

use std::process::Stdio;

use crate::bench::{Bench, SOUP};

/// What the program says to these arguments when it refuses them.
fn refusal(bench: &Bench, arguments: &[&str]) -> String {
    let done = bench.run(arguments);
    assert_eq!(done.code, Some(2), "{arguments:?}: {}", done.err);
    assert_eq!(done.out, "", "{arguments:?}");
    done.err
}

#[test]
fn a_page_that_is_nowhere() {
    let says = refusal(&Bench::new("nowhere"), &["reckon", "soop.txt"]);
    assert!(says.contains("no file is called 'soop.txt'"), "{says}");
    assert!(says.contains("1 to 12"), "{says}");
}

#[test]
fn a_folder_where_a_page_is_asked_for() {
    let bench = Bench::new("folder-page");
    bench.put("suppers/dishes/1.txt", SOUP.as_bytes());
    assert!(refusal(&bench, &["reckon", "suppers"]).contains("potwright digest suppers"));
}

#[test]
fn an_empty_page() {
    let bench = Bench::new("empty");
    bench.put("blank.txt", b" \n\n");
    assert!(refusal(&bench, &["reckon", "blank.txt"]).contains("blank.txt: the page is empty"));
}

/// No food and no step: bytes of another program, a note. Control characters in them never reach the terminal.
#[test]
fn a_page_on_which_nothing_is_read() {
    let bench = Bench::new("unread");
    let bytes: Vec<u8> = (0..=255).chain(b"\x1b]0;x\x07".iter().copied()).collect();
    bench.put("b/dishes/scan.txt", &bytes);
    bench.put("b/dishes/empty.txt", b"");
    bench.put("b/dishes/soup.txt", SOUP.as_bytes());
    let says = refusal(&bench, &["reckon", "b/dishes/scan.txt"]);
    assert!(says.contains("nothing on the page is a food or a step"), "{says}");
    let done = bench.run(&["digest", "b"]);
    assert_eq!(done.code, Some(2), "{}", done.err);
    assert!(done.out.contains("3 dishes, 2 of them not cooked"), "{}", done.out);
    assert!(done.out.contains("Leek soup"), "{}", done.out);
    assert_eq!(done.out.matches("not known: not read").count(), 2, "{}", done.out);
    assert!(done.err.contains("empty.txt: nothing on the page"), "{}", done.err);
    let controls = |text: &str| text.chars().any(|c| c.is_control() && c != '\n');
    assert!(!controls(&done.out) && !controls(&done.err), "{:?}", done.out);
}

#[test]
fn a_kitchen_with_a_slip() {
    let bench = Bench::new("kitchen");
    bench.put("soup.txt", SOUP.as_bytes());
    bench.put("cold.toml", b"room = \"19 C\"\nfreezer = \"cold\"\n");
    let says = refusal(&bench, &["reckon", "soup.txt", "--kitchen", "cold.toml"]);
    assert!(
        says.contains("cold.toml, line 2: 'freezer' says 'cold'; write a temperature"),
        "{says}"
    );
}

#[test]
fn a_book_without_dishes() {
    let bench = Bench::new("no-dishes");
    bench.put("book/book.toml", b"title = \"None\"\n");
    assert!(refusal(&bench, &["digest", "book"]).contains("dishes/NAME.txt"));
    let says = refusal(&bench, &["digest", "elsewhere"]);
    assert!(says.contains("elsewhere"), "{says}");
    assert_eq!(says.matches("os error").count(), 1, "{says}");
}

#[test]
fn a_command_that_is_none() {
    assert_eq!(Bench::new("command").run(&["cook"]).code, Some(2));
}

#[test]
fn a_reader_that_has_seen_enough_is_no_fault() {
    let bench = Bench::new("pipe");
    let mut child = bench
        .command(&[])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    drop(child.stdout.take());
    let output = child.wait_with_output().expect("the program ends");
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
}
