//! The numbers in findings and remedies: those of the design.

use super::cases::{typed_flow, wall};
use super::rooms::ROOMS;
use super::{FIRST, sound};
use crate::support::{set, solve};
use finrun_engine::check::{Check, Finding, Remedy, Severity};
use finrun_engine::design::Design;
use finrun_engine::job::{Field, HouseField, SurfaceField};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Length, Power, Unit, VolumeFlow};

fn check_of(design: &Design, severity: Severity, pick: fn(&Finding) -> bool) -> Check {
    let found = design.checks.iter().find(|c| c.severity == severity && pick(&c.finding));
    found.unwrap_or_else(|| panic!("{:?}", design.checks)).clone()
}

/// The figures in the findings are those of the design, against the limits of practice.
#[test]
fn findings_carry_their_values_and_limits() {
    let (_, design) = solve(&sound());
    let speed = check_of(&design, Severity::Holds, |f| matches!(f, Finding::Velocity { .. }));
    let Finding::Velocity { velocity, least, most } = speed.finding else { unreachable!() };
    assert_eq!(velocity, design.piping.velocity);
    assert!((least.to(Unit::FootPerSecond) - 2.0).abs() < 1e-12);
    assert!((most.to(Unit::FootPerSecond) - 4.0).abs() < 1e-12);
    let tube = check_of(&design, Severity::Holds, |f| matches!(f, Finding::TubeCarries { .. }));
    let Finding::TubeCarries { element, carries, practice } = tube.finding else { unreachable!() };
    assert_eq!(element, design.element_length());
    // Practice: 4 gpm of 10 000 Btu/h each, 600 Btu/h a foot, is 66.7 ft of 3/4 in.
    assert!((practice.to(Unit::Foot) - 200.0 / 3.0).abs() < 1e-9);
    // 4 ft/s in 0.811 in is 6.44 gpm, at 20 °F about 62 500 Btu/h where the loop gives 8500.
    let ratio = carries / element * (design.piping.heat.to(Unit::BtuPerHour) / 62_500.0);
    assert!((ratio - 1.0).abs() < 0.02, "{ratio}");

    // A quarter more than practice's 20 °F, where the flow was typed.
    let held = check_of(&design, Severity::Holds, |f| matches!(f, Finding::Drop { .. }));
    let Finding::Drop { drop, limit, planned } = held.finding else { unreachable!() };
    assert_eq!(drop, design.piping.drop());
    assert!((planned.to(Unit::FahrenheitDegree) - 20.0).abs() < 1e-9, "{planned:?}");
    assert!((limit.to(Unit::FahrenheitDegree) - 25.0).abs() < 1e-9, "{limit:?}");

    let mut draft = sound();
    (ROOMS[0].change)(&mut draft);
    let (_, design) = solve(&draft);
    let fit = check_of(&design, Severity::Stop, |f| matches!(f, Finding::DoesNotFit { .. }));
    let Finding::DoesNotFit { needed, fitted, short } = fit.finding else { unreachable!() };
    let solved = design.room(FIRST).expect("its room");
    assert_eq!(Some(needed), solved.element.needed);
    assert!((fitted - Length::of(3.0, Unit::Foot)).abs().si() < 1e-12);
    assert_eq!(short, solved.load.total - solved.element.output);
    assert_eq!(fit.remedies.first(), Some(&Remedy::MoreWall { length: needed - fitted }));

    let mut draft = sound();
    typed_flow(&mut draft, "1");
    let (_, design) = solve(&draft);
    let slow = check_of(&design, Severity::Watch, |f| matches!(f, Finding::Velocity { .. }));
    let Some(Remedy::MoreFlow { flow }) = slow.remedies.first().copied() else { unreachable!() };
    let reached = design.piping.velocity * (flow / VolumeFlow::of(1.0, Unit::GallonPerMinute));
    assert!((reached.to(Unit::FootPerSecond) - 2.0).abs() < 1e-9);
    assert_eq!(slow.remedies.get(1), Some(&Remedy::OtherTube { tube: Tube::CopperMHalf }));
}

/// A colder day needs no code: the same house at other outdoor temperatures goes from fit to not.
#[test]
fn colder_days_come_to_a_stop_in_order() {
    let short_rooms = |outdoors: &str| {
        let mut draft = sound();
        wall(&mut draft, SurfaceField::Free, "9", "9");
        set(&mut draft, Field::House(HouseField::Outdoors), outdoors);
        solve(&draft).1.rooms.iter().filter(|room| room.short() > Power::ZERO).count()
    };
    let counts: Vec<usize> = ["40", "0", "-30", "-80"].map(short_rooms).to_vec();
    assert!(counts.windows(2).all(|pair| pair[0] <= pair[1]), "{counts:?}");
    assert_eq!((counts[0], counts[3]), (0, 2), "{counts:?}");
}
