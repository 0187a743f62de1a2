# Decode rates of labels by damage, severity, reader and design of the code, as tables.
"""rates.py PROGRAMS LABELS TABLE EACH MINUTES DESIGN…: damages the labels of the PDFs in the folder LABELS, EACH cases of
every damage and severity, and writes the file TABLE; what is not read after MINUTES is left to the next run. A design is
a level (L M Q H smallest) and the dots of a module, as M4; "printed" is the code as it stands in the PDFs. The others are
compared with the first design."""
import collections
import math
import multiprocessing
import os
import sys
import time
import zlib

import corpus
import damages
from labels import QUIET_ZONE, Codes, Design, Readers, printed

READERS = ("ZXing-C++", "zbar")  # each as it comes: the program's own reading is ZXing-C++ with fewer kinds of code
PROCESSES = 2
PRINTED = "printed"
OF_EACH_PDF = 10


def design_named(name):
    return name if name == PRINTED else Design(name[:-1], int(name[-1]))


def drawn(labels, designs, programs):
    """The labels of each design."""
    codes = Codes(programs)
    all_of = {design: labels if design == PRINTED else [label.with_code(design, codes) for label in labels]
              for design in designs}
    codes.close()
    return all_of


def results_of(case):
    """For each design who read the picture."""
    label_of = [corpus.label_of(labels, case) for labels in worker.drawn.values()]
    return case, [worker.readers.read(corpus.picture(label, case), label.content) for label in label_of]


worker = None


class Worker:
    def __init__(self, programs, all_drawn):
        self.readers = Readers(programs, "read")
        self.drawn = all_drawn


def start(programs, all_drawn):
    global worker
    worker = Worker(programs, all_drawn)


class Answers:
    """What was read, kept in a file, so that a run that was stopped goes on where it was. Its first line says of what."""

    def __init__(self, name, of_what):
        self.of_case = {}
        lines = open(name, encoding="utf-8").read().splitlines() if os.path.exists(name) else []
        kept = lines[1:] if lines[:1] == [of_what] else []
        for line in kept:
            damage, severity, number, *reads = line.split()
            self.of_case[damage, int(severity), int(number)] = [tuple(r == "1" for r in read) for read in reads]
        self.file = open(name, "w", encoding="utf-8")
        self.file.write("\n".join([of_what] + kept) + "\n")

    def __contains__(self, case):
        return (case[0].__name__, *case[1:]) in self.of_case

    def add(self, case, answers):
        key = (case[0].__name__, *case[1:])
        self.of_case[key] = answers
        reads = ("".join(str(int(read)) for read in answer) for answer in answers)
        print(*key, *reads, file=self.file, flush=True)

    def by_severity(self, cases):
        """By (damage, severity): for each case, for each design, the readers' answers."""
        found = collections.defaultdict(list)
        for damage, severity, number in sorted(cases, key=lambda case: (damages.ALL + (damages.mixture,)).index(case[0])):
            answers = self.of_case.get((damage.__name__, severity, number))
            if answers:
                found[damage.__name__, severity].append(answers)
        return found


def measure(answers, cases, all_drawn, programs, until):
    """Reads what is not yet read, in the order of the cases, until that moment."""
    missing = [case for case in cases if case not in answers]
    with multiprocessing.Pool(PROCESSES, start, (programs, all_drawn)) as pool:
        for case, read in pool.imap(results_of, missing):
            answers.add(case, read)
            if time.monotonic() > until:
                break


def what_is_measured(all_drawn):
    """The scripts, the labels and the designs, as a line; answers to another line are of no use."""
    mark = 0
    for script in ("camera.py", "damages.py", "corpus.py"):
        mark = zlib.crc32(open(os.path.join(os.path.dirname(__file__), script), "rb").read(), mark)
    for labels in all_drawn.values():
        for label in labels:
            mark = zlib.crc32(label.dots.tobytes(), mark)
    return f"{mark:08x} " + ", ".join(str(design) for design in all_drawn)


def interval(hits, of):
    """Wilson's, 95 %."""
    z, share = 1.96, hits / of
    middle = (share + z * z / (2 * of)) / (1 + z * z / of)
    half = z / (1 + z * z / of) * math.sqrt(share * (1 - share) / of + z * z / (4 * of * of))
    return f"{100 * share:5.1f} ({100 * (middle - half):.1f} to {100 * (middle + half):.1f})"


def difference(one, other):
    """Points by which `one` is better, each picture compared with its twin; 95 %."""
    of = len(one)
    gained, lost = sum(a and not b for a, b in zip(one, other)), sum(b and not a for a, b in zip(one, other))
    share = (gained - lost) / of
    half = 1.96 * math.sqrt(max(0, (gained + lost) / of - share * share) / of)
    return f"{100 * share:+5.1f} ± {100 * half:.1f}"


def sides(labels):
    """Modules a side, and dots a side with the quiet zone, of the smallest and the largest code."""
    modules = sorted({label.modules for label in labels})
    dots = sorted({(label.box[2] - label.box[0]) // label.modules * (label.modules + 2 * QUIET_ZONE)
                   for label in labels})
    return (f"{modules[0]}" if len(modules) == 1 else f"{modules[0]}-{modules[-1]}",
            f"{dots[0]}" if len(dots) == 1 else f"{dots[0]}-{dots[-1]}")


def whole_table(all_drawn, found):
    rows = [answers for cases in found.values() for answers in cases]
    yield f"Share of {len(rows)} pictures that are read, in per cent (95 % interval), and points above the first design"
    yield f"{'design':20}{'modules':>9}{'dots':>9}" + "".join(f"  {reader:38}" for reader in READERS)
    for number, (design, labels) in enumerate(all_drawn.items()):
        modules, dots = sides(labels)
        cells = ""
        for reader in range(len(READERS)):
            one, first = ([row[each][reader] for row in rows] for each in (number, 0))
            more = "" if number == 0 else difference(one, first)
            cells += f"  {interval(sum(one), len(one)):22}{more:16}"
        yield f"{str(design):20}{modules:>9}{dots:>9}{cells}".rstrip()


def damage_table(designs, found, reader):
    yield f"{READERS[reader]}, in per cent by damage and severity"
    width = max(len(str(design)) for design in designs) + 2
    yield f"{'damage':16}{'severity':10}{'pictures':>8}" + "".join(f"{str(design):>{width}}" for design in designs)
    for (damage, severity), cases in found.items():
        shares = (100 * sum(case[number][reader] for case in cases) / len(cases) for number in range(len(designs)))
        yield (f"{damage.replace('_', ' '):16}{corpus.SEVERITIES[severity]:10}{len(cases):8}"
               + "".join(f"{share:{width}.0f}" for share in shares))


def main(programs, folder, table, each, minutes, *names):
    until = time.monotonic() + 60 * float(minutes)
    labels = printed(folder, programs, OF_EACH_PDF)
    if not labels:
        sys.exit(f"{folder}: no PDF")
    all_drawn = drawn(labels, [design_named(name) for name in names], programs)
    os.makedirs(os.path.dirname(table) or ".", exist_ok=True)
    answers = Answers(table + ".answers", what_is_measured(all_drawn))
    cases = list(corpus.cases(int(each)))
    measure(answers, cases, all_drawn, programs, until)
    found = answers.by_severity(cases)
    lengths = sorted(len(label.content) for label in labels)
    lines = [f"{len(labels)} labels, whose codes hold {lengths[0]} to {lengths[-1]} bytes"]
    lines += whole_table(all_drawn, found)
    for reader in range(len(READERS)):
        lines += ["", *damage_table(list(all_drawn), found, reader)]
    with open(table, "w", encoding="utf-8") as file:
        file.write("\n".join(lines) + "\n")
    print("\n".join(lines))


if __name__ == "__main__":
    main(*sys.argv[1:])
