//! One `[[pitch]]` section: its keys and ranges, and how it becomes a [`Pitch`].
//!
//! The draft keeps everything as the file says it; only [`PitchDraft::fill`] fills gaps and turns
//! a left-hander's clock into a right-hander's. Whether the numbers agree with each other and
//! with physics is asked in [`super::pitch_checks`].

use crate::athlete::profile::{Aim, Level, PerSide, Pitch, Results, Spread};
use crate::ball::flight::Air;
use crate::ball::flight::inverse::release_point;
use crate::ball::spin::MOST_RPM;
use crate::ball::{Against, FASTEST_MPH, Family, Release, SLOWEST_MPH, Shape};
use crate::base::geometry::{Clock, Hand, Side};

use super::assumptions::{Assumptions, Filler};
use super::defaults;
use super::error::visible;
use super::fields::{At, Fields};
use super::near_words::nearest;
use super::outline::Content;
use super::session_file::MOST_THROWS;
use super::trade_words::{self, Meant};

/// As many throws as a session may have: what is made of one is always a profile.
const MOST_COUNTED: u32 = 2_000_000;
const _: () = assert!(MOST_COUNTED as usize == MOST_THROWS);

/// What all pitches of a profile share.
pub(super) struct Common {
    pub(super) hand: Hand,
    pub(super) level: Level,
    /// What movement counts against where a pitch does not say, when it is told.
    pub(super) against: Option<Against>,
    pub(super) release: Release,
    pub(super) air: Air,
}

/// A pitch as written.
pub(super) struct PitchDraft {
    pub(super) name: Option<At<String>>,
    family: Option<At<Named>>,
    pub(super) speed_mph: Option<At<f64>>,
    pub(super) vertical_break_in: Option<At<f64>>,
    pub(super) glove_side_break_in: Option<At<f64>>,
    pub(super) spin_rpm: Option<At<f64>>,
    pub(super) active_fraction: Option<At<f64>>,
    pub(super) spin_clock: Option<At<Clock>>,
    pub(super) against: Option<At<Against>>,
    pub(super) usage: PerSide<Option<At<f64>>>,
    /// Where a usage that was left out is missed.
    pub(super) place: At<()>,
    throws: Option<At<u32>>,
    release_height_ft: Option<At<f64>>,
    release_side_ft: Option<At<f64>>,
    spread: SpreadDraft,
    results: PerSide<Option<Results>>,
    aim: PerSide<Option<Aim>>,
}

impl PitchDraft {
    pub(super) fn read(fields: &mut Fields) -> Self {
        fields.needs(&["name", "family", "speed_mph", "vertical_break_in", "glove_side_break_in"]);
        Self {
            place: fields.place(),
            name: fields.text("name"),
            family: read_family(fields),
            speed_mph: fields.number("speed_mph", SLOWEST_MPH..=FASTEST_MPH),
            vertical_break_in: fields.number("vertical_break_in", -40.0..=40.0),
            glove_side_break_in: fields.number("glove_side_break_in", -40.0..=40.0),
            against: fields.choice("against", &Against::ALL, Against::name),
            spin_rpm: fields.number("spin_rpm", 0.0..=MOST_RPM),
            active_fraction: fields.number("active_fraction", 0.0..=1.0),
            spin_clock: read_clock(fields),
            release_height_ft: fields.number("release_height_ft", 1.0..=8.0),
            release_side_ft: fields.number("release_side_ft", -1.0..=5.0),
            throws: fields.whole("throws", 1..=MOST_COUNTED),
            spread: fields.section("spread", SpreadDraft::read),
            usage: fields.section("usage", |usage| per_side(|side| usage.number(side, 0.0..=1.0))),
            results: fields.section("results", |results| per_side(|side| results.section(side, read_results))),
            aim: fields
                .section("aim", |aim| per_side(|side| aim.choice(side, &Aim::ALL, Aim::name).map(|aim| aim.value))),
        }
    }

    /// The family, if it could be read.
    pub(super) fn family(&self) -> Option<Family> {
        self.family.as_ref().map(|family| family.value.meant.value)
    }

    /// The finished pitch, hand-free; nothing if a required value is missing.
    pub(super) fn fill(self, common: &Common, told: &mut Assumptions) -> Option<Pitch> {
        let name = self.name?.value;
        let Named { meant, word } = self.family?.value;
        let family = meant.value;
        if meant.is_open {
            told.say(format!("{name}: its family, written \"{word}\", is taken as {family}"));
        }
        let (throws, spread) = told.about(&name, |filler| {
            let phrase = format!("{} throws behind the averages", defaults::THROWS);
            let throws = filler.or(self.throws, defaults::THROWS, phrase);
            (throws, self.spread.fill(family, common.level, filler))
        });
        let read = Shape {
            speed_mph: self.speed_mph?.value,
            vertical_break_in: self.vertical_break_in?.value,
            glove_side_break_in: self.glove_side_break_in?.value,
        };
        let release_height_ft = self.release_height_ft.map(|height| height.value);
        let release_side_ft = self.release_side_ft.map(|side| side.value);
        let release = Release {
            height_ft: release_height_ft.unwrap_or(common.release.height_ft),
            side_ft: release_side_ft.unwrap_or(common.release.side_ft),
            ..common.release
        };
        let against = self.against.map(|against| against.value).or(common.against);
        Some(Pitch {
            name,
            family,
            shape: against.unwrap_or_default().drag_free(
                read,
                release_point(release),
                family.usual_place(),
                common.air,
            ),
            against,
            spin_rpm: self.spin_rpm.map(|spin| spin.value),
            active_fraction: self.active_fraction.map(|fraction| fraction.value),
            spin_clock: self.spin_clock.map(|clock| clock.value.for_hand(common.hand)),
            release_height_ft,
            release_side_ft,
            spread,
            throws,
            usage: PerSide {
                same: self.usage.same.map(|at| at.value),
                opposite: self.usage.opposite.map(|at| at.value),
            },
            results: self.results,
            aim: self.aim,
        })
    }
}

/// The key under which things against this side of hitter are written.
pub(super) fn side_key(side: Side) -> &'static str {
    match side {
        Side::Same => "same_side",
        Side::Opposite => "opposite_side",
    }
}

/// One answer for each side, by the side's key.
fn per_side<T>(mut read: impl FnMut(&'static str) -> T) -> PerSide<T> {
    PerSide::from_fn(|side| read(side_key(side)))
}

/// A family, and the word it is written with.
struct Named {
    meant: Meant<Family>,
    word: String,
}

/// The family, by any of the trade's words.
fn read_family(fields: &mut Fields) -> Option<At<Named>> {
    let names = Family::ALL.map(Family::name);
    let named = |word: &str| Some(Named { meant: trade_words::family(word)?, word: visible(word.trim()) });
    let near = |word: &str| nearest(word, &names).map(|name| format!("did you mean \"{name}\"?"));
    let allowed = format!("one of {}", names.join(", "));
    fields.parsed("family", Content::Word(names.to_vec()), &allowed, named, near)
}

fn read_clock(fields: &mut Fields) -> Option<At<Clock>> {
    let hint = "12:00 is backspin, 6:00 topspin; seen by the pitcher, a right-hander's glove side is 9:00";
    fields.parsed(
        "spin_clock",
        Content::Clock,
        "a clock position in quotes, from \"12:00\" to \"11:59\"",
        |text| text.parse().ok(),
        |_| Some(hint.to_owned()),
    )
}

/// The spread as written.
struct SpreadDraft {
    speed_mph: Option<At<f64>>,
    vertical_break_in: Option<At<f64>>,
    glove_side_break_in: Option<At<f64>>,
    command_side_in: Option<At<f64>>,
    command_height_in: Option<At<f64>>,
    release_in: Option<At<f64>>,
}

impl SpreadDraft {
    /// The lower ends keep every spread above zero: nobody throws twice the same.
    fn read(fields: &mut Fields) -> Self {
        Self {
            speed_mph: fields.number("speed_mph", 0.1..=8.0),
            vertical_break_in: fields.number("vertical_break_in", 0.1..=15.0),
            glove_side_break_in: fields.number("glove_side_break_in", 0.1..=15.0),
            command_side_in: fields.number("command_side_in", 0.5..=40.0),
            command_height_in: fields.number("command_height_in", 0.5..=40.0),
            release_in: fields.number("release_in", 0.1..=12.0),
        }
    }

    /// The spread, what is not given being told in one phrase.
    fn fill(self, family: Family, level: Level, filler: &mut Filler) -> Spread {
        let usual = Spread::usual(family, level);
        let mut filled = Vec::new();
        let mut or = |given: Option<At<f64>>, usual: f64, what: &str, unit: &str| {
            given.map_or_else(
                || {
                    filled.push(format!("{what} {usual:.1} {unit}"));
                    usual
                },
                |given| given.value,
            )
        };
        let spread = Spread {
            speed_mph: or(self.speed_mph, usual.speed_mph, "speed", "mph"),
            vertical_break_in: or(self.vertical_break_in, usual.vertical_break_in, "vertical break", "in"),
            glove_side_break_in: or(self.glove_side_break_in, usual.glove_side_break_in, "glove-side break", "in"),
            command_side_in: or(self.command_side_in, usual.command_side_in, "command sideways", "in"),
            command_height_in: or(self.command_height_in, usual.command_height_in, "command up and down", "in"),
            release_in: or(self.release_in, usual.release_in, "release", "in"),
        };
        if !filled.is_empty() {
            let wider = Spread::factor(level);
            let wider = if wider > 1.0 { format!(", {wider} times a professional's") } else { String::new() };
            let spread = filled.join(", ");
            filler.note(format!("the throw-to-throw spread of a {} arm{wider} ({spread})", level.name()));
        }
        spread
    }
}

/// Results against one side; each count must be at most the one it is part of.
fn read_results(fields: &mut Fields) -> Option<Results> {
    fields.needs(&["pitches", "swings", "misses"]);
    let pitches = fields.whole("pitches", 0..=MOST_COUNTED);
    let swings = fields.whole("swings", 0..=MOST_COUNTED);
    let misses = fields.whole("misses", 0..=MOST_COUNTED);
    let weak = fields.whole("weak", 0..=MOST_COUNTED);
    let (pitches, swings, misses) = (pitches?.value, swings?, misses?);
    let contacts = swings.value.saturating_sub(misses.value);
    let at_most = |count: &At<u32>, most: u32, of: &str| {
        if count.value > most {
            let fault = count.fault(count.value.to_string(), format!("at most {most}, the number of {of}"));
            fields.faults().add(fault.with_hint(format!("`{}` is a part of the {of}", last_key(&count.field))));
        }
    };
    at_most(&swings, pitches, "pitches");
    at_most(&misses, swings.value, "swings");
    if let Some(weak) = &weak {
        at_most(weak, contacts, "contacts (swings less misses)");
    }
    Some(Results { pitches, swings: swings.value, misses: misses.value, weak: weak.map(|weak| weak.value) })
}

fn last_key(field: &str) -> &str {
    field.rsplit('.').next().unwrap_or(field)
}
