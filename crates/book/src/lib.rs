//! A book of dishes: a folder on disk.
//!
//! | in the folder | what it is | read by |
//! | --- | --- | --- |
//! | `dishes/*.txt` | one typed page a dish, in order of file name; also .docx, .odt, .rtf, .jsonld, .html | [`dish`], [`typed`] |
//! | `book.toml` | title, measures, market, salt, currency | [`settings`] |
//! | `kitchen.toml` | pots, burners, oven, cold places | [`kitchen`] |
//! | `prices.tsv` | what the writer pays | [`prices`] |
//! | `in_the_house.tsv` | what is in the house | [`stock`] |
//! | `larder.tsv` | foods of its own | [`own_larder`] |
//! | `larder_table.tsv` | an imported composition table | [`own_larder`], made by [`importing`] |
//! | `menus/*.txt` | menus, a typed page each | [`menu`] |
//!
//! All but the dishes may be missing: stated defaults stand in. Whatever is wrong in a file is an error with the
//! file, the line, the words and what to write instead. Files are kept as they are, byte for byte;
//! [`Book::save_as`] writes to a new place only.

pub mod book;
pub mod decode;
pub mod demo;
pub mod dish;
mod entries;
pub mod error;
pub mod gathering;
pub mod house_style;
pub mod importing;
pub mod kitchen;
pub mod menu;
pub mod own_larder;
pub mod prices;
mod said;
pub mod settings;
pub mod stock;
pub mod typed;

pub use book::{Book, SourceFile};
pub use decode::Decoded;
pub use dish::Dish;
pub use error::{BookError, Fault, Misread};
pub use own_larder::OwnFoods;
pub use prices::PriceLine;
pub use settings::Settings;
pub use typed::{NoPage, Typed};
