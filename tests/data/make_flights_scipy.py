"""Twenty varied pitch flights from an independent implementation, for tests/published_flights.rs.

Run from the repository's root with Python 3.11.7, numpy 2.4.6 and scipy 1.17.1:

    python3 tests/data/make_flights_scipy.py > tests/data/flights_scipy.csv

Written from the definition of the force, not from the Rust code:

    a = g + (rho A v^2 / 2m) (-C_D v^ + C_L(S) (w_T^ x v^) + c_g g^ + c_u u^),   S = r |w_T| / v,

with w_T the part of the spin across the velocity *of the moment* (the axis is fixed in space),
u^ the direction across the flight nearest to straight up and g^ = u^ x v^ the horizontal one.
The spin at release: the active part pushes toward the clock position as nearly as a push across
the flight can, the bullet part points the way the ball goes. The ball is followed over time
(DOP853) until an event finds the front of the plate; the Rust code steps over distance.
Frame: x to the catcher's right, y from the plate to the pitcher, z up, origin at the plate's rear
point; SI units unless the column says otherwise.
"""

import csv
import random
import sys

import numpy as np
from scipy.integrate import solve_ivp

INCH = 0.0254
FOOT = 12 * INCH
MPH = 1609.344 / 3600
MASS = 5.125 / 16 * 0.45359237  # Official Baseball Rules 3.01, middle of the permitted range
RADIUS = 9.125 * INCH / (2 * np.pi)
GRAVITY = np.array([0.0, 0.0, -9.80665])
UP = np.array([0.0, 0.0, 1.0])
FRONT = 17 * INCH

LIFT = {
    "bilinear": lambda s: min(1.5 * s, 0.09 + 0.6 * s),
    "rational": lambda s: s / (0.4 + 2.32 * s),
    "power": lambda s: 0.62 * s**0.7,
}

COLUMNS = (
    "rpm active_fraction clock_hours lift_law density drag side_glove side_up release_x release_y release_z "
    "velocity_x velocity_y velocity_z plate_x plate_z time plate_speed break_glove_in break_up_in"
).split()


def across(vector, direction):
    """The part of a vector at right angles to a direction of length one."""
    return vector - direction * (vector @ direction)


def unit(vector):
    return vector / np.linalg.norm(vector)


def angular_velocity(row, velocity):
    flight = unit(velocity)
    angle = row["clock_hours"] * np.pi / 6
    # The pitcher sees +x to his left, so three o'clock is -x.
    push = unit(across(np.array([-np.sin(angle), 0.0, np.cos(angle)]), flight))
    # (flight x push) x flight = push: this axis pushes where the clock points.
    active = row["active_fraction"] * np.cross(flight, push)
    bullet = np.sqrt(1 - row["active_fraction"] ** 2) * flight
    return row["rpm"] * 2 * np.pi / 60 * (active + bullet)


def crossing(row, release, velocity, spin, side, rtol=1e-11, atol=1e-12):
    area = np.pi * RADIUS**2

    def rates(_, state):
        v = state[3:]
        speed = np.linalg.norm(v)
        along = v / speed
        up = unit(across(UP, along))
        coefficient = -row["drag"] * along + side[0] * np.cross(up, along) + side[1] * up
        transverse = across(spin, along)
        size = np.linalg.norm(transverse)
        if size > 1e-12:
            lift = LIFT[row["lift_law"]](RADIUS * size / speed)
            coefficient = coefficient + lift * np.cross(transverse / size, along)
        return np.concatenate([v, GRAVITY + row["density"] * area * speed**2 / (2 * MASS) * coefficient])

    def at_the_plate(_, state):
        return state[1] - FRONT

    at_the_plate.terminal = True
    start = np.concatenate([release, velocity])
    flight = solve_ivp(rates, (0, 2), start, method="DOP853", rtol=rtol, atol=atol, events=at_the_plate)
    return flight.t_events[0][0], flight.y_events[0][0]


def flights():
    """Speeds, spins, airs, releases and targets spread over their ranges by a fixed seed."""
    draw = random.Random(20)
    for index in range(20):
        share = index / 19
        row = {
            "rpm": round(draw.uniform(400, 3200)),
            # 0, .1, .2 ... 1, in an order that does not go with speed; two each, 0 and 1 included.
            "active_fraction": (7 * index % 11) / 10,
            "clock_hours": round(draw.uniform(0, 12), 2),
            "lift_law": ("rational", "bilinear", "power")[index % 3],
            "density": round(draw.uniform(0.95, 1.30), 4),
            "drag": round(draw.uniform(0.28, 0.40), 3),
            "side_glove": round(draw.uniform(-0.12, 0.12), 3) if index % 4 else 0.0,
            "side_up": round(draw.uniform(-0.12, 0.12), 3) if index % 4 else 0.0,
        }
        release = np.array([draw.uniform(-1.2, 0.9), (60.5 - draw.uniform(4.5, 7.2)) * FOOT, draw.uniform(0.6, 2.1)])
        target = np.array([draw.uniform(-0.6, 0.6), FRONT, draw.uniform(0.3, 1.3)])
        release, speed = release.round(3), (60 + 42 * share) * MPH
        target -= GRAVITY / 2 * (release[1] / speed) ** 2  # aim above it by about what gravity takes
        yield row, release, (unit(target - release) * speed).round(6)


def main():
    out = csv.DictWriter(sys.stdout, COLUMNS, lineterminator="\n")
    print("# Written by make_flights_scipy.py; columns and set-up are described there.")
    out.writeheader()
    for row, release, velocity in flights():
        spin = angular_velocity(row, velocity)
        time, end = crossing(row, release, velocity, spin, (row["side_glove"], row["side_up"]))
        _, plain = crossing(row, release, velocity, np.zeros(3), (0, 0))
        row |= dict(zip(("release_x", "release_y", "release_z"), release))
        row |= dict(zip(("velocity_x", "velocity_y", "velocity_z"), velocity))
        found = {
            "plate_x": end[0],
            "plate_z": end[2],
            "time": time,
            "plate_speed": np.linalg.norm(end[3:]),
            "break_glove_in": (end[0] - plain[0]) / INCH,
            "break_up_in": (end[2] - plain[2]) / INCH,
        }
        out.writerow(row | {name: f"{value:.9f}" for name, value in found.items()})


if __name__ == "__main__":
    main()
