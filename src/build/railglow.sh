#!/bin/sh
# Starts Railglow; faster with the archive of loaded classes that the build leaves beside the jar.
here=$(cd "$(dirname "$(readlink -f "$0")")" && pwd)
java=${JAVA_HOME:+$JAVA_HOME/bin/}java
archive=$here/railglow.jsa
# Four times what the second compiler waits for by itself: it takes a quarter less of the processor (decision 0112).
patient="-XX:Tier4InvocationThreshold=20000 -XX:Tier4MinInvocationThreshold=2400
  -XX:Tier4CompileThreshold=60000 -XX:Tier4BackEdgeThreshold=160000"
# Eight times, and running loops replaced sixteen times as late, where minutes of frames are worked off (decision 0121).
late="-XX:Tier4InvocationThreshold=40000 -XX:Tier4MinInvocationThreshold=4800
  -XX:Tier4CompileThreshold=120000 -XX:Tier4BackEdgeThreshold=640000"
case "${1:--}" in
  # These end before a second compiler could pay.
  -* | plan | rails | runs | keep | off | generate-completion) compiler=-XX:TieredStopAtLevel=1 ;;
  hunt) compiler=$patient ;;
  # Loops whose first round is taken out of them in part take longer to compile and run no faster (decision 0116).
  replay | import) compiler="$late -XX:-PartialPeelLoop" ;;
  *) compiler= ;;
esac
set -- -XX:+UseSerialGC $compiler -jar "$here/railglow.jar" "$@"
if [ -r "$archive" ]; then
  # An archive made by another Java is passed over in silence.
  set -- -Xshare:auto -Xlog:disable "-XX:SharedArchiveFile=$archive" "-Drailglow.archive=$archive" "$@"
fi
exec "$java" "$@"
