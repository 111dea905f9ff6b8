//! Kind c: pressure drop in tubes.

use crate::table::{Row, rows};
use crate::tally::{Tally, Tolerance};
use finrun_engine::fluid::{Fluid, Stream};
use finrun_engine::pipe::{Bore, Tube, head, mass_flow, pipe_flow};
use finrun_engine::quantity::{Length, Temperature, Unit, VolumeFlow};

const TOLERANCE: Tolerance = Tolerance::Share(0.005);

pub(crate) fn check(text: &str) -> Result<Tally, String> {
    let mut tally = Tally::default();
    for row in rows(text)? {
        let name = row.text("tube").unwrap_or("unnamed");
        let celsius = row.number(&["T_C"])?;
        let temperature = Temperature::of(celsius, Unit::Celsius);
        let volume = volume_flow(&row)?;
        let flow = mass_flow(Fluid::Water, volume, temperature);
        let stream = Stream { fluid: Fluid::Water, flow, temperature };
        let bore = bore(name, &row)?;
        let found = pipe_flow(bore, stream);
        let drop = found.pressure_drop(Length::from_si(1.0));

        let gpm = short(volume.to(Unit::GallonPerMinute));
        let case = format!("{name} {celsius} °C {gpm} gpm");
        let mut compare = |what, found, expected| {
            tally.compare(what, TOLERANCE, &case, found, expected);
        };
        if let Ok(expected) = row.number(&["id_mm"]) {
            compare("inside diameter", bore.diameter.to(Unit::Millimetre), expected);
        }
        if let Ok(expected) = row.number(&["v_m_s"]) {
            compare("velocity", found.velocity.si(), expected);
        }
        if let Ok(expected) = row.number(&["head_ft_per_100ft"]) {
            compare("head", head(drop, found.density).si() * 100.0, expected);
        }
        match row.number(&["dp_Pa_per_m"]) {
            Ok(expected) => compare("pressure drop", drop.si(), expected),
            // In the transition the file gives no value, but the two between which it must lie.
            Err(_) => {
                let band = (row.number(&["dp_low"])?, row.number(&["dp_high"])?);
                let what = "pressure drop beyond the transition's bounds";
                tally.compare_band(what, TOLERANCE, &case, drop.si(), band);
            }
        }
        tally.case();
    }
    Ok(tally)
}

fn volume_flow(row: &Row) -> Result<VolumeFlow, String> {
    row.number(&["gpm"])
        .map(|gpm| VolumeFlow::of(gpm, Unit::GallonPerMinute))
        .or_else(|_| row.number(&["m3_per_s"]).map(VolumeFlow::from_si))
}

/// The engine's own tube of this name; for one that it does not know, the dimensions in the file.
fn bore(name: &str, row: &Row) -> Result<Bore, String> {
    let tube = Tube::ALL.into_iter().find(|&tube| file_name(tube) == name);
    match tube {
        Some(tube) => Ok(tube.bore()),
        None => Ok(Bore {
            diameter: Length::of(row.number(&["id_mm"])?, Unit::Millimetre),
            roughness: Length::from_si(row.number(&["eps_m"])?),
        }),
    }
}

/// What the files call a tube.
fn file_name(tube: Tube) -> &'static str {
    match tube {
        Tube::CopperLHalf => "B88-L-1/2",
        Tube::CopperLThreeQuarter => "B88-L-3/4",
        Tube::CopperLOne => "B88-L-1",
        Tube::CopperLOneAndQuarter => "B88-L-1-1/4",
        Tube::CopperMHalf => "B88-M-1/2",
        Tube::CopperMThreeQuarter => "B88-M-3/4",
        Tube::CopperMOne => "B88-M-1",
        Tube::CopperMOneAndQuarter => "B88-M-1-1/4",
        Tube::PexHalf => "F876-SDR9-1/2",
        Tube::PexThreeQuarter => "F876-SDR9-3/4",
        Tube::PexOne => "F876-SDR9-1",
    }
}

/// Up to three decimals.
fn short(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0
}
