//! What a cloth was before: for taking back a cut, a wash or a purchase.

use tenter_core::making::washing::left;
use tenter_core::{Grain, Length, Ratio};

use crate::deed::Refused;
use crate::finding::fit::known;
use crate::log::{Entry, Fabric, FabricChange, Fact, Id, Subject, fold};
use crate::store::Read;

/// The length and the width that a wash leaves, where it changes them.
pub fn after_wash(fabric: &Fabric) -> [Option<Length>; 2] {
    let leaves = |grain, had: Option<Length>| {
        let had = had?;
        known::at_wash(fabric, grain).leaves(had).ok().filter(|left| *left != had)
    };
    [leaves(Grain::Lengthwise, fabric.length), leaves(Grain::Crosswise, fabric.width)]
}

/// The length and the width before the wash that is taken back, where that had changed them. What was cut off in the
/// meantime stays off, and what is left is as much longer as all of it was.
pub fn before_wash(history: &[Entry], fabric: &Fabric) -> [Option<Length>; 2] {
    let washed = |entry: &Entry| changed(entry).and_then(|change| Some((change.washed?, change.after_wash)));
    let Some(at) = history.iter().rposition(|entry| washed(entry) == Some((true, true))) else { return [None; 2] };
    let state = |entries: &[Entry]| fold::fabric(entries.to_vec());
    let before = history.get(..at).and_then(state);
    let after = history.get(..=at).and_then(state);
    let (Some(before), Some(after)) = (before, after) else { return [None; 2] };
    let back = |was: Option<Length>, left_then: Option<Length>, now: Option<Length>| {
        let (was, left_then, now) = (was?.steps(), left_then?.steps(), now?);
        let change = Ratio::new(i64::from(was) - i64::from(left_then), left_then.into())?;
        left(now, change).ok().filter(|_| was != left_then)
    };
    [back(before.length, after.length, fabric.length), back(before.width, after.width, fabric.width)]
}

/// The cloth as it was before it was bought.
///
/// # Errors
///
/// A cloth that lies in a shop, one that never lay in one, or one of which something was cut since.
pub fn before_it_was_bought(read: &dyn Read, fabric: &Fabric) -> Result<Fabric, Refused> {
    let never = Refused::NotBought(fabric.tag);
    let history = read.history(Subject::Fabric(fabric.id))?;
    let bought = |entry: &Entry| changed(entry).is_some_and(|change| change.shop == Some(None));
    let (false, Some(at)) = (fabric.is_seen(), history.iter().rposition(bought)) else { return Err(never) };
    let since = history.get(at..).unwrap_or_default();
    if fold::standing(&history).any(|cut| is_cut(cut) && since.iter().any(|entry| entry.id == cut.id)) {
        return Err(Refused::CutSince(fabric.tag));
    }
    let before = history.get(..at).and_then(|entries| fold::fabric(entries.to_vec()));
    before.filter(Fabric::is_seen).ok_or(never)
}

/// The newest cut that counts, and the length on hand without it.
///
/// # Errors
///
/// A cloth of which nothing was cut.
pub fn newest_cut(read: &dyn Read, fabric: &Fabric) -> Result<(Id, Option<Length>), Refused> {
    let mut history = read.history(Subject::Fabric(fabric.id))?;
    let cut = fold::standing(&history).filter(|entry| is_cut(entry)).last().map(|entry| entry.id);
    let cut = cut.ok_or(Refused::NothingCut(fabric.tag))?;
    // Cut and taken back is never cut.
    history.retain(|entry| entry.id != cut);
    Ok((cut, fold::fabric(history).and_then(|without| without.length)))
}

const fn is_cut(entry: &Entry) -> bool {
    matches!(entry.fact, Fact::FabricCut { .. } | Fact::FabricCutFor { .. })
}

const fn changed(entry: &Entry) -> Option<&FabricChange> {
    match &entry.fact {
        Fact::FabricChanged { change, .. } => Some(change),
        _ => None,
    }
}
