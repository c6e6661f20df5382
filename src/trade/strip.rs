//! When the thread in the part gives way before the bolt.

use super::quantity::{Area, Force, Length, Pressure};
use super::thread::Thread;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;
use uom::si::area::square_millimeter;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;

/// What the female thread is cut in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FemaleMaterial {
    /// Aluminium casting alloy, as in cases and covers.
    CastAluminium,
    /// Aluminium plate, bar or forging.
    WroughtAluminium,
    /// Magnesium casting alloy.
    Magnesium,
    /// Grey cast iron.
    CastIron,
    /// Steel, unhardened to quenched and tempered.
    Steel,
    /// Cast bronze.
    Bronze,
}

struct Row {
    material: FemaleMaterial,
    words: &'static str,
    /// Tensile strength, MPa, weak and strong end.
    tensile_mpa: (f64, f64),
    /// Shear strength over tensile strength.
    shear_ratio: f64,
    /// Engagement wanted, in diameters.
    engagement: f64,
    reason: &'static str,
}

/// Tensile ranges are common handbook values without one source; ratios after VDI 2230-1 (from
/// memory), 0.6 where it is more careful.
static ROWS: [Row; 6] = [
    Row {
        material: FemaleMaterial::CastAluminium,
        words: "cast aluminium",
        tensile_mpa: (180.0, 240.0),
        shear_ratio: 0.6,
        engagement: 2.0,
        reason: "common casting alloys; two diameters bring the thread up to the bolt",
    },
    Row {
        material: FemaleMaterial::WroughtAluminium,
        words: "wrought aluminium",
        tensile_mpa: (260.0, 310.0),
        shear_ratio: 0.6,
        engagement: 2.0,
        reason: "heat-treated plate and bar; soft enough to want the same two diameters",
    },
    Row {
        material: FemaleMaterial::Magnesium,
        words: "magnesium",
        tensile_mpa: (160.0, 230.0),
        shear_ratio: 0.6,
        engagement: 2.5,
        reason: "casting alloys a little weaker than aluminium's, and they creep",
    },
    Row {
        material: FemaleMaterial::CastIron,
        words: "cast iron",
        tensile_mpa: (150.0, 250.0),
        shear_ratio: 1.1,
        engagement: 1.25,
        reason: "grey iron bears shear better than pull",
    },
    Row {
        material: FemaleMaterial::Steel,
        words: "steel",
        tensile_mpa: (370.0, 600.0),
        shear_ratio: 0.6,
        engagement: 1.25,
        reason: "from plain structural steel up",
    },
    Row {
        material: FemaleMaterial::Bronze,
        words: "bronze",
        tensile_mpa: (240.0, 310.0),
        shear_ratio: 0.6,
        engagement: 1.5,
        reason: "cast tin bronze, between aluminium and steel",
    },
];

impl FemaleMaterial {
    /// Every material, in the order the screens show them.
    pub const ALL: [Self; 6] = [
        Self::CastAluminium,
        Self::WroughtAluminium,
        Self::Magnesium,
        Self::CastIron,
        Self::Steel,
        Self::Bronze,
    ];

    /// The material in words.
    pub fn words(self) -> &'static str {
        self.row().words
    }

    /// Shear strength, weak and strong end.
    pub fn shear_strength(self) -> (Pressure, Pressure) {
        let row = self.row();
        let shear = |tensile_mpa: f64| Pressure::new::<megapascal>(tensile_mpa * row.shear_ratio);
        (shear(row.tensile_mpa.0), shear(row.tensile_mpa.1))
    }

    /// Engagement wanted for a bolt of ordinary strength, in diameters: the length of full thread
    /// in mesh.
    pub fn recommended_diameters(self) -> f64 {
        self.row().engagement
    }

    /// [`Self::recommended_diameters`] of this thread.
    pub fn recommended_engagement(self, thread: Thread) -> Length {
        self.recommended_diameters() * thread.major()
    }

    /// Why its row is as it is.
    pub fn reason(self) -> &'static str {
        self.row().reason
    }

    fn row(self) -> &'static Row {
        // The first row is nearly the weakest, and stands for any row that went missing.
        ROWS.iter().find(|row| row.material == self).unwrap_or(&ROWS[0])
    }
}

/// Engagement counted, in diameters: the first few threads carry nearly all, so more length than
/// this adds nothing to rely on (common practice, no source).
pub const COUNTED_DIAMETERS: f64 = 3.0;

/// The pull that strips the female thread: weakest alloy and loosest fit, to strongest and closest.
///
/// Shear strength times [`shear_area`]: at the weak end with the bolt's crest at its least and the
/// female pitch diameter at its greatest (6g in 6H, ISO 965-1; a unified 2A in 2B is no looser), at
/// the strong end with both at their basic size. The load is taken as shared by all threads in
/// mesh, up to [`COUNTED_DIAMETERS`]. A negative engagement counts as none.
pub fn strip_load(thread: Thread, material: FemaleMaterial, engagement: Length) -> (Force, Force) {
    strip_of(&Screwed::of(thread), material, counted(thread, engagement))
}

/// The pull that strips a wire insert out of the part: the same, of a thread of the same pitch that is larger by
/// `larger` pitches (an insert of the standard profile: 1.299).
pub fn insert_strip_load(
    thread: Thread,
    larger: f64,
    material: FemaleMaterial,
    engagement: Length,
) -> (Force, Force) {
    let more = larger * thread.pitch();
    let bolt = Screwed::of(thread);
    let outside = Screwed {
        major: bolt.major + more,
        pitch_diameter: bolt.pitch_diameter + more,
        ..bolt
    };
    strip_of(&outside, material, counted(thread, engagement))
}

/// A thread by its basic sizes.
struct Screwed {
    major: Length,
    pitch: Length,
    pitch_diameter: Length,
}

impl Screwed {
    fn of(thread: Thread) -> Self {
        Self {
            major: thread.major(),
            pitch: thread.pitch(),
            pitch_diameter: thread.pitch_diameter(),
        }
    }
}

fn strip_of(thread: &Screwed, material: FemaleMaterial, engagement: Length) -> (Force, Force) {
    let (weak, strong) = material.shear_strength();
    let (least, most) = (least_crest(thread), greatest_pitch(thread));
    let loose = shear_area(thread.pitch, least, most, engagement);
    let close = shear_area(thread.pitch, thread.major, thread.pitch_diameter, engagement);
    (weak * loose, strong * close)
}

/// Shear area of the female thread at the bolt's crest:
/// A = π·D_s/P · L_e · [P/2 + tan 30° · (D_s − E_n)].
///
/// `crest` D_s is the bolt's crest diameter, `pitch_diameter` E_n that of the female thread,
/// `engagement` L_e the length of full thread in mesh. Source: handbooks after FED-STD-H28.
/// Zero for a pitch that is not above zero.
pub fn shear_area(pitch: Length, crest: Length, pitch_diameter: Length, engagement: Length) -> Area {
    let pitch_mm = pitch.get::<millimeter>();
    let crest_mm = crest.get::<millimeter>();
    if pitch_mm <= 0.0 {
        return Area::new::<square_millimeter>(0.0);
    }
    let tooth_mm =
        pitch_mm / 2.0 + 30f64.to_radians().tan() * (crest_mm - pitch_diameter.get::<millimeter>());
    let turns = engagement.get::<millimeter>() / pitch_mm;
    Area::new::<square_millimeter>(PI * crest_mm * turns * tooth_mm)
}

fn counted(thread: Thread, engagement: Length) -> Length {
    let most_mm = COUNTED_DIAMETERS * thread.major().get::<millimeter>();
    Length::new::<millimeter>(engagement.get::<millimeter>().clamp(0.0, most_mm))
}

/// Least crest diameter of a 6g bolt: d − (15 + 11·P) − (180·P^⅔ − 3.15/√P) µm (ISO 965-1).
fn least_crest(thread: &Screwed) -> Length {
    let pitch_mm = thread.pitch.get::<millimeter>();
    let allowance_um = 15.0 + 11.0 * pitch_mm;
    let tolerance_um = 180.0 * pitch_mm.powf(2.0 / 3.0) - 3.15 / pitch_mm.sqrt();
    thread.major - Length::new::<millimeter>((allowance_um + tolerance_um) / 1000.0)
}

/// Greatest pitch diameter of a 6H thread: d2 + 1.32 · 90·P^0.4·D^0.1 µm, D the geometric mean of
/// the diameter band (ISO 965-1, before rounding to preferred numbers).
fn greatest_pitch(thread: &Screwed) -> Length {
    let pitch_mm = thread.pitch.get::<millimeter>();
    let band_mm = band_mean_mm(thread.major.get::<millimeter>());
    let tolerance_um = 1.32 * 90.0 * pitch_mm.powf(0.4) * band_mm.powf(0.1);
    thread.pitch_diameter + Length::new::<millimeter>(tolerance_um / 1000.0)
}

/// Geometric mean of the ISO 965-1 diameter band that `major_mm` lies in; the bands double (nearly:
/// the standard rounds the last one to 45 mm).
fn band_mean_mm(major_mm: f64) -> f64 {
    let mut upper_mm = 5.6;
    while upper_mm < major_mm {
        upper_mm *= 2.0;
    }
    upper_mm / std::f64::consts::SQRT_2
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ISO 965-1 formulas worked by hand: 6g crest and 6H pitch diameter, µm off their basic size.
    #[test]
    fn limits_follow_iso_965_1() {
        let rows = [
            ("M4", 22.7 + 138.142, 118.201),
            ("M6", 26.0 + 176.850, 146.112),
            ("M10", 31.5 + 233.295, 171.840),
            ("M16", 37.0 + 283.505, 206.634),
            ("M24", 48.0 + 372.596, 260.518),
        ];
        for (name, crest_um, pitch_um) in rows {
            let thread = Thread::parse(name).expect("a size of the table");
            let sizes = Screwed::of(thread);
            let crest = (thread.major() - least_crest(&sizes)).get::<millimeter>() * 1000.0;
            let pitch = (greatest_pitch(&sizes) - thread.pitch_diameter()).get::<millimeter>() * 1000.0;
            assert!((crest - crest_um).abs() < 0.01, "{name}: crest {crest}");
            assert!((pitch - pitch_um).abs() < 0.1, "{name}: pitch {pitch}");
        }
    }
}
