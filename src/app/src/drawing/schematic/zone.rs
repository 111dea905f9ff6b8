//! One zone of the schematic, in its arrangement.

use super::super::pen::{
    ARROW, BALANCING_VALVE, CIRCULATOR, DIVERTER_TEE, FLOW_CHECK, SHUT_VALVE, ZONE_VALVE, path,
    rect, symbol, way,
};
use super::{RETURN, Sheet};
use finrun_engine::arrangement::ZoneDesign;
use finrun_engine::job::{Arrangement, BackPath, Balancing, Diverters, ShutOff, Zone};
use finrun_engine::network::Place;
use finrun_engine::quantity::{Length, Power, Temperature, Unit};
use finrun_text as text;

/// From the zone's supply to an element beside it.
const ASIDE: f64 = 26.0;
/// From an element's middle to its words.
const WORDS: f64 = 24.0;
/// An element's width, and the height of a foot of it.
const WIDE: f64 = 24.0;
const FOOT: f64 = 3.2;
/// Between lines of text.
const STEP: f64 = 17.0;

impl Sheet<'_> {
    pub(super) fn zone(&mut self, index: usize) {
        let zone = &self.job.zones[index];
        let several = self.several();
        let reverse = zone.arrangement == Arrangement::ReverseReturn;
        self.right = if several || reverse { RETURN - 15.0 } else { RETURN };
        self.joins.clear();
        match self.design.piping.zones.get(index) {
            Some(design) if several => self.zone_head(zone, design),
            _ => {
                let at = (self.left + WORDS, self.y + 6.0);
                self.say("strong", at, 300.0, text::arrangement(zone.arrangement));
                self.y += 18.0;
            }
        }
        match zone.arrangement {
            Arrangement::Series => {
                for rooms in &zone.loops {
                    self.series(zone, self.left, self.drawn, rooms);
                }
            }
            Arrangement::Split => self.split(zone),
            Arrangement::DiverterTees => self.diverters(zone),
            Arrangement::DirectReturn | Arrangement::ReverseReturn | Arrangement::HomeRun => {
                self.between_mains(zone);
            }
        }
        self.join(zone, index);
        self.y += 20.0;
    }

    /// From the riser to the zone: what opens it or moves its water, and its numbers.
    fn zone_head(&mut self, zone: &Zone, design: &ZoneDesign) {
        let (riser, water) = (14.0, self.design.piping.supply);
        let y = self.y;
        self.left = 38.0;
        let end = if self.own_pumps() { y + 58.0 } else { y + 42.0 };
        self.supply_pipe(water, &[("M", riser), (" ", self.risers.0), ("V", y)]);
        self.supply_pipe(water, &[("M", riser), (" ", y), ("H", self.left), ("V", end)]);
        symbol(&mut self.svg, ARROW, (riser, y - 14.0), 90);
        let x = self.left + WORDS;
        let room = self.right - 8.0 - x;
        let name = text::zone_name(self.draft, zone.id);
        let back = format!("{} {}", text::back_to_boiler(), self.shown(design.back));
        self.say_to("d", (self.right - 8.0, y + 6.0), 96.0, &back);
        self.say("strong", (x, y + 6.0), room - 96.0, &name);
        let flow = self.flow(design.mass_flow);
        let line = format!("{flow} · {}", text::arrangement(zone.arrangement));
        self.say("d", (x, y + 6.0 + STEP), room, &line);
        if self.own_pumps() {
            symbol(&mut self.svg, CIRCULATOR, (self.left, y + 18.0), 90);
            symbol(&mut self.svg, FLOW_CHECK, (self.left, y + 42.0), 90);
            let piping = &self.design.piping;
            let pump = piping.pumps.iter().find(|pump| pump.zone == Some(zone.id));
            let outlet = piping.passage(Place::FlowCheck(zone.id));
            if let (Some(pump), Some(outlet)) = (pump, outlet) {
                let outlet = text::above_tank(&self.shown(outlet.pressure_in));
                let line = format!("{} · {outlet}", self.head(pump.head));
                self.say("d", (x, y + 6.0 + 2.0 * STEP), room, &line);
            }
        } else {
            symbol(&mut self.svg, ZONE_VALVE, (self.left, y + 20.0), 90);
        }
        self.risers.0 = y;
        self.drawn = end;
        self.y = end;
    }

    /// Elements in turn on one line.
    fn series(&mut self, zone: &Zone, x: f64, from: f64, rooms: &[usize]) {
        let mut from = from;
        let first = self.y + 4.0;
        for &room in rooms {
            self.y += 14.0;
            let element = &self.design.rooms[room].element;
            self.supply_pipe(element.water_in, &[("M", x), (" ", from), ("V", self.y)]);
            from = self.y + self.room(room, x, false);
            if element.choice.nominal == Length::ZERO {
                self.supply_pipe(element.water_in, &[("M", x), (" ", self.y), ("V", from)]);
            }
            self.y = from;
        }
        let water = match rooms.last() {
            Some(&last) => self.design.rooms[last].element.water_out,
            None => return,
        };
        if zone.back == BackPath::InEnclosure {
            // Above the elements, in their enclosure.
            let over = x + 7.0;
            let steps = [("M", x), (" ", from), ("v", 6.0), ("H", over), ("V", first)];
            self.return_pipe(water, &steps);
            symbol(&mut self.svg, ARROW, (over, first + 6.0), 270);
            self.return_line(zone, over, first, water);
            self.y += 8.0;
        } else {
            self.y += 14.0;
            self.return_pipe(water, &[("M", x), (" ", from), ("V", self.y)]);
            self.return_line(zone, x, self.y, water);
        }
    }

    /// From an element to where the zone's circuits join.
    fn return_line(&mut self, zone: &Zone, x: f64, y: f64, water: Temperature) {
        self.return_pipe(water, &[("M", x), (" ", y), ("H", self.right)]);
        symbol(&mut self.svg, ARROW, (self.right - 60.0, y), 0);
        if zone.balancing == Balancing::Valves {
            symbol(&mut self.svg, BALANCING_VALVE, (self.right - 26.0, y), 0);
        }
        self.joins.push(y);
    }

    /// Draws the zone's supply on down.
    fn supply_to(&mut self, y: f64, water: Temperature) {
        self.supply_pipe(water, &[("M", self.left), (" ", self.drawn), ("V", y)]);
        self.drawn = y;
    }

    /// Loops side by side from one trunk.
    fn split(&mut self, zone: &Zone) {
        let x = self.left + ASIDE;
        let water = self.design.piping.supply;
        for (index, rooms) in zone.loops.iter().enumerate() {
            self.y += 12.0;
            self.supply_to(self.y, water);
            self.supply_pipe(water, &[("M", self.left), (" ", self.y), ("H", x)]);
            if let Some(circuit) = self.circuit(rooms) {
                let first = circuit.rooms.first().and_then(|&room| self.draft.room(room));
                let branch = first.map_or(index as u32, |room| room.branch);
                let flow = self.flow(circuit.mass_flow);
                let line = format!("{} · {flow}", text::loop_name(branch));
                let at = (x + WORDS, self.y + 5.0);
                self.say("d", at, self.right - 8.0 - at.0, &line);
            }
            let from = self.y;
            self.series(zone, x, from, rooms);
            self.y += 10.0;
        }
    }

    /// A main past the rooms, each on two tees of it.
    fn diverters(&mut self, zone: &Zone) {
        let x = self.left + ASIDE;
        let mut water = self.design.piping.supply;
        for room in zone.loops.iter().flatten().copied() {
            let element = &self.design.rooms[room].element;
            let y = self.y + 6.0;
            self.y = y + 10.0;
            if !self.connected(room) {
                self.y += self.room(room, x, true);
                self.supply_to(self.y, water);
                continue;
            }
            self.supply_to(y, element.water_in);
            self.supply_pipe(
                element.water_in,
                &[("M", self.left), (" ", y), ("H", x), ("v", 10.0)],
            );
            let end = self.y + self.room(room, x, true);
            let tee = end + 8.0;
            let back = [("M", x), (" ", end), ("V", tee), ("H", self.left)];
            self.return_pipe(element.water_out, &back);
            self.supply_to(tee, element.water_in);
            symbol(&mut self.svg, DIVERTER_TEE, (self.left, tee), 90);
            if self.job.approaches[room].diverters == Diverters::Two {
                symbol(&mut self.svg, DIVERTER_TEE, (self.left, y), 90);
            }
            self.y = tee + 6.0;
            water = element.water_out;
        }
        self.y += 10.0;
        let rooms: Vec<usize> = zone.loops.iter().flatten().copied().collect();
        let water = self.circuit(&rooms).map_or(water, |circuit| circuit.back);
        self.supply_to(self.y, water);
        self.return_line(zone, self.left, self.y, water);
    }

    /// Each room from a supply main, or manifold, across to a return.
    fn between_mains(&mut self, zone: &Zone) {
        let x = self.left + ASIDE;
        let manifold = zone.arrangement == Arrangement::HomeRun;
        let mut first = None;
        for room in zone.loops.iter().flatten().copied() {
            let element = &self.design.rooms[room].element;
            let y = self.y + 8.0;
            self.y = y + 10.0;
            if !self.connected(room) {
                if self.job.approaches[room].shut_off == ShutOff::Shut {
                    self.supply_to(y, element.water_in);
                    self.supply_pipe(element.water_in, &[("M", self.left), (" ", y), ("H", x)]);
                    symbol(&mut self.svg, SHUT_VALVE, (x, y), 0);
                }
                self.y += self.room(room, x, true) + 6.0;
                continue;
            }
            first.get_or_insert(y);
            self.supply_to(y, element.water_in);
            self.supply_pipe(
                element.water_in,
                &[("M", self.left), (" ", y), ("H", x), ("v", 10.0)],
            );
            let end = self.y + self.room(room, x, true);
            let water = element.water_out;
            self.y = end + 14.0;
            self.return_pipe(water, &[("M", x), (" ", end), ("V", self.y)]);
            self.return_line(zone, x, self.y, water);
            self.y += 4.0;
        }
        if let (true, Some(first)) = (manifold, first) {
            let high = self.drawn - first + 16.0;
            rect(&mut self.svg, "symbol", self.left - 5.0, first - 8.0, 10.0, high);
        }
    }

    /// Whether water reaches a room's element.
    fn connected(&self, room: usize) -> bool {
        let id = self.job.house.rooms[room].id;
        self.design.piping.passage(Place::Element(id)).is_some()
    }

    /// A zone's circuits together, and on to the boiler.
    fn join(&mut self, zone: &Zone, index: usize) {
        let (Some(&first), Some(&last)) = (self.joins.first(), self.joins.last()) else { return };
        let piping = &self.design.piping;
        let water = piping.zones.get(index).map_or(piping.back, |zone| zone.back);
        // A reverse return goes on in the direction of the supply, any other turns back.
        let reverse = zone.arrangement == Arrangement::ReverseReturn;
        let mut exit = if reverse { last } else { first };
        let right = self.right;
        if zone.arrangement == Arrangement::HomeRun {
            if right == RETURN {
                exit = first - 8.0;
            }
            rect(&mut self.svg, "symbol", right - 5.0, first - 8.0, 10.0, last - first + 16.0);
        } else if last > first {
            self.return_pipe(water, &[("M", right), (" ", first), ("V", last)]);
            let turn = if reverse { 90 } else { 270 };
            for pair in self.joins.windows(2) {
                symbol(&mut self.svg, ARROW, (right, (pair[0] + pair[1]) / 2.0), turn);
            }
        }
        if right < RETURN {
            self.return_pipe(water, &[("M", right), (" ", exit), ("H", RETURN)]);
        }
        self.risers.1 = self.risers.1.max(exit);
    }

    /// A room's element at the height that the drawing has come to, with its numbers; gives how high
    /// it is. With `branch` the room has a flow of its own.
    fn room(&mut self, at: usize, x: f64, branch: bool) -> f64 {
        let room = &self.design.rooms[at];
        let element = &room.element;
        let (nominal, short) = (element.choice.nominal, room.short());
        let fitted = nominal > Length::ZERO;
        let mut lines = vec![match fitted {
            true => format!("{} · {}", self.shown(nominal), self.shown(element.output)),
            false => text::no_element().to_string(),
        }];
        let flow = (branch && fitted).then(|| self.flow(element.flow));
        let short = (short > Power::ZERO).then(|| text::short_by(&self.shown(short)));
        lines.extend(flow.clone());
        if let Some(short) = &short {
            match flow {
                Some(_) => {
                    lines[1].push_str(" · ");
                    lines[1].push_str(short);
                }
                None => lines.push(short.clone()),
            }
        }
        let least = 16.0 + STEP * lines.len() as f64;
        let high = (nominal.to(Unit::Foot) * FOOT).max(least);
        let y = self.y;
        if fitted {
            let class = if short.is_some() { "element short" } else { "element" };
            let left = x - WIDE / 2.0;
            rect(&mut self.svg, class, left, y, WIDE, high);
            let mut fins = String::new();
            let mut fin = y + 6.0;
            while fin < y + high - 3.0 {
                fins.push_str(&way(&[("M", left), (" ", fin), ("h", WIDE)]));
                fin += 6.0;
            }
            path(&mut self.svg, "fins", &fins);
        }
        let (begin, end) = (x + WORDS, self.right - 8.0);
        let room_left = end - begin - 52.0;
        let name = text::room_name(self.draft, room.room);
        self.say("strong", (begin, y + 12.0), room_left, &name);
        for (row, line) in lines.iter().enumerate() {
            let last = row + 1 == lines.len();
            let class = if last && short.is_some() { "strong" } else { "d" };
            let at = (begin, y + 12.0 + STEP * (row + 1) as f64);
            self.say(class, at, room_left, line);
        }
        if fitted {
            self.say_to("d", (end, y + 12.0), 52.0, &self.shown(element.water_in));
            self.say_to("d", (end, y + high - 4.0), 52.0, &self.shown(element.water_out));
        }
        high
    }
}
