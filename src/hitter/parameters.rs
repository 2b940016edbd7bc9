//! Every number that makes a hitter. What is known of each, fitted or pinned, is data: [`super::known`] for before
//! the fit, [`super::Posterior`] for after it.

/// Declares the parameters once: fields with their docs, their names, and the way to and from a list of values.
macro_rules! parameters {
    ($($(#[$doc:meta])* $name:ident,)*) => {
        /// Every number that makes a hitter. "Away" is away from him: the glove side for a same-side hitter.
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct Parameters { $($(#[$doc])* pub $name: f64,)* }

        /// How many parameters there are.
        pub const PARAMETERS: usize = [$(stringify!($name)),*].len();

        impl Parameters {
            /// Their names, in the order of every list.
            pub const NAMES: [&str; PARAMETERS] = [$(stringify!($name)),*];

            /// From values in that order.
            pub fn from_values([$($name),*]: [f64; PARAMETERS]) -> Self {
                Self { $($name),* }
            }

            /// The values in that order.
            pub fn values(&self) -> [f64; PARAMETERS] {
                [$(self.$name),*]
            }
        }
    };
}

parameters! {
    // What he sees.
    /// He must decide this long before he expects the ball at the plate, s.
    commit_s,
    /// Eyes' error of the height at the plate, in, after the reference time and at the reference speed.
    eyes_height_in,
    /// The same across the plate, in.
    eyes_side_in,
    /// Eyes' error of the arrival, ms: the place of a ball that falls or crosses fast is seen the worse for it.
    eyes_arrival_ms,
    /// Factor on eyes' errors against a pitcher of his own side.
    same_side_eyes,
    /// The velocity he sees is this old, s: it is read over a stretch of the flight.
    lag_s,
    // What he expects.
    /// Share of the arrival that is believed, not seen.
    arrival_believed,
    /// Before two strikes his believed arrival leans this share of the way to the fastest pitch.
    fastball_sit,
    /// Share of the expected movement that is a common anchor, not the pitch's own.
    anchor_share,
    /// The anchor's movement up, in.
    anchor_up_in,
    /// The anchor's movement to the glove side, in.
    anchor_glove_side_in,
    // Which pitch he takes it for.
    /// Error of the seen speed, natural log units.
    speed_sd,
    /// Error of the seen movement, in, were the whole flight seen.
    movement_sd_in,
    /// Error of the seen place of release, in.
    release_sd_in,
    /// Spread of the places he thinks worth a bet, in.
    hittable_sd_in,
    /// Before two strikes the log weight of a pitch falls by this with its lateness.
    fastball_lean,
    /// Lateness, s, from which it falls no further.
    fastball_lean_full_s,
    /// Share at which a pitch counts half as much as one thrown always; only where shares hardly matter.
    share_at_half,
    // Whether he swings.
    /// Most swings at a perfect place, with one strike.
    ceiling_other,
    /// The same on the first pitch.
    ceiling_first,
    /// The same when he is ahead and has no strike.
    ceiling_ahead,
    /// The same at three and nothing.
    ceiling_three_nothing,
    /// The same with two strikes.
    ceiling_two_strikes,
    /// Before two strikes swings fall with lateness by exp(-this) each 50 ms.
    slow_restraint,
    /// Height of the places he swings at, as a share of his zone.
    zone_height_factor,
    /// Half the width of the places he swings at, in.
    zone_half_width_in,
    /// Softness (standard deviation) of the edge of those places, in.
    zone_edge_in,
    /// Factor on both extents on the first pitch, against those with one strike.
    first_pitch_zone,
    /// The same when he is ahead and has no strike.
    ahead_zone,
    /// The same with two strikes.
    two_strike_zone,
    /// Their middle above the middle of his zone, in.
    zone_up_in,
    /// Their middle away from him, in from the middle of the plate.
    zone_away_in,
    // What he hits.
    /// Share of the aim's error in height that is left at contact.
    aim_error_height,
    /// The same across.
    aim_error_side,
    /// Far above the aim exp(-this) of that is left, far below exp(this): below, the aim is repaired worse.
    low_aim_repair,
    /// Hands' error in height, in, where he is most at ease.
    hands_height_in,
    /// The same along the bat, in.
    hands_side_in,
    /// Distance in height, in, at which the variance of the hands has doubled.
    comfort_height_in,
    /// The same across, in.
    comfort_side_in,
    /// Where he is most at ease across: away from him, in from the middle of the plate.
    comfort_away_in,
    /// Factor on the hands' error on the first pitch.
    first_pitch_hands,
    /// Factor on the errors of hands and timing with two strikes.
    two_strike_hands,
    /// Hands' error for each inch of late movement unlike the usual, in/in.
    odd_movement,
    /// The usual movement up, in.
    usual_up_in,
    /// The usual movement to the glove side, in.
    usual_glove_side_in,
    /// Error in time, ms.
    timing_ms,
    /// A ball an inch farther away than aimed must be met this much later, ms/in: the bat turns.
    turn_ms_per_in,
    /// Slope of the bat's upward path.
    attack_slope,
    /// Contact within this of the bat's axis, in: the radii of ball and bat.
    contact_height_in,
    /// Contact from this far toward the handle, in.
    contact_handle_in,
    /// Contact to this far toward the end, in.
    contact_end_in,
    /// Contact within this of the right time, ms.
    contact_timing_ms,
    /// Most contact there is.
    contact_ceiling,
    /// Width in height of the errors that leave contact solid, in.
    solid_height_in,
    /// The same along the bat, in.
    solid_side_in,
    /// The same in time, ms.
    solid_timing_ms,
    /// Most solid contact there is.
    solid_ceiling,
    /// Height of the places best hit hard, above the middle of his zone, in.
    power_up_in,
    /// Spread of those places in height, in.
    power_height_in,
    /// The same across, about the middle of the plate, in.
    power_side_in,
}

/// Where a parameter stands in every list; nothing for no parameter's name.
pub(super) fn place_of(name: &str) -> Option<usize> {
    Parameters::NAMES.iter().position(|known| *known == name)
}
