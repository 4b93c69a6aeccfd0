//! Prices: what the writer pays for what.

use potwright_measure::{Mass, Money};
use serde::{Deserialize, Serialize};

/// A price list in the book's own currency.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Prices {
    /// What the currency is called on the page; empty for none.
    pub currency: String,
    /// Rows in the order of the writer's table.
    pub rows: Vec<Price>,
}

/// One price.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Price {
    /// The larder key of the food, resolved when the table is loaded.
    pub food: String,
    /// The writer's name for it.
    pub name: String,
    /// What the price buys, as purchased.
    pub mass: Mass,
    /// The price of that.
    pub money: Money,
}
