//! Labels of fields, and the range that each takes. What a label leaves open is in `note`, what a
//! field belongs to in `names`.

mod names;
mod note;

pub use names::{assembly_name, field_owner, opening_name, room_name, surface_name};
pub use note::field_note;

use crate::language::{either, say};
use crate::{commission, control, plant, shop, what_if};
use finrun_engine::job::{
    AirField, AssemblyField, BillField, BillsField, CertaintyField, CircuitField, CutField,
    ElementField, Field, GroundField, HouseField, LayerField, LegField, OpeningField, PartField,
    PointField, PumpPointField, RoomField, SurfaceField, ZoneField,
};
use finrun_engine::quantity::{System, Value, show};

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
        Field::Measured(field) => return commission::measured_label(field),
        Field::Spot(_, field) => return commission::spot_label(field),
        Field::Change(_, field) => what_if::change_label(field),
    })
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
