package coatwright.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;

/** A command that writes: its options, as typed, are handed to the daemon as a form. */
abstract class FormCommand implements Callable<Integer> {
  @Mixin Help help = new Help();

  final Shared shared;
  private final String route;
  private final Map<String, String> form = new LinkedHashMap<>();

  /**
   * @param route below {@code /api/v1}
   */
  FormCommand(Shared shared, String route) {
    this.shared = shared;
    this.route = route;
  }

  /** Puts every option that was given into the form. */
  abstract void fill();

  /** One sentence that reads back what was written. */
  abstract String readBack(JsonNode entry);

  /** Puts an option into the form, if it was given. */
  void put(String key, @Nullable String text) {
    if (text != null) {
      form.put(key, text);
    }
  }

  @Override
  public Integer call() {
    fill();
    JsonNode entry = shared.daemon().post(route, form);
    if (shared.json) {
      shared.printJson(entry);
      return 0;
    }
    JsonNode all = entry.path("entries");
    if (all.isEmpty()) {
      shared.out.println(readBack(entry));
    }
    for (JsonNode one : all) {
      shared.out.println(readBack(one));
    }
    if (entry.has("caution")) {
      shared.out.println("Mind: " + entry.path("caution").asText());
    }
    if (entry.has("outlook")) {
      new OutlookText(shared.out, shared.unitSystem()).verdict(entry.get("outlook"));
    }
    return 0;
  }
}
