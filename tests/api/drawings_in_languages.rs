//! Drawings, job sheets and bills in every language. They are made without the service, and the messages of their reports are blanked:
//! what is looked at here is what drawings and pages say themselves.

use std::fmt::Write;
use std::sync::OnceLock;

use loopwright::calculation::Calculation;
use loopwright::calculation::installation_plan::{InstallationPlanReport, InstallationPlanRequest};
use loopwright::calculation::report::HasMessages;
use loopwright::drawing::cure_timeline::CureTimeline;
use loopwright::drawing::plan::OpeningPlan;
use loopwright::drawing::response_profile::ResponseProfile;
use loopwright::drawing::slot_section::SlotSection;
use loopwright::drawing::text_metrics::{HEADING_SIZE, TEXT_SIZE, max_width};
use loopwright::drawing::turn_candidates::TurnCandidateChart;
use loopwright::drawing::{Drawing, DrawingOptions, bill_csv, canvas, job_sheet};
use loopwright::practice::cautions::CautionCode;
use loopwright::practice::detectors::{DetectorEnvelope, FailureBehaviour, OutputMode};
use loopwright::practice::existing_loops::ExistingLoopVerdict;
use loopwright::practice::fault_tests::FaultTest;
use loopwright::practice::job_steps::{JobStep, Trial};
use loopwright::practice::materials::{Corner, MaterialItem, RodForm, WorkStep};
use loopwright::practice::roles::Role;
use loopwright::practice::sealants::SealantKind;
use loopwright::practice::sealing::{CureHandling, CureMilestone, CureVerdict, SurfaceCondition};
use loopwright::practice::site::{Barrier, Construction, Surface, UnitSide};
use loopwright::practice::vehicles::VehicleClass;
use loopwright::quantity::UnitSystem;
use loopwright::vocabulary::Vocabulary;
use loopwright::wording::{Language, MemberIn, Reader};
use roxmltree::{Document, Node, ParsingOptions};
use serde_json::{Value, json};

use super::drawings::{in_the_ground, job_of, noon_of, pass_of, plan_of};
use super::harness::description as api_description;
use super::requests::{existing_loop, loop_sizing, material_estimate, vehicle_response, with};

/// Words that stand in English sentences, and in none of the other languages.
const ENGLISH_WORDS: [&str; 28] = [
    "the", "of", "and", "with", "is", "are", "not", "by", "each", "for", "this", "to", "at", "from", "turn", "turns",
    "deep", "wide", "under", "loop", "slot", "lead", "unit", "either", "when", "that", "begin", "before",
];

/// A drawing by its name and a language.
type Case = (String, String);

/// A drawing in any language, of a report that was computed once and whose messages are blanked.
type DrawIn = Box<dyn Fn(Language) -> String + Send + Sync>;

fn draw<D: Drawing>(request: &Value) -> DrawIn
where
    <D::Request as Calculation>::Report: HasMessages + Send + Sync,
{
    let asked: D::Request = serde_json::from_value(request.clone()).unwrap();
    let mut report = asked.answer().unwrap();
    blank(&mut report);
    let system = D::system(&asked);
    Box::new(move |language| D::draw(&report, Reader::new(system, language), &DrawingOptions::default()))
}

fn blank(report: &mut impl HasMessages) {
    report.each_message(&mut |message| message.set_words("…".into()));
}

/// Drawings of every kind and barrier in a language, each with its name.
fn drawn_in(language: Language) -> Vec<Case> {
    static CASES: OnceLock<Vec<(String, DrawIn)>> = OnceLock::new();
    CASES.get_or_init(cases).iter().map(|(name, draw)| (name.clone(), draw(language))).collect()
}

fn cases() -> Vec<(String, DrawIn)> {
    let mut cases = Vec::new();
    let mut add = |name: &str, drawing: DrawIn| cases.push((name.to_owned(), drawing));
    for barrier in Barrier::ALL {
        let code = barrier.code();
        add(&format!("plan {code}"), draw::<OpeningPlan>(&plan_of("16 ft", code)));
        let all = with(&plan_of("7.2 m", code), "/roles", json!(Role::ALL.map_codes()));
        add(&format!("plan of all roles, {code}"), draw::<OpeningPlan>(&all));
    }
    let far = with(&plan_of("24 ft", "slide_gate"), "/lead_in", json!({ "length": "500 ft", "gauge": "18 AWG" }));
    add("plan with home runs", draw::<OpeningPlan>(&far));
    add("plan of a row", draw::<OpeningPlan>(&with(&plan_of("14 m", "slide_gate"), "/vehicles", json!(["bicycle"]))));
    add("plan of all fields", draw::<OpeningPlan>(&loop_sizing()));
    for construction in Construction::ALL {
        let code = construction.code();
        add(&format!("section {code}"), draw::<SlotSection>(&job_of("1.8 m", code)));
    }
    add("section of all fields", draw::<SlotSection>(&material_estimate()));
    for vehicle in VehicleClass::ALL {
        add(vehicle.code(), draw::<ResponseProfile>(&pass_of(vehicle.code(), "6 ft")));
    }
    let lets_go = with(&pass_of("tractor_trailer", "1.8 m"), "/threshold_percent", 0.4);
    add("profile that lets go", draw::<ResponseProfile>(&lets_go));
    add("profile of all fields", draw::<ResponseProfile>(&vehicle_response()));
    for (air, slab) in [("45 °F", "46 °F"), ("3 °C", "-1 °C"), ("21 °C", "24 °C")] {
        add(&format!("timeline at {air}"), draw::<CureTimeline>(&noon_of(air, slab)));
    }
    let wet = with(&noon_of("21 °C", "24 °C"), "/surface_condition", "damp");
    add("timeline once dry", draw::<CureTimeline>(&wet));
    add("candidates", draw::<TurnCandidateChart>(&in_the_ground("6 ft")));
    add("candidates of all fields", draw::<TurnCandidateChart>(&existing_loop()));
    cases
}

/// The codes of a closed list.
trait MapCodes {
    fn map_codes(self) -> Vec<&'static str>;
}

impl<V: Vocabulary> MapCodes for &[V] {
    fn map_codes(self) -> Vec<&'static str> {
        self.iter().map(|member| member.code()).collect()
    }
}

/// A published plan: its name, the units of its caller, and its report.
type Plan = (String, UnitSystem, InstallationPlanReport);

/// The published plans.
fn plans() -> &'static [Plan] {
    static PLANS: OnceLock<Vec<Plan>> = OnceLock::new();
    PLANS.get_or_init(compute_plans)
}

fn compute_plans() -> Vec<Plan> {
    let content = &api_description()["paths"]["/v1/installation-plan"]["post"]["requestBody"]["content"];
    let examples = content["application/json"]["examples"].as_object().unwrap();
    examples
        .iter()
        .map(|(name, example)| {
            let asked: InstallationPlanRequest = serde_json::from_value(example["value"].clone()).unwrap();
            let mut report = asked.answer().unwrap();
            blank(&mut report);
            (name.clone(), asked.system(), report)
        })
        .collect()
}

/// The job sheets of the published plans, in the units of their callers and in the others.
fn sheets_in(language: Language) -> Vec<Case> {
    let mut sheets = Vec::new();
    for (name, _, report) in plans() {
        for system in [UnitSystem::Metric, UnitSystem::UsCustomary] {
            sheets.push((format!("{name}, {system:?}"), job_sheet::page(report, Reader::new(system, language))));
        }
    }
    assert!(sheets.len() >= 6, "no examples");
    sheets
}

fn parse(text: &str) -> Document<'_> {
    let options = ParsingOptions { allow_dtd: true, ..ParsingOptions::default() };
    Document::parse_with_options(text, options).unwrap_or_else(|error| panic!("{error}: {text}"))
}

/// All texts of a drawing or a page, style sheets aside, one on each line.
fn read(document: &Document<'_>) -> String {
    let is_read = |node: &Node<'_, '_>| node.ancestors().all(|element| element.tag_name().name() != "style");
    let mut all = String::new();
    for node in document.descendants().filter(|node| node.is_text() && is_read(node)) {
        writeln!(all, "{}", node.text().unwrap_or_default()).unwrap();
    }
    all
}

/// The names and descriptions of members whose language is still English: nothing while all are translated.
fn untranslated(language: Language) -> Vec<String> {
    fn add<V: Vocabulary>(texts: &mut Vec<String>, language: Language) {
        for member in V::ALL {
            let pairs =
                [(member.label(), member.label_in(language)), (member.description(), member.description_in(language))];
            let same = pairs.into_iter().filter(|(english, other)| english == other);
            texts.extend(same.map(|(english, _)| english.to_lowercase()));
        }
    }
    let mut texts = Vec::new();
    add::<Barrier>(&mut texts, language);
    add::<CautionCode>(&mut texts, language);
    add::<Construction>(&mut texts, language);
    add::<Corner>(&mut texts, language);
    add::<CureHandling>(&mut texts, language);
    add::<CureMilestone>(&mut texts, language);
    add::<CureVerdict>(&mut texts, language);
    add::<DetectorEnvelope>(&mut texts, language);
    add::<ExistingLoopVerdict>(&mut texts, language);
    add::<FailureBehaviour>(&mut texts, language);
    add::<FaultTest>(&mut texts, language);
    add::<JobStep>(&mut texts, language);
    add::<MaterialItem>(&mut texts, language);
    add::<OutputMode>(&mut texts, language);
    add::<RodForm>(&mut texts, language);
    add::<Role>(&mut texts, language);
    add::<SealantKind>(&mut texts, language);
    add::<Surface>(&mut texts, language);
    add::<SurfaceCondition>(&mut texts, language);
    add::<Trial>(&mut texts, language);
    add::<UnitSide>(&mut texts, language);
    add::<VehicleClass>(&mut texts, language);
    add::<WorkStep>(&mut texts, language);
    // The longest first: a short name may be part of a long one.
    texts.sort_by_key(|text| std::cmp::Reverse(text.len()));
    texts
}

/// The English words of a text, apart from what its readers are still told in English.
fn english_words(text: &str, language: Language) -> Vec<String> {
    let mut text = text.to_lowercase().replace(['\n', '\u{a0}'], " ");
    for member in untranslated(language) {
        text = text.replace(&member, " ");
    }
    let words = text.split(|letter: char| !letter.is_alphabetic()).map(str::to_owned);
    words.filter(|word| ENGLISH_WORDS.contains(&word.as_str())).collect()
}

#[test]
fn drawings_and_pages_name_their_language() {
    for language in Language::ALL {
        let sheets = sheets_in(*language);
        for (name, text) in drawn_in(*language).iter().chain(&sheets) {
            let document = parse(text);
            let roots: Vec<_> = document
                .descendants()
                .filter(|node| ["svg", "html"].contains(&node.tag_name().name()))
                .map(|node| node.attribute("lang"))
                .collect();
            assert!(!roots.is_empty() && roots.iter().all(|lang| *lang == Some(language.tag())), "{name}: {roots:?}");
        }
    }
}

#[test]
fn nothing_in_another_language_is_left_in_english() {
    for language in [Language::Spanish, Language::French] {
        let sheets = sheets_in(language);
        for (name, text) in drawn_in(language).iter().chain(&sheets) {
            let said = read(&parse(text));
            let english = english_words(&said, language);
            assert!(english.is_empty(), "{}, {name}: {english:?} in {said}", language.tag());
        }
    }
    assert_eq!(
        english_words("Slot of the loop: 3\u{a0}turns", Language::Spanish),
        ["slot", "of", "the", "loop", "turns"]
    );
}

#[test]
fn nobody_reads_a_name_of_the_api() {
    for language in Language::ALL {
        let sheets = sheets_in(*language);
        for (name, text) in drawn_in(*language).iter().chain(&sheets) {
            let said = read(&parse(text));
            for letter in ['_', '#', '`', '{', '}'] {
                assert!(!said.contains(letter), "{}, {name} holds {letter}: {said}", language.tag());
            }
            assert!(!said.contains("drawings-") && !said.contains("sheet-"), "{}, {name}: {said}", language.tag());
        }
    }
}

#[test]
fn every_assumed_field_of_the_examples_has_its_name() {
    for language in Language::ALL {
        let other = match language {
            Language::English => "another value that nobody gave",
            Language::Spanish => "otro valor que nadie indicó",
            Language::French => "une autre valeur que personne n'a indiquée",
        };
        for (name, text) in sheets_in(*language) {
            assert!(!text.contains(other), "{}, {name} assumes what it cannot name", language.tag());
        }
    }
}

#[test]
fn numbers_have_the_decimal_mark_of_the_language() {
    let has = |text: &str, mark: char| {
        let letters: Vec<char> = text.chars().collect();
        letters.windows(3).any(|near| near[0].is_ascii_digit() && near[1] == mark && near[2].is_ascii_digit())
    };
    for language in Language::ALL {
        let engine = env!("CARGO_PKG_VERSION");
        let (other, mut points) = (if *language == Language::French { '.' } else { ',' }, 0);
        for (name, text) in drawn_in(*language) {
            let said = read(&parse(&text)).replace(engine, "");
            assert!(!has(&said, other), "{}, {name}: {said}", language.tag());
            points += usize::from(has(&said, if other == '.' { ',' } else { '.' }));
        }
        assert!(points > 20, "{}: no decimals in {points} drawings", language.tag());
    }
}

#[test]
fn a_number_and_its_unit_stay_on_one_line() {
    for language in Language::ALL {
        let said: String = drawn_in(*language).iter().map(|(_, text)| read(&parse(text))).collect();
        // A tape says feet and inches in every language.
        for unit in ["ft", "in", "m", "mm", "°F", "°C", "µH"] {
            assert!(said.contains(&format!("\u{a0}{unit}")), "{}: no {unit}", language.tag());
            assert!(!said.contains(&format!("\n{unit} ")), "{}: a line begins with {unit}", language.tag());
        }
        assert!(!said.contains("\n%"), "{}", language.tag());
        assert_eq!(said.contains("\u{202f}%"), *language == Language::French);
    }
}

#[test]
fn every_text_of_a_drawing_fits_its_width() {
    for language in Language::ALL {
        for (name, drawing) in drawn_in(*language) {
            for text in parse(&drawing).descendants().filter(|node| node.tag_name().name() == "text") {
                let classes = text.attribute("class").unwrap_or_default();
                let (size, bold) = match classes {
                    classes if classes.contains("head") => (HEADING_SIZE, true),
                    classes => (TEXT_SIZE, classes.contains("strong")),
                };
                let words = text.text().unwrap_or_default();
                let x: f64 = text.attribute("x").unwrap().parse().unwrap();
                let width = max_width(words, size, bold);
                let left = match classes {
                    classes if classes.contains("middle") => x - width / 2.0,
                    classes if classes.contains("end") => x - width,
                    _ => x,
                };
                // The widths are those of the widest face.
                let fits = left >= -1.0 && left + width <= canvas::WIDTH + 1.0;
                assert!(fits, "{}, {name}: {words:?} reaches from {left} to {}", language.tag(), left + width);
            }
        }
    }
}

#[test]
fn a_bill_has_the_heads_and_units_of_the_language_and_the_numbers_of_the_report() {
    for (name, system, report) in plans() {
        let table = |language| bill_csv::table(report, Reader::new(*system, language));
        let rows = |text: &str| {
            let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(text.as_bytes());
            let rows = reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect::<Vec<_>>());
            rows.collect::<Vec<_>>()
        };
        let english = rows(&table(Language::English));
        assert_eq!(english[0][..5], ["item", "label", "sku", "size", "quantity"]);
        for language in [Language::Spanish, Language::French] {
            let other = rows(&table(language));
            assert_eq!(other.len(), english.len(), "{name}");
            assert!(other[0].iter().zip(&english[0]).all(|(own, english)| own != english), "{:?}", other[0]);
            let (mut packs, head) = (0, &other[0]);
            for (own, english) in other[1..].iter().zip(&english[1..]) {
                // Code and numbers are the same; a pack is called as the language calls it.
                for column in [0, 2, 4, 6, 7, 8, 9] {
                    assert_eq!(own[column], english[column], "{name}: {}", head[column]);
                }
                let is_pack = ["cartridge", "spool", "each"].contains(&english[5].as_str());
                assert!(!is_pack || own[5] != english[5], "{name}: {}", own[5]);
                packs += usize::from(is_pack);
            }
            assert!(packs > 1, "{name} has no packs");
        }
    }
}
