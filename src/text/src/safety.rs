//! The cautions, short. They defer to local codes and licensed practice.

use crate::language::{Both, either};
use finrun_engine::install::Danger;

/// What to heed at a step, in a line or two; [`CAUTIONS`] has the whole.
pub fn danger(danger: Danger) -> &'static str {
    either(match danger {
        Danger::Scald => (
            "Hot water under pressure scalds: cool down and drain before anything is opened.",
            "El agua caliente a presión quema: enfríe y vacíe antes de abrir cualquier cosa.",
        ),
        Danger::Relief => (
            "What the relief valve lets out burns: its pipe ends where it hurts nobody and can be \
             seen, and is never shut, plugged or made narrower.",
            "Lo que suelta la válvula de alivio quema: su tubo termina donde no dañe a nadie y se \
             pueda ver, y nunca se cierra, se tapa ni se hace más angosto.",
        ),
        Danger::Fire => (
            "Soldering sets houses on fire, also an hour later: extinguisher, heat shield and \
             someone who watches. Some places ask for a permit.",
            "Soldar incendia casas, también una hora después: extintor, protección contra el calor \
             y alguien que vigile. En algunos lugares se necesita permiso.",
        ),
        Danger::Gas => (
            "Gas, oil, flue and combustion air are licensed work. Carbon monoxide kills without a \
             smell.",
            "El gas, el combustible, la chimenea y el aire de combustión son trabajo con licencia. \
             El monóxido de carbono mata y no huele.",
        ),
        Danger::Mains => (
            "Mains kill: licensed hands, power off, tested to be off.",
            "La corriente eléctrica mata: manos con licencia, corriente cortada, y comprobado que \
             está cortada.",
        ),
        Danger::OldHouse => (
            "Asbestos and lead: do not cut, sand or strip what may hold them until it was tested.",
            "Asbesto y plomo: no corte, lije ni quite lo que pueda tenerlos hasta que se haya \
             analizado.",
        ),
        Danger::Freezing => (
            "Pipe in cold spaces freezes and bursts: insulate, keep it warm, or glycol.",
            "La tubería en espacios fríos se congela y revienta: aísle, manténgala caliente, o use \
             glicol.",
        ),
        Danger::Structure => (
            "Holes and notches in joists and studs only where the code allows them; none in beams, \
             posts or trusses without an engineer.",
            "Agujeros y muescas en vigas y montantes solo donde el código los permite; ninguno en \
             vigas maestras, postes ni armaduras sin un ingeniero.",
        ),
        Danger::DrinkingWater => (
            "Heating water must not reach the drinking water: a backflow preventer on the fill \
             line, as the code asks, and never a hose left connected.",
            "El agua de calefacción no debe llegar al agua potable: un dispositivo antirreflujo en \
             la línea de llenado, como pide el código, y nunca una manguera que se queda conectada.",
        ),
        Danger::Pressure => (
            "Compressed air in a test bursts like a bomb: water only, eyes protected, and off \
             before anything is mended.",
            "El aire comprimido en una prueba revienta como una bomba: solo agua, ojos protegidos, \
             y sin presión antes de corregir algo.",
        ),
    })
}

/// A heading with what to heed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    title: Both,
    text: Both,
}

impl Caution {
    pub fn title(&self) -> &'static str {
        either(self.title)
    }

    pub fn text(&self) -> &'static str {
        either(self.text)
    }
}

pub const CAUTIONS: &[Caution] = &[
    Caution {
        title: ("Codes and licences come first", "Los códigos y las licencias van primero"),
        text: (
            "Local codes, permits, inspections and the makers' instructions stand above this plan. \
             Where the law or doubt says so, a licensed heating, gas, plumbing or electrical \
             tradesperson does the work or checks it.",
            "Los códigos locales, permisos, inspecciones y las instrucciones de los fabricantes \
             están por encima de este plan. Donde lo diga la ley o haya duda, el trabajo lo hace o \
             lo revisa un técnico con licencia en calefacción, gas, plomería o electricidad.",
        ),
    },
    Caution {
        title: ("Hot water under pressure", "Agua caliente a presión"),
        text: (
            "Heating water scalds, and a closed loop without a working relief valve can burst. Fit \
             the pressure relief valve the boiler calls for, piped to a safe place, never plugged, \
             never with a shut-off before it. Cool down and drain before you open anything. \
             Baseboard gets hot enough to burn small children.",
            "El agua de calefacción quema, y un circuito cerrado sin una válvula de alivio que \
             funcione puede reventar. Ponga la válvula de alivio de presión que pide la caldera, \
             con tubo hasta un lugar seguro, nunca tapada, nunca con una válvula de paso delante. \
             Enfríe y vacíe antes de abrir cualquier cosa. El zócalo se calienta lo bastante para \
             quemar a niños pequeños.",
        ),
    },
    Caution {
        title: ("Gas, oil and carbon monoxide", "Gas, combustible y monóxido de carbono"),
        text: (
            "Fuel piping, burners, flues and combustion air are licensed work. Fit carbon monoxide \
             alarms on every level. Smell gas: touch no switch, leave, call from outside.",
            "La tubería de combustible, los quemadores, las chimeneas y el aire de combustión son \
             trabajo con licencia. Ponga alarmas de monóxido de carbono en cada piso. Si huele a \
             gas: no toque ningún interruptor, salga, llame desde afuera.",
        ),
    },
    Caution {
        title: ("Soldering is fire", "Soldar es fuego"),
        text: (
            "Clear away or shield what burns, keep an extinguisher and water at hand, and watch \
             the place for an hour afterwards. Solder for heating may still not contain lead where \
             drinking water is near. Wear eye protection; ventilate.",
            "Retire o proteja lo que arde, tenga a mano un extintor y agua, y vigile el lugar una \
             hora después. La soldadura para calefacción tampoco debe tener plomo donde el agua \
             potable está cerca. Use protección para los ojos; ventile.",
        ),
    },
    Caution {
        title: ("Mains electricity", "Corriente eléctrica"),
        text: (
            "Boilers, circulators, zone valves and their relays are wired by someone licensed, \
             with the power off and tested to be off.",
            "Las calderas, los circuladores, las válvulas de zona y sus relés los conecta \
             alguien con licencia, con la corriente cortada y comprobado que está cortada.",
        ),
    },
    Caution {
        title: ("Old houses: asbestos and lead", "Casas viejas: asbesto y plomo"),
        text: (
            "Pipe wrap, boiler jackets, floor tiles and plaster of before about 1990 may hold \
             asbestos, paint of before about 1980 lead. Do not cut, sand or strip them: have them \
             tested first.",
            "El forro de tubos, las cubiertas de calderas, las losetas y el yeso de antes de 1990, \
             más o menos, pueden tener asbesto; la pintura de antes de 1980, más o menos, plomo. \
             No los corte, lije ni quite: primero mándelos analizar.",
        ),
    },
    Caution {
        title: ("Structure", "Estructura"),
        text: (
            "Do not notch or bore joists and studs beyond what the code allows, and no beam, post \
             or bearing plate without an engineer. Know what runs inside a wall or floor before \
             you drill.",
            "No haga muescas ni agujeros en vigas y montantes más allá de lo que permite el \
             código, y en ninguna viga maestra, poste ni solera de carga sin un ingeniero. Sepa \
             qué hay dentro de una pared o piso antes de taladrar.",
        ),
    },
    Caution {
        title: ("Freezing, and the drinking water", "Congelación, y el agua potable"),
        text: (
            "A heating loop in a cold space can freeze and burst. The fill line needs the backflow \
             preventer that the code asks for, and glycol only of the kind it allows.",
            "Un circuito de calefacción en un espacio frío puede congelarse y reventar. La línea \
             de llenado necesita el dispositivo antirreflujo que pide el código, y glicol solo de \
             la clase que permite.",
        ),
    },
    Caution {
        title: ("What this tool is", "Qué es esta herramienta"),
        text: (
            "A calculation from what you typed. It measures nothing and inspects nothing. Check \
             the result against the house, and have it checked where lives or money hang on it.",
            "Un cálculo con lo que usted escribió. No mide nada ni inspecciona nada. Compare el \
             resultado con la casa, y mándelo revisar donde dependan de él vidas o dinero.",
        ),
    },
];
