//! The choice of all rooms' pieces together.

mod brute;
mod exhaustive;
mod plain;
