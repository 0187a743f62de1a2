# The corpus repeats; all read an undamaged picture, none one of which nothing is left. Exit status 1 if not.
"""check.py PROGRAMS"""
import sys

import numpy

import camera
import corpus
from labels import Codes, Design, Readers, white_label

CONTENT = "https://quarrylane.example/01/04180000012345/10/A26329CLB1X/21/0017?17=261201"


def undamaged(label):
    return camera.picture(label, camera.Shot(scale=2.5), numpy.random.default_rng(1))


def blacked_out(shot, _rng, _severity):
    """Ink over the whole code."""
    shot.printing.append(lambda dots: dots | True)


def main(programs):
    codes, readers = Codes(programs), Readers(programs, "read-all")
    label = white_label(CONTENT, Design("M", 4), codes)
    failed = []

    def expect(what, fine):
        print(("passed: " if fine else "FAILED: ") + what)
        if not fine:
            failed.append(what)

    expect("all read an undamaged picture", readers.read(undamaged(label), CONTENT) == (True, True, True))
    expect("a code of another content does not count", not any(readers.read(undamaged(label), CONTENT + "0")))
    expect("none reads a code that is blacked out",
           not any(readers.read(corpus.picture(label, (blacked_out, 0, 0)), CONTENT)))
    for damage, severity, number in corpus.cases(1):
        if number > 0 or severity != 1:
            continue
        case = (damage, severity, number)
        one, again = (corpus.picture(label, case) for _ in range(2))
        other = corpus.picture(label, (damage, severity, number + 1))
        expect(f"{damage.__name__}: the same seed makes the same picture, another seed another",
               numpy.array_equal(one, again) and not numpy.array_equal(one, other))
    codes.close()
    readers.close()
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
