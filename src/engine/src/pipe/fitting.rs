//! Elbows, tees and valves: what each takes from the pressure.

use super::tube::Nominal;
use crate::quantity::{Density, Pressure, Unit, VolumeFlow};
use serde::{Deserialize, Serialize};

/// A fitting or valve whose loss is known by its kind and size. The serde names are stored in job
/// files: they stay.
///
/// A flow-check valve (the weighted kind that stops gravity flow) is not here: it varies too much
/// from make to make to have a common coefficient. Use its flow coefficient ([`Cv`]).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fitting {
    #[serde(rename = "elbow-90")]
    Elbow90,
    #[serde(rename = "elbow-45")]
    Elbow45,
    /// A tee, flowing straight on.
    TeeRun,
    /// A tee, flowing into or out of its side.
    TeeBranch,
    /// Full port, open.
    BallValve,
    /// Open.
    GateValve,
    /// Straight pattern, open.
    GlobeValve,
    SwingCheckValve,
}

impl Fitting {
    pub const ALL: [Fitting; 8] = [
        Fitting::Elbow90,
        Fitting::Elbow45,
        Fitting::TeeRun,
        Fitting::TeeBranch,
        Fitting::BallValve,
        Fitting::GateValve,
        Fitting::GlobeValve,
        Fitting::SwingCheckValve,
    ];

    /// The loss coefficient K, on the velocity in the tube: `f_T L/D` after Crane Technical Paper
    /// 410, from memory, as are both tables behind it.
    ///
    /// The paper is about steel pipe in full turbulence; soldered copper is smoother, and insert
    /// fittings for PEX narrower, so expect tens of percent either way.
    pub fn k(self, nominal: Nominal) -> f64 {
        full_turbulence_factor(nominal) * self.equivalent_length()
    }

    /// Length of straight pipe with the same loss, in diameters; from memory of the paper.
    const fn equivalent_length(self) -> f64 {
        match self {
            Fitting::Elbow90 => 30.0,
            Fitting::Elbow45 => 16.0,
            Fitting::TeeRun => 20.0,
            Fitting::TeeBranch => 60.0,
            Fitting::BallValve => 3.0,
            Fitting::GateValve => 8.0,
            Fitting::GlobeValve => 340.0,
            Fitting::SwingCheckValve => 100.0,
        }
    }
}

/// Friction factor of commercial steel pipe in full turbulence; from memory of the paper.
const fn full_turbulence_factor(nominal: Nominal) -> f64 {
    match nominal {
        Nominal::Half => 0.027,
        Nominal::ThreeQuarter => 0.025,
        Nominal::One => 0.023,
        Nominal::OneAndQuarter => 0.022,
    }
}

/// A valve's flow coefficient: the gallons a minute of cool water that it passes at 1 psi.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Cv(f64);

impl Cv {
    /// `None` unless the number is finite and above zero.
    ///
    /// ```
    /// use finrun_engine::pipe::Cv;
    /// assert!(Cv::new(3.5).is_some());
    /// assert!(Cv::new(0.0).is_none());
    /// ```
    pub fn new(gallons_per_minute: f64) -> Option<Cv> {
        (gallons_per_minute.is_finite() && gallons_per_minute > 0.0)
            .then_some(Cv(gallons_per_minute))
    }

    pub fn gallons_per_minute(self) -> f64 {
        self.0
    }
}

/// Density of the water that flow coefficients are defined with, at 60 °F (IAPWS-95).
const CV_WATER: Density = Density::from_si(999.03);

/// Pressure lost in a valve: `SG (Q/Cv)²` in psi and gallons a minute (definition of Cv; IEC 60534
/// has the same form). Carries the sign of the flow.
pub fn cv_pressure_drop(flow: VolumeFlow, density: Density, cv: Cv) -> Pressure {
    let ratio = flow.to(Unit::GallonPerMinute) / cv.0;
    Pressure::of(density / CV_WATER * ratio * ratio.abs(), Unit::Psi)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_elbow_in_three_quarter_inch_has_the_papers_k() {
        assert!((Fitting::Elbow90.k(Nominal::ThreeQuarter) - 0.75).abs() < 1e-12);
    }

    #[test]
    fn larger_sizes_lose_less() {
        for fitting in Fitting::ALL {
            assert!(fitting.k(Nominal::Half) > fitting.k(Nominal::OneAndQuarter));
        }
    }

    #[test]
    fn at_its_cv_a_valve_takes_one_psi_of_cool_water() {
        let cv = Cv::new(3.5).expect("positive");
        let flow = VolumeFlow::of(3.5, Unit::GallonPerMinute);
        let drop = cv_pressure_drop(flow, CV_WATER, cv);
        assert!((drop.to(Unit::Psi) - 1.0).abs() < 1e-12);
        assert_eq!(cv_pressure_drop(-flow, CV_WATER, cv), -drop);
    }

    #[test]
    fn a_flow_coefficient_is_finite_and_positive() {
        for wrong in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(Cv::new(wrong), None);
        }
    }
}
