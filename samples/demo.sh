#!/bin/sh
# An afternoon in the woods: simulate it on a pseudo-terminal, record it, report it. Needs Java 17 and Maven. Takes minutes, writes
# only below samples/afternoon and the build folders.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
root=$(dirname "$here")
out="$here/afternoon"
scenario=${1:-afternoon}
pace=${2:-200}

logger="$root/logger/target/tautlogd.jar"
desk="$root/analyzer/desk/target/tautlog.jar"
# True when a program is missing or a source is newer than it.
is_stale() {
    [ ! -f "$1" ] || [ -n "$(find "$root/pom.xml" "$root"/logger/pom.xml "$root"/analyzer/*/pom.xml "$root/logger/src/main" \
        "$root"/analyzer/*/src/main -type f -newer "$1" -print | head -n 1)" ]
}
if is_stale "$logger" || is_stale "$desk"; then
    echo "Building the two programs (the first time Maven downloads the libraries) ..." >&2
    (cd "$root" && mvn -q --batch-mode -DskipTests package)
    # a build that found nothing to change leaves the old file
    touch "$logger" "$desk"
fi

rm -rf "$out"
mkdir -p "$out"
cp "$here/rig.toml" "$here/logger.toml" "$here/calibration.toml" "$out/"

echo "Simulating '$scenario' at $pace times real time and recording it ..." >&2
java -jar "$logger" simulate --scenario "$scenario" --port-link "$out/instrument" --pace "$pace" --seed 1 \
    --truth "$out/truth.json" &
simulator=$!
trap 'kill $simulator 2>/dev/null || true' EXIT INT TERM
tries=0
while [ ! -e "$out/instrument" ]; do
    tries=$((tries + 1))
    if [ "$tries" -gt 100 ]; then
        echo "The simulated instrument did not appear at $out/instrument." >&2
        exit 3
    fi
    sleep 0.1
done
java -jar "$logger" run --config "$out/logger.toml" --until-closed
wait "$simulator"
trap - EXIT INT TERM

echo "Reporting ..." >&2
java -jar "$desk" report "$out/recordings" --html "$out/report.html"
echo >&2
echo "The same with plots: $out/report.html" >&2
echo "What the simulated physics really did: $out/truth.json" >&2
