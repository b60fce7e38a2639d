package coatwright.journal;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One line of a sensor's check against salts: it went into the box, it read so much over one salt,
 * or it hangs in its place again. What stands in the log is never rewritten by it.
 *
 * @param source the source's short name
 * @param sensor which of the source's sensors; the source's name where it has one
 * @param point what was read, for {@link Step#READ}
 */
public record SaltCheck(
    String source, String sensor, Step step, Optional<Point> point, Optional<String> note)
    implements EntryBody {
  public SaltCheck {
    if (point.isPresent() != (step == Step.READ)) {
      throw new IllegalArgumentException("a reading over a salt, and only that, has a point");
    }
  }

  /** What was done. */
  public enum Step {
    BEGIN,
    READ,
    END;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A reading over one salt.
   *
   * @param salt its formula
   * @param saltTempC °C
   * @param sensorTempC °C
   * @param expectedRhPct what the salt makes at the sensor's temperature, %
   * @param sentRhPct what the sensor itself read, before any correction, %
   * @param shownRhPct the same with the correction that held until then, %
   * @param changedPct by how much it moved over the last ten minutes, where that is known
   */
  public record Point(
      String salt,
      double saltTempC,
      double sensorTempC,
      double expectedRhPct,
      double sentRhPct,
      double shownRhPct,
      OptionalDouble changedPct) {}

  @Override
  public String kind() {
    return "calibration";
  }
}
