//! A progress bar on standard error, only on a terminal and only for work of more than a second.

use std::io::IsTerminal;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressStyle};

/// How long work may take before a bar is shown.
const PATIENCE: Duration = Duration::from_secs(1);

/// A bar that appears late or never; several threads may move it.
pub(super) struct Progress {
    started: Instant,
    bar: ProgressBar,
    may_show: AtomicBool,
}

impl Progress {
    /// A bar of `total` steps, told as `what`.
    pub(super) fn new(total: u64, what: &'static str) -> Self {
        let bar = ProgressBar::with_draw_target(Some(total), ProgressDrawTarget::hidden()).with_message(what);
        if let Ok(style) = ProgressStyle::with_template("{msg} [{bar:30}] {percent} %") {
            bar.set_style(style.progress_chars("=> "));
        }
        Self { started: Instant::now(), bar, may_show: std::io::stderr().is_terminal().into() }
    }

    /// So much is done.
    pub(super) fn reach(&self, done: u64) {
        self.appear();
        self.bar.set_position(done);
    }

    /// One more is done.
    pub(super) fn step(&self) {
        self.appear();
        self.bar.inc(1);
    }

    fn appear(&self) {
        if self.started.elapsed() > PATIENCE && self.may_show.swap(false, Ordering::Relaxed) {
            self.bar.set_draw_target(ProgressDrawTarget::stderr());
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        self.bar.finish_and_clear();
    }
}
