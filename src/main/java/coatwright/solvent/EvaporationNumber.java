package coatwright.solvent;

/**
 * How fast a liquid dries relative to n-butyl acetate, by volume, in dry air at 25 °C.
 *
 * <p>A volatile liquid cools itself and must be counted so: held at air temperature, ethanol would
 * score more than twice its published number. A slow liquid hardly cools and is served by either.
 */
public final class EvaporationNumber {
  private static final double TEST_AIR_C = 25;
  private static final double HEAT_TRANSFER = 20;
  private static final double RADIATION = 5.5;

  private EvaporationNumber() {}

  /** With both liquids at the temperature their own evaporation brings them to. */
  public static double selfCooled(Solvent liquid) {
    return own(liquid) / own(Solvent.BUTYL_ACETATE);
  }

  /** With both liquids held at air temperature. */
  public static double isothermal(Solvent liquid) {
    return surface(liquid).recessionMPerS(TEST_AIR_C)
        / surface(Solvent.BUTYL_ACETATE).recessionMPerS(TEST_AIR_C);
  }

  private static double own(Solvent liquid) {
    EvaporatingSurface surface = surface(liquid);
    return surface.recessionMPerS(surface.steadyTemperatureC());
  }

  private static EvaporatingSurface surface(Solvent liquid) {
    return new EvaporatingSurface(liquid, TEST_AIR_C, 0, HEAT_TRANSFER, RADIATION);
  }
}
