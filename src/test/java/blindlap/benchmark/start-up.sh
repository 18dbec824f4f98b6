#!/bin/sh
# Start of the window on the sample notebook beside a bare JavaFX window, in one run and in turns.
# Needs a display (for example: xvfb-run -a sh src/test/java/blindlap/benchmark/start-up.sh) and a build
# with tests (mvn -B -DskipTests package).
set -e
cd "$(dirname "$0")/../../../../.."
runs=${1:-10}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
book="$work/sample.blindlap"
# A class archive wants jars only.
jar cf "$work/start.jar" -C target/test-classes blindlap/benchmark
path="target/blindlap-0.1.0.jar:target/lib/*:$work/start.jar"
# The launcher's options, for both windows.
native="-Dorg.sqlite.lib.path=target/native/org/sqlite/native/$(uname -s | sed 's/Darwin/Mac/')/$(uname -m | sed 's/arm64/aarch64/')"
fx="$native -XX:+UseSerialGC -XX:TieredStopAtLevel=1 --module-path target/javafx --add-modules javafx.controls,javafx.swing"
java $fx -cp "$path" blindlap.Main demo --no-window --notebook "$book" >/dev/null
# Both windows get an archive of their own classes; the launcher makes one as well.
for which in bare blindlap; do
  java $fx -XX:ArchiveClassesAtExit="$work/$which.jsa" '-Xlog:cds*=off' -cp "$path" blindlap.benchmark.WindowOnce "$which" "$book" >/dev/null 2>&1
done
i=0
while [ "$i" -lt "$runs" ]; do
  for which in bare blindlap; do
    ms=$(java $fx -XX:SharedArchiveFile="$work/$which.jsa" -Xshare:auto '-Xlog:cds*=off' -cp "$path" blindlap.benchmark.WindowStart "$which" "$book" 2>/dev/null)
    echo "$which $ms"
  done
  i=$((i + 1))
done | tee "$work/all"
sort -k1,1 -k2,2n "$work/all" | awk '{v[$1]=v[$1]" "$2; n[$1]++} END {for (w in v) {split(substr(v[w],2),a," "); m[w]=(a[int((n[w]+1)/2)]+a[int(n[w]/2)+1])/2; print w, "median", m[w], "ms"} print "ratio", m["blindlap"]/m["bare"]}'
