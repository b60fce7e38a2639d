package coatwright.replay;

import coatwright.air.MoistAir;
import coatwright.film.Finish;
import coatwright.outlook.FilmOutlooks;
import coatwright.outlook.Outlook;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.OutlookRequest;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.replay.CaseAnswer.Cause;
import coatwright.replay.CaseRules.Clue;
import coatwright.replay.CaseRules.Fault;
import coatwright.replay.CaseRules.Possible;
import coatwright.review.Why.AirAtFault;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Answers a case described in words. Where the description fixes temperature and humidity, the coat
 * is computed as the shop's finish nearest to the words would take it; where the shop has none of
 * that family, or the air is beyond what its model bears, the dew point at the wood decides. The
 * rest is weighed by what the words say ({@link CaseRules}). Where nothing speaks for any cause it
 * says so and asks.
 */
public final class DescribedCases {
  private static final double YES = 0.6;
  private static final double PARTLY = 0.35;
  private static final double SHOWN = 0.03;

  /** ISO 8502-4: a surface less than 3 K above the dew point is not to be coated. */
  private static final double LEAST_SPREAD_K = 3;

  /** A fast-leaving solvent chills its film by some 6 K at 28 °C; film model, one value. */
  private static final double CHILL_K = 6;

  private static final double WIDE_SPREAD_K = 10;
  private static final double CONDENSING_K = 1;
  private static final double WELL_UNDER_S = 0.85;
  private static final double COLDEST_C = -5;
  private static final double HOTTEST_C = 45;
  private static final double DRIEST_PCT = 3;

  private final Map<String, Finish> finishes;
  private final String usualFinish;

  /**
   * @param finishes by name
   * @param usualFinish taken first among those of its family that the words fit alike
   */
  public DescribedCases(Map<String, Finish> finishes, String usualFinish) {
    if (!finishes.containsKey(usualFinish)) {
      throw RefusedInput.of(
          "finish \"" + usualFinish + "\"", "has no file in config/finishes", "name one that has");
    }
    this.finishes = Map.copyOf(finishes);
    this.usualFinish = usualFinish;
  }

  /**
   * Weighs one case.
   *
   * @param json the described case
   * @throws RefusedInput when it is no JSON, or describes nothing
   */
  public CaseAnswer answer(String json) {
    DescribedCase told = DescribedCase.read(json);
    Family family = Family.of(told.finishText());
    Optional<Finish> finish = family.nearest(told.finishText(), finishes, usualFinish);
    Optional<Air> air = air(told, family, finish);
    Fault fault = CaseRules.fault(told);
    List<Weighed> weighed = weigh(told, fault, air);
    boolean spoken = weighed.stream().anyMatch(w -> !w.forIt.isEmpty() || !w.against.isEmpty());
    List<Cause> causes = causes(weighed);
    return new CaseAnswer(
        air.map(Air::summary).orElse(Outlook.Summary.CANT_TELL),
        air.map(Air::clouding),
        air.flatMap(Air::drying),
        causes,
        atFault(fault, weighed, spoken),
        advice(fault, air, finish),
        questions(told, fault, air));
  }

  /** What the described air says by itself. */
  private record Air(
      Outlook.Summary summary,
      Outlook.Clouding clouding,
      Optional<Outlook.Drying> drying,
      double airTempC,
      double rhPct,
      boolean modelled) {

    OptionalDouble ratio() {
      return clouding.waterPeakPct().isPresent() && clouding.waterLimitPct().isPresent()
          ? OptionalDouble.of(
              clouding.waterPeakPct().getAsDouble() / clouding.waterLimitPct().getAsDouble())
          : OptionalDouble.empty();
    }
  }

  private static Optional<Air> air(DescribedCase told, Family family, Optional<Finish> finish) {
    if (told.airTempC().isEmpty() || told.rhPct().isEmpty()) {
      return Optional.empty();
    }
    double airC = told.airTempC().getAsDouble();
    double rhPct = told.rhPct().getAsDouble();
    double woodC = told.woodTempC().orElse(airC);
    boolean inModel = modelled(airC) && modelled(woodC) && rhPct >= DRIEST_PCT;
    if (inModel && finish.isPresent()) {
      Outlook outlook = FilmOutlooks.described(request(told, finish.get(), airC, rhPct));
      if (outlook.clouding().isPresent()) {
        return Optional.of(
            new Air(
                outlook.summary(), outlook.clouding().get(), outlook.drying(), airC, rhPct, true));
      }
    }
    return airC < MoistAir.COLDEST_C || airC > MoistAir.WARMEST_C || rhPct <= 0
        ? Optional.empty()
        : Optional.of(byDewPoint(family, airC, rhPct, woodC));
  }

  private static boolean modelled(double tempC) {
    return tempC >= COLDEST_C && tempC <= HOTTEST_C;
  }

  private static OutlookRequest request(
      DescribedCase told, Finish finish, double airC, double rhPct) {
    return new OutlookRequest(
        finish,
        airC,
        rhPct,
        MoistAir.SEA_LEVEL_PA,
        0,
        0,
        told.woodTempC(),
        0,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        told.says("\\bpad\\b|french polish") && !told.says("brush") ? "pad" : "brush",
        OptionalDouble.empty(),
        0,
        Optional.empty(),
        0.1,
        0,
        0,
        18,
        OptionalDouble.empty(),
        List.of());
  }

  /** Beyond the film's model: only how far the wood stands above the dew point. */
  private static Air byDewPoint(Family family, double airC, double rhPct, double woodC) {
    double dewC = MoistAir.of(airC, rhPct).dewPointC();
    double spreadK = woodC - dewC;
    double possibleBelowK = family.chills() ? CHILL_K : LEAST_SPREAD_K;
    CloudingLevel level =
        spreadK < (family.chills() ? LEAST_SPREAD_K : CONDENSING_K)
            ? CloudingLevel.LIKELY
            : spreadK < possibleBelowK ? CloudingLevel.POSSIBLE : CloudingLevel.NONE_EXPECTED;
    Outlook.Clouding clouding =
        new Outlook.Clouding(
            level,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            dewC,
            spreadK,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    Outlook.Summary summary =
        spreadK < LEAST_SPREAD_K
            ? Outlook.Summary.HOLD_OFF
            : level == CloudingLevel.POSSIBLE
                ? Outlook.Summary.TAKE_CARE
                : Outlook.Summary.CANT_TELL;
    return new Air(summary, clouding, Optional.empty(), airC, rhPct, false);
  }

  /** A cause being weighed. */
  private static final class Weighed {
    private final Possible possible;
    private final List<String> forIt = new ArrayList<>();
    private final List<String> against = new ArrayList<>();
    private double weight;

    Weighed(Possible possible) {
      this.possible = possible;
      this.weight = possible.weight();
    }

    void add(double by, String because) {
      weight += by;
      (by > 0 ? forIt : against).add(because);
    }

    double share() {
      return Math.exp(weight);
    }
  }

  private static List<Weighed> weigh(DescribedCase told, Fault fault, Optional<Air> air) {
    List<Weighed> weighed = new ArrayList<>();
    for (Possible possible : CaseRules.CAUSES) {
      if (possible.fault() != fault) {
        continue;
      }
      Weighed w = new Weighed(possible);
      for (Clue clue : CaseRules.CLUES) {
        if (clue.cause().equals(possible.cause()) && clue.words().matcher(told.words()).find()) {
          w.add(clue.weight(), clue.says());
        }
      }
      numbers(w, told, air);
      weighed.add(w);
    }
    return weighed;
  }

  private static void numbers(Weighed w, DescribedCase told, Optional<Air> air) {
    switch (w.possible.cause()) {
      case CaseRules.DAMP_AIR -> dampAir(w, told, air);
      case CaseRules.COLD_WOOD -> coldWood(w, told, air);
      case CaseRules.WET_SPIRIT -> {
        OptionalDouble ratio = air.map(Air::ratio).orElse(OptionalDouble.empty());
        if (ratio.isPresent() && ratio.getAsDouble() < WELL_UNDER_S) {
          w.add(1, "the air by itself would not have done it");
        }
      }
      case CaseRules.COLD_CURE -> {
        if (told.airTempC().isPresent()) {
          double airC = told.airTempC().getAsDouble();
          if (airC < 15) {
            w.add(2, "it was " + Show.fixed(airC, 0) + " °C");
          } else if (airC > 20) {
            w.add(-1, "it was " + Show.fixed(airC, 0) + " °C");
          }
        }
      }
      case CaseRules.HOT_DRY -> {
        if (told.airTempC().orElse(0) >= 30) {
          w.add(2, "it was " + Show.fixed(told.airTempC().getAsDouble(), 0) + " °C");
        }
        if (told.rhPct().orElse(100) <= 30) {
          w.add(1, "humidity was " + Show.relativeHumidity(told.rhPct().getAsDouble()));
        }
      }
      default -> {}
    }
  }

  private static void dampAir(Weighed w, DescribedCase told, Optional<Air> air) {
    if (air.isEmpty()) {
      double rh = told.rhPct().orElse(60);
      if (rh >= 80 || rh <= 45) {
        w.add(rh >= 80 ? 1.5 : -1.5, "humidity was " + Show.relativeHumidity(rh));
      }
      return;
    }
    OptionalDouble ratio = air.get().ratio();
    if (ratio.isPresent()) {
      double s = ratio.getAsDouble();
      String found =
          "by the film model its water would reach %s %% of what the resin bears"
              .formatted(Show.fixed(100 * s, 0));
      if (s >= 1) {
        w.add(s >= 1.2 ? 3 : 2, found);
      } else if (s < WELL_UNDER_S) {
        w.add(-2.5, found);
      }
      return;
    }
    double spreadK = air.get().clouding().spreadAtWoodK();
    String found = "the wood stood " + Show.fixed(spreadK, 1) + " K from the dew point";
    if (spreadK < CHILL_K) {
      w.add(spreadK < CONDENSING_K ? 3 : spreadK < LEAST_SPREAD_K ? 2 : 0.5, found);
    } else if (spreadK >= WIDE_SPREAD_K) {
      w.add(-1.5, found);
    }
  }

  private static void coldWood(Weighed w, DescribedCase told, Optional<Air> air) {
    if (told.woodTempC().isEmpty() || air.isEmpty()) {
      return;
    }
    double colderK = air.get().airTempC() - told.woodTempC().getAsDouble();
    if (colderK > 1 && air.get().clouding().spreadAtWoodK() < LEAST_SPREAD_K) {
      w.add(
          4,
          "the wood was %s K colder than the air, %s K from its dew point"
              .formatted(
                  Show.fixed(colderK, 1), Show.fixed(air.get().clouding().spreadAtWoodK(), 1)));
    } else if (colderK <= 1) {
      w.add(-2, "the wood was as warm as the air");
    }
  }

  private static List<Cause> causes(List<Weighed> weighed) {
    double all = weighed.stream().mapToDouble(Weighed::share).sum();
    List<Weighed> shown =
        weighed.stream()
            .filter(w -> w.share() / all >= SHOWN)
            .sorted(Comparator.comparingDouble(Weighed::share).reversed())
            .toList();
    // Of those told, the shares are whole again.
    double told = shown.stream().mapToDouble(Weighed::share).sum();
    return shown.stream()
        .map(w -> new Cause(w.possible.cause(), w.share() / told, w.forIt, w.against))
        .toList();
  }

  private static AirAtFault atFault(Fault fault, List<Weighed> weighed, boolean spoken) {
    if (fault == Fault.NONE || fault == Fault.INSTRUMENT) {
      return AirAtFault.NO;
    }
    if (!spoken) {
      return AirAtFault.CANT_TELL;
    }
    double all = weighed.stream().mapToDouble(Weighed::share).sum();
    double air =
        weighed.stream().filter(w -> w.possible.air()).mapToDouble(Weighed::share).sum() / all;
    if (air >= YES) {
      return AirAtFault.YES;
    }
    return air >= PARTLY ? AirAtFault.PARTLY : AirAtFault.NO;
  }

  private static List<String> advice(Fault fault, Optional<Air> air, Optional<Finish> finish) {
    List<String> advice = new ArrayList<>();
    switch (fault) {
      case CLOUDED ->
          advice.addAll(
              List.of(
                  "Leave it alone in dry, moving air first; shallow clouding often clears by"
                      + " itself",
                  "Bring no heat and no spark near it while solvent is leaving the film",
                  "Wait until the wood is within 1 K of the air and the air is drier"));
      case SOFT ->
          advice.addAll(
              List.of(
                  "Let a drop of the same stock dry on glass before another coat",
                  "Put nothing over it until it sands to powder"));
      case CRACKED ->
          advice.add("Reckon the dry film of all coats, and let the piece follow the room slowly");
      case BUBBLES ->
          advice.add("Move it into steady or falling temperature, and lay lighter coats");
      case PRINTS ->
          advice.add(
              "Handling, stacking, wrapping and delivery are four dates; make the print test before"
                  + " wrapping");
      case QUICK ->
          advice.add("Choose a cooler hour or smaller faces; a heavier film keeps its edge longer");
      case INSTRUMENT ->
          advice.add(
              "Take no dew point from it until it has been checked at two humidities, one near"
                  + " where you work");
      case NONE, UNKNOWN -> {}
    }
    if (air.isPresent()) {
      advice.add(
          air.get().modelled() && finish.isPresent()
              ? "Reckoned as %s of this shop's files (%s); another product may behave otherwise"
                  .formatted(finish.get().title(), finish.get().name())
              : "Only the dew point at the wood was reckoned: no finish of this shop fits the"
                  + " words, or the air is beyond its model");
    }
    advice.add("Read the safety data sheet");
    return advice;
  }

  private static List<String> questions(DescribedCase told, Fault fault, Optional<Air> air) {
    List<String> questions = new ArrayList<>();
    if (fault == Fault.UNKNOWN) {
      questions.add("What was seen: clouding, softness, cracks, bubbles, prints?");
    }
    if (air.isEmpty()) {
      questions.add("What were temperature and humidity when it was coated, and overnight?");
    }
    if (told.woodTempC().isEmpty() && (fault == Fault.CLOUDED || fault == Fault.UNKNOWN)) {
      questions.add("How warm was the wood itself?");
    }
    if (fault == Fault.CLOUDED) {
      questions.add("Does it wipe off with a soft cloth, and does it come back?");
    }
    if (fault == Fault.SOFT) {
      questions.add("How old is the stock, and what became of other parts coated from it?");
      questions.add("Which parts in the same air are sound, and in what do they differ?");
    }
    if (fault == Fault.CRACKED || fault == Fault.BUBBLES) {
      questions.add("How many coats, how heavy, and how far apart?");
    }
    return questions;
  }
}
