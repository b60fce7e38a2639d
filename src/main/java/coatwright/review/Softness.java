package coatwright.review;

import coatwright.film.AirCourse;
import coatwright.film.Finish;
import coatwright.film.Percentiles;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.OptionalDouble;

/**
 * How long a film stays soft, by the model of its finish.
 *
 * @param ready range of the time to {@code goal} in the air that was, s from the last coat
 * @param readyS by the plain run; empty where it does not get there
 * @param inReferenceS the same in the finish's reference air
 * @param goal what it is waited for, in words: {@code ready to rub out}
 * @param beyond what is said of a time past the horizon
 */
record Softness(
    String part,
    Finish finish,
    Percentiles ready,
    OptionalDouble readyS,
    OptionalDouble inReferenceS,
    AirCourse air,
    double lastCoatS,
    String goal,
    String beyond) {
  private static final double SLOWER = 1.25;
  private static final int SAMPLES = 96;

  /** Whether the air that was adds a quarter or more to the wait. */
  boolean slower() {
    if (readyS.isEmpty() || inReferenceS.isEmpty()) {
      return inReferenceS.isPresent();
    }
    return readyS.getAsDouble() >= SLOWER * inReferenceS.getAsDouble();
  }

  /** A film that gets there where this one does not, or plainly before it. */
  boolean isSooner(OptionalDouble otherS) {
    return otherS.isPresent()
        && (readyS.isEmpty() || otherS.getAsDouble() <= Why.HELPS * readyS.getAsDouble());
  }

  String days(OptionalDouble seconds) {
    return seconds.isPresent()
        ? Show.duration(Duration.ofSeconds((long) seconds.getAsDouble()))
        : beyond;
  }

  String after(OptionalDouble seconds) {
    return goal + " after " + days(seconds);
  }

  String was() {
    return after(readyS);
  }

  String referenceWords() {
    return "the air at "
        + Show.temperature(finish.referenceTempC(), UnitSystem.METRIC)
        + " and "
        + Show.relativeHumidity(finish.referenceRhPct())
        + " throughout";
  }

  /** Mean of the air since the last coat. */
  String meanAir(double ageS) {
    double sum = 0;
    for (int i = 0; i < SAMPLES; i++) {
      sum += air.airTempCAt(lastCoatS + ageS * (i + 0.5) / SAMPLES);
    }
    return Show.temperature(sum / SAMPLES, UnitSystem.METRIC);
  }
}
