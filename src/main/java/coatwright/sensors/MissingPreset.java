package coatwright.sensors;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Values that a kind of sensor sends when it has none, by name, in °C, % and parts of full charge.
 * Source of the one-wire power-on value: DS18B20 data sheet; of the transfer formulas: data sheets
 * of the SHT3x, SHT4x and HTU21D types; the rest: common drivers, common practice, no source.
 */
enum MissingPreset {
  /** The one-wire probe: its power-on register, and what drivers give when nothing answers. */
  ONE_WIRE_PROBE("one-wire-probe"),
  /** Capacitive humidity chips: raw words of all zeros or all ones through their formulas. */
  CAPACITIVE_CHIP("capacitive-chip"),
  /** Radio cluster numbers: the attribute's own invalid values, and the −100 of an empty cell. */
  RADIO_CLUSTER("radio-cluster"),
  /** Error numbers of common sensor libraries. */
  LIBRARY_CODES("library-codes");

  private final String word;

  MissingPreset(String word) {
    this.word = word;
  }

  private List<Double> temperatures() {
    return switch (this) {
      case ONE_WIRE_PROBE -> List.of(85.0, -127.0);
      case CAPACITIVE_CHIP -> List.of(-45.0, -46.8, -46.85, -46.9, 130.0, 128.8, 128.87, 128.9);
      case RADIO_CLUSTER -> List.of(-327.68, -100.0);
      case LIBRARY_CODES -> List.of(-999.0, -998.0, 998.0, 999.0);
    };
  }

  private List<Double> humidities() {
    return switch (this) {
      case ONE_WIRE_PROBE -> List.of();
      case CAPACITIVE_CHIP -> List.of(0.0, -6.0, 119.0, 118.99);
      case RADIO_CLUSTER -> List.of(655.35, -100.0);
      case LIBRARY_CODES -> List.of(-999.0, -998.0, -1.0, 998.0, 999.0);
    };
  }

  private List<Double> of(Quantity quantity) {
    return switch (quantity) {
      case AIR_TEMPERATURE, SURFACE_TEMPERATURE -> temperatures();
      case RELATIVE_HUMIDITY -> humidities();
      case BATTERY_LEVEL -> this == RADIO_CLUSTER ? List.of(1.275, 2.55) : List.of();
      case BATTERY_VOLTAGE -> List.of();
    };
  }

  static Optional<MissingPreset> of(String word) {
    return Arrays.stream(values()).filter(preset -> preset.word.equals(word)).findFirst();
  }

  /** The preset that goes with a chip; empty where none does. */
  static Optional<MissingPreset> of(Chip chip) {
    if (chip.oneWireProbe()) {
      return Optional.of(ONE_WIRE_PROBE);
    }
    String name = chip.name().toLowerCase(java.util.Locale.ROOT);
    return name.startsWith("sht") || name.startsWith("htu")
        ? Optional.of(CAPACITIVE_CHIP)
        : Optional.empty();
  }

  /** The values for a quantity, as a sender of that unit writes them. */
  List<String> in(Quantity quantity, Unit unit) {
    return of(quantity).stream()
        .map(value -> Double.toString(unit.fromHouse(quantity, value)))
        .toList();
  }

  @Override
  public String toString() {
    return word;
  }
}
