//! `menus/*.txt`: a menu as a typed page.
//!
//! ```text
//! Supper for twelve
//! Saturday 13 December
//! For 12
//!
//! Celeriac and apple soup
//! Beef shin with prunes and stout [the day before]
//! Seeded soda bread
//! ```
//!
//! The first line is the title. The number of people stands on a line of its own (`For 12`, `Serves twelve`, `12
//! guests`); the day, if there is one, on the line before or after it, in any words. Then a dish a line, called as its
//! page is. Square brackets hold a note to the desk, at the end of a line or on one of their own. List marks (`-`,
//! `*`) are tolerated; empty lines say nothing.

use potwright_measure::in_words;

use crate::error::{Fault, Misread};

/// A menu.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Menu {
    /// Its title.
    pub title: String,
    /// The day, in the writer's words.
    pub day: Option<String>,
    /// How many sit down, 1 to [`MOST_PEOPLE`].
    pub people: u32,
    /// The dishes in order of the page; at least one, none twice.
    pub dishes: Vec<MenuDish>,
    /// Notes to the desk that stand on a line of their own, without brackets.
    pub notes: Vec<String>,
}

/// A dish of a menu.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct MenuDish {
    /// What the menu calls it. Which dish of the book is meant is found when a house is opened.
    pub name: String,
    /// The note to the desk on its line, without brackets.
    pub note: Option<String>,
}

/// A menu and where its dishes stand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MenuPage {
    /// What the page says.
    pub menu: Menu,
    /// For every dish its line in the file, counted from 1.
    pub lines: Vec<usize>,
}

/// The most people a menu can be for.
pub const MOST_PEOPLE: u32 = 10_000;

/// Reads a menu page; `file` is its name in the folder, for the faults.
///
/// # Errors
///
/// Every fault, with its line: no title, no number of people or one that is none, no dish, a dish twice, words between
/// title and number that cannot all be the day.
pub fn read(file: &str, text: &str) -> Result<MenuPage, Vec<Misread>> {
    let mut reader = Reader {
        file,
        menu: Menu::default(),
        lines: Vec::new(),
        faults: Vec::new(),
        seated: false,
        day_may_follow: false,
    };
    let mut last = 1;
    for (at, line) in text.lines().enumerate() {
        last = at + 1;
        reader.line(last, line);
    }
    reader.end(last)
}

/// The page of a menu; reading it gives the same menu.
#[must_use]
pub fn write(menu: &Menu) -> String {
    let mut page = format!("{}\n", menu.title);
    if let Some(day) = &menu.day {
        page.push_str(&format!("{day}\n"));
    }
    page.push_str(&format!("For {}\n\n", menu.people));
    for dish in &menu.dishes {
        page.push_str(&dish.name);
        if let Some(note) = &dish.note {
            page.push_str(&format!(" [{note}]"));
        }
        page.push('\n');
    }
    if !menu.notes.is_empty() {
        page.push('\n');
    }
    for note in &menu.notes {
        page.push_str(&format!("[{note}]\n"));
    }
    page
}

struct Reader<'a> {
    file: &'a str,
    menu: Menu,
    lines: Vec<usize>,
    faults: Vec<Misread>,
    /// The number of people has been met.
    seated: bool,
    /// The line before was the number of people, and no day has been met.
    day_may_follow: bool,
}

impl Reader<'_> {
    fn line(&mut self, at: usize, line: &str) {
        let day_may_follow = std::mem::take(&mut self.day_may_follow);
        let (words, note) = parted(line);
        match (words.is_empty(), note) {
            (true, None) => {}
            (true, Some(note)) => self.menu.notes.push(note),
            (false, note) if self.menu.title.is_empty() => {
                self.menu.title = words;
                self.menu.notes.extend(note);
            }
            (false, note) if self.seated && !(day_may_follow && is_a_day(&words)) => self.dish(at, words, note),
            (false, note) => {
                self.menu.notes.extend(note);
                self.head(at, words);
            }
        }
    }

    /// A line between the title and the dishes: the day or the number of people.
    fn head(&mut self, at: usize, words: String) {
        match people(&words) {
            Some(Ok(people)) if !self.seated => {
                self.menu.people = people;
                self.seated = true;
                self.day_may_follow = self.menu.day.is_none();
            }
            Some(Err(said)) if !self.seated => {
                self.seated = true;
                self.fault(
                    at,
                    Fault::NotUnderstood("for".into(), said, "a number of people, like 12 or twelve"),
                );
            }
            _ if self.menu.day.is_none() => self.menu.day = Some(words),
            _ => {
                let says = format!(
                    "'{words}' is neither the day nor the number of people; write the number first, like For 12"
                );
                self.fault(at, Fault::Form(says));
            }
        }
    }

    fn dish(&mut self, at: usize, name: String, note: Option<String>) {
        let same = |dish: &MenuDish| dish.name.to_lowercase() == name.to_lowercase();
        let first = self
            .menu
            .dishes
            .iter()
            .position(same)
            .and_then(|index| self.lines.get(index).copied());
        match first {
            Some(first) => self.fault(at, Fault::Twice(name, first)),
            None => {
                self.menu.dishes.push(MenuDish { name, note });
                self.lines.push(at);
            }
        }
    }

    fn fault(&mut self, line: usize, fault: Fault) {
        self.faults.push(Misread {
            file: self.file.into(),
            line,
            fault,
        });
    }

    fn end(mut self, last: usize) -> Result<MenuPage, Vec<Misread>> {
        let missing = |word, example| Fault::Missing("this menu".into(), word, example);
        if self.menu.title.is_empty() {
            self.fault(last, missing("title", "Supper for twelve"));
        } else if !self.seated {
            self.fault(last, missing("number of people", "For 12"));
        } else if self.menu.dishes.is_empty() {
            self.fault(last, missing("dish", "Leek soup"));
        }
        if self.faults.is_empty() {
            Ok(MenuPage {
                menu: self.menu,
                lines: self.lines,
            })
        } else {
            Err(self.faults)
        }
    }
}

/// The words of a line without list mark, white space folded, and the note in brackets at its end.
fn parted(line: &str) -> (String, Option<String>) {
    let line = line.trim_start_matches('\u{feff}').trim();
    let line = ["-", "*", "•", "–"]
        .iter()
        .find_map(|mark| line.strip_prefix(mark)?.strip_prefix(char::is_whitespace))
        .unwrap_or(line)
        .trim();
    let folded = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let note = line.strip_suffix(']').and_then(|rest| rest.rsplit_once('['));
    match note {
        Some((words, note)) if !folded(note).is_empty() => (folded(words), Some(folded(note))),
        _ => (folded(line), None),
    }
}

/// The number of a line like 'For 12', 'Serves twelve', '12 guests'; an error with the words when it says 'for' or
/// 'serves' but no number of people. None when it is no such line.
fn people(words: &str) -> Option<Result<u32, String>> {
    const BEFORE: [&str; 4] = ["for", "serves", "feeds", "table for"];
    const AFTER: [&str; 7] = [
        "people",
        "guests",
        "persons",
        "covers",
        "friends",
        "neighbours",
        "at table",
    ];
    let lower = words.to_lowercase().trim_end_matches(['.', ':']).to_owned();
    let after = AFTER
        .iter()
        .find_map(|word| lower.strip_suffix(word))
        .map(str::trim_end);
    let bare = after.unwrap_or(&lower);
    let before = BEFORE
        .iter()
        .find_map(|word| bare.strip_prefix(word)?.strip_prefix(' '));
    let number = count(before.unwrap_or(bare).trim());
    match (number, before, after) {
        (Some(number), ..) => Some(Ok(number)),
        (None, Some(said), _) if !said.contains(' ') || after.is_some() => Some(Err(said.trim().to_owned())),
        _ => None,
    }
}

/// A number of people in figures or words.
fn count(text: &str) -> Option<u32> {
    let special = match text {
        "a dozen" => Some(12),
        "a hundred" | "one hundred" => Some(100),
        _ => None,
    };
    let found = text.parse().ok().or(special).or_else(|| in_words::whole(text));
    found.filter(|people| (1..=MOST_PEOPLE).contains(people))
}

/// Whether a line after the number of people is the day: it has a weekday, a month or a date in figures.
fn is_a_day(words: &str) -> bool {
    const NAMES: [&str; 19] = [
        "monday",
        "tuesday",
        "wednesday",
        "thursday",
        "friday",
        "saturday",
        "sunday",
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let lower = words.to_lowercase();
    let mut said = lower.split(|c: char| !c.is_alphanumeric());
    said.any(|word| NAMES.contains(&word) || (word.len() == 4 && word.starts_with("20") && word.parse::<u32>().is_ok()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = "Supper for twelve\n\nSaturday 13 December\nFor 12\n\n- Celeriac  and apple soup\nBeef shin [the day before]\n[one eats no gluten]\n";

    #[test]
    fn a_list_mark_before_a_tab_is_one_too() {
        for line in ["* Leek soup", "*\tLeek soup", "–\u{a0}Leek  soup"] {
            assert_eq!(parted(line), ("Leek soup".into(), None), "{line:?}");
        }
        assert_eq!(parted("-Leek soup").0, "-Leek soup");
    }

    #[test]
    fn a_page_as_typed() {
        let page = read("supper.txt", PAGE).expect("sound");
        assert_eq!(page.menu.title, "Supper for twelve");
        assert_eq!(page.menu.day.as_deref(), Some("Saturday 13 December"));
        assert_eq!(page.menu.people, 12);
        assert_eq!(page.menu.dishes[0].name, "Celeriac and apple soup");
        assert_eq!(page.menu.dishes[1].note.as_deref(), Some("the day before"));
        assert_eq!(page.menu.notes, ["one eats no gluten"]);
        assert_eq!(page.lines, [6, 7]);
    }

    #[test]
    fn people_and_day_in_any_order_and_words() {
        for (head, people, day) in [
            ("For 12", 12, None),
            ("Serves twenty-four", 24, None),
            ("a dozen guests", 12, None),
            ("for four people.\nFriday 5 December", 4, Some("Friday 5 December")),
            ("The shortest day\nFor 8", 8, Some("The shortest day")),
            ("2025-12-13\n12 covers", 12, Some("2025-12-13")),
        ] {
            let page = read("m.txt", &format!("A supper\n{head}\n\nLeek soup\n")).expect(head);
            assert_eq!((page.menu.people, page.menu.day.as_deref()), (people, day), "{head}");
            assert_eq!(page.menu.dishes.len(), 1, "{head}");
        }
        // A dish after the number is a dish, whatever month is in its name elsewhere.
        let page = read("m.txt", "A supper\nFor 4\n\nMarch hare stew\n").expect("sound");
        assert_eq!(page.menu.dishes[0].name, "March hare stew");
    }

    #[test]
    fn faults_have_their_lines() {
        let says = |text: &str| -> Vec<String> {
            read("menus/m.txt", text)
                .expect_err(text)
                .iter()
                .map(ToString::to_string)
                .collect()
        };
        assert_eq!(
            says("")[0],
            "menus/m.txt, line 1: this menu lacks 'title'; write, for example, Supper for twelve"
        );
        assert_eq!(
            says("A supper\n\nLeek soup\n")[0],
            "menus/m.txt, line 3: this menu lacks 'number of people'; write, for example, For 12"
        );
        assert_eq!(
            says("A supper\nFor some\nLeek soup\n")[0],
            "menus/m.txt, line 2: 'for' says 'some'; write a number of people, like 12 or twelve"
        );
        assert!(says("A supper\nFor 0\nLeek soup\n")[0].contains("line 2: 'for' says '0'"));
        assert!(says("A supper\nFor 4\n")[0].contains("line 2: this menu lacks 'dish'"));
        assert_eq!(
            says("A supper\nFor 4\n\nLeek soup\nleek  Soup\n")[0],
            "menus/m.txt, line 5: 'leek Soup' stands in line 4 already"
        );
        let both = says("A supper\nFriday\nLeek soup\nFor 4\nBread\n");
        assert!(
            both[0].starts_with("menus/m.txt, line 3: 'Leek soup' is neither the day nor"),
            "{both:?}"
        );
    }
}
