package coatwright.sensors;

import coatwright.sensors.Neighbours.Neighbour;
import coatwright.sensors.Neighbours.Standing;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How far one sensor stands from the others of its room, averaged over half a day: in humidity at
 * its own temperature, which is in vapour, and in temperature. It takes a day of company before it
 * says anything. Belongs to the thread that reads payloads.
 *
 * <p>Spirit and lacquer vapours make capacitive elements read low (their makers' handling
 * instructions), which hides clouding. So of two that differ the lower is suspected, unless the
 * other is a reference or in doubt itself; one that differs from two which agree is suspected
 * whichever way.
 */
final class Drift {
  private static final double FADE_S = Duration.ofHours(12).toSeconds();
  private static final Duration LONGEST_STEP = Duration.ofMinutes(30);
  private static final Duration TELLS_AFTER = Duration.ofHours(24);
  private static final double LIMIT = 2;
  private static final double LET_GO = 0.8;
  private static final double WARM_K = 0.7;

  private double meanPct;
  private double meanK;
  private Duration together = Duration.ZERO;
  private Optional<Instant> last = Optional.empty();
  private boolean drifting;

  /**
   * Takes one pair in, corrected.
   *
   * @param rhErrorPct own standard uncertainty, its temperature's part included
   */
  void take(double t, double rh, double rhErrorPct, Instant at, List<Neighbour> company) {
    List<Neighbour> sound =
        company.stream().filter(other -> other.standing() != Standing.DOUBTFUL).toList();
    if (sound.isEmpty()) {
      last = Optional.empty();
      return;
    }
    List<Neighbour> references =
        sound.stream().filter(other -> other.standing() == Standing.REFERENCE).toList();
    List<Neighbour> judges = references.isEmpty() ? sound : references;
    List<Double> theirs = judges.stream().map(other -> other.rhAt(t)).sorted().toList();
    average(rh - middle(theirs), warmerBy(t, judges), at);
    double theirError = judges.stream().mapToDouble(Neighbour::rhErrorPct).max().orElse(0);
    boolean agree = theirs.size() > 1 && spread(theirs) <= LIMIT * theirError;
    boolean eitherWay = !references.isEmpty() || agree;
    double limit = LIMIT * Math.hypot(rhErrorPct, theirError) * (drifting ? LET_GO : 1);
    drifting = tells() && (eitherWay ? Math.abs(meanPct) : -meanPct) > limit;
  }

  private void average(double apartPct, double warmerK, Instant at) {
    Duration step = last.map(before -> Duration.between(before, at)).orElse(Duration.ZERO);
    step = step.isNegative() ? Duration.ZERO : step;
    step = step.compareTo(LONGEST_STEP) > 0 ? LONGEST_STEP : step;
    double weight =
        together.isZero() && step.isZero() ? 1 : 1 - Math.exp(-step.toMillis() / 1000.0 / FADE_S);
    meanPct += weight * (apartPct - meanPct);
    meanK += weight * (warmerK - meanK);
    together = together.plus(step);
    last = Optional.of(at);
  }

  private static double warmerBy(double t, List<Neighbour> judges) {
    List<Double> apart =
        judges.stream()
            .filter(other -> other.t().isPresent())
            .map(other -> t - other.t().getAsDouble())
            .sorted()
            .toList();
    return apart.isEmpty() ? 0 : middle(apart);
  }

  private static double middle(List<Double> sorted) {
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : (sorted.get(half - 1) + sorted.get(half)) / 2;
  }

  private static double spread(List<Double> sorted) {
    return sorted.get(sorted.size() - 1) - sorted.get(0);
  }

  private boolean tells() {
    return together.compareTo(TELLS_AFTER) >= 0;
  }

  boolean drifting() {
    return drifting;
  }

  /** It has stood warmer than the rest of the room for a day, at the same vapour. */
  boolean warm() {
    return tells() && !drifting && meanK > WARM_K;
  }
}
