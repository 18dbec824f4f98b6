#!/usr/bin/env bash
# Numbers of fields = compute numbers = R's lm. A tool that is missing fails.
#   field.sh FIELDS BLINDLAP...   FIELDS: the folder that blindlap.desk.FieldSample wrote; BLINDLAP...: the command that runs Blindlap.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
fields=$1
shift
command -v python3 >/dev/null || { echo "python3 is missing"; exit 1; }
command -v Rscript >/dev/null || { echo "Rscript is missing"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
for field in "$fields"/*.json; do
  python3 "$here/field.py" table "$field" > "$work/table.csv"
  Rscript --vanilla "$here/field.R" "$work/table.csv" > "$work/r.txt"
  python3 "$here/field.py" request "$field" > "$work/request.json"
  "$@" compute "$work/request.json" > "$work/answer.json"
  said=$(python3 "$here/field.py" agree "$field" "$work/r.txt" "$work/answer.json") || { echo "$field: $said"; exit 1; }
  echo "$(basename "$field" .json): $said"
done
