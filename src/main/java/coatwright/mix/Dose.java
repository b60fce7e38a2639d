package coatwright.mix;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.StrictNumber;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How much of something goes into a mixture: by volume, or counted in drops.
 *
 * <p>A dose is counted on the mixture as it stands before anything is added: 3 % of a litre is 30
 * mL. Drops are not a volume: a drop of water is a twentieth of a millilitre by the old pharmacy
 * convention (common practice, no source), a drop of spirit a fortieth to a sixtieth (from memory),
 * so a dose in drops has a low and a high end and is never reckoned with.
 *
 * @param lowFraction volume added per volume of mixture, at the least, 0 to 1
 * @param highFraction at the most; the same unless it was counted in drops
 * @param dropsPerL drops to a litre of mixture, if it was counted so
 */
public record Dose(double lowFraction, double highFraction, OptionalDouble dropsPerL) {
  /** Drops in a millilitre when they are large. */
  public static final double FEWEST_DROPS_PER_ML = 20;

  /** Drops in a millilitre when they are small. */
  public static final double MOST_DROPS_PER_ML = 60;

  private static final double FLOZ_PER_QT = 32;
  private static final double FLOZ_PER_IMP_QT = 40;
  private static final Pattern RATIO = Pattern.compile("([^/]+)/((?:[0-9.]+)?[a-z.]+(?:/imp)?)");
  private static final Pattern DROPS = Pattern.compile("([0-9.]+)\\s*(?:drops?|gtt)");
  private static final String EXAMPLE = "write it like 3%, 30mL/L, 1floz/qt or 10drops/qt";

  public Dose {
    OutOfRange.check("dose", lowFraction, "(fraction)", 0, 1);
    OutOfRange.check("dose", highFraction, "(fraction)", lowFraction, 1);
  }

  /** A dose by volume, per cent of the mixture it goes into, 0 to 100. */
  public static Dose ofPct(double pct) {
    return new Dose(pct / 100, pct / 100, OptionalDouble.empty());
  }

  /** A dose counted in drops to a litre of mixture. */
  public static Dose ofDropsPerL(double dropsPerL) {
    double mostMl = OutOfRange.check("drops", dropsPerL, "a litre", 0, 20_000);
    return new Dose(
        mostMl / MOST_DROPS_PER_ML / 1000,
        mostMl / FEWEST_DROPS_PER_ML / 1000,
        OptionalDouble.of(dropsPerL));
  }

  /**
   * Reads {@code 3%}, {@code 30mL/L}, {@code 1floz/qt} or {@code 10drops/qt}.
   *
   * @throws RefusedInput if it is none of these, or more than its own volume
   */
  public static Dose parse(String what, String text) {
    String typed = text.strip().toLowerCase(Locale.ROOT);
    Matcher ratio = RATIO.matcher(typed);
    if (!ratio.matches()) {
      if (typed.indexOf('%') < 0) {
        throw RefusedInput.of(
            what + " \"" + text + "\"", "a dose is a share or a volume to a volume", EXAMPLE);
      }
      return ofPct(Quantities.percent(what, text));
    }
    String per = ratio.group(2);
    String within = "%s \"%s\", where".formatted(what, text);
    double perMl = Quantities.volumeMl(within, Character.isDigit(per.charAt(0)) ? per : "1" + per);
    if (!(perMl > 0)) {
      throw RefusedInput.of(what + " \"" + text + "\"", "a dose is to a volume", EXAMPLE);
    }
    Matcher drops = DROPS.matcher(ratio.group(1).strip());
    if (drops.matches()) {
      OptionalDouble count = StrictNumber.parse(drops.group(1), '.');
      return ofDropsPerL(count.orElse(Double.NaN) / perMl * 1000);
    }
    double fraction = Quantities.volumeMl(within, ratio.group(1)) / perMl;
    if (fraction > 1) {
      throw RefusedInput.of(
          what + " \"" + text + "\"",
          "this is more of it than of the mixture",
          "check which is the dose and which the mixture");
    }
    return ofPct(100 * fraction);
  }

  /** Whether it was counted in drops, and so is only known between two ends. */
  public boolean inDrops() {
    return dropsPerL.isPresent();
  }

  /** To add to a mixture of that volume, mL; in drops the middle of the two ends. */
  public double addMl(double mixtureMl) {
    return mixtureMl * (lowFraction + highFraction) / 2;
  }

  /** Per cent of the mixture it goes into; in drops the middle. */
  public double pct() {
    return 100 * addMl(1);
  }

  /** Millilitres to a litre of mixture; in drops the middle. */
  public double mlPerL() {
    return addMl(1000);
  }

  /** US fluid ounces to a US quart of 32; in drops the middle. */
  public double flOzPerUsQuart() {
    return addMl(FLOZ_PER_QT);
  }

  /** Imperial fluid ounces to an imperial quart of 40; in drops the middle. */
  public double flOzPerImpQuart() {
    return addMl(FLOZ_PER_IMP_QT);
  }

  /** Share of the whole once it is in, per cent. */
  public double pctOfWhole() {
    double added = addMl(1);
    return 100 * added / (1 + added);
  }
}
