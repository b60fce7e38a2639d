package coatwright.outlook;

import coatwright.quantity.Fault;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A slow solvent put into the jar, as told: {@code 2-butoxyethanol:3%} is computed, {@code
 * drops:10/qt} is written down only, because so little cannot act through evaporation in the model.
 *
 * @param simulatedVolPct 2-butoxyethanol, per cent of the solution; 0 when only told
 * @param drops a dose in drops, as told
 */
record Retarder(double simulatedVolPct, Optional<String> drops) {
  static final String KNOWN = "2-butoxyethanol";
  private static final double MOST_PCT = 10;

  static final Retarder NONE = new Retarder(0, Optional.empty());

  /** Reads what was typed; refuses solvents the model does not know. */
  static Retarder read(String text) {
    String typed = text.strip();
    String shown = "retarder \"" + text + "\"";
    if (typed.isEmpty() || typed.toLowerCase(Locale.ROOT).equals("none")) {
      return NONE;
    }
    int colon = typed.indexOf(':');
    if (colon <= 0) {
      throw RefusedInput.of(
          shown,
          "a retarder is a name and a dose",
          "write it like 2-butoxyethanol:3% or drops:10/qt");
    }
    String name = typed.substring(0, colon).strip().toLowerCase(Locale.ROOT);
    String dose = typed.substring(colon + 1).strip();
    if (name.equals("drops")) {
      return drops(shown, dose);
    }
    if (!name.equals(KNOWN)) {
      throw RefusedInput.of(
          shown,
          "the film model knows one slow solvent, 2-butoxyethanol",
          "write 2-butoxyethanol:3%, or drops:10/qt to have a dose written down and not computed");
    }
    double pct = Quantities.percent("retarder dose", dose);
    if (pct > MOST_PCT) {
      throw new RefusedInput(
          List.of(
              Fault.of(shown, "the model holds up to 10 % of the solution", "give a smaller dose")));
    }
    return new Retarder(pct, Optional.empty());
  }

  private static Retarder drops(String shown, String dose) {
    String count = dose.contains("/") ? dose.substring(0, dose.indexOf('/')) : dose;
    if (count.isBlank() || !count.strip().chars().allMatch(Character::isDigit)) {
      throw RefusedInput.of(shown, "drops are counted", "write it like drops:10/qt");
    }
    return new Retarder(0, Optional.of(dose));
  }
}
