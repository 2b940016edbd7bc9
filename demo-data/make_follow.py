"""Write the follow-through demo: a trial of four grips and six weeks of progress.

Everything is our own invention: nobody threw these. The athlete is Sample Athlete A of
`profiles/three-quarter-right.toml`, who is learning a sweeper. In the trial the second grip is
the best. In the six weeks the sweep arrives, and from the fourth week the arm slot drops by
six degrees: that is what `progress` must find. Run it in this folder; the seed is fixed.
"""
import datetime
import math
import random

dice = random.Random(2031)
SLOT, HEIGHT, SIDE, EXTENSION, ARM = 42.0, 5.7, 2.1, 6.3, 2.0
HEADER = ("speed_mph,vertical_break_in,glove_side_break_in,spin_rpm,active_fraction,spin_clock,release_height_ft,"
          "release_side_ft,extension_ft,plate_side_in,plate_height_in,pitch,date,grip,wobble")


def clock(hours):
    minutes = round(hours * 60) % 720
    return f"{minutes // 60 or 12}:{minutes % 60:02d}"


def release(slot):
    angle, usual = math.radians(slot), math.radians(SLOT)
    height = HEIGHT + ARM * (math.sin(angle) - math.sin(usual)) + dice.gauss(0, 0.10)
    side = SIDE + ARM * (math.cos(angle) - math.cos(usual)) + dice.gauss(0, 0.10)
    return f"{height:.2f},{side:.2f},{EXTENSION + dice.gauss(0, 0.10):.2f}"


def throw(mean, spread, spin, day, slot, command, pitch, grip="", wobble=0.0):
    speed, vertical, glove_side = (dice.gauss(m, s) for m, s in zip(mean, spread))
    rpm, active, hours, active_sd, hours_sd = spin
    spun = f"{dice.gauss(rpm, 60):.0f},{min(1, max(0, dice.gauss(active, active_sd))):.2f},{clock(dice.gauss(hours, hours_sd))}"
    place = f"{dice.gauss(3, command):.1f},{dice.gauss(27, command):.1f}"
    noted = ("yes" if dice.random() < wobble else "no") if grip else ""
    grip = f'"{grip}"' if grip else ""
    return f"{speed:.1f},{vertical:.1f},{glove_side:.1f},{spun},{release(slot)},{place},{pitch},{day},{grip},{noted}"


def write(name, rows):
    with open(name, "w", newline="\n") as file:
        file.write("\n".join([HEADER, *rows]) + "\n")


# Four grips: mean shape, spin (rpm, active fraction, clock and their spreads), share of wobbles, slot.
GRIPS = {
    "two-seam, middle finger inside seam, no spike": ((79.8, -1.2, 12.4), (2200, 0.34, 8.9, 0.05, 0.35), 0.15, 42),
    "two-seam, middle finger inside seam, light spike": ((79.4, -2.2, 14.6), (2180, 0.41, 8.8, 0.04, 0.30), 0.10, 42),
    "two-seam, across the horseshoe, full spike": ((77.2, -5.5, 12.5), (2050, 0.45, 8.1, 0.09, 0.60), 0.45, 40),
    "four-seam, middle finger on seam, no spike": ((80.6, 2.5, 7.0), (2260, 0.22, 9.8, 0.05, 0.40), 0.10, 42),
}

rows = []
for turn in range(8):
    for grip, (mean, spin, wobble, slot) in GRIPS.items():
        rows.append(throw(mean, (1.1, 2.0, 2.2), spin, "2031-01-10", slot + dice.gauss(0, 0.5), 10, "sweeper", grip, wobble))
write("trial-four-grips.csv", rows)

first = datetime.date(2031, 1, 20)
for week in range(6):
    rows = []
    for day in (first + datetime.timedelta(weeks=week), first + datetime.timedelta(weeks=week, days=3)):
        off = [dice.gauss(0, sd) for sd in (0.4, 0.5, 0.5, 0.7)]
        slot = SLOT + off[3] - (6.0 if week >= 3 else 0.0)
        sweep = 14.6 - max(0.0, 5.0 - 2.0 * week)
        command = 11.5 - 0.4 * week
        pitches = [
            ("four-seam", 14, (93.0, 16.8, -8.1), (0.9, 1.7, 1.9), (2200, 0.85, 0.87, 0.03, 0.12), 8.4),
            ("sweeper", 14, (79.5, -2.6, sweep), (1.1, 2.0, 2.2), (2180, 0.40, 8.8, 0.04, 0.30), command),
            ("slider", 5, (86.0, 2.9, 4.6), (1.2, 2.0, 2.0), (2350, 0.22, 9.92, 0.04, 0.30), 9.0),
            ("changeup", 5, (85.0, 5.4, -15.6), (1.2, 2.3, 2.2), (1650, 0.90, 2.42, 0.03, 0.20), 9.0),
        ]
        today = []
        for pitch, count, mean, spread, spin, scatter in pitches:
            moved = [m + o for m, o in zip(mean, off)]
            today += [throw(moved, spread, spin, day, slot, scatter, pitch) for _ in range(count)]
        dice.shuffle(today)
        rows += today
    write(f"progress-week-{week + 1}.csv", rows)
