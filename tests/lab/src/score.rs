//! The command `score`: what the program says of every throw of a file, and how well it fits.

use std::error::Error;
use std::io::Write;
use std::path::Path;

use crate::constants::Constants;
use crate::day::Day;
use crate::evidence::{Evidence, said};
use crate::league::League;
use crate::losses::{Losses, Said, table};
use crate::meetings::Seen;

/// Writes one row a throw to `chances` and the four losses to `notes`; what the league is like and the
/// constants come from `league`.
///
/// # Errors
/// When a file cannot be read or the answer cannot be written.
pub fn score(
    throws: &Path,
    league: &Path,
    chances: &mut impl Write,
    notes: &mut impl Write,
) -> Result<(), Box<dyn Error>> {
    let league = Day::read(league)?;
    let constants = Constants::of(&league, |_| true);
    let evidence = Evidence::of(Day::read(throws)?, &League::of_day(&league));
    let averages: Vec<Said> = evidence.day.throws.iter().map(|throw| constants.said(throw)).collect();
    let mut answers = averages.clone();
    for (meeting, said) in evidence.meetings.iter().zip(said(&evidence.meetings)) {
        answers[meeting.row] = said;
    }
    writeln!(chances, "swing,contact_given_swing,solid_given_contact,called_given_take")?;
    for said in &answers {
        writeln!(chances, "{:.6},{:.6},{:.6},{:.6}", said.swing, said.contact, said.solid, said.called)?;
    }
    if let Some(refused) = &evidence.day.refused {
        writeln!(notes, "{refused}\nso no throw counts as measured")?;
    }
    let seen: Vec<Seen> = evidence.day.throws.iter().map(Seen::of).collect();
    let losses = |said: &[Said]| Losses::of(said.iter().copied().zip(seen.iter().copied()));
    let rows = [("the program", losses(&answers)), ("the league day's by pitch and side", losses(&averages))];
    let unmet = evidence.day.throws.len() - evidence.meetings.len();
    writeln!(notes, "{} throws; {unmet} without flight, place or side were answered with constants", seen.len())?;
    write!(notes, "{}", table(&rows))?;
    Ok(())
}
