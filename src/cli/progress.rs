//! A progress bar on standard error, only on a terminal and only for work of more than a second.

use std::io::IsTerminal;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

/// How long work may take before a bar is shown.
const PATIENCE: Duration = Duration::from_secs(1);

/// A bar that appears late or never.
pub(super) struct Progress {
    started: Instant,
    bar: ProgressBar,
    is_shown: bool,
    may_show: bool,
}

impl Progress {
    /// A bar of `total` steps, told as `what`.
    pub(super) fn new(total: u64, what: &'static str) -> Self {
        let bar = ProgressBar::with_draw_target(Some(total), ProgressDrawTarget::hidden()).with_message(what);
        if let Ok(style) = ProgressStyle::with_template("{msg} [{bar:30}] {percent} %") {
            bar.set_style(style.progress_chars("=> "));
        }
        Self { started: Instant::now(), bar, is_shown: false, may_show: std::io::stderr().is_terminal() }
    }

    /// So much is done.
    pub(super) fn reach(&mut self, done: u64) {
        if self.may_show && !self.is_shown && self.started.elapsed() > PATIENCE {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
            self.is_shown = true;
        }
        self.bar.set_position(done);
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
