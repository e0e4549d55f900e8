#!/bin/sh
# Puts the launcher beside the jar and archives the classes that help and a short hunt load. The archive is a static one:
# one made at a program's end leaves out the classes of the command line's library, whose files are of an older version.
# On a busy machine a limit may stop that hunt (4), which leaves the later classes out, or it finds its supply too slow: then it is tried again.
# Usage: JAVA=.../bin/java TARGET=.../target archive.sh
set -eu
install -m 755 "$(dirname "$0")/railglow.sh" "$TARGET/railglow"
rm -rf "$TARGET/railglow.jsa" "$TARGET/archive-runs"
jar=$TARGET/railglow.jar
listed="-XX:+IgnoreUnrecognizedVMOptions -XX:+UseSerialGC -XX:DumpLoadedClassList"
"$JAVA" $listed="$TARGET/archive-help.txt" -jar "$jar" --help > "$TARGET/archive.txt"
for attempt in 1 2 3; do
  ended=0
  "$JAVA" $listed="$TARGET/archive-hunt.txt" -jar "$jar" hunt --simulated \
    --sequence "$(dirname "$0")/archive-hunt.yaml" --runs "$TARGET/archive-runs" > "$TARGET/archive.txt" 2>&1 || ended=$?
  [ $ended -ne 0 ] || break
done
[ $ended -eq 0 ] || [ $ended -eq 4 ] || { cat "$TARGET/archive.txt"; exit 1; }
[ -r "$TARGET/archive-hunt.txt" ] || exit 0 # a Java without such archives starts without one
grep -vxFf "$TARGET/archive-hunt.txt" "$TARGET/archive-help.txt" >> "$TARGET/archive-hunt.txt" || true
"$JAVA" -Xshare:dump -Xlog:disable -XX:+UseSerialGC -XX:SharedClassListFile="$TARGET/archive-hunt.txt" \
  -XX:SharedArchiveFile="$TARGET/railglow.jsa" -cp "$jar" > "$TARGET/archive.txt" 2>&1 \
  || { cat "$TARGET/archive.txt"; exit 1; }
