/*
 * The native reference for the kernel's bench: the same map of the same car, in plain scalar C.
 *
 * Each side of each pose is solved by itself, by secant on the lower arm's angle from the drawn angle and a linear guess, until the wheel's height is met
 * to 1e-11 of the half width, as the kernel meets it. One evaluation: the lower joint turned about its axis, the upper joint where its circle
 * meets the king pin's sphere, the tie rod's outer end where its circle about the steering axis meets the rod's sphere, the wheel carried along.
 *
 * Usage: reference MAPS. Prints the median nanoseconds of a map of 41 x 41 poses, both sides, and a sum over all it wrote, to be compared.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define N 41

typedef struct {
  double x, y, z;
} vec;

static vec add(vec a, vec b) { return (vec){a.x + b.x, a.y + b.y, a.z + b.z}; }
static vec sub(vec a, vec b) { return (vec){a.x - b.x, a.y - b.y, a.z - b.z}; }
static vec mul(vec a, double s) { return (vec){a.x * s, a.y * s, a.z * s}; }
static double dot(vec a, vec b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
static vec cross(vec a, vec b) {
  return (vec){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

/* A joint that turns about an axis: centre, radius vector as drawn, and the same a quarter turn on. */
typedef struct {
  vec centre, u, v;
} circle;

typedef struct {
  circle lower, upper;
  double upper_radius2, pin, pin_branch;
  double along, radius, rod, rod_branch; /* tie-rod outer in the king pin's cylinder */
  vec wheel, spin;                       /* components along k, R and k x R */
  vec eye;
  double height, slope;
} corner;

typedef struct {
  vec lower, upper, axis, outer, inner, wheel, spin;
} side;

static circle turning(vec front, vec rear, vec joint) {
  vec n = sub(front, rear);
  n = mul(n, 1 / sqrt(dot(n, n)));
  vec centre = add(rear, mul(n, dot(sub(joint, rear), n)));
  vec u = sub(joint, centre);
  return (circle){centre, u, cross(n, u)};
}

static inline void evaluate(const corner *c, vec eye, double angle, side *s) {
  double sine = sin(angle), cosine = cos(angle);
  vec l = add(c->lower.centre, add(mul(c->lower.u, cosine), mul(c->lower.v, sine)));
  vec e = sub(l, c->upper.centre);
  double a = dot(c->upper.u, e), b = dot(c->upper.v, e);
  double d = 0.5 * (c->upper_radius2 + dot(e, e) - c->pin * c->pin);
  double h = a * a + b * b;
  double q = c->pin_branch * sqrt(h - d * d);
  double cu = (a * d - b * q) / h, su = (b * d + a * q) / h;
  vec up = add(c->upper.centre, add(mul(c->upper.u, cu), mul(c->upper.v, su)));
  vec k = mul(sub(up, l), 1 / c->pin);
  vec to_eye = sub(eye, l);
  double de = dot(to_eye, k);
  vec r = sub(to_eye, mul(k, de));
  double r2 = dot(r, r), rise = c->along - de;
  double mu = (rise * rise + c->radius * c->radius + r2 - c->rod * c->rod) / (2 * r2);
  double nu = c->rod_branch * sqrt(c->radius * c->radius / r2 - mu * mu);
  vec across = cross(k, r);
  vec tab = add(mul(r, mu), mul(across, nu));
  vec quarter = sub(mul(across, mu), mul(r, nu));
  s->lower = l;
  s->upper = up;
  s->axis = k;
  s->outer = add(l, add(mul(k, c->along), tab));
  s->inner = eye;
  s->wheel = add(l, add(mul(k, c->wheel.x), add(mul(tab, c->wheel.y), mul(quarter, c->wheel.z))));
  s->spin = add(mul(k, c->spin.x), add(mul(tab, c->spin.y), mul(quarter, c->spin.z)));
}

static vec in_frame(vec a, vec k, vec r, vec q) { return (vec){dot(a, k), dot(a, r) / dot(r, r), dot(a, q) / dot(r, r)}; }

static corner drawn(void) {
  corner c;
  vec lower = {10, 640, 250}, upper = {-25, 610, 480}, outer = {-120, 620, 320}, wheel = {0, 720, 330}, spin = {0, 1, 0};
  c.lower = turning((vec){150, 250, 280}, (vec){-150, 250, 280}, lower);
  c.upper = turning((vec){100, 290, 450}, (vec){-180, 290, 440}, upper);
  c.eye = (vec){-110, 270, 330};
  c.upper_radius2 = dot(c.upper.u, c.upper.u);
  vec pin = sub(upper, lower);
  c.pin = sqrt(dot(pin, pin));
  vec k = mul(pin, 1 / c.pin);
  vec e = sub(lower, c.upper.centre);
  c.pin_branch = dot(c.upper.v, e) < 0 ? 1 : -1;
  vec tab = sub(outer, lower);
  c.along = dot(tab, k);
  vec r = sub(tab, mul(k, c.along));
  vec q = cross(k, r);
  c.radius = sqrt(dot(r, r));
  vec rod = sub(outer, c.eye);
  c.rod = sqrt(dot(rod, rod));
  c.rod_branch = dot(q, rod) > 0 ? 1 : -1;
  c.wheel = in_frame(sub(wheel, lower), k, r, q);
  c.spin = in_frame(spin, k, r, q);
  c.height = wheel.z;
  side s;
  evaluate(&c, c.eye, 1e-6, &s);
  c.slope = 1e-6 / (s.wheel.z - c.height);
  return c;
}

static void solve(const corner *c, double rack, double travel, side *s) {
  vec eye = {c->eye.x, c->eye.y + rack, c->eye.z};
  double target = c->height + travel;
  double a0 = 0, a1 = c->slope * travel + 1e-4;
  evaluate(c, eye, a0, s);
  double f0 = s->wheel.z - target;
  evaluate(c, eye, a1, s);
  double f1 = s->wheel.z - target;
  for (int i = 0; i < 30 && fabs(f1) > 7.2e-9; i++) {
    double a2 = a1 - f1 * (a1 - a0) / (f1 - f0);
    a0 = a1;
    f0 = f1;
    a1 = a2;
    evaluate(c, eye, a1, s);
    f1 = s->wheel.z - target;
  }
}

static side poses[N * N][2];

static void map(const corner *c) {
  for (int i = 0; i < N; i++) {
    double rack = -60 + 120.0 * i / (N - 1);
    for (int j = 0; j < N; j++) {
      double travel = -100 + 200.0 * j / (N - 1);
      solve(c, rack, travel, &poses[i * N + j][0]);
      solve(c, -rack, travel, &poses[i * N + j][1]);
    }
  }
}

static int by_size(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

int main(int argc, char **argv) {
  int maps = argc > 1 ? atoi(argv[1]) : 20;
  corner c = drawn();
  for (int i = 0; i < 5; i++) map(&c);
  double *took = malloc(maps * sizeof *took);
  for (int i = 0; i < maps; i++) {
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    map(&c);
    clock_gettime(CLOCK_MONOTONIC, &to);
    took[i] = (to.tv_sec - from.tv_sec) * 1e9 + (to.tv_nsec - from.tv_nsec);
  }
  qsort(took, maps, sizeof *took, by_size);
  double sum = 0;
  for (int i = 0; i < N * N; i++)
    for (int w = 0; w < 2; w++) {
      side *s = &poses[i][w];
      sum += s->lower.y + s->upper.x + s->outer.x + s->outer.y + s->wheel.x + s->wheel.y + 100 * (s->spin.x + s->spin.z);
    }
  printf("%.0f %.12f\n", took[maps / 2], sum);
  free(took);
  return 0;
}
