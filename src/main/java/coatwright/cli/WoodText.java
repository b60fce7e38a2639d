package coatwright.cli;

import coatwright.cli.WoodAnswer.CarryingIn;
import coatwright.cli.WoodAnswer.Equalising;
import coatwright.cli.WoodAnswer.Face;
import coatwright.cli.WoodAnswer.Film;
import coatwright.cli.WoodAnswer.Movement;
import coatwright.quantity.Conversions;
import coatwright.quantity.Reworded;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.OptionalDouble;

/** Prints what a board does for people. */
final class WoodText {
  private final PrintWriter out;
  private final UnitSystem units;

  WoodText(PrintWriter out, UnitSystem units) {
    this.out = out;
    this.units = units;
  }

  void print(WoodAnswer answer) {
    out.println(
        answer.species().map(name -> capital(name)).orElse("Wood")
            + answer.latin().map(latin -> " (" + latin + ")").orElse("")
            + answer.movement().map(m -> ", " + m.cut() + "-sawn").orElse("")
            + thickness(answer.thicknessMm()));
    answer.movement().ifPresent(this::movement);
    answer.equalising().ifPresent(this::equalising);
    answer.carriedIn().ifPresent(this::carriedIn);
    out.println("Taken for granted:");
    answer.assumptions().forEach(said -> out.println("  - " + Reworded.in(units, said)));
  }

  private String thickness(OptionalDouble thicknessMm) {
    return thicknessMm.isPresent() ? ", " + length(thicknessMm.getAsDouble(), 0) + " thick" : "";
  }

  private void movement(Movement m) {
    line("moisture", moisture(m));
    if (m.movementMm().isPresent() && m.widthMm().isPresent()) {
      double mm = m.movementMm().getAsDouble();
      line(
          "movement",
          "%s %s across %s"
              .formatted(
                  mm < 0 ? "shrinks" : "swells",
                  length(Math.abs(mm), 1),
                  length(m.widthMm().getAsDouble(), 0)));
    }
    Film film = m.film();
    line(
        "film on it",
        "%s %s %%: %s (yields at %s %%, breaks at %s %%%s)"
            .formatted(
                m.strainPct() < 0 ? "squeezed by" : "stretched by",
                Show.fixed(Math.abs(m.strainPct()), 2),
                film.level(),
                Show.fixed(film.yieldStrainPct(), 2),
                Show.fixed(film.breakStrainPct(), 2),
                film.toleranceAssumed() ? ", assumed" : ""));
    if (film.buildUm().isPresent() && film.buildLimitUm().isPresent()) {
      line(
          "build",
          "%s against a limit of %s%s"
              .formatted(
                  Show.film(film.buildUm().getAsDouble(), units),
                  Show.film(film.buildLimitUm().getAsDouble(), units),
                  film.overBuilt() ? ": counted one level worse above" : ""));
    }
  }

  private String moisture(Movement m) {
    String from = Show.fixed(m.fromMoisturePct(), 1) + " %";
    String to = Show.fixed(m.toMoisturePct(), 1) + " %";
    if (m.airTempC().isEmpty() || m.fromRhPct().isEmpty() || m.toRhPct().isEmpty()) {
      return from + " before, " + to + " after";
    }
    return "%s in air of %s, %s in air of %s, both at %s"
        .formatted(
            from,
            Show.relativeHumidity(m.fromRhPct().getAsDouble()),
            to,
            Show.relativeHumidity(m.toRhPct().getAsDouble()),
            Show.temperature(m.airTempC().getAsDouble(), units));
  }

  private void equalising(Equalising e) {
    line(
        "follows in",
        "%s bare on both faces, %s on one (%s %% of the way, an estimate)"
            .formatted(
                days(e.bothFacesQuickestDays(), e.bothFacesSlowestDays()),
                days(e.oneFaceQuickestDays(), e.oneFaceSlowestDays()),
                Show.fixed(e.sharePct(), 0)));
  }

  private void carriedIn(CarryingIn c) {
    line(
        "dew point",
        "%s in air of %s, %s"
            .formatted(
                Show.temperature(c.dewPointC(), units),
                Show.temperature(c.airTempC(), units),
                Show.relativeHumidity(c.rhPct())));
    boolean below = c.marginK() <= 0;
    line(
        "carried in",
        "at %s, %s %s the dew point%s"
            .formatted(
                Show.temperature(c.boardTempC(), units),
                Show.temperatureStep(Math.abs(c.marginK()), units),
                below ? "below" : "above",
                below ? ": water settles on it, lay no coat" : ""));
    line("standing", face(c, c.bothFaces()) + ", both faces in the air");
    line("lying on one", face(c, c.oneFace()));
  }

  private String face(CarryingIn c, Face face) {
    String wanted = Show.temperatureStep(c.wantedMarginK(), units) + " above the dew point";
    String above =
        face.aboveMarginMin().isPresent()
            ? wanted + " " + after(face.aboveMarginMin().getAsDouble())
            : "never " + wanted + " in this air";
    return above
        + ", within "
        + Show.temperatureStep(1, units)
        + " of the air "
        + after(face.withinOneKelvinMin());
  }

  private static String after(double minutes) {
    return minutes == 0 ? "at once" : "after " + duration(minutes * 60);
  }

  private static String days(double quickest, double slowest) {
    return duration(quickest * 86_400) + " to " + duration(slowest * 86_400);
  }

  private static String duration(double seconds) {
    return Show.duration(Duration.ofSeconds(Math.round(seconds)));
  }

  private String length(double mm, int decimals) {
    return units == UnitSystem.METRIC
        ? Show.fixed(mm, decimals) + " mm"
        : Show.fixed(mm / Conversions.MM_PER_IN, decimals + 2) + " in";
  }

  private void line(String name, String value) {
    out.printf("  %-16s %s%n", name, value);
  }

  private static String capital(String words) {
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
