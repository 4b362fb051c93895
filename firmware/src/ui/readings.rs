//! Every reading of the test in hand, to be dialled again or dropped.

use heapless::Vec;
use tenter_core::{Length, MAX_LOOKS, MAX_PULLS, MAX_RESTS, PullTest};

/// A reading of a test, by its turn among its kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadingAt {
    /// A pull.
    Pull(usize),
    /// A reading after release.
    Rest(usize),
    /// A look at the marks after the first.
    Look(usize),
}

const MOST: usize = MAX_PULLS + MAX_RESTS + MAX_LOOKS;

/// The readings of a test, the newest first.
#[must_use]
pub fn newest_first(test: &PullTest) -> Vec<ReadingAt, MOST> {
    let mut all: Vec<ReadingAt, MOST> = Vec::new();
    each(test, |at, _| {
        let _ = all.push(at); // There are no more.
    });
    all.reverse();
    all
}

/// What a reading says.
#[must_use]
pub fn length(test: &PullTest, at: ReadingAt) -> Option<Length> {
    match at {
        ReadingAt::Pull(index) => test.pulls().get(index).copied(),
        ReadingAt::Rest(index) => test.rests().get(index).map(|rest| rest.recovered),
        ReadingAt::Look(index) => test.looks().nth(index.saturating_add(1)).map(|look| look.length),
    }
}

/// The test with one reading changed, or without it and what followed from it; none where that is no possible test.
#[must_use]
pub fn changed(test: &PullTest, changed: ReadingAt, to: Option<Length>) -> Option<PullTest> {
    let mut fresh = test.clone();
    while fresh.undo() {}
    let mut possible = true;
    each(test, |at, length| {
        let length = if at == changed { to } else { Some(length) };
        // Without its pull a reading after release says nothing.
        let orphan = match (at, changed, to) {
            (ReadingAt::Rest(rest), ReadingAt::Pull(pull), None) => {
                test.rests().get(rest).is_some_and(|rest| usize::from(rest.after_pull) == pull)
            }
            _ => false,
        };
        let Some(length) = length.filter(|_| !orphan) else { return };
        let added = match at {
            ReadingAt::Pull(_) => fresh.add_pull(length),
            ReadingAt::Rest(rest) => {
                let seconds = test.rests().get(rest).map_or(0, |rest| rest.seconds);
                fresh.add_rest(seconds, length)
            }
            ReadingAt::Look(_) => fresh.add_look(length),
        };
        possible &= added.is_ok();
    });
    possible.then_some(fresh)
}

/// Every reading in the order in which it was made.
fn each(test: &PullTest, mut tell: impl FnMut(ReadingAt, Length)) {
    let looks = |made: usize, tell: &mut dyn FnMut(ReadingAt, Length)| {
        for (index, look) in test.looks().skip(1).enumerate().filter(|(_, look)| usize::from(look.after_pulls) == made)
        {
            tell(ReadingAt::Look(index), look.length);
        }
    };
    looks(0, &mut tell);
    for (index, pull) in test.pulls().iter().enumerate() {
        tell(ReadingAt::Pull(index), *pull);
        for (at, rest) in test.rests().iter().enumerate().filter(|(_, rest)| usize::from(rest.after_pull) == index) {
            tell(ReadingAt::Rest(at), rest.recovered);
        }
        looks(index.saturating_add(1), &mut tell);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tenter_core::Grain;

    fn three() -> PullTest {
        let mut test = PullTest::new(Length::from_mm(100), Grain::Bias).unwrap().with_settling_pull(true);
        test.add_pull(Length::from_mm(106)).unwrap();
        test.add_rest(60, Length::from_mm(101)).unwrap();
        test.add_look(Length::from_mm(101)).unwrap();
        test.add_pull(Length::from_mm(107)).unwrap();
        test.add_rest(60, Length::from_mm(102)).unwrap();
        test.add_rest(300, Length::from_mm(101)).unwrap();
        test
    }

    #[test]
    fn any_reading_can_be_changed_or_dropped() {
        use ReadingAt::{Look, Pull, Rest};
        let test = three();
        let all = newest_first(&test);
        assert_eq!(all[..], [Rest(2), Rest(1), Pull(1), Look(0), Rest(0), Pull(0)]);
        for at in all {
            let before = length(&test, at).unwrap();
            assert_eq!(changed(&test, at, Some(before)).as_ref(), Some(&test), "{at:?} as it was");
            let other = changed(&test, at, Some(Length::from_mm(103))).unwrap();
            assert_eq!(length(&other, at), Some(Length::from_mm(103)));
            assert_eq!(newest_first(&other), newest_first(&test));
        }
        let without = changed(&test, Pull(0), None).unwrap();
        assert_eq!((without.pulls(), without.rests().len()), (&[Length::from_mm(107)][..], 2), "with its reading back");
        assert_eq!(changed(&test, Rest(1), None).unwrap().rests().len(), 2);
        assert_eq!(changed(&test, Look(0), None).unwrap().looks().count(), 1);
        assert_eq!(changed(&test, Pull(0), Some(Length::from_mm(9999))), None, "no possible pull");
    }
}
