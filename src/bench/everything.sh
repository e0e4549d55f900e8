#!/usr/bin/env bash
# Prints all tables of docs/speed.md: src/bench/everything.sh [PYTHON]
set -euo pipefail
cd "$(dirname "$0")/../.."
python=${1:-python3}
mvn -q -B -Pbench test-compile -Dpmd.skip -Dspotless.check.skip
mvn -q -B dependency:build-classpath -Dmdep.outputFile=target/bench-classpath.txt
path="target/classes:target/test-classes:$(cat target/bench-classpath.txt)"
java="java -XX:+UseSerialGC -cp $path"
"$python" src/bench/side-by-side.py 5 "$python"
$java -Xmx256m railglow.thermal.SpeedStudy
$java -Xmx700m railglow.run.reduction.FramePathStudy
$java -Xmx700m railglow.thermal.ScalingStudy
RAILGLOW_CLASSPATH="$path" "$python" src/bench/hunt-processor.py 60
mvn -q -B -Pbench exec:exec
