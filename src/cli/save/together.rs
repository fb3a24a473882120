//! Whoever interrupts a run finds what it shows together as a whole: an interruption waits until all of it has its names, which
//! takes about a millisecond.

#[cfg(unix)]
use std::{
    process,
    sync::{Mutex, MutexGuard, Once, PoisonError},
    thread,
};

/// Held while things that belong together get their names.
#[cfg(unix)]
static SHOWING: Mutex<()> = Mutex::new(());

/// Does what is not to be parted.
pub(super) fn together<T>(show: impl FnOnce() -> T) -> T {
    #[cfg(unix)]
    let _whole = {
        listen();
        showing()
    };
    show()
}

#[cfg(unix)]
fn showing() -> MutexGuard<'static, ()> {
    SHOWING.lock().unwrap_or_else(PoisonError::into_inner)
}

/// From now on interruptions end the run as they did, but not while something is shown. Where nobody can listen they end it at
/// once.
#[cfg(unix)]
fn listen() {
    use signal_hook::{
        consts::{SIGHUP, SIGINT, SIGTERM},
        iterator::Signals,
    };
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let Ok(mut signals) = Signals::new([SIGHUP, SIGINT, SIGTERM]) else {
            return;
        };
        thread::spawn(move || {
            if let Some(signal) = signals.forever().next() {
                let _whole = showing();
                // As shells tell the end by a signal.
                process::exit(128 + signal);
            }
        });
    });
}
