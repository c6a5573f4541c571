//! The paths under `/v1/`, and which of them need no key where others do.

use std::collections::HashMap;
use std::sync::LazyLock;

use super::reference_tables::{self, Table, TableVisitor};
use crate::calculation::installation_plan::InstallationPlanReport;
use crate::calculation::loop_sizing::LoopSizingReport;
use crate::calculation::summary::Summarized;
use crate::calculation::{self, Calculation, CalculationVisitor};
use crate::drawing::{self, Drawing, DrawingVisitor, bill_csv, job_sheet};

/// The path of batches of plans.
pub const PLAN_BATCH: &str = "/v1/installation-plan/batch";

/// The path of the sentences that reports are made of.
pub const MESSAGES: &str = "/v1/reference/messages";

/// The paths of the forms.
const FORMS: [&str; 2] = ["/v1/forms/loop-sizing", "/v1/forms/installation-plan"];

/// Every path, and whether it needs no key: what a form is made of is the same for all.
static PATHS: LazyLock<HashMap<String, bool>> = LazyLock::new(|| {
    let mut paths = PathCollector(HashMap::new());
    calculation::visit_all(&mut paths);
    drawing::visit_all(&mut paths);
    reference_tables::visit_all(&mut paths);
    let keyed = [PLAN_BATCH, LoopSizingReport::PATH, InstallationPlanReport::PATH, job_sheet::PATH, bill_csv::PATH];
    for path in keyed {
        paths.add(path, false);
    }
    for path in FORMS.into_iter().chain([MESSAGES]) {
        paths.add(path, true);
    }
    paths.0
});

/// Whether the service has a path, exactly as written.
pub fn exists(path: &str) -> bool {
    PATHS.contains_key(path)
}

/// Whether a path, exactly as written, is one of a form, a table or the messages.
pub fn is_keyless(path: &str) -> bool {
    PATHS.get(path) == Some(&true)
}

struct PathCollector(HashMap<String, bool>);

impl PathCollector {
    fn add(&mut self, path: impl Into<String>, is_keyless: bool) {
        self.0.insert(path.into(), is_keyless);
    }
}

impl CalculationVisitor for PathCollector {
    fn visit<C: Calculation>(&mut self) {
        self.add(format!("/v1/{}", C::NAME), false);
    }
}

impl DrawingVisitor for PathCollector {
    fn visit<D: Drawing>(&mut self) {
        self.add(format!("/v1/drawings/{}", D::NAME), false);
    }
}

impl TableVisitor for PathCollector {
    fn visit<T: Table>(&mut self) {
        self.add(format!("/v1/reference/{}", T::NAME), true);
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::PATHS;

    #[test]
    fn the_paths_are_those_of_the_description() {
        let description: serde_json::Value = serde_json::from_str(include_str!("../../openapi/openapi.json")).unwrap();
        let described = description["paths"].as_object().unwrap().keys().map(String::as_str);
        let known: BTreeSet<_> = PATHS.keys().map(String::as_str).collect();
        let of_the_api: BTreeSet<_> = described.filter(|path| path.starts_with("/v1/")).collect();
        assert_eq!(known, of_the_api);
    }
}
