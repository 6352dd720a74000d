#!/usr/bin/env bash
# Sets up and runs every test; the last line is "N passed, N failed". A test that is skipped counts as failed: what tests need is installed
# here, or this script ends before the first of them.
set -euo pipefail
cd "$(dirname "$0")/.."
. deploy/setup.sh

set_up own
missing=()
/usr/bin/python3 -c 'import scipy' 2>/dev/null || missing+=(python3-scipy)
/usr/bin/python3 -c 'import yaml' 2>/dev/null || missing+=(python3-yaml)
command -v chromium >/dev/null || missing+=(chromium)
command -v pdftotext >/dev/null || missing+=(poppler-utils)
install "${missing[@]}"

dotnet build Program.sln --nologo --verbosity quiet
log=$(mktemp)
trap 'rm -f "$log"' EXIT
code=0
dotnet test --solution Program.sln --no-build 2>&1 | tee "$log" || code=$?
awk '
  /^Test run summary:/ { on = 1 }
  on && /^ +succeeded:/ { passed = $2 }
  on && /^ +failed:/ { failed = $2 }
  on && /^ +skipped:/ { skipped = $2 }
  END {
    if (!on) { print "0 passed, 1 failed"; exit 1 }
    if (skipped > 0) printf "%d skipped, counted as failed\n", skipped
    printf "%d passed, %d failed\n", passed, failed + skipped
    exit failed + skipped > 0
  }' "$log" || code=1
exit "$code"
