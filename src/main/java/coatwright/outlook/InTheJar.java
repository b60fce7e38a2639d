package coatwright.outlook;

import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.LaidCoat;
import coatwright.film.Poured;
import coatwright.film.SpiritDrying;
import coatwright.film.Spreads;
import coatwright.journal.Jar;
import coatwright.journal.Retarder;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a coat is poured from, as far as it was told: the same for one described, one laid and one
 * to come, of spirit or of lacquer.
 *
 * @param poured the liquid, at the middle of what is known
 * @param resinLnSd spread of the resin in it, natural log: of the cut, or of a lacquer's solids
 * @param strengthErrorPct spread of the spirit's strength, points by volume; 0 where there is none
 * @param inputs where each figure came from
 * @param assumptions what had to be assumed, a sentence each
 */
record InTheJar(
    Poured poured,
    double resinLnSd,
    double strengthErrorPct,
    List<Provenance> inputs,
    List<String> assumptions) {
  private static final double ASSUMED_STRENGTH_PCT = 0.7;
  private static final String ESTIMATE =
      "Of a lacquer only its solvents' figures are published: how they take to water, and with it"
          + " how near it is to clouding, is an estimate.";

  /**
   * What was told of a jar of spirit.
   *
   * @param retarderVolPct 2-butoxyethanol, per cent of the solution; 0 for none
   * @param uncomputed a dose that is written down and not computed
   */
  private record Told(
      OptionalDouble cutGPerL,
      OptionalDouble strengthVolPct,
      double retarderVolPct,
      Optional<String> uncomputed) {}

  static InTheJar of(OutlookRequest r) {
    return of(
        r.finish(),
        new Told(
            r.cutGPerL(),
            r.strengthVolPct(),
            r.retarderVolPct(),
            r.retarderDrops().map(d -> "drops:" + d)));
  }

  static InTheJar of(Finish finish, Optional<Jar> jar) {
    Optional<String> retarder = jar.flatMap(Jar::retarder);
    double retarderPct = retarderVolPct(retarder);
    return of(
        finish,
        new Told(
            jar.map(Jar::cutGPerL).orElse(OptionalDouble.empty()),
            jar.map(Jar::strengthVolPct).orElse(OptionalDouble.empty()),
            retarderPct,
            retarder.filter(r -> retarderPct == 0)));
  }

  /** A jar of lacquer is never told a cut or a strength: the finish's file says what is in it. */
  private static InTheJar of(Finish finish, Told told) {
    return finish.drying() instanceof LacquerDrying lacquer
        ? ofLacquer(finish, lacquer)
        : ofSpirit(Sets.spirit(finish), told);
  }

  private static InTheJar ofSpirit(SpiritDrying finish, Told told) {
    boolean cutTold = told.cutGPerL().isPresent();
    boolean strengthTold = told.strengthVolPct().isPresent();
    double cut = told.cutGPerL().orElse(finish.usualCutGPerL());
    double strength = told.strengthVolPct().orElse(finish.strengthVolPct());
    List<Provenance> inputs = new ArrayList<>();
    List<String> said = new ArrayList<>();
    inputs.add(
        new Provenance(
            "cut",
            Show.cut(cut, UnitSystem.US),
            cutTold ? "told with the jar" : "assumed, the jar's is unknown",
            !cutTold));
    if (!cutTold) {
      said.add(unknownCut(cut, finish.cutLnSd()));
    }
    inputs.add(
        new Provenance(
            "spirit strength",
            Show.fixed(strength, 1) + " %",
            strengthTold ? "told with the jar" : "assumed",
            !strengthTold));
    if (!strengthTold) {
      said.add("Spirit taken as " + Show.fixed(strength, 1) + " % by volume.");
    }
    told.uncomputed()
        .ifPresent(
            dose -> {
              inputs.add(new Provenance("retarder", dose, "written down, not computed", false));
              said.add(doseSaid(dose));
            });
    return new InTheJar(
        new Poured.Spirit(cut, strength, told.retarderVolPct()),
        cutTold ? Spreads.TOLD_CUT_LN : finish.cutLnSd(),
        strengthTold ? Spreads.TOLD_STRENGTH_PCT : ASSUMED_STRENGTH_PCT,
        inputs,
        said);
  }

  private static InTheJar ofLacquer(Finish finish, LacquerDrying lacquer) {
    String usual = "usual of " + finish.title();
    return new InTheJar(
        lacquer.poured(),
        lacquer.solidsLnSd(),
        0,
        List.of(
            new Provenance("blend", lacquer.blend().name(), usual, true),
            new Provenance(
                "solids by volume", Show.fixed(lacquer.solidsVolPct(), 0) + " %", usual, true)),
        List.of(
            String.format(
                Locale.ROOT,
                "Carried by the %s blend, %.0f %% solids by volume, give or take %.0f %%; the can's"
                    + " safety data sheet names its own solvents.",
                lacquer.blend().name(),
                lacquer.solidsVolPct(),
                100 * lacquer.solidsLnSd()),
            ESTIMATE));
  }

  /** A coat of it at the air's temperature. */
  LaidCoat coat(double atS, double wetUm) {
    return new LaidCoat(atS, wetUm, poured, OptionalDouble.empty());
  }

  /** How well a coat of it is known, in air that is known so well and stays as it is. */
  Spreads spreads(double wetFilmLn, double airTempK, double rhPct, double woodTempK) {
    return new Spreads(wetFilmLn, resinLnSd, strengthErrorPct, airTempK, rhPct, woodTempK, 0);
  }

  /** What the film model reckons with of a jar's retarder, per cent of the solution; 0 for none. */
  private static double retarderVolPct(Optional<String> typed) {
    try {
      return typed.map(t -> Retarder.parse("retarder", t).volPct().orElse(0)).orElse(0.0);
    } catch (RefusedInput foreign) {
      return 0;
    }
  }

  private static String unknownCut(double cutGPerL, double lnSd) {
    return String.format(
        Locale.ROOT,
        "Cut unknown: taken as %s, give or take %.0f %%. The dried-sample test tells it: weigh a"
            + " little wet, let it dry, weigh it again.",
        Show.cut(cutGPerL, UnitSystem.US),
        100 * lnSd);
  }

  private static String doseSaid(String dose) {
    return "Retarder "
        + dose
        + " is written down and not computed: so little changes nothing by evaporation in the"
        + " model; what you see of it counts.";
  }
}
