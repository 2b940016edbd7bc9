"""Set the speed of one ball met under one belief beside the same sums in plain Python and in numpy.

Run from the repository's root (needs cargo, numpy and scipy):

    python3 benches/compare_hitter.py

Both do the crate's sums by the same function, once with Python's `math` on numbers and once with numpy on arrays of
10,000 balls; both must give the answers of tests/data/hitter_cases.json first.
"""

import json
import math
import re
import subprocess
import time
import timeit
from pathlib import Path
from types import SimpleNamespace

import numpy as np
from scipy.special import ndtr

ROOT = Path(__file__).resolve().parent.parent
GRAVITY = 32.174 * 12
MANY = 10_000
NANOSECONDS = {"ns": 1.0, "µs": 1e3, "ms": 1e6}
GROUPS = ["other", "first", "ahead", "three_nothing", "two_strikes"]

PYTHON = SimpleNamespace(
    exp=math.exp, log=math.log, sqrt=math.sqrt, tanh=math.tanh, least=min, most=max,
    normal=lambda z: 0.5 * (1 + math.erf(z / math.sqrt(2))),
)  # fmt: skip
NUMPY = SimpleNamespace(
    exp=np.exp, log=np.log, sqrt=np.sqrt, tanh=np.tanh, least=np.minimum, most=np.maximum, normal=ndtr
)


def window(m, place, half, edge, noise):
    """Chance of a swing along one axis; mean and variance of the eyes' noise given one."""
    sd = m.sqrt(edge * edge + noise * noise)
    a, b = (half - place) / sd, (-half - place) / sd
    fa, fb = (m.exp(-0.5 * t * t) / math.sqrt(2 * math.pi) for t in (a, b))
    chance = m.most(m.normal(a) - m.normal(b), 1e-12)
    slope = -(fa - fb) / (sd * chance)
    bend = -(a * fa - b * fb) / (sd * sd * chance) - slope * slope
    return chance, noise * noise * slope, m.most(noise**2 + noise**4 * bend, 0.05 * noise**2)


def meet(m, p, ball, known, fastest, middle, half, side, group):
    """Log weight, and chances of a swing, contact and solid contact."""
    two, first = group == "two_strikes", group == "first"
    sits = 0.0 if two else 1.0
    up = (1 - p.anchor_share) * known.vb + p.anchor_share * p.anchor_up_in
    glove = (1 - p.anchor_share) * known.gb + p.anchor_share * p.anchor_glove_side_in
    az, ax = -GRAVITY + 2 * up / known.T**2, 2 * glove / known.T**2
    gap = known.T - fastest
    arrival = (1 - p.arrival_believed) * ball.T + p.arrival_believed * (known.T - sits * p.fastball_sit * gap)
    view = m.most(arrival - p.commit_s, 0.08)
    ahead, rest = arrival - view, ball.T - view
    unseen = 0.5 * ahead**2 + p.lag_s * ahead
    high, wide = middle + p.zone_up_in, p.zone_away_in * side

    def expected(place, velocity, acceleration, believed):
        start = place - velocity * rest + 0.5 * acceleration * rest**2
        speed = velocity - acceleration * rest
        return start + speed * ahead + 0.5 * acceleration * ahead**2 + unseen * (believed - acceleration)

    zs, xs = expected(ball.z, ball.vz, ball.az, az) - high, expected(ball.x, ball.vx, ball.ax, ax) - wide
    coarse = (p.same_side_eyes if side > 0 else 1.0) * m.sqrt(0.23 / view) * abs(ball.vy) / (121.0 * 12)
    sz, sx, bet = p.eyes_height_in * coarse, p.eyes_side_in * coarse, p.hittable_sd_in**2
    so_far = (view / ball.T) ** 2 / p.movement_sd_in
    unlike = (
        (m.log(ball.v / known.v) / p.speed_sd) ** 2
        + ((ball.vb - known.vb) * so_far) ** 2
        + ((ball.gb - known.gb) * so_far) ** 2
        + ((ball.rh - known.rh) ** 2 + (ball.rs - known.rs) ** 2) / p.release_sd_in**2
    )
    log_weight = -0.5 * (unlike / coarse**2 + zs * zs / (sz * sz + bet) + xs * xs / (sx * sx + bet))
    log_weight = log_weight - sits * p.fastball_lean * m.least(gap / p.fastball_lean_full_s, 1.0)
    keep_z, keep_x = bet / (sz * sz + bet), bet / (sx * sx + bet)
    ceiling = getattr(p, "ceiling_" + group) * m.exp(-sits * p.slow_restraint * m.least(gap / 0.05, 2.0))
    zone = p.two_strike_zone if two else p.first_pitch_zone if first else 1.0
    tall = half * p.zone_height_factor * zone
    wz, mz, vz = window(m, keep_z * zs, tall, p.zone_edge_in, keep_z * sz)
    wx, mx, vx = window(m, keep_x * xs, p.zone_half_width_in * zone, p.zone_edge_in, keep_x * sx)
    swing = ceiling * wz * wx
    ez = ball.z - high - keep_z * zs - mz
    ez = p.aim_error_height * ez * m.exp(-p.low_aim_repair * m.tanh(ez / 3.0))
    ex = p.aim_error_side * (ball.x - wide - keep_x * xs - mx) * side
    et = (ball.T - arrival) * 1e3 + p.turn_ms_per_in * ex
    strong = p.two_strike_hands if two else p.first_pitch_hands if first else 1.0
    ease = ((ball.z - middle) / p.comfort_height_in) ** 2
    ease = (1 + ease + ((ball.x * side - p.comfort_away_in) / p.comfort_side_in) ** 2) * strong**2
    odd = (ball.az + GRAVITY - 2 * p.usual_up_in / ball.T**2) ** 2
    odd = (p.odd_movement * unseen) ** 2 * (odd + (ball.ax - 2 * p.usual_glove_side_in / ball.T**2) ** 2)
    timing = p.timing_ms * coarse * (p.two_strike_hands if two else 1.0)
    slant = timing * 1e-3 * abs(ball.vy) * (p.attack_slope + ball.vz / abs(ball.vy))
    eyes = vx * p.aim_error_side**2
    z2 = p.hands_height_in**2 * ease + odd + slant**2 + vz * p.aim_error_height**2
    x2 = p.hands_side_in**2 * ease + odd + eyes
    t2 = timing**2 + p.turn_ms_per_in**2 * eyes

    def within(error, low, high, variance):
        return m.normal((high - error) / m.sqrt(variance)) - m.normal((low - error) / m.sqrt(variance))

    def bell(error, width, variance):
        return width / m.sqrt(width**2 + variance) * m.exp(-0.5 * error**2 / (width**2 + variance))

    contact = p.contact_ceiling * within(ez, -p.contact_height_in, p.contact_height_in, z2)
    contact = contact * within(ex, -p.contact_handle_in, p.contact_end_in, x2)
    contact = contact * within(et, -p.contact_timing_ms, p.contact_timing_ms, t2)
    power = ((ball.z - middle - p.power_up_in) / p.power_height_in) ** 2 + (ball.x / p.power_side_in) ** 2
    solid = p.solid_ceiling * m.exp(-0.5 * power) * bell(ez, p.solid_height_in, z2)
    solid = solid * bell(ex, p.solid_side_in, x2) * bell(et, p.solid_timing_ms, t2)
    return log_weight, swing, swing * contact, swing * m.least(solid, 0.95 * contact)


def answers(m, p, case, number=float):
    """Swing, contact and solid contact of a case, every number turned into what `m` works on."""
    fields = lambda values: SimpleNamespace(**{key: number(value) for key, value in values.items()})  # noqa: E731
    known = [fields(pitch) for pitch in case["arsenal"]]
    fastest = min(pitch["T"] for pitch in case["arsenal"])
    rest = fastest, case["zone_mid"], case["zone_half"], case["side"], GROUPS[case["group"]]
    met = [meet(m, p, fields(case["ball"]), pitch, *rest) for pitch in known]
    weights = [pitch.mix * m.exp(row[0]) for pitch, row in zip(known, met)]
    return [sum(w * row[k] for w, row in zip(weights, met)) / sum(weights) for k in (1, 2, 3)]


def check(m, p, cases, number):
    for case in cases:
        for found, key in zip(answers(m, p, case, number), ("swing", "contact", "solid")):
            assert np.all(np.abs(found - case[key]) < 1e-9), key


def crate():
    """Median nanoseconds of the crate's benchmark `pair`."""
    command = ["cargo", "bench", "--locked", "--bench", "hitter", "--", "pair"]
    out = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    value, unit = re.search(r"─ pair\s+(?:[\d.]+ \S+\s+│ ){2}([\d.]+) (ns|µs|ms)", out).groups()
    return float(value) * NANOSECONDS[unit]


def main():
    data = json.loads((ROOT / "tests" / "data" / "hitter_cases.json").read_text())
    p, cases = SimpleNamespace(**data["parameters"]), data["cases"]
    case = cases[0]
    rows = []
    for name, m, number, count, repeats in (
        ("plain Python", PYTHON, float, 1, 2000),
        (f"numpy, {MANY:,} at once", NUMPY, lambda value: np.full(MANY, value), MANY, 20),
    ):
        check(m, p, cases[:3] if count > 1 else cases, number)
        met = count * len(case["arsenal"])
        seconds = min(timeit.repeat(lambda: answers(m, p, case, number), number=repeats, repeat=5, timer=time.process_time))
        seconds /= repeats
        rows.append((name, seconds / met * 1e9))
    rows.insert(0, ("this crate", crate()))
    print(f"{'one ball, one belief':32}{'ns each':>12}{'per second':>14}")
    for name, nanoseconds in rows:
        print(f"{name:32}{nanoseconds:12,.0f}{1e9 / nanoseconds:14,.0f}")


if __name__ == "__main__":
    main()
