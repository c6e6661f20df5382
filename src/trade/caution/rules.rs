//! The cautions as one table, gravest first; to add one, add a row.

use super::reading::*;
use super::situation::Situation;
use super::{Caution, Level};
use crate::trade::compound::Family;

/// A rule: when it holds, what is the danger and what to do.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Its name.
    pub id: &'static str,
    /// The danger in three or four words, where there is one line.
    pub short: &'static str,
    /// How grave it is.
    pub level: Level,
    when: fn(&Situation) -> bool,
    /// The danger, in general.
    pub danger: &'static str,
    /// The step's own numbers, where it has them.
    numbers: fn(&Situation) -> Option<String>,
    /// What to do.
    pub act: &'static str,
    /// Who says so.
    pub source: &'static str,
}

impl Rule {
    pub(super) fn fits(&self, step: &Situation) -> bool {
        (self.when)(step)
    }

    pub(super) fn caution(&self, step: Option<&Situation>) -> Caution {
        let danger = match step.and_then(self.numbers) {
            Some(numbers) => format!("{} {numbers}", self.danger),
            None => self.danger.to_owned(),
        };
        Caution {
            id: self.id,
            short: self.short,
            level: self.level,
            danger,
            act: self.act,
            source: self.source,
        }
    }
}

const PRACTICE: &str = "common practice, no source";
const NIOSH: &str = "DHHS (NIOSH) 94-110";
const SLING: &str = "ASME B30.9";

/// Every caution, gravest first.
pub static RULES: &[Rule] = &[
    Rule {
        id: "under-load",
        short: "a hung load can drop",
        level: Level::Stop,
        when: |s| lift(s, |l| l.under_load),
        danger: "A hung load can drop.",
        numbers: none,
        act: "Nobody under it, no hand between. Set it on stands or blocks first.",
        source: PRACTICE,
    },
    Rule {
        id: "hoist-over",
        short: "too heavy for the hoist",
        level: Level::Stop,
        when: |s| lift(s, |l| l.hoist_share.is_some_and(|share| beyond(share, 1.0))),
        danger: "Too heavy for the hoist as it is set.",
        numbers: hoist_numbers,
        act: "Shorten the boom, lighten the load or take a larger hoist.",
        source: PRACTICE,
    },
    Rule {
        id: "sling-flat",
        short: "sling legs too flat",
        level: Level::Stop,
        when: |s| {
            lift(s, |l| {
                leg_deg(l).is_some_and(|leg_deg| short_of(leg_deg, FLATTEST_DEG))
            })
        },
        danger: "Sling legs too flat: each pulls more than the load weighs.",
        numbers: leg_numbers,
        act: "Longer slings or a spreader, until the legs stand at 30° or steeper from the horizontal.",
        source: SLING,
    },
    Rule {
        id: "hands-refused",
        short: "not by hand",
        level: Level::Stop,
        when: |s| {
            lift(s, |l| {
                l.by_hand && index(l).is_some_and(|index| beyond(index, INDEX_FOR_NONE))
            })
        },
        danger: "Not by hand.",
        numbers: index_numbers,
        act: "Use a hoist.",
        source: NIOSH,
    },
    Rule {
        id: "heat-solvent",
        short: "solvent near heat",
        level: Level::Stop,
        when: |s| (heated(s) || s.running) && (vapour(s) || s.solvent_near),
        danger: "Solvent near heat: fire, and poisonous gas from chlorinated cleaners.",
        numbers: none,
        act: "No heat until the part is dry, the cleaner is put away and the air is changed.",
        source: PRACTICE,
    },
    Rule {
        id: "hot-fuel",
        short: "fuel near hot metal",
        level: Level::Stop,
        when: |s| (s.fuel.is_some() && s.hot_near.is_some()) || (s.fuel_near.is_some() && heated(s)),
        danger: "Fuel near hot metal: its vapour lights.",
        numbers: fuel_numbers,
        act: "Cold first: a hand can rest on it. No flame, no spark, fresh air; spilt fuel wiped up before any heat.",
        source: PRACTICE,
    },
    Rule {
        id: "press-over",
        short: "more than the press may give",
        level: Level::Stop,
        when: |s| press(s, |p| press_share(p).is_some_and(|share| beyond(share, 1.0))),
        danger: "More force than the press may give.",
        numbers: press_numbers,
        act: "Heat the bore or cool the part, or take a larger press.",
        source: PRACTICE,
    },
    Rule {
        id: "dry-ice",
        short: "dry ice burns, takes the air",
        level: Level::Stop,
        when: |s| cold(s, |c| c.dry_ice),
        danger: "Dry ice burns skin, and its gas takes the place of air.",
        numbers: none,
        act: "Moving fresh air, insulated gloves, eye protection; never in a closed vessel, pit or vehicle.",
        source: PRACTICE,
    },
    Rule {
        id: "liquid-nitrogen",
        short: "nitrogen freezes, takes the air",
        level: Level::Stop,
        when: |s| cold(s, |c| c.liquid_nitrogen),
        danger: "Liquid nitrogen freezes flesh at once, and its gas takes the place of air without a smell.",
        numbers: none,
        act: "Outdoors or in a strong draught, never alone; face shield, loose insulated gloves; never in a closed vessel.",
        source: PRACTICE,
    },
    Rule {
        id: "oil-flash",
        short: "oil bath near its flash point",
        level: Level::Stop,
        when: |s| heat(s, near_flash),
        danger: "The oil bath comes close to its flash point: it can catch fire.",
        numbers: flash_numbers,
        act: "An oil with a flash point well above (30 °C or more), or the oven; a lid and an extinguisher at hand.",
        source: PRACTICE,
    },
    Rule {
        id: "spring",
        short: "a spring can fly out",
        level: Level::Stop,
        when: |s| s.spring,
        danger: "A loaded spring can fly out.",
        numbers: none,
        act: "Eye protection; hold it with the right compressor and keep your face out of its line.",
        source: PRACTICE,
    },
    Rule {
        id: "heat-flame",
        short: "no flame on one spot",
        level: Level::Stop,
        when: |s| heat(s, |h| h.open_flame),
        danger: "A flame on one spot cracks and warps castings and lights oil.",
        numbers: none,
        act: "Heat evenly: oven, hot plate or hot air.",
        source: PRACTICE,
    },
    Rule {
        id: "heat-over",
        short: "hotter than the part stands",
        level: Level::Stop,
        when: |s| heat(s, |h| !h.by_manual && over_limit(h)),
        danger: "Hotter than the part stands.",
        numbers: heat_numbers,
        act: "Stay at the limit; cool the other part for the rest.",
        source: PRACTICE,
    },
    Rule {
        id: "heat-seals",
        short: "heat ruins seals",
        level: Level::Stop,
        when: |s| heat(s, |h| h.holds_seals_or_compound),
        danger: "Heat ruins seals, O-rings and cured compound in the part.",
        numbers: none,
        act: "Take them out first, or seat it another way.",
        source: PRACTICE,
    },
    Rule {
        id: "heat-soft-inside",
        short: "heat ruins what is inside",
        level: Level::Stop,
        when: |s| s.soft_inside.is_some() && heat(s, |h| !h.holds_seals_or_compound),
        danger: "Compound or a seal went in before: in what is heated it is ruined.",
        numbers: |s| in_quotes(&s.soft_inside),
        act: "See that it is in another part; else take it out first, or seat this another way.",
        source: PRACTICE,
    },
    Rule {
        id: "half-cured-lift",
        short: "a joint has not cured",
        level: Level::Stop,
        when: |s| s.half_cured.is_some() && s.lifting.is_some(),
        danger: "A joint has not cured, and nothing else holds it: lifted, it shifts or lets go.",
        numbers: |s| in_quotes(&s.half_cured),
        act: "Wait until its clock says it can be handled, or clamp it and lift by what is solid.",
        source: PRACTICE,
    },
    Rule {
        id: "locked-removal",
        short: "hot threadlocker: burns, fumes",
        level: Level::Stop,
        when: |s| s.high_strength_removal,
        danger: "High-strength threadlocker lets go at 230 to 320 °C: burns, fumes, spoilt seals.",
        numbers: none,
        act: "Seals, oil and solvent out of the way, fresh air, gloves; heat the thread and turn it while hot.",
        source: PRACTICE,
    },
    Rule {
        id: "press-through-balls",
        short: "never through the balls",
        level: Level::Stop,
        when: |s| press(s, |p| p.through_rolling_elements),
        danger: "Force through the balls dents the races, and they can burst.",
        numbers: none,
        act: "Push on the ring that is being fitted; support the case behind the bore.",
        source: PRACTICE,
    },
    Rule {
        id: "before-cure",
        short: "not cured: no oil, no load",
        level: Level::Stop,
        when: |s| s.before_cure,
        danger: "A compound has not cured: oil or load now makes a leak or a loose part.",
        numbers: none,
        act: "Wait until its clock says so.",
        source: PRACTICE,
    },
    Rule {
        id: "turning",
        short: "turning parts take fingers",
        level: Level::Stop,
        when: |s| s.turning,
        danger: "Turning parts take fingers.",
        numbers: none,
        act: "Spark plug out or its lead off and earthed, starter off; turn by hand, fingers clear of gears and slots.",
        source: PRACTICE,
    },
    Rule {
        id: "exhaust",
        short: "exhaust gas; engine tied down",
        level: Level::Stop,
        when: |s| s.running,
        danger: "Exhaust gas poisons unnoticed; a loose engine jumps.",
        numbers: none,
        act: "Outdoors or with the exhaust led out; bolted down, hands and clothes clear, a way to stop it in reach.",
        source: PRACTICE,
    },
    // From here on: mind this.
    Rule {
        id: "half-cured-turn",
        short: "a joint has not cured",
        level: Level::Care,
        when: |s| s.half_cured.is_some() && s.turning,
        danger: "A joint has not cured, and nothing else holds it: moved, it never holds.",
        numbers: |s| in_quotes(&s.half_cured),
        act: "Turn nothing that moves it, and don’t turn the case over, before its clock says it can be handled.",
        source: PRACTICE,
    },
    Rule {
        id: "hands-strain",
        short: "heavy for one person",
        level: Level::Care,
        when: |s| {
            lift(s, |l| {
                l.by_hand && index(l).is_some_and(|index| index > INDEX_FOR_ALL && index <= INDEX_FOR_NONE)
            })
        },
        danger: "Heavy for one person.",
        numbers: index_numbers,
        act: "Two people up to an index of 1.3, beyond it a hoist; close to the body, without a twist.",
        source: NIOSH,
    },
    Rule {
        id: "mass-unknown",
        short: "weight not known",
        level: Level::Care,
        when: |s| lift(s, |l| l.mass.is_none()),
        danger: "The weight is not known.",
        numbers: none,
        act: "Look it up or weigh it before it leaves the bench.",
        source: PRACTICE,
    },
    Rule {
        id: "hoist-near",
        short: "near the hoist’s limit",
        level: Level::Care,
        when: |s| {
            lift(s, |l| {
                l.hoist_share
                    .is_some_and(|share| share > NEAR_RATING && share <= 1.0)
            })
        },
        danger: "Near the hoist's limit.",
        numbers: hoist_numbers,
        act: "Boom in as far as it goes; do not move it sideways while it hangs.",
        source: PRACTICE,
    },
    Rule {
        id: "sling-shallow",
        short: "shallow sling legs",
        level: Level::Care,
        when: |s| {
            lift(s, |l| {
                leg_deg(l).is_some_and(|leg_deg| (FLATTEST_DEG..STEEP_DEG).contains(&leg_deg))
            })
        },
        danger: "Shallow sling legs pull much more than their share.",
        numbers: leg_numbers,
        act: "Check the rating of each leg; longer slings are better.",
        source: SLING,
    },
    Rule {
        id: "hoist",
        short: "loads swing and tip",
        level: Level::Care,
        when: |s| lift(s, |l| !l.by_hand),
        danger: "A load swings or tips when it leaves the ground.",
        numbers: none,
        act: "Hook over its middle, latch closed; lift a hand's breadth, look, then on. Keep it low.",
        source: PRACTICE,
    },
    Rule {
        id: "press-near",
        short: "near the press’s limit",
        level: Level::Care,
        when: |s| {
            press(s, |p| {
                press_share(p).is_some_and(|share| share > NEAR_RATING && share <= 1.0)
            })
        },
        danger: "Near the limit of the press.",
        numbers: press_numbers,
        act: "Heat the bore or cool the part; stop if it does not move.",
        source: PRACTICE,
    },
    Rule {
        id: "press",
        short: "pressed parts can burst",
        level: Level::Care,
        when: |s| press(s, |p| !p.struck),
        danger: "Pressed parts can burst or jump.",
        numbers: none,
        act: "Eye protection, guard closed, square and supported; hands out, stand to the side.",
        source: PRACTICE,
    },
    Rule {
        id: "struck",
        short: "hardened steel splinters",
        level: Level::Care,
        when: |s| press(s, |p| p.struck),
        danger: "Hardened steel splinters when struck.",
        numbers: none,
        act: "Eye protection; a soft drift on the ring being fitted, never steel on a bearing.",
        source: PRACTICE,
    },
    Rule {
        id: "press-unknown",
        short: "force not known: go slowly",
        level: Level::Care,
        when: |s| press(s, |p| !p.struck && press_share(p).is_none()),
        danger: "Force or press rating not known.",
        numbers: none,
        act: "Go slowly and stop if the force climbs without movement.",
        source: PRACTICE,
    },
    Rule {
        id: "heat-manual",
        short: "hotter than known here",
        level: Level::Care,
        when: |s| heat(s, |h| h.by_manual && over_limit(h)),
        danger: "The manual’s temperature is above the limit known here.",
        numbers: heat_numbers,
        act: "It stands for the part it names: see that this is that part, and that nothing in it melts.",
        source: PRACTICE,
    },
    Rule {
        id: "oil-bath",
        short: "hot oil burns, boils over",
        level: Level::Care,
        when: |s| heat(s, |h| h.oil_bath),
        danger: "Hot oil burns; water in it boils over; vapour over it lights.",
        numbers: none,
        act: "Dry part, thermometer in the bath, no flame near, lid at hand; flash point off its safety sheet.",
        source: PRACTICE,
    },
    Rule {
        id: "induction",
        short: "induction heater: pacemakers",
        level: Level::Care,
        when: |s| heat(s, |h| h.induction),
        danger: "An induction heater’s field disturbs pacemakers and leaves bearings magnetic.",
        numbers: none,
        act: "Nobody with an implant near; rings and watch off; take the magnetism out before it is fitted.",
        source: PRACTICE,
    },
    Rule {
        id: "hot-part",
        short: "hot metal looks like cold",
        level: Level::Care,
        when: |s| {
            heat(s, |h| {
                heat_celsius(h).is_none_or(|celsius| beyond(celsius, BURNS_CELSIUS))
            })
        },
        danger: "Hot metal looks like cold metal.",
        numbers: target_numbers,
        act: "Dry heat-proof gloves; mark it hot; nobody else near.",
        source: "ISO 13732-1, from memory",
    },
    Rule {
        id: "cold-brittle",
        short: "deep cold: brittle",
        level: Level::Care,
        when: |s| {
            cold(s, |c| {
                c.dry_ice || cold_celsius(c).is_some_and(|celsius| short_of(celsius, BRITTLE_CELSIUS))
            })
        },
        danger: "Deep cold makes steel and seals brittle.",
        numbers: none,
        act: "No blows, no seals in the part; let it slide in.",
        source: PRACTICE,
    },
    Rule {
        id: "cold-part",
        short: "cold metal freezes to skin",
        level: Level::Care,
        when: |s| {
            cold(s, |c| {
                c.dry_ice || cold_celsius(c).is_none_or(|celsius| short_of(celsius, FREEZES_CELSIUS))
            })
        },
        danger: "Cold metal freezes to skin, and water settles on it.",
        numbers: none,
        act: "Dry gloves; wipe off the frost and oil it afterwards, or it rusts.",
        source: PRACTICE,
    },
    Rule {
        id: "hot-oil",
        short: "hot oil scalds",
        level: Level::Care,
        when: |s| s.hot_oil,
        danger: "Hot oil scalds.",
        numbers: none,
        act: "Let it cool until a hand can rest on the case; gloves, eyes, a stable pan.",
        source: PRACTICE,
    },
    Rule {
        id: "running-parts",
        short: "running engine: sleeves, hair",
        level: Level::Care,
        when: |s| s.running,
        danger: "A running engine draws in sleeves and hair, and its exhaust burns.",
        numbers: none,
        act: "Nothing loose; look for leaks with a lamp and a piece of card, never with a hand; stop it before you tighten anything.",
        source: PRACTICE,
    },
    Rule {
        id: "air-vapour",
        short: "air makes solvent mist",
        level: Level::Care,
        when: |s| s.compressed_air && vapour(s),
        danger: "Air makes a mist of solvent that burns and is breathed in.",
        numbers: none,
        act: "Let it drain and dry by itself.",
        source: PRACTICE,
    },
    Rule {
        id: "air",
        short: "compressed air: eyes, skin",
        level: Level::Care,
        when: |s| s.compressed_air,
        danger: "Compressed air blows chips into eyes and air into skin.",
        numbers: none,
        act: "Eye protection, below 30 psi (2 bar), never at a person; never spin a bearing with it.",
        source: "29 CFR 1910.242(b)",
    },
    Rule {
        id: "solvent",
        short: "solvent vapour",
        level: Level::Care,
        when: vapour,
        danger: "Solvent vapour burns and dizzies.",
        numbers: none,
        act: "Fresh air, gloves, no flame, no sparks; rags into a closed metal bin.",
        source: PRACTICE,
    },
    Rule {
        id: "anaerobic-skin",
        short: "uncured compound: gloves",
        level: Level::Care,
        when: |s| wet(s, Family::Anaerobic),
        danger: "Uncured anaerobic compound can make skin allergic for good.",
        numbers: none,
        act: "Gloves; wash with soap, not solvent; its safety sheet comes first.",
        source: PRACTICE,
    },
    Rule {
        id: "silicone-vapour",
        short: "silicone vapour: air the room",
        level: Level::Care,
        when: |s| wet(s, Family::Silicone),
        danger: "Curing silicone gives off vapour.",
        numbers: none,
        act: "Fresh air, off the skin, out of the eyes.",
        source: PRACTICE,
    },
    Rule {
        id: "gauging",
        short: "don’t turn the shaft",
        level: Level::Care,
        when: |s| s.gauging,
        danger: "A turn of the shaft smears the plastic: it then tells a clearance that isn’t there.",
        numbers: none,
        act: "Never turn the shaft while it lies in the bearing. Wipe all of it away before oil goes on.",
        source: PRACTICE,
    },
];
