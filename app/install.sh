# shellcheck shell=bash disable=SC2034,SC2154
# Read by app/run and tests/run: which Debian packages are missing, and how they get here.

build_packages=(g++ cmake ninja-build qt6-base-dev qt6-svg-dev libboost1.74-dev libeigen3-dev
    libfmt-dev nlohmann-json3-dev libssl-dev libqrencode-dev)

missing_packages() # names -> those not installed, one a line
{
    local package
    for package in "$@"; do
        [[ $(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null) == installed ]] || echo "$package"
    done
}

as_root() # a command line, run as root
{
    if ((EUID == 0)); then
        bash -c "$1"
    else
        sudo bash -c "$1"
    fi
}

install_missing() # names; asks the network for nothing when none is missing
{
    if ! command -v dpkg-query >/dev/null; then
        echo "This script installs Debian packages, and there is no dpkg here. Use Debian 12, or build by hand as" \
            "DEVELOPERS.md says with: $*" >&2
        return 1
    fi
    local missing line
    mapfile -t missing < <(missing_packages "$@")
    ((${#missing[@]})) || return 0

    echo "Missing Debian packages: ${missing[*]}"
    line="apt-get update && DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends ${missing[*]}"
    if ((EUID != 0)) && ! command -v sudo >/dev/null; then
        echo "Installing them needs root, and there is no sudo here. Type this as root, then start again:" >&2
        echo "$line" >&2
        return 1
    fi
    if ! as_root "$line"; then
        echo "They could not be installed. Type this as root to see why, then start again:" >&2
        echo "$line" >&2
        return 1
    fi
}

build() # folder, then what cmake needs to know
{
    local folder=$1 log
    shift
    mkdir -p "$folder"
    log=$folder/configure.log
    echo "Building in $folder"
    if ! cmake -S "$root" -B "$folder" -G Ninja "$@" >"$log" 2>&1; then
        cat "$log" >&2
        echo "Configuring failed; what CMake said stands above. Remove $folder and start again if it moved." >&2
        return 1
    fi
    cmake --build "$folder"
}
