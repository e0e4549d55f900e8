#!/bin/sh
# Puts the launcher beside the jar and archives the classes that a short hunt loads.
# On a busy machine a limit may stop that hunt (4): its classes are loaded all the same.
# Usage: JAVA=.../bin/java TARGET=.../target archive.sh
set -eu
install -m 755 "$(dirname "$0")/railglow.sh" "$TARGET/railglow"
rm -rf "$TARGET/railglow.jsa" "$TARGET/archive-runs"
"$JAVA" -XX:+IgnoreUnrecognizedVMOptions -XX:ArchiveClassesAtExit="$TARGET/railglow.jsa" -Xlog:disable \
  -XX:+UseSerialGC -jar "$TARGET/railglow.jar" hunt --simulated \
  --sequence "$(dirname "$0")/archive-hunt.yaml" --runs "$TARGET/archive-runs" > "$TARGET/archive.txt" 2>&1 \
  || [ $? -eq 4 ] || { cat "$TARGET/archive.txt"; exit 1; }
