# Sourced by the scripts that install, build and run. Says what each needs, and installs what is missing.
build_packages="g++ cmake ninja-build pkg-config ccache libcli11-dev libboost-dev libsqlite3-dev nlohmann-json3-dev
  libkainjow-mustache-dev libsodium-dev libcpp-httplib-dev libqrcodegencpp-dev"
test_packages="libgtest-dev libbenchmark-dev python3 clang libclang-rt-14-dev
  chromium chromium-driver fonts-dejavu-core ngspice"
# What the statistics are compared with in the long tier; where it is missing, those tests say so and are skipped.
reference_packages="r-base-core r-cran-psych r-cran-bradleyterry2 r-cran-psychotools r-cran-qvcalc r-cran-coin
  r-cran-exactranktests r-cran-psyphy r-cran-lme4 r-cran-metafor python3-scipy"

installed() { [ "$(dpkg-query -W -f='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]; }

# install_missing PACKAGE...
install_missing() {
  missing=
  if ! command -v dpkg-query >/dev/null 2>&1; then
    echo "This is no Debian system; these packages of Debian 12, or their like, are needed:" "$@" >&2
    return 0
  fi
  for package in "$@"; do installed "$package" || missing="$missing $package"; done
  [ -z "$missing" ] && return 0
  as_root=
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      echo "Missing packages:$missing" >&2
      echo "Install them as root (apt-get install --no-install-recommends$missing), then run this again." >&2
      return 1
    fi
    as_root=sudo
  fi
  echo "installing:$missing"
  log=$(mktemp)
  # shellcheck disable=SC2086
  if ! { $as_root apt-get update && $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y \
      --no-install-recommends $missing; } >"$log" 2>&1; then
    tail -n 20 "$log" >&2
    rm -f "$log"
    return 1
  fi
  rm -f "$log"
}

# build FOLDER TARGETS [cmake arguments]: quiet unless it fails. One compilation a library: a quarter of the time.
build() {
  folder=$1 targets=$2
  shift 2
  mkdir -p "$folder"
  if ! cmake -S "$root" -B "$folder" -G Ninja -DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=0 "$@" >"$folder/configure.log" 2>&1; then
    cat "$folder/configure.log" >&2
    return 1
  fi
  # shellcheck disable=SC2086
  if ! cmake --build "$folder" --target $targets >"$folder/build.log" 2>&1; then
    grep -v '^\[' "$folder/build.log" | head -n 60 >&2
    return 1
  fi
}
