//! What the symbols of a working stand for.

use crate::language::either;

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
