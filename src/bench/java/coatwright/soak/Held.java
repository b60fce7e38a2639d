package coatwright.soak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** What the daemon holds: resident memory, threads, open files. */
final class Held {
  private static final Duration EVERY = Duration.ofSeconds(15);

  private record Sample(Instant at, long residentKb, long threads, long files) {}

  private final List<List<Sample>> lives = new ArrayList<>();
  private Process daemon;
  private Instant last = Instant.MIN;

  void began(Process process) {
    daemon = process;
    lives.add(new ArrayList<>());
  }

  void look() throws IOException {
    if (daemon.isAlive() && Duration.between(last, Instant.now()).compareTo(EVERY) > 0) {
      last = Instant.now();
      Path process = Path.of("/proc", Long.toString(daemon.pid()));
      List<String> status = Files.readAllLines(process.resolve("status"));
      try (Stream<Path> files = Files.list(process.resolve("fd"))) {
        lives
            .get(lives.size() - 1)
            .add(
                new Sample(
                    last, number(status, "VmRSS:"), number(status, "Threads:"), files.count()));
      }
    }
  }

  private static long number(List<String> status, String key) {
    return status.stream()
        .filter(row -> row.startsWith(key))
        .map(row -> row.replaceAll("\\D", ""))
        .mapToLong(Long::parseLong)
        .findFirst()
        .orElse(0);
  }

  /** The longest life, a quarter at a time. */
  void print() {
    List<Sample> longest =
        lives.stream().max((a, b) -> Integer.compare(a.size(), b.size())).orElseThrow();
    System.out.println("The longest life of the daemon, medians of each quarter:\n");
    System.out.println("| minutes | resident MB | threads | open files |\n|---|---|---|---|");
    for (int quarter = 0; quarter < 4; quarter++) {
      List<Sample> part =
          longest.subList(longest.size() * quarter / 4, longest.size() * (quarter + 1) / 4);
      if (!part.isEmpty()) {
        System.out.printf(
            "| %.0f to %.0f | %.0f | %d | %d |%n",
            minutes(longest, part.get(0)),
            minutes(longest, part.get(part.size() - 1)),
            median(part.stream().map(Sample::residentKb).toList()) / 1024.0,
            median(part.stream().map(Sample::threads).toList()),
            median(part.stream().map(Sample::files).toList()));
      }
    }
  }

  private static double minutes(List<Sample> life, Sample sample) {
    return Duration.between(life.get(0).at(), sample.at()).toSeconds() / 60.0;
  }

  private static long median(List<Long> values) {
    return values.stream().sorted().skip(values.size() / 2).findFirst().orElse(0L);
  }
}
