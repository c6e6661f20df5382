//! A new phone: one torque, an example that leaves nothing behind, the first job of one's own.

use super::harness::*;

#[test]
fn one_torque_is_converted_after_three_touches_for_the_wrench() {
    story("first-torque", Screen::UPRIGHT, async |page| {
        page.with_nothing_stored().await?;
        page.open().await?;
        page.see(heading("Halfcase")).await?;
        page.key_at_least(button("Convert one torque"), 120, 88).await?;
        page.fits_everywhere("first").await?;
        page.tap(button("Convert one torque")).await?;
        page.see(heading("Which wrench is in your hand?")).await?;
        page.fits_everywhere("which-wrench").await?;
        page.tap(button("in·lb")).await?;
        page.tap(button("20–120")).await?;
        page.tap(button("1")).await?;
        page.tap(button(has("foot-pounds"))).await?;
        page.tap_keys(&["7", "point", "2"]).await?;
        // 7.2 × 12 = 86.4 in·lb, to the nearest mark.
        page.see_words("86").await?;
        page.see_words("My wrench").await?;
        // It is asked once.
        page.reload().await?;
        page.see(button("7")).await.map(drop)
    });
}

#[test]
fn the_example_is_marked_and_leaves_nothing_behind() {
    story("first-example", Screen::UPRIGHT, async |page| {
        page.with_nothing_stored().await?;
        page.open().await?;
        page.tap(button(has("Look at an example job"))).await?;
        page.see(heading("Wash the cases, blow out the oil ways")).await?;
        page.see(button(has("EXAMPLE: close it"))).await?;
        page.tap(button("Done")).await?;
        page.see(button(has("Next step"))).await?;
        assert_eq!(page.stored_keys("halfcase/job").await?, Vec::<String>::new());
        page.screenshot("first-example").await?;
        page.tap(button(has("EXAMPLE: close it"))).await?;
        page.see(heading("Halfcase")).await?;
        page.gone(button(has("EXAMPLE: close it"))).await?;
        assert_eq!(page.stored_keys("halfcase/record").await?, Vec::<String>::new());

        // And the first job of one's own.
        page.tap(button("Start my job")).await?;
        page.type_into(textbox("What is the job?"), "Side cover").await?;
        page.tap(button("Start my job")).await?;
        page.see(heading("Side cover")).await?;
        page.reload().await?;
        page.see(heading("Side cover")).await.map(drop)
    });
}
