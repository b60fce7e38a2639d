package coatwright.cli;

import coatwright.quantity.Reworded;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.Locale;

/** Prints an outlook for people: the verdict, the three answers, and what was taken for granted. */
final class OutlookText {
  private final PrintWriter out;
  private final UnitSystem units;

  OutlookText(PrintWriter out, UnitSystem units) {
    this.out = out;
    this.units = units;
  }

  /** The verdict with its reason, one line. */
  void verdict(JsonNode outlook) {
    String summary = outlook.path("summary").asText();
    out.printf("%s: %s%n", capital(summary), told(outlook.path("reason")));
  }

  /** All of it. */
  void print(JsonNode outlook) {
    verdict(outlook);
    clouding(outlook.path("clouding"));
    drying(outlook.path("drying"));
    openTime(outlook.path("openTime"));
    slowCure(outlook.path("cure").path("slowCure"));
    if (outlook.has("dryFilmUm")) {
      line("dry film", Show.film(outlook.path("dryFilmUm").asDouble(), units) + " from this coat");
    }
    milestones(outlook.path("milestones"));
    list("What helps:", outlook.path("actions"));
    list("Taken for granted:", outlook.path("assumptions"));
    list("Mind:", outlook.path("cautions"));
    JsonNode model = outlook.path("model");
    out.printf("(model %s %s)%n", model.path("name").asText(), model.path("version").asText());
  }

  private void clouding(JsonNode clouding) {
    if (clouding.isMissingNode()) {
      return;
    }
    StringBuilder says = new StringBuilder(clouding.path("level").asText());
    if (clouding.has("marginK")) {
      double marginK = clouding.path("marginK").asDouble();
      says.append("; the film comes down to ")
          .append(
              // As the sentences around it round, so that all tell the same.
              Reworded.in(
                  units, Show.temperature(clouding.path("filmLowC").asDouble(), UnitSystem.METRIC)))
          .append(", ")
          .append(Reworded.in(units, Show.temperatureStep(Math.abs(marginK), UnitSystem.METRIC)))
          .append(marginK < 0 ? " below" : " above")
          .append(" the dew point");
      if (clouding.has("marginP10K") && clouding.has("marginP90K")) {
        says.append(
            eightInTen(
                clouding.path("marginP10K").asDouble(), clouding.path("marginP90K").asDouble()));
      }
    }
    if (clouding.path("clears").asBoolean() && clouding.has("clearsAfterMin")) {
      says.append("; should clear by itself in about ")
          .append(Show.fixed(clouding.path("clearsAfterMin").asDouble(), 0))
          .append(" min, an estimate");
    } else if (clouding.has("clears") && !clouding.path("clears").asBoolean()) {
      says.append("; may stay, an estimate");
    }
    line("clouding", says.toString());
  }

  /** Where one end lies below the dew point, both say on which side they lie. */
  private String eightInTen(double lowK, double highK) {
    if (lowK >= 0) {
      return " (8 in 10 between %s and %s)".formatted(step(lowK), step(highK));
    }
    return highK < 0
        ? " (8 in 10 between %s and %s below)".formatted(step(-highK), step(-lowK))
        : " (8 in 10 between %s below and %s above)".formatted(step(-lowK), step(highK));
  }

  private String step(double kelvins) {
    return Show.temperatureStep(kelvins, units);
  }

  private void drying(JsonNode drying) {
    if (drying.isMissingNode()) {
      return;
    }
    StringBuilder says = new StringBuilder(drying.path("level").asText());
    if (drying.has("dryToTouchMin")) {
      says.append("; dry to touch ").append(minutes(drying.path("dryToTouchMin").asDouble()));
    }
    if (drying.has("recoatFromMin")) {
      says.append(", recoat from ").append(minutes(drying.path("recoatFromMin").asDouble()));
      says.append(
          drying.has("recoatUntilMin")
              ? " until " + minutes(drying.path("recoatUntilMin").asDouble())
              : ", no late end");
    }
    line("drying", says.toString());
  }

  private void openTime(JsonNode open) {
    if (!open.isMissingNode()) {
      line(
          "open time",
          "%s; %s min (%s to %s)"
              .formatted(
                  open.path("level").asText(),
                  Show.fixed(open.path("min").asDouble(), 1),
                  Show.fixed(open.path("p10Min").asDouble(), 1),
                  Show.fixed(open.path("p90Min").asDouble(), 1)));
    }
  }

  private void slowCure(JsonNode reasons) {
    String name = "slow cure";
    for (JsonNode reason : reasons) {
      line(name, told(reason));
      name = "";
    }
  }

  private void milestones(JsonNode milestones) {
    for (JsonNode milestone : milestones) {
      String name = milestone.path("name").asText();
      if (!milestone.has("p50Min")) {
        line(name, "not reached in this air");
        continue;
      }
      String range =
          milestone.has("p10Min") && milestone.has("p90Min")
              ? " (%s to %s)"
                  .formatted(
                      minutes(milestone.path("p10Min").asDouble()),
                      minutes(milestone.path("p90Min").asDouble()))
              : milestone.has("p10Min")
                  ? " (from %s; more than one in ten not reached in this air)"
                      .formatted(minutes(milestone.path("p10Min").asDouble()))
                  : "";
      String guess = milestone.path("estimate").asBoolean() ? ", an estimate" : "";
      line(name, minutes(milestone.path("p50Min").asDouble()) + range + guess);
    }
  }

  private void list(String head, JsonNode sentences) {
    if (!sentences.isEmpty()) {
      out.println(head);
      sentences.forEach(sentence -> out.println("  - " + told(sentence)));
    }
  }

  private void line(String name, String says) {
    out.printf("  %-16s %s%n", name, says);
  }

  private String told(JsonNode sentence) {
    return Reworded.in(units, sentence.asText());
  }

  private static String minutes(double min) {
    return Show.duration(Duration.ofSeconds(Math.round(min * 60)));
  }

  private static String capital(String word) {
    return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
  }
}
