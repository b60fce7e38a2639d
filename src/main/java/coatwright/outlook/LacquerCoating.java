package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.film.AirCourse;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.Finish;
import coatwright.film.LacquerDrying;
import coatwright.film.LaidCoat;
import coatwright.film.Spreads;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes a coating of lacquer from a description: a blend of solvents in the place of spirit. */
final class LacquerCoating {
  private static final String ESTIMATE =
      "Of a lacquer only its solvents' figures are published: how they take to water, and with it"
          + " how near it is to clouding, is an estimate.";

  private LacquerCoating() {}

  static Coating of(OutlookRequest r, LacquerDrying lacquer) {
    Finish finish = r.finish();
    refuseSpirit(r);
    double wetUm = r.wetFilmUm().orElse(Described.usualWet(finish, r.method()));
    LaidCoat coat = lacquer.coat(0, wetUm);
    double woodC = r.woodTempC().orElse(r.airTempC());
    AirCourse air = AirCourse.steady(r.airTempC(), r.rhPct() / 100, r.draughtMPerS());
    Spreads spreads =
        new Spreads(
            r.wetFilmUm().isPresent() ? Spreads.GAUGED_WET_LN : finish.wetFilmLnSd(),
            lacquer.solidsLnSd(),
            0,
            r.airTempErrorK(),
            r.rhErrorPct(),
            r.woodTempErrorK(),
            0);
    List<LaidCoat> coats = new ArrayList<>();
    for (int i = 0; i <= r.coatsBefore(); i++) {
      coats.add(coat.at(i * r.intervalMin() * 60));
    }
    FilmJob stack = Described.job(coats, air, woodC, r.boardThicknessMm());
    FilmJob alone = Described.job(List.of(coat), air, woodC, r.boardThicknessMm());
    return new Coating(
        finish,
        new MoistAir(r.airTempC(), r.rhPct(), r.pressurePa()),
        r.airTempErrorK(),
        r.rhErrorPct(),
        woodC,
        r.woodTempErrorK(),
        coat,
        EnsembleJob.untested(lacquer.parameters(), alone, spreads),
        coats.size() == 1
            ? Optional.empty()
            : Optional.of(EnsembleJob.untested(lacquer.parameters(), stack, spreads)),
        Described.atReference(finish, stack),
        r.method(),
        r.learnedBrushingMin(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        assumptions(r, lacquer, wetUm));
  }

  private static void refuseSpirit(OutlookRequest r) {
    String told =
        r.cutGPerL().isPresent()
            ? "cut"
            : r.strengthVolPct().isPresent()
                ? "spirit strength"
                : r.retarderVolPct() > 0 || r.retarderDrops().isPresent() ? "retarder" : "";
    if (!told.isEmpty()) {
      throw new OutOfRange(
          "a %s is told of %s, which is no resin in spirit; leave it out, and name a blend in the finish's file"
              .formatted(told, r.finish().title()));
    }
  }

  private static List<String> assumptions(OutlookRequest r, LacquerDrying lacquer, double wetUm) {
    List<String> said = new ArrayList<>(r.assumptions());
    if (r.woodTempC().isEmpty()) {
      said.add(
          "Wood taken to be as warm as the air, "
              + Show.temperature(r.airTempC(), UnitSystem.METRIC)
              + "; hold a probe to it, cold wood clouds first.");
    }
    said.add(
        String.format(
            Locale.ROOT,
            "Carried by the %s blend, %.0f %% solids by volume, give or take %.0f %%; the can's"
                + " safety data sheet names its own solvents.",
            lacquer.blend().name(),
            lacquer.solidsVolPct(),
            100 * lacquer.solidsLnSd()));
    said.add(ESTIMATE);
    if (r.wetFilmUm().isEmpty()) {
      said.add(Described.usualWet(wetUm, r.method(), r.finish().wetFilmLnSd()));
    }
    if (r.coatsBefore() > 0) {
      said.add(
          String.format(
              Locale.ROOT, "%d coats before, %.0f min apart.", r.coatsBefore(), r.intervalMin()));
      said.add("Clouding is judged as for a first coat on sealed wood.");
    }
    return said;
  }
}
