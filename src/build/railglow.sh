#!/bin/sh
# Starts Railglow; faster with the archive of loaded classes that the build leaves beside the jar.
here=$(cd "$(dirname "$(readlink -f "$0")")" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
archive=$here/railglow.jsa
case "${1:--}" in
  # These end before a second compiler could pay.
  -* | plan | rails | runs | keep | off | generate-completion) quick=-XX:TieredStopAtLevel=1 ;;
  *) quick= ;;
esac
set -- -XX:+UseSerialGC $quick -jar "$here/railglow.jar" "$@"
if [ -r "$archive" ]; then
  # An archive made by another Java is passed over in silence.
  set -- -Xshare:auto -Xlog:disable "-XX:SharedArchiveFile=$archive" "-Drailglow.archive=$archive" "$@"
fi
exec "$java" "$@"
