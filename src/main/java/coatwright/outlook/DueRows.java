package coatwright.outlook;

import coatwright.film.Milestone;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.journal.Observation.What;
import coatwright.journal.PartPath;
import coatwright.outlook.PartPrediction.Dates;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns a prediction into the lines of the due list, and keeps what moved. */
final class DueRows {
  private static final String TACKY = "too tacky to go on";
  private static final Duration LEAST_MOVE = Duration.ofMinutes(2);
  private static final double MOVE_SHARE = 0.03;
  private static final Duration HANDLING_KEPT = Duration.ofHours(1);

  private final PredictionLog log;
  private final ZoneId zone;
  private final MoveReason reasons;
  private final BenchAdvice advice;

  DueRows(PredictionLog log, ZoneId zone) {
    this.log = log;
    this.zone = zone;
    this.reasons = new MoveReason(zone);
    this.advice = new BenchAdvice(zone);
  }

  /** The lines of one part, and whether any date moved. */
  record Told(List<Due> due, boolean moved) {}

  /** A part of which nothing can be told. */
  Due unknown(PartPath part, String reason) {
    return new Due(
        part.toString(),
        Milestone.RUB_OUT.toString(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(reason),
        Optional.empty(),
        false,
        false,
        true);
  }

  Told of(PartPath part, PartPrediction p, Optional<PartPrediction> basis, String reason) {
    if (p.condensation()) {
      return new Told(
          List.of(
              unknown(
                  part,
                  "dew stood on the wood when a coat went on, so the film cannot be computed; test"
                      + " it by hand")),
          false);
    }
    List<Due> due = new ArrayList<>();
    boolean moved = false;
    Optional<Contradiction> against = Contradiction.in(p);
    for (Milestone m : DueList.dated(p.job().finish())) {
      boolean held = against.isPresent() && against.get().holdsBack(m);
      Dates dates = held ? Dates.NONE : tested(m, p);
      moved |= keep(part, m, dates, p, basis, reason);
      if (!held && wanted(m, dates, p)) {
        due.add(row(part, m, dates, p));
      }
    }
    if (against.isPresent()) {
      due.add(contradicted(part, against.get(), p));
    } else {
      tacky(part, p).ifPresent(due::add);
    }
    return new Told(due, moved);
  }

  /** One line for all dates that a failed test has taken away. */
  private Due contradicted(PartPath part, Contradiction against, PartPrediction p) {
    boolean rubs = DueList.dated(p.job().finish()).contains(Milestone.RUB_OUT);
    Milestone m =
        rubs && against.holdsBack(Milestone.RUB_OUT) ? Milestone.RUB_OUT : against.milestone();
    String why =
        "%s, though nine in ten such films are %s by %s; if it fails once more, old stock or what"
            + " lies beneath keeps the film soft, and no date can be told";
    return new Due(
        part.toString(),
        m.toString(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        lastMove(part, m).flatMap(PredictionLog.Kept::was),
        Optional.of(
            why.formatted(
                reasons.said(against.test(), p),
                against.milestone(),
                Times.near(against.byNow(), p.madeAt(), zone))),
        Optional.of("Make the test again now: about one in fifty is misread."),
        false,
        false,
        true);
  }

  /**
   * Handling milestones leave the list once they are behind; hardness stays until it is acted on.
   */
  private static boolean wanted(Milestone m, Dates dates, PartPrediction p) {
    Optional<Instant> last = dates.p90().or(dates::p50);
    return switch (m) {
      case DRY_TO_TOUCH, DRY_TO_RECOAT, DRY_HARD ->
          last.isEmpty() || last.get().plus(HANDLING_KEPT).isAfter(p.madeAt());
      case RUB_OUT -> !passed(p, What.RUBBED_OUT);
      case WRAP -> !passed(p, What.PRINT);
      case RESTED, FULL_HARDNESS -> last.isEmpty() || last.get().isAfter(p.madeAt());
    };
  }

  /** Whether a line of the list is behind, by the clock alone. */
  static boolean over(Due d, Instant now) {
    if (d.milestone().equals(TACKY)) {
      return d.p50().isPresent() && !d.p50().get().isAfter(now);
    }
    boolean handling =
        d.milestone().equals(Milestone.DRY_TO_TOUCH.toString())
            || d.milestone().equals(Milestone.DRY_TO_RECOAT.toString())
            || d.milestone().equals(Milestone.DRY_HARD.toString());
    Optional<Instant> last = d.p90().or(d::p50);
    return handling && last.isPresent() && last.get().plus(HANDLING_KEPT).isBefore(now);
  }

  private static boolean passed(PartPrediction p, What what) {
    return lastTest(p, what)
        .map(e -> ((Observation) e.body()).passed().orElse(false))
        .orElse(false);
  }

  /** Newest note of that kind since the last coat. */
  private static Optional<Entry> lastTest(PartPrediction p, What... kinds) {
    Optional<Entry> found = Optional.empty();
    for (Entry e : p.observations()) {
      Observation o = (Observation) e.body();
      if (List.of(kinds).contains(o.what()) && e.at().isAfter(p.lastCoatAt())) {
        found = Optional.of(e);
      }
    }
    return found;
  }

  /** A bench test overrides the prediction: passed is reached, failed is not reached yet. */
  private static Dates tested(Milestone m, PartPrediction p) {
    Optional<Entry> test =
        switch (m) {
          case DRY_TO_TOUCH -> lastTest(p, What.TOUCH);
          case DRY_TO_RECOAT -> lastTest(p, What.TACKY);
          case DRY_HARD -> lastTest(p, What.THUMBNAIL, What.POWDER);
          case RUB_OUT -> lastTest(p, What.RUBBED_OUT);
          case WRAP -> lastTest(p, What.PRINT);
          case RESTED, FULL_HARDNESS -> Optional.empty();
        };
    Dates dates = p.dates(m);
    if (test.isEmpty()) {
      return dates;
    }
    Observation o = (Observation) test.get().body();
    boolean passed = o.what() != What.TACKY && o.passed().orElse(false);
    if (!passed) {
      return dates.notBefore(test.get().at());
    }
    boolean early = dates.p50().isEmpty() || dates.p50().get().isAfter(test.get().at());
    return early || m == Milestone.RUB_OUT || m == Milestone.WRAP
        ? Dates.seen(test.get().at())
        : dates;
  }

  private Due row(PartPath part, Milestone m, Dates dates, PartPrediction p) {
    Optional<PredictionLog.Kept> last = lastMove(part, m);
    return new Due(
        part.toString(),
        m.toString(),
        dates.p10(),
        dates.p50(),
        dates.p90(),
        m == Milestone.DRY_TO_RECOAT ? p.recoatUntil() : Optional.empty(),
        last.flatMap(PredictionLog.Kept::was),
        last.map(PredictionLog.Kept::reason),
        advice.test(m, p, dates.p50(), p.madeAt()),
        dates.p50().isPresent(),
        p.job().finish().basisOf(m).estimate());
  }

  /** A state and the rest it needs, only while it lasts. */
  private Optional<Due> tacky(PartPath part, PartPrediction p) {
    Dates rest = tested(Milestone.DRY_TO_RECOAT, p);
    boolean now = rest.p50().isEmpty() || rest.p50().get().isAfter(p.madeAt());
    return now
        ? Optional.of(
            new Due(
                part.toString(),
                TACKY,
                rest.p10(),
                rest.p50(),
                rest.p90(),
                Optional.empty(),
                Optional.empty(),
                Optional.of("rest it until then"),
                advice.test(Milestone.DRY_TO_RECOAT, p, rest.p50(), p.madeAt()),
                rest.p50().isPresent(),
                false))
        : Optional.empty();
  }

  private Optional<PredictionLog.Kept> lastMove(PartPath part, Milestone m) {
    List<PredictionLog.Kept> history = log.history(part.toString(), m.toString());
    for (int i = history.size() - 1; i >= 0; i--) {
      if (history.get(i).was().isPresent()) {
        return Optional.of(history.get(i));
      }
    }
    return Optional.empty();
  }

  private boolean keep(
      PartPath part,
      Milestone m,
      Dates dates,
      PartPrediction p,
      Optional<PartPrediction> basis,
      String reason) {
    List<PredictionLog.Kept> history = log.history(part.toString(), m.toString());
    Optional<PredictionLog.Kept> last =
        history.isEmpty() ? Optional.empty() : Optional.of(history.get(history.size() - 1));
    if (last.isPresent() && !moved(last.get().p50(), dates.p50(), p.lastCoatAt())) {
      return false;
    }
    String why =
        last.isEmpty()
            ? "first prediction"
            : basis.map(b -> reasons.of(b, p, reason)).orElse(reason);
    log.keep(
        new PredictionLog.Kept(
            part.toString(),
            m.toString(),
            p.madeAt(),
            dates.p10(),
            dates.p50(),
            dates.p90(),
            last.flatMap(PredictionLog.Kept::p50),
            why));
    return true;
  }

  private static boolean moved(Optional<Instant> was, Optional<Instant> is, Instant from) {
    if (was.isEmpty() || is.isEmpty()) {
      return was.isPresent() != is.isPresent();
    }
    Duration by = Duration.between(was.get(), is.get()).abs();
    double span = Math.abs(Duration.between(from, is.get()).toMillis());
    Duration least = Duration.ofMillis(Math.round(MOVE_SHARE * span));
    return by.compareTo(least.compareTo(LEAST_MOVE) > 0 ? least : LEAST_MOVE) > 0;
  }
}
