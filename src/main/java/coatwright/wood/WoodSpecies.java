package coatwright.wood;

import coatwright.quantity.OutOfRange;
import coatwright.quantity.RefusedInput;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A wood as the tables know it. A figure without a source that could be read is absent, so that
 * nothing can be computed with it.
 *
 * @param name as it is told: "black cherry"
 * @param latin the botanical name
 * @param aliases other names a shop uses
 * @param radialPerPct change of a quarter-sawn width as a fraction of it, for each point of
 *     moisture content from 6 to 14 %; 0.0003 to 0.01
 * @param tangentialPerPct the same of a flat-sawn width
 * @param movementBasis the table both are from
 * @param specificGravity dry mass over volume at 12 % moisture, 0.3 to 1.2. From 6 to 14 % it moves
 *     by less than 2 %, which is left out
 */
public record WoodSpecies(
    String name,
    String latin,
    List<String> aliases,
    OptionalDouble radialPerPct,
    OptionalDouble tangentialPerPct,
    String movementBasis,
    OptionalDouble specificGravity) {
  public WoodSpecies {
    aliases = List.copyOf(aliases);
    radialPerPct.ifPresent(c -> checkCoefficient("radial movement", c));
    tangentialPerPct.ifPresent(c -> checkCoefficient("tangential movement", c));
    specificGravity.ifPresent(g -> OutOfRange.check("specific gravity", g, "", 0.3, 1.2));
  }

  private static void checkCoefficient(String what, double perPct) {
    OutOfRange.check(
        what, perPct, "per %", WoodMovement.LEAST_PER_PCT, WoodMovement.GREATEST_PER_PCT);
  }

  /**
   * How far a width of this wood moves.
   *
   * @return the change as a fraction of the width, for each point of moisture content
   * @throws RefusedInput where no figure could be sourced; its remedy is a figure of one's own
   */
  public double movementPerPct(Sawn sawn) {
    OptionalDouble perPct = sawn == Sawn.FLAT ? tangentialPerPct : radialPerPct;
    return perPct.orElseThrow(
        () ->
            RefusedInput.of(
                "species \"" + name + "\"",
                "there is no sourced figure for the movement of " + name + ", " + sawn + "-sawn",
                "enter your own coefficient"));
  }
}
