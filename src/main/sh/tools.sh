# What Coatwright needs from the system: looks, says what is missing, installs it where that can be done.
# Sourced by ./coatwright and ./verify; not run by itself.
#
# install_tools run|verify: returns when everything is there, exits 2 when it is not and cannot be had.
# YES=true installs without asking. Sets JAVA, JAVA_MAJOR and MVN.

LEAST_JDK=17
LEAST_MAVEN=3.8.7
NEWER_MAVEN=3.9.11
CACHE=${XDG_CACHE_HOME:-${HOME:-/nonexistent}/.cache}/coatwright

say() { printf '%s\n' "$*" >&2; }
stop() {
  local code=$1
  shift
  say "$@"
  exit "$code"
}

# The major version of a java program, or nothing. Every JDK tells it in a file beside its programs,
# which is quicker to read than to start it.
java_major() {
  local told
  told=$(sed -n 's/^JAVA_VERSION="\([0-9]*\).*/\1/p' "$(dirname "$1")/../release" 2>/dev/null || true)
  [ -n "$told" ] || told=$("$1" -version 2>&1 | sed -n 's/.*version "\([0-9]*\).*/\1/p' | head -n 1)
  printf '%s' "$told"
}

# A JDK 17 or newer: JAVA_HOME first, then the path, then where Debian keeps them.
find_jdk() {
  local java major
  for java in "${JAVA_HOME:-/nonexistent}/bin/java" "$(command -v java || true)" /usr/lib/jvm/*/bin/java; do
    [ -n "$java" ] && [ -x "$java" ] || continue
    java=$(readlink -f "$java")
    [ -x "$(dirname "$java")/javac" ] || continue
    major=$(java_major "$java")
    if [ -n "$major" ] && [ "$major" -ge $LEAST_JDK ]; then
      JAVA=$java
      JAVA_MAJOR=$major
      return 0
    fi
  done
  return 1
}

# True when version $1 is at least version $2.
at_least() { [ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n 1)" = "$2" ]; }

maven_version() { "$1" -v 2>/dev/null | sed -n 's/.*Apache Maven \([0-9.]*\).*/\1/p' | head -n 1; }

find_maven() {
  local mvn version
  for mvn in "$(command -v mvn || true)" "$CACHE/apache-maven-$NEWER_MAVEN/bin/mvn"; do
    [ -n "$mvn" ] && [ -x "$mvn" ] || continue
    version=$(JAVA_HOME=$(dirname "$(dirname "$JAVA")") maven_version "$mvn")
    if [ -n "$version" ] && at_least "$version" $LEAST_MAVEN; then
      MVN=$mvn
      return 0
    fi
  done
  return 1
}

# Looks for everything a command needs; sets MISSING to what was not found and PACKAGES to what brings it.
look_for_tools() {
  MISSING=()
  PACKAGES=()
  if ! find_jdk; then
    MISSING+=("a JDK, version $LEAST_JDK or newer (java and javac)")
    PACKAGES+=("$(jdk_package)")
  fi
  if ! { [ -n "${JAVA:-}" ] && find_maven; } && ! { [ -z "${JAVA:-}" ] && command -v mvn >/dev/null; }; then
    MISSING+=("Maven, version $LEAST_MAVEN or newer (mvn)")
    PACKAGES+=(maven)
  fi
  [ "$1" = verify ] || return 0
  if ! command -v mosquitto >/dev/null && [ ! -x /usr/sbin/mosquitto ]; then
    MISSING+=('mosquitto, an MQTT broker')
    PACKAGES+=(mosquitto)
  fi
  if ! command -v socat >/dev/null; then
    MISSING+=('socat, for a pair of serial lines')
    PACKAGES+=(socat)
  fi
  local tool
  for tool in 'mosquitto_pub mosquitto-clients for sending messages' 'faketime faketime for a clock that is wrong' \
    'openssl openssl for certificates' 'ip iproute2 for a network that breaks' \
    'unshare util-linux for a network of its own' 'setpriv util-linux for a user with fewer rights'; do
    # shellcheck disable=SC2086 -- the words are meant to be split
    set -- "$1" $tool
    if ! command -v "$2" >/dev/null && [ ! -x "/usr/sbin/$2" ]; then
      MISSING+=("$2, ${*:4}")
      PACKAGES+=("$3")
    fi
  done
  if ! command -v influxd >/dev/null; then
    MISSING+=('influxd, a time-series database')
    PACKAGES+=(influxdb)
  fi
  if ! command -v nginx >/dev/null && [ ! -x /usr/sbin/nginx ]; then
    MISSING+=('nginx, which gives that database the newer address for writing')
    PACKAGES+=(nginx)
  fi
  if ! command -v victoria-metrics >/dev/null; then
    MISSING+=('victoria-metrics, another time-series database')
    PACKAGES+=(victoria-metrics)
  fi
  if [ ! -x /usr/bin/chromium ]; then
    MISSING+=('chromium, a browser')
    PACKAGES+=(chromium)
  fi
  if [ ! -x /usr/bin/chromedriver ]; then
    MISSING+=('chromedriver, the driver of that browser')
    PACKAGES+=(chromium-driver)
  fi
}

# This system's name and release, such as "debian 12".
this_system() { (. /etc/os-release 2>/dev/null && printf '%s %s' "${ID:-unknown}" "${VERSION_ID:-0}"); }

# True where apt-get brings what the command needs. Ubuntu's browser is no package a test can drive.
can_install() {
  local id version
  read -r id version <<<"$(this_system)"
  command -v apt-get >/dev/null || return 1
  case $id in
    debian) at_least "$version" 12 ;;
    ubuntu) [ "$1" = run ] && at_least "$version" 22.04 ;;
    *) return 1 ;;
  esac
}

# The default JDK of Ubuntu 22.04 is 11.
jdk_package() {
  case $(this_system) in
    'ubuntu 22.04') printf 'openjdk-17-jdk-headless' ;;
    *) printf 'default-jdk-headless' ;;
  esac
}

install_tools() {
  local as_root='' answer
  look_for_tools "$1"
  [ ${#MISSING[@]} -gt 0 ] || return 0
  say 'Coatwright needs, and this machine lacks:'
  printf '  %s\n' "${MISSING[@]}" >&2
  can_install "$1" || stop 2 "This system is \"$(this_system)\": install them by hand, then start again."
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || stop 2 "As root, run: apt-get install ${PACKAGES[*]}"
    as_root=sudo
    if [ "$YES" != true ]; then
      [ -t 0 ] || stop 2 "Run again with --yes, or run: sudo apt-get install ${PACKAGES[*]}"
      read -r -p "Install ${PACKAGES[*]} with apt-get now? [y/N] " answer
      case $answer in
        y | Y | yes) ;;
        *) stop 2 'Nothing was installed.' ;;
      esac
    fi
  fi
  say "Installing ${PACKAGES[*]} ..."
  {
    $as_root apt-get update -qq &&
      # The tests start what they need themselves, in folders and on ports of their own; the
      # packages are not to start theirs.
      $as_root env DEBIAN_FRONTEND=noninteractive SYSTEMD_OFFLINE=1 apt-get install -y -qq --no-install-recommends "${PACKAGES[@]}"
  } >&2 || stop 2 "Nothing could be installed, see the message above; as root, run: apt-get install ${PACKAGES[*]}"
  hash -r
  find_jdk || stop 2 "No JDK $LEAST_JDK or newer even after installing; see the messages above."
  find_maven || newer_maven
}

# Ubuntu 22.04 carries Maven 3.6: it is good enough to fetch its successor from the same place it
# fetches everything else.
newer_maven() {
  say "Fetching Maven $NEWER_MAVEN with the system's older one ..."
  mkdir -p "$CACHE"
  (cd "$CACHE" && mvn -q org.apache.maven.plugins:maven-dependency-plugin:3.8.1:unpack \
    "-Dartifact=org.apache.maven:apache-maven:$NEWER_MAVEN:tar.gz:bin" "-DoutputDirectory=$CACHE") >&2 || true
  chmod +x "$CACHE/apache-maven-$NEWER_MAVEN/bin/mvn" 2>/dev/null || true
  find_maven || stop 2 "Maven $LEAST_MAVEN or newer could not be had; install it by hand."
}
