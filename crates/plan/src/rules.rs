//! The rules of scaling and where each is from: `data/scaling.tsv`.

/// key, rule, source.
const TABLE: &str = include_str!("../data/scaling.tsv");

/// The source of a rule; empty for a key the table does not have (a test looks at every key).
pub(crate) fn source(key: &str) -> &'static str {
    rows().find(|[row, ..]| *row == key).map_or("", |[_, _, source]| source)
}

fn rows() -> impl Iterator<Item = [&'static str; 3]> {
    let lines = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.filter_map(|line| {
        let cells: Vec<&'static str> = line.split('\t').collect();
        cells.try_into().ok()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole() {
        let lines = TABLE.lines().filter(|line| !line.starts_with('#')).count();
        assert_eq!(rows().count(), lines - 1);
        assert!(rows().all(|row| row.iter().all(|cell| !cell.trim().is_empty())));
    }
}
