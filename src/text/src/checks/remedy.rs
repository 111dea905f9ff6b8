//! What a remedy proposes.

use crate::language::{either, say};
use crate::{tube, value};
use finrun_engine::check::Remedy;
use finrun_engine::quantity::{System, Value};

/// A way out.
pub fn remedy(remedy: Remedy, system: System) -> String {
    match remedy {
        Remedy::MoreWall { length } => {
            say!(
                "Free {} more of wall, or use another wall",
                "Libere {} más de pared, o use otra pared";
                value(length, system)
            )
        }
        Remedy::HigherOutputElement => {
            either(("A taller element with more output", "Un elemento más alto con más potencia"))
                .to_string()
        }
        Remedy::ReduceLoss => either((
            "Less loss: insulate, seal, better glass",
            "Menos pérdida: aísle, selle, mejores vidrios",
        ))
        .to_string(),
        Remedy::AddFreeWall => either((
            "Add a wall with a free stretch, inside walls too",
            "Agregue una pared con un tramo libre, también interior",
        ))
        .to_string(),
        Remedy::AllowWall => either((
            "Allow baseboard at a wall that is ruled out",
            "Permita zócalo en una pared excluida",
        ))
        .to_string(),
        Remedy::LetPiecesGo => {
            either(("Let kept pieces go", "Suelte las piezas fijadas")).to_string()
        }
        Remedy::ShorterPieces => {
            either(("Add shorter pieces to the list", "Agregue piezas más cortas a la lista"))
                .to_string()
        }
        Remedy::MorePieces => either((
            "Buy more pieces than are on the list now",
            "Compre más piezas de las que hay en la lista",
        ))
        .to_string(),
        Remedy::CorrectStock => {
            either(("Correct how many pieces there are", "Corrija cuántas piezas hay")).to_string()
        }
        Remedy::TypePrices => {
            either(("Type the missing prices", "Escriba los precios que faltan")).to_string()
        }
        Remedy::LessOtherHeat => either((
            "Count on less of it, if it does not run on every cold day",
            "Cuente con menos, si no funciona todos los días fríos",
        ))
        .to_string(),
        Remedy::AddSurfaces => {
            either(("Add its walls, ceiling and floor", "Agregue sus paredes, techo y piso"))
                .to_string()
        }
        Remedy::RemoveOneEntry => either((
            "Remove it from one of the two rooms",
            "Quítela de una de las dos habitaciones",
        ))
        .to_string(),
        Remedy::MoreFlow { flow } => say!(
            "Flow of {} or more",
            "Caudal de {} o más";
            value(flow, system)
        ),
        Remedy::LessFlow { flow } => say!(
            "Flow of {} or less",
            "Caudal de {} o menos";
            value(flow, system)
        ),
        Remedy::OtherTube { tube: other } => say!("{} instead", "{} en su lugar"; tube(other)),
        Remedy::SmallerDrop => {
            either(("Plan a smaller temperature drop", "Prevea una caída de temperatura menor"))
                .to_string()
        }
        Remedy::LargerDrop => {
            either(("Plan a larger temperature drop", "Prevea una caída de temperatura mayor"))
                .to_string()
        }
        Remedy::SecondCircuit => either((
            "Split the rooms among more circuits",
            "Reparta las habitaciones en más circuitos",
        ))
        .to_string(),
        Remedy::LowerSupply { supply } => say!(
            "Supply at {} or less",
            "Suministro a {} o menos";
            value(supply, system)
        ),
        Remedy::Bypass { share } => say!(
            "A bypass that leads {} of the boiler's flow from supply to return",
            "Una derivación que lleve {} del caudal de la caldera del suministro al retorno";
            value(Value::share(share), system)
        ),
        Remedy::MixingValve => either((
            "A valve that mixes supply into the return by the boiler's inlet temperature",
            "Una válvula que mezcle suministro en el retorno según la temperatura de entrada de la \
             caldera",
        ))
        .to_string(),
        Remedy::HotterBoiler => either((
            "A hotter boiler, with a valve that mixes its water down for the loop",
            "Una caldera más caliente, con una válvula que mezcle su agua para el circuito",
        ))
        .to_string(),
        Remedy::CondensingBoiler => either((
            "A condensing boiler, which gains by a cool return",
            "Una caldera de condensación, que gana con un retorno frío",
        ))
        .to_string(),
        Remedy::LargerBoiler => either(("A larger boiler", "Una caldera más grande")).to_string(),
        Remedy::SmallerBoiler => {
            either(("A smaller boiler", "Una caldera más pequeña")).to_string()
        }
        Remedy::ModulatingBoiler => {
            either(("A burner that turns down further", "Un quemador que baje más")).to_string()
        }
        Remedy::Buffer { volume } => {
            say!(
                "A buffer tank of {} more",
                "Un tanque de inercia de {} más";
                value(Value::liquid(volume), system)
            )
        }
        Remedy::JoinZones => {
            either(("Join small zones into one", "Junte zonas pequeñas en una")).to_string()
        }
        Remedy::Fill { pressure } => say!("Fill to {}", "Llene hasta {}"; value(pressure, system)),
        Remedy::Glycol { share } => say!(
            "Heating glycol, {} by mass or more; never automotive antifreeze",
            "Glicol para calefacción, {} en masa o más; nunca anticongelante de automóvil";
            value(Value::share(share), system)
        ),
        Remedy::WarmPipes => either((
            "Lead the pipes through heated space, or insulate the space",
            "Lleve las tuberías por espacio con calefacción, o aísle el espacio",
        ))
        .to_string(),
        Remedy::OpenValve => either(("Open the valve", "Abra la válvula")).to_string(),
        Remedy::AddRooms => either(("Hang rooms on it", "Cuélguele habitaciones")).to_string(),
        Remedy::LargerPump => {
            either(("A circulator with more head or flow", "Un circulador con más altura o caudal"))
                .to_string()
        }
        Remedy::SmallerPump => {
            either(("A smaller circulator", "Un circulador más pequeño")).to_string()
        }
        Remedy::VariablePump => either((
            "A circulator that slows down when zones shut",
            "Un circulador que baje su velocidad cuando cierran zonas",
        ))
        .to_string(),
        Remedy::BalancingValves => {
            either(("A balancing valve in each return", "Una válvula de balanceo en cada retorno"))
                .to_string()
        }
        Remedy::PurgeAtHighFlow => either((
            "Purge hard when filling, and vent the high points",
            "Purgue con fuerza al llenar, y ventile los puntos altos",
        ))
        .to_string(),
    }
}
