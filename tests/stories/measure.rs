//! Measure: a calculation chosen, filled on the keypad, judged, and there again after a reload.

use super::harness::*;

#[test]
fn a_shim_pack_is_reckoned_in_mm_and_in_inches() {
    story("measure-shims", Screen::UPRIGHT, async |page| {
        page.open_at("#bench").await?;
        page.tap(button(has("Measure"))).await?;
        page.see_words("Enter: gap without shims.").await?;
        page.enter("gap without shims:", &["point", "6", "4"]).await?;
        page.enter("at least:", &["point", "0", "5"]).await?;
        page.enter("at most:", &["point", "1", "5"]).await?;
        // Gap 0.64 less 0.05 to 0.15.
        page.see_words("Any pack of 0.490 to 0.590 mm will do.").await?;
        page.enter("shims in the box: thickness:", &["point", "2"])
            .await?;
        page.enter("second thickness:", &["point", "1"]).await?;
        page.see_words("2 × 0.200 + 1 × 0.100 = 0.500 mm.").await?;
        page.fits_everywhere("measure-shims").await?;
        // On its side two columns scroll: the bar that a phone lays over their right edge covers no word.
        page.turn(Screen::SIDEWAYS).await?;
        let columns = "return document.querySelectorAll('.worked-answer, .worked-form').length";
        assert_eq!(page.script(columns, serde_json::Value::Null).await?, 2);
        let under = "return [...document.querySelectorAll('.worked-answer, .worked-form')].flatMap(column =>
            [...column.querySelectorAll('*')].filter(thing => thing.checkVisibility() && thing.getBoundingClientRect().width
                && thing.getBoundingClientRect().right > column.getBoundingClientRect().right - 7.5)
                .map(thing => thing.tagName + ' ' + thing.className)).slice(0, 4)";
        assert_eq!(
            page.script(under, serde_json::Value::Null).await?,
            serde_json::json!([])
        );
        page.turn(Screen::UPRIGHT).await?;
        page.reload().await?;
        page.see_words("2 × 0.200 + 1 × 0.100 = 0.500 mm.").await?;
        page.choose("units:", "in, in·lb, lb, °F").await?;
        page.see_words("0.0197").await?;
        page.tap(button("Undo units")).await?;
        page.see_words("0.500").await?;
        page.fits_the_hand().await
    });
}

#[test]
fn a_bolt_that_bottoms_is_refused() {
    story("measure-bolt", Screen::UPRIGHT, async |page| {
        page.open_at("#measure").await?;
        page.choose("calculation:", "Bolt engagement").await?;
        page.tap(button(has("bolt’s thread:"))).await?;
        page.tap(button("M8")).await?;
        page.enter("bolt, under its head:", &["3", "0"]).await?;
        page.enter("what it clamps, washers too:", &["1", "2"]).await?;
        page.see_words("Enough for a bolt of ordinary strength, if the full thread is 18.00 mm deep.")
            .await?;
        page.enter("depth of full thread:", &["1", "7"]).await?;
        page.see_words("It bottoms 1.00 mm before it clamps: a shorter bolt.")
            .await?;
        page.fits_everywhere("measure-bolt").await
    });
}

#[test]
fn a_shell_is_chosen_by_its_two_codes() {
    story("measure-codes", Screen::UPRIGHT, async |page| {
        page.open_at("#measure").await?;
        page.choose("calculation:", "Shell by its codes").await?;
        page.see_words("Enter: codes down the side, with commas.").await?;
        for (field, words) in [
            ("codes down the side, with commas", "A, B"),
            ("codes across the top, with commas", "1, 2"),
            ("A: what goes with 1, 2", "green, brown, black"),
        ] {
            page.type_into(textbox(field), words).await?;
            page.press("Tab").await?;
        }
        // Kept as it was typed, and said.
        page.see_words("The line of “A” has 3 parts").await?;
        for (field, words) in [
            ("A: what goes with 1, 2", "green, brown"),
            ("B: what goes with 1, 2", "brown, black"),
            ("code read, one of those down the side", "B"),
            ("code read, one of those across the top", "3"),
        ] {
            page.type_into(textbox(field), words).await?;
            page.press("Tab").await?;
        }
        page.see_words("no “3” as code across the top, only 1, 2").await?;
        page.type_into(textbox("code read, one of those across the top"), "2")
            .await?;
        page.press("Tab").await?;
        page.see_words("By the manual’s table. Then measure the clearance.")
            .await?;
        page.fits_everywhere("measure-codes").await?;
        page.reload().await?;
        page.see_words("By the manual’s table. Then measure the clearance.")
            .await?;
        page.fits_the_hand().await
    });
}
