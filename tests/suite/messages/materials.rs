//! The words of the materials list and the cut plan, of a house that has nearly everything on it.

use super::{Book, in_both};
use crate::shipped::COTTAGE;
use crate::support::{open, set, solve};
use finrun_engine::job::{
    Antifreeze, Arrangement, Field, Group, LegKind, PipeCover, PriceField, RoomField,
};
use finrun_engine::named::Named;
use finrun_engine::pipe::Tube;
use finrun_engine::takeoff::list::list;
use finrun_text as text;

#[test]
fn words_of_the_materials_list() {
    let tell = |book: &mut Book| {
        let mut plain = open(COTTAGE);
        let rooms: Vec<_> = plain.rooms.iter().map(|room| room.id).collect();
        for kind in [LegKind::OutsideCorner, LegKind::Along, LegKind::Doorway] {
            plain.add_leg(rooms[1], kind);
        }
        set(&mut plain, Field::Room(rooms[2], RoomField::PipeTo), "43");
        set(&mut plain, Field::Price(PriceField::LoopValves), "60");
        set(&mut plain, Field::Price(PriceField::Pipe), "3");
        set(&mut plain, Field::Spare(Group::Fittings), "10");
        let mut mains = open(COTTAGE);
        let zone = mains.zones[0].id;
        mains.arrange(zone, Arrangement::DirectReturn);
        mains.zones[0].pipe = Tube::PexThreeQuarter;
        mains.plant.antifreeze = Antifreeze::PropyleneGlycol;
        mains.pipe_cover = PipeCover::Insulated;
        for (name, draft) in [("loop", plain), ("mains", mains)] {
            let (job, design) = solve(&draft);
            let take_off = list(&job, &design);
            let system = draft.units;
            for (nth, row) in
                text::materials_table(&draft, &take_off, system).into_iter().enumerate()
            {
                book.add(format!("{name}: row {nth}"), row.join(" | "));
            }
            for (nth, entry) in take_off.lines.iter().enumerate() {
                let said = text::need_and_spare(entry, system);
                if !said.is_empty() {
                    book.add(format!("{name}: need of line {nth}"), said);
                }
            }
            book.add(format!("{name}: sum"), text::list_sum(&take_off, system));
            let need = text::sum_and_need(&take_off, system);
            if !need.is_empty() {
                book.add(format!("{name}: sum and need"), need);
            }
            book.add(format!("{name}: unpriced"), text::unpriced_lines(&take_off));
            for (nth, note) in take_off.notes.iter().enumerate() {
                book.add(format!("{name}: note {nth}"), text::list_note(*note));
            }
            for cutting in &take_off.cuttings {
                let (tube, title) = (cutting.tube.name(), text::cut_title(cutting.tube));
                book.add(format!("{name}: {tube}"), text::cut_proof(cutting, system));
                book.add(
                    format!("{name}: picture of {tube}"),
                    text::cut_picture(title, &text::stick_name(0, 3840, false, system)),
                );
                let plan = cutting.plan.as_ref().expect("a plan");
                for (nth, stick) in plan.sticks.iter().enumerate() {
                    let coil = cutting.is_coil();
                    let mut said = text::stick_name(nth, stick.stick_sixteenths, coil, system);
                    for cut in &stick.cuts {
                        let long = text::cut_length(cut.length_sixteenths, system);
                        let what = text::cut_for(&draft, &cutting.pieces[cut.piece]);
                        said += &format!(" | {long} {what}");
                    }
                    said += " | ";
                    said += &text::offcut(stick.offcut_sixteenths, system);
                    book.add(format!("{name}: {tube}, {nth}"), said);
                }
            }
        }
    };
    insta::assert_snapshot!(in_both(tell));
}
