package coatwright.quantity;

/**
 * Conversion factors. Those marked exact are definitions; source: NIST Special Publication 811
 * (2008), Appendix B, and for the imperial gallon the UK Weights and Measures Act 1985.
 */
public final class Conversions {
  /** 0 °C in kelvin; exact. */
  public static final double ZERO_CELSIUS_K = 273.15;

  /** Kelvin in one degree Fahrenheit; exact. */
  public static final double K_PER_F = 5.0 / 9.0;

  /** Grams in an avoirdupois pound; exact. */
  public static final double G_PER_LB = 453.59237;

  /** Grams in an avoirdupois ounce, a sixteenth of the pound; exact. */
  public static final double G_PER_OZ = G_PER_LB / 16;

  /** Millilitres in a US gallon of 231 cubic inches; exact. */
  public static final double ML_PER_US_GAL = 3785.411784;

  /** Millilitres in an imperial gallon; exact. */
  public static final double ML_PER_IMP_GAL = 4546.09;

  /** Millilitres in a US fluid ounce, 1/128 gallon; exact. */
  public static final double ML_PER_US_FLOZ = ML_PER_US_GAL / 128;

  /** Millilitres in an imperial fluid ounce, 1/160 gallon; exact. */
  public static final double ML_PER_IMP_FLOZ = ML_PER_IMP_GAL / 160;

  /** Grams per litre in one pound per US gallon, 119.8264; exact as a quotient of definitions. */
  public static final double G_PER_L_PER_LB_US_GAL = 1000 * G_PER_LB / ML_PER_US_GAL;

  /** Grams per litre in one pound per imperial gallon, 99.7764; exact likewise. */
  public static final double G_PER_L_PER_LB_IMP_GAL = 1000 * G_PER_LB / ML_PER_IMP_GAL;

  /** Millimetres in an inch; exact. */
  public static final double MM_PER_IN = 25.4;

  /** Micrometres in a mil, a thousandth of an inch; exact. */
  public static final double UM_PER_MIL = 25.4;

  /** Metres in a foot; exact. */
  public static final double M_PER_FT = 0.3048;

  /** Square metres in a square foot; exact. */
  public static final double M2_PER_FT2 = M_PER_FT * M_PER_FT;

  /** Grams a cubic metre in a grain a cubic foot; exact, the grain being 64.798 91 mg (SP 811). */
  public static final double G_M3_PER_GRAIN_FT3 = 0.06479891 / (M_PER_FT * M_PER_FT * M_PER_FT);

  /** Pascals in an inch of mercury, conventional; SP 811 gives 3.386 389 E+03. */
  public static final double PA_PER_INHG = 3386.389;

  /** Pascals in a millimetre of mercury, conventional; SP 811 gives 1.333 224 E+02. */
  public static final double PA_PER_MMHG = 133.3224;

  private Conversions() {}

  /** Celsius from Fahrenheit; exact. */
  public static double celsiusFromFahrenheit(double tempF) {
    return (tempF - 32) * K_PER_F;
  }

  /** Fahrenheit from Celsius; exact. */
  public static double fahrenheitFromCelsius(double tempC) {
    return tempC / K_PER_F + 32;
  }
}
