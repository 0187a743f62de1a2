# Runs every program of tests/bench on the same labels and prints a table of ratios.
"""python3 compare.py PROGRAMS WORK-FOLDER, from the top of the tree."""
import os
import shutil
import statistics
import subprocess
import sys

PROGRAMS, WORK = sys.argv[1:]
BENCH = "tests/bench"
FONTS = "fonts"
AT = "2026-11-25T18:00"
BATCHES, CONTAINERS = 200, 100  # the run that is timed
LONG_BATCHES, LONG_CONTAINERS = 1000, 200  # the run whose memory is measured
EACH_NTH = 5  # of the labels are drawn by cairo
EACH_TENTH = 10  # of these by ReportLab
ROUNDS = 3
STARTS = 41


def path(name):
    return os.path.join(WORK, name)


class Spent:
    """What one run of a program took: processor seconds and the most memory it held, in bytes."""

    def __init__(self, command):
        child = os.posix_spawn(command[0], command, os.environ, file_actions=[
            (os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)])
        _, status, usage = os.wait4(child, 0)
        if status != 0:
            sys.exit(f"{' '.join(command)}: failed")
        self.cpu = usage.ru_utime + usage.ru_stime
        self.memory = usage.ru_maxrss * 1024


def lardiner(kitchen, records, out):
    return [f"{PROGRAMS}/lardiner", "--kitchen", kitchen, "--at", AT, "labels", records, "--out", out, "--replace"]


def reported(*command):
    """The "name value" lines that a program prints."""
    text = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True).stdout
    return {name: float(value) for name, value in map(str.split, text.splitlines())}


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
                         str(EACH_TENTH))
    program = middle(lardiner("samples/kitchen", records, path("day")))

    count = ours["labels"]
    whole, beforehand = count / ours["whole"], count / ours["beforehand"]
    zxing, file_to_pdf = count / ours["zxing"], count / program
    theirs = reportlab["labels"] / reportlab["seconds"]
    row("1 records in memory to PDF : ReportLab", a_second(whole), a_second(theirs), f"{whole / theirs:.1f}", ">= 20",
        whole >= 20 * theirs)
    theirs = cairo[0]["labels"] / statistics.median(c["seconds"] for c in cairo)
    row("2 the same, QR made before : cairo + Pango", a_second(beforehand), a_second(theirs),
        f"{beforehand / theirs:.1f}", ">= 8", beforehand >= 8 * theirs)
    row("3 record file to PDF files : ZXing alone", a_second(file_to_pdf), a_second(zxing),
        f"{file_to_pdf / zxing:.2f}", ">= 0.70", file_to_pdf >= 0.7 * zxing)
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
        row(f"4 cold start, {what} : libharu", f"{took[name] * 1000:.1f} ms", f"{took['bare'] * 1000:.1f} ms",
            f"{ratio:.2f}", "<= 3", ratio <= 3)


def memory():
    records = write_records("long.csv", LONG_BATCHES, LONG_CONTAINERS)
    spent = Spent(lardiner("samples/kitchen", records, path("long")))
    shutil.rmtree(path("long"))
    limit = 128 * 2**20
    row(f"5 memory of {LONG_BATCHES * LONG_CONTAINERS:,} labels", f"{spent.memory / 2**20:.0f} MB", "", "", "< 128 MB",
        spent.memory < limit)


def main():
    shutil.rmtree(WORK, ignore_errors=True)
    os.makedirs(WORK)
    print("Processor time, one thread each; the load of the machine at the start was "
          f"{os.getloadavg()[0]:.1f} on {os.cpu_count()} processors.")
    print(f"{'':<50} {'Lardiner':>10} {'the other':>10} {'ratio':>6} {'aim':>8}")
    ours, program = speed()
    cold_start()
    memory()
    each = ours["labels"] / 1e6
    print(f"\n{ours['labels']:,.0f} labels in {ours['runs']:.0f} runs, addresses of {ours['shortest_uri']:.0f} to "
          f"{ours['longest_uri']:.0f} bytes,")
    print(f"{ours['bytes'] / ours['labels']:.0f} bytes of PDF each. Microseconds a label:")
    pages = ours["beforehand"] - ours["facts"] - ours["layout"]
    parts = {"facts": ours["facts"], "layout": ours["layout"], "pages": pages, "ZXing": ours["zxing"],
             "whole in memory": ours["whole"], "record file to PDF files": program}
    print("  ".join(f"{name} {seconds / each:.1f}" for name, seconds in parts.items()))


main()
