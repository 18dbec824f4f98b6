#!/usr/bin/env bash
# Report numbers = compute numbers = R = Python, for all sample sessions and series. A tool that is missing fails.
#   recompute.sh SAMPLES SERIES BLINDLAP...
# SAMPLES: the folder that blindlap.desk.SampleDays wrote; SERIES: that of blindlap.desk.SeriesSample; BLINDLAP...: the command that runs Blindlap.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
samples=$1
series=$2
shift 2
command -v python3 >/dev/null || { echo "python3 is missing"; exit 1; }
command -v Rscript >/dev/null || { echo "Rscript is missing"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for folder in "$samples"/*/; do
  name=$(basename "$folder")
  kind=recompute
  [ -e "$folder/package/trials.csv" ] && kind=recompute-trials
  python3 "$here/$kind.py" "$folder/package" > "$work/$name.python"
  Rscript --vanilla "$here/$kind.R" "$folder/package" > "$work/$name.r"
  "$@" review --from "$folder/package" --json > "$work/$name.json"
  python3 "$here/requests.py" "$work/$name.json" > "$work/$name.requests"
  "$@" compute "$work/$name.requests" > "$work/$name.answers"
done
python3 "$here/agree.py" "$samples" "$work"
for folder in "$series"/*/package; do
  for program in "python3 $folder/recompute-series.py" "Rscript --vanilla $folder/recompute-series.R"; do
    # Each names what differs from the answer and ends with 1 if anything does.
    $program > "$work/series.out" || { grep DIFFERS "$work/series.out"; echo "$program"; exit 1; }
    echo "$(basename "$(dirname "$folder")"), ${program%% *}: $(tail -1 "$work/series.out")"
  done
  for session in "$folder"/session-*/; do
    "$@" review --from "$session" > /dev/null
  done
done
