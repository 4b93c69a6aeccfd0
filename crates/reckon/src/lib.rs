//! From trace to dossier: every answer a writer asks for, read off one simulation.
//!
//! [`reckon`] solves what is 'to taste', cooks the central run and as many draws as asked for, and fills a
//! [`Dossier`]: the plain data that goes to print, to the screen and to other programs. Each [`Figure`] carries its
//! spread and *how it is known*; what cannot be computed says so instead of being left out. No I/O, no clock.

mod again;
mod allergens;
mod as_made;
mod assemble;
mod body;
mod brought;
mod by_weight;
mod cooling;
mod cost;
pub mod dossier;
pub mod figure;
mod foods;
mod hands;
mod happenings;
mod kitchens;
pub mod label;
mod nutrition;
mod portions;
pub mod prices;
mod reading;
mod reckon;
mod remedies;
mod retention;
mod safety;
pub mod sampling;
mod steps;
mod sulphites;
mod table;
mod taste;
#[cfg(test)]
mod testing;
mod variations;
mod whereabouts;

pub use again::ServedAgain;
pub use allergens::allergen_name;
pub use body::{HOW_BODY_IS_READ, flour_for_body_g, words_thicker};
pub use by_weight::{ByWeight, Part, by_weight};
pub use cooling::{judge_cooling, judge_cooling_log};
pub use dossier::{
    AllergenRow, Body, BodyWord, Calculation, CoolingRow, Doneness, Dossier, NutrientRow, Reckoned, StepRow, Target,
    Tenderness, ToTaste, Verdict,
};
pub use figure::{Figure, Known, Measure};
pub use hands::side_by_side;
pub use kitchens::{Cooking, Cookings, Unknown};
pub use prices::{Price, Prices};
pub use reckon::reckon;
pub use sampling::{DRAWS, Design};
pub use taste::salt_to_reach_kg;
pub use variations::{Variant, VariationRow, add_variations};
