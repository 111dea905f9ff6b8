//! Checks that cross more than one file of the engine, and everything against the outside.

mod published;
mod water_side;
