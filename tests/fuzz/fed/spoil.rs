//! Damage that leaves the form of a text sound: other numbers, lines that stand twice or nowhere. What is out of form is refused
//! at once, and nothing behind the readers would ever be met.

use libfuzzer_sys::fuzzer_mutate;

/// Numbers at which something changes.
const EDGES: [&str; 24] = [
    "0",
    "-0",
    "1",
    "-1",
    "2",
    "0.1",
    "1e-9",
    "1e-300",
    "1e300",
    "1e999",
    "90",
    "-90",
    "90.0000001",
    "180",
    "-180",
    "180.0000001",
    "179.9999999",
    "360",
    "66.5",
    "9007199254740993",
    "2147483648",
    "4294967296",
    "null",
    "NaN",
];
/// Most marks of a text that are looked at: those of longer ones are damaged otherwise.
const MOST: usize = 20_000;

/// Damages the first `size` bytes in place, and says how many they are then: for half of the seeds as the library does, for the
/// others in a sound form.
#[must_use]
pub fn spoilt(data: &mut [u8], size: usize, most: usize, seed: u32) -> usize {
    let mut dice = Dice(u64::from(seed) | 1 << 40);
    if dice.of(2) == 0 {
        return fuzzer_mutate(data, size, most);
    }
    let text = data[..size].to_vec();
    let times = 1 + dice.of(4) * dice.of(2);
    let spoilt = (0..times).fold(text, |text, _| once(text, &mut dice));
    if spoilt.len() > most || spoilt == data[..size] {
        return fuzzer_mutate(data, size, most);
    }
    data[..spoilt.len()].copy_from_slice(&spoilt);
    spoilt.len()
}

fn once(text: Vec<u8>, dice: &mut Dice) -> Vec<u8> {
    match dice.of(10) {
        0..=5 => number(&text, dice),
        6 => doubled(&text, dice),
        7 => left_out(&text, dice),
        _ => exchanged(&text, dice),
    }
    .unwrap_or(text)
}

/// Another number in the place of one.
fn number(text: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let all = runs(text, |byte| byte.is_ascii_digit() || b"+-.".contains(byte));
    let (from, to) = *dice.one(&all)?;
    let told = std::str::from_utf8(&text[from..to]).ok()?;
    let other = match dice.of(8) {
        0 | 1 => (*dice.one(&EDGES)?).to_owned(),
        2 | 3 => {
            let (from, to) = *dice.one(&all)?;
            String::from_utf8_lossy(&text[from..to]).into_owned()
        }
        4 => format!("-{told}"),
        5 => format!("{told}{}", dice.of(1000)),
        _ => moved(told.parse().ok()?, dice),
    };
    Some([&text[..from], other.as_bytes(), &text[to..]].concat())
}

/// A number near it, or of another size.
fn moved(number: f64, dice: &mut Dice) -> String {
    let steps = [1e-7, 1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1.0, 10.0];
    let step = dice.one(&steps).copied().unwrap_or(1.0);
    match dice.of(6) {
        0 => (number * 10.0).to_string(),
        1 => (number / 10.0).to_string(),
        2 => number.round().to_string(),
        3 | 4 => (number + step).to_string(),
        _ => (number - step).to_string(),
    }
}

/// A piece between two marks once more, behind itself or elsewhere.
fn doubled(text: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let all = pieces(text, dice);
    let ((from, to), (at, _)) = (*dice.one(&all)?, *dice.one(&all)?);
    let at = if dice.of(2) == 0 { to } else { at };
    Some([&text[..at], &text[from..to], &text[at..]].concat())
}

fn left_out(text: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let all = pieces(text, dice);
    let (from, to) = *dice.one(&all)?;
    Some([&text[..from], &text[to..]].concat())
}

/// Two pieces in each other's place.
fn exchanged(text: &[u8], dice: &mut Dice) -> Option<Vec<u8>> {
    let all = pieces(text, dice);
    let (a, b) = (*dice.one(&all)?, *dice.one(&all)?);
    let ((a, b), (c, d)) = if a < b { (a, b) } else { (b, a) };
    let parts = [
        &text[..a],
        &text[c..d],
        text.get(b..c)?,
        &text[a..b],
        &text[d..],
    ];
    Some(parts.concat())
}

/// What stands between the marks of a form: lines, values of a list, or words in quotation marks.
fn pieces(text: &[u8], dice: &mut Dice) -> Vec<(usize, usize)> {
    let (open, close): (&[u8], &[u8]) = match dice.of(5) {
        0 | 1 => (b"\n", b"\n"),
        2 => (b"[", b"]"),
        3 => (b"\"", b"\""),
        _ => (b",", b","),
    };
    let mut from = None;
    let mut found = Vec::new();
    for (at, byte) in text.iter().enumerate() {
        if found.len() >= MOST {
            break;
        }
        if let Some(from) = from.take_if(|_| close.contains(byte)) {
            found.push((from, at));
        }
        if open.contains(byte) {
            from = Some(at);
        }
    }
    found
}

/// Runs of such bytes.
fn runs(text: &[u8], of: impl Fn(&u8) -> bool) -> Vec<(usize, usize)> {
    let (mut found, mut from) = (Vec::new(), None);
    for (at, byte) in text.iter().chain(b"\0").enumerate() {
        match (of(byte), from) {
            (true, None) => from = Some(at),
            (false, Some(begun)) => {
                found.push((begun, at));
                from = None;
            }
            _ => {}
        }
        if found.len() >= MOST {
            break;
        }
    }
    found
}

/// Numbers that look thrown: the same for the same seed.
struct Dice(u64);

impl Dice {
    /// A number below that one.
    fn of(&mut self, sides: usize) -> usize {
        // Marsaglia's xorshift.
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 33).unwrap_or(0) % sides.max(1)
    }

    fn one<'t, T>(&mut self, all: &'t [T]) -> Option<&'t T> {
        all.get(self.of(all.len()))
    }
}
