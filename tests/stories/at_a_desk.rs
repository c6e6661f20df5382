//! The wide layout: steps, form and the step as the phone shows it, beside each other and whole.

use super::harness::*;
use serde_json::{Value, json};

const DESKS: [Screen; 3] = [
    Screen {
        width: 1000,
        height: 700,
    },
    Screen {
        width: 1280,
        height: 800,
    },
    Screen {
        width: 1600,
        height: 1000,
    },
];

/// What is wider than 480 px of all that is touched or typed into, and what lies off the window.
const WRONG: &str = "
    const wrong = [], wide = document.documentElement.clientWidth;
    // The five screens' keys and one more at least: else this looks at nothing.
    if (document.querySelectorAll('button').length < 6) wrong.push('no keys');
    for (const thing of document.querySelectorAll('button, input, select, textarea, summary, [role=button]')) {
        const box = thing.getBoundingClientRect();
        if (!thing.checkVisibility() || !box.width || thing.matches('.far, .as-shown *')) continue;
        const name = thing.tagName.toLowerCase() + '.' + thing.className + ' “' + (thing.innerText || thing.ariaLabel || '').slice(0, 30) + '”';
        if (box.width > 480.5) wrong.push(name + ' is ' + Math.round(box.width) + ' px wide');
        if (box.right > wide + 1 || box.left < -1) wrong.push(name + ' is off the window');
    }
    for (const column of document.querySelectorAll('.beside, main, .as-shown')) {
        const box = column.getBoundingClientRect();
        if (box.right > wide + 1) wrong.push(column.className + ' ends at ' + box.right);
        if (column.scrollWidth > column.clientWidth + 1) wrong.push(column.tagName + '.' + column.className + ' holds ' + column.scrollWidth + ' px in ' + column.clientWidth);
    }
    return [...new Set(wrong)].slice(0, 6);";

#[test]
fn no_control_at_a_desk_is_wider_than_480_px() {
    story("desk-width", DESKS[1], async |page| {
        let screens = [
            "torque",
            "bond",
            "seat",
            "lift",
            "clocks",
            "bench",
            "measure",
            "find",
            "steps",
            "plan",
            "parts",
            "record",
            "jobs",
            "history",
            "cautions",
            "paper",
            "end",
            "step/1",
            "step/2",
            "step/3",
            "step/4",
            "step/12",
            "step/14",
            "step/16",
            "step/17",
            "step/18",
            "step/25",
            "step/27",
            "plan/1",
            "plan/3",
            "plan/4",
            "plan/12",
            "plan/16",
            "plan/18",
            "plan/25",
            "torque/16",
            "bond/17",
            "seat/3",
            "lift/16",
        ];
        let mut wrong = Vec::new();
        let mut look = async |page: &Page, name: &str| {
            let found = page.script(WRONG, Value::Null).await?;
            let lines = found.as_array().into_iter().flatten().filter_map(Value::as_str);
            wrong.extend(lines.map(|line| format!("{name}: {line}")));
            Told::Ok(())
        };
        for desk in DESKS {
            page.turn(desk).await?;
            for screen in screens {
                page.open_at(&format!("#{screen}")).await?;
                look(page, &format!("{screen} at {}", desk.width)).await?;
            }
            // A sheet, and a keypad in one.
            page.open_at("#step/2").await?;
            page.tap(button(has("all ›"))).await?;
            look(page, &format!("all of a step at {}", desk.width)).await?;
            page.open_at("#bench").await?;
            page.tap(button(has("shop temperature now"))).await?;
            page.see(button("use")).await?;
            look(page, &format!("a keypad at {}", desk.width)).await?;
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        // The step as the phone will show it, whole, beside its form; the steps too where there is room.
        for (desk, columns) in DESKS.into_iter().zip([2, 3, 3]) {
            page.turn(desk).await?;
            page.open_at("#plan/3").await?;
            let shown = "return [document.querySelector('.as-shown').getBoundingClientRect().width,
                [...document.querySelectorAll('.beside, main, .as-shown')].filter(column => column.checkVisibility()).length]";
            assert_eq!(
                page.script(shown, Value::Null).await?,
                json!([390, columns]),
                "{desk:?}"
            );
        }
        page.screenshot("desk-plan").await
    });
}
