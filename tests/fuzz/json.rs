//! Mutated JSON through our reader and serde_json's: both take it and agree, or both refuse it.

use super::readers::{Dice, cases};
use halfcase::job::json;
use halfcase::job::sheet::Sheet;
use serde_json::Value;

const CORPUS: &[&str] = &[
    r#"{"a":[1,-2,3.25,1e5,-0,0.5E-3],"b":{"c":null,"d":true,"e":false},"":""}"#,
    r#"["\"\\\/\b\f\n\r\t\u00e9\ud83d\udd27","½ \u0000",[[[{}]]],18446744073709551616,-9223372036854775809]"#,
    " {\n\t\"a\" : [ ] ,\r\n \"a\" : 12345678901234567890123 } ",
    "1.7976931348623157e308",
    "-12",
    "\"words\"",
];

const ALPHABET: &str = "{}[]:,\" \n\t0123456789.-+eEaturlfsn\\bdD8/\u{0}\u{1f}½\u{1f527}";

fn check(text: &str) {
    let ours = json::read::<Value>(text);
    assert_eq!(
        ours.as_ref().ok(),
        serde_json::from_str(text).ok().as_ref(),
        "{text:?}"
    );
    if let Err(error) = ours {
        let words = error.to_string();
        assert!(words.starts_with("line "), "{text:?}: {words}");
    }
    assert_eq!(
        json::read::<Sheet>(text).ok(),
        serde_json::from_str(text).ok(),
        "{text:?}"
    );
}

#[test]
fn both_readers_take_the_same_texts() {
    let alphabet: Vec<char> = ALPHABET.chars().collect();
    let mut dice = Dice::new(0x0ABC_5678_1234_0003);
    let corpora = [CORPUS, super::sheet::CORPUS];
    corpora.iter().copied().flatten().for_each(|text| check(text));
    for _ in 0..cases() {
        for corpus in corpora {
            check(&dice.text_of(corpus, &alphabet));
        }
    }
}

#[test]
fn a_very_long_text_is_answered_at_once() {
    for piece in [
        "[", "{", "[]", "9", "\"", "\\", "{\"a\":", "\"\\u", "-", "[1,", " ",
    ] {
        check(&piece.repeat(100_000));
    }
}
