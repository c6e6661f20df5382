//! A table typed at a desk becomes a sheet, is worked through with interruptions, printed, backed up,
//! and is the same to the byte on a fresh phone.

use super::harness::*;
use super::work::take_wrench;
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::time::Duration;

/// Sixty fasteners of the walking tractor's gearbox: ten sizes, decimal commas, units in words.
const TABLE: &str = "\
Title;Size;Qty;Torque;Unit;Class;Into;New;Bag
Sump bolts;M6;12;9;newton metres;8.8;cast aluminium;;1
Side cover;M6;10;7,2;foot pounds;8.8;cast aluminium;;2
Case bolts;M8;8;20;N·m;8.8;cast aluminium;;3
Bearing retainers;M6;6;86;inch pounds;8.8;cast aluminium;new;4
Top cover;M6;8;9;N·m;8.8;cast aluminium;;5
Selector plate;M5;4;5,5;N·m;8.8;cast aluminium;;6
Oil pump;M6;4;9;N·m;8.8;cast aluminium;;7
Breather;M6;2;7;N·m;8.8;cast aluminium;;8
Engine mounts;M10;4;40;N·m;8.8;steel;;9
Drain plugs;M14x1.5;2;25–30;N·m;;cast aluminium;new;on order
";

/// How many fasteners each step has, in order, and the wrench that takes them.
const STEPS: [(&str, usize, &str); 10] = [
    ("Sump bolts", 12, "Small"),
    ("Side cover", 10, "Small"),
    ("Case bolts", 8, "Middle"),
    ("Bearing retainers", 6, "Small"),
    ("Top cover", 8, "Small"),
    ("Selector plate", 4, "Small"),
    ("Oil pump", 4, "Small"),
    ("Breather", 2, "Small"),
    ("Engine mounts", 4, "Middle"),
    ("Drain plugs", 2, "Middle"),
];

fn file(name: &str, text: &[u8]) -> Told<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/given");
    std::fs::create_dir_all(&folder)?;
    let path = folder.join(name);
    std::fs::write(&path, text)?;
    Ok(path)
}

async fn give(page: &Page, path: &Path) -> Told {
    page.give_files("input[type=file]", &[&path.to_string_lossy()])
        .await
}

/// The newest good copy of every record segment, without the line of head.
async fn records(page: &Page) -> Told<Value> {
    let body = "
        const newest = {};
        for (const [key, text] of Object.entries(localStorage)) {
            if (!key.startsWith('halfcase/record/')) continue;
            const name = key.slice(0, key.lastIndexOf('/'));
            const sequence = Number(text.split(' ')[1]);
            if (!newest[name] || newest[name][0] < sequence) newest[name] = [sequence, text.slice(text.indexOf('\\n') + 1)];
        }
        return Object.fromEntries(Object.entries(newest).sort().map(([name, [, data]]) => [name, data]));";
    page.script(body, Value::Null).await
}

async fn work_through(page: &mut Page, from: usize, to: usize) -> Told {
    for (title, count, wrench) in &STEPS[from..to] {
        page.see(heading(*title)).await?;
        if ["Bearing retainers", "Drain plugs"].contains(title) {
            page.tap(button(has("New ones on"))).await?;
        }
        take_wrench(page, wrench).await?;
        for bolt in 1..=*count {
            page.tap(button(has(&format!(" {bolt} of {count}")))).await?;
        }
        page.tap(button("Done")).await?;
        page.tap(button(has("Next step"))).await?;
    }
    Ok(())
}

#[test]
fn sixty_fasteners_from_a_table_to_paper_and_to_another_phone() {
    let mut backup = Vec::new();
    let mut record = Value::Null;
    story("sheet-from-desk", Screen::UPRIGHT, async |page| {
        page.open_at("#jobs").await?;
        page.fits_the_hand().await?;
        page.screenshot("jobs-upright").await?;
        give(page, &file("gearbox-fasteners.csv", TABLE.as_bytes())?).await?;
        page.see(heading("gearbox-fasteners")).await?;
        page.see_words("0 of 10 done").await?;
        page.see_words("about ").await?;
        page.fits_the_hand().await?;
        page.screenshot("overview-of-a-table").await?;

        // The parts are counted first; sixty fasteners in their bags.
        page.tap(button("parts")).await?;
        page.see_words("in bag 3").await?;
        page.see_words("0 of 10 counted and at hand.").await?;
        page.see_words("On order: 1.").await?;
        page.tap(checkbox(has("12 × M6, 8.8"))).await?;
        page.see_words("1 of 10 counted and at hand.").await?;
        page.fits_the_hand().await?;
        page.screenshot("parts-upright").await?;

        page.tap(button("Job")).await?;
        work_through(page, 0, 4).await?;
        // First interruption: the phone is put away over the night.
        page.sleep_and_reload(Duration::from_secs(9 * 3_600)).await?;
        work_through(page, 4, 7).await?;
        // Second: the tab is closed in the middle of a step.
        page.see(heading("Breather")).await?;
        take_wrench(page, "Small").await?;
        page.tap(button(has(" 1 of 2"))).await?;
        page.see(button(has(" 2 of 2"))).await?;
        page.close_tab_and_return().await?;
        page.tap(button(has(" 2 of 2"))).await?;
        page.tap(button("Done")).await?;
        page.tap(button(has("Next step"))).await?;
        work_through(page, 8, 10).await?;
        page.tap(button("Close the job")).await?;
        page.see_words("Closed today").await?;

        page.tap(button("the record on paper")).await?;
        page.see(table("Torque")).await?;
        page.see_words("12 of 12").await?;
        page.see_words("86 in·lb Small").await?;
        page.fits_the_hand().await?;
        page.screenshot("paper-upright").await?;
        // What the printer gets: media print, no keys.
        printed(page).await?;

        page.open_at("#jobs").await?;
        page.tap(button("back up the whole bench")).await?;
        let (name, text) = page.downloaded().await?;
        assert_eq!(name, "halfcase-backup.json");
        backup = text;
        page.tap(button("this job’s fasteners as a table")).await?;
        let (_, table) = page.downloaded().await?;
        assert!(String::from_utf8_lossy(&table).contains("Side cover,M6,,10,7.2 ft·lb"));
        record = records(page).await?;
        Ok(())
    });
    story("sheet-fresh-phone", Screen::UPRIGHT, async |page| {
        page.open_at("#jobs").await?;
        // A wrong file says which line and what, and changes nothing.
        let before = page.everything_stored().await?;
        give(
            page,
            &file("wrong.csv", b"thread,torque\nM6,9 N\xC2\xB7m\nM6,nine\n")?,
        )
        .await?;
        page.see_words("wrong.csv: Line 3, torque:").await?;
        assert_eq!(page.everything_stored().await?, before);
        page.tap(button("ok, dismiss this message")).await?;

        give(page, &file("backup.json", &backup)?).await?;
        page.see_words("Nothing is changed yet.").await?;
        page.see_words("gearbox-fasteners").await?;
        page.fits_the_hand().await?;
        page.screenshot("restore-upright").await?;
        page.tap(button("Take it in")).await?;
        page.see_words("Taken in").await?;
        assert_eq!(records(page).await?, record, "the record is equal to the byte");
        page.tap(button("Job")).await?;
        page.see_words("Closed ").await
    });
}

/// Looks at the sheet as a printer does, for A4's width.
async fn printed(page: &mut Page) -> Told {
    page.print_look(true).await?;
    let keys = page
        .script(
            "return [...document.querySelectorAll('button')].filter(key => key.checkVisibility()).length",
            Value::Null,
        )
        .await?;
    assert_eq!(keys, Value::from(0), "no keys on paper");
    page.screenshot("paper-printed").await?;
    page.print_look(false).await
}
