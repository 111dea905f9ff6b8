//! What Finrun is.

use crate::language::{Both, either};

/// What Finrun is, what the calculation rests on, and which letters it is set in, paragraph by
/// paragraph.
pub fn about_paragraphs() -> [&'static str; 12] {
    ABOUT.map(either)
}

const ABOUT: [Both; 12] = [
    (
        "Finrun sizes hot-water fin-tube baseboard: the heat loss of each room, stock lengths of \
         element at the water temperature that reaches it, and piping that works, from one loop to \
         zones of any kind. It needs no connection and no account, and keeps jobs in this browser \
         alone.",
        "Finrun calcula calefacción por zócalo de tubo con aletas y agua caliente: la pérdida de \
         calor de cada habitación, los largos en venta de elemento con la temperatura del agua que \
         le llega, y una tubería que funciona, de un solo circuito a zonas de cualquier clase. No \
         necesita conexión ni cuenta, y guarda los proyectos solo en este navegador.",
    ),
    (
        "Heat loss: steady, on the design day. U-values by ISO 6946 from layers, IECC default \
         tables, or yours. No gains from sun or people, no reheat, no hidden safety factor.",
        "Pérdida de calor: estable, en el día de diseño. Valores U según ISO 6946 por capas, \
         tablas de valores por omisión del IECC, o los suyos. Sin ganancias de sol ni de personas, \
         sin recalentamiento, sin factor de seguridad oculto.",
    ),
    (
        "Ground: slabs, basements and crawl spaces by ISO 13370, whose formulas were read in \
         public implementations of it, or by the F-factors of US codes. Unheated spaces at the \
         temperature of their own balance.",
        "Suelo: losas, sótanos y espacios de poca altura según ISO 13370, cuyas fórmulas se \
         leyeron en programas públicos que la aplican, o con los factores F de los códigos de EE. \
         UU. Espacios sin calefacción a la temperatura de su propio balance.",
    ),
    (
        "Air: by class, blower door or leakage area, with the model of Sherman and Grimsrud, \
         shared among the rooms by the area they show to outdoors and to unheated spaces.",
        "Aire: por clase, prueba de puerta sopladora o área de fuga, con el modelo de Sherman y \
         Grimsrud, repartido entre las habitaciones según el área que dan al exterior y a espacios \
         sin calefacción.",
    ),
    (
        "How sure: ranges of the inputs are judgement and can be changed; they are carried through \
         by exact derivatives to first order.",
        "Qué tan seguro: los intervalos de los datos son criterio propio y se pueden cambiar; se \
         llevan hasta el resultado con derivadas exactas a primer orden.",
    ),
    (
        "Climate: statistics of 1,020 US stations from the Typical Meteorological Year 3 files of \
         the National Renewable Energy Laboratory for the U.S. Department of Energy, checked \
         against NOAA daily records; middles of ZIP areas from the US Census Bureau. Neither \
         endorses Finrun. Such years are not made for the worst case: a station is good to about 3 \
         °F, less in mountains and in Alaska.",
        "Clima: estadísticas de 1020 estaciones de EE. UU. de los archivos Typical Meteorological \
         Year 3 del National Renewable Energy Laboratory para el Departamento de Energía de EE. \
         UU., revisadas contra los registros diarios de NOAA; centros de las áreas ZIP del Censo \
         de EE. UU. Ninguno respalda a Finrun. Esos años no están hechos para el peor caso: una \
         estación tiene un error de unos 3 °F, menos bueno en montañas y en Alaska.",
    ),
    (
        "Element: the rating's power law, carried along the tube exactly as the water cools. \
         Pieces are chosen from the supply on, for as little element as does it or for what you \
         ask instead; the page says whether no choice is better, or how far off it may be. Prices \
         are your own.",
        "Elemento: la ley de potencia del dato nominal, llevada a lo largo del tubo tal como el \
         agua se enfría. Las piezas se eligen desde el suministro, con el menor elemento que baste \
         o para lo que usted pida en su lugar; la página dice si ninguna elección es mejor, o \
         cuánto puede faltar. Los precios son los suyos.",
    ),
    (
        "Piping: every arrangement is solved as one network by the global gradient algorithm of \
         Todini and Pilati, flow and temperature and lengths together. Water properties after \
         IAPWS, friction after Darcy, Weisbach and Colebrook, fittings in the form of Crane TP-410 \
         from memory.",
        "Tubería: cada arreglo se resuelve como una sola red con el algoritmo de gradiente global \
         de Todini y Pilati, caudal, temperatura y largos juntos. Propiedades del agua según \
         IAPWS, fricción según Darcy, Weisbach y Colebrook, conexiones en la forma de Crane \
         TP-410, de memoria.",
    ),
    (
        "Boiler and fill: the diaphragm tank by the ASHRAE Handbook, boiling by IAPWS-IF97, \
         propylene glycol by fits to Melinder's data; burner cycles by the heat that the water \
         alone stores.",
        "Caldera y llenado: el tanque de diafragma según el ASHRAE Handbook, la ebullición según \
         IAPWS-IF97, el propilenglicol con ajustes a los datos de Melinder; los ciclos del \
         quemador por el calor que guarda el agua sola.",
    ),
    (
        "In use: the year by steady balances, one for each 5 °F of the station's days, with the \
         thermostats that are there; a setback night with each room as one lump of heat; readings of \
         a system that stands by Bayes' rule over explanations, one changed thing each.",
        "En uso: el año con balances estables, uno por cada 5 °F de los días de la estación, con los \
         termostatos que hay; la noche con reducción, con cada habitación como una sola masa de calor; \
         las lecturas de un sistema que ya existe con la regla de Bayes sobre explicaciones, cada una \
         con una sola cosa cambiada.",
    ),
    (
        "Limits: no thermal bridges beyond the framing; elements sized for a steady design day, without \
         gains; hot risers push nothing; typical circulators are nobody's. What stands marked as \
         common practice or judgement has no source.",
        "Límites: sin puentes térmicos más allá del armazón; los elementos se calculan para un día de \
         diseño estable, sin ganancias; los tubos calientes que suben no empujan nada; los circuladores \
         típicos no son de nadie. Lo marcado como práctica común o criterio propio no tiene fuente.",
    ),
    (
        "Typeface: Barlow Semi Condensed, SIL Open Font License 1.1.",
        "Tipo de letra: Barlow Semi Condensed, licencia SIL Open Font License 1.1.",
    ),
];
