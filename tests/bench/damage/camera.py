# A phone's picture of a printed label: from dots to 8-bit greys, with whatever damage was done at each stage.
"""Lengths are printer dots, from the middle of the code, x to the right and y down; greys are reflected light from 0 to 1."""
import dataclasses
import io

import numpy
from PIL import Image, ImageFilter

FINE = 2  # samples a dot's side on paper
PAPER, INK, TUB = 0.88, 0.07, 0.40
FRAME = 1.45  # of the code with its quiet zone; the label around it is in the picture as far as that reaches
LEAST_FRAME = 230
FIELD = 400  # so far on each side reach damages: no picture shows more


def blurred(greys, radius):
    """Gaussian, of a standard deviation in samples."""
    if radius < 0.75:  # three samples are enough
        side = numpy.float32(radius * radius / 2)
        down = greys.astype(numpy.float32)
        down[1:-1] += side * (greys[2:] + greys[:-2] - 2 * greys[1:-1])
        out = down.copy()
        out[:, 1:-1] += side * (down[:, 2:] + down[:, :-2] - 2 * down[:, 1:-1])
        return out
    image = Image.fromarray(numpy.asarray(greys, numpy.float32) * 255).convert("L")
    return numpy.array(image.filter(ImageFilter.GaussianBlur(radius)), numpy.float32) / 255


def enlarged(dots):
    """Each dot as FINE by FINE samples."""
    return dots.repeat(FINE, axis=0).repeat(FINE, axis=1)


def averaged(greys, dx, dy):
    """Drawn out along a line of dx by dy samples."""
    steps = max(2, int(round(max(abs(dx), abs(dy)))) + 1)
    total = numpy.zeros_like(greys, numpy.float32)
    for step in range(steps):
        along = step / (steps - 1) - 0.5
        total += numpy.roll(greys, (int(round(dy * along)), int(round(dx * along))), (0, 1))
    return total / steps


class Field:
    """A smooth field of values from 0 to 1, about equally many of each, with lumps of so many dots."""

    def __init__(self, rng, lump):
        nodes = max(4, int(2 * FIELD / lump) + 3)
        small = rng.standard_normal((nodes, nodes)).astype(numpy.float32)
        self.step = 4 if lump >= 8 else 1  # dots a sample
        side = 2 * FIELD // self.step
        values = numpy.asarray(Image.fromarray(small).resize((side, side), Image.Resampling.BICUBIC))
        self.values = 1 / (1 + numpy.exp(-1.7 * (values - values.mean()) / values.std()))  # nearly the normal distribution

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
    ink = blurred(enlarged(dots.astype(numpy.float32)), 0.27 * FINE)  # a dot of the head has no sharp corners
    for damage in shot.heat:
        ink = damage(ink)
    greys = PAPER + (INK - PAPER) * ink
    x, y = places(2 * reach * FINE, 2 * reach * FINE, 1 / FINE)
    for damage in shot.paper:
        greys = damage(greys, x, y)
    return numpy.where(enlarged(there), greys, numpy.float32(TUB))


def sampled(greys, x, y):
    """Between the samples of the fine greys; the tub where there is nothing."""
    side = len(greys)
    greys[[0, -1]] = greys[:, [0, -1]] = TUB
    across = numpy.clip(x * FINE + numpy.float32((side - 1) / 2), 0, numpy.float32(side - 1.01))
    down = numpy.clip(y * FINE + numpy.float32((side - 1) / 2), 0, numpy.float32(side - 1.01))
    left, top = across.astype(numpy.int32), down.astype(numpy.int32)
    across -= left
    down -= top
    flat, start = greys.ravel(), top * side + left
    upper, lower = flat.take(start), flat.take(start + side)
    upper += across * (flat.take(start + 1) - upper)
    lower += across * (flat.take(start + side + 1) - lower)
    return upper + down * (lower - upper)


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
    reach = int(frame * 0.8)
    if reach > FIELD:
        raise ValueError(f"{label.name}: a code of {label.modules} modules is too large for the corpus")
    paper = on_paper(label, shot, reach)
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
