package coatwright.journal;

import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * A slow solvent added to a jar, written {@code NAME:DOSE}.
 *
 * @param volPct 2-butoxyethanol, per cent of the solution by volume, above 0 to 20; the film model
 *     reckons with it
 * @param drops a dose counted in drops, such as {@code 10/qt}: recorded, not reckoned with
 */
public record Retarder(OptionalDouble volPct, Optional<String> drops) {
  /** The one solvent the film model knows as a retarder. */
  public static final String SIMULATED = "2-butoxyethanol";

  private static final double MOST_PCT = 20;
  private static final Pattern DROPS =
      Pattern.compile(
          "([0-9]+(?:\\.[0-9]+)?)/(floz|pt|qt|gal|L|mL)(/imp)?", Pattern.CASE_INSENSITIVE);

  /** Reads {@code 2-butoxyethanol:3%} or {@code drops:10/qt}; anything else is refused. */
  public static Retarder parse(String what, String text) {
    int colon = text.indexOf(':');
    String name = (colon < 0 ? text : text.substring(0, colon)).strip().toLowerCase(Locale.ROOT);
    String dose = colon < 0 ? "" : text.substring(colon + 1).strip();
    if (name.equals(SIMULATED)) {
      double pct = Quantities.percent(what, dose);
      if (!(pct > 0 && pct <= MOST_PCT)) {
        throw RefusedInput.of(
            what + " \"" + text + "\"",
            "a dose is above 0 and at most 20 % of the solution",
            "write it like 2-butoxyethanol:3%");
      }
      return new Retarder(OptionalDouble.of(pct), Optional.empty());
    }
    if (name.equals("drops")) {
      if (!DROPS.matcher(dose).matches()) {
        throw RefusedInput.of(
            what + " \"" + text + "\"",
            "a dose in drops is a number over a volume",
            "write it like drops:10/qt or drops:10/L");
      }
      return new Retarder(OptionalDouble.empty(), Optional.of(dose));
    }
    throw RefusedInput.of(
        what + " \"" + text + "\"",
        "a retarder is 2-butoxyethanol (reckoned with) or drops (recorded only)",
        "write it like 2-butoxyethanol:3% or drops:10/qt");
  }

  /** As it is written in a jar's entry; {@link #parse} reads it back. */
  @Override
  public String toString() {
    return volPct.isPresent()
        ? SIMULATED + ":" + plain(volPct.getAsDouble()) + "%"
        : "drops:" + drops.orElseThrow();
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
  }
}
