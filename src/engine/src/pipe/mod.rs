//! Tube between the elements: its sizes, the pressure it takes, the heat it loses.

mod cooling;
mod fitting;
mod flow;
mod friction;
mod tube;

pub use cooling::{
    Cooling, Insulation, OUTSIDE_FILM, cool, cool_at_specific_heat, linear_transmittance,
};
pub use fitting::{Cv, Fitting, cv_pressure_drop};
pub use flow::{PipeFlow, STANDARD_GRAVITY, head, mass_flow, pipe_flow, volume_flow};
pub use friction::{Friction, LAMINAR_END, Regime, TURBULENT_START, friction};
pub use tube::{Bore, Material, Nominal, Tube};
