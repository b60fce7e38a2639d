package coatwright.solvent;

import coatwright.air.SaturationFunction;
import coatwright.quantity.OutOfRange;

/** Saturation pressure over a pure liquid as a function of temperature. */
public sealed interface VapourPressure {
  /** Coldest temperature the curves are used at, °C; the constants were fitted above about 0 °C. */
  double LOWEST_C = -30;

  /** Hottest temperature, °C. */
  double HIGHEST_C = 100;

  /**
   * Saturation pressure, Pa.
   *
   * @param temperatureC −30 to 100 °C
   */
  double pressurePa(double temperatureC);

  /** ln(p/kPa) = a − b/(t + c), t in °C. */
  record Antoine(double a, double b, double c) implements VapourPressure {

    /** From log10(p/bar) = a − b/(t + c). */
    static Antoine ofLog10Bar(double a, double b, double c) {
      double ln10 = Math.log(10);
      return new Antoine(a * ln10 + Math.log(100), b * ln10, c);
    }

    /** From log10(p/Pa) = a − b/(T + c), T in kelvin. */
    static Antoine ofLog10PaKelvin(double a, double b, double c) {
      double ln10 = Math.log(10);
      return new Antoine((a - 3) * ln10, b * ln10, c + 273.15);
    }

    @Override
    public double pressurePa(double temperatureC) {
      OutOfRange.check("liquid temperature", temperatureC, "°C", LOWEST_C, HIGHEST_C);
      return 1000 * Math.exp(a - b / (temperatureC + c));
    }
  }

  /** Clausius-Clapeyron with a constant heat through two known points. */
  record TwoPoint(double lowC, double lowPa, double highC, double highPa)
      implements VapourPressure {
    private static final double ZERO_C_K = 273.15;

    @Override
    public double pressurePa(double temperatureC) {
      OutOfRange.check("liquid temperature", temperatureC, "°C", LOWEST_C, HIGHEST_C);
      double low = 1 / (lowC + ZERO_C_K);
      double slope = Math.log(highPa / lowPa) / (low - 1 / (highC + ZERO_C_K));
      return lowPa * Math.exp(slope * (low - 1 / (temperatureC + ZERO_C_K)));
    }
  }

  /** Water, by whichever saturation function the caller works with. */
  record OfWater(SaturationFunction function) implements VapourPressure {
    @Override
    public double pressurePa(double temperatureC) {
      return function.pressurePa(temperatureC);
    }
  }
}
