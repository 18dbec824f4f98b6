#!/usr/bin/env bash
# Report numbers = compute numbers = R = Python, for all sample sessions. A tool that is missing fails.
#   recompute.sh SAMPLES BLINDLAP...
# SAMPLES: the folder that blindlap.desk.SampleDays wrote; BLINDLAP...: the command that runs Blindlap.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
samples=$1
shift
command -v python3 >/dev/null || { echo "python3 is missing"; exit 1; }
command -v Rscript >/dev/null || { echo "Rscript is missing"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for folder in "$samples"/*/; do
  name=$(basename "$folder")
  python3 "$here/recompute.py" "$folder/package" > "$work/$name.python"
  Rscript --vanilla "$here/recompute.R" "$folder/package" > "$work/$name.r"
  "$@" review --from "$folder/package" --json > "$work/$name.json"
  python3 "$here/requests.py" "$work/$name.json" > "$work/$name.requests"
  "$@" compute "$work/$name.requests" > "$work/$name.answers"
done
python3 "$here/agree.py" "$samples" "$work"
