package coatwright.sensors;

import java.util.Arrays;
import java.util.List;

/** A unit a sender may use, by its UCUM code (Unified Code for Units of Measure). */
public enum Unit {
  CEL("Cel"),
  DEG_F("[degF]"),
  KELVIN("K"),
  PERCENT("%"),
  ONE("1"),
  MILLIVOLT("mV"),
  VOLT("V");

  private static final double ZERO_CELSIUS_K = 273.15;
  private final String code;

  Unit(String code) {
    this.code = code;
  }

  boolean fits(Quantity quantity) {
    return codesFor(quantity).contains(this);
  }

  static List<Unit> codesFor(Quantity quantity) {
    return switch (quantity) {
      case AIR_TEMPERATURE, SURFACE_TEMPERATURE -> List.of(CEL, DEG_F, KELVIN);
      case RELATIVE_HUMIDITY, BATTERY_LEVEL -> List.of(PERCENT, ONE);
      case BATTERY_VOLTAGE -> List.of(MILLIVOLT, VOLT);
    };
  }

  /** The sent value in the house's unit: °C, % of relative humidity, fraction of charge, V. */
  double toHouse(Quantity quantity, double sent) {
    return switch (this) {
      case CEL, VOLT -> sent;
      case DEG_F -> (sent - 32) / 1.8;
      case KELVIN -> sent - ZERO_CELSIUS_K;
      case PERCENT -> quantity == Quantity.BATTERY_LEVEL ? sent / 100 : sent;
      case ONE -> quantity == Quantity.BATTERY_LEVEL ? sent : sent * 100;
      case MILLIVOLT -> sent / 1000;
    };
  }

  /** A value in the house's unit as a sender of this one would print it. */
  double fromHouse(Quantity quantity, double value) {
    return switch (this) {
      case CEL, VOLT -> value;
      case DEG_F -> value * 1.8 + 32;
      case KELVIN -> value + ZERO_CELSIUS_K;
      case PERCENT -> quantity == Quantity.BATTERY_LEVEL ? value * 100 : value;
      case ONE -> quantity == Quantity.BATTERY_LEVEL ? value : value / 100;
      case MILLIVOLT -> value * 1000;
    };
  }

  static java.util.Optional<Unit> of(String code) {
    return Arrays.stream(values()).filter(unit -> unit.code.equals(code)).findFirst();
  }

  /** The UCUM code. */
  @Override
  public String toString() {
    return code;
  }
}
