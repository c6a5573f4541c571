//! The letters by which drawings, tables and people name loops.

use std::fmt;

use serde::{Serialize, Serializer};

/// The mark of a loop: `A`, `B`, … in the order in which a vehicle that leaves meets them; a loop of a row has a number as well, `A1`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LoopMark {
    letter: char,
    number: Option<usize>,
}

impl LoopMark {
    /// The mark of the loop, or row of loops, that stands at `index` in the order of the layout.
    pub fn at(index: usize) -> Self {
        Self { letter: ('A'..='Z').nth(index).unwrap_or('Z'), number: None }
    }

    /// The mark of a loop within its row, counted from 0.
    #[must_use]
    pub fn numbered(self, index: usize) -> Self {
        Self { number: Some(index + 1), ..self }
    }
}

impl fmt::Display for LoopMark {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{}", self.letter)?;
        self.number.map_or(Ok(()), |number| write!(formatter, "{number}"))
    }
}

impl Serialize for LoopMark {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}
