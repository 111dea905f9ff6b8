//! Words around a working: where it comes from, what a symbol means, how it is written.

use finrun_engine::trace::{Formula, Source, Step};

pub fn source(source: Source) -> &'static str {
    match source {
        Source::Arithmetic => "Arithmetic.",
        Source::Transmission => {
            "Steady transmission: EN 12831-1; ASHRAE Handbook of Fundamentals, residential load."
        }
        Source::StandardAtmosphere => {
            "U.S. Standard Atmosphere 1976 and the ideal gas law; z in metres, T in kelvins."
        }
        Source::Ventilation => "ASHRAE Handbook of Fundamentals, ventilation and infiltration.",
        Source::EnergyBalance => "Energy balance; water properties fitted to IAPWS-95.",
        Source::RatingPractice => {
            "Hot-water rating practice of the hydronics trade; power law in the form of EN 442."
        }
        Source::Integrated => {
            "The rating's power law in the energy balance along the tube, integrated exactly."
        }
        Source::BarePipe => "Energy balance along a bare pipe; the surface coefficient as entered.",
        Source::Continuity => "Continuity; water properties fitted to IAPWS.",
        Source::Colebrook => {
            "Colebrook 1939; 64/Re below Reynolds 2000; a straight bridge up to 4000."
        }
        Source::DarcyWeisbach => "Darcy and Weisbach.",
        Source::Crane => "Loss coefficients in the form of Crane TP-410, from memory.",
        Source::Hydrostatics => "Height of a column of the water at supply temperature.",
        Source::CommonPractice => "Common practice, no source. It forgets that the water cools.",
    }
}

/// The right-hand side as people write it; a sum is written from its terms.
pub fn formula_text(step: &Step) -> String {
    match step.formula {
        Formula::Sum => {
            let symbols: Vec<&str> = step.terms.iter().map(|term| term.symbol).collect();
            symbols.join(" + ")
        }
        formula => formula.text().to_string(),
    }
}

/// What a symbol stands for.
pub fn symbol_meaning(symbol: &str) -> &'static str {
    match symbol {
        "Q" | "Q_1" | "Q_2" | "Q_3" | "Q_4" | "Q_5" | "Q_6" | "Q_7" | "Q_8" | "Q_9" | "Q_10"
        | "Q_11" | "Q_12" | "Q_n" => "heat",
        "Q_wall" | "Q_window" | "Q_door" | "Q_ceiling" | "Q_floor" | "Q_air" => "heat by this path",
        "Q_w" => "heat given up by the water",
        "U" => "heat passed per area, or per length of pipe, and degree",
        "R" => "thermal resistance",
        "A" | "A_gross" => "area",
        "A_opening" => "a window or door, taken off",
        "H" => "height",
        "T_in" => "inside",
        "T_out" => "beyond",
        "T_a" => "air at the element or pipe",
        "T_w" => "water that enters",
        "T_x" => "water that leaves",
        "T_r" => "water of the rating",
        "T_e" => "entering air of the rating",
        "T_s" => "supply",
        "T_b" => "return",
        "dT" => "temperature drop",
        "n" => "exponent, or air changes",
        "V" => "volume flow",
        "m" => "mass flow",
        "m_r" => "mass flow of the rating",
        "rho" => "density",
        "c" => "specific heat",
        "q_r" => "rated output per length",
        "q" => "output per length at the entering water",
        "F" => "share of the rating that counts",
        "E" => "heating effect credited",
        "L" => "length",
        "v" => "velocity",
        "d" => "inside diameter",
        "mu" => "viscosity",
        "Re" => "Reynolds number",
        "f" | "f_t" => "friction factor",
        "e" => "roughness",
        "K" => "sum of loss coefficients",
        "dp" | "dp_i" => "pressure lost",
        "h" => "head lost in equipment",
        "z" => "altitude",
        _ => "",
    }
}
