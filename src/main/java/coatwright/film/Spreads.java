package coatwright.film;

import coatwright.quantity.OutOfRange;

/**
 * How well the inputs of a job are known. The spreads of the model's own constants are with {@link
 * Axis}; these depend on what was measured and what was assumed.
 *
 * @param wetFilmLn wet film of all coats together, natural-log standard deviation: 0.2 when
 *     reckoned from the method, 0.08 when gauged or weighed
 * @param cutLn cut, natural log: 0.07 when the jar's is told, the finish's own spread when not
 * @param strengthPct spirit strength, points by volume
 * @param airTempK error of the room's thermometer, K
 * @param rhPct error of the room's hygrometer, points of RH
 * @param woodTempK error of the wood's temperature, K
 * @param comingAirK how far the mean of the air still to come may lie from what is expected, K
 */
public record Spreads(
    double wetFilmLn,
    double cutLn,
    double strengthPct,
    double airTempK,
    double rhPct,
    double woodTempK,
    double comingAirK) {

  /** Wet film gauged with a comb or reckoned from what left the jar; common practice, no source. */
  public static final double GAUGED_WET_LN = 0.08;

  /** A cut as mixed with scale and measure; common practice, no source. */
  public static final double TOLD_CUT_LN = 0.07;

  /** A strength as told on the can, points by volume; assumed. */
  public static final double TOLD_STRENGTH_PCT = 0.3;

  public Spreads {
    OutOfRange.check("spread of the wet film", wetFilmLn, "", 0, 1);
    OutOfRange.check("spread of the cut", cutLn, "", 0, 1);
    OutOfRange.check("error of the strength", strengthPct, "% vol", 0, 10);
    OutOfRange.check("error of the air temperature", airTempK, "K", 0, 10);
    OutOfRange.check("error of the humidity", rhPct, "%", 0, 40);
    OutOfRange.check("error of the wood temperature", woodTempK, "K", 0, 15);
    OutOfRange.check("error of the coming air", comingAirK, "K", 0, 15);
  }

  /** Inputs taken as told, in air that is what it is said to be. */
  public static Spreads told(double wetFilmLn, double cutLn) {
    return new Spreads(wetFilmLn, cutLn, TOLD_STRENGTH_PCT, 0, 0, 0, 0);
  }
}
