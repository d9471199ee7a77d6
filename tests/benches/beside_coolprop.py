"""Answers the points of `cargo bench --bench sums -- --points` with CoolProp, and sets both side by side.

Reads the points on standard input. CoolProp is asked through its low-level interface with the state made beforehand and the
gas phase imposed, which is the fastest way it has from Python; making the state is not counted. What is compared is one call
from its own language: a few hundred nanoseconds of each of its figures are Python's.
"""

import csv
import sys
import time

import CoolProp
from CoolProp.CoolProp import AbstractState

FLUIDS = {
    "methane": "Methane",
    "ethane": "Ethane",
    "propane": "Propane",
    "propene": "Propylene",
    "n_butane": "n-Butane",
    "isobutane": "IsoButane",
    "n_pentane": "n-Pentane",
    "nitrogen": "Nitrogen",
    "carbon_dioxide": "CarbonDioxide",
}
BATCHES = 15
BATCH_S = 0.01


def state_of(row):
    shares = {name: float(row[name]) for name in FLUIDS if float(row[name]) > 0}
    state = AbstractState("HEOS", "&".join(FLUIDS[name] for name in shares))
    if len(shares) > 1:
        state.set_mole_fractions(list(shares.values()))
    return state


def asker(row):
    """A function without arguments that answers the row afresh each time it is called."""
    state = state_of(row)
    pascal, kelvin = 1e3 * float(row["pressure_kpa"]), float(row["temperature_c"]) + 273.15
    what = row["what"]
    if what in ("density_kg_m3", "speed_of_sound_m_s"):
        state.specify_phase(CoolProp.iphase_gas)
        read = state.rhomass if what == "density_kg_m3" else state.speed_sound

        def gas():
            state.update(CoolProp.PT_INPUTS, pascal, kelvin)
            return read()

        return gas
    read, scale = (state.p, 1e-3) if what == "bubble_pressure_kpa" else (state.rhomass, 1.0)

    def saturated():
        state.update(CoolProp.QT_INPUTS, 0.0, kelvin)
        return scale * read()

    return saturated


def nanoseconds(ask):
    """Median over batches, as our side measures."""
    start, calls = time.perf_counter(), 0
    while time.perf_counter() - start < BATCH_S:
        ask()
        calls += 1
    taken = []
    for _ in range(BATCHES):
        start = time.perf_counter()
        for _ in range(calls):
            ask()
        taken.append((time.perf_counter() - start) * 1e9 / calls)
    return sorted(taken)[BATCHES // 2]


def main():
    groups = {}
    for row in csv.DictReader(sys.stdin):
        ask = asker(row)
        theirs, ours = ask(), float(row["ours"])
        kind = "one component" if sum(float(row[name]) > 0 for name in FLUIDS) == 1 else "mixture"
        group = groups.setdefault((row["what"], kind), [])
        group.append((float(row["ours_ns"]), nanoseconds(ask), abs(ours / theirs - 1), row))
    if not groups:
        sys.exit("no points on standard input")
    print(f"CoolProp {CoolProp.__version__}, Python {sys.version.split()[0]}; median us a call over the points of a group")
    print(f"{'quantity':<24}{'of':<16}{'points':>7}{'ours':>10}{'CoolProp':>10}{'ratio':>8}{'largest deviation':>20}  where")
    for (what, kind), rows in groups.items():
        middle = len(rows) // 2
        ours = sorted(row[0] for row in rows)[middle] / 1e3
        theirs = sorted(row[1] for row in rows)[middle] / 1e3
        worst = max(rows, key=lambda row: row[2])
        where = f"{worst[3]['mixture']} {float(worst[3]['temperature_c']):g} C"
        if float(worst[3]["pressure_kpa"]) > 0:
            where += f" {float(worst[3]['pressure_kpa']):g} kPa"
        print(f"{what:<24}{kind:<16}{len(rows):>7}{ours:>10.2f}{theirs:>10.2f}{theirs / ours:>8.2f}{worst[2]:>19.3%}  {where}")


main()
