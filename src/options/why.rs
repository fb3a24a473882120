//! Why each way is shown, in a sentence.

use crate::plan::options::Way;

/// Something a way can be best in; less is better.
type Merit = (&'static str, fn(&Way) -> f64);

#[expect(clippy::cast_precision_loss, reason = "small counts")]
const MERITS: [Merit; 5] = [
    ("most people left to hold", |w| -(w.left_to_hold as f64)),
    ("another rope team is there to help", |w| {
        f64::from(u8::from(!w.another_team))
    }),
    ("lightest ropes", |w| w.rope_mass_kg),
    ("shortest coil", |w| w.coil_m),
    ("fewest set-up changes", |w| w.setup_changes as f64),
];

/// Gives each way its sentence: what it is best in among those shown, as far as not all are alike in it.
pub(super) fn explain(ways: &mut [Way]) {
    let best: Vec<Option<f64>> = MERITS
        .iter()
        .map(|(_, of)| best_unless_alike(ways, *of))
        .collect();
    let best_verdict = best_unless_alike(ways, |w| f64::from(w.verdict as u8));
    let only = ways.len() == 1;
    for way in ways.iter_mut() {
        let is_best =
            |best: &Option<f64>, value: f64| best.is_some_and(|b| (value - b).abs() < 1e-6);
        let mut merits: Vec<&str> = Vec::new();
        if is_best(&best_verdict, f64::from(way.verdict as u8)) {
            merits.push("best verdict");
        }
        if way.changes.is_empty() && !only {
            merits.push("nothing is done otherwise than the rules say");
        }
        let held = MERITS.iter().zip(&best);
        merits.extend(
            held.filter(|((_, of), best)| is_best(best, of(way)))
                .map(|((words, _), _)| *words),
        );
        way.why = match (only, merits.as_slice()) {
            (true, _) => "no other way weighed is better in anything".to_owned(),
            (_, []) => "no other way weighed beats it in everything".to_owned(),
            (_, merits) => merits.join(", "),
        };
    }
}

fn best_unless_alike(ways: &[Way], of: fn(&Way) -> f64) -> Option<f64> {
    let least = ways.iter().map(of).reduce(f64::min)?;
    let most = ways.iter().map(of).reduce(f64::max)?;
    (most - least > 1e-6).then_some(least)
}
