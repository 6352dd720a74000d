#!/usr/bin/env bash
# Writes the demo programme's packages as zips:  deploy/demo.sh --out DIR [--seed N]
set -euo pipefail
caller=$PWD
cd "$(dirname "$0")/.."
. deploy/setup.sh

out='' seed=1
while [ $# -gt 0 ]; do
  case "$1" in
    --out) case "${2:?--out takes a folder}" in /*) out=$2 ;; *) out=$caller/$2 ;; esac; shift 2 ;;
    --seed) seed=${2:?--seed takes a whole number}; shift 2 ;;
    *) say "usage: deploy/demo.sh --out DIR [--seed N]"; exit 2 ;;
  esac
done
[ -n "$out" ] || { say "usage: deploy/demo.sh --out DIR [--seed N]"; exit 2; }

set_up elsewhere
publish Demo demo
exec dotnet artifacts/demo/Toepan.Demo.dll generate --out "$out" --seed "$seed"
