//! Water: short polynomials in temperature, fitted for the least worst relative error to IAPWS-95
//! (density, specific heat) and the IAPWS 2008 and 2011 releases (viscosity, conductivity) at 200 kPa
//! absolute, 5 to 105 °C every 2.5 K: `tests/reference/a1_water_properties.csv`. Pressure within what
//! a house has changes none of them by as much as the fit does.
//!
//! `x` goes from -1 at 5 °C to 1 at 105 °C, which keeps the coefficients of a like size. Carried on
//! to 0 °C, as glycol needs it, they are off by 0.004, 0.013, 0.17 and 0.08 %.

use crate::numeric::polynomial;

/// kg/m³. Worst error 0.0004 %.
pub(super) fn density(x: f64) -> f64 {
    polynomial(&[985.7328, -24.20043, -7.698446, 1.301012, -0.6521779, 0.2628061], x)
}

/// J/(kg K), at constant pressure. Worst error 0.0008 %.
pub(super) fn specific_heat(x: f64) -> f64 {
    polynomial(&[4182.718, 17.96035, 19.34582, -1.91681, 7.064115, -7.562762, 3.937022], x)
}

/// Logarithm of the dynamic viscosity in Pa s. Worst error 0.019 %.
pub(super) fn ln_viscosity(x: f64) -> f64 {
    polynomial(&[-7.593467, -0.796252, 0.2049372, -0.05803536, 0.02998427, -0.01373578], x)
}

/// W/(m K). Worst error 0.013 %.
pub(super) fn conductivity(x: f64) -> f64 {
    polynomial(&[0.6460284, 0.05154313, -0.02046321, 0.003940744, -0.00214873], x)
}
