//! pot
