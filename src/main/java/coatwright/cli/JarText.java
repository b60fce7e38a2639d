package coatwright.cli;

import static coatwright.quantity.Conversions.G_PER_LB;
import static coatwright.quantity.Conversions.G_PER_OZ;
import static coatwright.quantity.Conversions.ML_PER_IMP_FLOZ;
import static coatwright.quantity.Conversions.ML_PER_IMP_GAL;
import static coatwright.quantity.Conversions.ML_PER_US_FLOZ;
import static coatwright.quantity.Conversions.ML_PER_US_GAL;
import static coatwright.quantity.Conversions.M_PER_FT;

import coatwright.mix.Cut;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;

/**
 * A mixing answer in words: first the figure, then what to do at the scale, then where it is from,
 * then what to mind. Scales and measures come in both systems, so both are printed.
 */
final class JarText {
  /** Said wherever spirit is handled. */
  static final String SPIRIT =
      "spirit burns and its vapour runs along the floor: no flame, spark or heater near it;"
          + " some denatured alcohols hold methanol, which passes the skin; read the safety data"
          + " sheet";

  private final PrintWriter out;
  private final UnitSystem units;
  private final List<String> cautions = new ArrayList<>();

  JarText(Shared shared) {
    this.out = shared.out;
    this.units = shared.unitSystem();
  }

  UnitSystem units() {
    return units;
  }

  void figure(String sentence) {
    out.println(sentence);
  }

  void line(String name, String value) {
    out.printf("  %-16s %s%n", name, value);
  }

  void how(String sentence) {
    out.println("How:  " + sentence + ".");
  }

  void from(String sentence) {
    out.println("From: " + sentence + ".");
  }

  /** A caution; cautions stand together at the end, in the order they were found. */
  void mind(String sentence) {
    cautions.add(sentence);
  }

  /** Prints the cautions; nothing follows them. */
  void end() {
    cautions.forEach(sentence -> out.println("Mind: " + sentence + "."));
  }

  /** Said wherever a volume of mixture was computed. */
  String ideal() {
    return "volumes at %s; resin of 1140 kg/m³ and spirit taken to add up, no measured swell of shellac is published"
        .formatted(temperature(20));
  }

  /** A step of a cut, as its scale has it: "14 g/L", "0.12 lb (14 g/L)". */
  String cutStep(double gPerL) {
    String metric = Show.fixed(gPerL, gPerL < 10 ? 1 : 0) + " g/L";
    Cut step = new Cut(gPerL);
    return switch (units) {
      case METRIC -> metric;
      case US -> Show.fixed(step.lbPerUsGal(), 2) + " lb (" + metric + ")";
      case IMPERIAL -> Show.fixed(step.lbPerImpGal(), 2) + " lb/imp (" + metric + ")";
    };
  }

  /** The volume of a room: "28 m³", "1000 ft³ (28 m³)". */
  String room(double m3) {
    String metric = Show.fixed(m3, 0) + " m³";
    return units == UnitSystem.METRIC
        ? metric
        : Show.fixed(m3 / Math.pow(M_PER_FT, 3), 0) + " ft³ (" + metric + ")";
  }

  /** "240 g/L (2.0 lb)", with halves of a pound kept apart. */
  String cut(Cut cut) {
    String metric = Show.fixed(cut.gPerL(), 0) + " g/L";
    String us = Show.fixed(cut.lbPerUsGal(), 2) + " lb";
    return switch (units) {
      case METRIC -> metric + " (" + us + ")";
      case US -> us + " (" + metric + ")";
      case IMPERIAL -> Show.fixed(cut.lbPerImpGal(), 2) + " lb/imp (" + metric + ")";
    };
  }

  String volume(double ml) {
    String metric =
        ml < 1000 ? Show.fixed(ml, ml < 20 ? 1 : 0) + " mL" : Show.fixed(ml / 1000, 2) + " L";
    return switch (units) {
      case METRIC -> metric;
      case US -> ounces(ml, ML_PER_US_FLOZ, ML_PER_US_GAL, "") + " (" + metric + ")";
      case IMPERIAL -> ounces(ml, ML_PER_IMP_FLOZ, ML_PER_IMP_GAL, " imp") + " (" + metric + ")";
    };
  }

  private static String ounces(double ml, double ounceMl, double gallonMl, String which) {
    return ml < gallonMl
        ? Show.fixed(ml / ounceMl, ml < 10 * ounceMl ? 2 : 1) + " fl oz" + which
        : Show.fixed(ml / gallonMl, 2) + " gal" + which;
  }

  String mass(double g) {
    String metric =
        g < 1000
            ? Show.fixed(g, g < 5 ? 2 : g < 20 ? 1 : 0) + " g"
            : Show.fixed(g / 1000, 2) + " kg";
    if (units == UnitSystem.METRIC) {
      return metric;
    }
    String ounces =
        g < 4 * G_PER_LB
            ? Show.fixed(g / G_PER_OZ, g < 10 * G_PER_OZ ? 2 : 1) + " oz"
            : Show.fixed(g / G_PER_LB, 2) + " lb";
    return ounces + " (" + metric + ")";
  }

  String film(double um) {
    return Show.film(um, units);
  }

  String area(double m2) {
    return Show.area(m2, units);
  }

  String temperature(double tempC) {
    return Show.temperature(tempC, units);
  }

  static String pct(double pct) {
    return Show.fixed(pct, 1) + " %";
  }

  /** A share that can be tiny or huge: "0.04 %", "3.1 %", "240 %". */
  static String share(double pct) {
    int decimals = pct < 1 ? 2 : pct < 100 ? 1 : 0;
    return Show.fixed(pct, decimals) + " %";
  }
}
