//! What must stay true of the source itself, so that a newcomer finds their way.

mod arrows;
