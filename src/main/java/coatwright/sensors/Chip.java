package coatwright.sensors;

import java.util.Locale;
import java.util.Map;

/**
 * The type of the sensing element: how far it may be off when new, how its humidity drifts, and
 * which values it sends when it has none.
 *
 * <p>Figures: data sheets of the chip types (DHT11 ±5 %, ±2 °C; DHT22 ±2 %, at most 5; SHT3x ±2..3
 * %; SHT4x ±1..1.8 %; SHTC3 ±2 %; BME280 and BME680 ±3 %; DS18B20 ±0.5 °C from −10 to 85 °C),
 * gathered into three classes. They are taken as standard uncertainties, which is on the careful
 * side. The growth of 0.5 points of RH a year is common practice, no source.
 *
 * @param name as the settings give it, or "unknown"
 */
public record Chip(String name, double temperatureErrorK, double rhErrorPct) {
  private static final Chip A = new Chip("A", 0.3, 2);
  private static final Chip B = new Chip("B", 0.6, 3.5);
  private static final Chip C = new Chip("C", 2, 6);
  private static final Map<String, Chip> CLASSES =
      Map.ofEntries(
          Map.entry("a", A),
          Map.entry("b", B),
          Map.entry("c", C),
          Map.entry("dht11", C),
          Map.entry("dht22", B),
          Map.entry("am2302", B),
          Map.entry("sht30", B),
          Map.entry("sht31", A),
          Map.entry("sht35", A),
          Map.entry("sht40", A),
          Map.entry("sht41", A),
          Map.entry("sht43", A),
          Map.entry("sht45", A),
          Map.entry("shtc3", A),
          Map.entry("bme280", B),
          Map.entry("bme680", B),
          Map.entry("htu21d", B),
          Map.entry("ds18b20", new Chip("ds18b20", 0.5, 0)));

  /** What is assumed where no chip is named: the middle class. */
  public static final Chip UNKNOWN = new Chip("unknown", B.temperatureErrorK, B.rhErrorPct);

  static final double RH_GROWTH_PCT_PER_YEAR = 0.5;

  static java.util.Optional<Chip> of(String name) {
    Chip found = CLASSES.get(name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", ""));
    return java.util.Optional.ofNullable(found)
        .map(kind -> new Chip(name, kind.temperatureErrorK, kind.rhErrorPct));
  }

  static java.util.List<String> known() {
    return CLASSES.keySet().stream().sorted().toList();
  }

  /** True of the one-wire probe, whose power-on register reads 85 °C. */
  boolean oneWireProbe() {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "").equals("ds18b20");
  }
}
