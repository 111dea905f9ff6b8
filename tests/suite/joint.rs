//! The choice of all rooms' pieces together.

mod plain;
