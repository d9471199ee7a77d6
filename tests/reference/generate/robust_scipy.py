"""Robust statistics of generated samples by NumPy and SciPy.

    pip install numpy==2.4.6 scipy==1.17.1
    python robust_scipy.py > ../robust_scipy.csv

Hodges-Lehmann and Huber's location are written out here over NumPy, since SciPy has neither.
"""

import numpy as np
from scipy import stats

SIZES = [1, 2, 3, 4, 5, 6, 7, 10, 11, 24, 51, 100]
COLUMNS = "case,n,median,mad,mad_normalised,quantile_10,quantile_25,quantile_75,quantile_90,hodges_lehmann,huber_1_5,readings"


def walsh(x):
    i, j = np.triu_indices(len(x))
    return np.median((x[i] + x[j]) / 2)


def huber(x, scale, k=1.5):
    at = np.median(x)
    for _ in range(10_000):
        new = np.mean(np.clip(x, at - k * scale, at + k * scale))
        if abs(new - at) < 1e-14 * scale:
            break
        at = new
    return at


def samples():
    for seed, n in enumerate(SIZES):
        rng = np.random.default_rng(seed)
        yield f"normal-{n}", rng.normal(3.0, 0.2, n)
        yield f"outliers-{n}", np.where(rng.random(n) < 0.2, rng.normal(30.0, 9.0, n), rng.normal(3.0, 0.2, n))
        yield f"ties-{n}", np.round(rng.normal(0.0, 1.0, n), 1)
        yield f"far-{n}", 1e6 + rng.standard_cauchy(n)


print(f"# Robust statistics of generated samples: NumPy {np.__version__}, SciPy {__import__('scipy').__version__}")
print("# (scipy.stats.median_abs_deviation raw, and times 1.482602; numpy.quantile method 'linear', which is type 7; Walsh means and Huber's")
print("# iteration k = 1.5 over NumPy, scale fixed at mad_normalised, empty where that is nought). Made by generate/robust_scipy.py.")
print(COLUMNS)
for case, x in samples():
    x = np.round(x, 6)
    mad = stats.median_abs_deviation(x)
    scale = 1.482602 * mad
    q = np.quantile(x, [0.10, 0.25, 0.75, 0.90], method="linear")
    numbers = [np.median(x), mad, scale, *q, walsh(x)]
    hub = f"{huber(x, scale):.9f}" if scale > 0 else ""
    print(case, len(x), *(f"{v:.9f}" for v in numbers), hub, " ".join(f"{v:.6f}" for v in x), sep=",")
