package coatwright.quantity;

import static coatwright.quantity.Conversions.G_PER_LB;
import static coatwright.quantity.Conversions.G_PER_L_PER_LB_IMP_GAL;
import static coatwright.quantity.Conversions.G_PER_L_PER_LB_US_GAL;
import static coatwright.quantity.Conversions.G_PER_OZ;
import static coatwright.quantity.Conversions.K_PER_F;
import static coatwright.quantity.Conversions.M2_PER_FT2;
import static coatwright.quantity.Conversions.ML_PER_IMP_GAL;
import static coatwright.quantity.Conversions.ML_PER_US_GAL;
import static coatwright.quantity.Conversions.M_PER_FT;
import static coatwright.quantity.Conversions.PA_PER_INHG;
import static coatwright.quantity.Conversions.UM_PER_MIL;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;

/**
 * Prints quantities for people, rounded to what the eye can use, in the shop's units.
 *
 * <p>The decimal mark is always a point and nothing depends on the machine's language. Film and cut
 * show both units, because gauges and recipes come in both.
 */
public final class Show {
  private static final int LITRE_ML = 1000;

  private Show() {}

  /** "27.0 °C" or "80.6 °F". */
  public static String temperature(double tempC, UnitSystem units) {
    return units == UnitSystem.US
        ? fixed(Conversions.fahrenheitFromCelsius(tempC), 1) + " °F"
        : fixed(tempC, 1) + " °C";
  }

  /** A difference of temperatures: "2.4 K" or "4.3 °F". */
  public static String temperatureStep(double stepK, UnitSystem units) {
    return units == UnitSystem.US ? fixed(stepK / K_PER_F, 1) + " °F" : fixed(stepK, 1) + " K";
  }

  /** "65 %". */
  public static String relativeHumidity(double rhPct) {
    return fixed(rhPct, 0) + " %";
  }

  /** A cut in pounds a gallon of spirit and in grams a litre, the shop's own first. */
  public static String cut(double cutGPerL, UnitSystem units) {
    String metric = fixed(cutGPerL, 0) + " g/L";
    String us = fixed(cutGPerL / G_PER_L_PER_LB_US_GAL, 1) + " lb";
    String imperial = fixed(cutGPerL / G_PER_L_PER_LB_IMP_GAL, 1) + " lb/imp";
    return switch (units) {
      case US -> us + " (" + metric + ")";
      case METRIC -> metric + " (" + us + ")";
      case IMPERIAL -> imperial + " (" + metric + ")";
    };
  }

  /** A film thickness in mil and µm, the shop's own first. */
  public static String film(double filmUm, UnitSystem units) {
    String metric = fixed(filmUm, filmUm < 10 ? 1 : 0) + " µm";
    String mil = fixed(filmUm / UM_PER_MIL, filmUm < 10 * UM_PER_MIL ? 1 : 0) + " mil";
    if (filmUm < UM_PER_MIL) {
      mil = fixed(filmUm / UM_PER_MIL, 2) + " mil";
    }
    return units == UnitSystem.METRIC ? metric + " (" + mil + ")" : mil + " (" + metric + ")";
  }

  /** A volume of liquid: "240 mL", "1.50 L", "8.1 fl oz", "1.3 qt". */
  public static String volume(double volumeMl, UnitSystem units) {
    return switch (units) {
      case METRIC ->
          volumeMl < LITRE_ML
              ? fixed(volumeMl, volumeMl < 10 ? 1 : 0) + " mL"
              : fixed(volumeMl / LITRE_ML, 2) + " L";
      case US -> gallonPart(volumeMl, ML_PER_US_GAL, 128, "");
      case IMPERIAL -> gallonPart(volumeMl, ML_PER_IMP_GAL, 160, " (imp)");
    };
  }

  private static String gallonPart(
      double volumeMl, double gallonMl, int ouncesAGallon, String tail) {
    if (volumeMl < gallonMl / 4) {
      return fixed(volumeMl / gallonMl * ouncesAGallon, 1) + " fl oz" + tail;
    }
    return volumeMl < gallonMl
        ? fixed(volumeMl / gallonMl * 4, 1) + " qt" + tail
        : fixed(volumeMl / gallonMl, 1) + " gal" + tail;
  }

  /** A weight: "225 g", "1.20 kg", "8.0 oz", "2.6 lb". */
  public static String mass(double massG, UnitSystem units) {
    if (units == UnitSystem.METRIC) {
      return massG < 1000
          ? fixed(massG, massG < 10 ? 1 : 0) + " g"
          : fixed(massG / 1000, 2) + " kg";
    }
    return massG < G_PER_LB
        ? fixed(massG / G_PER_OZ, 1) + " oz"
        : fixed(massG / G_PER_LB, 1) + " lb";
  }

  /** An area: "1.50 m²" or "16.1 ft²". */
  public static String area(double areaM2, UnitSystem units) {
    return units == UnitSystem.METRIC
        ? fixed(areaM2, 2) + " m²"
        : fixed(areaM2 / M2_PER_FT2, 1) + " ft²";
  }

  /** A height above the sea: "50 m" or "164 ft". */
  public static String altitude(double altitudeM, UnitSystem units) {
    return units == UnitSystem.METRIC
        ? fixed(altitudeM, 0) + " m"
        : fixed(altitudeM / M_PER_FT, 0) + " ft";
  }

  /** An air pressure: "1013 hPa" or "29.92 inHg". */
  public static String pressure(double pressurePa, UnitSystem units) {
    return units == UnitSystem.US
        ? fixed(pressurePa / PA_PER_INHG, 2) + " inHg"
        : fixed(pressurePa / 100, 0) + " hPa";
  }

  /** A length of time as one number and one word: "45 s", "7 min", "5.5 h", "3.8 d", "23 d". */
  public static String duration(Duration time) {
    if (time.isNegative()) {
      return "-" + duration(time.negated());
    }
    double seconds = time.toMillis() / 1000.0;
    if (seconds < 90) {
      return fixed(seconds, 0) + " s";
    }
    if (seconds < 90 * 60) {
      return fixed(seconds / 60, 0) + " min";
    }
    if (seconds < 48 * 3600) {
      return fixed(seconds / 3600, 1) + " h";
    }
    double days = seconds / 86_400;
    return fixed(days, days < 10 ? 1 : 0) + " d";
  }

  /** A number with that many decimals, halves away from zero, and never "-0". */
  public static String fixed(double value, int decimals) {
    if (Double.isNaN(value) || Double.isInfinite(value)) {
      throw new OutOfRange("a number to show is " + value + "; only finite numbers are shown");
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.toPlainString();
  }
}
