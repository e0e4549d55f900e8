#!/usr/bin/env python3
"""Runs the streaming reduction in C, Java and Python side by side and prints ratios with their spread.

    src/bench/side-by-side.py [ROUNDS] [PYTHON]        from the repository's root, after mvn -Pbench test-compile

Needs gcc and NumPy; OpenCV takes part where the Python has it. Results are compared before anything is timed.
In each round every program runs once, in turn, twenty passes over a file in the page cache, of which the best of the
last ten counts; a ratio is that of C to the program in the same round. Printed: median (least to greatest).
"""
import atexit
import os
import shutil
import statistics
import subprocess
import sys
import tempfile

import numpy as np

rounds = int(sys.argv[1]) if len(sys.argv) > 1 else 5
python = sys.argv[2] if len(sys.argv) > 2 else sys.executable
here = os.path.dirname(os.path.abspath(__file__))
work = tempfile.mkdtemp(prefix="side-by-side-", dir=os.environ.get("BENCH_FOLDER"))
classes = os.path.join(here, "..", "..", "target", "classes") + ":" + os.path.join(here, "..", "..", "target", "test-classes")
atexit.register(shutil.rmtree, work, True)
native = os.path.join(work, "reduction")
subprocess.run(["gcc", "-O3", "-march=native", "-o", native, os.path.join(here, "c", "reduction.c")], check=True)
java = ["java", "-XX:+UseSerialGC", "-Xmx256m", "-cp", classes, "railglow.thermal.StreamingReduction"]
script = os.path.join(here, "python", "reduction.py")
programs = {
    "C, plain loop": [native],
    "Java, house, one thread": java + ["house"],
    "Java, house, two threads": java + ["house-2"],
    "Java, plain loop": java + ["plain"],
    "NumPy, frame by frame": [python, script, "numpy"],
    "NumPy, quarter as a stack": [python, script, "numpy-stack"],
    "OpenCV accumulate": [python, script, "opencv"],
}
# What is not all of the work, and gives no planes.
LIMITS = {"read() and sum only, C": [native], "Java, house, frames read only": java + ["read"]}
PASSES = 20
GOALS = {"Java, house, one thread": ("C, plain loop", 0.85), "Java, house, two threads": ("read() and sum only, C", 1.0)}


def without_what_python_lacks():
    """Somebody else's library may be absent or too new: the others go on without it."""
    for name, command in list(programs.items()):
        if command[0] == python:
            module = "cv2" if command[-1] == "opencv" else "numpy"
            ran = subprocess.run([python, "-c", "import " + module], capture_output=True, text=True)
            if ran.returncode:
                del programs[name]
                print(f"{name} took no part: {ran.stderr.strip().splitlines()[-1]}.\n")


without_what_python_lacks()


def make(width, height, frames):
    """A file of noisy frames; the noise of 16 frames again and again, on a slope in time."""
    random = np.random.default_rng(1)
    scene = 29000 + random.integers(0, 300, width * height)
    noise = random.normal(0, 5, (16, width * height))
    path = os.path.join(work, f"{width}x{height}.raw")
    with open(path, "wb") as file:
        for k in range(frames):
            file.write(np.rint(scene + noise[(k * 7 + k // 16) % 16] + 0.01 * k).astype("<u2").tobytes())
    return path


def millis(command, path, size, passes, result):
    width, height, per, _ = size
    arguments = [path, str(width), str(height), str(per), str(passes)] + ([result] if result else [])
    ran = subprocess.run(command + arguments, capture_output=True, text=True)
    if ran.returncode:
        sys.exit(f"{' '.join(command)} ended with {ran.returncode}:\n{ran.stderr}")
    return min(float(line) for line in ran.stdout.split()[-10:])


def compare(path, size):
    expected = None
    for name, command in programs.items():
        result = os.path.join(work, "result")
        millis(command, path, size, 1, result)
        planes = np.fromfile(result, np.float32)
        if expected is None:
            expected = planes
        worst = np.max(np.abs(planes - expected) / (np.abs(expected) + 1e-2))
        if planes.shape != expected.shape or not worst < 1e-3:
            sys.exit(f"{name} does not give what the others give: relative difference {worst:.1e}")
    print(f"all programs give the same planes within 1e-3 ({size[0]} x {size[1]})\n")


for size in [(256, 192, 12, 40), (640, 512, 30, 6)]:
    width, height, per, cycles = size
    path = make(width, height, 4 * per * cycles)
    compare(path, size)
    times = {name: [] for name in [*LIMITS, *programs]}
    for _ in range(rounds):
        for name, command in LIMITS.items():
            times[name].append(millis(command, path, size, PASSES, None))
        for name, command in programs.items():
            times[name].append(millis(command, path, size, PASSES, os.path.join(work, "result")))
    base = times["C, plain loop"]
    bytes_read = os.path.getsize(path)
    print(f"| {width} x {height}, {bytes_read / 1e6:.0f} MB | GB/s | rate against C | goal |\n|---|---|---|---|")
    for name, values in times.items():
        ratios = [c / v for c, v in zip(base, values)]
        rate = bytes_read / 1e6 / statistics.median(values)
        goal = ""
        if name in GOALS:
            other, least = GOALS[name]
            reached = statistics.median(o / v for o, v in zip(times[other], values))
            goal = f"{least} of {other}: {reached:.2f}, {'met' if reached >= least else 'missed'}"
        spread = f"{statistics.median(ratios):.2f} ({min(ratios):.2f} to {max(ratios):.2f})"
        print(f"| {name} | {rate:.2f} | {spread} | {goal} |")
    print(flush=True)
    os.remove(path)
