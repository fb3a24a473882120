//! Numbers of flags: understood as people write them, or answered with what to write.

use schrund::{
    fault::geojson::NoNumber,
    read::{number, trip::Folk},
};

/// One foot in metres `[from memory: exact by definition since 1959]`.
const FOOT_M: f64 = 0.3048;
/// Other units of length in metres.
const LENGTHS: [(&str, f64); 8] = [
    ("ft", FOOT_M),
    ("feet", FOOT_M),
    ("foot", FOOT_M),
    ("'", FOOT_M),
    ("yd", 3.0 * FOOT_M),
    ("cm", 0.01),
    ("mm", 0.001),
    ("km", 1000.0),
];
/// Words behind a head count.
const PEOPLE: [&str; 6] = ["p", "pers", "person", "persons", "people", "x"];
/// Head counts in words, from one on.
const NUMBERS: [&str; 9] = [
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
];
/// Nobody who stands on a glacier weighs less; kilograms. Our judgement.
const LIGHTEST_KG: f64 = 10.0;

/// Metres: `20`, `20.5`, `20,5`, `20m`, `20 metres`.
pub(crate) fn metres(text: &str) -> Result<f64, String> {
    number::alone(text, "m").ok_or_else(|| no_metres(text.trim()))
}

/// Kilometres: `4.5`, `4,5`, `4.5 km`. No other unit is taken for them.
pub(crate) fn kilometres(text: &str) -> Result<f64, String> {
    number::alone(text, "km").ok_or_else(|| match number::number(text.trim()) {
        Err(NoNumber::Comma(digits)) => two_readings(&digits),
        _ => "it takes one number of kilometres".to_owned(),
    })
}

/// The length of one rope: as [`metres`], but two digits behind a comma may be a second rope.
pub(crate) fn rope(text: &str) -> Result<f64, String> {
    let parts: Vec<&str> = text.split([',', ';', '+']).map(str::trim).collect();
    let lengths: Vec<f64> = parts.iter().filter_map(|p| number::alone(p, "m")).collect();
    // Nobody writes a length with a nought before it.
    let is_part = |part: &str| digits(part) != 2 || part.starts_with('0');
    let is_one = matches!(parts[..], [_, part] if text.contains(',') && is_part(part));
    if parts.len() < 2 || lengths.len() < parts.len() || is_one {
        return metres(text);
    }
    let each: Vec<String> = lengths.iter().map(|m| format!("--rope {m}")).collect();
    let one = match parts[..] {
        [whole, part] if text.contains(',') && !whole.contains('.') => {
            let part: String = part.chars().take_while(char::is_ascii_digit).collect();
            format!("; one rope of {whole}.{part} m is `--rope {whole}.{part}`")
        }
        _ => String::new(),
    };
    Err(format!(
        "each rope has its own flag: `{}`{one}",
        each.join(" ")
    ))
}

/// How many digits a text begins with.
fn digits(text: &str) -> usize {
    text.chars().take_while(char::is_ascii_digit).count()
}

fn no_metres(text: &str) -> String {
    match (number::number(text), other_unit(text)) {
        (Err(NoNumber::Comma(digits)), _) => two_readings(&digits),
        (_, Some(metres)) => format!("it takes metres: write `{metres}`"),
        _ => "it takes one length in metres".to_owned(),
    }
}

/// A length in another unit than metres, in metres: `20 ft`, `2 km`.
pub(crate) fn other_unit(text: &str) -> Option<f64> {
    let (value, rest) = number::number(text.trim()).ok()?;
    let (_, unit_m) = LENGTHS.iter().find(|(unit, _)| *unit == rest)?;
    Some(rounded(value * unit_m))
}

/// `3,500` is 3.5 to some and 3500 to others.
fn two_readings(digits: &str) -> String {
    let (pointed, whole) = (digits.replace(',', "."), digits.replace(',', ""));
    format!("the comma can mean two things: write `{pointed}` or `{whole}`")
}

/// To a centimetre.
fn rounded(metres: f64) -> f64 {
    (metres * 100.0).round() / 100.0
}

/// A head count, `3`, `3p`, `3 people`, or masses, `82,75,90`, `82kg,75kg`, `82,5; 75`.
pub(crate) fn folk(text: &str) -> Result<Folk, String> {
    let parts: Vec<&str> = text
        .split(if text.contains(';') { ';' } else { ',' })
        .collect();
    if let [one] = parts[..] {
        return heads_or_mass(one.trim());
    }
    let mass = |part: &&str| {
        let part = part.trim();
        number::alone(part, "kg").ok_or_else(|| match heads(part) {
            Some(_) => format!("`{part}` is a head count: give one count, or the mass of each"),
            None => no_mass(part),
        })
    };
    let masses: Vec<f64> = parts.iter().map(mass).collect::<Result<_, String>>()?;
    let half = masses
        .iter()
        .skip(1)
        .position(|kg| *kg < LIGHTEST_KG && *kg >= 0.0 && kg.fract() == 0.0);
    match half.map(|i| (i, masses[i])) {
        Some((at, whole)) if whole >= LIGHTEST_KG => {
            let typed: Vec<&str> = parts.iter().map(|part| kilograms(part)).collect();
            Err(halved(&typed, at, typed[at + 1]))
        }
        _ => Ok(Folk::Masses(masses)),
    }
}

/// A mass as it was typed, without its unit.
fn kilograms(text: &str) -> &str {
    let text = text.trim();
    text.strip_suffix("kg").map_or(text, str::trim)
}

/// A decimal comma between masses: the list as it may be meant, in the digits that were typed.
fn halved(masses: &[&str], at: usize, part: &str) -> String {
    let shown = masses.iter().enumerate().filter(|(i, _)| *i != at + 1);
    let shown = shown.map(|(i, kg)| match i == at {
        true => format!("{kg}.{part}"),
        false => (*kg).to_owned(),
    });
    let mut meant: Vec<String> = shown.collect();
    let one = meant.get(at).cloned().unwrap_or_default();
    let more = if meant.len() == 1 {
        meant.push("…".to_owned());
        ", and the mass of everybody else"
    } else {
        ""
    };
    let meant = meant.join(",");
    format!(
        "a comma stands between people, and nobody weighs {part} kg: if one person weighs {one} kg, write `--party {meant}`{more}; if {part} is a slip, write that mass in full"
    )
}

/// One whole number is a head count, however large; anything else is a mass.
fn heads_or_mass(text: &str) -> Result<Folk, String> {
    if let Some(n) = heads(text) {
        return Ok(Folk::Number(n));
    }
    let mass = number::alone(text, "kg").ok_or_else(|| no_mass(text))?;
    Ok(Folk::Masses(vec![mass]))
}

/// A head count with or without a word for people.
fn heads(text: &str) -> Option<usize> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "known to be whole and not below nought; a huge one stays huge"
    )]
    if let Ok(whole) = text.parse::<f64>() {
        return (whole.fract() == 0.0 && whole >= 0.0).then_some(whole as usize);
    }
    if let Some(at) = NUMBERS
        .iter()
        .position(|word| text.eq_ignore_ascii_case(word))
    {
        return Some(at + 1);
    }
    let digits = digits(text);
    let (number, word) = text.split_at(digits);
    let word = word.trim().to_ascii_lowercase();
    let known = word.is_empty() || PEOPLE.contains(&word.as_str());
    // A count that no machine can hold is the greatest there is; what reads it says that these are too many.
    let count = || number.parse().unwrap_or(usize::MAX);
    (digits > 0 && known).then(count)
}

fn no_mass(text: &str) -> String {
    match number::number(text) {
        Err(NoNumber::Comma(digits)) => two_readings(&digits),
        _ => format!(
            "`{text}` is no number: give a head count, `--party 3`, or masses with pack in kg, `--party 82,75,90`"
        ),
    }
}
