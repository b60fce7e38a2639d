package coatwright.cli;

import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Says why a coat clouded or stayed soft. */
@Command(
    name = "why",
    description =
        "Why a coat clouded or stayed soft: the air then, and what would have changed it.",
    footer = {"", "Example: coatwright why cabinet/left-door"})
final class WhyCommand implements Callable<Integer> {
  private static final String CLEAR = "none expected";

  @Parameters(paramLabel = "COAT|PART", description = "The coat's entry (e41), or the part.")
  String target = "";

  @Mixin Help help = new Help();
  private final Shared shared;

  WhyCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    JsonNode why = shared.daemon().get("why/" + DaemonLine.step(target).replace("%2F", "/"));
    if (shared.json) {
      shared.printJson(why);
    } else {
      print(why, shared.unitSystem());
    }
    return 0;
  }

  private void print(JsonNode why, UnitSystem units) {
    shared.out.println(shared.told(why.path("sentence")));
    shared.out.println("Was it the air? " + why.path("airAtFault").asText());
    JsonNode air = why.path("air");
    if (!air.isEmpty()) {
      JsonNode first = air.get(air.size() / 2);
      shared.out.printf(
          "The air at %s: %s, %s, dew point %s%n",
          Times.shown(first.path("at").asText(), shared.now()),
          Show.temperature(first.path("airTempC").asDouble(), units),
          Show.relativeHumidity(first.path("rhPct").asDouble()),
          Show.temperature(first.path("dewPointC").asDouble(), units));
    }
    JsonNode saw = why.path("model");
    if (!saw.isMissingNode()) {
      double marginK = saw.path("filmLowC").asDouble() - saw.path("dewPointC").asDouble();
      shared.out.printf(
          "The film: clouding %s; coldest %s, %s %s the dew point%n",
          saw.path("level").asText(),
          Show.temperature(saw.path("filmLowC").asDouble(), units),
          Show.temperatureStep(Math.abs(marginK), units),
          marginK < 0 ? "below" : "above");
    }
    if (!why.path("counterfactuals").isEmpty()) {
      shared.out.println("What would have changed it:");
    }
    for (JsonNode other : why.path("counterfactuals")) {
      // Where neither film clouds, clouding is not what was asked about.
      boolean clear = other.path("level").asText().equals(CLEAR);
      boolean wasClear = saw.path("level").asText().equals(CLEAR);
      shared.out.printf(
          "  %s, %s instead of %s%s%s%n",
          shared.told(other.path("change")),
          shared.told(other.path("would")),
          shared.told(other.path("was")),
          clear && wasClear ? "" : ": clouding " + other.path("level").asText(),
          other.path("helps").asBoolean() ? "" : ", no help");
    }
    why.path("jar").forEach(line -> shared.out.println(shared.told(line)));
    why.path("cautions").forEach(line -> shared.out.println(shared.told(line)));
  }
}
