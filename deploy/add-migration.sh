#!/usr/bin/env bash
# Adds a migration for what the tables' descriptions changed:  deploy/add-migration.sh NAME
# While nothing is released, the first migration may be written anew:  deploy/add-migration.sh --initial
set -euo pipefail
cd "$(dirname "$0")/.."
folder=src/Api/Store/Migrations
case "${1:-}" in
  --initial) rm -rf "$folder"; name=Initial ;;
  ''|-*) echo "usage: deploy/add-migration.sh NAME | --initial" >&2; exit 2 ;;
  *) name=$1 ;;
esac
export DOTNET_CLI_TELEMETRY_OPTOUT=1
dotnet tool restore --verbosity quiet
dotnet ef migrations add "$name" --project src/Api --startup-project src/Api --output-dir Store/Migrations
