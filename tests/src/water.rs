//! Kind a1: properties of water.

use crate::table::rows;
use crate::tally::{Tally, Tolerance};
use finrun_engine::fluid::Fluid;
use finrun_engine::quantity::{Temperature, Unit};

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for row in rows(text)? {
        let celsius = row.number(&["T_C"])?;
        let temperature = Temperature::of(celsius, Unit::Celsius);
        let water = Fluid::Water;
        let expected =
            |name: &str| row.number(&[&format!("{name}_iapws95"), &format!("{name}_cp95"), name]);
        let case = format!("{celsius} °C");
        let mut compare = |what, share, found, expected| {
            tally.compare(what, Tolerance::Share(share), &case, found, expected);
        };
        compare("density", 0.0005, water.density(temperature).si(), expected("rho")?);
        compare("specific heat", 0.002, water.specific_heat(temperature).si(), expected("cp")?);
        compare("viscosity", 0.01, water.viscosity(temperature).si(), expected("mu")?);
        // Nothing in the loop depends on conductivity yet; the limit is this project's own.
        compare("conductivity", 0.01, water.conductivity(temperature).si(), expected("k")?);
        tally.case();
    }
    Ok(tally)
}
