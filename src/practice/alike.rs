//! The known name that a misspelt one is most like.

/// Least likeness of a name to be offered in place of another. Our judgement.
const ALIKE: f64 = 0.8;

/// The known name most like this one, if any is like it.
///
/// ```
/// use schrund::practice::alike::nearest;
///
/// assert_eq!(nearest("margin", ["margin_m", "tie_in_m"]), Some("margin_m"));
/// assert_eq!(nearest("weather", ["margin_m", "tie_in_m"]), None);
/// ```
#[must_use]
pub fn nearest<N: AsRef<str>>(name: &str, known: impl IntoIterator<Item = N>) -> Option<N> {
    let likeness = |known: N| (strsim::jaro_winkler(known.as_ref(), name), known);
    let alike = known.into_iter().map(likeness);
    let best = alike.max_by(|(one, _), (other, _)| one.total_cmp(other));
    best.filter(|(likeness, _)| *likeness >= ALIKE)
        .map(|(_, known)| known)
}
