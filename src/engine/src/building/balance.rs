//! The temperatures of unheated spaces: each where the heat that comes in equals the heat that
//! leaves. One linear equation a space, solved together.

use super::House;
use super::conductor::{Beyond, Conductor, Near};
use crate::quantity::Temperature;

/// The equations of the spaces whose temperature is to be found, ready to be solved for any right
/// side.
pub(super) struct Balance {
    /// The node of each unknown.
    pub unknowns: Vec<usize>,
    /// Inverse of the matrix, row by row, W/K to K/W.
    inverse: Vec<Vec<f64>>,
}

/// The temperature of every node, rooms first, and the balance they follow from.
pub(super) fn temperatures(house: &House, all: &[Vec<Conductor>]) -> (Vec<Temperature>, Balance) {
    let rooms = house.rooms.len();
    let given = house.rooms.iter().map(|room| Some(room.temperature));
    let mut given: Vec<Option<Temperature>> =
        given.chain(house.spaces.iter().map(|space| space.temperature)).collect();
    settle_cut_off(house, all, &mut given);
    let unknowns: Vec<usize> =
        (rooms..given.len()).filter(|&node| given.get(node) == Some(&None)).collect();
    let n = unknowns.len();
    let mut matrix = vec![vec![0.0; n]; n];
    let mut right = vec![0.0; n];
    let place = |node: usize| unknowns.iter().position(|&unknown| unknown == node);
    // Heat from the space in `row` to something at a temperature that is given, or to be found.
    for (row, g, to) in all
        .iter()
        .enumerate()
        .flat_map(|(node, own)| own.iter().flat_map(move |conductor| ways(conductor, node, house)))
    {
        let Some(row) = place(row) else { continue };
        match to {
            To::At(temperature) => {
                matrix[row][row] += g;
                right[row] += g * temperature.si();
            }
            To::Node(other) => {
                matrix[row][row] += g;
                match (place(other), given.get(other)) {
                    (Some(column), _) => matrix[row][column] -= g,
                    (None, Some(Some(temperature))) => right[row] += g * temperature.si(),
                    _ => {}
                }
            }
            To::Fixed(loss_w) => right[row] -= loss_w,
        }
    }
    let balance = Balance { inverse: inverse(matrix), unknowns };
    let found = balance.solve(&right);
    let mut temperatures: Vec<Temperature> =
        given.iter().map(|t| t.unwrap_or(house.site.outdoors)).collect();
    for (&node, kelvin) in balance.unknowns.iter().zip(found) {
        temperatures[node] = Temperature::from_si(kelvin);
    }
    (temperatures, balance)
}

/// A space that no heat reaches, neither from a temperature that is known nor by way of another
/// space, has no balance: it is taken to be as cold as outdoors.
fn settle_cut_off(house: &House, all: &[Vec<Conductor>], given: &mut [Option<Temperature>]) {
    let ways: Vec<(usize, To)> = all
        .iter()
        .enumerate()
        .flat_map(|(node, own)| own.iter().flat_map(move |conductor| ways(conductor, node, house)))
        .filter(|(_, conductance, _)| *conductance > 0.0)
        .map(|(node, _, to)| (node, to))
        .collect();
    let mut reached: Vec<bool> = given.iter().map(Option::is_some).collect();
    // Each round reaches one space more at least, or was the last.
    for _ in 0..house.spaces.len() {
        for (node, to) in &ways {
            let warm = match *to {
                To::At(_) => true,
                To::Node(other) => reached.get(other).copied().unwrap_or(false),
                To::Fixed(_) => false,
            };
            if let Some(known) = reached.get_mut(*node) {
                *known |= warm;
            }
        }
    }
    for (temperature, reached) in given.iter_mut().zip(reached) {
        if !reached {
            *temperature = Some(house.site.outdoors);
        }
    }
}

/// Where a conductor takes heat from a node.
enum To {
    At(Temperature),
    Node(usize),
    /// A loss, in watts, that does not ask how warm the space is.
    Fixed(f64),
}

/// What a conductor means to the nodes at its ends.
fn ways(conductor: &Conductor, node: usize, house: &House) -> Vec<(usize, f64, To)> {
    let g = conductor.conductance.si();
    match (conductor.near, conductor.beyond) {
        (Near::Node, Beyond::Outdoors) => vec![(node, g, To::At(house.site.outdoors))],
        (Near::Node, Beyond::At(beyond)) => vec![(node, g, To::At(beyond))],
        (Near::Node, Beyond::Node(other)) => {
            vec![(node, g, To::Node(other)), (other, g, To::Node(node))]
        }
        (Near::At(near), Beyond::At(beyond)) => {
            vec![(node, 0.0, To::Fixed(g * (near - beyond).si()))]
        }
        _ => Vec::new(),
    }
}

impl Balance {
    /// The unknowns for this right side.
    pub(super) fn solve(&self, right: &[f64]) -> Vec<f64> {
        self.inverse.iter().map(|row| row.iter().zip(right).map(|(a, b)| a * b).sum()).collect()
    }
}

/// Gauss and Jordan. The diagonal outweighs its row in every balance, and in one row of each group at
/// least it does so truly, so no pivot is sought.
fn inverse(mut matrix: Vec<Vec<f64>>) -> Vec<Vec<f64>> {
    let n = matrix.len();
    let mut out: Vec<Vec<f64>> =
        (0..n).map(|i| (0..n).map(|j| f64::from(u8::from(i == j))).collect()).collect();
    for pivot in 0..n {
        let scale = matrix[pivot][pivot];
        for column in 0..n {
            matrix[pivot][column] /= scale;
            out[pivot][column] /= scale;
        }
        for row in 0..n {
            let factor = matrix[row][pivot];
            if row == pivot || factor == 0.0 {
                continue;
            }
            for column in 0..n {
                let (a, b) = (matrix[pivot][column], out[pivot][column]);
                matrix[row][column] -= factor * a;
                out[row][column] -= factor * b;
            }
        }
    }
    out
}
