package coatwright.wood;

import coatwright.air.MoistAir;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Show;

/**
 * How far the width of a board moves with its moisture.
 *
 * <p>Source: Wood Handbook FPL-GTR-190, equation 13-2: ΔD = D (C (M₂ − M₁)), which the handbook
 * gives for moisture contents from 6 to 14 %. The coefficients are means of a species; the rings of
 * a real board lie between flat and upright, and a board held in a frame moves less. Along the
 * grain wood hardly moves.
 */
public final class WoodMovement {
  /** Driest wood the equation holds for, % moisture. */
  public static final double DRIEST_PCT = 6;

  /** Wettest wood the equation holds for, % moisture. */
  public static final double WETTEST_PCT = 14;

  static final double LEAST_PER_PCT = 0.0003;
  static final double GREATEST_PER_PCT = 0.01;

  private WoodMovement() {}

  /**
   * Change of a width between two moisture contents.
   *
   * @param widthMm across the grain at the first moisture, mm, 0.1 to 10 000
   * @param perPct change as a fraction of the width for each point of moisture, 0.0003 to 0.01
   * @param fromPct moisture content before, %, 6 to 14
   * @param toPct moisture content after, %, 6 to 14
   * @return mm; positive swells
   * @throws OutOfRange for a value outside
   */
  public static double changeMm(double widthMm, double perPct, double fromPct, double toPct) {
    OutOfRange.check("width of the board", widthMm, "mm", 0.1, 10_000);
    return widthMm * strainPct(perPct, fromPct, toPct) / 100;
  }

  /** The same between the moistures at which wood settles in two airs. */
  public static double changeMm(double widthMm, double perPct, MoistAir from, MoistAir to) {
    return changeMm(widthMm, perPct, moisturePct(from), moisturePct(to));
  }

  /**
   * The change as a share of the width, which is also how far a film on it is stretched.
   *
   * @return %; positive stretches the film
   */
  public static double strainPct(double perPct, double fromPct, double toPct) {
    OutOfRange.check("movement", perPct, "per %", LEAST_PER_PCT, GREATEST_PER_PCT);
    OutOfRange.check("wood moisture before", fromPct, "%", DRIEST_PCT, WETTEST_PCT);
    OutOfRange.check("wood moisture after", toPct, "%", DRIEST_PCT, WETTEST_PCT);
    return 100 * perPct * (toPct - fromPct);
  }

  /** The same between the moistures at which wood settles in two airs. */
  public static double strainPct(double perPct, MoistAir from, MoistAir to) {
    return strainPct(perPct, moisturePct(from), moisturePct(to));
  }

  /**
   * Moisture content at which wood settles in this air, where its movement is known.
   *
   * @throws OutOfRange where it settles outside 6 to 14 %
   */
  public static double moisturePct(MoistAir air) {
    double pct = EquilibriumMoisture.pct(air.airTempC(), air.rhPct());
    if (pct < DRIEST_PCT || pct > WETTEST_PCT) {
      throw new OutOfRange(
          ("wood in air of %s °C and %s %% settles at %s %% moisture, and its movement is known"
                  + " from %.0f to %.0f %%; take an air from about %.0f to %.0f %% humidity")
              .formatted(
                  Show.fixed(air.airTempC(), 1),
                  Show.fixed(air.rhPct(), 0),
                  Show.fixed(pct, 1),
                  DRIEST_PCT,
                  WETTEST_PCT,
                  Math.ceil(EquilibriumMoisture.rhPct(air.airTempC(), DRIEST_PCT)),
                  Math.floor(EquilibriumMoisture.rhPct(air.airTempC(), WETTEST_PCT))));
    }
    return pct;
  }
}
