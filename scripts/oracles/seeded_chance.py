#!/usr/bin/env python3
"""Makes the vectors of the seeded generator with Python's long integers, apart from the code under test.

Run from the project's root: python3 scripts/oracles/seeded_chance.py
"""
import json

MASK = (1 << 64) - 1


def splitmix64(seed):
    state = seed & MASK
    while True:
        state = (state + 0x9E3779B97F4A7C15) & MASK
        mixed = state
        mixed = ((mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        mixed = ((mixed ^ (mixed >> 27)) * 0x94D049BB133111EB) & MASK
        yield mixed ^ (mixed >> 31)


def turned(word, by):
    return ((word << by) | (word >> (64 - by))) & MASK


def xoshiro(state):
    s = list(state)
    while True:
        yield (turned((s[1] * 5) & MASK, 7) * 9) & MASK
        shifted = (s[1] << 17) & MASK
        s[2] ^= s[0]
        s[3] ^= s[1]
        s[1] ^= s[2]
        s[0] ^= s[3]
        s[2] ^= shifted
        s[3] = turned(s[3], 45)


def take(stream, count):
    return [next(stream) for _ in range(count)]


def table(subject, locator, rows):
    head = {
        "source": "Python long integers, an implementation of its own",
        "locator": locator,
        "seen": "computed",
        "subject": subject,
        "unit": "1",
        "tolerance": {"exact": True},
    }
    body = ",\n".join("    " + json.dumps(row) for row in rows)
    return f'{json.dumps(head, indent=2)[:-2]},\n  "rows": [\n{body}\n  ]\n}}\n'


def main():
    here = "scripts/oracles/seeded_chance.py"
    seeds = [0, 1, 7, 1234567, MASK]
    rows = [[str(seed), str(count), str(take(splitmix64(seed), count)[-1])] for seed in seeds for count in (1, 2, 3, 5, 100)]
    with open("tests/published/chance-splitmix64.json", "w", encoding="utf-8") as file:
        file.write(table("splitmix64", here, rows))
    states = [[1, 2, 3, 4], take(splitmix64(0), 4), take(splitmix64(42), 4), [MASK, 0, MASK, 1 << 63]]
    rows = [[*map(str, state), str(count), str(take(xoshiro(state), count)[-1])] for state in states for count in (1, 2, 3, 4, 10, 1000)]
    with open("tests/published/chance-xoshiro.json", "w", encoding="utf-8") as file:
        file.write(table("xoshiro", here, rows))
    rows = [[str(seed), str(count), repr((take(xoshiro(take(splitmix64(seed), 4)), count)[-1] >> 11) / 2**53)] for seed in (0, 7, 2147) for count in (1, 2, 50)]
    with open("tests/published/chance-uniform.json", "w", encoding="utf-8") as file:
        file.write(table("uniform", here, rows))


main()
