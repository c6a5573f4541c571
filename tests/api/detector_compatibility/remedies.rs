//! A remedy is a whole change: it says which loop changes, it can be sent as it stands, and it leaves nothing worse.

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use serde_json::{Value, json};

use super::{check, connected};
use crate::harness::{Answer, calculate};

fn list<'a>(value: &'a Value, name: &str) -> &'a [Value] {
    value[name].as_array().map_or(&[], Vec::as_slice)
}

fn text<'a>(value: &'a Value, name: &str) -> &'a str {
    value[name].as_str().unwrap_or_else(|| panic!("no {name}: {value}"))
}

/// The request with the changes of a remedy.
fn changed(request: &Value, remedy: &Value) -> Value {
    let mut request = request.clone();
    for change in list(remedy, "changes") {
        let set = text(change, "set");
        if change["change"] == "wiring" {
            request["wiring"] = json!(set);
            continue;
        }
        let loops = request["loops"].as_array_mut().unwrap();
        let one = loops.iter_mut().find(|one| one["label"] == change["loop"]).unwrap();
        match text(change, "change") {
            "turns" => one["loop"]["turns"] = json!(set.parse::<u32>().unwrap()),
            "along_travel" => one["loop"]["along_travel"] = json!(set),
            "lead_in_length" => one["lead_in"]["length"] = json!(set),
            "lead_in_gauge" => one["lead_in"]["gauge"] = json!(set),
            other => panic!("{other}"),
        }
    }
    request
}

fn rank(verdict: &Value) -> usize {
    ["suitable", "marginal", "unsuitable"].iter().position(|other| verdict == other).unwrap()
}

/// The checks of the channels on which any of these loops are: the worst of each.
fn checks_of(answer: &Answer, channel: &str) -> BTreeMap<(String, String), usize> {
    let labels: BTreeSet<_> = channel.split(" + ").collect();
    let mut worst = BTreeMap::new();
    for check in list(&answer.body, "checks") {
        if text(check, "channel").split(" + ").any(|label| labels.contains(label)) {
            let key = (text(check, "check").to_owned(), check["vehicle"].to_string());
            let verdict = worst.entry(key).or_insert(0);
            *verdict = rank(&check["verdict"]).max(*verdict);
        }
    }
    worst
}

/// How often each finding that is no note is made.
fn findings_of(answer: &Answer) -> BTreeMap<&str, usize> {
    let mut counted = BTreeMap::new();
    for code in answer.findings("stop").into_iter().chain(answer.findings("warning")) {
        *counted.entry(code).or_insert(0) += 1;
    }
    counted
}

/// Sends every remedy as it stands, and holds what it promises against the answer.
fn remedies_keep_their_word(request: &Value) -> Vec<Value> {
    let before = check(request);
    for remedy in list(&before.body, "remedies") {
        let after = check(&changed(request, remedy));
        for channel in list(&before.body, "settings").iter().map(|settings| text(settings, "channel")) {
            let then = checks_of(&after, channel);
            for (key, verdict) in checks_of(&before, channel) {
                assert!(then[&key] <= verdict, "{key:?} of {channel} is worse: {remedy:#}");
            }
        }
        // That the search of the next request ends early says nothing of its loops.
        for (code, count) in findings_of(&after).into_iter().filter(|(code, _)| *code != "search_bounded") {
            assert!(count <= findings_of(&before).get(code).copied().unwrap_or_default(), "{code}: {remedy:#}");
        }
        let channel = text(remedy, "channel");
        if remedy["cures_channel"] == true {
            assert!(checks_of(&after, channel).values().all(|verdict| *verdict == 0), "{remedy:#}");
        }
        let labels: BTreeSet<_> = channel.split(" + ").collect();
        let is_it = |check: &&Value| {
            let is_close = (check["value"].as_f64().unwrap() - remedy["value"].as_f64().unwrap()).abs() < 0.0011;
            let is_own = text(check, "channel").split(" + ").any(|label| labels.contains(label));
            check["check"] == remedy["check"] && is_own && is_close && check["verdict"] == "suitable"
        };
        assert!(list(&after.body, "checks").iter().any(|check| is_it(&check)), "{remedy:#}");
        for change in list(remedy, "changes") {
            assert_ne!(change["from"], change["to"], "it is there already");
            assert_eq!(change.get("loop").is_none(), change["change"] == "wiring");
        }
        let first = &remedy["changes"][0];
        for name in ["change", "from", "to"] {
            assert_eq!(first[name], remedy[name]);
        }
    }
    list(&before.body, "remedies").to_vec()
}

#[test]
fn a_channel_of_unlike_loops_is_told_which_loop_changes() {
    let loops = [connected("A", 3, "300 ft", json!({})), connected("B", 2, "50 ft", json!({}))];
    let request = json!({ "loops": loops, "wiring": "series", "vehicles": ["passenger_car"] });
    let remedies = remedies_keep_their_word(&request);
    let more =
        remedies.iter().find(|remedy| remedy["check"] == "lead_in_share" && remedy["change"] == "turns").unwrap();
    let only = json!([{ "loop": "A", "change": "turns", "from": "3", "to": more["to"], "set": more["to"] }]);
    assert_eq!(more["changes"], only);
    assert!(text(more, "message").starts_with("Wind loop A with "), "{more}");
}

#[test]
fn loops_of_one_channel_that_change_together_get_one_value() {
    let loops = [connected("A", 1, "20 ft", json!({})), connected("B", 2, "20 ft", json!({}))];
    let request = json!({ "loops": loops, "wiring": "parallel", "detector": { "inductance_min_uh": 60 } });
    for remedy in remedies_keep_their_word(&request) {
        let changes = list(&remedy, "changes");
        if changes.iter().all(|change| change["change"] == "turns") {
            assert!(changes.iter().all(|change| change["set"] == changes[0]["set"]), "{remedy:#}");
        }
    }
}

#[test]
fn two_changes_are_tried_where_one_is_not_enough() {
    // One turn needs more, and 1000 ft of pair need thicker or shorter wire: neither alone will do.
    let request = json!({ "loops": [connected("A", 1, "1000 ft", json!({ "lead_in": { "length": "1000 ft", "gauge": "18 AWG" } }))] });
    let remedies = remedies_keep_their_word(&request);
    let whole: Vec<_> = remedies.iter().filter(|remedy| remedy["cures_channel"] == true).collect();
    assert!(!whole.is_empty(), "{remedies:#?}");
    for remedy in whole {
        assert_eq!(list(remedy, "changes").len(), 2);
        assert!(text(remedy, "message").contains(" and "), "{remedy}");
        assert!(text(remedy, "message").ends_with("The channel is then suitable."), "{remedy}");
    }
}

#[test]
fn a_row_stays_alike() {
    let row = ["-3.5 ft", "3.5 ft"].map(|across| {
        let more =
            json!({ "role": "obstruction_inside", "position": { "along": "0 ft", "across": across }, "unit": "1" });
        connected(across, 1, "50 ft", more)
    });
    let remedies = remedies_keep_their_word(&json!({ "loops": row }));
    let turns = remedies.iter().find(|remedy| remedy["change"] == "turns").unwrap();
    assert_eq!(list(turns, "changes").len(), 2, "{turns}");
}

#[test]
fn a_lead_in_gets_no_shorter_than_what_is_laid_of_it() {
    let lead_in = json!({ "length": "1500 ft", "in_slot": "700 ft", "in_conduit": "500 ft" });
    let remedies =
        remedies_keep_their_word(&json!({ "loops": [connected("A", 5, "", json!({ "lead_in": lead_in }))] }));
    for change in remedies.iter().flat_map(|remedy| list(remedy, "changes")) {
        if change["change"] == "lead_in_length" {
            assert!(text(change, "set").trim_end_matches(" ft").parse::<f64>().unwrap() >= 1200.0, "{change}");
        }
    }
}

#[test]
fn wire_is_offered_in_the_sizes_of_the_caller_and_never_the_same_by_another_name() {
    for (gauge, next) in [("2.08 mm2", "2.5 mm2"), ("14 AWG", "12 AWG"), ("2.5 mm2", "4 mm2")] {
        let lead_in = json!({ "length": "1000 ft", "gauge": gauge });
        let remedies =
            remedies_keep_their_word(&json!({ "loops": [connected("A", 8, "", json!({ "lead_in": lead_in }))] }));
        for change in remedies.iter().flat_map(|remedy| list(remedy, "changes")) {
            if change["change"] == "lead_in_gauge" {
                let (unit, area) = (gauge.split(' ').next_back(), text(change, "set").split(' ').next().unwrap());
                assert_eq!(text(change, "set").split(' ').next_back(), unit);
                let (area, least): (f64, f64) =
                    (area.parse().unwrap(), next.split(' ').next().unwrap().parse().unwrap());
                assert!(if unit == Some("AWG") { area <= least } else { area >= least }, "{change}");
            }
        }
    }
}

#[test]
fn a_remedy_brings_no_neighbours_together() {
    // A longer loop would see the truck, and would reach into the one beside it.
    let place = |along: &str| json!({ "position": { "along": along, "across": "0 ft" } });
    let loops = [connected("A", 3, "50 ft", place("0 ft")), connected("B", 4, "50 ft", place("6.5 ft"))];
    let request = json!({ "loops": loops, "detector": { "threshold_percent": 1.0 } });
    for remedy in remedies_keep_their_word(&request) {
        assert_ne!(remedy["change"], "along_travel", "{remedy:#}");
    }
}

prop_compose! {
    fn any_loop()(
        role in prop::sample::select(vec!["exit", "obstruction_inside", "closing", "presence"]),
        along in prop::sample::select(vec!["4 ft", "6 ft", "6.3 ft", "1.8 m", "8 ft"]),
        across in prop::sample::select(vec!["4 ft", "6 ft", "2 m", "10 ft"]),
        turns in 1..=8_u32,
        length in prop::sample::select(vec!["10 ft", "15 m", "100 ft", "300 ft", "200 m", "1500 ft"]),
        gauge in prop::sample::select(vec!["18 AWG", "1.5 mm2", "2.08 mm2", "14 AWG"]),
        is_laid in any::<bool>(), lane in prop::option::of(prop::sample::select(vec!["10 ft", "7.2 m"])),
        steel in prop::option::of(prop::sample::select(vec!["2 in", "100 mm"])),
        unit in prop::option::of(prop::sample::select(vec!["1", "2"])),
        place in prop::sample::select(vec![("0 ft", "0 ft"), ("0 ft", "7 ft"), ("9 ft", "0 ft"), ("20 ft", "-7 ft")]),
    ) -> Value {
        let mut one = json!({
            "role": role, "loop": { "along_travel": along, "across_lane": across, "turns": turns },
            "lead_in": { "length": length, "gauge": gauge }, "position": { "along": place.0, "across": place.1 },
        });
        if is_laid {
            one["lead_in"]["in_slot"] = json!("2 m");
            one["lead_in"]["in_conduit"] = json!("3 ft");
        }
        for (name, value) in [("lane_width", lane), ("unit", unit)] {
            if let Some(value) = value {
                one[name] = json!(value);
            }
        }
        if let Some(depth) = steel {
            one["reinforcement"] = json!({ "depth_below_loop": depth });
        }
        one
    }
}

prop_compose! {
    fn any_request()(
        mut loops in prop::collection::vec(any_loop(), 1..=3), are_alike in any::<bool>(), are_placed in any::<bool>(),
        wiring in prop::sample::select(vec!["separate", "series", "parallel"]),
        least in prop::option::of(20.0..150.0_f64), widths in 1.3..6.0_f64,
        step in prop::option::of(prop::sample::select(vec![0.05, 0.13, 0.32, 1.0])), nf in prop::option::of(20.0..80.0_f64),
        vehicles in prop::sample::subsequence(vec!["passenger_car", "high_bed_truck", "tractor_trailer"], 1..=2),
    ) -> Value {
        let first = loops[0].clone();
        for (index, one) in loops.iter_mut().enumerate() {
            one["label"] = json!(format!("L{index}"));
            if are_alike {
                one["loop"] = first["loop"].clone();
                one["role"] = first["role"].clone();
            }
            if !are_placed {
                one.as_object_mut().unwrap().shift_remove("position");
            }
        }
        let mut request = json!({ "loops": loops, "wiring": wiring, "vehicles": vehicles, "detector": {} });
        if let Some(least) = least {
            request["detector"]["inductance_min_uh"] = json!(least);
            request["detector"]["inductance_max_uh"] = json!(least * widths);
        }
        if let Some(step) = step {
            request["detector"]["threshold_percent"] = json!(step);
        }
        if let Some(nf) = nf {
            request["detector"]["tuning_capacitance_nf"] = json!(nf);
        }
        request
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, max_shrink_iters: 64, ..ProptestConfig::default() })]

    #[test]
    fn a_remedy_that_is_sent_does_what_it_says_and_leaves_nothing_worse(request in any_request()) {
        if calculate("detector-compatibility", &request).status == 200 {
            remedies_keep_their_word(&request);
        }
    }
}
