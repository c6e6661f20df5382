//! What a first visit transfers, file by file.

use std::fs;

use super::error::SetupError;
use super::project::Project;
use super::release::{self, Finish};
use super::worker::{Release, WORKER};

/// A page of this kind with nothing in it.
const FLOOR: f64 = 29_000.0;

/// The most a first visit may weigh, in bytes: the one place where it stands. Whoever makes the page
/// lighter lowers it.
///
/// It stood at 480 kB. The core that decides, the typed record and the reading of form 1 weigh 25 kB more
/// than the rules that stood in views did: a debt. What manuals ask of a step (findings, programs, locks,
/// shims, gauging plastic, fill and run, two kinds of waiting) came on top with 110 kB; the trade made whole
/// (sixteen calculations to measure by, the missing joints, units and worked-out readings, what is left of a
/// fit, rigging) with 80 kB, and with 80 more the instrument and what keeps it: a step's stage beside all there
/// is of it, search, the first minutes, figures in the user's units, the journal, keyboard and voice.
/// Boxing what is generic over closures before the framework sees it took 21 kB off again; a shell by its codes
/// on Measure, numbers judged beside each other, the mends of a night and their words put 9 kB on. esbuild took 3
/// kB off styles and scripts; readings worked out by a calculation, the decimal comma, what the store lost without
/// a word, and a line under every number put 19 on. Words of 28 px that stand whole at every size, a shaft's
/// run-out off its journals, banjo bolts and fluids as people write them came to 6; wasm-opt putting less into
/// callers took 5 off.
const BAR: u64 = 780_000;

/// Builds the release, then prints the size of every file a first visit needs as it goes over
/// the wire: brotli where that is smaller, without HTTP's own headers.
///
/// # Errors
/// Those of the build, [`SetupError::File`] when a built file can't be read, and
/// [`SetupError::TooHeavy`] above the bar.
pub fn report(project: &Project) -> Result<(), SetupError> {
    let dist = release::build(project, Finish::Release)?;
    let mut lines = Vec::new();
    let names = Release::read(&dist)?
        .names()
        .map(str::to_owned)
        .collect::<Vec<_>>();
    for name in names.iter().map(String::as_str).chain([WORKER]) {
        let size = |name: &str| {
            let path = dist.join(name);
            fs::metadata(&path)
                .map(|file| file.len())
                .map_err(SetupError::file(&path))
        };
        let plain = size(name)?;
        let sent = size(&format!("{name}.br")).unwrap_or(plain).min(plain);
        lines.push((name, plain, sent));
    }
    lines.sort_by_key(|(name, _, sent)| (std::cmp::Reverse(*sent), *name));
    println!("{:>10} {:>10}  first visit, bytes", "file", "sent");
    for (name, plain, sent) in &lines {
        println!("{plain:>10} {sent:>10}  {name}");
    }
    let plain: u64 = lines.iter().map(|(_, plain, _)| plain).sum();
    let total: u64 = lines.iter().map(|(_, _, sent)| sent).sum();
    println!("{plain:>10} {total:>10}  total");
    println!(
        "{:.1} kB in all: {:.1} times an empty page of its kind (29 kB), {:.0} % of the bar of {} kB.",
        total as f64 / 1000.0,
        total as f64 / FLOOR,
        100.0 * total as f64 / BAR as f64,
        BAR / 1000,
    );
    judge(total)
}

fn judge(total: u64) -> Result<(), SetupError> {
    match total > BAR {
        true => Err(SetupError::TooHeavy { total, bar: BAR }),
        false => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_over_the_bar_is_refused() {
        assert!(judge(BAR).is_ok());
        let refused = judge(BAR + 1_500).expect_err("it is over");
        assert_eq!(
            refused.to_string(),
            "A first visit weighs 781.5 kB, over the bar of 780.0 kB: make the page lighter, or move BAR in src/setup/size.rs and say why."
        );
    }
}
