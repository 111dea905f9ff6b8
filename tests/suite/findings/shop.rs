//! Jobs for what the shop has: prices, counts, walls and pieces that stay.

use super::cases::{Case, typed_flow, wall};
use super::{FIRST, FIRST_WALL, SECOND, SECOND_WALL, sound};
use crate::support::{add_wall, room, set, solve};
use finrun_engine::building::WallUse;
use finrun_engine::check::Finding;
use finrun_engine::job::{
    Draft, Field, Objective, PriceField, RoomField, StockField, SurfaceField,
};
use finrun_engine::quantity::{Length, Power, Unit};

fn stocked(draft: &mut Draft, feet: u8, field: StockField, text: &str) {
    set(draft, Field::Stocked(feet, field), text);
}

fn available(draft: &mut Draft, feet: u8, text: &str) {
    stocked(draft, feet, StockField::Available, text);
}

/// The least cost, with a price for all lengths but these.
fn priced_but(draft: &mut Draft, without: &[u8]) {
    draft.element.objective = Objective::LeastCost;
    for feet in draft.element.stock_ft.clone() {
        if !without.contains(&feet) {
            stocked(draft, feet, StockField::Price, &format!("{}", 10 + 8 * u32::from(feet)));
        }
    }
}

fn first_wall(draft: &mut Draft, wall_use: WallUse) {
    draft.surface_mut(FIRST, FIRST_WALL).expect("its wall").wall_use = wall_use;
}

/// A wall of the first room's own inside, which loses nothing to speak of.
fn inside_wall(draft: &mut Draft, free: &str, wall_use: WallUse) {
    let id = add_wall(draft, FIRST, "6", "0.005");
    set(draft, Field::Surface(FIRST, id, SurfaceField::Area), "0.1");
    set(draft, Field::Surface(FIRST, id, SurfaceField::Free), free);
    draft.surface_mut(FIRST, id).expect("just added").wall_use = wall_use;
}

/// An 8 ft piece in each room, where some 6 ft are needed and 11 fit.
fn keep_eights(draft: &mut Draft) {
    draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![8]);
    draft.fix_pieces(SECOND, SECOND_WALL, 0, vec![8]);
}

const HEATED: &str = "holds house rooms-heated";

pub(super) const SHOP: &[Case] = &[
    Case {
        change: |draft| priced_but(draft, &[7]),
        brings: &["watch house prices-missing: type-prices"],
        takes: &[],
    },
    Case { change: |draft| priced_but(draft, &[]), brings: &[], takes: &[] },
    // What the shop does not have needs no price; what was bought already has none.
    Case {
        change: |draft| {
            priced_but(draft, &[7]);
            available(draft, 7, "0");
            stocked(draft, 7, StockField::Have, "1");
        },
        brings: &[],
        takes: &[],
    },
    // Missing prices matter to the least cost alone.
    Case {
        change: |draft| draft.element.objective = Objective::FewestJoints,
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| room(draft, FIRST, RoomField::OtherHeat, "5000"),
        brings: &["watch room-1 other-heat-covers: less-other-heat"],
        takes: &[],
    },
    Case {
        change: |draft| room(draft, FIRST, RoomField::OtherHeat, "1000"),
        brings: &[],
        takes: &[],
    },
    // Other heat in a room that loses none is not what leaves it without baseboard.
    Case {
        change: |draft| {
            draft.remove_surface(FIRST, FIRST_WALL);
            room(draft, FIRST, RoomField::OtherHeat, "1000");
        },
        brings: &["watch room-1 no-load: add-surfaces"],
        takes: &[],
    },
    Case {
        change: |draft| first_wall(draft, WallUse::Never),
        brings: &["stop room-1 walls-ruled-out: allow-wall"],
        takes: &[HEATED],
    },
    // Only at a wall that takes 3 ft, where the other takes 11.
    Case {
        change: |draft| inside_wall(draft, "4", WallUse::Only),
        brings: &["stop room-1 walls-ruled-out: allow-wall"],
        takes: &[HEATED],
    },
    Case { change: |draft| inside_wall(draft, "4", WallUse::AsNeeded), brings: &[], takes: &[] },
    // With the wall that is ruled out it would not do either, but be nearer.
    Case {
        change: |draft| {
            wall(draft, SurfaceField::Free, "3' 6\"", "12");
            inside_wall(draft, "2' 6\"", WallUse::Never);
        },
        brings: &[
            "stop room-1 does-not-fit: more-wall, allow-wall, higher-output-element, reduce-loss",
        ],
        takes: &[HEATED],
    },
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![4, 6, 10];
            wall(draft, SurfaceField::Free, "4", "12");
        },
        brings: &["stop room-1 no-piece-fits: shorter-pieces, add-free-wall"],
        takes: &[HEATED],
    },
    // The one piece that would fit is on the list, and the shop has none.
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![3, 7];
            available(draft, 3, "0");
            wall(draft, SurfaceField::Free, "4", "12");
        },
        brings: &["stop room-1 no-piece-fits: shorter-pieces, add-free-wall"],
        takes: &[HEATED],
    },
    // No water is warm enough, but no piece finds a place in the first room to begin with.
    Case {
        change: |draft| {
            typed_flow(draft, "0.05");
            first_wall(draft, WallUse::Never);
        },
        brings: &[
            "stop room-1 walls-ruled-out: allow-wall",
            "stop room-3 water-too-cool: second-circuit, reduce-loss",
            "watch loop drop: more-flow, second-circuit",
            "watch loop velocity: more-flow, other-tube, purge-at-high-flow",
            "watch boiler return-cool: bypass, condensing-boiler",
        ],
        takes: &[HEATED, "holds loop drop", "holds loop velocity"],
    },
    // One 8 ft piece for two rooms that need some 6 ft each; two of them, of which one is bought.
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![8];
            available(draft, 8, "1");
        },
        brings: &["stop room-1 stock-used-up: more-pieces"],
        takes: &[HEATED],
    },
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![8];
            available(draft, 8, "1");
            stocked(draft, 8, StockField::Have, "1");
        },
        brings: &[],
        takes: &[],
    },
    // The same with the one in the first room kept.
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![8];
            available(draft, 8, "1");
            draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![8]);
        },
        brings: &["stop room-3 stock-used-up: more-pieces"],
        takes: &[HEATED],
    },
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![8];
            available(draft, 8, "1");
            stocked(draft, 8, StockField::Have, "1");
            draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![8]);
        },
        brings: &[],
        takes: &[],
    },
    // Where the wall is too short, it is not for counts that no more fits.
    Case {
        change: |draft| {
            available(draft, 2, "50");
            wall(draft, SurfaceField::Free, "4", "12");
        },
        brings: &["stop room-1 does-not-fit: more-wall, higher-output-element, reduce-loss"],
        takes: &[HEATED],
    },
    // 9 ft 2 in would take the 7 ft piece that does, but not beside the one that is kept.
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![5, 7];
            wall(draft, SurfaceField::Free, "9' 6\"", "12");
            draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![5]);
        },
        brings: &["stop room-1 does-not-fit: more-wall, let-pieces-go, higher-output-element, \
             reduce-loss"],
        takes: &[HEATED],
    },
    // Kept pieces leave no place for an 8 ft one.
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![4, 8];
            available(draft, 4, "1");
            draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![4]);
        },
        brings: &["stop room-1 stock-used-up: more-pieces, let-pieces-go"],
        takes: &[HEATED],
    },
    Case {
        change: |draft| {
            draft.element.stock_ft = vec![8, 10];
            wall(draft, SurfaceField::Free, "12", "12");
            draft.fix_pieces(FIRST, FIRST_WALL, 0, vec![8]);
        },
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            available(draft, 8, "1");
            keep_eights(draft);
        },
        brings: &["watch house fixed-exceeds-stock: correct-stock, let-pieces-go"],
        takes: &[],
    },
    Case {
        change: |draft| {
            available(draft, 8, "1");
            stocked(draft, 8, StockField::Have, "1");
            keep_eights(draft);
        },
        brings: &[],
        takes: &[],
    },
    Case { change: keep_eights, brings: &[], takes: &[] },
    // Of a length that is off the list there are none.
    Case {
        change: |draft| {
            draft.element.toggle_stock(8);
            keep_eights(draft);
        },
        brings: &["watch house fixed-exceeds-stock: correct-stock, let-pieces-go"],
        takes: &[],
    },
    // What each price is for makes no difference here.
    Case {
        change: |draft| {
            priced_but(draft, &[2, 3]);
            set(draft, Field::Price(PriceField::Joint), "3.50");
        },
        brings: &["watch house prices-missing: type-prices"],
        takes: &[],
    },
];

fn found(change: impl FnOnce(&mut Draft), wanted: fn(&Finding) -> bool) -> Finding {
    let mut draft = sound();
    change(&mut draft);
    let checks = solve(&draft).1.checks;
    let check = checks.iter().find(|check| wanted(&check.finding));
    check.unwrap_or_else(|| panic!("{checks:?}")).finding
}

fn feet(length: Length) -> f64 {
    length.to(Unit::Foot)
}

/// By hand: the wall of 96 ft2 at 0.5 Btu/(h ft2 F) and 70 °F loses 3360 Btu/h; 4 in go to the ends.
#[test]
fn findings_of_the_shop_carry_their_values() {
    let other = found(
        |draft| room(draft, FIRST, RoomField::OtherHeat, "5000"),
        |finding| matches!(finding, Finding::OtherHeatCovers { .. }),
    );
    let Finding::OtherHeatCovers { load, other } = other else { unreachable!() };
    assert!((load.to(Unit::BtuPerHour) - 3360.0).abs() < 1e-6, "{load:?}");
    assert!((other.to(Unit::BtuPerHour) - 5000.0).abs() < 1e-6, "{other:?}");

    let walls = found(
        |draft| first_wall(draft, WallUse::Never),
        |finding| matches!(finding, Finding::WallsRuledOut { .. }),
    );
    let Finding::WallsRuledOut { free, short } = walls else { unreachable!() };
    assert!((feet(free) - 12.0).abs() < 1e-9, "{free:?}");
    assert!((short - Power::of(3360.0, Unit::BtuPerHour)).si().abs() < 1e-6, "{short:?}");

    let long = found(
        |draft| {
            draft.element.stock_ft = vec![4, 6, 10];
            wall(draft, SurfaceField::Free, "4", "12");
        },
        |finding| matches!(finding, Finding::NoPieceFits { .. }),
    );
    let Finding::NoPieceFits { shortest, takes } = long else { unreachable!() };
    assert!((feet(shortest) - 4.0).abs() < 1e-9, "{shortest:?}");
    assert!((feet(takes) - (4.0 - 4.0 / 12.0)).abs() < 1e-9, "{takes:?}");

    let missing = found(
        |draft| priced_but(draft, &[2, 7, 9]),
        |finding| matches!(finding, Finding::PricesMissing { .. }),
    );
    assert_eq!(missing, Finding::PricesMissing { lengths: 3 });

    let kept = found(
        |draft| {
            available(draft, 8, "1");
            keep_eights(draft);
        },
        |finding| matches!(finding, Finding::FixedExceedsStock { .. }),
    );
    let Finding::FixedExceedsStock { length, fixed, there } = kept else { unreachable!() };
    assert!((feet(length) - 8.0).abs() < 1e-9, "{length:?}");
    assert_eq!((fixed, there), (2, 1));
}
