//! Which of the two copies of a thing is the newer.

/// The key of the newest copy of a thing, and of the other; `text` gives what stands under a key. One that is
/// gone or torn is the older.
pub fn copies(name: &str, text: impl Fn(&str) -> Option<String>) -> [String; 2] {
    let number = |key: &str| -> u64 {
        let text = text(key).unwrap_or_default();
        let number = text.split(' ').nth(1);
        number.and_then(|word| word.parse().ok()).unwrap_or(0)
    };
    let [a, b] = ["a", "b"].map(|slot| format!("halfcase/{name}/{slot}"));
    if number(&b) > number(&a) { [b, a] } else { [a, b] }
}
