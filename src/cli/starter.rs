//! The command `new`: a first profile from flags or from answers.

use std::io::{self, BufRead, IsTerminal, Write};

use crate::ball::{Family, Shape};
use crate::base::geometry::Hand;
use crate::files::{Fault, InputError, Starter, shown_name};
use crate::report::command_line;

use super::Failure;
use super::args::{NewArgs, age, hand, pitch};
use super::files::write_whole;
use super::outputs::Output;

/// Writes the starter and says so.
pub(super) fn new(args: &NewArgs) -> Result<String, Failure> {
    let output = Output { flag: "FILE", path: &args.file, force: args.force };
    output.standing()?;
    let origin = shown_name(&args.file);
    let starter = starter(args)?;
    let text = starter.to_toml(&origin).map_err(|error| as_said(&starter, error))?;
    write_whole(output, &text)?;
    Ok(format!(
        "Wrote {origin}. It holds what you said and every key that may follow, as a comment.\nNext: {}\n",
        command_line(&["arsenalfit", "check", &origin])
    ))
}

/// A fault in the profile as one in what was said: the file it points at was never written.
fn as_said(starter: &Starter, error: InputError) -> Failure {
    let InputError::Faulty { faults, .. } = &error else { return error.into() };
    let Some(fault) = faults.first() else { return error.into() };
    let more = faults.len() - 1;
    let others = if more == 0 { String::new() } else { format!("; {more} more to mend after it") };
    Failure::Request {
        problem: format!("{} is {}{others}", said_as(starter, fault), fault.found),
        allowed: fault.allowed.clone(),
        hint: fault.hint.clone().unwrap_or_default(),
    }
}

/// `the glove-side break of --pitch "four-seam 88 15 9"` for `pitch[1].glove_side_break_in`.
fn said_as(starter: &Starter, fault: &Fault) -> String {
    let number = fault.field.strip_prefix("pitch[").and_then(|rest| rest.split_once(']'));
    let pitch = number.and_then(|(place, key)| {
        let place: usize = place.parse().ok()?;
        Some((starter.pitches.get(place.checked_sub(1)?)?, key.trim_start_matches('.')))
    });
    let Some(((family, shape), key)) = pitch else {
        return fault.field.strip_prefix("athlete.").map_or(fault.field.clone(), |flag| format!("--{flag}"));
    };
    let what = match key {
        "speed_mph" => "the speed of ",
        "vertical_break_in" => "the vertical break of ",
        "glove_side_break_in" => "the glove-side break of ",
        _ => "",
    };
    let numbers =
        [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in].map(|number| number.to_string());
    format!("{what}--pitch \"{family} {}\"", numbers.join(" "))
}

/// From the flags; what they leave open is asked when somebody is there to answer.
fn starter(args: &NewArgs) -> Result<Starter, Failure> {
    let can_ask = io::stdin().is_terminal() && io::stderr().is_terminal();
    let mut starter = Starter {
        name: args.name.clone().unwrap_or_else(|| "Unnamed Athlete".into()),
        throws: args.throws.unwrap_or(Hand::Right),
        age: args.age,
        pitches: args.pitches.clone(),
    };
    if args.throws.is_some() && !args.pitches.is_empty() {
        return Ok(starter);
    }
    if !can_ask {
        return Err(Failure::request(
            "--throws or --pitch is missing",
            "say both, such as --throws right --pitch \"four-seam 91 16 -7\"; on a terminal the questions are asked one \
             by one",
        ));
    }
    ask_the_rest(args, &mut starter, &mut Asker { answers: io::stdin().lock() })?;
    Ok(starter)
}

fn ask_the_rest(args: &NewArgs, starter: &mut Starter, asker: &mut Asker<impl BufRead>) -> Result<(), Failure> {
    if args.name.is_none() {
        starter.name = asker.ask("Name of the athlete: ", |text| Ok(text.to_owned()))?;
    }
    if args.throws.is_none() {
        starter.throws = asker.ask("Throws (right or left): ", hand)?;
    }
    if args.age.is_none() {
        let known = |text: &str| if text.is_empty() { Ok(None) } else { age(text).map(Some) };
        starter.age = asker.ask_or_nothing("Age (empty if not known): ", known)?;
    }
    while let Some(one) = next_pitch(starter, asker)? {
        starter.pitches.push(one);
    }
    Ok(())
}

/// One more pitch; the first is needed, an empty line ends the rest.
fn next_pitch(starter: &Starter, asker: &mut Asker<impl BufRead>) -> Result<Option<(Family, Shape)>, Failure> {
    let question = "A pitch as family, mph, vertical and glove-side break, such as four-seam 91 16 -7";
    if starter.pitches.is_empty() {
        return asker.ask(&format!("{question}: "), |text| pitch(text).map(Some));
    }
    asker.ask_or_nothing("Another pitch (empty to end): ", |text| {
        if text.is_empty() { Ok(None) } else { pitch(text).map(Some) }
    })
}

/// Asks on standard error, reads one line, asks again until the answer will do.
struct Asker<R> {
    answers: R,
}

impl<R: BufRead> Asker<R> {
    fn ask<T>(&mut self, question: &str, read: impl Fn(&str) -> Result<T, String>) -> Result<T, Failure> {
        self.ask_or_nothing(question, |text| if text.is_empty() { Err("answered".into()) } else { read(text) })
    }

    fn ask_or_nothing<T>(&mut self, question: &str, read: impl Fn(&str) -> Result<T, String>) -> Result<T, Failure> {
        loop {
            let mut err = io::stderr().lock();
            // Nobody to ask is told by the missing answer.
            let _ = write!(err, "{question}").and_then(|()| err.flush());
            let mut line = String::new();
            if self.answers.read_line(&mut line)? == 0 {
                return Err(Failure::request("the questions were not answered", "nothing was written; start again"));
            }
            match read(line.trim()) {
                Ok(answer) => return Ok(answer),
                Err(problem) => {
                    let _ = writeln!(err, "  must be {problem}");
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_answer_is_asked_again_and_the_end_of_answers_is_an_error() {
        let mut asker = Asker { answers: "middle\n\nleft\n".as_bytes() };
        assert_eq!(asker.ask("", hand).ok(), Some(Hand::Left));
        assert!(asker.ask("", hand).is_err());
    }
}
