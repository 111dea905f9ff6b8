//! Which nodes hang together.

/// Stands for the row of an anchor, whose pressure is no unknown.
pub(super) const ANCHOR: usize = usize::MAX;

/// The parts of a network, found by joining one link after the other (union and find).
#[derive(Debug)]
pub(super) struct Parts {
    /// Another node of the same part, not later; itself at the head of a part.
    toward: Vec<usize>,
}

impl Parts {
    pub(super) fn new(nodes: usize) -> Parts {
        Parts { toward: (0..nodes).collect() }
    }

    /// The first node of a node's part.
    pub(super) fn head(&mut self, mut node: usize) -> usize {
        while self.toward[node] != node {
            self.toward[node] = self.toward[self.toward[node]];
            node = self.toward[node];
        }
        node
    }

    pub(super) fn join(&mut self, a: usize, b: usize) {
        let (a, b) = (self.head(a), self.head(b));
        self.toward[a.max(b)] = a.min(b);
    }

    /// The row that each node's unknown pressure takes in the equations, and how many rows there
    /// are. Every part keeps one node as its anchor: `fixed` in its part, the first in any other.
    pub(super) fn rows(mut self, fixed: usize) -> (Vec<usize>, usize) {
        let held = self.head(fixed);
        let mut count = 0;
        let mut rows = Vec::with_capacity(self.toward.len());
        for node in 0..self.toward.len() {
            let head = self.head(node);
            let anchor = if head == held { node == fixed } else { node == head };
            rows.push(if anchor { ANCHOR } else { count });
            count += usize::from(!anchor);
        }
        (rows, count)
    }
}
