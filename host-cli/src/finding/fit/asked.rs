//! What a role asks of a cloth besides its length: of its figures, and of what it is.

use tenter_core::making::body::{close_fit, lies_close};
use tenter_core::{Demand, Side};

use super::{Candidate, Reason, RoleFit, purpose};
use crate::log::{Fabric, MassPerArea, Purpose, Role};

/// What a cloth is, as far as a role may ask it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Feature {
    /// How it is made.
    Construction,
    /// What it is made for.
    Purpose,
    /// What was done to its surface.
    Finish,
    /// How it falls.
    Drape,
    /// Its mass per area.
    Mass,
}

/// How a cloth stands to a feature that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// As asked.
    AsAsked,
    /// Nobody said it of the cloth.
    NotSaid,
    /// Another than is asked.
    Other,
    /// Lighter than this least mass, or heavier than this most.
    Off(Side, MassPerArea),
}

/// What a role asks of the figures of its cloth: what its pattern says, and of a garment that lies close what every such
/// garment asks.
#[must_use]
pub fn demand(role: &Role) -> Demand {
    if asks_as_close(role) { close_fit(role.demand) } else { role.demand }
}

/// Whether a garment that lies close asks for growth and recovery, since the pattern does not say.
#[must_use]
pub fn asks_as_close(role: &Role) -> bool {
    // What lines it must come back as well; what is fused to it comes back with it.
    let worn = matches!(purpose::of_role(role), Some(Purpose::Outer | Purpose::Lining | Purpose::Rib));
    // Firm cloth, of which only a most is asked, cannot grow by more than it stretches.
    let asks_give = role.grains().all(|grain| role.demand.stretch(grain).at_most.is_none())
        || role.grains().any(|grain| role.demand.stretch(grain).at_least.is_some());
    role.kind.is_some_and(lies_close) && worn && asks_give && close_fit(role.demand) != role.demand
}

/// Whether a role asks nothing of its cloth, so that the choice is the reader's.
#[must_use]
pub fn nothing(role: &Role) -> bool {
    demand(role) == Demand { rest_seconds: role.demand.rest_seconds, ..Demand::default() }
        && role.constructions.is_empty()
        && role.purpose.is_none()
        && role.finishes.is_empty()
        && role.drapes.is_empty()
        && role.mass.at_least.is_none()
        && role.mass.at_most.is_none()
}

/// How a cloth stands to each feature that a role asks. The purpose of a role is its own, or that which its name implies;
/// one that is only implied is no reason against a cloth of which nobody said what it is made for. What the cloth is made
/// for and what the role wants it for are as [`purpose::of_cloth`] and [`purpose::of_role`] have them.
pub fn features(
    fabric: &Fabric,
    made_for: Option<Purpose>,
    role: &Role,
    wanted: Option<Purpose>,
) -> impl Iterator<Item = (Feature, Stands)> {
    let one_of = |asked: bool, has: Option<bool>| match (asked, has) {
        (false, _) => None,
        (true, None) => Some(Stands::NotSaid),
        (true, Some(true)) => Some(Stands::AsAsked),
        (true, Some(false)) => Some(Stands::Other),
    };
    let construction = one_of(!role.constructions.is_empty(), Some(role.takes(fabric.construction)));
    let serves = |wanted| one_of(true, made_for.map(|made| purpose::serves(made, wanted)));
    let implied = || wanted.and_then(serves).filter(|stands| *stands == Stands::Other);
    let for_it = role.purpose.map_or_else(implied, serves);
    let finish = one_of(!role.finishes.is_empty(), fabric.finish.map(|finish| role.finishes.contains(&finish)));
    let drape = one_of(!role.drapes.is_empty(), fabric.drape.map(|drape| role.drapes.contains(&drape)));
    let all = [
        (Feature::Construction, construction),
        (Feature::Purpose, for_it),
        (Feature::Finish, finish),
        (Feature::Drape, drape),
        (Feature::Mass, mass(fabric, role)),
    ];
    all.into_iter().filter_map(|(feature, stands)| Some((feature, stands?)))
}

/// The cloths of another kind than a role asks, by what they are not, each in the order of their tags.
#[must_use]
pub fn other_kinds<'r, 'a>(fit: &'r RoleFit<'a>) -> Vec<(Feature, Vec<&'r Candidate<'a>>)> {
    let all = [Feature::Construction, Feature::Purpose, Feature::Finish, Feature::Drape, Feature::Mass];
    let of = |feature| {
        let others = fit.candidates.iter().filter(|one| one.reason == Reason::OtherKind(feature));
        (feature, others.collect::<Vec<_>>())
    };
    all.into_iter().map(of).filter(|(_, others)| !others.is_empty()).collect()
}

fn mass(fabric: &Fabric, role: &Role) -> Option<Stands> {
    let (least, most) = (role.mass.at_least, role.mass.at_most);
    if least.is_none() && most.is_none() {
        return None;
    }
    Some(match fabric.mass {
        None => Stands::NotSaid,
        Some(mass) => match (least.filter(|least| mass < *least), most.filter(|most| mass > *most)) {
            (Some(least), _) => Stands::Off(Side::AtLeast, least),
            (None, Some(most)) => Stands::Off(Side::AtMost, most),
            (None, None) => Stands::AsAsked,
        },
    })
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use proptest::sample::select;
    use tenter_core::{Grain, Range, Unit};

    use super::*;
    use crate::log::{Construction, Drape, Finish, GarmentKind, Ids, MassPerArea, MassRange};

    fn role(name: &str) -> Role {
        let mut ids = Ids::default();
        Role::named(ids.next(), ids.next(), name)
    }

    #[test]
    fn a_close_kind_asks_for_growth_and_recovery() {
        let stretch = |text| Demand::for_grain(Grain::Crosswise, Range::parse(text, Unit::Mm).unwrap());
        let leggings = Role { kind: Some(GarmentKind::Leggings), demand: stretch("40%"), ..role("main") };
        let asked = demand(&leggings);
        assert_eq!(asked.growth_at_most.unwrap().to_string(), "3 %");
        assert_eq!((asked.recovery_at_least.unwrap().to_string(), asked.rest_seconds), ("80 %".to_owned(), 3600));
        assert!(asks_as_close(&leggings) && !nothing(&leggings));
        // Its own word counts; a coat and a pocket bag ask nothing of the kind.
        let own = Demand { growth_at_most: "10%".parse_limit(), ..stretch("40%") };
        assert_eq!(demand(&Role { demand: own, ..leggings.clone() }), own);
        assert!(!asks_as_close(&Role { kind: Some(GarmentKind::LinedCoat), ..leggings.clone() }));
        assert!(!asks_as_close(&Role { name: "pocket bags".to_owned(), ..leggings }));
        assert!(nothing(&role("main")) && nothing(&role("lining")));
    }

    trait ParseLimit {
        fn parse_limit(&self) -> Option<tenter_core::Limit>;
    }

    impl ParseLimit for str {
        fn parse_limit(&self) -> Option<tenter_core::Limit> {
            tenter_core::Limit::parse(self, Unit::Mm).ok()
        }
    }

    proptest! {
        /// What nobody said of a cloth is never as asked; what is asked of mass holds exactly where the mass lies between.
        #[test]
        fn what_is_not_said_is_never_as_asked(
            least in prop::option::of(1u32..500_000), more in prop::option::of(0u32..500_000),
            has in prop::option::of(1u32..900_000), finishes in prop::collection::vec(select(Finish::ALL.to_vec()), 0..3),
            finish in prop::option::of(select(Finish::ALL.to_vec())),
            drapes in prop::collection::vec(select(Drape::ALL.to_vec()), 0..3),
            drape in prop::option::of(select(Drape::ALL.to_vec())),
            wanted in prop::option::of(select(Purpose::ALL.to_vec())),
            made_for in prop::option::of(select(Purpose::ALL.to_vec())),
            construction in select(Construction::ALL.to_vec()),
        ) {
            let grams = MassPerArea::from_mg_per_m2;
            let most = more.map(|more| least.unwrap_or(0) + more);
            let asked = Role {
                mass: MassRange { at_least: least.map(grams), at_most: most.map(grams) },
                finishes: finishes.clone(), drapes: drapes.clone(), purpose: wanted, ..role("main")
            };
            let mut cloth = Fabric::named(Ids::default().next(), 1, "cloth");
            (cloth.mass, cloth.finish, cloth.drape) = (has.map(grams), finish, drape);
            (cloth.purpose, cloth.construction) = (made_for, construction);
            let found: Vec<_> =
                features(&cloth, purpose::of_cloth(&cloth), &asked, purpose::of_role(&asked)).collect();
            let stands = |feature| found.iter().find(|(one, _)| *one == feature).map(|(_, stands)| *stands);
            let between = has.map(|has| least.is_none_or(|least| has >= least) && most.is_none_or(|most| has <= most));
            let is_asked = least.is_some() || most.is_some();
            prop_assert_eq!(stands(Feature::Mass).is_some(), is_asked);
            if is_asked {
                prop_assert_eq!(stands(Feature::Mass) == Some(Stands::AsAsked), between == Some(true));
                prop_assert_eq!(stands(Feature::Mass) == Some(Stands::NotSaid), has.is_none());
            }
            if !drapes.is_empty() {
                let want = drape.map_or(Stands::NotSaid, |one| if drapes.contains(&one) { Stands::AsAsked } else { Stands::Other });
                prop_assert_eq!(stands(Feature::Drape), Some(want));
            }
            if !finishes.is_empty() && finish.is_none() {
                prop_assert_eq!(stands(Feature::Finish), Some(Stands::NotSaid));
            }
            if asked.purpose.is_some() && made_for.is_none() && finish != Some(Finish::Fusible) {
                prop_assert_eq!(stands(Feature::Purpose), Some(Stands::NotSaid));
            }
            if asked.purpose.is_none() && made_for.is_none() && finish != Some(Finish::Fusible) {
                prop_assert_eq!(stands(Feature::Purpose), None);
            }
            prop_assert_eq!(stands(Feature::Construction), None);
        }
    }
}
