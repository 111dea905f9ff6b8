//! The choice of all rooms' pieces together.

mod element;
mod plain;
