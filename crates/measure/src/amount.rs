//! Amounts as a cook writes them: a number or a range, exact or 'about'.

use serde::{Deserialize, Serialize};

use crate::Exact;

/// A number as written: `2`, `2 to 3`, `about 2`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Amount {
    /// The lower end; equal to `high` for a single number. Never negative.
    pub low: Exact,
    /// The upper end; never below `low`.
    pub high: Exact,
    /// The writer said 'about', 'scant', 'heaped' or the like: the number is not to be leaned on.
    pub about: bool,
}
