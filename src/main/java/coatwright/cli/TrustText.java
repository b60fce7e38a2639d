package coatwright.cli;

import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;

/** How far a sensor may be believed, in words. */
final class TrustText {
  private TrustText() {}

  /** {@code ±2.4 % RH, ±0.3 °C (sht31)}. */
  static String error(JsonNode trust, UnitSystem units) {
    List<String> errors = new ArrayList<>();
    if (trust.path("rhErrorPct").asDouble() > 0) {
      errors.add("±%s %% RH".formatted(Show.fixed(trust.path("rhErrorPct").asDouble(), 1)));
    }
    errors.add("±" + Show.temperatureStep(trust.path("temperatureErrorK").asDouble(), units));
    String chip = trust.path("chip").asText();
    return String.join(", ", errors)
        + (chip.equals("unknown") ? " (chip not named)" : " (" + chip + ")");
  }

  /** {@code Sat 14 Mar 16:20, 34 h of finishing since}. */
  static String lastCheck(JsonNode trust, OffsetDateTime now) {
    String when =
        trust.has("lastCheckAt")
            ? Times.shown(trust.path("lastCheckAt").asText(), now)
            : "none yet";
    return "%s, %s h of finishing %s"
        .formatted(
            when,
            Show.fixed(trust.path("vapourHours").asDouble(), 0),
            trust.has("lastCheckAt") ? "since" : "so far");
  }

  /** {@code due since Sat 14 Mar 16:20}, {@code by …}. */
  static String nextCheck(JsonNode trust, OffsetDateTime now) {
    if (!trust.has("nextCheckDue")) {
      return "none asked for";
    }
    String when = Times.shown(trust.path("nextCheckDue").asText(), now);
    return trust.path("checkDue").asBoolean() ? "due since " + when : "by " + when;
  }
}
