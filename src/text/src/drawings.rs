//! Words of the drawings of the piping.

/// A pressure of the running system, where the filling's own is left out.
pub fn above_tank(pressure: &str) -> String {
    format!("{pressure} above the tank")
}

/// A zone while no other calls.
pub fn alone(zone: &str) -> String {
    format!("{zone} alone")
}

/// Where a circulator stands against the system, or is meant to.
pub fn operating_point(system: &str, flow: &str, head: &str, planned: bool) -> String {
    match planned {
        true => format!("{flow} at {head}, planned · {system}"),
        false => format!("{flow} at {head} · {system}"),
    }
}

pub fn pump_picture(name: &str) -> String {
    format!("{name}: head against flow.")
}
