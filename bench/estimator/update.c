// The estimator's update after one reading of one state, in C, for the bench to hold the product against.
// In: n, rounds, readings; the means; the lower triangle of the covariance, row after row; place, value and u of each reading.
// Out: nanoseconds a reading, median of the rounds; then the means and the triangle after the readings of one round.
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

static size_t triangle(size_t rows) { return rows * (rows + 1) / 2; }
static size_t at(size_t a, size_t b) { return a >= b ? triangle(a) + b : triangle(b) + a; }

static void read_state(size_t n, double *mean, double *p, double *row, double *scaled, size_t place, double value, double u) {
  for (size_t i = 0; i < n; i++) row[i] = p[at(place, i)];
  double noise = u * u, variance = row[place] + noise, innovation = value - mean[place];
  double pull = innovation / variance, per_root = 1 / sqrt(variance), gain = row[place] / variance, rest = noise / variance;
  for (size_t i = 0; i < n; i++) {
    mean[i] += row[i] * pull;
    scaled[i] = row[i] * per_root;
  }
  for (size_t i = 0; i < n; i++) {
    double g = scaled[i], *line = p + triangle(i);
    if (g == 0) continue;
    for (size_t j = 0; j <= i; j++) line[j] -= g * scaled[j];
    if (line[i] < 0) line[i] = 0;
  }
  for (size_t i = 0; i < n; i++) p[at(place, i)] = row[i] * rest;
  double own = noise * gain * gain + row[place] * rest * rest;
  p[at(place, place)] = own > 0 ? own : 0;
}

static int by_size(const void *a, const void *b) {
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static double number(void) {
  double value;
  if (scanf("%lf", &value) != 1) exit(2);
  return value;
}

int main(void) {
  size_t n = (size_t)number(), rounds = (size_t)number(), readings = (size_t)number(), size = triangle(n);
  double *mean0 = malloc(n * sizeof *mean0), *mean = malloc(n * sizeof *mean), *row = malloc(n * sizeof *row), *scaled = malloc(n * sizeof *scaled);
  double *p0 = malloc(size * sizeof *p0), *p = malloc(size * sizeof *p), *acts = malloc(3 * readings * sizeof *acts), *times = malloc(rounds * sizeof *times);
  if (!mean0 || !mean || !row || !scaled || !p0 || !p || !acts || !times) return 3;
  for (size_t i = 0; i < n; i++) mean0[i] = number();
  for (size_t i = 0; i < size; i++) p0[i] = number();
  for (size_t i = 0; i < 3 * readings; i++) acts[i] = number();
  for (size_t round = 0; round < rounds; round++) {
    struct timespec from, to;
    memcpy(mean, mean0, n * sizeof *mean);
    memcpy(p, p0, size * sizeof *p);
    clock_gettime(CLOCK_MONOTONIC, &from);
    for (size_t k = 0; k < readings; k++) read_state(n, mean, p, row, scaled, (size_t)acts[3 * k], acts[3 * k + 1], acts[3 * k + 2]);
    clock_gettime(CLOCK_MONOTONIC, &to);
    times[round] = ((double)(to.tv_sec - from.tv_sec) * 1e9 + (double)(to.tv_nsec - from.tv_nsec)) / (double)readings;
  }
  qsort(times, rounds, sizeof *times, by_size);
  printf("%.17g\n", times[rounds / 2]);
  for (size_t i = 0; i < n; i++) printf("%.17g\n", mean[i]);
  for (size_t i = 0; i < size; i++) printf("%.17g\n", p[i]);
  return 0;
}
