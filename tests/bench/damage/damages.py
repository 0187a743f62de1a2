# What happens to labels in a walk-in: one function a damage, each at three severities.
"""damage(shot, rng, severity): adds itself to a camera.Shot, severity 0 (mild) to 2 (harsh). Lengths are printer dots, an
eighth of a millimetre. All chance is drawn from rng before the picture is taken, so that the same seed does the same to
labels that differ in their code alone. The severities were set with the smallest code at 3 dots alone in view, so that about three in
five of its pictures are read and others have room above and below."""
import math

import numpy
from PIL import Image, ImageDraw

from camera import FIELD, FINE, PAPER, Field, averaged, blurred

TURN = 2 * math.pi


def turned(x, y, angle):
    return x * math.cos(angle) + y * math.sin(angle), y * math.cos(angle) - x * math.sin(angle)


# ---- The printer ------------------------------------------------------------------------------------------------------------


def burnt_head(shot, rng, severity):
    """Elements of the head that no longer heat: columns of dots stay white the whole way of the paper."""
    a_hundred = (1.5, 3, 6)[severity]
    dead = rng.random(2 * FIELD) < a_hundred / 100

    def unheated(dots):
        start = FIELD - dots.shape[1] // 2
        return dots & ~dead[None, start:start + dots.shape[1]]
    shot.printing.append(unheated)


def slipping_paper(shot, rng, severity):
    """The roller slips: rows are printed over one another or left out."""
    count = (8, 18, 30)[severity]
    slips = numpy.zeros(2 * FIELD, int)
    at = rng.choice(2 * FIELD, count, replace=False)
    slips[at] = rng.integers(1, 3, count)

    def squeezed(dots):
        middle = dots.shape[0] // 2
        here = slips[FIELD - middle:FIELD - middle + dots.shape[0]]
        rows = numpy.arange(dots.shape[0]) + numpy.cumsum(here)
        rows -= rows[middle] - middle
        return dots[numpy.clip(rows, 0, dots.shape[0] - 1)]
    shot.printing.append(squeezed)


def ink_spread(shot, rng, severity):
    """Too much heat: dots grow into the white between them."""
    radius, threshold = ((0.43, 0.30), (0.6, 0.22), (0.8, 0.17))[severity]
    shift = rng.uniform(-0.03, 0.03)
    shot.heat.append(lambda ink: numpy.clip((blurred(ink, radius * FINE) - threshold - shift) * 6 + 0.5, 0, 1))


def weak_heat(shot, rng, severity):
    """A cold head: pale dots that shrink, and some that fail."""
    missing = (0.006, 0.02, 0.05)[severity]
    strength = (0.9, 0.8, 0.7)[severity]
    fails = rng.random((2 * FIELD, 2 * FIELD)) < missing

    def patchy(dots):
        start = FIELD - dots.shape[0] // 2
        return dots & ~fails[start:start + dots.shape[0], start:start + dots.shape[1]]
    shot.printing.append(patchy)
    shot.heat.append(lambda ink: strength * numpy.clip(ink * 1.3 - 0.3, 0, 1))


# ---- The paper --------------------------------------------------------------------------------------------------------------


def fading(shot, rng, severity):
    """Heat-sensitive paper that has stood in the light or near fat: pale ink, paper that greys."""
    left = (0.65, 0.45, 0.25)[severity]
    patches = Field(rng, 60)
    grey = rng.uniform(0.8, 0.95)

    def faded(greys, x, y):
        return grey * PAPER + (greys - PAPER) * left * (0.7 + 0.6 * patches.at(x, y))
    shot.paper.append(faded)


def scratches(shot, rng, severity):
    """Lines where the coating is off, and dark ones: rubbing warms the paper."""
    count = (5, 11, 20)[severity]
    lines = []
    for _ in range(count):
        x, y = rng.uniform(-150, 150, 2)
        dx, dy = turned(rng.uniform(40, 160), 0, rng.uniform(0, TURN))
        lines.append((x - dx / 2, y - dy / 2, x + dx / 2, y + dy / 2, rng.uniform(0.6, 3.2), rng.random() < 0.5))

    def scratched(greys, _x, _y):
        side = len(greys)
        image = Image.fromarray((greys * 255).astype(numpy.uint8))
        draw = ImageDraw.Draw(image)
        for x0, y0, x1, y1, width, dark in lines:
            ends = [(end * FINE + side / 2) for end in (x0, y0, x1, y1)]
            draw.line(ends, fill=60 if dark else int(PAPER * 250), width=max(1, round(width * FINE)))
        return numpy.asarray(image, numpy.float32) / 255
    shot.paper.append(scratched)


def smear(shot, rng, severity):
    """A wet or greasy thumb: ink drawn out and a film of grey, in patches."""
    length = (4, 6, 9)[severity]
    share = (0.25, 0.4, 0.55)[severity]
    angle, film = rng.uniform(0, TURN), rng.uniform(0.75, 0.95)
    patches = Field(rng, 80)

    def smeared(greys, x, y):
        dx, dy = turned(length * FINE, 0, angle)
        weight = numpy.clip((patches.at(x, y) - (1 - share)) * 8, 0, 1)
        return greys + weight * (averaged(greys, dx, dy) * film - greys)
    shot.paper.append(smeared)


def frost(shot, rng, severity):
    """Hoarfrost: lumps of white crystals that cover and blur."""
    share = (0.15, 0.3, 0.5)[severity]
    depth = (0.5, 0.6, 0.7)[severity]
    lumps, crystals = Field(rng, rng.uniform(10, 30)), Field(rng, 2.2)

    def frosted(greys, x, y):
        ice = depth * numpy.clip((lumps.at(x, y) - (1 - share)) * 3, 0, 1)
        ice = ice * (0.55 + 0.45 * crystals.at(x, y))
        through = greys + numpy.minimum(1, ice * 1.5) * (blurred(greys, 1.2 * FINE) - greys)
        return through + ice * (0.72 + 0.25 * crystals.at(x, y) - through)
    shot.paper.append(frosted)


def condensation(shot, rng, severity):
    """Drops on the label: each is a lens that shows what lies under it larger, with a dark rim and a gleam."""
    count = (30, 60, 100)[severity]
    radii = rng.gamma(2.5, (1.2, 1.6, 2.0)[severity], count) + 1.5
    middles = rng.uniform(-170, 170, (count, 2))
    sun = rng.uniform(0, TURN)
    drops = [(*middle, radius) for middle, radius in zip(middles, radii)]

    def near(x, y, drop):
        """The drop's part of a picture and, in radii, how far each sample there is from its middle."""
        cx, cy, radius = drop
        distance = numpy.hypot(x - cx, y - cy) / radius
        return distance < 1, distance

    def under_drops(greys, x, y):
        out = greys.copy()
        side = len(greys)
        for drop in drops:
            cx, cy, radius = drop
            left, right = (int((c * FINE) + side / 2) for c in (cx - radius, cx + radius))
            top, low = (int((c * FINE) + side / 2) for c in (cy - radius, cy + radius))
            if left < 0 or top < 0 or right >= side - 1 or low >= side - 1:
                continue
            here_x, here_y = x[:, left:right + 1], y[top:low + 1]
            inside, distance = near(here_x, here_y, drop)
            bend = 0.45 + 0.55 * distance ** 2  # the middle is magnified about twice, the rim not at all
            from_x = ((cx + (here_x - cx) * bend) * FINE + side / 2).astype(int)
            from_y = ((cy + (here_y - cy) * bend) * FINE + side / 2).astype(int)
            seen = greys[numpy.clip(from_y, 0, side - 1), numpy.clip(from_x, 0, side - 1)]
            seen = seen * (1 - 0.5 * distance ** 6) + 0.06
            gleam = numpy.hypot(here_x - cx - 0.4 * radius * math.cos(sun), here_y - cy - 0.4 * radius * math.sin(sun))
            seen = numpy.where(gleam < 0.28 * radius, 1, seen)
            block = out[top:low + 1, left:right + 1]
            block[inside] = seen[inside]
        return out
    shot.paper.append(under_drops)


# ---- How the label stands ---------------------------------------------------------------------------------------------------


def rotation(shot, rng, severity):
    """Turned in the picture, and further away the harsher."""
    angle = rng.uniform(0.1, (0.4, 0.8, math.pi)[severity]) * rng.choice((-1, 1))
    shot.scale *= (0.8, 0.65, 0.55)[severity]
    shot.view.append(lambda x, y: turned(x, y, angle))


def perspective(shot, rng, severity):
    """Seen from the side, from about 11 cm."""
    tilt = math.radians((40, 55, 66)[severity] + rng.uniform(-4, 4))
    angle, distance = rng.uniform(0, TURN), 900

    def tilted(x, y):
        x, y = turned(x, y, angle)
        along = y * distance / (distance * math.cos(tilt) - y * math.sin(tilt))
        return turned(x * (distance + along * math.sin(tilt)) / distance, along, -angle)
    shot.view.append(tilted)


def curved_lid(shot, rng, severity):
    """Round a tub, a jar, a bottle: radius 4, 2 and 1.5 cm; the sides are further from the light."""
    radius = (320, 160, 120)[severity] * rng.uniform(0.9, 1.1)
    angle, off = rng.uniform(0, TURN), rng.uniform(-0.35, 0.35)

    def across(x, y):
        return turned(x, y, angle)[0] / radius + off

    def wrapped(x, y):
        x, y = turned(x, y, angle)
        bent = numpy.clip(x / radius + off, -1, 1)
        arc = radius * (numpy.arcsin(bent) - math.asin(off))
        return turned(numpy.where(numpy.abs(bent) < 1, arc, 10 * FIELD), y, -angle)
    shot.surface.append(wrapped)
    shot.light.append(lambda greys, x, y: greys * (0.3 + 0.7 * numpy.sqrt(1 - numpy.clip(across(x, y), -1, 1) ** 2)))


# ---- Light, lens, sensor, file ----------------------------------------------------------------------------------------------


def uneven_light(shot, rng, severity):
    """A shadow across, and the gleam of a lamp in which all is white."""
    dark = (0.35, 0.18, 0.09)[severity]
    gleam = (0.35, 0.7, 1.3)[severity]
    angle, edge, soft = rng.uniform(0, TURN), rng.uniform(-50, 50), rng.uniform(20, 70)
    middle, size = rng.uniform(-70, 70, 2), rng.uniform(18, 40)

    def lit(greys, x, y):
        shade = 1 / (1 + numpy.exp((turned(x, y, angle)[0] - edge) / soft * 3))
        spot = numpy.exp(-((x - middle[0]) ** 2 + (y - middle[1]) ** 2) / (2 * size ** 2))
        return greys * (dark + (1 - dark) * shade) + gleam * spot
    shot.light.append(lit)


def defocus(shot, rng, severity):
    """Out of focus: a standard deviation in dots."""
    radius = (0.9, 1.2, 1.6)[severity] * rng.uniform(0.85, 1.15)
    shot.lens.append(lambda greys, scale: blurred(greys, radius * scale))


def motion(shot, rng, severity):
    """The hand moves while the shutter is open."""
    length, angle = (3, 4.2, 5.5)[severity] * rng.uniform(0.85, 1.15), rng.uniform(0, TURN)
    shot.lens.append(lambda greys, scale: averaged(greys, *turned(length * scale, 0, angle)))


def noise(shot, rng, severity):
    """Little light, much gain."""
    shot.noise = (0.03, 0.06, 0.12)[severity]
    shot.exposure *= rng.uniform(0.5, 0.9)


def jpeg(shot, rng, severity):
    """A file made small for sending, from further away."""
    shot.quality = int((18, 9, 5)[severity] + rng.integers(0, 3))
    shot.scale *= (0.8, 0.65, 0.55)[severity]


PRINTER = (burnt_head, slipping_paper, ink_spread, weak_heat)
SURFACE = (fading, scratches, smear, frost, condensation)
STANDING = (rotation, perspective, curved_lid)
CAMERA = (uneven_light, defocus, motion, noise, jpeg)
ALL = PRINTER + SURFACE + STANDING + CAMERA


def mixture(shot, rng, severity):
    """Two, three or four at once, each of another group and mild or strong."""
    groups = [PRINTER, SURFACE, STANDING, CAMERA]
    for group in rng.permutation(4)[:severity + 2]:
        damage = groups[group][rng.integers(len(groups[group]))]
        damage(shot, rng, int(rng.integers(0, 2)))
