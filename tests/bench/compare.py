# Runs every program of tests/bench on the same labels and prints a table of ratios.
"""python3 compare.py PROGRAMS WORK-FOLDER [--long], from the top of the tree."""
import glob
import os
import shutil
import statistics
import subprocess
import sys
import time

PROGRAMS, WORK, *FLAGS = sys.argv[1:]
BENCH = "tests/bench"
FONTS = "fonts"
AT = "2026-11-25T18:00"
BATCHES, CONTAINERS = 200, 100  # the run that is timed
LONG_RUNS = [10, 100, 1000] + ([10000] if "--long" in FLAGS else [])  # batches of as many containers
FEW = 10  # containers in a small batch
EACH_NTH = 5  # of the labels are drawn by cairo
EACH_TENTH = 10  # of these by ReportLab
ROUNDS = 3
STARTS = 41
CORES = sorted(os.sched_getaffinity(0))[:2]


def path(name):
    return os.path.join(WORK, name)


class Spent:
    """What one run of a program took: processor seconds, seconds of the clock, and the most memory it held, in bytes."""

    def __init__(self, command):
        clock = time.monotonic()
        child = os.posix_spawn(command[0], command, os.environ, file_actions=[
            (os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)])
        _, status, usage = os.wait4(child, 0)
        if status != 0:
            sys.exit(f"{' '.join(command)}: failed")
        self.clock = time.monotonic() - clock
        self.cpu = usage.ru_utime + usage.ru_stime
        self.memory = usage.ru_maxrss * 1024


def lardiner(kitchen, records, out):
    return [f"{PROGRAMS}/lardiner", "--kitchen", kitchen, "--at", AT, "labels", records, "--out", out, "--replace"]


def reported(*command):
    """The "name value" lines that a program prints."""
    text = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True).stdout
    return {name: float(value) for name, value in map(str.split, text.splitlines())}


def reported_together(*commands):
    """The same of several programs at once."""
    running = [subprocess.Popen(command, stdout=subprocess.PIPE, text=True) for command in commands]
    texts = [program.communicate()[0] for program in running]
    if any(program.returncode for program in running):
        sys.exit(f"{commands}: failed")
    return [{name: float(value) for name, value in map(str.split, text.splitlines())} for text in texts]


def write_records(name, batches, containers):
    with open(path(name), "w", encoding="utf-8") as file:
        subprocess.run([sys.executable, f"{BENCH}/records.py", str(batches), str(containers)], check=True, stdout=file)
    return path(name)


def middle(command):
    return statistics.median(Spent(command).cpu for _ in range(ROUNDS))


def row(what, ours, theirs, ratio, aim, met):
    print(f"{what:<50} {ours:>10} {theirs:>10} {ratio:>6} {aim:>8}  {'met' if met else 'MISSED'}")


def a_second(labels):
    return f"{labels:,.0f}/s"


def speed():
    records = write_records("day.csv", BATCHES, CONTAINERS)
    ours = reported(f"{PROGRAMS}/bench_labels", ".", "samples/kitchen", records, path("content"), str(EACH_NTH))
    cairo = [reported(f"{PROGRAMS}/bench_cairo", FONTS, path("content"), path("cairo.pdf")) for _ in range(ROUNDS)]
    reportlab = reported(sys.executable, f"{BENCH}/with_reportlab.py", FONTS, path("content"), path("reportlab.pdf"),
                         str(EACH_TENTH), "0")
    program = middle(lardiner("samples/kitchen", records, path("day")))

    count = ours["labels"]
    whole, beforehand = count / ours["whole"], count / ours["beforehand"]
    zxing, file_to_pdf = count / ours["zxing"], count / program
    theirs = reportlab["labels"] / reportlab["seconds"]
    row("records in memory to PDF : ReportLab", a_second(whole), a_second(theirs), f"{whole / theirs:.1f}", ">= 40",
        whole >= 40 * theirs)
    theirs = cairo[0]["labels"] / statistics.median(c["seconds"] for c in cairo)
    row("the same, QR made before : cairo + Pango", a_second(beforehand), a_second(theirs),
        f"{beforehand / theirs:.1f}", ">= 12", beforehand >= 12 * theirs)
    row("record file to PDF files : ZXing alone", a_second(file_to_pdf), a_second(zxing),
        f"{file_to_pdf / zxing:.2f}", ">= 0.60", file_to_pdf >= 0.6 * zxing)
    return ours, program


def cold_start():
    one = write_records("one.csv", 1, 1)
    commands = {"demo": lardiner("samples/kitchen", one, path("one.pdf")),
                "small": lardiner(f"{BENCH}/kitchen", f"{BENCH}/kitchen/records/one.csv", path("small.pdf")),
                "bare": [f"{PROGRAMS}/bench_libharu", FONTS, path("bare.pdf")]}
    spent = {name: [] for name in commands}
    for _ in range(STARTS):  # in turn, so that a busy moment touches all
        for name, command in commands.items():
            spent[name].append(Spent(command).cpu)
    took = {name: statistics.median(times) for name, times in spent.items()}
    for name, what in (("demo", "the demo kitchen"), ("small", "a kitchen of one product")):
        ratio = took[name] / took["bare"]
        row(f"cold start, {what} : libharu", f"{took[name] * 1000:.1f} ms", f"{took['bare'] * 1000:.1f} ms",
            f"{ratio:.2f}", "<= 3", ratio <= 3)


def reportlab_on_two_cores():
    """ReportLab has one thread: two processes share the labels."""
    halves = reported_together(*[[sys.executable, f"{BENCH}/with_reportlab.py", FONTS, path("content"),
                                  path(f"reportlab-{first}.pdf"), str(EACH_TENTH), str(first)] for first in (0, 1)])
    return sum(half["labels"] for half in halves) / max(half["clock"] for half in halves)


def zxing_on_two_cores():
    alone = reported(f"{PROGRAMS}/bench_zxing", path("content"), "2")
    return alone["labels"] / alone["seconds"]


def two_cores():
    """By the clock, each pinned to the same two processors, in turn, the best of each: what else runs disturbs all."""
    if len(CORES) < 2:
        return print("two cores: there is one only")
    os.sched_setaffinity(0, CORES)
    program = lardiner("samples/kitchen", path("day.csv"), path("day"))
    count = BATCHES * CONTAINERS
    ours, theirs, zxing = 0, 0, 0
    for _ in range(ROUNDS):
        ours = max(ours, count / Spent(program).clock)
        zxing = max(zxing, zxing_on_two_cores())
        theirs = max(theirs, reportlab_on_two_cores())
    row("two cores, record file to PDF files : ReportLab", a_second(ours), a_second(theirs), f"{ours / theirs:.1f}",
        ">= 40", ours >= 40 * theirs)
    row("two cores, record file to PDF files : ZXing alone", a_second(ours), a_second(zxing), f"{ours / zxing:.2f}",
        ">= 0.60", ours >= 0.6 * zxing)


def size():
    """What a label adds to its PDF: two runs that differ in labels alone have the same faces in them."""
    bytes_of = {}
    for batches, containers in ((4, 1), (400, FEW)):
        records = write_records("few.csv", batches, containers)
        Spent(lardiner("samples/kitchen", records, path("few")))
        bytes_of[batches * containers] = sum(map(os.path.getsize, glob.glob(path("few/*.pdf"))))
    (least, small), (most, large) = bytes_of.items()
    each = (large - small) / (most - least)
    row(f"bytes of PDF a label beyond the faces, batches of {FEW}", f"{each:.0f}", "", "", "<= 1024", each <= 1024)


def long_runs():
    limit = 128 * 2**20
    first = None
    for batches in LONG_RUNS:
        labels = batches * CONTAINERS
        records = write_records("long.csv", batches, CONTAINERS)
        spent = Spent(lardiner("samples/kitchen", records, path("long")))
        shutil.rmtree(path("long"))
        each = spent.cpu / labels * 1e6
        first = first or each
        row(f"memory of {labels:,} labels from {batches:,} records", f"{spent.memory / 2**20:.0f} MB", "", "",
            "< 128 MB", spent.memory < limit)
        row("processor time a label, against that of the first", f"{each:.0f} us", f"{first:.0f} us",
            f"{each / first:.2f}", "<= 1.10", each <= 1.1 * first)


def main():
    shutil.rmtree(WORK, ignore_errors=True)
    os.makedirs(WORK)
    print("Processor time, on one thread where two cores are not named; the load of the machine at the start was "
          f"{os.getloadavg()[0]:.1f} on {os.cpu_count()} processors.")
    print(f"{'':<50} {'Lardiner':>10} {'the other':>10} {'ratio':>6} {'aim':>8}")
    ours, program = speed()
    cold_start()
    two_cores()
    size()
    long_runs()
    each = ours["labels"] / 1e6
    print(f"\n{ours['labels']:,.0f} labels in {ours['runs']:.0f} runs, addresses of {ours['shortest_uri']:.0f} to "
          f"{ours['longest_uri']:.0f} bytes,")
    print(f"{ours['bytes'] / ours['labels']:.0f} bytes of PDF each. Microseconds a label:")
    pages = ours["beforehand"] - ours["facts"] - ours["layout"]
    parts = {"facts": ours["facts"], "layout": ours["layout"], "pages": pages, "ZXing": ours["zxing"],
             "whole in memory": ours["whole"], "record file to PDF files": program}
    print("  ".join(f"{name} {seconds / each:.1f}" for name, seconds in parts.items()))


main()
