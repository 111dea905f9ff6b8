//! Words around a working: where it comes from, what a symbol means, how it is written.

use finrun_engine::trace::{Formula, Source, Step};

pub fn source(source: Source) -> &'static str {
    match source {
        Source::Arithmetic => "Arithmetic.",
        Source::Transmission => {
            "Steady transmission: EN 12831-1; ASHRAE Handbook of Fundamentals, residential load."
        }
        Source::Layers => "ISO 6946, combined method.",
        Source::Ground => "ISO 13370:2017, as two public implementations have it.",
        Source::GroundSwing => "ISO 13370:2017, annex H, as two public implementations have it.",
        Source::FFactor => "F-factor of US energy codes, along the slab's edge.",
        Source::CrawlSpaceVents => "ISO 13370, suspended floors, from memory.",
        Source::StandardAtmosphere => {
            "U.S. Standard Atmosphere 1976 and the ideal gas law; metres and kelvins."
        }
        Source::Ventilation => "ASHRAE Handbook of Fundamentals, ventilation and infiltration.",
        Source::Infiltration => {
            "Sherman and Grimsrud's basic model, LBL-10163, with the coefficients of the ASHRAE \
             Handbook of Fundamentals."
        }
        Source::BlowerDoor => {
            "The tested flow brought from 50 Pa to 4 Pa, and Bernoulli's equation there; air at \
             20 °C and sea level, as testers reduce it (from memory)."
        }
        Source::Shares => "Shared by the area where the gaps are, or by volume: judgement.",
        Source::SpaceBalance => {
            "Balance of the space, counted from the outdoor temperature: what comes in goes out again."
        }
        Source::Errors => "Independent errors, to first order: their squares add up.",
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
        Source::Hydrostatics => "Weight and height of a column of the water.",
        Source::ExpansionTank => {
            "ASHRAE Handbook, HVAC Systems and Equipment: diaphragm tank, absolute pressures, all water \
             at the supply temperature."
        }
        Source::ReliefPractice => {
            "Common practice, no source: a tenth below the relief valve's setting."
        }
        Source::CommonPractice => "Common practice, no source. It forgets that the water cools.",
    }
}

/// The right-hand side as people write it; some are written from their terms.
pub fn formula_text(step: &Step) -> String {
    let symbols = step.terms.iter().map(|term| term.symbol.to_string()).collect::<Vec<_>>();
    spread_text(step.formula, &symbols)
}

/// The same with `items` in the place of the terms, where it is written from those.
pub fn spread_text(formula: Formula, items: &[String]) -> String {
    match formula {
        Formula::Sum => items.join(" + "),
        Formula::RootOfSquares => format!("({} ^ 2) ^ 0.5", items.join(" ^ 2 + ")),
        formula => formula.text().to_string(),
    }
}

/// What a symbol stands for.
pub fn symbol_meaning(symbol: &str) -> &'static str {
    let numbered =
        symbol.strip_prefix("Q_").is_some_and(|low| low.starts_with(|c: char| c.is_ascii_digit()));
    let symbol = if numbered { "Q" } else { symbol };
    let lines = SYMBOLS.split('\n').filter_map(|line| line.split_once(": "));
    let mut known = lines.filter(|(names, _)| names.split(' ').any(|name| name == symbol));
    known.next().map_or("", |(_, meaning)| meaning)
}

/// One text rather than a list of texts, as that is smaller to send.
const SYMBOLS: &str = "\
Q Q_n: heat
Q_wall Q_window Q_door Q_ceiling Q_floor Q_ground Q_air: heat by this path
Q_i: heat given up on one stretch
Q_in: heat that would come in at the outdoor temperature
Q_swing: heat that the coldest month takes, taken off
Q_alone: half the band that one input gives by itself
Q_half: half the band
Q_low Q_high: end of the band
Q_x: heat the room gets
s: share over the load
Q_short: heat missing
Q_pipe: heat lost from pipes outside the rooms
Q_tank: heat for the indirect tank
A_i L_i Vol_i R_i G_i dT_i: one part
Q_w: heat given up by the water
U: heat passed per area and degree
U_p: heat passed per length of pipe and degree
U_g: heat passed through the ground per area and degree
U_0: nothing: no floor gains heat, nor loses it without an outside edge
G: heat passed per degree
R: thermal resistance
R_si: film inside
R_se: film outside
R_f: layers of the floor
R_w: layers of the wall
R_n: edge insulation
R_cav: between the framing
R_wood: in the framing
R_upper: two paths side by side
R_lower: layer by layer
f_wood: share of the area that is framing
A A_gross: area
A_opening: a window or door, taken off
A_w: wall in the earth
A_g: floor on the same ground
P: edge at outside walls
B: characteristic dimension
w: thickness of the outside wall
lambda: conductivity of the ground
delta: how deep the year's swing reaches
d_f: floor, as a thickness of ground
d_w: wall, as a thickness of ground
d_min: the lesser of the two thicknesses
d_n: thickness of the edge insulation
d_e: ground that it is worth beyond its own thickness
D: reach of the edge insulation
D_v: depth of the edge insulation
psi: what edge insulation saves per length and degree
psi_p: heat per length of edge and degree of swing
F_edge: F-factor
z: depth below the ground outside
H: height of a column of the water
T: temperature of the space
T_in: inside
T_out: beyond
T_0: outdoors
T_i: temperature there
T_mean: mean of the year
T_cold: mean of the coldest month
T_abs: temperature from absolute zero
T_a: air at the element or pipe
T_w: water that enters
T_x: water that leaves
T_r: water of the rating
T_e: entering air of the rating
T_s: supply
T_b: return
dT: temperature difference
n: exponent
N: air changes
V: volume flow
V_r: flow of this room or space
V_n: flow by air changes
V_50: flow at 50 Pa
V_L: flow through the gaps
V_i: flow before fans
V_fan: flow of a fan
V_u: flow of fans without counterpart
V_h: flow of the whole house
V_v: flow through the vents
Vol: volume of all heated rooms
Vol_r: volume of this part
Vol_s: liquid in the whole system
Vol_p: liquid in one part
Vol_g: what the expansion tank takes up
Vol_t: expansion tank
A_L A_50: leakage area
A_flue: opening to a chimney
A_r: area of this room that faces outdoors or unheated spaces
A_x: such area of all rooms
A_v: area of the vents
C_s: stack coefficient
C_w: wind coefficient
v_w: wind
f_v: share of the wind that reaches the vents
eta: share of the heat recovered
h_alt: altitude
m: mass flow
m_r: mass flow of the rating
rho: density
rho_1: density cold
rho_2: density hot
alpha: how much the metal grows, each kelvin
p_1: cold, absolute
p_2: hot at most, absolute
p_fill: cold, on the gauge
p_w: what the water weighs
p_top: left at the top
p_relief: the relief valve's setting
p_air: pressure of the air
h_s: height of the water above the gauge
c: specific heat
q_r: rated output per length
q: output per length at the entering water
q_A: heat per area
F: share of the rating that counts
E: heating effect credited
L: length
v: velocity
d: inside diameter
mu: viscosity
Re: Reynolds number
f f_t: friction factor
e: roughness
K: sum of loss coefficients
dp dp_i: pressure lost
h: head lost in equipment";

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
            _ if piece == "pi" => out.push(Piece::Plain("π".to_string())),
            c if c.is_ascii_alphabetic() && !matches!(piece, "exp" | "ln" | "log10") => {
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
        "lambda" => "λ",
        "delta" => "δ",
        "psi" => "ψ",
        "eta" => "η",
        "alpha" => "α",
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
