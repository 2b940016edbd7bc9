//! A first profile from a few facts: the file a coach goes on from.
//!
//! It writes what was said, and every key that may follow as a comment with its meaning, so that
//! nobody has to look one up. What it writes is read back before anybody sees it: a starter that
//! does not load is an error here and not a surprise later.

use std::fmt::Write as _;

use crate::ball::{Family, Shape};
use crate::base::geometry::Hand;

use super::{InputError, profile_from_toml};

/// What is known of an athlete at first.
#[derive(Debug, Clone, PartialEq)]
pub struct Starter {
    /// Who.
    pub name: String,
    /// Which hand throws.
    pub throws: Hand,
    /// Years, when known.
    pub age: Option<u8>,
    /// What he throws; at least one.
    pub pitches: Vec<(Family, Shape)>,
}

impl Starter {
    /// The profile as TOML, with comments; `origin` is the file name shown in errors.
    ///
    /// # Errors
    /// When what was said is no valid profile, such as a four-seam that falls.
    pub fn to_toml(&self, origin: &str) -> Result<String, InputError> {
        let text = self.text();
        profile_from_toml(&text, origin)?;
        Ok(text)
    }

    fn text(&self) -> String {
        let mut text = String::from(HEAD);
        // Writing to a string cannot fail.
        let _ = writeln!(text, "[athlete]\nname = {}\nthrows = \"{}\"", quoted(&self.name), self.throws);
        let _ = match self.age {
            Some(age) => writeln!(text, "age = {age}"),
            None => writeln!(text, "# age = 20                   # without it youth limits cannot be checked"),
        };
        text.push_str(BEFORE_PITCHES);
        for (index, (family, shape)) in self.pitches.iter().enumerate() {
            let _ = write!(text, "\n{}", self.pitch(index, *family, *shape));
        }
        text.push_str(AFTER_PITCHES);
        text
    }

    fn pitch(&self, index: usize, family: Family, shape: Shape) -> String {
        let more = if index == 0 { self.more_of_a_pitch() } else { String::new() };
        format!(
            "[[pitch]]\nname = {}\nfamily = \"{family}\"\nspeed_mph = {}\nvertical_break_in = {}\nglove_side_break_in = {}\n{more}",
            quoted(&self.pitch_name(index)),
            shape.speed_mph,
            shape.vertical_break_in,
            shape.glove_side_break_in,
        )
    }

    /// What else may be said of a pitch; the clock is a fastball's of this hand.
    fn more_of_a_pitch(&self) -> String {
        let clock = if self.throws == Hand::Right { "12:45" } else { "11:15" };
        MORE_OF_A_PITCH.replace("{clock}", clock)
    }

    /// The family's name, numbered from the second pitch of a family on.
    fn pitch_name(&self, index: usize) -> String {
        let family = self.pitches[index].0;
        match self.pitches[..index].iter().filter(|(other, _)| *other == family).count() {
            0 => family.name().to_owned(),
            earlier => format!("{family} {}", earlier + 1),
        }
    }
}

fn quoted(text: &str) -> String {
    toml::Value::String(text.to_owned()).to_string()
}

const HEAD: &str = "\
# A profile for arsenalfit. Lines that begin with # are comments: take the # away to say more.
# Breaks are for the whole flight, at the front of the plate: inches above (+) or below (-), and to
# the glove side (+) or arm side (-) of where the same throw would arrive with no sideways force.

";

const BEFORE_PITCHES: &str = "\
# level = \"college\"          # hitters faced: youth, high-school, college or professional
# against = \"drag-free\"      # what the unit counts movement against; \"gravity\": against gravity alone

# [release]
# slot_deg = 45              # arm angle above horizontal
# height_ft = 5.8
# side_ft = 2.1              # toward the throwing arm
# extension_ft = 6.0         # in front of the rubber
# supination = \"ordinary\"    # turning the hand around the ball: easy, ordinary or hard

# [air]                      # of the day the pitches were measured
# elevation_ft = 0
# temperature_f = 70
# pressure_inhg = 29.9       # at the field, not reduced to sea level
# humidity_percent = 50
";

const MORE_OF_A_PITCH: &str = "\
# spin_rpm = 2200
# active_fraction = 0.9      # 0 bullet spin, 1 all of it at work
# spin_clock = \"{clock}\"       # where the spin pushes, as the pitcher sees it
# throws = 40                # behind the averages
# against = \"drag-free\"      # when another unit measured this pitch
# release_height_ft = 5.8    # when this pitch leaves from elsewhere
# release_side_ft = 2.1
# spread = { speed_mph = 1.0, vertical_break_in = 2.0, glove_side_break_in = 2.0, command_side_in = 9.0, command_height_in = 9.5, release_in = 1.5 }
# usage = { same_side = 0.6, opposite_side = 0.5 }   # for every pitch, or for none
# results = { same_side = { pitches = 300, swings = 140, misses = 30, weak = 70 }, opposite_side = { pitches = 250, swings = 115, misses = 25, weak = 55 } }
# aim = { same_side = \"up-away\", opposite_side = \"up\" }
";

const AFTER_PITCHES: &str = "
# [faces]
# opposite_share = 0.5       # of the hitters, how many stand on the other side

# [limits]
# fastball_floor = 0.3       # fastballs together at least this share
# new_pitch_cap = 0.35       # a new pitch at most this share
# breaking_cap = 0.6         # breaking balls together at most this share
# seam_shift_in = 6          # movement that the seams may add to a new pitch; usual of each family without it

# [health]                   # flags a person sets; medical matters are for licensed professionals
# pain = false
# recent_injury = false
# no_new_breaking_ball = false
# months_off = 4             # without throwing, in the last twelve
";

#[cfg(test)]
mod tests {
    use super::*;

    fn shape(speed_mph: f64, vertical_break_in: f64, glove_side_break_in: f64) -> Shape {
        Shape { speed_mph, vertical_break_in, glove_side_break_in }
    }

    fn starter(name: &str) -> Starter {
        let pitches = vec![
            (Family::FourSeam, shape(91.0, 16.0, -7.0)),
            (Family::Slider, shape(82.5, 1.0, 5.0)),
            (Family::Slider, shape(84.0, 3.0, 3.0)),
        ];
        Starter { name: name.into(), throws: Hand::Left, age: None, pitches }
    }

    #[test]
    fn a_starter_loads_and_says_what_was_said() {
        for name in ["Invented One", "O'Quote \"Ace\" \\ <b>", "مثال"] {
            let text = starter(name).to_toml("new.toml").expect("it loads");
            let profile = profile_from_toml(&text, "new.toml").expect("it loads again");
            assert_eq!(profile.athlete.name, name);
            assert_eq!(profile.pitches[1].shape, shape(82.5, 1.0, 5.0));
            assert_eq!(profile.pitches[2].name, "slider 2");
        }
    }

    #[test]
    fn a_starter_with_every_comment_opened_still_loads() {
        let opened: Vec<String> = starter("Invented")
            .to_toml("new.toml")
            .expect("it loads")
            .lines()
            .map(|line| match line.strip_prefix("# ") {
                Some(rest) if rest.contains(" = ") || rest.starts_with('[') => rest.to_owned(),
                _ => line.to_owned(),
            })
            .filter(|line| !line.starts_with("usage"))
            .collect();
        profile_from_toml(&opened.join("\n"), "new.toml").unwrap_or_else(|error| panic!("{error}"));
    }

    #[test]
    fn an_impossible_pitch_is_refused_before_anything_is_written() {
        let broken = Starter { pitches: vec![(Family::FourSeam, shape(91.0, -16.0, 0.0))], ..starter("x") };
        assert!(broken.to_toml("new.toml").is_err());
    }
}
