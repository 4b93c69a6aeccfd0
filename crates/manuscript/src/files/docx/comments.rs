//! Comments: who wrote which words.

use std::collections::BTreeMap;

use super::super::xml::{Element, Space, Visit};

/// The comments of a file by key.
#[derive(Debug, Default)]
pub(super) struct Comments {
    comments: BTreeMap<String, (String, String)>,
    open: Option<String>,
    words: bool,
}

impl Comments {
    /// Author and words of a comment.
    pub(super) fn get(&self, key: &str) -> Option<(&str, &str)> {
        self.comments
            .get(key)
            .map(|(author, words)| (author.as_str(), words.as_str()))
    }
}

impl Visit for Comments {
    fn open(&mut self, element: &Element) {
        if element.space != Space::Word {
            return;
        }
        match element.name.as_str() {
            "comment" => {
                self.open = element.get("id").map(str::to_owned);
                if let Some(key) = &self.open {
                    let author = element
                        .get("author")
                        .or(element.get("initials"))
                        .unwrap_or("")
                        .to_owned();
                    self.comments.insert(key.clone(), (author, String::new()));
                }
            }
            "t" => self.words = true,
            "p" | "br" | "tab" => self.push(" "),
            _ => {}
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        if space == Space::Word {
            match name {
                "comment" => self.open = None,
                "t" => self.words = false,
                _ => {}
            }
        }
    }

    fn text(&mut self, text: &str) {
        if self.words {
            self.push(text);
        }
    }
}

impl Comments {
    fn push(&mut self, words: &str) {
        if let Some((_, said)) = self.open.as_ref().and_then(|key| self.comments.get_mut(key)) {
            said.push_str(words);
        }
    }
}
