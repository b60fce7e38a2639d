# What Coatwright needs from the system: looks, says what is missing, installs it where that can be done.
# Sourced by ./coatwright and ./verify; not run by itself.

say() { printf '%s\n' "$*" >&2; }

# Prints the path of a java of at least release 17, or nothing.
find_java() {
  local home candidate release
  for home in "${JAVA_HOME:-}" ''; do
    candidate=${home:+$home/bin/}java
    command -v "$candidate" >/dev/null 2>&1 || continue
    release=$("$candidate" -XshowSettings:properties -version 2>&1 |
      sed -n 's/^ *java\.specification\.version = //p')
    if [ "${release%%.*}" -ge 17 ] 2>/dev/null; then
      command -v "$candidate"
      return 0
    fi
  done
  return 1
}

# A JDK, not only a runtime: the compiler stands beside java.
has_jdk() {
  local java home
  java=$(find_java) || return 1
  home=$(dirname "$(dirname "$(readlink -f "$java")")")
  [ -x "$home/bin/javac" ]
}

has_maven() {
  local version
  command -v mvn >/dev/null 2>&1 || return 1
  version=$(mvn -v 2>/dev/null | sed -n 's/.*Apache Maven \([0-9.]*\).*/\1/p' | head -n 1)
  [ "$(printf '3.8.0\n%s\n' "$version" | sort -V | head -n 1)" = 3.8.0 ]
}

# System name and release, such as "debian 12".
system() { (. /etc/os-release 2>/dev/null && printf '%s %s' "${ID:-unknown}" "${VERSION_ID:-0}"); }

# True where apt-get can bring what this command needs: Debian 12 or newer, and for the demo Ubuntu 22.04 or newer.
can_install() {
  local for_what=$1 name release
  read -r name release <<<"$(system)"
  command -v apt-get >/dev/null 2>&1 || return 1
  case $name in
    debian) [ "${release%%.*}" -ge 12 ] 2>/dev/null ;;
    ubuntu) [ "$for_what" = run ] && [ "${release%%.*}" -ge 22 ] 2>/dev/null ;;
    *) return 1 ;;
  esac
}

# The JDK package this system offers.
jdk_package() {
  local package
  for package in openjdk-17-jdk-headless openjdk-21-jdk-headless openjdk-25-jdk-headless; do
    if apt-cache policy "$package" 2>/dev/null | grep -q 'Candidate: [0-9]'; then
      printf '%s' "$package"
      return 0
    fi
  done
  printf 'default-jdk-headless'
}

# need run|verify yes|ask: returns when everything is there; exits 2 when it is not and cannot be had.
need() {
  local for_what=$1 consent=$2 missing=() packages=() jdk=no
  has_jdk || { missing+=('a JDK, release 17 or newer'); jdk=yes; }
  has_maven || { missing+=('Maven 3.8 or newer'); packages+=(maven); }
  if [ "$for_what" = verify ]; then
    command -v mosquitto >/dev/null 2>&1 || [ -x /usr/sbin/mosquitto ] || { missing+=('mosquitto, an MQTT broker'); packages+=(mosquitto); }
    command -v socat >/dev/null 2>&1 || { missing+=('socat, for a pair of serial lines'); packages+=(socat); }
    [ -x /usr/bin/chromium ] || { missing+=('chromium, a browser'); packages+=(chromium); }
    [ -x /usr/bin/chromedriver ] || { missing+=('the driver of that browser'); packages+=(chromium-driver); }
  fi
  [ ${#missing[@]} -eq 0 ] && return 0

  say 'Missing on this machine:'
  printf '  - %s\n' "${missing[@]}" >&2
  if ! can_install "$for_what"; then
    say "This is \"$(system)\". Install the above with this system's own package manager, then start again."
    exit 2
  fi
  local sudo=()
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      say 'Installing needs root: run this once as root, or install the above, then start again.'
      exit 2
    fi
    sudo=(sudo)
  fi
  if [ "$consent" != yes ] && [ "$(id -u)" -ne 0 ] && [ "${CI:-}" != true ]; then
    if [ ! -t 0 ]; then
      say 'Start again with --yes to let apt-get install them.'
      exit 2
    fi
    printf 'Install them now with apt-get? [y/N] ' >&2
    local answer
    read -r answer
    case $answer in
      y | Y | yes) ;;
      *) say 'Nothing was installed.'; exit 2 ;;
    esac
  fi
  "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get update -q >&2 || {
    say 'apt-get update failed; see above.'
    exit 2
  }
  [ "$jdk" = yes ] && packages+=("$(jdk_package)")
  "${sudo[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "${packages[@]}" >&2 || {
    say 'apt-get could not install them; see above.'
    exit 2
  }
  hash -r
}
