//! The app starts, keeps itself, and starts again with the network gone.

use super::harness::*;

#[test]
fn the_app_starts_without_a_network_after_one_visit() {
    story("starts-offline", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        page.stop_server();
        page.reload().await?;
        page.see_words("Halfcase").await?;
        page.close_tab_and_return().await?;
        page.see_words("Halfcase").await?;
        page.screenshot("starts-offline").await
    });
}
