//! The two sizes: by fit class, by a bearing's tolerance, or as they were read.

use crate::job::kinds::Seat;
use crate::job::kinds::seat::fields::SIZES;
use crate::job::kinds::seat::source::{self, Kind, Side, class, follow_materials, of, set_class, set_kind};
use crate::parts::dynamic::{piece, text, whether};
use crate::parts::picker::picker;
use crate::parts::worked::Form;
use crate::trade::fit::Position;
use crate::trade::heat_plan::HoleIn;
use leptos::prelude::*;

/// Grades offered, as the tables hold them.
const GRADES: [&str; 7] = ["5", "6", "7", "8", "9", "10", "11"];
const KINDS: [&str; 4] = [
    Kind::ALL[0].words(),
    Kind::ALL[1].words(),
    Kind::ALL[2].words(),
    Kind::ALL[3].words(),
];

/// What the screen asks of the sizes.
pub fn sizes(form: Form<Seat>) -> AnyView {
    view! {
        <fieldset>
            <legend>"Sizes"</legend>
            {code(form)}
            <div class="two">
                {form
                    .choice(
                        "which goes where",
                        &["part into a case", "part onto a shaft"],
                        |s| usize::from(s.hole_in == HoleIn::Part),
                        |s, at| {
                            s.hole_in = if at == 0 { HoleIn::Housing } else { HoleIn::Part };
                            follow_materials(s);
                        },
                    )}
                {form
                    .choice(
                        "the hole",
                        &KINDS,
                        |s| kind_at(s, Side::Hole),
                        |s, at| set_kind(s, Side::Hole, Kind::ALL.get(at).copied().unwrap_or(Kind::Class)),
                    )}
                {class_pickers(form, Side::Hole)}
                {form
                    .choice(
                        "what goes in",
                        &KINDS,
                        |s| kind_at(s, Side::Shaft),
                        |s, at| set_kind(s, Side::Shaft, Kind::ALL.get(at).copied().unwrap_or(Kind::Class)),
                    )}
                {class_pickers(form, Side::Shaft)}
                {form.numbers(&SIZES)}
            </div>
        </fieldset>
    }
    .into_any()
}

/// Says why a pick was not taken.
fn told(form: Form<Seat>, changed: Result<(), String>) {
    if let Err(words) = changed {
        form.bench.say(words, false);
    }
}

fn kind_at(seat: &Seat, side: Side) -> usize {
    let kind = Kind::of(of(seat, side));
    Kind::ALL.iter().position(|other| *other == kind).unwrap_or(0)
}

/// Letter and grade of a side that goes by a class.
fn class_pickers(form: Form<Seat>, side: Side) -> AnyView {
    let (letter_name, grade_name) = match side {
        Side::Hole => ("hole’s letter", "hole’s grade"),
        Side::Shaft => ("letter of what goes in", "its grade"),
    };
    let now = move || form.work.with(|seat| seat.as_ref().and_then(|s| class(s, side)));
    let letter_of = move |position: Position| match side {
        Side::Hole => position.capital().to_owned(),
        Side::Shaft => position.capital().to_ascii_lowercase(),
    };
    let letters = Position::ALL.into_iter().map(letter_of).collect();
    let pick_letter = Callback::new(move |at: usize| {
        if let Some(position) = Position::ALL.get(at).copied() {
            let changed = form.bench.change_seat(form.step, letter_name, |seat| {
                set_class(seat, side, |class| class.position = position);
            });
            told(form, changed);
        }
    });
    let pick_grade = Callback::new(move |at: usize| {
        if let Some(grade) = GRADES.get(at).and_then(|grade| grade.parse().ok()) {
            let changed = form.bench.change_seat(form.step, grade_name, |seat| {
                set_class(seat, side, |class| class.grade = grade);
            });
            told(form, changed);
        }
    });
    let letter = text(move || now().map_or(String::new(), |class| letter_of(class.position)));
    let grade = text(move || now().map_or(String::new(), |class| class.grade.to_string()));
    view! {
        <div class="pair" hidden=whether(move || now().is_none())>
            {picker(letter_name, letter, letters, pick_letter)}
            {picker(grade_name, grade, GRADES.map(str::to_owned).to_vec(), pick_grade)}
        </div>
    }
    .into_any()
}

/// The fit as the drawing writes it, typed in words.
fn code(form: Form<Seat>) -> AnyView {
    let trouble = RwSignal::new(String::new());
    let take = move |event: leptos::ev::Event| {
        let typed = event_target_value(&event);
        if typed.trim().is_empty() {
            trouble.set(String::new());
            return;
        }
        let Some(mut seat) = form.work.get_untracked() else {
            return;
        };
        match source::set_code(&mut seat, &typed) {
            Ok(()) => {
                let changed = form.bench.change_seat(form.step, "fit", |kept| *kept = seat);
                trouble.set(changed.err().unwrap_or_default());
            }
            Err(error) => trouble.set(error.to_string()),
        }
    };
    view! {
        <label>
            "as the drawing writes it: 62 N7, 52 H7/p6"
            <input type="text" autocomplete="off" autocapitalize="off" spellcheck="false" on:change=take />
        </label>
        {piece(move || {
            let words = trouble.get();
            if words.is_empty() {
                ().into_any()
            } else {
                view! { <p class="trouble-line" role="alert">{words}</p> }.into_any()
            }
        })}
    }
    .into_any()
}
