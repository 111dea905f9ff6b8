//! The formulas, as text that a person reads and a test evaluates, and as code.

use crate::numeric::{exp, log10, pow};
use serde::Serialize;
use std::f64::consts::LN_10;

/// Where a formula or its constants come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    Arithmetic,
    /// EN 12831-1; ASHRAE Handbook of Fundamentals, residential load calculation.
    Transmission,
    /// U.S. Standard Atmosphere 1976, and the ideal gas law.
    StandardAtmosphere,
    /// ASHRAE Handbook of Fundamentals, ventilation and infiltration.
    Ventilation,
    /// Energy balance; water properties IAPWS-95, fitted.
    EnergyBalance,
    /// Hot-water rating practice of the hydronics trade; the form of EN 442.
    RatingPractice,
    /// The rating's power law put into the energy balance along the tube and integrated.
    Integrated,
    /// Energy balance along a bare pipe; film coefficient as entered.
    BarePipe,
    Continuity,
    /// Colebrook 1939; laminar 64/Re; a straight bridge between Reynolds 2000 and 4000.
    Colebrook,
    DarcyWeisbach,
    /// Crane TP-410 form, from memory.
    Crane,
    Hydrostatics,
    /// Common practice, no source.
    CommonPractice,
}

/// A formula. Its text uses `+ - * / ^`, brackets, `exp`, `log10`, and symbols with `_` subscripts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Formula {
    /// The result is the sum of the terms.
    Sum,
    Reciprocal,
    Transmission,
    Conductance,
    AirFlow,
    AirDensity,
    AirLoss,
    FlowFromDrop,
    MassFlow,
    VolumeFlow,
    OutputPerLength,
    FinnedOut,
    /// [`Formula::FinnedOut`] at n = 1.
    FinnedOutLinear,
    HeatGiven,
    Credited,
    WaterNeeded,
    LengthNeeded,
    /// [`Formula::LengthNeeded`] at n = 1; the number is the natural logarithm of ten.
    LengthNeededLinear,
    RuleOfThumb,
    PerArea,
    Over,
    PipeOut,
    Drop,
    Velocity,
    Reynolds,
    Laminar,
    Colebrook,
    Bridge,
    Friction,
    Fittings,
    Equipment,
    Head,
}

impl Formula {
    pub const ALL: &[Formula] = {
        use Formula::*;
        &[
            Sum,
            Reciprocal,
            Transmission,
            Conductance,
            AirFlow,
            AirDensity,
            AirLoss,
            FlowFromDrop,
            MassFlow,
            VolumeFlow,
            OutputPerLength,
            FinnedOut,
            FinnedOutLinear,
            HeatGiven,
            Credited,
            WaterNeeded,
            LengthNeeded,
            LengthNeededLinear,
            RuleOfThumb,
            PerArea,
            Over,
            PipeOut,
            Drop,
            Velocity,
            Reynolds,
            Laminar,
            Colebrook,
            Bridge,
            Friction,
            Fittings,
            Equipment,
            Head,
        ]
    };

    /// The right-hand side. Empty for [`Formula::Sum`], whose text follows from its terms.
    pub const fn text(self) -> &'static str {
        match self {
            Formula::Sum => "",
            Formula::Reciprocal => "1 / U",
            Formula::Transmission => "U * A * (T_in - T_out)",
            Formula::Conductance => "H * (T_in - T_out)",
            Formula::AirFlow => "n * A * H",
            Formula::AirDensity => "101325 * (1 - 0.0000225577 * z) ^ 5.25588 / (287.055 * T_in)",
            Formula::AirLoss => "rho * c * V * (T_in - T_out)",
            Formula::FlowFromDrop => "Q / (c * dT)",
            Formula::MassFlow => "V * rho",
            Formula::VolumeFlow => "m / rho",
            Formula::OutputPerLength => {
                "q_r * ((T_w - T_a) / (T_r - T_e)) ^ n * (m / m_r) ^ 0.04 * F"
            }
            Formula::FinnedOut => {
                "T_a + (T_w - T_a) * (1 + (n - 1) * q * L / (m * c * (T_w - T_a))) ^ (1 / (1 - n))"
            }
            Formula::FinnedOutLinear => "T_a + (T_w - T_a) * exp(-q * L / (m * c * (T_w - T_a)))",
            Formula::HeatGiven => "m * c * (T_w - T_x)",
            Formula::Credited => "Q_w * E",
            Formula::WaterNeeded => "T_w - Q / (m * c * E)",
            Formula::LengthNeeded => {
                "m * c * (T_w - T_a) / ((n - 1) * q) * (((T_x - T_a) / (T_w - T_a)) ^ (1 - n) - 1)"
            }
            Formula::LengthNeededLinear => {
                "m * c * (T_w - T_a) / q * 2.302585093 * log10((T_w - T_a) / (T_x - T_a))"
            }
            Formula::RuleOfThumb => "Q / q_r",
            Formula::PerArea => "Q / A",
            Formula::Over => "(Q_x - Q) / Q",
            Formula::PipeOut => "T_a + (T_w - T_a) * exp(-U * L / (m * c))",
            Formula::Drop => "T_s - T_b",
            Formula::Velocity => "4 * V / (3.14159265 * d ^ 2)",
            Formula::Reynolds => "rho * v * d / mu",
            Formula::Laminar => "64 / Re",
            Formula::Colebrook => "(-2 * log10(e / (3.7 * d) + 2.51 / (Re * f ^ 0.5))) ^ (-2)",
            Formula::Bridge => "0.032 + (f_t - 0.032) * (Re - 2000) / 2000",
            Formula::Friction => "f * L / d * rho * v ^ 2 / 2",
            Formula::Fittings => "K * rho * v ^ 2 / 2",
            Formula::Equipment => "rho * 9.80665 * h",
            Formula::Head => "dp / (rho * 9.80665)",
        }
    }

    /// Whether the numbers must be in SI: the formula has constants with units.
    pub const fn needs_si(self) -> bool {
        matches!(self, Formula::AirDensity | Formula::Equipment | Formula::Head)
    }

    pub const fn source(self) -> Source {
        match self {
            Formula::Sum | Formula::Reciprocal | Formula::PerArea | Formula::Over => {
                Source::Arithmetic
            }
            Formula::Transmission | Formula::Conductance => Source::Transmission,
            Formula::AirFlow | Formula::AirLoss => Source::Ventilation,
            Formula::AirDensity => Source::StandardAtmosphere,
            Formula::FlowFromDrop | Formula::HeatGiven | Formula::WaterNeeded | Formula::Drop => {
                Source::EnergyBalance
            }
            Formula::MassFlow | Formula::VolumeFlow | Formula::Velocity | Formula::Reynolds => {
                Source::Continuity
            }
            Formula::OutputPerLength | Formula::Credited => Source::RatingPractice,
            Formula::FinnedOut
            | Formula::FinnedOutLinear
            | Formula::LengthNeeded
            | Formula::LengthNeededLinear => Source::Integrated,
            Formula::RuleOfThumb => Source::CommonPractice,
            Formula::PipeOut => Source::BarePipe,
            Formula::Laminar | Formula::Colebrook | Formula::Bridge => Source::Colebrook,
            Formula::Friction => Source::DarcyWeisbach,
            Formula::Fittings => Source::Crane,
            Formula::Equipment | Formula::Head => Source::Hydrostatics,
        }
    }

    /// The formula's value for numbers in the order of the step's terms; NaN for a wrong count.
    ///
    /// With numbers in other units than SI the quotient of the true result and this value is the
    /// factor of units that the page shows.
    pub fn evaluate(self, terms: &[f64]) -> f64 {
        match (self, terms) {
            (Formula::Sum, terms) => terms.iter().sum(),
            (Formula::Reciprocal, &[u]) => 1.0 / u,
            (Formula::Transmission, &[u, a, inside, outside]) => u * a * (inside - outside),
            (Formula::Conductance, &[g, inside, outside]) => g * (inside - outside),
            (Formula::AirFlow, &[n, a, h]) => n * a * h,
            (Formula::AirDensity, &[z, t]) => {
                101_325.0 * pow(1.0 - 2.25577e-5 * z, 5.25588) / (287.055 * t)
            }
            (Formula::AirLoss, &[rho, c, v, inside, outside]) => rho * c * v * (inside - outside),
            (Formula::FlowFromDrop, &[q, c, drop]) => q / (c * drop),
            (Formula::MassFlow, &[v, rho]) => v * rho,
            (Formula::VolumeFlow, &[m, rho]) => m / rho,
            (Formula::OutputPerLength, &[q_r, t_w, t_a, t_r, t_e, n, m, m_r, f]) => {
                q_r * pow((t_w - t_a) / (t_r - t_e), n) * pow(m / m_r, 0.04) * f
            }
            (Formula::FinnedOut, &[t_a, t_w, n, q, l, m, c]) => {
                let share = (n - 1.0) * q * l / (m * c * (t_w - t_a));
                t_a + (t_w - t_a) * pow(1.0 + share, 1.0 / (1.0 - n))
            }
            (Formula::FinnedOutLinear, &[t_a, t_w, q, l, m, c]) => {
                t_a + (t_w - t_a) * exp(-q * l / (m * c * (t_w - t_a)))
            }
            (Formula::HeatGiven, &[m, c, t_w, t_x]) => m * c * (t_w - t_x),
            (Formula::Credited, &[q, e]) => q * e,
            (Formula::WaterNeeded, &[t_w, q, m, c, e]) => t_w - q / (m * c * e),
            (Formula::LengthNeeded, &[m, c, t_w, t_a, n, q, t_x]) => {
                m * c * (t_w - t_a) / ((n - 1.0) * q)
                    * (pow((t_x - t_a) / (t_w - t_a), 1.0 - n) - 1.0)
            }
            (Formula::LengthNeededLinear, &[m, c, t_w, t_a, q, t_x]) => {
                m * c * (t_w - t_a) / q * LN_10 * log10((t_w - t_a) / (t_x - t_a))
            }
            (Formula::RuleOfThumb, &[q, q_r]) => q / q_r,
            (Formula::PerArea, &[q, a]) => q / a,
            (Formula::Over, &[given, load]) => (given - load) / load,
            (Formula::PipeOut, &[t_a, t_w, u, l, m, c]) => {
                t_a + (t_w - t_a) * exp(-u * l / (m * c))
            }
            (Formula::Drop, &[t_s, t_b]) => t_s - t_b,
            (Formula::Velocity, &[v, d]) => 4.0 * v / (std::f64::consts::PI * d * d),
            (Formula::Reynolds, &[rho, v, d, mu]) => rho * v * d / mu,
            (Formula::Laminar, &[re]) => 64.0 / re,
            (Formula::Colebrook, &[e, d, re, f]) => {
                let inner = e / (3.7 * d) + 2.51 / (re * f.sqrt());
                1.0 / (4.0 * log10(inner) * log10(inner))
            }
            (Formula::Bridge, &[f_t, re]) => 0.032 + (f_t - 0.032) * (re - 2000.0) / 2000.0,
            (Formula::Friction, &[f, l, d, rho, v]) => f * l / d * rho * v * v / 2.0,
            (Formula::Fittings, &[k, rho, v]) => k * rho * v * v / 2.0,
            (Formula::Equipment, &[rho, h]) => rho * 9.80665 * h,
            (Formula::Head, &[dp, rho]) => dp / (rho * 9.80665),
            _ => f64::NAN,
        }
    }
}
