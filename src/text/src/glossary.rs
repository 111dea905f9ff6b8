//! What words of the trade mean, in plain ones.

/// A word with its meaning.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Term {
    pub word: &'static str,
    pub meaning: &'static str,
}

macro_rules! terms {
    ($($name:ident: $word:literal, $meaning:literal;)+) => {
        $(pub const $name: Term = Term { word: $word, meaning: $meaning };)+

        /// All of them, by the alphabet.
        pub const TERMS: &[Term] = &[$($name),+];
    };
}

terms! {
    AIR_CHANGE: "Air change",
        "All the air of a room replaced once by air from outdoors. 0.5 an hour: half of it each hour.";
    AIR_ELIMINATOR: "Air eliminator",
        "A chamber in the supply pipe in which air leaves the water and the system by itself.";
    BACKFLOW_PREVENTER: "Backflow preventer",
        "Keeps heating water from flowing back into the drinking water when the main loses its pressure.";
    BALANCE_TEMPERATURE: "Balance temperature",
        "The outdoor temperature above which sun, people and appliances heat the house by themselves.";
    BALANCING_VALVE: "Balancing valve",
        "A valve with a scale that is closed part of the way, so that one loop does not take the water of \
         another.";
    BLOWER_DOOR: "Blower door",
        "A fan in a doorway that measures how leaky a house is. Its report gives CFM50: the flow at 50 \
         pascals.";
    BRANCH: "Branch", "The small pipe from a main to one room's element and back.";
    CIRCULATOR: "Circulator", "The pump that moves the heating water round.";
    CONDENSING_BOILER: "Condensing boiler",
        "A boiler that also takes the heat of the steam in its flue gas. It can only where the water comes \
         back cooler than about 130 °F (54 °C).";
    CV: "Cv", "How easily a valve lets water through: gallons a minute at a loss of 1 psi. More is easier.";
    DEGREE_DAY: "Degree day",
        "One day that is one degree colder than a base, by custom 65 °F: how much winter a place has.";
    DERATING: "Derating", "A share taken off a rated output for what the laboratory did not have.";
    DESIGN_DAY: "Design day",
        "A day so cold that only 1 hour in 100 of the year is colder. What heats the house then, heats it.";
    DIVERTER_TEE: "Diverter tee",
        "A tee with a scoop or a narrowing inside, which pushes some of the main's water through a branch.";
    DOWNSTREAM: "Downstream, upstream", "Behind and before in the direction in which the water flows.";
    ELEMENT: "Element", "Copper tube with fins, which gives the heat; it stands in an enclosure along the wall.";
    ENCLOSURE: "Enclosure", "The sheet-metal cover with back plate and damper around the element.";
    EXPANSION_TANK: "Expansion tank",
        "A tank with a rubber skin and air behind it, which takes up the water that grows when it is heated.";
    EXPONENT: "Exponent",
        "How fast an element's output falls when its water is cooler; 1.4 for most.";
    F_FACTOR: "F-factor", "Heat through each foot of a slab's edge for each degree of difference.";
    FINNED_LENGTH: "Finned length",
        "The part of a piece that has fins and gives heat. What is sold as 6 ft can have less.";
    FLOW_CHECK: "Flow check", "A valve that lets water pass one way only, and only when it is pumped.";
    HEAD: "Head",
        "What friction takes from the flow and the circulator has to give, as the height of a column of water.";
    HEATING_EFFECT: "Heating effect",
        "Up to 15 % that some rating methods add for the low place of the element. It is no heat that can be \
         measured.";
    HOME_RUN: "Home run", "Each room has two pipes of its own to a manifold.";
    KERF: "Kerf", "What the saw turns to dust at each cut.";
    LEAKAGE_AREA: "Leakage area", "All gaps of a house put together as one hole.";
    MAIN: "Main", "The pipe that passes several rooms, which hang on it by branches.";
    MANIFOLD: "Manifold", "A pipe with many outlets, from which each room's pipes go their own way.";
    OUTDOOR_RESET: "Outdoor reset",
        "A control that makes the water cooler when it is milder outdoors.";
    OXYGEN_BARRIER: "Oxygen barrier",
        "A skin on plastic tube that keeps air from passing into the water, where it would rust iron and steel.";
    PRE_CHARGE: "Pre-charge", "The air pressure in an expansion tank before water comes to it.";
    PURGE: "Purge", "To drive the air out of a loop with fast water, one loop at a time.";
    R_VALUE: "R-value",
        "How well something holds back heat. Twice the R-value lets half the heat through. R-values of layers \
         add up.";
    RELIEF_VALVE: "Relief valve",
        "Opens by itself before the pressure bursts something. It is never plugged or shut off.";
    RETURN_PROTECTION: "Return protection",
        "What keeps cool water from coming back to a boiler that would corrode from it.";
    REVERSE_RETURN: "Reverse return, direct return",
        "Two mains. With a direct return the nearest room has the shortest way, and takes too much unless it is \
         throttled; with a reverse return all ways are about as long.";
    SERIES_LOOP: "Series loop",
        "The water passes one room's element after the other, a little cooler each time.";
    SPLIT_LOOP: "Split loop", "A pipe that parts into two or more loops, which come together again.";
    TEMPERATURE_DROP: "Temperature drop", "How much cooler the water comes back than it went out.";
    TRUNK: "Trunk", "The pipe between boiler and the place where loops part.";
    U_VALUE: "U-value",
        "Heat that a square foot or metre lets through for each degree. The less the better; 1 divided by the \
         R-value of it all.";
    ZONE: "Zone", "Rooms that one thermostat heats together.";
    ZONE_VALVE: "Zone valve", "A valve with a motor that lets water into one zone when its thermostat calls.";
}
