//! How many stories run at once.

use std::sync::{Condvar, Mutex, PoisonError};

/// A story mostly waits: keys rest after a touch, screens settle. Three times as many as two cores keep
/// both busy: 77 stories took 272 s where four at once took 314. `.cargo/config.toml` has the test runner begin as many.
const PLACES: usize = 6;

static TAKEN: Mutex<usize> = Mutex::new(0);
static LEFT: Condvar = Condvar::new();

/// A place for one story; given back when dropped.
pub struct Place(());

/// Waits for a free place.
pub fn place() -> Place {
    let taken = TAKEN.lock().unwrap_or_else(PoisonError::into_inner);
    let mut taken = LEFT
        .wait_while(taken, |taken| *taken >= PLACES)
        .unwrap_or_else(PoisonError::into_inner);
    *taken += 1;
    Place(())
}

impl Drop for Place {
    fn drop(&mut self) {
        *TAKEN.lock().unwrap_or_else(PoisonError::into_inner) -= 1;
        LEFT.notify_one();
    }
}
