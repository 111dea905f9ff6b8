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
        "Q_wall" | "Q_window" | "Q_door" | "Q_ceiling" | "Q_floor" | "Q_ground" | "Q_air" => {
            "heat by this path"
        }
        "Q_i" => "heat given up on one stretch",
        "Q_x" => "heat the room gets",
        "s" => "share over the load",
        "Q_short" => "heat missing",
        "L_i" => "one part",
        "Q_w" => "heat given up by the water",
        "U" => "heat passed per area, or per length of pipe, and degree",
        "R" => "thermal resistance",
        "A" | "A_gross" => "area",
        "A_opening" => "a window or door, taken off",
        "H" => "height, or heat passed per degree",
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

/// A piece of a formula for the page: plain, lowered or raised.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Piece {
    Plain(String),
    Lowered(String),
    Raised(Vec<Piece>),
}

/// Sets a formula's text: `*` as a dot, `_x` lowered, `^ x` raised, Greek by name; `write` turns a
/// symbol into what is shown for it (itself, or its number).
pub fn set_formula(text: &str, write: &dyn Fn(&str) -> Vec<Piece>) -> Vec<Piece> {
    let mut out = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let (piece, after) = take_token(rest, first);
        rest = after;
        match first {
            '^' => {
                let (raised, after) = take_exponent(rest.trim_start());
                rest = after;
                // A space before an operator would hang in the air behind a raised exponent.
                while matches!(out.last(), Some(Piece::Plain(space)) if space == " ") {
                    out.pop();
                }
                out.push(Piece::Raised(set_formula(raised, write)));
            }
            '*' => out.push(Piece::Plain("·".to_string())),
            '-' => out.push(Piece::Plain("−".to_string())),
            c if c.is_ascii_alphabetic() && !matches!(piece, "exp" | "log10") => {
                out.extend(write(piece));
            }
            _ => out.push(Piece::Plain(piece.to_string())),
        }
    }
    out
}

/// A symbol as it is printed: `T_in` with its subscript, `rho` as a Greek letter.
pub fn set_symbol(symbol: &str) -> Vec<Piece> {
    let (name, low) = match symbol.split_once('_') {
        Some((name, low)) => (name, Some(low)),
        None => (symbol, None),
    };
    let name = match name {
        "rho" => "ρ",
        "mu" => "μ",
        "dT" => "ΔT",
        "dp" => "Δp",
        "e" => "ε",
        other => other,
    };
    let mut pieces = vec![Piece::Plain(name.to_string())];
    pieces.extend(low.map(|low| Piece::Lowered(low.to_string())));
    pieces
}

fn take_token(text: &str, first: char) -> (&str, &str) {
    let belongs = |c: char| match first {
        f if f.is_ascii_alphabetic() => c.is_ascii_alphanumeric() || c == '_',
        f if f.is_ascii_digit() => c.is_ascii_digit() || c == '.',
        _ => false,
    };
    let end = text
        .char_indices()
        .skip(1)
        .find(|&(_, c)| !belongs(c))
        .map_or(text.len(), |(index, _)| index);
    text.split_at(end)
}

/// A bracketed exponent without its brackets, or a single number or symbol.
fn take_exponent(text: &str) -> (&str, &str) {
    if let Some(inner) = text.strip_prefix('(') {
        let mut depth = 1;
        for (index, c) in inner.char_indices() {
            match c {
                '(' => depth += 1,
                ')' => depth -= 1,
                _ => {}
            }
            if depth == 0 {
                return (&inner[..index], &inner[index + 1..]);
            }
        }
    }
    match text.chars().next() {
        Some(first) => take_token(text, first),
        None => (text, ""),
    }
}
