#!/usr/bin/env python3
"""Compare Darcy-Weisbach losses with the Python package fluids.

    check_fluids.py PROBE

PROBE is the service_line_probe executable. Sixty pipes are drawn from a fixed seed, laminar ones among them; friction
factor, friction loss and fitting loss must agree within one part in ten thousand. Exit status: 0 agree, 1 differ,
77 when fluids is not installed (Debian and Ubuntu: python3-fluids).
"""

import math
import random
import subprocess
import sys

try:
    import fluids
except ImportError:
    print("fluids is not installed: nothing compared")
    sys.exit(77)

TOLERANCE = 1e-4
CASES = 60

INCH = 0.0254
FOOT = 0.3048
GPM = 231 * INCH**3 / 60
PSI = 4.4482216152605 / INCH**2
POUND_PER_CUBIC_FOOT = 0.45359237 / FOOT**3


def draw_cases():
    """Bores 0.4 to 4 in, at 1 to 12 ft/s; every sixth pipe so slow that its flow is laminar."""
    rng = random.Random(1976)
    cases = []
    while len(cases) < CASES:
        bore_in = math.exp(rng.uniform(math.log(0.4), math.log(4.0)))
        slow = len(cases) % 6 == 5
        velocity_fps = 0.005 / (bore_in / 12) * rng.uniform(0.2, 1.0) if slow else rng.uniform(1.0, 12.0)
        flow_gpm = velocity_fps * FOOT * math.pi / 4 * (bore_in * INCH) ** 2 / GPM
        cases.append(
            (
                bore_in,
                math.exp(rng.uniform(0.0, math.log(5000.0))),
                rng.uniform(80, 150),
                math.exp(rng.uniform(math.log(1e-6), math.log(1e-3))),
                rng.uniform(0.0, 12.0),
                flow_gpm,
                rng.uniform(33.0, 69.0),
            )
        )
    return cases


def main():
    cases = draw_cases()
    lines = "\n".join(" ".join(repr(value) for value in case) for case in cases) + "\n"
    answer = subprocess.run([sys.argv[1]], input=lines, capture_output=True, text=True, check=True).stdout.splitlines()
    if len(answer) != CASES:
        print(f"the probe answered {len(answer)} of {CASES} lines")
        return 1

    worst = 0.0
    failures = 0
    laminar = 0
    for case, line in zip(cases, answer):
        bore_in, length_ft, _, roughness_ft, k, flow_gpm, _ = case
        _, ours_friction, ours_minor, ours_f, _, weight, viscosity_ft2_s = map(float, line.split())
        bore = bore_in * INCH
        density = weight * POUND_PER_CUBIC_FOOT
        viscosity = viscosity_ft2_s * FOOT**2
        velocity = flow_gpm * GPM / (math.pi / 4 * bore**2)
        reynolds = velocity * bore / viscosity
        if 2000 < reynolds < 4000:
            continue  # neither program claims to know the friction factor of the transition
        laminar += reynolds <= 2000
        f = fluids.friction_factor(Re=reynolds, eD=roughness_ft * FOOT / bore, Method="Colebrook")
        theirs = {
            "friction factor": (ours_f, f),
            "friction psi": (
                ours_friction,
                fluids.dP_from_K(f * length_ft * FOOT / bore, rho=density, V=velocity) / PSI,
            ),
            "fittings psi": (ours_minor, fluids.dP_from_K(k, rho=density, V=velocity) / PSI),
        }
        for name, (ours, other) in theirs.items():
            error = abs(ours - other) / other
            worst = max(worst, error)
            if error > TOLERANCE:
                failures += 1
                print(f"{name}: ours {ours}, fluids {other}, Re {reynolds:.0f}, pipe {case}")
    print(f"{CASES} pipes, {laminar} laminar, greatest difference {worst:.2e}, {failures} beyond {TOLERANCE}")
    return 1 if failures or not laminar else 0


if __name__ == "__main__":
    sys.exit(main())
