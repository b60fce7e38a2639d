package coatwright.store.influx;

import coatwright.store.Outbox.Standing;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How a mirror does.
 *
 * @param lastSuccess when the server last took something, in this run
 * @param behindSince when it was last up to date, while it is not
 * @param trouble what keeps it, in a sentence with the remedy
 * @param lastRefusal the server's reason for the point it refused last
 * @param countTrouble where the server's count and ours differ
 * @param alarm whether it needs a person
 */
public record MirrorStatus(
    String name,
    Standing standing,
    Optional<Instant> lastSuccess,
    Optional<Instant> behindSince,
    Optional<String> trouble,
    Optional<String> lastRefusal,
    Optional<String> countTrouble,
    boolean alarm) {

  /** All of it for a person, in one line. */
  public String sentence() {
    List<String> says = new ArrayList<>();
    says.add(
        behindSince
            .map(
                since ->
                    "behind since %s%s"
                        .formatted(since.truncatedTo(ChronoUnit.SECONDS), waiting()))
            .orElse("up to date, %s sent".formatted(points(standing.sent()))));
    if (standing.historyLeft()) {
      says.add(
          "of the history %d %% is there (%d of about %d readings)"
              .formatted(sharePct(), standing.historySent(), standing.historyTotal()));
    }
    trouble.ifPresent(says::add);
    countTrouble.ifPresent(says::add);
    if (standing.parked() > 0) {
      says.add(
          "%s refused by the server and parked%s; mend it there and start Coatwright again, which"
                  .formatted(points(standing.parked()), lastRefusal.map(r -> ": " + r).orElse(""))
              + " sends them again");
    }
    if (standing.tooOld() > 0) {
      says.add(points(standing.tooOld()) + " are older than the server keeps any");
    }
    return String.join("; ", says);
  }

  private String waiting() {
    return standing.waiting() == 0
        ? ""
        : ", " + points(standing.waiting()) + (standing.waiting() == 1 ? " waits" : " wait");
  }

  private long sharePct() {
    return standing.historyTotal() == 0
        ? 0
        : Math.min(99, 100 * standing.historySent() / standing.historyTotal());
  }

  private static String points(long count) {
    return String.format(Locale.ROOT, "%d point%s", count, count == 1 ? "" : "s");
  }
}
