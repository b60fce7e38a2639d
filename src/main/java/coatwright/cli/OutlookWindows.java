package coatwright.cli;

import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The hours to come beside an outlook, or by themselves: the daemon's answer, cut to the hours
 * asked for.
 *
 * @param hours how far ahead; 0 for not at all
 */
record OutlookWindows(int hours) {
  private static final int MOST_HOURS = 72;

  static OutlookWindows asked(boolean windows, @Nullable Integer hours) {
    if (hours != null && (hours < 1 || hours > MOST_HOURS)) {
      throw RefusedInput.of(
          "--hours " + hours, "the air is told for 72 hours", "give 1 to " + MOST_HOURS);
    }
    return new OutlookWindows(hours != null ? hours : windows ? MOST_HOURS : 0);
  }

  boolean wanted() {
    return hours > 0;
  }

  /** The outlook with the windows of the same part in it. */
  JsonNode beside(JsonNode outlook, Shared shared, Map<String, String> form) {
    JsonNode answer = answer(shared, form);
    ObjectNode both = outlook.deepCopy();
    both.set("windows", answer.path("windows"));
    both.set("windowsPromised", answer.path("promised"));
    both.set("windowsSentence", answer.path("sentence"));
    return both;
  }

  /** The windows of a finish, or a jar, by themselves. */
  int alone(Shared shared, Map<String, String> form, @Nullable String room, @Nullable String jar) {
    Map<String, String> asked = new LinkedHashMap<>(form);
    put(asked, "room", room);
    put(asked, "jar", jar);
    for (String key : asked.keySet()) {
      if (!key.equals("finish") && !key.equals("room") && !key.equals("jar")) {
        throw RefusedInput.of(
            "--windows with --" + key,
            "the coming hours are the room's, the coat the part's, the jar's or a finish's usual"
                + " one",
            "leave --" + key + " out, or leave --windows out");
      }
    }
    JsonNode answer = answer(shared, asked);
    if (shared.json) {
      shared.printJson(answer);
    } else {
      shared.out.printf(
          "%s in %s%n", answer.path("finishTitle").asText(), answer.path("room").asText());
      rows(answer.path("sentence"), answer.path("windows"), shared);
    }
    return 0;
  }

  private static void put(Map<String, String> form, String key, @Nullable String value) {
    if (value != null) {
      form.put(key, value);
    }
  }

  private JsonNode answer(Shared shared, Map<String, String> form) {
    String query =
        form.entrySet().stream()
            .map(one -> one.getKey() + "=" + DaemonLine.step(one.getValue()))
            .collect(Collectors.joining("&"));
    JsonNode answer = shared.daemon().get(query.isEmpty() ? "windows" : "windows?" + query);
    ObjectNode cut = answer.deepCopy();
    OffsetDateTime until = time(answer.path("from")).plusHours(hours);
    keep(cut.withArray("windows"), until);
    keep(cut.withArray("hours"), until);
    return cut;
  }

  private static void keep(ArrayNode windows, OffsetDateTime until) {
    for (int i = windows.size() - 1; i >= 0; i--) {
      if (!time(windows.get(i).path("from")).isBefore(until)) {
        windows.remove(i);
      }
    }
  }

  private static OffsetDateTime time(JsonNode text) {
    return OffsetDateTime.parse(text.asText());
  }

  /** Below an outlook, for people. */
  void print(JsonNode outlook, Shared shared) {
    if (wanted()) {
      shared.out.println("Coming hours:");
      rows(outlook.path("windowsSentence"), outlook.path("windows"), shared);
    }
  }

  private void rows(JsonNode sentence, JsonNode windows, Shared shared) {
    shared.out.println("  " + shared.told(sentence));
    for (JsonNode window : windows) {
      shared.out.printf(
          "  %s to %s: %.0f of 100 courses%s%n",
          Times.shown(window.path("from").asText(), shared.now()),
          Times.shown(window.path("until").asText(), shared.now()),
          100 * window.path("share").asDouble(),
          window.path("usual").asBoolean() ? ", usual for this hour, no forecast" : "");
    }
  }
}
