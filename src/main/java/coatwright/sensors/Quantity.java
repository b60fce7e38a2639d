package coatwright.sensors;

/** What a reading is a reading of. */
public enum Quantity {
  AIR_TEMPERATURE("air-temperature", "temperatureC"),
  RELATIVE_HUMIDITY("relative-humidity", "rhPct"),
  SURFACE_TEMPERATURE("surface-temperature", "surfaceTemperatureC"),
  BATTERY_LEVEL("battery-level", "battery"),
  BATTERY_VOLTAGE("battery-voltage", "battery");

  private final String word;
  private final String field;

  Quantity(String word, String field) {
    this.word = word;
    this.field = field;
  }

  /** The field it fills in what {@code listen} prints. */
  public String field() {
    return field;
  }

  /** True of what says how the sensor is, not how the air is. */
  boolean ofBattery() {
    return this == BATTERY_LEVEL || this == BATTERY_VOLTAGE;
  }

  boolean isTemperature() {
    return this == AIR_TEMPERATURE || this == SURFACE_TEMPERATURE;
  }

  /** The word used in settings. */
  @Override
  public String toString() {
    return word;
  }
}
