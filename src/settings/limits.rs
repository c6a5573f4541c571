//! What one caller, and all together, may ask of an instance. `deploy/LIMITS.md` says what happens at each limit.

use std::time::Duration;

use ipnet::{IpNet, Ipv4Net};

use super::reader::{VariableReader, parsed};

/// The shortest timeout of the HTTP library, seconds. It reads its clock twice a second: a shorter timeout could expire before it
/// starts, and would then never fire.
const MIN_TIME: f64 = 1.0;

/// A mebibyte.
const MIB: usize = 1024 * 1024;

/// The limits. Each field names its variable.
#[derive(Clone, Debug)]
pub struct LimitSettings {
    /// `LOOPWRIGHT_HEADER_LIMIT`: the largest head of a request, bytes. Default 16384; the HTTP library ends at 131072.
    pub header: usize,
    /// `LOOPWRIGHT_BODY_LIMIT`: the largest body, bytes; paths with weather take four times as much, a batch 64 times. Default 65536.
    pub body: usize,
    /// `LOOPWRIGHT_JSON_DEPTH`: the deepest nesting of objects and arrays in a body. Default 32; the JSON library ends at 128.
    pub json_depth: usize,
    /// `LOOPWRIGHT_ARRAY_LIMIT`: the most items of any one array, whatever its field takes. Default 1000.
    pub array: usize,
    /// `LOOPWRIGHT_BATCH_LIMIT`: the most items of a batch. Default 200, which the description promises.
    pub batch: usize,
    /// `LOOPWRIGHT_HEADER_DEADLINE`: how long the head of a request may take to arrive. Default `5 s`.
    pub header_deadline: Duration,
    /// `LOOPWRIGHT_DEADLINE`: how long a body may take to arrive. Default `10 s`.
    pub deadline: Duration,
    /// `LOOPWRIGHT_BATCH_DEADLINE`: how long the items of a batch may take; those not begun by then are refused. Default `30 s`.
    pub batch_deadline: Duration,
    /// `LOOPWRIGHT_IDLE_TIMEOUT`: how long a connection may wait for its next request. Default `75 s`.
    pub idle: Duration,
    /// `LOOPWRIGHT_ANSWER_DEADLINE`: how long a caller may take to read a large answer. Default `120 s`.
    pub answer_deadline: Duration,
    /// `LOOPWRIGHT_CONNECTIONS`: connections at once, one for each worker at least; others wait to be taken. Default 4096.
    pub connections: usize,
    /// `LOOPWRIGHT_CONNECTIONS_PER_ADDRESS`: connections at once from one address that is no trusted proxy. Default 512.
    pub connections_per_address: usize,
    /// `LOOPWRIGHT_ARRIVING_LIMIT`: bytes of bodies that are arriving, of which one caller may have a quarter. Default 67108864.
    pub arriving: usize,
    /// `LOOPWRIGHT_UNWRITTEN_LIMIT`: bytes of answers that are not written yet, of which one caller may have a quarter. Default 67108864.
    pub unwritten: usize,
    /// `LOOPWRIGHT_IN_FLIGHT`: requests that wait to be computed. Default 256.
    pub in_flight: usize,
    /// `LOOPWRIGHT_QUEUE_DEADLINE`: how long a request may wait to be computed. Default `5 s`.
    pub queue_deadline: Duration,
    /// `LOOPWRIGHT_BATCHES_IN_FLIGHT`: batches at once, until their answer is read, of which one caller may have half. Default 4.
    pub batches_in_flight: usize,
    /// `LOOPWRIGHT_BATCH_ANSWER_LIMIT`: the bytes of a batch's answer from which its other items are refused. Default 67108864.
    pub batch_answer: usize,
    /// How often a client may ask. Default 50 a second, 400 at once.
    pub rate: Rate,
    /// How often an address without a key may draw where links need none: `LOOPWRIGHT_OPEN_DRAWING_RATE` and
    /// `LOOPWRIGHT_OPEN_DRAWING_BURST`. Default 2 a second, 30 at once.
    pub open_drawing_rate: Rate,
    /// `LOOPWRIGHT_TRUSTED_PROXIES`: networks whose `X-Forwarded-For` is believed. Default none.
    pub trusted_proxies: Vec<IpNet>,
}

/// How much a client may ask, in units: one for each request or item of a batch, and one for each 10 ms that it is estimated to take.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rate {
    /// `LOOPWRIGHT_RATE`: requests a second; 0 is no limit.
    pub per_second: u32,
    /// `LOOPWRIGHT_BURST`: requests at once after a pause.
    pub burst: u32,
}

impl Rate {
    /// The largest of either: one request a nanosecond.
    pub const MAX: u32 = 1_000_000_000;

    /// The most requests at once; none is no limit.
    pub fn at_once(self) -> Option<u32> {
        (self.per_second > 0).then_some(self.burst)
    }
}

impl LimitSettings {
    pub(super) fn read(variables: &VariableReader) -> Result<Self, String> {
        let whole = |name, default, range| variables.count(name, default, "a whole number", range);
        let bytes = |name, default, range| variables.count(name, default, "a number of bytes", range);
        let network = |text: String| {
            // A bare address is a network of one.
            let text =
                if text.contains('/') { text } else { format!("{text}/{}", if text.contains(':') { 128 } else { 32 }) };
            parsed("LOOPWRIGHT_TRUSTED_PROXIES", &text, "networks such as 10.0.0.0/8, separated by commas")
                .map(canonical)
        };
        Ok(Self {
            header: bytes("LOOPWRIGHT_HEADER_LIMIT", 16_384, 256..=131_072)?,
            body: bytes("LOOPWRIGHT_BODY_LIMIT", 65_536, 1..=16_777_216)?,
            json_depth: whole("LOOPWRIGHT_JSON_DEPTH", 32, 8..=127)?,
            array: whole("LOOPWRIGHT_ARRAY_LIMIT", 1000, 1..=1_000_000)?,
            batch: whole("LOOPWRIGHT_BATCH_LIMIT", 200, 1..=200)?,
            header_deadline: variables.duration("LOOPWRIGHT_HEADER_DEADLINE", "5 s", MIN_TIME)?,
            deadline: variables.duration("LOOPWRIGHT_DEADLINE", "10 s", 0.05)?,
            batch_deadline: variables.duration("LOOPWRIGHT_BATCH_DEADLINE", "30 s", 0.0)?,
            idle: variables.duration("LOOPWRIGHT_IDLE_TIMEOUT", "75 s", MIN_TIME)?,
            answer_deadline: variables.duration("LOOPWRIGHT_ANSWER_DEADLINE", "120 s", MIN_TIME)?,
            connections: whole("LOOPWRIGHT_CONNECTIONS", 4096, 1..=1_000_000)?,
            connections_per_address: whole("LOOPWRIGHT_CONNECTIONS_PER_ADDRESS", 512, 1..=1_000_000)?,
            arriving: bytes("LOOPWRIGHT_ARRIVING_LIMIT", 64 * MIB, MIB..=1024 * MIB)?,
            unwritten: bytes("LOOPWRIGHT_UNWRITTEN_LIMIT", 64 * MIB, MIB..=1024 * MIB)?,
            queue_deadline: variables.duration("LOOPWRIGHT_QUEUE_DEADLINE", "5 s", 0.05)?,
            batch_answer: bytes("LOOPWRIGHT_BATCH_ANSWER_LIMIT", 64 * MIB, 1..=1024 * MIB)?,
            in_flight: whole("LOOPWRIGHT_IN_FLIGHT", 256, 1..=100_000)?,
            batches_in_flight: whole("LOOPWRIGHT_BATCHES_IN_FLIGHT", 4, 1..=1000)?,
            rate: Rate {
                per_second: whole("LOOPWRIGHT_RATE", 50, 0..=Rate::MAX as usize)? as u32,
                burst: whole("LOOPWRIGHT_BURST", 400, 1..=Rate::MAX as usize)? as u32,
            },
            open_drawing_rate: Rate {
                per_second: whole("LOOPWRIGHT_OPEN_DRAWING_RATE", 2, 0..=Rate::MAX as usize)? as u32,
                burst: whole("LOOPWRIGHT_OPEN_DRAWING_BURST", 30, 1..=Rate::MAX as usize)? as u32,
            },
            trusted_proxies: variables.list("LOOPWRIGHT_TRUSTED_PROXIES").map(network).collect::<Result<_, _>>()?,
        })
    }
}

/// A network of IPv4-mapped addresses (RFC 4291) is the network that they stand for: addresses of callers are compared in that form.
fn canonical(network: IpNet) -> IpNet {
    let IpNet::V6(long) = network else { return network };
    let address = long.addr().to_ipv4_mapped().zip(long.prefix_len().checked_sub(96));
    address.and_then(|(address, length)| Ipv4Net::new(address, length).ok()).map_or(network, IpNet::V4)
}

#[cfg(test)]
mod tests {
    use crate::settings::Settings;

    #[test]
    fn trusted_networks_are_read_in_the_form_of_the_addresses_that_they_are_compared_to() {
        let networks = |name| {
            (name == "LOOPWRIGHT_TRUSTED_PROXIES")
                .then(|| "10.0.0.0/8, ::ffff:10.1.0.0/112, ::ffff:192.0.2.7, fd00::/8".to_owned())
        };
        let read: Vec<_> =
            Settings::read(networks).unwrap().limits.trusted_proxies.iter().map(ToString::to_string).collect();
        assert_eq!(read, ["10.0.0.0/8", "10.1.0.0/16", "192.0.2.7/32", "fd00::/8"]);
    }
}
