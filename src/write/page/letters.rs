//! Bytes as letters that may stand in a script element: five letters for four bytes, where base64 takes five and a third.
//!
//! The alphabet is ours, since those in use hold `<` or `&`: ASCII from `(` on, without `<` and `\`.

const LETTERS: &[u8; 85] =
    b"()*+,-./0123456789:;=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[]^_`abcdefghijklmnopqrstuvwxyz{|}~";
/// What the five letters of a group count, the first one first; 85⁵ is just over 2³².
const COUNTS: [u32; 5] = [85 * 85 * 85 * 85, 85 * 85 * 85, 85 * 85, 85, 1];

/// The letters of those bytes. A last group of fewer bytes has fewer letters, one more than bytes.
///
/// ```
/// use schrund::write::page::letters;
///
/// assert_eq!(letters::of(&[0, 0, 0, 0]), "(((((");
/// assert_eq!(letters::of(&[0, 0, 0, 84]), "((((~", "the last of the 85");
/// assert_eq!(letters::of(&[255; 5]).len(), 7, "five for four, two for one");
/// ```
#[must_use]
pub fn of(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len() / 4 * 5 + 5);
    for group in bytes.chunks(4) {
        let mut padded = [0; 4];
        for (to, from) in padded.iter_mut().zip(group) {
            *to = *from;
        }
        let number = u32::from_be_bytes(padded);
        let digits = COUNTS.iter().map(|count| number / count % 85);
        let letters = digits.filter_map(|digit| LETTERS.get(usize::try_from(digit).ok()?));
        text.extend(
            letters
                .take(group.len() + 1)
                .map(|&letter| char::from(letter)),
        );
    }
    text
}
