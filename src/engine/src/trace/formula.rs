//! The formulas, as text that a person reads and that is evaluated.

use super::evaluate::evaluate;
use serde::Serialize;

/// Where a formula or its constants come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Source {
    Arithmetic,
    /// EN 12831-1; ASHRAE Handbook of Fundamentals, residential load calculation.
    Transmission,
    /// ISO 6946, combined method.
    Layers,
    /// ISO 13370:2017, read in two public implementations.
    Ground,
    /// ISO 13370:2017, annex H, read likewise.
    GroundSwing,
    /// US energy codes.
    FFactor,
    /// ISO 13370, suspended floors.
    CrawlSpaceVents,
    /// U.S. Standard Atmosphere 1976, and the ideal gas law.
    StandardAtmosphere,
    /// ASHRAE Handbook of Fundamentals, ventilation and infiltration.
    Ventilation,
    /// The basic model of Sherman and Grimsrud, LBL-10163, with the handbook's coefficients.
    Infiltration,
    /// Bernoulli's equation at 4 Pa; the test at 50 Pa.
    BlowerDoor,
    /// Leakage among rooms by the area where its gaps are: judgement.
    Shares,
    /// What comes in leaves again.
    SpaceBalance,
    /// Independent errors, to first order.
    Errors,
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
    /// ASHRAE Handbook, HVAC Systems and Equipment, "Hydronic heating and cooling system design".
    ExpansionTank,
    /// Common practice, no source: the system stays a tenth below the relief valve's setting.
    ReliefPractice,
    /// Common practice, no source.
    CommonPractice,
}

/// Declares the formulas by their source, each with its right-hand side.
macro_rules! formulas {
    ($($source:ident: [$($(#[$doc:meta])* $name:ident = $text:literal),+ $(,)?]),+ $(,)?) => {
        /// A formula. Its text uses `+ - * / ^`, brackets, `exp`, `ln`, `log10`, `pi`, and symbols
        /// with `_` subscripts.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum Formula { $($($(#[$doc])* $name),+),+ }

        impl Formula {
            pub const ALL: &[Formula] = &[$($(Formula::$name),+),+];

            /// The right-hand side. Empty for [`Formula::Sum`], whose text follows from its terms.
            pub fn text(self) -> &'static str {
                const TEXTS: &[&str] = &[$($($text),+),+];
                TEXTS.get(self as usize).copied().unwrap_or_default()
            }

            pub const fn source(self) -> Source {
                match self { $($(Formula::$name)|+ => Source::$source),+ }
            }
        }
    };
}

formulas! {
    Arithmetic: [
        /// The result is the sum of the terms.
        Sum = "",
        Reciprocal = "1 / U",
        PerArea = "Q / A",
        Over = "(Q_x - Q) / Q",
        Twice = "2 * D_v",
        WallArea = "L * z",
        MeanDepth = "A_w / P",
        TubeVolume = "pi / 4 * d ^ 2 * L",
        MeanTransmittance = "G / A_g",
        Difference = "T_in - T_0",
        WeighedDifference = "Vol_r / Vol * (T_in - T_0)",
    ],
    Errors: [
        /// The root of the sum of as many squares as there are terms.
        RootOfSquares = "(Q_alone ^ 2 + Q_alone ^ 2) ^ 0.5",
    ],
    Transmission: [
        Transmission = "U * A * (T_in - T_out)",
    ],
    Layers: [
        SideBySide = "1 / ((1 - f_wood) / R_cav + f_wood / R_wood)",
        MeanOfLimits = "(R_upper + R_lower) / 2",
        OfResistance = "1 / R",
    ],
    Ground: [
        LayersAlone = "1 / U - R_si - R_se",
        Characteristic = "A_g / (0.5 * P)",
        FloorThickness = "w + lambda * (R_si + R_f + R_se)",
        WallThickness = "lambda * (R_si + R_w + R_se)",
        /// Of a floor that insulates little for its size.
        FloorU = "2 * lambda / (pi * B + d_f + 0.5 * z) * ln(pi * B / (d_f + 0.5 * z) + 1)",
        InsulatedFloorU = "lambda / (0.457 * B + d_f + 0.5 * z)",
        EdgeThickness = "lambda * R_n - d_n",
        EdgePsi = "-lambda / pi * (ln(D / d_f + 1) - ln(D / (d_f + d_e) + 1))",
        WallU = "2 * lambda / (pi * z) * (1 + 0.5 * d_min / (d_min + z)) * ln(z / d_w + 1)",
        /// Of a floor without an outside edge, or whose edge would save more than it loses.
        NoGroundLoss = "U_0 * A * (T_in - T_mean)",
        GroundLoss = "U_g * A * (T_in - T_mean)",
        InsulatedEdgeLoss = "(U_g * A + psi * L) * (T_in - T_mean)",
    ],
    GroundSwing: [
        SlabSwing = "0.37 * lambda * ln(delta / d_f + 1)",
        InsulatedEdgeSwing = "0.37 * lambda * ((1 - exp(-D / delta)) * ln(delta / (d_f + d_e) + 1) \
            + exp(-D / delta) * ln(delta / d_f + 1))",
        BasementSwing = "0.37 * lambda * (exp(-z / delta) * ln(delta / d_f + 1) \
            + 2 * (1 - exp(-z / delta)) * ln(delta / d_w + 1))",
        SwingLoss = "psi_p * L * (T_mean - T_cold)",
    ],
    FFactor: [
        SlabEdgeLoss = "F_edge * P * (T_in - T_out)",
    ],
    StandardAtmosphere: [
        AirPressure = "101325 * (1 - 0.0000225577 * h_alt) ^ 5.25588",
        AirDensity = "101325 * (1 - 0.0000225577 * h_alt) ^ 5.25588 / (287.055 * T_abs)",
    ],
    Ventilation: [
        AirChange = "N * Vol",
        /// Of one room or space.
        OwnAirChange = "N * Vol_r",
        WithFans = "(V_u ^ 2 + V_i ^ 2) ^ 0.5",
        AirLoss = "rho * c * V_r * (T_in - T_out)",
        RecoveredAirLoss = "rho * c * V_r * (1 - eta) * (T_in - T_out)",
    ],
    BlowerDoor: [
        LeakageArea = "V_50 * (4 / 50) ^ n * (rho / (2 * 4)) ^ 0.5",
    ],
    Infiltration: [
        Infiltration = "A_L * (C_s * dT + C_w * v_w ^ 2) ^ 0.5",
    ],
    Shares: [
        ShareByArea = "V_h * A_r / A_x",
        ShareByVolume = "V_h * Vol_r / Vol",
    ],
    CrawlSpaceVents: [
        VentFlow = "0.59 * v_w * f_v * A_v",
    ],
    SpaceBalance: [
        HeatIn = "G * (T_i - T_0)",
        SpaceTemperature = "T_0 + Q / G",
    ],
    EnergyBalance: [
        FlowFromDrop = "Q / (c * dT)",
        HeatGiven = "m * c * (T_w - T_x)",
        WaterNeeded = "T_w - Q / (m * c * E)",
        Drop = "T_s - T_b",
    ],
    Continuity: [
        MassFlow = "V * rho",
        VolumeFlow = "m / rho",
        Velocity = "4 * V / (pi * d ^ 2)",
        Reynolds = "rho * v * d / mu",
    ],
    RatingPractice: [
        OutputPerLength = "q_r * ((T_w - T_a) / (T_r - T_e)) ^ n * (m / m_r) ^ 0.04 * F",
        Credited = "Q_w * E",
    ],
    Integrated: [
        FinnedOut = "T_a + (T_w - T_a) \
            * (1 + (n - 1) * q * L / (m * c * (T_w - T_a))) ^ (1 / (1 - n))",
        /// [`Formula::FinnedOut`] at n = 1.
        FinnedOutLinear = "T_a + (T_w - T_a) * exp(-q * L / (m * c * (T_w - T_a)))",
        LengthNeeded = "m * c * (T_w - T_a) / ((n - 1) * q) \
            * (((T_x - T_a) / (T_w - T_a)) ^ (1 - n) - 1)",
        /// [`Formula::LengthNeeded`] at n = 1.
        LengthNeededLinear = "m * c * (T_w - T_a) / q * ln((T_w - T_a) / (T_x - T_a))",
    ],
    CommonPractice: [
        RuleOfThumb = "Q / q_r",
    ],
    BarePipe: [
        PipeOut = "T_a + (T_w - T_a) * exp(-U_p * L / (m * c))",
    ],
    Colebrook: [
        Laminar = "64 / Re",
        Colebrook = "(-2 * log10(e / (3.7 * d) + 2.51 / (Re * f ^ 0.5))) ^ (-2)",
        Bridge = "0.032 + (f_t - 0.032) * (Re - 2000) / 2000",
    ],
    DarcyWeisbach: [
        Friction = "f * L / d * rho * v ^ 2 / 2",
    ],
    Crane: [
        Fittings = "K * rho * v ^ 2 / 2",
    ],
    Hydrostatics: [
        Equipment = "rho * 9.80665 * h",
        Head = "dp / (rho * 9.80665)",
        Weight = "rho * 9.80665 * h_s",
    ],
    ReliefPractice: [
        HighestPressure = "0.9 * p_relief + p_air",
    ],
    ExpansionTank: [
        Acceptance = "Vol_s * (rho_1 / rho_2 - 1 - 3 * alpha * dT)",
        TankVolume = "Vol_g / (1 - p_1 / p_2)",
    ],
}

impl Formula {
    /// Whether the numbers must be in SI: the formula has constants with units.
    pub const fn needs_si(self) -> bool {
        matches!(
            self,
            Formula::AirDensity
                | Formula::LeakageArea
                | Formula::Infiltration
                | Formula::Equipment
                | Formula::Head
                | Formula::AirPressure
                | Formula::Weight
                | Formula::Acceptance
        )
    }

    /// Whether it takes any number of terms, which may share a symbol.
    pub const fn is_spread(self) -> bool {
        matches!(self, Formula::Sum | Formula::RootOfSquares)
    }

    /// The formula's value for numbers in the order of the step's terms; NaN for a wrong count.
    ///
    /// With numbers in other units than SI the quotient of the true result and this value is the
    /// factor of units that the page shows.
    pub fn evaluate(self, terms: &[f64]) -> f64 {
        match self {
            Formula::Sum => terms.iter().sum(),
            Formula::RootOfSquares => terms.iter().map(|term| term * term).sum::<f64>().sqrt(),
            _ => evaluate(self.text(), terms).0,
        }
    }
}
