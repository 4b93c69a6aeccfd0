//! Physics of a pot of food: closed relations, each with its source and its range. Nothing here knows of recipes,
//! vessels in use or time steps.

pub mod alcohol;
pub mod bodies;
pub mod components;
pub mod conduction;
pub mod cool_skin;
pub mod cooling;
pub mod cooling_field;
pub mod diffusion;
pub mod emulsions;
pub mod evaporation;
pub mod film;
pub mod freezing;
pub mod gelatinisation;
pub mod lethality;
pub mod properties;
pub mod softening;
pub mod viscosity;
pub mod water;

#[cfg(test)]
mod rows;
