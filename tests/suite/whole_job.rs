//! One whole job worked by hand, and what every job file must hold to.
//!
//! `../jobs/four-rooms.json`: four rooms of invented numbers. The arithmetic below was done by
//! `../jobs/four_rooms.py`, which shares nothing with the engine: it integrates each stretch step
//! by step and takes water's properties from the IAPWS-95 table in `../reference`.
//!
//! # 1. Heat loss, Btu/h: `U A (T_in - T_out)`, METHODS of EN 12831-1 and ASHRAE
//!
//! 70 °F inside (bath 74 °F), 0 °F outdoors, 50 °F in the cellar, ceilings 8 ft; U walls 0.09,
//! windows 0.50, door 0.40, floors 0.11, ceilings R 32.
//!
//! Air: half a change an hour of 508 ft2 x 8 ft is 33.8667 cfm. The rooms share it by the gross
//! area that faces outdoors or the cellar, walls and ceiling and floor: living 232 + 416 = 648 ft2,
//! kitchen 96 + 240 = 336, bath 64 + 96 = 160, bedroom 184 + 264 = 448, together 1592. The bath
//! takes at least one change an hour, 6.4 cfm, which is more than its share of 3.4037; the others
//! keep theirs. At sea level dry air of 70 °F (101 325 Pa over 287.055 J/kg K and 294.26 K, c_p
//! 1006 J/kg K) takes 1.07960 Btu/h per cfm and °F, of 74 °F 1.07151.
//!
//! | room (floor)      | wall, net ft2        | walls   | windows | door | ceiling | floor  | cfm     | air     | to the bedroom | sum     |
//! |---|---|---|---|---|---|---|---|---|---|---|
//! | living 16 x 13    | 29 x 8 - 24 = 208    | 1310.40 | 840.00  | -    | 455.00  | 457.60 | 13.7849 | 1041.76 | -              | 4104.76 |
//! | kitchen 12 x 10   | 96 - 9 - 20 = 67     | 422.10  | 315.00  | 560  | 262.50  | 264.00 | 7.1477  | 540.17  | -              | 2363.77 |
//! | bath 8 x 6, 74 °F | 64 - 6 = 58          | 386.28  | 222.00  | -    | 111.00  | 126.72 | 6.4     | 507.47  | 76.80          | 1430.27 |
//! | bedroom 12 x 11   | 23 x 8 - 24 = 160    | 1008.00 | 840.00  | -    | 288.75  | 290.40 | 9.5303  | 720.23  | -76.80         | 3070.58 |
//!
//! Bath to bedroom: 6 ft x 8 ft of inside wall, R 2.5, 4 °F: 48/2.5 x 4 = 76.80. House: 10 969.38.
//!
//! # 2. Flow: `m = Q/(c_p dT)` for a drop of 20 °F from 180 °F
//!
//! c_p at 170 °F (76.67 °C) 4194.4 J/kg K, 3214.81 W, 11.111 K: 0.068985 kg/s, which at 180 °F is
//! 1.12675 gpm.
//!
//! # 3. Element and pipe
//!
//! Rated 560 Btu/h ft at 180 °F water, 65 °F air, 1 gpm counted as 500 lb/h; exponent 1.35;
//! `(m/m_r)^0.04` = (0.068985/0.062999)^0.04 = 1.003638. Pieces of 2 to 8 ft, 3 in of each without
//! fins; 4 in of each run for end caps. Bare pipe: 3/4 in type M, 0.875 in outside, 0.811 in
//! inside, copper 340 W/m K, film 10 W/m2 K: 0.698202 W/m K to air of 60 °F.
//!
//! # 4. Round the loop: each stretch with c_p at its own mean
//!
//! | stretch      | °F in    | °F out   | needs, ft | pieces | finned | Btu/h    |
//! |---|---|---|---|---|---|---|
//! | 12 ft pipe   | 180.0000 | 178.9465 |           |        |        | 578.362  |
//! | living room  | 178.9465 | 171.2427 | 8.24136   | 7 + 2  | 8.50   | 4227.334 |
//! | 8 ft pipe    | 171.2427 | 170.5901 |           |        |        | 357.960  |
//! | kitchen      | 170.5901 | 165.8293 | 5.18969   | 6      | 5.75   | 2610.743 |
//! | 6 ft pipe    | 165.8293 | 165.3631 |           |        |        | 255.593  |
//! | bath         | 165.3631 | 162.6025 | 3.54025   | 4      | 3.75   | 1513.267 |
//! | 9 ft pipe    | 162.6025 | 161.9251 |           |        |        | 371.290  |
//! | bedroom      | 161.9251 | 156.2946 | 7.71146   | 8      | 7.75   | 3085.283 |
//! | 20 ft pipe   | 156.2946 | 154.8867 |           |        |        | 771.237  |
//!
//! Whole feet: the kitchen's 5 ft piece has 4.75 ft of fins, less than 5.190, so 6 ft. Living room:
//! 9 ft in one piece is not in stock; 7 + 2 has 8.50, and any 9 ft of two pieces as much; the
//! longest first. All heat 13 771.07 Btu/h, of it bare pipe 2334.44; drop 25.1133 °F, more than 20
//! since whole feet and pipe come on top of the loads.
//!
//! # 5. Head: Darcy and Weisbach, Colebrook (roughness 1.5e-6 m), Crane TP-410 (f_T 0.025)
//!
//! Boiler room: 6 elbows, 2 tees straight, 4 ball valves: K = 6 x 0.75 + 2 x 0.50 + 4 x 0.075 =
//! 5.8; v = 0.6998 ft/s; 128.04 Pa, and 1 ft of equipment 2900.70 Pa. Then, in Pa: 181.27, 86.82,
//! 127.16, 58.47, 91.66, 39.24, 154.35, 79.09, 264.58 (Reynolds 12 334 to 10 372, f 0.02936 to
//! 0.03070; elbows 4, 3, 2, 4, 4 at K 0.75). Sum 4111.38 Pa; over rho g at 180 °F 1.41737 ft.

use crate::support::{FOUR_ROOMS, open, solve};
use finrun_engine::building::Part;
use finrun_engine::network::Place;
use finrun_engine::quantity::{Length, Unit};

/// Found against the hand's value, within `tolerance` of the same unit.
fn check(what: &str, found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{what}: {found} against {expected}");
}

/// The hand's figures are printed to this.
const PRINTED: f64 = 0.006;

#[test]
fn heat_loss_is_that_of_the_hand() {
    let (_, design) = solve(&open(FOUR_ROOMS));
    let hand = [
        ([1310.40, 840.0, 0.0, 455.0, 457.60, 0.0, 1041.76], 0.0, 4104.76),
        ([422.10, 315.0, 560.0, 262.50, 264.0, 0.0, 540.17], 0.0, 2363.77),
        ([386.28, 222.0, 0.0, 111.0, 126.72, 0.0, 507.47], 76.80, 1430.27),
        ([1008.0, 840.0, 0.0, 288.75, 290.40, 0.0, 720.23], -76.80, 3070.58),
    ];
    assert_eq!(design.rooms.len(), hand.len());
    for (room, (parts, between, total)) in design.rooms.iter().zip(hand) {
        for (part, expected) in Part::ALL.into_iter().zip(parts) {
            // The wall between bath and bedroom counts among the walls.
            let expected = if part == Part::Wall { expected + between } else { expected };
            let found = room.load.of(part).to(Unit::BtuPerHour);
            check(&format!("{:?} {part:?}", room.room), found, expected, PRINTED);
        }
        check("total", room.load.total.to(Unit::BtuPerHour), total, PRINTED);
    }
    check("house", design.load.to(Unit::BtuPerHour), 10_969.38, PRINTED);
}

/// Within 2 in 100 000: the engine's fits of specific heat and density stand that near the table.
#[test]
fn flow_is_that_of_the_hand() {
    let (_, design) = solve(&open(FOUR_ROOMS));
    check("mass flow", design.piping.mass_flow.si(), 0.068985, 1e-6);
    check("flow", design.piping.flow.to(Unit::GallonPerMinute), 1.12675, 2e-5);
}

/// Temperatures within 0.001 °F, heat within 0.02 Btu/h, lengths within 0.0001 ft: the engine's
/// fits of water stand 0.0008 % from the table at most, and a drop of 8 °F hides that.
#[test]
fn lengths_and_water_are_those_of_the_hand() {
    let (_, design) = solve(&open(FOUR_ROOMS));
    let hand = [
        (178.9465, 171.2427, 8.24136, vec![7.0, 2.0], 8.50, 4227.334),
        (170.5901, 165.8293, 5.18969, vec![6.0], 5.75, 2610.743),
        (165.3631, 162.6025, 3.54025, vec![4.0], 3.75, 1513.267),
        (161.9251, 156.2946, 7.71146, vec![8.0], 7.75, 3085.283),
    ];
    for (room, (water_in, water_out, needed, pieces, finned, output)) in
        design.rooms.iter().zip(hand)
    {
        let element = &room.element;
        check("water in", element.water_in.to(Unit::Fahrenheit), water_in, 1e-3);
        check("water out", element.water_out.to(Unit::Fahrenheit), water_out, 1e-3);
        let found = element.needed.map_or(f64::NAN, |length| length.to(Unit::Foot));
        check("needed", found, needed, 1e-4);
        let expected: Vec<Length> = pieces.iter().map(|&l| Length::of(l, Unit::Foot)).collect();
        let found: Vec<Length> = element.choice.pieces().collect();
        assert_eq!(found.len(), expected.len(), "{found:?} {expected:?}");
        for (found, expected) in found.iter().zip(&expected) {
            check("piece", found.to(Unit::Foot), expected.to(Unit::Foot), 1e-12);
        }
        check("finned", element.choice.finned.to(Unit::Foot), finned, 1e-12);
        check("output", element.output.to(Unit::BtuPerHour), output, 0.02);
    }
    check("return", design.piping.back.to(Unit::Fahrenheit), 154.8867, 1e-3);
    check("drop", design.piping.drop().to(Unit::FahrenheitDegree), 25.1133, 1e-3);
    check("heat", design.piping.heat.to(Unit::BtuPerHour), 13_771.07, 0.05);
    check("pipe", design.piping.pipe_loss.to(Unit::BtuPerHour), 2334.44, 0.05);
}

/// Within 0.02 %: the engine's viscosity stands 0.019 % from the table, and f goes with its fourth
/// root.
#[test]
fn head_is_that_of_the_hand() {
    let (_, design) = solve(&open(FOUR_ROOMS));
    let hand =
        [128.040, 181.269, 86.823, 127.159, 58.473, 91.656, 39.238, 154.347, 79.094, 264.575];
    assert_eq!(design.piping.passages.len(), hand.len());
    for (passage, expected) in design.piping.passages.iter().zip(hand) {
        let found = (passage.friction + passage.fittings).si();
        check(&format!("{:?}", passage.place), found, expected, 2e-4 * expected);
    }
    let equipment = design.piping.passages[0].equipment.si();
    assert_eq!(design.piping.passages[0].place, Place::BoilerRoom);
    check("equipment", equipment, 2900.702, 0.02);
    check("velocity", design.piping.passages[0].velocity.to(Unit::FootPerSecond), 0.6998, 1e-4);
    check("head", design.piping.head.to(Unit::Foot), 1.41737, 1e-4);
}
