//! A system that stands: what is entered of it, what its rooms get, and what the readings tell.

use finrun_engine::job::{Ran, Standing};

pub(crate) fn standing_label() -> &'static str {
    "Is this system built?"
}

pub(crate) fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Planned => "No: the pieces are to be chosen",
        Standing::Installed => "Yes: it stands with the pieces entered on the walls",
    }
}

pub(crate) fn ran_label() -> &'static str {
    "Before the readings it ran"
}

pub(crate) fn ran(ran: Ran) -> &'static str {
    match ran {
        Ran::AWhile => "For a while: the water is steady, the rooms are not",
        Ran::Throughout => "Without a stop for hours: the rooms no longer change",
        Ran::ByThermostat => "On and off by the thermostat, as on any day",
    }
}

pub(crate) fn boiler_supply() -> &'static str {
    "Boiler's supply"
}

pub(crate) fn boiler_back() -> &'static str {
    "Boiler's return"
}

pub(crate) fn water_in() -> &'static str {
    "Pipe before the element"
}

pub(crate) fn water_out() -> &'static str {
    "Pipe behind the element"
}
