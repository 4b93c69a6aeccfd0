//! The larder as other crates see it: the built-in tables, the resolver, the weights.

mod corpus;
mod facts;
mod names;
mod official;
mod own;
mod speed;
mod tables;
