package coatwright.cli;

import coatwright.json.Json;
import coatwright.quantity.Fault;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The air for this coat: of a described one, or of the next on a part. */
@Command(
    name = "outlook",
    description = {
      "The air for a coat: would it cloud, how would it dry, how long stays the edge wet.",
      "Describe the coat with --finish and --air, or name a part of the shop with --part."
    },
    footer = {
      "",
      "Example: coatwright outlook --finish shellac-pale --air 28C,80%% --cut 1.5lb",
      "         coatwright outlook --part cabinet/left-door",
      "         coatwright outlook --finish shellac-pale --windows"
    })
final class OutlookCommand implements Callable<Integer> {
  @Option(
      names = "--finish",
      paramLabel = "F",
      description = "The finish: shellac-pale, lacquer-nitrocellulose, varnish-alkyd.")
  @Nullable String finish;

  @Option(names = "--air", paramLabel = "T,H", description = "The air: 28C,80%%.")
  @Nullable String air;

  @Option(
      names = "--wood",
      paramLabel = "T",
      description = "The wood: 19C. Without: taken to be as warm as the air, which is told.")
  @Nullable String wood;

  @Option(
      names = "--cut",
      paramLabel = "C",
      description = "1.5lb (per US gallon of spirit), 1.5lb/imp, 180g/L. Without: the usual one.")
  @Nullable String cut;

  @Option(names = "--wet-film", paramLabel = "X", description = "Wet film: 3mil, 75um.")
  @Nullable String wetFilm;

  @Option(names = "--strength", paramLabel = "S", description = "Strength of the spirit: 95%%.")
  @Nullable String strength;

  @Option(names = "--retarder", paramLabel = "NAME:DOSE", description = "2-butoxyethanol:3%%.")
  @Nullable String retarder;

  @Option(
      names = "--draught",
      paramLabel = "still|light|brisk|SPEED",
      description = "Air along the wood: still is 0.1 m/s, light 0.5, brisk 1.5; or 0.2m/s.")
  @Nullable String draught;

  @Option(names = "--method", paramLabel = "brush|pad|wipe|spray", description = "Default: brush.")
  @Nullable String method;

  @Option(names = "--coats-before", paramLabel = "N", description = "Coats already on it.")
  @Nullable String coatsBefore;

  @Option(names = "--interval", paramLabel = "TIME", description = "Between those coats: 15min.")
  @Nullable String interval;

  @Option(names = "--pressure", paramLabel = "P", description = "Air pressure: 1013hPa.")
  @Nullable String pressure;

  @Option(names = "--altitude", paramLabel = "M", description = "Or height above the sea: 50m.")
  @Nullable String altitude;

  @Option(names = "--board", paramLabel = "L", description = "Thickness of the wood: 19mm.")
  @Nullable String board;

  @Option(names = "--part", paramLabel = "PART", description = "The next coat on this part, now.")
  @Nullable String part;

  @Option(names = "--room", paramLabel = "R", description = "In this room instead of its own.")
  @Nullable String room;

  @Option(
      names = "--jar",
      paramLabel = "J",
      description = "From this jar instead of the last coat's.")
  @Nullable String jar;

  @Option(
      names = "--windows",
      description =
          "Also the hours of the next 72 in which it may be brushed; with --part, or with --finish"
              + " alone.")
  boolean windows;

  @Option(
      names = "--hours",
      paramLabel = "N",
      description = "As --windows, for the next N hours: 1 to 72.")
  @Nullable Integer hours;

  @Option(names = "--exit-code", description = "Exit with 1 when the answer is hold off.")
  boolean exitCode;

  @Mixin Help help = new Help();
  private final Shared shared;
  private final Map<String, String> form = new LinkedHashMap<>();

  OutlookCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    put("finish", finish);
    put("air", air);
    put("wood", wood);
    put("cut", cut);
    put("wetFilm", wetFilm);
    put("strength", strength);
    put("retarder", retarder);
    put("draught", draught);
    put("method", method);
    put("coatsBefore", coatsBefore);
    put("interval", interval);
    put("pressure", pressure);
    put("altitude", altitude);
    put("board", board);
    OutlookWindows ahead = OutlookWindows.asked(windows, hours);
    if (ahead.wanted() && part == null) {
      return ahead.alone(shared, form, room, jar);
    }
    JsonNode outlook = part == null ? described() : ofPart(part);
    JsonNode all = ahead.wanted() ? ahead.beside(outlook, shared, form) : outlook;
    if (shared.json) {
      shared.printJson(all);
    } else {
      new OutlookText(shared.out, shared.unitSystem()).print(outlook);
      ahead.print(all, shared);
    }
    boolean holdOff = outlook.path("summary").asText().equals("hold off");
    return exitCode && holdOff ? 1 : 0;
  }

  private JsonNode described() {
    if (room != null) {
      throw RefusedInput.of("--room", "it goes with --part", "describe the air with --air instead");
    }
    if (jar != null) {
      throw RefusedInput.of("--jar", "it goes with --part", "describe it with --finish instead");
    }
    if (finish == null || air == null) {
      throw RefusedInput.of(
          "outlook",
          "it needs --finish and --air, or --part",
          "write it like outlook --finish shellac-pale --air 28C,80%");
    }
    return Json.mapper().valueToTree(shared.hall.outlook(shared.place(), form));
  }

  private JsonNode ofPart(String named) {
    if (!form.isEmpty()) {
      throw new RefusedInput(
          List.of(
              Fault.of(
                  "--part with --" + dashed(form.keySet().iterator().next()),
                  "the part's jar and its room's air are taken",
                  "leave one of them out")));
    }
    put("part", named);
    put("room", room);
    put("jar", jar);
    return shared.daemon().post("outlook", form);
  }

  private static String dashed(String key) {
    return key.replaceAll("([A-Z])", "-$1").toLowerCase(java.util.Locale.ROOT);
  }

  private void put(String key, @Nullable String text) {
    if (text != null) {
      form.put(key, text);
    }
  }
}
