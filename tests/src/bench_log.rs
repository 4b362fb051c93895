//! A large log for measuring: invented fabrics, tests and one view with six roles, the same for the same size.

use rand::rngs::StdRng;
use rand::{Rng as _, SeedableRng as _};
use tenter::log::json::Mm;
use tenter::log::pattern::DemandField;
use tenter::log::{ClothNeed, Construction, Entry, FabricChange, Fact, Id, Marks, PatternChange, RoleChange, Tested};
use tenter_core::{Demand, Grain, Length, Limit, PullTest, Range, Unit};

/// Pulls in each test.
pub const PULLS_A_TEST: usize = 4;
/// The grains of the tests of one fabric, the oldest first: a fabric is tested again now and then.
pub const TESTS: [Grain; 5] =
    [Grain::Crosswise, Grain::Lengthwise, Grain::Crosswise, Grain::Lengthwise, Grain::Crosswise];
/// The pattern that is added.
pub const PATTERN: &str = "Measured coat";
/// Milliseconds between two entries.
const APART_MS: i64 = 60_000;
/// When the first entry was made.
const FIRST_MS: i64 = 1_600_000_000_000;

/// The entries of a log with at least `pulls` pulls, in order.
pub fn entries(pulls: usize) -> impl Iterator<Item = Entry> {
    let fabrics = pulls.div_ceil(PULLS_A_TEST * TESTS.len());
    let mut random = StdRng::seed_from_u64(7);
    let mut made: i64 = 0;
    let mut entry = move |fact| {
        made += 1;
        let at = jiff::Timestamp::from_millisecond(FIRST_MS + made * APART_MS).unwrap();
        Entry::new(Id::of(at, u128::from(made.unsigned_abs())), fact)
    };
    let pattern = entry(Fact::PatternAdded(PatternChange { name: Some(PATTERN.to_owned()), note: None }));
    let id = pattern.id;
    let mut all = vec![pattern];
    all.extend(roles().into_iter().map(|change| entry(Fact::RoleAdded { pattern: id, change })));
    let cloths = (0..fabrics).flat_map(move |index| {
        let added = entry(Fact::FabricAdded(fabric(index, &mut random)));
        let fabric = Some(added.id);
        let base = random.random_range(1..80);
        let mut cloth = vec![added];
        for grain in TESTS {
            let (device, note) = (None, String::new());
            let test = test(grain, base, &mut random);
            let mut stored = entry(Fact::TestStored(Tested {
                fabric,
                tag: None,
                pulled: jiff::Timestamp::UNIX_EPOCH,
                clock_unset: false,
                device,
                pulled_by: None,
                marks: Marks::default(),
                note,
                as_read: Vec::new(),
                test,
            }));
            if let Fact::TestStored(said) = &mut stored.fact {
                said.pulled = stored.id.at();
            }
            cloth.push(stored);
        }
        cloth
    });
    all.into_iter().chain(cloths)
}

fn fabric(index: usize, random: &mut StdRng) -> FabricChange {
    let colours = ["Vestry", "Choir", "Matinee", "Encore", "Prompter", "Limelight", "Curtain", "Organ"];
    let kinds = ["poplin", "jersey", "twill", "rib", "fleece", "corduroy"];
    let mm = |range: std::ops::Range<i32>, random: &mut StdRng| {
        Some(Some(Mm(Length::from_steps(random.random_range(range) * 1600))))
    };
    let kind = kinds[index % kinds.len()];
    FabricChange {
        tag: u16::try_from(index + 1).ok(),
        name: Some(format!("{} {kind} {index}", colours[index % colours.len()])),
        fibre: Some("95 cotton 5 elastane".to_owned()),
        construction: Some([Construction::Woven, Construction::Knit][usize::from(kind == "jersey" || kind == "rib")]),
        width: mm(1100..1600, random),
        length: mm(200..4000, random),
        place: Some(format!("crate {}", index % 40)),
        ..FabricChange::default()
    }
}

fn test(grain: Grain, base: i32, random: &mut StdRng) -> PullTest {
    let mut test = PullTest::new(Length::from_mm(200), grain).unwrap().with_settling_pull(true);
    for _ in 0..PULLS_A_TEST {
        let extended = 200 + base + random.random_range(0..5);
        test.add_pull(Length::from_mm(i16::try_from(extended).unwrap())).unwrap();
    }
    test.add_rest(60, Length::from_mm(200 + i16::try_from(random.random_range(0..6.min(base + 1))).unwrap())).unwrap();
    test
}

/// The roles: name, crosswise, lengthwise, most growth, construction.
pub const ROLES: [(&str, &str, &str, &str, Option<Construction>); 6] = [
    ("main", "5%..15%", "", "3%", Some(Construction::Woven)),
    ("hem facing", "20%", "10%", "3%", None),
    ("cuff", "25%", "", "3%", Some(Construction::Knit)),
    ("lining", "5%", "5%", "3%", None),
    ("yoke", "..10%", "", "2%", Some(Construction::Woven)),
    ("gusset", "30%", "20%", "3%", Some(Construction::Knit)),
];

fn roles() -> Vec<RoleChange> {
    let range = |text: &str| if text.is_empty() { Range::default() } else { Range::parse(text, Unit::Mm).unwrap() };
    let role =
        |(name, crosswise, lengthwise, growth, made): (&str, &str, &str, &str, Option<Construction>)| RoleChange {
            view: Some("A".to_owned()),
            name: Some(name.to_owned()),
            demand: Some(DemandField(Demand {
                crosswise: range(crosswise),
                lengthwise: range(lengthwise),
                growth_at_most: Limit::parse(growth, Unit::Mm).ok(),
                ..Demand::default()
            })),
            constructions: Some(made.into_iter().collect()),
            cloth: Some(Some(ClothNeed {
                length: Length::from_mm(1200),
                width: Length::from_mm(1400),
                one_way: false,
            })),
            ..RoleChange::default()
        };
    ROLES.into_iter().map(role).collect()
}
