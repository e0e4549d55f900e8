#!/bin/sh
# Prints, as a table, what the last `mvn test -Pfuzz` did: one row for each fuzz target.
set -eu
cd "$(dirname "$0")/../.."
reports=target/surefire-reports
echo "| target | what it reads | inputs tried | covered branches | kept inputs | seconds | errors found |"
echo "|---|---|---|---|---|---|---|"
for source in $(find src/test/java -name '*Fuzz.java' | sort); do
  name=$(basename "$source" .java)
  what=$(sed -n 's,^/\*\* \(.*\)\. \*/$,\1,p' "$source" | head -1)
  output=$(find $reports -name "*.$name-output.txt" | head -1)
  if [ -z "$output" ]; then
    echo "| $name | $what | not run | | | | |"
    continue
  fi
  done=$(sed -n 's/^Done \([0-9]*\) runs in \([0-9]*\) second.*/\1 \2/p' "$output" | tail -1)
  stats=$(grep -o 'cov: [0-9]* ft: [0-9]* corp: [0-9]*' "$output" | tail -1)
  covered=$(echo "$stats" | sed -n 's/cov: \([0-9]*\) .*/\1/p')
  kept=$(echo "$stats" | sed -n 's/.*corp: \([0-9]*\)$/\1/p')
  found=$(grep -c '^== Java Exception' "$output" || true)
  echo "| $name | $what | ${done% *} | $covered | $kept | ${done#* } | $found |"
done
