//! Every module begins by saying what it is.

use super::Fault;
use crate::tree::File;

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    let code = files.iter().filter(|file| file.path.ends_with(".rs"));
    code.filter(|file| !file.text.starts_with("//! "))
        .map(|file| Fault::new(&file.path, 1, "does not begin with '//! ' and what the module is"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn only_code_without_words_is_a_fault() {
        let files = [
            file("a.rs", "//! A.\n"),
            file("b.rs", "use c;\n"),
            file("c.txt", "plain\n"),
        ];
        let faults = check(&files);
        assert_eq!(faults.len(), 1);
        assert_eq!(faults[0].path, "b.rs");
    }
}
