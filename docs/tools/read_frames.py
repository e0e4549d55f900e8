#!/usr/bin/env python3
"""Reads the frames of a run folder (docs/run-folder.md) without Railglow, into NumPy arrays.

    python3 read_frames.py frames.rgf            lists number, arrival, marks and mean of each frame
    python3 read_frames.py frames.rgf out.npy    writes all frames as one NPY file
"""
import json
import struct
import sys
import zlib

import numpy as np


def rice(data, width, height, before, means, independent):
    bits = np.unpackbits(np.frombuffer(data, np.uint8)).tolist()
    place = 0

    def take(length):
        nonlocal place
        value = 0
        for bit in bits[place:place + length]:
            value = value << 1 | bit
        place += length
        return value

    frame = [[0] * width for _ in range(height)]
    for row in range(height):
        head = take(8)
        k, prediction = head & 15, head >> 4
        left = frame[row - 1][0] if row else 0
        for column in range(width):
            if k == 15:
                value = take(16)
            else:
                zeros = 0
                while not bits[place]:
                    zeros += 1
                    place += 1
                place += 1
                code = zeros << k | take(k) if zeros < 12 else take(16)
                difference = code >> 1 if code % 2 == 0 else -(code >> 1) - 1
                base = (left, before[row][column], (means[row][column] + 128) >> 8)[prediction]
                value = (base + difference) & 0xFFFF
            frame[row][column] = left = value
    for row in range(height):
        for column in range(width):
            count = frame[row][column] << 8
            means[row][column] += count if independent else (count - means[row][column]) >> 3
            if independent:
                means[row][column] = count
            before[row][column] = frame[row][column]
    return np.array(frame, "<u2")


def xor_deflate(data, width, height, before, independent):
    if data[0] == 0:
        bits = np.frombuffer(data, "<u4", offset=1)
    else:
        planes = np.frombuffer(zlib.decompress(data[1:]), np.uint8).reshape(4, -1)
        bits = sum(planes[i].astype(np.uint32) << 24 - 8 * i for i in range(4)).astype(np.uint32)
        if not independent:
            bits = bits ^ before
    before[:] = bits
    return bits.astype("<u4").view("<f4").reshape(height, width)


def frames(path):
    """Yields (number, arrival in nanoseconds, marks, array) of each frame."""
    with open(path, "rb") as file:
        header = json.loads(file.readline())
        width, height = header["width"], header["height"]
        before = [[0] * width for _ in range(height)]
        means = [[0] * width for _ in range(height)]
        bits = np.zeros(width * height, np.uint32)
        while len(head := file.read(48)) == 48:
            magic, size, number, arrival, _, marks, kind, _, _ = struct.unpack("<4sIqqqIIII", head)
            if magic != b"RGF1":
                raise ValueError("bytes that are no frame")
            if kind == 2:
                return
            data = file.read(size)
            if len(data) < size:
                return
            if header["codec"] == "rice":
                image = rice(data, width, height, before, means, kind == 0)
            elif header["codec"] == "xor-deflate":
                image = xor_deflate(data, width, height, bits, kind == 0)
            else:
                kinds = {"uint16": "<u2", "float32": "<f4"}
                image = np.frombuffer(data, kinds[header["sampleType"]]).reshape(height, width)
            yield number, arrival, marks, image


if __name__ == "__main__":
    if len(sys.argv) > 2:
        np.save(sys.argv[2], np.array([image for _, _, _, image in frames(sys.argv[1])]))
    else:
        for number, arrival, marks, image in frames(sys.argv[1]):
            print(number, arrival, marks, float(image.mean(dtype=np.float64)))
