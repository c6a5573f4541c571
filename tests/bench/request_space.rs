//! Requests within the limits of the description, drawn at random: the widest and the narrowest, the fullest and the barest.
//!
//! A request is made of genes, so that a search can change one and look again. The same start always gives the same requests.

use serde_json::{Map, Value, json};

#[path = "other_requests.rs"]
mod other_requests;

use other_requests::{characteristics, compatibility, cure, existing, faults, materials, response};

const ROLES: &[&str] =
    &["exit", "obstruction_outside", "obstruction_inside", "between_leaves", "arming", "closing", "presence"];
const VEHICLES: &[&str] = &[
    "passenger_car",
    "pickup",
    "high_bed_truck",
    "tractor_trailer",
    "small_motorcycle",
    "large_motorcycle",
    "bicycle",
    "car_with_trailer",
    "bus",
    "forklift",
    "golf_cart",
];
const HAZARDS: &[&str] = &[
    "reinforcing_mesh",
    "adjacent_traffic",
    "freezing_climate",
    "cracked_pavement",
    "pavement_joint",
    "old_loop_cut",
    "post_tensioned_slab",
    "bridge_deck",
    "snow_melt_cable",
    "snow_melt_pipe",
    "overhead_power_line",
    "buried_power_line",
];
const SURFACES: &[&str] =
    &["existing_asphalt", "existing_concrete", "new_asphalt", "new_concrete", "gravel", "soil", "pavers"];
const BARRIERS: &[&str] =
    &["slide_gate", "swing_gate", "swing_gate_pair", "barrier_arm", "vertical_lift_gate", "overhead_door", "none"];
const WIDTHS: &[&str] = &[
    "3 ft", "6 ft", "9 ft", "12 ft", "16 ft", "20 ft", "24 ft", "30 ft", "40 ft", "60 ft", "100 ft", "200 ft", "1 m",
    "3.6 m", "7.2 m", "12 m", "60 m",
];
const LEGS: &[&str] =
    &["1 ft", "2 ft", "4 ft", "6 ft", "6.5 ft", "8 ft", "12 ft", "20 ft", "60 ft", "200 ft", "1.8 m", "3 m"];
const LEAD_INS: &[&str] = &["0 ft", "20 ft", "50 ft", "100 ft", "400 ft", "2000 ft", "5000 ft", "15 m"];

/// Numbers that look random and are the same each time.
#[derive(Clone)]
pub struct Dice(u64);

impl Dice {
    pub fn new(start: u64) -> Self {
        Self(start)
    }

    pub fn throw(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (mixed ^ (mixed >> 31)) % sides.max(1)
    }
}

/// One thing that a request may say, in one of several ways.
enum Gene {
    /// A field that is absent or has one of these values.
    Choice(Vec<Value>),
    /// A list of some of these codes; absent when empty.
    Some(&'static [&'static str]),
    /// A number up to this, which `build` reads.
    Number(u64),
}

/// The requests of one calculation.
pub struct RequestSpace {
    pub calculation: &'static str,
    genes: Vec<(&'static str, Gene)>,
    /// Makes what hangs on several genes, by their names.
    build: fn(&Genome<'_>, &mut Value),
}

/// A request as numbers, one for each gene.
pub type Alleles = Vec<u64>;

struct Genome<'a> {
    space: &'a RequestSpace,
    alleles: &'a [u64],
}

impl Genome<'_> {
    fn number(&self, name: &str) -> u64 {
        let place = self.space.genes.iter().position(|(other, _)| *other == name);
        self.alleles[place.expect("a gene of this name")]
    }
}

impl Gene {
    fn random(&self, dice: &mut Dice) -> u64 {
        match self {
            Self::Choice(values) => dice.throw(values.len() as u64 + 1),
            Self::Some(codes) => dice.throw(1 << codes.len()) & dice.throw(1 << codes.len()).max(1),
            Self::Number(most) => dice.throw(most + 1),
        }
    }

    /// The allele that says most, where it is known which does.
    fn most(&self) -> Option<u64> {
        match self {
            Self::Choice(_) => None,
            Self::Some(codes) => Some((1 << codes.len()) - 1),
            Self::Number(most) => Some(*most),
        }
    }

    fn changed(&self, allele: u64, dice: &mut Dice) -> u64 {
        match self {
            Self::Some(codes) if dice.throw(4) > 0 => allele ^ (1 << dice.throw(codes.len() as u64)),
            Self::Some(codes) => (1 << codes.len()) - 1,
            Self::Number(most) if dice.throw(3) == 0 => *most,
            _ => self.random(dice),
        }
    }

    fn value(&self, allele: u64) -> Option<Value> {
        match self {
            Self::Choice(values) => values.get(allele as usize).cloned(),
            Self::Some(codes) => {
                let chosen: Vec<_> = codes
                    .iter()
                    .enumerate()
                    .filter(|(place, _)| allele >> place & 1 == 1)
                    .map(|(_, code)| *code)
                    .collect();
                (!chosen.is_empty()).then(|| json!(chosen))
            }
            Self::Number(_) => None,
        }
    }
}

impl RequestSpace {
    /// A request anywhere in the space.
    pub fn random(&self, dice: &mut Dice) -> Alleles {
        self.genes.iter().map(|(_, gene)| gene.random(dice)).collect()
    }

    /// The same request with one to three genes changed.
    pub fn changed(&self, alleles: &Alleles, dice: &mut Dice) -> Alleles {
        let mut changed = alleles.clone();
        for _ in 0..=dice.throw(3) {
            let place = dice.throw(self.genes.len() as u64) as usize;
            changed[place] = self.genes[place].1.changed(changed[place], dice);
        }
        changed
    }

    /// A request that says as much as it can of everything, some of it at random.
    pub fn fullest(&self, dice: &mut Dice) -> Alleles {
        self.genes.iter().map(|(_, gene)| gene.most().unwrap_or_else(|| gene.random(dice))).collect()
    }

    /// The request as JSON.
    pub fn request(&self, alleles: &Alleles) -> Value {
        let mut request = json!({});
        for ((path, gene), allele) in self.genes.iter().zip(alleles) {
            if let Some(value) = gene.value(*allele) {
                set(&mut request, path, value);
            }
        }
        (self.build)(&Genome { space: self, alleles }, &mut request);
        request
    }
}

fn set(request: &mut Value, path: &str, value: Value) {
    let mut at = request;
    for name in path.split('.') {
        if !at.is_object() {
            *at = Value::Object(Map::new());
        }
        at = at.as_object_mut().expect("an object").entry(name).or_insert(Value::Null);
    }
    *at = value;
}

fn some(values: &[&str]) -> Gene {
    Gene::Choice(values.iter().map(|value| json!(value)).collect())
}

/// The spaces of all calculations that search or grow with what is sent.
pub fn spaces() -> Vec<RequestSpace> {
    vec![
        sizing("loop-sizing"),
        plan(),
        compatibility(),
        response(),
        existing(),
        characteristics(),
        materials(),
        cure(),
        faults(),
    ]
}

fn opening_genes() -> Vec<(&'static str, Gene)> {
    let steps = |count: i32, finest: f64| {
        json!((0..count).map(|step| finest * 1.25_f64.powi(count - step - 1)).collect::<Vec<_>>())
    };
    vec![
        ("width", Gene::Number(WIDTHS.len() as u64 - 1)),
        ("barrier", Gene::Number(BARRIERS.len() as u64 - 1)),
        ("opening.approach_speed", some(&["1 mph", "5 mph", "20 mph", "60 mph"])),
        ("opening.opening_time", some(&["0.5 s", "12 s", "60 s", "120 s"])),
        ("opening.edge_setback", some(&["0 ft", "1 ft", "4 ft"])),
        ("opening.drive_length", some(&["0 ft", "40 ft", "200 ft", "1000 ft"])),
        ("opening.leaf_height", some(&["1 ft", "6 ft", "12 ft", "30 ft"])),
        ("opening.leaf_ground_gap", some(&["0 in", "4 in", "3 ft"])),
        ("opening.seen_otherwise", Gene::Choice(vec![json!(true)])),
        ("opening.leaf_open", some(&["level", "coiled"])),
        ("opening.unit_side", some(&["left", "right"])),
        ("roles", Gene::Some(ROLES)),
        ("vehicles", Gene::Some(VEHICLES)),
        ("seen_by_other_devices", Gene::Choice(vec![json!(["bicycle", "small_motorcycle"]), json!(VEHICLES)])),
        ("surface", some(SURFACES)),
        ("slab.reinforcement_depth", some(&["1 in", "4 in", "12 in"])),
        ("slab.cut_approved", Gene::Choice(vec![json!(true)])),
        ("slot.cover", some(&["0.5 in", "1 in", "3 in"])),
        ("site_hazards", Gene::Some(HAZARDS)),
        ("construction", some(&["hand_wound", "preformed_saw_cut", "preformed_direct_burial"])),
        ("lead_in.length", some(LEAD_INS)),
        ("wire.gauge", some(&["24 AWG", "14 AWG", "8 AWG"])),
        (
            "detector.threshold_percent",
            Gene::Choice([0.001, 0.003, 0.01, 0.02, 0.05, 0.13, 0.32, 1.0, 10.0].map(|step| json!(step)).to_vec()),
        ),
        (
            "detector.threshold_steps_percent",
            Gene::Choice(vec![steps(32, 0.001), steps(32, 0.01), steps(8, 0.01), steps(4, 0.05)]),
        ),
        ("detector.inductance_min_uh", Gene::Choice(vec![json!(1.0), json!(20.0), json!(200.0), json!(600.0)])),
        ("detector.inductance_max_uh", Gene::Choice(vec![json!(700.0), json!(2500.0), json!(10000.0)])),
        ("detector.quality_factor_min", Gene::Choice(vec![json!(0.1), json!(5.0), json!(20.0)])),
        ("detector.tuning_capacitance_nf", Gene::Choice(vec![json!(10.0), json!(68.0), json!(1000.0)])),
        ("stock count", Gene::Number(200)),
        ("stock leg", Gene::Number(15)),
        ("stock turns", Gene::Number(20)),
        ("stock share", Gene::Number(10)),
        ("stock spread", Gene::Number(3)),
        ("fixed", Gene::Number(255)),
        ("fixed kind", Gene::Number(12)),
    ]
}

fn build_opening(genome: &Genome<'_>, request: &mut Value) {
    let width = WIDTHS[genome.number("width") as usize];
    let barrier = BARRIERS[genome.number("barrier") as usize];
    set(request, "opening.width", json!(width));
    set(request, "opening.barrier", json!(barrier));
    if !matches!(barrier, "slide_gate" | "swing_gate" | "swing_gate_pair" | "vertical_lift_gate" | "overhead_door") {
        let opening = request["opening"].as_object_mut().expect("an object");
        opening.remove("leaf_height");
        opening.remove("leaf_ground_gap");
    }
    if barrier != "overhead_door" {
        request["opening"].as_object_mut().expect("an object").remove("leaf_open");
    }
    if request["detector"]["threshold_percent"].is_number() {
        request["detector"].as_object_mut().expect("an object").remove("threshold_steps_percent");
    }
    if request["detector"].is_null() {
        request.as_object_mut().expect("an object").remove("detector");
    }
    let feet = feet_of(width);
    let stock = genome.number("stock count");
    if stock > 100 {
        let across = feet * (genome.number("stock share") as f64 / 10.0);
        // Nearly alike, so that all fit, or of a few legs, many turns, or both.
        let spread = genome.number("stock spread");
        let (leg_apart, turns_apart) = (if spread & 1 == 1 { 0.1 } else { 0.01 }, spread / 2);
        let item = |index: u64| {
            let along = genome.number("stock leg") as f64 + 1.0 + leg_apart * index as f64;
            json!({
                "sku": format!("TIB-{index}"), "lead_in_length": "5000 ft",
                "along_travel": format!("{:.3} ft", along.min(200.0)),
                "across_lane": format!("{:.3} ft", (across - 0.2 * leg_apart * index as f64).clamp(1.0, 200.0)),
                "turns": 1 + (genome.number("stock turns").max(1) - 1 + turns_apart * index) % 20,
            })
        };
        set(request, "stock", json!((0..stock.min(200)).map(item).collect::<Vec<_>>()));
    }
    let fixed = fixed_loops(genome, request, feet);
    if !fixed.is_empty() {
        set(request, "fixed_loops", json!(fixed));
    }
}

fn feet_of(length: &str) -> f64 {
    let (number, unit) = length.split_once(' ').expect("a number and a unit");
    number.parse::<f64>().expect("a number") * if unit == "m" { 3.2808 } else { 1.0 }
}

fn fixed_loops(genome: &Genome<'_>, request: &Value, feet: f64) -> Vec<Value> {
    let chosen = genome.number("fixed");
    let roles = request["roles"].as_array().cloned().unwrap_or_default();
    let fixed = roles.iter().enumerate().filter(|(place, _)| chosen >= 128 && chosen >> place & 1 == 1);
    let decide = |(place, role): (usize, &Value)| {
        let mut one = json!({ "role": role });
        match genome.number("fixed kind") {
            0 => one["shape"] = json!("quadrupole"),
            1 => one["turns"] = json!(20),
            2 => one["along_travel"] = json!(format!("{} ft", 3 + place)),
            3 => one["across_lane"] = json!(format!("{:.3} ft", (feet / (1.0 + place as f64)).max(1.0))),
            4 => {
                one["shape"] = json!("quadrupole");
                one["across_lane"] = json!(format!("{:.3} ft", (feet / (1.2 + place as f64)).max(1.0)));
            }
            5 => {
                one["turns"] = json!(1 + place);
                one["shape"] = json!("quadrupole");
            }
            // A loop that straddles the line has no distance.
            6 | 7 if role != "closing" && role != "presence" => {
                one["distance"] = json!(format!("{} ft", 3 + 4 * place));
                one["along_travel"] = json!(format!("{} ft", 6 + place));
            }
            8 => one["along_travel"] = json!("200 ft"),
            9 => one["across_lane"] = json!(format!("{:.3} ft", feet.clamp(1.0, 200.0))),
            _ => {
                one["turns"] = json!(2 + place);
                one["across_lane"] = json!(format!("{:.3} ft", (feet / (1.2 + place as f64)).max(1.0)));
            }
        }
        one
    };
    fixed.map(decide).collect()
}

fn sizing(calculation: &'static str) -> RequestSpace {
    RequestSpace { calculation, genes: opening_genes(), build: build_opening }
}

fn plan() -> RequestSpace {
    let mut genes = opening_genes();
    genes.extend([
        ("wiring", some(&["series", "parallel", "separate"])),
        ("sealant.kind", some(&["one_part_moisture_cure", "two_part_reactive", "hot_applied"])),
        ("hours", Gene::Number(336)),
        ("saw.corner", some(&["diagonal", "square_overrun", "cored"])),
        ("backer_rod.form", some(&["pieces", "continuous", "none"])),
        ("crossings", Gene::Choice(vec![json!(100)])),
    ]);
    let build = |genome: &Genome<'_>, request: &mut Value| {
        build_opening(genome, request);
        let hours = genome.number("hours");
        if hours > 100 {
            set(request, "weather.conditions", hourly(hours, 8));
            set(request, "start", json!("2026-05-01T12:00:00-04:00"));
        }
    };
    RequestSpace { calculation: "installation-plan", genes, build }
}

/// So many hours from the first of May on.
fn hourly(hours: u64, air: u64) -> Value {
    let hour = |index: u64| {
        json!({
            "time": format!("2026-05-{:02}T{:02}:00:00-04:00", 1 + index / 24, index % 24),
            "air": format!("{} °C", air.cast_signed() - 5 + (index % 24 / 2).cast_signed()),
            "relative_humidity_percent": 40 + index % 50, "precipitation_probability_percent": index * 7 % 60,
        })
    };
    json!((0..hours.clamp(1, 336)).map(hour).collect::<Vec<_>>())
}
