package coatwright.air;

import coatwright.quantity.OutOfRange;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The relative humidity over a saturated salt solution: a fixed point to test a hygrometer by.
 *
 * <p>Source: L. Greenspan, "Humidity fixed points of binary saturated aqueous solutions", Journal
 * of Research of the National Bureau of Standards 81A (1977) 89: per cent as a polynomial in °C,
 * each over its own range. For lithium chloride and potassium carbonate the copies of the table
 * that were read differ in the sign of the linear term; plus is taken, which gives the printed 11.3
 * and 43.2 % at 25 °C, and moves neither by more than 0.5 points between 0 and 40 °C.
 */
public enum SaturatedSalt {
  LITHIUM_CHLORIDE("LiCl", 11.2323, 0.00824245, -0.00021489, 0, 100),
  MAGNESIUM_CHLORIDE("MgCl2", 33.6686, -0.00797397, -0.00108988, 0, 99),
  POTASSIUM_CARBONATE("K2CO3", 43.1315, 0.00147523, 0, 0, 30),
  SODIUM_CHLORIDE("NaCl", 75.5164, 0.0398321, -0.00265459, 2.848e-5, 80),
  POTASSIUM_CHLORIDE("KCl", 88.619, -0.19334, 0.000899706, 0, 90),
  POTASSIUM_NITRATE("KNO3", 96.3361, 0.0112371, -0.00484514, 0, 50),
  POTASSIUM_SULPHATE("K2SO4", 98.7792, -0.0590502, 0, 0, 50);

  private final String formula;
  private final double a0;
  private final double a1;
  private final double a2;
  private final double a3;
  private final double warmestC;

  SaturatedSalt(String formula, double a0, double a1, double a2, double a3, double warmestC) {
    this.formula = formula;
    this.a0 = a0;
    this.a1 = a1;
    this.a2 = a2;
    this.a3 = a3;
    this.warmestC = warmestC;
  }

  /** Its formula in plain letters, as it is typed: {@code NaCl}. */
  public String formula() {
    return formula;
  }

  /** Its name for people: {@code sodium chloride}. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /**
   * Relative humidity over its saturated solution, %.
   *
   * @param tempC of salt and air alike, °C, from 0 to the salt's own end
   */
  public double rhPct(double tempC) {
    OutOfRange.check("temperature of the " + this, tempC, "°C", 0, warmestC);
    return a0 + tempC * (a1 + tempC * (a2 + tempC * a3));
  }

  /**
   * What a sensor beside the salt should read when it is a little warmer or colder: the salt sets
   * the vapour, the sensor's own temperature the humidity.
   *
   * @param saltTempC °C
   * @param sensorTempC °C, at most 1 K from the salt
   * @return %
   */
  public double rhAtSensorPct(double saltTempC, double sensorTempC) {
    OutOfRange.check("sensor's temperature beside the salt", sensorTempC - saltTempC, "K", -1, 1);
    return rhPct(saltTempC)
        * SaturationPressure.overWaterPa(saltTempC)
        / SaturationPressure.overWaterPa(sensorTempC);
  }

  /** By its formula or name, whatever the case. */
  public static Optional<SaturatedSalt> named(String typed) {
    String wanted = typed.strip().replace('_', ' ').replace('-', ' ');
    return Arrays.stream(values())
        .filter(
            salt ->
                salt.formula.equalsIgnoreCase(wanted) || salt.toString().equalsIgnoreCase(wanted))
        .findFirst();
  }

  /** Every formula, driest first. */
  public static List<String> formulas() {
    return Arrays.stream(values()).map(SaturatedSalt::formula).toList();
  }
}
