//! A packed file (ZIP, ISO/IEC 21320-1) in memory: its parts by name, each with a limit.

use std::io::{Cursor, Read};

use zip::ZipArchive;
use zip::result::ZipError;

use super::error::FileError;
use super::limits;

/// A packed file.
pub(super) struct Package<'b> {
    archive: ZipArchive<Cursor<&'b [u8]>>,
}

impl<'b> Package<'b> {
    /// Opens it.
    ///
    /// # Errors
    ///
    /// The list of parts is damaged, or names too many.
    pub(super) fn open(bytes: &'b [u8]) -> Result<Self, FileError> {
        let archive = ZipArchive::new(Cursor::new(bytes))
            .map_err(|error| FileError::Damaged("the packing".into(), error.to_string()))?;
        if archive.len() > limits::PARTS {
            return Err(FileError::Damaged(
                "the packing".into(),
                format!("{} parts; {} is the most", archive.len(), limits::PARTS),
            ));
        }
        Ok(Package { archive })
    }

    /// Whether it has a part.
    pub(super) fn has(&self, name: &str) -> bool {
        self.archive.index_for_name(name).is_some()
    }

    /// The text of a part; `None` when there is none.
    ///
    /// # Errors
    ///
    /// The part is damaged, locked or too large.
    pub(super) fn part(&mut self, name: &str) -> Result<Option<String>, FileError> {
        let damaged = |says: String| FileError::Damaged(name.to_owned(), says);
        let part = match self.archive.by_name(name) {
            Ok(part) => part,
            Err(ZipError::FileNotFound) => return Ok(None),
            Err(error) if error.to_string().to_lowercase().contains("password") => return Err(FileError::Locked),
            Err(error) => return Err(damaged(error.to_string())),
        };
        let mut bytes = Vec::new();
        let most = limits::PART as u64;
        part.take(most + 1)
            .read_to_end(&mut bytes)
            .map_err(|error| damaged(error.to_string()))?;
        if bytes.len() > limits::PART {
            return Err(FileError::TooLarge(
                "a part of the file",
                limits::mebibytes(limits::PART),
            ));
        }
        let encoding = encoding_rs::Encoding::for_bom(&bytes).map_or(encoding_rs::UTF_8, |(encoding, _)| encoding);
        Ok(Some(encoding.decode(&bytes).0.into_owned()))
    }

    /// The text of a part that must be there.
    ///
    /// # Errors
    ///
    /// As [`Package::part`], and there is none.
    pub(super) fn needed(&mut self, name: &str) -> Result<String, FileError> {
        self.part(name)?.ok_or_else(|| FileError::Missing(name.to_owned()))
    }
}
