"""Reads the log of `cargo bench --bench road -- --write FILE` with pandas and takes, by cell of engine speed and load and by fuel,
the median and the median absolute deviation of the logarithm of injection time.

It does less than the comparison it stands beside: every row counts (no visits, nothing set aside for a change of fuel, a
transient or open loop), and nothing is checked, levelled, judged or advised. Each run is a process of its own, so that its memory
is its own; importing the library is not counted in its time, but in its memory.
"""

import resource
import statistics
import subprocess
import sys
import time

import numpy
import pandas

RUNS = 5


def once(path):
    start, before = time.perf_counter(), time.process_time()
    log = pandas.read_csv(path)
    log = log[(log.coolant_c >= 75) & (log.closed_loop == "closed") & (log.petrol_ms > 0)]
    log["y"] = numpy.log(log.petrol_ms)
    by = [log.fuel, (log.rpm // 500).rename("speed"), (log.manifold_kpa // 10).rename("load")]
    middle = log.groupby(by).y.median()
    off = (log.y - log.groupby(by).y.transform("median")).abs()
    spread = off.groupby(by).median()
    cells = (middle.loc["LPG"] - middle.loc["petrol"]).notna().sum()
    assert len(spread) == len(middle)
    taken = time.process_time() - before, time.perf_counter() - start
    print(*taken, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024, cells)


def main(path):
    runs = []
    for _ in range(RUNS):
        said = subprocess.run([sys.executable, __file__, "--once", path], check=True, capture_output=True, text=True)
        runs.append([float(value) for value in said.stdout.split()])
    processor, wall, memory, cells = zip(*runs)
    print(f"pandas {pandas.__version__}, NumPy {numpy.__version__}: {cells[0]:.0f} cells with a median on both fuels")
    print(f"on the processor: median {statistics.median(processor):.3f} s, lowest {min(processor):.3f} s; on the wall: lowest {min(wall):.3f} s")
    print(f"most memory held: {max(memory):.1f} MB")


if __name__ == "__main__":
    if sys.argv[1] == "--once":
        once(sys.argv[2])
    else:
        main(sys.argv[1])
