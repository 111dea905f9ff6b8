//! Finrun's calculation: from rooms to heat loss, to element lengths, to a checked loop.
//!
//! No input or output, no clock, no randomness, no text for people, and no panic: broken input
//! gives field errors ([`job::read`]) or checks ([`check::Check`]), never an error of the engine.

pub mod arrangement;
pub mod bills;
pub mod building;
pub mod check;
pub mod climate;
pub mod comfort;
pub mod commission;
pub mod compare;
pub mod cooler;
pub mod csv;
pub mod design;
pub mod emitter;
pub mod existing;
pub mod fluid;
pub mod install;
pub mod job;
pub mod named;
pub mod network;
pub mod numeric;
pub mod order;
pub mod oversize;
pub mod pipe;
pub mod plant;
pub mod quantity;
pub mod remedy;
pub mod season;
pub mod sizing;
mod stored;
pub mod suggest;
pub mod takeoff;
pub mod trace;
pub mod transient;
pub mod what_if;
