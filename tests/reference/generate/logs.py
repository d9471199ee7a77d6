#!/usr/bin/env python3
"""Writes tests/reference/logs: two invented drives over the same road, one on petrol and one on gas, in every writing.

No engine was driven. The engine is t = 0.9 + 0.045 p + 0.0002 n (ms, kPa, 1/min); on gas it is lean by 8 % at 2750/min
and not elsewhere. Noise is uniform, seeded, 0.4 % either way. Every file of the gas drive holds the same rows: only the
writing differs.
"""

import random
import zipfile
from pathlib import Path

OUT = Path(__file__).resolve().parent.parent / "logs"
POINTS = [(2250, 45.0), (2750, 55.0), (3250, 65.0)]
STEP_S = 0.25
PLATEAU_S = 2.0
RAMP_S = 2.5


def drive(seed, error_at):
    """Rows of time, engine speed, manifold pressure, injection time, coolant."""
    noise = random.Random(seed)
    rows, time, at, way = [], 0.0, 0, 1
    # Fourteen seconds at the first point, so that whatever must settle has.
    plateaus = [(POINTS[0], 14.0)]
    for _ in range(28):
        if not 0 <= at + way < len(POINTS):
            way = -way
        at += way
        plateaus.append((POINTS[at], PLATEAU_S))
    last = POINTS[0]
    for (rpm, kpa), stay_s in plateaus:
        ramp = int(RAMP_S / STEP_S) if (rpm, kpa) != last else 0
        for step in range(ramp + int(stay_s / STEP_S)):
            share = min(1.0, (step + 1) / ramp) if ramp else 1.0
            n = round(last[0] + (rpm - last[0]) * share + noise.uniform(-8, 8))
            p = round(last[1] + (kpa - last[1]) * share + noise.uniform(-0.3, 0.3), 1)
            error = error_at if 2500 <= n < 3000 else 0.0
            t = (0.9 + 0.045 * p + 0.0002 * n) * (1 + error) * (1 + noise.uniform(-0.004, 0.004))
            rows.append((round(time, 2), n, p, round(t, 3), 88.5))
            time += STEP_S
        last = (rpm, kpa)
    return rows


def text(rows, names, delimiter=",", decimal=".", end="\n", before="", units=None, time=str, quote=False):
    dress = (lambda cell: f'"{cell}"') if quote else str
    lines = [delimiter.join(map(dress, names))] + ([delimiter.join(units)] if units else [])
    for stamp, *rest in rows:
        cells = [time(stamp)] + [str(cell).replace(".", decimal) for cell in rest]
        lines.append(delimiter.join(map(dress, cells)))
    return before + end.join(lines) + end


def clock(stamp, begin=23 * 3600 + 59 * 60 + 30):
    ms = round((begin + stamp) * 1000) % 86_400_000
    return f"{ms // 3_600_000:02}:{ms // 60_000 % 60:02}:{ms // 1000 % 60:02}.{ms % 1000:03}"


def write(name, content, encoding="utf-8"):
    (OUT / name).write_bytes(content if isinstance(content, bytes) else content.encode(encoding))


def sparse(rows):
    """One quantity a row, as tools log that ask for one after another."""
    lines = ["time_s,rpm,manifold_kpa,petrol_ms,coolant_c"]
    for stamp, *cells in rows:
        for at, cell in enumerate(cells):
            blank = [""] * 4
            blank[at] = str(cell)
            lines.append(",".join([f"{stamp + at * 0.05:.2f}", *blank]))
    return "\n".join(lines) + "\n"


def workbook(rows, names):
    def cell(column, row, value):
        place = f"{'ABCDEF'[column]}{row}"
        if isinstance(value, str):
            return f'<c r="{place}" t="inlineStr"><is><t>{value}</t></is></c>'
        return f'<c r="{place}"><v>{value}</v></c>'

    sheet = "".join(
        f'<row r="{r}">' + "".join(cell(c, r, value) for c, value in enumerate(row)) + "</row>"
        for r, row in enumerate([("invented drive",), names, *rows], 1)
    )
    main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    rels = "http://schemas.openxmlformats.org/package/2006/relationships"
    office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
    kinds = "application/vnd.openxmlformats-officedocument.spreadsheetml"
    parts = {
        "[Content_Types].xml": '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Override PartName="/xl/workbook.xml" ContentType="{kinds}.sheet.main+xml"/>'
        f'<Override PartName="/xl/worksheets/sheet1.xml" ContentType="{kinds}.worksheet+xml"/></Types>',
        "_rels/.rels": f'<Relationships xmlns="{rels}"><Relationship Id="r1" Type="{office}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'<workbook xmlns="{main}" xmlns:r="{office}"><sheets><sheet name="drive" sheetId="1" r:id="r1"/></sheets></workbook>',
        "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{rels}"><Relationship Id="r1" Type="{office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
        "xl/worksheets/sheet1.xml": f'<worksheet xmlns="{main}"><sheetData>{sheet}</sheetData></worksheet>',
    }
    with zipfile.ZipFile(OUT / "gas.xlsx", "w", zipfile.ZIP_DEFLATED) as packed:
        for name, content in parts.items():
            # A fixed moment, so that the same rows give the same bytes.
            packed.writestr(zipfile.ZipInfo(name, (2026, 1, 1, 0, 0, 0)), '<?xml version="1.0" encoding="UTF-8"?>' + content, zipfile.ZIP_DEFLATED)


def main():
    OUT.mkdir(exist_ok=True)
    petrol, gas = drive(1, 0.0), drive(2, 0.08)
    plain = ["time_s", "rpm", "manifold_kpa", "petrol_ms", "coolant_c"]
    german = ["Zeit", "Motordrehzahl", "Saugrohrdruck", "Einspritzzeit Benzin", "Kühlmitteltemperatur"]
    polish = ["Czas [s]", "Prędkość obrotowa [obr/min]", "Ciśnienie w kolektorze [kPa]", "Czas wtrysku benzyny [ms]", "Temperatura płynu [°C]"]
    write("petrol.csv", text(petrol, plain))
    write("gas.csv", text(gas, plain))
    write("gas_semicolon_bom.csv", "\ufeff" + text(gas, german, ";", ",", "\r\n", time=lambda s: str(s).replace(".", ",")))
    write("gas_tab_utf16le.txt", "\ufeff" + text(gas, german, "\t", ".", "\r\n"), "utf-16-le")
    write("gas_tab_utf16be.txt", "\ufeff" + text(gas, german, "\t", ","  , time=lambda s: str(s).replace(".", ",")), "utf-16-be")
    before = "Invented drive\r\nVehicle;none\r\nBegin;2026-11-29 10:00:00\r\n\r\n"
    units = ["ms", "1/min", "mbar", "µs", "°C"]
    scaled = [(round(s * 1000), n, round(p * 10), round(t * 1000), c) for s, n, p, t, c in gas]
    write("gas_units_1252.csv", text(scaled, german, ";", ",", "\r\n", before, units), "cp1252")
    write("gas_polish_1250.csv", text(gas, polish, ";", ",", time=lambda s: str(s).replace(".", ",")), "cp1250")
    write("gas_bar_cr.txt", text(gas, german, "|", ".", "\r"))
    write("gas_blanks.txt", "\n".join("  ".join(f"{cell!s:>12}" for cell in row) for row in [plain, *gas]) + "\n")
    middle = len(gas) // 2
    write("gas_clock_quoted.csv", text(gas[:middle], german, ",", ",", time=clock, quote=True) + text(gas[middle:], german, ",", ",", time=clock, quote=True))
    write("gas_sparse.csv", sparse(gas))
    lines = text(gas, plain).splitlines(keepends=True)
    lines[100:100] = ["0.1,NaN,1,1,1\n", "power lost\0\0\0\n", "1,2\n"]
    write("gas_broken.csv", "".join(lines) + "999.25,22")
    workbook(gas, plain)
    both = [(*row[:4], "petrol", row[4]) for row in petrol] + [(round(s + petrol[-1][0] + 20, 2), n, p, t, "LPG", c) for s, n, p, t, c in gas]
    write("both.csv", text(both, [*plain[:4], "fuel", "coolant_c"]))


if __name__ == "__main__":
    main()
