//! Every caution on one plain page, reached from a card and from the bench.

use super::harness::*;

#[test]
fn all_cautions_are_a_touch_from_a_card_and_from_the_bench() {
    story("cautions", Screen::UPRIGHT, async |page| {
        page.open_at("#step/8").await?;
        super::work::whole(page).await?;
        page.tap(button("all cautions").nth(0)).await?;
        page.see(heading("Cautions")).await?;
        page.see_words("licensed practice come first").await?;
        page.see_words("Dry ice burns skin").await?;
        page.see_words("Compressed air blows chips").await?;
        page.fits_everywhere("cautions").await?;
        page.tap(button("Bench")).await?;
        page.tap(button("all cautions")).await?;
        page.see(heading("Cautions")).await.map(drop)
    });
}
