package coatwright.cli;

import coatwright.cli.Hall.Check;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Says what is connected, fresh and wrong. */
@Command(
    name = "checkup",
    description = "What is connected, fresh, wrong; exits with 1 when something is.",
    footer = {"", "Example: coatwright checkup"})
final class CheckupCommand implements Callable<Integer> {
  private static final String SETTINGS = "settings";

  @Option(
      names = "--offline",
      description = "Look at settings, database and sensors without asking the daemon.")
  boolean offline;

  @Mixin Help help = new Help();
  private final Shared shared;

  CheckupCommand(Shared shared) {
    this.shared = shared;
  }

  @Override
  public Integer call() {
    List<Check> checks = offline ? shared.hall.checkup(shared.place()) : asked();
    boolean fine = checks.stream().allMatch(Check::fine);
    if (shared.json) {
      shared.printJson(Map.of("fine", fine, "checks", checks));
    } else {
      // Settings that cannot be read tell no units.
      boolean read =
          checks.stream().allMatch(check -> check.fine() || !check.what().equals(SETTINGS));
      for (Check check : checks) {
        shared.out.printf(
            "%-5s %s: %s%n",
            check.fine() ? "ok" : "WRONG",
            check.what(),
            read ? shared.told(check.says()) : check.says());
      }
      shared.out.println(fine ? "All is well." : "Something needs you; see WRONG above.");
    }
    return fine ? 0 : 1;
  }

  /** How far it may be off, what is in doubt of it, and when it asks for a check. */
  private String doubts(JsonNode trust) {
    if (trust.isMissingNode()) {
      return "";
    }
    StringBuilder says = new StringBuilder();
    trust.path("notes").forEach(note -> says.append("; ").append(note.asText()));
    says.append("; may be off by ").append(TrustText.error(trust, UnitSystem.METRIC));
    if (trust.has("nextCheckDue")) {
      says.append(", last check ")
          .append(TrustText.lastCheck(trust, shared.now()))
          .append(", next ")
          .append(TrustText.nextCheck(trust, shared.now()));
    }
    return says.toString();
  }

  private static Check air(JsonNode sheet) {
    String what = "air in " + sheet.path("room").asText();
    String day = RoomText.hours(sheet.path("hours"), UnitSystem.METRIC);
    if (!sheet.has("air")) {
      return new Check(what, false, sheet.path("trouble").asText() + "; last day: " + day);
    }
    String door =
        sheet.has("outside") ? "; " + sheet.path("outside").path("sentence").asText() : "";
    boolean fine = !sheet.has("mistrust") && !sheet.path("disagree").asBoolean();
    return new Check(
        what,
        fine,
        (fine ? "believed" : sheet.path("trouble").asText()) + "; last day: " + day + door);
  }

  private List<Check> asked() {
    List<Check> checks = new ArrayList<>();
    DaemonLine daemon = shared.daemon();
    JsonNode sources = daemon.get("sources").path("sources");
    checks.add(new Check("daemon", true, "answers at " + daemon.address()));
    // The daemon knows which folder it writes to; --data may have been given to it alone.
    checks.add(new Check("backup", true, daemon.get("backup").path("backup").asText()));
    if (sources.isEmpty()) {
      checks.add(new Check("sensors", false, "none; copy an example from config/sources/examples"));
    }
    for (JsonNode source : sources) {
      JsonNode trust = source.path("trust");
      boolean fine =
          source.path("state").asText().equals("current") && !trust.path("inDoubt").asBoolean();
      String says =
          source.has("trouble") ? source.path("trouble").asText() : source.path("state").asText();
      checks.add(new Check("sensor " + source.path("source").asText(), fine, says + doubts(trust)));
    }
    for (JsonNode room : daemon.get("rooms").path("rooms")) {
      checks.add(air(daemon.get("rooms/" + DaemonLine.step(room.path("room").asText()))));
    }
    for (JsonNode missed : daemon.get("missed").path("missed")) {
      checks.add(
          new Check(
              "missed", true, missed.path("at").asText() + ": " + missed.path("says").asText()));
    }
    for (JsonNode mirror : daemon.get("mirrors").path("mirrors")) {
      checks.add(
          new Check(
              "mirror " + mirror.path("name").asText(),
              mirror.path("fine").asBoolean(),
              mirror.path("says").asText()));
    }
    for (JsonNode warning : daemon.get("warnings").path("warnings")) {
      checks.add(new Check("warning", false, warning.path("message").asText()));
    }
    return checks;
  }
}
