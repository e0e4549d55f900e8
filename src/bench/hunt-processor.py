#!/usr/bin/env python3
"""Says what share of a core a hunt takes with a camera of 640 x 512 at 60 Hz, which of its threads take it, and how
much memory.

    src/bench/hunt-processor.py [SECONDS]        from the repository's root, after mvn package; needs NumPy

The hunt is started by the launcher, with a heap of 256 MiB; the supply is the simulated one and the camera this
script, each in a process of its own, which are not counted. Shares are processor time over wall time of each cycle from 5 s
after the start of the run's frames to its last cycle: starting up and the report are not in it.
"""
import collections
import os
import re
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import threading
import time

import numpy as np

seconds = int(sys.argv[1]) if len(sys.argv) > 1 else 60
W, H, RATE = 640, 512, 60
CYCLE = 2
root = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..")
jar = ["-jar", os.path.join(root, "target", "railglow.jar")]
folder = tempfile.mkdtemp(prefix="hunt-processor-")
random = np.random.default_rng(1)
scene = np.full((H, W), 29000.0)
for _ in range(800):
    x, y, w, h = random.integers(0, W), random.integers(0, H), *random.integers(4, 30, 2)
    scene[y : y + h, x : x + w] = 29000 + random.integers(0, 300)
images = [np.rint(scene + random.normal(0, 5, scene.shape)).astype("<u2").tobytes() for _ in range(32)]


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


def serve(listener):
    while True:
        client, _ = listener.accept()
        begin, sent = time.monotonic(), 0
        try:
            while True:
                client.sendall(images[int(random.integers(32))])
                sent += 1
                time.sleep(max(0, begin + sent / RATE - time.monotonic()))
        except OSError:
            client.close()


def cpu_seconds(pid):
    with open(f"/proc/{pid}/stat") as file:
        fields = file.read().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def by_thread(pid):
    """Processor seconds of each thread so far; those of the compiler and of the virtual machine as one each."""
    seconds = collections.Counter()
    for task in os.listdir(f"/proc/{pid}/task"):
        try:
            with open(f"/proc/{pid}/task/{task}/stat") as file:
                head, _, tail = file.read().rpartition(")")
        except OSError:
            continue  # it has ended
        name = head.partition("(")[2]
        name = "compiling" if re.match("C[12] Comp", name) else "collecting garbage" if name.startswith("VM ") else name
        seconds[name] += sum(int(ticks) for ticks in tail.split()[11:13]) / os.sysconf("SC_CLK_TCK")
    return seconds


def resident_mib(pid):
    with open(f"/proc/{pid}/status") as file:
        return next(int(line.split()[1]) / 1024 for line in file if line.startswith("VmHWM"))


listener = socket.create_server(("127.0.0.1", 0))
threading.Thread(target=serve, args=(listener,), daemon=True).start()
supply_port = free_port()
simulated = subprocess.Popen(
    ["java", "-XX:+UseSerialGC", *jar, "simulate", f"--supply-port={supply_port}", "--camera-port=0"],
    stdout=subprocess.DEVNULL,
)
time.sleep(4)
with open(os.path.join(folder, "camera.yaml"), "w") as file:
    file.write(
        f"name: large camera\nframe:\n  width: {W}\n  height: {H}\n  sample: u16\n  byte-order: little\n"
        f"rate: {RATE} Hz\nlatency: 20 ms\ntime-constant: 10 ms\nshutter-settling: 2 s\n"
        "scale:\n  kelvin-per-count: 10 mK\n  celsius-at-zero: -273.15 degC\n"
    )
shutil.copy(os.path.join(root, "instruments", "supply-simulated.yaml"), folder)
with open(os.path.join(root, "instruments", "bench-simulated.yaml")) as file:
    bench = file.read()
bench = bench.replace("tcp://127.0.0.1:5025", f"tcp://127.0.0.1:{supply_port}")
bench = bench.replace("camera-simulated.yaml", "camera.yaml")
bench = bench.replace("tcp://127.0.0.1:5600", f"tcp://127.0.0.1:{listener.getsockname()[1]}")
with open(os.path.join(folder, "bench.yaml"), "w") as file:
    file.write(bench)
cycles = max(5, seconds // 2)
# The launcher becomes the hunt's own process.
hunt = subprocess.Popen(
    [os.path.join(root, "target", "railglow"), "hunt", f"--bench={folder}/bench.yaml", "--without-board",
     f"--cycles-at-most={cycles}", f"--runs={folder}/runs"],
    stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, env={**os.environ, "JDK_JAVA_OPTIONS": "-Xmx256m"},
)
text = []
threading.Thread(target=lambda: text.extend(hunt.stdout), daemon=True).start()


def run_begun():
    runs = os.path.join(folder, "runs")
    return any("journal.jsonl" in files for _, _, files in os.walk(runs)) if os.path.isdir(runs) else False


while hunt.poll() is None and not run_begun():
    time.sleep(0.05)
time.sleep(5)
# Lead-in of 2 s, then the cycles; a look comes at the end of each: shares are taken of whole cycles.
shares = []
begun, threads = time.monotonic(), by_thread(hunt.pid)
end = time.monotonic() + 2 * cycles + 2 - 5 - 0.5
while hunt.poll() is None and (time.monotonic() + CYCLE < end or not shares):
    wall, busy = time.monotonic(), cpu_seconds(hunt.pid)
    time.sleep(CYCLE)
    if hunt.poll() is None:
        shares.append(100 * (cpu_seconds(hunt.pid) - busy) / (time.monotonic() - wall))
        most = resident_mib(hunt.pid)
        taken, lasted = by_thread(hunt.pid), time.monotonic() - begun
code = hunt.wait()
simulated.terminate()
simulated.wait()
print("".join(text[-12:]), "exit code ", code, sep="", file=sys.stderr)
subprocess.run(["rm", "-r", folder], check=True)
if code or not shares:
    sys.exit("the hunt did not go through to its end")
mean = statistics.mean(shares)
print("| camera | share of one core, mean (least to most of a cycle) | resident at most, heap of 256 MiB | goal |")
print("|---|---|---|---|")
print(
    f"| {W} x {H} at {RATE} Hz | {mean:.0f} % ({min(shares):.0f} to {max(shares):.0f}) | {most:.0f} MiB "
    f"| 40 %, {'met' if mean < 40 else 'missed'} |"
)
print("\n| thread | share of one core, mean |\n|---|---|")
taken.subtract(threads)
for name, spent in taken.most_common(6):
    print(f"| {name} | {100 * spent / lasted:.1f} % |")
