#!/usr/bin/env bash
# Sets up what is missing, builds, and serves:
#   deploy/run.sh [--urls URL] [--data DIR] [--no-demo]
# Without ConnectionStrings__Programme a private PostgreSQL runs under DIR (default: data/ beside this folder). The demo programme is uploaded
# where the database is empty. Ctrl-C or SIGTERM stops everything.
set -euo pipefail
caller=$PWD
cd "$(dirname "$0")/.."
. deploy/setup.sh

urls=http://127.0.0.1:5080 data=$PWD/data demo=yes
while [ $# -gt 0 ]; do
  case "$1" in
    --urls) urls=${2:?--urls takes a URL}; shift 2 ;;
    --data) case "${2:?--data takes a folder}" in /*) data=$2 ;; *) data=$caller/$2 ;; esac; shift 2 ;;
    --no-demo) demo=no; shift ;;
    *) say "usage: deploy/run.sh [--urls URL] [--data DIR] [--no-demo]"; exit 2 ;;
  esac
done

set_up "${ConnectionStrings__Programme:+elsewhere}"
publish Web web
[ "$demo" = no ] || publish Demo demo

base=${urls%%;*}
base=$(printf '%s' "${base%/}" | sed -e 's#://\(\*\|+\|0\.0\.0\.0\|\[::\]\)#://127.0.0.1#')

# Uploads the demo programme through the upload route, once the service answers and while it lives. A load that was interrupted goes on at
# the next start: packages that are there already change nothing.
load_demo() {
  local state="$data/demo.state" token tests
  until curl -fsS -m 5 -o /dev/null "$base/health" 2>/dev/null; do
    kill -0 $$ 2>/dev/null || return 0
    sleep 0.5
  done
  [ -r "$data/first-run.json" ] || return 0
  token=$(sed -n 's/.*"ingestToken" *: *"\([^"]*\)".*/\1/p' "$data/first-run.json")
  tests=$(curl -fsS -m 30 -H "Authorization: Bearer $token" "$base/api/v1/tests") || return 0
  [ "$tests" = '[]' ] || [ "$(cat "$state" 2>/dev/null)" = loading ] || return 0
  echo loading > "$state"
  say "Loading the demo programme"
  if dotnet artifacts/demo/Toepan.Demo.dll load --url "$base" --token-file "$data/first-run.json"; then
    echo loaded > "$state"
    say "The demo programme is loaded: $base"
  else
    say "The demo programme is not loaded to its end; the next start goes on with it."
  fi
}

[ "$demo" = no ] || load_demo &
# A shell script's background jobs start with SIGINT ignored; the service stops on it wherever it was started from.
exec env --default-signal=INT dotnet artifacts/web/Toepan.Web.dll --urls "$urls" --data "$data"
