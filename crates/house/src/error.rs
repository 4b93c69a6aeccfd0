//! What can keep a house from cooking a dish.

use std::fmt;

/// Why a dish cannot be cooked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HouseError {
    /// Dishes that use each other: their titles, each using the next and the last the first.
    Circle(Vec<String>),
    /// The book has no dish of this number or name; holds what was asked for.
    NoSuchDish(String),
    /// Nothing on the page was read as a food or as a step; holds what the page is called, empty when it has no name.
    NotRead(String),
    /// Several dishes may be meant: what was asked for, and their titles.
    SeveralDishes(String, Vec<String>),
}

impl HouseError {
    /// Why a dish was not cooked, in the few words that a line of the digest has room for.
    #[must_use]
    pub const fn in_short(&self) -> &'static str {
        match self {
            HouseError::Circle(_) => "not cooked: circle",
            HouseError::NotRead(_) => "not read",
            HouseError::NoSuchDish(_) | HouseError::SeveralDishes(..) => "not found",
        }
    }
}

impl fmt::Display for HouseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            HouseError::Circle(titles) => {
                let round: Vec<String> = titles
                    .iter()
                    .chain(titles.first())
                    .map(|title| format!("'{title}'"))
                    .collect();
                write!(
                    f,
                    "none of these can be cooked first, each uses the next: {}",
                    round.join(" → ")
                )
            }
            HouseError::NotRead(name) => {
                let says = "nothing on the page is a food or a step; it needs the ingredients a line each and a method";
                if name.is_empty() {
                    f.write_str(says)
                } else {
                    write!(f, "{name}: {says}")
                }
            }
            HouseError::NoSuchDish(asked) => write!(f, "the book has no dish '{asked}'"),
            HouseError::SeveralDishes(asked, titles) => {
                write!(
                    f,
                    "'{asked}' may mean {}; say more of its title or give its number",
                    titles.join(" or ")
                )
            }
        }
    }
}

impl std::error::Error for HouseError {}
