//! Names of assemblies and of what they are made of, and their U with where it comes from.

use crate::language::either;
use finrun_engine::building::assembly::Position;
use finrun_engine::building::catalogue::Origin;
use finrun_engine::building::{Assembly, Framing, Material};
use finrun_engine::job::UValue;
use finrun_engine::quantity::{System, Transmittance};

/// How it is built, with the years in which that was usual where they help to choose (judgement).
pub fn assembly(assembly: Assembly) -> &'static str {
    use Assembly::*;
    either(match assembly {
        FrameWallEmpty => (
            "Wood frame 2×4, no insulation (before 1950)",
            "Madera 2×4, sin aislamiento (antes de 1950)",
        ),
        FrameWallR7 => {
            ("Wood frame 2×4, R-7 batt (1950s, 60s)", "Madera 2×4, colchoneta R-7 (años 50, 60)")
        }
        FrameWallR11 => {
            ("Wood frame 2×4, R-11 batt (1970s, 80s)", "Madera 2×4, colchoneta R-11 (años 70, 80)")
        }
        FrameWallBlown => (
            "Wood frame 2×4, blown-in cellulose (old wall, filled later)",
            "Madera 2×4, celulosa soplada (pared vieja, rellena después)",
        ),
        FrameWallR13 => ("Wood frame 2×4, R-13 batt", "Madera 2×4, colchoneta R-13"),
        FrameWallR13R5 => (
            "Wood frame 2×4, R-13 batt, R-5 foam outside",
            "Madera 2×4, colchoneta R-13, espuma R-5 por fuera",
        ),
        FrameWallR19 => ("Wood frame 2×6, R-19 batt", "Madera 2×6, colchoneta R-19"),
        FrameWallR19R5 => (
            "Wood frame 2×6, R-19 batt, R-5 foam outside",
            "Madera 2×6, colchoneta R-19, espuma R-5 por fuera",
        ),
        FrameWallR21 => ("Wood frame 2×6, R-21 batt", "Madera 2×6, colchoneta R-21"),
        BrickVeneerR11 => (
            "Brick veneer on 2×4 frame, R-11 batt (1970s, 80s)",
            "Ladrillo sobre madera 2×4, colchoneta R-11 (años 70, 80)",
        ),
        BrickWall => ("Brick 8 in, air gap, plaster", "Ladrillo de 8 pulg, cámara de aire, yeso"),
        BrickWall12 => (
            "Brick 12 in, air gap, plaster (before 1930)",
            "Ladrillo de 12 pulg, cámara de aire, yeso (antes de 1930)",
        ),
        StoneWall18 => ("Stone 18 in, plaster", "Piedra de 18 pulg, yeso"),
        BlockWall => (
            "Hollow block 8 in, air gap, drywall",
            "Bloque hueco de 8 pulg, cámara de aire, panel de yeso",
        ),
        LogWall8 => ("Log 8 in, bare", "Tronco de 8 pulg, desnudo"),
        SipWall6 => ("Foam-core panel (SIP) 6½ in", "Panel con alma de espuma (SIP) de 6½ pulg"),
        Partition => (
            "Inside partition, drywall both sides",
            "Pared interior, panel de yeso por ambos lados",
        ),
        GarageWallR11 => (
            "Wall to garage, 2×4 with R-11, drywall both sides",
            "Pared al garaje, 2×4 con R-11, panel de yeso por ambos lados",
        ),
        StudWallBare => (
            "Siding on bare studs, no drywall (gable, garage, porch)",
            "Forro sobre montantes desnudos, sin panel de yeso (hastial, garaje, porche)",
        ),
        AtticCeilingEmpty => {
            ("Ceiling under attic, no insulation", "Techo bajo ático, sin aislamiento")
        }
        AtticCeilingR11 => ("Ceiling under attic, R-11", "Techo bajo ático, R-11"),
        AtticCeilingR19 => ("Ceiling under attic, R-19", "Techo bajo ático, R-19"),
        AtticCeilingR30 => ("Ceiling under attic, R-30", "Techo bajo ático, R-30"),
        AtticCeilingR38 => ("Ceiling under attic, R-38", "Techo bajo ático, R-38"),
        AtticCeilingR49 => ("Ceiling under attic, R-49", "Techo bajo ático, R-49"),
        AtticCeilingR60 => ("Ceiling under attic, R-60", "Techo bajo ático, R-60"),
        CathedralEmpty => (
            "Sloped ceiling under roof, no insulation (before 1950)",
            "Techo inclinado bajo cubierta, sin aislamiento (antes de 1950)",
        ),
        CathedralR19 => ("Sloped (cathedral) ceiling, R-19", "Techo inclinado (catedral), R-19"),
        CathedralR30 => ("Sloped (cathedral) ceiling, R-30", "Techo inclinado (catedral), R-30"),
        FlatRoofR20 => {
            ("Flat roof, R-20 board on the deck", "Techo plano, placa R-20 sobre la cubierta")
        }
        JoistFloorEmpty => {
            ("Wood floor on joists, no insulation", "Piso de madera sobre vigas, sin aislamiento")
        }
        JoistFloorR11 => ("Wood floor on joists, R-11", "Piso de madera sobre vigas, R-11"),
        JoistFloorR19 => ("Wood floor on joists, R-19", "Piso de madera sobre vigas, R-19"),
        JoistFloorR30 => ("Wood floor on joists, R-30", "Piso de madera sobre vigas, R-30"),
        WindowWoodSingle => {
            ("Single glass, wood or vinyl frame", "Vidrio sencillo, marco de madera o vinilo")
        }
        WindowStorm => (
            "Single glass with storm window, wood frame",
            "Vidrio sencillo con contraventana, marco de madera",
        ),
        WindowWoodDouble => {
            ("Double glass, wood or vinyl frame", "Vidrio doble, marco de madera o vinilo")
        }
        WindowMetalSingle => ("Single glass, metal frame", "Vidrio sencillo, marco de metal"),
        WindowMetalDouble => ("Double glass, metal frame", "Vidrio doble, marco de metal"),
        WindowMetalBreak => (
            "Double glass, metal frame with thermal break",
            "Vidrio doble, marco de metal con ruptura térmica",
        ),
        WindowLowE => (
            "Low-e double glass, code maximum",
            "Vidrio doble de baja emisividad, máximo del código",
        ),
        WindowTriple => ("Triple glass, clear", "Vidrio triple, claro"),
        WindowTripleLowE => ("Triple glass, low-e", "Vidrio triple, de baja emisividad"),
        GlassBlock => ("Glass block", "Bloque de vidrio"),
        SkylightDouble => {
            ("Skylight, double, wood or vinyl frame", "Tragaluz, doble, marco de madera o vinilo")
        }
        SkylightMetalDouble => ("Skylight, double, metal frame", "Tragaluz, doble, marco de metal"),
        SkylightLowE => {
            ("Skylight, low-e, code maximum", "Tragaluz, de baja emisividad, máximo del código")
        }
        DoorWood => ("Wood door", "Puerta de madera"),
        DoorMetal => ("Metal door, no insulation", "Puerta de metal, sin aislamiento"),
        DoorMetalInsulated => ("Insulated metal door", "Puerta de metal con aislamiento"),
        DoorFiberglass => (
            "Insulated fiberglass or wood door",
            "Puerta de fibra de vidrio o madera, con aislamiento",
        ),
        DoorR5 => ("Insulated door, R-5", "Puerta con aislamiento, R-5"),
        PatioDoorDouble => (
            "Glass patio door, double, wood or vinyl frame",
            "Puerta de vidrio al patio, doble, marco de madera o vinilo",
        ),
        PatioDoorMetal => (
            "Glass patio door, double, metal frame",
            "Puerta de vidrio al patio, doble, marco de metal",
        ),
        GarageDoorMetal => ("Garage door, no insulation", "Puerta de garaje, sin aislamiento"),
        GarageDoorInsulated => ("Garage door, insulated", "Puerta de garaje, con aislamiento"),
        SlabBare => {
            ("Concrete slab 4 in, no insulation", "Losa de concreto de 4 pulg, sin aislamiento")
        }
        SlabR5 => ("Concrete slab 4 in, R-5 under it", "Losa de concreto de 4 pulg, R-5 debajo"),
        SlabR10 => ("Concrete slab 4 in, R-10 under it", "Losa de concreto de 4 pulg, R-10 debajo"),
        BasementConcrete => ("Poured concrete 8 in, bare", "Concreto colado de 8 pulg, desnudo"),
        BasementConcreteR5 => {
            ("Poured concrete 8 in, R-5 foam", "Concreto colado de 8 pulg, espuma R-5")
        }
        BasementConcreteR10 => {
            ("Poured concrete 8 in, R-10 foam", "Concreto colado de 8 pulg, espuma R-10")
        }
        BasementConcreteR13 => (
            "Poured concrete 8 in, 2×4 studs with R-13, drywall",
            "Concreto colado de 8 pulg, montantes 2×4 con R-13, panel de yeso",
        ),
        BasementBlock => ("Hollow block 8 in, bare", "Bloque hueco de 8 pulg, desnudo"),
        BasementStone => {
            ("Stone 18 in, bare (before 1920)", "Piedra de 18 pulg, desnuda (antes de 1920)")
        }
        RoofDeck => (
            "Roof deck with shingles, no insulation",
            "Cubierta con tejas asfálticas, sin aislamiento",
        ),
    })
}

/// Where a listed value comes from.
pub fn origin(origin: Origin) -> &'static str {
    either(match origin {
        Origin::Layers => (
            "built up from its layers by ISO 6946, combined method; conductivities EN 12524",
            "armado por capas según ISO 6946, método combinado; conductividades EN 12524",
        ),
        Origin::IeccDefault => {
            ("IECC default table R303.1.3", "tabla de valores por omisión IECC R303.1.3")
        }
        Origin::IeccFromMemory => (
            "IECC default table R303.1.3, from memory",
            "tabla de valores por omisión IECC R303.1.3, de memoria",
        ),
        Origin::StateCode => (
            "Washington Administrative Code 51-11, prescriptive maximum",
            "código administrativo de Washington 51-11, máximo prescriptivo",
        ),
        Origin::MaterialStandard => ("EN 12524:2000", "EN 12524:2000"),
        Origin::InsulationPages => (
            "usual R per inch, printed on public pages",
            "R usual por pulgada, impreso en páginas públicas",
        ),
        Origin::FromMemory => ("handbook tables, from memory", "tablas de manual, de memoria"),
        Origin::CommonPractice => ("common practice, no source", "práctica común, sin fuente"),
    })
}

pub fn material(material: Material) -> &'static str {
    use Material::*;
    either(match material {
        GypsumBoard => ("Drywall (gypsum board)", "Panel de yeso (tablarroca)"),
        GypsumPlaster => ("Gypsum plaster", "Yeso aplicado"),
        LimePlaster => ("Lime plaster", "Enlucido de cal"),
        Softwood => ("Softwood (pine, spruce, fir)", "Madera blanda (pino, abeto)"),
        Hardwood => ("Hardwood (oak, maple)", "Madera dura (roble, arce)"),
        Plywood => ("Plywood", "Contrachapado (triplay)"),
        Osb => ("OSB", "Tablero OSB"),
        Particleboard => ("Particleboard", "Tablero de partículas"),
        Fiberboard => ("Fiberboard sheathing", "Placa de fibra para forro"),
        Hardboard => ("Hardboard", "Tablero duro de fibra"),
        CementBoard => ("Cement board", "Placa de cemento"),
        VinylSiding => ("Vinyl or aluminum siding", "Forro de vinilo o aluminio"),
        Stucco => ("Stucco", "Estuco"),
        Brick => ("Brick", "Ladrillo"),
        HollowBlock8 => ("Hollow concrete block, 8 in", "Bloque hueco de concreto, 8 pulg"),
        HollowBlock12 => ("Hollow concrete block, 12 in", "Bloque hueco de concreto, 12 pulg"),
        Concrete => ("Concrete", "Concreto"),
        LightConcrete => ("Lightweight concrete", "Concreto ligero"),
        Granite => ("Granite or fieldstone", "Granito o piedra de campo"),
        Limestone => ("Limestone", "Piedra caliza"),
        Sandstone => ("Sandstone", "Piedra arenisca"),
        FiberglassBatt => ("Fiberglass batt", "Colchoneta de fibra de vidrio"),
        FiberglassDenseBatt => {
            ("Fiberglass batt, high density", "Colchoneta de fibra de vidrio, alta densidad")
        }
        FiberglassLoose => ("Fiberglass, loose fill", "Fibra de vidrio, suelta"),
        MineralWoolLoose => ("Mineral (rock) wool, loose fill", "Lana mineral (de roca), suelta"),
        Cellulose => ("Cellulose, blown in", "Celulosa, soplada"),
        Vermiculite => (
            "Vermiculite or perlite (old vermiculite may hold asbestos)",
            "Vermiculita o perlita (la vermiculita vieja puede tener asbesto)",
        ),
        Eps => (
            "Expanded polystyrene board (EPS, white)",
            "Placa de poliestireno expandido (EPS, blanca)",
        ),
        Xps => (
            "Extruded polystyrene board (XPS, blue or pink)",
            "Placa de poliestireno extruido (XPS, azul o rosa)",
        ),
        Polyiso => ("Polyiso board", "Placa de poliiso"),
        OpenCellFoam => ("Spray foam, open cell", "Espuma rociada, celda abierta"),
        ClosedCellFoam => ("Spray foam, closed cell", "Espuma rociada, celda cerrada"),
        AirCavity => ("Air space, 1 in or more", "Cámara de aire, 1 pulg o más"),
        Carpet => ("Carpet", "Alfombra"),
        CarpetPad => ("Carpet pad", "Bajoalfombra"),
        Linoleum => ("Linoleum", "Linóleo"),
        VinylFloor => ("Vinyl flooring", "Piso de vinilo"),
        CeramicTile => ("Ceramic tile", "Loseta de cerámica"),
        AsphaltShingles => ("Asphalt shingles", "Tejas asfálticas"),
        RollRoofing => ("Roll roofing or felt", "Rollo asfáltico o fieltro"),
    })
}

/// How much of an assembly is wood.
pub fn framing(framing: Framing) -> &'static str {
    either(match framing {
        Framing::None => ("No framing", "Sin armazón"),
        Framing::StandardWall => ("Studs 16 in on center", "Montantes a 16 pulg entre centros"),
        Framing::IntermediateWall => (
            "Studs 16 in on center, insulated corners and headers",
            "Montantes a 16 pulg entre centros, esquinas y dinteles con aislamiento",
        ),
        Framing::AdvancedWall => (
            "Studs 24 in on center, insulated corners and headers",
            "Montantes a 24 pulg entre centros, esquinas y dinteles con aislamiento",
        ),
        Framing::CeilingJoists => {
            ("Ceiling joists, insulation over them", "Vigas de techo, aislamiento por encima")
        }
        Framing::FloorJoists => ("Floor joists", "Vigas de piso"),
        Framing::RoofRafters => ("Rafters", "Cabios"),
    })
}

/// Where an assembly stands.
pub fn position(position: Position) -> &'static str {
    either(match position {
        Position::Wall => ("Wall to outdoors", "Pared al exterior"),
        Position::Partition => ("Wall to another space", "Pared a otro espacio"),
        Position::Ceiling => (
            "Ceiling under an attic or a vented roof",
            "Techo bajo un ático o una cubierta ventilada",
        ),
        Position::Roof => ("Ceiling and roof in one", "Techo y cubierta en uno"),
        Position::Floor => {
            ("Floor over an unheated space", "Piso sobre un espacio sin calefacción")
        }
        Position::Slab => ("Floor on the ground", "Piso sobre el suelo"),
        Position::GroundWall => ("Wall against the ground", "Pared contra el suelo"),
    })
}

/// The ways to give a U that are no listed assembly.
pub fn u_value_basis(value: UValue) -> &'static str {
    either(match value {
        UValue::Listed(listed) => return assembly(listed),
        UValue::Own(_) => ("An assembly of your own", "Una construcción propia"),
        UValue::TypedU => ("I know the U-value", "Conozco el valor U"),
        UValue::TypedR => ("I know the R-value", "Conozco el valor R"),
    })
}

/// A listed assembly's U, its R and where they come from.
pub fn listed_u(assembly: Assembly, system: System) -> String {
    let u = assembly.transmittance();
    let r = crate::value(u.resistance(), system);
    format!("U {} · R {r} · {}", crate::value(u, system), origin(assembly.origin()))
}

/// The U and R of an assembly of the user's own.
pub fn own_u(u: Transmittance, system: System) -> String {
    format!("U {} · R {}", crate::value(u, system), crate::value(u.resistance(), system))
}
