#!/bin/sh
# Runs the kernels with forks and errors (JMH) and prints them as a table: src/bench/kernels.sh CLASSPATH PYTHON RESULT.csv
set -eu
java -XX:+UseSerialGC -cp "$1" org.openjdk.jmh.Main 'LookBenchmark|FrameCodecBenchmark' -foe true -rf csv -rff "$3" >&2
"$2" "$(dirname "$0")/jmh-table.py" "$3"
