#!/bin/sh
# Starts Railglow; faster with the archive of loaded classes that the build leaves beside the jar.
here=$(cd "$(dirname "$(readlink -f "$0")")" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
archive=$here/railglow.jsa
set -- -XX:+UseSerialGC -jar "$here/railglow.jar" "$@"
if [ -r "$archive" ]; then
  # An archive made by another Java is passed over in silence.
  set -- -Xshare:auto -Xlog:disable "-XX:SharedArchiveFile=$archive" "-Drailglow.archive=$archive" "$@"
fi
exec "$java" "$@"
