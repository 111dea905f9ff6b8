//! Labels and hints of fields, and the names of the things they belong to.

use crate::choices::both_kinds;
use crate::in_units;
use crate::language::{Language, either, language, say};
use crate::{control, install, plant, shop, what_if};
use finrun_engine::building::{AssemblyId, OpeningId, RoomId, RoomUse, SurfaceId, SurfaceKind};
use finrun_engine::job::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, CircuitField, CutField, Draft,
    ElementField, Field, GroundField, HouseField, LayerField, LegField, OpeningField, PartField,
    PointField, PumpPointField, RoomField, SpotField, SurfaceField, ZoneField,
};
use finrun_engine::quantity::{System, Value, show};

/// A room's name, or its place on the loop while it has none; a space's name, or what it is.
pub fn room_name(draft: &Draft, id: RoomId) -> String {
    match draft.all_rooms().enumerate().find(|(_, room)| room.id == id) {
        Some((_, room)) if !room.name.trim().is_empty() => room.name.trim().to_string(),
        Some((_, space)) if space.used != RoomUse::Heated => {
            super::room_use(space.used).to_string()
        }
        Some((index, _)) => say!("Room {}", "Habitación {}"; index + 1),
        None => super::removed_room().to_string(),
    }
}

/// The name of an assembly of the user's own, or its place among them.
pub fn assembly_name(draft: &Draft, id: AssemblyId) -> String {
    match draft.assemblies.iter().enumerate().find(|(_, assembly)| assembly.id == id) {
        Some((_, assembly)) if !assembly.name.trim().is_empty() => assembly.name.trim().to_string(),
        Some((index, _)) => say!("Own assembly {}", "Construcción propia {}"; index + 1),
        None => super::removed_assembly().to_string(),
    }
}

/// A surface's name, such as "North wall" or "Wall 2".
pub fn surface_name(draft: &Draft, room: RoomId, id: SurfaceId) -> String {
    let Some(room) = draft.room(room) else { return String::new() };
    let Some(surface) = room.surfaces.iter().find(|surface| surface.id == id) else {
        return String::new();
    };
    let kind = super::surface_kind(surface.kind);
    let name = surface.name.trim();
    if !name.is_empty() {
        return named_surface(name, surface.kind);
    }
    let alike: Vec<_> = room.surfaces.iter().filter(|s| s.kind == surface.kind).collect();
    match alike.iter().position(|s| s.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// "South wall" for a wall named "south"; a name that says what it is, in whatever language, stays as
/// it is.
fn named_surface(name: &str, kind: SurfaceKind) -> String {
    let (english, spanish) = both_kinds(kind);
    let typed = name.to_ascii_lowercase();
    let says = |kind: &str| typed.contains(&kind.to_ascii_lowercase());
    match (says(english) || says(spanish), language()) {
        (true, _) => capital(name),
        (false, Language::English) => format!("{} {}", capital(name), english.to_ascii_lowercase()),
        (false, Language::Spanish) => format!("{spanish} {name}"),
    }
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase()).into_iter();
    first.chain(letters).collect()
}

/// An opening's name, such as "Window 2".
pub fn opening_name(draft: &Draft, room: RoomId, surface: SurfaceId, id: OpeningId) -> String {
    let Some(surface) = draft.surface(room, surface) else { return String::new() };
    let Some(opening) = surface.openings.iter().find(|opening| opening.id == id) else {
        return String::new();
    };
    let kind = super::opening_kind(opening.kind);
    let alike: Vec<_> = surface.openings.iter().filter(|o| o.kind == opening.kind).collect();
    match alike.iter().position(|o| o.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// The label over the box.
pub fn field_label(field: Field) -> &'static str {
    either(match field {
        Field::House(field) => match field {
            HouseField::Outdoors => (
                "Outdoor temperature on the design day",
                "Temperatura exterior en el día de diseño",
            ),
            HouseField::Indoors => ("Room temperature", "Temperatura de las habitaciones"),
            HouseField::Altitude => ("Height above sea level", "Altura sobre el nivel del mar"),
            HouseField::AirChanges => ("Air changes", "Cambios de aire"),
            HouseField::CeilingHeight => ("Usual ceiling height", "Altura de techo usual"),
            HouseField::MeanTemperature => {
                ("Mean outdoor temperature of the year", "Temperatura exterior media del año")
            }
            HouseField::ColdestMonth => (
                "Mean outdoor temperature of the coldest month",
                "Temperatura exterior media del mes más frío",
            ),
            HouseField::Wind => ("Mean wind in winter", "Viento medio en invierno"),
            HouseField::Margin => {
                ("Safety margin on every room", "Margen de seguridad en cada habitación")
            }
        },
        Field::Air(field) => match field {
            AirField::BlowerFlow => {
                ("Blower door, flow at 50 Pa", "Prueba de puerta sopladora, caudal a 50 Pa")
            }
            AirField::BlowerExponent => {
                ("Flow exponent of the test", "Exponente del caudal de la prueba")
            }
            AirField::LeakageArea => {
                ("Effective leakage area at 4 Pa", "Área de fuga efectiva a 4 Pa")
            }
            AirField::Supply => ("Fans bring in", "Aire que meten los ventiladores"),
            AirField::Exhaust => ("Fans blow out", "Aire que sacan los ventiladores"),
            AirField::Recovery => ("Heat recovered", "Calor recuperado"),
        },
        Field::Ground(field) => match field {
            GroundField::WallThickness => {
                ("Thickness of the foundation wall", "Grosor del muro de cimiento")
            }
            GroundField::EdgeDepth => (
                "Width or depth of the edge insulation",
                "Ancho o profundidad del aislamiento del borde",
            ),
            GroundField::EdgeR => {
                ("R-value of the edge insulation", "Valor R del aislamiento del borde")
            }
            GroundField::EdgeThickness => {
                ("Thickness of the edge insulation", "Grosor del aislamiento del borde")
            }
            GroundField::FFactor => ("F-factor", "Factor F"),
        },
        Field::Certainty(field) => match field {
            CertaintyField::Measured => ("What was measured", "Lo que se midió"),
            CertaintyField::Label => {
                ("What a label or data sheet says", "Lo que dice una etiqueta u hoja de datos")
            }
            CertaintyField::Listed => {
                ("What was picked from a list", "Lo que se eligió de una lista")
            }
            CertaintyField::Assumed => ("What was assumed", "Lo que se supuso"),
            CertaintyField::Air => ("Air leakage without a test", "Fugas de aire sin una prueba"),
            CertaintyField::Outdoors => {
                ("Design temperature of the place", "Temperatura de diseño del lugar")
            }
            CertaintyField::Soil => ("Conductivity of the soil", "Conductividad del suelo"),
        },
        Field::Assembly(_, AssemblyField::U) => ("U-value", "Valor U"),
        Field::Assembly(_, AssemblyField::R) => ("R-value", "Valor R"),
        Field::Layer(_, _, LayerField::Thickness) => ("Thickness", "Grosor"),
        Field::Layer(_, _, LayerField::R) => ("R-value of the layer", "Valor R de la capa"),
        Field::Bills(BillsField::Efficiency) => {
            ("Efficiency of the present heating", "Eficiencia de la calefacción actual")
        }
        Field::Bills(BillsField::Indoors) => {
            ("Indoor temperature in those months", "Temperatura interior en esos meses")
        }
        Field::Bills(BillsField::Price) => control::FUEL_PRICE,
        Field::Bill(_, field) => match field {
            BillField::From => ("From", "Desde"),
            BillField::To => ("To", "Hasta"),
            BillField::Amount => ("Amount", "Cantidad"),
            BillField::DegreeDays => (
                "Degree days, base 65 °F, if the bill has them",
                "Grados-día, base 65 °F, si la factura los trae",
            ),
        },
        Field::Element(field) => match field {
            ElementField::Output => ("Rated output", "Potencia nominal"),
            ElementField::Water => (
                "Rated at an average water temperature of",
                "Medida con agua a una temperatura media de",
            ),
            ElementField::Air => ("Rated with entering air of", "Medida con aire de entrada a"),
            ElementField::Exponent => ("Exponent", "Exponente"),
            ElementField::RatingFlow => ("Rated at a flow of", "Medida con un caudal de"),
            ElementField::Derate => {
                ("Share of the rating that counts", "Parte de la potencia nominal que cuenta")
            }
            ElementField::BarePerPiece => {
                ("Tube without fins on each piece", "Tubo sin aletas en cada pieza")
            }
            ElementField::EndAllowance => (
                "Wall taken by end caps and fittings, each run",
                "Pared que ocupan tapas y conexiones, por tramo",
            ),
        },
        Field::Point(_, PointField::Water) => ("Water", "Agua"),
        Field::Point(_, PointField::Output) => ("Output", "Potencia"),
        Field::Stock => ("Stock lengths", "Largos en venta"),
        Field::Circuit(field) => match field {
            CircuitField::Supply => {
                ("Supply water from the boiler", "Agua de suministro de la caldera")
            }
            CircuitField::BoilerLimit => {
                ("Boiler's highest water temperature", "Temperatura máxima del agua de la caldera")
            }
            CircuitField::Drop => ("Temperature drop to plan for", "Caída de temperatura prevista"),
            CircuitField::Flow => ("Flow", "Caudal"),
            CircuitField::PipeSurroundings => {
                ("Air around the pipes", "Aire alrededor de las tuberías")
            }
            CircuitField::PipeFilm => (
                "Heat passed by a bare pipe's surface",
                "Calor que pasa por la superficie de un tubo desnudo",
            ),
            CircuitField::ReturnPipe => (
                "Pipe from the last room to the boiler",
                "Tubería de la última habitación a la caldera",
            ),
            CircuitField::ReturnElbows => ("Elbows on it", "Codos en ella"),
            CircuitField::BoilerElbows => {
                ("Elbows in the boiler room", "Codos en el cuarto de caldera")
            }
            CircuitField::BoilerTees => (
                "Tees, straight through, in the boiler room",
                "Tes, de paso recto, en el cuarto de caldera",
            ),
            CircuitField::BoilerValves => {
                ("Ball valves in the boiler room", "Válvulas de bola en el cuarto de caldera")
            }
            CircuitField::EquipmentHead => {
                ("Head lost in boiler and equipment", "Altura perdida en caldera y equipo")
            }
        },
        Field::Stocked(_, field) => return shop::stock_label(field),
        Field::Price(field) => return shop::price_label(field),
        Field::SizedPrice(_, field) => return shop::price_label(field.for_any_size()),
        Field::Spare(group) => return shop::group(group),
        Field::Cut(CutField::Kerf) => {
            ("What a saw cut takes", "Lo que se lleva un corte de sierra")
        }
        Field::Part(field) => match field {
            PartField::ZoneValveCv => (
                "Flow coefficient (Cv) of a zone valve",
                "Coeficiente de caudal (Cv) de una válvula de zona",
            ),
            PartField::FlowCheckCv => (
                "Flow coefficient (Cv) of a flow check",
                "Coeficiente de caudal (Cv) de una válvula de retención",
            ),
            PartField::BalancingCv => (
                "Flow coefficient (Cv) of a balancing valve, open",
                "Coeficiente de caudal (Cv) de una válvula de balanceo, abierta",
            ),
            PartField::DiverterK => (
                "Loss coefficient K of a diverter tee, along the main",
                "Coeficiente de pérdida K de una te desviadora, por la principal",
            ),
            PartField::PumpEfficiency => (
                "Share of the circulator's power that moves water",
                "Parte de la potencia del circulador que mueve agua",
            ),
            PartField::InsulationThickness => {
                ("Thickness of the pipe insulation", "Grosor del aislamiento de la tubería")
            }
        },
        Field::Plant(field) => return plant::label(field),
        Field::Control(field) => control::control_label(field),
        Field::Zone(_, ZoneField::Trunk) => ("Trunk, one way", "Troncal, un sentido"),
        Field::Zone(_, ZoneField::TrunkElbows) => {
            ("Elbows on it, one way", "Codos en ella, un sentido")
        }
        Field::Zone(_, ZoneField::Wire) => {
            ("Thermostat wire, one way", "Cable de termostato, un sentido")
        }
        Field::PumpPoint(_, PumpPointField::Flow) => ("Flow", "Caudal"),
        Field::PumpPoint(_, PumpPointField::Head) => ("Head", "Altura"),
        Field::Leg(_, _, LegField::Length) => ("Pipe on this step", "Tubería en este paso"),
        Field::Room(_, field) => match field {
            RoomField::FloorLength => ("Floor, length", "Piso, largo"),
            RoomField::FloorWidth => ("Floor, width", "Piso, ancho"),
            RoomField::CutLength => ("Cut out of a corner, length", "Corte en una esquina, largo"),
            RoomField::CutWidth => ("Cut out of a corner, width", "Corte en una esquina, ancho"),
            RoomField::FloorArea => {
                ("Floor area, if it has another shape", "Área del piso, si tiene otra forma")
            }
            RoomField::Height => ("Ceiling height", "Altura del techo"),
            RoomField::Temperature => {
                ("Temperature of this room", "Temperatura de esta habitación")
            }
            RoomField::AirChanges => {
                ("Air changes of this room", "Cambios de aire de esta habitación")
            }
            RoomField::PipeTo => (
                "Pipe from the room before, or the boiler",
                "Tubería desde la habitación anterior, o la caldera",
            ),
            RoomField::Elbows => ("Elbows on it", "Codos en ella"),
            RoomField::PipeBack => {
                ("Pipe back from this room", "Tubería de vuelta desde esta habitación")
            }
            RoomField::ElbowsBack => ("Elbows on the way back", "Codos en la vuelta"),
            RoomField::BranchPipe => {
                ("Branch pipe, there and back together", "Tubería del ramal, ida y vuelta juntas")
            }
            RoomField::BranchElbows => ("Elbows on the branch", "Codos en el ramal"),
            RoomField::TeeSpacing => ("Main between its two tees", "Principal entre sus dos tes"),
            RoomField::FromLeft => {
                ("On the plan, from the left", "En el plano, desde la izquierda")
            }
            RoomField::FromFront => ("On the plan, from the front", "En el plano, desde el frente"),
            RoomField::Damper => control::DAMPER,
            RoomField::VentArea => {
                ("Net free area of all vents", "Área libre neta de todas las rejillas")
            }
            RoomField::OtherHeat => {
                ("Other heat on the design day", "Otro calor en el día de diseño")
            }
        },
        Field::Surface(_, _, field) => match field {
            SurfaceField::Length => ("Length", "Largo"),
            SurfaceField::Height => ("Height", "Altura"),
            SurfaceField::Area => ("Area", "Área"),
            SurfaceField::Behind => ("Behind it", "Al otro lado"),
            SurfaceField::BehindTemperature => {
                ("Temperature behind it", "Temperatura al otro lado")
            }
            SurfaceField::Depth => {
                ("Depth below the ground outside", "Profundidad bajo el suelo de afuera")
            }
            SurfaceField::Perimeter => {
                ("Edge along outside walls", "Borde a lo largo de paredes exteriores")
            }
            SurfaceField::U => ("U-value", "Valor U"),
            SurfaceField::R => ("R-value", "Valor R"),
            SurfaceField::Free => ("Free for baseboard", "Libre para zócalo"),
            SurfaceField::Fixed => ("Pieces that stay", "Piezas que se quedan"),
        },
        Field::Opening(_, _, _, field) => match field {
            OpeningField::Width => ("Width", "Ancho"),
            OpeningField::Height => ("Height", "Altura"),
            OpeningField::FromLeft => ("From the left corner", "Desde la esquina izquierda"),
            OpeningField::U => ("U-value", "Valor U"),
            OpeningField::R => ("R-value", "Valor R"),
        },
        Field::Measured(field) => return install::measured_label(field),
        Field::Spot(_, field) => return install::spot_label(field),
        Field::Change(_, field) => what_if::change_label(field),
    })
}

/// What the label leaves open, in one line; empty for most.
pub fn field_note(field: Field) -> String {
    in_units(either(match field {
        Field::House(HouseField::Outdoors) => (
            "The temperature that 99 % of hours stay above. Your building department knows it.",
            "La temperatura que se supera en el 99 % de las horas. Su departamento de construcción \
             la conoce.",
        ),
        Field::House(HouseField::AirChanges) => (
            "Follows from the choice above; type to overrule.",
            "Sale de lo elegido arriba; escriba otro valor para cambiarlo.",
        ),
        Field::House(HouseField::MeanTemperature | HouseField::ColdestMonth) => {
            ("Counts for what touches the ground.", "Cuenta para lo que toca el suelo.")
        }
        Field::House(HouseField::Wind) => (
            "At a weather station: in the open, 33 ft (10 m) above the ground.",
            "En una estación meteorológica: en campo abierto, a 33 pies (10 m) del suelo.",
        ),
        Field::House(HouseField::Margin) => (
            "Nothing is added in secret. Loads by this method need no margin: 0 is right unless \
             you have a reason.",
            "Nada se agrega en secreto. Las cargas de este método no necesitan margen: 0 es lo \
             correcto, salvo que usted tenga una razón.",
        ),
        Field::Air(AirField::BlowerFlow) => {
            ("CFM50 on the tester's report.", "CFM50 en el informe de quien hizo la prueba.")
        }
        Field::Air(AirField::LeakageArea) => (
            "Of all gaps together. Blank: what is usual for the floor area.",
            "De todas las rendijas juntas. En blanco: lo usual para el área del piso.",
        ),
        Field::Air(AirField::Recovery) => (
            "By a heat-recovery unit; counts for air that comes in and goes out through it.",
            "Con una unidad de recuperación de calor; cuenta para el aire que entra y sale por \
             ella.",
        ),
        Field::Ground(GroundField::FFactor) => (
            "Heat through each foot of a slab's edge; follows from the choice above.",
            "Calor por cada pie del borde de una losa; sale de lo elegido arriba.",
        ),
        Field::Certainty(_) => (
            "Four in five lie no farther off than this, up or down.",
            "Cuatro de cada cinco no se apartan más que esto, hacia arriba o hacia abajo.",
        ),
        Field::Assembly(..) => (
            "Of the whole assembly, air films included; wins over the layers.",
            "De la construcción entera, con películas de aire; vale más que las capas.",
        ),
        Field::Bills(BillsField::Efficiency) => (
            "Heat that reaches the house, of the heat in the fuel, over a whole season.",
            "Calor que llega a la casa, del calor del combustible, en toda una temporada.",
        ),
        Field::Bills(BillsField::Price) => control::FUEL_PRICE_NOTE,
        Field::Control(field) => control::control_note(field),
        Field::Change(_, field) => what_if::change_note(field),
        Field::Room(_, RoomField::Damper) => control::DAMPER_NOTE,
        Field::Room(_, RoomField::AirChanges) => (
            "A heated room takes its share of the house's air, and at least this. An unheated \
             space takes this.",
            "Una habitación con calefacción toma su parte del aire de la casa, y por lo menos \
             esto. Un espacio sin calefacción toma esto.",
        ),
        Field::Room(_, RoomField::Temperature) => (
            "Blank: that of the house. An unheated space finds its own.",
            "En blanco: la de la casa. Un espacio sin calefacción halla la suya.",
        ),
        Field::Room(_, RoomField::FromLeft | RoomField::FromFront) => (
            "From the corner of the house. Blank: beside the other rooms.",
            "Desde la esquina de la casa. En blanco: junto a las otras habitaciones.",
        ),
        Field::Surface(_, _, SurfaceField::Depth) => (
            "Of the floor, or of the wall's foot; 0 for a slab on the ground.",
            "Del piso, o del pie de la pared; 0 para una losa sobre el suelo.",
        ),
        Field::Surface(_, _, SurfaceField::Perimeter) => (
            "Blank: the length of this room's outside walls.",
            "En blanco: el largo de las paredes exteriores de esta habitación.",
        ),
        Field::Element(ElementField::Output) => {
            ("Per foot or metre of finned length.", "Por pie o metro de largo con aletas.")
        }
        Field::Element(ElementField::Air) => (
            "Of the rating. Each room's own air is taken at its temperature; cooler air along the \
             floor would give up to 14 % more, and is not assumed.",
            "De la potencia nominal. El aire de cada habitación se toma a su temperatura; el aire \
             más frío junto al piso daría hasta 14 % más, y no se supone.",
        ),
        Field::Element(ElementField::Exponent) => {
            ("1.3 to 1.45 for most fin-tube.", "De 1.3 a 1.45 para la mayoría de los zócalos.")
        }
        Field::Element(ElementField::RatingFlow) => {
            ("Ratings are printed at 1 or 4 gpm.", "Las potencias se publican a 1 o 4 gpm.")
        }
        Field::Element(ElementField::Derate) => (
            "Less than 100 % for altitude, a damper, carpet under the inlet: your judgement.",
            "Menos de 100 % por altura del lugar, compuerta o alfombra bajo la entrada de aire: a \
             su criterio.",
        ),
        Field::Circuit(CircuitField::EquipmentHead) => (
            "Boiler, air eliminator, flow check: from their data sheets.",
            "Caldera, eliminador de aire, válvula de retención: de sus hojas de datos.",
        ),
        Field::Plant(field) => return in_units(plant::note(field)),
        Field::Part(PartField::DiverterK) => (
            "What drives the branch. Makers print it, or a Cv; 6 is a judgement.",
            "Lo que empuja el ramal. Los fabricantes lo publican, o un Cv; 6 es criterio propio.",
        ),
        Field::Part(PartField::PumpEfficiency) => (
            "Small circulators turn 15 to 40 % of their power into moving water.",
            "Los circuladores pequeños convierten de 15 a 40 % de su potencia en agua que se mueve.",
        ),
        Field::Room(_, RoomField::PipeBack) => (
            "Counts for the last room of a loop, for a return main and for a home run.",
            "Cuenta para la última habitación de un circuito, para una principal de retorno y para \
             una línea directa.",
        ),
        Field::Surface(_, _, SurfaceField::U | SurfaceField::R)
        | Field::Opening(_, _, _, OpeningField::U | OpeningField::R) => (
            "Of the whole assembly, air films included.",
            "De la construcción entera, con películas de aire.",
        ),
        Field::Surface(_, _, SurfaceField::Free) => (
            "Along the floor, in one stretch; 0 for none. Blank: all but the doors.",
            "A lo largo del piso, en un solo tramo; 0 si no hay. En blanco: todo menos las puertas.",
        ),
        Field::Room(_, RoomField::OtherHeat) => (
            "From a stove or another emitter that runs whenever it is cold; the baseboard is sized \
             for the rest.",
            "De una estufa u otro calefactor que funciona siempre que hace frío; el zócalo se \
             calcula para el resto.",
        ),
        Field::Opening(_, _, _, OpeningField::FromLeft) => {
            ("As you stand in the room.", "Visto desde adentro de la habitación.")
        }
        _ => ("", ""),
    }))
}

/// Which thing a field belongs to, for an error summary: "Kitchen, north wall, window".
pub fn field_owner(draft: &Draft, field: Field) -> String {
    match field {
        Field::House(_) => either(("House", "Casa")).to_string(),
        Field::Air(_) => either(("Air", "Aire")).to_string(),
        Field::Ground(_) => either(("Ground", "Suelo")).to_string(),
        Field::Certainty(_) => either(("How sure", "Qué tan seguro")).to_string(),
        Field::Assembly(id, _) => assembly_name(draft, id),
        Field::Layer(id, row, _) => say!(
            "{}, layer {}",
            "{}, capa {}";
            assembly_name(draft, id), row + 1
        ),
        Field::Bills(_) => either(("Fuel bills", "Facturas de combustible")).to_string(),
        Field::Bill(id, _) => {
            let index = draft.bills.list.iter().position(|bill| bill.id == id).unwrap_or(0);
            super::bill_name(index)
        }
        Field::Element(_) | Field::Stock => either(("Element", "Elemento")).to_string(),
        Field::Stocked(feet, _) => say!("{feet} ft piece", "Pieza de {feet} pies"),
        Field::Price(_) => either(("Prices", "Precios")).to_string(),
        Field::SizedPrice(tube, _) => say!("Prices, {}", "Precios, {}"; super::tube(tube)),
        Field::Spare(_) => either(("To spare", "De reserva")).to_string(),
        Field::Cut(_) => either(("Cutting", "Corte")).to_string(),
        Field::Point(row, _) => say!(
            "Maker's table, row {}",
            "Tabla del fabricante, renglón {}";
            row + 1
        ),
        Field::Circuit(_) => either(("Loop", "Circuito")).to_string(),
        Field::Part(_) => either(("Valves and tees", "Válvulas y tes")).to_string(),
        Field::Plant(_) => either(("Boiler and fill", "Caldera y llenado")).to_string(),
        Field::Control(_) => either(control::SETBACK).to_string(),
        Field::Zone(zone, _) => super::zone_name(draft, zone),
        Field::PumpPoint(row, _) => say!(
            "Circulator's curve, point {}",
            "Curva del circulador, punto {}";
            row + 1
        ),
        Field::Leg(room, row, _) => say!(
            "{}, step {}",
            "{}, paso {}";
            room_name(draft, room), row + 1
        ),
        Field::Room(room, _) => room_name(draft, room),
        Field::Measured(_) => either(("Readings", "Lecturas")).to_string(),
        Field::Spot(room, SpotField::Air | SpotField::WaterIn | SpotField::WaterOut) => {
            room_name(draft, room)
        }
        Field::Spot(room, _) => install::circuit_at(draft, room),
        Field::Change(id, _) => what_if::change_name(draft, id),
        Field::Surface(room, surface, _) => {
            format!("{}, {}", room_name(draft, room), surface_name(draft, room, surface))
        }
        Field::Opening(room, surface, opening, _) => format!(
            "{}, {}, {}",
            room_name(draft, room),
            surface_name(draft, room, surface),
            opening_name(draft, room, surface, opening)
        ),
    }
}

/// The range that a field takes.
pub fn bounds_hint(field: Field, system: System) -> String {
    let spec = field.spec();
    let at = |si| limit(Value::new(spec.kind, si), system);
    say!("{} to {}", "de {} a {}"; at(spec.least), at(spec.most))
}

/// A bound, which is a round number in one system at least: without zeros that say nothing.
pub(crate) fn limit(value: Value, system: System) -> String {
    let mut shown = show(value, system);
    if shown.number.contains('.') {
        shown.number = shown.number.trim_end_matches('0').trim_end_matches('.').to_string();
    }
    crate::unbroken(&shown)
}
