//! The page of `advise`.

use crate::base::geometry::Side;
use crate::decide::advice::Advice;
use crate::decide::why::Why;
use crate::former::search::reach::Recipe;
use crate::former::search::{Candidate, SideWorth, TRIFLE};

use super::super::format::{in_hundred, percent, plain, signed, signed_range};
use super::super::words;
use super::Page;

/// The whole answer.
pub fn advise(advice: &Advice, leaning: Option<&Why>, width: u16) -> String {
    let mut page = Page::new(width);
    page.title(advice.profile);
    page.heading(&words::headline(advice));
    page.list(advice.reasons.iter().map(words::reason));
    if let Some(target) = &advice.target {
        shape(&mut page, advice, target);
        use_of(&mut page, advice, target);
    }
    if let Some(leaning) = leaning {
        leans_on(&mut page, leaning);
    }
    alternatives(&mut page, advice);
    page.heading("Cautions");
    page.list(advice.cautions.iter().map(|&caution| words::caution(caution)));
    page.section("Next", words::next(advice));
    page.assumptions(advice.profile);
    page.finish()
}

fn shape(page: &mut Page, advice: &Advice, target: &Candidate) {
    let Recipe { shape, spin, seam_in } = target.recipe;
    let hand = advice.profile.athlete.throws;
    page.heading(&words::shape_heading(advice, target));
    let range = |(low, high): (f64, f64), show: fn(f64, usize) -> String, unit: &str| {
        let (low, high) = (show(low, 1), show(high, 1));
        if low == high { "this only".into() } else { format!("{low} to {high} {unit}") }
    };
    let window = target.window;
    page.table(
        &["", "best", "range that keeps 90 % of the gain"],
        vec![
            vec!["speed".into(), format!("{} mph", plain(shape.speed_mph, 1)), range(window.speed_mph, plain, "mph")],
            vec![
                "vertical break".into(),
                format!("{} in", signed(shape.vertical_break_in, 1)),
                range(window.vertical_break_in, signed, "in"),
            ],
            vec![
                "glove-side break".into(),
                format!("{} in", signed(shape.glove_side_break_in, 1)),
                range(window.glove_side_break_in, signed, "in"),
            ],
        ],
    );
    page.paragraph(&format!(
        "Spin: {} rpm pushing toward {}, {} of it active (gyro angle {} degrees); from the seams {} in up and {} in to \
         the glove side. Effort {} (1 is about a three-hour turn of the axis from a pitch he throws).",
        plain(spin.rpm, 0),
        spin.clock.for_hand(hand),
        percent(spin.active_fraction),
        plain(spin.gyro_deg(), 0),
        signed(seam_in[1], 1),
        signed(seam_in[0], 1),
        plain(target.effort, 1),
    ));
    page.heading("Where the mark on the spin pole shows");
    page.verbatim(&super::dot::faces(spin, hand));
}

fn use_of(page: &mut Page, advice: &Advice, target: &Candidate) {
    let worth = &target.worth;
    page.heading(&format!("Worth, in runs saved per 100 pitches, {}", words::command(advice.question.command)));
    let row = |name: &str, gain| vec![name.to_owned(), signed_range(gain, 2)];
    page.table(
        &["against", "gain (90 % interval)"],
        vec![
            row("same-side hitters", worth.sides.same.gain),
            row("opposite-side hitters", worth.sides.opposite.gain),
            row("all he faces", worth.overall),
        ],
    );
    for side in Side::BOTH {
        mix(page, advice, target, side, worth.sides.on(side));
    }
    page.paragraph(
        "miss, weak and solid contact, take: chances per 100 of that pitch thrown, ± half the 90 % interval.",
    );
}

fn mix(page: &mut Page, advice: &Advice, target: &Candidate, side: Side, worth: &SideWorth) {
    page.heading(&format!("Use against {} hitters, without and with it", words::side(side)));
    let names = advice.profile.pitches.iter().map(|pitch| pitch.name.as_str()).chain([target.family.name()]);
    let rows = names
        .zip(&worth.after.pitches)
        .enumerate()
        .map(|(index, (name, after))| {
            let before = worth.before.pitches.get(index).map_or("-".into(), |before| percent(before.share));
            let is_new = index + 1 == worth.after.pitches.len();
            let name = if is_new { format!("{name}, new") } else { name.to_owned() };
            [vec![name, before], words::outcome_cells(after)].concat()
        })
        .collect();
    page.table(&["pitch", "without", "with", "aim", "miss", "weak", "solid", "take"], rows);
}

fn leans_on(page: &mut Page, why: &Why) {
    page.heading("What the worth leans on, most first");
    let rows = why.levers.iter().map(|lever| {
        let flips = lever.worst < TRIFLE && lever.best > TRIFLE;
        vec![
            words::assumption(lever.assumption).into(),
            signed(lever.worst, 2),
            signed(lever.best, 2),
            if flips { "yes" } else { "no" }.into(),
        ]
    });
    page.table(&["assumption, one at a time over its 90 % range", "lowest", "highest", "turns it"], rows.collect());
    page.paragraph(&format!(
        "turns it: whether that alone decides between a trifle ({TRIFLE} runs per 100) and more. {}",
        why.command_limit_in.map_or("Command alone, up to twice as loose, does not turn it.".into(), |inches| format!(
            "It is a trifle when the new pitch scatters more than {} in sideways about its target.",
            plain(inches, 1)
        ))
    ));
}

fn alternatives(page: &mut Page, advice: &Advice) {
    if advice.alternatives.is_empty() {
        return;
    }
    page.heading("Other pitches, best first");
    let rows = advice
        .alternatives
        .iter()
        .map(|alternative| {
            let name = alternative.family.name().to_owned();
            let Some(candidate) = &alternative.candidate else {
                return vec![name, "out of reach".into(), String::new(), String::new(), String::new()];
            };
            let worth = &candidate.worth;
            let shape = candidate.recipe.shape;
            let numbers = [shape.vertical_break_in, shape.glove_side_break_in].map(|inches| signed(inches, 0));
            vec![
                name,
                format!("{}, {}, {}", plain(shape.speed_mph, 0), numbers[0], numbers[1]),
                signed_range(worth.overall, 2),
                in_hundred(worth.chance_real),
                plain(candidate.effort, 1),
            ]
        })
        .collect();
    page.table(&["pitch", "mph, vertical, glove side", "worth", "real", "effort"], rows);
}
