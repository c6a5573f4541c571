//! One TCP connection spoken in bytes, for what an HTTP client would not let through.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;

use reqwest::Method;
use serde_json::Value;

use super::harness::check;

/// A server that says nothing for so long fails the test.
const PATIENCE: Duration = Duration::from_secs(60);

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
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        Self(BufReader::new(stream))
    }

    /// Connects with a receiver that holds little, so that what is not read stays with the instance.
    pub fn open_narrow(address: SocketAddr) -> Self {
        let socket = socket2::Socket::new(socket2::Domain::for_address(address), socket2::Type::STREAM, None).unwrap();
        socket.set_recv_buffer_size(32 * 1024).unwrap();
        socket.connect(&address.into()).unwrap();
        let stream = TcpStream::from(socket);
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
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

    /// Reads until the server ends the connection, for answers of the HTTP library that are no problem.
    pub fn read_to_the_end(&mut self) -> String {
        let mut text = Vec::new();
        match self.0.read_to_end(&mut text) {
            // What was still on its way to a closed end resets the connection.
            Err(error) if error.kind() != std::io::ErrorKind::ConnectionReset => panic!("{error}"),
            _ => String::from_utf8(text).unwrap(),
        }
    }

    /// Waits until an answer has begun to arrive.
    pub fn wait_for_the_first_byte(&mut self) {
        assert!(!self.0.fill_buf().unwrap().is_empty(), "the connection ended without an answer");
    }

    /// Reads an answer in small portions, at least so long in all; gives its length as announced and as read before its end.
    pub fn read_slowly(&mut self, time: Duration) -> (usize, usize) {
        let mut head = String::new();
        while !head.ends_with("\r\n\r\n") {
            assert_ne!(self.0.read_line(&mut head).unwrap(), 0, "the connection ended after {head:?}");
        }
        let length = head.split("content-length: ").nth(1).unwrap().split("\r\n").next().unwrap().parse().unwrap();
        let portions = 40;
        let mut portion = vec![0; length / portions + 1];
        let mut read = 0;
        while read < length {
            std::thread::sleep(time / u32::try_from(portions).unwrap());
            let end = portion.len().min(length - read);
            if self.0.read_exact(&mut portion[..end]).is_err() {
                break;
            }
            read += end;
        }
        (length, read)
    }

    /// Whether nothing comes for a while.
    pub fn is_silent(&mut self) -> bool {
        let stream = self.0.get_ref().try_clone().unwrap();
        stream.set_read_timeout(Some(Duration::from_millis(300))).unwrap();
        let outcome = self.0.fill_buf().map(<[u8]>::len);
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        outcome.is_err_and(|error| error.kind() == std::io::ErrorKind::WouldBlock)
    }

    /// Whether the server breaks the connection although this end has read nothing: writing to it fails in the end.
    pub fn is_given_up(&mut self) -> bool {
        let step = Duration::from_millis(100);
        (0..PATIENCE.as_millis() / step.as_millis()).any(|_| {
            std::thread::sleep(step);
            self.0.get_mut().write_all(b"\r\n").is_err()
        })
    }

    /// Whether the server has ended the connection: nothing more can be read.
    pub fn is_ended(&mut self) -> bool {
        self.0.read(&mut [0]).unwrap() == 0
    }
}
