//! Every row of every table in `crates/*/data/` says where it is from.

use super::{Fault, crate_of};
use crate::tree::File;

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    let tables = files.iter().filter(|file| {
        crate_of(&file.path).is_some_and(|(_, rest)| rest.starts_with("data/") && rest.ends_with(".tsv"))
    });
    tables.flat_map(check_table).collect()
}

fn check_table(file: &File) -> Vec<Fault> {
    let mut lines = file.text.lines().enumerate().filter(|(_, line)| !line.starts_with('#'));
    let Some((at, header)) = lines.next() else {
        return vec![Fault::new(&file.path, 0, "an empty table")];
    };
    let columns: Vec<&str> = header.split('\t').collect();
    let Some(source) = columns.iter().position(|column| *column == "source") else {
        return vec![Fault::new(&file.path, at + 1, "no column is called 'source'")];
    };
    let mut faults = Vec::new();
    for (at, line) in lines {
        let cells: Vec<&str> = line.split('\t').collect();
        if cells.len() != columns.len() {
            let says = format!("{} cells under {} columns", cells.len(), columns.len());
            faults.push(Fault::new(&file.path, at + 1, says));
        } else if cells.get(source).is_none_or(|cell| cell.trim().is_empty()) {
            faults.push(Fault::new(&file.path, at + 1, "a row without a source"));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    fn says(text: &str) -> Vec<(usize, String)> {
        let faults = check(&[file("crates/pot/data/pots.tsv", text)]);
        faults.into_iter().map(|fault| (fault.line, fault.says)).collect()
    }

    #[test]
    fn a_whole_table_is_fine() {
        assert_eq!(says("# pots\nname\tsource\nbig\tcommon practice, no source\n"), []);
    }

    #[test]
    fn a_row_without_source_is_a_fault() {
        assert_eq!(
            says("name\tsource\nbig\t \n"),
            [(2, "a row without a source".to_owned())]
        );
        assert_eq!(says("name\tsource\nbig\n"), [(2, "1 cells under 2 columns".to_owned())]);
    }

    #[test]
    fn a_table_without_the_column_is_a_fault() {
        assert_eq!(says("name\torigin\nbig\tx\n").len(), 1);
        assert_eq!(says("# nothing\n").len(), 1);
    }
}
