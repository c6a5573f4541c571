//! Drawings for pages: colours at each element, the picture alone, ids of the page's choice.

use std::collections::BTreeSet;

use loopwright::drawing::style::CLASSES;
use reqwest::Method;
use roxmltree::{Document, Node};
use serde_json::{Value, json};

use super::drawings::{in_the_ground, job_of, noon_of, pass_of, plan_of, texts};
use super::harness::{Answer, calculate, description, post, send, shared};
use super::requests::with;

const LIGHT: [&str; 6] = ["#ffffff", "#16191d", "#79828c", "#0b4f94", "#d6dee6", "#a3140c"];
const DARK: [&str; 6] = ["#14171b", "#eceff2", "#8b949e", "#86bdf7", "#39444f", "#ff9d93"];
const QUERY_NAMES: [&str; 3] = ["theme", "content", "id_prefix"];

/// Requests whose drawings hold most of what drawings hold; those that stop the job name the words that say so.
fn cases() -> Vec<(&'static str, Value, Option<&'static str>)> {
    let jacketed = with(&job_of("1.8 m", "preformed_saw_cut"), "/surface", "existing_concrete");
    let home_runs = with(&plan_of("24 ft", "slide_gate"), "/lead_in", json!({ "length": "500 ft", "gauge": "18 AWG" }));
    let stopped = with(&plan_of("16 ft", "swing_gate"), "/roles", json!(["obstruction_outside", "obstruction_inside"]));
    vec![
        ("plan", plan_of("24 ft", "slide_gate"), None),
        ("plan", plan_of("5 m", "swing_gate_pair"), None),
        ("plan", plan_of("12 ft", "none"), None),
        ("plan", home_runs, None),
        ("plan", stopped, Some("Do not build as drawn")),
        ("response-profile", pass_of("passenger_car", "6 ft"), None),
        ("slot-section", job_of("6 ft", "hand_wound"), None),
        (
            "slot-section",
            with(&jacketed, "/slab", json!({ "thickness": "12 in", "reinforcement_depth": "3 in" })),
            None,
        ),
        ("cure-timeline", noon_of("45 °F", "46 °F"), None),
        ("cure-timeline", noon_of("3 °C", "-1 °C"), Some("Do not seal at this start")),
        ("turn-candidates", in_the_ground("6 ft"), None),
    ]
}

fn ask(drawing: &str, query: &str, request: &Value) -> Answer {
    post(&format!("/v1/drawings/{drawing}?{query}"), request.to_string())
}

fn draw(drawing: &str, query: &str, request: &Value) -> String {
    let answer = ask(drawing, query, request);
    assert_eq!((answer.status, answer.header("content-type")), (200, "image/svg+xml"), "{query}: {:#}", answer.body);
    answer.body.as_str().unwrap().to_owned()
}

fn drawn<'a>(document: &'a Document<'_>) -> impl Iterator<Item = Node<'a, 'a>> {
    document.descendants().filter(|node| ["path", "circle", "text"].contains(&node.tag_name().name()))
}

fn has_class(node: Node<'_, '_>, class: &str) -> bool {
    node.attribute("class").is_some_and(|classes| classes.split(' ').any(|one| one == class))
}

fn ids(document: &Document<'_>) -> Vec<String> {
    document.descendants().filter_map(|node| node.attribute("id")).map(str::to_owned).collect()
}

#[test]
fn every_drawn_element_has_its_colour_and_known_classes() {
    let mut seen = BTreeSet::new();
    for (drawing, request, _) in cases() {
        for (query, colours) in [
            ("", LIGHT),
            ("theme=auto&content=full", LIGHT),
            ("theme=light", LIGHT),
            ("theme=dark", DARK),
            ("content=figure", LIGHT),
            ("content=figure&theme=light", LIGHT),
            ("content=figure&theme=dark", DARK),
        ] {
            let text = draw(drawing, query, &request);
            let document = Document::parse(&text).unwrap();
            let mut used = BTreeSet::new();
            for node in drawn(&document) {
                let painted: Vec<_> = ["fill", "stroke"].iter().filter_map(|name| node.attribute(*name)).collect();
                assert!(!painted.is_empty(), "{drawing}, {query}: {node:?} has no colour");
                assert!(node.tag_name().name() != "text" || node.has_attribute("fill"), "{drawing}: {node:?}");
                used.extend(painted);
                let classes: Vec<_> = node.attribute("class").unwrap_or_default().split_whitespace().collect();
                for class in &classes {
                    assert!(CLASSES.iter().any(|known| known.name == *class), "{drawing}: {class} is not listed");
                    seen.insert((*class).to_owned());
                }
                // What a class says beside colours stands at the element, too.
                for (class, name, value) in [
                    ("wire", "stroke-width", "1.6"),
                    ("fine", "stroke-width", ".6"),
                    ("heavy", "stroke-width", "2"),
                    ("dashed", "stroke-dasharray", "4 3"),
                    ("head", "font-size", "14"),
                    ("strong", "font-weight", "bold"),
                    ("middle", "text-anchor", "middle"),
                    ("end", "text-anchor", "end"),
                    ("stop", "fill", colours[5]),
                    ("frame", "stroke", colours[5]),
                ] {
                    assert!(!classes.contains(&class) || node.attribute(name) == Some(value), "{drawing}: {node:?}");
                }
            }
            assert!(used.iter().all(|colour| colours.contains(colour)), "{drawing}, {query}: {used:?}");
            assert!(used.len() > 3, "{drawing}, {query}: {used:?}");
            // Of a shape without a fill nothing is filled, and every text has a face.
            let group = document.descendants().find(|node| node.tag_name().name() == "g").unwrap();
            assert_eq!(group.attribute("fill"), Some("none"));
            assert!(group.has_attribute("font-size") && group.has_attribute("font-family"));
            assert!(drawn(&document).all(|node| node.parent() == Some(group)), "{drawing}");
        }
    }
    let missing: Vec<_> = CLASSES.iter().map(|class| class.name).filter(|name| !seen.contains(*name)).collect();
    assert!(missing.is_empty(), "no case has {missing:?}");
}

#[test]
fn a_full_drawing_is_light_in_print_and_leaves_a_reader_their_own_colours() {
    for (drawing, request, _) in cases() {
        for (theme, dark, print) in [("auto", true, false), ("light", false, false), ("dark", false, true)] {
            let text = draw(drawing, &format!("theme={theme}"), &request);
            assert_eq!(text.matches("<style>").count(), 1, "{drawing}");
            let has = |media: &str| text.contains(&format!("@media {media}{{"));
            assert_eq!(has("screen and (prefers-color-scheme:dark)"), dark, "{theme}");
            assert_eq!(has("print"), print, "{theme}");
            assert!(has("(forced-colors:active)") && text.contains("CanvasText") && text.contains("LinkText"));
            let document = Document::parse(&text).unwrap();
            let class = format!("loopwright-drawing loopwright-{theme}");
            assert_eq!(document.root_element().attribute("class"), Some(&*class));
            // A rule for one theme is none for a drawing of another on the same page.
            let rules = text.split("<style>").nth(1).unwrap().split("</style>").next().unwrap();
            let scoped = format!(":where(.loopwright-{theme}) :is(");
            assert_eq!(
                rules.matches("){").count(),
                rules.matches(&scoped).count() + rules.matches("@media").count() - usize::from(print),
                "{rules}"
            );
        }
    }
}

#[test]
fn a_figure_is_the_picture_without_sheet_and_text_around_it() {
    for (drawing, request, stop) in cases() {
        let (full, figure) = (draw(drawing, "", &request), draw(drawing, "content=figure", &request));
        let (all, alone) = (Document::parse(&full).unwrap(), Document::parse(&figure).unwrap());
        assert!(!figure.contains("<style") && !figure.contains(" style=") && !figure.contains("@media"), "{drawing}");
        assert!(!drawn(&alone).any(|node| has_class(node, "head")), "{drawing} has a heading");
        let (words, whole) = (texts(&alone).join(" "), texts(&all).join(" "));
        // The footer names the release.
        assert!(whole.contains(env!("CARGO_PKG_VERSION")) && !words.contains(env!("CARGO_PKG_VERSION")), "{words}");
        assert!(texts(&alone).len() >= 8 && texts(&alone).len() < texts(&all).len(), "{drawing}: {words}");
        let height = |document: &Document<'_>| -> f64 {
            document.root_element().attribute("viewBox").unwrap().split(' ').nth(3).unwrap().parse().unwrap()
        };
        assert!(height(&alone) < height(&all) - 40.0, "{drawing}: {} of {}", height(&alone), height(&all));
        // Who does not see it is told all.
        let told = |document: &Document<'_>| -> Vec<String> {
            let parts = document.descendants().filter(|node| ["title", "desc"].contains(&node.tag_name().name()));
            parts.map(|node| node.text().unwrap().to_owned()).collect()
        };
        assert_eq!(told(&alone), told(&all));
        assert_eq!(alone.root_element().attribute("role"), Some("img"));
        // What must not be done is said in the picture itself.
        assert_eq!(drawn(&alone).filter(|node| has_class(*node, "frame")).count(), usize::from(stop.is_some()));
        if let Some(stop) = stop {
            let said: Vec<_> = drawn(&alone).filter(|node| has_class(*node, "stop")).collect();
            assert_eq!(said.iter().filter_map(Node::text).collect::<Vec<_>>(), [stop]);
            assert!(told(&alone)[1].contains(&format!("{stop}: ")));
        }
    }
}

#[test]
fn a_figure_has_the_shapes_of_the_full_drawing() {
    let request = plan_of("24 ft", "slide_gate");
    let of = |query: &str, class: &str| -> usize {
        let text = draw("plan", query, &request);
        drawn(&Document::parse(&text).unwrap()).filter(|node| has_class(*node, class)).count()
    };
    for class in ["wire", "wiredot", "slot", "conduit", "heavy"] {
        assert!(of("content=figure", class) > 0, "{class}");
        assert_eq!(of("content=figure", class), of("", class), "{class}");
    }
    // The schedule has its letters once more.
    let loops = calculate("loop-sizing", &request).body["loops"].as_array().unwrap().len();
    assert_eq!((of("content=figure", "balloon"), of("", "balloon")), (loops, 2 * loops));
}

#[test]
fn ids_begin_as_they_are_asked_to_and_none_stands_twice() {
    let mut on_one_page = Vec::new();
    for (drawing, request, _) in cases() {
        for content in ["full", "figure"] {
            let prefix = format!("gate-{}_", on_one_page.len());
            let text = draw(drawing, &format!("content={content}&id_prefix={prefix}"), &request);
            let document = Document::parse(&text).unwrap();
            let ids = ids(&document);
            assert_eq!(ids, [format!("{prefix}{drawing}-title"), format!("{prefix}{drawing}-desc")]);
            assert_eq!(document.root_element().attribute("aria-labelledby"), Some(&*ids.join(" ")));
            assert!(text.replace(&prefix, "") == draw(drawing, &format!("content={content}"), &request));
            on_one_page.extend(ids);
        }
    }
    let different: BTreeSet<_> = on_one_page.iter().collect();
    assert_eq!(different.len(), on_one_page.len());
}

#[test]
fn no_two_ids_of_the_drawings_of_a_plan_are_alike() {
    let mut request = noon_of("45 °F", "46 °F");
    let weather = request["weather"].take();
    let request = json!({
        "opening": { "width": "24 ft", "barrier": "slide_gate" }, "include": ["drawings"], "sealant": request["sealant"],
        "start": request["start"], "surface_condition": "dry", "weather": weather
    });
    let report = calculate("installation-plan", &request).body;
    let drawings: Vec<&str> = report["drawings"].as_object().unwrap().values().filter_map(Value::as_str).collect();
    assert!(drawings.len() >= 4, "{}", drawings.len());
    let found: Vec<_> = drawings.iter().flat_map(|text| ids(&Document::parse(text).unwrap())).collect();
    assert_eq!(found.iter().collect::<BTreeSet<_>>().len(), found.len(), "{found:?}");
    // They stay as they were: whole, and as the device asks.
    assert!(drawings.iter().all(|text| text.contains("loopwright-auto") && text.contains("<style>")));
}

#[test]
fn a_wrong_parameter_is_named_with_what_to_send() {
    let request = plan_of("24 ft", "slide_gate");
    for (query, parameter, code, hint) in [
        ("theme=blue", "theme", "value_unknown", "One of: auto, light, dark."),
        ("theme=Dark", "theme", "value_unknown", "Did you mean dark? One of: auto, light, dark."),
        ("content=picture", "content", "value_unknown", "One of: full, figure."),
        ("content=figure&content=full", "content", "field_duplicate", "Send it once."),
        ("id_prefix=1a", "id_prefix", "text_form", "Send a letter, then letters"),
        ("id_prefix=a%22onload=", "id_prefix", "text_form", "Send a letter, then letters"),
        ("id_prefix=abcdefghijklmnopqrstuvwxyzabcdefg", "id_prefix", "text_form", "at most 32 in all."),
    ] {
        let link =
            send(shared(), &Method::GET, &format!("/v1/drawings/plan?width=24+ft&barrier=slide_gate&{query}"), &[]);
        for answer in [ask("plan", query, &request), link] {
            assert_eq!((answer.status, &answer.body["code"]), (422, &json!("validation_failed")), "{query}");
            let fault = &answer.body["errors"][0];
            let expected = (&json!(parameter), &json!(format!("#/{parameter}")), &json!(code));
            assert_eq!((&fault["parameter"], &fault["pointer"], &fault["code"]), expected, "{query}");
            assert!(fault["hint"].as_str().unwrap().contains(hint), "{query}: {fault:#}");
        }
    }
    let nameless = send(shared(), &Method::GET, "/v1/drawings/plan?width=24+ft&barrier=slide_gate&=blue", &[]);
    let fault = &nameless.body["errors"][0];
    assert_eq!((nameless.status, &fault["pointer"], fault.get("parameter")), (422, &json!("#/"), None), "{fault:#}");
    // All at once, and before the body is read.
    let answer = ask("slot-section", "theme=blue&content=some&id_prefix=-", &json!({}));
    let named: BTreeSet<_> = answer.body["errors"]
        .as_array()
        .unwrap()
        .iter()
        .map(|fault| &fault["parameter"])
        .map(Value::to_string)
        .collect();
    assert_eq!((answer.status, named.len(), &answer.body["error_count"]), (422, 3, &json!(3)), "{:#}", answer.body);
    let spanish = ask("plan", "lang=es&id_prefix=1", &request);
    assert!(spanish.body["errors"][0]["hint"].as_str().unwrap().starts_with("Envíe una letra"), "{:#}", spanish.body);
}

#[test]
fn other_parameters_of_a_posted_drawing_say_nothing_and_empty_ones_are_absent() {
    for (drawing, request, _) in cases() {
        let plain = draw(drawing, "", &request);
        assert!(draw(drawing, "width=3&colour=red&colour=blue", &request) == plain, "{drawing}");
        assert!(draw(drawing, "theme=&content=&id_prefix=", &request) == plain, "{drawing}");
    }
}

#[test]
fn a_link_takes_what_a_posted_drawing_takes_and_has_a_tag_for_each() {
    let request = plan_of("24 ft", "slide_gate");
    let mut tags = BTreeSet::new();
    let queries =
        ["theme=auto", "theme=dark", "content=figure", "content=figure&theme=dark", "id_prefix=a-", "id_prefix=b-"];
    for query in queries {
        let answer =
            send(shared(), &Method::GET, &format!("/v1/drawings/plan?width=24+ft&barrier=slide_gate&{query}"), &[]);
        assert!(answer.body.as_str().unwrap() == draw("plan", query, &request), "{query}");
        assert_eq!(answer.header("cache-control"), "public, max-age=3600");
        tags.insert(answer.header("etag").to_owned());
    }
    assert_eq!(tags.len(), queries.len());
}

#[test]
fn every_drawing_is_described_with_the_same_optional_parameters() {
    let paths = description()["paths"].as_object().unwrap();
    let drawings = paths.iter().filter(|(path, _)| path.starts_with("/v1/drawings/"));
    let mut count = 0;
    for (path, item) in drawings {
        for operation in item.as_object().unwrap().values().filter(|one| one.get("operationId").is_some()) {
            let parameters = operation["parameters"].as_array().unwrap_or_else(|| panic!("{path} has no parameters"));
            let of = |name: &str| parameters.iter().find(|one| one["name"] == name && one["in"] == "query").unwrap();
            for name in QUERY_NAMES {
                assert_ne!(of(name)["required"], true, "{path}: {name}");
                assert!(of(name)["description"].as_str().unwrap().len() > 20, "{path}: {name}");
            }
            assert_eq!(of("theme")["schema"]["enum"], json!(["auto", "light", "dark"]), "{path}");
            assert_eq!(of("content")["schema"]["enum"], json!(["full", "figure"]), "{path}");
            assert_eq!(of("id_prefix")["schema"]["pattern"], "^[A-Za-z][A-Za-z0-9_-]{0,31}$", "{path}");
            count += 1;
        }
    }
    assert_eq!(count, 6);
}

#[test]
fn the_guide_lists_every_class() {
    let guide = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/openapi/GUIDE.md")).unwrap();
    let table = guide.split("| class | what it is |").nth(1).unwrap().split("\n\n").next().unwrap();
    let listed: Vec<_> = table
        .lines()
        .filter_map(|line| line.strip_prefix("| `")?.split_once('|'))
        .flat_map(|(names, _)| names.split(&['`', ',', ' '][..]).filter(|name| !name.is_empty()))
        .collect();
    let known: BTreeSet<_> = CLASSES.iter().map(|class| class.name).collect();
    assert_eq!(listed.len(), known.len(), "{listed:?}");
    assert_eq!(listed.into_iter().collect::<BTreeSet<_>>(), known);
}
