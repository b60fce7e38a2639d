package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.air.SaturationFunction;
import coatwright.film.AirCourse;
import coatwright.film.CureCoat;
import coatwright.film.CureJob;
import coatwright.film.CureMoment;
import coatwright.film.CureMoment.AirExchange;
import coatwright.film.Curing;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.ShopPrior;
import coatwright.film.Spreads;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Makes a coating from a description: air and wood that stay as they are told to be. */
final class Described {
  private static final double USUAL_WET_UM = 75;
  private static final double SEA_LEVEL_PA = 101_325;

  private Described() {}

  /** The outlook of a described coat, by the model of its finish. */
  static Outlook outlook(OutlookRequest r) {
    return r.finish().drying() instanceof Curing curing
        ? CureJudge.judge(curing(r, curing))
        : Judge.judge(Findings.of(coating(r)), List.of());
  }

  private static CureCoating curing(OutlookRequest r, Curing curing) {
    Finish finish = r.finish();
    double wetUm = r.wetFilmUm().orElse(usualWet(finish, r.method()));
    double woodC = r.woodTempC().orElse(r.airTempC());
    List<CureCoat> coats = new ArrayList<>();
    for (int i = 0; i <= r.coatsBefore(); i++) {
      coats.add(CureCoat.unthinned(i * r.intervalMin() * 60, wetUm));
    }
    Spreads spreads =
        new Spreads(
            r.wetFilmUm().isPresent() ? Spreads.GAUGED_WET_LN : finish.wetFilmLnSd(),
            0,
            0,
            r.airTempErrorK(),
            r.rhErrorPct(),
            r.woodTempErrorK(),
            0);
    CureJob job =
        new CureJob(
            curing,
            coats,
            AirCourse.steady(r.airTempC(), r.rhPct() / 100, r.draughtMPerS()),
            woodC,
            spreads,
            List.of(),
            coats.get(coats.size() - 1).atS(),
            List.of(),
            0);
    List<String> said = new ArrayList<>(r.assumptions());
    sayAir(r, said);
    if (r.wetFilmUm().isEmpty()) {
      said.add(usualWet(wetUm, r.method(), finish.wetFilmLnSd()));
    }
    if (r.coatsBefore() > 0) {
      said.add(coatsBefore(r));
    }
    return new CureCoating(
        finish,
        curing,
        new MoistAir(r.airTempC(), r.rhPct(), r.pressurePa()),
        r.airTempErrorK(),
        r.rhErrorPct(),
        woodC,
        r.woodTempErrorK(),
        job,
        new CureMoment(
            r.airTempC(), r.rhPct(), woodC, r.draughtMPerS(), wetUm, 0, AirExchange.UNKNOWN),
        ShopPrior.UNTAUGHT,
        r.method(),
        said);
  }

  static Coating coating(OutlookRequest r) {
    Finish finish = r.finish();
    double wetUm = r.wetFilmUm().orElse(usualWet(finish, r.method()));
    InTheJar jar = InTheJar.of(r);
    LaidCoat coat = jar.coat(0, wetUm);
    double woodC = r.woodTempC().orElse(r.airTempC());
    AirCourse air = AirCourse.steady(r.airTempC(), r.rhPct() / 100, r.draughtMPerS());
    Spreads spreads =
        jar.spreads(
            r.wetFilmUm().isPresent() ? Spreads.GAUGED_WET_LN : finish.wetFilmLnSd(),
            r.airTempErrorK(),
            r.rhErrorPct(),
            r.woodTempErrorK());
    List<LaidCoat> coats = new ArrayList<>();
    for (int i = 0; i <= r.coatsBefore(); i++) {
      coats.add(coat.at(i * r.intervalMin() * 60));
    }
    FilmParameters set = Sets.of(finish);
    FilmJob stack = job(coats, air, woodC, r.boardThicknessMm());
    EnsembleJob alone =
        EnsembleJob.untested(set, job(List.of(coat), air, woodC, r.boardThicknessMm()), spreads);
    return new Coating(
        finish,
        new MoistAir(r.airTempC(), r.rhPct(), r.pressurePa()),
        r.airTempErrorK(),
        r.rhErrorPct(),
        woodC,
        r.woodTempErrorK(),
        coat,
        alone,
        coats.size() == 1
            ? Optional.empty()
            : Optional.of(EnsembleJob.untested(set, stack, spreads)),
        atReference(finish, stack),
        r.method(),
        r.learnedBrushingMin(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        assumptions(r, jar, wetUm));
  }

  static double usualWet(Finish finish, String method) {
    return finish.wetFilmUmByMethod().getOrDefault(method, USUAL_WET_UM);
  }

  static FilmJob job(List<LaidCoat> coats, AirCourse air, double woodC, double boardMm) {
    return new FilmJob(coats, air, woodC, boardMm, SaturationFunction.HYLAND_WEXLER_WATER);
  }

  /** The same coats in the air the finish's usual drying is judged against. */
  static FilmJob atReference(Finish finish, FilmJob job) {
    AirCourse air =
        AirCourse.steady(
            finish.referenceTempC(), finish.referenceRhPct() / 100, job.air().draughtMPerS());
    return job(job.coats(), air, finish.referenceTempC(), job.boardThicknessMm());
  }

  private static List<String> assumptions(OutlookRequest r, InTheJar jar, double wetUm) {
    List<String> said = new ArrayList<>(r.assumptions());
    sayAir(r, said);
    said.addAll(jar.assumptions());
    if (r.wetFilmUm().isEmpty()) {
      said.add(usualWet(wetUm, r.method(), r.finish().wetFilmLnSd()));
    }
    if (r.coatsBefore() > 0) {
      said.add(coatsBefore(r));
      said.add(AS_FIRST_COAT);
    }
    if (Math.abs(r.pressurePa() / SEA_LEVEL_PA - 1) > 0.05) {
      said.add("The film is computed at sea-level pressure; thinner air dries it a little faster.");
    }
    return said;
  }

  private static void sayAir(OutlookRequest r, List<String> said) {
    if (r.woodTempC().isEmpty()) {
      said.add(
          "Wood taken to be as warm as the air, "
              + Show.temperature(r.airTempC(), UnitSystem.METRIC)
              + "; hold a probe to it, cold wood clouds first.");
    }
  }

  static String coatsBefore(OutlookRequest r) {
    return r.coatsBefore() == 1
        ? "1 coat before, " + interval(r) + " ago."
        : r.coatsBefore() + " coats before, " + interval(r) + " apart.";
  }

  private static String interval(OutlookRequest r) {
    return Show.duration(Duration.ofSeconds(Math.round(60 * r.intervalMin())));
  }

  static final String AS_FIRST_COAT =
      "Clouding is judged as for a first coat on sealed wood, the severer case.";

  static String usualWet(double wetUm, String method, double lnSd) {
    return String.format(
        Locale.ROOT,
        "Wet film taken as %s, usual by %s, give or take %.0f %%; common practice, no source.",
        Show.film(wetUm, UnitSystem.METRIC),
        method,
        100 * lnSd);
  }
}
