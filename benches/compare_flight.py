"""Set the speed of a flight beside the same flight in plain C and in scipy, one table per flight.

Run from the repository's root (needs a C compiler, cargo, numpy and scipy):

    python3 benches/compare_flight.py

The C program takes as many steps as the crate; scipy's DOP853 takes the loosest tolerance that
still ends within 0.01 in. "Off by" is against scipy at rtol 1e-11; the crate's own accuracy is
held by tests/published_flights.rs. The inverse has no counterpart: it is set beside one of the
flights it is made of.
"""

import re
import subprocess
import sys
import tempfile
import timeit
from pathlib import Path

import numpy as np

ROOT = Path(__file__).resolve().parent.parent
sys.dont_write_bytecode = True
sys.path.insert(0, str(ROOT / "tests" / "data"))
from make_flights_scipy import INCH, MPH, angular_velocity, crossing  # noqa: E402

TARGET_IN = 0.01
RELEASE = np.array([-0.6, 16.6, 1.8])
VELOCITY = np.array([1.2, -82 * MPH, 0.3])
NANOSECONDS = {"ns": 1.0, "µs": 1e3, "ms": 1e6}


def constant(path, name):
    """A number from the Rust source, so that all three fly the same ball."""
    return re.search(rf"const {name}: \w+ = ([\d.]+);", (ROOT / path).read_text()).group(1)


def crate():
    """Median nanoseconds by benchmark."""
    command = ["cargo", "bench", "--bench", "flight"]
    out = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    rows = re.findall(r"─ (\w+)\s+(?:[\d.]+ \S+\s+│ ){2}([\d.]+) (ns|µs|ms)", out)
    return {name: float(value) * NANOSECONDS[unit] for name, value, unit in rows}


def plain_c(steps, drag):
    """Best nanoseconds and the crossing (x, z) by flight."""
    with tempfile.TemporaryDirectory() as folder:
        program = str(Path(folder) / "rk4_baseline")
        source = str(ROOT / "benches" / "rk4_baseline.c")
        subprocess.run(
            ["cc", "-O3", f"-DSTEPS={steps}", f"-DDRAG={drag}", "-o", program, source, "-lm"], check=True
        )
        out = subprocess.run([program], capture_output=True, text=True, check=True).stdout
    return {
        name: (float(nanoseconds), np.array([float(x), float(z)]))
        for name, nanoseconds, x, z, _ in map(str.split, out.splitlines())
    }


def scipy_flights(drag):
    """Per flight: the crossing, and nanoseconds, error and rtol of the loosest run within the target."""
    spun = {"rpm": 2500, "active_fraction": 0.7, "clock_hours": 8.5, "lift_law": "rational"}
    air = {"density": 1.225, "drag": drag}
    found = {}
    for name, row, spin, side in (
        ("spun_flight", spun | air, angular_velocity(spun, VELOCITY), (0, 0)),
        ("side_force_flight", air, np.zeros(3), (0.15, -0.05)),
    ):

        def place(rtol=1e-11, atol=1e-12, row=row, spin=spin, side=side):
            return crossing(row, RELEASE, VELOCITY, spin, side, rtol, atol)[1][[0, 2]]

        truth = place()
        for exponent in range(1, 12):
            rtol = 10.0**-exponent
            off = np.linalg.norm(place(rtol, rtol) - truth) / INCH
            if off <= TARGET_IN:
                break
        seconds = min(timeit.repeat(lambda: place(rtol, rtol), number=20, repeat=5)) / 20
        found[name] = truth, seconds * 1e9, off, rtol
    return found


def table(title, rows):
    print(f"\n{title}\n{'':32}{'ns each':>12}{'per second':>14}{'off by, in':>13}")
    for who, nanoseconds, off in rows:
        print(f"{who:32}{nanoseconds:12,.0f}{1e9 / nanoseconds:14,.0f}{off:>13}")


def main():
    steps = constant("src/ball/flight/trajectory.rs", "STEPS")
    drag = constant("src/ball/flight/forces.rs", "DRAG_COEFFICIENT")
    ours, c = crate(), plain_c(steps, drag)
    for name, (truth, nanoseconds, off, rtol) in scipy_flights(float(drag)).items():
        c_nanoseconds, c_place = c[name]
        c_off = f"{np.linalg.norm(c_place - truth) / INCH:.6f}"
        rows = [(f"this crate, {steps} steps", ours[name], ""), (f"plain C, {steps} steps", c_nanoseconds, c_off)]
        rows.append((f"scipy DOP853, rtol {rtol:.0e}", nanoseconds, f"{off:.6f}"))
        table(name.replace("_", " "), rows)
    rows = [("this crate: shape to throw", ours["inverse"], ""), ("one of its flights", ours["side_force_flight"], "")]
    table("inverse", rows)


if __name__ == "__main__":
    main()
