//! What words of the trade mean, in plain ones.

use crate::in_units;
use crate::language::{Both, Language, either, language};
use finrun_engine::order::sort_by_key;

/// A word with its meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    word: Both,
    meaning: Both,
}

impl Term {
    pub fn word(&self) -> &'static str {
        either(self.word)
    }

    pub fn meaning(&self) -> String {
        in_units(either(self.meaning))
    }
}

/// All of them, by the alphabet of the language that is spoken.
pub fn terms() -> Vec<Term> {
    let mut terms = TERMS.to_vec();
    if language() != Language::English {
        sort_by_key(&mut terms, |term| folded(term.word()));
    }
    terms
}

/// For the alphabet, in which capitals and accents count for nothing.
fn folded(word: &str) -> String {
    let plain = |letter| match letter {
        'Á' | 'á' => 'a',
        'É' | 'é' => 'e',
        'Í' | 'í' => 'i',
        'Ó' | 'ó' => 'o',
        'Ú' | 'ú' => 'u',
        '-' => ' ',
        other => other.to_ascii_lowercase(),
    };
    word.chars().map(plain).collect()
}

macro_rules! terms {
    ($($name:ident: $word:literal, $palabra:literal, $meaning:literal, $sentido:literal;)+) => {
        $(pub const $name: Term = Term { word: ($word, $palabra), meaning: ($meaning, $sentido) };)+

        /// All of them, by the English alphabet.
        const TERMS: &[Term] = &[$($name),+];
    };
}

terms! {
    AIR_CHANGE: "Air change", "Cambio de aire",
        "All the air of a room replaced once by air from outdoors. 0.5 an hour: half of it each \
         hour.",
        "Todo el aire de una habitación reemplazado una vez por aire del exterior. Medio cambio \
         por hora: la mitad cada hora.";
    AIR_ELIMINATOR: "Air eliminator", "Eliminador de aire",
        "A chamber in the supply pipe in which air leaves the water and the system by itself.",
        "Una cámara en el tubo de suministro donde el aire sale solo del agua y del sistema.";
    BACKFLOW_PREVENTER: "Backflow preventer", "Dispositivo antirreflujo",
        "Keeps heating water from flowing back into the drinking water when the main loses its \
         pressure.",
        "Impide que el agua de calefacción regrese al agua potable cuando la red pierde presión.";
    BALANCE_TEMPERATURE: "Balance temperature", "Temperatura de equilibrio",
        "The outdoor temperature above which sun, people and appliances heat the house by \
         themselves.",
        "La temperatura exterior por encima de la cual el sol, las personas y los aparatos \
         calientan la casa por sí solos.";
    BALANCING_VALVE: "Balancing valve", "Válvula de balanceo",
        "A valve with a scale that is closed part of the way, so that one loop does not take the \
         water of another.",
        "Una válvula con escala que se cierra en parte, para que un circuito no le quite el agua a \
         otro.";
    BLOWER_DOOR: "Blower door", "Puerta sopladora",
        "A fan in a doorway that measures how leaky a house is. Its report gives CFM50: the flow \
         at 50 pascals.",
        "Un ventilador en el hueco de una puerta que mide cuántas fugas tiene una casa. Su informe \
         da CFM50: el caudal a 50 pascales.";
    BRANCH: "Branch", "Ramal",
        "The small pipe from a main to one room's element and back.",
        "La tubería pequeña que va de una principal al elemento de una habitación y vuelve.";
    CIRCULATOR: "Circulator", "Circulador",
        "The pump that moves the heating water round.",
        "La bomba que hace dar vueltas al agua de calefacción.";
    CONDENSING_BOILER: "Condensing boiler", "Caldera de condensación",
        "A boiler that also takes the heat of the steam in its flue gas. It can only where the \
         water comes back cooler than about 130 °F (54 °C).",
        "Una caldera que también toma el calor del vapor en sus gases de combustión. Solo puede \
         donde el agua regresa a menos de unos 130 °F (54 °C).";
    CV: "Cv", "Cv",
        "How easily a valve lets water through: gallons a minute at a loss of 1 psi. More is \
         easier.",
        "Con qué facilidad una válvula deja pasar agua: galones por minuto con una pérdida de 1 \
         psi. Más es más fácil.";
    DEGREE_DAY: "Degree day", "Grado-día",
        "One day that is one degree colder than a base, by custom 65 °F: how much winter a place \
         has.",
        "Un día que está un grado más frío que una base, por costumbre 65 °F: cuánto invierno \
         tiene un lugar.";
    DERATING: "Derating", "Reducción",
        "A share taken off a rated output for what the laboratory did not have.",
        "Una parte que se quita de una potencia nominal por lo que el laboratorio no tenía.";
    DESIGN_DAY: "Design day", "Día de diseño",
        "A day so cold that only 1 hour in 100 of the year is colder. What heats the house then, \
         heats it.",
        "Un día tan frío que solo 1 de cada 100 horas del año es más fría. Lo que calienta la casa \
         ese día, la calienta siempre.";
    DIVERTER_TEE: "Diverter tee", "Te desviadora",
        "A tee with a scoop or a narrowing inside, which pushes some of the main's water through a \
         branch.",
        "Una te con una pala o un estrechamiento por dentro, que empuja parte del agua de la \
         principal por un ramal.";
    DOWNSTREAM: "Downstream, upstream", "Aguas abajo, aguas arriba",
        "Behind and before in the direction in which the water flows.",
        "Después y antes en el sentido en que corre el agua.";
    ELEMENT: "Element", "Elemento",
        "Copper tube with fins, which gives the heat; it stands in an enclosure along the wall.",
        "Tubo de cobre con aletas, que da el calor; va dentro de una carcasa a lo largo de la \
         pared.";
    ENCLOSURE: "Enclosure", "Carcasa",
        "The sheet-metal cover with back plate and damper around the element.",
        "La cubierta de lámina con respaldo y compuerta alrededor del elemento.";
    EXPANSION_TANK: "Expansion tank", "Tanque de expansión",
        "A tank with a rubber skin and air behind it, which takes up the water that grows when it \
         is heated.",
        "Un tanque con una membrana de hule y aire detrás, que recibe lo que crece el agua al \
         calentarse.";
    EXPONENT: "Exponent", "Exponente",
        "How fast an element's output falls when its water is cooler; 1.4 for most.",
        "Qué tan rápido baja la potencia de un elemento cuando su agua está más fría; casi siempre \
         1,4.";
    F_FACTOR: "F-factor", "Factor F",
        "Heat through each foot of a slab's edge for each degree of difference.",
        "Calor por cada pie del borde de una losa por cada grado de diferencia.";
    FINNED_LENGTH: "Finned length", "Largo con aletas",
        "The part of a piece that has fins and gives heat. What is sold as 6 ft can have less.",
        "La parte de una pieza que tiene aletas y da calor. Lo que se vende como 6 pies puede \
         tener menos.";
    FLOW_CHECK: "Flow check", "Válvula de retención",
        "A valve that lets water pass one way only, and only when it is pumped.",
        "Una válvula que deja pasar el agua en un solo sentido, y solo cuando se bombea.";
    HEAD: "Head", "Altura",
        "What friction takes from the flow and the circulator has to give, as the height of a \
         column of water.",
        "Lo que la fricción le quita al caudal y el circulador tiene que dar, como la altura de \
         una columna de agua.";
    HEATING_EFFECT: "Heating effect", "Efecto de calefacción",
        "Up to 15 % that some rating methods add for the low place of the element. It is no heat \
         that can be measured.",
        "Hasta 15 % que algunos métodos de prueba agregan por el lugar bajo del elemento. No es \
         calor que se pueda medir.";
    HOME_RUN: "Home run", "Línea directa",
        "Each room has two pipes of its own to a manifold.",
        "Cada habitación tiene dos tubos propios hasta un colector.";
    KERF: "Kerf", "Ancho de corte",
        "What the saw turns to dust at each cut.",
        "Lo que la sierra vuelve polvo en cada corte.";
    LEAKAGE_AREA: "Leakage area", "Área de fuga",
        "All gaps of a house put together as one hole.",
        "Todas las rendijas de una casa juntas como un solo agujero.";
    MAIN: "Main", "Principal",
        "The pipe that passes several rooms, which hang on it by branches.",
        "La tubería que pasa por varias habitaciones, que cuelgan de ella por ramales.";
    MANIFOLD: "Manifold", "Colector",
        "A pipe with many outlets, from which each room's pipes go their own way.",
        "Un tubo con muchas salidas, de donde los tubos de cada habitación van por su propio \
         camino.";
    OUTDOOR_RESET: "Outdoor reset", "Compensación exterior",
        "A control that makes the water cooler when it is milder outdoors.",
        "Un control que enfría el agua cuando afuera hace menos frío.";
    OXYGEN_BARRIER: "Oxygen barrier", "Barrera de oxígeno",
        "A skin on plastic tube that keeps air from passing into the water, where it would rust \
         iron and steel.",
        "Una capa sobre el tubo de plástico que impide que pase aire al agua, donde oxidaría \
         hierro y acero.";
    PRE_CHARGE: "Pre-charge", "Precarga",
        "The air pressure in an expansion tank before water comes to it.",
        "La presión del aire en un tanque de expansión antes de que le llegue agua.";
    PURGE: "Purge", "Purga",
        "To drive the air out of a loop with fast water, one loop at a time.",
        "Sacar el aire de un circuito con agua rápida, un circuito a la vez.";
    R_VALUE: "R-value", "Valor R",
        "How well something holds back heat. Twice the R-value lets half the heat through. \
         R-values of layers add up.",
        "Qué tan bien algo detiene el calor. El doble de valor R deja pasar la mitad del calor. \
         Los valores R de las capas se suman.";
    RELIEF_VALVE: "Relief valve", "Válvula de alivio",
        "Opens by itself before the pressure bursts something. It is never plugged or shut off.",
        "Abre por sí sola antes de que la presión reviente algo. Nunca se tapa ni se cierra.";
    RETURN_PROTECTION: "Return protection", "Protección del retorno",
        "What keeps cool water from coming back to a boiler that would corrode from it.",
        "Lo que impide que llegue agua fría a una caldera que se corroería con ella.";
    REVERSE_RETURN: "Reverse return, direct return", "Retorno inverso, retorno directo",
        "Two mains. With a direct return the nearest room has the shortest way, and takes too much \
         unless it is throttled; with a reverse return all ways are about as long.",
        "Dos principales. Con retorno directo la habitación más cercana tiene el camino más corto, \
         y toma de más si no se le cierra el paso en parte; con retorno inverso todos los caminos \
         son casi igual de largos.";
    SERIES_LOOP: "Series loop", "Circuito en serie",
        "The water passes one room's element after the other, a little cooler each time.",
        "El agua pasa por el elemento de una habitación tras otra, cada vez un poco más fría.";
    SPLIT_LOOP: "Split loop", "Circuito dividido",
        "A pipe that parts into two or more loops, which come together again.",
        "Un tubo que se parte en dos o más circuitos, que luego se juntan.";
    TEMPERATURE_DROP: "Temperature drop", "Caída de temperatura",
        "How much cooler the water comes back than it went out.",
        "Cuánto más fría regresa el agua de lo que salió.";
    TRUNK: "Trunk", "Troncal",
        "The pipe between boiler and the place where loops part.",
        "La tubería entre la caldera y el lugar donde se separan los circuitos.";
    U_VALUE: "U-value", "Valor U",
        "Heat that a square foot or metre lets through for each degree. The less the better; 1 \
         divided by the R-value of it all.",
        "Calor que deja pasar un pie o metro cuadrado por cada grado. Mientras menos, mejor; 1 \
         dividido entre el valor R de todo.";
    ZONE: "Zone", "Zona",
        "Rooms that one thermostat heats together.",
        "Habitaciones que un termostato calienta juntas.";
    ZONE_VALVE: "Zone valve", "Válvula de zona",
        "A valve with a motor that lets water into one zone when its thermostat calls.",
        "Una válvula con motor que deja entrar agua a una zona cuando su termostato pide calor.";
}
