//! Ingredients named in running text.

use crate::Recipe;

pub(crate) fn ingredients(_text: &str, _recipe: &mut Recipe) {}
