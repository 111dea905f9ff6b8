//! What is typed of the heating: element, piping, circulator, boiler, how it is run, what was measured.

use super::family::{Family, fields};
use crate::named::{Named, stored_by_name};

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
    /// Of one step of a room's route.
    LegField {
        Length = "length",
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
