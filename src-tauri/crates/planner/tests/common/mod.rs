//! Invented problems, and the optimum by looking at every plan.
#![allow(dead_code, reason = "each test file uses its own part")]

use bayhand_chassis::{Pads, Rates, Sensitivity};
use bayhand_planner::{Clearance, Confidence, Limits, Minutes, Price, Problem, Round, Wish, Wishes};
use bayhand_vehicle::{Adjuster, Bar, Bars, Beams, Car, Corner, Corners, Place, STANDARD_GRAVITY, Sprung};

/// SplitMix64 (Steele, Lea, Flood 2014): small, and the same everywhere.
pub struct Random(pub u64);

impl Random {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    pub fn chance(&mut self, p: f64) -> bool {
        self.unit() < p
    }

    pub fn whole(&mut self, low: i32, high: i32) -> i32 {
        low + (self.next() % (high - low + 1) as u64) as i32
    }

    /// A standard Gaussian (Box and Muller 1958).
    pub fn gauss(&mut self) -> f64 {
        let (u, v) = (1.0 - self.unit(), self.unit());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }
}

/// An invented small coupe with data that is certain, and adjusters of 30 half-millimetre steps either way.
pub fn coupe() -> Problem {
    let corner = |spring: f64, ratio: f64| Corner {
        spring_n_per_mm: Some(spring),
        motion_ratio: Some(ratio),
        tyre_n_per_mm: 220.0,
        unsprung_kg: 34.0,
        tyre_radius_mm: 300.0,
        adjuster_ratio: None,
        bump_mm: None,
        droop_mm: None,
        bump_stop_n_per_mm: None,
        coil_bind_mm: None,
    };
    let (front, rear) = (corner(90.0, 0.8), corner(110.0, 0.75));
    Problem {
        car: Car {
            wheelbase_mm: 2_450.0,
            track_front_mm: 1_480.0,
            track_rear_mm: 1_510.0,
            roll_axis_height_mm: 70.0,
            sprung: Sprung { mass_kg: 950.0, cg_behind_front_axle_mm: 1_350.0, cg_left_mm: 12.0, cg_height_mm: 450.0 },
            torsion_nm_per_deg: None,
            corners: Corners { fl: front, fr: front, rl: rear, rr: rear },
            bars: Bars::default(),
            beams: Beams::default(),
            sprung_like: None,
            height_points: None,
        },
        confidence: Confidence { spring_pct: 0.0, motion_ratio_pct: 0.0 },
        adjusters: Corners::same(Adjuster { step_mm: 0.5, up_steps: 30, down_steps: 30 }),
        limits: Limits { height_diff_front_mm: Some(7.5), height_diff_rear_mm: Some(7.5), ..Limits::default() },
        wishes: Wishes {
            cross_pct: Some(Wish { target: 50.0, window: 0.2, weight: 1.0 }),
            front_diff_kg: Some(Wish { target: 0.0, window: 4.0, weight: 0.5 }),
            rear_diff_kg: Some(Wish { target: 0.0, window: 4.0, weight: 0.5 }),
            heights_mm: Corners::same(Some(Wish { target: 100.0, window: 1.0, weight: 0.3 })),
            rake_mm: None,
        },
        price: Price { per_collar: 0.01, per_step: 0.001 },
        pads: Pads { resolution_kg: 0.1, look_kg: 0.1, settle_kg: 0.2, level_mm: 0.05, height_mm: 0.3, patch_mm: 0.0 },
        rounds: vec![Round {
            turned_steps: Corners::same(0.0),
            loads_kg: Corners { fl: 262.0, fr: 228.0, rl: 288.0, rr: 308.0 },
            heights_mm: Corners { fl: 101.5, fr: 98.2, rl: 99.0, rr: 102.6 },
        }],
        known: None,
        minutes: Minutes::default(),
    }
}

/// An invented car and problem with boxes of a few steps; wishes, limits and prices of every kind.
pub fn any_problem(r: &mut Random, most_steps: i32) -> Problem {
    let mut p = coupe();
    let c = &mut p.car;
    c.track_front_mm = r.within(1_350.0, 1_600.0);
    c.track_rear_mm = r.within(1_350.0, 1_600.0);
    c.sprung.cg_behind_front_axle_mm = r.within(1_000.0, 1_500.0);
    c.torsion_nm_per_deg = r.chance(0.4).then(|| r.within(3_000.0, 16_000.0));
    if r.chance(0.2) {
        c.bars.front = Some(Bar { n_per_mm: r.within(5.0, 30.0), preload_n: 0.0 });
    }
    for place in Place::ALL {
        let corner = c.corners.at_mut(place);
        corner.spring_n_per_mm = Some(r.within(40.0, 200.0));
        corner.motion_ratio = Some(r.within(0.6, 1.0));
    }
    if r.chance(0.3) {
        // Equal corners and round numbers make ties.
        c.corners = Corners::same(c.corners.fl);
        c.track_rear_mm = c.track_front_mm;
    }
    let step = r.within(0.2, 1.5);
    let shared = r.chance(0.5);
    p.adjusters = Corners::from_fn(|_| Adjuster {
        step_mm: if shared { step } else { r.within(0.2, 1.5) },
        up_steps: r.whole(0, most_steps),
        down_steps: r.whole(0, most_steps),
    });
    let wish = |r: &mut Random, share: f64, target: f64, window: f64| {
        let weight = if r.chance(0.1) { 0.0 } else { r.within(0.1, 3.0) };
        r.chance(share).then(|| Wish { target, window: window * r.within(0.2, 2.0), weight })
    };
    p.wishes.cross_pct = wish(r, 0.7, 50.0, 0.3);
    p.wishes.front_diff_kg = wish(r, 0.5, 0.0, 2.0);
    p.wishes.rear_diff_kg = wish(r, 0.4, 3.0, 2.0);
    let heights = r.unit();
    p.wishes.heights_mm = Corners::from_fn(|_| wish(r, heights, 100.0, 1.5));
    if p.wishes.given().iter().all(|(_, w)| w.weight == 0.0) {
        p.wishes.cross_pct = Some(Wish { target: 50.0, window: 0.2, weight: 1.0 });
    }
    let limit = |r: &mut Random| r.chance(0.6).then(|| r.within(0.0, 5.0));
    p.limits = Limits {
        height_diff_front_mm: limit(r),
        height_diff_rear_mm: limit(r),
        agreed_diff_front_mm: if r.chance(0.3) { r.within(-4.0, 4.0) } else { 0.0 },
        agreed_diff_rear_mm: 0.0,
        ..Limits::default()
    };
    if r.chance(0.4) {
        rarer_limits(r, &mut p);
    }
    p.price = match r.whole(0, 3) {
        0 => Price::default(),
        1 => Price { per_collar: r.within(0.0, 3.0), per_step: 0.0 },
        2 => Price { per_collar: 0.0, per_step: r.within(0.0, 0.5) },
        _ => Price { per_collar: r.within(0.0, 1.0), per_step: r.within(0.0, 0.2) },
    };
    p.rounds[0].loads_kg = Corners::from_fn(|_| 270.0 + r.within(-25.0, 25.0));
    p.rounds[0].heights_mm = Corners::from_fn(|_| 100.0 + r.within(-4.0, 4.0));
    p
}

/// An invented problem of full size: boxes of 30 steps either way, all seven wishes at random, height limits of 7.5 mm. The
/// body is stiff, so the four heights lie near one plane.
pub fn full_problem(r: &mut Random) -> Problem {
    let mut p = any_problem(r, 4);
    p.adjusters = p.adjusters.map(|a| Adjuster { up_steps: 30, down_steps: 30, ..*a });
    let wish = |r: &mut Random, target: f64, window: f64| {
        Some(Wish { target, window: window * r.within(0.5, 2.0), weight: r.within(0.1, 2.0) })
    };
    p.wishes = Wishes {
        cross_pct: wish(r, 50.0, 0.2),
        front_diff_kg: wish(r, 0.0, 3.0),
        rear_diff_kg: wish(r, 0.0, 3.0),
        heights_mm: Corners::from_fn(|_| wish(r, 100.0, 1.5)),
        rake_mm: None,
    };
    p.limits = Limits { height_diff_front_mm: Some(7.5), height_diff_rear_mm: Some(7.5), ..Limits::default() };
    let (heave, pitch, roll) = (r.within(-3.0, 3.0), r.within(-3.0, 3.0), r.within(-3.0, 3.0));
    p.rounds[0].heights_mm = Corners::from_fn(|place| {
        let (fore, left) = (if place.index() < 2 { 1.0 } else { -1.0 }, if place.is_left() { 1.0 } else { -1.0 });
        100.0 + heave + fore * pitch + left * roll + r.within(-0.5, 0.5)
    });
    p
}

/// Limits of the other kinds, and a wish for the rake.
fn rarer_limits(r: &mut Random, p: &mut Problem) {
    let l = &mut p.limits;
    let middle = r.within(-3.0, 3.0);
    l.rake_least_mm = r.chance(0.4).then(|| middle - r.within(0.0, 2.0));
    l.rake_most_mm = r.chance(0.4).then(|| middle + r.within(0.0, 2.0));
    l.bump_gap_mm = r.chance(0.5).then(|| r.within(5.0, 25.0));
    l.droop_gap_mm = r.chance(0.5).then(|| r.within(5.0, 25.0));
    l.collar_change_mm = r.chance(0.3).then(|| r.within(0.0, 4.0));
    for _ in 0..r.whole(0, 2) {
        let now_mm = r.within(60.0, 80.0);
        l.clearances.push(Clearance {
            behind_front_axle_mm: r.within(-900.0, 3_200.0),
            left_mm: r.within(-700.0, 700.0),
            now_mm,
            least_mm: now_mm + r.within(-2.0, 1.0),
        });
    }
    for place in Place::ALL {
        let corner = p.car.corners.at_mut(place);
        corner.bump_mm = r.chance(0.5).then(|| r.within(15.0, 30.0));
        corner.droop_mm = r.chance(0.5).then(|| r.within(15.0, 30.0));
    }
    p.wishes.rake_mm =
        r.chance(0.5).then(|| Wish { target: middle, window: r.within(0.3, 1.5), weight: r.within(0.1, 2.0) });
}

/// Cost and excess over the limits of any plan, written down from the interchange text alone.
pub struct Ledger<'a> {
    problem: &'a Problem,
    /// Load (kg) and height (mm) changes per step: rows corners, columns collars.
    load: [[f64; 4]; 4],
    height: [[f64; 4]; 4],
}

impl<'a> Ledger<'a> {
    pub fn of(problem: &'a Problem) -> Ledger<'a> {
        let s = Sensitivity::of(&problem.car).expect("a car");
        let ratio = Rates::of(&problem.car).adjuster_ratio.to_array();
        let step = problem.adjusters.map(|a| a.step_mm).to_array();
        let scaled = |m: [[f64; 4]; 4]| m.map(|row| std::array::from_fn(|j| row[j] * ratio[j] * step[j]));
        Ledger { problem, load: scaled(s.load_per_mm_wheel), height: scaled(s.height_per_mm_wheel) }
    }

    pub fn after(&self, steps: [i32; 4]) -> ([f64; 4], [f64; 4]) {
        let now = self.problem.rounds.last().expect("a reading");
        let moved = |start: [f64; 4], m: &[[f64; 4]; 4]| {
            std::array::from_fn(|i| start[i] + (0..4).map(|j| m[i][j] * f64::from(steps[j])).sum::<f64>())
        };
        (moved(now.loads_kg.to_array(), &self.load), moved(now.heights_mm.to_array(), &self.height))
    }

    pub fn cost(&self, steps: [i32; 4]) -> f64 {
        let ([fl, fr, rl, rr], heights) = self.after(steps);
        let w = &self.problem.wishes;
        let one =
            |wish: Option<Wish>, value: f64| wish.map_or(0.0, |w| w.weight * ((value - w.target) / w.window).powi(2));
        let mut cost = one(w.cross_pct, 100.0 * (fr + rl) / (fl + fr + rl + rr));
        cost += one(w.front_diff_kg, fl - fr) + one(w.rear_diff_kg, rl - rr);
        for place in Place::ALL {
            cost += one(*w.heights_mm.at(place), heights[place.index()]);
        }
        cost += one(w.rake_mm, (heights[2] + heights[3] - heights[0] - heights[1]) / 2.0);
        let touched = steps.iter().filter(|s| **s != 0).count() as f64;
        let turned: i32 = steps.iter().map(|s| s.abs()).sum();
        cost + self.problem.price.per_collar * touched + self.problem.price.per_step * f64::from(turned)
    }

    pub fn excess_mm(&self, steps: [i32; 4]) -> f64 {
        let (loads, heights) = self.after(steps);
        let [fl, fr, rl, rr] = heights;
        let (l, car) = (&self.problem.limits, &self.problem.car);
        let now = self.problem.rounds.last().expect("a reading");
        let over = |limit: Option<f64>, diff: f64| limit.map_or(0.0, |limit| (diff.abs() - limit).max(0.0));
        let mut sum = over(l.height_diff_front_mm, fl - fr - l.agreed_diff_front_mm)
            + over(l.height_diff_rear_mm, rl - rr - l.agreed_diff_rear_mm);
        let rake = (rl + rr) / 2.0 - (fl + fr) / 2.0;
        sum += l.rake_least_mm.map_or(0.0, |least| (least - rake).max(0.0));
        sum += l.rake_most_mm.map_or(0.0, |most| (rake - most).max(0.0));
        let rise: [f64; 4] = std::array::from_fn(|i| heights[i] - now.heights_mm.to_array()[i]);
        for point in &l.clearances {
            // Middle of each axle and slope across it, then straight along the car; beyond an axle with its slope.
            let along = point.behind_front_axle_mm / car.wheelbase_mm;
            let middle = (rise[0] + rise[1]) / 2.0 * (1.0 - along) + (rise[2] + rise[3]) / 2.0 * along;
            let slope = [(rise[0] - rise[1]) / car.track_front_mm, (rise[2] - rise[3]) / car.track_rear_mm];
            let between = along.clamp(0.0, 1.0);
            let there = middle + point.left_mm * (slope[0] * (1.0 - between) + slope[1] * between);
            sum += (point.least_mm - point.now_mm - there).max(0.0);
        }
        for p in Place::ALL {
            let (i, corner) = (p.index(), car.corners.at(p));
            // Further out of the body by what the height gains and the tyre gives way more.
            let out = rise[i] + (loads[i] - now.loads_kg.to_array()[i]) * STANDARD_GRAVITY / corner.tyre_n_per_mm;
            let gap = |left: Option<f64>, least: Option<f64>, used: f64| match (left, least) {
                (Some(left), Some(least)) => (least - left + used).max(0.0),
                _ => 0.0,
            };
            sum += gap(corner.bump_mm, l.bump_gap_mm, -out) + gap(corner.droop_mm, l.droop_gap_mm, out);
        }
        sum
    }

    /// Every plan inside the adjusters.
    pub fn all(&self) -> Vec<[i32; 4]> {
        let range = |p: Place| {
            let a = self.problem.adjusters.at(p);
            let most = |steps: i32| match self.problem.limits.collar_change_mm {
                Some(change) => (0..=steps).rev().find(|s| f64::from(*s) * a.step_mm <= change + 1e-12).unwrap_or(0),
                None => steps,
            };
            -most(a.down_steps)..=most(a.up_steps)
        };
        let mut plans = Vec::new();
        for fl in range(Place::Fl) {
            for fr in range(Place::Fr) {
                for rl in range(Place::Rl) {
                    for rr in range(Place::Rr) {
                        plans.push([fl, fr, rl, rr]);
                    }
                }
            }
        }
        plans
    }

    /// The optimum by looking at every plan: least excess, then least cost, then the order among equals.
    pub fn optimum(&self) -> ([i32; 4], f64) {
        let plans = self.all();
        let excess = plans.iter().map(|s| self.excess_mm(*s)).fold(f64::INFINITY, f64::min);
        let allowed: Vec<[i32; 4]> = plans.into_iter().filter(|s| self.excess_mm(*s) <= excess + 1e-9).collect();
        let least = allowed.iter().map(|s| self.cost(*s)).fold(f64::INFINITY, f64::min);
        let equal = allowed.into_iter().filter(|s| self.cost(*s) <= least + 1e-9 * (1.0 + least));
        let order = |s: &[i32; 4]| {
            let touched = s.iter().filter(|v| **v != 0).count();
            (touched, s.iter().map(|v| v.abs()).sum::<i32>(), s.iter().map(|v| v * v).sum::<i32>(), *s)
        };
        (equal.min_by_key(order).expect("the least is one of them"), least)
    }
}
