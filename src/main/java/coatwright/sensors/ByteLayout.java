package coatwright.sensors;

import coatwright.climate.Role;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A described order of bytes. The three kinds are described in docs/sensors.md. */
sealed interface ByteLayout permits FixedLayout, ServiceDataLayout, TaggedLayout {
  /** Word of the layout whose offsets the readings give themselves. */
  String FIXED = "fixed";

  String SERVICE_DATA = "bthome-2";
  String TAGGED = "tag byte";
  String REMEDY =
      "write fixed, bthome-2, or a description like \"tag byte 0x04 = T, 0x06 = RH, "
          + "little-endian tenths\"";

  /** Names of the places a layout fills by itself. */
  String TEMPERATURE = "temperature";

  String HUMIDITY = "humidity";
  String BATTERY = "battery";
  String VOLTAGE = "voltage";

  /** What bytes hold. */
  sealed interface Decoded {
    /** Values by place. */
    record Values(Map<String, Cell> cells) implements Decoded {
      public Values {
        cells = Map.copyOf(cells);
      }
    }

    /**
     * Not a frame of this layout.
     *
     * @param harmless a frame that carries other things
     */
    record No(String reason, boolean harmless) implements Decoded {}
  }

  /** Takes the bytes (0 to 255 each) apart; never throws for what a sender may send. */
  Decoded decode(List<Integer> bytes);

  /** The places this layout can fill; empty where the readings give offsets. */
  List<String> places();

  /** The layout of that name or description; a remark in brackets behind a name is passed over. */
  static Optional<ByteLayout> of(String text, List<ReadingRule> readings) {
    String name = text.replaceFirst("\\s*\\(.*\\)\\s*$", "").strip();
    return switch (name) {
      case FIXED -> Optional.of(new FixedLayout(readings));
      case SERVICE_DATA -> Optional.of(new ServiceDataLayout());
      default ->
          name.startsWith(TAGGED) ? TaggedLayout.parse(name).map(each -> each) : Optional.empty();
    };
  }

  /** What a layout with names of its own is read for, where the settings name no readings. */
  static List<ReadingRule> usual(Role role) {
    Quantity temperature =
        role == Role.PIECE ? Quantity.SURFACE_TEMPERATURE : Quantity.AIR_TEMPERATURE;
    return List.of(
        ReadingRule.plain(temperature, TEMPERATURE, Unit.CEL),
        ReadingRule.plain(Quantity.RELATIVE_HUMIDITY, HUMIDITY, Unit.PERCENT),
        ReadingRule.plain(Quantity.BATTERY_LEVEL, BATTERY, Unit.PERCENT),
        ReadingRule.plain(Quantity.BATTERY_VOLTAGE, VOLTAGE, Unit.VOLT));
  }
}
