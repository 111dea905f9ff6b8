//! The methods behind a job, as its report names them.

use crate::language::{either, say};
use crate::{flow_basis, heating_effect, objective, value};
use finrun_engine::building::SurfaceKind;
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{
    AirBasis, Behind, Draft, Field, GroundMethod, HouseField, PumpKind, RatingBasis, Zoning,
    resolve,
};
use finrun_engine::quantity::{System, Value};

/// By which methods a job was worked out: what it chose among them, in sentences.
pub fn methods(draft: &Draft, system: System) -> Vec<String> {
    let mut said = vec![
        either((
            "Heat loss is steady, on the design day: no gains from sun or people, no reheat.",
            "La pérdida de calor es constante, en el día de diseño: sin aportes de sol ni de \
             personas, sin recalentamiento.",
        ))
        .to_string(),
    ];
    let margin = resolve(draft, Field::House(HouseField::Margin)).si().unwrap_or(0.0);
    said.push(match margin > 0.0 {
        true => say!(
            "A margin of {} is added to every room; nothing else is added.",
            "Se agrega un margen de {} a cada habitación; nada más se agrega.";
            value(Value::share(margin), system)
        ),
        false => {
            either(("No margin is added to any room.", "No se agrega margen a ninguna habitación."))
                .to_string()
        }
    });
    said.push(
        either(match draft.air.basis {
            AirBasis::Class => (
                "Air: by a class of tightness, as air changes, shared among the rooms by the area \
                 they show to outdoors and to unheated spaces.",
                "Aire: por una clase de hermeticidad, en cambios de aire, repartidos entre las \
                 habitaciones según el área que dan al exterior y a espacios sin calefacción.",
            ),
            AirBasis::BlowerDoor => (
                "Air: by a blower door test and the model of Sherman and Grimsrud, shared among \
                 the rooms by the area they show to outdoors and to unheated spaces.",
                "Aire: por una prueba de puerta sopladora y el modelo de Sherman y Grimsrud, \
                 repartido entre las habitaciones según el área que dan al exterior y a espacios \
                 sin calefacción.",
            ),
            AirBasis::LeakageArea => (
                "Air: by a leakage area and the model of Sherman and Grimsrud, shared among the \
                 rooms by the area they show to outdoors and to unheated spaces.",
                "Aire: por un área de fugas y el modelo de Sherman y Grimsrud, repartido entre \
                 las habitaciones según el área que dan al exterior y a espacios sin calefacción.",
            ),
        })
        .to_string(),
    );
    let mut surfaces = draft.all_rooms().flat_map(|room| &room.surfaces);
    if surfaces.any(|surface| surface.behind == Behind::Ground) {
        let floors = draft.all_rooms().flat_map(|room| &room.surfaces);
        let mut floors = floors.filter(|surface| surface.kind == SurfaceKind::Floor);
        let slab = floors.any(|surface| surface.behind == Behind::Ground);
        said.push(
            either(match draft.ground.method {
                GroundMethod::FFactor if slab => (
                    "Ground: slabs by the F-factor of US codes along their edge, walls by ISO \
                     13370.",
                    "Suelo: losas por el factor F de los códigos de EE. UU. a lo largo de su \
                     borde, paredes por ISO 13370.",
                ),
                _ => (
                    "Ground: by ISO 13370, whose formulas were read in public implementations of \
                     it.",
                    "Suelo: por ISO 13370, cuyas fórmulas se leyeron en implementaciones públicas \
                     de la norma.",
                ),
            })
            .to_string(),
        );
    }
    if !draft.spaces.is_empty() {
        said.push(
            either((
                "Unheated spaces are at the temperature of their own balance, but where one is \
                 typed.",
                "Los espacios sin calefacción están a la temperatura de su propio balance, salvo \
                 donde se escribió una.",
            ))
            .to_string(),
        );
    }
    said.push(match draft.element.rating_basis {
        RatingBasis::Single => either((
            "Element: one rated output and an exponent, carried along the tube exactly as the \
             water cools.",
            "Elemento: una potencia nominal y un exponente, llevados a lo largo del tubo \
             exactamente como se enfría el agua.",
        ))
        .to_string(),
        RatingBasis::Table => either((
            "Element: a curve fitted to a maker's table, carried along the tube exactly as the \
             water cools.",
            "Elemento: una curva ajustada a la tabla de un fabricante, llevada a lo largo del \
             tubo exactamente como se enfría el agua.",
        ))
        .to_string(),
    });
    said.push(match draft.element.heating_effect {
        HeatingEffect::Unknown => either((
            "Whether a heating effect is in the rating is not known: it is taken as typed.",
            "No se sabe si la potencia nominal incluye un efecto de calefacción: se toma como \
             está escrita.",
        ))
        .to_string(),
        effect => say!("Rating: {}.", "Potencia nominal: {}."; heating_effect(effect)),
    });
    said.push(say!(
        "Pieces are chosen for: {}.",
        "Las piezas se eligen para: {}.";
        objective(draft.element.objective)
    ));
    said.push(say!("Flow: {}.", "Caudal: {}."; flow_basis(draft.flow_basis)));
    let own = draft.zones.len() > 1 && draft.zoning == Zoning::Circulators;
    let typed = match own {
        true => draft.zones.iter().all(|zone| zone.pump == PumpKind::Points),
        false => draft.pump.kind == PumpKind::Points,
    };
    said.push(match typed {
        true => either((
            "Circulator: by the points of its curve.",
            "Circulador: por los puntos de su curva.",
        ))
        .to_string(),
        false => either((
            "Circulator: by a typical curve, which is no maker's, and is a judgement.",
            "Circulador: por una curva típica, que no es de ningún fabricante y es criterio \
             propio.",
        ))
        .to_string(),
    });
    said.push(
        either((
            "Water: properties fitted to IAPWS; friction after Darcy, Weisbach and Colebrook; \
             fittings in the form of Crane TP-410, from memory.",
            "Agua: propiedades ajustadas a IAPWS; fricción según Darcy, Weisbach y Colebrook; \
             conexiones en la forma de Crane TP-410, de memoria.",
        ))
        .to_string(),
    );
    said
}
