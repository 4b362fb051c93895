//! The whole program behind a page on a phone: what a service worker asks over linear memory.
//!
//! The worker writes a message where [`room`] says, calls [`take`] or [`answer`], and reads what is said there: the
//! address that [`answer`] gives, as many bytes as [`said`] tells. One thread runs, so nothing is locked.

mod dress;
mod hand_over;
mod handheld;
mod here;
mod machine;
mod message;
mod tags;

use std::cell::RefCell;

use machine::Machine;
use message::{Answered, opened, sealed};

thread_local! {
    static MACHINE: RefCell<Machine> = RefCell::default();
    static INBOX: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
    static OUTBOX: RefCell<Vec<u8>> = const { RefCell::new(Vec::new()) };
}

/// Where to write a message of so many bytes. Memory may have grown, so look at it only after this.
#[unsafe(no_mangle)]
pub extern "C" fn room(bytes: usize) -> *mut u8 {
    INBOX.with_borrow_mut(|inbox| {
        inbox.clear();
        inbox.resize(bytes, 0);
        inbox.as_mut_ptr()
    })
}

/// Takes in what was kept, one piece a line. How many lines could not be read.
#[unsafe(no_mangle)]
pub extern "C" fn take() -> u32 {
    let lines = INBOX.take();
    let Ok(lines) = core::str::from_utf8(&lines) else { return u32::MAX };
    MACHINE.with_borrow_mut(|machine| machine.take(lines))
}

/// Answers a request.
#[unsafe(no_mangle)]
pub extern "C" fn answer() -> *const u8 {
    let message = INBOX.take();
    let said = match opened(&message) {
        Some((asked, body)) => {
            let (head, body) = MACHINE.with_borrow_mut(|machine| machine.answer(&asked, body));
            sealed(&head, &body)
        }
        None => sealed(&Answered { status: 400, ..Answered::default() }, b""),
    };
    OUTBOX.with_borrow_mut(|outbox| {
        *outbox = said;
        outbox.as_ptr()
    })
}

/// How many bytes the last answer has.
#[unsafe(no_mangle)]
pub extern "C" fn said() -> usize {
    OUTBOX.with_borrow(Vec::len)
}
