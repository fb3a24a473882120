//! Members of a geometry that stand there twice: which of them is meant nobody can tell.

use serde_json::value::RawValue;

use super::properties::Pairs;

/// The members that a geometry is read from.
const MEMBERS: [&str; 3] = ["type", "coordinates", "geometries"];
/// Collections within collections that are looked into; the reader of geometries refuses as many.
const MOST_DEEP: usize = 128;

/// The first such member, and the byte of the text at which it stands for the second time.
pub(super) fn doubled(json: &str) -> Option<(&'static str, usize)> {
    let stands_twice = |name: &str| json.matches(&format!("\"{name}\"")).nth(1).is_some();
    // A name may be written with escapes; nearly no geometry holds any.
    if !json.contains('\\') && !MEMBERS.into_iter().any(stands_twice) {
        return None;
    }
    let (name, second) = twice(json, MOST_DEEP)?;
    Some((name, second.as_ptr() as usize - json.as_ptr() as usize))
}

fn twice(json: &str, deep: usize) -> Option<(&'static str, &str)> {
    let pairs = serde_json::from_str::<Pairs<'_>>(json).ok()?.0;
    for (i, (name, value)) in pairs.iter().enumerate() {
        let member = MEMBERS.into_iter().find(|member| member == name);
        let before = pairs.get(..i).unwrap_or_default();
        if let Some(member) = member.filter(|_| before.iter().any(|(n, _)| n == name)) {
            return Some((member, value.get()));
        }
    }
    let parts = pairs.iter().find(|(name, _)| name == "geometries")?;
    let parts: Vec<&RawValue> = serde_json::from_str(parts.1.get()).ok()?;
    let deep = deep.checked_sub(1)?;
    parts.into_iter().find_map(|part| twice(part.get(), deep))
}
