#!/bin/sh
# Builds the last commit twice, in two clones at different paths, and compares every jar byte for byte.
# Arguments go to Maven. Ends with 1 where a jar differs, and says which of its entries do.
set -eu
top=$(cd "$(dirname "$0")/.." && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for clone in one another/clone; do
  git clone -q "$top" "$work/$clone"
  (cd "$work/$clone" && mvn -q -B -ntp -DskipTests "$@" package)
done
cd "$work/one"
status=0
for jar in $(find . -path '*/target/*.jar' | sort); do
  if cmp -s "$jar" "$work/another/clone/$jar"; then
    echo "same     $(sha256sum "$jar")"
  else
    status=1
    echo "differs  $jar"
    for side in one another/clone; do
      unzip -v "$work/$side/$jar" | awk '{ print $7, $8 }' | sort > "$work/$(basename $side).entries"
    done
    diff "$work/one.entries" "$work/clone.entries" | head -20 || true
  fi
done
exit $status
