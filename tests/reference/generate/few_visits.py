"""What a scale from few readings must be widened by, so that two standard uncertainties hold the difference of two medians.

    pip install numpy==2.4.6
    python few_visits.py > ../few_visits.csv
"""

import numpy as np

PAIRS = 200_000
SIZES = [6, 7, 8, 9, 10, 12, 15, 20, 30, 50, 100]


def told(rng, n):
    x = rng.standard_normal((PAIRS, n))
    middle = np.median(x, 1)
    return middle, 1.482602 * np.median(np.abs(x - middle[:, None]), 1)


print("# n normal readings on each side, both with their median m and scale s = 1.482602 MAD: factor by which s must be widened so that")
print("# |m1 - m2| <= 2 * 1.2533 sqrt((s1^2 + s2^2) / n) holds in 95.45 % of the cases, and the share that holds without. Made by")
print(f"# generate/few_visits.py: NumPy {np.__version__}, {PAIRS} pairs a size, seed 1.")
print("n,factor,share_without")
rng = np.random.default_rng(1)
for n in SIZES:
    (m1, s1), (m2, s2) = told(rng, n), told(rng, n)
    apart = np.abs(m1 - m2) / (1.2533 * np.sqrt((s1**2 + s2**2) / n))
    print(f"{n},{np.quantile(apart, 0.9545) / 2:.4f},{np.mean(apart <= 2):.4f}")
