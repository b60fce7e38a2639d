package coatwright.sensors;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A message no part of which is believed because it would make sense read otherwise: bytes or words
 * the wrong way round, a factor missed. What it would be is said, never used.
 *
 * <p>Temperature and humidity come of one decoder, so that one of them far outside its limits
 * speaks against the other, once a single mistake would put both right.
 */
final class Misread {
  private static final double WHOLE = 0.05;

  /** What is lost of a word by printing it in °F. */
  private static final double ROUNDED = 0.3;

  private static final double SIGN = 32_768;
  private static final double WORDS = 65_536;

  /** Factors that are missed: tenths and hundredths. */
  private static final double[] SCALES = {10, 100};

  /** A whole-number chip read by the decoder for tenths: value × 256 / 10. */
  private static final double OTHER_DECODER = 25.6;

  private final SourceMapping mapping;
  private final SampleReader reader;

  Misread(SourceMapping mapping, SampleReader reader) {
    this.mapping = mapping;
    this.reader = reader;
  }

  /** Takes all readings out of the sample if one mistake explains what is impossible in it. */
  void judge(Sample sample, RawReading raw, List<Opened.Otherwise> otherwise) {
    boolean impossible =
        sample.values().entrySet().stream()
            .filter(each -> !each.getKey().ofBattery())
            .anyMatch(each -> !possible(each.getKey(), each.getValue()));
    if (!impossible) {
      return;
    }
    Optional<String> cause =
        otherOrder(sample, raw, otherwise).or(() -> scale(sample)).or(() -> word(sample));
    cause.ifPresent(
        why -> sample.refuseReadings("%s out of range; %s".formatted(shown(sample.values()), why)));
  }

  private boolean possible(Quantity quantity, double value) {
    Limits limits = mapping.limits().get(quantity);
    boolean zeroHumidity = quantity == Quantity.RELATIVE_HUMIDITY && Math.abs(value) < 1e-9;
    return limits == null || (limits.hard(value) && !zeroHumidity);
  }

  private boolean plausible(Quantity quantity, double value) {
    Limits limits = mapping.limits().get(quantity);
    return limits == null || limits.plausible(value);
  }

  private Optional<String> otherOrder(
      Sample sample, RawReading raw, List<Opened.Otherwise> otherwise) {
    for (Opened.Otherwise each : otherwise) {
      Optional<Sample> other = reader.read(each.cells(), raw);
      boolean fits =
          other.isPresent()
              && other.get().values().keySet().equals(sample.values().keySet())
              && other.get().values().entrySet().stream()
                  .allMatch(value -> plausible(value.getKey(), value.getValue()));
      if (fits) {
        return Optional.of(
            "%s: would be %s".formatted(each.suspicion(), shown(other.get().values())));
      }
    }
    return Optional.empty();
  }

  private Optional<String> scale(Sample sample) {
    OptionalDouble t = sample.value(Quantity.AIR_TEMPERATURE);
    OptionalDouble rh = sample.value(Quantity.RELATIVE_HUMIDITY);
    boolean both =
        t.isPresent()
            && rh.isPresent()
            && !plausible(Quantity.AIR_TEMPERATURE, t.getAsDouble())
            && !possible(Quantity.RELATIVE_HUMIDITY, rh.getAsDouble());
    if (!both) {
      return Optional.empty();
    }
    for (double scale : SCALES) {
      if (fits(t.getAsDouble() / scale, rh.getAsDouble() / scale)) {
        return Optional.of(
            "both %s times too large, the scale is wrong: would be %s °C, %s %%"
                .formatted(
                    Text.plain(scale),
                    Text.plain(t.getAsDouble() / scale),
                    Text.plain(rh.getAsDouble() / scale)));
      }
    }
    double wholeT = t.getAsDouble() / OTHER_DECODER;
    double wholeRh = rh.getAsDouble() / OTHER_DECODER;
    return fits(wholeT, wholeRh) && isWhole(wholeT) && isWhole(wholeRh)
        ? Optional.of(
            "a whole-number sensor read as one of tenths: would be %d °C, %d %%; set its type in the "
                    .formatted(Math.round(wholeT), Math.round(wholeRh))
                + "sender")
        : Optional.empty();
  }

  /** A 16-bit word whose sign was lost, or one that stands for "no sensor". */
  private Optional<String> word(Sample sample) {
    for (Quantity quantity :
        new Quantity[] {Quantity.AIR_TEMPERATURE, Quantity.SURFACE_TEMPERATURE}) {
      OptionalDouble t = sample.value(quantity);
      if (t.isPresent() && !possible(quantity, t.getAsDouble())) {
        for (double scale : SCALES) {
          Optional<String> found = word(quantity, t.getAsDouble() * scale, scale);
          if (found.isPresent()) {
            return found;
          }
        }
      }
    }
    return Optional.empty();
  }

  private Optional<String> word(Quantity quantity, double sent, double scale) {
    long word = Math.round(sent);
    if (Math.abs(sent - word) > ROUNDED || Math.abs(word) > WORDS) {
      return Optional.empty();
    }
    if (word == SIGN - 1 || word == -SIGN) {
      return Optional.of("the largest or smallest 16-bit word, a no-sensor code");
    }
    if (word >= SIGN && plausible(quantity, (word - WORDS) / scale)) {
      return Optional.of(
          "a 16-bit word read without its sign: would be %s °C"
              .formatted(Text.plain((word - WORDS) / scale)));
    }
    if (word > SIGN && plausible(quantity, (SIGN - word) / scale)) {
      return Optional.of(
          "a sign bit read as a number: would be %s °C"
              .formatted(Text.plain((SIGN - word) / scale)));
    }
    double twos = (-SIGN - word) / scale;
    return word < 0 && word > -SIGN && plausible(quantity, twos)
        ? Optional.of(
            "a two's complement word read as sign and number: would be %s °C"
                .formatted(Text.plain(twos)))
        : Optional.empty();
  }

  private boolean fits(double t, double rh) {
    return plausible(Quantity.AIR_TEMPERATURE, t) && plausible(Quantity.RELATIVE_HUMIDITY, rh);
  }

  private static boolean isWhole(double value) {
    return Math.abs(value - Math.round(value)) <= WHOLE;
  }

  private static String shown(Map<Quantity, Double> values) {
    List<String> shown = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      Double value = values.get(quantity);
      if (value != null && !quantity.ofBattery()) {
        shown.add(Text.plain(value) + (quantity.isTemperature() ? " °C" : " % RH"));
      }
    }
    return String.join(", ", shown);
  }
}
