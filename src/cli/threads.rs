//! How many threads work at once: as many as there are cores, or as the environment asks within reason.
//!
//! The answer does not depend on it. Where the machine gives no thread, the one that is there works alone.

use rayon::ThreadPoolBuilder;

use super::Failure;

/// What the environment may ask for; more only costs memory.
const MOST_THREADS: usize = 64;
/// The variable that rayon itself would read, without an upper end.
const VARIABLE: &str = "RAYON_NUM_THREADS";

/// Starts the threads.
///
/// # Errors
/// When the machine gives some, but not so many.
pub(super) fn set() -> Result<(), Failure> {
    let asked = std::env::var(VARIABLE).ok().and_then(|text| text.trim().parse::<usize>().ok()).unwrap_or(0);
    // Nothing asked for, or 0, is as many as there are cores.
    let count = if asked == 0 { cores() } else { asked.min(MOST_THREADS) };
    let none_is_given = || std::thread::Builder::new().spawn(|| ()).is_err();
    let pool = if count == 1 || none_is_given() {
        ThreadPoolBuilder::new().num_threads(1).use_current_thread()
    } else {
        ThreadPoolBuilder::new().num_threads(count)
    };
    pool.build_global().map_err(|error| Failure::Machine {
        problem: format!("{count} threads cannot be started: {error}"),
        hint: format!("close other programs, or ask for fewer with {VARIABLE}=1"),
    })
}

fn cores() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from).min(MOST_THREADS)
}
