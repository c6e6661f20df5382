//! Mutated and arbitrary tables: no panic; what is read is sound and reads back; what is refused names a line.

use super::readers::Dice;
use halfcase::job::fasteners;
use halfcase::job::sheet::{Sheet, StepId};

const CORPUS: &[&str] = &[
    "step,thread,count,torque,class,into\nCase bolts,M8,8,20 N·m,8.8,cast aluminium\n",
    "Qty;Torque;Size;Title;Unit\n4;7,2;M6;Baffle screws;foot pounds\n",
    "thread\ttorque (N·m)\tpasses\nM10x1\t18 ± 2\t30 60 100\nM6\t9–12\t\n",
    "\u{feff}thread,torque,bag,notes\r\n\"M6\",\"9 N·m\",7,\"say \"\"tight\"\"\nand again\"\r\n",
    "thread,torque,layout,count,new,compound,condition\n1/4-20,86 in·lb,two rows,4,x,medium,dry\n",
];

const ALPHABET: &str = ",;\t\"\n\r 0123456789.xM×·N·mftlb±–−/%abcdeé\u{feff}\u{0}\u{1f527}";

#[test]
fn no_table_at_all_breaks_the_reader() {
    let alphabet: Vec<char> = ALPHABET.chars().collect();
    let mut dice = Dice::new(0x1234_5678_9ABC_DEF1);
    CORPUS
        .iter()
        .for_each(|text| assert!(fasteners::read(text, StepId(1)).is_ok(), "{text}"));
    for _ in 0..super::readers::cases() {
        let text = dice.text_of(CORPUS, &alphabet);
        match fasteners::read(&text, StepId(1)) {
            Ok(steps) => {
                let sheet = Sheet::new("Fuzzed", steps);
                assert_eq!(sheet.check(), Ok(()), "{text:?}");
                assert_eq!(
                    Sheet::from_json(&sheet.to_json()).as_ref(),
                    Ok(&sheet),
                    "{text:?}"
                );
                let again = fasteners::read(&fasteners::write(&sheet), StepId(1));
                assert!(again.is_ok(), "{text:?}: {again:?}");
            }
            Err(error) => {
                let words = error.to_string();
                assert!(words.ends_with('.'), "{text:?}: {words}");
                assert!(words.chars().count() < 500, "{words}");
                assert!(words.starts_with("Line ") || words.starts_with("The "), "{words}");
            }
        }
    }
}

#[test]
fn a_very_long_table_is_answered_at_once() {
    for piece in ["\"", ",", ";\n", "\"\"", "a,b\n", "M6,9 N·m\n"] {
        let text = format!("thread,torque\n{}", piece.repeat(50_000));
        drop(fasteners::read(&text, StepId(1)));
    }
}
