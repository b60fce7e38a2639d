package coatwright.sensors;

import coatwright.climate.Mistrust;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Puts a source's dated corrections on a believed sample, and says how far it may still be off:
 * those of the settings and those found by checks against salts, the newest that has begun.
 *
 * <p>Humidity is taken to get less sure by half a point a year, and by one point for every hundred
 * hours of finishing in the sensor's room, since it was last checked: common practice, no source.
 */
final class Calibration {
  private static final double DAYS_PER_YEAR = 365.25;
  private static final double HUMID_PCT = 90;
  private static final double BEYOND_THE_CHECK_PCT = 2;
  private static final double HOURS_FOR_A_POINT = 100;
  private static final double SHOWN = 100;
  private static final double POINTS_PER_K = 0.062;

  /** Between checks: common practice, no source. */
  private static final Duration QUARTER = Duration.ofDays(91);

  private static final Duration HALF_YEAR = Duration.ofDays(182);
  private static final Duration STANDS = Duration.ofMinutes(10);

  private final SourceMapping mapping;
  private final Upkeep upkeep;
  private final Map<String, Kept> kept = new HashMap<>();

  private record Kept(Instant at, Optional<Instant> checkedAt, Standing standing) {}

  Calibration(SourceMapping mapping, Upkeep upkeep) {
    this.mapping = mapping;
    this.upkeep = upkeep;
  }

  /**
   * How a sensor stands at an instant.
   *
   * @param rhErrorPct standard uncertainty, points of RH
   * @param lastCheckAt empty before the first
   * @param vapourHours of finishing in its room since, or since it was first heard
   * @param due when it asks for the next check; empty where it reads no humidity or nobody knows
   *     since when it hangs there
   */
  record Standing(
      double rhErrorPct,
      Optional<Instant> lastCheckAt,
      double vapourHours,
      Optional<Instant> due,
      boolean isDue,
      boolean isOverdue) {}

  void correct(Sample sample) {
    for (Quantity quantity : sample.values().keySet()) {
      Optional<Correction> correction = holding(name(sample), quantity, sample.at);
      if (correction.isPresent() && !correction.get().changesNothing()) {
        sample.put(quantity, correction.get().applyTo(sample.value(quantity).getAsDouble()));
        sample.flag("corrected");
      }
    }
    LimitRules.clip(sample);
  }

  private Optional<Correction> holding(String sensor, Quantity quantity, Instant at) {
    List<Upkeep.Check> checks = upkeep.checks(mapping.source(), sensor);
    if (mapping.corrections().isEmpty() && checks.isEmpty()) {
      return Optional.empty();
    }
    List<Correction> all = new ArrayList<>(mapping.corrections());
    checks.forEach(check -> all.add(check.correction()));
    return all.stream()
        .filter(each -> each.quantity() == quantity && !each.from().isAfter(at))
        .max(Comparator.comparing(Correction::from));
  }

  /** Since when a sensor lies in a box with a salt. */
  Optional<Instant> boxedSince(String sensor, Instant at) {
    return upkeep.boxedSince(mapping.source(), sensor, at);
  }

  /** Since when the sample's sensor lies in a box with a salt. */
  Optional<Instant> boxedSince(Sample sample) {
    return upkeep.boxedSince(mapping.source(), name(sample), sample.at);
  }

  /** The humidity a sensor sends, with the correction that holds at that time, %. */
  double corrected(String sensor, double sentRhPct, Instant at) {
    return holding(sensor, Quantity.RELATIVE_HUMIDITY, at)
        .map(correction -> correction.applyTo(sentRhPct))
        .orElse(sentRhPct);
  }

  String name(Sample sample) {
    return sample.sensor.orElse(sample.key.isEmpty() ? mapping.source() : sample.key);
  }

  /** The believed sample as the house keeps it. */
  Reading reading(Sample sample) {
    SourceMapping.Placing placing = mapping.placing();
    double rhErrorPct = placing.chip().rhErrorPct();
    if (sample.has(Quantity.RELATIVE_HUMIDITY)) {
      Standing standing = standingKept(name(sample), sample.at);
      boolean beyond =
          standing.lastCheckAt().isPresent()
              && sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0) > HUMID_PCT;
      rhErrorPct = standing.rhErrorPct() + (beyond ? BEYOND_THE_CHECK_PCT : 0);
      if (standing.isOverdue()) {
        sample.flag(Mistrust.CHECK_OVERDUE.toString());
      }
    }
    return new Reading(
        mapping.source(),
        name(sample),
        placing.role(),
        placing.room(),
        placing.part(),
        sample.at,
        sample.value(Quantity.AIR_TEMPERATURE),
        sample.value(Quantity.RELATIVE_HUMIDITY),
        sample.value(Quantity.SURFACE_TEMPERATURE),
        placing.chip().temperatureErrorK(),
        rhErrorPct,
        sample.flags(),
        sent(sample));
  }

  private static Optional<Reading.Sent> sent(Sample sample) {
    Reading.Sent sent =
        new Reading.Sent(
            sample.sent(Quantity.AIR_TEMPERATURE),
            sample.sent(Quantity.RELATIVE_HUMIDITY),
            sample.sent(Quantity.SURFACE_TEMPERATURE));
    boolean any =
        sent.temperatureC().isPresent()
            || sent.rhPct().isPresent()
            || sent.surfaceTemperatureC().isPresent();
    return any ? Optional.of(sent) : Optional.empty();
  }

  /** What its company has to allow it: humidity's error with what temperature's adds, points. */
  double vapourErrorPct(double rh) {
    SourceMapping.Placing placing = mapping.placing();
    return Math.hypot(
        placing.chip().rhErrorPct(), POINTS_PER_K * rh * placing.chip().temperatureErrorK());
  }

  /** On the reading thread, for every sample: reckoned anew every ten minutes and at a check. */
  private Standing standingKept(String sensor, Instant at) {
    Optional<Instant> checkedAt = lastCheckAt(sensor, at);
    Kept before = kept.get(sensor);
    boolean stands =
        before != null
            && before.checkedAt().equals(checkedAt)
            && Duration.between(before.at(), at).abs().compareTo(STANDS) < 0;
    if (before != null && stands) {
      return before.standing();
    }
    Standing standing = standing(sensor, at);
    kept.put(sensor, new Kept(at, checkedAt, standing));
    return standing;
  }

  private Optional<Instant> lastCheckAt(String sensor, Instant at) {
    return holding(sensor, Quantity.RELATIVE_HUMIDITY, at).map(Correction::from);
  }

  /** How the sensor of that name stands at an instant. Safe for several threads. */
  Standing standing(String sensor, Instant at) {
    double own = mapping.placing().chip().rhErrorPct();
    Optional<Instant> checkedAt = lastCheckAt(sensor, at);
    Optional<Instant> since = checkedAt.or(() -> upkeep.heardSince(mapping.source()));
    if (!readsHumidity() || since.isEmpty() || since.get().isAfter(at)) {
      return new Standing(own, checkedAt, 0, Optional.empty(), false, false);
    }
    double years = Duration.between(since.get(), at).toSeconds() / 86_400.0 / DAYS_PER_YEAR;
    double hours = vapourHours(since.get(), at);
    double grown = Chip.RH_GROWTH_PCT_PER_YEAR * years + hours / HOURS_FOR_A_POINT;
    Instant regular = since.get().plus(interval(sensor, at, checkedAt, hours));
    Instant due =
        mapping
            .placing()
            .room()
            .flatMap(room -> upkeep.cloudedAfter(room, since.get()))
            .filter(regular::isAfter)
            .orElse(regular);
    return new Standing(
        Math.round((own + grown) * SHOWN) / SHOWN,
        checkedAt,
        hours,
        Optional.of(due),
        !due.isAfter(at),
        hours > 0 && !regular.plus(QUARTER).isAfter(at));
  }

  private double vapourHours(Instant from, Instant to) {
    boolean outside = mapping.placing().role() == Role.OUTSIDE;
    return mapping
        .placing()
        .room()
        .filter(room -> !outside)
        .map(room -> upkeep.inVapour(room, from, to).toMinutes() / 60.0)
        .orElse(0.0);
  }

  private Duration interval(
      String sensor, Instant at, Optional<Instant> checkedAt, double vapourHours) {
    long checks =
        upkeep.checks(mapping.source(), sensor).stream()
            .filter(check -> !check.at().isAfter(at))
            .count();
    boolean first = checkedAt.isEmpty() || checks == 1;
    return first || vapourHours > 0 ? QUARTER : HALF_YEAR;
  }

  boolean readsHumidity() {
    return mapping.payload().readings().stream()
        .anyMatch(rule -> rule.quantity() == Quantity.RELATIVE_HUMIDITY);
  }
}
