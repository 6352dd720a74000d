# Sourced by the scripts beside it: finds what is missing and installs it where that is allowed (root on Debian or Ubuntu).

export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

say() { printf '%s\n' "$*" >&2; }

# PostgreSQL's server programs lie outside the search path on Debian.
have_postgres() { command -v initdb >/dev/null || ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1; }

have_sdk() { command -v dotnet >/dev/null && dotnet --list-sdks 2>/dev/null | grep -q '^10\.'; }

# install PACKAGE…: installs with apt where this is root, else says in one line what to install.
install() {
  [ $# -gt 0 ] || return 0
  if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null; then
    say "Missing here: $*. Install it first (Debian and Ubuntu: sudo apt-get install $*)."
    return 1
  fi
  say "Installing $*"
  # This service runs a cluster of its own; Debian need not make and start another.
  if [ ! -e /etc/postgresql-common/createcluster.conf ]; then
    mkdir -p /etc/postgresql-common
    echo 'create_main_cluster = false' > /etc/postgresql-common/createcluster.conf
  fi
  apt-get update -q >/dev/null
  DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends -o Dpkg::Options::=--force-confold "$@" >/dev/null
}

# What building and running need. Database first argument: "own" where the service starts its own PostgreSQL.
set_up() {
  local missing=()
  have_sdk || missing+=(dotnet-sdk-10.0)
  command -v npm >/dev/null || missing+=(nodejs npm)
  command -v curl >/dev/null || missing+=(curl)
  if [ "${1:-own}" = own ]; then
    have_postgres || missing+=(postgresql)
    { [ "$(id -u)" != 0 ] || command -v setpriv >/dev/null; } || missing+=(util-linux)
  fi
  if ! have_sdk && ! { command -v apt-cache >/dev/null && apt-cache show dotnet-sdk-10.0 >/dev/null 2>&1; }; then
    say "The .NET 10 SDK is missing: install it as https://learn.microsoft.com/dotnet/core/install/linux says, then start again."
    return 1
  fi
  install "${missing[@]}"
}

# publish PROJECT FOLDER: builds a program into artifacts/FOLDER unless nothing changed since.
publish() {
  local stamp="artifacts/$2.stamp"
  if [ -e "$stamp" ] && [ -z "$(find src Directory.Build.props Directory.Packages.props global.json -newer "$stamp" \
      -not -path '*/bin/*' -not -path '*/obj/*' -not -path '*/node_modules*' -print -quit)" ]; then
    return 0
  fi
  say "Building $1"
  rm -rf "artifacts/$2"
  dotnet publish "src/$1" --configuration Release --output "artifacts/$2" --nologo --verbosity quiet
  touch "$stamp"
}
