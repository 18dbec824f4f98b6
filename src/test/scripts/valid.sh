#!/usr/bin/env bash
# The reports of all sample sessions are valid HTML, by html-validate (npm), preset "standard".
#   valid.sh SAMPLES      SAMPLES: the folder that blindlap.desk.SampleDays wrote
set -euo pipefail
samples=$(cd "$1" && pwd)
command -v npx >/dev/null || { echo "npx is missing"; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
echo '{"private": true}' > package.json
npm install --silent --no-fund --no-audit html-validate
echo '{"root": true, "extends": ["html-validate:standard"]}' > .htmlvalidate.json
for folder in "$samples"/*/; do
  cp "$folder/report.html" "$(basename "$folder").html"
done
npx html-validate ./*.html && echo "$(ls ./*.html | wc -l) reports are valid"
