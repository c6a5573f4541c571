//! Who sends a request: a client with a key, or an address.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::net::{IpAddr, Ipv6Addr, SocketAddr};
use std::sync::Arc;

use actix_web::dev::ServiceRequest;
use actix_web::http::header::HeaderValue;
use ipnet::IpNet;

use super::keys::Client;

/// The header to which a proxy appends the address of its caller.
const FORWARDED_FOR: &str = "x-forwarded-for";

/// Who sends a request.
#[derive(Clone)]
pub enum Caller {
    /// A client whose key is known, and the address that sent it.
    Client(Arc<Client>, IpAddr),
    /// Anyone else.
    Address(IpAddr),
    /// An address without a key that asks for what is open all the same.
    Guest(IpAddr),
}

impl Caller {
    /// A number that stands for the caller where shares are counted. Whoever reads a page has its key, so there it is the address that has
    /// a share, one for all such keys.
    pub fn id(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        match self {
            Self::Client(client, _) if client.places.is_none() => client.name.hash(&mut hasher),
            Self::Client(_, address) | Self::Address(address) | Self::Guest(address) => address.hash(&mut hasher),
        }
        hasher.finish()
    }

    /// Whoever has this address.
    pub fn at(address: IpAddr) -> Self {
        Self::Address(network_of(address.to_canonical()))
    }

    /// The name of the client, for the log.
    pub fn name(&self) -> Option<&str> {
        match self {
            Self::Client(client, _) => Some(&client.name),
            Self::Address(_) | Self::Guest(_) => None,
        }
    }
}

/// The address that a request counts for: that of the connection, or, where that is a trusted proxy, the last one in
/// `X-Forwarded-For` that is not. Anyone may have written what stands left of it.
pub fn address(request: &ServiceRequest, trusted: &[IpNet]) -> IpAddr {
    let is_trusted = |address| is_trusted(address, trusted);
    let mut address = request.peer_addr().map_or(IpAddr::V6(Ipv6Addr::UNSPECIFIED), |peer| peer.ip().to_canonical());
    if is_trusted(address) {
        // A line that is no text is not skipped: what stands before it was not written by the proxy.
        let text = |line: &'_ HeaderValue| line.to_str().unwrap_or("?").to_owned();
        let lines: Vec<_> = request.headers().get_all(FORWARDED_FOR).map(text).collect();
        let hops = lines.iter().rev().flat_map(|line| line.rsplit(','));
        for hop in hops.map_while(|hop| parse(hop.trim())) {
            address = hop.to_canonical();
            if !is_trusted(address) {
                break;
            }
        }
    }
    network_of(address)
}

/// Whether an address is that of a trusted proxy.
pub fn is_trusted(address: IpAddr, trusted: &[IpNet]) -> bool {
    trusted.iter().any(|network| network.contains(&address.to_canonical()))
}

/// Parses an address with or without a port: proxies write both.
fn parse(hop: &str) -> Option<IpAddr> {
    hop.parse().or_else(|_| hop.parse::<SocketAddr>().map(|address| address.ip())).ok()
}

/// A caller in IPv6 usually has a whole /64, which counts as one address.
fn network_of(address: IpAddr) -> IpAddr {
    match address {
        IpAddr::V4(_) => address,
        IpAddr::V6(long) => IpAddr::V6(Ipv6Addr::from_bits(long.to_bits() & (u128::MAX << 64))),
    }
}

#[cfg(test)]
mod tests {
    use actix_web::test::TestRequest;

    use super::{FORWARDED_FOR, address};

    fn seen(peer: &str, forwarded: &[&str]) -> String {
        let trusted = ["10.0.0.0/8", "fd00::/8"].map(|network| network.parse().unwrap());
        let request = TestRequest::default().peer_addr(peer.parse().unwrap());
        let request = forwarded.iter().fold(request, |request, line| request.append_header((FORWARDED_FOR, *line)));
        address(&request.to_srv_request(), &trusted).to_string()
    }

    #[test]
    fn only_a_trusted_proxy_speaks_for_another() {
        assert_eq!(seen("192.0.2.7:9", &["198.51.100.1"]), "192.0.2.7");
        assert_eq!(seen("10.1.1.1:9", &["198.51.100.1"]), "198.51.100.1");
        assert_eq!(seen("10.1.1.1:9", &[]), "10.1.1.1");
        assert_eq!(seen("[::ffff:10.1.1.1]:9", &["198.51.100.1"]), "198.51.100.1");
    }

    #[test]
    fn what_a_caller_wrote_before_the_proxies_is_not_believed() {
        assert_eq!(seen("10.1.1.1:9", &["203.0.113.9, 198.51.100.1, 10.2.2.2"]), "198.51.100.1");
        assert_eq!(seen("10.1.1.1:9", &["203.0.113.9", "198.51.100.1"]), "198.51.100.1");
        assert_eq!(seen("10.1.1.1:9", &["203.0.113.9, nonsense, 10.2.2.2"]), "10.2.2.2");
        assert_eq!(seen("10.1.1.1:9", &["203.0.113.9", "\u{e9}, 10.2.2.2"]), "10.1.1.1");
    }

    #[test]
    fn an_address_may_have_a_port() {
        assert_eq!(seen("10.1.1.1:9", &["198.51.100.1:4711"]), "198.51.100.1");
        assert_eq!(seen("10.1.1.1:9", &["[2001:db8:1:2::1]:4711"]), "2001:db8:1:2::");
    }

    #[test]
    fn addresses_of_one_long_network_are_one_caller() {
        assert_eq!(seen("[2001:db8:1:2:3:4:5:6]:9", &[]), "2001:db8:1:2::");
        assert_eq!(seen("[fd00::1]:9", &["2001:db8:1:2:ffff::1"]), "2001:db8:1:2::");
    }
}
