//! What the loops of a request are called.

use crate::calculation::report::{Diagnostics, FieldErrorCode, FieldPath, Statement};
use crate::practice::sources::Source;

/// The labels of the loops of a list, each once. A loop without one is called by its number, or by the next that nothing else is called
/// by. `hint` is said of a label that stands twice.
pub fn resolve_labels<'a>(
    sent: impl Iterator<Item = Option<&'a str>>,
    loops_at: &FieldPath<'_>,
    hint: &Statement,
    diagnostics: &mut Diagnostics,
) -> Vec<String> {
    let sent: Vec<_> = sent.collect();
    let mut labels: Vec<String> = Vec::with_capacity(sent.len());
    for (index, label) in sent.iter().enumerate() {
        let item_at = loops_at.item(index);
        let at = item_at.field("label");
        if let Some(label) = label {
            if sent[..index].contains(&Some(label)) {
                let twice = Statement::new("errors-label-twice").text("label", (*label).to_owned());
                diagnostics.add_error(&at, FieldErrorCode::Contradiction, twice, hint.clone());
            }
            labels.push((*label).to_owned());
            continue;
        }
        let is_free = |label: &String| !labels.contains(label) && !sent.contains(&Some(label));
        let numbers = index + 1..=index + 1 + 2 * sent.len();
        let label = numbers.map(|number| number.to_string()).find(is_free).unwrap_or_default();
        let reason = Statement::new("input-usual-label");
        diagnostics.add_assumption(&at, label.clone(), reason, &[Source::OwnChoice]);
        labels.push(label);
    }
    labels
}
