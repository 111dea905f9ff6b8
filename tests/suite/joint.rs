//! The choice of all rooms' pieces together.

mod brute;
mod exhaustive;
mod exported;
mod plain;
mod properties;
mod stopped;
