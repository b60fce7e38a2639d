package coatwright.solvent;

import static java.lang.Math.cbrt;
import static java.lang.Math.pow;
import static java.lang.Math.sqrt;

import coatwright.quantity.OutOfRange;

/**
 * Air moving past a surface, at 101 325 Pa: what it conducts, and how fast vapour leaves into it.
 *
 * <p>Density from the ideal gas (28.97 g/mol); conductivity 0.0241 (T/273.15)^0.81 W/(m K) and
 * viscosity 1.716e-5 (T/273.15)^0.7 Pa s are the usual power laws fitted to tabulated dry air,
 * within 1 % from 0 to 50 °C; cp 1006 J/(kg K).
 *
 * @param temperatureK −30 to 100 °C in kelvin
 */
public record AirFlow(double temperatureK) {
  /** Standard pressure, Pa. */
  public static final double PRESSURE_PA = 101325;

  /** Gas constant, J/(mol K). */
  public static final double GAS_CONSTANT = 8.314462618;

  /** Stefan-Boltzmann constant, W/(m² K⁴). */
  public static final double RADIATION = 5.670374e-8;

  private static final double CP = 1006;
  private static final double LAMINAR_PLATE = 0.664;

  public AirFlow {
    OutOfRange.check("air temperature", temperatureK, "K", 243.15, 373.15);
  }

  public double densityKgPerM3() {
    return PRESSURE_PA * 0.02897 / (GAS_CONSTANT * temperatureK);
  }

  public double conductivityWPerMK() {
    return 0.0241 * pow(temperatureK / 273.15, 0.81);
  }

  public double viscosityM2PerS() {
    return 1.716e-5 * pow(temperatureK / 273.15, 0.7) / densityKgPerM3();
  }

  public double heatDiffusivityM2PerS() {
    return conductivityWPerMK() / (densityKgPerM3() * CP);
  }

  /**
   * Diffusivity of a vapour in air, m²/s: 1e-7 T^1.75 √(1/28.97 + 1/M) / (20.1^⅓ + v^⅓)².
   *
   * <p>Source: Fuller, Schettler and Giddings, Industrial and Engineering Chemistry 58 (1966) 18.
   */
  public double diffusivityM2PerS(Solvent vapour) {
    double reach = cbrt(20.1) + cbrt(vapour.diffusionVolume());
    double masses = sqrt(1 / 28.97 + 1 / (1000 * vapour.molarMassKgPerMol()));
    return 1e-7 * pow(temperatureK, 1.75) * masses / (reach * reach);
  }

  /**
   * Heat transfer along a plate, W/(m² K): laminar plate 0.664 Re^½ Pr^⅓ k/L, and still air,
   * combined by the cube root of the sum of cubes (Churchill and Usagi).
   *
   * @param speedMPerS draught, 0 to 10 m/s
   * @param lengthM along the draught, m
   * @param stillAirWPerM2K what remains without a draught
   */
  public double heatTransferWPerM2K(double speedMPerS, double lengthM, double stillAirWPerM2K) {
    OutOfRange.check("draught", speedMPerS, "m/s", 0, 10);
    double viscosity = viscosityM2PerS();
    double conductivity = conductivityWPerMK();
    double reynolds = speedMPerS * lengthM / viscosity;
    double prandtl = viscosity * densityKgPerM3() * CP / conductivity;
    double forced = LAMINAR_PLATE * sqrt(reynolds) * cbrt(prandtl) * conductivity / lengthM;
    return cbrt(stillAirWPerM2K * stillAirWPerM2K * stillAirWPerM2K + forced * forced * forced);
  }

  /** Speed at which a vapour leaves, m/s: h/(ρ cp) (D/α)^⅔ (Chilton and Colburn 1934). */
  public double massTransferMPerS(double heatTransferWPerM2K, Solvent vapour) {
    double lewis = diffusivityM2PerS(vapour) / heatDiffusivityM2PerS();
    return heatTransferWPerM2K / (densityKgPerM3() * CP) * pow(lewis, 2.0 / 3.0);
  }

  /** Heat over vapour transfer as a wet-bulb instrument sees it, J/(kg K): cp (α/D)^⅔. */
  public double psychrometricRatio(Solvent vapour) {
    return CP * pow(heatDiffusivityM2PerS() / diffusivityM2PerS(vapour), 2.0 / 3.0);
  }

  /**
   * Stefan's factor for vapour streaming away from the surface: P over the log mean of the dry-air
   * pressures at the surface and far from it.
   *
   * @param surfacePa sum of vapour pressures at the surface, Pa; 0 to 90 000
   * @param roomPa the same far away, Pa
   */
  public static double stefanFactor(double surfacePa, double roomPa) {
    double a = PRESSURE_PA - OutOfRange.check("vapour at the surface", surfacePa, "Pa", 0, 90e3);
    double b = PRESSURE_PA - OutOfRange.check("vapour in the room", roomPa, "Pa", 0, 90e3);
    return Math.abs(b - a) < 1e-6 ? PRESSURE_PA / a : PRESSURE_PA * Math.log(b / a) / (b - a);
  }
}
