# Whole commands, and what the daemon holds in memory. Sourced by src/bench/run; not run by itself.

# Runs a command so many times; prints a table row: name, minimum and median in ms, what stands beside it.
timed() {
  local name=$1 beside=$2 times start i
  times=$(brief 5 15)
  shift 2
  "$@" >/dev/null 2>&1 || true
  for ((i = 0; i < times; i++)); do
    start=${EPOCHREALTIME/[.,]/}
    "$@" >/dev/null 2>&1 || true
    printf '%s\n' $((${EPOCHREALTIME/[.,]/} - start))
  done | sort -n | awk -v name="$name" -v beside="$beside" '
    { took[NR] = $1 / 1000 }
    END { printf "| %s | %.0f | %.0f | %s |\n", name, took[1], took[int((NR + 1) / 2)], beside }'
}

# The newest program the launcher has built, started without the launcher.
bare_program() {
  local major jar
  major=$("$JAVA" -version 2>&1 | sed -n 's/.*version "\([0-9]*\).*/\1/p' | head -n 1)
  jar=$(ls -t target/run/coatwright-*.jar | head -n 1)
  BARE=("$JAVA" -XX:+UseSerialGC -Xshare:auto -XX:TieredStopAtLevel=1 -Xlog:cds=off -Xlog:cds+dynamic=off
    "-XX:SharedArchiveFile=target/classes-jdk$major.jsa" "-Dcoatwright.home=$PWD"
    -cp "$jar:target/lib/*" coatwright.Coatwright)
}

bench_commands() {
  psychrolib
  mkdir -p "$OUT/hello"
  cat >"$OUT/hello/Hello.java" <<'JAVA'
public class Hello {
  public static void main(String[] args) {
    System.out.println("hello");
  }
}
JAVA
  "$(dirname "$JAVA")/javac" -d "$OUT/hello" "$OUT/hello/Hello.java"
  ./coatwright --help >/dev/null
  bare_program
  printf '\n### Whole commands\n\n| command, ms | minimum | median | beside it |\n|---|---|---|---|\n'
  timed 'an empty Java program' 'the floor' "$JAVA" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp "$OUT/hello" Hello
  timed '`java -version`' '' "$JAVA" -version
  timed 'node, psychrolib, one state' 'the peer of air' node src/bench/air/air.js 20 50
  timed '`coatwright air`, without the launcher' '' "${BARE[@]}" air 20C 50%
  timed '`./coatwright air`' 'limit 2 s' ./coatwright air 20C 50%
  timed '`./coatwright outlook`' 'limit 2 s' ./coatwright outlook --finish shellac-pale --air 20C,50%
  timed '`./coatwright --help`' '' ./coatwright --help
}

resident_mb() { awk '/^VmRSS/ { printf "%.0f", $2 / 1024 }' "/proc/$1/status"; }

# Starts a daemon on ports and data of its own, waits, prints what it holds, stops it.
held_after() {
  local command=$1 seconds=$2 data pid
  data=$(mktemp -d)
  setsid ./coatwright --data "$data" "$command" ${3-} >"$OUT/$command.log" 2>&1 &
  pid=$!
  sleep "$seconds"
  if [ -d "/proc/$pid" ]; then
    printf '| `%s` | %s | %s |\n' "$command" "$(resident_mb "$pid")" "$seconds"
    kill "$pid"
    wait "$pid" 2>/dev/null || true
  else
    printf '| `%s` | ended early, see %s | |\n' "$command" "$OUT/$command.log"
  fi
  rm -rf "$data"
}

bench_memory() {
  local seconds
  seconds=$(brief 30 120)
  ./coatwright --help >/dev/null
  printf '\n### Memory\n\n| daemon | resident MB (limit 150) | after s |\n|---|---|---|\n'
  held_after run "$seconds"
  held_after demo "$seconds"
}
