#!/usr/bin/env bash
# Makes the tables of docs/detection.md anew and puts them between their marks in the page:
#   src/bench/detection-studies.sh [MINUTES [NAME...]]
# MINUTES (120) bound all of it together. Without a NAME every table is made, the quick ones first; any one of them
# takes at most about 20 minutes on two quiet cores. A study that fails or runs out of time keeps its old table.
# With the name "hunt-swings" whole hunts are made in real time, beside which nothing else should run.
# With the name "pictures" the pictures in docs/figures are drawn anew. -Drailglow.recordings=FOLDER in JAVA_OPTS names the
# folder of the recordings, without which false-alarms-recorded and sensitivity-disturbed fail.
set -uo pipefail
cd "$(dirname "$0")/../.." || exit
minutes=${1:-120}
shift || true
names=("$@")
page=docs/detection.md
out=target/studies
end=$((SECONDS + 60 * minutes))
rm -rf "$out"
mkdir -p "$out"
mvn -q test-compile dependency:build-classpath -Dmdep.outputFile="$out/classpath" -Dmdep.includeScope=test || exit
classpath="target/classes:target/test-classes:$(cat "$out/classpath")"
failed=

study() { # NAME CLASS ARGUMENTS...
  local name=$1 begun=$SECONDS
  [ ${#names[@]} -eq 0 ] || [[ " ${names[*]} " == *" $name "* ]] || return 0
  # shellcheck disable=SC2086
  if [ $((end - SECONDS)) -gt 0 ] && timeout $((end - SECONDS)) java ${JAVA_OPTS:-} -XX:+UseSerialGC \
    -cp "$classpath" "railglow.${2}" "${@:3}" >"$out/part"; then
    mv "$out/part" "$out/$name.md"
    cat "$out/$name.md"
  else
    failed="$failed $name"
  fi
  echo "($name: $((SECONDS - begun)) s)"
}

study looks thermal.LooksStudy
study decision-time thermal.DecisionTimeStudy
study decision-time-whole thermal.DecisionTimeStudy 30 60 2
study upper-limit thermal.UpperLimitStudy 500
study frame-times sim.FrameTimesStudy 2 2
study pulses sim.PulseStudy 16 1
study scenarios sim.ScenarioStudy 30
study separation sim.SeparationStudy 12 3 4 5 6
study power sim.PowerStudy 60
study two-sources thermal.TwoSourcesStudy 100
study forecast thermal.ForecastStudy 31
study sensitivity thermal.SensitivityStudy 50 256 192 300
study sensitivity-disturbed thermal.DisturbedSensitivityStudy 100
study estimates thermal.EstimateStudy 400
study false-alarms thermal.FalseAlarmStudy 1000 64 48 12 WHITE DRIFT STRIPES SMOOTHED SHUTTER
study false-alarms-more thermal.FalseAlarmStudy 1000 64 48 12 REFLECTION FLICKER LINES FAINT_LINES NOISY_LINES
study false-alarms-recorded thermal.FalseAlarmStudy 1000 64 48 12 RECORDED
if [[ " ${names[*]} " == *" hunt-swings "* ]]; then
  mvn -q -DskipTests package && study hunt-swings process.HuntSwingStudy 20 8 || failed="$failed hunt-swings"
fi
if [[ " ${names[*]} " == *" pictures "* ]]; then
  timeout $((end - SECONDS)) java -XX:+UseSerialGC -cp "$classpath" railglow.thermal.DetectionFigures 100 ||
    failed="$failed pictures"
fi
rm -f "$out/part"
python3 src/bench/put-tables.py "$out" "$page" "$page" || exit
[ -z "$failed" ] || {
  echo "not made:$failed" >&2
  exit 1
}
