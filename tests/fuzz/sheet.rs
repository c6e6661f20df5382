//! Mutated job sheets and backups: no panic; a sheet that is read keeps its rules and reads back the same.

use super::readers::Dice;
use halfcase::job::form;
use halfcase::job::gate::Ground;
use halfcase::job::kinds::lift::Hoist;
use halfcase::job::overview::overview;
use halfcase::job::parts;
use halfcase::job::progress::Progress;
use halfcase::job::sheet::{JobId, Sheet};
use halfcase::job::situation::{self, Around};
use halfcase::trade::cure::ShopHistory;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::Mass;
use uom::si::mass::kilogram;

pub const CORPUS: &[&str] = &[
    r#"{"version":1,"title":"Gearbox","machine":"tractor","steps":[{"id":1,"title":"Wash","work":{"clean":{"solvent":true}}},
       {"id":2,"title":"Case","waits_for":[1],"work":{"fasten":{"thread":"M8","strength":"8.8","torque":"20 ± 2 N·m","layout":{"paired_rows":{"pairs":4}},
       "passes":[{"share":0.5,"round":false},{"share":1.0,"round":true}],"condition":"oiled","reuse":"new","compound":{"kind":"washer"}}}}]}"#,
    r#"{"version":1,"title":"x","steps":[{"id":7,"title":"Bore","minutes":10,"parts":[{"name":"ring","count":2,"place":{"bag":"7"}}],
       "work":{"check":{"readings":[{"name":"drips","unit":"","most":0}],"bores":[{"name":"main","least_mm":61.9,"journal":{"name":"pin"}}]}}}]}"#,
    r#"{"version":1,"title":"x","bag":"none","steps":[{"id":1,"title":"Oil","weather":"dry","work":{"fill":{"fluid":"SAE 30","litres":1.1}}},
       {"id":2,"title":"Lift","work":{"lift":{"load":"engine","mass_kg":48,"way":{"sling":{"legs":2,"angle_deg":60}}}}}]}"#,
    r#"{"version":1,"title":"x","steps":[{"id":1,"title":"Bearing","work":{"seat":{"part":"bearing","hole":{"class":{"nominal_mm":62,"class":"N7"}},
       "shaft":{"bearing_outer":{"nominal_mm":62}},"housing":"cast_aluminium","part_material":"bearing_steel","length_mm":16,"boss_outside_mm":84,
       "wall_mm":8,"housing_limit_c":120,"part_limit_c":120}}}]}"#,
];

const ALPHABET: &str = "{}[]:,\" \n0123456789.-eE+truefalsnM×·NmxÅ\\u{}\u{0}\u{1f527}";

/// Everything the app works out of a sheet when it is opened.
fn open(sheet: &Sheet) {
    let progress = Progress::default();
    let shop = ShopHistory::default();
    let ground = Ground {
        job: JobId(1),
        sheet,
        progress: &progress,
        clocks: &[],
        shop: &shop,
        doubted_ms: 0,
    };
    let seen = overview(ground, Moment(0));
    assert_eq!(seen.states.len(), sheet.steps.len());
    parts::list(sheet, &progress);
    let hoist = Hoist {
        rating: Some(Mass::new::<kilogram>(500.0)),
        ..Hoist::default()
    };
    let around = Around {
        press_kn: Some(100.0),
        hoist,
        ..Around::default()
    };
    for step in &sheet.steps {
        situation::cautions_of(&step.work, &around);
        form::fields(sheet, step);
    }
}

#[test]
fn no_sheet_at_all_breaks_the_reader() {
    let alphabet: Vec<char> = ALPHABET.chars().collect();
    let mut dice = Dice::new(0x0F0F_1234_ABCD_0001);
    CORPUS
        .iter()
        .for_each(|text| open(&Sheet::from_json(text).unwrap()));
    for _ in 0..super::readers::cases() {
        let text = dice.text_of(CORPUS, &alphabet);
        match Sheet::from_json(&text) {
            Ok(sheet) => {
                let written = sheet.to_json();
                let again = Sheet::from_json(&written);
                assert_eq!(
                    again.map(|sheet| sheet.to_json()).as_ref(),
                    Ok(&written),
                    "{text}"
                );
                open(&sheet);
            }
            Err(error) => {
                let words = error.to_string();
                assert!(words.ends_with('.') && !words.is_empty(), "{words}");
            }
        }
    }
}
