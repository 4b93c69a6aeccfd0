//! Files of word processors: what they hold as a page, and a page as a manuscript for the editor.
//!
//! `files/parsnip.fodt` is typed by hand; the .odt, .docx and .rtf beside it are what LibreOffice 7.4 made of it.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use potwright_manuscript::files::{FileError, Kind, OWN_NAME, Remark, extract, to_docx};
use potwright_manuscript::{Span, read, reading};
use zip::write::{SimpleFileOptions, ZipWriter};

/// The page that `parsnip.fodt` tells: struck-out onions gone, 'gently' in, list numbers as text, the comment behind its
/// sentence, the footnote at the end. Written down from the file by hand.
const PARSNIP: &str = "Parsnip soup of the lock

A soup for the coldest evening on the tow-path.

Serves 6

40 g butter
1 1/2 tsp fine salt
800 g parsnips, peeled and diced [Desk: weighed before or after peeling?]

1.2 litres\tvegetable stock
150 ml\tdouble cream

## For the croûtons
- 4 slices bread, cubed
- 2 tbsp olive oil

## Method

1. Melt the butter in a large pot over a low heat, add the parsnips and salt, cover and sweat gently for 10 minutes.
2. Pour in the stock, bring to the boil and simmer for 25 minutes.
3. Blend the soup, stir in the cream and heat through for 2 minutes.

Fry the bread in the oil over a medium heat for 5 minutes and scatter over the soup.

Note: Water will do.
";

fn here(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/files").join(name)
}

/// The pages of the demo book.
fn demo() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/lock-house/dishes");
    let mut pages: Vec<(String, String)> = fs::read_dir(folder)
        .expect("the demo book is there")
        .map(|entry| entry.expect("is there").path())
        .map(|path| (path.display().to_string(), fs::read_to_string(&path).expect("is text")))
        .collect();
    pages.sort();
    assert_eq!(pages.len(), 12);
    pages
}

/// The reading of a page as plain data, without the words' own spacing.
fn read_as_data(text: &str) -> serde_json::Value {
    let mut value = reading(&read(text), text, "page");
    without_raw(&mut value);
    value
}

fn without_raw(value: &mut serde_json::Value) {
    match value {
        serde_json::Value::Object(object) => {
            object.remove("raw");
            object.values_mut().for_each(without_raw);
        }
        serde_json::Value::Array(values) => values.iter_mut().for_each(without_raw),
        _ => {}
    }
}

/// The same recipe is read from both; what differs is told part by part.
fn same(one: &str, other: &str, name: &str) {
    let (a, b) = (read_as_data(one), read_as_data(other));
    for part in ["title", "layout", "yield", "declared_times", "ingredients"] {
        assert_eq!(a[part], b[part], "{name}: {part}\n{one}");
    }
    let operations = |value: &serde_json::Value| value["method"]["operations"].as_array().cloned().unwrap_or_default();
    for (a, b) in operations(&a).iter().zip(&operations(&b)) {
        assert_eq!(a, b, "{name}\n{one}");
    }
    assert_eq!(a["method"], b["method"], "{name}");
}

/// A list typed in columns comes back line for line: rows of columns are not put apart.
#[test]
fn typed_columns_come_back_as_they_were() {
    let page = "Lock-side squash stew\n\nServes 30\n\nITEM                QTY     UNIT    PREP\n\
        Squash              4.5     kg      peeled, diced\nGarlic              80      g       minced\n\
        Celery              600     g       small dice\nOlive oil           200     ml\n\
        Vegetable stock     3       l\nLemon juice         120     ml\n\nMETHOD\n\n\
        1. Heat the oil in a large pot and sweat the garlic and celery for 10 minutes.\n\
        2. Add the squash and stock and simmer for 25 minutes. Finish with the lemon juice.\n";
    let back = extract(&to_docx(page, &[]).expect("is packed")).expect("is read");
    let foods = |text: &str| {
        let lines = read(text).ingredients;
        let name = |line: &potwright_manuscript::Ingredient| line.items.first().map(|item| item.name.clone());
        lines.iter().map(name).collect::<Vec<_>>()
    };
    assert_eq!(foods(page).len(), 6, "{:?}", foods(page));
    assert_eq!(foods(&back.text), foods(page), "{}", back.text);
}

#[test]
fn one_page_in_three_forms() {
    for (name, kind) in [
        ("parsnip.odt", Kind::Odt),
        ("parsnip.docx", Kind::Docx),
        ("parsnip.rtf", Kind::Rtf),
    ] {
        let taken = extract(&fs::read(here(name)).expect("is there")).expect("is read");
        assert_eq!(taken.kind, kind);
        assert_eq!(taken.text, PARSNIP, "{name}");
        let [comment] = taken.comments.as_slice() else {
            panic!("{name}: one comment")
        };
        assert_eq!(
            (comment.author.as_str(), comment.text.as_str()),
            ("Desk", "weighed before or after peeling?")
        );
        assert_eq!(comment.span.of(&taken.text), "[Desk: weighed before or after peeling?]");
        let said = taken.said.join("\n");
        assert!(
            said.contains("Lock House suppers, second draft") && said.contains("hidden text"),
            "{name}: {said}"
        );
    }
    let recipe = read(PARSNIP);
    assert_eq!(recipe.ingredients.len(), 7);
    assert_eq!(recipe.ingredients[3].items[0].name, "vegetable stock");
    assert_eq!(recipe.steps.len(), 4);
    assert_eq!(recipe.desk_notes.len(), 1);
}

/// A packed file of these parts.
fn packed(parts: &[(&str, &str)]) -> Vec<u8> {
    let mut writer = ZipWriter::new(std::io::Cursor::new(Vec::new()));
    for (name, text) in parts {
        writer
            .start_file(*name, SimpleFileOptions::default())
            .expect("in memory");
        writer.write_all(text.as_bytes()).expect("in memory");
    }
    writer.finish().expect("in memory").into_inner()
}

const WORD: &str = "xmlns:w=\"http://schemas.openxmlformats.org/wordprocessingml/2006/main\" \
    xmlns:m=\"http://schemas.openxmlformats.org/officeDocument/2006/math\" \
    xmlns:mc=\"http://schemas.openxmlformats.org/markup-compatibility/2006\"";

/// A .docx file with this body, and these further parts.
fn docx(body: &str, further: &[(&str, &str)]) -> Vec<u8> {
    let document = format!("<w:document {WORD}><w:body>{body}</w:body></w:document>");
    let mut parts = vec![
        ("[Content_Types].xml", "<Types/>"),
        ("word/document.xml", document.as_str()),
    ];
    parts.extend_from_slice(further);
    packed(&parts)
}

fn text_of(body: &str) -> String {
    extract(&docx(body, &[])).expect("is read").text
}

fn paragraph(words: &str) -> String {
    format!("<w:p><w:r><w:t>{words}</w:t></w:r></w:p>")
}

/// Each body is made by hand after ECMA-376 part 1; the page is what a word processor shows of it.
#[test]
fn what_a_docx_shows() {
    for (body, page) in [
        // 17.13.5: insertions in, deletions and what was moved away out; also a struck-out paragraph mark and row.
        (
            "<w:p><w:ins><w:r><w:t xml:space=\"preserve\">3 </w:t></w:r></w:ins><w:del><w:r><w:delText>2 </w:delText>\
                </w:r></w:del><w:r><w:t>leeks</w:t></w:r><w:moveFrom><w:r><w:t>, red</w:t></w:r></w:moveFrom></w:p>",
            "3 leeks\n",
        ),
        (
            "<w:p><w:pPr><w:rPr><w:del/></w:rPr></w:pPr><w:r><w:t>30 g</w:t></w:r></w:p>\
                <w:p><w:r><w:t xml:space=\"preserve\"> butter</w:t></w:r></w:p>",
            "30 g butter\n",
        ),
        (
            "<w:tbl><w:tr><w:trPr><w:del/></w:trPr><w:tc><w:p><w:r><w:t>1 kg</w:t></w:r></w:p></w:tc></w:tr>\
                <w:tr><w:tc><w:p><w:r><w:t>2 kg</w:t></w:r></w:p></w:tc><w:tc><w:p><w:r><w:t>bones</w:t></w:r></w:p></w:tc>\
                </w:tr></w:tbl>",
            "2 kg\tbones\n",
        ),
        // Breaks, tabs, hyphens, raised figures, a set fraction, odd spaces, marks of direction.
        (
            "<w:p><w:r><w:t>a</w:t><w:br/><w:t>b</w:t><w:tab/><w:t>c</w:t><w:noBreakHyphen/><w:t>d</w:t></w:r></w:p>",
            "a\nb\tc-d\n",
        ),
        (
            "<w:p><w:r><w:t>1</w:t></w:r><w:r><w:rPr><w:vertAlign w:val=\"superscript\"/></w:rPr><w:t>1</w:t></w:r>\
                <w:r><w:t>/2 tsp salt</w:t></w:r></w:p>",
            "1 1/2 tsp salt\n",
        ),
        (
            "<w:p><w:r><w:t>2</w:t></w:r><m:oMath><m:f><m:num><m:r><m:t>1</m:t></m:r></m:num><m:den><m:r><m:t>4</m:t>\
                </m:r></m:den></m:f></m:oMath><w:r><w:t xml:space=\"preserve\"> cups</w:t></w:r></w:p>",
            "2 1/4 cups\n",
        ),
        (
            "<w:p><w:r><w:t>2\u{a0}\u{200e}kg\u{2009}beef &amp; bones&#x2c; raw</w:t></w:r></w:p>",
            "2 kg beef & bones, raw\n",
        ),
        // A text box has two forms; one is read.
        (
            "<w:p><mc:AlternateContent><mc:Choice><w:txbxContent><w:p><w:r><w:t>Serves 4</w:t></w:r></w:p></w:txbxContent>\
                </mc:Choice><mc:Fallback><w:txbxContent><w:p><w:r><w:t>Serves 4</w:t></w:r></w:p></w:txbxContent>\
                </mc:Fallback></mc:AlternateContent><w:r><w:t>Leek soup</w:t></w:r></w:p>",
            "Serves 4\nLeek soup\n",
        ),
    ] {
        assert_eq!(text_of(body), page, "{body}");
    }
}

/// ECMA-376 part 1, 17.9: levels count on their own, a list that is restarted begins where it says.
#[test]
fn lists_count_as_a_word_processor_counts() {
    let numbering = format!(
        "<w:numbering {WORD}><w:abstractNum w:abstractNumId=\"7\"><w:lvl w:ilvl=\"0\"><w:start w:val=\"1\"/>\
            <w:numFmt w:val=\"decimal\"/><w:lvlText w:val=\"%1.\"/></w:lvl><w:lvl w:ilvl=\"1\"><w:start w:val=\"1\"/>\
            <w:numFmt w:val=\"lowerLetter\"/><w:lvlText w:val=\"%1.%2)\"/></w:lvl></w:abstractNum>\
            <w:num w:numId=\"1\"><w:abstractNumId w:val=\"7\"/></w:num><w:num w:numId=\"2\"><w:abstractNumId w:val=\"7\"/>\
            <w:lvlOverride w:ilvl=\"0\"><w:startOverride w:val=\"1\"/></w:lvlOverride></w:num></w:numbering>"
    );
    let relations = "<Relationships><Relationship Type=\"x/numbering\" Target=\"numbering.xml\"/></Relationships>";
    let item = |list: usize, level: usize| {
        format!(
            "<w:p><w:pPr><w:numPr><w:ilvl w:val=\"{level}\"/><w:numId w:val=\"{list}\"/></w:numPr></w:pPr>\
                <w:r><w:t>Stir.</w:t></w:r></w:p>"
        )
    };
    let body = [
        item(1, 0),
        item(1, 0),
        item(1, 1),
        item(1, 1),
        item(1, 0),
        item(1, 1),
        item(2, 0),
        item(2, 0),
    ]
    .concat();
    let further = [
        ("word/numbering.xml", numbering.as_str()),
        ("word/_rels/document.xml.rels", relations),
    ];
    let taken = extract(&docx(&body, &further)).expect("is read");
    let labels: Vec<&str> = taken.text.lines().filter_map(|line| line.split(' ').next()).collect();
    assert_eq!(labels, ["1.", "2.", "2.a)", "2.b)", "3.", "3.a)", "1.", "2."]);
}

/// Rich Text Format 1.9, worked by hand: code pages, Unicode with its fallback, tables, comments, struck-out words.
#[test]
fn what_a_rich_text_file_shows() {
    for (file, page) in [
        (r"{\rtf1\ansi\ansicpg1252 cr\'e8me \u189?\~cup\par}", "crème ½ cup\n"),
        (
            r"{\rtf1\ansi\uc2 \u8531\'31\'33 cup\par 2\endash 3 leeks\par}",
            "⅓ cup\n2–3 leeks\n",
        ),
        (
            r"{\rtf1{\fonttbl{\f0\fcharset204 A;}{\f1 B;}}\f0\'f1\'f3\'ef{\f1 !}\par}",
            "суп!\n",
        ),
        (
            r"{\rtf1 add {\deleted two }{\revised three} leeks{\v unseen}\par}",
            "add three leeks\n",
        ),
        (
            r"{\rtf1{\info{\title No}}{\*\unknown{\b no}}{\pict 00ff}\trowd\intbl 1 kg\cell beef\cell\row\pard Stir.\par}",
            "1 kg\tbeef\n\nStir.\n",
        ),
        (
            r"{\rtf1 1{\super 1}/2 tsp salt{\*\atnauthor Ed}{\*\annotation{\*\atnref 1}fine?\par}, sifted\par}",
            "1 1/2 tsp salt, sifted [Ed: fine?]\n",
        ),
        (
            r"{\rtf1{\stylesheet{\s2 heading 2;}}Soup\par\pard\s2 Method\par\pard{\listtext 1.\tab}Stir.\par}",
            "Soup\n\n## Method\n1. Stir.\n",
        ),
        // U+1F332 in two units of 16 bits: D83C is 55356 or -10180, DF32 is 57138 or -8398.
        (r"{\rtf1 a\{b\}\\c\line d\u-10180?\u-8398?\par}", "a{b}\\c\nd🌲\n"),
    ] {
        let taken = extract(file.as_bytes()).expect(file);
        assert_eq!(taken.text, page, "{file}");
    }
}

/// What is too large, too deep, locked or of another form is refused in words that say what to do.
#[test]
fn files_that_are_refused() {
    let zeros = " ".repeat(70 << 20);
    let bomb = docx(&zeros, &[]);
    assert!(bomb.len() < 1 << 20, "70 MiB are packed into less than one");
    let nested = docx(&format!("{}{}", "<w:p>".repeat(400), "</w:p>".repeat(400)), &[]);
    let entities = "<!DOCTYPE d [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><d>&b;</d>";
    let entity_bomb = packed(&[("[Content_Types].xml", "<Types/>"), ("word/document.xml", entities)]);
    let undeclared = docx("<w:p><w:r><w:t>&bomb;</w:t></w:r></w:p>", &[]);
    let locked = packed(&[
        ("content.xml", "<a/>"),
        ("META-INF/manifest.xml", "<m><encryption-data/></m>"),
    ]);
    let part = || "word/document.xml".to_owned();
    let groups = format!("{{\\rtf1{}", "{".repeat(400));
    for (bytes, expected) in [
        (bomb, FileError::TooLarge("a part of the file", 64)),
        (nested, FileError::TooDeep("its elements", 300)),
        (entity_bomb, FileError::Entities(part())),
        (undeclared, FileError::Entities(part())),
        (locked, FileError::Locked),
        (
            packed(&[("[Content_Types].xml", "<Types/>")]),
            FileError::Missing(part()),
        ),
        (
            packed(&[("a.txt", "soup")]),
            FileError::OtherForm("a packed file, but no text of a word processor"),
        ),
        (groups.into_bytes(), FileError::TooDeep("its groups", 300)),
        (b"%PDF-1.7".to_vec(), FileError::OtherForm("a PDF file")),
        (b"2 leeks".to_vec(), FileError::Unknown),
    ] {
        let error = extract(&bytes).expect_err("is refused");
        assert_eq!(error, expected);
        assert!(
            error.to_string().contains("save") || error.to_string().contains("no word/document.xml"),
            "{error}"
        );
    }
    let whole = fs::read(here("parsnip.docx")).expect("is there");
    assert!(matches!(
        extract(&whole[..whole.len() / 2]),
        Err(FileError::Damaged(..))
    ));
}

/// A remark on every tenth word of a page from its yield on. Those on headnotes are left out as long as the reader does
/// not come to an end on a sentence like 'Twelve minutes from a hot pan to the table.' with a note behind it.
fn remarks(text: &str) -> Vec<Remark> {
    let from = read(text).yields.map_or(0, |yields| yields.words.span.end);
    let place = |word: &str| word.as_ptr() as usize - text.as_ptr() as usize;
    let remark = |word: &str| Remark {
        span: Span::new(place(word), place(word) + word.len()),
        author: "Ed".into(),
        text: format!("is '{}' right?", word.trim_matches(['[', ']'])),
    };
    let words = text.get(from..).unwrap_or("").split_whitespace();
    words.step_by(10).map(remark).collect()
}

#[test]
fn the_demo_book_out_and_back_is_the_same_recipe() {
    for (name, text) in demo() {
        let file = to_docx(&text, &[]).expect("is packed");
        assert_eq!(file, to_docx(&text, &[]).expect("is packed"), "the same bytes twice");
        let back = extract(&file).expect("is read");
        assert_eq!(back.said, Vec::<String>::new());
        same(&back.text, &text, &name);
        assert_eq!(
            read(&back.text).desk_notes.len(),
            read(&text).desk_notes.len(),
            "{name}"
        );
    }
}

#[test]
fn remarks_go_along_as_comments_at_their_words() {
    for (name, text) in demo() {
        let remarks = remarks(&text);
        let back = extract(&to_docx(&text, &remarks).expect("is packed")).expect("is read");
        assert_eq!(back.comments.len(), remarks.len(), "{name}");
        for remark in &remarks {
            assert!(
                back.comments
                    .iter()
                    .any(|comment| comment.text == remark.text && comment.author == "Ed"),
                "{name}"
            );
        }
        same(&back.text, &text, &name);
    }
}

/// Queries of the program are asked afresh; what others say comes back.
#[test]
fn own_comments_do_not_come_back() {
    let text = "Leek soup\n\n2 leeks\n\nSlice the leeks.\n";
    let remark = |author: &str| Remark {
        span: Span::new(11, 18),
        author: author.into(),
        text: "how large?".into(),
    };
    let back = extract(&to_docx(text, &[remark(OWN_NAME), remark("Ed")]).expect("is packed")).expect("is read");
    assert_eq!(back.comments.len(), 1);
    assert!(back.text.contains("2 leeks [Ed: how large?]"), "{}", back.text);
    assert!(
        back.said[0].starts_with("1 comment of Potwright's own"),
        "{:?}",
        back.said
    );
}

/// Places that fit no words, and characters that XML forbids, are no fault.
#[test]
fn odd_places_and_odd_pages_are_written() {
    for text in [
        "",
        "\n\n",
        "\0\u{1}\u{fffe}",
        "a\r\nb\rc",
        "é",
        "## Soup\n\n- 2 leeks",
        "a\tb",
    ] {
        for (start, end) in [(0, 0), (0, 99), (99, 99), (1, 1), (99, 0)] {
            let remark = Remark {
                span: Span::new(start, end),
                author: "<\"&\u{2}>".into(),
                text: "a\n\u{3}b".into(),
            };
            let file = to_docx(text, &[remark.clone(), remark]).expect("is packed");
            extract(&file).unwrap_or_else(|error| panic!("{text:?} {start} {end}: {error}"));
        }
    }
}

/// LibreOffice opens the manuscript, shows all its words, and keeps its comments when it saves it in three forms.
#[test]
fn libreoffice_opens_the_manuscript() {
    let office = ["soffice", "libreoffice"]
        .into_iter()
        .find(|name| Command::new(name).arg("--version").output().is_ok());
    let Some(office) = office else {
        let notes = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../target/not-run");
        fs::create_dir_all(&notes).expect("a folder for notes");
        let says = "LibreOffice is not installed: apt-get install libreoffice-writer-nogui";
        fs::write(notes.join("libreoffice_opens_the_manuscript"), says).expect("a note");
        eprintln!("not run: {says}");
        return;
    };
    let folder = std::env::temp_dir().join(format!("potwright-office-{}", std::process::id()));
    _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(folder.join("out")).expect("a folder to work in");
    let (_, text) = demo().swap_remove(1);
    let remarks = remarks(&text);
    fs::write(folder.join("page.docx"), to_docx(&text, &remarks).expect("is packed")).expect("is written");
    for form in ["txt:Text", "docx", "odt", "rtf"] {
        let profile = format!("-env:UserInstallation=file://{}", folder.join("profile").display());
        let done = Command::new(office)
            .args([&profile, "--headless", "--convert-to", form, "--outdir"])
            .args([folder.join("out"), folder.join("page.docx")])
            .output()
            .expect("LibreOffice starts");
        assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
        let ending = form.split(':').next().unwrap_or(form);
        let bytes = fs::read(folder.join("out").join(format!("page.{ending}"))).expect("LibreOffice has saved it");
        if ending == "txt" {
            let shown = String::from_utf8_lossy(&bytes);
            let words = |text: &str| text.split_whitespace().map(str::to_owned).collect::<Vec<_>>();
            assert_eq!(words(shown.trim_start_matches('\u{feff}')), words(&text));
        } else {
            let back = extract(&bytes).expect("is read");
            assert_eq!(back.comments.len(), remarks.len(), "{form}");
            same(&back.text, &text, form);
        }
    }
    _ = fs::remove_dir_all(&folder);
}

#[test]
fn long_files_take_their_time_and_no_more() {
    let body = paragraph("Stir the leeks into the butter and cook for 5 minutes.").repeat(50_000);
    let taken = extract(&docx(&body, &[])).expect("is read");
    assert_eq!(taken.text.matches("leeks").count(), 50_000);
}
