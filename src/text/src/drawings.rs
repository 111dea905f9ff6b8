//! Words of the drawings.

use crate::language::{either, say, sentences};
use finrun_engine::job::Side;

/// A pressure of the running system, where the filling's own is left out.
pub fn above_tank(pressure: &str) -> String {
    say!("{pressure} above the tank", "{pressure} sobre el tanque")
}

/// A zone while no other calls.
pub fn alone(zone: &str) -> String {
    say!("{zone} alone", "{zone} sola")
}

/// Where a circulator stands against the system, or is meant to.
pub fn operating_point(system: &str, flow: &str, head: &str, planned: bool) -> String {
    match planned {
        true => {
            say!("{flow} at {head}, planned · {system}", "{flow} a {head}, previsto · {system}")
        }
        false => say!("{flow} at {head} · {system}", "{flow} a {head} · {system}"),
    }
}

pub fn pump_picture(name: &str) -> String {
    say!("{name}: head against flow.", "{name}: altura de bombeo según el caudal.")
}

/// A symbol or a line of a drawing, which the key beside it explains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    Element,
    Enclosure,
    CapLeft,
    CapRight,
    Splice,
    InsideCorner,
    OutsideCorner,
    PipeDown,
    PipeUp,
    ReturnBend,
    Window,
    Door,
    Baseboard,
    Somewhere,
    Supply,
    Return,
    Flow,
    FlowBack,
    FromBoiler,
    ToBoiler,
    RiserUp,
    RiserDown,
    DiverterTee,
    Boiler,
    Relief,
    Gauge,
    ShutOff,
    AirEliminator,
    ExpansionTank,
    FillValve,
    Backflow,
    Circulator,
    FlowCheck,
    ZoneValve,
    BalancingValve,
    PurgeValve,
    MixingValve,
    Bypass,
    SupplyPipe,
    ReturnPipe,
}

impl Mark {
    pub const ALL: &[Mark] = &[
        Mark::Element,
        Mark::Enclosure,
        Mark::CapLeft,
        Mark::CapRight,
        Mark::Splice,
        Mark::InsideCorner,
        Mark::OutsideCorner,
        Mark::PipeDown,
        Mark::PipeUp,
        Mark::ReturnBend,
        Mark::Window,
        Mark::Door,
        Mark::Baseboard,
        Mark::Somewhere,
        Mark::Supply,
        Mark::Return,
        Mark::Flow,
        Mark::FlowBack,
        Mark::FromBoiler,
        Mark::ToBoiler,
        Mark::RiserUp,
        Mark::RiserDown,
        Mark::DiverterTee,
        Mark::Boiler,
        Mark::Relief,
        Mark::Gauge,
        Mark::ShutOff,
        Mark::AirEliminator,
        Mark::ExpansionTank,
        Mark::FillValve,
        Mark::Backflow,
        Mark::Circulator,
        Mark::FlowCheck,
        Mark::ZoneValve,
        Mark::BalancingValve,
        Mark::PurgeValve,
        Mark::MixingValve,
        Mark::Bypass,
        Mark::SupplyPipe,
        Mark::ReturnPipe,
    ];

    /// Parts of the boiler room, as the water passes them from the boiler back to it.
    pub const BOILER_ROOM: &[Mark] = &[
        Mark::Boiler,
        Mark::Relief,
        Mark::Gauge,
        Mark::ShutOff,
        Mark::AirEliminator,
        Mark::ExpansionTank,
        Mark::FillValve,
        Mark::Backflow,
        Mark::Circulator,
        Mark::FlowCheck,
        Mark::ZoneValve,
        Mark::BalancingValve,
        Mark::PurgeValve,
        Mark::MixingValve,
        Mark::Bypass,
    ];
}

pub fn mark(mark: Mark) -> &'static str {
    either(match mark {
        Mark::Element => ("Element in its enclosure", "Elemento en su carcasa"),
        Mark::Enclosure => ("Enclosure, no element", "Carcasa, sin elemento"),
        Mark::CapLeft => ("End cap, left", "Tapa final, izquierda"),
        Mark::CapRight => ("End cap, right", "Tapa final, derecha"),
        Mark::Splice => ("Splice cover", "Tapajuntas"),
        Mark::InsideCorner => ("Inside corner piece", "Esquina interior"),
        Mark::OutsideCorner => ("Outside corner piece", "Esquina exterior"),
        Mark::PipeDown => ("Down through the floor", "Baja por el piso"),
        Mark::PipeUp => ("Up through the floor", "Sube por el piso"),
        Mark::Window => ("Window", "Ventana"),
        Mark::Door => ("Door", "Puerta"),
        Mark::ReturnBend => ("Pipe turns back above", "El tubo vuelve por arriba"),
        Mark::Baseboard => ("Baseboard at its wall", "Zócalo en su pared"),
        Mark::Somewhere => ("Baseboard, wall not known", "Zócalo, pared desconocida"),
        Mark::Supply => ("Supply, thick", "Suministro, grueso"),
        Mark::Return => ("Return, thin", "Retorno, delgado"),
        Mark::Flow => ("Water's way", "Camino del agua"),
        Mark::FlowBack => ("Return's way", "Camino del retorno"),
        Mark::FromBoiler => ("From the boiler", "De la caldera"),
        Mark::ToBoiler => ("Back to the boiler", "A la caldera"),
        Mark::RiserUp => ("Riser, storey above", "Subida, piso de arriba"),
        Mark::RiserDown => ("Riser, storey below", "Bajada, piso de abajo"),
        Mark::DiverterTee => ("Diverter tee", "Te desviadora"),
        Mark::Boiler => ("Boiler", "Caldera"),
        Mark::Relief => ("Relief valve", "Válvula de alivio"),
        Mark::Gauge => ("Pressure and temperature gauge", "Manómetro y termómetro"),
        Mark::ShutOff => ("Shut-off valve", "Válvula de paso"),
        Mark::AirEliminator => ("Air eliminator", "Eliminador de aire"),
        Mark::ExpansionTank => ("Expansion tank, on its tee", "Tanque de expansión, en su te"),
        Mark::FillValve => ("Fill valve", "Válvula de llenado"),
        Mark::Backflow => ("Backflow preventer", "Dispositivo antirreflujo"),
        Mark::Circulator => {
            ("Circulator, pumping away from the tank", "Circulador, bombea alejándose del tanque")
        }
        Mark::FlowCheck => ("Flow check", "Válvula de retención"),
        Mark::ZoneValve => ("Zone valve", "Válvula de zona"),
        Mark::BalancingValve => ("Balancing valve", "Válvula de balanceo"),
        Mark::PurgeValve => ("Purge and drain valve", "Válvula de purga y drenaje"),
        Mark::MixingValve => ("Mixing valve on the return", "Válvula mezcladora en el retorno"),
        Mark::Bypass => ("Bypass with its valve", "Bypass con su válvula"),
        Mark::SupplyPipe => ("Supply pipe", "Tubo de suministro"),
        Mark::ReturnPipe => ("Return pipe", "Tubo de retorno"),
    })
}

pub fn elevation_title(room: &str, wall: &str) -> String {
    format!("{room}, {wall}")
}

/// What an elevation shows, for who cannot see it.
pub fn elevation_picture(
    length: &str,
    height: &str,
    windows: usize,
    doors: usize,
    pieces: &str,
) -> String {
    let count = |count: usize, one: &str| match count {
        1 => format!("1 {one}"),
        count => format!("{count} {one}s"),
    };
    let (windows, doors) = (count(windows, window_short()), count(doors, door_short()));
    say!(
        "Elevation seen from the room: wall {length} long and {height} high, {windows}, {doors}; \
         baseboard pieces from left to right: {pieces}.",
        "Vista desde la habitación: pared de {length} de largo y {height} de alto, {windows}, \
         {doors}; piezas de zócalo de izquierda a derecha: {pieces}."
    )
}

pub fn route_title(level: &str) -> String {
    say!("{level}, plan with the way of the water", "{level}, planta con el camino del agua")
}

pub fn route_picture(level: &str, rooms: &str) -> String {
    match rooms.is_empty() {
        true => say!(
            "{level}: plan of the rooms; no baseboard stands here.",
            "{level}: planta de las habitaciones; aquí no hay zócalo."
        ),
        false => say!(
            "{level}: plan of the rooms; the water passes {rooms}.",
            "{level}: planta de las habitaciones; el agua pasa por {rooms}."
        ),
    }
}

/// Two sides of a room.
pub fn by(length: &str, width: &str) -> String {
    format!("{length} × {width}")
}

/// The same on two lines.
pub fn by_lines(length: &str, width: &str) -> [String; 2] {
    [format!("{length} ×"), width.to_string()]
}

pub fn element_of(length: &str) -> String {
    say!("{length} element", "elemento {length}")
}

pub fn zone_line(letter: &str, name: &str, arrangement: &str) -> String {
    format!("{letter}: {name}, {arrangement}")
}

pub fn boiler_room_picture(parts: &[Mark]) -> String {
    let mut said = String::from(either((
        "Boiler-room piping in the order of the water: ",
        "Tubería del cuarto de caldera en el orden del agua: ",
    )));
    let mut first = true;
    for part in Mark::BOILER_ROOM.iter().filter(|part| parts.contains(part)) {
        if !first {
            said.push_str("; ");
        }
        first = false;
        said.push_str(mark(*part));
    }
    said.push('.');
    said
}

pub fn must_give(power: &str) -> String {
    say!("must give {power}", "debe dar {power}")
}

pub fn set_at(pressure: &str) -> String {
    say!("set to {pressure}", "ajustada a {pressure}")
}

pub fn tank_of(volume: &str, pre_charge: &str) -> String {
    say!("{volume}, pre-charge {pre_charge}", "{volume}, precarga {pre_charge}")
}

pub fn back_at_least(temperature: &str) -> String {
    say!("holds the return at {temperature} or above", "mantiene el retorno a {temperature} o más")
}

/// Of one circulator, or of the hardest of several.
pub fn flow_at(flow: &str, head: &str, several: bool) -> String {
    match several {
        true => say!("the hardest gives {flow} at {head}", "el más exigido da {flow} a {head}"),
        false => say!("{flow} at {head}", "{flow} a {head}"),
    }
}

/// The side that a wall faces by its name, if it says one, in whichever language. The front lies at
/// the foot of a plan, and is taken for the south.
pub fn side_said(name: &str) -> Option<Side> {
    let mut found = None;
    for word in name.split(|c: char| !c.is_alphabetic()) {
        let side = match word.to_lowercase().as_str() {
            "north" | "back" | "rear" => Side::Back,
            "norte" | "atrás" | "atras" | "trasera" | "trasero" | "fondo" => Side::Back,
            "east" | "right" | "este" | "oriente" | "derecha" | "derecho" => Side::Right,
            "south" | "front" | "street" => Side::Front,
            "sur" | "frente" | "delantera" | "delantero" | "calle" => Side::Front,
            "west" | "left" | "oeste" | "poniente" | "izquierda" | "izquierdo" => Side::Left,
            _ => continue,
        };
        // A name of two sides says neither.
        if found.is_some_and(|other| other != side) {
            return None;
        }
        found = Some(side);
    }
    found
}

// Fixed sentences of the drawings, each by its name.
sentences! { DRAWING_WORDS;
    drawings_note: "To scale, from the job as it stands. Each sheet prints on a page of its own.",
        "A escala, según el proyecto tal como está. Cada hoja se imprime en una página propia.";
    drawings_plans: "Plans", "Plantas";
    drawings_piping: "Piping", "Tubería";
    drawings_walls: "Walls, as seen from the room", "Paredes, vistas desde la habitación";
    schematic_title: "Piping schematic", "Esquema de tubería";
    schematic_note: "Not to scale but for the elements, which are as long as their feet. Supply \
                     is a whole line, return a broken one.",
                    "Sin escala, salvo los elementos, dibujados según su largo. El suministro \
                     es línea continua, el retorno línea cortada.";
    boiler_room_title: "Boiler-room piping", "Tubería del cuarto de caldera";
    boiler_room_note: "In the order of the water, not to scale. Numbers stand in the list below \
                       it. The circulator pumps away from the tank, so that it raises the \
                       pressure of the whole loop.",
                      "En el orden del agua, sin escala. Los números están en la lista de abajo. \
                       El circulador bombea alejándose del tanque, y así sube la presión de todo \
                       el circuito.";
    boiler_room_cautions: "The relief valve's pipe is full size, without a valve, down to near \
                           the floor. Gas, flue and mains are licensed work; the local code and \
                           the boiler's maker stand above this sheet.",
                          "El tubo de la válvula de alivio es de tamaño completo, sin válvula, y \
                           baja hasta cerca del piso. Gas, chimenea y red eléctrica son trabajo \
                           con licencia; el código local y el fabricante de la caldera están por \
                           encima de esta hoja.";
    tank_not_drawn: "The indirect tank's own circuit is not drawn.",
        "El circuito propio del tanque indirecto no está dibujado.";
    cold_water: "cold water in", "agua fría";
    door_short: "door", "puerta";
    window_short: "window", "ventana";
    elevation_note: "Wall, openings and pieces to scale; the baseboard is drawn higher than it \
                     is. Pieces stand in the middle of their stretch of wall. At which end the \
                     water enters is taken so that the way is short.",
                    "Pared, aberturas y piezas a escala; el zócalo está dibujado más alto de lo \
                     que es. Las piezas están en el medio de su tramo de pared. El extremo por \
                     donde entra el agua se toma de modo que el camino sea corto.";
    free_unplaced: "The free length of this wall was typed without its place: it is drawn from \
                    the left corner.",
                   "El largo libre de esta pared se escribió sin su lugar: está dibujado desde la \
                    esquina izquierda.";
    back_above_pieces: "The return runs back above the pieces, in the same enclosure.",
        "El retorno vuelve por encima de las piezas, en la misma carcasa.";
    ends_round_corner: "Round the corner the enclosure ends with a cap, where the pipe goes \
                        through the floor; that wall has no sheet.",
                       "A la vuelta de la esquina la carcasa termina con una tapa, donde el tubo \
                        atraviesa el piso; esa pared no tiene hoja.";
    route_note: "Rooms and pieces to scale. Walls stand where their names or the rooms behind \
                 them say, the front of the house at the foot, taken for the south. Pipe between \
                 baseboards is drawn from end to end: the job knows its length, not its place.",
                "Habitaciones y piezas a escala. Las paredes están donde lo dicen sus nombres o \
                 las habitaciones de atrás, con el frente de la casa abajo, tomado como el sur. \
                 El tubo entre zócalos está dibujado de extremo a extremo: el proyecto conoce su \
                 largo, no su lugar.";
    walls_unplaced: "Where a wall's place is not known, its pieces are drawn away from the walls. \
                     Name the wall by its side (north, back, left) to place it.",
                    "Donde no se conoce el lugar de una pared, sus piezas se dibujan lejos de las \
                     paredes. Nombre la pared por su lado (norte, atrás, izquierda) para ubicarla.";
}
