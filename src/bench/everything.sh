#!/usr/bin/env bash
# Makes all tables of docs/speed.md anew: src/bench/everything.sh [PYTHON [ROUNDS [MINUTES]]]
# Five rounds and a replay of ten minutes are what the page shows; one round and one minute try whether all runs, and
# then the page with its new tables is left in target/speed/speed.md only. A part that fails keeps its old table.
set -uo pipefail
cd "$(dirname "$0")/../.." || exit
python=${1:-python3}
rounds=${2:-5}
minutes=${3:-10}
out=target/speed
page=docs/speed.md

# Classes as the bench profile makes them, then the jar and the launcher with its archive.
mvn -q -B -Pbench package -DskipTests -Dpmd.skip -Dspotless.check.skip || exit
mvn -q -B -Pbench dependency:build-classpath -Dmdep.outputFile=target/bench-classpath.txt -Dmdep.includeScope=test || exit
rm -rf "$out"
mkdir -p "$out"
path="target/classes:target/test-classes:$(cat target/bench-classpath.txt)"

house() { java -XX:+UseSerialGC -cp "$path" "$@"; }
machine() {
  echo "$(nproc) cores ($(sed -n 's/^model name[^:]*: *//p' /proc/cpuinfo | head -1)), Java" \
    "$(java -XshowSettings:properties -version 2>&1 | sed -n 's/^ *java.version = //p')," \
    "load before the first part $(cut -d' ' -f1 /proc/loadavg); $rounds rounds."
}
jmh() {
  house org.openjdk.jmh.Main LookBenchmark -rf csv -rff "$out/jmh.csv" >"$out/jmh.log" &&
    "$python" src/bench/jmh-table.py "$out/jmh.csv"
}
failed=
part() { # NAME HEADING COMMAND...
  local name=$1 begun=$SECONDS
  printf '\n## %s\n' "$2"
  if "${@:3}" >"$out/part"; then
    mv "$out/part" "$out/$name.md"
    cat "$out/$name.md"
  else
    cat "$out/part"
    failed="$failed $name"
  fi
  echo "($((SECONDS - begun)) s)"
}

part machine "Machine" machine
part commands "Whole commands" house railglow.process.WholeCommandTimes "$rounds" "$minutes"
part streaming "Streaming reduction, side by side" "$python" src/bench/side-by-side.py "$rounds" "$python"
part look "A look" house -Xmx256m railglow.thermal.SpeedStudy
part frame "A frame's way" house -Xmx700m railglow.run.reduction.FramePathStudy
part growth "How it grows" house -Xmx700m railglow.thermal.ScalingStudy
part hunt "Processor and memory of a hunt" "$python" src/bench/hunt-processor.py $((12 * rounds))
if [ "$rounds" -ge 3 ]; then
  part kernels "The same kernels with forks and errors" jmh
fi
"$python" src/bench/put-tables.py "$out" "$page" "$out/speed.md" || exit
[ "$rounds" -lt 3 ] || cp "$out/speed.md" "$page"
[ -z "$failed" ] || {
  echo "failed:$failed" >&2
  exit 1
}
