#!/usr/bin/env bash
# Report numbers = compute numbers = R = Python, for all sample sessions and series. A tool that is missing fails.
#   recompute.sh SAMPLES SERIES BLINDLAP...
# SAMPLES: the folder that blindlap.desk.SampleDays wrote; SERIES: that of blindlap.desk.SeriesSample; BLINDLAP...: the command that runs Blindlap.
# Checks and scripts run from a copy of each package in a folder of its own, as on a machine without Blindlap: PATH holds
# python3, Rscript and the three tools that R's own launcher calls, no Java, and nothing else is in the environment.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
samples=$1
series=$2
shift 2
command -v python3 >/dev/null || { echo "python3 is missing"; exit 1; }
command -v Rscript >/dev/null || { echo "Rscript is missing"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir "$work/bin" "$work/home"
for tool in Rscript bash uname rm; do
  ln -s "$(command -v "$tool")" "$work/bin/$tool"
done
# The program itself: what stands on PATH may be a script that looks for it.
ln -s "$(python3 -c 'import os, sys; print(os.path.realpath(sys.executable))')" "$work/bin/python3"

# alone PACKAGE COMMAND...: in a copy of the package, with nothing of this machine but what stands above.
alone() {
  rm -rf "$work/alone"
  cp -r "$1" "$work/alone"
  shift
  (cd "$work/alone" && env -i PATH="$work/bin" HOME="$work/home" LC_ALL=C.UTF-8 "$@")
}

# verified PACKAGE: every check of verify.py holds, or what does not is printed.
verified() {
  alone "$1" python3 verify.py > "$work/verify" || { echo "$1:"; cat "$work/verify"; exit 1; }
  checks=$((checks + $(grep -c '^ok ' "$work/verify")))
  packages=$((packages + 1))
}

checks=0
packages=0
for folder in "$samples"/*/; do
  name=$(basename "$folder")
  kind=recompute
  [ -e "$folder/package/trials.csv" ] && kind=recompute-trials
  verified "$folder/package"
  alone "$folder/package" python3 "$kind.py" > "$work/$name.python"
  alone "$folder/package" Rscript --vanilla "$kind.R" > "$work/$name.r"
  "$@" review --from "$folder/package" --json > "$work/$name.json"
  python3 "$here/requests.py" "$work/$name.json" > "$work/$name.requests"
  "$@" compute "$work/$name.requests" > "$work/$name.answers"
done
python3 "$here/agree.py" "$samples" "$work"
for folder in "$series"/*/package; do
  for program in "python3 recompute-series.py" "Rscript --vanilla recompute-series.R"; do
    # Each names what differs from the answer and ends with 1 if anything does.
    alone "$folder" $program > "$work/series.out" || { grep DIFFERS "$work/series.out"; echo "$folder, $program"; exit 1; }
    echo "$(basename "$(dirname "$folder")"), ${program%% *}: $(tail -1 "$work/series.out")"
  done
  for session in "$folder"/session-*/; do
    verified "$session"
    "$@" review --from "$session" > /dev/null
  done
done
echo "$checks checks of verify.py hold in $packages packages"
