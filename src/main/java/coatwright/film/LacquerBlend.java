package coatwright.film;

import coatwright.quantity.OutOfRange;
import coatwright.solvent.Solvent;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Solvents of a lacquer or a thinner, by volume. What is in a can is seldom printed in full; these
 * are order-of-magnitude blends to compare by, assumed, and the safety data sheet of the can names
 * its own.
 *
 * @param name as a finish file writes it
 * @param parts shares that add up to 100 %
 */
public record LacquerBlend(String name, List<Part> parts) {
  private static final double ROUNDING_PCT = 0.01;

  /** Much acetone: quick, and cold enough to cloud in damp air. */
  public static final LacquerBlend FAST =
      new LacquerBlend(
          "fast",
          List.of(
              new Part(Solvent.ACETONE, 60),
              new Part(Solvent.TOLUENE, 30),
              new Part(Solvent.BUTYL_ACETATE, 10)));

  /** The middle course. */
  public static final LacquerBlend REGULAR =
      new LacquerBlend(
          "regular",
          List.of(
              new Part(Solvent.ACETONE, 30),
              new Part(Solvent.TOLUENE, 30),
              new Part(Solvent.BUTYL_ACETATE, 40)));

  /** The middle course with a tenth of slow glycol ether, as retarder thinners have it. */
  public static final LacquerBlend SLOWED =
      new LacquerBlend(
          "slowed",
          List.of(
              new Part(Solvent.ACETONE, 27),
              new Part(Solvent.TOLUENE, 27),
              new Part(Solvent.BUTYL_ACETATE, 36),
              new Part(Solvent.BUTOXYETHANOL, 10)));

  /** The blends that have a name. */
  public static final List<LacquerBlend> ALL = List.of(FAST, REGULAR, SLOWED);

  /**
   * One solvent of a blend.
   *
   * @param volPct by volume, %, above 0 to 100
   */
  public record Part(Solvent solvent, double volPct) {
    public Part {
      OutOfRange.check("share of " + solvent.name(), volPct, "% vol", 0.001, 100);
    }
  }

  public LacquerBlend {
    parts = List.copyOf(parts);
    if (name.isBlank()) {
      throw new IllegalArgumentException("a blend needs a name");
    }
    double sum = 0;
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      sum += part.volPct();
      if (part.solvent().equals(Solvent.WATER)) {
        throw new IllegalArgumentException(
            "blend %s names water; a lacquer is carried by solvents only".formatted(name));
      }
      for (Part earlier : parts.subList(0, i)) {
        if (earlier.solvent().equals(part.solvent())) {
          throw new IllegalArgumentException(
              "blend %s names %s twice; add the two shares".formatted(name, part.solvent().name()));
        }
      }
    }
    if (!(Math.abs(sum - 100) < ROUNDING_PCT)) {
      throw new IllegalArgumentException(
          "the shares of blend %s add up to %.2f %%; they must make 100".formatted(name, sum));
    }
  }

  /** The blend of that name, in any case; absent when none has it. */
  public static Optional<LacquerBlend> named(String name) {
    String wanted = name.strip().toLowerCase(Locale.ROOT);
    return ALL.stream().filter(b -> b.name().equals(wanted)).findFirst();
  }

  /** Volume share of one solvent, 0 to 1. */
  public double share(Solvent solvent) {
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i).solvent().equals(solvent)) {
        return parts.get(i).volPct() / 100;
      }
    }
    return 0;
  }
}
