//! Words around a working: where it comes from, what a symbol means, how it is written.

use crate::language::either;
use finrun_engine::trace::{Formula, Source, Step};

pub fn source(source: Source) -> &'static str {
    either(match source {
        Source::Arithmetic => ("Arithmetic.", "Aritmética."),
        Source::Transmission => (
            "Steady transmission: EN 12831-1; ASHRAE Handbook of Fundamentals, residential load.",
            "Transmisión constante: EN 12831-1; ASHRAE Handbook, Fundamentals, carga residencial.",
        ),
        Source::Layers => ("ISO 6946, combined method.", "ISO 6946, método combinado."),
        Source::Ground => (
            "ISO 13370:2017, as two public implementations have it.",
            "ISO 13370:2017, como la tienen dos implementaciones públicas.",
        ),
        Source::GroundSwing => (
            "ISO 13370:2017, annex H, as two public implementations have it.",
            "ISO 13370:2017, anexo H, como la tienen dos implementaciones públicas.",
        ),
        Source::FFactor => (
            "F-factor of US energy codes, along the slab's edge.",
            "Factor F de los códigos de energía de EE. UU., a lo largo del borde de la losa.",
        ),
        Source::CrawlSpaceVents => (
            "ISO 13370, suspended floors, from memory.",
            "ISO 13370, pisos suspendidos, de memoria.",
        ),
        Source::StandardAtmosphere => (
            "U.S. Standard Atmosphere 1976 and the ideal gas law; metres and kelvins.",
            "U.S. Standard Atmosphere 1976 y la ley de los gases ideales; metros y kelvins.",
        ),
        Source::Ventilation => (
            "ASHRAE Handbook of Fundamentals, ventilation and infiltration.",
            "ASHRAE Handbook, Fundamentals, ventilación e infiltración.",
        ),
        Source::Infiltration => (
            "Sherman and Grimsrud's basic model, LBL-10163, with the coefficients of the ASHRAE \
             Handbook of Fundamentals.",
            "Modelo básico de Sherman y Grimsrud, LBL-10163, con los coeficientes del ASHRAE \
             Handbook, Fundamentals.",
        ),
        Source::BlowerDoor => (
            "The tested flow brought from 50 Pa to 4 Pa, and Bernoulli's equation there; air at \
             20 °C and sea level, as testers reduce it (from memory).",
            "El caudal de la prueba llevado de 50 Pa a 4 Pa, y allí la ecuación de Bernoulli; \
             aire a 20 °C y al nivel del mar, como lo reducen quienes prueban (de memoria).",
        ),
        Source::Shares => (
            "Shared by the area where the gaps are, or by volume: judgement.",
            "Repartido según el área donde están las rendijas, o según el volumen: criterio \
             propio.",
        ),
        Source::SpaceBalance => (
            "Balance of the space, counted from the outdoor temperature: what comes in goes out \
             again.",
            "Balance del espacio, contado desde la temperatura exterior: lo que entra vuelve a \
             salir.",
        ),
        Source::Errors => (
            "Independent errors, to first order: their squares add up.",
            "Errores independientes, a primer orden: se suman sus cuadrados.",
        ),
        Source::EnergyBalance => (
            "Energy balance; water properties fitted to IAPWS-95.",
            "Balance de energía; propiedades del agua ajustadas a IAPWS-95.",
        ),
        Source::RatingPractice => (
            "Hot-water rating practice of the hydronics trade; power law in the form of EN 442.",
            "Práctica del oficio hidrónico para potencias nominales con agua caliente; ley de \
             potencia en la forma de EN 442.",
        ),
        Source::Integrated => (
            "The rating's power law in the energy balance along the tube, integrated exactly.",
            "La ley de potencia nominal en el balance de energía a lo largo del tubo, integrada \
             exactamente.",
        ),
        Source::BarePipe => (
            "Energy balance along a bare pipe; the surface coefficient as entered.",
            "Balance de energía a lo largo de un tubo desnudo; el coeficiente de superficie como \
             se escribió.",
        ),
        Source::Continuity => (
            "Continuity; water properties fitted to IAPWS.",
            "Continuidad; propiedades del agua ajustadas a IAPWS.",
        ),
        Source::Colebrook => (
            "Colebrook 1939; 64/Re below Reynolds 2000; a straight bridge up to 4000.",
            "Colebrook 1939; 64/Re por debajo de Reynolds 2000; un puente recto hasta 4000.",
        ),
        Source::DarcyWeisbach => ("Darcy and Weisbach.", "Darcy y Weisbach."),
        Source::Crane => (
            "Loss coefficients in the form of Crane TP-410, from memory.",
            "Coeficientes de pérdida en la forma de Crane TP-410, de memoria.",
        ),
        Source::Hydrostatics => (
            "Weight and height of a column of the water.",
            "Peso y altura de una columna del agua.",
        ),
        Source::ExpansionTank => (
            "ASHRAE Handbook, HVAC Systems and Equipment: diaphragm tank, absolute pressures, all \
             water at the supply temperature.",
            "ASHRAE Handbook, HVAC Systems & Equipment: tanque de diafragma, presiones absolutas, \
             toda el agua a la temperatura de suministro.",
        ),
        Source::ReliefPractice => (
            "Common practice, no source: a tenth below the relief valve's setting.",
            "Práctica común, sin fuente: una décima parte por debajo del ajuste de la válvula de \
             alivio.",
        ),
        Source::CommonPractice => (
            "Common practice, no source. It forgets that the water cools.",
            "Práctica común, sin fuente. Olvida que el agua se enfría.",
        ),
    })
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
    let mut known = symbols().filter(|(names, _)| names.split(' ').any(|name| name == symbol));
    known.next().map_or("", |(_, meaning)| meaning)
}

/// The names of each symbol, with what they stand for.
pub fn symbols() -> impl Iterator<Item = (&'static str, &'static str)> {
    SYMBOLS.split('\n').filter_map(|line| {
        let (names, meanings) = line.split_once(": ")?;
        Some((names, either(meanings.split_once(" | ")?)))
    })
}

/// English, then Spanish. One text rather than a list of texts, as that is smaller to send.
const SYMBOLS: &str = "Q Q_n: heat | calor
Q_wall Q_window Q_door Q_ceiling Q_floor Q_ground \
                       Q_air: heat by this path | calor por este paso
Q_i: heat given up on one \
                       stretch | calor que cede en un trecho
Q_in: heat that would come in at the \
                       outdoor temperature | calor que entraría a la temperatura \
                       exterior
Q_swing: heat that the coldest month takes, taken off | calor que \
                       se lleva el mes más frío, descontado
Q_alone: half the band that one input \
                       gives by itself | la mitad de la banda que da un dato por sí solo
Q_half: \
                       half the band | la mitad de la banda
Q_low Q_high: end of the band | \
                       extremo de la banda
Q_x: heat the room gets | calor que recibe la \
                       habitación
s: share over the load | parte por encima de la carga
Q_short: \
                       heat missing | calor que falta
Q_pipe: heat lost from pipes outside the \
                       rooms | calor perdido de tubos fuera de las habitaciones
Q_tank: heat for \
                       the indirect tank | calor para el tanque indirecto
A_i L_i Vol_i R_i G_i \
                       dT_i: one part | una parte
Q_w: heat given up by the water | calor que \
                       cede el agua
U: heat passed per area and degree | calor que pasa por área \
                       y grado
U_p: heat passed per length of pipe and degree | calor que pasa \
                       por longitud de tubo y grado
U_g: heat passed through the ground per area \
                       and degree | calor que pasa por el suelo, por área y grado
U_0: nothing: \
                       no floor gains heat, nor loses it without an outside edge | nada: ningún \
                       piso gana calor, ni lo pierde sin un borde exterior
G: heat passed per \
                       degree | calor que pasa por grado
R: thermal resistance | resistencia \
                       térmica
R_si: film inside | película interior
R_se: film outside | \
                       película exterior
R_f: layers of the floor | capas del piso
R_w: layers of \
                       the wall | capas de la pared
R_n: edge insulation | aislamiento del \
                       borde
R_cav: between the framing | entre la estructura
R_wood: in the \
                       framing | en la estructura
R_upper: two paths side by side | dos pasos \
                       lado a lado
R_lower: layer by layer | capa por capa
f_wood: share of the \
                       area that is framing | parte del área que es estructura
A A_gross: area | \
                       área
A_opening: a window or door, taken off | una ventana o puerta, \
                       descontada
A_w: wall in the earth | pared bajo tierra
A_g: floor on the \
                       same ground | piso sobre el mismo suelo
P: edge at outside walls | borde \
                       en paredes exteriores
B: characteristic dimension | dimensión \
                       característica
w: thickness of the outside wall | espesor de la pared \
                       exterior
lambda: conductivity of the ground | conductividad del \
                       suelo
delta: how deep the year's swing reaches | hasta qué hondura llega \
                       la oscilación del año
d_f: floor, as a thickness of ground | piso, como \
                       espesor de suelo
d_w: wall, as a thickness of ground | pared, como espesor \
                       de suelo
d_min: the lesser of the two thicknesses | el menor de los dos \
                       espesores
d_n: thickness of the edge insulation | espesor del aislamiento \
                       del borde
d_e: ground that it is worth beyond its own thickness | suelo \
                       que vale más allá de su propio espesor
D: reach of the edge insulation | \
                       alcance del aislamiento del borde
D_v: depth of the edge insulation | \
                       hondura del aislamiento del borde
psi: what edge insulation saves per \
                       length and degree | lo que ahorra el aislamiento del borde por longitud y \
                       grado
psi_p: heat per length of edge and degree of swing | calor por \
                       longitud de borde y grado de oscilación
F_edge: F-factor | factor F
z: \
                       depth below the ground outside | hondura bajo el suelo exterior
H: height \
                       of a column of the water | altura de una columna del agua
T: temperature \
                       of the space | temperatura del espacio
T_in: inside | adentro
T_out: \
                       beyond | al otro lado
T_0: outdoors | afuera
T_i: temperature there | \
                       temperatura allí
T_mean: mean of the year | media del año
T_cold: mean of \
                       the coldest month | media del mes más frío
T_abs: temperature from \
                       absolute zero | temperatura desde el cero absoluto
T_a: air at the element \
                       or pipe | aire en el elemento o tubo
T_w: water that enters | agua que \
                       entra
T_x: water that leaves | agua que sale
T_r: water of the rating | \
                       agua de la potencia nominal
T_e: entering air of the rating | aire que \
                       entra en la potencia nominal
T_s: supply | suministro
T_b: return | \
                       retorno
dT: temperature difference | diferencia de temperatura
n: exponent \
                       | exponente
N: air changes | cambios de aire
V: volume flow | caudal en \
                       volumen
V_r: flow of this room or space | caudal de esta habitación o \
                       espacio
V_n: flow by air changes | caudal por cambios de aire
V_50: flow \
                       at 50 Pa | caudal a 50 Pa
V_L: flow through the gaps | caudal por las \
                       rendijas
V_i: flow before fans | caudal sin ventiladores
V_fan: flow of a \
                       fan | caudal de un ventilador
V_u: flow of fans without counterpart | \
                       caudal de ventiladores sin contraparte
V_h: flow of the whole house | \
                       caudal de toda la casa
V_v: flow through the vents | caudal por las \
                       rejillas
Vol: volume of all heated rooms | volumen de todas las \
                       habitaciones calentadas
Vol_r: volume of this part | volumen de esta \
                       parte
Vol_s: liquid in the whole system | líquido en todo el \
                       sistema
Vol_p: liquid in one part | líquido en una parte
Vol_g: what the \
                       expansion tank takes up | lo que recibe el tanque de expansión
Vol_t: \
                       expansion tank | tanque de expansión
A_L A_50: leakage area | área de \
                       fugas
A_flue: opening to a chimney | abertura a una chimenea
A_r: area of \
                       this room that faces outdoors or unheated spaces | área de esta habitación \
                       que da al exterior o a espacios sin calefacción
A_x: such area of all \
                       rooms | la misma área de todas las habitaciones
A_v: area of the vents | \
                       área de las rejillas
C_s: stack coefficient | coeficiente de tiro
C_w: \
                       wind coefficient | coeficiente de viento
v_w: wind | viento
f_v: share of \
                       the wind that reaches the vents | parte del viento que llega a las \
                       rejillas
eta: share of the heat recovered | parte del calor \
                       recuperada
h_alt: altitude | altitud
m: mass flow | caudal en masa
m_r: \
                       mass flow of the rating | caudal en masa de la potencia nominal
rho: \
                       density | densidad
rho_1: density cold | densidad en frío
rho_2: density \
                       hot | densidad en caliente
alpha: how much the metal grows, each kelvin | \
                       cuánto crece el metal, por kelvin
p_1: cold, absolute | en frío, \
                       absoluta
p_2: hot at most, absolute | en caliente como máximo, \
                       absoluta
p_fill: cold, on the gauge | en frío, en el manómetro
p_w: what \
                       the water weighs | lo que pesa el agua
p_top: left at the top | lo que \
                       queda arriba
p_relief: the relief valve's setting | ajuste de la válvula \
                       de alivio
p_air: pressure of the air | presión del aire
h_s: height of the \
                       water above the gauge | altura del agua sobre el manómetro
c: specific \
                       heat | calor específico
q_r: rated output per length | potencia nominal \
                       por longitud
q: output per length at the entering water | potencia por \
                       longitud con el agua que entra
q_A: heat per area | calor por área
F: \
                       share of the rating that counts | parte de la potencia nominal que \
                       cuenta
E: heating effect credited | efecto de calefacción acreditado
L: \
                       length | longitud
v: velocity | velocidad
d: inside diameter | diámetro \
                       interior
mu: viscosity | viscosidad
Re: Reynolds number | número de \
                       Reynolds
f f_t: friction factor | factor de fricción
e: roughness | \
                       rugosidad
K: sum of loss coefficients | suma de coeficientes de pérdida
dp \
                       dp_i: pressure lost | presión perdida
h: head lost in equipment | altura \
                       de bombeo perdida en los equipos";

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
