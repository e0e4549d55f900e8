"""The streaming reduction with NumPy or OpenCV, as somebody who knows them would write it.

    python3 reduction.py numpy|numpy-stack|opencv FILE WIDTH HEIGHT FRAMES_PER_QUARTER PASSES RESULT

Prints the milliseconds of each pass. RESULT gets the planes meanI, meanC, squaresI, squaresC as float32.
"""
import os
import sys
import time

import numpy as np

kind, path, width, height, per, passes, result = sys.argv[1:8]
n, per, passes = int(width) * int(height), int(per), int(passes)
if kind == "opencv":
    import cv2

    cv2.setNumThreads(1)
cycles = os.path.getsize(path) // (2 * n * per * 4)
frame = np.empty(n, np.uint16)
stack = np.empty((per, n), np.uint16)
sums = np.zeros(n, np.uint32)
float_sums = np.zeros((int(height), int(width)), np.float32)
q = [np.zeros(n, np.float32) for _ in range(4)]
x, y, d, e = (np.zeros(n, np.float32) for _ in range(4))


def quarter_mean(file, first, into):
    """The mean of the next frames above the first frame of the run; that frame."""
    if kind == "numpy-stack":
        file.readinto(stack)
        first = stack[0].astype(np.int64) if first is None else first
        total = stack.sum(axis=0, dtype=np.uint32)
    else:
        sums.fill(0)
        float_sums.fill(0)
        for _ in range(per):
            file.readinto(frame)
            first = frame.astype(np.int64) if first is None else first
            if kind == "opencv":
                cv2.accumulate(frame.reshape(float_sums.shape), float_sums)
            else:
                np.add(sums, frame, out=sums)
        total = float_sums.ravel().astype(np.int64) if kind == "opencv" else sums
    np.multiply(total - per * first, 1.0 / per, out=into, casting="unsafe")
    return first


def moments(values, mean, squares, share):
    np.subtract(values, mean, out=d)
    np.multiply(d, np.float32(share), out=e)
    np.add(mean, e, out=mean)
    np.multiply(d, d, out=d)
    np.multiply(d, np.float32(1 - share), out=d)
    np.add(squares, d, out=squares)


for _ in range(passes):
    start = time.perf_counter()
    planes = [np.zeros(n, np.float32) for _ in range(4)]
    first = None
    with open(path, "rb", buffering=0) as file:
        for cycle in range(cycles):
            for quarter in range(4):
                first = quarter_mean(file, first, q[quarter])
            np.multiply(q[1] + q[2] - q[0] - q[3], np.float32(0.5), out=x)
            np.multiply(q[2] + q[3] - q[0] - q[1], np.float32(0.5), out=y)
            moments(x, planes[0], planes[2], 1 / (cycle + 1))
            moments(y, planes[1], planes[3], 1 / (cycle + 1))
    print(f"{(time.perf_counter() - start) * 1e3:.3f}", flush=True)
np.concatenate(planes).tofile(result)
