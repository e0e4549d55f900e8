#!/usr/bin/env bash
# Makes all tables of docs/speed.md anew: src/bench/everything.sh [PYTHON [ROUNDS [MINUTES]]]
# Five rounds and a replay of ten minutes are what the page shows; one round and one minute try whether all runs, and
# then the page with its new tables is left in target/speed/speed.md only. A part that fails, or takes too long, keeps
# its old table and is named at the end with what it said; the others go on. LIMIT: seconds that all of it may take.
set -uo pipefail
cd "$(dirname "$0")/../.." || exit
python=${1:-python3}
rounds=${2:-5}
minutes=${3:-10}
limit=${LIMIT:-1500}
out=target/speed
page=docs/speed.md

# Classes as the bench profile makes them, then the jar and the launcher with its archive. Without a net if that will do.
made() {
  for net in -o ""; do
    mvn $net -q -B -Pbench package dependency:build-classpath -Dmdep.outputFile=target/bench-classpath.txt \
      -Dmdep.includeScope=test -DskipTests -Dpmd.skip -Dspotless.check.skip && return
  done
  return 1
}
made || {
  echo "FAILED: the program could not be built; nothing was measured." >&2
  exit 1
}
rm -rf "$out"
mkdir -p "$out"
path="target/classes:target/test-classes:$(cat target/bench-classpath.txt)"

failed=()
# NAME SECONDS HEADING COMMAND...: what a command prints becomes the table NAME, unless it fails or takes longer.
part() {
  local name=$1 most=$2 begun=$SECONDS
  printf '\n## %s\n' "$3"
  [ "$most" -le $((limit - SECONDS)) ] || most=$((limit - SECONDS))
  if [ "$most" -le 0 ]; then
    failed+=("$name: no time was left of $limit s")
  elif timeout -k 10 "$most" "${@:4}" >"$out/part" 2>"$out/$name.log" && [ -s "$out/part" ]; then
    mv "$out/part" "$out/$name.md"
    cat "$out/$name.md"
  else
    failed+=("$name: $([ $((SECONDS - begun)) -lt "$most" ] || echo "longer than $most s; ")$(tail -n 3 "$out/$name.log")")
    cat "$out/part" "$out/$name.log"
    echo "FAILED: $name"
  fi
  echo "($((SECONDS - begun)) s)"
}
java=(java -XX:+UseSerialGC -cp "$path")
study() { # NAME SECONDS HEADING CLASS ARGUMENTS...
  part "$1" "$2" "$3" "${java[@]}" -Xmx700m "${@:4}"
}

part machine 20 "Machine" src/bench/machine.sh "$rounds"
part commands 600 "Whole commands" "${java[@]}" railglow.process.WholeCommandTimes "$rounds" "$minutes"
part hunt 300 "Processor and memory of a hunt" "$python" src/bench/hunt-processor.py $((12 * rounds))
part streaming 500 "Streaming reduction, side by side" "$python" src/bench/side-by-side.py "$rounds" "$python"
study frame 120 "A frame's way" railglow.run.reduction.FramePathStudy
study look 120 "A look" railglow.thermal.SpeedStudy
study growth 200 "How it grows" railglow.thermal.ScalingStudy
if [ "$rounds" -ge 3 ]; then
  study hour 240 "An hour of frames" railglow.run.reduction.HourOfFramesStudy 60
  part kernels 400 "The same kernels with forks and errors" src/bench/kernels.sh "$path" "$python" "$out/jmh.csv"
else
  study hour 60 "An hour of frames" railglow.run.reduction.HourOfFramesStudy 6
fi
rm -f "$out/part"
"$python" src/bench/put-tables.py "$out" "$page" "$out/speed.md" || failed+=("the page was not written")
[ "$rounds" -lt 3 ] || [ ! -s "$out/speed.md" ] || cp "$out/speed.md" "$page"
printf '\nAll parts: %s s of %s.\n' "$SECONDS" "$limit"
[ ${#failed[@]} -eq 0 ] || {
  printf '\n%s\n' "######## FAILED: these parts gave no table; the page keeps their old ones ########" >&2
  printf '%s\n' "${failed[@]}" >&2
  exit 1
}
