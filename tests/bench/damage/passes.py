# What the further passes read of damaged labels, as printed, that one plain reading does not; and how long each takes.
"""passes.py PROGRAMS LABELS TABLE EACH [FIRST]: EACH cases of every damage and severity, from the case FIRST on (0 unless
said); the file TABLE has one row a damage. A picture counts as read by the passes where they find its content and nothing
else. The passes were chosen with the cases from 1,000 on."""
import collections
import multiprocessing
import os
import sys

import corpus
from labels import Readers, printed
from rates import OF_EACH_PDF, PROCESSES, difference, interval

worker = None


class Worker:
    def __init__(self, programs, labels):
        self.readers = Readers(programs, "passes")
        self.labels = labels


def start(programs, labels):
    global worker
    worker = Worker(programs, labels)


def compared(case):
    """Read plainly, read by the passes, milliseconds of both."""
    label = corpus.label_of(worker.labels, case)
    plain, passes, *times = worker.readers.ask(corpus.picture(label, case), label.content).split()
    return case, (plain == "1", passes == "1", *map(float, times))


def cases_from(first, each):
    """As corpus.cases(each), but with other numbers and thus other seeds."""
    for damage, severity, number in corpus.cases(each):
        shift = first * (corpus.MIXED if damage.__name__ == "mixture" else 1)
        yield damage, severity, number + shift


def mean(values):
    return sum(values) / max(1, len(values))


def table(found):
    rows = [row for rows in found.values() for row in rows]
    plain, passes = [row[0] for row in rows], [row[1] for row in rows]
    easy, hard = [row for row in rows if row[0]], [row for row in rows if not row[0]]
    yield f"Share of {len(rows)} pictures that are read, in per cent (95 % interval)"
    yield f"one plain reading by ZXing-C++   {interval(sum(plain), len(rows))}"
    yield f"all passes, nothing wrong        {interval(sum(passes), len(rows))}   {difference(passes, plain)} points"
    yield (f"milliseconds where the plain reading reads ({len(easy)}): it {mean([row[2] for row in easy]):.1f}, "
           f"the passes {mean([row[3] for row in easy]):.1f}")
    yield (f"milliseconds where it does not ({len(hard)}): it {mean([row[2] for row in hard]):.1f}, "
           f"the passes {mean([row[3] for row in hard]):.1f}, at the most {max([row[3] for row in hard], default=0):.0f}")
    yield ""
    yield f"{'damage':16}{'severity':10}{'pictures':>8}{'plain':>8}{'passes':>8}"
    for (damage, severity), those in found.items():
        one, all_of = (100 * mean([row[at] for row in those]) for at in (0, 1))
        yield f"{damage.replace('_', ' '):16}{corpus.SEVERITIES[severity]:10}{len(those):8}{one:8.0f}{all_of:8.0f}"


def main(programs, folder, name, each, first="0"):
    labels = printed(folder, programs, OF_EACH_PDF)
    if not labels:
        sys.exit(f"{folder}: no PDF")
    found = collections.defaultdict(list)
    with multiprocessing.Pool(PROCESSES, start, (programs, labels)) as pool:
        for (damage, severity, _number), row in pool.imap(compared, list(cases_from(int(first), int(each)))):
            found[damage.__name__, severity].append(row)
    os.makedirs(os.path.dirname(name) or ".", exist_ok=True)
    lines = list(table(found))
    with open(name, "w", encoding="utf-8") as file:
        file.write("\n".join(lines) + "\n")
    print("\n".join(lines))


if __name__ == "__main__":
    main(*sys.argv[1:])
