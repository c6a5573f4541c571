//! The published examples answer exactly what they say.
//!
//! A number that differs fails. If it is meant to change: raise the version in Cargo.toml, write the change with its reason into
//! openapi/CHANGELOG.md, and run `LOOPWRIGHT_BLESS=1 cargo test --test api examples` once. It writes the answers anew, and the
//! description, which computes the answers that it shows.

use std::path::{Path, PathBuf};

use serde_json::Value;

use super::harness::{get, post};

const ROOT: &str = env!("CARGO_MANIFEST_DIR");

fn example_folder() -> PathBuf {
    Path::new(ROOT).join("openapi/examples")
}

/// The requests; the folder of each is the path that takes it.
fn requests() -> Vec<PathBuf> {
    let (mut found, mut folders) = (Vec::new(), vec![example_folder()]);
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.to_str().unwrap().ends_with(".request.json") {
                found.push(path);
            }
        }
    }
    found.sort();
    assert!(found.len() >= 4, "the examples are gone");
    found
}

/// Whether answers are to be written anew; only a release that CHANGELOG knows may change a number.
fn blessed() -> bool {
    let blessed = std::env::var_os("LOOPWRIGHT_BLESS").is_some();
    let changelog = std::fs::read_to_string(Path::new(ROOT).join("openapi/CHANGELOG.md")).unwrap();
    let version = env!("CARGO_PKG_VERSION");
    assert!(changelog.contains(&format!("## {version}")), "openapi/CHANGELOG.md has no heading for {version}");
    blessed
}

#[test]
fn every_published_example_answers_exactly_what_it_says() {
    for path in requests() {
        let folder = path.parent().unwrap().strip_prefix(example_folder()).unwrap();
        let answer = post(&format!("/v1/{}", folder.display()), std::fs::read_to_string(&path).unwrap());
        assert_eq!(answer.status, 200, "{}: {:#}", path.display(), answer.body);
        let file = path.to_str().unwrap().replace(".request.json", ".answer.json");
        if blessed() {
            std::fs::write(&file, format!("{:#}\n", answer.body)).unwrap();
            continue;
        }
        let expected: Value = serde_json::from_str(&std::fs::read_to_string(&file).unwrap()).unwrap();
        assert_eq!(answer.body, expected, "{file}: see the head of tests/api/examples.rs");
    }
}

#[test]
fn every_calculation_publishes_its_example_files() {
    for (path, item) in get("/openapi.json").body["paths"].as_object().unwrap() {
        // A batch shows a request of the plan's.
        let shows_files = |post: &&Value| post["tags"][0] == "calculations" && !path.ends_with("/batch");
        let Some(operation) = item.get("post").filter(shows_files) else { continue };
        let examples = operation["requestBody"]["content"]["application/json"]["examples"].as_object().unwrap();
        let folder = path.trim_start_matches("/v1/");
        let files = requests().iter().filter(|file| file.parent().unwrap() == example_folder().join(folder)).count();
        assert_eq!(examples.len(), files, "{path} publishes other examples than openapi/examples/{folder} holds");
    }
}

#[test]
fn the_committed_description_is_the_served_one() {
    let file = Path::new(ROOT).join("openapi/openapi.json");
    let built = loopwright::api::documentation::pretty("");
    if blessed() {
        std::fs::write(&file, &built).unwrap();
    }
    let committed = std::fs::read_to_string(&file).unwrap();
    assert!(
        committed == built,
        "openapi/openapi.json is not what the code describes: run `cargo run -- openapi > openapi/openapi.json`"
    );
    // Not the committed text that this test was compiled with: it may just have been written anew.
    assert_eq!(get("/openapi.json").body, serde_json::from_str::<Value>(&built).unwrap());
}
