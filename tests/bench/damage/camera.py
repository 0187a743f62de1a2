# A phone's picture of a printed label: from dots to 8-bit greys, with whatever damage was done at each stage.
"""Lengths are printer dots, from the middle of the code, x to the right and y down; greys are reflected light from 0 to 1."""
import dataclasses
import io

import numpy
from PIL import Image, ImageFilter

FINE = 3  # samples a dot's side on paper
PAPER, INK, TUB = 0.88, 0.07, 0.40
FRAME = 1.45  # of the code with its quiet zone; the label around it is in the picture as far as that reaches
LEAST_FRAME = 230
FIELD = 320  # fields of light, frost and the like reach so far on each side


def blurred(greys, radius):
    """Gaussian, of a standard deviation in samples."""
    if radius <= 0:
        return greys
    image = Image.fromarray(numpy.asarray(greys, numpy.float32) * 255).convert("L")
    return numpy.asarray(image.filter(ImageFilter.GaussianBlur(radius)), numpy.float32) / 255


def averaged(greys, dx, dy):
    """Drawn out along a line of dx by dy samples."""
    steps = max(2, int(round(max(abs(dx), abs(dy)))) + 1)
    total = numpy.zeros_like(greys, numpy.float32)
    for step in range(steps):
        along = step / (steps - 1) - 0.5
        total += numpy.roll(greys, (int(round(dy * along)), int(round(dx * along))), (0, 1))
    return total / steps


class Field:
    """A smooth field of values from 0 to 1, equally many of each, with lumps of so many dots."""

    def __init__(self, rng, lump):
        nodes = max(4, int(2 * FIELD / lump) + 3)
        small = rng.standard_normal((nodes, nodes)).astype(numpy.float32)
        self.step = 4 if lump >= 8 else 1  # dots a sample
        side = 2 * FIELD // self.step
        values = numpy.asarray(Image.fromarray(small).resize((side, side), Image.Resampling.BICUBIC))
        ordered = numpy.sort(values[::4, ::4], axis=None)
        self.values = (numpy.searchsorted(ordered, values) / len(ordered)).astype(numpy.float32)

    def at(self, x, y):
        across = numpy.clip((x + FIELD) / self.step, 0, len(self.values) - 1).astype(numpy.int32)
        down = numpy.clip((y + FIELD) / self.step, 0, len(self.values) - 1).astype(numpy.int32)
        return self.values[down, across]


@dataclasses.dataclass
class Shot:
    """What happens to one label, stage by stage; each damage adds to the lists."""
    scale: float  # camera pixels a dot, where the label faces the camera
    printing: list = dataclasses.field(default_factory=list)  # dots -> dots, as the head puts them on the paper
    heat: list = dataclasses.field(default_factory=list)      # ink from 0 to 1 (fine) -> the same
    paper: list = dataclasses.field(default_factory=list)     # greys (fine), x, y -> greys
    view: list = dataclasses.field(default_factory=list)      # x, y in the picture -> x, y before the label
    surface: list = dataclasses.field(default_factory=list)   # x, y before the label -> x, y on the label
    light: list = dataclasses.field(default_factory=list)     # greys, x, y in the picture -> greys
    lens: list = dataclasses.field(default_factory=list)      # greys, scale -> greys
    exposure: float = 0.9
    noise: float = 0.012    # standard deviation at full light
    quality: int = 85       # of the JPEG file


def places(width, height, step):
    """x and y of samples `step` dots apart, from the middle, as float32 rows that broadcast."""
    x = (numpy.arange(width, dtype=numpy.float32) - (width - 1) / 2) * numpy.float32(step)
    y = (numpy.arange(height, dtype=numpy.float32) - (height - 1) / 2) * numpy.float32(step)
    return x[None, :], y[:, None]


def cut(label, reach):
    """The square of dots this far on each side of the code's middle, and where the label is; beyond it there is none."""
    left, top, right, bottom = label.box
    x, y = (left + right) // 2 - reach, (top + bottom) // 2 - reach
    dots = numpy.zeros((2 * reach, 2 * reach), bool)
    there = numpy.zeros((2 * reach, 2 * reach), bool)
    height, width = label.dots.shape
    x0, y0, x1, y1 = max(0, x), max(0, y), min(width, x + 2 * reach), min(height, y + 2 * reach)
    dots[y0 - y:y1 - y, x0 - x:x1 - x] = label.dots[y0:y1, x0:x1]
    there[y0 - y:y1 - y, x0 - x:x1 - x] = True
    return dots, there


def on_paper(label, shot, reach):
    """Greys of the printed label, FINE samples a dot."""
    dots, there = cut(label, reach)
    for damage in shot.printing:
        dots = damage(dots)
    fine = numpy.ones((FINE, FINE), numpy.float32)
    ink = blurred(numpy.kron(dots.astype(numpy.float32), fine), 0.8)  # a dot of the head has no sharp corners
    for damage in shot.heat:
        ink = damage(ink)
    greys = PAPER + (INK - PAPER) * ink
    x, y = places(2 * reach * FINE, 2 * reach * FINE, 1 / FINE)
    for damage in shot.paper:
        greys = damage(greys, x, y)
    return numpy.where(numpy.kron(there, fine.astype(bool)), greys, numpy.float32(TUB))


def sampled(greys, x, y):
    """Between the samples of the fine greys; the tub where there is nothing."""
    side = len(greys)
    across, down = x * FINE + (side - 1) / 2, y * FINE + (side - 1) / 2
    outside = ~((across >= 0) & (across < side - 1) & (down >= 0) & (down < side - 1))
    across, down = numpy.where(outside, 0, across), numpy.where(outside, 0, down)
    left, top = across.astype(numpy.int32), down.astype(numpy.int32)
    right_part, low_part = across - left, down - top
    flat, start = greys.ravel(), top * side + left
    upper = flat[start] * (1 - right_part) + flat[start + 1] * right_part
    lower = flat[start + side] * (1 - right_part) + flat[start + side + 1] * right_part
    return numpy.where(outside, TUB, upper * (1 - low_part) + lower * low_part).astype(numpy.float32)


def developed(light, shot, rng):
    """Light to the file's greys: noise of the sensor, the curve of sRGB (nearly), JPEG."""
    exposed = light * shot.exposure
    noise = rng.standard_normal(light.shape, numpy.float32) * shot.noise * numpy.sqrt(numpy.clip(exposed, 0, 1) + 0.1)
    greys = numpy.clip(exposed + noise, 0, 1) ** numpy.float32(1 / 2.2)
    file = io.BytesIO()
    Image.fromarray((greys * 255 + 0.5).astype(numpy.uint8)).save(file, "JPEG", quality=shot.quality)
    return numpy.asarray(Image.open(file))


def picture(label, shot, rng):
    """8-bit greys: the code of the label in the middle, with the label around it as far as the frame reaches."""
    quiet = 8 * (label.box[2] - label.box[0]) / label.modules
    frame = max(LEAST_FRAME, FRAME * (label.box[2] - label.box[0] + quiet))
    paper = on_paper(label, shot, int(frame * 0.8))
    side = int(frame * shot.scale)
    at_x, at_y = places(side, side, 1 / shot.scale)
    x, y = numpy.broadcast_arrays(at_x, at_y)
    for damage in shot.view + shot.surface:
        x, y = damage(x, y)
    greys = sampled(blurred(paper, 0.4 * FINE / shot.scale), x, y)  # what one pixel sees is not a point
    for damage in shot.light:
        greys = damage(greys, at_x, at_y)
    for damage in shot.lens:
        greys = damage(greys, shot.scale)
    return developed(greys, shot, rng)
