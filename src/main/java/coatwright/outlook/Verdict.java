package coatwright.outlook;

import coatwright.film.Finish;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A verdict with the rule and the one reason that decided it, and the rules that hold for every
 * finish.
 *
 * @param by short name of the rule
 * @param reason a sentence with its number
 * @param deciding that number, where none of the three answers carries it
 */
record Verdict(Summary summary, String by, String reason, Optional<Outlook.Deciding> deciding) {
  private static final double SESSION_MIN = 60;

  Verdict(Summary summary, String by, String reason) {
    this(summary, by, reason, Optional.empty());
  }

  Verdict(Summary summary, String by, String reason, Outlook.Deciding deciding) {
    this(summary, by, reason, Optional.of(deciding));
  }

  /** The same outlook with what speaks against laying this finish on the one beneath. */
  static Outlook onLayers(Outlook o, String warning) {
    if (o.summary() == Summary.BRUSH) {
      return o.decided(new Verdict(Summary.TAKE_CARE, "layers", warning));
    }
    List<String> actions = new ArrayList<>(o.actions());
    actions.add(warning);
    return o.withActions(actions);
  }

  /**
   * The coat beneath needs rest.
   *
   * @param restMin how much more, where it can be told
   */
  static Verdict rest(String reason, OptionalDouble restMin) {
    return new Verdict(
        Summary.HOLD_OFF,
        "too-tacky",
        reason,
        restMin.isPresent()
            ? Optional.of(
                new Outlook.Deciding(restMin.getAsDouble(), "min", "of rest still needed"))
            : Optional.empty());
  }

  /** Dew would form on the wood: nothing else is to be told. */
  static Verdict dew(double woodTempC, double dewPointC) {
    return new Verdict(
        Summary.HOLD_OFF,
        "condensation",
        Judge.text(
            "Condensation: the wood, %.1f °C, is at or below the dew point of %.1f °C; do not"
                + " coat.",
            woodTempC, dewPointC));
  }

  /** Colder or warmer than the finish is stated for. */
  static Optional<Verdict> outside(Finish f, double airTempC, double woodTempC) {
    double low = Math.min(airTempC, woodTempC);
    double high = Math.max(airTempC, woodTempC);
    if (low < f.lowestTempC()) {
      return Optional.of(
          outside(f, low == airTempC ? "air" : "wood", low, "below", f.lowestTempC()));
    }
    if (high > f.highestTempC()) {
      return Optional.of(
          outside(f, high == airTempC ? "air" : "wood", high, "above", f.highestTempC()));
    }
    return Optional.empty();
  }

  private static Verdict outside(Finish f, String what, double tempC, String side, double limitC) {
    return new Verdict(
        Summary.HOLD_OFF,
        "limits",
        "The "
            + what
            + ", "
            + Show.temperature(tempC, UnitSystem.METRIC)
            + ", is "
            + side
            + " the "
            + Show.temperature(limitC, UnitSystem.METRIC)
            + " that "
            + f.title()
            + " is stated for.",
        new Outlook.Deciding(
            limitC,
            "degC",
            "is the %s for this finish; the %s is %s it"
                .formatted(side.equals("below") ? "least" : "most", what, side)));
  }

  /** The recoat window that closes within the session, or has closed. */
  static Optional<Verdict> recoatWindow(OptionalDouble leftMin) {
    if (leftMin.isEmpty() || leftMin.getAsDouble() > SESSION_MIN) {
      return Optional.empty();
    }
    double min = leftMin.getAsDouble();
    String span = Show.duration(Duration.ofSeconds(Math.round(60 * Math.abs(min))));
    String reason =
        min > 0
            ? "The recoat window closes in " + span + "."
            : "The recoat window closed " + span + " ago: scuff the film before this coat.";
    return Optional.of(
        new Verdict(
            Summary.TAKE_CARE,
            "recoat-window",
            reason,
            new Outlook.Deciding(
                Math.abs(min),
                "min",
                min > 0 ? "left of the recoat window" : "since the recoat window closed")));
  }
}
