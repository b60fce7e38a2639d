package coatwright.quantity;

import static coatwright.quantity.Conversions.G_PER_LB;
import static coatwright.quantity.Conversions.G_PER_L_PER_LB_IMP_GAL;
import static coatwright.quantity.Conversions.G_PER_L_PER_LB_US_GAL;
import static coatwright.quantity.Conversions.G_PER_OZ;
import static coatwright.quantity.Conversions.K_PER_F;
import static coatwright.quantity.Conversions.ML_PER_IMP_GAL;
import static coatwright.quantity.Conversions.ML_PER_US_GAL;
import static coatwright.quantity.Conversions.MM_PER_IN;
import static coatwright.quantity.Conversions.M_PER_FT;
import static coatwright.quantity.Conversions.PA_PER_INHG;
import static coatwright.quantity.Conversions.PA_PER_MMHG;
import static coatwright.quantity.Conversions.UM_PER_MIL;
import static coatwright.quantity.Conversions.ZERO_CELSIUS_K;

import coatwright.quantity.Measure.Unit;
import java.time.Duration;

/**
 * Reads quantities as people type them: {@code 27C 80F 65% 2lb 240g/L 3mil 75um 8oz 8floz 20min}.
 *
 * <p>Every method takes what the quantity is called where it was asked for ("air temperature") and
 * the text, and throws {@link RefusedInput} naming input, rule and remedy when the unit is missing
 * or foreign, the number is not one, or the value is impossible. Capitals and blanks do not matter.
 * The decimal mark is a point. A bare "lb", "floz", "qt", "gal" or "proof" is the US one; "/imp"
 * makes the first four imperial.
 */
public final class Quantities {
  private static final double ANY = Double.MAX_VALUE;

  private static final Measure TEMPERATURE =
      new Measure(
          "a temperature",
          "27C or 80F",
          -ZERO_CELSIUS_K,
          2000,
          "above absolute zero, -273.15 °C, and below 2000 °C",
          Unit.of("C cel celsius degC", 1),
          new Unit("F fahrenheit degF", K_PER_F, -32),
          new Unit("K kelvin", 1, -ZERO_CELSIUS_K));

  private static final Measure TEMPERATURE_STEP =
      new Measure(
          "a temperature step",
          "5K or 9F",
          -1000,
          1000,
          "from -1000 to 1000 K",
          Unit.of("K C kelvin degC", 1),
          Unit.of("F degF", K_PER_F));

  private static final Measure RELATIVE_HUMIDITY =
      new Measure(
          "a relative humidity", "65%", 0, 100, "from 0 to 100 %", Unit.of("% %rh rh percent", 1));

  private static final Measure PERCENT =
      new Measure("a share", "12%", 0, 100, "from 0 to 100 %", Unit.of("% percent", 1));

  private static final Measure VOLUME_FRACTION =
      new Measure(
          "a strength by volume",
          "95% or 190proof",
          0,
          100,
          "from 0 to 100 % by volume",
          Unit.of("% %vol vol% %abv percent", 1),
          Unit.of("proof", 0.5));

  private static final Measure CUT =
      new Measure(
              "a cut",
              "2lb (per US gallon of spirit), 2lb/imp or 240g/L",
              0,
              1500,
              "from 0 to 1500 g per litre of spirit",
              Unit.of("lb lbs lb/gal lb/usgal lbcut", G_PER_L_PER_LB_US_GAL),
              Unit.of("lb/imp lb/impgal lb/gal/imp", G_PER_L_PER_LB_IMP_GAL),
              Unit.of("g/L", 1),
              Unit.of("kg/L", 1000))
          .mistaken("%", "write the flakes against the spirit, 2lb or 240g/L, not a per cent");

  private static final Measure FILM =
      new Measure(
          "a film thickness",
          "3mil or 75um",
          0,
          1e7,
          "from 0 to 10 m",
          Unit.of("mil mils thou", UM_PER_MIL),
          Unit.of("um micron microns", 1),
          Unit.of("mm", 1000),
          Unit.of("cm", 10_000),
          Unit.of("in inch inches \"", 1000 * MM_PER_IN));

  private static final Measure LENGTH =
      new Measure(
          "a length",
          "19mm or 0.75in",
          0,
          1e7,
          "from 0 to 10 km",
          Unit.of("mm", 1),
          Unit.of("cm", 10),
          Unit.of("m", 1000),
          Unit.of("in inch inches \"", MM_PER_IN),
          Unit.of("ft foot feet '", 1000 * M_PER_FT));

  private static final Measure MASS =
      new Measure(
              "a weight",
              "8oz or 225g",
              0,
              ANY,
              "zero or more",
              Unit.of("oz", G_PER_OZ),
              Unit.of("g", 1),
              Unit.of("kg", 1000),
              Unit.of("lb lbs", G_PER_LB),
              Unit.of("mg", 0.001))
          .mistaken("floz ml l", "weigh it, and write the weight like 8oz or 225g");

  private static final Measure VOLUME =
      new Measure(
              "a volume",
              "8floz, 8floz/imp or 240mL",
              0,
              ANY,
              "zero or more",
              Unit.of("floz fl.oz", ML_PER_US_GAL / 128),
              Unit.of("floz/imp", ML_PER_IMP_GAL / 160),
              Unit.of("mL", 1),
              Unit.of("cL", 10),
              Unit.of("L", 1000),
              Unit.of("pt", ML_PER_US_GAL / 8),
              Unit.of("pt/imp", ML_PER_IMP_GAL / 8),
              Unit.of("qt", ML_PER_US_GAL / 4),
              Unit.of("qt/imp", ML_PER_IMP_GAL / 4),
              Unit.of("gal", ML_PER_US_GAL),
              Unit.of("gal/imp", ML_PER_IMP_GAL),
              Unit.of("m3", 1e6),
              Unit.of("ft3", 1e6 * M_PER_FT * M_PER_FT * M_PER_FT))
          .mistaken("oz", "write floz for a volume; oz alone is a weight");

  private static final Measure ROOM_VOLUME =
      new Measure(
          "a room's volume",
          "28m3 or 1000ft3",
          1,
          100_000,
          "from 1 to 100000 m³",
          Unit.of("m3 cbm", 1),
          Unit.of("ft3 cuft cu.ft", M_PER_FT * M_PER_FT * M_PER_FT),
          Unit.of("L", 0.001));

  private static final Measure PRESSURE =
      new Measure(
          "an air pressure",
          "1013hPa or 29.92inHg",
          Double.MIN_VALUE,
          ANY,
          "above zero",
          Unit.of("hPa mbar mb", 100),
          Unit.of("kPa", 1000),
          Unit.of("Pa", 1),
          Unit.of("bar", 1e5),
          Unit.of("inHg", PA_PER_INHG),
          Unit.of("mmHg", PA_PER_MMHG));

  private static final Measure ALTITUDE =
      new Measure(
          "an altitude",
          "50m or 160ft",
          -500,
          9000,
          "from -500 to 9000 m",
          Unit.of("m", 1),
          Unit.of("ft foot feet '", M_PER_FT),
          Unit.of("km", 1000));

  private static final Measure AREA =
      new Measure(
          "an area",
          "1.5m2 or 16ft2",
          0,
          ANY,
          "zero or more",
          Unit.of("m2 sqm", 1),
          Unit.of("ft2 sqft sq.ft", M_PER_FT * M_PER_FT),
          Unit.of("in2 sqin", MM_PER_IN * MM_PER_IN * 1e-6),
          Unit.of("cm2", 1e-4),
          Unit.of("mm2", 1e-6));

  private static final Measure AIR_SPEED =
      new Measure(
          "an air speed",
          "0.2m/s or 40ft/min",
          0,
          100,
          "from 0 to 100 m/s",
          Unit.of("m/s", 1),
          Unit.of("km/h kph", 1 / 3.6),
          Unit.of("ft/min fpm", M_PER_FT / 60),
          Unit.of("mph", 1609.344 / 3600));

  private static final Measure AIR_CHANGES =
      new Measure(
          "a rate of air changes",
          "0.5/h",
          0,
          1000,
          "from 0 to 1000 an hour",
          Unit.of("/h ach /hr /hour", 1),
          Unit.of("/min", 60));

  private Quantities() {}

  /** Celsius from {@code 27C}, {@code 80F}, {@code 300K}. */
  public static double temperatureC(String what, String text) {
    return TEMPERATURE.read(what, text);
  }

  /** Kelvin from a difference of temperatures, {@code 5K} or {@code 9F}. */
  public static double temperatureStepK(String what, String text) {
    return TEMPERATURE_STEP.read(what, text);
  }

  /** Per cent from {@code 65%}. */
  public static double relativeHumidityPct(String what, String text) {
    return RELATIVE_HUMIDITY.read(what, text);
  }

  /** A share in per cent, 0 to 100. */
  public static double percent(String what, String text) {
    return PERCENT.read(what, text);
  }

  /** Per cent by volume from {@code 95%} or US proof, {@code 190proof}. */
  public static double volumeFractionPct(String what, String text) {
    return VOLUME_FRACTION.read(what, text);
  }

  /** Grams of flakes per litre of spirit from {@code 2lb}, {@code 2lb/imp}, {@code 240g/L}. */
  public static double cutGPerL(String what, String text) {
    return CUT.read(what, text);
  }

  /** Micrometres from {@code 3mil}, {@code 75um}, {@code 0.1mm}. */
  public static double lengthUm(String what, String text) {
    return FILM.read(what, text);
  }

  /** Millimetres from {@code 19mm}, {@code 0.75in}, {@code 2ft}. */
  public static double lengthMm(String what, String text) {
    return LENGTH.read(what, text);
  }

  /** Grams from {@code 8oz}, {@code 225g}, {@code 0.5lb}. */
  public static double massG(String what, String text) {
    return MASS.read(what, text);
  }

  /** Cubic metres of a room from {@code 28m3}, {@code 1000ft3}. */
  public static double roomVolumeM3(String what, String text) {
    return ROOM_VOLUME.read(what, text);
  }

  /** Millilitres from {@code 8floz}, {@code 1qt}, {@code 1gal/imp}, {@code 240mL}. */
  public static double volumeMl(String what, String text) {
    return VOLUME.read(what, text);
  }

  /** Pascals from {@code 1013hPa}, {@code 29.92inHg}. */
  public static double pressurePa(String what, String text) {
    return PRESSURE.read(what, text);
  }

  /** Metres above the sea from {@code 50m}, {@code 160ft}. */
  public static double altitudeM(String what, String text) {
    return ALTITUDE.read(what, text);
  }

  /** Square metres from {@code 1.5m2}, {@code 16ft2}. */
  public static double areaM2(String what, String text) {
    return AREA.read(what, text);
  }

  /** Metres a second from {@code 0.2m/s}, {@code 40ft/min}. */
  public static double airSpeedMPerS(String what, String text) {
    return AIR_SPEED.read(what, text);
  }

  /** A length of time from {@code 20min}, {@code 90s}, {@code 1h30min}, {@code 2d}. */
  public static Duration duration(String what, String text) {
    return TypedDuration.read(what, text);
  }

  /** Room volumes of fresh air an hour from {@code 0.5/h}. */
  public static double airChangesPerH(String what, String text) {
    return AIR_CHANGES.read(what, text);
  }
}
