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
    ] {
        assert_eq!(fuel_named(mix).map(|fuel| fuel.name), Some("petrol"), "{mix}");
    }
    assert_eq!(fuel_named("diesel and oil").map(|fuel| fuel.name), Some("diesel"));
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
    ] {
        assert_eq!(fuel_named(oil), None, "{oil}");
    }
    assert_eq!(fuel_named("fuel oil").map(|fuel| fuel.name), Some("petrol"));
}
