//! Sorting, compiled once for all kinds of things: the standard library's sorts are compiled anew for
//! each, and were a twelfth of the download.

use std::cmp::Ordering;

/// Sorts as `slice::sort_by` does: what is equal keeps its order.
pub fn sort_by<T>(list: &mut [T], order: impl Fn(&T, &T) -> Ordering) {
    let mut places = places(list.len(), &mut |a, b| match (list.get(a), list.get(b)) {
        (Some(a), Some(b)) => order(a, b),
        _ => Ordering::Equal,
    });
    for at in 0..places.len() {
        while places[at] != at {
            let to = places[at];
            list.swap(at, to);
            places.swap(at, to);
        }
    }
}

/// Sorts by a key, as `slice::sort_by_key` does.
pub fn sort_by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(list, |a, b| key(a).cmp(&key(b)));
}

/// Where each thing goes.
fn places(count: usize, order: &mut dyn FnMut(usize, usize) -> Ordering) -> Vec<usize> {
    let mut sorted: Vec<usize> = (0..count).collect();
    sorted.sort_by(|&a, &b| order(a, b));
    let mut places = vec![0; count];
    for (to, from) in sorted.into_iter().enumerate() {
        places[from] = to;
    }
    places
}
