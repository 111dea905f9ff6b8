//! Labels of lists to choose from, and the names of what is on them.

use super::{
    air_class, assembly_name, behind, control, existing, flow_basis, framing, material, open_flue,
    piping, plant, position, shelter, shop, storeys, tube, u_value_basis, what_if,
};
use crate::in_units;
use crate::language::either;
use finrun_engine::bills::Fuel;
use finrun_engine::building::{Level, Place, RoomUse, SlabEdge, Soil};
use finrun_engine::job::{
    AirBasis, Choice, DesignHours, Draft, EdgeBasis, GroundMethod, LayerMaterial, Pick, Shape,
    UValue,
};

/// The label over the list.
pub fn choice_label(choice: Choice) -> &'static str {
    either(match choice {
        Choice::DesignHours => ("Design temperature", "Temperatura de diseño"),
        Choice::AirClass => ("How tight is the house?", "¿Qué tan hermética es la casa?"),
        Choice::AirBasis => ("What do you know of its leaks?", "¿Qué sabe de sus fugas de aire?"),
        Choice::Storeys => ("Storeys above the ground", "Pisos sobre el suelo"),
        Choice::Shelter => ("Shelter from the wind", "Protección contra el viento"),
        Choice::Flue => ("Fireplace or open flue", "Chimenea o tiro abierto"),
        Choice::Soil => ("Soil", "Suelo"),
        Choice::GroundMethod => ("Heat loss of a slab by", "Pérdida de calor de una losa según"),
        Choice::Edge => ("Edge insulation of a slab", "Aislamiento del borde de una losa"),
        Choice::SlabEdge => {
            ("Insulation of a slab, for its F-factor", "Aislamiento de una losa, para su factor F")
        }
        Choice::Fuel => ("Fuel", "Combustible"),
        Choice::Tube => ("Tube of the elements", "Tubo de los elementos"),
        Choice::Objective => ("Choose the pieces for", "Elegir las piezas para"),
        Choice::Sticks => {
            ("Lengths of hard pipe in the shop", "Largos de tubo rígido en la tienda")
        }
        Choice::FlowBasis => ("How is the flow fixed?", "¿Cómo se fija el caudal?"),
        Choice::PipeCover => ("Pipes outside the rooms", "Tuberías fuera de las habitaciones"),
        Choice::Zoning => ("Zones are started by", "Las zonas arrancan con"),
        Choice::Pump | Choice::ZonePump(_) => ("Circulator", "Circulador"),
        Choice::PumpSet => ("How many push together", "Cuántos empujan juntos"),
        Choice::BoilerKind => ("Boiler", "Caldera"),
        Choice::TankHeating => {
            ("Indirect tank for tap water", "Tanque indirecto para agua de la llave")
        }
        Choice::Metal => ("The system is mostly of", "El sistema es sobre todo de"),
        Choice::ValveKind => ("Zone valves", "Válvulas de zona"),
        Choice::Antifreeze => ("Antifreeze", "Anticongelante"),
        Choice::Standing => existing::STANDING,
        Choice::Ran => existing::RAN,
        Choice::SupplyBy => control::SUPPLY_BY,
        Choice::Mass => control::MASS,
        Choice::RoomMass(_) => control::ROOM_MASS,
        Choice::Holds(_) => control::HOLDS,
        Choice::Arrangement(_) => ("Arrangement", "Arreglo"),
        Choice::Main(_) => {
            ("Tube of main, trunk or manifold", "Tubo de principal, troncal o colector")
        }
        Choice::Pipe(_) => ("Tube of the rooms' own pipes", "Tubo propio de las habitaciones"),
        Choice::Balancing(_) => ("Balancing valves", "Válvulas de balanceo"),
        Choice::BackPath(_) => ("The way back", "El camino de vuelta"),
        Choice::Hung(_) => ("Zone", "Zona"),
        Choice::Diverters(_) => ("Diverter tees", "Tes desviadoras"),
        Choice::ShutOff(_) => ("Shut-off", "Cierre"),
        Choice::Leg(..) => ("Step", "Paso"),
        Choice::Level(_) => ("Storey", "Nivel"),
        Choice::Shape(_) => ("Shape", "Forma"),
        Choice::Behind(..) => ("Behind it", "Al otro lado"),
        Choice::WallUse(..) => ("Baseboard at this wall", "Zócalo en esta pared"),
        Choice::SurfaceBuild(..) | Choice::OpeningBuild(..) => ("Built like", "Hecha como"),
        Choice::Position(_) => ("Used as", "Se usa como"),
        Choice::Framing(_) => ("Framing", "Armazón"),
        Choice::LayerMaterial(..) => ("Material", "Material"),
        Choice::LayerPlace(..) => ("Placed", "Colocación"),
        Choice::ChangeKind(_) => what_if::KIND,
        Choice::ChangeWhose(_) => what_if::WHOSE,
        Choice::ChangeBuild(_) => what_if::BUILD,
        Choice::ChangeLeaks(_) => what_if::LEAKS,
        Choice::ChangeAirClass(_) => what_if::AIR_CLASS,
        Choice::ChangeLevel(_) => what_if::LEVEL,
        Choice::OutsideWalls(_) => what_if::OUTSIDE_WALLS,
    })
}

/// Something on a list.
pub fn pick(draft: &Draft, pick: Pick) -> String {
    in_units(match pick {
        Pick::Behind(p) => return behind(draft, p),
        Pick::Hung(p) => return piping::hung(draft, p),
        Pick::Holds(p) => return control::holds(draft, p),
        Pick::Whose(p) => return what_if::whose(draft, p),
        Pick::Build(UValue::Own(id)) => return assembly_name(draft, id),
        Pick::Build(p) => u_value_basis(p),
        Pick::DesignHours(p) => either(match p {
            DesignHours::P99 => {
                ("99 % of hours are warmer (usual)", "99 % de las horas son más calientes (usual)")
            }
            DesignHours::P996 => (
                "99.6 % of hours are warmer (stricter)",
                "99.6 % de las horas son más calientes (más estricto)",
            ),
        }),
        Pick::AirClass(p) => air_class(p),
        Pick::AirBasis(p) => either(match p {
            AirBasis::Class => ("How it feels, by class", "Cómo se siente, por clase"),
            AirBasis::BlowerDoor => ("A blower door test", "Una prueba de puerta sopladora"),
            AirBasis::LeakageArea => (
                "A leakage area, or what is usual for the floor area",
                "Un área de fuga, o lo usual para el área del piso",
            ),
        }),
        Pick::Storeys(p) => storeys(p),
        Pick::Shelter(p) => shelter(p),
        Pick::Flue(p) => open_flue(p),
        Pick::Soil(p) => soil(p),
        Pick::GroundMethod(p) => either(match p {
            GroundMethod::Iso => ("ISO 13370, by area and edge", "ISO 13370, por área y borde"),
            GroundMethod::FFactor => (
                "F-factor of US codes, by edge alone",
                "Factor F de los códigos de EE. UU., solo por el borde",
            ),
        }),
        Pick::Edge(p) => either(match p {
            EdgeBasis::None => ("None", "Ninguno"),
            EdgeBasis::Horizontal => (
                "Horizontal, under the slab or outside it",
                "Horizontal, bajo la losa o fuera de ella",
            ),
            EdgeBasis::Vertical => {
                ("Vertical, along the foundation", "Vertical, a lo largo del cimiento")
            }
        }),
        Pick::SlabEdge(p) => slab_edge(p),
        Pick::Fuel(p) => fuel(p),
        Pick::Tube(p) => tube(p),
        Pick::Objective(p) => shop::objective(p),
        Pick::Sticks(p) => shop::sticks(p),
        Pick::WallUse(p) => shop::wall_use(p),
        Pick::FlowBasis(p) => flow_basis(p),
        Pick::PipeCover(p) => piping::pipe_cover(p),
        Pick::Zoning(p) => piping::zoning(p),
        Pick::Pump(p) => piping::pump_kind(p),
        Pick::PumpSet(p) => piping::pump_set(p),
        Pick::BoilerKind(p) => plant::boiler_kind(p),
        Pick::TankHeating(p) => plant::tank_heating(p),
        Pick::Metal(p) => plant::metal(p),
        Pick::ValveKind(p) => plant::valve_kind(p),
        Pick::Antifreeze(p) => plant::antifreeze(p),
        Pick::Standing(p) => existing::standing(p),
        Pick::Ran(p) => existing::ran(p),
        Pick::SupplyBy(p) => control::supply_by(p),
        Pick::Mass(p) => control::mass(p),
        Pick::RoomMass(p) => control::room_mass(p),
        Pick::Arrangement(p) => piping::arrangement(p),
        Pick::Balancing(p) => piping::balancing(p),
        Pick::BackPath(p) => piping::back_path(p),
        Pick::Diverters(p) => piping::diverters(p),
        Pick::ShutOff(p) => piping::shut_off(p),
        Pick::Leg(p) => piping::leg_kind(p),
        Pick::Level(p) => level(p),
        Pick::Shape(p) => either(match p {
            Shape::Rectangle => ("Rectangle", "Rectángulo"),
            Shape::LShape => {
                ("L: a rectangle with a corner cut out", "L: un rectángulo con una esquina cortada")
            }
        }),
        Pick::Position(p) => position(p),
        Pick::Framing(p) => framing(p),
        Pick::LayerMaterial(LayerMaterial::Listed(p)) => material(p),
        Pick::LayerMaterial(LayerMaterial::TypedR) => {
            either(("I know its R-value", "Conozco su valor R"))
        }
        Pick::ChangeKind(p) => what_if::change_kind(p),
        Pick::OutsideWalls(p) => what_if::outside_walls(p),
        Pick::LayerPlace(p) => either(match p {
            Place::Through => ("Over the whole area", "En toda el área"),
            Place::BetweenFraming => {
                ("Between studs, joists or rafters", "Entre montantes, vigas o cabios")
            }
        }),
    })
}

pub fn room_use(used: RoomUse) -> &'static str {
    either(match used {
        RoomUse::Heated => ("Heated room", "Habitación con calefacción"),
        RoomUse::Attic => ("Attic", "Ático"),
        RoomUse::Garage => ("Garage", "Garaje"),
        RoomUse::CrawlSpace => ("Crawl space", "Espacio de poca altura"),
        RoomUse::Basement => ("Unheated basement", "Sótano sin calefacción"),
        RoomUse::Other => ("Unheated space", "Espacio sin calefacción"),
    })
}

pub fn level(level: Level) -> &'static str {
    either(match level {
        Level::Basement => ("Basement", "Sótano"),
        Level::First => ("First floor", "Primer piso"),
        Level::Second => ("Second floor", "Segundo piso"),
        Level::Third => ("Third floor", "Tercer piso"),
    })
}

pub fn soil(soil: Soil) -> &'static str {
    either(match soil {
        Soil::Clay => ("Clay or silt", "Arcilla o limo"),
        Soil::Sand => {
            ("Sand or gravel (also if you do not know)", "Arena o grava (también si no sabe)")
        }
        Soil::Rock => ("Rock", "Roca"),
    })
}

pub fn fuel(fuel: Fuel) -> &'static str {
    either(match fuel {
        Fuel::NaturalGasTherm => ("Natural gas, therms", "Gas natural, therms"),
        Fuel::NaturalGasCcf => (
            "Natural gas, hundreds of cubic feet (CCF)",
            "Gas natural, cientos de pies cúbicos (CCF)",
        ),
        Fuel::HeatingOilGallon => ("Heating oil, gallons", "Combustible de calefacción, galones"),
        Fuel::PropaneGallon => ("Propane, gallons", "Propano, galones"),
        Fuel::ElectricityKwh => ("Electricity, kWh", "Electricidad, kWh"),
    })
}

pub fn slab_edge(edge: SlabEdge) -> &'static str {
    either(match edge {
        SlabEdge::Uninsulated => ("None", "Ninguno"),
        SlabEdge::Horizontal2FtR5 => ("2 ft horizontal, R-5", "Horizontal de 2 pies, R-5"),
        SlabEdge::Horizontal2FtR10 => ("2 ft horizontal, R-10", "Horizontal de 2 pies, R-10"),
        SlabEdge::Horizontal2FtR15 => ("2 ft horizontal, R-15", "Horizontal de 2 pies, R-15"),
        SlabEdge::Horizontal4FtR5 => ("4 ft horizontal, R-5", "Horizontal de 4 pies, R-5"),
        SlabEdge::Horizontal4FtR10 => ("4 ft horizontal, R-10", "Horizontal de 4 pies, R-10"),
        SlabEdge::Horizontal4FtR15 => ("4 ft horizontal, R-15", "Horizontal de 4 pies, R-15"),
        SlabEdge::Vertical2FtR5 => ("2 ft vertical, R-5", "Vertical de 2 pies, R-5"),
        SlabEdge::Vertical2FtR10 => ("2 ft vertical, R-10", "Vertical de 2 pies, R-10"),
        SlabEdge::Vertical2FtR15 => ("2 ft vertical, R-15", "Vertical de 2 pies, R-15"),
        SlabEdge::Vertical4FtR5 => ("4 ft vertical, R-5", "Vertical de 4 pies, R-5"),
        SlabEdge::Vertical4FtR10 => ("4 ft vertical, R-10", "Vertical de 4 pies, R-10"),
        SlabEdge::Vertical4FtR15 => ("4 ft vertical, R-15", "Vertical de 4 pies, R-15"),
        SlabEdge::WholeR10 => {
            ("Under the whole slab and at its edge, R-10", "Bajo toda la losa y en su borde, R-10")
        }
        SlabEdge::WholeR15 => {
            ("Under the whole slab and at its edge, R-15", "Bajo toda la losa y en su borde, R-15")
        }
        SlabEdge::WholeR20 => {
            ("Under the whole slab and at its edge, R-20", "Bajo toda la losa y en su borde, R-20")
        }
        SlabEdge::WholeR30 => {
            ("Under the whole slab and at its edge, R-30", "Bajo toda la losa y en su borde, R-30")
        }
    })
}
