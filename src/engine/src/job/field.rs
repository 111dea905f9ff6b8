//! Every place where a number is typed. The page's element ids and the job file's names follow from
//! it; what each takes stands in [`super::bounds`].

mod id;

use crate::building::{AssemblyId, BillId, ChangeId, OpeningId, RoomId, SurfaceId, ZoneId};
use crate::named::{Named, stored_by_name};
use crate::pipe::Tube;
use serde::Serialize;

/// The fields of one kind of thing.
pub trait Family: Named {
    /// Its place in the family's list.
    fn place(self) -> u8;
}

/// Declares a family of fields, each with the name under which it is stored.
macro_rules! fields {
    ($(#[$doc:meta])* $family:ident { $($(#[$field_doc:meta])* $name:ident = $text:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $family { $($(#[$field_doc])* $name),+ }

        impl Named for $family {
            const ALL: &'static [$family] = &[$($family::$name),+];
            fn name(self) -> &'static str {
                match self { $($family::$name => $text),+ }
            }
        }
        stored_by_name!($family);

        impl Family for $family {
            fn place(self) -> u8 {
                self as u8
            }
        }
    };
}

fields!(
    /// Of the house.
    HouseField {
        Outdoors = "outdoors",
        Indoors = "indoors",
        Altitude = "altitude",
        AirChanges = "air-changes",
        CeilingHeight = "ceiling-height",
        MeanTemperature = "mean-temperature",
        ColdestMonth = "coldest-month",
        Wind = "wind",
        /// What each room is heated beyond its loss.
        Margin = "margin",
    }
);

fields!(
    /// Of the air through the whole house.
    AirField {
        BlowerFlow = "blower-flow",
        BlowerExponent = "blower-exponent",
        LeakageArea = "leakage-area",
        Supply = "supply",
        Exhaust = "exhaust",
        Recovery = "recovery",
    }
);

fields!(
    /// Of the ground.
    GroundField {
        WallThickness = "wall-thickness",
        EdgeDepth = "edge-depth",
        EdgeR = "edge-r",
        EdgeThickness = "edge-thickness",
        FFactor = "f-factor",
    }
);

fields!(
    /// The 10 to 90 % range of a kind of input, either side of its value.
    CertaintyField {
        Measured = "measured",
        Label = "label",
        Listed = "listed",
        Assumed = "assumed",
        Air = "air",
        Outdoors = "outdoors",
        Soil = "soil",
    }
);

fields!(
    /// Of an assembly of the user's own.
    AssemblyField {
        U = "u",
        R = "r",
    }
);

fields!(
    LayerField {
        Thickness = "thickness",
        R = "r",
    }
);

fields!(
    /// Of all fuel bills.
    BillsField {
        Efficiency = "efficiency",
        Indoors = "indoors",
        /// Of a unit of the fuel.
        Price = "price",
    }
);

fields!(
    BillField {
        /// The day from which, and the day to which: text with errors of their own.
        From = "from",
        To = "to",
        Amount = "amount",
        DegreeDays = "degree-days",
    }
);

fields!(
    /// Of the baseboard element.
    ElementField {
        Output = "output",
        Water = "water",
        Air = "air",
        Exponent = "exponent",
        RatingFlow = "rating-flow",
        Derate = "derate",
        BarePerPiece = "bare-per-piece",
        EndAllowance = "end-allowance",
    }
);

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

fields!(
    /// Of one point of a maker's table.
    PointField {
        Water = "water",
        Output = "output",
    }
);

fields!(
    /// Of the loop and the boiler room.
    CircuitField {
        Supply = "supply",
        BoilerLimit = "boiler-limit",
        Drop = "drop",
        Flow = "flow",
        PipeSurroundings = "pipe-surroundings",
        PipeFilm = "pipe-film",
        ReturnPipe = "return-pipe",
        ReturnElbows = "return-elbows",
        BoilerElbows = "boiler-elbows",
        BoilerTees = "boiler-tees",
        BoilerValves = "boiler-valves",
        EquipmentHead = "equipment-head",
    }
);

fields!(
    /// Of valves, tees and circulators.
    PartField {
        ZoneValveCv = "zone-valve-cv",
        FlowCheckCv = "flow-check-cv",
        BalancingCv = "balancing-cv",
        DiverterK = "diverter-k",
        PumpEfficiency = "pump-efficiency",
        InsulationThickness = "insulation-thickness",
    }
);

fields!(
    /// Of the boiler and the filling.
    PlantField {
        Output = "output",
        LeastOutput = "least-output",
        BoilerVolume = "boiler-volume",
        Differential = "differential",
        LeastReturn = "least-return",
        TankOutput = "tank-output",
        TopHeight = "top-height",
        Fill = "fill",
        Relief = "relief",
        OtherVolume = "other-volume",
        ColdFill = "cold-fill",
        GlycolShare = "glycol-share",
        Balance = "balance",
    }
);

fields!(
    /// Of how the house is run through night and year.
    ControlField {
        /// By how much the thermostats are turned down for the night.
        Setback = "setback",
        SetbackHours = "setback-hours",
        /// In which the house should be warm again.
        Recover = "recover",
    }
);

fields!(
    /// Of a zone's piping.
    ZoneField {
        /// One way from the boiler to where the rooms' own pipes begin.
        Trunk = "trunk",
        TrunkElbows = "trunk-elbows",
        /// Of the thermostat, one way.
        Wire = "wire",
    }
);

fields!(
    /// Of one point of a circulator's curve.
    PumpPointField {
        Flow = "flow",
        Head = "head",
    }
);

fields!(
    /// Of one step of a room's route.
    LegField {
        Length = "length",
    }
);

fields!(
    RoomField {
        FloorLength = "floor-length",
        FloorWidth = "floor-width",
        CutLength = "cut-length",
        CutWidth = "cut-width",
        FloorArea = "floor-area",
        Height = "height",
        Temperature = "temperature",
        AirChanges = "air-changes",
        PipeTo = "pipe-to",
        Elbows = "elbows",
        /// From this room back: to the boiler where it is the last of a loop, to the manifold, or the
        /// return main beside the supply main.
        PipeBack = "pipe-back",
        ElbowsBack = "elbows-back",
        /// From main to element and back, together.
        BranchPipe = "branch-pipe",
        BranchElbows = "branch-elbows",
        /// Main between a room's two tees.
        TeeSpacing = "tee-spacing",
        FromLeft = "from-left",
        FromFront = "from-front",
        VentArea = "vent-area",
        /// That the room has from elsewhere on the design day.
        OtherHeat = "other-heat",
        /// The share of its output that the damper of the enclosure leaves.
        Damper = "damper",
    }
);

fields!(
    SurfaceField {
        Length = "length",
        Height = "height",
        Area = "area",
        /// The choice of what lies behind it, which is no text but has an error of its own.
        Behind = "behind",
        BehindTemperature = "behind-temperature",
        /// How deep it reaches below the ground outside.
        Depth = "depth",
        /// How much of a floor's edge lies at an outside wall.
        Perimeter = "perimeter",
        U = "u",
        R = "r",
        Free = "free",
        /// Pieces that stay, which are no text but have an error of their own.
        Fixed = "fixed",
    }
);

fields!(
    OpeningField {
        Width = "width",
        Height = "height",
        FromLeft = "from-left",
        U = "u",
        R = "r",
    }
);

fields!(
    /// Measured of the whole system when it is started.
    MeasuredField {
        Outdoors = "outdoors",
        /// Cold, at the gauge.
        Fill = "fill",
        /// Of the expansion tank's air, before filling.
        PreCharge = "pre-charge",
        /// Of all the water, where it leaves the boiler and where it comes back.
        BoilerSupply = "boiler-supply",
        BoilerBack = "boiler-back",
    }
);

fields!(
    /// Measured at one circuit, which its first room stands for, or in one room.
    SpotField {
        Supply = "supply",
        Back = "back",
        Flow = "flow",
        /// What the balancing valve is set to.
        Valve = "valve",
        /// The room's air.
        Air = "air",
        /// On the pipe before and behind the room's element.
        WaterIn = "water-in",
        WaterOut = "water-out",
    }
);

fields!(
    /// Of a change to the house that is only weighed.
    ChangeField {
        /// What it costs, as the user knows it.
        Cost = "cost",
        U = "u",
        R = "r",
        AirChanges = "air-changes",
        BlowerFlow = "blower-flow",
        LeakageArea = "leakage-area",
        FloorLength = "floor-length",
        FloorWidth = "floor-width",
        Height = "height",
        /// In the outside walls of a new room.
        Windows = "windows",
        /// The choice of the room that it is for, which is no text but has an error of its own.
        Whose = "whose",
    }
);

/// A place where a number is typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub enum Field {
    House(HouseField),
    Air(AirField),
    Ground(GroundField),
    Certainty(CertaintyField),
    Assembly(AssemblyId, AssemblyField),
    /// A layer of an assembly, counted from zero.
    Layer(AssemblyId, usize, LayerField),
    Bills(BillsField),
    Bill(BillId, BillField),
    Element(ElementField),
    /// A row of the maker's table, counted from zero.
    Point(usize, PointField),
    /// A stock length in whole feet.
    Stocked(u8, StockField),
    Price(PriceField),
    /// A price for one size of tube.
    SizedPrice(Tube, SizedField),
    Spare(Group),
    Cut(CutField),
    /// The choice of stock lengths, which is no text but has an error of its own.
    Stock,
    Circuit(CircuitField),
    Part(PartField),
    Plant(PlantField),
    Control(ControlField),
    Zone(ZoneId, ZoneField),
    /// A point of the circulator's curve, counted from zero.
    PumpPoint(usize, PumpPointField),
    /// A step of a room's route, counted from zero.
    Leg(RoomId, usize, LegField),
    Room(RoomId, RoomField),
    Surface(RoomId, SurfaceId, SurfaceField),
    Opening(RoomId, SurfaceId, OpeningId, OpeningField),
    Measured(MeasuredField),
    Spot(RoomId, SpotField),
    Change(ChangeId, ChangeField),
}
