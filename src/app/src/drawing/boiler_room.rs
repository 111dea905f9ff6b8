//! The boiler-room piping in the order of the water, with what each part is set to.

use super::key::Marks;
use super::pen::{Align, path, rect, way};
use super::sheet::Sheet;
use crate::parts::in_system;
use finrun_engine::design::Design;
use finrun_engine::job::{Arrangement, Balancing, Draft, Job, PumpSet, Zone, Zoning};
use finrun_engine::plant::boiler::IndirectTank;
use finrun_engine::plant::return_protection::{Advice, Verdict};
use finrun_engine::quantity::{Kind, Length, System, Value};
use finrun_text as text;
use finrun_text::Mark;

/// The riser back, the one that supplies, and the pipe out of the boiler.
const BACK: f64 = 40.0;
const SUPPLY: f64 = 336.0;
const OUT: f64 = 92.0;
/// Where loops of one zone part.
const FORK: f64 = 232.0;
const ROW: f64 = 44.0;

/// The sheet in the making.
struct Room<'a> {
    marks: Marks,
    draft: &'a Draft,
    job: &'a Job,
    design: &'a Design,
    system: System,
    /// The supply line's height.
    line: f64,
}

pub(super) fn boiler_room(draft: &Draft, job: &Job, design: &Design, system: System) -> Sheet {
    let rows: usize = job.zones.iter().map(|zone| zone.loops.len()).sum();
    let line = 14.0 + ROW * rows as f64 + 60.0;
    let mut room = Room { marks: Marks::default(), draft, job, design, system, line };
    room.boiler();
    room.supply();
    room.rows();
    let high = room.list(line + 136.0);
    let mut notes = vec![text::boiler_room_note(), text::boiler_room_cautions()];
    if !matches!(job.plant.tank, IndirectTank::None) {
        notes.push(text::tank_not_drawn());
    }
    Sheet {
        title: text::boiler_room_title().to_string(),
        label: text::boiler_room_picture(&room.marks.used()),
        notes,
        marks: room.marks,
        high,
    }
}

impl Room<'_> {
    fn pipe(&mut self, mark: Mark, steps: &[(&str, f64)]) {
        let class = if mark == Mark::ReturnPipe { "pipe back water-1" } else { "pipe water-4" };
        self.marks.line(mark, class, &way(steps));
    }

    /// A part with its number in the list below.
    fn part(&mut self, mark: Mark, at: (f64, f64), turn: u32) {
        let beside = match turn {
            90 | 270 => (at.0 + 18.0, at.1 + 5.0),
            _ => (at.0, at.1 + 21.0),
        };
        self.part_by(mark, at, turn, beside);
    }

    fn part_by(&mut self, mark: Mark, at: (f64, f64), turn: u32, beside: (f64, f64)) {
        self.marks.symbol(mark, at, turn);
        self.marks.say("d halo", Align::Middle, beside, 24.0, &numbered(mark));
    }

    fn own_pumps(&self) -> bool {
        self.job.zones.len() > 1 && self.job.circuit.zoning == Zoning::Circulators
    }

    /// The boiler with its relief valve, gauge and return.
    fn boiler(&mut self) {
        let y = self.line;
        self.pipe(Mark::ReturnPipe, &[("M", BACK), (" ", 30.0), ("V", y + 26.0)]);
        self.pipe(Mark::SupplyPipe, &[("M", OUT), (" ", y + 26.0), ("V", y), ("H", SUPPLY)]);
        // The relief valve's pipe: full size, down to near the floor.
        let from = [("M", 112.0), (" ", y + 68.0), ("h", 24.0), ("v", -12.0)];
        path(&mut self.marks.svg, "dim", &way(&from));
        let down = [("M", 146.0), (" ", y + 46.0), ("h", 16.0), ("V", y + 112.0)];
        path(&mut self.marks.svg, "dim", &way(&down));
        rect(&mut self.marks.svg, "boiler", 18.0, y + 26.0, 94.0, 86.0);
        self.marks.say("on-iron", Align::Middle, (65.0, y + 66.0), 90.0, text::boiler());
        self.marks.say("on-iron", Align::Middle, (65.0, y + 84.0), 90.0, &numbered(Mark::Boiler));
        self.marks.note(Mark::Boiler);
        self.part_by(Mark::Relief, (136.0, y + 46.0), 0, (120.0, y + 44.0));
        path(&mut self.marks.svg, "dim", &way(&[("M", 62.0), (" ", y + 14.0), ("v", 12.0)]));
        self.part_by(Mark::Gauge, (62.0, y + 12.0), 0, (79.0, y + 17.0));
        self.part(Mark::ShutOff, (BACK, y - 4.0), 90);
        match self.design.plant.as_ref().and_then(|plant| plant.back) {
            Some(Verdict::Cold { advice: Advice::Bypass(_), .. }) => {
                self.pipe(Mark::SupplyPipe, &[("M", OUT), (" ", y), ("V", y - 36.0), ("H", BACK)]);
                self.part(Mark::Bypass, (66.0, y - 36.0), 180);
            }
            Some(Verdict::Cold { advice: Advice::MixingValve(_), .. }) => {
                self.pipe(Mark::SupplyPipe, &[("M", OUT), (" ", y), ("V", y - 36.0), ("H", BACK)]);
                self.part(Mark::MixingValve, (BACK, y - 36.0), 90);
            }
            _ => {}
        }
        // The floor that boiler and discharge stand on.
        path(
            &mut self.marks.svg,
            "floor-line",
            &way(&[("M", 8.0), (" ", y + 120.0), ("h", 344.0)]),
        );
    }

    /// From the boiler on: shut-off, air, tank with the filling, circulator.
    fn supply(&mut self) {
        let y = self.line;
        self.part(Mark::ShutOff, (122.0, y), 0);
        self.part(Mark::AirEliminator, (156.0, y), 0);
        let tee = 194.0;
        // The tank hangs below its tee, and the filling joins between the two: its place is where the
        // circulator changes no pressure.
        path(&mut self.marks.svg, "dim", &way(&[("M", tee), (" ", y), ("v", 76.0)]));
        path(&mut self.marks.svg, "dim", &way(&[("M", tee), (" ", y + 46.0), ("H", 350.0)]));
        self.part(Mark::FillValve, (244.0, y + 46.0), 0);
        self.part(Mark::Backflow, (296.0, y + 46.0), 180);
        self.marks.say("d", Align::End, (352.0, y + 96.0), 110.0, text::cold_water());
        self.marks.symbol(Mark::ExpansionTank, (tee, y + 70.0), 180);
        let number = numbered(Mark::ExpansionTank);
        self.marks.say("d halo", Align::Start, (tee + 14.0, y + 92.0), 24.0, &number);
        let pumps = match self.job.circuit.pumps {
            _ if self.own_pumps() => &[][..],
            PumpSet::One => &[(264.0, y)][..],
            PumpSet::TwoInSeries => &[(246.0, y), (288.0, y)][..],
            PumpSet::TwoInParallel => {
                let both = [("M", 236.0), (" ", y), ("v", -28.0), ("H", 292.0), ("v", 28.0)];
                self.pipe(Mark::SupplyPipe, &both);
                &[(264.0, y), (264.0, y - 28.0)][..]
            }
        };
        for &pump in pumps {
            self.part(Mark::Circulator, pump, 0);
        }
    }

    /// Each loop that can be purged by itself, from the riser that supplies to the riser back.
    fn rows(&mut self) {
        let mut y = 30.0;
        self.pipe(Mark::SupplyPipe, &[("M", SUPPLY), (" ", self.line), ("V", y)]);
        let job = self.job;
        let several = job.zones.len() > 1;
        for zone in &job.zones {
            for nth in 0..zone.loops.len() {
                // Later loops of a zone with a head of its own leave behind that.
                let from = if several && nth > 0 { FORK } else { SUPPLY };
                if several && nth > 0 {
                    self.pipe(Mark::SupplyPipe, &[("M", FORK), (" ", y - ROW), ("v", ROW)]);
                }
                self.pipe(Mark::SupplyPipe, &[("M", from), (" ", y), ("H", 190.0)]);
                self.pipe(Mark::ReturnPipe, &[("M", 190.0), (" ", y), ("H", BACK)]);
                if several && nth == 0 {
                    self.head(y);
                }
                self.row(zone, nth, y);
                y += ROW;
            }
        }
    }

    /// What starts and stops a zone.
    fn head(&mut self, y: f64) {
        match self.own_pumps() {
            true => {
                self.part(Mark::Circulator, (304.0, y), 180);
                self.part(Mark::FlowCheck, (272.0, y), 180);
            }
            false => self.part(Mark::ZoneValve, (290.0, y), 0),
        }
    }

    fn row(&mut self, zone: &Zone, nth: usize, y: f64) {
        let mut lines = vec![text::zone_name(self.draft, zone.id)];
        if zone.arrangement == Arrangement::Split {
            let first = zone.loops[nth].first().and_then(|&at| self.job.house.rooms.get(at));
            let branch = first.and_then(|room| self.draft.room(room.id)).map(|room| room.branch);
            lines.push(text::loop_name(branch.unwrap_or(nth as u32)));
        }
        let half = 12.0 + 5.0 * (lines.len() - 1) as f64;
        rect(&mut self.marks.svg, "element", 134.0, y - half, 92.0, 2.0 * half);
        for (at, line) in lines.iter().enumerate() {
            let down = y + 5.0 + 15.0 * at as f64 - 7.5 * (lines.len() - 1) as f64;
            self.marks.say("d", Align::Middle, (180.0, down), 88.0, line);
        }
        // A zone of branches has a valve at each, not one here.
        if zone.balancing == Balancing::Valves && !zone.arrangement.has_branches() {
            self.part(Mark::BalancingValve, (108.0, y), 180);
        }
        self.part(Mark::PurgeValve, (72.0, y), 0);
    }

    /// Every part that was drawn, by its number, with what it is set to.
    fn list(&mut self, y: f64) -> f64 {
        self.marks.svg.open("g", &[("class", "legend-of")]);
        let mut y = y;
        for mark in self.marks.used() {
            self.marks.sample(mark, (30.0, y + 12.0));
            let number = numbered(mark);
            self.marks.say("d", Align::End, (72.0, y + 17.0), 24.0, &number);
            let set = self.set_to(mark);
            let rise = if set.is_empty() { 17.0 } else { 10.0 };
            self.marks.say("strong", Align::Start, (82.0, y + rise), 274.0, text::mark(mark));
            self.marks.say("d", Align::Start, (82.0, y + 26.0), 274.0, &set);
            y += 38.0;
        }
        self.marks.svg.close("g");
        y
    }

    /// What a part is set to or must do, as far as the design tells.
    fn set_to(&self, mark: Mark) -> String {
        let shown = |value: Value| in_system(value, self.system);
        let Some(plant) = &self.design.plant else { return String::new() };
        match mark {
            Mark::Boiler => {
                plant.needed.map(|needed| text::must_give(&shown(needed.output.into())))
            }
            Mark::Relief => Some(text::set_at(&shown(self.job.plant.relief.into()))),
            Mark::FillValve => Some(text::set_at(&shown(self.job.plant.fill.into()))),
            Mark::ExpansionTank => plant.tank.map(|tank| {
                let volume = shown(Value::liquid(tank.usual.unwrap_or(tank.volume)));
                text::tank_of(&volume, &shown(tank.pre_charge.into()))
            }),
            Mark::Circulator => self.pumps(),
            Mark::MixingValve | Mark::Bypass => {
                Some(text::back_at_least(&shown(self.job.plant.least_return.into())))
            }
            _ => None,
        }
        .unwrap_or_default()
    }

    /// Flow and head of the circulator, or of the one that works hardest.
    fn pumps(&self) -> Option<String> {
        let piping = &self.design.piping;
        if piping.not_solved.is_some() {
            return None;
        }
        let more = |a: Length, b: Length| a.si() > b.si();
        let mut hardest = piping.pumps.first()?;
        for pump in &piping.pumps {
            if more(pump.head, hardest.head) {
                hardest = pump;
            }
        }
        let head = in_system(Value::new(Kind::Head, hardest.head.si()), self.system);
        Some(text::flow_at(&in_system(hardest.flow, self.system), &head, piping.pumps.len() > 1))
    }
}

/// A part's number: its place among the boiler room's, always the same.
fn numbered(mark: Mark) -> String {
    let place = Mark::BOILER_ROOM.iter().position(|other| *other == mark);
    place.map_or_else(String::new, |place| (place + 1).to_string())
}
