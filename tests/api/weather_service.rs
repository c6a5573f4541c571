//! A weather service on loopback, in the form of the public US weather service, with the invented weather of the Tern Island
//! Boatyard. Each test says what it answers instead.

use std::io::{BufRead, BufReader, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::time::Duration;

use serde_json::{Value, json};

/// The path of the first step for the boatyard, and of the second.
pub const POINT: &str = "/points/44.31,-68.204";
pub const HOURLY: &str = "/gridpoints/TIB/41,12/forecast/hourly";

/// The boatyard.
pub const PLACE: (f64, f64) = (44.3102, -68.2041);

/// What the service was asked.
#[derive(Clone, Debug)]
pub struct Asked {
    /// The path with its query.
    pub path: String,
    /// All header lines.
    pub head: String,
}

/// What the service answers.
pub struct Reply {
    pub status: u16,
    pub headers: Vec<String>,
    pub body: Vec<u8>,
    /// How long it thinks before the first byte.
    pub delay: Duration,
    /// How long it thinks after the head.
    pub stall: Duration,
    /// The length that it announces, if not the body's own.
    pub announced: Option<usize>,
    /// Whether it sends the body in pieces, whose whole length nobody knows beforehand.
    pub is_chunked: bool,
}

impl Reply {
    /// A document that may be used again for so many seconds.
    pub fn json(value: &Value, max_age: u32) -> Self {
        Self::cached(value, &format!("public, max-age={max_age}"))
    }

    /// A document with this `Cache-Control`.
    pub fn cached(value: &Value, cache_control: &str) -> Self {
        Self { headers: vec![format!("cache-control: {cache_control}")], ..Self::text(200, &value.to_string()) }
    }

    /// A status with a text.
    pub fn text(status: u16, text: &str) -> Self {
        Self {
            status,
            headers: Vec::new(),
            body: text.as_bytes().to_vec(),
            delay: Duration::ZERO,
            stall: Duration::ZERO,
            announced: None,
            is_chunked: false,
        }
    }

    fn send(self, stream: &mut TcpStream) -> std::io::Result<()> {
        std::thread::sleep(self.delay);
        write!(stream, "HTTP/1.1 {} Said\r\nconnection: close\r\ncontent-type: application/geo+json\r\n", self.status)?;
        for header in &self.headers {
            write!(stream, "{header}\r\n")?;
        }
        if self.is_chunked {
            write!(stream, "transfer-encoding: chunked\r\n\r\n")?;
            for chunk in self.body.chunks(1 << 16) {
                write!(stream, "{:x}\r\n", chunk.len())?;
                stream.write_all(chunk)?;
                stream.write_all(b"\r\n")?;
            }
            return stream.write_all(b"0\r\n\r\n");
        }
        write!(stream, "content-length: {}\r\n\r\n", self.announced.unwrap_or(self.body.len()))?;
        stream.flush()?;
        std::thread::sleep(self.stall);
        stream.write_all(&self.body)
    }
}

/// A running service; its threads end with the test process.
pub struct WeatherService {
    pub address: SocketAddr,
    asked: Arc<Mutex<Vec<Asked>>>,
}

impl WeatherService {
    /// Starts a service that answers what `answer` gives for a question and its number of earlier questions.
    pub fn start(answer: impl Fn(&Asked, usize, &str) -> Reply + Send + Sync + 'static) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        let asked = Arc::new(Mutex::new(Vec::new()));
        let (answer, log, base) = (Arc::new(answer), asked.clone(), format!("http://{address}"));
        std::thread::spawn(move || {
            for stream in listener.incoming() {
                let (answer, log, base) = (answer.clone(), log.clone(), base.clone());
                std::thread::spawn(move || {
                    let mut stream = stream.unwrap();
                    let Some(question) = question(&stream) else { return };
                    let before = {
                        let mut log = log.lock().unwrap();
                        log.push(question.clone());
                        log.len() - 1
                    };
                    // The caller may have given up already.
                    let _ = answer(&question, before, &base).send(&mut stream);
                });
            }
        });
        Self { address, asked }
    }

    /// A service that answers as it should.
    pub fn sound() -> Self {
        Self::start(|asked, _, base| sound(asked, base))
    }

    /// A service whose first step is sound and whose second answers this.
    pub fn with_hourly(reply: impl Fn() -> Reply + Send + Sync + 'static) -> Self {
        Self::start(move |asked, _, base| if asked.path == HOURLY { reply() } else { sound(asked, base) })
    }

    /// Its address as an operator sets it.
    pub fn base(&self) -> String {
        format!("http://{}", self.address)
    }

    /// Waits until it was asked so many times.
    pub fn wait_for(&self, count: usize) {
        let is_so = |_| {
            std::thread::sleep(Duration::from_millis(5));
            self.asked.lock().unwrap().len() >= count
        };
        assert!((0..4000).any(is_so), "it is never asked {count} times: {:?}", self.paths());
    }

    /// Everything that it was asked so far.
    pub fn asked(&self) -> Vec<Asked> {
        self.asked.lock().unwrap().clone()
    }

    /// The paths that it was asked for so far.
    pub fn paths(&self) -> Vec<String> {
        self.asked().into_iter().map(|asked| asked.path).collect()
    }
}

fn question(stream: &TcpStream) -> Option<Asked> {
    let mut reader = BufReader::new(stream);
    let mut head = String::new();
    while !head.ends_with("\r\n\r\n") {
        if reader.read_line(&mut head).ok()? == 0 {
            return None;
        }
    }
    let path = head.strip_prefix("GET ")?.split(' ').next()?.to_owned();
    Some(Asked { path, head })
}

/// What a sound service answers: the point, its hours, and nothing for other places.
pub fn sound(asked: &Asked, base: &str) -> Reply {
    match asked.path.as_str() {
        POINT => Reply::json(&point(&format!("{base}{HOURLY}")), 3600),
        HOURLY => Reply::json(&hourly(periods(48)), 600),
        _ => Reply::text(404, "{\"title\":\"Data Unavailable For Requested Point\",\"status\":404}"),
    }
}

/// The document of the first step.
pub fn point(second_step: &str) -> Value {
    json!({
        "type": "Feature",
        "geometry": { "type": "Point", "coordinates": [-68.204, 44.31] },
        "properties": {
            "gridId": "TIB", "gridX": 41, "gridY": 12, "forecastHourly": second_step,
            "forecastGridData": "unused", "timeZone": "America/New_York"
        }
    })
}

/// The document of the second step.
pub fn hourly(periods: Vec<Value>) -> Value {
    json!({
        "type": "Feature",
        "geometry": { "type": "Polygon", "coordinates": [] },
        "properties": { "units": "us", "forecastGenerator": "HourlyForecastGenerator", "periods": periods }
    })
}

/// Hours of a cold coast, from 2026-11-25 07:00 on: 34 °F by night, 43 °F by day, 80 percent.
pub fn periods(count: usize) -> Vec<Value> {
    let first: jiff::Timestamp = "2026-11-25T07:00:00-05:00".parse().unwrap();
    let time = |hours: usize| {
        let zone = jiff::tz::Offset::constant(-5);
        let time = first + jiff::SignedDuration::from_hours(i64::try_from(hours).unwrap());
        zone.to_datetime(time).strftime("%Y-%m-%dT%H:%M:%S-05:00").to_string()
    };
    let period = |index: usize| {
        let is_day = index % 24 < 10;
        json!({
            "number": index + 1, "name": "", "startTime": time(index), "endTime": time(index + 1), "isDaytime": is_day,
            "temperature": if is_day { 43 } else { 34 }, "temperatureUnit": "F", "temperatureTrend": null,
            "probabilityOfPrecipitation": { "unitCode": "wmoUnit:percent", "value": if is_day { json!(5) } else { json!(null) } },
            "dewpoint": { "unitCode": "wmoUnit:degC", "value": -1.111_111_111_111_111_2 },
            "relativeHumidity": { "unitCode": "wmoUnit:percent", "value": 80 },
            "windSpeed": "10 mph", "windDirection": "NW", "icon": "unused", "shortForecast": "Cold", "detailedForecast": ""
        })
    };
    (0..count).map(period).collect()
}
