//! The pieces that pages are made of.

mod choice;
mod field;
mod fold;
mod foot;
mod frame;
mod live;
mod result;
mod slices;
mod terms;
mod working;

pub(crate) use choice::{choice, choice_field, text_box};
pub(crate) use field::number_field;
pub(crate) use fold::{fold, open_folds_of};
pub(crate) use foot::foot;
pub(crate) use frame::frame;
pub(crate) use live::{
    button, button_on, each, kept, live, live_button, live_view, pushed, when, words, yes,
};
pub(crate) use result::{figure, in_system};
pub(crate) use slices::{Pace, Slice, Work, in_slices, pace_said};
pub(crate) use terms::{listed, terms_here};
pub(crate) use working::{show_step, working, working_of};
