//! What is typed of what is bought: stock, prices, spare, cutting.

use super::family::{Family, fields};
use crate::named::{Named, stored_by_name};

fields!(
    /// Of one stock length.
    StockField {
        Price = "price",
        /// How many the shop has.
        Available = "available",
        /// How many were bought already.
        Have = "have",
    }
);

fields!(
    /// What things cost, in the user's currency.
    PriceField {
        /// A soldered joint: coupling, solder, time.
        Joint = "joint",
        /// The enclosure, where the price of a piece is without it.
        Enclosure = "enclosure",
        EndCap = "end-cap",
        Corner = "corner",
        Pipe = "pipe",
        Elbow = "elbow",
        Tee = "tee",
        DiverterTee = "diverter-tee",
        BalancingValve = "balancing-valve",
        ZoneValve = "zone-valve",
        Circulator = "circulator",
        Thermostat = "thermostat",
        /// A pair of ports on a supply and a return manifold.
        ManifoldPorts = "manifold-ports",
        /// What each loop needs of its own: shut-off, purge and drain valves.
        LoopValves = "loop-valves",
        /// Between two pieces of enclosure.
        SpliceCover = "splice-cover",
        /// What an element lies on and slides in.
        Cradle = "cradle",
        /// Where pipe or element passes wood.
        ExpansionPad = "expansion-pad",
        Coupling = "coupling",
        Reducer = "reducer",
        /// From solder to thread.
        Adapter = "adapter",
        /// From copper to PEX.
        Transition = "transition",
        Hanger = "hanger",
        /// Insulation of pipe.
        PipeCover = "pipe-cover",
        ShutOffValve = "shut-off-valve",
        PurgeValve = "purge-valve",
        DrainValve = "drain-valve",
        FlowCheck = "flow-check",
        MixingValve = "mixing-valve",
        /// A pair, of a circulator.
        Flanges = "flanges",
        Relay = "relay",
        Transformer = "transformer",
        Wire = "wire",
        AirEliminator = "air-eliminator",
        AirVent = "air-vent",
        ExpansionTank = "expansion-tank",
        FillValve = "fill-valve",
        BackflowPreventer = "backflow-preventer",
        ReliefValve = "relief-valve",
        /// Of pressure and temperature.
        Gauge = "gauge",
        /// By the spool, the jar, the jar, the bottle, the can.
        Solder = "solder",
        Flux = "flux",
        Sealant = "sealant",
        Gas = "gas",
        Glycol = "glycol",
        /// Insulating a surface.
        Insulation = "insulation",
        /// An element of higher output, above the price of this one.
        BetterElement = "better-element",
    }
);

fields!(
    /// What has prices by size of tube, beside that for any size.
    SizedField {
        Pipe = "pipe",
        Elbow = "elbow",
        Tee = "tee",
        DiverterTee = "diverter-tee",
        Coupling = "coupling",
        Adapter = "adapter",
        Transition = "transition",
        Hanger = "hanger",
        PipeCover = "pipe-cover",
        BalancingValve = "balancing-valve",
        ZoneValve = "zone-valve",
        ShutOffValve = "shut-off-valve",
        PurgeValve = "purge-valve",
        FlowCheck = "flow-check",
    }
);

fields!(
    /// Kinds of material: each has its sum, and its share that is bought to spare.
    Group {
        /// Pieces of element.
        Element = "element",
        /// The enclosure and what closes and carries it.
        Enclosure = "enclosure",
        Pipe = "pipe",
        Fittings = "fittings",
        /// Hangers, pads, insulation.
        Supports = "supports",
        Valves = "valves",
        /// Circulators, and what belongs to the boiler.
        BoilerRoom = "boiler-room",
        Controls = "controls",
        /// Solder, flux, sealant, gas, glycol.
        Supplies = "supplies",
        Labor = "labor",
    }
);

fields!(
    /// Of cutting pipe.
    CutField {
        /// What a saw takes.
        Kerf = "kerf",
    }
);
