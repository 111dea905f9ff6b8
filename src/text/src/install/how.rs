//! How each step of the installation is done.

use super::small;
use crate::language::{either, say};
use crate::value;
use finrun_engine::install::{Step, Task};
use finrun_engine::plant::reset::Setting;
use finrun_engine::quantity::{Pressure, System, Value, Volume};

/// How a step is done; for those that there are several of the same for each.
pub fn step_how(step: &Step, system: System) -> String {
    let pressure = |p: Pressure| value(p, system);
    let how = match &step.task {
        Task::CheckOldHouse => either((
            "Before anything is cut, sanded or stripped: what may hold asbestos or lead is \
             tested, and removed only by those allowed to.",
            "Antes de cortar, lijar o raspar nada: lo que pueda tener asbesto o plomo se analiza, \
             y solo lo quita quien está autorizado.",
        )),
        Task::ShutDown => either((
            "Burner off, power off and locked, water cooled down, then drained by hose to where \
             it may go. Shut the fill valve.",
            "Quemador apagado, corriente cortada y bajo candado, agua ya fría; luego vacíe con \
             manguera hacia donde esté permitido. Cierre la válvula de llenado.",
        )),
        Task::Protect => either((
            "Furniture away from the walls, floors covered, curtains down, dust doors up. Look \
             for pipes and wires behind walls, under floors and in slabs.",
            "Muebles lejos de las paredes, pisos cubiertos, cortinas quitadas, plásticos contra \
             el polvo puestos. Busque tubos y cables detrás de paredes, bajo pisos y dentro de \
             losas.",
        )),
        Task::Bore { .. } => either((
            "The pipe moves with its run and must not touch. Sleeve the hole, and close it with \
             something soft or as the fire code asks.",
            "El tubo se mueve con el elemento y no debe tocar nada. Ponga una camisa en el \
             agujero y ciérrelo con algo blando o como pida el código contra incendios.",
        )),
        Task::Brackets { .. } => either((
            "Level along its whole length, into studs. A bracket at each end and no more than 4 \
             ft (1.2 m) apart, or as the maker says. Keep the inlet below free of carpet.",
            "A nivel en todo su largo, atornillado a los montantes. Un soporte en cada extremo y \
             no más de 4 pies (120 cm) entre uno y otro, o como diga el fabricante. Mantenga la \
             entrada de abajo libre de alfombra.",
        )),
        Task::DryFit(_) => either((
            "Fins clear of the brackets, slide pads in place, damper swings.",
            "Aletas sin tocar los soportes, almohadillas en su lugar, la compuerta gira libre.",
        )),
        Task::LeaveRoom { .. } => either((
            "Hold a run at its middle; the gap is between elbow and end cap, and around the \
             riser. A run that is held at one end takes twice the gap at the other.",
            "Sujete el elemento por el medio; la holgura va entre el codo y la tapa final, y \
             alrededor del tubo que sube. Si se sujeta por un extremo, deje el doble de holgura \
             en el otro.",
        )),
        Task::ReadyForFire => either((
            "Extinguisher and water at hand, heat shield behind each joint, alarms still working, \
             what burns cleared away. System drained and open to the air. Lead-free solder and \
             its flux.",
            "Extintor y agua a mano, protector de llama detrás de cada unión, alarmas \
             funcionando, lo que arde retirado. Sistema vaciado y abierto al aire. Soldadura sin \
             plomo y su fundente.",
        )),
        Task::Solder { .. } => either((
            "Clean and flux. Wrap fins and valves in wet cloth, open valves, flame on the fitting \
             and away from the fins. Wipe the flux off.",
            "Limpie y ponga fundente. Envuelva aletas y válvulas en trapo mojado, abra las \
             válvulas, llama sobre la conexión y lejos de las aletas. Limpie el fundente que \
             sobre.",
        )),
        Task::WatchFire => either((
            "Someone stays for an hour after the last flame, looks and feels behind walls and \
             below floors, and comes back once more.",
            "Alguien se queda una hora después de la última llama, mira y toca detrás de las \
             paredes y bajo los pisos, y vuelve una vez más.",
        )),
        Task::Doorways { .. } => either((
            "Down before the door, under the floor, up behind it. A drain at the low point, a \
             vent where it comes up; insulated where it can freeze.",
            "Baja antes de la puerta, pasa bajo el piso y sube detrás. Una válvula de drenaje en \
             el punto bajo, un purgador donde sube; con aislamiento donde se pueda helar.",
        )),
        Task::OxygenBarrier => either((
            "The print on the tube names a barrier (DIN 4726 is common) and its rating for hot \
             water. Without one, oxygen rusts boiler, circulator and tank.",
            "Lo impreso en el tubo nombra una barrera (la DIN 4726 es común) y su límite para \
             agua caliente. Sin barrera, el oxígeno oxida caldera, circulador y tanque.",
        )),
        Task::Transitions { .. } => either((
            "Of the tube maker's own system, each checked with its gauge. None near a flame, none \
             buried. The first 18 in (0.5 m) from the boiler are metal.",
            "Del mismo sistema que el fabricante del tubo, cada una revisada con su calibre. \
             Ninguna cerca de una llama, ninguna enterrada. Las primeras 18 pulg (50 cm) desde la \
             caldera son de metal.",
        )),
        Task::Insulate => either((
            "Only once the test is passed and the joints were seen. Pipe in cold spaces and \
             outside walls without gaps.",
            "Solo cuando la prueba esté superada y las uniones vistas. Sin huecos en los \
             tubos de espacios fríos y paredes exteriores.",
        )),
        Task::Flush => either((
            "Water through each loop into a hose until it runs clear: flux and filings kill \
             valves and circulators.",
            "Agua por cada circuito hacia una manguera hasta que salga limpia: el fundente y las \
             virutas matan válvulas y circuladores.",
        )),
        Task::Purge { .. } => either((
            "One at a time, any other shut. Shut its valve between fill and drain, and send water \
             through until no bubble comes for two minutes. Then open, and bleed the vents from \
             the lowest up.",
            "Uno a la vez, los demás cerrados. Cierre su válvula entre llenado y drenaje, y haga \
             pasar agua hasta que en dos minutos no salga ninguna burbuja. Luego abra, y saque el \
             aire por los purgadores desde el más bajo hacia arriba.",
        )),
        Task::Thermostat => either((
            "On an inside wall about 5 ft (1.5 m) up, out of sun and draught, not over an \
             element. Low voltage wire by the control's diagram.",
            "En una pared interior, a unos 5 pies (150 cm) del piso, sin sol ni corrientes de \
             aire, no sobre un elemento. Cable de bajo voltaje según el diagrama del control.",
        )),
        Task::Alarms => either((
            "One on every level and outside bedrooms, tested with the button.",
            "Una en cada piso y afuera de los dormitorios, probadas con su botón.",
        )),
        Task::Balance { .. } => either((
            "By the valve maker's scale; then compare its return.",
            "Por la escala del fabricante de la válvula; luego compare su retorno.",
        )),
        Task::Measure => either((
            "With every zone calling, once no reading changes: fill in the commissioning sheet \
             and mend what it finds.",
            "Con todas las zonas pidiendo calor, cuando ninguna lectura cambie: llene la hoja de \
             puesta en marcha y corrija lo que encuentre.",
        )),
        Task::HandOver => either((
            "Show the owner gauge, shut-offs, bleeding and what to do when a room is cold. Leave \
             the signed sheet.",
            "Muestre al dueño el manómetro, las válvulas de paso, cómo sacar el aire y qué hacer \
             cuando una habitación está fría. Deje la hoja firmada.",
        )),
        Task::PipeMoves { each, growth } => {
            return say!(
                "Each straight {} of copper grows by {}. Hangers that slide, elbows free to \
                 swing, no pipe hard against a joist: that is what ticks.",
                "Cada recta de cobre de {} crece {}. Colgadores que deslizan, codos libres para \
                 moverse, ningún tubo apretado contra una viga: eso es lo que cruje.";
                value(*each, system),
                small(*growth, system)
            );
        }
        Task::PlasticMoves { each, growth } => {
            return say!(
                "Each straight {} of plastic tube grows by {}: wide bends, loose clips, plastic \
                 sleeves through wood and metal.",
                "Cada recta de tubo de plástico de {} crece {}: curvas amplias, abrazaderas \
                 flojas, camisas de plástico al cruzar madera y metal.";
                value(*each, system),
                small(*growth, system)
            );
        }
        Task::PressureTest { test: Some(test), fill, relief } => {
            return say!(
                "With cold water, never with air: to {}, between the fill pressure of {} and the \
                 relief valve's {}. It holds for half an hour with every joint dry. Code may ask \
                 for more, often 100 psi (690 kPa): then boiler, tank and relief valve are shut \
                 off or taken off first.",
                "Con agua fría, nunca con aire: a {}, entre la presión de llenado de {} y los {} \
                 de la válvula de alivio. Aguanta media hora con todas las uniones secas. El \
                 código puede pedir más, muchas veces 100 psi (690 kPa): entonces antes se \
                 cierran o se quitan caldera, tanque y válvula de alivio.";
                pressure(*test),
                pressure(*fill),
                pressure(*relief)
            );
        }
        Task::PressureTest { test: None, fill, relief } => {
            return say!(
                "The relief valve's {} is too near the fill pressure of {} to test between them. \
                 Shut off or take off boiler, tank and relief valve, and test with cold water as \
                 the code asks.",
                "Los {} de la válvula de alivio están demasiado cerca de la presión de llenado de \
                 {} para probar entre las dos. Cierre o quite caldera, tanque y válvula de \
                 alivio, y pruebe con agua fría como pida el código.";
                pressure(*relief),
                pressure(*fill)
            );
        }
        Task::TankAir { pre_charge } => {
            return say!(
                "{} by a tyre gauge while no water presses on it. Pump up or let off, then \
                 connect.",
                "{} con un medidor de llantas mientras ninguna agua lo presiona. Infle o \
                 desinfle, luego conecte.";
                pressure(*pre_charge)
            );
        }
        Task::Glycol { glycol, water } => {
            return say!(
                "{} of pure propylene glycol for heating and {} of clean water, mixed before it \
                 goes in. A product that is diluted takes more of it. Check with a refractometer.",
                "{} de propilenglicol puro para calefacción y {} de agua limpia, mezclados antes \
                 de entrar. De un producto ya diluido hace falta más. Compruebe con un \
                 refractómetro.";
                liquid(*glycol, system),
                liquid(*water, system)
            );
        }
        Task::Fill { pressure: at, volume } => {
            let holds = match volume {
                Some(volume) => say!(
                    " The system takes about {}.",
                    " El sistema lleva unos {}.";
                    liquid(*volume, system)
                ),
                None => String::new(),
            };
            return say!(
                "Slowly, from the bottom, to {} cold at the gauge.{holds} Write the reading on \
                 the commissioning sheet.",
                "Despacio, desde abajo, hasta {} en frío en el manómetro.{holds} Anote la lectura \
                 en la hoja de puesta en marcha.";
                pressure(*at)
            );
        }
        Task::Wire { circulators, zone_valves, control } => {
            let pumps = match circulators {
                1 => either(("1 circulator", "1 circulador")).to_string(),
                count => say!("{count} circulators", "{count} circuladores"),
            };
            let valves = match zone_valves {
                0 => String::new(),
                count => say!(" and {count} zone valves", " y {count} válvulas de zona"),
            };
            let wired = say!(
                "{pumps}{valves}, with a switch in sight of the boiler.",
                "{pumps}{valves}, con un interruptor a la vista de la caldera."
            );
            return match control {
                Some(control) => format!("{wired} {}", crate::control_power(control)),
                None => wired,
            };
        }
        Task::ReliefPipe { setting } => {
            return say!(
                "Set to {} and rated for the boiler's output. Full-size pipe down to a safe \
                 visible place, open at its end, nothing shut or plugged on it.",
                "Ajustada a {} y con capacidad para la potencia de la caldera. Tubo de tamaño \
                 completo hacia abajo hasta un lugar seguro y visible, abierto en su extremo, sin \
                 nada que lo cierre o tape.";
                pressure(*setting)
            );
        }
        Task::Start { limit, supply } => {
            return say!(
                "Gas or oil, flue, combustion air and safety controls by someone licensed, with \
                 the combustion measured. High limit no higher than {}; this plan runs at {}.",
                "Gas o aceite de calefacción, chimenea, aire de combustión y controles de \
                 seguridad por alguien con licencia, con la combustión medida. Límite alto no \
                 mayor de {}; este plan trabaja a {}.";
                value(*limit, system),
                value(*supply, system)
            );
        }
        Task::ResetControl(Setting { slope, shift, .. }) => {
            return say!(
                "Slope {}, shift {}; the plan's page of boiler and fill has the whole line.",
                "Pendiente {}, desplazamiento {}; la página de caldera y llenado del plan tiene \
                 la línea entera.";
                value(Value::number(*slope), system),
                value(*shift, system)
            );
        }
        Task::FirstHeat { supply } => {
            return say!(
                "Every thermostat up, water to {}. Listen for gurgling and ticking, bleed again, \
                 watch gauge and joints while it warms, and top up to the fill pressure once it \
                 is cold.",
                "Todos los termostatos al máximo, agua a {}. Escuche si gorgotea o cruje, saque \
                 el aire otra vez, vigile manómetro y uniones mientras se calienta, y complete \
                 hasta la presión de llenado cuando esté frío.";
                value(*supply, system)
            );
        }
    };
    how.to_string()
}

fn liquid(volume: Volume, system: System) -> String {
    value(Value::liquid(volume), system)
}
