//! Our own figures in the user's units. Checked against the definitions: °F = °C × 1.8 + 32 exactly;
//! 1 lb = 0.453 592 37 kg exactly; 1 lbf = 4.448 222 N (NIST SP 811, appendix B).

use halfcase::job::field::Kept;
use halfcase::job::figures::Figures;
use halfcase::job::settings::Settings;
use halfcase::trade::caution::{RULES, every};
use halfcase::trade::quantity::{MassUnit, TemperatureUnit};

const US: Figures = Figures {
    temperature: TemperatureUnit::Fahrenheit,
    mass: MassUnit::Pound,
};

#[test]
fn sentences_of_ours_are_said_in_the_users_units() {
    for (ours, said) in [
        ("warm it to 120 °C", "warm it to 248 °F"),
        ("and cool the part to −18 °C.", "and cool the part to 0 °F."),
        ("and cool the part to −78 °C;", "and cool the part to −108 °F;"),
        ("87.5 °C", "189.5 °F"),
        (
            "lets go at 230 to 320 °C: burns",
            "lets go at 446 to 608 °F: burns",
        ),
        ("between −40 and 60 °C (told)", "between −40 and 140 °F (told)"),
        ("(150 °C)", "(302 °F)"),
        ("press cold with up to 15.0 kN", "press cold with up to 3370 lbf"),
        ("0.4 to 15.0 kN", "89.9 to 3370 lbf"),
        ("1.0–2.0 kN", "225–450 lbf"),
        ("48 kg, of 80 kg.", "106 lb, of 176 lb."),
    ] {
        assert_eq!(US.said(ours), said);
        assert_eq!(Figures::default().said(ours), ours);
    }
}

#[test]
fn what_is_no_figure_of_ours_stays() {
    for words in [
        "set 0.995 kgf·m",
        "2 kg/cm²",
        "the manual’s 250 °F stands",
        "in °C as you like",
        "part °C",
        "no kg told",
        "between 0 and 5 000 kN: read its plate again.",
        "20 N·m on M8 × 30 mm",
    ] {
        assert_eq!(US.said(words), words);
    }
    // Each by its own setting.
    let pounds: Figures = MassUnit::Pound.into();
    assert_eq!(pounds.said("10 kg at 20 °C"), "22 lb at 20 °C");
}

/// A caution that speaks of a temperature speaks of it in the user's degrees.
#[test]
fn no_caution_is_left_in_other_units() {
    let mut spoken = 0;
    for caution in every() {
        for words in [caution.danger.as_str(), caution.act] {
            spoken += usize::from(words.contains("°C"));
            assert!(!US.said(words).contains("°C"), "{}: {words}", caution.id);
        }
    }
    assert!(spoken > 0 && !RULES.is_empty());
}

#[test]
fn a_field_is_read_and_shown_in_the_users_unit_and_kept_in_ours() {
    assert_eq!(Kept::Celsius.text(120.0, US), "248");
    assert_eq!(Kept::Celsius.to_kept(248.0, US), 120.0);
    assert_eq!(Kept::Celsius.symbol(US), "°F");
    assert_eq!(Kept::Celsius.text(120.0, Figures::default()), "120");
    assert_eq!(Kept::Millimetre.text(62.0, US), "62");
    for tenth in -400..3000 {
        let celsius = f64::from(tenth) / 10.0;
        let back = US.celsius(US.of_celsius(celsius));
        assert!((back - celsius).abs() < 1e-5, "{celsius}: {back}");
    }
}

#[test]
fn the_choice_is_kept_and_says_nothing_where_it_is_the_usual() {
    let mut settings = Settings::default();
    let usual = serde_json::to_string(&settings).unwrap();
    assert!(!usual.contains("temperature\":\"celsius"));
    settings.temperature = TemperatureUnit::Fahrenheit;
    let text = serde_json::to_string(&settings).unwrap();
    let back: Settings = serde_json::from_str(&text).unwrap();
    assert_eq!(back.figures().temperature, TemperatureUnit::Fahrenheit);
}
