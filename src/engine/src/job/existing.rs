//! A system that stands already: its pieces are what they are, and it can be measured.

use crate::named::names;
use crate::stored::stored;

/// What the job keeps of a system that stands already, beside pieces and readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct ExistingDraft {
    pub standing: Standing,
    pub ran: Ran,
}

stored!(ExistingDraft { standing: default, ran: default });

/// Whether pieces are chosen, or are what they are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Standing {
    #[default]
    Planned,
    /// Only the pieces that are entered, wall by wall, stand there.
    Installed,
}

names!(Standing {
    Planned = "planned",
    Installed = "installed",
});

/// How the system had run when it was measured: whether the rooms' temperatures tell of heat and loss.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Ran {
    /// Long enough for the water, not for the rooms.
    #[default]
    AWhile,
    /// Without a stop, until the rooms changed no more.
    Throughout,
    /// On and off by the thermostat, the rooms as they are every day.
    ByThermostat,
}

names!(Ran {
    AWhile = "a-while",
    Throughout = "throughout",
    ByThermostat = "by-thermostat",
});
