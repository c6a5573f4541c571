//! One TCP connection spoken in bytes, for what an HTTP client would not let through.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

use reqwest::Method;
use serde_json::Value;

use super::harness::check;

/// A connection that stays open between requests.
pub struct Socket(BufReader<TcpStream>);

/// An answer as it came over the wire.
pub struct Reply {
    pub status: u16,
    pub head: String,
    pub body: Value,
}

impl Socket {
    /// Connects to an instance.
    pub fn open(address: SocketAddr) -> Self {
        let stream = TcpStream::connect(address).unwrap();
        // A server that never answers fails the test instead of hanging it.
        stream.set_read_timeout(Some(Duration::from_secs(60))).unwrap();
        Self(BufReader::new(stream))
    }

    /// Sends bytes as they are.
    pub fn send(&mut self, bytes: impl AsRef<[u8]>) {
        self.0.get_mut().write_all(bytes.as_ref()).unwrap();
    }

    /// Posts a body with its length and these further header lines.
    pub fn post(&mut self, path: &str, headers: &str, body: &[u8]) -> Reply {
        self.send(format!("POST {path} HTTP/1.1\r\nhost: loops\r\ncontent-length: {}\r\n{headers}\r\n", body.len()));
        self.send(body);
        self.read(&Method::POST, path)
    }

    /// Reads one answer, and holds a problem against the description.
    pub fn read(&mut self, method: &Method, path: &str) -> Reply {
        let mut head = String::new();
        while !head.ends_with("\r\n\r\n") {
            assert_ne!(self.0.read_line(&mut head).unwrap(), 0, "the connection ended after {head:?}");
        }
        let header = |name: &str| {
            head.lines().find_map(|line| line.split_once(": ").filter(|(known, _)| known.eq_ignore_ascii_case(name)))
        };
        let mut body = vec![0; header("content-length").map_or(0, |(_, length)| length.parse().unwrap())];
        self.0.read_exact(&mut body).unwrap();
        let status = head.split(' ').nth(1).unwrap().parse().unwrap();
        let media = header("content-type").map_or("", |(_, media)| media).to_owned();
        let body = serde_json::from_slice(&body).unwrap_or_else(|error| panic!("{head}{error}"));
        check(method, path, status, &media, &body);
        Reply { status, head, body }
    }

    /// Whether the server has ended the connection: nothing more can be read.
    pub fn is_ended(&mut self) -> bool {
        self.0.read(&mut [0]).unwrap() == 0
    }
}
