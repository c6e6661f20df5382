//! The selector by touch: a joint described, its answer, its bottle, its clock.

use super::harness::*;
use super::work::whole;
use halfcase::trade::application::{Application, JointKind, answer, questions};
use halfcase::trade::compound::recommend;
use serde_json::{Value, json};

/// The walking tractor's side cover: a stamped cover over oil.
async fn describe_the_side_cover(page: &mut Page) -> Told {
    page.tap(radio("Stamped or flexible cover")).await?;
    page.see(heading("What does the manual name here?")).await?;
    page.tap(radio("Nothing named")).await?;
    page.tap(radio("Up to 150 °C")).await?;
    page.tap(radio("Up to 3 mm")).await?;
    page.see(heading("What wets it?")).await?;
    page.tap(radio("Oil")).await?;
    page.tap(radio("No")).await?;
    page.see(heading("Are oil ways, jets or bearings close by?"))
        .await
        .map(drop)
}

#[test]
fn a_joint_is_described_by_touch_and_its_answer_changed_in_place() {
    story("bond-selector", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.tap(button("Bond")).await?;
        page.see(heading("What is joined?")).await?;
        page.fits_everywhere("bond-kinds").await?;
        describe_the_side_cover(page).await?;
        // The answer stands already, with what is open taken the cautious way.
        page.see_words("so far, the rest taken the cautious way").await?;
        page.see_words("neutral-cure silicone").await?;
        page.fits_everywhere("bond-question").await?;
        page.tap(radio("Don't know")).await?;
        page.see_words("Taken as close to oil ways or bearings").await?;
        page.see_words("Not anaerobic flange sealant").await?;
        page.see_words("Within 5 min").await?;
        page.see_words("not told: the label’s 23 °C is taken").await?;
        page.fits_everywhere("bond-answer").await?;
        page.key_at_least(button(has("Compound on")), 120, 88).await?;
        // It turns out that fuel wets it: no silicone, and it is said why.
        page.tap(button(has("What wets it?"))).await?;
        page.see_on(radio("Oil")).await?;
        page.tap(radio("Fuel")).await?;
        page.see_words("Silicone swells and lets go in fuel")
            .await
            .or(page.see_words("It swells and lets go in fuel").await)?;
        page.words_gone("start its clock").await?;
        // Undo brings the oil back; a reload keeps it.
        page.tap(button(has("Undo"))).await?;
        page.see_words("start its clock").await?;
        page.reload().await?;
        page.see_words("start its clock").await?;
        page.type_into(textbox("which joint, in your words"), "Side cover")
            .await?;
        page.tap(button(has("Compound on"))).await?;
        page.see(heading("Clocks")).await?;
        page.tap(button(has("oil after"))).await?;
        page.see(heading("Side cover")).await.map(drop)
    });
}

#[test]
fn a_steps_joint_is_known_already_and_its_clock_starts_from_the_whole_answer() {
    story("bond-step", Screen::UPRIGHT, async |page| {
        page.open_at("#step/7").await?;
        whole(page).await?;
        page.tap(button("the whole answer")).await?;
        page.see(heading("Breather spigot into the left case")).await?;
        page.see_words("goes on it").await?;
        page.see_words("retaining compound").await?;
        // The example says everything: nothing is asked.
        page.gone(region("question")).await?;
        page.tap(button("activator goes on first")).await?;
        page.see_on(button("activator goes on first")).await?;
        page.tap(button(has("Compound on"))).await?;
        page.see_words("holds after").await?;
        page.fits_everywhere("bond-step").await?;
        page.tap(button("Back to the step")).await?;
        page.see(button("Done")).await?;
        // Changed on the answer, changed on the sheet.
        whole(page).await?;
        page.tap(button("the whole answer")).await?;
        page.tap(button(has("How loose is it"))).await?;
        page.tap(radio("None: it presses in")).await?;
        page.tap(button("Back to the step")).await?;
        whole(page).await?;
        page.see_words("goes on it").await
    });
}

#[test]
fn my_own_bottle_takes_the_place_of_typical_figures_and_a_spoiled_one_is_refused() {
    story("bond-bottle", Screen::UPRIGHT, async |page| {
        page.open_at("#bench").await?;
        page.tap(button("add a bottle or tube")).await?;
        page.type_into(textbox("its name, in your words"), "Shelf tube")
            .await?;
        page.tap(radio("retaining compound")).await?;
        page.tap(button(has("full cure after:"))).await?;
        page.tap_keys(&["7", "2", "use"]).await?;
        page.fits_everywhere("bottle-label").await?;
        page.tap(button("Keep it")).await?;
        page.see(button(has("Shelf tube"))).await?;
        page.fits_everywhere("bottle-shelf").await?;

        page.open_at("#bond/7").await?;
        page.see_on(radio(has("Shelf tube"))).await?;
        page.see_words("after 72 h")
            .await
            .or(page.see_words("at the earliest").await)?;
        page.open_at("#step/7").await?;
        page.see_words("Out of “Shelf tube”.").await?;

        // Its date has passed.
        page.open_at("#bench").await?;
        page.tap(button(has("Shelf tube"))).await?;
        page.tap(button(has("good until, year:"))).await?;
        page.tap_keys(&["2", "0", "2", "5", "use"]).await?;
        page.tap(button("Keep it")).await?;
        page.see_words("Expired: good until 2025-12-31.").await?;
        page.open_at("#step/7").await?;
        page.tap(button(has("Compound on"))).await?;
        page.see_words("Take another on Bond, or typical figures.")
            .await?;
        page.open_at("#bond/7").await?;
        page.fits_everywhere("bottle-refused").await?;
        page.tap(radio("typical figures")).await?;
        page.tap(button(has("Compound on"))).await?;
        page.see_words("holds after").await
    });
}

/// How many walks the browser takes.
const WALKS: u64 = 500;
/// Walks in one go: a script may take half a minute.
const AT_ONCE: usize = 20;

/// One random walk as the questions come: the kind, then (question, tile) by their words; and the joint
/// it ends at.
fn random_walk(seed: u64) -> (Value, Application) {
    let mut state = seed;
    let mut below = |end: usize| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((state >> 33) % end as u64) as usize
    };
    let kind = JointKind::ALL[below(JointKind::ALL.len())];
    let mut joint = Application::new(kind);
    let mut met = Vec::new();
    let mut steps = vec![json!(["What is joined?", kind.words()])];
    while let Some(question) = questions(&joint)
        .into_iter()
        .find(|question| question.chosen.is_none() && !met.contains(&question.id))
    {
        let choice = question.choices[below(question.choices.len())];
        answer(&mut joint, question.id, choice.id).unwrap();
        met.push(question.id);
        steps.push(json!([question.words, choice.words]));
    }
    (Value::Array(steps), joint)
}

/// Walks by the words on the screen, and reads the answer.
const WALK: &str = "
    const settle = () => new Promise(done => setTimeout(done, 0));
    const until = async (what, found) => {
        for (let tries = 0; tries < 2000; tries++) { const it = found(); if (it) return it; await settle(); }
        throw new Error('waited in vain for ' + what + ': ' + document.querySelector('main').textContent.slice(0, 300));
    };
    const key = words => [...document.querySelectorAll('button')].find(key => key.textContent.trim() === words);
    // Only the words are read: nothing need be drawn.
    document.body.style.display = 'none';
    return (async () => { try {
        const answers = [];
        for (const walk of arguments[0]) {
            const again = key('another joint');
            if (again) { again.click(); await until('a fresh walk', () => !document.querySelector('.answer')); }
            for (const [question, tile] of walk) {
                await until(question, () => document.querySelector('.question h2')?.textContent === question);
                const found = [...document.querySelectorAll('.question [role=radio]')].find(key => key.textContent === tile);
                if (!found) throw new Error('no tile ' + tile + ' for ' + question);
                found.click();
                await settle();
            }
            await until('the end of the questions', () => !document.querySelector('.question'));
            answers.push([document.querySelector('.answer .class').textContent, document.querySelector('.answer .reason').textContent]);
        }
        return answers;
    } finally { document.body.style.display = ''; } })();";

#[test]
fn random_walks_on_the_screen_answer_as_the_rule_table() {
    story("bond-walks", Screen::UPRIGHT, async |page| {
        page.open_at("#bond").await?;
        page.see(heading("What is joined?")).await?;
        let walks: Vec<(Value, Application)> = (0..WALKS).map(random_walk).collect();
        for some in walks.chunks(AT_ONCE) {
            let steps = some.iter().map(|(steps, _)| steps.clone()).collect();
            let shown = page.script(WALK, Value::Array(steps)).await?;
            let expected: Vec<Value> = some
                .iter()
                .map(|(_, joint)| {
                    let answer = recommend(joint);
                    let class = answer.class.map_or("nothing", |class| class.name());
                    json!([class, answer.reason])
                })
                .collect();
            assert_eq!(shown, Value::Array(expected));
        }
        Ok(())
    });
}
