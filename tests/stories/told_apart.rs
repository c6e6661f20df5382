//! What is told apart: contrast in both looks, states without their colours, forced colours, and everything
//! clear of the cut-out and the home bar.

use super::harness::*;
use super::instrument::PHONES;
use super::work::acknowledge;
use serde_json::{Value, json};

/// Words too faint to read, and keys whose edge can't be seen; empty where all is well. Words want 7:1 against
/// what they stand on, edges 3:1 (WCAG 2.2, 1.4.6 and 1.4.11); a key that can't be pressed is exempt there too.
pub const FAINT: &str = "
    const number = part => { const v = part / 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
    const light = rgb => 0.2126 * number(rgb[0]) + 0.7152 * number(rgb[1]) + 0.0722 * number(rgb[2]);
    const parts = words => { const all = words.match(/[\\d.]+/g).map(Number); return all.length < 4 ? [...all, 1] : all; };
    const ratio = (a, b) => { const [x, y] = [light(a), light(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
    const ground = thing => {
        for (let at = thing; at; at = at.parentElement) {
            const rgb = parts(getComputedStyle(at).backgroundColor);
            if (rgb[3] > 0.99) return rgb;
        }
        return [255, 255, 255, 1];
    };
    const seen = thing => thing.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) && thing.getClientRects().length > 0;
    const found = [], walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
        const words = walker.currentNode.data.trim(), holder = walker.currentNode.parentElement;
        if (!words || !seen(holder) || holder.closest('script, style, noscript, [disabled], .unseen, [inert]')) continue;
        const style = getComputedStyle(holder), inDrawing = holder.closest('svg');
        const ink = parts(inDrawing ? style.fill : style.color), here = ratio(ink, ground(holder));
        if (here < 7) found.push('\\\"' + words.slice(0, 30) + '\\\" has ' + here.toFixed(1) + ':1');
    }
    for (const key of document.querySelectorAll('button')) {
        if (!seen(key) || key.matches('[disabled], [inert] *')) continue;
        const style = getComputedStyle(key);
        if (!parseFloat(style.borderTopWidth)) continue;
        const own = parts(style.backgroundColor), under = ground(key.parentElement);
        const here = Math.max(ratio(parts(style.borderTopColor), under), own[3] > 0.99 ? ratio(own, under) : 1);
        if (here < 3) found.push('the edge of \\\"' + key.innerText.slice(0, 30) + '\\\" has ' + here.toFixed(1) + ':1');
    }
    return [...new Set(found)].slice(0, 8);";

/// Adds what is too faint on the screen that is shown, in both looks.
pub async fn faint(page: &Page, name: &str, wrong: &mut Vec<String>) -> Told {
    for dark in [false, true] {
        page.dark(dark).await?;
        let found = page.script(FAINT, Value::Null).await?;
        let look = if dark { "dark" } else { "light" };
        let lines = found.as_array().into_iter().flatten().filter_map(Value::as_str);
        wrong.extend(lines.map(|line| format!("{name}, {look}: {line}")));
    }
    page.dark(false).await
}

const SCREENS: [&str; 16] = [
    "#torque",
    "#bond",
    "#seat",
    "#lift",
    "#clocks",
    "#bench",
    "#measure",
    "#find",
    "#steps",
    "#plan",
    "#parts",
    "#record",
    "#jobs",
    "#history",
    "#cautions",
    "#paper",
];

#[test]
fn every_screen_can_be_read_in_both_looks() {
    story("told-faint", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        // With a clock on the strip, and something found.
        page.open_at("#step/4").await?;
        page.tap(button(has("Compound on"))).await?;
        page.enter("bore across:", &["6", "2"]).await.ok();
        for screen in SCREENS {
            page.open_at(screen).await?;
            faint(page, screen, &mut wrong).await?;
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

/// How something looks without its hue: what stands of it in a grey picture.
const GREY: &str = "
    const number = part => { const v = part / 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
    const grey = words => { const [r, g, b, a] = words.match(/[\\d.]+/g).map(Number);
        return a === 0 ? 'none' : Math.round(20 * (0.2126 * number(r) + 0.7152 * number(g) + 0.0722 * number(b)) ** 0.45); };
    return arguments[0].map(name => {
        const thing = document.querySelector(name);
        if (!thing) return name + ' is not there';
        const style = getComputedStyle(thing), value = thing.querySelector('.value');
        const shadow = style.boxShadow.replace(/rgba?\\([^)]*\\)/g, grey);
        return JSON.stringify([grey(style.backgroundColor), style.borderTopWidth, style.borderTopStyle, style.borderLeftWidth, shadow,
            style.clipPath, style.outlineStyle, style.backgroundImage === 'none', value ? getComputedStyle(value).textDecorationLine : '']);
    });";

/// These look different from each other, all of them, without their colours.
async fn told_apart(page: &Page, names: &[&str], look: &str) -> Told {
    let looks = page.script(GREY, json!(names)).await?;
    let looks = looks.as_array().cloned().unwrap_or_default();
    for (at, seen) in looks.iter().enumerate() {
        assert!(!looks[..at].contains(seen), "{}: {seen} twice, {look}", names[at]);
        assert!(!seen.to_string().contains("is not there"), "{seen}, {look}");
    }
    Ok(())
}

/// In both looks, and in colours that the user forces.
async fn told_apart_in_all(page: &Page, names: &[&str]) -> Told {
    page.dark(true).await?;
    told_apart(page, names, "dark").await?;
    page.forced_colours(true).await?;
    told_apart(page, names, "forced").await?;
    page.forced_colours(false).await?;
    told_apart(page, names, "light").await
}

#[test]
fn states_are_told_apart_without_their_colours() {
    story("told-apart", Screen::UPRIGHT, async |page| {
        page.open_at("#step/16").await?;
        page.tap(button(has(" 1 of 16, pass 1"))).await?;
        page.see(button(has(" 2 of 16, pass 1"))).await?;
        let bolts = [".bolt.tallied", ".bolt.next", ".bolt:not(.tallied, .next)"];
        told_apart_in_all(page, &bolts).await?;
        let screens = [
            ".edge button[aria-current=page]",
            ".edge button:not([aria-current=page])",
        ];
        told_apart_in_all(page, &screens).await?;
        page.open_at("#bench").await?;
        let chosen = [
            "[role=radio][aria-checked=true]",
            "[role=radio][aria-checked=false]",
        ];
        told_apart_in_all(page, &chosen).await?;

        // A number that must not be set, and one that may.
        let look = "const plate = document.querySelector('.torque > .plate'); return [getComputedStyle(plate).borderTopStyle, getComputedStyle(plate.querySelector('.value')).textDecorationLine, plate.querySelector('.says').innerText]";
        page.open_at("#torque").await?;
        page.tap_keys(&["clear", "9"]).await?;
        page.see_words("set on Small").await?;
        let may = page.script(look, Value::Null).await?;
        page.tap_keys(&["clear", "7", "0"]).await?;
        page.see_words("Small can’t set this").await?;
        let must_not = page.script(look, Value::Null).await?;
        assert_eq!([&may[0], &may[1]], [&json!("solid"), &json!("none")]);
        assert_eq!(
            [&must_not[0], &must_not[1]],
            [&json!("dashed"), &json!("line-through")]
        );
        Ok(())
    });
}

/// What lies under the cut-out, the rounded corners or the home bar.
const BEHIND: &str = "
    const [top, right, bottom, left] = arguments[0], found = [];
    const wide = document.documentElement.clientWidth, high = document.documentElement.clientHeight;
    const main = document.querySelector('main'), low = main.getBoundingClientRect().bottom;
    for (const key of document.querySelectorAll('button, input, h1, .plate, .stage')) {
        if (!key.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) || !key.getClientRects().length) continue;
        const box = key.getBoundingClientRect(), holder = key.closest('main, .sheet-body');
        if (holder && /auto|scroll/.test(getComputedStyle(holder).overflowY) && holder.scrollHeight > holder.clientHeight + 1) continue;
        const words = key.tagName.toLowerCase() + '.' + key.className + ' ' + (key.innerText || '').slice(0, 30).replace(/\\s+/g, ' ');
        if (box.left >= wide || box.width < 2) continue;
        // Under the names of the screens it is as little to be touched as under a bar.
        if (main.contains(key) && box.bottom > low + 0.5) found.push(words + ' ends at ' + Math.round(box.bottom) + ' of ' + Math.round(low));
        if (box.top < top - 0.5 || box.left < left - 0.5 || box.right > wide - right + 0.5 || box.bottom > high - bottom + 0.5)
            found.push(words + ' at ' + [box.left, box.top, box.right, box.bottom].map(Math.round).join(' '));
    }
    return found.slice(0, 6);";

#[test]
fn nothing_lies_behind_the_cut_out_or_the_home_bar() {
    story("told-insets", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        // Top, right, bottom, left: a cut-out above and a bar below; propped, both at the sides.
        let held = [
            (Screen::UPRIGHT, [47, 0, 34, 0]),
            (Screen::SIDEWAYS, [0, 47, 21, 47]),
            (PHONES[2], [0; 4]),
            (PHONES[3], [0; 4]),
        ];
        for route in [
            "#step/4", "#step/8", "#step/14", "#step/16", "#step/21", "#torque", "#bond", "#clocks",
        ] {
            page.open_at(route).await?;
            acknowledge(page).await?;
            for (screen, insets) in held {
                page.turn(screen).await?;
                page.insets(insets).await?;
                let found = page.script(BEHIND, json!(insets)).await?;
                let lines = found.as_array().into_iter().flatten().filter_map(Value::as_str);
                wrong.extend(lines.map(|line| format!("{route} at {}: {line}", screen.width)));
                if route == "#step/16" {
                    page.screenshot(&format!("insets-{}", screen.width)).await?;
                }
                page.insets([0; 4]).await?;
            }
            page.turn(Screen::UPRIGHT).await?;
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

/// Words on Torque that are cut, broken in two or lie over others.
const BROKEN: &str = "
    const wrong = [];
    for (const place of ['.tabs', '.verdict', '.keypad', '.entry'])
        if (!document.querySelector('.torque > ' + place)) wrong.push('no ' + place);
    for (const key of document.querySelectorAll('.torque > .tabs button, .torque > .verdict button:not(.said-lane), .torque > .keypad button'))
        if (key.checkVisibility()) {
            if (key.scrollWidth > key.clientWidth + 1 || key.scrollHeight > key.clientHeight + 1) wrong.push(key.innerText + ' is cut');
            if (key.clientWidth < 44) wrong.push(key.innerText + ' is ' + key.clientWidth + ' px wide');
            const text = document.createRange(); text.selectNodeContents(key);
            const lines = new Set([...text.getClientRects()].map(box => Math.round(box.top))).size;
            if (lines > key.innerText.trim().split(/\\s+/).length) wrong.push(key.innerText + ' is broken');
        }
    const entry = [...document.querySelectorAll('.torque > .entry > *')].filter(thing => thing.checkVisibility()).map(thing => {
        const text = document.createRange(); text.selectNodeContents(thing);
        const [box, words] = [thing.getBoundingClientRect(), text.getBoundingClientRect()];
        return [thing.matches('button') ? box.left : words.left, thing.matches('button') ? box.right : words.right]; });
    entry.sort((a, b) => a[0] - b[0]);
    entry.slice(1).forEach((box, at) => { if (box[0] < entry[at][1] - 1) wrong.push('the entry lies over what is beside it'); });
    return wrong;";

#[test]
fn no_word_on_torque_is_broken_or_lies_over_another() {
    story("told-broken", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        for phone in PHONES {
            page.turn(phone).await?;
            // Carried from a step: the way back, a wrench that can't set it, another that can.
            page.open_at("#torque/16").await?;
            page.see_words("20.0").await?;
            let found = page.script(BROKEN, Value::Null).await?;
            let lines = found.as_array().into_iter().flatten().filter_map(Value::as_str);
            wrong.extend(lines.map(|line| format!("{} × {}: {line}", phone.width, phone.height)));
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}
