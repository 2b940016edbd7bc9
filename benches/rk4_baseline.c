/* The flights of benches/flight.rs in plain C, as a yardstick for speed: the same force, classical
 * Runge-Kutta over distance with the same number of steps, doubles, no intrinsics.
 *
 *     cc -O3 -DSTEPS=3 -DDRAG=0.33 -o rk4_baseline rk4_baseline.c -lm && ./rk4_baseline
 *
 * Prints, per flight, its name, nanoseconds, and where (x, z in m) and when (s) it crosses, so that
 * compare_flight.py can see that both sides fly the same ball. */
#include <math.h>
#include <stdio.h>
#include <time.h>

enum { STATE = 7 }; /* state: time, x, y, z, vx, vy, vz */

static const double INCH = 0.0254, MPH = 0.44704, GRAVITY = 9.80665, FRONT = 17 * 0.0254;

typedef struct {
    double per_metre, drag, radius, spin[3], side[2];
} Forces;

static void acceleration(const Forces *f, const double *v, double *a)
{
    double square = v[0] * v[0] + v[1] * v[1] + v[2] * v[2], speed = sqrt(square);
    for (int i = 0; i < 3; i++)
        a[i] = -f->drag * f->per_metre * speed * v[i];
    if (f->side[0] != 0 || f->side[1] != 0) {
        double across = sqrt(v[0] * v[0] + v[1] * v[1]);
        double g[3] = { -v[1] / across, v[0] / across, 0 };
        double u[3] = { -v[2] * g[1] / speed, v[2] * g[0] / speed, (v[0] * g[1] - v[1] * g[0]) / speed };
        for (int i = 0; i < 3; i++)
            a[i] += f->per_metre * square * (f->side[0] * g[i] + f->side[1] * u[i]);
    }
    const double *w = f->spin;
    double t[3] = { w[1] * v[2] - w[2] * v[1], w[2] * v[0] - w[0] * v[2], w[0] * v[1] - w[1] * v[0] };
    double turning = sqrt(t[0] * t[0] + t[1] * t[1] + t[2] * t[2]);
    if (turning > 0) {
        double s = f->radius * turning / square, lift = s / (0.4 + 2.32 * s);
        for (int i = 0; i < 3; i++)
            a[i] += f->per_metre * square * lift / turning * t[i];
    }
    a[2] -= GRAVITY;
}

static void slope(const Forces *f, const double *s, double *out)
{
    double a[3], per_y = 1 / s[5];
    acceleration(f, s + 4, a);
    out[0] = per_y;
    for (int i = 0; i < 3; i++) {
        out[1 + i] = s[4 + i] * per_y;
        out[4 + i] = a[i] * per_y;
    }
}

static void fly(const Forces *f, double *s)
{
    double h = (FRONT - s[2]) / STEPS, k1[STATE], k2[STATE], k3[STATE], k4[STATE], p[STATE];
    for (int n = 0; n < STEPS; n++) {
        slope(f, s, k1);
        for (int i = 0; i < STATE; i++)
            p[i] = s[i] + h / 2 * k1[i];
        slope(f, p, k2);
        for (int i = 0; i < STATE; i++)
            p[i] = s[i] + h / 2 * k2[i];
        slope(f, p, k3);
        for (int i = 0; i < STATE; i++)
            p[i] = s[i] + h * k3[i];
        slope(f, p, k4);
        for (int i = 0; i < STATE; i++)
            s[i] += h / 6 * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]);
    }
}

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return now.tv_sec + 1e-9 * now.tv_nsec;
}

static void measure(const char *name, const Forces *forces)
{
    enum { FLIGHTS = 200000, ROUNDS = 11 };
    double best = 1e9, end[STATE];
    for (int round = 0; round < ROUNDS; round++) {
        double begin = seconds(), taken;
        for (int n = 0; n < FLIGHTS; n++) {
            double s[STATE] = { 0, -0.6, 16.6, 1.8, 1.2, -82 * MPH, 0.3 };
            const Forces *hidden = forces;
            __asm__ volatile("" : "+r"(hidden) : : "memory"); /* a new throw, as far as the optimizer knows */
            fly(hidden, s);
            for (int i = 0; i < STATE; i++)
                end[i] = s[i];
            __asm__ volatile("" : : "r"(end) : "memory");
        }
        taken = seconds() - begin;
        if (taken < best)
            best = taken;
    }
    printf("%s %.1f %.9f %.9f %.9f\n", name, best / FLIGHTS * 1e9, end[1], end[3], end[0]);
}

int main(void)
{
    const double pi = acos(-1), radius = 9.125 * INCH / (2 * pi), mass = 5.125 / 16 * 0.45359237;
    Forces plain = { 1.225 * pi * radius * radius / (2 * mass), DRAG, radius, { 0, 0, 0 }, { 0, 0 } };

    /* 2500 rpm, active fraction .7, pushing toward 8:30: axis = a (v^ x push) + sqrt(1 - a^2) v^. */
    double v[3] = { 1.2, -82 * MPH, 0.3 }, norm = sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    double angle = 8.5 * pi / 6, push[3] = { -sin(angle), 0, cos(angle) }, along, size = 0;
    for (int i = 0; i < 3; i++)
        v[i] /= norm;
    along = push[0] * v[0] + push[2] * v[2];
    for (int i = 0; i < 3; i++)
        push[i] -= along * v[i], size += push[i] * push[i];
    for (int i = 0; i < 3; i++)
        push[i] /= sqrt(size);
    Forces spun = plain;
    for (int i = 0; i < 3; i++) {
        int j = (i + 1) % 3, k = (i + 2) % 3;
        double across = v[j] * push[k] - v[k] * push[j];
        spun.spin[i] = 2500 * 2 * pi / 60 * (0.7 * across + sqrt(1 - 0.7 * 0.7) * v[i]);
    }
    measure("spun_flight", &spun);

    Forces sideways = plain;
    sideways.side[0] = 0.15;
    sideways.side[1] = -0.05;
    measure("side_force_flight", &sideways);
    return 0;
}
