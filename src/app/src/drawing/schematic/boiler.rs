//! The boiler with what stands beside it, and the key to the symbols.

use super::super::pen::{
    AIR_ELIMINATOR, ARROW, Align, BALANCING_VALVE, CIRCULATOR, DIVERTER_TEE, EXPANSION_TANK,
    FLOW_CHECK, SHUT_VALVE, Symbol, ZONE_VALVE, path, rect, symbol, wide, words,
};
use super::{RETURN, Sheet};
use finrun_engine::job::PumpSet;
use finrun_text as text;
use finrun_text::Mark;

/// Height of the pipe through the boiler.
pub(super) const LINE: f64 = 50.0;
/// The riser on the left: of all zones, or the supply of the only one.
const SUPPLY: [f64; 2] = [14.0, 24.0];
const BOILER: f64 = 178.0;
const HALF: f64 = 36.0;

impl Sheet<'_> {
    /// From the boiler's outlet to the left: air, expansion, circulator; its return from the right.
    pub(super) fn boiler(&mut self) {
        let (piping, circuit) = (&self.design.piping, &self.job.circuit);
        let riser = SUPPLY[usize::from(!self.several())];
        (self.left, self.drawn) = (riser, LINE);
        let run = [("M", BOILER - HALF), (" ", LINE), ("H", riser)];
        self.supply_pipe(piping.supply, &run);
        self.return_pipe(piping.back, &[("M", RETURN), (" ", LINE), ("H", BOILER + HALF)]);
        symbol(&mut self.svg, ARROW, (BOILER + HALF + 36.0, LINE), 180);
        rect(&mut self.svg, "boiler", BOILER - HALF, LINE - 20.0, 2.0 * HALF, 40.0);
        let middle = (BOILER, LINE + 5.0);
        words(&mut self.svg, "on-iron", Align::Middle, middle, 2.0 * HALF, text::boiler());
        symbol(&mut self.svg, AIR_ELIMINATOR, (122.0, LINE), 0);
        symbol(&mut self.svg, EXPANSION_TANK, (100.0, LINE), 0);
        let pumps: &[(f64, f64)] = match circuit.pumps {
            _ if self.own_pumps() => &[],
            PumpSet::One => &[(62.0, LINE)],
            PumpSet::TwoInSeries => &[(72.0, LINE), (46.0, LINE)],
            PumpSet::TwoInParallel => {
                let both = "M82 50V38H42V50V62H82z";
                path(&mut self.svg, "pipe water-4", both);
                &[(62.0, 38.0), (62.0, 62.0)]
            }
        };
        for &pump in pumps {
            symbol(&mut self.svg, CIRCULATOR, pump, 180);
        }
        // What the circulator gives: its outlet is where the first stretch behind it begins.
        let x = riser + 14.0;
        let supply = format!("{} {}", text::supply(), self.shown(piping.supply));
        let mut left = vec![supply, self.shown(piping.flow)];
        let outlet = piping.circuits.first().and_then(|circuit| circuit.path.get(1));
        if let (Some(pump), Some(&outlet), false) = (piping.pumps.first(), outlet, self.own_pumps())
        {
            left[1] = format!("{} · {}", self.flow(pump.mass_flow), self.head(pump.head));
            left.push(text::above_tank(&self.shown(piping.passages[outlet].pressure_in)));
        }
        let mut right = vec![
            format!("{} {}", text::back_to_boiler(), self.shown(piping.back)),
            format!("{} {}", self.shown(piping.drop()), text::drop_word()),
        ];
        if let Some(inlet) = piping.passages.first() {
            right.push(text::above_tank(&self.shown(inlet.pressure_in)));
        }
        for row in 0..3 {
            let y = LINE + 40.0 + 17.0 * row as f64;
            let class = if row == 0 { "strong" } else { "d" };
            if let Some(text) = left.get(row) {
                self.say(class, (x, y), 158.0, text);
            }
            if let Some(text) = right.get(row) {
                self.say_to(class, (RETURN - 14.0, y), 158.0, text);
            }
        }
        self.y = LINE + 104.0;
    }

    /// The symbols that were used, with their names.
    pub(super) fn key(&mut self) {
        let known: [(Symbol, &str); 9] = [
            (CIRCULATOR, text::symbol_circulator()),
            (EXPANSION_TANK, text::symbol_expansion_tank()),
            (AIR_ELIMINATOR, text::symbol_air_eliminator()),
            (FLOW_CHECK, text::symbol_flow_check()),
            (ZONE_VALVE, text::symbol_zone_valve()),
            (BALANCING_VALVE, text::symbol_balancing_valve()),
            (DIVERTER_TEE, text::symbol_diverter_tee()),
            (SHUT_VALVE, text::symbol_shut_valve()),
            (ARROW, text::mark(Mark::Flow)),
        ];
        let used = known.map(|((outline, solid), _)| {
            [outline, solid].iter().all(|d| d.is_empty() || self.svg.has_path(d))
        });
        // Three to a row where all names fit, which they do not in every language.
        let fits = |room: f64| {
            let names = known.iter().zip(used).filter(|(_, used)| *used);
            names.into_iter().all(|((_, name), _)| wide(name) <= room)
        };
        let columns = if fits(98.0) { 3 } else { 2 };
        let step = 342.0 / f64::from(columns);
        self.y += 34.0;
        let mut column = 0;
        for ((drawn, name), used) in known.into_iter().zip(used) {
            if !used {
                continue;
            }
            let x = 24.0 + step * f64::from(column);
            // Some symbols stand on their pipe.
            let base = if drawn == EXPANSION_TANK { 12.0 } else { 0.0 };
            symbol(&mut self.svg, drawn, (x, self.y + base), 0);
            self.say("d", (x + 16.0, self.y + 5.0), step - 16.0, name);
            column += 1;
            if column == columns {
                column = 0;
                self.y += 34.0;
            }
        }
        if column > 0 {
            self.y += 34.0;
        }
        self.y -= 12.0;
    }
}
