"""The parts of `tests/bench` that are measured from outside: the same sums in another language, and start-up.

    bench.py sums DATA.csv FULL_NS FIGURES_NS DIVISION_NS
    bench.py startup EMPTY_PROGRAM TENTER
    bench.py log BENCH_LOG TENTER FOLDER
    bench.py book BENCH_LOG TENTER FOLDER VISIT MODULES

Needs the library `uncertainties` for `sums`; `tests/bench` installs it.
"""

import csv
import json
import math
import os
import shutil
import statistics
import subprocess
import sys
import time

STEPS_PER_MM = 1600
AGREE_WITHIN = 1e-3  # Points, for values and standard uncertainties alike.
PASSES = 3
RUNS = 200
CHECK = ["check", "--marks", "10cm", "--to", "10.5cm", "--wants", "5%"]
LOGS = [1_000, 100_000, 1_000_000]  # Pulls, four in each test, five tests of each fabric.
CLOSE = 3  # Exit code: 5 % read where 5 % is asked is a coin toss.


def sums(row):
    """Stretch, growth and recovery in percent; each length carries the error of its reading, the gauge a shared one."""
    from uncertainties import ufloat

    u = row["division"] / math.sqrt(12)
    gauge = ufloat(row["gauge"], u)
    pulls = [ufloat(row[f"pull{i}"], u) for i in range(1, 6)]
    recovered = ufloat(row["recovered"], u)
    stretch = 100 * (sum(pulls) / 5 - gauge) / gauge
    growth = 100 * (recovered - gauge) / gauge
    # The rest was read after the last pull, so its recovery is that pull's.
    recovery = 100 * (pulls[4] - recovered) / (pulls[4] - gauge)
    return [(figure.nominal_value, figure.std_dev) for figure in (stretch, growth, recovery)]


def compare_sums(path, full_ns, figures_ns, division_ns):
    """Checks that both sides agree, then prints what each costs per test."""
    lengths = ["division", "gauge", "pull1", "pull2", "pull3", "pull4", "pull5", "recovered"]
    names = ["stretch", "growth", "recovery"]
    with open(path, newline="") as file:
        rows = list(csv.DictReader(file))
    if not rows:
        sys.exit("no tests to compare")
    tests = [{name: int(row[name]) / STEPS_PER_MM for name in lengths} for row in rows]

    times = []
    for _ in range(PASSES):
        start = time.perf_counter()
        results = [sums(test) for test in tests]
        times.append((time.perf_counter() - start) / len(tests) * 1e9)
    python_ns = min(times)

    worst = 0.0
    for row, result in zip(rows, results, strict=True):
        for name, (value, u) in zip(names, result, strict=True):
            apart = max(abs(value - float(row[name])), abs(u - float(row["u_" + name])))
            worst = max(worst, apart)
            if not apart <= AGREE_WITHIN:
                sys.exit(f"{name} differs: core {row[name]} ± {row['u_' + name]}, uncertainties {value} ± {u} for {row}")
    print(f"core and uncertainties agree on {len(tests)} tests: at most {worst:.1e} points apart")

    print(f"{'per test':34}{'ns':>12}{'times plain division':>22}{'uncertainties takes':>22}")
    for name, ns in [
        ("plain division (core's language)", division_ns),
        ("core, figures only", figures_ns),
        ("core, full evaluation", full_ns),
        ("uncertainties, figures only", python_ns),
    ]:
        print(f"{name:34}{ns:12.1f}{ns / division_ns:22.1f}{python_ns / ns:16.0f} times")


def run(program, arguments, wanted):
    """Seconds from starting a program to its end, its output thrown away."""
    silent = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
    start = time.perf_counter()
    child = os.posix_spawn(program, [program, *arguments], os.environ, file_actions=silent)
    _, status = os.waitpid(child, 0)
    taken = time.perf_counter() - start
    code = os.waitstatus_to_exitcode(status)
    if code != wanted:
        sys.exit(f"{program} ended with {code}, not {wanted}")
    return taken


def compare_startup(empty, tenter):
    """Prints median times; the programs take turns, so that a busy moment hits both."""
    times = [(run(empty, [], 0), run(tenter, CHECK, CLOSE)) for _ in range(RUNS)]
    empty_ms, tenter_ms = (1e3 * statistics.median(column) for column in zip(*times, strict=True))
    print(f"median of {RUNS} runs: empty program {empty_ms:.2f} ms, tenter check {tenter_ms:.2f} ms, ratio {tenter_ms / empty_ms:.2f}")


def peak_megabytes(program, arguments):
    """The most memory that a program held, its output thrown away."""
    silent = [(os.POSIX_SPAWN_OPEN, 1, os.devnull, os.O_WRONLY, 0)]
    child = os.posix_spawn(program, [program, *arguments], os.environ, file_actions=silent)
    _, status, usage = os.wait4(child, 0)
    if os.waitstatus_to_exitcode(status) not in (0, 1, 3):
        sys.exit(f"{program} {arguments} ended with {status}")
    return usage.ru_maxrss / 1024


def measure_log(bench_log, tenter, folder):
    """Questions to generated logs of three sizes, and the question of `fit` in plain SQL beside it."""
    print(f"{'pulls':>9}{'fit ms':>9}{'SQL ms':>9}{'fit/SQL':>9}{'list ms':>9}{'export ms':>11}{'import s':>10}{'file MB':>9}{'fit MB':>8}"
          f"{'server: fit ms':>16}{'/ file':>8}{'import s':>10}{'MB':>8}")
    for pulls in LOGS:
        file = os.path.join(folder, f"{pulls}.sqlite3")
        output = subprocess.run([bench_log, str(pulls), file], check=True, capture_output=True, text=True).stdout
        got = {name: float(value) for name, value in (line.split() for line in output.splitlines())}
        memory = peak_megabytes(tenter, ["--db", file, "fit", "Measured coat", "A"])
        size = os.path.getsize(file) / 1e6
        print(
            f"{pulls:9}{got['fit']:9.1f}{got['sql']:9.1f}{got['fit'] / got['sql']:9.2f}{got['list']:9.1f}"
            f"{got['export']:11.1f}{got['import'] / 1e3:10.2f}{size:9.1f}{memory:8.0f}"
            f"{got['server_fit']:16.1f}{got['server_fit'] / got['fit']:8.2f}{got['server_import'] / 1e3:10.2f}"
            f"{got['server_bytes'] / 1e6:8.1f}"
        )


# How long until the page is there, until a link has led to its last fabric, and until a search has an answer.
OPENED = """(async () => {
    const frame = () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)));
    const load = performance.getEntriesByType("navigation")[0].loadEventEnd;
    let start = performance.now();
    const all = document.querySelectorAll("article");
    location.hash = all[all.length - 1].id;
    await frame();
    const scroll = performance.now() - start;
    start = performance.now();
    const words = document.querySelector("input[name=words]");
    words.value = "vestry twill";
    words.dispatchEvent(new Event("input", { bubbles: true }));
    await frame();
    return [load, scroll, performance.now() - start, document.querySelector("output").value];
})()"""


def measure_book(bench_log, tenter, folder, visit, modules):
    """A swatch book of two thousand fabrics: how long it takes to make, how large it is, how it opens."""
    log = os.path.join(folder, "book.sqlite3")
    subprocess.run([bench_log, "40000", log], check=True, capture_output=True)
    print(f"{'book of 2000 fabrics':<24}{'made ms':>9}{'MB':>6}{'open ms':>9}{'link ms':>8}{'find ms':>9}  found")
    for name, view in ("alone", []), ("beside six roles", ["--view", "Measured coat", "A"]):
        file = os.path.join(folder, "book.html")
        made = []
        for _ in range(5):
            start = time.perf_counter()
            subprocess.run([tenter, "--db", log, "report", "book", *view, "--out", file], check=True, capture_output=True)
            made.append(1000 * (time.perf_counter() - start))
        look = {"width": 360, "height": 780, "dark": False, "script": OPENED}
        job = {"browser": shutil.which("chromium"), "file": file, "views": [look] * 3}
        seen = subprocess.run(["node", visit, modules], input=json.dumps(job), check=True, capture_output=True, text=True)
        opened = [view["result"] for view in json.loads(seen.stdout)["views"]]
        load, scroll, find = (min(one[at] for one in opened) for at in range(3))
        size = os.path.getsize(file) / 1e6
        print(f"{name:<24}{min(made):9.0f}{size:6.1f}{load:9.0f}{scroll:8.0f}{find:9.0f}  {opened[0][3]}")


if __name__ == "__main__":
    match sys.argv[1:]:
        case ["sums", path, *times] if len(times) == 3:
            compare_sums(path, *map(float, times))
        case ["startup", empty, tenter]:
            compare_startup(empty, tenter)
        case ["log", bench_log, tenter, folder]:
            measure_log(bench_log, tenter, folder)
        case ["book", bench_log, tenter, folder, visit, modules]:
            measure_book(bench_log, tenter, folder, visit, modules)
        case _:
            sys.exit(__doc__)
