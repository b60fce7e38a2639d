package coatwright.air;

import coatwright.quantity.OutOfRange;

/**
 * Air pressure by height, for a shop without a barometer.
 *
 * <p>Source: ASHRAE Handbook Fundamentals (2017), chapter 1, equation 3, p = 101 325 (1 -
 * 2.25577e-5 z)^5.2559. Weather moves the real pressure by some 3 % about it, which moves a wet
 * bulb by less than 0.2 K and a dew point from temperature and relative humidity not at all.
 */
public final class StandardAtmosphere {
  private StandardAtmosphere() {}

  /**
   * Pressure of the standard atmosphere.
   *
   * @param altitudeM metres above the sea, -500 to 5000
   * @return Pa
   */
  public static double pressurePa(double altitudeM) {
    OutOfRange.check("altitude", altitudeM, "m", -500, 5000);
    return MoistAir.SEA_LEVEL_PA * Math.pow(1 - 2.25577e-5 * altitudeM, 5.2559);
  }
}
