//! Fluids by the words a manual or a can has for them: which of them light. Words of the trade, common practice.

use halfcase::trade::caution::fuel_named;

#[test]
fn oil_stirred_into_petrol_makes_no_oil_of_it() {
    for mix in [
        "petrol/oil mix 50:1",
        "petrol with two-stroke oil",
        "two-stroke mix",
        "Two-stroke oil mix",
        "2-stroke 50:1",
        "Petrol and oil, 1:25",
        "oil in petrol, 4 %",
        "gasoline + oil",
        "petrol:oil",
        "petrol with two-stroke engine oil",
        "petrol mixed with engine oil",
        "premix of gasoline and oil",
        "fuel with oil",
        "gas/oil mix 50:1",
        "gas and oil",
        "oil mixed into gas",
        "petrol and synthetic engine oil",
        "oil and petrol engines",
        "petrol and additive engines, two-stroke oil",
        "oil in petrol",
        "2-stroke gas oil mix",
        "gas oil mixture 2-stroke",
        "gas oil mix 50:1",
        "gas oil 50:1",
        "two-stroke oil diluted with petrol, small engines",
        "oil thinned with petrol, both engines",
        "oil dissolved in petrol, both engines",
        "oil 1 part and petrol engines",
        "petrol, recoil starter",
        "petrol for a recoil-start engine",
        "spoilt petrol",
        "petrol for the boiler",
        "clean petrol, no oil",
        "petrol without oil",
        "unleaded petrol (no oil)",
        "petrol, two-stroke oil",
        "petrol, two-stroke engine oil",
        "petrol, 2 % two-stroke oil",
        "petrol-oil",
        "oil in the petrol",
        "petrol oil 25 : 1",
        "petrol, oil 1 to 50",
        "50/1 petrol oil",
        "two-cycle mix",
        "premix 50:1",
        "gas mix 50:1",
        "petrol engine oil mixed 50:1 with petrol",
        "diesel engine oil thinned with petrol",
        "petrol (two-stroke engine oil)",
        "petrol (engine oil 4 %)",
        "petrol - motor oil 40 ml",
        "petrol; engine oil",
        "petrol. Motor oil",
        "petrol – engine oil",
        "regular gas with two-stroke oil",
        "unleaded gas and oil",
        "pump gas and oil",
        "chainsaw gas and oil",
        "2-stroke gas and oil",
        "oil in the gas",
        "gas containing oil",
        "gas w/ oil",
        "saw gas 50:1",
        "gas premix",
        "premix",
        "petroil",
        "2T mix 1:25",
        "twostroke mix",
        "mix 1:25",
        "50 parts petrol engine oil 1 part",
        "petrol 2 % engine oil",
        "petrol 4 % motor oil",
    ] {
        assert_eq!(fuel_named(mix).map(|fuel| fuel.name), Some("petrol"), "{mix}");
    }
    for (words, name) in [
        ("diesel and oil", "diesel"),
        ("gas oil", "diesel"),
        ("gas-oil", "diesel"),
        ("gasoil", "diesel"),
        ("biodiesel", "diesel"),
        ("diesel (engine oil 10 %)", "diesel"),
        ("castor oil thinned with methanol, model engines", "methanol"),
        ("paraffin to degrease parts", "kerosene"),
    ] {
        assert_eq!(fuel_named(words).map(|fuel| fuel.name), Some(name), "{words}");
    }
}

#[test]
fn oil_named_after_an_engine_or_a_pump_is_no_fuel() {
    for oil in [
        "diesel engine oil",
        "petrol engine oil",
        "oil for diesel engines",
        "petrol and diesel engine oil",
        "petrol/diesel engine oil 10W-40",
        "two-stroke oil",
        "four-stroke engine oil 30",
        "fuel pump grease",
        "petrol resistant grease, mixed 1:2",
        "gear oil 90",
        "four-stroke oil mix",
        "oil mixed with additive",
        "coolant mix 50:50",
        "oil for petrol and gas engines",
        "oil for petrol and hybrid engines",
        "oil for hybrid and petrol cars",
        "oil for petrol and natural gas engines",
        "oil for petrol, diesel and dual-fuel engines",
        "petrol/LPG engine oil",
        "oil for use in petrol engines",
        "exhaust gas valve oil",
        "gasket oil",
        "gas and air",
        "oil/gas shock absorber",
        "nitrogen gas and oil",
        "oil for gas and steam turbines",
        "premixed coolant 50:50",
        "coolant mix 1:25",
        "gear oil, 2.5 l",
        "petrol engine oil (10W-40), 1.8 l",
        "oil for two-stroke and four-stroke petrol engines",
        "petrol 4-stroke engine oil",
        "petrol four stroke engine oil",
        "diesel injector oil",
        "synthetic blend oil for petrol engines",
    ] {
        assert_eq!(fuel_named(oil), None, "{oil}");
    }
    assert_eq!(fuel_named("fuel oil").map(|fuel| fuel.name), Some("petrol"));
}

const FUELS: [&str; 6] = ["petrol", "Gasoline", "diesel", "kerosene", "methanol", "fuel"];
const SIGNS: [&str; 6] = ["/", " + ", " & ", " and ", " with ", " plus "];
/// They part as well: "oil, petrol engines" is oil.
const PARTED: [&str; 5] = [", ", "; ", " – ", " - ", " ("];
const OILS: [&str; 6] = [
    "oil",
    "engine oil",
    "two-stroke oil",
    "synthetic engine oil",
    "oil 4 %",
    "Oil SAE 30",
];
const KINDS: [&str; 9] = [
    "petrol", "diesel", "gas", "LPG", "CNG", "hybrid", "turbo", "kerosene", "electric",
];
const ENGINES: [&str; 5] = ["engines", "motors", "cars", "vehicles", "petrol engines"];

/// Every fuel and oil of the lists, told together in either order and for whatever engines, is a fuel; oil for any
/// two kinds of engine is none.
#[test]
fn a_mix_is_fuel_whatever_it_is_for_and_engine_oil_is_not() {
    for (sign, oil, fuel) in PARTED
        .into_iter()
        .flat_map(|sign| OILS.map(|oil| (sign, oil)))
        .flat_map(|(sign, oil)| FUELS.map(|fuel| (sign, oil, fuel)))
    {
        for mix in [format!("{fuel}{sign}{oil}"), format!("{oil}{sign}{fuel}")] {
            assert!(fuel_named(&mix).is_some(), "{mix}");
        }
    }
    for sign in SIGNS {
        for oil in OILS {
            for fuel in FUELS {
                for mix in [format!("{fuel}{sign}{oil}"), format!("{oil}{sign}{fuel}")] {
                    assert!(fuel_named(&mix).is_some(), "{mix}");
                    for engines in ENGINES {
                        for mix in [
                            format!("{mix} for {engines}"),
                            format!("{mix} for petrol and gas {engines}"),
                            format!("for {engines}: {mix}"),
                            format!("{mix} {engines}"),
                            format!("{engines} {mix}"),
                        ] {
                            assert!(fuel_named(&mix).is_some(), "{mix}");
                        }
                    }
                }
            }
        }
    }
    for one in KINDS {
        for other in KINDS {
            for engines in &ENGINES[..4] {
                for sign in ["/", " + ", " & ", " and ", " or ", ", "] {
                    for oil in [
                        format!("oil for {one}{sign}{other} {engines}"),
                        format!("engine oil 10W-40, {one}{sign}{other} {engines}"),
                    ] {
                        assert_eq!(fuel_named(&oil), None, "{oil}");
                    }
                }
            }
        }
    }
}
