"""Draws the content of a certificate with ReportLab: the same texts in tables, the same two faces embedded and cut down, a QR
code, page numbers. It signs nothing, tags nothing and puts no file inside, so it does less than the paper it stands beside.

Takes the content as JSON and the folder of the faces. What is measured is processor time of drawing one file into memory;
importing the library and reading the faces is not counted.
"""

import io
import json
import statistics
import sys
import time

from reportlab.graphics.barcode.qr import QrCodeWidget
from reportlab.graphics.shapes import Drawing
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import Paragraph, SimpleDocTemplate, Spacer, Table, TableStyle

RUNS = 50
TEXT = ParagraphStyle("text", fontName="Sans", fontSize=7, leading=8)
HEAD = ParagraphStyle("head", fontName="SansBold", fontSize=9, leading=11)
LINES = TableStyle([
    ("LINEBELOW", (0, 0), (-1, -1), 0.25, "#999999"),
    ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ("TOPPADDING", (0, 0), (-1, -1), 1),
    ("BOTTOMPADDING", (0, 0), (-1, -1), 1),
])


def words(value):
    """Every text of a value, as a cell shows it."""
    if isinstance(value, dict):
        if "value" in value and "unit" in value:
            return f"{value['value']} {value['unit']}"
        return ", ".join(filter(None, (words(one) for one in value.values())))
    if isinstance(value, list):
        return "; ".join(filter(None, (words(one) for one in value)))
    return "" if value is None else str(value)


def escaped(text):
    return text.replace("&", "&amp;").replace("<", "&lt;")


def story(content):
    """The content, a table for each of its lists and one for its single fields."""
    plain = [(name, value) for name, value in content.items() if not isinstance(value, (list, dict))]
    yield Paragraph(escaped(f"Certificate {content['number']}"), HEAD)
    yield Table([[Paragraph(escaped(cell), TEXT) for cell in (name, words(value))] for name, value in plain], [120, 360], style=LINES)
    for name, value in content.items():
        if not value or not isinstance(value, (list, dict)):
            continue
        yield Spacer(1, 6)
        yield Paragraph(escaped(name), HEAD)
        rows = value if isinstance(value, list) else list(value.items())
        if isinstance(value, dict):
            cells, widths = [[key, words(one)] for key, one in rows], [120, 360]
        elif isinstance(rows[0], dict):
            cells = [[words(one) for one in row.values()][:6] for row in rows]
            widths = [480 / len(cells[0])] * len(cells[0])
        else:
            cells, widths = [[words(row)] for row in rows], [480]
        yield Table([[Paragraph(escaped(cell), TEXT) for cell in row] for row in cells], widths, style=LINES)
    code = Drawing(90, 90)
    code.add(QrCodeWidget(content["check"].get("url") or content["check"]["code"], barWidth=90, barHeight=90))
    yield code


def number_page(canvas, document):
    canvas.setFont("Sans", 8)
    canvas.drawString(50, 30, f"page {document.page}")


def draw(content):
    out = io.BytesIO()
    SimpleDocTemplate(out, pagesize=A4, topMargin=40, bottomMargin=45, leftMargin=50, rightMargin=50).build(list(story(content)), onFirstPage=number_page, onLaterPages=number_page)
    return out.getvalue()


def main():
    content_file, faces = sys.argv[1:]
    pdfmetrics.registerFont(TTFont("Sans", f"{faces}/NotoSans-Regular.ttf"))
    pdfmetrics.registerFont(TTFont("SansBold", f"{faces}/NotoSans-Bold.ttf"))
    with open(content_file, encoding="utf-8") as file:
        content = json.load(file)
    pdf = draw(content)
    taken = []
    for _ in range(RUNS):
        start = time.process_time()
        draw(content)
        taken.append((time.process_time() - start) * 1e3)
    pages = pdf.count(b"/Type /Page\n")
    print(f"ReportLab, {pages} pages, ms on the processor: median {statistics.median(taken):.2f}, lowest {min(taken):.2f}, highest {max(taken):.2f}")
    print(f"{len(pdf)} bytes")


if __name__ == "__main__":
    main()
