# The labels that the corpus damages: pages of PDFs as a 203 dpi printer gets them, and the same with other codes.
"""Dots are numpy arrays of bool, True is ink, rows from the top."""
import dataclasses
import glob
import os
import subprocess
import tempfile

import numpy
from PIL import Image

RESOLUTION = 203
QUIET_ZONE = 4  # modules: ISO/IEC 18004, 6.3.8


@dataclasses.dataclass(frozen=True)
class Design:
    """How a code is drawn; a level of "smallest" is the strongest that the smallest version for the content holds."""
    level: str
    dots: int  # a module's side

    def __str__(self):
        return f"{self.level} at {self.dots} dots"


@dataclasses.dataclass(frozen=True)
class Label:
    name: str
    dots: numpy.ndarray
    content: str
    box: tuple  # left, top, right, bottom of the code without its quiet zone, in dots; right and bottom outside

    @property
    def modules(self):
        left, top, right, bottom = self.box
        return (right - left) // module_side(self.dots[top:bottom, left:right])

    def with_code(self, design, codes):
        """The same label; its code drawn anew with the quiet zone's corner where it was, at the right bottom edge."""
        modules = codes.modules(design.level, self.content)
        left, top, right, bottom = self.box
        old = module_side(self.dots[top:bottom, left:right])
        dots = self.dots.copy()
        blank(dots, self.box, QUIET_ZONE * old)
        code = numpy.kron(modules, numpy.ones((design.dots, design.dots), bool))
        side = len(code)
        end_x = right + QUIET_ZONE * (old - design.dots)
        end_y = bottom + QUIET_ZONE * (old - design.dots)
        box = (end_x - side, end_y - side, end_x, end_y)
        if min(box) < 0:
            raise ValueError(f"{self.name}: no room for {design}")
        blank(dots, box, QUIET_ZONE * design.dots)
        dots[end_y - side:end_y, end_x - side:end_x] = code
        return Label(self.name, dots, self.content, box)


def blank(dots, box, around):
    left, top, right, bottom = box
    dots[max(0, top - around):bottom + around, max(0, left - around):right + around] = False


def module_side(code):
    """Dots a module: the finder pattern's upper edge is seven modules long."""
    edge = code[0]
    length = len(edge) if edge.all() else int(numpy.argmin(edge))
    if length == 0 or length % 7 != 0:
        raise ValueError("the code's upper left corner is no finder pattern")
    return length // 7


class Lines:
    """A program that answers each request on its standard input with one line."""

    def __init__(self, *command):
        self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def ask(self, request):
        self.process.stdin.write(request)
        self.process.stdin.flush()
        answer = self.process.stdout.readline().decode().rstrip("\n")
        if not answer:
            raise RuntimeError(f"{self.process.args[0]} ended")
        return answer

    def close(self):
        self.process.stdin.close()
        self.process.wait()


class Codes:
    """Codes as modules, by the program's own encoder."""

    def __init__(self, programs):
        self.lines = Lines(os.path.join(programs, "damage_codes"))
        self.known = {}

    def modules(self, level, content):
        if level == "smallest":
            return min((self.modules(each, content) for each in "HQML"), key=len)
        key = (level, content)
        if key not in self.known:
            size, bits = self.lines.ask(f"{level} {content}\n".encode()).split()
            self.known[key] = (numpy.frombuffer(bits.encode(), numpy.uint8) == ord("1")).reshape(int(size), int(size))
        return self.known[key]

    def close(self):
        self.lines.close()


class Readers:
    """What the readers make of pictures, 8-bit greys; `mode` as damage_readers has it."""

    def __init__(self, programs, mode):
        self.lines = Lines(os.path.join(programs, "damage_readers"), mode)

    def ask(self, picture, content):
        height, width = picture.shape
        return self.lines.ask(f"{width} {height} {content}\n".encode() + picture.tobytes())

    def read(self, picture, content):
        """Of ZXing-C++, zbar and, with read-all, the program's own reading: who found just this content."""
        return tuple(answer == "1" for answer in self.ask(picture, content).split())

    def close(self):
        self.lines.close()


def pages(pdf, folder):
    stem = os.path.join(folder, os.path.basename(pdf))
    subprocess.run(["pdftoppm", "-r", str(RESOLUTION), "-mono", pdf, stem], check=True)
    for name in sorted(glob.glob(glob.escape(stem) + "-*.pbm")):
        yield os.path.basename(name), ~numpy.asarray(Image.open(name))


def printed(folder, programs, most):
    """Labels of all PDFs in a folder, at most so many of each, spread over its pages. A code that one of two readers
    cannot read undamaged is an error."""
    labels = []
    finder = Readers(programs, "find")
    with tempfile.TemporaryDirectory() as work:
        for pdf in sorted(glob.glob(os.path.join(glob.escape(folder), "*.pdf"))):
            every = list(pages(pdf, work))
            chosen = every[::-(-len(every) // most)]
            labels += [found(name, dots, finder) for name, dots in chosen]
    finder.close()
    return labels


def found(name, dots, finder):
    greys = numpy.where(dots, 0, 255).astype(numpy.uint8)
    answer = finder.ask(greys, "?")
    if answer == "none":
        raise RuntimeError(f"{name}: no code that both readers read")
    *box, content = answer.split()
    return Label(name, dots, content, exact(dots, [int(edge) for edge in box]))


def exact(dots, about):
    """The code's box to the dot: the ink around where a reader saw its corners, which white surrounds."""
    left, top, right, bottom = about
    middle_x, middle_y = (left + right) // 2, (top + bottom) // 2
    reach = int((right - left) * 0.55)
    x, y = max(0, middle_x - reach), max(0, middle_y - reach)
    part = dots[y:middle_y + reach, x:middle_x + reach]
    columns, rows = numpy.flatnonzero(part.any(axis=0)), numpy.flatnonzero(part.any(axis=1))
    box = (x + columns[0], y + rows[0], x + columns[-1] + 1, y + rows[-1] + 1)
    if box[2] - box[0] != box[3] - box[1]:
        raise RuntimeError("the code's box is not square")
    return tuple(int(edge) for edge in box)


def white_label(content, design, codes, side=400):
    """A label with nothing on it but the code, in the middle."""
    code = numpy.kron(codes.modules(design.level, content), numpy.ones((design.dots, design.dots), bool))
    dots = numpy.zeros((side, side), bool)
    start = (side - len(code)) // 2
    end = start + len(code)
    dots[start:end, start:end] = code
    return Label("white", dots, content, (start, start, end, end))
