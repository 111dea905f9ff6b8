//! What is typed of the house: its rooms, air, ground and assemblies, how sure all that is, its fuel
//! bills, and changes that are only weighed.

use super::family::{Family, fields};
use crate::named::{Named, stored_by_name};

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
