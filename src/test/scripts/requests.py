"""The calculation requests of a finding, as one file for blindlap compute."""
import json, sys

finding = json.load(open(sys.argv[1], encoding="utf-8"))
print(json.dumps([named["request"] for named in finding["requests"]]))
