//! The rules of the instrument, on every step of both examples: nothing moves, nothing scrolls, what is needed
//! is large, states are told apart by more than colour, and a keyboard does it all.

use super::harness::*;
use super::told_apart::faint;
use super::work::{acknowledge, sheet, whole};
use serde_json::{Value, json};

/// The sizes that nothing on the bench scrolls at.
pub const PHONES: [Screen; 5] = [
    Screen::UPRIGHT,
    Screen::SIDEWAYS,
    Screen {
        width: 360,
        height: 640,
    },
    Screen {
        width: 667,
        height: 375,
    },
    Screen {
        width: 820,
        height: 1180,
    },
];

/// Presses of the big key tried on a step: each shows another of its states.
const STATES: usize = 4;

/// What of a step's screen scrolls, is cut, or is too small; empty where all is well. What found no place is
/// left out whole, past the stage's right edge.
const WRONG: &str = "
    const wrong = [], step = document.querySelector('.step');
    if (!step) return ['no step'];
    const called = thing => thing.tagName.toLowerCase() + '.' + thing.className + ' \"' + (thing.innerText || '').replace(/\\s+/g, ' ').slice(0, 40) + '\"';
    const seen = thing => thing.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) && thing.getClientRects().length > 0;
    for (const thing of document.querySelectorAll('main, main *')) {
        if (seen(thing) && /auto|scroll/.test(getComputedStyle(thing).overflowY) && thing.scrollHeight > thing.clientHeight + 1)
            wrong.push(called(thing) + ' scrolls: ' + thing.scrollHeight + ' in ' + thing.clientHeight);
    }
    const stage = step.querySelector('.stage'), edge = stage.getBoundingClientRect();
    for (const thing of stage.querySelectorAll('*')) {
        if (!seen(thing) || thing.closest('svg') && thing.tagName !== 'svg' || thing.closest('.unseen')) continue;
        const box = thing.getBoundingClientRect();
        if (box.width < 2 || box.height < 2 || box.left >= edge.right - 13) continue;
        if (box.bottom > edge.bottom + 1 || box.right > edge.right + 1 || box.top < edge.top - 1)
            wrong.push(called(thing) + ' is cut');
        // Words that end in the middle of a line, with no way to tell.
        else if (thing.scrollHeight > thing.clientHeight + 2 && !/visible/.test(getComputedStyle(thing).overflowY))
            wrong.push(called(thing) + ' holds ' + thing.scrollHeight + ' px in ' + thing.clientHeight);
        else if (thing.matches('p') && thing.scrollHeight > thing.clientHeight + 12 && getComputedStyle(thing).maxHeight !== 'none' && thing.parentElement === stage)
            wrong.push(called(thing) + ' runs over its place');
    }
    // What the step can't be done without is never what is left out.
    const inSight = thing => seen(thing) && thing.getBoundingClientRect().left < edge.right - 13;
    const plates = [...stage.querySelectorAll('.plate')].filter(seen);
    if (plates.length && !plates.some(inSight)) wrong.push('no plate in sight');
    for (const thing of stage.querySelectorAll('.asking > .field, .asking .tiles, .finding, .trouble-line, .caution, .large, .bolts:not(.single)'))
        if (seen(thing) && !inSight(thing)) wrong.push(called(thing) + ' is left out');
    const wide = document.documentElement.clientWidth, high = document.documentElement.clientHeight;
    for (const thing of document.querySelectorAll('.step > .head *, .lanes *, .work-keys *, .edge *, .strip *')) {
        const box = thing.getBoundingClientRect();
        if (seen(thing) && box.width > 2 && (box.right > wide + 1 || box.bottom > high + 1)) wrong.push(called(thing) + ' is off the screen');
    }
    for (const key of step.querySelectorAll('.work-keys > button')) {
        const box = key.getBoundingClientRect();
        if (box.width < 119.5 || box.height < 87.5) wrong.push(called(key) + ' is ' + box.width + ' × ' + box.height);
        if (key.scrollHeight > key.clientHeight + 2) wrong.push(called(key) + ' holds more than it shows');
    }
    const size = thing => parseFloat(getComputedStyle(thing).fontSize);
    const least = high < 560 || wide < 390 ? 80 : 120;
    for (const number of stage.querySelectorAll('.plate .number .value'))
        if (seen(number) && number.innerText.length < 4 && size(number) < least - 1) wrong.push('the number is ' + size(number) + ' px');
    // Words that are needed mid-step: 28 px, on a small phone that lies on its side 25. Not the figures of a scale, a
    // unit beside its number, a bolt's figure (its own rule is below) or a drawing's names. Smaller, by their letters and
    // never below 20 px, are a title, a doubt, a caution in its lane and a STOP that would not stand whole; the wrench's
    // range on a phone that lies on its side; and on the small one the lane's two lines.
    const small = wide > high && wide <= 704, needed = small ? 25 : 28;
    const sidelines = '.ruler, .mark-names, .unit, .bolt, .front, .field > button > .quiet';
    const leastOf = holder => {
        const letters = +holder.closest('[style*=letters]')?.style.getPropertyValue('--letters');
        if (holder.closest('h1') && letters > 17) return 20;
        if (holder.closest('.doubt') && letters > 40) return 20;
        if (holder.closest('.wrench-line.adapted')) return 20;
        if (holder.closest('.lane')) return letters > 20 ? 20 : small ? 22 : needed;
        if (holder.closest('.caution.stop') && letters > 160) return 22;
        return wide > high && high < 560 && holder.closest('.wrench-line') ? small ? 20 : 22 : needed;
    };
    for (const place of [stage, ...step.querySelectorAll('.head h1, .lane .words')]) {
        const words = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
        while (words.nextNode()) {
            const holder = words.currentNode.parentElement;
            if (!words.currentNode.data.trim() || !seen(holder) || holder.closest('svg, .unseen') || !inSight(holder)) continue;
            // A scale's names and whatever else is beside the work: the least there is.
            if (size(holder) < 17.99) wrong.push(called(holder) + ' is below the least: ' + size(holder) + ' px');
            if (holder.closest(sidelines)) continue;
            if (size(holder) < leastOf(holder) - 0.01) wrong.push(called(holder) + ' is ' + size(holder) + ' px');
        }
    }
    // Of a wrench only the name may give way.
    for (const range of step.querySelectorAll('.wrench-line > :not(:first-child)'))
        if (seen(range) && range.scrollWidth > range.clientWidth + 1) wrong.push(called(range) + ' is cut');
    // A title stands whole, and so does a caution in its lane.
    for (const words of step.querySelectorAll('.head h1, .lane .words'))
        if (words.scrollHeight > words.clientHeight + 2 && !/^(CHECK|OPEN)/.test(words.innerText)) wrong.push(called(words) + ' is cut');
    for (const bolt of stage.querySelectorAll('.bolt')) if (seen(bolt) && size(bolt) < 20) wrong.push('a bolt’s figure is ' + size(bolt) + ' px');
    return [...new Set(wrong)].slice(0, 8);";

/// Where the keys of a step are.
const PLACES: &str = "
    return ['.work-keys .first', '.work-keys .undo', '.head .side-key:first-child', '.head .side-key:last-child', '.lane', '.edge button']
        .map(name => { const box = document.querySelector(name).getBoundingClientRect();
            return name + ' ' + [box.x, box.y, box.width, box.height].map(Math.round).join(' '); });";

/// Steps of the job that is open.
async fn steps(page: &Page) -> Told<usize> {
    let count = "return +document.querySelector('.title .quiet').innerText.match(/\\/(\\d+)/)[1]";
    Ok(page
        .script(count, Value::Null)
        .await?
        .as_u64()
        .unwrap_or_default() as usize)
}

/// Goes through every step of the job by the arrow, and through its states by the big key; says what is wrong.
async fn walk(page: &mut Page, wrong: &mut Vec<String>) -> Told {
    page.turn(Screen::UPRIGHT).await?;
    let mut places: Vec<Option<Value>> = vec![None; PHONES.len()];
    let count = steps(page).await?;
    for at in 1..=count {
        for _ in 0..STATES {
            let (title, key) = told(page).await?;
            faint(page, &format!("{at} {title} ({key})"), wrong).await?;
            for (phone, first) in PHONES.into_iter().zip(&mut places) {
                page.turn(phone).await?;
                let name = format!("{at} {title} ({key}) at {} × {}", phone.width, phone.height);
                let both = format!(
                    "return [(() => {{ {WRONG} }})(), document.querySelector('.step') && (() => {{ {PLACES} }})()]"
                );
                let found = page.script(&both, Value::Null).await?;
                for words in found[0].as_array().into_iter().flatten() {
                    wrong.push(format!("{name}: {}", words.as_str().unwrap_or_default()));
                }
                let here = &found[1];
                let first = first.get_or_insert_with(|| here.clone());
                if first != here {
                    wrong.push(format!("{name}: keys moved from {first} to {here}"));
                }
            }
            page.turn(Screen::UPRIGHT).await?;
            if key.starts_with("Next step") || key.starts_with("Shut") || key.starts_with("Read") {
                break;
            }
            // Past the rest of a knuckle that bounces.
            tokio::time::sleep(std::time::Duration::from_millis(380)).await;
            let press = "document.querySelector('.work-keys .first').click()";
            page.script(press, Value::Null).await?;
            // The big key must not lead away from the step.
            if told(page).await?.0 != title {
                break;
            }
        }
        page.open_at(&format!("#step/{}", at + 1)).await.ok();
        if at < count {
            page.see(button("previous step")).await?;
        }
    }
    Ok(())
}

/// The step's title and what its big key says.
async fn told(page: &Page) -> Told<(String, String)> {
    let words = "return [document.querySelector('.step h1').innerText, document.querySelector('.work-keys .first')?.innerText ?? '']";
    let words = page.script(words, Value::Null).await?;
    let word = |at: usize| words[at].as_str().unwrap_or_default().replace('\n', " ");
    Ok((word(0), word(1)))
}

#[test]
fn no_step_scrolls_cuts_or_moves_its_keys() {
    story("instrument-steps", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/1").await?;
        walk(page, &mut wrong).await?;
        page.open_at("#jobs").await?;
        page.tap(button("from the example in inches")).await?;
        page.open_at("#step/1").await?;
        walk(page, &mut wrong).await?;
        match wrong.is_empty() {
            true => Ok(()),
            false => Err(Failure::new(wrong.join("\n  "))),
        }
    });
}

#[test]
fn blind_touches_type_what_was_meant() {
    story("instrument-blind", Screen::UPRIGHT, async |page| {
        let mut seed = 20_261_128_u64;
        let mut below = move |end: u64| {
            seed = seed
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (seed >> 33) % end
        };
        for phone in [PHONES[0], PHONES[1], PHONES[2], PHONES[3]] {
            page.turn(phone).await?;
            page.open_at("#torque").await?;
            // The keys' first places, looked at once.
            let mut places = Vec::new();
            for digit in 0..10 {
                places.push(page.place_of(button(digit.to_string().as_str())).await?);
            }
            let clear = page.place_of(button("clear")).await?;
            for _ in 0..15 {
                let meant: Vec<usize> = (0..1 + below(4)).map(|_| below(10) as usize).collect();
                page.touch(clear.x, clear.y).await?;
                for digit in &meant {
                    page.touch(places[*digit].x, places[*digit].y).await?;
                }
                let words: String = meant.iter().map(usize::to_string).collect();
                let typed = "return document.querySelector('.torque .typed').innerText.split(' ')[0]";
                page.until(
                    &format!("{words} typed at {} × {}", phone.width, phone.height),
                    async || Ok((page.script(typed, Value::Null).await? == json!(words)).then_some(())),
                )
                .await?;
            }
        }
        Ok(())
    });
}

/// Column and row of each digit, the point and “back” on the keypad that is shown.
const LAID: &str = "
    const keys = [...document.querySelectorAll('.keypad [data-key]')].filter(key => /^[0-9.←]$/.test(key.dataset.key));
    const at = side => [...new Set(keys.map(key => Math.round(key.getBoundingClientRect()[side])))].sort((a, b) => a - b);
    const [columns, rows] = [at('left'), at('top')];
    return Object.fromEntries(keys.map(key => { const box = key.getBoundingClientRect();
        return [key.dataset.key, columns.indexOf(Math.round(box.left)) + ' ' + rows.indexOf(Math.round(box.top))]; }));";

#[test]
fn both_keypads_have_their_digits_in_one_place() {
    story("instrument-keypads", Screen::UPRIGHT, async |page| {
        for phone in PHONES {
            page.turn(phone).await?;
            page.open_at("#torque").await?;
            let torque = page.script(LAID, Value::Null).await?;
            assert_eq!(torque.as_object().map(serde_json::Map::len), Some(12));
            // A reading, which has no minus, and a measure of both signs.
            page.open_at("#step/2").await?;
            acknowledge(page).await?;
            page.tap(button(has("Read bore across"))).await?;
            page.see(button("use")).await?;
            assert_eq!(page.script(LAID, Value::Null).await?, torque, "{phone:?}");
            page.open_at("#bench").await?;
            page.tap(button(has("shop temperature now"))).await?;
            page.see(button("minus")).await?;
            page.see(button("use")).await?;
            assert_eq!(page.script(LAID, Value::Null).await?, torque, "{phone:?}");
        }
        Ok(())
    });
}

#[test]
fn a_stop_is_told_from_a_care_by_its_shape() {
    story("instrument-shapes", Screen::UPRIGHT, async |page| {
        page.open_at("#step/14").await?;
        page.see(button("I have read it")).await?;
        let shape = "const style = getComputedStyle(document.querySelector('.stage .caution.stop')); return [style.clipPath !== 'none', style.borderTopWidth]";
        assert_eq!(page.script(shape, Value::Null).await?, json!([true, "0px"]));
        page.open_at("#step/1").await?;
        page.see(button(has("all ›"))).await?;
        let lane = "const style = getComputedStyle(document.querySelector('.lane.care')); return [style.clipPath, style.borderLeftWidth, document.querySelector('.lane .level').innerText]";
        assert_eq!(
            page.script(lane, Value::Null).await?,
            json!(["none", "10px", "CARE"])
        );
        Ok(())
    });
}

/// Puts the longest STOP there is in the place of the one that is shown; where it ends past its stage.
const LONGEST: &str = "
    const stop = document.querySelector('.stage .caution.stop'), words = stop.querySelector('p');
    const long = arguments[0];
    words.innerHTML = '<span class=level>STOP</span> <strong>' + long[0] + '</strong> ' + long[1];
    stop.style.setProperty('--letters', 4 + long[0].length + long[1].length);
    const over = stop.getBoundingClientRect().bottom - document.querySelector('.stage').getBoundingClientRect().bottom;
    const cut = words.getBoundingClientRect().bottom - stop.getBoundingClientRect().bottom;
    return over > 1 || cut > 0 ? Math.round(over) + ' px over, ' + Math.round(cut) + ' px cut' : '';";

#[test]
fn the_longest_stop_stands_whole() {
    story("instrument-longest", Screen::UPRIGHT, async |page| {
        let stops = halfcase::trade::caution::every().into_iter();
        let longest =
            stops.max_by_key(|caution| caution.danger.chars().count() + caution.act.chars().count());
        let Some(longest) = longest else {
            return Err(Failure::new("no caution"));
        };
        // With its numbers, which the list of all leaves out.
        let danger = format!("{} Flash point 200 °C, oil at 195 °C.", longest.danger);
        page.open_at("#step/14").await?;
        let mut wrong = Vec::new();
        for phone in PHONES {
            page.turn(phone).await?;
            let over = page.script(LONGEST, json!([danger, longest.act])).await?;
            if over != json!("") {
                wrong.push(format!("{} × {}: {over}", phone.width, phone.height));
            }
        }
        assert!(
            wrong.is_empty(),
            "{danger} {}\n  {}",
            longest.act,
            wrong.join("\n  ")
        );
        Ok(())
    });
}

/// The guard's words on a fastening: a STOP, one that grew by its figures, and the longest.
const DOUBTS: [&str; 3] = [
    "✕ That would stretch M6 8.8 past its limit. Did the manual say 7.2 ft·lb?",
    "✕ That would stretch M12×1.25 10.9 past its limit. Did the manual say 117.5 in·lb?",
    "That would hardly load an M8. What is it? A plug, a banjo bolt, a stud driven in, a shaft nut is given less.",
];

/// What of a stage's doubt is cut, and what it pushes out.
const DOUBTED: &str = "
    const stage = document.querySelector('.stage.split'), wrong = [], edge = stage.getBoundingClientRect();
    const [words, letters] = arguments[0];
    let doubt = stage.querySelector('.doubt');
    if (!doubt) {
        doubt = document.createElement('p');
        doubt.className = 'doubt stop';
        stage.querySelector('.focal').after(doubt);
    }
    doubt.innerText = words;
    doubt.style.setProperty('--letters', letters);
    const box = doubt.getBoundingClientRect(), size = parseFloat(getComputedStyle(doubt).fontSize);
    if (doubt.scrollHeight > doubt.clientHeight + 2) wrong.push('holds ' + doubt.scrollHeight + ' px in ' + doubt.clientHeight);
    if (box.bottom > edge.bottom + 1) wrong.push('ends below its stage');
    if (box.top < stage.querySelector('.plate').getBoundingClientRect().bottom - 1 && box.left < stage.querySelector('.plate').getBoundingClientRect().right) wrong.push('lies over the number');
    if (size < 20) wrong.push(size + ' px');
    const bolts = stage.querySelector('.bolts');
    if (bolts.checkVisibility() && bolts.clientHeight < 60) wrong.push('leaves ' + bolts.clientHeight + ' px to the bolts');
    return wrong;";

#[test]
fn a_doubt_stands_whole_to_the_reading_that_helps() {
    story("instrument-doubt", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        for words in DOUBTS {
            for phone in PHONES {
                page.turn(phone).await?;
                let found = page.script(DOUBTED, json!([words, widths(words)])).await?;
                for one in found.as_array().into_iter().flatten() {
                    wrong.push(format!("{} × {}: {one} ({words})", phone.width, phone.height));
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

/// As the page counts a text's letters.
fn widths(text: &str) -> usize {
    let wide = text.chars().filter(|c| c.is_ascii_uppercase() || !c.is_ascii());
    text.chars().count() + wide.count() / 4
}

/// Puts words into the lane as the page does; what of them is cut or small.
const IN_LANE: &str = "
    const [level, read, words, letters, more] = arguments[0], lane = document.querySelector('.lane');
    lane.className = 'lane care' + (level === 'STOP' ? ' stop' : '') + (read ? ' read' : '');
    lane.style.setProperty('--letters', letters);
    const place = lane.querySelector('.words'), all = lane.querySelector('.all');
    place.innerHTML = '<span class=level>' + level + '</span> ' + words;
    all.firstChild.data = more;
    const wrong = [], size = parseFloat(getComputedStyle(place).fontSize);
    if (place.scrollHeight > place.clientHeight + 2 || place.scrollWidth > place.clientWidth + 1) wrong.push('is cut at ' + size + ' px');
    if (size < 20) wrong.push(size + ' px');
    if (all.getBoundingClientRect().right > lane.getBoundingClientRect().right) wrong.push('+2 is cut');
    if (place.getBoundingClientRect().height > lane.clientHeight + 4) wrong.push('is higher than its lane');
    return wrong;";

#[test]
fn each_caution_stands_whole_in_the_lane() {
    story("instrument-lane", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        for phone in PHONES {
            page.turn(phone).await?;
            for rule in halfcase::trade::caution::RULES {
                for (level, read) in [("STOP", false), ("STOP", true), ("CARE", false)] {
                    let letters = level.len() + widths(rule.short);
                    let words = json!([level, read, rule.short, letters, "+2"]);
                    let found = page.script(IN_LANE, words).await?;
                    for one in found.as_array().into_iter().flatten() {
                        wrong.push(format!(
                            "{} × {}: {level} {read} {} {one}",
                            phone.width, phone.height, rule.short
                        ));
                    }
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

/// Titles in capitals, of one long word, and of fifty letters.
const TITLES: [&str; 4] = [
    "MAINSHAFT WOODRUFF KEY AND NUT",
    "Kurbelgehäuse schließen und Schrauben anziehen",
    "Main bearing of the output shaft into its housings",
    "Bearing retainer screws",
];

/// Puts a title into the head as the page does; what of it is cut or small.
const IN_HEAD: &str = "
    const h1 = document.querySelector('.step h1'), head = document.querySelector('.step > .head').getBoundingClientRect();
    const [title, letters] = arguments[0];
    h1.innerText = title;
    h1.className = title.length > 17 ? 'long' : '';
    h1.style.setProperty('--letters', letters);
    const wrong = [], size = parseFloat(getComputedStyle(h1).fontSize), box = h1.getBoundingClientRect();
    if (h1.scrollHeight > h1.clientHeight + 2 || h1.scrollWidth > h1.clientWidth + 1) wrong.push('is cut at ' + size + ' px');
    if (box.bottom > head.bottom + 1 || box.top < head.top - 1) wrong.push('is higher than the head at ' + size + ' px');
    if (size < 20) wrong.push(size + ' px');
    if (!document.querySelector('.title .quiet').checkVisibility()) wrong.push('the count is gone');
    return wrong;";

#[test]
fn larger_text_cuts_neither_title_nor_lane() {
    story("instrument-larger", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        // A rem of 18 px, a quarter larger.
        let larger = "document.documentElement.style.fontSize = '22.5px'";
        page.script(larger, Value::Null).await?;
        let (title, short) = ("Bearing retainer screws", "exhaust gas; engine tied down");
        for phone in PHONES {
            page.turn(phone).await?;
            let head = page.script(IN_HEAD, json!([title, widths(title)])).await?;
            let lane = json!(["STOP", true, short, 4 + widths(short), "+2"]);
            let lane = page.script(IN_LANE, lane).await?;
            for one in [head, lane].iter().filter_map(Value::as_array).flatten() {
                wrong.push(format!("{} × {}: {one}", phone.width, phone.height));
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

#[test]
fn a_title_stands_whole_with_its_count() {
    story("instrument-title", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        for phone in PHONES {
            page.turn(phone).await?;
            for title in TITLES {
                let found = page.script(IN_HEAD, json!([title, widths(title)])).await?;
                for one in found.as_array().into_iter().flatten() {
                    wrong.push(format!("{} × {}: {title} {one}", phone.width, phone.height));
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

/// Puts a wrench on the key, if one is given, its number allowing for an adapter or not; what but its name is cut.
const ON_KEY: &str = "
    const key = document.querySelector('.wrench-line'), parts = [...key.children];
    const words = arguments[0], wrong = [];
    if (words) {
        key.className = 'wrench-line' + (words[1] ? ' adapted' : '');
        words.forEach((word, at) => { parts[at].innerText = word; });
    }
    const box = key.getBoundingClientRect();
    for (const part of parts.slice(1)) {
        const own = part.getBoundingClientRect();
        if (part.innerText && (own.width < 2 || own.right > box.right + 1 || own.bottom > box.bottom + 1 || own.top < box.top - 1 || part.scrollWidth > part.clientWidth + 1 && part.clientWidth))
            wrong.push(part.innerText + ' is cut: ' + Math.round(own.right) + ' of ' + Math.round(box.right));
    }
    if (parseFloat(getComputedStyle(parts[2]).fontSize) < 20) wrong.push(getComputedStyle(parts[2]).fontSize);
    return wrong;";

#[test]
fn an_adapter_that_is_on_is_said_on_the_key() {
    story("instrument-adapter", Screen::UPRIGHT, async |page| {
        page.open_at("#step/18").await?;
        page.tap(button(has("Use Large"))).await?;
        whole(page).await?;
        page.tap(button(has("on Torque"))).await?;
        sheet(page, "extras").await?;
        page.tap(button("put one on")).await?;
        page.enter("E, drive to bolt", &["1", "0", "0"]).await?;
        page.open_at("#step/18").await?;
        page.see(button(has("+ adapter"))).await?;
        let mut wrong = Vec::new();
        for phone in PHONES {
            page.turn(phone).await?;
            for script in [ON_KEY, WRONG] {
                let found = page.script(script, Value::Null).await?;
                for one in found.as_array().into_iter().flatten() {
                    wrong.push(format!("{} × {}: {one}", phone.width, phone.height));
                }
            }
            let shown = "return document.querySelector('.wrench-line.adapted > :nth-child(2)').innerText";
            assert_eq!(page.script(shown, Value::Null).await?, json!("+ adapter"));
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

#[test]
fn a_wrenchs_range_and_adapter_stand_whole() {
    story("instrument-wrench", Screen::UPRIGHT, async |page| {
        let mut wrong = Vec::new();
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        for phone in PHONES {
            page.turn(phone).await?;
            for name in ["Großer Schlüssel", "Large", "The long one of the other bench"] {
                for adapter in ["", "+ adapter"] {
                    let words = json!([name, adapter, "40.7–203.4 N·m"]);
                    let found = page.script(ON_KEY, words).await?;
                    for one in found.as_array().into_iter().flatten() {
                        wrong.push(format!("{} × {}: {name} {one}", phone.width, phone.height));
                    }
                }
            }
        }
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}

#[test]
fn a_keyboard_alone_carries_the_work() {
    story("instrument-keyboard", Screen::UPRIGHT, async |page| {
        page.open_at("#step/4").await?;
        page.see(button(has("Compound on"))).await?;
        let rested = async || tokio::time::sleep(std::time::Duration::from_millis(400)).await;
        rested().await;
        page.press("Enter").await?;
        // One press a bolt.
        for bolt in 1..=4 {
            page.see(button(has(&format!(" {bolt} of 4")))).await?;
            rested().await;
            page.press(" ").await?;
        }
        page.see(button("Done")).await?;
        rested().await;
        page.press("Backspace").await?;
        page.see(button(has(" 4 of 4"))).await?;
        rested().await;
        page.press("Enter").await?;
        page.see(button("Done")).await?;
        // A reading is typed and taken.
        page.open_at("#step/2").await?;
        acknowledge(page).await?;
        page.see(button(has("Read bore across"))).await?;
        rested().await;
        page.press("Enter").await?;
        page.see(button("use")).await?;
        for key in ["6", "1", ".", "9", "7", "4", "Enter"] {
            page.press(key).await?;
        }
        page.see_words("within limits").await?;
        // The arrows go from step to step; on Torque digits type.
        page.press("ArrowRight").await?;
        page.see(heading("Main bearing into the right case")).await?;
        page.open_at("#torque").await?;
        for key in ["7", ",", "2"] {
            page.press(key).await?;
        }
        page.see_words("7.2 N·m").await?;
        page.press("Backspace").await?;
        page.press("Backspace").await?;
        page.see_words("7 N·m").await
    });
}

#[test]
fn a_palm_does_not_tally() {
    story("instrument-palm", Screen::UPRIGHT, async |page| {
        page.open_at("#step/16").await?;
        let big = page.place_of(button(has(" 1 of 16, pass 1"))).await?;
        tokio::time::sleep(std::time::Duration::from_millis(400)).await;
        page.palm(big.x, big.y).await?;
        page.see_words("that was no fingertip").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        page.touch(big.x, big.y).await?;
        page.see(button(has(" 2 of 16, pass 1"))).await.map(drop)
    });
}

#[test]
fn untouched_for_half_a_minute_it_is_read_from_afar() {
    story("instrument-far", Screen::UPRIGHT, async |page| {
        page.open_at("#step/16").await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        page.advance_clock(std::time::Duration::from_secs(40)).await?;
        page.see(button(has("touch to wake"))).await?;
        let size = "return parseFloat(getComputedStyle(document.querySelector('.far .number')).fontSize)";
        let size = page.script(size, Value::Null).await?.as_f64().unwrap_or_default();
        assert!((180.0..=260.0).contains(&size), "{size} px");
        page.screenshot("far-upright").await?;
        // A pedal wakes, and tallies nothing; so does the first touch.
        page.press("Enter").await?;
        page.gone(button(has("touch to wake"))).await?;
        page.see(button(has(" 1 of 16, pass 1"))).await?;
        page.advance_clock(std::time::Duration::from_secs(40)).await?;
        page.see(button(has("touch to wake"))).await?;
        page.touch(150.0, 720.0).await?;
        page.gone(button(has("touch to wake"))).await?;
        page.see(button(has(" 1 of 16, pass 1"))).await.map(drop)
    });
}

/// What of a Bond question lies below the screen, scrolls or is cut.
const ASKED: &str = "
    const wrong = [], asks = document.querySelector('.bond > .asks'), main = document.querySelector('main');
    const keys = [...document.querySelectorAll('.question button')], edge = main.getBoundingClientRect().bottom;
    for (const key of keys) {
        if (key.getBoundingClientRect().bottom > edge + 1) wrong.push(key.innerText + ' lies below');
        if (key.scrollHeight > key.clientHeight + 2 || key.scrollWidth > key.clientWidth + 2) wrong.push(key.innerText + ' is cut');
    }
    if (asks.scrollHeight > asks.clientHeight + 1) wrong.push('the question scrolls');
    if (main.scrollHeight > main.clientHeight + 1) wrong.push('the screen scrolls');
    return wrong;";

#[test]
fn no_question_of_a_joint_scrolls() {
    story("instrument-questions", Screen::UPRIGHT, async |page| {
        page.open_at("#bond").await?;
        page.see(heading("What is joined?")).await?;
        let press = async |page: &Page, body: &str, with: Value| {
            page.script(body, with).await?;
            tokio::time::sleep(std::time::Duration::from_millis(60)).await;
            Told::Ok(())
        };
        let count = "return document.querySelectorAll('.question .tiles button').length";
        let kinds = page
            .script(count, Value::Null)
            .await?
            .as_u64()
            .unwrap_or_default();
        assert!(kinds > 10, "{kinds} kinds of joint");
        let (mut seen, mut wrong) = (Vec::new(), Vec::new());
        // What is joined is the first of them.
        for phone in PHONES {
            page.turn(phone).await?;
            let found = page.script(ASKED, Value::Null).await?;
            for words in found.as_array().into_iter().flatten() {
                wrong.push(format!(
                    "the first at {} × {}: {words}",
                    phone.width, phone.height
                ));
            }
        }
        page.turn(Screen::UPRIGHT).await?;
        // Each kind of joint by its first answers, and by its last.
        for (kind, last) in (0..kinds).flat_map(|kind| [(kind, false), (kind, true)]) {
            let another = "[...document.querySelectorAll('button')].find(key => key.innerText === 'another joint')?.click()";
            press(page, another, Value::Null).await?;
            let choose = "document.querySelectorAll('.question .tiles button')[arguments[0]].click()";
            press(page, choose, json!(kind)).await?;
            for _ in 0..20 {
                let asked =
                    "const asked = document.querySelector('.question'); return asked ? asked.innerText : ''";
                let asked = page.script(asked, Value::Null).await?;
                if asked == json!("") {
                    break;
                }
                if !seen.contains(&asked) {
                    for phone in PHONES {
                        page.turn(phone).await?;
                        let found = page.script(ASKED, Value::Null).await?;
                        for words in found.as_array().into_iter().flatten() {
                            wrong.push(format!("{asked} at {} × {}: {words}", phone.width, phone.height));
                        }
                    }
                    page.turn(Screen::UPRIGHT).await?;
                    seen.push(asked);
                }
                let answer = "const all = document.querySelectorAll('.question .tiles button'); all[arguments[0] ? all.length - 1 : 0].click()";
                press(page, answer, json!(last)).await?;
            }
        }
        assert!(seen.len() > 20, "{} questions", seen.len());
        assert!(wrong.is_empty(), "{}", wrong.join("\n  "));
        Ok(())
    });
}
