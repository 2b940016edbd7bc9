//! The command `laws`: what single changes are worth to the invented arsenals, in runs saved per 100 pitches on the best
//! guess. Signs are common practice: speed, carry and a changeup's gap pay; a second copy of a pitch is worth nothing.

use std::error::Error;
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};

use arsenalfit::athlete::profile::Profile;
use arsenalfit::ball::{Family, Shape};
use arsenalfit::base::Movement;
use arsenalfit::decide::chase::{Work, given};
use arsenalfit::decide::model::Model;
use arsenalfit::decide::worth::Change;
use arsenalfit::files::read_profile;

use crate::markdown;

/// The best guess needs no draws of what is not known.
const NO_DRAWS: NonZeroUsize = NonZeroUsize::MIN;
/// A changeup's gap pays up to about so much, mph.
const WIDEST_GAP_MPH: f64 = 10.0;
/// The changes, as they head their columns.
const CHANGES: [&str; 5] = [
    "fastest 1 mph faster",
    "four-seam 2 in more carry",
    "changeup 1 mph slower",
    "breaking ball 2 in more to the glove side",
    "first pitch twice",
];

/// The table over all profiles of a folder, in the order of their names.
///
/// # Errors
/// When the folder or a profile cannot be read.
pub fn laws(folder: &Path) -> Result<String, Box<dyn Error>> {
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder)?.map(|entry| entry.map(|entry| entry.path())).collect::<Result<_, _>>()?;
    paths.sort();
    let mut rows = Vec::new();
    for path in paths {
        rows.push(row(&read_profile(&path)?));
    }
    let header: Vec<&str> = ["arsenal", "level", "pitches"].into_iter().chain(CHANGES).collect();
    Ok(markdown::table(&header, rows))
}

fn row(profile: &Profile) -> Vec<String> {
    let model = Model::new(profile, NO_DRAWS, 1);
    let worth =
        worth_of_changes(&model).map(|worth| worth.map_or_else(|| "-".to_owned(), |worth| format!("{worth:+.3}")));
    let name =
        [profile.athlete.name.clone(), profile.athlete.level.name().to_owned(), profile.pitches.len().to_string()];
    name.into_iter().chain(worth).collect()
}

/// Nothing where the arsenal has no such pitch.
fn worth_of_changes(model: &Model) -> [Option<f64>; 5] {
    let pitches = &model.profile.pitches;
    let fastest = (0..pitches.len()).max_by(|&a, &b| pitches[a].shape.speed_mph.total_cmp(&pitches[b].shape.speed_mph));
    let first = |wanted: &dyn Fn(Family) -> bool| pitches.iter().position(|pitch| wanted(pitch.family));
    let changed = |pitch: Option<usize>, mph: f64, glove_side_in: f64, up_in: f64| {
        pitch.map(|pitch| {
            let shape = pitches[pitch].shape.moved(mph, Movement { glove_side_in, up_in });
            Change::reshaping(model, pitch, shape).best_guess(model)
        })
    };
    let has_narrow_gap = |pitch: &usize| {
        fastest.is_some_and(|fast| pitches[fast].shape.speed_mph - pitches[*pitch].shape.speed_mph < WIDEST_GAP_MPH)
    };
    [
        changed(fastest, 1.0, 0.0, 0.0),
        changed(first(&|family| family == Family::FourSeam), 0.0, 0.0, 2.0),
        changed(first(&|family| family == Family::Changeup).filter(has_narrow_gap), -1.0, 0.0, 0.0),
        changed(first(&Family::is_breaking), 0.0, 2.0, 0.0),
        pitches.first().and_then(|pitch| twin(model, pitch.family, pitch.shape)),
    ]
}

fn twin(model: &Model, family: Family, shape: Shape) -> Option<f64> {
    given(model, family, Work::Learn, shape).map(|target| target.change.best_guess(model))
}
