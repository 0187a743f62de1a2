# The corpus: which damage is done how often, and the seed of each picture.
"""A case is (damage, severity, number). Its seed is made of these alone, so that each design of a code meets the same."""
import zlib

import numpy

import camera
import damages

SEVERITIES = ("mild", "strong", "harsh")
MIXED = 6  # times as many mixtures
LEAST_SCALE, MOST_SCALE = 1.3, 3.0  # camera pixels a dot: a picture from far and from near


def cases(each):
    """All cases, `each` of every damage and severity and MIXED times as many mixtures; the first so many are a corpus too."""
    for start in range(each):
        for damage in damages.ALL + (damages.mixture,):
            several = MIXED if damage is damages.mixture else 1
            for severity in range(len(SEVERITIES)):
                for number in range(start * several, (start + 1) * several):
                    yield damage, severity, number


def chance(damage, severity, number):
    return numpy.random.default_rng([zlib.crc32(damage.__name__.encode()), severity, number])


def shot_of(case):
    """The shot of a case and the chance that is left for its sensor: first how it is held, then what is damaged."""
    damage, severity, number = case
    rng = chance(damage, severity, number)
    shot = camera.Shot(scale=rng.uniform(LEAST_SCALE, MOST_SCALE))
    angle, shift = rng.uniform(-0.15, 0.15), rng.uniform(-0.5, 0.5, 2)
    shot.exposure = rng.uniform(0.75, 1.0)
    shot.view.append(lambda x, y: damages.turned(x + shift[0], y + shift[1], angle))
    damage(shot, rng, severity)
    return shot, rng


def picture(label, case):
    """8-bit greys of a label to which this happened."""
    return camera.picture(label, *shot_of(case))


def label_of(labels, case):
    """Each label about as often."""
    damage, severity, number = case
    return labels[(zlib.crc32(f"{damage.__name__} {severity}".encode()) + number) % len(labels)]
