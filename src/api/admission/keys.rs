//! The clients of the service, each identified by the hashes of its keys.
//!
//! A key is long and random, so its SHA-256 discloses nothing about it; the key itself is neither stored nor logged. A publishable one stands
//! in a page for all to read, and is good in its [`Places`] alone.

use std::collections::HashSet;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::{Arc, PoisonError, RwLock};

use actix_web::http::header::{self, HeaderMap};
use jiff::Timestamp;
use serde::de::Error;
use serde::{Deserialize, Deserializer};
use sha2::{Digest, Sha256};
use subtle::ConstantTimeEq;

use super::places::{Places, TOGETHER};
use super::rate::ClientLimiter;
use crate::api::problem::Problem;
use crate::api::request_id::is_plain_name;
use crate::calculation::report::Statement;
use crate::settings::Rate;

/// The largest file of keys, bytes: some ten thousand clients.
const MAX_FILE_SIZE: u64 = 1024 * 1024;

/// The rate of each address that sends a publishable key. A choice made here: a change in a form usually costs 3 units (its sizing, summary and
/// drawing), so whoever fills one in is never refused, and takes at most a twentieth of a core.
const PAGE_RATE: Rate = Rate { per_second: 5, burst: 100 };

/// The SHA-256 of a key, in halves: they are compared in fewer steps than bytes.
type KeyHash = [u128; 2];

/// A client of the service.
pub struct Client {
    /// Its name, for the log.
    pub name: String,
    /// Its rate limit, which is common to its keys.
    pub limiter: Arc<ClientLimiter>,
    /// Where its keys are good, if they are publishable. Secret ones are good everywhere.
    pub places: Option<Places>,
    hashes: Vec<KeyHash>,
    /// When its keys end.
    not_after: Option<Timestamp>,
}

impl Client {
    fn is_expired(&self) -> bool {
        self.not_after.is_some_and(|end| Timestamp::now() > end)
    }
}

/// A client in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ClientEntry {
    name: String,
    /// The SHA-256 of each key, in hexadecimal. Two while a key is replaced.
    sha256: Vec<String>,
    requests_per_second: Option<u32>,
    burst: Option<u32>,
    /// When its keys end (RFC 3339).
    not_after: Option<String>,
    /// The pages that have its keys. A `null` is refused, for it would make a key of a page good everywhere.
    #[serde(default, deserialize_with = "not_null")]
    origins: Option<Vec<String>>,
    /// What its keys are for, where they stand in pages.
    #[serde(default, deserialize_with = "not_null")]
    paths: Option<Vec<String>>,
}

fn not_null<'de, D: Deserializer<'de>>(list: D) -> Result<Option<Vec<String>>, D::Error> {
    Vec::deserialize(list).map(Some).map_err(|_| D::Error::custom(TOGETHER))
}

/// The clients of a file, and the origins of all of them.
#[derive(Default)]
struct Clients {
    all: Vec<Arc<Client>>,
    origins: HashSet<String>,
}

/// The file of clients, and the clients last read from it.
pub struct KeyFile {
    path: PathBuf,
    /// The rate of a client without one of its own.
    rate: Rate,
    /// Whether a file without a client is meant.
    may_be_empty: bool,
    /// Whether the service has a path.
    is_path: fn(&str) -> bool,
    clients: RwLock<Arc<Clients>>,
}

impl KeyFile {
    /// Reads the file.
    ///
    /// # Errors
    /// What is wrong with it, and where.
    pub fn open(path: PathBuf, rate: Rate, may_be_empty: bool, is_path: fn(&str) -> bool) -> Result<Self, String> {
        let keys = Self { path, rate, may_be_empty, is_path, clients: RwLock::default() };
        keys.reload()?;
        Ok(keys)
    }

    /// Reads the file, and logs which clients are new, gone or expired. A client whose rate is unchanged keeps its limiter.
    ///
    /// # Errors
    /// What is wrong with the file; the clients stay as they were.
    pub fn reload(&self) -> Result<(), String> {
        let before = self.clients();
        let known = &before.all;
        let clients = self.read(known).map_err(|what| format!("LOOPWRIGHT_KEYS {}: {what}", self.path.display()))?;
        let names_beyond = |all: &[Arc<Client>], others: &[Arc<Client>]| {
            names(all.iter().filter(|client| others.iter().all(|other| other.name != client.name)))
        };
        tracing::info!(
            clients = clients.len(),
            new = names_beyond(&clients, known),
            gone = names_beyond(known, &clients),
            expired = names(clients.iter().filter(|client| client.is_expired())),
            "the keys were read"
        );
        let places = clients.iter().filter_map(|client| client.places.as_ref());
        let origins = places.flat_map(|places| places.origins.iter().cloned()).collect();
        *self.clients.write().unwrap_or_else(PoisonError::into_inner) = Arc::new(Clients { all: clients, origins });
        Ok(())
    }

    /// The clients of the file.
    fn read(&self, known: &[Arc<Client>]) -> Result<Vec<Arc<Client>>, String> {
        let text = read_bounded(&self.path)?;
        let entries: Vec<ClientEntry> = serde_json::from_slice(&text).map_err(|error| error.to_string())?;
        if entries.is_empty() && !self.may_be_empty {
            return Err("the list is empty, so nobody could call; list a client, or set \
                        LOOPWRIGHT_KEYS_MAY_BE_EMPTY=yes where that is meant"
                .to_owned());
        }
        let clients = entries.into_iter().map(|entry| self.client_of(entry, known)).collect::<Result<Vec<_>, _>>();
        clients.and_then(check_distinct)
    }

    /// The client that has this key and may still use it.
    pub fn client(&self, key: &[u8]) -> Option<Arc<Client>> {
        self.owner(key).filter(|client| !client.is_expired())
    }

    /// The origins of the pages that a publishable key is for; none of another key.
    pub fn page_origins(&self, key: &[u8]) -> Vec<String> {
        self.client(key).and_then(|client| Some(client.places.as_ref()?.origins.clone())).unwrap_or_default()
    }

    /// Whether any key is for pages.
    pub fn has_pages(&self) -> bool {
        !self.clients().origins.is_empty()
    }

    /// Whether any key is for pages of this origin.
    pub fn is_for_origin(&self, origin: &[u8]) -> bool {
        str::from_utf8(origin).is_ok_and(|origin| self.clients().origins.contains(origin))
    }

    /// Forgets the addresses that have sent no publishable key for a while.
    pub fn forget_idle(&self) {
        self.clients().all.iter().for_each(|client| client.limiter.forget_idle());
    }

    /// Why a request is refused whose key is none of a client.
    pub fn refusal(&self, headers: &HeaderMap) -> Problem {
        let Some(key) = bearer_key(headers) else { return Problem::key_needed() };
        match self.owner(key).and_then(|client| client.not_after) {
            Some(end) => Problem::key_refused(Statement::new("problems-key-expired").text("end", end.to_string())),
            None => Problem::key_refused(Statement::new("problems-key-unknown")),
        }
    }

    /// The client that has this key. Every hash is compared to its end, so that the time discloses nothing.
    fn owner(&self, key: &[u8]) -> Option<Arc<Client>> {
        let hash = hash_of(key);
        let clients = self.clients();
        let mut found = None;
        for client in &clients.all {
            for known in &client.hashes {
                if bool::from(known.ct_eq(&hash)) {
                    found = Some(client);
                }
            }
        }
        found.cloned()
    }

    fn clients(&self) -> Arc<Clients> {
        self.clients.read().unwrap_or_else(PoisonError::into_inner).clone()
    }

    fn client_of(&self, entry: ClientEntry, known: &[Arc<Client>]) -> Result<Arc<Client>, String> {
        let name = entry.name;
        if !is_plain_name(&name) {
            return Err(format!("the name \"{}\" is not 1 to 64 letters, digits, -, _ or .", name.escape_default()));
        }
        let hashes: Vec<_> = entry
            .sha256
            .iter()
            .map(|text| parse_hash(text).ok_or_else(|| format!("{name}: each of sha256 takes 64 hexadecimal digits")))
            .collect::<Result<_, _>>()?;
        if hashes.is_empty() {
            return Err(format!("{name}: sha256 lists no key"));
        }
        let places = Places::of_entry(entry.origins, entry.paths, self.is_path);
        let places = places.map_err(|what| format!("{name}: {what}"))?;
        let usual = if places.is_some() { PAGE_RATE } else { self.rate };
        let rate = Rate {
            per_second: entry.requests_per_second.unwrap_or(usual.per_second),
            burst: entry.burst.unwrap_or(usual.burst),
        };
        // Without a limit anyone who reads the page could ask for all that the instance can compute.
        let least = u32::from(places.is_some());
        if !(least..=Rate::MAX).contains(&rate.per_second) || !(1..=Rate::MAX).contains(&rate.burst) {
            return Err(format!("{name}: requests_per_second takes {least} to {0}, burst 1 to {0}", Rate::MAX));
        }
        let not_after = entry.not_after.map(|text| parse_end(&text).ok_or_else(|| bad_end(&name))).transpose()?;
        let is_same = |client: &&Arc<Client>| {
            client.name == name && client.limiter.rate() == rate && client.places.is_some() == places.is_some()
        };
        let new = || Arc::new(ClientLimiter::new(rate, places.is_some()));
        let limiter = known.iter().find(is_same).map_or_else(new, |client| client.limiter.clone());
        Ok(Arc::new(Client { name, limiter, places, hashes, not_after }))
    }
}

/// The content of a file, which is not read where it is too large.
fn read_bounded(path: &Path) -> Result<Vec<u8>, String> {
    let failed = |error: std::io::Error| error.to_string();
    let file = File::open(path).map_err(failed)?;
    let size = file.metadata().map_err(failed)?.len();
    let mut text = Vec::new();
    // What has no size, as a device, is not read beyond the limit either.
    file.take(MAX_FILE_SIZE + 1).read_to_end(&mut text).map_err(failed)?;
    let size = size.max(text.len() as u64);
    if size > MAX_FILE_SIZE {
        return Err(format!("the file has {size} bytes; at most {MAX_FILE_SIZE} are read"));
    }
    Ok(text)
}

/// The names of clients, for the log.
fn names<'a>(clients: impl Iterator<Item = &'a Arc<Client>>) -> String {
    clients.map(|client| client.name.as_str()).collect::<Vec<_>>().join(", ")
}

/// A time with its offset from UTC.
fn parse_end(text: &str) -> Option<Timestamp> {
    text.parse().ok()
}

fn bad_end(name: &str) -> String {
    format!("{name}: not_after takes a time of RFC 3339 with its offset, such as 2027-03-31T00:00:00Z")
}

/// Refuses clients that share a name or a key.
fn check_distinct(clients: Vec<Arc<Client>>) -> Result<Vec<Arc<Client>>, String> {
    for (index, client) in clients.iter().enumerate() {
        for other in &clients[..index] {
            if client.name == other.name {
                return Err(format!("{} stands twice; list all keys of a client in its sha256", client.name));
            }
            if client.hashes.iter().any(|hash| other.hashes.contains(hash)) {
                return Err(format!("{} and {} have the same key", other.name, client.name));
            }
        }
    }
    Ok(clients)
}

/// The hash of a key.
fn hash_of(key: &[u8]) -> KeyHash {
    let bytes: [u8; 32] = Sha256::digest(key).into();
    let (halves, _) = bytes.as_chunks();
    [halves[0], halves[1]].map(u128::from_be_bytes)
}

/// A hash from 64 hexadecimal digits.
fn parse_hash(text: &str) -> Option<KeyHash> {
    let is_hash = text.len() == 64 && text.bytes().all(|byte| byte.is_ascii_hexdigit());
    let half = |digits: &str| u128::from_str_radix(digits, 16).unwrap_or_default();
    is_hash.then(|| [half(&text[..32]), half(&text[32..])])
}

/// The key of a request (RFC 6750): `Authorization: Bearer KEY`, once.
pub fn bearer_key(headers: &HeaderMap) -> Option<&[u8]> {
    let mut sent = headers.get_all(header::AUTHORIZATION);
    let value = sent.next().filter(|_| sent.next().is_none())?.as_bytes();
    let (scheme, key) = value.split_at_checked("bearer ".len())?;
    scheme.eq_ignore_ascii_case(b"bearer ").then(|| key.trim_ascii())
}
