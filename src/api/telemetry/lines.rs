//! The log for machines: each event a line of JSON. Lines leave together, [`AT_LATEST`] after the first of them: a `write` for each
//! costs a small request more than its calculation does.

use std::cell::Cell;
use std::io::{BufWriter, Stderr, Write, stderr};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::{self, Thread};
use std::time::Duration;

use jiff::Timestamp;
use serde::Serializer;
use serde::ser::SerializeMap;
use tracing::{Event, Subscriber};
use tracing_serde::SerdeMapVisitor;
use tracing_subscriber::Layer;
use tracing_subscriber::layer::Context;

/// How long a line may wait for others. What the program has not written when it is killed is lost.
const AT_LATEST: Duration = Duration::from_millis(50);

/// Room for the lines that wait, bytes. When it is full, they leave at once.
const ROOM: usize = 64 * 1024;

thread_local! {
    /// The line that a thread wrote last; its room is used again for the next.
    static LINE: Cell<Vec<u8>> = const { Cell::new(Vec::new()) };
}

/// Lines that wait for others.
type Waiting = Mutex<BufWriter<Stderr>>;

/// The layer that writes events.
pub struct Lines {
    waiting: Arc<Waiting>,
    sender: Thread,
}

/// What is left of the log when the program ends: sent when this is dropped.
pub struct Rest(Arc<Waiting>);

impl Drop for Rest {
    fn drop(&mut self) {
        send(&self.0);
    }
}

impl Lines {
    /// Begins a log on standard error.
    ///
    /// # Errors
    /// When there can be no thread that sends the lines.
    pub fn begin() -> std::io::Result<(Self, Rest)> {
        let waiting = Arc::new(Mutex::new(BufWriter::with_capacity(ROOM, stderr())));
        let (sent, rest) = (waiting.clone(), Rest(waiting.clone()));
        let sender = thread::Builder::new().name("log".to_owned()).spawn(move || {
            loop {
                thread::park();
                thread::sleep(AT_LATEST);
                send(&sent);
            }
        })?;
        Ok((Self { waiting, sender: sender.thread().clone() }, rest))
    }

    fn put(&self, line: &[u8]) {
        let mut waiting = self.waiting.lock().unwrap_or_else(PoisonError::into_inner);
        let is_first = waiting.buffer().is_empty();
        // A log that nobody takes is no reason to fail a request.
        let _ = waiting.write_all(line);
        drop(waiting);
        if is_first {
            self.sender.unpark();
        }
    }
}

fn send(waiting: &Waiting) {
    // As above.
    let _ = waiting.lock().unwrap_or_else(PoisonError::into_inner).flush();
}

impl<S: Subscriber> Layer<S> for Lines {
    fn on_event(&self, event: &Event<'_>, _: Context<'_, S>) {
        let mut line = LINE.take();
        line.clear();
        if write(event, &mut line).is_ok() {
            line.push(b'\n');
            self.put(&line);
        }
        LINE.set(line);
    }
}

/// A line that is being written. The type is its own so that the compiler does not share the code that writes reports with it:
/// sharing made that by a fifth slower.
struct Line<'a>(&'a mut Vec<u8>);

impl Write for Line<'_> {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.extend_from_slice(bytes);
        Ok(bytes.len())
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

/// Writes an event: when, how grave, its message and its fields.
fn write(event: &Event<'_>, line: &mut Vec<u8>) -> serde_json::Result<()> {
    let mut json = serde_json::Serializer::new(Line(line));
    let mut members = json.serialize_map(None)?;
    members.serialize_entry("timestamp", &format_args!("{:.6}", Timestamp::now()))?;
    members.serialize_entry("level", event.metadata().level().as_str())?;
    let mut fields = SerdeMapVisitor::new(members);
    event.record(&mut fields);
    fields.finish()
}
