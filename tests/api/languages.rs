//! Answers in the languages of their readers: the same codes and numbers in all, and nothing of the API in what a person reads.

use std::collections::BTreeSet;
use std::path::Path;

use reqwest::Method;
use serde_json::{Value, json};

use super::harness::{Answer, client, get, post, send, shared};
use super::requests::{all, loop_characteristics, without};

/// The languages, with words that only the other two have: a rest that was not translated holds one of them.
const LANGUAGES: [(&str, &[&str]); 3] = [
    ("en", &[" el ", " los ", " las ", " une ", " des ", " avec ", " con "]),
    ("es", &[" the ", " with ", " and ", " of ", " is ", " des ", " avec ", " et "]),
    ("fr", &[" the ", " with ", " and ", " of ", " is ", " los ", " con ", " el "]),
];

/// The members of reports that a person reads.
const READ: [&str; 29] = [
    "advice",
    "default_words",
    "description",
    "detail",
    "ends_because",
    "evidence_against",
    "evidence_for",
    "failure_consequence",
    "frequency_setting",
    "headline",
    "help",
    "hint",
    "how",
    "label",
    "likely_outcome",
    "meaning",
    "message",
    "outcome",
    "place",
    "reason",
    "reasons",
    "role_label",
    "saw_plan",
    "size",
    "specification",
    "title",
    "variant",
    "way",
    "why",
];

/// The examples that are published: the path that takes each, and its request.
fn examples() -> Vec<(String, String)> {
    fn add(folder: &Path, path: &str, found: &mut Vec<(String, String)>) {
        for entry in std::fs::read_dir(folder).unwrap() {
            let file = entry.unwrap().path();
            let name = file.file_name().unwrap().to_str().unwrap().to_owned();
            if file.is_dir() {
                add(&file, &format!("{path}/{name}"), found);
            } else if name.ends_with(".request.json") {
                found.push((path.to_owned(), std::fs::read_to_string(&file).unwrap()));
            }
        }
    }
    let mut found = Vec::new();
    add(&Path::new(env!("CARGO_MANIFEST_DIR")).join("openapi/examples"), "/v1", &mut found);
    assert!(found.len() > 20, "only {} examples", found.len());
    found
}

/// Texts of two answers that stand at the same place and differ, with the place. Anything else that differs is a fault.
fn differing<'a>(at: &str, one: &'a Value, other: &'a Value, found: &mut Vec<(String, &'a str, &'a str)>) {
    match (one, other) {
        (Value::Object(a), Value::Object(b)) => {
            assert!(a.keys().eq(b.keys()), "{at} has other members: {one:#} {other:#}");
            a.iter().for_each(|(name, value)| differing(&format!("{at}/{name}"), value, &b[name], found));
        }
        (Value::Array(a), Value::Array(b)) => {
            assert_eq!(a.len(), b.len(), "{at}");
            a.iter().zip(b).enumerate().for_each(|(index, (a, b))| differing(&format!("{at}/{index}"), a, b, found));
        }
        (Value::String(a), Value::String(b)) if a != b => found.push((at.to_owned(), a, b)),
        _ => assert_eq!(one, other, "{at} differs by language"),
    }
}

/// Every text at a place that a person reads.
fn read_texts<'a>(at: &str, value: &'a Value, found: &mut Vec<(String, &'a str)>) {
    match value {
        Value::Object(members) => members.iter().for_each(|(name, value)| {
            // What a request held is given back as it was sent.
            if name != "inputs" && name != "set" {
                read_texts(&format!("{at}/{name}"), value, found);
            }
        }),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(index, item)| read_texts(&format!("{at}/{index}"), item, found));
        }
        Value::String(text) if is_read(at) => found.push((at.to_owned(), text)),
        _ => {}
    }
}

/// Whether a person reads what stands at a place.
fn is_read(at: &str) -> bool {
    let name = at.rsplit('/').find(|part| part.parse::<usize>().is_err()).unwrap_or_default();
    // A loop is called by its caller, a place by its code.
    let is_name = name == "label" && ["/loops/", "/readings/", "/channels/"].iter().any(|list| at.contains(list));
    let is_code = ["place", "label"].contains(&name) && at.contains("/slot_fit/");
    READ.contains(&name) && !is_name && !is_code
}

/// The digits of a text, whatever stands between them.
fn numbers(text: &str) -> BTreeSet<String> {
    text.replace(',', ".")
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .map(|number| number.trim_matches('.').to_owned())
        .filter(|number| !number.is_empty())
        .collect()
}

/// What is wrong with a text in a language.
fn faults(text: &str, foreign: &[&str]) -> Vec<String> {
    let spaced = format!(" {} ", text.to_lowercase().replace(['.', ',', ';', ':', '\u{a0}'], " "));
    let mut faults = Vec::new();
    if text.contains('_') || text.contains("/v1") || text.contains("#/") {
        faults.push(format!("a name of the API: {text}"));
    }
    faults.extend(foreign.iter().filter(|word| spaced.contains(**word)).map(|word| format!("{word:?} in: {text}")));
    faults
}

fn ask(path: &str, language: &str, body: &str) -> Answer {
    let answer = post(&format!("{path}?lang={language}"), body.to_owned());
    assert_eq!(answer.header("content-language"), language, "{path}");
    answer
}

#[test]
fn every_message_of_every_example_is_for_a_person_in_each_language() {
    let mut found = BTreeSet::new();
    for (path, request) in examples() {
        let english = ask(&path, "en", &request).body;
        for (language, foreign) in LANGUAGES {
            let answer = ask(&path, language, &request).body;
            let mut texts = Vec::new();
            read_texts("", &answer, &mut texts);
            assert!(!texts.is_empty() || path.contains("loop-characteristics"), "{path} says nothing");
            for (at, text) in texts {
                // Documents keep their titles.
                let foreign = if at.contains("/sources/") { &[][..] } else { foreign };
                found.extend(faults(text, foreign).into_iter().map(|fault| format!("{language} {path} {at}: {fault}")));
            }
            let mut pairs = Vec::new();
            differing("", &english, &answer, &mut pairs);
            for (at, one, other) in pairs {
                if !at.contains("/drawings/") {
                    assert!(is_read(&at), "{path} {at} differs by language: {one:?} {other:?}");
                    if numbers(one) != numbers(other) {
                        found.insert(format!("{language} {path} {at}: other numbers: {one} / {other}"));
                    }
                }
            }
        }
    }
    assert!(found.is_empty(), "{} faults: {found:#?}", found.len());
}

#[test]
fn faults_and_problems_are_said_in_each_language() {
    for (calculation, request) in all() {
        let broken = ["nonsense", "24", "1e3 ft", "-5 ft", "900 h"];
        let requests =
            broken.map(|text| broken_everywhere(&request, text)).into_iter().chain([json!({}), json!({ "a": 1 })]);
        for request in requests {
            let path = format!("/v1/{calculation}");
            let body = request.to_string();
            let english = ask(&path, "en", &body);
            assert_eq!(english.status, 422, "{body}");
            for (language, foreign) in &LANGUAGES[1..] {
                let answer = ask(&path, language, &body);
                let mut pairs = Vec::new();
                differing(
                    "",
                    &without(&english.body, "/request_id"),
                    &without(&answer.body, "/request_id"),
                    &mut pairs.clone(),
                );
                let (one, other) = (without(&english.body, "/request_id"), without(&answer.body, "/request_id"));
                differing("", &one, &other, &mut pairs);
                assert!(!pairs.is_empty(), "{language} {body} is answered in English");
                for (at, _, text) in pairs {
                    assert!(is_read(&at), "{at} differs by language");
                    let spaced = format!(" {text} ");
                    let rest: Vec<_> = foreign.iter().filter(|word| spaced.contains(**word)).collect();
                    assert!(rest.is_empty(), "{language} {at}: {rest:?} in {text}");
                }
            }
        }
    }
}

/// The request with another text at every place that holds a quantity.
fn broken_everywhere(request: &Value, text: &str) -> Value {
    match request {
        Value::Object(members) => {
            members.iter().map(|(name, value)| (name.clone(), broken_everywhere(value, text))).collect()
        }
        Value::Array(items) => items.iter().map(|item| broken_everywhere(item, text)).collect(),
        Value::String(sent) if sent.starts_with(|c: char| c.is_ascii_digit()) => json!(text),
        other => other.clone(),
    }
}

#[test]
fn the_query_wins_and_the_answer_says_what_it_depends_on() {
    let body = loop_characteristics().to_string();
    let asked = |query: &str, accepted: &str| {
        let request = client().post(format!("http://{}/v1/loop-characteristics{query}", shared()));
        let request = request.header("content-type", "application/json").header("accept-language", accepted);
        let response = request.body(body.clone()).send().unwrap();
        let header = |name: &str| response.headers()[name].to_str().unwrap().to_owned();
        (header("content-language"), header("vary"))
    };
    let both = "accept-encoding, accept-language".to_owned();
    assert_eq!(asked("", "fr-CA, en;q=0.5"), ("fr".to_owned(), both.clone()));
    assert_eq!(asked("?lang=es", "fr"), ("es".to_owned(), both.clone()));
    assert_eq!(asked("?lang=*", "fr"), ("en".to_owned(), both.clone()));
    assert_eq!(asked("", "de"), ("en".to_owned(), both));
}

#[test]
fn tables_and_pages_have_an_entity_tag_for_each_language() {
    for path in ["/v1/forms/loop-sizing", "/v1/reference/roles", "/v1/reference/messages", "/problems/rate-limited"] {
        let mut tags = BTreeSet::new();
        for (language, _) in LANGUAGES {
            let answer = get(&format!("{path}?lang={language}"));
            assert_eq!((answer.status, answer.header("content-language")), (200, language));
            assert!(answer.header("vary").contains("accept-language"), "{path}");
            let tag = answer.header("etag").to_owned();
            let again = send(shared(), &Method::GET, &format!("{path}?lang={language}"), &[("if-none-match", &tag)]);
            assert_eq!((again.status, again.header("etag")), (304, &*tag), "{path}");
            assert!(again.header("vary").contains("accept-language"), "{path}");
            tags.insert(tag);
        }
        assert_eq!(tags.len(), 3, "{path}");
    }
}

#[test]
fn tables_have_the_same_rows_in_each_language() {
    for table in ["findings", "fault-tests", "problems", "sealant-kinds", "roles", "sources", "material-items"] {
        let english = get(&format!("/v1/reference/{table}")).body;
        for (language, foreign) in &LANGUAGES[1..] {
            let own = get(&format!("/v1/reference/{table}?lang={language}")).body;
            let mut pairs = Vec::new();
            differing("", &english, &own, &mut pairs);
            assert!(pairs.len() >= english["rows"].as_array().unwrap().len(), "{table} is English in {language}");
            for (at, _, text) in pairs {
                assert!(at.ends_with("/label") || at.ends_with("/description"), "{table} {at}");
                let spaced = format!(" {text} ");
                let rest: Vec<_> = foreign.iter().filter(|word| spaced.contains(**word)).collect();
                assert!(rest.is_empty() || table == "sources", "{language} {table} {at}: {rest:?} in {text}");
            }
        }
    }
}

#[test]
fn forms_are_for_a_person_in_each_language() {
    for calculation in ["loop-sizing", "installation-plan"] {
        let english = get(&format!("/v1/forms/{calculation}?lang=en")).body;
        for (language, foreign) in LANGUAGES {
            let own = get(&format!("/v1/forms/{calculation}?lang={language}")).body;
            let mut texts = Vec::new();
            read_texts("", &own, &mut texts);
            assert!(texts.len() > 150, "{language} {calculation} has {} texts", texts.len());
            let found: Vec<_> = texts
                .iter()
                .flat_map(|(at, text)| faults(text, foreign).into_iter().map(move |fault| (at, fault)))
                .collect();
            assert!(found.is_empty(), "{language} {calculation}: {found:#?}");
            let mut pairs = Vec::new();
            differing("", &english, &own, &mut pairs);
            assert!(language == "en" || pairs.len() > 150, "{language} {calculation} is English");
            for (at, one, other) in pairs {
                assert!(is_read(&at) || at == "/language", "{at} differs by language");
                assert!(at == "/language" || numbers(one) == numbers(other), "{at}: {one} / {other}");
            }
        }
    }
}

#[test]
fn the_published_sentences_hold_the_facts_that_findings_have() {
    let answer = get("/v1/reference/messages?lang=fr");
    let messages = answer.body["messages"].as_array().unwrap();
    assert_eq!(answer.body["language"], "fr");
    let names: BTreeSet<_> = messages
        .iter()
        .flat_map(|message| message["facts"].as_array().unwrap())
        .map(|fact| fact["name"].as_str().unwrap())
        .collect();
    for name in ["vehicle", "threshold", "as_built_low"] {
        assert!(names.contains(name), "{name} is not in {names:?}");
    }
    let english = get("/v1/reference/messages").body;
    let ids = |body: &Value| -> Vec<String> {
        body["messages"].as_array().unwrap().iter().map(|message| message["id"].to_string()).collect()
    };
    assert_eq!(ids(&english), ids(&answer.body));
}
