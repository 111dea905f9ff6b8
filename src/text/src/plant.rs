//! Words of the boiler room: boiler, filling, tank, control.

use crate::language::{Both, either, say};
use crate::value;
use finrun_engine::fluid::Charge;
use finrun_engine::job::{Antifreeze, BoilerKind, PlantField, TankHeating, ValveKind};
use finrun_engine::plant::boiler::{Judged, Running, Size};
use finrun_engine::plant::design::{Alone, Control, Fed, Filling, Reset, Volumes};
use finrun_engine::plant::expansion::{Metal, Tank, TankError};
use finrun_engine::plant::fill::Boiling;
use finrun_engine::plant::return_protection::{Advice, Verdict};
use finrun_engine::quantity::{System, Temperature, TemperatureDifference, Value, Volume};

pub(crate) fn label(field: PlantField) -> &'static str {
    either(match field {
        PlantField::Output => ("Boiler's output", "Potencia de la caldera"),
        PlantField::LeastOutput => ("Least that its burner gives", "Mínimo que da su quemador"),
        PlantField::BoilerVolume => ("Water in the boiler", "Agua en la caldera"),
        PlantField::Differential => {
            ("From burner start to stop", "Del arranque al paro del quemador")
        }
        PlantField::LeastReturn => ("Coolest return it takes", "Retorno más frío que admite"),
        PlantField::TankOutput => ("Heat for the indirect tank", "Calor para el tanque indirecto"),
        PlantField::TopHeight => {
            ("Highest water above the gauge", "Agua más alta sobre el manómetro")
        }
        PlantField::Fill => ("Fill pressure, cold", "Presión de llenado, en frío"),
        PlantField::Relief => ("Relief valve set to", "Válvula de alivio ajustada a"),
        PlantField::OtherVolume => {
            ("Buffer, tank coil and other water", "Tanque de inercia, serpentín y otra agua")
        }
        PlantField::ColdFill => ("Water when filled", "Agua al llenar"),
        PlantField::GlycolShare => ("Propylene glycol, by mass", "Propilenglicol, en masa"),
        PlantField::Balance => ("The house needs no heat from", "La casa no necesita calor desde"),
    })
}

pub(crate) fn note(field: PlantField) -> &'static str {
    either(match field {
        PlantField::Output => (
            "What it gives to the water, not what it burns. Blank: not judged.",
            "Lo que da al agua, no lo que quema. En blanco: no se juzga.",
        ),
        PlantField::LeastOutput => (
            "Blank: as much, for a burner that is only on or off.",
            "En blanco: lo mismo, para un quemador que solo enciende o apaga.",
        ),
        PlantField::LeastReturn => (
            "130 °F for gas is practice; the maker's word stands above it.",
            "130 °F para gas es la práctica; la palabra del fabricante está por encima.",
        ),
        PlantField::TopHeight => (
            "Gauge, expansion tank and relief valve stand beside each other. Blank: 9 ft a storey \
             from a basement up.",
            "Manómetro, tanque de expansión y válvula de alivio están uno junto a otro. En \
             blanco: 9 pies por piso, contados desde un sótano.",
        ),
        PlantField::Fill => (
            "Blank: the water's weight and 5 psi at the top.",
            "En blanco: el peso del agua y 5 psi arriba.",
        ),
        PlantField::GlycolShare => (
            "Of the filling. Less than a quarter protects poorly against corrosion too. What it \
             takes from the elements' output beyond its own heat capacity is yours to judge: \
             lower the share of the rating that counts.",
            "Del llenado. Menos de un cuarto protege mal también contra la corrosión. Lo que \
             quita a la potencia de los elementos, aparte de su propia capacidad de calor, le \
             toca juzgarlo a usted: baje la parte de la potencia nominal que cuenta.",
        ),
        PlantField::Balance => (
            "Outdoors; sun and people do the rest.",
            "Temperatura exterior; el sol y las personas hacen el resto.",
        ),
        _ => ("", ""),
    })
}

pub(crate) fn boiler_kind(kind: BoilerKind) -> &'static str {
    either(match kind {
        BoilerKind::NonCondensing => (
            "Not condensing (cast iron and the like)",
            "Sin condensación (hierro fundido y similares)",
        ),
        BoilerKind::Condensing => ("Condensing", "De condensación"),
    })
}

pub(crate) fn tank_heating(tank: TankHeating) -> &'static str {
    either(match tank {
        TankHeating::None => ("None", "Ninguno"),
        TankHeating::AtOnce => ("Heated while the house is", "Se calienta junto con la casa"),
        TankHeating::Priority => {
            ("Heated first, the house waits", "Se calienta primero, la casa espera")
        }
    })
}

pub(crate) fn metal(metal: Metal) -> &'static str {
    either(match metal {
        Metal::Copper => ("Copper", "Cobre"),
        Metal::Steel => ("Steel or plastic", "Acero o plástico"),
    })
}

pub(crate) fn valve_kind(valve: ValveKind) -> &'static str {
    either(match valve {
        ValveKind::Motor => ("With a motor, 0.32 A each", "Con motor, 320 mA cada una"),
        ValveKind::HeatedElement => {
            ("With a heated element, 0.9 A each", "Con elemento térmico, 900 mA cada una")
        }
    })
}

pub(crate) fn antifreeze(antifreeze: Antifreeze) -> &'static str {
    either(match antifreeze {
        Antifreeze::None => ("None, water", "Ninguno, agua"),
        Antifreeze::PropyleneGlycol => {
            ("Propylene glycol for heating", "Propilenglicol para calefacción")
        }
    })
}

/// A time as people say it.
pub(crate) fn minutes(seconds: f64) -> String {
    match seconds {
        s if s < 90.0 => format!("{s:.0} s"),
        s => format!("{:.0} min", s / 60.0),
    }
}

fn liquid(volume: Volume, system: System) -> String {
    value(Value::liquid(volume), system)
}

/// A known boiler against what is needed.
pub fn boiler_judged(judged: Judged, system: System) -> String {
    let share = value(Value::share(judged.ratio), system);
    let verdict = either(match judged.verdict {
        Size::Short => ("too small", "demasiado pequeña"),
        Size::Fits => ("it fits", "es adecuada"),
        Size::Oversized => ("more than it should be", "más de lo que debe ser"),
    });
    say!(
        "The boiler's output is {share} of what is needed: {verdict}.",
        "La potencia de la caldera es {share} de lo que hace falta: {verdict}."
    )
}

/// How the burner runs while one zone calls; `zone` is its name, none where there is but one.
pub fn burner_alone(alone: &Alone, zone: Option<&str>, system: System) -> String {
    let who = match zone {
        Some(zone) => say!("{zone} alone takes", "{zone} por sí sola toma"),
        None => either(("The loop takes", "El circuito toma")).to_string(),
    };
    let load = value(alone.load, system);
    match alone.running {
        Running::Throughout => say!(
            "{who} {load}: the burner runs throughout.",
            "{who} {load}: el quemador marcha todo el tiempo."
        ),
        Running::Cycling(cycle) => {
            let buffer = match alone.buffer > Volume::ZERO {
                true => say!(
                    " With {} more water it would run for ten minutes.",
                    " Con {} más de agua marcharía diez minutos.";
                    liquid(alone.buffer, system)
                ),
                false => String::new(),
            };
            say!(
                "{who} {load} at the design supply, and {} circulate: burner on for {}, off for \
                 {}.{buffer}",
                "{who} {load} con el suministro de diseño, y circulan {}: quemador encendido {}, \
                 apagado {}.{buffer}";
                liquid(alone.volume, system),
                minutes(cycle.on_s),
                minutes(cycle.off_s)
            )
        }
    }
}

pub fn back_verdict(verdict: Verdict, system: System) -> String {
    let degrees = |difference: TemperatureDifference| value(difference, system);
    match verdict {
        Verdict::Protected { margin } => {
            say!(
                "The return is {} warmer than the boiler asks for.",
                "El retorno está {} más caliente de lo que pide la caldera.";
                degrees(margin)
            )
        }
        Verdict::Cold { below, advice } => {
            let cure = match advice {
                Advice::Bypass(mixing) => say!(
                    "A bypass for {} of the boiler's flow warms it; a mixing valve also while the \
                     house warms up.",
                    "Un bypass para {} del caudal de la caldera lo calienta; una válvula \
                     mezcladora, también mientras la casa se calienta.";
                    value(Value::share(mixing.supply_share), system)
                ),
                Advice::MixingValve(_) => either((
                    "A mixing valve at the boiler's inlet warms it.",
                    "Una válvula mezcladora a la entrada de la caldera lo calienta.",
                ))
                .to_string(),
                Advice::HotterBoiler => either((
                    "Run the boiler hotter, and mix its water down for the loop.",
                    "Use la caldera más caliente, y mezcle su agua hacia abajo para el circuito.",
                ))
                .to_string(),
            };
            say!(
                "The return is {} too cool: flue gas may condense. {cure}",
                "El retorno está {} demasiado frío: los gases de combustión pueden condensar. \
                 {cure}";
                degrees(below)
            )
        }
        Verdict::Condenses { below } => say!(
            "The return is {} below the dew point of gas flue gas: the boiler condenses.",
            "El retorno está {} por debajo del punto de rocío de los gases de combustión del gas: \
             la caldera condensa.";
            degrees(below)
        ),
        Verdict::DoesNotCondense { above } => say!(
            "On the design day the return is {} above the dew point of gas flue gas: it condenses \
             only on milder days, with outdoor reset.",
            "En el día de diseño el retorno está {} por encima del punto de rocío de los gases de \
             combustión del gas: solo condensa en días más templados, con compensación exterior.";
            degrees(above)
        ),
    }
}

/// How a control is set to the line.
pub fn reset_line(reset: &Reset, supply: Temperature, system: System) -> String {
    let slope = value(Value::number(reset.setting.slope), system);
    let shift = value(reset.setting.shift, system);
    let line = say!(
        "Slope {slope}, shift {shift}; high limit at {}. The line is above what is needed by up \
         to {}.",
        "Pendiente {slope}, desplazamiento {shift}; límite alto en {}. La línea está hasta {} por \
         encima de lo necesario.";
        value(supply, system),
        value(reset.setting.excess, system)
    );
    match reset.least_supply {
        Some(least) => say!(
            "{line} A boiler that must not condense needs {} or more, or a mixing valve.",
            "{line} Una caldera que no debe condensar necesita {} o más, o una válvula mezcladora.";
            value(least, system)
        ),
        None => line,
    }
}

pub fn volume_parts(volumes: &Volumes, system: System) -> String {
    let [tubes, elements, boiler, other] =
        [volumes.tubes, volumes.elements, volumes.boiler, volumes.other]
            .map(|volume| liquid(volume, system));
    say!(
        "Pipes {tubes}, elements {elements}, boiler {boiler}, other {other}.",
        "Tubos {tubes}, elementos {elements}, caldera {boiler}, otros {other}."
    )
}

pub fn tank_said(tank: &Tank, system: System) -> String {
    let takes = liquid(tank.acceptance, system);
    let usual = match tank.usual {
        Some(usual) => say!(
            "the next usual size is {}",
            "el tamaño usual siguiente es {}";
            liquid(usual, system)
        ),
        None => either((
            "usual sizes end before: use two",
            "los tamaños usuales no llegan a tanto: use dos",
        ))
        .to_string(),
    };
    say!(
        "The expansion tank takes up {takes}; {usual}. Charge its air to {} before it is filled.",
        "El tanque de expansión recibe {takes}; {usual}. Cargue su aire a {} antes de llenar.";
        value(tank.pre_charge, system)
    )
}

/// Why there is no tank.
pub fn no_tank(error: TankError) -> &'static str {
    either(match error {
        TankError::Volume => ("The system holds nothing.", "El sistema no contiene nada."),
        TankError::Cold => (
            "The water is filled in colder than it freezes.",
            "El agua entra más fría de lo que se congela.",
        ),
        TankError::Hot => (
            "The supply is hotter than the liquid's data.",
            "El suministro está más caliente que los datos del líquido.",
        ),
        TankError::NotWarmer => (
            "The supply is no warmer than the water that is filled in.",
            "El suministro no está más caliente que el agua con que se llena.",
        ),
        TankError::Fill => (
            "The fill pressure is below that of the air.",
            "La presión de llenado está por debajo de la del aire.",
        ),
        TankError::NotAboveFill => (
            "The fill pressure is too near to the relief valve's setting: no tank is large enough.",
            "La presión de llenado está demasiado cerca del ajuste de la válvula de alivio: \
             ningún tanque es bastante grande.",
        ),
    })
}

pub fn pressures_said(filling: &Filling, system: System) -> String {
    let top = say!(
        "The fill pressure leaves {} at the top.",
        "La presión de llenado deja {} arriba.";
        value(filling.at_top, system)
    );
    let Some(hot) = filling.hot else { return top };
    say!(
        "{top} Hot, the gauge comes to {}, {} below the relief valve's setting.",
        "{top} En caliente el manómetro llega a {}, {} por debajo del ajuste de la válvula de \
         alivio.";
        value(hot, system),
        value(filling.relief.margin, system)
    )
}

pub fn boiling_margin(boiling: &Boiling, system: System) -> String {
    let (at, margin) = (value(boiling.boils_at, system), value(boiling.margin.abs(), system));
    let side = if boiling.margin < TemperatureDifference::ZERO {
        either(("below", "por debajo"))
    } else {
        either(("above", "por encima"))
    };
    say!(
        "At the highest place water boils at {at}, {margin} {side} the supply.",
        "En el lugar más alto el agua hierve a {at}, {margin} {side} del suministro."
    )
}

pub fn glycol_charge(charge: &Charge, freezes_at: Temperature, system: System) -> String {
    say!(
        "{} of pure propylene glycol and {} of water, both at room temperature; crystals from {} \
         on. A product that is diluted takes more of it.",
        "{} de propilenglicol puro y {} de agua, los dos a temperatura ambiente; cristales a \
         partir de {}. De un producto ya diluido hace falta más.";
        liquid(charge.glycol, system),
        liquid(charge.water, system),
        value(freezes_at, system)
    )
}

pub fn control_power(control: &Control) -> String {
    let what = match (control.feeds, control.coils) {
        (Fed::ZoneValves, count) => {
            say!("{count} zone valves draw", "Válvulas de zona: {count}; consumen")
        }
        (Fed::Relays, 1) => either(("1 relay draws", "1 relé consume")).to_string(),
        (Fed::Relays, count) => say!("{count} relays draw", "{count} relés consumen"),
    };
    let transformers = &control.transformers;
    let of = match transformers.count {
        1 => say!(
            "a transformer of {:.0} VA",
            "un transformador de {:.0} VA";
            transformers.each_va
        ),
        count => say!(
            "{count} transformers of {:.0} VA",
            "{count} transformadores de {:.0} VA";
            transformers.each_va
        ),
    };
    say!(
        "{what} {:.0} VA at 24 V: {of} (usual draws; the label wins).",
        "{what} {:.0} VA a 24 V: {of} (consumos usuales; manda la etiqueta).";
        transformers.load_va
    )
}

/// What to heed at the boiler; the safety page has the rest.
pub fn plant_cautions() -> Vec<&'static str> {
    PLANT_CAUTIONS.iter().map(|&caution| either(caution)).collect()
}

const PLANT_CAUTIONS: &[Both] = &[
    (
        "The relief valve's outlet goes by full-size pipe, without a valve or plug, to a place \
         where hot water hurts nobody.",
        "La salida de la válvula de alivio va por tubo de tamaño completo, sin válvula ni tapón, \
         a un lugar donde el agua caliente no lastime a nadie.",
    ),
    (
        "Gas, flue and combustion air are licensed work; carbon monoxide alarms on every level.",
        "Gas, chimenea y aire de combustión son trabajo con licencia; alarmas de monóxido de \
         carbono en cada piso.",
    ),
    (
        "Boiler, circulators, transformer and relays are wired by someone licensed.",
        "Caldera, circuladores, transformador y relés los conecta alguien con licencia.",
    ),
    (
        "The fill line needs a backflow preventer: heating water must not reach the drinking \
         water.",
        "La línea de llenado necesita un dispositivo antirreflujo: el agua de calefacción no debe \
         llegar al agua potable.",
    ),
    (
        "Glycol made for heating only, never automotive antifreeze, and only where the boiler's \
         maker and the code allow it.",
        "Solo glicol hecho para calefacción, nunca anticongelante de automóvil, y solo donde lo \
         permitan el fabricante de la caldera y el código.",
    ),
];
