//! Rounding to the cups, spoons or scale a kitchen has.
