#!/bin/sh
# Says in one line what the tables of docs/speed.md were made on: src/bench/machine.sh ROUNDS
echo "$(nproc) cores ($(sed -n 's/^model name[^:]*: *//p' /proc/cpuinfo | head -1)), Java" \
  "$(java -XshowSettings:properties -version 2>&1 | sed -n 's/^ *java.version = //p')," \
  "load before the first part $(cut -d' ' -f1 /proc/loadavg); $1 rounds."
