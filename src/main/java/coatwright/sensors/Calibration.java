package coatwright.sensors;

import coatwright.climate.Reading;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;

/** Puts a source's dated corrections on a believed sample, and says how far it may still be off. */
final class Calibration {
  private static final double DAYS_PER_YEAR = 365.25;
  private static final double HUMID_PCT = 90;
  private static final double BEYOND_THE_CHECK_PCT = 2;

  private final SourceMapping mapping;

  Calibration(SourceMapping mapping) {
    this.mapping = mapping;
  }

  void correct(Sample sample) {
    for (Quantity quantity : sample.values().keySet()) {
      Optional<Correction> correction = holding(quantity, sample.at);
      if (correction.isPresent()) {
        sample.put(quantity, correction.get().applyTo(sample.value(quantity).getAsDouble()));
        sample.flag("corrected");
      }
    }
    LimitRules.clip(sample);
  }

  private Optional<Correction> holding(Quantity quantity, Instant at) {
    return mapping.corrections().stream()
        .filter(each -> each.quantity() == quantity && !each.from().isAfter(at))
        .max(Comparator.comparing(Correction::from));
  }

  /** The believed sample as the house keeps it. */
  Reading reading(Sample sample) {
    SourceMapping.Placing placing = mapping.placing();
    String name = sample.sensor.orElse(sample.key.isEmpty() ? mapping.source() : sample.key);
    return new Reading(
        mapping.source(),
        name,
        placing.role(),
        placing.room(),
        placing.part(),
        sample.at,
        sample.value(Quantity.AIR_TEMPERATURE),
        sample.value(Quantity.RELATIVE_HUMIDITY),
        sample.value(Quantity.SURFACE_TEMPERATURE),
        placing.chip().temperatureErrorK(),
        rhErrorPct(sample),
        sample.flags());
  }

  /** The class of the chip, more with the years since its last check, more beyond that check. */
  private double rhErrorPct(Sample sample) {
    double error = mapping.placing().chip().rhErrorPct();
    Optional<Correction> check = holding(Quantity.RELATIVE_HUMIDITY, sample.at);
    if (check.isPresent()) {
      double years = Duration.between(check.get().from(), sample.at).toDays() / DAYS_PER_YEAR;
      error += Chip.RH_GROWTH_PCT_PER_YEAR * years;
      if (sample.value(Quantity.RELATIVE_HUMIDITY).orElse(0) > HUMID_PCT) {
        error += BEYOND_THE_CHECK_PCT;
      }
    }
    return error;
  }
}
