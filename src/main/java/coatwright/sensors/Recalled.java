package coatwright.sensors;

import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Values a sensor is said to have given earlier.
 *
 * @param what the quantity's word where one is named
 * @param first the value, or the temperature of a pair
 * @param second the humidity of a pair
 */
record Recalled(Optional<String> what, OptionalDouble first, OptionalDouble second, Instant at) {
  Recalled at(Instant other) {
    return new Recalled(what, first, second, other);
  }

  /**
   * Puts the values into a sample; one without a name belongs to the nearest of those given now.
   */
  void into(Sample earlier, Map<Quantity, Double> now) {
    if (second.isPresent()) {
      earlier.put(Quantity.AIR_TEMPERATURE, first.orElse(0));
      earlier.put(Quantity.RELATIVE_HUMIDITY, second.getAsDouble());
      return;
    }
    if (first.isEmpty()) {
      return;
    }
    double value = first.getAsDouble();
    boolean humidity =
        what.map(word -> word.toLowerCase(java.util.Locale.ROOT))
            .filter(word -> word.equals("humidity") || word.equals("rh"))
            .isPresent();
    if (humidity) {
      earlier.put(Quantity.RELATIVE_HUMIDITY, value);
      return;
    }
    now.entrySet().stream()
        .filter(each -> !each.getKey().ofBattery())
        .filter(each -> what.isEmpty() || each.getKey().isTemperature())
        .min(java.util.Comparator.comparingDouble(each -> Math.abs(each.getValue() - value)))
        .ifPresent(nearest -> earlier.put(nearest.getKey(), value));
  }
}
