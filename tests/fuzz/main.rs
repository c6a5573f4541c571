//! Replays what fuzzing kept, and the published requests, through the checks of the fuzz targets.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "a law that does not hold is a panic")]

mod batch;
mod checks;
mod quantity;

use std::fs;
use std::panic::catch_unwind;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};

/// The files of a folder of the repository, in order.
fn files(folder: &str) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
    let listed = fs::read_dir(&folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    let mut files: Vec<_> = listed.map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

/// The published requests of a calculation.
fn published(name: &str) -> Vec<Vec<u8>> {
    let requests = files(&format!("openapi/examples/{name}"));
    let requests = requests.iter().filter(|file| file.to_str().unwrap().ends_with(".request.json"));
    requests.map(|file| fs::read(file).unwrap()).collect()
}

/// What each target starts from.
fn seeds(target: &str) -> Vec<Vec<u8>> {
    match target {
        "quantity" => {
            let description: Value = serde_json::from_str(include_str!("../../openapi/openapi.json")).unwrap();
            let schemas = description["components"]["schemas"].as_object().unwrap().values();
            let examples = schemas.filter_map(|schema| schema["examples"].as_array()).flatten();
            examples.filter_map(|example| Some(example.as_str()?.as_bytes().to_vec())).collect()
        }
        "batch" => {
            let plans = published("installation-plan");
            let items = plans.iter().zip(1..).map(|(plan, id)| {
                json!({ "id": format!("{id}"), "request": serde_json::from_slice::<Value>(plan).unwrap() })
            });
            vec![json!({ "items": items.collect::<Vec<_>>() }).to_string().into_bytes()]
        }
        name => published(name),
    }
}

#[test]
fn what_is_published_holds_the_laws() {
    for target in checks::targets() {
        let seeds = seeds(target);
        assert!(!seeds.is_empty(), "{target} has no seeds");
        for seed in seeds {
            checks::check(target, &seed);
        }
    }
}

#[test]
fn what_was_kept_holds_the_laws() {
    for target in checks::targets() {
        let kept = files(&format!("tests/fuzz/corpus/{target}"));
        assert!(!kept.is_empty(), "nothing is kept for {target}");
        for file in kept {
            println!("{}", file.display());
            checks::check(target, &fs::read(&file).unwrap());
        }
    }
}

#[test]
fn nothing_is_kept_for_a_target_that_does_not_exist() {
    let targets = checks::targets();
    for folder in files("tests/fuzz/corpus") {
        assert!(targets.contains(&folder.file_name().unwrap().to_str().unwrap()), "{}", folder.display());
    }
}

#[test]
fn the_checks_find_what_they_look_for() {
    let fails = |check: fn()| catch_unwind(check).is_err();
    let request = br#"{"loop": {}}"#;
    assert!(fails(|| checks::judge(200, r#"{"peak": [1.0, null]}"#, br"{}")));
    assert!(fails(|| checks::judge(200, r##"{"unused": ["#/slot"]}"##, br"{}")));
    assert!(fails(|| checks::judge(422, r#"{"errors": []}"#, br"{}")));
    assert!(fails(|| checks::judge(
        422,
        r##"{"errors": [{"pointer": "#/a", "code": "?", "detail": "d", "hint": "h"}]}"##,
        b""
    )));
    assert!(fails(|| checks::judge(500, "{}", br"{}")));
    checks::judge(200, r##"{"unused": ["#/loop"], "peak": 1.0}"##, request);
    assert!(fails(|| checks::assert_well_formed("<svg><path d='M 0 NaN'/></svg>")));
    assert!(fails(|| checks::assert_well_formed("<svg x='inf'/>")));
    assert!(fails(|| checks::assert_well_formed("<svg>")));
    checks::assert_well_formed("<svg x='1'><path d='M 0 1'/></svg>");
}
