//! What stands on a sheet, and its key: only what was drawn is explained, and all of it.

use super::pen::{
    AIR_ELIMINATOR, ARROW, Align, BALANCING_VALVE, CIRCULATOR, DIVERTER_TEE, EXPANSION_TANK,
    FLOW_CHECK, Symbol, ZONE_VALVE, path, symbol, way, words,
};
use crate::markup::Markup;
use finrun_text as text;
use finrun_text::Mark;

/// How a mark looks: a symbol, or a line of a class.
#[derive(Debug, Clone, Copy)]
enum Look {
    Symbol(Symbol),
    Line(&'static str),
}

/// The baseboard's own marks have no standard that we know: plain shapes of ours. Those of the water
/// are in the manner of ISO 14617 and ASHRAE's handbook, from memory, as in `pen`.
fn look(mark: Mark) -> Look {
    Look::Symbol(match mark {
        Mark::Supply => return Look::Line("line-0 water-4 ahead"),
        Mark::Return => return Look::Line("line-0 water-0 aside"),
        Mark::SupplyPipe => return Look::Line("pipe water-4"),
        Mark::ReturnPipe => return Look::Line("pipe back water-1"),
        Mark::Window => ("M-7 0H7", "M-14-1H-7V1H-14zM7-1H14V1H7z"),
        Mark::Door => ("", "M-14-1H-7V1H-14zM7-1H14V1H7z"),
        Mark::Baseboard => return Look::Line("stood"),
        Mark::Somewhere => return Look::Line("stood somewhere"),
        Mark::Element => {
            ("M-13-8H13V8H-13z", "M-9-4v8h.8v-8zM-4-4v8h.8v-8zM1-4v8h.8v-8zM6-4v8h.8v-8z")
        }
        Mark::Enclosure => ("M-13-8H13V8H-13z", ""),
        Mark::CapLeft => ("", "M-3-9.5H3V-6.5H0V6.5H3V9.5H-3z"),
        Mark::CapRight => ("", "M3-9.5H-3V-6.5H0V6.5H-3V9.5H3z"),
        Mark::Splice => ("M-2.5-9.5H2.5V9.5H-2.5z", ""),
        Mark::InsideCorner => ("M-5-9.5H5V9.5H-5zM-5-9.5L5 9.5", ""),
        Mark::OutsideCorner => ("M-5-9.5H5V9.5H-5zM-5-9.5L5 9.5M5-9.5L-5 9.5", ""),
        Mark::PipeDown => ("M0-8V12", "M-4 9L0 18L4 9z"),
        Mark::PipeUp => ("M0 18V0", "M-4 1L0-8L4 1z"),
        Mark::ReturnBend => ("M-8 4H2a4 4 0 0 0 0-8H-8", ""),
        Mark::FromBoiler => ("", "M-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0"),
        Mark::ToBoiler => ("M-9 0a9 9 0 1 0 18 0a9 9 0 1 0-18 0", ""),
        Mark::RiserUp => ("M-8-8H8V8H-8z", "M-4 4L0-5L4 4z"),
        Mark::RiserDown => ("M-8-8H8V8H-8z", "M-4-4L0 5L4-4z"),
        Mark::Flow => ARROW,
        Mark::FlowBack => ("M-5-4L4 0L-5 4z", ""),
        Mark::DiverterTee => DIVERTER_TEE,
        Mark::Boiler => ("M-11-8H11V8H-11zM-3 5q-3-5 3-10q6 5 3 10", ""),
        Mark::Relief => ("M-6 10H6L0 0zM10-6V6L0 0zM0 0V-12M-4-5L4-8M-4-9L4-12", ""),
        Mark::Gauge => ("M-8 0a8 8 0 1 0 16 0a8 8 0 1 0-16 0M0 0L4-5", ""),
        Mark::ShutOff => ("M-9-6L9 6V-6L-9 6z", ""),
        Mark::AirEliminator => AIR_ELIMINATOR,
        Mark::ExpansionTank => EXPANSION_TANK,
        Mark::FillValve => ("M-9-6L9 6V-6L-9 6zM0 0V-8M-6-8a6 6 0 0 1 12 0z", ""),
        Mark::Backflow => ("M-14-7H14V7H-14zM-10-4V4L-2 0zM-1-4V4M2-4V4L10 0zM11-4V4", ""),
        Mark::Circulator => CIRCULATOR,
        Mark::FlowCheck => FLOW_CHECK,
        Mark::ZoneValve => ZONE_VALVE,
        Mark::BalancingValve => BALANCING_VALVE,
        Mark::PurgeValve => ("M-9-6L9 6V-6L-9 6zM-14 0V10M-18 10H-10", ""),
        Mark::MixingValve => ("M-9-6L0 0L-9 6zM9-6L0 0L9 6zM-6 9L0 0L6 9z", ""),
        Mark::Bypass => BALANCING_VALVE,
    })
}

/// Draws and remembers what was drawn.
#[derive(Debug, Default)]
pub(super) struct Marks {
    pub(super) svg: Markup,
    used: Vec<Mark>,
}

impl Marks {
    pub(super) fn symbol(&mut self, mark: Mark, at: (f64, f64), turn: u32) {
        if let Look::Symbol(shape) = look(mark) {
            self.note(mark);
            symbol(&mut self.svg, shape, at, turn);
        }
    }

    /// A line by a class of its own, which stands for the mark's.
    pub(super) fn line(&mut self, mark: Mark, class: &str, d: &str) {
        self.note(mark);
        path(&mut self.svg, class, d);
    }

    /// Something drawn that is explained by a mark.
    pub(super) fn note(&mut self, mark: Mark) {
        if !self.used.contains(&mark) {
            self.used.push(mark);
        }
    }

    pub(super) fn say(&mut self, class: &str, align: Align, at: (f64, f64), room: f64, text: &str) {
        words(&mut self.svg, class, align, at, room, text);
    }

    /// What was used, in the order of the list of marks.
    pub(super) fn used(&self) -> Vec<Mark> {
        Mark::ALL.iter().copied().filter(|mark| self.used.contains(mark)).collect()
    }

    /// The sample of a mark.
    pub(super) fn sample(&mut self, mark: Mark, (x, y): (f64, f64)) {
        match look(mark) {
            Look::Symbol(shape) => {
                // A tank stands on its pipe, and pipe hangs below the floor.
                let down = match mark {
                    Mark::ExpansionTank => 12.0,
                    Mark::PipeDown | Mark::PipeUp => -5.0,
                    _ => 0.0,
                };
                symbol(&mut self.svg, shape, (x, y + down), 0);
            }
            Look::Line(class) => {
                path(&mut self.svg, class, &way(&[("M", x - 12.0), (" ", y), ("h", 24.0)]));
            }
        }
    }

    /// The key from `y` down, two marks to a row; gives where it ends.
    pub(super) fn key(&mut self, y: f64) -> f64 {
        self.svg.open("g", &[("class", "legend-of")]);
        let used = self.used();
        for (at, &mark) in used.iter().enumerate() {
            let (column, row) = ((at % 2) as f64, (at / 2) as f64);
            let (x, y) = (22.0 + 178.0 * column, y + 18.0 + 30.0 * row);
            self.sample(mark, (x, y));
            self.say("d", Align::Start, (x + 20.0, y + 5.0), 158.0, text::mark(mark));
        }
        self.svg.close("g");
        y + 30.0 * used.len().div_ceil(2) as f64 + 10.0
    }
}
