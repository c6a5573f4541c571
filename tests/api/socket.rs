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

    /// Connects from another address of this machine: as another caller.
    pub fn open_as(caller: [u8; 4], address: SocketAddr) -> Self {
        let socket = socket2::Socket::new(socket2::Domain::IPV4, socket2::Type::STREAM, None).unwrap();
        socket.bind(&SocketAddr::from((caller, 0)).into()).unwrap();
        socket.connect(&address.into()).unwrap();
        let stream = TcpStream::from(socket);
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
        let body = if header("transfer-encoding").is_some() {
            std::iter::from_fn(|| self.read_chunk()).flatten().collect()
        } else {
            let mut body = vec![0; header("content-length").map_or(0, |(_, length)| length.parse().unwrap())];
            self.0.read_exact(&mut body).unwrap();
            body
        };
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

    /// Reads the next chunk of a chunked body; `None` behind the last.
    fn read_chunk(&mut self) -> Option<Vec<u8>> {
        let mut line = String::new();
        self.0.read_line(&mut line).unwrap();
        let length = usize::from_str_radix(line.trim_end(), 16).unwrap_or_else(|_| panic!("{line:?} is no length"));
        let mut chunk = vec![0; length + "\r\n".len()];
        self.0.read_exact(&mut chunk).unwrap();
        chunk.truncate(length);
        (length > 0).then_some(chunk)
    }

    /// Reads a chunked answer with a pause after each 64 KiB, until it ends or is cut; gives the bytes of it, and whether it is whole.
    pub fn read_slowly(&mut self, pause: Duration) -> (usize, bool) {
        let mut read = Vec::new();
        let mut portion = vec![0; 64 * 1024];
        while !read.ends_with(b"\r\n0\r\n\r\n") {
            match self.0.read(&mut portion) {
                Ok(0) | Err(_) => return (read.len(), false),
                Ok(length) => read.extend_from_slice(&portion[..length]),
            }
            std::thread::sleep(pause);
        }
        (read.len(), true)
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
        // Seldom, for each segment that arrives restarts the timer by which the other system finds that nothing is read.
        let step = Duration::from_secs(2);
        (0..PATIENCE.as_secs() / step.as_secs()).any(|_| {
            std::thread::sleep(step);
            self.0.get_mut().write_all(b"\r\n").is_err()
        })
    }

    /// Whether the server has ended the connection: nothing more can be read.
    pub fn is_ended(&mut self) -> bool {
        self.0.read(&mut [0]).unwrap() == 0
    }
}
