//! Words of the report: its parts, where numbers come from, and what was assumed. By which methods a
//! job was worked out is in `methods`.

mod methods;

pub use methods::methods;

use crate::language::{either, say, sentences};
use crate::{field_label, field_owner, in_units};
use finrun_engine::job::{
    CircuitField, Draft, Field, InputOrigin, OpeningField, RoomField, ZoneField,
};
use finrun_engine::quantity::{System, Unit, Value};
use finrun_engine::trace::Topic;

/// Where a number comes from: its letter, which stands behind it in a table of many, and in a word.
pub fn input_origin(origin: InputOrigin) -> (&'static str, &'static str) {
    let (letter, word) = match origin {
        InputOrigin::Measured => (("m", "m"), ("measured", "medido")),
        InputOrigin::Label => (("l", "e"), ("label", "etiqueta")),
        InputOrigin::Given => (("g", "d"), ("given", "dado")),
        InputOrigin::Table => (("t", "t"), ("table", "tabla")),
        InputOrigin::Worked => (("w", "c"), ("worked out", "calculado")),
        InputOrigin::Assumed => (("a", "s"), ("assumed", "supuesto")),
    };
    (either(letter), either(word))
}

/// A number with the letter of where it comes from.
pub fn with_origin(shown: &str, origin: InputOrigin) -> String {
    format!("{shown}\u{a0}({})", input_origin(origin).0)
}

/// What made the report: the program, and the versions of what it reads.
pub fn made_by(program: &str, file: u32, climate: &str) -> String {
    say!(
        "Finrun {program}, job file version {file}, climate table {climate}",
        "Finrun {program}, archivo de proyecto versión {file}, tabla de clima {climate}"
    )
}

/// Of the whole report, or of the short form.
pub fn report_title(job: &str) -> String {
    say!("Baseboard heating: {job}", "Calefacción por zócalo: {job}")
}

/// A label where the field before it does not stand beside it.
pub fn whole_label(field: Field) -> &'static str {
    match field {
        Field::Room(_, RoomField::FloorArea) => either(("Floor area", "Área del piso")),
        Field::Room(_, RoomField::Elbows) => {
            either(("Elbows on the pipe to it", "Codos en el tubo que llega"))
        }
        Field::Room(_, RoomField::AirChanges) => {
            either(("Air changes at least", "Cambios de aire, mínimo"))
        }
        Field::Room(_, RoomField::Temperature) => either(("Temperature", "Temperatura")),
        Field::Room(_, RoomField::OtherHeat) => either(("Other heat", "Otro calor")),
        Field::Circuit(CircuitField::ReturnElbows) => {
            either(("Elbows on the pipe to the boiler", "Codos en el tubo a la caldera"))
        }
        Field::Zone(_, ZoneField::TrunkElbows) => {
            either(("Elbows on the trunk, one way", "Codos en la troncal, un sentido"))
        }
        _ => field_label(field),
    }
}

/// A field with what it belongs to.
pub fn owned_label(draft: &Draft, field: Field) -> String {
    format!("{}: {}", field_owner(draft, field), whole_label(field))
}

/// One default that stands for blanks, and where.
pub fn assumption(label: &str, shown: &str, places: &[String]) -> String {
    let what = match shown.is_empty() {
        true => label.to_string(),
        false => format!("{label}: {shown}"),
    };
    match places.is_empty() {
        true => format!("{what}."),
        false => format!("{what} ({}).", places.join(", ")),
    }
}

/// Several of the same in one room.
pub fn times_in(count: usize, room: &str) -> String {
    match count {
        1 => room.to_string(),
        count => say!("{count} in {room}", "{count} en {room}"),
    }
}

/// A blank of a kind whose numbers differ from place to place.
pub fn without_number(field: Field) -> Option<&'static str> {
    match field {
        Field::Opening(_, _, _, OpeningField::FromLeft) => Some(either((
            "Windows and doors without a place stand evenly along their walls",
            "Las ventanas y puertas sin lugar indicado se reparten por igual a lo largo de su \
             pared",
        ))),
        _ => None,
    }
}

/// What a working leads to, for its heading; rooms and stretches by name.
pub fn worked_title(topic: Topic, name: &str) -> String {
    match topic {
        Topic::HouseLoad => either(("The house's load", "Carga de la casa")).to_string(),
        Topic::RoomLoad(_) => say!("Load of {name}", "Carga de {name}"),
        Topic::PathLoss(..) => say!("Heat through: {name}", "Calor a través de: {name}"),
        Topic::SpaceTemperature(_) => say!("Temperature of {name}", "Temperatura de {name}"),
        Topic::HouseAir => {
            either(("Air through the house", "Aire a través de la casa")).to_string()
        }
        Topic::Band => either(("How sure the load is", "Qué tan segura es la carga")).to_string(),
        Topic::ListedU(_) => say!("U of “{name}”", "U de «{name}»"),
        Topic::PerArea(_) => {
            say!("Load on each part of the floor, {name}", "Carga por cada parte del piso, {name}")
        }
        Topic::Needed(_) => {
            say!("Finned length needed, {name}", "Largo con aletas necesario, {name}")
        }
        Topic::Output(_) => say!(
            "Element's output and the water that leaves it, {name}",
            "Potencia del elemento y agua que sale de él, {name}"
        ),
        Topic::Over(_) => {
            say!("Output beside the load, {name}", "Potencia frente a la carga, {name}")
        }
        Topic::Pieces(_) => say!("Pieces, {name}", "Piezas, {name}"),
        Topic::Element => {
            either(("Element in all rooms", "Elemento en todas las habitaciones")).to_string()
        }
        Topic::RuleOfThumb(_) => say!("Rule of thumb, {name}", "Regla práctica, {name}"),
        Topic::Flow => either(("Flow", "Caudal")).to_string(),
        Topic::Pipe(_) => crate::water_after(name),
        Topic::Drop => either(("Temperature drop", "Caída de temperatura")).to_string(),
        Topic::Velocity => either(("Fastest water", "El agua más rápida")).to_string(),
        Topic::Pressure(_) => crate::pressure_lost(name),
        Topic::Head => {
            either(("Head for the circulator", "Altura de bombeo del circulador")).to_string()
        }
        Topic::BoilerHeat => {
            either(("What the boiler puts back", "Lo que la caldera repone")).to_string()
        }
        Topic::NeededOutput => {
            either(("What the boiler must give", "Lo que la caldera debe dar")).to_string()
        }
        Topic::SystemVolume => {
            either(("Liquid in the system", "Líquido en el sistema")).to_string()
        }
        Topic::TankSize => {
            either(("Least expansion tank", "Tanque de expansión mínimo")).to_string()
        }
        Topic::FillPressure => {
            either(("Fill pressure, cold", "Presión de llenado, en frío")).to_string()
        }
    }
}

/// Rooms that are not in any number of the report.
pub fn left_out(rooms: &[String]) -> String {
    say!(
        "Not complete, and in no number of this report: {}.",
        "Incompletas, y en ningún número de este informe: {}.";
        rooms.join(", ")
    )
}

/// So many pieces of one length.
pub fn pieces_of(count: usize, length: &str) -> String {
    format!("{count}\u{a0}×\u{a0}{length}")
}

/// The pieces on one wall.
pub fn on_wall(wall: &str, pieces: &str) -> String {
    format!("{wall}: {pieces}")
}

/// From the temperature that enters to the one that leaves.
pub fn from_into(enters: &str, leaves: &str) -> String {
    format!("{enters} → {leaves}")
}

/// A label, and which kind of thing it is about.
pub fn of_kind(label: &str, kind: &str) -> String {
    format!("{label}, {}", kind.to_lowercase())
}

/// An opening below the surface that it is in.
pub fn inside_of(opening: &str) -> String {
    format!("– {opening}")
}

/// A height above the sea and its like, which are nothing to say in inches.
pub fn rough_length(length: Value, system: System) -> String {
    let (unit, name) = match system {
        System::Us => (Unit::Foot, "ft"),
        System::Si => (Unit::Metre, "m"),
    };
    in_units(&format!("{:.0}\u{a0}{name}", unit.from_si(length.si)))
}

/// Stock lengths, in whole feet.
pub fn stock_feet(lengths: &str) -> String {
    say!("{lengths} ft", "{lengths} pies")
}

/// A check with how grave it is.
pub fn check_headed(severity: &str, title: &str) -> String {
    format!("{title} ({severity})")
}

/// What would mend a finding.
pub fn ways_out(ways: &[String]) -> String {
    format!("{}: {}.", crate::remedies(), ways.join("; "))
}

/// Checks that hold, beside those that do not.
pub fn checks_hold_beside(count: usize) -> String {
    format!("{}.", crate::checks_hold(count))
}

/// Something chosen or measured with its name.
pub fn named(name: &str, what: &str) -> String {
    format!("{name} {what}")
}

// Fixed sentences of the report, each by its name.
sentences! { REPORT_WORDS;
    section_report: "Report", "Informe";
    report_note: "For paper or a PDF: press Print, and choose a printer or “Save as PDF”. The \
                  short form holds on two pages what is needed on site.",
                 "Para papel o PDF: pulse Imprimir y elija una impresora o «Guardar como PDF». La \
                  forma corta tiene en dos páginas lo que hace falta en la obra.";
    report_fact: "To print or save, whole or in short",
        "Para imprimir o guardar, completo o en corto";
    report_form: "What to print", "Qué imprimir";
    report_full: "Full report", "Informe completo";
    report_short: "Short form", "Forma corta";
    report_paper: "Paper", "Papel";
    paper_letter: "Letter, 8 1/2 by 11 in", "Carta, 8 1/2 por 11 pulg";
    paper_a4: "A4, 210 by 297 mm", "A4, 210 por 297 mm";

    for_the_van: "Short form, for the site", "Forma corta, para la obra";
    title_place: "Place", "Lugar";
    title_date: "Date", "Fecha";
    title_made: "Made by", "Hecho con";
    prepared_by: "Prepared by", "Preparado por";
    checked_by: "Checked by, date", "Revisado por, fecha";

    report_results: "Results", "Resultados";
    results_rooms: "Rooms, in the order of the water", "Habitaciones, en el orden del agua";
    results_system: "Water, boiler and fill", "Agua, caldera y llenado";
    results_circuits: "Circuits", "Circuitos";
    report_inputs: "Inputs", "Datos";
    report_inputs_note: "What is behind each number in brackets tells where it comes from: m \
                         measured or counted, l from a label or data sheet, g given as wanted or \
                         known, t from a table or list, w worked out from other numbers, a \
                         assumed for a blank.",
                        "La letra entre paréntesis tras cada número dice de dónde viene: m medido \
                         o contado, e de una etiqueta u hoja de datos, d dado por deseado o \
                         conocido, t de una tabla o lista, c calculado a partir de otros números, \
                         s supuesto donde quedó en blanco.";
    inputs_house: "House and climate", "Casa y clima";
    inputs_air: "Air", "Aire";
    inputs_ground: "Ground", "Suelo";
    inputs_element: "Element and pieces", "Elemento y piezas";
    inputs_water: "Water, pipes and boiler", "Agua, tubos y caldera";
    inputs_ranges: "How far off each kind of input may be", "Cuánto puede errar cada clase de dato";
    inputs_built: "What is built like what", "Qué está construido como qué";
    inputs_rooms: "Rooms and spaces", "Habitaciones y espacios";
    report_assumptions: "Assumptions", "Supuestos";
    assumptions_note: "First the methods, then what stands for a blank. A measured number in \
                       place of a default makes the plan surer.",
                      "Primero los métodos, luego lo que se toma donde quedó en blanco. Un número \
                       medido en lugar de uno supuesto hace más seguro el plan.";
    report_worked: "Calculations", "Cálculos";
    worked_note: "One whole working of each kind, with its numbers and its source; tables have \
                  the same for every room and every stretch.",
                 "Un cálculo entero de cada clase, con sus números y su fuente; las tablas tienen \
                  lo mismo para cada habitación y cada trecho de tubo.";
    worked_rooms: "Heat loss of each room, by part",
        "Pérdida de calor de cada habitación, por parte";
    worked_paths: "Heat loss, path by path", "Pérdida de calor, paso por paso";
    worked_elements: "Elements", "Elementos";
    worked_stretches: "Stretches of pipe, in the order of the water",
        "Trechos de tubo, en el orden del agua";
    report_drawings: "Drawings", "Dibujos";
    report_checks: "Checks outstanding", "Comprobaciones pendientes";
    no_checks: "Nothing is outstanding.", "No hay nada pendiente.";
    report_limits: "Limits and cautions", "Límites y precauciones";
    limits_methods: "What the numbers rest on", "En qué se basan los números";

    column_element: "Element", "Elemento";
    column_needs: "Needs", "Necesita";
    column_water: "Water", "Agua";
    column_u: "U", "U";
    column_input_of: "Result", "Resultado";
    of_mains: "from the mains", "de la red";
    tube_and_pieces: "Tube and pieces", "Tubo y piezas";
    column_what: "What", "Qué";
    all_pieces: "All pieces", "Todas las piezas";
    report_supply: "Supply water", "Agua de suministro";
    column_input: "Input", "Dato";
    column_value: "Value", "Valor";
    column_origin: "Origin", "Origen";
    column_picked: "picked", "elegido";
    column_total: "Total", "Total";
    column_gives: "Gives", "Da";
    column_beside: "Over, or short", "De más o de menos";
    column_short: "short", "falta";
    column_pieces: "Pieces", "Piezas";
    column_area: "Area", "Área";
    column_height: "Height", "Altura";
    column_wide: "Length, width", "Largo, ancho";
    column_built: "Built like", "Construido como";
    column_behind: "Behind it, and more", "Qué hay detrás, y más";
    column_difference: "Inside, beyond", "Adentro, detrás";
    column_finned: "Finned", "Con aletas";
    column_nominal: "Nominal", "Nominal";
    column_needed: "Needed", "Necesario";
    column_wall: "Wall and pieces", "Pared y piezas";
    column_assembly: "Assembly", "Construcción";
    column_source: "U, R and where they come from", "U, R y de dónde vienen";
    column_reynolds: "Re", "Re";
    column_factor: "f", "f";
    column_lost: "Lost", "Perdido";
    column_setting: "Valve, Cv", "Válvula, Cv";
    short_caution: "In short; the whole stands under Safety and in the full report. Local codes, \
                    permits and the makers' instructions come first.",
                   "En resumen; todo está en Seguridad y en el informe completo. Primero van los \
                    códigos locales, los permisos y las instrucciones de los fabricantes.";
    pre_charge: "Tank's air, before filling", "Aire del tanque, antes de llenar";
    tank_usual: "Next usual tank", "Tanque usual siguiente";
    hot_gauge: "Gauge, hot", "Manómetro, en caliente";
    relief_at: "Relief valve set to", "Válvula de alivio ajustada a";
}
