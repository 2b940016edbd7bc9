//! The single sections of a profile: athlete, release, air, limits and health.
//!
//! For each: its keys and ranges, the contradictions it can hold by itself, and what is filled in
//! for the keys left out. Contradictions with the pitches are in [`super::arsenal_checks`].

use crate::athlete::profile::{Athlete, Health, Level, Limits};
use crate::ball::Family;
use crate::ball::{Against, Release, Supination, Weather};
use crate::base::geometry::Hand;
use crate::base::units::FOOT;

use super::assumptions::Filler;
use super::defaults;
use super::fields::{At, Faults, Fields};

/// `[athlete]` as written.
pub(super) struct AthleteDraft {
    name: Option<At<String>>,
    throws: Option<At<Hand>>,
    age: Option<At<u32>>,
    level: Option<At<Level>>,
    against: Option<At<Against>>,
}

impl AthleteDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        fields.needs(&["name", "throws"]);
        Self {
            name: fields.text("name"),
            throws: fields.hand("throws"),
            age: fields.whole("age", 5..=60),
            level: fields.choice("level", &Level::ALL, Level::name),
            against: fields.choice("against", &Against::ALL, Against::name),
        }
    }

    /// The throwing hand, if it could be read.
    pub(super) fn hand(&self) -> Option<Hand> {
        self.throws.as_ref().map(|throws| throws.value)
    }

    /// What the pitches' movement counts against, where they do not say it themselves.
    pub(super) fn against(&self) -> Option<Against> {
        self.against.as_ref().map(|against| against.value)
    }

    /// The level must be one that hitters of about the athlete's age play at.
    pub(super) fn check(&self, faults: &Faults) {
        let (Some(age), Some(level)) = (&self.age, &self.level) else {
            return;
        };
        // Common practice, no published source; wide enough for early and late starters.
        let ages = match level.value {
            Level::Youth => 5..=16,
            Level::HighSchool => 13..=20,
            Level::College | Level::Professional => 16..=60,
        };
        if !ages.contains(&age.value) {
            let found = format!("\"{}\" at the age of {}", level.value.name(), age.value);
            let allowed = format!("a level for that age; this one is for {} to {}", ages.start(), ages.end());
            let usual = defaults::level_at(age.value).name();
            faults
                .add(level.fault(found, allowed).with_hint(format!("\"{usual}\" is usual at this age; or mend `age`")));
        }
    }

    pub(super) fn fill(self, filler: &mut Filler) -> Option<Athlete> {
        let age = self.age.map(|age| age.value);
        let (level, phrase) = match age {
            Some(age) => {
                let level = defaults::level_at(age);
                (level, format!("{} hitters, from the age of {age}", level.name()))
            }
            None => (Level::College, "college hitters".into()),
        };
        Some(Athlete {
            name: self.name?.value,
            throws: self.throws?.value,
            age: age.and_then(|age| u8::try_from(age).ok()),
            level: filler.or(self.level, level, phrase),
        })
    }
}

/// `[release]` as written.
pub(super) struct ReleaseDraft {
    slot_deg: Option<At<f64>>,
    height_ft: Option<At<f64>>,
    side_ft: Option<At<f64>>,
    extension_ft: Option<At<f64>>,
    supination: Option<At<Supination>>,
}

impl ReleaseDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            slot_deg: fields.number("slot_deg", 0.0..=90.0),
            height_ft: fields.number("height_ft", 1.0..=8.0),
            side_ft: fields.number("side_ft", -1.0..=5.0),
            extension_ft: fields.number("extension_ft", 3.0..=8.5),
            supination: fields.choice("supination", &Supination::ALL, Supination::name),
        }
    }

    pub(super) fn fill(self, filler: &mut Filler) -> Release {
        use defaults::{EXTENSION_FT, HEIGHT_FT, SLOT_DEG};
        let slot_deg = filler.or(self.slot_deg, SLOT_DEG, format!("a slot of {SLOT_DEG} degrees"));
        let side_ft = defaults::side_ft(slot_deg);
        Release {
            slot_deg,
            height_ft: filler.or(self.height_ft, HEIGHT_FT, format!("a height of {HEIGHT_FT} ft")),
            side_ft: filler.or(self.side_ft, side_ft, format!("{side_ft:.1} ft to the arm side (from the slot)")),
            extension_ft: filler.or(self.extension_ft, EXTENSION_FT, format!("an extension of {EXTENSION_FT} ft")),
            supination: filler.or(self.supination, Supination::Ordinary, "ordinary supination"),
        }
    }
}

/// `[air]` as written.
pub(super) struct AirDraft {
    elevation_ft: Option<At<f64>>,
    temperature_f: Option<At<f64>>,
    pressure_inhg: Option<At<f64>>,
    humidity_percent: Option<At<f64>>,
}

impl AirDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            elevation_ft: fields.number("elevation_ft", -1500.0..=15_000.0),
            temperature_f: fields.number("temperature_f", -20.0..=130.0),
            pressure_inhg: fields.number("pressure_inhg", 18.0..=32.0),
            humidity_percent: fields.number("humidity_percent", 0.0..=100.0),
        }
    }

    /// Whether anything is said.
    pub(super) fn is_given(&self) -> bool {
        let all = [&self.elevation_ft, &self.temperature_f, &self.pressure_inhg, &self.humidity_percent];
        all.into_iter().any(Option::is_some)
    }

    /// Humidity means nothing without a temperature, and a station's pressure falls with elevation.
    pub(super) fn check(&self, faults: &Faults) {
        if let (Some(humidity), None) = (&self.humidity_percent, &self.temperature_f) {
            let fault =
                humidity.fault(format!("{} without a temperature", humidity.value), "given with `temperature_f`");
            faults.add(fault.with_hint("add `temperature_f`, or leave the humidity out"));
        }
        if let (Some(elevation), Some(pressure)) = (&self.elevation_ft, &self.pressure_inhg) {
            let usual = standard_pressure_inhg(elevation.value);
            if (pressure.value - usual).abs() > WEATHER_SWING_INHG {
                let found = format!("{} at {} ft", pressure.value, elevation.value);
                let allowed = format!("within {WEATHER_SWING_INHG} of {usual:.1}, the usual pressure there");
                let hint = "give the station pressure, not the one reduced to sea level, or leave `elevation_ft` out";
                faults.add(pressure.fault(found, allowed).with_hint(hint));
            }
        }
    }

    pub(super) fn fill(self, filler: &mut Filler) -> Weather {
        let humidity_percent = if self.temperature_f.is_some() {
            let percent = defaults::HUMIDITY_PERCENT;
            filler.or(self.humidity_percent, percent, format!("a humidity of {percent} percent"))
        } else {
            filler.note("dry air at the standard temperature");
            0.0
        };
        let elevation_ft = self.elevation_ft.map(|elevation| elevation.value);
        if elevation_ft.is_none() && self.pressure_inhg.is_none() {
            filler.note("sea level");
        }
        Weather {
            elevation_ft: elevation_ft.unwrap_or(0.0),
            temperature_f: self.temperature_f.map(|temperature| temperature.value),
            pressure_inhg: self.pressure_inhg.map(|pressure| pressure.value),
            humidity_percent,
        }
    }
}

/// How far weather moves the pressure from its usual value: more than any storm inland.
const WEATHER_SWING_INHG: f64 = 2.0;

/// Pressure of the US Standard Atmosphere 1976.
fn standard_pressure_inhg(elevation_ft: f64) -> f64 {
    29.921 * (1.0 - elevation_ft * FOOT / 44_329.0).powf(5.255_876)
}

/// `[limits]` as written.
pub(super) struct LimitsDraft {
    pub(super) fastball_floor: Option<At<f64>>,
    pub(super) breaking_cap: Option<At<f64>>,
    new_pitch_cap: Option<At<f64>>,
    seam_shift_in: Option<At<f64>>,
}

impl LimitsDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            fastball_floor: fields.number("fastball_floor", 0.0..=1.0),
            new_pitch_cap: fields.number("new_pitch_cap", 0.0..=1.0),
            breaking_cap: fields.number("breaking_cap", 0.0..=1.0),
            seam_shift_in: fields.number("seam_shift_in", 0.0..=10.0),
        }
    }

    /// The limits; a default that these families cannot meet gives way.
    pub(super) fn fill(self, families: &[Family], filler: &mut Filler) -> Limits {
        use defaults::{BREAKING_CAP, FASTBALL_FLOOR, NEW_PITCH_CAP};
        let (floor, floor_phrase) = if families.iter().any(|family| family.is_fastball()) {
            (FASTBALL_FLOOR, format!("at least {} fastballs", percent(FASTBALL_FLOOR)))
        } else {
            (0.0, "no least share of fastballs, as none is thrown".into())
        };
        let (cap, cap_phrase) = if families.iter().all(|family| family.is_breaking()) {
            (1.0, "no cap on breaking balls, as nothing else is thrown".into())
        } else {
            (BREAKING_CAP, format!("at most {} breaking balls", percent(BREAKING_CAP)))
        };
        let new_phrase = format!("at most {} for a new pitch", percent(NEW_PITCH_CAP));
        Limits {
            fastball_floor: filler.or(self.fastball_floor, floor, floor_phrase),
            new_pitch_cap: filler.or(self.new_pitch_cap, NEW_PITCH_CAP, new_phrase),
            breaking_cap: filler.or(self.breaking_cap, cap, cap_phrase),
            seam_shift_in: self.seam_shift_in.map_or_else(
                || {
                    filler.note("the seams' push that is usual of each family");
                    None
                },
                |given| Some(given.value),
            ),
        }
    }
}

fn percent(share: f64) -> String {
    format!("{:.0} percent", 100.0 * share)
}

/// `[health]` as written.
pub(super) struct HealthDraft {
    pain: Option<At<bool>>,
    recent_injury: Option<At<bool>>,
    no_new_breaking_ball: Option<At<bool>>,
    months_off: Option<At<u32>>,
}

impl HealthDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            pain: fields.flag("pain"),
            recent_injury: fields.flag("recent_injury"),
            no_new_breaking_ball: fields.flag("no_new_breaking_ball"),
            months_off: fields.whole("months_off", 0..=12),
        }
    }

    pub(super) fn fill(self, filler: &mut Filler) -> Health {
        Health {
            pain: filler.or(self.pain, false, "no pain"),
            recent_injury: filler.or(self.recent_injury, false, "no recent injury"),
            no_new_breaking_ball: filler.or(self.no_new_breaking_ball, false, "no ban on a new breaking ball"),
            months_off: self.months_off.and_then(|months| u8::try_from(months.value).ok()),
        }
    }
}
