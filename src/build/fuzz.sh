#!/bin/sh
# Fuzzes every parser (or those named as arguments, such as ScpiFuzz) for 20 s each, guided by coverage,
# and prints one row of a table for each.
set -eu
cd "$(dirname "$0")/../.."
log=target/fuzz.log
mkdir -p target
targets=${*:-'*Fuzz'}
status=0
mvn -B test -Pfuzz -Dtest="$(echo "$targets" | tr ' ' ',')" >$log 2>&1 || status=$?
echo "| target | what it reads | inputs tried | covered branches | inputs kept | seconds | errors found |"
echo "|---|---|---|---|---|---|---|"
sed 's/\x1b\[[0-9;]*m//g' $log | awk '
  /Running railglow\./ { n = split($NF, part, "."); name = part[n]; found = 0 }
  / cov: / { for (i = 1; i < NF; i++) { if ($i == "cov:") cov = $(i+1); if ($i == "corp:") corp = $(i+1) } }
  /^== Java Exception/ { found++ }
  /^Done [0-9]+ runs/ { runs = $2; seconds = $5 }
  /Tests run:.* in railglow\./ {
    sub("/.*", "", corp)
    print name "|" runs "|" cov "|" corp "|" seconds "|" found
    runs = cov = corp = seconds = ""
  }' | while IFS='|' read -r name rest; do
  source=$(find src/test/java -name "$name.java")
  what=$(sed -n 's,^/\*\* \(.*\)\. \*/$,\1,p' "$source" | head -1)
  echo "| $name | $what | $rest |" | sed 's/|\([^ |]\)/| \1/g; s/\([^ |]\)|/\1 |/g'
done
exit $status
