package coatwright.cli;

import coatwright.quantity.Show;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tests a hygrometer against saturated salts, or shows how the tests stand. */
@Command(
    name = "calibrate",
    description = {
      "Test a humidity sensor against one or two saturated salts, or show how the tests stand.",
      "The correction found holds from then on; what was read before is never rewritten.",
      "Exits with 1 when a test finds the sensor beyond mending."
    },
    footer = {
      "",
      "Example: coatwright calibrate wall --begin",
      "         coatwright calibrate wall",
      "         coatwright calibrate wall --salt MgCl2",
      "         coatwright calibrate wall --salt NaCl=73.2%% --temp 21.4C --settled",
      "         coatwright calibrate wall --end"
    })
final class CalibrateCommand implements Callable<Integer> {
  private static final String ROUTE = "calibrations";

  @Parameters(index = "0", arity = "0..1", paramLabel = "SOURCE", description = "Which: wall.")
  @Nullable String source;

  @Option(
      names = "--sensor",
      paramLabel = "NAME",
      description = "Which of the source's sensors, where it has several.")
  @Nullable String sensor;

  @Option(
      names = "--begin",
      description = "It goes into the box: what it says is kept out of the room's air.")
  boolean begin;

  @Option(names = "--end", description = "It hangs in its place again.")
  boolean end;

  @Option(
      names = "--salt",
      paramLabel = "SALT[=H]",
      description = {
        "The salt in the box: LiCl MgCl2 K2CO3 NaCl KCl KNO3 K2SO4. Alone it is read live once it",
        "has settled; else with what the sensor itself read, uncorrected: NaCl=73.2%%."
      })
  List<String> salts = new ArrayList<>();

  @Option(
      names = "--temp",
      paramLabel = "T",
      description = "How warm the salt is: 21.4C. Read live without it: as warm as the sensor.")
  @Nullable String temp;

  @Option(
      names = "--sensor-temp",
      paramLabel = "T",
      description = "How warm the sensor is, if not like the salt; at most 1 K from it.")
  @Nullable String sensorTemp;

  @Option(
      names = "--settled",
      description = "It moved by less than 0.2 points over the last 10 min.")
  boolean settled;

  @Option(names = "--at", paramLabel = "TIME", description = "When. Default: now.")
  @Nullable String at;

  @Option(names = "--who", paramLabel = "W", description = "Who tested it.")
  @Nullable String who;

  @Option(names = "--note", paramLabel = "T", description = "In your own words.")
  @Nullable String note;

  @Mixin Help help = new Help();
  private final Shared shared;

  CalibrateCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    boolean writes = begin || end || !salts.isEmpty();
    if (!writes) {
      return show();
    }
    if (source == null) {
      throw new Stop(
          Stop.BAD_INPUT,
          "missing: SOURCE; name the sensor's source, as in calibrate wall --begin");
    }
    if (begin && end) {
      throw new Stop(
          Stop.BAD_INPUT, "--begin and --end: it goes in or comes out; leave one of them out");
    }
    JsonNode answer = shared.daemon().post(ROUTE, form());
    JsonNode sheet = answer.path("calibration");
    if (shared.json) {
      shared.printJson(answer);
    } else {
      shared.out.printf("%s: %s%n", answer.path("entry").asText(), readBack());
      print(sheet);
    }
    JsonNode checks = sheet.path("checks");
    boolean spoiled =
        !salts.isEmpty() && !checks.path(checks.size() - 1).path("passed").asBoolean(true);
    return spoiled ? 1 : 0;
  }

  private Map<String, String> form() {
    Map<String, String> form = new LinkedHashMap<>();
    put(form, "source", source);
    put(form, "sensor", sensor);
    put(form, "step", begin ? "begin" : end ? "end" : null);
    put(form, "salt", salts.isEmpty() ? null : String.join(",", salts));
    put(form, "temp", temp);
    put(form, "sensorTemp", sensorTemp);
    put(form, "settled", settled ? "yes" : null);
    put(form, "at", at);
    put(form, "who", who);
    put(form, "note", note);
    return form;
  }

  private static void put(Map<String, String> form, String key, @Nullable String text) {
    if (text != null) {
      form.put(key, text);
    }
  }

  private String readBack() {
    if (begin) {
      return source + " is in the box; what it says is kept out of the room's air";
    }
    return end
        ? source + " is back in its place"
        : source + " read over " + String.join(" and ", salts);
  }

  private int show() {
    ObjectNode answer = (ObjectNode) shared.daemon().get(ROUTE);
    ArrayNode wanted = answer.arrayNode();
    for (JsonNode sheet : answer.path("sensors")) {
      boolean mine =
          (source == null || sheet.path("source").asText().equals(source))
              && (sensor == null || sheet.path("sensor").asText().equals(sensor));
      if (mine) {
        wanted.add(sheet);
      }
    }
    if (wanted.isEmpty() && source != null) {
      throw new Stop(
          Stop.BAD_INPUT,
          "source \"%s\": no sensor of this name reads humidity; see coatwright calibrate"
              .formatted(source));
    }
    answer.set("sensors", wanted);
    if (shared.json) {
      shared.printJson(answer);
      return 0;
    }
    if (wanted.isEmpty()) {
      shared.out.println("No sensor of this shop reads humidity.");
    }
    wanted.forEach(this::print);
    return 0;
  }

  private void print(JsonNode sheet) {
    String name = sheet.path("source").asText();
    String which = sheet.path("sensor").asText();
    JsonNode trust = sheet.path("trust");
    shared.out.printf(
        "%s%s%s%n",
        name,
        which.equals(name) ? "" : "/" + which,
        sheet.has("room") ? " in " + sheet.path("room").asText() : "");
    if (!trust.isMissingNode()) {
      line("may be off", TrustText.error(trust, shared.unitSystem()));
      line("last check", TrustText.lastCheck(trust, shared.now()));
      line("next check", TrustText.nextCheck(trust, shared.now()));
    }
    if (sheet.has("boxedSince")) {
      line(
          "in the box",
          "since "
              + Times.shown(sheet.path("boxedSince").asText(), shared.now())
              + "; kept out of the room's air");
    }
    if (sheet.has("reads")) {
      line("reads now", reads(sheet.path("reads")));
    }
    for (JsonNode one : sheet.path("lines")) {
      if (one.has("salt")) {
        line(one.path("entry").asText(), reading(one));
      }
    }
    JsonNode checks = sheet.path("checks");
    if (!checks.isEmpty()) {
      line("found", checks.path(checks.size() - 1).path("finding").asText());
    }
  }

  private String reads(JsonNode reads) {
    String moved =
        reads.has("changedPct")
            ? "moved by %s in 10 min: %s"
                .formatted(
                    Show.fixed(reads.path("changedPct").asDouble(), 1),
                    reads.path("settled").asBoolean() ? "settled" : "not settled")
            : "not heard for 10 min yet";
    return "%s %% as sent, %s %% corrected; %s"
        .formatted(
            Show.fixed(reads.path("sentRhPct").asDouble(), 1),
            Show.fixed(reads.path("shownRhPct").asDouble(), 1),
            moved);
  }

  private String reading(JsonNode line) {
    return "%s, %s at %s: sent %s %%, should be %s %%%s%s"
        .formatted(
            Times.shown(line.path("at").asText(), shared.now()),
            line.path("salt").asText(),
            Show.temperature(line.path("sensorTempC").asDouble(), shared.unitSystem()),
            Show.fixed(line.path("sentRhPct").asDouble(), 1),
            Show.fixed(line.path("expectedRhPct").asDouble(), 1),
            line.has("afterRhPct")
                ? "; shown %s %% before, %s %% after"
                    .formatted(
                        Show.fixed(line.path("shownRhPct").asDouble(), 1),
                        Show.fixed(line.path("afterRhPct").asDouble(), 1))
                : "",
            line.has("struck") ? " (struck out)" : "");
  }

  private void line(String name, String value) {
    shared.out.printf("  %-12s %s%n", name, value);
  }
}
