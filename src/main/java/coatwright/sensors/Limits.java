package coatwright.sensors;

import coatwright.climate.Role;
import java.util.EnumMap;
import java.util.Map;

/**
 * How far a value may go: outside the hard pair it is refused, outside the plausible pair held
 * back.
 *
 * <p>Hard temperatures are the range of the common sensor chips' data sheets; the plausible pairs
 * are common practice for a shop, no source. Any of them can be overridden in the settings.
 */
public record Limits(double hardLow, double hardHigh, double plausibleLow, double plausibleHigh) {
  public Limits {
    if (!(hardLow <= plausibleLow && plausibleLow < plausibleHigh && plausibleHigh <= hardHigh)) {
      throw new IllegalArgumentException(
          "limits must nest: hard %s..%s, plausible %s..%s"
              .formatted(hardLow, hardHigh, plausibleLow, plausibleHigh));
    }
  }

  boolean hard(double value) {
    return value >= hardLow && value <= hardHigh;
  }

  boolean plausible(double value) {
    return value >= plausibleLow && value <= plausibleHigh;
  }

  /** What holds where the settings say nothing. */
  static Map<Quantity, Limits> usual(Role role, Chip chip) {
    Map<Quantity, Limits> usual = new EnumMap<>(Quantity.class);
    boolean outside = role == Role.OUTSIDE;
    usual.put(
        Quantity.AIR_TEMPERATURE,
        outside ? new Limits(-40, 85, -40, 50) : new Limits(-40, 85, -10, 45));
    usual.put(
        Quantity.SURFACE_TEMPERATURE,
        chip.oneWireProbe() ? new Limits(-55, 125, -10, 60) : new Limits(-40, 85, -10, 60));
    usual.put(
        Quantity.RELATIVE_HUMIDITY,
        outside ? new Limits(0, 103, 5, 103) : new Limits(0, 103, 8, 98));
    usual.put(Quantity.BATTERY_LEVEL, new Limits(0, 1.1, 0, 1.1));
    usual.put(Quantity.BATTERY_VOLTAGE, new Limits(0, 60, 0, 60));
    return usual;
  }
}
