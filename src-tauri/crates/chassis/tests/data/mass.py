"""Makes lift.json and mass.json: what a car weighs when an axle is raised, when mass is added, when tyres are pumped.

Nothing here shares code or formulas with the project. The lift: a flat car with its own pose, wheel travel and tyres,
put at rest by minimising its energy (scipy.optimize); no levers are used. Mass and tyres: a stiffness matrix with body
and wheels as bodies of their own, from free springs to rest (numpy.linalg.solve).

    python3 -m venv venv && venv/bin/pip install numpy scipy && venv/bin/python mass.py
"""
import json
import numpy as np
from scipy.optimize import minimize

G = 9.80665
rng = np.random.default_rng(20_310)


def at_rest(car, rise, free):
    """Body x, z, angle and travels (mm, rad) where the energy is least, then loads (kg). x is held at the grounded wheel."""
    a, h, L = car["from_grounded_mm"], car["height_mm"], car["wheelbase_mm"]
    rg, rr, m = car["free_radius_grounded_mm"], car["free_radius_raised_mm"], car["total_kg"]
    ktg, ktr = car["tyre_grounded_n_per_mm"], car["tyre_raised_n_per_mm"]
    kg_, kr_ = car["spring_grounded_n_per_mm"], car["spring_raised_n_per_mm"]

    def parts(q):
        z, th, cg, cr = q  # z of the body's origin; cg, cr: spring travel from its free length
        s, c = np.sin(th), np.cos(th)
        # Body axes: origin over the grounded axle on the drawing's ground line; wheel centres at heights of their own.
        hub_g, hub_r = car["hub_grounded_mm"] + cg, car["hub_raised_mm"] + cr
        zg = z + hub_g * c
        zr = z + L * s + hub_r * c
        zm = z + a * s + h * c
        return zg, zr, zm

    def energy(q):
        zg, zr, zm = parts(q)
        dg, dr = rg - zg, rr - (zr - rise)
        e = 0.5 * ktg * dg**2 + 0.5 * ktr * dr**2 + m * G * zm
        if free:
            e += 0.5 * kg_ * (q[2] - car["spring_free_grounded_mm"]) ** 2 + 0.5 * kr_ * (q[3] - car["spring_free_raised_mm"]) ** 2
        return e / 1e3

    lock = None if free else car["locked_mm"]

    def full(p):
        return p if free else np.array([p[0], p[1], lock[0], lock[1]])

    p = np.array(car.get("start", [0.0, 0.0, 0.0, 0.0]))
    p = p if free else p[:2]
    scale = np.array([1.0, 1e-3, 1.0, 1.0])[: len(p)]
    # Newton on a numerical gradient in long double would do as well; two methods in turn reach the bottom.
    f = lambda v: energy(full(v * scale))
    v = p / scale
    for _ in range(4):
        v = minimize(f, v, method="BFGS", options={"gtol": 1e-9}).x
        v = minimize(f, v, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-16, "maxiter": 20_000, "maxfev": 20_000}).x
    # The last digits: Newton with central differences.
    for _ in range(8):
        n, e = len(v), 1e-2
        g, H = np.zeros(n), np.zeros((n, n))
        unit = np.eye(n) * e
        for i in range(n):
            g[i] = (f(v + unit[i]) - f(v - unit[i])) / (2 * e)
            for j in range(n):
                H[i, j] = (f(v + unit[i] + unit[j]) - f(v + unit[i] - unit[j]) - f(v - unit[i] + unit[j]) + f(v - unit[i] - unit[j])) / (4 * e * e)
        v = v - np.linalg.solve(H, g)
    q = full(v * scale)
    zg, zr, zm = parts(q)
    return q, ktg * (rg - zg) / G, ktr * (rr - (zr - rise)) / G, zg, zr, zm


def lift_case(free):
    car = {
        "total_kg": float(rng.uniform(700, 1900)),
        "wheelbase_mm": float(rng.uniform(2200, 2900)),
        "free_radius_grounded_mm": float(rng.uniform(290, 340)),
        "free_radius_raised_mm": float(rng.uniform(290, 340)),
        "tyre_grounded_n_per_mm": float(rng.uniform(350, 700)),
        "tyre_raised_n_per_mm": float(rng.uniform(350, 700)),
        "spring_grounded_n_per_mm": float(rng.uniform(60, 300)),
        "spring_raised_n_per_mm": float(rng.uniform(60, 300)),
    }
    L = car["wheelbase_mm"]
    a, h = float(rng.uniform(0.4, 0.6)) * L, float(rng.uniform(350, 620))
    W = car["total_kg"] * G
    fg, fr = W * (1 - a / L), W * a / L
    # Level by construction: the body's ground line lies on the ground when each axle carries its share.
    zg, zr = car["free_radius_grounded_mm"] - fg / car["tyre_grounded_n_per_mm"], car["free_radius_raised_mm"] - fr / car["tyre_raised_n_per_mm"]
    car |= {
        "from_grounded_mm": a,
        "height_mm": h,
        "hub_grounded_mm": zg,
        "hub_raised_mm": zr,
        "spring_free_grounded_mm": -fg / car["spring_grounded_n_per_mm"],
        "spring_free_raised_mm": -fr / car["spring_raised_n_per_mm"],
        "locked_mm": [0.0, 0.0],
    }
    steps = []
    for rise in [0.0, 150.0, 300.0, 450.0, 600.0]:
        q, kg_g, kg_r, z_g, z_r, _ = at_rest(car, rise, free)
        car["start"] = list(q)
        assert abs(kg_g + kg_r - car["total_kg"]) < 1e-3, (kg_g + kg_r, car["total_kg"])
        steps.append({"pad_rise_mm": rise, "centre_rise_mm": z_r - zr, "angle_deg": float(np.degrees(q[1])), "grounded_kg": kg_g})
    assert abs(steps[0]["angle_deg"]) < 1e-4
    return {
        "free": free,
        "total_kg": car["total_kg"],
        "wheelbase_mm": L,
        "radius_grounded_mm": zg,
        "radius_raised_mm": zr,
        "tyre_grounded_n_per_mm": car["tyre_grounded_n_per_mm"],
        "tyre_raised_n_per_mm": car["tyre_raised_n_per_mm"],
        "spring_grounded_n_per_mm": car["spring_grounded_n_per_mm"],
        "spring_raised_n_per_mm": car["spring_raised_n_per_mm"],
        "height_mm": h,
        "steps": steps,
    }


CORNERS = ["FL", "FR", "RL", "RR"]


def stand(car, tyres, extra=None):
    """Loads (kg) and body rise (mm) at the wheels, from free springs; unknown: body z, pitch, two rolls, four wheels."""
    L, b = car["wheelbase_mm"], car["sprung"]["cg_behind_front_axle_mm"]
    tf, tr = car["track_front_mm"], car["track_rear_mm"]
    xs = np.array([0, 0, L, L], float)
    ys = np.array([tf / 2, -tf / 2, tr / 2, -tr / 2])

    def body(x, y):
        share = x / L
        return np.array([1.0, -(x - b), y * (1 - share), y * share, 0, 0, 0, 0])  # pitch: nose up positive

    K, f = np.zeros((8, 8)), np.zeros(8)
    springs = []
    for i, c in enumerate(CORNERS):
        p = car["corners"][c]
        front = i < 2
        row = np.array([1.0, -(xs[i] - b), ys[i] if front else 0, 0 if front else ys[i], 0, 0, 0, 0])
        row[4 + i] = -1.0
        springs.append(row)
        K += p["spring_n_per_mm"] * p["motion_ratio"] ** 2 * np.outer(row, row)
        K[4 + i, 4 + i] += tyres[i]
        f[4 + i] -= p["unsprung_kg"] * G
    for axle, (l, r) in {"front": (0, 1), "rear": (2, 3)}.items():
        bar = car["bars"].get(axle)
        if bar:
            d = springs[l] - springs[r]
            K += bar["n_per_mm"] * np.outer(d, d)
    twist = np.array([0, 0, 1.0, -1.0, 0, 0, 0, 0])
    torsion = car["torsion_nm_per_deg"] * 1e3 * 180 / np.pi if car["torsion_nm_per_deg"] else 1e15
    K += torsion * np.outer(twist, twist)
    s = car["sprung"]
    tip = s["mass_kg"] * G * (s["cg_height_mm"] - car["roll_axis_height_mm"])
    for i, w in ((1, 1.0), (2, 1 - b / L), (3, b / L)):
        K[i, i] -= tip * w
    f -= s["mass_kg"] * G * body(b, s["cg_left_mm"])
    if extra:
        f -= extra["kg"] * G * body(extra["behind_front_axle_mm"], extra["left_mm"])
    q = np.linalg.solve(K, f)
    rise = [(springs[i] @ q) + q[4 + i] for i in range(4)]
    return [-tyres[i] * q[4 + i] / G for i in range(4)], rise


def named(v):
    return dict(zip(CORNERS, (float(x) for x in v)))


def mass_case():
    u = lambda lo, hi: float(rng.uniform(lo, hi))
    L = u(2200, 2900)
    pair = lambda: {"spring_n_per_mm": u(40, 160), "motion_ratio": u(0.6, 1.0), "tyre_n_per_mm": u(180, 320), "unsprung_kg": u(20, 45), "tyre_radius_mm": u(290, 340)}
    corners = {c: pair() for c in CORNERS}
    car = {
        "wheelbase_mm": L,
        "track_front_mm": u(1350, 1650),
        "track_rear_mm": u(1350, 1650),
        "roll_axis_height_mm": u(20, 150),
        "sprung": {"mass_kg": u(700, 1500), "cg_behind_front_axle_mm": L * u(0.4, 0.6), "cg_left_mm": u(-25, 25), "cg_height_mm": u(350, 600)},
        "torsion_nm_per_deg": u(2000, 20000) if rng.random() < 0.5 else None,
        "corners": corners,
        "bars": {},
    }
    for axle in ("front", "rear"):
        if rng.random() < 0.4:
            car["bars"][axle] = {"n_per_mm": u(5, 40), "preload_n": 0.0}
    tyres = [corners[c]["tyre_n_per_mm"] for c in CORNERS]
    extra = {"kg": u(5, 60), "behind_front_axle_mm": u(-600, L + 600), "left_mm": u(-700, 700)}
    factor = [u(0.85, 1.2) for _ in range(4)]
    before, _ = stand(car, tyres)
    after, _ = stand(car, tyres, extra)
    pumped, high = stand(car, [t * k for t, k in zip(tyres, factor)])
    _, low = stand(car, tyres)
    if min(before + after + pumped) < 20:
        return mass_case()
    return {
        "car": car,
        "loads_kg": named(before),
        "extra": extra,
        "loads_with_extra_kg": named(after),
        "tyre_factor": named(factor),
        "loads_pumped_kg": named(pumped),
        "height_change_pumped_mm": named(np.array(high) - np.array(low)),
    }


if __name__ == "__main__":
    with open("lift.json", "w") as out:
        json.dump({"seed": 20_310, "cases": [lift_case(free) for free in [False] * 10 + [True] * 10]}, out, indent=1)
    with open("mass.json", "w") as out:
        json.dump({"seed": 20_310, "cases": [mass_case() for _ in range(40)]}, out, indent=1)
