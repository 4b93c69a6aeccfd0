//! The real program in a folder of its own, as a user starts it.

mod bench;
mod books;
mod faults;
mod forms;
mod larder;
mod notes;
mod pages;
mod plans;
mod shells;
