//! Holds nothing: the benchmarks of this package are in `benches/`, one file a stage.
