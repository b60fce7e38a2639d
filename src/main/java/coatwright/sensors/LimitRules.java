package coatwright.sensors;

import coatwright.air.SaturationPressure;
import coatwright.climate.Role;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What a single value gives away: outside the hard limits it is refused, outside the plausible ones
 * held back with what it looks like. Never converted in silence.
 *
 * <p>A temperature that is an error code takes the humidity of the same message with it, because
 * the element compensates one by the other. A humidity that is one leaves the temperature standing,
 * unless both say the same code or stand at their ends together.
 */
final class LimitRules {
  private static final double HIGHEST_TRUE_RH_PCT = 100;
  private static final double SAME = 1e-9;
  private static final double[] SCALES = {10, 100};

  /** Drier than any heated shop, °C; common practice, no source. */
  private static final double DRIEST_DEW_POINT_C = -15;

  /**
   * Damper than outdoor air gets but in the hottest harbours, °C; common practice, no source. Steam
   * indoors goes beyond it, so it is marked and believed.
   */
  private static final double DAMP_DEW_POINT_C = 26;

  /** Beyond any outdoor air, °C; from memory. */
  private static final double DAMPEST_DEW_POINT_C = 36;

  /** Below this, air with hardly any water in it is nothing odd. */
  private static final double COLD_C = 5;

  private final Map<Quantity, Limits> limits;
  private final boolean dewPointToo;

  /**
   * @param dewPointToo the air's dew point is judged too: indoors, where the settings set no limits
   *     of their own
   */
  LimitRules(Map<Quantity, Limits> limits, boolean dewPointToo) {
    this.limits = limits;
    this.dewPointToo = dewPointToo;
  }

  static LimitRules of(SourceMapping mapping) {
    SourceMapping.Placing placing = mapping.placing();
    Map<Quantity, Limits> usual = Limits.usual(placing.role(), placing.chip());
    boolean usualAir =
        Stream.of(Quantity.AIR_TEMPERATURE, Quantity.RELATIVE_HUMIDITY)
            .allMatch(each -> Objects.equals(usual.get(each), mapping.limits().get(each)));
    return new LimitRules(mapping.limits(), usualAir && placing.role() != Role.OUTSIDE);
  }

  /** The hard limits. */
  void refuse(Sample sample) {
    double t = sample.value(Quantity.AIR_TEMPERATURE).orElse(Double.NaN);
    double rh = sample.value(Quantity.RELATIVE_HUMIDITY).orElse(Double.NaN);
    Optional<String> pair = pair(t, rh);
    if (pair.isPresent()) {
      sample.refuseReadings(pair.get());
      return;
    }
    for (Quantity quantity : Quantity.values()) {
      OptionalDouble value = sample.value(quantity);
      if (value.isPresent()) {
        refuse(sample, quantity, value.getAsDouble());
      }
    }
  }

  private Optional<String> pair(double t, double rh) {
    if (Double.isNaN(t) || Double.isNaN(rh)) {
      return Optional.empty();
    }
    Limits hard = limit(Quantity.AIR_TEMPERATURE);
    boolean rhRefused = rhRefusal(rh).isPresent();
    if (rhRefused && Math.abs(t - rh) < SAME) {
      return Optional.of(
          "error code %s for both temperature and humidity".formatted(Text.plain(t)));
    }
    boolean tAtEnd = Math.abs(t - hard.hardLow()) < SAME || Math.abs(t - hard.hardHigh()) < SAME;
    boolean rhAtEnd = Math.abs(rh) < SAME || Math.abs(rh - HIGHEST_TRUE_RH_PCT) < SAME;
    return tAtEnd && rhAtEnd
        ? Optional.of(
            "%s °C and %s %% RH: both outputs at their ends together, a failed read"
                .formatted(Text.plain(t), Text.plain(rh)))
        : Optional.empty();
  }

  private void refuse(Sample sample, Quantity quantity, double value) {
    if (quantity == Quantity.RELATIVE_HUMIDITY) {
      rhRefusal(value).ifPresent(reason -> sample.refuse(quantity, reason));
      return;
    }
    Limits limit = limit(quantity);
    if (limit.hard(value)) {
      return;
    }
    if (!quantity.isTemperature()) {
      sample.refuse(quantity, outside(value, "", limit.hardLow(), limit.hardHigh()));
      return;
    }
    Optional<String> unit = looksLikeUnit(value, limit);
    if (unit.isPresent()) {
      sample.hold(
          "%s °C out of range; %s; check the unit".formatted(Text.plain(value), unit.get()));
      return;
    }
    String reason =
        outside(value, " °C", limit.hardLow(), limit.hardHigh()) + temperatureHint(value, limit);
    sample.refuse(quantity, reason);
    if (quantity == Quantity.AIR_TEMPERATURE && sample.has(Quantity.RELATIVE_HUMIDITY)) {
      sample.refuse(
          Quantity.RELATIVE_HUMIDITY, "the same message carries an impossible temperature");
    }
  }

  private Optional<String> rhRefusal(double rh) {
    Limits limit = limit(Quantity.RELATIVE_HUMIDITY);
    if (rh > limit.hardHigh()) {
      return Optional.of(
          "%s %% RH is above %s%s"
              .formatted(Text.plain(rh), Text.plain(limit.hardHigh()), rhHint(rh)));
    }
    if (rh < 0) {
      return Optional.of("%s %% RH is below 0: an error code".formatted(Text.plain(rh)));
    }
    if (rh < SAME || Math.abs(rh - 1) < SAME) {
      return Optional.of(
          "exactly %s %% RH does not occur in air: a failed read, or a dead element if it stays"
              .formatted(Text.plain(rh)));
    }
    return rh < limit.hardLow()
        ? Optional.of(outside(rh, " % RH", limit.hardLow(), limit.hardHigh()))
        : Optional.empty();
  }

  /** The plausible limits; humidity near saturation is the history's to judge. */
  void hold(Sample sample) {
    lostCalibration(sample);
    plausible(sample);
    dewPoint(sample);
  }

  /** Both wrong in one message is one cause: the chip has lost its own calibration. */
  private void lostCalibration(Sample sample) {
    OptionalDouble t = sample.value(Quantity.AIR_TEMPERATURE);
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (t.isEmpty() || rh.isEmpty()) {
      return;
    }
    boolean tOff =
        !limit(Quantity.AIR_TEMPERATURE).plausible(t.getAsDouble())
            && looksLikeUnit(t.getAsDouble(), limit(Quantity.AIR_TEMPERATURE)).isEmpty();
    if (tOff && !limit(Quantity.RELATIVE_HUMIDITY).plausible(rh.getAsDouble())) {
      sample.hold(
          "%s °C and %s %% RH are both outside what a shop has: has the chip lost its calibration? Take its power away and give it again"
              .formatted(Text.plain(t.getAsDouble()), Text.plain(rh.getAsDouble())));
    }
  }

  private void dewPoint(Sample sample) {
    OptionalDouble t = sample.value(Quantity.AIR_TEMPERATURE);
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (!dewPointToo || sample.isHeld() || t.isEmpty() || rh.isEmpty()) {
      return;
    }
    double pct = Math.min(HIGHEST_TRUE_RH_PCT, rh.getAsDouble());
    double dewPointC =
        SaturationPressure.dewPointC(pct / 100 * SaturationPressure.overWaterPa(t.getAsDouble()));
    if (dewPointC > DAMP_DEW_POINT_C) {
      sample.flag("very_damp");
    }
    boolean dry = t.getAsDouble() > COLD_C && dewPointC < DRIEST_DEW_POINT_C;
    if (dry || dewPointC > DAMPEST_DEW_POINT_C) {
      sample.hold(
          "%s °C at %s %% RH is a dew point of %s °C, outside what a shop has (%s to %s); set limits of your own if this is right"
              .formatted(
                  Text.plain(t.getAsDouble()),
                  Text.plain(rh.getAsDouble()),
                  Text.tenth(dewPointC),
                  Text.plain(DRIEST_DEW_POINT_C),
                  Text.plain(DAMPEST_DEW_POINT_C)));
    }
  }

  private void plausible(Sample sample) {
    for (Quantity quantity :
        new Quantity[] {Quantity.AIR_TEMPERATURE, Quantity.SURFACE_TEMPERATURE}) {
      OptionalDouble value = sample.value(quantity);
      Limits limit = limit(quantity);
      if (value.isPresent() && !limit.plausible(value.getAsDouble())) {
        sample.hold(
            "%s °C is outside what a shop has (%s to %s)%s"
                .formatted(
                    Text.plain(value.getAsDouble()),
                    Text.plain(limit.plausibleLow()),
                    Text.plain(limit.plausibleHigh()),
                    looksLikeUnit(value.getAsDouble(), limit)
                        .map(unit -> "; " + unit + "; check the unit")
                        .orElse("")));
      }
    }
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    Limits limit = limit(Quantity.RELATIVE_HUMIDITY);
    if (rh.isPresent() && rh.getAsDouble() < 1) {
      sample.hold(
          "rh %s %% looks like a fraction; set unit: \"1\" if it is"
              .formatted(Text.plain(rh.getAsDouble())));
    } else if (rh.isPresent() && rh.getAsDouble() < limit.plausibleLow()) {
      sample.hold(
          "rh %s %% is drier than a shop gets (%s); a tenth of the true value?"
              .formatted(Text.plain(rh.getAsDouble()), Text.plain(limit.plausibleLow())));
    }
  }

  /** Up to 103 % can be the sensor's tolerance near saturation: used as 100, and flagged. */
  static void clip(Sample sample) {
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    if (rh.isPresent() && rh.getAsDouble() > HIGHEST_TRUE_RH_PCT) {
      sample.put(Quantity.RELATIVE_HUMIDITY, HIGHEST_TRUE_RH_PCT);
      sample.flag("clipped_above_100");
    }
  }

  private Limits limit(Quantity quantity) {
    Limits found = limits.get(quantity);
    if (found == null) {
      throw new IllegalStateException("no limits for " + quantity);
    }
    return found;
  }

  private static Optional<String> looksLikeUnit(double sent, Limits limit) {
    double fromF = Unit.DEG_F.toHouse(Quantity.AIR_TEMPERATURE, sent);
    if (limit.plausible(fromF)) {
      return Optional.of("looks like [degF], which would be %s °C".formatted(Text.tenth(fromF)));
    }
    double fromK = Unit.KELVIN.toHouse(Quantity.AIR_TEMPERATURE, sent);
    return limit.plausible(fromK)
        ? Optional.of("looks like K, which would be %s °C".formatted(Text.tenth(fromK)))
        : Optional.empty();
  }

  private static String temperatureHint(double value, Limits limit) {
    for (double scale : SCALES) {
      if (value > 0 && limit.plausible(value / scale)) {
        return "; %s times too large?".formatted(Text.plain(scale));
      }
    }
    return "; an error code";
  }

  /** Driver faults that show: a top bit set in tenths, or a scale missed. */
  private static String rhHint(double rh) {
    double word = rh * 10 - 32768;
    if (word > 80 && word <= 1000) {
      return "; top bit set, would be %s".formatted(Text.tenth(word / 10));
    }
    for (double scale : SCALES) {
      if (rh / scale >= 8 && rh / scale <= 98) {
        return "; %s times too large?".formatted(Text.plain(scale));
      }
    }
    return "; an error code";
  }

  private static String outside(double value, String unit, double low, double high) {
    return "%s%s is out of range (%s to %s)"
        .formatted(Text.plain(value), unit, Text.plain(low), Text.plain(high));
  }
}
