//! The ten pages, and why each is off, where that is known.

/// A page of our own: the method is common knowledge, the grams are the published ones of the dish of this code.
pub(super) struct Page {
    pub(super) code: &'static str,
    pub(super) text: &'static str,
    /// Why it is off, where that is known.
    pub(super) why: &'static str,
}

macro_rules! page {
    ($code:literal, $why:literal) => {
        Page {
            code: $code,
            text: include_str!(concat!($code, ".txt")),
            why: $why,
        }
    };
}

pub(super) const PAGES: [Page; 10] = [
    page!(
        "27311410",
        "a quarter of an hour of frying takes nearly as much as an hour and a half under the lid"
    ),
    page!(
        "27111406",
        "mince and vegetables dry out in thirteen minutes of frying; the lid stands ajar for the rest"
    ),
    page!(
        "27464000",
        "open for over an hour in a wide pot; what is published does not say how it is covered"
    ),
    page!("27350310", "open for half an hour over little liquid"),
    page!(
        "28350050",
        "covered while potatoes and fish cook, so little goes; what is published does not tell lid from none"
    ),
    page!(
        "71803010",
        "open for nearly half an hour; bacon and onions are fried dry before"
    ),
    page!(
        "75608100",
        "onions that turn golden lose near half of their mass; spread over bread and cheese too, the published 5 % \
         leave no room for that"
    ),
    page!(
        "75651000",
        "open for forty minutes in the 5.5-litre pot; a narrower pot would lose less"
    ),
    page!("75649110", "as the minestrone"),
    page!(
        "58403040",
        "open for over twenty minutes, but in the narrower 2.8-litre pot; the vegetables dry out in the frying before"
    ),
];
