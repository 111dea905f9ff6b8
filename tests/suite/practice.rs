//! Rules of thumb beside what a system has, each recomputed in the units in which the trade says it.

use crate::support::{DEMO, job_of, open};
use finrun_engine::arrangement::{Practice, Rule, practice, zone_head};
use finrun_engine::check::{Finding, Subject};
use finrun_engine::design::{Design, design};
use finrun_engine::job::{Arrangement, Draft, Job};
use finrun_engine::quantity::{System, Unit};

fn solved(draft: &Draft) -> (Job, Design) {
    let job = job_of(draft);
    let design = design(&job);
    (job, design)
}

fn rule(rules: &[Practice], wanted: fn(&Rule) -> bool) -> &Practice {
    rules.iter().find(|practice| wanted(&practice.rule)).expect("the rule")
}

fn close(a: f64, b: f64) {
    assert!((a - b).abs() <= 1e-9 * b.abs().max(1.0), "{a}, {b}");
}

#[test]
fn a_loop_beside_what_practice_says() {
    let (job, design) = solved(&open(DEMO));
    let rules = practice(&job, &design);
    assert_eq!(rules.len(), 4);

    let drop = rule(&rules, |rule| *rule == Rule::Drop);
    close(drop.usual.si, 20.0 / 1.8);
    close(drop.here.si, design.piping.supply.si() - design.piping.back.si());

    // Common practice, no source: 500 Btu/h for each gallon a minute and degree, so that 20 degrees
    // of drop make 10,000.
    let flow = rule(&rules, |rule| *rule == Rule::Flow);
    let btu_per_hour = design.piping.heat.si() / 0.293_071_07;
    let gpm = flow.usual.si / 6.309_019_64e-5;
    assert!((gpm - btu_per_hour / 10_000.0).abs() < 1e-6 * gpm, "{gpm}");
    close(flow.here.si, design.piping.flow.si());

    // All pipe, and half as much again, at 4 ft a hundred.
    let head = rule(&rules, |rule| *rule == Rule::Head);
    let pipe: f64 = design.piping.passages.iter().map(|passage| passage.length.si()).sum();
    close(head.usual.si, pipe * 0.06);
    close(head.here.si, design.piping.head.si());
    close(zone_head(&job, &design, job.zones[0].id).si(), design.piping.head.si());

    // The check on what the tube carries has both from its own side.
    let element = rule(&rules, |rule| matches!(rule, Rule::Element(..)));
    let check = design.checks.iter().find_map(|check| match check.finding {
        Finding::TubeCarries { element, practice, .. } => Some((element, practice)),
        _ => None,
    });
    let (has, most) = check.expect("a check on the tube");
    close(element.here.si, has.si());
    close(element.usual.si, most.si());
    // 4 gpm in 3/4 in tube: 40,000 Btu/h at 600 a foot.
    close(Unit::Foot.from_si(element.usual.si), 40_000.0 / 600.0);
}

#[test]
fn each_loop_of_a_split_zone_has_its_own_feet() {
    let mut draft = open(DEMO);
    draft.arrange(draft.zones[0].id, Arrangement::Split);
    let (job, design) = solved(&draft);
    let rules = practice(&job, &design);
    let loops: Vec<_> = rules.iter().filter(|p| matches!(p.rule, Rule::Element(..))).collect();
    assert_eq!(loops.len(), 2);
    let sum: f64 = loops.iter().map(|practice| practice.here.si).sum();
    close(sum, design.element_length().si());
    let subjects = design.checks.iter().filter(|c| matches!(c.subject, Subject::Circuit(..)));
    assert!(subjects.count() >= 2, "the checks are on loops too");
    // The head of the zone is that of the way which asks most.
    assert!(zone_head(&job, &design, job.zones[0].id).si() > 0.0);
}

/// Feet of element on a tube mean nothing where each room hangs between two mains.
#[test]
fn between_mains_no_feet_are_counted() {
    let mut draft = open(DEMO);
    for arrangement in [Arrangement::DiverterTees, Arrangement::DirectReturn, Arrangement::HomeRun]
    {
        draft.arrange(draft.zones[0].id, arrangement);
        let (job, design) = solved(&draft);
        let rules = practice(&job, &design);
        assert_eq!(rules.len(), 3, "{arrangement:?}");
    }
    // And without an element nothing is.
    let (job, design) = {
        let mut draft = Draft::new("", System::Us);
        crate::support::house(&mut draft, finrun_engine::job::HouseField::Outdoors, "0");
        solved(&draft)
    };
    assert_eq!(practice(&job, &design), []);
}

/// Where each zone has its circulator, the head is that of the one with most to do, whichever zone
/// comes first.
#[test]
fn the_head_is_that_of_the_hardest_circulator() {
    use finrun_engine::job::{Hung, RoomField, Zoning};
    for far in [0, 1] {
        let mut draft = open(DEMO);
        draft.zoning = Zoning::Circulators;
        let zone = draft.add_zone();
        let rooms: Vec<_> = draft.rooms.iter().map(|room| room.id).collect();
        draft.place_room(rooms[1], Hung { zone, branch: 0 }, None);
        crate::support::room(&mut draft, rooms[far], RoomField::PipeTo, "400");
        draft.zones[far].pipe = finrun_engine::pipe::Tube::PexHalf;
        let (job, design) = solved(&draft);
        let heads: Vec<f64> = design.piping.pumps.iter().map(|pump| pump.head.si()).collect();
        assert_eq!(heads.len(), 2);
        assert!(heads[far] > 1.2 * heads[1 - far], "{heads:?}");
        let head = design.piping.head.si();
        // Joints in the solver's network take next to nothing, not nothing.
        assert!((head - heads[far]).abs() < 1e-4 * head, "{far}: {head}, {heads:?}");
        for (zone, head) in job.zones.iter().zip(&heads) {
            let own = zone_head(&job, &design, zone.id).si();
            assert!((own - head).abs() < 1e-4 * head, "{own}, {head}");
        }
    }
}
