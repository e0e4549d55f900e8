#!/bin/sh
# Makes the tables of docs/detection.md anew, one after the other on one core, each in bounded time, into
# target/studies/NAME.md. Usage: src/bench/detection-studies.sh [MINUTES each may take, 40]
# -Drailglow.recordings=FOLDER in JAVA_OPTS adds the recordings to the table of false alarms.
set -eu
cd "$(dirname "$0")/../.."
minutes=${1:-40}
out=target/studies
mkdir -p "$out"
mvn -q test-compile dependency:build-classpath -Dmdep.outputFile="$out/classpath" -Dmdep.includeScope=test
classpath="target/classes:target/test-classes:$(cat "$out/classpath")"

study() {
  name=$1
  shift
  begun=$(date +%s)
  # shellcheck disable=SC2086
  timeout "${minutes}m" java ${JAVA_OPTS:-} -XX:+UseSerialGC -cp "$classpath" "$@" >"$out/$name.md" ||
    echo "not finished: stopped after $minutes min or failed" >>"$out/$name.md"
  echo "$name: $(($(date +%s) - begun)) s"
}

study scenarios railglow.sim.ScenarioStudy 20
study separation railglow.sim.SeparationStudy 12 3 4 5 6
study pulses railglow.sim.PulseStudy 16 1
study forecast railglow.thermal.ForecastStudy 15
study estimates railglow.thermal.EstimateStudy 400
study sensitivity railglow.thermal.SensitivityStudy 50 128 96 300
study false-alarms railglow.thermal.FalseAlarmStudy 1000 64 48 12
