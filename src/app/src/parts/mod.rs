//! The pieces that pages are made of.

mod choice;
mod field;
mod frame;
mod result;
mod working;

pub(crate) use choice::{Choice, TextBox};
pub(crate) use field::NumberField;
pub(crate) use frame::Frame;
pub(crate) use result::{figure, in_system};
pub(crate) use working::Working;
