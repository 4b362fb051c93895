//! Saved tests taken out again: two cloths in one seam, or one round an opening.

use tenter_core::Repeatability;
use tenter_core::making::pairing::{Joint, Pair, SeamEdge};
use tenter_core::making::sizing::Reach;
use tenter_core::{Figure, Figures, Grain, Length, PullTest, Rules, Scatter};

use super::{Action, Dial, Effect, Model, Screen};

/// A cloth that was measured, as a seam or an opening needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredCloth {
    /// Where its test stands in the log; none for the test at hand.
    pub place: Option<u32>,
    /// The number pinned to it.
    pub tag: u16,
    /// The grain that was pulled.
    pub grain: Grain,
    /// Whether it was read on an inch scale.
    pub inch: bool,
    /// Its stretch.
    pub stretch: Figure,
    /// Its growth at the longest rest, where that was read.
    pub growth: Option<Figure>,
}

impl MeasuredCloth {
    /// What a test says about its cloth; none without a pull.
    #[must_use]
    pub fn of(place: Option<u32>, tag: u16, test: &PullTest, hand: Option<Repeatability>) -> Option<Self> {
        let figures = Figures::of(test, scatter(hand)).ok()?;
        let growth = figures.rest.map(|rest| rest.growth);
        Some(Self { place, tag, grain: test.grain(), inch: test.scale().is_inch(), stretch: figures.stretch, growth })
    }

    const fn edge(&self) -> SeamEdge {
        SeamEdge { growth: self.growth, ..SeamEdge::new(self.stretch) }
    }
}

/// What is known of the scatter beforehand.
pub fn scatter(hand: Option<Repeatability>) -> Scatter {
    Scatter::with(hand)
}

/// What is being made of the cloths.
#[derive(Clone, Debug)]
pub struct MakingState {
    /// The cloth on the screen.
    pub cloth: Option<MeasuredCloth>,
    /// The one chosen before it, to be joined with it.
    pub first: Option<MeasuredCloth>,
    /// The length of the seam.
    pub seam: Length,
    /// The finished girth of an opening.
    pub opening: Length,
    /// The girth of what it must pass over.
    pub body: Length,
}

impl Default for MakingState {
    fn default() -> Self {
        let half_metre = Length::from_mm(500);
        Self { cloth: None, first: None, seam: half_metre, opening: half_metre, body: half_metre }
    }
}

impl MakingState {
    /// The two cloths in their seam.
    #[must_use]
    pub fn pair(&self) -> Option<Pair> {
        let (first, second) = (self.first?.edge(), self.cloth?.edge());
        Pair::of(&first, &second, &Joint::of(self.seam), Rules::default().confidence).ok()
    }

    /// The cloth round its opening.
    #[must_use]
    pub fn reach(&self) -> Option<Reach> {
        Reach::of(self.body, self.opening, self.cloth?.stretch, Rules::default().confidence).ok()
    }
}

/// The newest saved test.
pub(super) fn open_shelf(model: &mut Model) -> Option<Effect> {
    (model.making.cloth, model.making.first) = (None, None);
    model.show(Screen::Shelf);
    Some(Effect::Browse { than: None, newer: false, round: false })
}

/// The next older or newer test; the only button goes round.
pub(super) fn browse(model: &Model, action: Action) -> Option<Effect> {
    let than = Some(model.making.cloth?.place?);
    Some(Effect::Browse { than, newer: matches!(action, Action::Less(_)), round: action == Action::Step })
}

/// The cloth on the screen is the one; without any, that was read.
pub(super) fn take(model: &mut Model) {
    match (&model.making.cloth, &model.making.first) {
        (None, _) => model.show(Screen::Home),
        (Some(_), None) => model.show(Screen::Cloth),
        (Some(_), Some(_)) => dial(model, Screen::Seam),
    }
}

/// The other cloth of a seam: the next older one to begin with.
pub(super) fn join(model: &mut Model) -> Option<Effect> {
    model.making.first = model.making.cloth;
    model.show(Screen::Shelf);
    browse(model, Action::Step)
}

/// An opening of the cloth on the screen, or of that of the test at hand.
pub(super) fn pass_over(model: &mut Model) {
    if model.screen != Screen::Cloth {
        model.making.cloth =
            model.test.as_ref().and_then(|test| MeasuredCloth::of(None, 0, test, model.log.repeatability));
    }
    if model.making.cloth.is_some() {
        dial(model, Screen::Opening);
    }
}

/// Dials a length with the tape. What must pass is dialled from the girth of the opening on.
fn dial(model: &mut Model, screen: Screen) {
    let making = &model.making;
    let start = match screen {
        Screen::Seam => making.seam,
        _ => making.opening,
    };
    model.dial = Dial::tape(making.cloth.is_some_and(|cloth| cloth.inch), start);
    model.show(screen);
}

/// A length of the tape is complete.
pub(super) fn dialled(model: &mut Model, length: Length) {
    match model.screen {
        Screen::Seam => {
            model.making.seam = length;
            model.show(Screen::Pair);
        }
        Screen::Opening => {
            model.making.opening = length;
            dial(model, Screen::Body);
        }
        _ => {
            model.making.body = length;
            model.show(Screen::Reach);
        }
    }
}

/// Where one comes back to.
pub(super) fn back(model: &mut Model) {
    match model.screen {
        Screen::Pair => dial(model, Screen::Seam),
        Screen::Reach => dial(model, Screen::Body),
        Screen::Body => dial(model, Screen::Opening),
        Screen::Opening if is_at_hand(model) => model.show(Screen::Choice),
        Screen::Opening => model.show(Screen::Cloth),
        Screen::Shelf if model.making.first.is_some() => {
            model.making.cloth = model.making.first.take();
            model.show(Screen::Cloth);
        }
        Screen::Cloth | Screen::Seam => model.show(Screen::Shelf),
        _ => model.show(Screen::Home),
    }
}

/// It was read.
pub(super) fn done(model: &mut Model) {
    model.show(if is_at_hand(model) { Screen::Choice } else { Screen::Home });
}

fn is_at_hand(model: &Model) -> bool {
    model.making.cloth.is_some_and(|cloth| cloth.place.is_none())
}

#[cfg(test)]
mod tests;
