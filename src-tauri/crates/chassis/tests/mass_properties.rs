//! What holds of mass wherever it is: equilibrium, reciprocity's consequences, and that a plan does what it says.

mod common;

use bayhand_chassis::{
    Figures, LengthSpread, MassChange, Movable, Share, Short, Spot, after_mass_change, ballast_to_reach, carried,
    mass_centre, mass_centre_spread, reach,
};
use bayhand_vehicle::{Bar, Car, Corners};
use common::{always_alike, square_car};
use proptest::prelude::*;

fn any_car() -> impl Strategy<Value = Car> {
    (1_300.0..1_700.0f64, 1_300.0..1_700.0f64, 20.0..80.0f64, 300.0..600.0f64, any::<bool>(), any::<bool>()).prop_map(
        |(front, rear, spring, height, torsion, bar)| {
            let mut car = square_car();
            car.track_front_mm = front;
            car.track_rear_mm = rear;
            car.corners.rr.spring_n_per_mm = Some(spring);
            car.sprung.cg_height_mm = height;
            car.torsion_nm_per_deg = torsion.then_some(5_000.0);
            car.bars.front = bar.then_some(Bar { n_per_mm: 15.0, preload_n: 100.0 });
            car
        },
    )
}

fn any_spot() -> impl Strategy<Value = Spot> {
    (-500.0..3_000.0f64, -700.0..700.0f64)
        .prop_map(|(behind_front_axle_mm, left_mm)| Spot { behind_front_axle_mm, left_mm })
}

fn any_loads() -> impl Strategy<Value = Corners<f64>> {
    [250.0..400.0f64, 250.0..400.0, 250.0..400.0, 250.0..400.0].prop_map(Corners::from_array)
}

/// A thing with room around it.
fn any_item() -> impl Strategy<Value = Movable> {
    (5.0..40.0f64, any_spot(), 0.0..400.0f64, 0.0..400.0f64).prop_map(|(kg, at, down, up)| Movable {
        kg,
        at,
        least: Spot { behind_front_axle_mm: at.behind_front_axle_mm - down, left_mm: at.left_mm - down },
        most: Spot { behind_front_axle_mm: at.behind_front_axle_mm + up, left_mm: at.left_mm + up },
    })
}

proptest! {
    #![proptest_config(always_alike())]

    /// A kilogram is carried whole. With the mass centre on the roll axis, so that no lean moves it, both its moments
    /// are carried too, whatever springs, bars, torsion and tracks.
    #[test]
    fn a_kilogram_is_carried_whole(car in any_car(), at in any_spot()) {
        let sum = |parts: &Corners<f64>| parts.to_array().iter().sum::<f64>();
        prop_assert!((sum(&carried(&car, &at).expect("parts")) - 1.0).abs() < 1e-9);
        let mut flat = car;
        flat.sprung.cg_height_mm = flat.roll_axis_height_mm;
        let parts = carried(&flat, &at).expect("parts");
        let front = 1.0 - at.behind_front_axle_mm / flat.wheelbase_mm;
        prop_assert!((parts.fl + parts.fr - front).abs() < 1e-9, "moment about the rear axle: {parts:?}");
        let left_mm = (flat.track_front_mm * (parts.fl - parts.fr) + flat.track_rear_mm * (parts.rl - parts.rr)) / 2.0;
        prop_assert!((left_mm - at.left_mm).abs() < 1e-6, "about the middle plane: {left_mm} of {}", at.left_mm);
    }

    /// Moving a thing there and back leaves nothing; moving it is taking it out and putting it in.
    #[test]
    fn moves_add_up(car in any_car(), loads in any_loads(), kg in 0.0..50.0f64, from in any_spot(), to in any_spot()) {
        let after = |changes: &[MassChange]| after_mass_change(&car, &loads, changes).expect("an effect");
        let there = after(&[MassChange::Moved { kg, from, to }]);
        let apart = after(&[MassChange::Removed { kg, at: from }, MassChange::Added { kg, at: to }]);
        let back = after(&[MassChange::Moved { kg, from, to }, MassChange::Moved { kg, from: to, to: from }]);
        for place in bayhand_vehicle::Place::ALL {
            prop_assert!((there.loads_kg.at(place) - apart.loads_kg.at(place)).abs() < 1e-9);
            prop_assert!((back.loads_kg.at(place) - loads.at(place)).abs() < 1e-9);
        }
        prop_assert!((there.figures.total_kg - Figures::of(&loads).total_kg).abs() < 1e-9, "the total stays");
    }

    /// A plan reaches its share, or says that it does not and has used all there is; it stays in every rectangle.
    #[test]
    fn a_plan_does_what_it_says(
        car in any_car(), loads in any_loads(), off in -2.0..2.0f64, left in any::<bool>(),
        items in prop::collection::vec(any_item(), 0..5),
    ) {
        let share = if left { Share::Left } else { Share::Front };
        let wanted = share.of(&Figures::of(&loads)) + off;
        let found = reach(&car, &loads, share, wanted, &items).expect("an answer");
        let reached = share.of(&found.effect.figures);
        match found.short {
            None => prop_assert!((reached - wanted).abs() < 1e-6, "{reached} is not {wanted}"),
            Some(_) => {
                // All that can go the right way has gone as far as it may.
                let room: f64 = items.iter().enumerate().map(|(i, item)| {
                    let at = found.moves.iter().find(|m| m.item == i).map_or(item.at, |m| m.to);
                    match (share, off > 0.0) {
                        (Share::Left, true) => item.most.left_mm - at.left_mm,
                        (Share::Left, false) => at.left_mm - item.least.left_mm,
                        (Share::Front, true) => at.behind_front_axle_mm - item.least.behind_front_axle_mm,
                        (Share::Front, false) => item.most.behind_front_axle_mm - at.behind_front_axle_mm,
                    }
                }).sum();
                prop_assert!(room < 1e-6, "{room} mm were left");
                prop_assert!((reached - wanted) * off < 0.0, "short of it, not beyond");
            }
        }
        for m in &found.moves {
            let (item, to) = (&items[m.item], &m.to);
            prop_assert!(to.left_mm >= item.least.left_mm - 1e-9 && to.left_mm <= item.most.left_mm + 1e-9);
            prop_assert!(m.by_mm * off > 0.0 && m.by_mm.signum() == found.moment_kg_mm.signum(), "the right way");
        }
    }

    /// Ballast reaches the share at its place, or says why not.
    #[test]
    fn ballast_does_what_it_says(car in any_car(), loads in any_loads(), off in -2.0..2.0f64, at in any_spot()) {
        let wanted = Share::Left.of(&Figures::of(&loads)) + off;
        let found = ballast_to_reach(&car, &loads, Share::Left, wanted, &at, (0.0, 60.0)).expect("an answer");
        prop_assert!((0.0..=60.0).contains(&found.kg));
        let missing = (found.effect.figures.left_pct - wanted).abs();
        match found.short {
            None => prop_assert!(missing < 1e-9, "{missing}"),
            Some(Short::WrongPlace { own_pct }) => {
                prop_assert!((own_pct - wanted) * off <= 0.0, "a place beyond the wanted share is not wrong");
            }
            Some(_) => prop_assert!(missing < off.abs() && found.kg == 60.0, "all of it helps, but not enough"),
        }
    }

    /// The mass centre lies between the wheels, and its uncertainty grows with each thing that it rests on.
    #[test]
    fn a_mass_centre_between_the_wheels(car in any_car(), loads in any_loads(), kg2 in 0.01..4.0f64, mm in 0.0..5.0f64) {
        let centre = mass_centre(&car, &loads).expect("a centre");
        prop_assert!(centre.behind_front_axle_mm > 0.0 && centre.behind_front_axle_mm < car.wheelbase_mm);
        let covariance = std::array::from_fn(|i| std::array::from_fn(|j| if i == j { kg2 } else { 0.0 }));
        let of = |lengths| mass_centre_spread(&car, &loads, &covariance, &lengths).expect("a spread").expanded;
        let less = of(LengthSpread::default());
        let more = of(LengthSpread { wheelbase_mm: mm, track_mm: mm });
        prop_assert!(less.left_mm > 0.0 && more.left_mm >= less.left_mm);
        prop_assert!(more.behind_front_axle_mm >= less.behind_front_axle_mm);
    }
}
