//! What a field's label leaves open.

use crate::language::either;
use crate::{control, in_units, plant, what_if};
use finrun_engine::job::{
    AirField, BillsField, CircuitField, ElementField, Field, GroundField, HouseField, OpeningField,
    PartField, RoomField, SurfaceField,
};

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
