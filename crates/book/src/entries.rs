//! The entries of a settings file, each with its line, and the faults met while reading them.

use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::error::{Fault, Misread};

/// Gathers the faults of one file.
pub(crate) struct Reader<'a> {
    file: &'a str,
    text: &'a str,
    faults: Vec<Misread>,
}

/// One entry: its word, its line, its value.
pub(crate) struct Entry<'a> {
    pub word: &'a str,
    pub line: usize,
    pub value: &'a Spanned<DeValue<'a>>,
}

impl<'a> Reader<'a> {
    pub(crate) fn new(file: &'a str, text: &'a str) -> Self {
        Reader {
            file,
            text,
            faults: Vec::new(),
        }
    }

    /// The file as a table; none, with a fault, when it does not follow the format.
    pub(crate) fn table(&mut self) -> Option<Spanned<DeTable<'a>>> {
        match DeTable::parse(self.text) {
            Ok(table) => Some(table),
            Err(error) => {
                let line = error.span().map_or(1, |span| self.line(&span));
                self.fault(line, Fault::Form(error.message().to_owned()));
                None
            }
        }
    }

    /// The entries of a table in order of line.
    pub(crate) fn entries<'t>(&self, table: &'t DeTable<'a>) -> Vec<Entry<'t>>
    where
        'a: 't,
    {
        let mut entries: Vec<Entry<'t>> = table
            .iter()
            .map(|(key, value)| Entry {
                word: key.get_ref(),
                line: self.line(&key.span()),
                value,
            })
            .collect();
        entries.sort_by_key(|entry| entry.line);
        entries
    }

    /// The line a span begins in.
    pub(crate) fn line(&self, span: &Range<usize>) -> usize {
        self.text
            .as_bytes()
            .iter()
            .take(span.start)
            .filter(|byte| **byte == b'\n')
            .count()
            + 1
    }

    /// Notes a fault.
    pub(crate) fn fault(&mut self, line: usize, fault: Fault) {
        self.faults.push(Misread {
            file: self.file.into(),
            line,
            fault,
        });
    }

    /// The tables of an array of tables (`[[pot]]`), each with its line; a fault when the entry is none.
    pub(crate) fn tables<'t>(&mut self, entry: &Entry<'t>, wanted: &'static str) -> Vec<(usize, &'t DeTable<'t>)> {
        let items = entry
            .value
            .get_ref()
            .as_array()
            .map(|items| items.iter().collect())
            .unwrap_or_default();
        let mut tables = Vec::new();
        for item in Vec::<&Spanned<DeValue<'_>>>::into_iter(items) {
            if let Some(table) = item.get_ref().as_table() {
                tables.push((self.line(&item.span()), table));
            }
        }
        if tables.is_empty() {
            let text = self.said(entry.value);
            self.fault(entry.line, Fault::NotUnderstood(entry.word.into(), text, wanted));
        }
        tables
    }

    /// A value as the writer put it, without quotation marks.
    pub(crate) fn said(&self, value: &Spanned<DeValue<'_>>) -> String {
        match value.get_ref() {
            DeValue::String(text) => text.to_string(),
            _ => self.text.get(value.span()).unwrap_or_default().to_owned(),
        }
    }

    /// What was read, or all faults.
    pub(crate) fn end<T>(self, read: T) -> Result<T, Vec<Misread>> {
        if self.faults.is_empty() {
            Ok(read)
        } else {
            Err(self.faults)
        }
    }
}
