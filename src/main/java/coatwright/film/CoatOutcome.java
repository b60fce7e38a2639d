package coatwright.film;

import java.util.OptionalDouble;

/**
 * What became of one coat until the next went on or the run ended. Times are seconds after this
 * coat was laid; a time that was not reached is absent.
 *
 * <p>When the wood stood at or below the dew point as the coat went on ({@link #condensation}), dew
 * forms on it and the film takes up water without limit: the blush number is still given as a
 * reckoning of what that does, but no times are.
 *
 * @param laidAtS on the job's clock
 * @param condensation the wood's surface was at or below the dew point
 * @param jarS the blush number of the liquid as poured; above {@link #WEAK_SPIRIT_S} the spirit is
 *     too weak, whatever the weather
 * @param peakS the blush number S at its highest: water over the water at which the resin gives
 *     way, in the top cell
 * @param peakAfterS when that was
 * @param waterPeakPct water in the top cell at that moment, per cent by volume
 * @param waterLimitPct water at which the resin would give way there and then, per cent by volume
 * @param filmLowC the film's lowest temperature from 5 s to an hour
 * @param filmLowAfterS when that was
 * @param dewPointC the room's dew point at that moment
 * @param filmMinusDewK film temperature less dew point at its lowest from 5 s to an hour, K
 * @param hazePeak highest haze of the whole film, 0 to 1; absent when haze was not followed
 * @param hazeAt1h haze an hour after the coat; only an ordering between equal grids
 * @param bloomS how long the haze stood above 0.3, s; absent when haze was not followed
 * @param clearsAfterS when the haze, having exceeded 0.05, fell below it again within the hour
 * @param openTimeS until a quarter of this coat is solids; not defined above a 2.5 lb cut (300 g/L)
 * @param touchS dry to touch
 * @param recoatS dry to recoat
 * @param restedS rested
 * @param xBeforeK softness of the film when this coat was brushed on it, K; absent for the first
 *     coat
 * @param woodBeforeC temperature of the wood's surface when this coat went on, °C
 * @param dryFilmUm dry thickness of this coat, µm
 */
public record CoatOutcome(
    double laidAtS,
    boolean condensation,
    double jarS,
    double peakS,
    double peakAfterS,
    double waterPeakPct,
    double waterLimitPct,
    double filmLowC,
    double filmLowAfterS,
    double dewPointC,
    double filmMinusDewK,
    OptionalDouble hazePeak,
    OptionalDouble hazeAt1h,
    OptionalDouble bloomS,
    OptionalDouble clearsAfterS,
    OptionalDouble openTimeS,
    OptionalDouble touchS,
    OptionalDouble recoatS,
    OptionalDouble restedS,
    OptionalDouble xBeforeK,
    double woodBeforeC,
    double dryFilmUm) {

  /** A liquid whose own S is above this clouds by itself: the spirit is too weak. */
  public static final double WEAK_SPIRIT_S = 0.7;

  /** Open time has no meaning above this cut, g/L (2.5 lb per US gallon). */
  public static final double OPEN_TIME_LIMIT_G_PER_L = 2.5 * 119.826427;

  /** The spirit in the jar, not the weather, is to blame. */
  public boolean spiritTooWeak() {
    return jarS > WEAK_SPIRIT_S;
  }

  /** Lowest film temperature less the dew point of that moment, K. */
  public double marginK() {
    return filmLowC - dewPointC;
  }
}
