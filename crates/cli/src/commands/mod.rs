//! The commands, one file each.

pub(crate) mod completions;
pub(crate) mod convert;
pub(crate) mod digest;
pub(crate) mod draft;
pub(crate) mod gather;
pub(crate) mod larder;
pub(crate) mod man;
pub(crate) mod manuscript;
pub(crate) mod menu;
pub(crate) mod proof;
pub(crate) mod reading;
pub(crate) mod reckon;
