//! The program as a process: its commands, and a running instance whose log can be read.

use std::io::{BufRead, BufReader, Read};
use std::net::SocketAddr;
use std::process::{Child, ChildStderr, Command, Output, Stdio};

use reqwest::Method;
use serde_json::Value;

use super::harness::send;

fn program(arguments: &[&str], variables: &[(&str, &str)]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_loopwright"));
    command.args(arguments).env_clear().envs(variables.iter().copied());
    command
}

pub fn run(arguments: &[&str], variables: &[(&str, &str)]) -> Output {
    program(arguments, variables).output().unwrap()
}

/// A running instance; killed when a test ends before it stops by itself.
pub struct Instance {
    child: Child,
    log: BufReader<ChildStderr>,
    pub address: SocketAddr,
    /// Where its counters and its probes are, if they have addresses of their own.
    pub metrics: Option<SocketAddr>,
    pub probes: Option<SocketAddr>,
}

impl Instance {
    /// Starts an instance on a free port, which its log names.
    pub fn start(variables: &[(&str, &str)]) -> Self {
        let mut instance = Self::spawn(variables);
        let line = instance.wait_for_line("listening on http://");
        assert!(line.contains("/docs/"), "the log does not say where the documentation is: {line}");
        let rest = line.split("listening on http://").nth(1).unwrap();
        instance.address = rest.split(',').next().unwrap().parse().unwrap();
        let event: Value = serde_json::from_str(&line).unwrap_or_default();
        let aside = |name: &str| Some(event[name].as_str()?.parse().unwrap());
        (instance.metrics, instance.probes) = (aside("metrics"), aside("probes"));
        instance
    }

    /// The most memory that it has had, kB, as the operating system says.
    pub fn most_memory(&self) -> usize {
        let status = std::fs::read_to_string(format!("/proc/{}/status", self.child.id())).unwrap();
        let peak = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).unwrap();
        peak.trim().trim_end_matches(" kB").parse().unwrap()
    }

    /// Starts an instance whose log is not read yet.
    pub fn spawn(variables: &[(&str, &str)]) -> Self {
        let usual = [("LOOPWRIGHT_LISTEN", "127.0.0.1:0"), ("LOOPWRIGHT_LOG_FORMAT", "json")];
        let variables = [&usual, variables].concat();
        let mut child = program(&[], &variables).stderr(Stdio::piped()).spawn().unwrap();
        let log = BufReader::new(child.stderr.take().unwrap());
        Self { child, log, address: SocketAddr::from(([0, 0, 0, 0], 0)), metrics: None, probes: None }
    }

    pub fn terminate(&self) {
        self.signal("-TERM");
    }

    pub fn signal(&self, signal: &str) {
        assert!(Command::new("kill").args([signal, &self.child.id().to_string()]).status().unwrap().success());
    }

    /// Reads the log up to the next line with this text.
    fn wait_for_line(&mut self, text: &str) -> String {
        let mut line = String::new();
        while !line.contains(text) {
            line.clear();
            assert_ne!(self.log.read_line(&mut line).unwrap(), 0, "the log ended without {text:?}");
        }
        line
    }

    /// Reads the log up to the next event with this text in its message.
    pub fn wait_for(&mut self, text: &str) -> Value {
        loop {
            let event: Value = serde_json::from_str(&self.wait_for_line(text)).unwrap();
            if event["message"].as_str().unwrap().contains(text) {
                return event;
            }
        }
    }

    /// One of its counters, without labels.
    pub fn counter(&self, name: &str) -> u64 {
        let metrics = send(self.address, &Method::GET, "/metrics", &[]).body;
        let text = metrics.as_str().unwrap();
        let value = text.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix(' '));
        value.unwrap_or_else(|| panic!("no {name} in {text}")).parse().unwrap()
    }

    /// Whether it ends well by itself, while nobody reads its log.
    pub fn ends_unread(mut self) -> bool {
        let ended = (0..600).find_map(|_| {
            std::thread::sleep(std::time::Duration::from_millis(100));
            self.child.try_wait().unwrap()
        });
        ended.is_some_and(|status| status.success())
    }

    /// Waits for the end and gives the rest of the log.
    pub fn end(mut self) -> String {
        let mut log = String::new();
        self.log.read_to_string(&mut log).unwrap();
        assert!(self.child.wait().unwrap().success(), "{log}");
        log
    }
}

impl Drop for Instance {
    fn drop(&mut self) {
        // It may have ended already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
