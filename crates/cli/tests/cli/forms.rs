//! Pages in other forms: read as pages, gathered into a book, written for the editor and as data.

use crate::bench::{Bench, SOUP};

#[test]
fn a_manuscript_for_the_editor_and_back() {
    let bench = Bench::new("editor");
    bench.put("soup.txt", SOUP.as_bytes());
    let done = bench.run(&["manuscript", "soup.txt", "-o", "soup.docx"]);
    assert_eq!((done.code, done.out.as_str()), (Some(0), ""), "{}", done.err);
    assert_eq!(bench.files(), ["soup.docx", "soup.txt"]);
    // The same words come back: queries of the program's own are left aside.
    let back = bench.run(&["manuscript", "soup.docx", "-o", "back.txt"]);
    assert_eq!(back.code, Some(0), "{}", back.err);
    let one = bench.run(&["reckon", "soup.txt", "--json"]);
    let other = bench.run(&["reckon", "back.txt", "--json"]);
    assert_eq!(one.out, other.out);
    // Nothing is overwritten, and a file that does not say its form is refused.
    let again = bench.run(&["manuscript", "soup.txt", "-o", "soup.docx"]);
    assert_eq!(again.code, Some(2));
    assert!(again.err.contains("soup.docx is there already"), "{}", again.err);
    let unsaid = bench.run(&["manuscript", "soup.txt", "-o", "soup.pdf"]);
    assert!(unsaid.err.contains(".docx for the editor"), "{}", unsaid.err);
    assert_eq!(bench.files(), ["back.txt", "soup.docx", "soup.txt"]);
}

/// Hand-set: one space before a unit, '½' as a sign, the Celsius first, steps numbered, the note kept.
#[test]
fn a_page_in_house_style() {
    let bench = Bench::new("style");
    bench.put("book.toml", b"title = \"Pots\"\n[house_style]\nnames = \"us\"\n");
    let page = "Leek pot\n[show]\nServes 4\n3 leeks, sliced\n1 1/2 tablespoons olive oil\n50g plain flour\n\n\
                Soften the leeks in the oil, then stir in the flour.\n\nBake at 300F/150C for 20 minutes.\n";
    bench.put("dishes/leeks.txt", page.as_bytes());
    let done = bench.run(&["manuscript", "dishes/leeks.txt"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    assert_eq!(
        done.out,
        "Leek pot\n\n[show]\n\nServes 4\n\n3 leeks, sliced\n1½ tbsp olive oil\n50 g all-purpose flour\n\n\
         1. Soften the leeks in the oil, then stir in the flour.\n\n2. Bake at 150 °C (300 °F) for 20 minutes.\n"
    );
}

#[test]
fn a_page_as_data_and_back() {
    let bench = Bench::new("data");
    bench.put("soup.txt", SOUP.as_bytes());
    let done = bench.run(&["manuscript", "soup.txt", "-o", "soup.jsonld"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    let back = bench.run(&["reckon", "soup.jsonld"]);
    assert_eq!(back.code, Some(0), "{}", back.err);
    assert!(back.out.starts_with("Leek soup\nServes 4"), "{}", back.out);
    assert!(
        back.err.contains("the data says more than a page holds: nutrition"),
        "{}",
        back.err
    );
}

#[test]
fn files_that_cannot_be_read_say_what_to_do() {
    let bench = Bench::new("refused");
    bench.put("a.docx", b"PK\x03\x04 cut off");
    bench.put("b.pdf", b"%PDF-1.7");
    bench.put("c.html", b"<html><body>2 leeks</body></html>");
    for (file, says) in [
        ("a.docx", "a.docx: the packing is damaged"),
        ("b.pdf", "b.pdf: this is a PDF file, which is not read"),
        ("c.html", "c.html: the web page holds no recipe as data"),
    ] {
        let done = bench.run(&["reckon", file]);
        assert_eq!((done.code, done.out.as_str()), (Some(2), ""), "{file}");
        assert!(done.err.contains(says), "{}", done.err);
    }
}

#[test]
fn a_folder_gathered_into_a_book() {
    let bench = Bench::new("gather");
    bench.put("old/soup.txt", SOUP.as_bytes());
    bench.put(
        "old/two.jsonld",
        br#"[{"@type": "Recipe", "name": "Pea soup", "keywords": "green", "recipeIngredient": ["1 kg peas"]}]"#,
    );
    bench.put("old/cut.docx", b"PK\x03\x04");
    let done = bench.run(&["gather", "old", "--into", "book"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    for says in [
        "2 pages gathered",
        "1 not read",
        "pea-soup.txt from two.jsonld",
        "keywords: green",
        "cut.docx: the packing",
    ] {
        assert!(done.out.contains(says), "{says}: {}", done.out);
    }
    let digest = bench.run(&["digest", "book"]);
    assert!(digest.out.contains("2 dishes"), "{}{}", digest.out, digest.err);
    let again = bench.run(&["gather", "old", "--into", "book"]);
    assert!(
        again.out.contains("0 pages gathered") && again.out.contains("2 there already"),
        "{}",
        again.out
    );
    // A folder that is no book is not made one.
    bench.put("other/letter.txt", b"Dear all");
    assert_eq!(bench.run(&["gather", "old", "--into", "other"]).code, Some(2));
    assert_eq!(bench.run(&["gather", "nowhere", "--into", "book"]).code, Some(2));
}
