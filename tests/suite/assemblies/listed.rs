//! The starter list: near published values, complete, and in order.

use finrun_engine::building::assembly::Position;
use finrun_engine::building::{Assembly, Framing, Material, Used};
use finrun_engine::named::{Named, find};
use finrun_engine::quantity::Unit;
use std::collections::BTreeSet;

/// From memory: IECC's U for a wall of R-13 with R-5 outside; ASHRAE 90.1 appendix A for an attic of
/// R-60 and single rafters of, which there are 7 % of the area and here 10 %.
#[test]
fn new_assemblies_stand_near_published_ones() {
    let cases = [
        (Assembly::FrameWallR13R5, 0.060, 0.05),
        (Assembly::AtticCeilingR60, 0.017, 0.05),
        (Assembly::CathedralR19, 0.053, 0.08),
        (Assembly::CathedralR30, 0.036, 0.08),
    ];
    for (assembly, published, width) in cases {
        let found = assembly.transmittance().to(Unit::UsU);
        assert!((found / published - 1.0).abs() < width, "{assembly:?}: {found}");
    }
}

/// Job files hold these names.
#[test]
fn names_once_stored_stay() {
    const STORED: [(&str, Used); 26] = [
        ("frame-wall-empty", Used::Wall),
        ("frame-wall-r11", Used::Wall),
        ("frame-wall-r13", Used::Wall),
        ("frame-wall-r19", Used::Wall),
        ("frame-wall-r21", Used::Wall),
        ("brick-wall", Used::Wall),
        ("block-wall", Used::Wall),
        ("partition", Used::Wall),
        ("attic-ceiling-empty", Used::Ceiling),
        ("attic-ceiling-r11", Used::Ceiling),
        ("attic-ceiling-r19", Used::Ceiling),
        ("attic-ceiling-r30", Used::Ceiling),
        ("attic-ceiling-r38", Used::Ceiling),
        ("attic-ceiling-r49", Used::Ceiling),
        ("joist-floor-empty", Used::Floor),
        ("joist-floor-r11", Used::Floor),
        ("joist-floor-r19", Used::Floor),
        ("joist-floor-r30", Used::Floor),
        ("window-wood-single", Used::Window),
        ("window-wood-double", Used::Window),
        ("window-metal-single", Used::Window),
        ("window-metal-double", Used::Window),
        ("window-low-e", Used::Window),
        ("door-wood", Used::Door),
        ("door-metal-insulated", Used::Door),
        ("door-r5", Used::Door),
    ];
    for (name, used) in STORED {
        assert_eq!(find(name).map(Assembly::used), Some(used), "{name}");
    }
}

fn distinct<T: Named>() -> bool {
    let names: BTreeSet<&str> = T::ALL.iter().map(|thing| thing.name()).collect();
    names.len() == T::ALL.len() && !names.contains("")
}

#[test]
fn every_assembly_has_a_name_a_use_and_a_sound_u() {
    assert!(distinct::<Assembly>() && distinct::<Material>());
    assert!(distinct::<Framing>() && distinct::<Position>());
    for &assembly in Assembly::ALL {
        let u = assembly.transmittance().to(Unit::UsU);
        assert!(u.is_finite() && (0.01..1.5).contains(&u), "{assembly:?}: {u}");
        assert!(!finrun_text::assembly(assembly).is_empty());
        let built = assembly.build().map(|build| build.transmittance());
        assert!(built.is_none_or(|built| built == assembly.transmittance()), "{assembly:?}");
    }
    let uses = [
        Used::Wall,
        Used::Ceiling,
        Used::Floor,
        Used::Window,
        Used::Door,
        Used::GarageDoor,
        Used::Slab,
        Used::BasementWall,
        Used::Roof,
    ];
    let listed: Vec<Assembly> = uses.into_iter().flat_map(Assembly::used_in).collect();
    assert_eq!(listed, Assembly::ALL, "each once, in the order of the list");
    // Two on one list that read alike could not be told apart.
    let words: BTreeSet<_> =
        Assembly::ALL.iter().map(|a| (a.used() as u8, finrun_text::assembly(*a))).collect();
    assert_eq!(words.len(), Assembly::ALL.len());
}

#[test]
fn more_insulation_loses_less() {
    use Assembly::*;
    let falling: [&[Assembly]; 9] = [
        &[StudWallBare, FrameWallEmpty, FrameWallR7, FrameWallR11, FrameWallBlown, FrameWallR13],
        &[FrameWallR13, FrameWallR19, FrameWallR21, FrameWallR19R5],
        &[FrameWallR13, FrameWallR13R5, FrameWallR19R5, SipWall6],
        &[StoneWall18, BrickWall, BrickWall12, BrickVeneerR11],
        &[
            AtticCeilingEmpty,
            AtticCeilingR11,
            AtticCeilingR19,
            AtticCeilingR30,
            AtticCeilingR38,
            AtticCeilingR49,
            AtticCeilingR60,
        ],
        &[RoofDeck, CathedralEmpty, CathedralR19, FlatRoofR20, CathedralR30],
        &[SlabBare, SlabR5, SlabR10],
        &[BasementConcrete, BasementBlock, BasementStone, BasementConcreteR5, BasementConcreteR10],
        &[
            WindowWoodSingle,
            WindowWoodDouble,
            WindowStorm,
            WindowTriple,
            WindowLowE,
            WindowTripleLowE,
        ],
    ];
    for chain in falling {
        for pair in chain.windows(2) {
            let u = |assembly: Assembly| assembly.transmittance();
            assert!(u(pair[0]) > u(pair[1]), "{pair:?}: {:?} {:?}", u(pair[0]), u(pair[1]));
        }
    }
}
