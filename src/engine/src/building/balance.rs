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
    let given: Vec<Option<Temperature>> =
        given.chain(house.spaces.iter().map(|space| space.temperature)).collect();
    let unknowns: Vec<usize> =
        (rooms..given.len()).filter(|&node| given.get(node) == Some(&None)).collect();
    let n = unknowns.len();
    let mut matrix = vec![vec![0.0; n]; n];
    let mut right = vec![0.0; n];
    // Whether heat finds a way out of a space.
    let mut open = vec![false; n];
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
                open[row] |= g > 0.0;
            }
            To::Node(other) => {
                matrix[row][row] += g;
                match (place(other), given.get(other)) {
                    (Some(column), _) => matrix[row][column] -= g,
                    (None, Some(Some(temperature))) => {
                        right[row] += g * temperature.si();
                        open[row] |= g > 0.0;
                    }
                    _ => {}
                }
            }
            To::Fixed(loss_w) => right[row] -= loss_w,
        }
    }
    // Out of one space through another.
    while let Some(row) = (0..n)
        .find(|&row| !open[row] && (0..n).any(|other| open[other] && matrix[row][other] != 0.0))
    {
        open[row] = true;
    }
    // Spaces shut off from everything, or with each other, are as cold as outdoors.
    for row in (0..n).filter(|&row| !open[row]) {
        matrix[row] = vec![0.0; n];
        matrix[row][row] = 1.0;
        right[row] = house.site.outdoors.si();
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

/// Gauss and Jordan. The diagonal outweighs its row in every balance, so no pivot is sought.
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
