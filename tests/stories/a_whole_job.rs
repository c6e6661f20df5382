//! The walking tractor's gearbox from the first wash to the oil, as one person does it.

use super::harness::*;
use super::work::*;
use std::time::Duration;

const HOUR: Duration = Duration::from_secs(3_600);

/// A first pack by the gap, read, changed, read again.
async fn shims(page: &mut Page) -> Told {
    at(page, "Shims behind the output bearing").await?;
    page.enter("gap at 12 o’clock:", &["0", "point", "7", "2"])
        .await?;
    page.enter("gap at 6 o’clock:", &["0", "point", "7"]).await?;
    page.screenshot("step-select-upright").await?;
    page.fits_the_hand().await?;
    page.tap(button(has("It is in"))).await?;
    page.enter("end float:", &["0", "point", "1", "8"]).await?;
    page.see_words("is outside its limits").await?;
    page.see_words("0.50 + 0.20 mm").await?;
    page.tap(button("this is in")).await?;
    page.enter("end float:", &["0", "point", "0", "8"]).await?;
    page.screenshot("step-select-done-upright").await?;
    close(page).await
}

/// Everything up to the case joint.
async fn up_to_the_case_joint(page: &mut Page) -> Told {
    at(page, "Wash the cases, blow out the oil ways").await?;
    page.fits_the_hand().await?;
    close(page).await?;

    at(page, "Measure the main bearing bore").await?;
    reading(page, "bore across", &["6", "1", "point", "9", "7", "4"]).await?;
    reading(page, "bore along", &["6", "1", "point", "9", "7", "1"]).await?;
    close(page).await?;

    at(page, "Main bearing into the right case").await?;
    acknowledge(page).await?;
    page.see_words("warm the housing").await?;
    page.fits_the_hand().await?;
    page.screenshot("step-seat-upright").await?;
    close(page).await?;
    at(page, "Input shaft bearing into the left case").await?;
    close(page).await?;

    at(page, "Oil baffle into the right case").await?;
    close(page).await?;

    // The manual says 7.2 ft·lb, the small wrench reads in·lb: 86.4, set as 86.
    at(page, "Baffle screws").await?;
    page.see_words("medium-strength threadlocker").await?;
    page.screenshot("step-compound-upright").await?;
    page.tap(button(has("Compound on"))).await?;
    page.see_words("7.2 ft·lb").await?;
    page.see_words("Small 20–120 in·lb").await?;
    page.see_words("86").await?;
    page.screenshot("step-fasten-upright").await?;
    // The number tells how it comes about.
    page.tap(button(has("how it comes about"))).await?;
    page.see_words("7.2 ft·lb × 12 = 86.4 in·lb.").await?;
    page.see_words("rounding −0.5 %").await?;
    page.tap(button("back")).await?;
    tally(page, 4, 1).await?;
    page.key_at_least(button("Done"), 120, 88).await?;
    page.key_at_least(button(has("Undo")), 120, 88).await?;
    // A bolt too many is a touch away from being undone.
    page.tap(button(has("Undo"))).await?;
    page.tap(button(has(" 4 of 4"))).await?;
    close(page).await?;

    at(page, "Restrictor jet, main oil way").await?;
    page.screenshot("step-new-part-upright").await?;
    new_ones(page).await?;
    close(page).await?;

    at(page, "Oil pipe unions").await?;
    new_ones(page).await?;
    take_wrench(page, "Middle").await?;
    tally(page, 2, 1).await?;
    close(page).await?;

    at(page, "Bearing retainer screws").await?;
    page.tap(button(has("Compound on"))).await?;
    tally(page, 3, 1).await?;
    close(page).await?;
    for title in ["Shafts in, thrust washers on", "Detent spring and selector drum"] {
        at(page, title).await?;
        close(page).await?;
    }
    shims(page).await?;
    at(page, "Turn the shafts through all gears").await?;
    turns(page).await?;
    close(page).await?;

    // Laid, tight, off, read at both ends, wiped away.
    at(page, "Big end clearance").await?;
    acknowledge(page).await?;
    page.tap(button(has("It is laid"))).await?;
    page.tap(button(has("It is tight"))).await?;
    page.tap(button("Cap is off")).await?;
    page.enter("clearance at the widest place:", &["0", "point", "0", "5"])
        .await?;
    page.enter("clearance at the narrow end:", &["0", "point", "0", "5", "5"])
        .await?;
    page.screenshot("step-gauge-upright").await?;
    page.tap(button(has("Wiped away"))).await?;
    close(page).await?;

    // Snug, torque and angle, each once round before the next.
    at(page, "Connecting rod bolts").await?;
    new_ones(page).await?;
    page.tap(button(has("All oiled"))).await?;
    take_wrench(page, "Middle").await?;
    for stage in 2..=4 {
        if stage == 4 {
            page.see_words("turn a further").await?;
            page.see_words("60").await?;
            page.fits_the_hand().await?;
            page.screenshot("step-angle-upright").await?;
        }
        for bolt in 1..=2 {
            page.tap(button(has(&format!(" {bolt} of 2, stage {stage} of 4"))))
                .await?;
        }
    }
    close(page).await?;

    at(page, "Crankshaft assembly onto the bench jig").await?;
    page.see_words("STOP").await?;
    page.fits_everywhere("step-stop").await?;
    page.screenshot("step-lift-upright").await?;
    assert!(
        acknowledge(page).await? > 0,
        "a lift over the limit stops the step"
    );
    close(page).await?;
    at(page, "Case joint").await
}

#[test]
fn a_job_is_carried_through_and_the_oil_waits_for_the_cure() {
    story("a-whole-job", Screen::UPRIGHT, async |page| {
        page.open().await?;
        page.offline_ready().await?;
        up_to_the_case_joint(page).await?;

        page.see_words("anaerobic flange sealant").await?;
        page.screenshot("step-bond-upright").await?;
        page.tap(button(has("Compound on"))).await?;
        close(page).await?;

        // The phone is put down, the network goes, the browser is closed: the job is where it was.
        page.stop_server();
        page.close_tab_and_return().await?;
        at(page, "Case bolts").await?;
        take_wrench(page, "Middle").await?;
        tally_pass(page, 16, 1, 4).await?;
        page.screenshot("step-pattern-upright").await?;
        for pass in 2..=4 {
            tally_pass(page, 16, pass, 4).await?;
        }
        close(page).await?;
        at(page, "Turn the shafts again").await?;
        turns(page).await?;
        close(page).await?;
        at(page, "Flywheel nut").await?;
        take_wrench(page, "Large").await?;
        tally(page, 1, 1).await?;
        close(page).await?;
        // The least of the range, then on to the hole; the pin is said.
        at(page, "Output shaft nut").await?;
        whole(page).await?;
        page.see_words("Thread not stated").await?;
        back(page).await?;
        take_wrench(page, "Large").await?;
        tally(page, 1, 1).await?;
        reading(page, "torque with the hole in line", &["6", "8"]).await?;
        page.tap(button("on")).await?;
        page.screenshot("step-cotter-upright").await?;
        close(page).await?;
        at(page, "Drain plug").await?;
        new_ones(page).await?;
        take_wrench(page, "Middle").await?;
        tally(page, 1, 1).await?;
        close(page).await?;
        at(page, "Engine onto the frame").await?;
        close(page).await?;
        at(page, "Breather spigot into the left case").await?;
        page.see_words("retaining compound").await?;
        page.tap(button(has("Compound on"))).await?;
        close(page).await?;

        at(page, "Gearbox and engine oil").await?;
        page.see(button("Shut see what it waits for")).await?;
        page.see_words("Opens ").await?;
        page.see_words("Not before ").await?;
        whole(page).await?;
        page.see_words("Case joint").await?;
        back(page).await?;
        page.fits_the_hand().await?;
        page.screenshot("step-gate-upright").await?;
        page.turn(Screen::SIDEWAYS).await?;
        page.screenshot("step-gate-sideways").await?;
        page.turn(Screen::UPRIGHT).await?;

        // Half a day is not enough; the cure over, it opens by itself, and stays open after a reload.
        page.advance_clock(12 * HOUR).await?;
        page.see(button("Shut see what it waits for")).await?;
        page.advance_clock(72 * HOUR).await?;
        page.see(button("Read put in")).await?;
        page.reload().await?;
        reading(page, "How much was put in", &["1", "point", "1"]).await?;
        close(page).await?;

        at(page, "Oil at the mark, no drips").await?;
        reading(page, "drips seen", &["0"]).await?;
        close(page).await?;

        at(page, "First run").await?;
        acknowledge(page).await?;
        page.tap(button("it runs")).await?;
        reading(page, "what it reads now", &["8", "0"]).await?;
        reading(page, "how long it ran", &["1", "2"]).await?;
        page.tap(button("none seen")).await?;
        page.tap(button("cold enough to touch")).await?;
        page.tap(button("reached")).await?;
        page.see(button(has("Case bolts"))).await?;
        page.tap(button("torqued again")).await?;
        close(page).await?;
        page.see_words("Every step is done.").await?;
        page.tap(button("Close the job")).await?;
        page.see_words("Closed today").await?;
        page.reload().await?;
        page.see_words("Closed today").await?;
        page.screenshot("job-closed").await
    });
}

#[test]
fn a_clock_runs_on_while_the_tab_is_closed() {
    story("clock-survives", Screen::UPRIGHT, async |page| {
        page.open_at("#step/4").await?;
        page.tap(button(has("Compound on"))).await?;
        page.see_words("min Baffle screws").await?;
        page.close_tab_and_return().await?;
        page.see_words("min Baffle screws").await
    });
}
