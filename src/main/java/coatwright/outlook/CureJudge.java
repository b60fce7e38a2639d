package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.film.CureMoment;
import coatwright.film.CureSigns;
import coatwright.film.Finish;
import coatwright.film.Milestone;
import coatwright.film.ModelStamp;
import coatwright.film.Percentiles;
import coatwright.film.SlowCure;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns what the cure model finds into the one verdict, by the same order of questions. */
final class CureJudge {
  private static final String RIDER =
      " Do it before the can is opened, with the appliance off and out of the room before coating.";

  private final CureFindings findings;
  private final CureCoating coating;
  private final Finish finish;

  private CureJudge(CureFindings findings) {
    this.findings = findings;
    this.coating = findings.coating();
    this.finish = coating.finish();
  }

  static Outlook judge(CureCoating coating) {
    return new CureJudge(CureFindings.of(coating)).outlook();
  }

  /** What an hour to come is like for the coat: held off, or not. */
  static BetterHour.Question laterHour(CureCoating c) {
    return (airTempC, rhPct, woodC) -> {
      MoistAir air = new MoistAir(airTempC, rhPct, c.air().pressurePa());
      boolean inLimits = Verdict.outside(c.finish(), airTempC, woodC).isEmpty();
      boolean clear = woodC - air.dewPointC() >= CloudingRule.LEAST_SPREAD_K;
      CureMoment m = c.moment();
      return inLimits
              && clear
              && !CureSigns.at(
                      c.curing(),
                      new CureMoment(
                          airTempC,
                          rhPct,
                          woodC,
                          m.draughtMPerS(),
                          m.wetFilmUm(),
                          m.reducedPct(),
                          m.airExchange()))
                  .stops()
          ? CloudingLevel.NONE_EXPECTED
          : CloudingLevel.LIKELY;
    };
  }

  /** What a coat needs of an hour to come. */
  static WindowFinder.Fitness fitness(CureCoating c) {
    BetterHour.Question later = laterHour(c);
    return (airTempC, rhPct, woodC) ->
        later.level(airTempC, rhPct, woodC) == CloudingLevel.NONE_EXPECTED;
  }

  private Outlook outlook() {
    Verdict d = decide();
    ModelStamp stamp = coating.curing().stamp();
    double dryUm = coating.moment().wetFilmUm() * coating.curing().facts().solidsVolPct() / 100;
    return new Outlook(
        d.summary(),
        d.reason(),
        d.by(),
        d.deciding(),
        Optional.of(findings.clouding()),
        findings.drying(),
        Optional.empty(),
        Optional.of(findings.cure()),
        findings.milestones(),
        OptionalDouble.of(dryUm),
        assumptions(),
        d.summary() == Summary.BRUSH ? List.of() : actions(),
        Cautions.of(finish, false),
        new Outlook.Model(stamp.name(), stamp.version()));
  }

  private List<String> assumptions() {
    List<String> said = new ArrayList<>(coating.assumptions());
    CureSigns signs = findings.signs();
    if (signs.potLifeH().isPresent()) {
      said.add(
          "A mixed pot stays workable for about "
              + Show.duration(minutes(60 * signs.potLifeH().getAsDouble()))
              + " at this temperature"
              + (coating.curing().basisOf("pot-life").estimate() ? " (estimate)." : "."));
    }
    if (signs.wipeOffAfterMin().isPresent()) {
      String bleeds =
          signs.bleedEveryMin().isPresent()
              ? Judge.text(
                  ", then every %.0f min while the pores still weep",
                  signs.bleedEveryMin().getAsDouble())
              : "";
      said.add(
          Judge.text(
              "Wipe off what stands on it after %.0f min%s; common practice, no source.",
              signs.wipeOffAfterMin().getAsDouble(), bleeds));
    }
    return said;
  }

  private Verdict decide() {
    if (findings.condensation()) {
      return Verdict.dew(coating.woodTempC(), coating.air().dewPointC());
    }
    Optional<Verdict> outside =
        Verdict.outside(finish, coating.air().airTempC(), coating.woodTempC());
    if (outside.isPresent()) {
      return outside.get();
    }
    if (findings.level() == CloudingLevel.LIKELY) {
      return new Verdict(Summary.HOLD_OFF, "clouding", closeToDew());
    }
    Optional<SlowCure> stops =
        findings.signs().slowCure().stream().filter(SlowCure::stops).findFirst();
    if (stops.isPresent()) {
      String by = stops.get() instanceof SlowCure.NoCoalescence ? "film-forming" : "drying";
      return new Verdict(Summary.HOLD_OFF, by, SlowCureText.of(stops.get()));
    }
    OptionalDouble rest = findings.restNeededMin();
    if (rest.isPresent()) {
      return Verdict.rest(
          tooEarly(rest.getAsDouble()),
          Double.isInfinite(rest.getAsDouble()) ? OptionalDouble.empty() : rest);
    }
    if (findings.dryingLevel() == DryingLevel.STALLED) {
      return new Verdict(Summary.HOLD_OFF, "drying", slow("Drying stalls"));
    }
    return careOrGo();
  }

  private Verdict careOrGo() {
    for (SlowCure reason : findings.signs().slowCure()) {
      if (reason instanceof SlowCure.CloseToLowestFilm) {
        return new Verdict(Summary.TAKE_CARE, "film-forming", SlowCureText.of(reason));
      }
    }
    if (findings.dryingLevel() == DryingLevel.SLOW) {
      return new Verdict(Summary.TAKE_CARE, "drying", slow("Drying is slow"));
    }
    if (!findings.signs().slowCure().isEmpty()) {
      return new Verdict(
          Summary.TAKE_CARE, "drying", SlowCureText.of(findings.signs().slowCure().get(0)));
    }
    return Verdict.recoatWindow(findings.recoatLeftMin())
        .orElseGet(() -> new Verdict(Summary.BRUSH, "drying", clear()));
  }

  private String closeToDew() {
    return Judge.text(
        "The wood, %.1f °C, stands only %.1f K above the dew point of %.1f °C; under 1 K water"
            + " settles on the film.",
        coating.woodTempC(), coating.spreadAtWoodK(), coating.air().dewPointC());
  }

  private String tooEarly(double restMin) {
    return Double.isInfinite(restMin)
        ? "The coat beneath will not be ready for another in this air."
        : "Too soon for the next coat: the one beneath needs about "
            + Show.duration(minutes(restMin))
            + " more.";
  }

  private String slow(String how) {
    double ratio = findings.ratioToReference();
    String milestone = CureFindings.decisive(coating.curing()).toString();
    return ratio == 0
        ? Judge.text("%s: in this air it does not get to %s within half a year.", how, milestone)
        : Judge.text(
            "%s: it takes %.1f times as long to %s as in the usual %.0f °C and %.0f %%.",
            how, 1 / ratio, milestone, finish.referenceTempC(), finish.referenceRhPct());
  }

  private String clear() {
    Percentiles recoat = findings.whole().milestone(Milestone.DRY_TO_RECOAT);
    String when =
        recoat.p10().isPresent() && recoat.p50().isPresent() && recoat.p90().isPresent()
            ? "dry to recoat in about "
                + Show.duration(seconds(recoat.p50()))
                + " ("
                + Show.duration(seconds(recoat.p10()))
                + " to "
                + Show.duration(seconds(recoat.p90()))
                + ")"
            : "it dries as usual";
    return Judge.text(
        "Room to spare: %s, the wood %.1f K above the dew point.", when, coating.spreadAtWoodK());
  }

  /** Of a milestone, to the second as the list of milestones has it. */
  private static Duration seconds(OptionalDouble s) {
    return Duration.ofSeconds(Math.max(1, Math.round(s.getAsDouble())));
  }

  private static String lowered(String sentence) {
    return sentence.substring(0, 1).toLowerCase(Locale.ROOT) + sentence.substring(1);
  }

  private static Duration minutes(double min) {
    return Duration.ofMinutes(Math.max(1, Math.round(min)));
  }

  /** What helps by the same computation: each is judged again before it is offered. */
  private List<String> actions() {
    List<String> actions = new ArrayList<>();
    OptionalDouble rest =
        findings.condensation() ? OptionalDouble.empty() : findings.restNeededMin();
    if (rest.isPresent() && !Double.isInfinite(rest.getAsDouble())) {
      actions.add(
          "Wait about "
              + Show.duration(minutes(rest.getAsDouble()))
              + " before the next coat; the test on the bench decides.");
      return actions;
    }
    warmer().ifPresent(actions::add);
    return actions;
  }

  /** The least warming of room and wood together that clears the way, in whole kelvins. */
  private Optional<String> warmer() {
    Summary now = decide().summary();
    double mostK = finish.highestTempC() - Math.max(coating.air().airTempC(), coating.woodTempC());
    for (int byK = 1; byK <= mostK && byK <= 20; byK++) {
      CureCoating warmer = CureWarmer.by(coating, byK);
      Verdict then = new CureJudge(CureFindings.of(warmer)).decide();
      if (then.summary().compareTo(now) < 0) {
        return Optional.of(
            Judge.text(
                    "Warm the room and the wood by %d K, to %s. Then %s; %s",
                    byK,
                    Show.temperature(warmer.air().airTempC(), UnitSystem.METRIC),
                    then.summary(),
                    lowered(then.reason()))
                + RIDER);
      }
    }
    return Optional.empty();
  }
}
