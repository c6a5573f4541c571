//! What loops are called where a person reads of them: a loop of a layout by its mark and role, another by the caller's own name.

use crate::calculation::layout::{ChannelLoop, DetectorChannel};
use crate::calculation::report::{ListJoin, Statement};

/// Adds a loop to a sentence.
pub fn name_loop(statement: Statement, one: &ChannelLoop) -> Statement {
    match one.mark {
        Some(mark) => statement.member("loop", one.role).text("mark", mark.to_string()).code("named_by", "mark"),
        None => statement.text("loop", one.label.clone()).code("named_by", "label"),
    }
}

/// Adds two loops of one request to a sentence.
pub fn name_loops(statement: Statement, one: &ChannelLoop, other: &ChannelLoop) -> Statement {
    let statement = name_loop(statement, one);
    match other.mark {
        Some(mark) => statement.member("other_loop", other.role).text("other_mark", mark.to_string()),
        None => statement.text("other_loop", other.label.clone()),
    }
}

/// Adds the loops of a channel to a sentence.
pub fn name_channel(statement: Statement, channel: &DetectorChannel) -> Statement {
    let name = |one: &ChannelLoop| {
        let named = Statement::new("compatibility-loop-of-channel").member("channel", one.role);
        Some(named.text("mark", one.mark?.to_string()))
    };
    let named: Option<Vec<_>> = channel.loops.iter().map(|one| name(&one.own)).collect();
    match named {
        Some(named) => {
            let join = if named.len() > 2 { ListJoin::Comma } else { ListJoin::And };
            statement.phrases("channel", named, join)
        }
        None => statement.text("channel", channel.label()),
    }
}
