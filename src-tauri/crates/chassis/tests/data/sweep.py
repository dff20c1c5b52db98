"""Makes sweep.json: 1000 axles swept, both wheels, with rotations by scipy.spatial.transform.

Nothing here shares code or formulas with the project. Angles come from intersections of planes, headings are found by
root finding, the floor is a rotation, a gauge reads the dot product with the plumb line.

    python3 -m venv venv && venv/bin/pip install numpy scipy && venv/bin/python sweep.py

Each wheel: [side (1 left, -1 right), caster, inclination, toe, camber by the standard, gauge camber on level ground,
floor's rise forward, floor's rise to the left, gauge bias, then for each of three positions: change of heading towards
the own side, rotation about the axis to the left, gauge across, gauge along]. Degrees.
"""
import json
import numpy as np
from scipy.optimize import brentq
from scipy.spatial.transform import Rotation

rng = np.random.default_rng(20_311)
X, Y, Z = np.eye(3)
u = lambda lo, hi: float(rng.uniform(lo, hi))
deg = lambda r: float(np.degrees(r))


def heading(n):
    """Yaw of the line in which the wheel's plane cuts the floor."""
    line = np.cross(n, Z)
    return np.arctan2(line[1], line[0])


def wheel(s):
    caster, inclination = u(-2, 12), u(2, 18)
    k = np.array([-np.tan(np.radians(caster)), -s * np.tan(np.radians(inclination)), 1.0])
    k /= np.linalg.norm(k)
    # Spin axis to the left: lean about x, then turn about z, both by Rotation.
    n0 = Rotation.from_euler("xz", [u(-5, 5), u(-1.5, 1.5)], degrees=True).apply(Y)
    toe = -s * deg(heading(n0))
    # The standard's camber: where the wheel's plane cuts the plane across the car.
    across = np.cross(X, n0)
    across *= np.sign(across[2])
    camber = s * deg(np.arctan2(across[1], across[2]))
    gauge0 = s * deg(np.arcsin(np.dot(-n0, Z)))
    floor = Rotation.from_euler("xy", [u(-1, 1), u(-1, 1)], degrees=True)
    rise_forward, rise_left = deg(np.arcsin(floor.apply(X)[2])), deg(np.arcsin(floor.apply(Y)[2]))
    bias = u(-0.5, 0.5)
    # A line fixed to the wheel, within its plane, nearly level: the gauge along the wheel, brakes held.
    f0 = Rotation.from_rotvec(np.radians(u(-5, 5)) * n0).apply(np.cross(n0, Z) / np.linalg.norm(np.cross(n0, Z)))
    row = [s, caster, inclination, toe, camber, gauge0, rise_forward, rise_left, bias]
    for change in (u(12, 25), 0.0, -u(12, 25)):
        steer = lambda r: Rotation.from_rotvec(r * k)
        off = lambda r: np.angle(np.exp(1j * (heading(steer(r).apply(n0)) - heading(n0) - s * np.radians(change))))
        r = brentq(off, -1.2, 1.2, xtol=1e-15, rtol=8.9e-16, maxiter=500) if change else 0.0
        n, f = floor.apply(steer(r).apply(n0)), floor.apply(steer(r).apply(f0))
        row += [change, deg(r), -s * deg(np.arcsin(n[2])) + bias, deg(np.arcsin(f[2]))]
    return [round(v, 12) for v in row]


with open("sweep.json", "w") as out:
    axles = [[wheel(1), wheel(-1)] for _ in range(1000)]
    out.write('{"seed": 20311, "axles": [\n' + ",\n".join(json.dumps(a, separators=(",", ":")) for a in axles) + "\n]}\n")
