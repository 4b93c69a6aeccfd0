//! Cases from published tables, cooked by the engine: what a proof page prints beside the published figures.

pub mod alcohol;
