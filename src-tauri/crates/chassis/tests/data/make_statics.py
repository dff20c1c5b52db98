"""Makes engine.json: invented cars at rest, computed with MuJoCo, a general 3-D rigid-body engine.

    pip install mujoco numpy
    python make_statics.py > engine.json

Nothing of this project is used. Each car is built of rigid bodies: a sprung body on heave, pitch and roll about its
roll axis (two halves joined by a torsion spring where it has torsion), wheels that slide up and down, or beams that
slide and roll. Struts hold the body at the height of its roll axis, which is what a roll axis means. They are length
springs along their own line between body and wheel; tyres are springs on the pads
that cannot pull; bump stops and droop limits are further springs along the strut's line that act beyond a length;
bars are springs on the difference of the wheels' travel. Rest is where the engine's own forces
(passive - bias, at no speed) vanish: Newton steps on them from one reading to the next, the collars moved in small
parts, each rest checked for stability on the engine's forces as well.

Motion ratio and adjuster enter as the definition says: a spring of rate k at ratio m is k m^2 at the wheel, and a
collar moved by s lifts the free length at the wheel by s / m.
"""

import json
import sys

import mujoco
import numpy as np

SEED = 20261125
G = 9.80665
PLACES = ["FL", "FR", "RL", "RR"]
DROOP_N_PER_M = 4e9
NEVER = 1e3
STRUT_M = 0.3


def rounded(values, digits):
    return {p: round(float(v), digits) + 0.0 for p, v in zip(PLACES, values)}


class Engine:
    """One car in the engine. SI; x forward of the mass centre, y left, z up from the pad plane."""

    def __init__(self, car, kind, free_trim, bars_on):
        self.car, self.kind, self.bars_on = car, kind, bars_on
        front = car["sprung"]["cg_behind_front_axle_mm"] / 1e3
        rear = front - car["wheelbase_mm"] / 1e3
        self.track = [car["track_front_mm"] / 1e3, car["track_rear_mm"] / 1e3]
        self.x = [front, front, rear, rear]
        self.y = [self.track[0] / 2, -self.track[0] / 2, self.track[1] / 2, -self.track[1] / 2]
        self.corners = [car["corners"][p] for p in PLACES]
        self.beams = [car.get("beams", {}).get(a) for a in ("front", "rear")]
        self.ratio = [c["motion_ratio"] for c in self.corners]
        self.wheel_rate = [c["spring_n_per_mm"] * c["motion_ratio"] ** 2 * 1e3 for c in self.corners]
        self.tyre_rate = [c["tyre_n_per_mm"] * 1e3 for c in self.corners]
        self.radius = [c["tyre_radius_mm"] / 1e3 for c in self.corners]
        self.axis = car["roll_axis_height_mm"] / 1e3
        self.point = kind["point_m"]
        self.model = mujoco.MjModel.from_xml_string(self.xml())
        self.data = mujoco.MjData(self.model)
        self.free = self.design_lengths() + np.array(free_trim)
        self.collar = np.zeros(4)
        self.pads = np.zeros(4)
        self.q = np.zeros(self.model.nq)

    def spring_y(self, i):
        beam = self.beams[i // 2]
        if beam is None:
            return self.y[i]
        return np.sign(self.y[i]) * beam["spring_base_mm"] / 2e3

    def foot(self, i):
        """Foot of a strut over the wheel's centre: the strut's length below the roll axis, where it carries the body."""
        return self.axis - STRUT_M - self.radius[i]

    def xml(self):
        car, s = self.car, self.car["sprung"]
        cg = s["cg_height_mm"] / 1e3 - self.axis
        left = s["cg_left_mm"] / 1e3
        share = s["cg_behind_front_axle_mm"] / car["wheelbase_mm"]
        torsion = car["torsion_nm_per_deg"]
        out = ["<mujoco><compiler angle='radian'/>"]
        out.append(f"<option gravity='0 0 -{G}'/><worldbody>")
        out.append(f"<body name='carrier' pos='0 0 {self.axis}'><joint name='heave' type='slide' axis='0 0 1'/>")
        out.append("<joint name='pitch' type='hinge' axis='0 1 0'/><inertial pos='0 0 0' mass='1e-9' diaginertia='1e-9 1e-9 1e-9'/>")

        def half(name, mass, x, corners):
            out.append(f"<body name='{name}'><joint name='roll {name}' type='hinge' axis='1 0 0'/>")
            out.append(f"<inertial pos='{x} {left} {cg}' mass='{mass}' diaginertia='100 100 100'/>")
            for i in corners:
                out.append(f"<site name='top{i}' pos='{self.x[i]} {self.spring_y(i)} 0'/>")
                out.append(f"<site name='point{i}' pos='{self.x[i]} {self.y[i]} {self.point[i] - self.axis}'/>")
            out.append("</body>")

        if torsion is None:
            half("body", s["mass_kg"], 0.0, range(4))
        else:
            half("fore", s["mass_kg"] * (1 - share), self.x[0], (0, 1))
            half("aft", s["mass_kg"] * share, self.x[2], (2, 3))
        out.append("</body>")
        for axle in (0, 1):
            two = (2 * axle, 2 * axle + 1)
            if self.beams[axle] is None:
                for i in two:
                    out.append(f"<body name='wheel{i}' pos='{self.x[i]} {self.y[i]} {self.radius[i]}'>")
                    out.append(f"<joint name='w{i}' type='slide' axis='0 0 1'/>")
                    out.append(f"<inertial pos='0 0 0' mass='{max(self.corners[i]['unsprung_kg'], 1e-9)}' diaginertia='1 1 1'/>")
                    out.append(f"<site name='foot{i}' pos='0 0 {self.foot(i)}'/></body>")
            else:
                mass = sum(self.corners[i]["unsprung_kg"] for i in two)
                i = two[0]
                # It turns about the height of its spring seats.
                out.append(f"<body name='beam{axle}' pos='{self.x[i]} 0 {self.axis - STRUT_M}'>")
                out.append(f"<joint name='b{axle}' type='slide' axis='0 0 1'/><joint name='t{axle}' type='hinge' axis='1 0 0'/>")
                out.append(f"<inertial pos='0 0 0' mass='{mass}' diaginertia='20 1 20'/>")
                for i in two:
                    out.append(f"<site name='foot{i}' pos='0 {self.spring_y(i)} 0'/>")
                out.append("</body>")
        out.append("</worldbody><tendon>")
        for i in range(4):
            rate = self.wheel_rate[i]
            ends = f"<site site='foot{i}'/><site site='top{i}'/></spatial>"
            out.append(f"<spatial name='strut{i}' stiffness='{rate}' springlength='1'>" + ends)
            out.append(f"<spatial name='bump{i}' stiffness='1' springlength='0 {NEVER}'>" + ends)
            out.append(f"<spatial name='droop{i}' stiffness='{DROOP_N_PER_M}' springlength='0 {NEVER}'>" + ends)
            wheel = f"<joint joint='w{i}' coef='1'/>"
            if self.beams[i // 2] is not None:
                wheel = f"<joint joint='b{i // 2}' coef='1'/><joint joint='t{i // 2}' coef='{self.y[i]}'/>"
            out.append(f"<fixed name='tyre{i}' stiffness='{self.tyre_rate[i]}' springlength='0 {NEVER}'>{wheel}</fixed>")
        for axle, name in enumerate(("front", "rear")):
            bar = self.kind.get("bars", {}).get(name)
            if bar is not None:
                rate = bar["n_per_mm"] * 1e3 if self.bars_on else 0
                roll = "roll body" if torsion is None else ("roll fore", "roll aft")[axle]
                half = self.track[axle] / 2
                if self.beams[axle] is None:
                    parts = f"<joint joint='w{2 * axle}' coef='1'/><joint joint='w{2 * axle + 1}' coef='-1'/>"
                else:
                    parts = f"<joint joint='t{axle}' coef='{2 * half}'/>"
                parts += f"<joint joint='{roll}' coef='{-2 * half}'/>"
                rest = bar["twist_mm"] / 1e3
                out.append(f"<fixed name='bar{axle}' stiffness='{rate}' springlength='{rest} {rest}'>{parts}</fixed>")
        if torsion is not None:
            out.append(f"<fixed name='torsion' stiffness='{torsion * 180 / np.pi}' springlength='0 0'>")
            out.append("<joint joint='roll fore' coef='1'/><joint joint='roll aft' coef='-1'/></fixed>")
        out.append("</tendon></mujoco>")
        return "".join(out)

    def tendon(self, name):
        return mujoco.mj_name2id(self.model, mujoco.mjtObj.mjOBJ_TENDON, name)

    def length(self, name):
        return float(self.data.ten_length[self.tendon(name)])

    def rest_range(self, name, low, high):
        self.model.tendon_lengthspring[self.tendon(name)] = (low, high)

    def design_lengths(self):
        """Free lengths with which the level car at its given heights is near rest (tyres pressed in by their load)."""
        s = self.car["sprung"]
        share = s["cg_behind_front_axle_mm"] / self.car["wheelbase_mm"]
        mujoco.mj_forward(self.model, self.data)
        out = []
        for i in range(4):
            part = (1 - share if i < 2 else share) * (0.5 + s["cg_left_mm"] / 1e3 / self.y[i] / 2)
            load = s["mass_kg"] * part * G
            total = load + self.corners[i]["unsprung_kg"] * G
            self.rest_range(f"tyre{i}", total / self.tyre_rate[i], NEVER)
            out.append(self.length(f"strut{i}") + load / self.wheel_rate[i])
        self.tyre_free = [float(self.model.tendon_lengthspring[self.tendon(f"tyre{i}")][0]) for i in range(4)]
        return np.array(out)

    def apply(self):
        for i in range(4):
            free = float(self.free[i] + self.collar[i] / self.ratio[i])
            loose = self.kind.get("droop_at") and self.kind["droop_at"][i] is not None
            self.rest_range(f"strut{i}", free, NEVER if loose else free)
            self.rest_range(f"tyre{i}", self.tyre_free[i] + self.pads[i], NEVER)
            bump = self.kind.get("bump_at") and self.kind["bump_at"][i]
            if bump:
                self.model.tendon_stiffness[self.tendon(f"bump{i}")] = self.kind["bump_rate"][i]
                self.rest_range(f"bump{i}", bump, NEVER)
            else:
                self.rest_range(f"bump{i}", 0, NEVER)
            if loose:
                self.rest_range(f"droop{i}", 0, self.kind["droop_at"][i])

    def force(self, q):
        self.data.qpos[:] = q
        self.data.qvel[:] = 0
        mujoco.mj_forward(self.model, self.data)
        return self.data.qfrc_passive - self.data.qfrc_bias

    def slope(self, q):
        n = len(q)
        out = np.zeros((n, n))
        for k in range(n):
            d = np.zeros(n)
            d[k] = 1e-8  # well inside what a stop is pressed in
            out[:, k] = (self.force(q + d) - self.force(q - d)) / 2e-8
        return out

    def rest(self):
        """Newton on the engine's forces. False when the car finds no stable rest."""
        self.apply()
        q = self.q.copy()
        f = self.force(q)
        for turn in range(60):
            size = np.abs(f).max()
            if size < 2e-6:
                break
            jacobian = self.slope(q)
            try:
                step = -np.linalg.solve(jacobian, f)
            except np.linalg.LinAlgError:
                return False
            part = 1.0
            # Whole steps first: where a stop is met they change sides at once. Then only steps that lead down.
            while part > 1e-4 and turn >= 15:
                tried = self.force(q + part * step)
                if np.linalg.norm(tried) < np.linalg.norm(f) * (1 - 1e-4 * part):
                    break
                part /= 2
            if part <= 1e-4:
                break
            q = q + part * step
            f = self.force(q)
        if np.abs(f).max() > 1e-5 or np.abs(q).max() > 0.3:
            return False
        jacobian = self.slope(q)
        if np.linalg.eigvalsh(-(jacobian + jacobian.T) / 2).min() <= 0:
            return False
        self.q = q
        self.force(q)
        return True

    def move(self, collar_mm, pads_mm, parts=8):
        """From where the car rests now to a setting, in parts."""
        c0, p0 = self.collar.copy(), self.pads.copy()
        for k in range(1, parts + 1):
            self.collar = c0 + (np.array(collar_mm) / 1e3 - c0) * k / parts
            self.pads = p0 + (np.array(pads_mm) / 1e3 - p0) * k / parts
            if not self.rest():
                return False
        return True

    def loads(self):
        gap = [self.tyre_free[i] + self.pads[i] - self.length(f"tyre{i}") for i in range(4)]
        return np.array([max(0.0, self.tyre_rate[i] * gap[i]) / G for i in range(4)])

    def heights(self):
        out = []
        for i in range(4):
            site = mujoco.mj_name2id(self.model, mujoco.mjtObj.mjOBJ_SITE, f"point{i}")
            out.append((self.data.site_xpos[site][2] - self.pads[i]) * 1e3)
        return np.array(out)

    def reading(self):
        return {
            "collar_mm": rounded(self.collar * 1e3, 4),
            "pads_mm": rounded(self.pads * 1e3, 4),
            "loads_kg": rounded(self.loads(), 5),
            "heights_mm": rounded(self.heights(), 5),
        }

    def struts(self):
        return np.array([self.length(f"strut{i}") for i in range(4)])


def draw_car(rng, torsion, beam):
    mass = rng.integers(550, 1500)
    wheelbase = int(rng.integers(2200, 2900))
    track_f, track_r = int(rng.integers(1350, 1650)), int(rng.integers(1350, 1650))
    corners = []
    for axle in (0, 1):
        ratio = 1.0 if beam == axle else round(float(rng.uniform(0.55, 1.0)), 2)
        load = mass / 4 * G
        rate = load * rng.uniform(0.015, 0.06) / ratio**2
        unsprung = int(rng.integers(22, 48))
        radius = int(rng.integers(280, 335))
        tyre = int(rng.integers(180, 300))
        corners += [dict(spring_n_per_mm=round(float(rate), 0), motion_ratio=ratio, tyre_n_per_mm=tyre,
                         unsprung_kg=unsprung, tyre_radius_mm=radius)] * 2
    car = dict(
        wheelbase_mm=wheelbase, track_front_mm=track_f, track_rear_mm=track_r,
        roll_axis_height_mm=int(rng.integers(20, 120)),
        sprung=dict(mass_kg=int(mass), cg_behind_front_axle_mm=int(wheelbase * rng.uniform(0.38, 0.62)),
                    cg_left_mm=int(rng.integers(-45, 46)), cg_height_mm=int(rng.integers(360, 560))),
        torsion_nm_per_deg=int(rng.integers(3000, 16000)) if torsion else None,
        corners={p: dict(c) for p, c in zip(PLACES, corners)},
    )
    if beam is not None:
        track = (track_f, track_r)[beam]
        car["beams"] = {("front", "rear")[beam]: {"spring_base_mm": int(track * rng.uniform(0.65, 0.9))}}
    return car


def settings(rng):
    return np.round(rng.uniform(-8, 8, 4), 1), np.round(rng.uniform(-3, 3, 4), 1)


def one(rng, want):
    """One car of a class, or None when the draw does not show what the class is about."""
    torsion = want in ("torsion",) or rng.random() < 0.3
    beam = int(rng.integers(0, 2)) if want == "beam" else None
    car = draw_car(rng, torsion, beam)
    kind = {"point_m": np.repeat(np.round(rng.uniform(0.08, 0.2, 2), 3), 2)}
    trim = rng.uniform(-0.006, 0.006, 4)
    lifted = want == "wheel lifted"
    if want == "bar preload":
        kind["bars"] = {a: dict(n_per_mm=round(float(rng.uniform(5, 40)), 1), twist_mm=round(float(rng.uniform(-12, 12)), 1))
                        for a in [["front"], ["rear"], ["front", "rear"]][rng.integers(0, 3)]}
    engine = Engine(car, kind, trim, True)
    if not engine.rest():
        return None
    if lifted:
        # A car that stands mostly on one diagonal to begin with.
        pattern = np.array([1, -1, -1, 1]) * rng.choice([-1, 1]) * 1e-3
        lightest = rng.uniform(20, 90)
        while engine.loads().min() > lightest:
            engine.free += pattern
            if not engine.rest():
                return None
    c, p = settings(rng)
    if not engine.move(c, p):
        return None
    first, struts = engine.reading(), engine.struts()
    over = engine.heights() + engine.pads * 1e3
    # No car is set up from more than this lower on one side; beyond it the length of the struts, which no car data
    # hold, begins to show in the loads.
    if engine.loads().min() < 15 or max(abs(over[0] - over[1]), abs(over[2] - over[3])) > 25:
        return None
    found = dict(kind=want, car=car, readings=[first])
    if want in ("on bump stop", "topped out"):
        key, sign = ("bump", -1) if want == "on bump stop" else ("droop", 1)
        left = np.round(rng.uniform(0.5, 6, 4), 1)
        kind[f"{key}_at"] = list(struts + sign * left / 1e3)
        if key == "bump":
            rates = np.round(rng.uniform(20, 400, 4), 0)
            kind["bump_rate"] = [rates[i] * 1e3 * engine.ratio[i] ** 2 for i in range(4)]
        for i, place in enumerate(PLACES):
            car["corners"][place][f"{key}_mm"] = float(left[i])
            if key == "bump":
                car["corners"][place]["bump_stop_n_per_mm"] = float(rates[i])
    if want == "bar preload":
        car["bars"] = {}
        for axle, name in enumerate(("front", "rear")):
            if name in kind["bars"]:
                bar = kind["bars"][name]
                wound = bar["twist_mm"] / 1e3 - engine.length(f"bar{axle}")
                # The bar pushes its coordinate, left wheel up less right wheel up, towards its rest.
                car["bars"][name] = {"n_per_mm": bar["n_per_mm"], "preload_n": round(-wound * bar["n_per_mm"] * 1e3, 4)}
        # The same car with its links released, at the same collars and pads.
        released = Engine(car, kind, trim, False)
        if not released.rest() or not released.move(c, p):
            return None
        found["released"] = released.reading()
        # How far the links are from slipping in: positive when they press the left wheel down.
        found["misfit_mm"] = {
            name: round(released.length(f"bar{axle}") * 1e3 - kind["bars"][name]["twist_mm"], 5)
            for axle, name in enumerate(("front", "rear"))
            if name in kind["bars"]
        }
    shown = False
    for _ in range(3):
        more_c, more_p = settings(rng)
        if not engine.move(np.round(c + more_c, 1), np.round(p + more_p, 1)):
            if lifted:
                return None
            continue
        reading, now = engine.reading(), engine.struts()
        loads = engine.loads()
        reading["lifted"] = [PLACES[i] for i in range(4) if loads[i] <= 0]
        if want == "on bump stop":
            reading["at_stop"] = [PLACES[i] for i in range(4) if now[i] < kind["bump_at"][i]]
            shown |= bool(reading["at_stop"])
        elif want == "topped out":
            reading["at_stop"] = [PLACES[i] for i in range(4) if now[i] > kind["droop_at"][i]]
            shown |= bool(reading["at_stop"])
        elif lifted:
            shown |= len(reading["lifted"]) == 1
        else:
            shown = not reading["lifted"]
        found["readings"].append(reading)
    if not shown or len(found["readings"]) < 2:
        return None
    return found


def main():
    seed = int(sys.argv[1]) if len(sys.argv) > 1 else SEED
    rng = np.random.default_rng(seed)
    numbers = {"ordinary": 50, "torsion": 30, "wheel lifted": 30, "on bump stop": 30, "topped out": 30,
               "bar preload": 30, "beam": 25}
    cases = []
    for want, number in numbers.items():
        made = tried = 0
        while made < number:
            tried += 1
            if tried > 400 * number:
                raise SystemExit(f"{want}: only {made} of {number}")
            case = one(rng, want)
            if case is not None:
                cases.append(case)
                made += 1
        print(f"{want}: {made} cars of {tried} draws", file=sys.stderr)
    engine = f"MuJoCo {mujoco.__version__}"
    lines = ",\n".join(json.dumps(c, separators=(",", ":")) for c in cases)
    print(f'{{"engine":"{engine}","seed":{seed},"cases":[\n{lines}\n]}}')


if __name__ == "__main__":
    main()
