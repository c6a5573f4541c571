//! What loops are for.

use serde::Serialize;

use super::layout::{NominalLength, SHORT_LEG, USUAL_LEG};
use super::site::Barrier;
use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// What a loop is for.
    Role {
        Exit "exit" "Exit" "Inside the opening: a vehicle that leaves calls the barrier to open." [CommonPractice];
        ObstructionOutside "obstruction_outside" "Obstruction, outside" "Just outside the barrier: a vehicle on it holds the barrier open." [CommonPractice];
        ObstructionInside "obstruction_inside" "Obstruction, inside" "Just inside the barrier: a vehicle on it holds the barrier open." [CommonPractice];
        BetweenLeaves "between_leaves" "Between the leaves" "In the sweep of swing leaves: a vehicle there holds the leaves where they are." [CommonPractice];
        Arming "arming" "Arming" "Before a ticket or card post: a vehicle on it wakes the post." [CommonPractice];
        Closing "closing" "Closing" "Under a barrier arm: a vehicle on it holds the arm up, and leaving it lets the arm fall." [CommonPractice];
        Presence "presence" "Presence" "Before a window, door or stop line: a vehicle on it is reported." [CommonPractice];
    }
}

/// Which side of the closed barrier a loop lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Where vehicles come from.
    Outside,
    /// Where the property is.
    Inside,
    /// Across the line of the barrier or the reference.
    OnTheLine,
}

impl Side {
    /// The value in reports.
    pub fn code(self) -> &'static str {
        match self {
            Self::Outside => "outside",
            Self::Inside => "inside",
            Self::OnTheLine => "on_the_line",
        }
    }
}

impl Role {
    /// Whether the loop keeps a barrier from closing on a vehicle.
    pub fn holds_the_gate(self) -> bool {
        match self {
            Self::ObstructionOutside | Self::ObstructionInside | Self::BetweenLeaves | Self::Closing => true,
            Self::Exit | Self::Arming | Self::Presence => false,
        }
    }

    /// Whether the loop may come to lie next to a closed metal leaf, which then decides its distance.
    pub fn lies_beside_leaf(self) -> bool {
        match self {
            Self::Exit | Self::ObstructionOutside | Self::ObstructionInside | Self::Presence => true,
            Self::BetweenLeaves | Self::Arming | Self::Closing => false,
        }
    }

    /// Whether swing leaves stand open beside the loop.
    pub fn lies_beside_open_leaf(self) -> bool {
        match self {
            Self::BetweenLeaves => true,
            Self::Exit
            | Self::ObstructionOutside
            | Self::ObstructionInside
            | Self::Arming
            | Self::Closing
            | Self::Presence => false,
        }
    }

    /// Whether the role makes sense at a barrier.
    pub fn fits(self, barrier: Barrier) -> bool {
        match self {
            Self::BetweenLeaves => barrier.has_sweep(),
            Self::Closing => !barrier.has_metal_leaf(),
            Self::Exit | Self::ObstructionOutside | Self::ObstructionInside | Self::Arming | Self::Presence => true,
        }
    }

    /// The leg along travel that its loop usually has; where only cars and pickups stop, a short one serves. Common practice.
    pub fn usual_leg(self, only_low_vehicles: bool) -> NominalLength {
        match self {
            Self::Arming | Self::Presence if only_low_vehicles => SHORT_LEG,
            Self::Exit
            | Self::ObstructionOutside
            | Self::ObstructionInside
            | Self::BetweenLeaves
            | Self::Arming
            | Self::Closing
            | Self::Presence => USUAL_LEG,
        }
    }

    /// Where the loop lies.
    pub fn side(self, barrier: Barrier) -> Side {
        match self {
            Self::Closing => Side::OnTheLine,
            Self::Presence if barrier == Barrier::None => Side::OnTheLine,
            Self::Exit | Self::ObstructionInside | Self::BetweenLeaves => Side::Inside,
            Self::ObstructionOutside | Self::Arming | Self::Presence => Side::Outside,
        }
    }

    /// The roles that an opening usually needs. Common practice.
    pub fn usual_for(barrier: Barrier) -> &'static [Self] {
        match barrier {
            Barrier::SlideGate | Barrier::VerticalLiftGate => {
                &[Self::Exit, Self::ObstructionOutside, Self::ObstructionInside]
            }
            Barrier::SwingGate | Barrier::SwingGatePair => {
                &[Self::Exit, Self::ObstructionOutside, Self::BetweenLeaves, Self::ObstructionInside]
            }
            Barrier::BarrierArm => &[Self::Arming, Self::Closing],
            Barrier::OverheadDoor => &[Self::Presence, Self::ObstructionOutside, Self::ObstructionInside],
            Barrier::None => &[Self::Presence],
        }
    }
}
