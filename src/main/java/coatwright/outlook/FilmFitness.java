package coatwright.outlook;

import coatwright.air.SaturationPressure;
import coatwright.film.Finish;

/**
 * What a coat of a film that dries by its solvents needs of an hour: air and wood within what the
 * finish is stated for, the wood a kelvin clear of the dew point, and its water below what the
 * resin bears nine times in ten.
 */
final class FilmFitness {
  private FilmFitness() {}

  /**
   * The same rule as for the air now, on the cheap form of the model.
   *
   * @param ninety by how much its water may lie above the model's, one time in ten
   */
  static WindowFinder.Fitness of(Finish finish, CloudingSurface surface, double ninety) {
    return (airTempC, rhPct, woodTempC) -> {
      boolean inLimits =
          Math.min(airTempC, woodTempC) >= finish.lowestTempC()
              && Math.max(airTempC, woodTempC) <= finish.highestTempC();
      if (!inLimits) {
        return false;
      }
      double vapourPa = rhPct / 100 * SaturationPressure.overWaterPa(airTempC);
      double clearPa = SaturationPressure.overWaterPa(woodTempC - CloudingRule.LEAST_SPREAD_K);
      return vapourPa <= clearPa
          && surface.peakS(airTempC, rhPct, woodTempC) * ninety < CloudingRule.LIMIT_S;
    };
  }
}
