# Draws the labels of a content file with ReportLab, which encodes the QR codes as well.
"""python3 with_reportlab.py FONTS CONTENT OUT.pdf EACH-NTH FIRST: prints "name value" lines, seconds of the processor
and of the clock."""
import resource
import sys
import time

from reportlab.graphics import renderPDF
from reportlab.graphics.barcode.qr import QrCodeWidget
from reportlab.graphics.shapes import Drawing
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

FACES = {"regular": "Regular", "bold": "Bold", "extra-bold": "ExtraBold"}
GREY = {"black": 0, "white": 1}


def labels_of(path, nth, first):
    """The steps of every nth label from the first: (verb, words)."""
    label, count = [], 0
    with open(path, encoding="utf-8") as content:
        for line in content:
            verb, _, rest = line.rstrip("\n").partition(" ")
            if verb == "end":
                if count % nth == first:
                    yield label
                label, count = [], count + 1
            elif verb == "text":
                weight, size, x, baseline, ink, text = rest.split(" ", 5)
                label.append((verb, (weight, float(size), float(x), float(baseline), GREY[ink], text)))
            elif verb == "code":
                x, y, side, _, _, uri = rest.split(" ")
                label.append((verb, (float(x), float(y), float(side), uri)))
            elif verb == "box":
                *lengths, ink = rest.split(" ")
                label.append((verb, (*map(float, lengths), GREY[ink])))
            else:
                label.append((verb, tuple(map(float, rest.split(" ")))))


def draw(canvas, steps):
    height = 0
    for verb, words in steps:
        if verb == "page":
            height = words[1]
            canvas.setPageSize(words)
        elif verb == "box":
            x, y, w, h, grey = words
            canvas.setFillGray(grey)
            canvas.rect(x, height - y - h, w, h, stroke=0, fill=1)
        elif verb == "code":
            x, y, side, uri = words
            widget = QrCodeWidget(uri, barLevel="M", barBorder=0, barWidth=side, barHeight=side)
            drawing = Drawing(side, side)
            drawing.add(widget)
            renderPDF.draw(drawing, canvas, x, height - y - side)
        else:
            weight, size, x, baseline, grey, text = words
            canvas.setFillGray(grey)
            canvas.setFont(weight, size)
            canvas.drawString(x, height - baseline, text)
    canvas.showPage()


def cpu_seconds():
    spent = resource.getrusage(resource.RUSAGE_SELF)
    return spent.ru_utime + spent.ru_stime


def main():
    fonts, content, out, nth, first = sys.argv[1:]
    labels = list(labels_of(content, int(nth), int(first)))
    start, clock = cpu_seconds(), time.monotonic()
    for name, face in FACES.items():
        pdfmetrics.registerFont(TTFont(name, f"{fonts}/AtkinsonHyperlegibleNext-{face}.ttf"))
    canvas = Canvas(out)
    for label in labels:
        draw(canvas, label)
    canvas.save()
    print("labels", len(labels))
    print("seconds", cpu_seconds() - start)
    print("clock", time.monotonic() - clock)


main()
