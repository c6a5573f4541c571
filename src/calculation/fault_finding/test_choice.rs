//! The tests to do: which tells most for its cost, and the likely order to the end.

use super::likelihood::sum_by_fault;
use super::predicted_readings::FaultHypothesis;
use super::report::{NextTest, OpenTest, PlannedTest, TestOutcome};
use super::test_outcomes::{OutcomeOdds, OutcomeTable};
use super::test_progress::TestProgress;
use crate::calculation::report::{ListJoin, Message, Statement};
use crate::practice::fault_tests::{Disturbance, FaultTest, FaultTestOutcome};
use crate::practice::faults::{FaultLocation, LoopFault, PerFault};
use crate::quantity::output::round;
use crate::vocabulary::Vocabulary;

/// A fault is pointed to from this likelihood on. A choice made here.
const POINTS_FROM: f64 = 0.15;
/// One fault at one place leads so far that work on it comes next, from this likelihood on. A choice made here.
const SETTLED_FROM: f64 = 0.9;
/// A test that is expected to tell less than this, in bits, is no part of a plan. A choice made here.
const LEAST_INFORMATION: f64 = 0.02;
/// A fault is said to sit at one place where that holds so much of its likelihood. A choice made here.
const PLACED_FROM: f64 = 0.8;
/// The longest plan.
const MAX_PLANNED: usize = 10;
/// What is less likely than this weighs nothing in bits.
const NEGLIGIBLE: f64 = 1e-4;

/// A test that can be done, and what it is expected to tell.
struct RankedTest {
    test: FaultTest,
    bits: f64,
    cost: f64,
}

/// The hypotheses with what tests can show of them.
pub struct TestChoice<'a> {
    hypotheses: &'a [FaultHypothesis],
    table: &'a OutcomeTable,
    /// For each hypothesis, the work that it means: a fault at a place.
    work: Grouping,
    /// The same, by when the fault shows: a test tells that too.
    showing: Grouping,
}

/// Hypotheses in groups.
struct Grouping {
    /// The group of each.
    group: Vec<usize>,
    /// How many groups there are.
    count: usize,
}

impl Grouping {
    fn by<K: PartialEq>(forms: impl Iterator<Item = K>) -> Self {
        let mut known = Vec::new();
        let group = forms.map(|own| {
            known.iter().position(|other| *other == own).unwrap_or_else(|| {
                known.push(own);
                known.len() - 1
            })
        });
        Self { group: group.collect(), count: known.len() }
    }

    /// The weight of each group.
    fn sum(&self, weights: impl Iterator<Item = f64>) -> Vec<f64> {
        let mut sums = vec![0.0; self.count];
        for (group, weight) in self.group.iter().zip(weights) {
            sums[*group] += weight;
        }
        sums
    }
}

impl<'a> TestChoice<'a> {
    /// The choice between tests of a table.
    pub fn new(hypotheses: &'a [FaultHypothesis], table: &'a OutcomeTable) -> Self {
        let forms = || hypotheses.iter().map(|hypothesis| &hypothesis.form);
        let work = Grouping::by(forms().map(|form| (form.fault, form.location)));
        let showing = Grouping::by(forms().map(|form| (form.fault, form.location, form.manner)));
        Self { hypotheses, table, work, showing }
    }

    /// Whether one fault at one place leads so far that work on it comes next.
    pub fn is_settled(&self, probabilities: &[f64]) -> bool {
        self.work.sum(probabilities.iter().copied()).into_iter().fold(0.0, f64::max) >= SETTLED_FROM
    }

    /// How much a test is expected to tell of the work to do, and of when the fault shows, bits.
    fn information(&self, test: FaultTest, probabilities: &[f64], now: f64) -> f64 {
        let left = (0..test.outcomes().len()).map(|outcome| {
            let joint = self.showing.sum(joint(probabilities, self.table.of(test), outcome));
            let sum: f64 = joint.iter().sum();
            entropy(&joint) + if sum > NEGLIGIBLE { sum * sum.log2() } else { 0.0 }
        });
        (now - left.sum::<f64>()).max(0.0)
    }

    /// The tests that can be done, the one that tells most for its cost first; on a tie the first of the list.
    fn rank(&self, progress: &TestProgress, probabilities: &[f64]) -> Vec<RankedTest> {
        let now = entropy(&self.showing.sum(probabilities.iter().copied()));
        let ranked = |test| {
            let bits = self.information(test, probabilities, now);
            RankedTest { test, bits, cost: progress.cost(test) }
        };
        let mut tests: Vec<_> = progress.open_tests().map(ranked).collect();
        // What tells next to nothing comes last, however cheap it is.
        let worth = |one: &RankedTest| (one.bits >= LEAST_INFORMATION, one.bits / one.cost);
        tests.sort_by(|a, b| {
            let ((a_tells, a_worth), (b_tells, b_worth)) = (worth(a), worth(b));
            let first = |one: &RankedTest| progress.comes_first(one.test);
            first(b).cmp(&first(a)).then(b_tells.cmp(&a_tells)).then(b_worth.total_cmp(&a_worth))
        });
        tests
    }

    /// The test to do next, the likely order to the end, and all tests that can be done.
    pub fn choose(
        &self,
        progress: &TestProgress,
        probabilities: &[f64],
    ) -> (NextTest, Vec<PlannedTest>, Vec<OpenTest>) {
        let ranked = self.rank(progress, probabilities);
        // What is as good as found is not dug for; and whatever was done, a drive over the loops is the last proof.
        let is_settled = self.is_settled(probabilities);
        let is_apt = |one: &&RankedTest| !is_settled || one.test.disturbs() != Disturbance::Pavement;
        let best = ranked.iter().find(is_apt);
        let (test, bits) = best.map_or((FaultTest::DriveOver, 0.0), |best| (best.test, best.bits));
        let open = ranked.iter().map(|one| OpenTest {
            test: one.test,
            label: Message::label_of(one.test),
            minutes: progress.minutes(one.test),
            disturbs: progress.disturbs(one.test),
            expected_information_bits: round(one.bits, 3),
        });
        let plan = self.plan(progress.clone(), probabilities.to_vec());
        (self.next_test(test, bits, progress, probabilities), plan, open.collect())
    }

    fn next_test(&self, test: FaultTest, bits: f64, progress: &TestProgress, probabilities: &[f64]) -> NextTest {
        let outcomes = test.outcomes().iter().enumerate().map(|(index, outcome)| {
            let joint: Vec<f64> = joint(probabilities, self.table.of(test), index).collect();
            let probability: f64 = joint.iter().sum();
            let faults = sum_by_fault(self.hypotheses, &joint).map(|joint| joint / probability.max(f64::MIN_POSITIVE));
            let points_to = pointed_to(&faults);
            TestOutcome {
                code: *outcome,
                outcome: Statement::new("faults-seen").member("outcome", *outcome).into(),
                probability: round(probability, 3),
                meaning: self.meaning(*outcome, test, progress, &joint, &points_to, &faults).into(),
                points_to,
            }
        });
        let leaders = pointed_to(&sum_by_fault(self.hypotheses, probabilities));
        let reason = if progress.open_tests().all(|open| open != test) {
            let is_limited = FaultTest::ALL.iter().any(|other| !progress.is_allowed(*other));
            Statement::new("faults-test-proves").code("scope", if is_limited { "allowed" } else { "all" })
        } else if self.is_settled(probabilities) {
            Statement::new("faults-test-confirms")
        } else if progress.comes_first(test) {
            Statement::new("faults-test-comes-first").code("test", test.code())
        } else {
            Statement::new("faults-test-reason").members("suspects", &leaders)
        };
        let (minutes, disturbs) = (progress.minutes(test), progress.disturbs(test));
        let reason = if progress.joins_splice_first(test) {
            reason.followed_by(Statement::new("faults-join-splice-first"))
        } else {
            reason
        };
        NextTest {
            test,
            label: Message::label_of(test),
            how: Message::description_of(test),
            minutes,
            disturbs,
            reason: reason.count("minutes", minutes.into()).member("disturbs", disturbs).into(),
            expected_information_bits: round(bits, 3),
            outcomes: outcomes.collect(),
            cautions: test.cautions().to_vec(),
        }
    }

    /// What an outcome would mean, in words.
    fn meaning(
        &self,
        outcome: FaultTestOutcome,
        test: FaultTest,
        progress: &TestProgress,
        joint: &[f64],
        points_to: &[LoopFault],
        faults: &PerFault<f64>,
    ) -> Statement {
        let most = points_to.first().map_or(0.0, |fault| faults[*fault]);
        let certainty = match most {
            most if most >= SETTLED_FROM => "settled",
            most if most >= 0.5 => "leaning",
            _ => "open",
        };
        let placed = points_to.iter().map(|fault| {
            let place = self.place(*fault, joint).unwrap_or("anywhere");
            Statement::new("faults-suspect-placed").member("suspect", *fault).code("place", place)
        });
        let meaning = Statement::new("faults-outcome-means").code("certainty", certainty).phrases(
            "suspects",
            placed.collect(),
            ListJoin::Comma,
        );
        if outcome == FaultTestOutcome::Sound && progress.clears_nothing_when_sound(test) {
            meaning.followed_by(Statement::new("faults-dry-clears-nothing"))
        } else {
            meaning
        }
    }

    /// Where on the way from the lead-in to the loop a fault sits, if it can sit at several places there and one of them leads.
    fn place(&self, fault: LoopFault, joint: &[f64]) -> Option<&'static str> {
        let own = || self.hypotheses.iter().zip(joint).filter(|(hypothesis, _)| hypothesis.form.fault == fault);
        let at = |location| {
            let there = own().filter(|(hypothesis, _)| hypothesis.form.location == location);
            there.fold((false, 0.0), |(_, sum), (_, weight)| (true, sum + weight))
        };
        let places = [FaultLocation::LeadIn, FaultLocation::Splice, FaultLocation::Loop].map(at);
        let sum: f64 = own().map(|(_, weight)| weight).sum();
        if places.iter().filter(|(exists, _)| *exists).count() < 2 {
            return None;
        }
        let names = ["lead_in", "splice", "loop"].into_iter().zip(places);
        names.filter(|(_, (_, weight))| *weight >= PLACED_FROM * sum).map(|(name, _)| name).next()
    }

    /// The tests as they come if each shows what is likeliest, until one fault at one place leads, or no test tells any more.
    fn plan(&self, mut progress: TestProgress, mut probabilities: Vec<f64>) -> Vec<PlannedTest> {
        let (mut plan, mut total) = (Vec::new(), 0);
        while plan.len() < MAX_PLANNED && !self.is_settled(&probabilities) {
            let ranked = self.rank(&progress, &probabilities);
            let Some(best) = ranked.first().filter(|best| best.bits >= LEAST_INFORMATION) else { break };
            let test = best.test;
            let chance = |index: usize| joint(&probabilities, self.table.of(test), index).sum::<f64>();
            let chances = test.outcomes().iter().enumerate().map(|(index, outcome)| (index, *outcome, chance(index)));
            let Some((index, outcome, probability)) = chances.max_by(|a, b| a.2.total_cmp(&b.2)) else { break };
            total += progress.minutes(test);
            plan.push(PlannedTest {
                test,
                label: Message::label_of(test),
                minutes: progress.minutes(test),
                minutes_so_far: total,
                disturbs: progress.disturbs(test),
                likely_outcome_code: outcome,
                likely_outcome: Statement::new("faults-seen").member("outcome", outcome).into(),
                probability: round(probability, 3),
            });
            progress.spend(progress.minutes(test));
            progress.take(test, Some(outcome));
            probabilities =
                joint(&probabilities, self.table.of(test), index).map(|joint| joint / probability).collect();
        }
        plan
    }
}

/// How likely each hypothesis is together with an outcome.
fn joint<'a>(probabilities: &'a [f64], odds: &'a [OutcomeOdds], outcome: usize) -> impl Iterator<Item = f64> + 'a {
    probabilities.iter().zip(odds).map(move |(probability, odds)| probability * odds[outcome])
}

/// Uncertainty in bits; of a part of all chances, what it adds to the whole.
fn entropy(probabilities: &[f64]) -> f64 {
    let counted = probabilities.iter().filter(|probability| **probability > NEGLIGIBLE);
    counted.map(|probability| -probability * probability.log2()).sum()
}

fn pointed_to(faults: &PerFault<f64>) -> Vec<LoopFault> {
    let ranked = faults.ranked();
    let most = ranked.first().map_or(0.0, |(_, probability)| *probability);
    let pointed = ranked.into_iter().take_while(|(_, probability)| *probability >= POINTS_FROM.min(most));
    pointed.map(|(fault, _)| fault).collect()
}
