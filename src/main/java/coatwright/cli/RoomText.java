package coatwright.cli;

import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;

/** A room's air now and what the last day was good for, in words. */
final class RoomText {
  private final Shared shared;

  RoomText(Shared shared) {
    this.shared = shared;
  }

  void print(JsonNode sheet) {
    UnitSystem units = shared.unitSystem();
    JsonNode air = sheet.path("air");
    shared.out.printf(
        "%s: %s%n",
        sheet.path("room").asText(), air.isMissingNode() ? "no air to believe" : pair(air, units));
    if (!air.isMissingNode()) {
      line("dew point", Show.temperature(air.path("dewPointC").asDouble(), units));
      line(
          "may be off",
          "±%s %% RH, ±%s"
              .formatted(
                  Show.fixed(air.path("rhErrorPct").asDouble(), 1),
                  Show.temperatureStep(air.path("temperatureErrorK").asDouble(), units)));
    }
    if (sheet.has("spreadAtWoodK")) {
      line(
          "the wood",
          Show.temperatureStep(sheet.path("spreadAtWoodK").asDouble(), units)
              + " above the dew point");
    }
    if (sheet.has("trouble")) {
      line("mind", shared.told(sheet.path("trouble")));
    }
    if (sheet.has("outside")) {
      line("outside", pair(sheet.path("outside"), units));
      line("the door", shared.told(sheet.path("outside").path("sentence")));
    }
    line("the last day", hours(sheet.path("hours"), units));
  }

  private static String pair(JsonNode air, UnitSystem units) {
    return "%s, %s"
        .formatted(
            Show.temperature(air.path("airTempC").asDouble(), units),
            Show.relativeHumidity(air.path("rhPct").asDouble()));
  }

  /** {@code 18 h warm (18 °C or more), 2 h damp (65 % or more), night low 12.3 °C}. */
  static String hours(JsonNode hours, UnitSystem units) {
    if (hours.path("knownHours").asDouble() == 0) {
      return "nothing was read";
    }
    List<String> said = new ArrayList<>();
    said.add(
        "%s h warm (%s or more)"
            .formatted(
                Show.fixed(hours.path("warmHours").asDouble(), 0),
                Show.temperature(hours.path("warmC").asDouble(), units)));
    said.add(
        "%s h damp (%s or more)"
            .formatted(
                Show.fixed(hours.path("dampHours").asDouble(), 0),
                Show.relativeHumidity(hours.path("dampPct").asDouble())));
    if (hours.has("nightLowC")) {
      said.add("night low " + Show.temperature(hours.path("nightLowC").asDouble(), units));
    }
    said.add("of %s h read".formatted(Show.fixed(hours.path("knownHours").asDouble(), 0)));
    return String.join(", ", said);
  }

  private void line(String name, String value) {
    shared.out.printf("  %-16s %s%n", name, value);
  }
}
