package coatwright.mix;

import coatwright.quantity.Conversions;
import coatwright.quantity.OutOfRange;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Published limits of a solvent's vapour in air.
 *
 * <p>Lower explosive limit: the lowest of IEC 60079-20-1:2010, NFPA 497:2008 and the NIOSH Pocket
 * Guide. Exposure: the lower of OSHA's permissible limit and NIOSH's recommended one, both averages
 * over eight hours, and where there is one the lowest limit for short times (ceiling or 15 min).
 * Molar mass: IUPAC critical data table. Density at 20 °C: CRC Handbook, and for 1-propanol,
 * 2-propanol, acetone and toluene Perry's Chemical Engineers' Handbook, 8th ed., table 2-32.
 *
 * <p>Left out, because no lower explosive limit or no exposure limit was found published: n-decane,
 * white spirit.
 */
public enum VapourLimits {
  ETHANOL("ethanol", 46.069, 789.3, 3.1, 1000, 1000, Double.NaN, false),
  METHANOL("methanol", 32.042, 791.4, 6, 200, 200, 250, true),
  BUTANOL("1-butanol", 74.123, 809.5, 1.4, 100, Double.NaN, 50, true),
  PROPANOL("1-propanol", 60.096, 803.8, 2.1, 200, 200, 250, true),
  ISOPROPANOL("2-propanol", 60.096, 786.7, 2, 400, 400, 500, false),
  BUTYL_ACETATE("n-butyl acetate", 116.16, 882.5, 1.2, 150, 150, 200, false),
  ACETONE("acetone", 58.08, 792.3, 2.5, 1000, 250, Double.NaN, false),
  TOLUENE("toluene", 92.141, 868.5, 1, 200, 100, 150, false),
  BUTOXYETHANOL("2-butoxyethanol", 118.176, 901.5, 1.1, 50, 5, Double.NaN, true);

  private static final double GAS_CONSTANT = 8.314462618;

  private final String solvent;
  private final double molarMassG;
  private final double densityKgPerM3;
  private final double lelPct;
  private final double oshaPpm;
  private final double nioshPpm;
  private final double shortPpm;
  private final boolean skin;

  VapourLimits(
      String solvent,
      double molarMassG,
      double densityKgPerM3,
      double lelPct,
      double oshaPpm,
      double nioshPpm,
      double shortPpm,
      boolean skin) {
    this.solvent = solvent;
    this.molarMassG = molarMassG;
    this.densityKgPerM3 = densityKgPerM3;
    this.lelPct = lelPct;
    this.oshaPpm = oshaPpm;
    this.nioshPpm = nioshPpm;
    this.shortPpm = shortPpm;
    this.skin = skin;
  }

  /** The limits of a solvent by the name a finisher writes. */
  public static Optional<VapourLimits> named(String text) {
    String asked = text.strip().toLowerCase(Locale.ROOT).replace("n-butanol", "1-butanol");
    return Arrays.stream(values()).filter(one -> one.solvent.equals(asked)).findFirst();
  }

  /** Its name. */
  public String solvent() {
    return solvent;
  }

  /** Molar mass, g/mol. */
  public double molarMassG() {
    return molarMassG;
  }

  /** Density of the liquid at 20 °C, kg/m³. */
  public double densityKgPerM3() {
    return densityKgPerM3;
  }

  /** Lowest published lower explosive limit, per cent by volume of air. */
  public double lelPct() {
    return lelPct;
  }

  /** The lower of the two eight-hour limits, ppm. */
  public double eightHourPpm() {
    return Double.isNaN(nioshPpm) ? oshaPpm : Math.min(oshaPpm, nioshPpm);
  }

  /** Whose the lower eight-hour limit is. */
  public String eightHourWhose() {
    if (Double.isNaN(nioshPpm) || oshaPpm < nioshPpm) {
      return "OSHA PEL";
    }
    return oshaPpm == nioshPpm ? "OSHA PEL and NIOSH REL" : "NIOSH REL";
  }

  /** Lowest limit for a quarter of an hour or for any moment, ppm. */
  public OptionalDouble shortTimePpm() {
    return Double.isNaN(shortPpm) ? OptionalDouble.empty() : OptionalDouble.of(shortPpm);
  }

  /** Whether a limit's publisher warns that it passes the skin. */
  public boolean passesSkin() {
    return skin;
  }

  /**
   * Milligrams in a cubic metre of air for one ppm by volume, ideal gas.
   *
   * @param airTempC −20 to 60 °C
   * @param pressurePa 50 to 110 kPa
   */
  public double mgPerM3PerPpm(double airTempC, double pressurePa) {
    OutOfRange.check("air temperature", airTempC, "°C", -20, 60);
    OutOfRange.check("air pressure", pressurePa, "Pa", 50_000, 110_000);
    double molPerM3 = pressurePa / GAS_CONSTANT / (airTempC + Conversions.ZERO_CELSIUS_K);
    return molarMassG * molPerM3 / 1000;
  }
}
