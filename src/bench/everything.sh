#!/usr/bin/env bash
# Prints all tables of docs/speed.md under their headings: src/bench/everything.sh [PYTHON [ROUNDS [MINUTES]]]
# Five rounds and a replay of ten minutes are what the tables show; one round and one minute try whether all runs.
set -euo pipefail
cd "$(dirname "$0")/../.."
python=${1:-python3}
rounds=${2:-5}
minutes=${3:-10}
# Classes as the bench profile makes them, then the jar and the launcher with its archive.
mvn -q -B -Pbench package -DskipTests -Dpmd.skip -Dspotless.check.skip
mvn -q -B dependency:build-classpath -Dmdep.outputFile=target/bench-classpath.txt -Dmdep.includeScope=test
path="target/classes:target/test-classes:$(cat target/bench-classpath.txt)"
java="java -XX:+UseSerialGC -cp $path"
heading() { printf '\n## %s\n' "$1"; }
heading "Whole commands"
$java railglow.process.WholeCommandTimes "$rounds" "$minutes"
heading "Streaming reduction, side by side"
"$python" src/bench/side-by-side.py "$rounds" "$python"
heading "A look"
$java -Xmx256m railglow.thermal.SpeedStudy
heading "A frame's way"
$java -Xmx700m railglow.run.reduction.FramePathStudy
heading "How it grows"
$java -Xmx700m railglow.thermal.ScalingStudy
heading "Processor and memory of a hunt"
"$python" src/bench/hunt-processor.py $((12 * rounds))
if [ "$rounds" -ge 3 ]; then
  heading "The same kernels with forks and errors (JMH)"
  mvn -q -B -Pbench exec:exec
fi
