package coatwright.review;

import coatwright.film.CoatOutcome;
import coatwright.outlook.CloudingRule;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.quantity.Show;
import coatwright.review.Change.Kind;
import coatwright.review.Why.AirAtFault;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Decides what clouded a coat, from the run as it was and the runs with one thing changed.
 *
 * <ol>
 *   <li>Wood within 1 K of the dew point: yes, the air (on wood that cold).
 *   <li>No clouding is expected of it by the outlook's rule: no, the air was not the cause. Look at
 *       jar, spirit and handling.
 *   <li>Clouding was possible by that rule, but its water stayed under 85 % of what the resin
 *       holds: no, it was hardly the cause.
 *   <li>Between 85 % and the limit, and clouding possible: partly; errors of sensor and recipe
 *       reach that far.
 *   <li>The spirit in the jar was itself near giving way: no, unless drier air alone would have
 *       saved it (then partly).
 *   <li>Over the limit, and drier air alone, or wood as warm as the air alone, keeps it under: yes;
 *       partly where it was over by less than a fifth while other parts in the same air show
 *       nothing.
 *   <li>Over the limit, and neither does it alone: partly where drier air takes a tenth off, else
 *       no.
 * </ol>
 *
 * The bounds 85 % and a tenth are ours; what is likely, possible or not expected is {@link
 * CloudingRule}'s to say, so that sentence and level cannot part.
 */
final class CloudingCause {
  private static final double WELL_UNDER_S = 0.85;
  private static final double TELLS = 0.1;

  private final String part;
  private final boolean noted;
  private final Carrier carrier;
  private final CloudingRun base;
  private final List<Tried> tried;
  private final JarStory jar;
  private final double airTempC;
  private final double rhPct;

  CloudingCause(
      String part,
      boolean noted,
      Carrier carrier,
      CloudingRun base,
      List<Tried> tried,
      JarStory jar,
      double airTempC,
      double rhPct) {
    this.part = part;
    this.noted = noted;
    this.carrier = carrier;
    this.base = base;
    this.tried = tried;
    this.jar = jar;
    this.airTempC = airTempC;
    this.rhPct = rhPct;
  }

  Finding find() {
    if (base.outcome().isEmpty() || base.spreadAtWoodK() < CloudingRule.LEAST_SPREAD_K) {
      return dew();
    }
    CoatOutcome outcome = base.outcome().get();
    if (outcome.spiritTooWeak()) {
      return weakSpirit(outcome);
    }
    if (base.level() == CloudingLevel.NONE_EXPECTED || base.s() < WELL_UNDER_S) {
      return notTheAir(outcome);
    }
    return base.s() < CloudingRule.LIMIT_S ? nearTheLimit(outcome) : over(outcome);
  }

  private Finding dew() {
    String spread = Show.fixed(Math.abs(base.spreadAtWoodK()), 1) + " K";
    String stood =
        base.spreadAtWoodK() <= 0
            ? spread + " below the dew point, so water formed on it"
            : "only " + spread + " above the dew point";
    return new Finding(
        head(
                "clouded because its wood was too cold for the air",
                "should have clouded: its wood was too cold for the air")
            + ": it stood %s of the %s".formatted(stood, air()),
        AirAtFault.YES);
  }

  private Finding weakSpirit(CoatOutcome outcome) {
    boolean drySaves = mends(Kind.DAMP_AIR);
    return new Finding(
        head(
                "clouded because of the " + carrier.liquid() + " in the jar",
                "may well cloud, because of the " + carrier.liquid() + " in the jar")
            + ": before the brush it already held %s %% of the water the %s can bear%s"
                .formatted(
                    Show.fixed(100 * outcome.jarS(), 0),
                    carrier.givesWay(),
                    drySaves ? ", and the " + air() + " did the rest" : ", whatever the air"),
        drySaves ? AirAtFault.PARTLY : AirAtFault.NO);
  }

  /** "Not" is said exactly where the level is "none expected". */
  private Finding notTheAir(CoatOutcome outcome) {
    boolean possible = base.level() != CloudingLevel.NONE_EXPECTED;
    String sentence =
        "The air was %s the cause: in the %s %s took up %s%s; %s"
            .formatted(
                possible ? "hardly" : "not",
                air(),
                part,
                water(outcome),
                possible ? ", near enough that clouding was possible" : "",
                noted ? suspects() : "no clouding is noted on it");
    return new Finding(sentence, AirAtFault.NO);
  }

  private String suspects() {
    return jar.suspects(
        "look at the %s, at what lay under it, and at how it was laid".formatted(carrier.liquid()));
  }

  private Finding nearTheLimit(CoatOutcome outcome) {
    return new Finding(
        head("was near clouding in this air, and the air may have helped", "came near clouding")
            + ": in the %s it took up %s%s".formatted(air(), water(outcome), instead(true)),
        AirAtFault.PARTLY);
  }

  private Finding over(CoatOutcome outcome) {
    String took = ": in the %s it took up %s".formatted(air(), water(outcome));
    if (mends(Kind.DAMP_AIR) || mends(Kind.COLD_WOOD)) {
      boolean othersClear = noted && !jar.clearInTheSameAir().isEmpty();
      boolean narrow = base.s() < CloudingRule.LIKELY_S;
      String cause = mends(Kind.DAMP_AIR) ? "the air was damp" : "the wood was colder than the air";
      String but =
          othersClear
              ? "; yet %s, coated in the same air, has no clouding noted, so compare their jars, wood and coats"
                  .formatted(jar.clearInTheSameAir().get(0))
              : "";
      return new Finding(
          head("clouded because " + cause, "should have clouded, because " + cause)
              + took
              + instead(false)
              + but,
          othersClear && narrow ? AirAtFault.PARTLY : AirAtFault.YES);
    }
    boolean airTells = drop(Kind.DAMP_AIR) >= TELLS;
    return new Finding(
        head("clouded for more than one reason", "should have clouded, for more than one reason")
            + took
            + instead(false),
        airTells ? AirAtFault.PARTLY : AirAtFault.NO);
  }

  private String head(String whenNoted, String whenNot) {
    return noted
        ? part + " " + whenNoted
        : "No clouding is noted on " + part + ", though by the model it " + whenNot;
  }

  private String air() {
    return "air of %s °C and %s".formatted(Show.fixed(airTempC, 1), Show.relativeHumidity(rhPct));
  }

  private String water(CoatOutcome outcome) {
    return "%s %% water where the %s gives way at %s %%"
        .formatted(
            Show.fixed(outcome.waterPeakPct(), 1),
            carrier.givesWay(),
            Show.fixed(outcome.waterLimitPct(), 1));
  }

  /** The changes that alone would have kept it clear, the strongest first. */
  private String instead(boolean short1) {
    List<Tried> mending =
        tried.stream()
            .filter(Tried::mends)
            .filter(t -> t.kind() != Kind.WARMER_WOOD || !mends(Kind.COLD_WOOD))
            .sorted(Comparator.comparingDouble(t -> t.run().s()))
            .toList();
    if (mending.isEmpty()) {
      return short1 ? "" : "; no single change tried would have kept it clear";
    }
    Tried first = mending.get(0);
    String told =
        "; %s (%s) it would have stayed clear, with %s %% of that limit"
            .formatted(
                "with " + first.change().words(),
                first.change().was() + " → " + first.change().would(),
                Show.fixed(100 * first.run().s(), 0));
    return mending.size() == 1 ? told : told + ", and so with " + mending.get(1).change().words();
  }

  private boolean mends(Kind kind) {
    return of(kind).map(Tried::mends).orElse(false);
  }

  private double drop(Kind kind) {
    return of(kind).map(t -> (base.s() - t.run().s()) / base.s()).orElse(0.0);
  }

  private Optional<Tried> of(Kind kind) {
    return tried.stream().filter(t -> t.kind() == kind).findFirst();
  }
}
