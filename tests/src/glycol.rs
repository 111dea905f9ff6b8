//! Kind a2: properties of propylene glycol in water.

use crate::table::rows;
use crate::tally::{Tally, Tolerance};
use finrun_engine::fluid::Fluid;
use finrun_engine::quantity::{Temperature, Unit};

/// Against the data that give the share by mass. The other set stands in the files to show how far
/// two of them are apart; in viscosity that is further than the tolerance.
pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for row in rows(text)? {
        let share = row.number(&["mass_frac"])?;
        let celsius = row.number(&["T_C"])?;
        let temperature = Temperature::of(celsius, Unit::Celsius);
        let glycol = Fluid::PropyleneGlycol { share };
        let expected = |name: &str| row.number(&[&format!("{name}_MPG"), name]);
        let case = format!("{share} at {celsius} °C");
        let mut compare = |what, tolerance, found, expected| {
            tally.compare(what, tolerance, &case, found, expected);
        };
        let share = Tolerance::Share;
        compare("density", share(0.01), glycol.density(temperature).si(), expected("rho")?);
        let specific_heat = glycol.specific_heat(temperature).si();
        compare("specific heat", share(0.01), specific_heat, expected("cp")?);
        compare("viscosity", share(0.05), glycol.viscosity(temperature).si(), expected("mu")?);
        // Nothing in the loop depends on these two yet; the limits are this project's own.
        let conductivity = glycol.conductivity(temperature).si();
        compare("conductivity", share(0.01), conductivity, expected("k")?);
        let freezing = glycol.freezing_point().to(Unit::Celsius);
        let expected = row.number(&["T_freeze_MPG_C", "T_freeze_C"])?;
        compare("freezing point", Tolerance::Kelvin(0.5), freezing, expected);
        tally.case();
    }
    Ok(tally)
}
