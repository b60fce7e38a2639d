package coatwright.outlook;

import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.quantity.Show;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Why a date moved, in words, by comparing what two predictions knew. */
final class MoveReason {
  private static final double TOLD_K = 0.5;
  private static final Duration TOLD_GAP = Duration.ofMinutes(30);

  private final ZoneId zone;

  MoveReason(ZoneId zone) {
    this.zone = zone;
  }

  /**
   * The reason in words.
   *
   * @param otherwise what called for the prediction, when nothing below explains the move
   */
  String of(PartPrediction before, PartPrediction after, String otherwise) {
    return coats(before, after)
        .or(() -> observation(before, after))
        .or(() -> gap(before, after))
        .or(() -> air(before, after))
        .orElse(otherwise);
  }

  private Optional<String> coats(PartPrediction before, PartPrediction after) {
    int was = before.job().laid().size();
    int is = after.job().laid().size();
    if (is > was) {
      Entry last = after.job().laid().get(is - 1);
      return Optional.of("coat " + is + " went on at " + time(((Coat) last.body()).start(), after));
    }
    return ids(before.job().laid()).equals(ids(after.job().laid()))
        ? Optional.empty()
        : Optional.of("a coat was struck out or written anew");
  }

  private Optional<String> observation(PartPrediction before, PartPrediction after) {
    Set<String> known = ids(before.observations());
    List<Entry> fresh = after.observations().stream().filter(e -> !known.contains(e.id())).toList();
    if (fresh.isEmpty()) {
      return known.equals(ids(after.observations()))
          ? Optional.empty()
          : Optional.of("a note was struck out");
    }
    Entry last = fresh.get(fresh.size() - 1);
    return Optional.of(said(last, after));
  }

  String said(Entry e, PartPrediction p) {
    Observation o = (Observation) e.body();
    String at = " at " + time(e.at(), p);
    return switch (o.what()) {
      case TACKY -> "still tacky" + at;
      case RUBBED_OUT ->
          o.passed().orElse(false)
              ? "rubbed out and stayed fine" + at
              : "rubbed out, not fine," + at;
      case TOUCH, THUMBNAIL, POWDER, SMELL, PRINT ->
          o.what() + " test " + (o.passed().orElse(false) ? "passed" : "failed") + at;
      case WEIGHED ->
          Judge.text("weighed with %.1f %% still solvent", o.residuePct().orElse(0)) + at;
      case CARRIED_IN -> "carried in" + at;
      case CLOUDED, CLEARED -> o.what() + at;
    };
  }

  private String time(Instant at, PartPrediction p) {
    return Times.near(at, p.madeAt(), zone);
  }

  private static Set<String> ids(List<Entry> entries) {
    return entries.stream().map(Entry::id).collect(Collectors.toCollection(HashSet::new));
  }

  private static Optional<String> gap(PartPrediction before, PartPrediction after) {
    Duration was = total(before.job().gaps());
    Duration is = total(after.job().gaps());
    Duration more = is.minus(was);
    return more.compareTo(TOLD_GAP) >= 0
        ? Optional.of(Show.duration(more) + " without readings")
        : Optional.empty();
  }

  static Duration total(List<Gap> gaps) {
    Duration sum = Duration.ZERO;
    for (Gap gap : gaps) {
      sum = sum.plus(gap.length());
    }
    return sum;
  }

  /** What the room was to do by the older prediction, against what it did. */
  private Optional<String> air(PartPrediction before, PartPrediction after) {
    double fromS = after.job().onClockS(before.madeAt());
    double toS = after.job().onClockS(after.madeAt());
    if (!before.job().zero().equals(after.job().zero()) || toS - fromS < 600) {
      return Optional.empty();
    }
    double expected = mean(before.job().air(), fromS, toS);
    double was = mean(after.job().air(), fromS, toS);
    double moreK = was - expected;
    return Math.abs(moreK) < TOLD_K
        ? Optional.empty()
        : Optional.of(
            Judge.text(
                "the room was %.1f K %s than expected %s",
                Math.abs(moreK),
                moreK < 0 ? "cooler" : "warmer",
                span(before.madeAt(), after.madeAt())));
  }

  private String span(Instant from, Instant to) {
    LocalTime start = from.atZone(zone).toLocalTime();
    LocalTime end = to.atZone(zone).toLocalTime();
    boolean night =
        Duration.between(from, to).toHours() < 18
            && !start.isBefore(LocalTime.of(16, 0))
            && !end.isBefore(LocalTime.of(4, 0))
            && end.isBefore(LocalTime.NOON);
    return night ? "overnight" : "since " + Times.near(from, to, zone);
  }

  private static double mean(AirCourse air, double fromS, double toS) {
    int n = 96;
    double sum = 0;
    for (int i = 0; i < n; i++) {
      sum += air.airTempCAt(fromS + (toS - fromS) * (i + 0.5) / n);
    }
    return sum / n;
  }
}
