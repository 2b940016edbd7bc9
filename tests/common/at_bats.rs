//! At-bats by brute force: the hitter of the design written a second time, with dice.
//!
//! Nothing is linearised and no integral is done by formula. Throws are drawn latent by latent and
//! flown; the hitter learns each pitch's habit from thousands of flights, sees the next one with
//! drawn noise, weighs which pitch it is, and swings a bat whose errors are drawn too. What happens
//! is counted. It shares with the model only the flight, the eyes' formulas and the parameters; it
//! is slow, and right within its counting error.

use arsenalfit::athlete::profile::Aim;
use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::inverse::{MIDDLE, throw_of_shape};
use arsenalfit::ball::flight::{Throw, Trajectory};
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{Side, Vec3};
use arsenalfit::base::stats::{Cholesky, NormalTable};
use arsenalfit::base::units::{INCH, MPH};
use arsenalfit::former::evaluate::{Stage, Thrown};
use arsenalfit::former::hitter::{Rates, ZONE};
use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256PlusPlus;

/// Release x, z; place x, z; velocity x, z; closing speed; as in section 6 of the design.
type Seen = [f64; 7];
/// Plate x, plate z, arrival.
type Met = [f64; 3];

/// How widely targets are scattered, as hitters know it, inches: the start values of the model.
const TARGETS_IN: [f64; 2] = [6.0, 7.0];

/// Dice with normal faces (Box and Muller, Ann. Math. Stat. 29 (1958) 610, from memory).
struct Dice(Xoshiro256PlusPlus);

impl Dice {
    fn normal(&mut self, sd: f64) -> f64 {
        let (a, b): (f64, f64) = (self.0.gen_range(f64::MIN_POSITIVE..1.0), self.0.r#gen());
        sd * (-2.0 * a.ln()).sqrt() * (std::f64::consts::TAU * b).cos()
    }
}

/// One pitch at one target, ready to be thrown again and again.
struct Thrower<'s> {
    stage: &'s Stage<'s>,
    pitch: Thrown,
    throw: Throw,
    /// Standard deviation of the sideways launch velocities that aiming adds, m/s.
    aim_sd: [f64; 2],
}

impl<'s> Thrower<'s> {
    fn new(stage: &'s Stage<'s>, pitch: Thrown, target: Location, dice: &mut Dice) -> Self {
        let Thrown { shape, release, spread, .. } = pitch;
        let throw = throw_of_shape(shape, release, target, stage.air);
        let mut thrower = Self { stage, pitch, throw, aim_sd: [0.0; 2] };
        // What speed, breaks and release explain of the scatter at the plate, counted.
        let crossings: Vec<[f64; 2]> =
            (0..4000).map(|_| thrower.throw(dice).fly().crossing()).map(|crossing| [crossing.x, crossing.z]).collect();
        let command = [spread.command_side_in * INCH, spread.command_height_in * INCH];
        let start = throw.fly().crossing();
        for axis in 0..2 {
            let explained = variance(crossings.iter().map(|c| c[axis]));
            let left = (command[axis].powi(2) - explained).max(0.25 * command[axis].powi(2));
            let mut turned = throw;
            let nudge = 0.01;
            let moved = if axis == 0 {
                turned.velocity.x += nudge;
                turned.fly().crossing().x - start.x
            } else {
                turned.velocity.z += nudge;
                turned.fly().crossing().z - start.z
            };
            thrower.aim_sd[axis] = left.sqrt() * nudge / moved;
        }
        thrower
    }

    fn throw(&self, dice: &mut Dice) -> Throw {
        let Thrown { shape: usual, release, spread, .. } = self.pitch;
        let speed = usual.speed() + dice.normal(spread.speed_mph * MPH);
        let shape = Shape {
            vertical_break_in: usual.vertical_break_in + dice.normal(spread.vertical_break_in),
            glove_side_break_in: usual.glove_side_break_in + dice.normal(spread.glove_side_break_in),
            ..usual
        };
        let bent = throw_of_shape(shape, release, MIDDLE, self.stage.air);
        let mut throw = self.throw;
        throw.velocity = throw.velocity * (speed / usual.speed());
        throw.velocity = throw.velocity + Vec3::new(dice.normal(self.aim_sd[0]), 0.0, dice.normal(self.aim_sd[1]));
        throw.forces.side = bent.forces.side;
        let release_sd = spread.release_in * INCH;
        throw.release = throw.release + Vec3::new(dice.normal(release_sd), 0.0, dice.normal(release_sd));
        throw
    }
}

fn variance(values: impl Iterator<Item = f64> + Clone) -> f64 {
    let count = values.clone().count() as f64;
    let mean = values.clone().sum::<f64>() / count;
    values.map(|v| (v - mean).powi(2)).sum::<f64>() / (count - 1.0)
}

/// What the hitter has learnt of a pitch.
struct Learnt {
    seen: Seen,
    met: Met,
    factor: Cholesky<7>,
    gain: [Seen; 3],
    left_sd: [f64; 2],
}

/// A hitter's look at a flight.
struct Look<'s> {
    stage: &'s Stage<'s>,
    side: Side,
    decision: f64,
}

impl Look<'_> {
    fn of(&self, throw: &Throw, noise_at: Vec3, dice: &mut Dice) -> (Seen, Met) {
        let path: Trajectory = throw.fly();
        let ball = path.at(self.decision);
        let crossing = path.crossing();
        let eyes = self.stage.hitter.eyes.on(self.side);
        let (place_x, place_z) = eyes.place_sd(noise_at, self.side);
        let turn = eyes.velocity_sd(noise_at, self.side);
        let seen = [
            throw.release.x + dice.normal(eyes.release_read),
            throw.release.z + dice.normal(eyes.release_read),
            ball.position.x + dice.normal(place_x),
            ball.position.z + dice.normal(place_z),
            ball.velocity.x + dice.normal(turn),
            ball.velocity.z + dice.normal(turn),
            -ball.velocity.y * (1.0 + dice.normal(eyes.speed_weber)),
        ];
        (seen, [crossing.x, crossing.z, crossing.time])
    }

    /// Where a pitch usually is when he decides.
    fn usual_place(&self, thrower: &Thrower) -> Vec3 {
        thrower.throw.fly().at(self.decision).position
    }

    fn learn(&self, thrower: &Thrower, throws: usize, dice: &mut Dice) -> Learnt {
        let usual = self.usual_place(thrower);
        let sample: Vec<(Seen, Met)> = (0..throws).map(|_| self.of(&thrower.throw(dice), usual, dice)).collect();
        let count = throws as f64;
        let mean = |read: &dyn Fn(&(Seen, Met)) -> f64| sample.iter().map(read).sum::<f64>() / count;
        let seen: Seen = std::array::from_fn(|i| mean(&|s| s.0[i]));
        let met: Met = std::array::from_fn(|i| mean(&|s| s.1[i]));
        let cov: [Seen; 7] =
            std::array::from_fn(|i| std::array::from_fn(|j| mean(&|s| (s.0[i] - seen[i]) * (s.0[j] - seen[j]))));
        let factor = Cholesky::of(&cov);
        let gain: [Seen; 3] = std::array::from_fn(|r| {
            let cross: Seen = std::array::from_fn(|j| mean(&|s| (s.1[r] - met[r]) * (s.0[j] - seen[j])));
            factor.solve(&cross)
        });
        let missed = |r: usize| {
            let rest = |s: &(Seen, Met)| {
                let told: f64 = (0..7).map(|j| gain[r][j] * (s.0[j] - seen[j])).sum();
                s.1[r] - met[r] - told
            };
            variance(sample.iter().map(rest)).sqrt()
        };
        Learnt { seen, met, factor, gain, left_sd: [missed(0), missed(1)] }
    }
}

impl Learnt {
    fn log_density(&self, sight: &Seen) -> f64 {
        let off = std::array::from_fn(|i| sight[i] - self.seen[i]);
        -self.factor.half_log_det - 0.5 * self.factor.forward(&off).iter().map(|x| x * x).sum::<f64>()
    }

    /// Plate x, z, arrival and chance of a strike.
    fn predict(&self, sight: &Seen) -> [f64; 4] {
        let [x, z, time] = std::array::from_fn(|r| {
            self.met[r] + (0..7).map(|j| self.gain[r][j] * (sight[j] - self.seen[j])).sum::<f64>()
        });
        [x, z, time, strike_chance([x, z], self.left_sd)]
    }
}

fn strike_chance(place: [f64; 2], sd: [f64; 2]) -> f64 {
    let cdf = |z: f64| NormalTable::shared().cdf_and_density(z).0;
    let across = cdf((ZONE.half_width - place[0]) / sd[0]) - cdf((-ZONE.half_width - place[0]) / sd[0]);
    across * (cdf((ZONE.top - place[1]) / sd[1]) - cdf((ZONE.bottom - place[1]) / sd[1]))
}

/// What happens to `pitches`, each thrown `throws` times at its target, when they are mixed so.
pub(crate) fn counted(stage: &Stage, side: Side, pitches: &[(Thrown, Aim)], mix: &[f64], throws: usize) -> Vec<Rates> {
    let mut dice = Dice(Xoshiro256PlusPlus::seed_from_u64(1));
    let look = Look { stage, side, decision: stage.decision() };
    let habits: Vec<Learnt> = pitches
        .iter()
        .map(|(pitch, _)| {
            let mut habit = *pitch;
            habit.spread.command_side_in = habit.spread.command_side_in.hypot(TARGETS_IN[0]);
            habit.spread.command_height_in = habit.spread.command_height_in.hypot(TARGETS_IN[1]);
            let thrower = Thrower::new(stage, habit, MIDDLE, &mut dice);
            look.learn(&thrower, 30_000, &mut dice)
        })
        .collect();
    pitches
        .iter()
        .map(|&(pitch, aim)| {
            let (away, height) = aim.place_in();
            let target = Location { glove_side_in: away * side.away_sign(), height_in: height };
            let thrower = Thrower::new(stage, pitch, target, &mut dice);
            let usual = look.usual_place(&thrower);
            let mut sum = [0.0; 5];
            for _ in 0..throws {
                let (sight, met) = look.of(&thrower.throw(&mut dice), usual, &mut dice);
                sum[at_bat(&look, &habits, mix, &sight, &met, &mut dice)] += 1.0 / throws as f64;
            }
            let [ball, called_strike, swing_and_miss, weak_contact, solid_contact] = sum;
            Rates { ball, called_strike, swing_and_miss, weak_contact, solid_contact }
        })
        .collect()
}

/// 0 ball, 1 called strike, 2 swing and miss, 3 weak contact, 4 solid contact.
fn at_bat(look: &Look, habits: &[Learnt], mix: &[f64], sight: &Seen, met: &Met, dice: &mut Dice) -> usize {
    let hitter = &look.stage.hitter;
    let logs: Vec<f64> = habits.iter().zip(mix).map(|(habit, share)| habit.log_density(sight) + share.ln()).collect();
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let total: f64 = logs.iter().map(|log| (log - most).exp()).sum();
    let mut guess = [0.0; 4];
    for (habit, log) in habits.iter().zip(&logs) {
        let belief = (log - most).exp() / total;
        for (sum, part) in guess.iter_mut().zip(habit.predict(sight)) {
            *sum += belief * part;
        }
    }
    let [x, z, time] = *met;
    let choice = &hitter.choice;
    let swing = choice.ceiling / (1.0 + (-choice.slope * (guess[3] - choice.midpoint)).exp());
    if dice.0.r#gen::<f64>() > swing {
        return usize::from(x.abs() < ZONE.half_width && (ZONE.bottom..ZONE.top).contains(&z));
    }
    let bat = &hitter.bat;
    let off = x.hypot(z - f64::midpoint(ZONE.bottom, ZONE.top)) / bat.comfort;
    let hands = 1.0 + off * off;
    let farther = (x - guess[0]) * look.side.away_sign();
    let late = time - guess[2] + bat.turn * farther + dice.normal(bat.timing_sd);
    let height = z - guess[1] + dice.normal(hands * bat.height_sd);
    let along = farther + dice.normal(hands * bat.along_sd);
    let touched = height.abs() < bat.reach_height
        && (-bat.reach_hands..bat.reach_end).contains(&along)
        && late.abs() < bat.reach_timing;
    let square = height.abs() < bat.solid_height && along.abs() < bat.solid_along && late.abs() < bat.solid_timing;
    if !touched {
        2
    } else if square {
        4
    } else {
        3
    }
}
