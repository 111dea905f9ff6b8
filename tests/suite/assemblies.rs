//! Assemblies built of layers: against published values, and against the combined method worked
//! apart from the engine.

mod listed;
mod tables;

use finrun_engine::building::assembly::{Fill, Place, Position};
use finrun_engine::building::material::Heat;
use finrun_engine::building::{Assembly, Build, BuildLayer, Framing, Material};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Length, Resistance, Unit};
use proptest::prelude::*;
use proptest::sample::select;

fn us_r(value: f64) -> Fill {
    Fill::Typed(Resistance::of(value, Unit::UsR))
}

fn layer(fill: Fill, inches: f64, place: Place) -> BuildLayer {
    BuildLayer { fill, thickness: Length::of(inches, Unit::Inch), place }
}

fn label(r: f64) -> BuildLayer {
    layer(us_r(r), 0.0, Place::Through)
}

fn batt(r: f64, inches: f64) -> BuildLayer {
    layer(us_r(r), inches, Place::BetweenFraming)
}

fn us_u(position: Position, framing: f64, layers: &[BuildLayer]) -> f64 {
    Build { position, layers: layers.to_vec(), framing }.transmittance().to(Unit::UsU)
}

/// ASHRAE 90.1, normative appendix A, from memory: stucco and 5/8 in of gypsum on both
/// sides of studs 16 in on center, a batt of R-19 pressed to R-18 in 5 1/2 in; an attic with 7 % joists
/// and the rest of the insulation over them; a floor of 3/4 in of wood under carpet and pad
/// 10 % joists. Films, wood and its share in a wall are the project's own: 23 % of an
/// inch, where the appendix has a quarter of.
#[test]
fn published_assemblies_come_out_within_five_percent() {
    let gypsum = label(0.56);
    let wall = |batt| {
        let layers = [label(0.08), gypsum, batt, gypsum];
        us_u(Position::Wall, Framing::StandardWall.share(), &layers)
    };
    let attic = |over| {
        let layers = [gypsum, batt(19.0, 5.5), label(over)];
        us_u(Position::Ceiling, Framing::CeilingJoists.share(), &layers)
    };
    let floor = [label(1.23), label(0.94), batt(19.0, 5.5)];
    let cases = [
        ("wall R-11", wall(batt(11.0, 3.5)), 0.096),
        ("wall R-13", wall(batt(13.0, 3.5)), 0.089),
        ("wall R-19", wall(batt(18.0, 5.5)), 0.067),
        ("wall R-21", wall(batt(21.0, 5.5)), 0.063),
        ("attic R-30", attic(11.0), 0.034),
        ("attic R-38", attic(19.0), 0.027),
        ("floor R-19", us_u(Position::Floor, Framing::FloorJoists.share(), &floor), 0.051),
    ];
    for (name, found, published) in cases {
        assert!((found / published - 1.0).abs() < 0.05, "{name}: {found} against {published}");
    }
}

/// Worked by hand after ISO 6946: studs of 89 mm, 20 % of the area, between them 50 mm of wool of
/// R 1.25 and 39 mm of still air of R 0.18, as two layers; plasterboard of R 0.05 and sheathing of
/// R 0.10; films 0.13 and 0.04.
///
/// Upper limit: cavity 0.32 + 1.43 = 1.75, studs 0.32 + 0.684615 = 1.004615;
/// 1/R = 0.8/1.75 + 0.2/1.004615 = 0.457143 + 0.199081 = 0.656224, R = 1.523870.
/// Lower limit: 1/R = 0.8/1.25 + 0.2/0.384615 = 1.16, R = 0.862069; 1/R = 0.8/0.18 + 0.2/0.3 =
/// 5.111111, R = 0.195652; with the rest 0.32: 1.377721.
/// R = (1.523870 + 1.377721)/2 = 1.450796, U = 0.689277.
#[test]
fn two_layers_between_studs_as_worked_by_hand() {
    let typed = |r, thickness_m, place| BuildLayer {
        fill: Fill::Typed(Resistance::from_si(r)),
        thickness: Length::from_si(thickness_m),
        place,
    };
    let air = BuildLayer {
        fill: Fill::Material(Material::AirCavity),
        thickness: Length::from_si(0.039),
        place: Place::BetweenFraming,
    };
    let build = Build {
        position: Position::Wall,
        layers: vec![
            typed(0.05, 0.0125, Place::Through),
            typed(1.25, 0.05, Place::BetweenFraming),
            air,
            typed(0.10, 0.013, Place::Through),
        ],
        framing: 0.20,
    };
    let found = build.transmittance().si();
    assert!((found - 0.689277).abs() < 2e-6, "{found}");
}

/// ISO 6946, conventional surface resistances, and ISO 13370 for the ground: R_si 0.17 for floors
/// and 0.13 for walls, R_se 0.04. What lies between the films is the same R wherever it stands.
#[test]
fn films_are_those_of_the_standards() {
    let films = [
        (Position::Wall, 0.13 + 0.04),
        (Position::Partition, 0.13 + 0.13),
        (Position::Ceiling, 0.10 + 0.10),
        (Position::Roof, 0.10 + 0.04),
        (Position::Floor, 0.17 + 0.17),
        (Position::Slab, 0.17 + 0.04),
        (Position::GroundWall, 0.13 + 0.04),
    ];
    assert_eq!(films.len(), Position::ALL.len());
    for (position, films) in films {
        let layers = vec![BuildLayer {
            fill: Fill::Typed(Resistance::from_si(1.0)),
            thickness: Length::ZERO,
            place: Place::Through,
        }];
        let r = Build { position, layers, framing: 0.0 }.transmittance().resistance();
        assert!((r.si() - 1.0 - films).abs() < 1e-12, "{position:?}: {r:?}");
    }
    // The listed ones against the ground have them in: 4 in of concrete is R 0.051 by EN 12524.
    let slab = Assembly::SlabBare.transmittance().resistance().si();
    assert!((slab - (0.102 / 2.0 + 0.21)).abs() < 1e-12, "{slab}");
    let wall = Assembly::BasementConcrete.transmittance().resistance().si();
    assert!((wall - (0.203 / 2.0 + 0.17)).abs() < 1e-12, "{wall}");
}

/// R between the films as two strips and as isothermal planes, from plain numbers: the resistance
/// of each layer in the cavity and in the wood.
fn by_strips_and_planes(layers: &[(f64, f64)], framing: f64, films: f64) -> (f64, f64) {
    let (cavity, wood): (Vec<f64>, Vec<f64>) = layers.iter().copied().unzip();
    let through = |strip: Vec<f64>| 1.0 / (films + strip.into_iter().sum::<f64>());
    let upper = 1.0 / ((1.0 - framing) * through(cavity) + framing * through(wood));
    let plane = |(cavity, wood): &(f64, f64)| 1.0 / ((1.0 - framing) / cavity + framing / wood);
    (upper, films + layers.iter().map(plane).sum::<f64>())
}

fn any_layer() -> impl Strategy<Value = BuildLayer> {
    let fill = prop_oneof![
        select(Material::ALL).prop_map(Fill::Material),
        (0.05..6.0_f64).prop_map(|r| Fill::Typed(Resistance::from_si(r))),
    ];
    (fill, 0.002..0.3_f64, any::<bool>()).prop_map(|(fill, thickness_m, between)| BuildLayer {
        fill,
        thickness: Length::from_si(thickness_m),
        place: if between { Place::BetweenFraming } else { Place::Through },
    })
}

proptest! {
    /// ISO 6946: the mean of both limits, and never outside them.
    #[test]
    fn any_build_follows_the_combined_method(
        position in select(Position::ALL),
        layers in prop::collection::vec(any_layer(), 0..7),
        framing in 0.0..=1.0_f64,
    ) {
        let flow = position.flow();
        let plain: Vec<(f64, f64)> = layers.iter().map(|layer| {
            let thickness_m = layer.thickness.si();
            let cavity = match layer.fill {
                Fill::Typed(r) => r.si(),
                Fill::Material(material) => match material.heat(flow) {
                    Heat::Conductivity(lambda) => thickness_m / lambda.si(),
                    Heat::Fixed(r) => r.si(),
                },
            };
            let wood = match layer.place {
                Place::Through => cavity,
                Place::BetweenFraming => thickness_m / 0.13,
            };
            (cavity, wood)
        }).collect();
        let (inside, outside) = position.films();
        let (upper, lower) = by_strips_and_planes(&plain, framing, (inside + outside).si());
        let found = Build { position, layers, framing }.transmittance().resistance().si();
        prop_assert!((found / (0.5 * (upper + lower)) - 1.0).abs() < 1e-9, "{found}");
        prop_assert!(found <= upper * (1.0 + 1e-9) && found >= lower * (1.0 - 1e-9));
    }

    /// A layer of no thickness passes heat as if it were not there; it never makes nonsense.
    #[test]
    fn thin_layers_make_no_nonsense(
        material in select(Material::ALL),
        between in any::<bool>(),
        framing in select(&[0.0, 0.1, 1.0][..]),
    ) {
        let place = if between { Place::BetweenFraming } else { Place::Through };
        let layers = vec![layer(Fill::Material(material), 0.0, place)];
        let u = Build { position: Position::Wall, layers, framing }.transmittance().si();
        prop_assert!(u.is_finite() && u > 0.0 && u <= 1.0 / 0.17 + 1e-9, "{material:?}: {u}");
    }
}
