#!/usr/bin/env python3
"""Makes a table of what JMH wrote: src/bench/jmh-table.py FILE.csv"""
import csv
import sys

print("| kernel | picture | ms | error (99.9 %) |\n|---|---|---|---|")
with open(sys.argv[1]) as file:
    for row in csv.DictReader(file):
        name = row["Benchmark"].rpartition(".")[2]
        size = row["Param: size"].replace("x", " x ")
        print(f"| `{name}` | {size} | {float(row['Score']):.3f} | {float(row['Score Error (99.9%)']):.3f} |")
