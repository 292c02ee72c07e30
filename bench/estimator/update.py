"""The estimator's update after one reading, in numpy: the yardstick where no C compiler is. Same input and output as update.c."""
import sys
import time

import numpy

words = iter(sys.stdin.read().split())
n, rounds, readings = (int(float(next(words))) for _ in range(3))
mean0 = numpy.array([float(next(words)) for _ in range(n)])
lower = numpy.zeros((n, n))
for i in range(n):
    for j in range(i + 1):
        lower[i, j] = float(next(words))
p0 = lower + lower.T - numpy.diag(numpy.diag(lower))
acts = [(int(float(next(words))), float(next(words)), float(next(words))) for _ in range(readings)]
times = []
for _ in range(rounds):
    mean, p = mean0.copy(), p0.copy()
    started = time.perf_counter()
    for place, value, u in acts:
        row = p[place].copy()
        noise = u * u
        variance = row[place] + noise
        gain = row / variance
        mean += gain * (value - mean[place])
        p -= numpy.outer(gain, row)
        p[place] = p[:, place] = row * (noise / variance)
        p[place, place] = noise * gain[place] ** 2 + row[place] * (noise / variance) ** 2
    times.append((time.perf_counter() - started) * 1e9 / readings)
print(sorted(times)[rounds // 2])
print("\n".join(repr(float(x)) for x in mean))
print("\n".join(repr(float(p[i, j])) for i in range(n) for j in range(i + 1)))
