package coatwright.outlook;

import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.Milestone;
import coatwright.film.Sensitivity;
import coatwright.film.ShopPrior;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * What is due, predicted anew as air, coats and tests come in. One thread refreshes at a time; the
 * list is read by all.
 */
final class DueList {
  private static final Duration WATCHED = Duration.ofDays(75);

  /** Slopes are found anew when the time since the last coat has grown by this share. */
  private static final double SLOPES_AGE = 0.25;

  private static final List<Milestone> DATED =
      List.of(
          Milestone.DRY_TO_TOUCH,
          Milestone.DRY_TO_RECOAT,
          Milestone.DRY_HARD,
          Milestone.RUB_OUT,
          Milestone.WRAP,
          Milestone.FULL_HARDNESS);
  private static final String LEARNED = "what other parts of this shop have shown";

  private final Journal journal;
  private final FilmJobs jobs;
  private final ShopLearning learning;
  private final DueRows rows;
  private final Map<PartPath, Watched> parts = new ConcurrentHashMap<>();
  private final List<Consumer<List<Due>>> listeners = new CopyOnWriteArrayList<>();

  /**
   * A part and what was last said of it.
   *
   * @param basis the prediction its kept dates rest on, to tell why a date moved since
   * @param shop what the shop's other parts had taught by then
   */
  private record Watched(
      Optional<PartPrediction> last,
      Optional<PartPrediction> basis,
      Optional<Sensitivity> slopes,
      Instant slopesAt,
      ShopPrior shop,
      List<Due> due) {}

  DueList(
      FilmJobs jobs,
      ShopLearning learning,
      Journal journal,
      PredictionLog log,
      OutlookSettings settings) {
    this.journal = journal;
    this.jobs = jobs;
    this.learning = learning;
    this.rows = new DueRows(log, settings.zone());
  }

  void onDue(Consumer<List<Due>> listener) {
    listeners.add(listener);
  }

  /** Soonest first; what will not be reached stands last, and what is over since is left out. */
  List<Due> list(Optional<String> piece, Instant now) {
    return list(piece).stream().filter(d -> !DueRows.over(d, now)).toList();
  }

  private List<Due> list(Optional<String> piece) {
    List<Due> all = new ArrayList<>();
    parts.forEach(
        (part, watched) -> {
          if (piece.isEmpty() || piece.get().equals(part.piece())) {
            all.addAll(watched.due());
          }
        });
    all.sort(
        Comparator.comparing((Due d) -> d.p50().orElse(Instant.MAX))
            .thenComparing(Due::part)
            .thenComparing(Due::milestone));
    return all;
  }

  /** The newest prediction of a part. */
  Optional<PartPrediction> prediction(PartPath part) {
    Watched watched = parts.get(part);
    return watched == null ? Optional.empty() : watched.last();
  }

  synchronized void refresh(Instant now, String reason) {
    Set<PartPath> coated = new LinkedHashSet<>();
    for (Entry e : journal.coats()) {
      coated.add(((coatwright.journal.Coat) e.body()).part());
    }
    parts.keySet().retainAll(coated);
    boolean moved = false;
    for (PartPath part : coated) {
      moved |= refresh(part, now, reason);
    }
    if (moved) {
      List<Due> all = list(Optional.empty());
      listeners.forEach(l -> l.accept(all));
    }
  }

  private boolean refresh(PartPath part, Instant now, String reason) {
    Watched before = parts.get(part);
    Optional<Rebuilt> rebuilt = jobs.forPart(part, now);
    if (rebuilt.isEmpty()) {
      parts.remove(part);
      return before != null;
    }
    if (rebuilt.get() instanceof Rebuilt.Unknown unknown) {
      Watched none =
          new Watched(
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              now,
              before == null ? ShopPrior.UNTAUGHT : before.shop(),
              List.of(rows.unknown(part, unknown.reason())));
      parts.put(part, none);
      return before == null || !before.due().equals(none.due());
    }
    LaidJob job = ((Rebuilt.Known) rebuilt.get()).job();
    if (FilmJobs.startOf(job.coat()).plus(WATCHED).isBefore(now)) {
      parts.remove(part);
      return before != null;
    }
    return predict(part, job, Optional.ofNullable(before), now, reason);
  }

  private boolean predict(
      PartPath part, LaidJob job, Optional<Watched> before, Instant now, String reason) {
    List<Entry> observations =
        journal.observations(part).stream().filter(e -> isTest(e) && !e.at().isAfter(now)).toList();
    Optional<Watched> reusable = before.filter(b -> slopesHold(b, job, now));
    ShopPrior shop = learning.of(job.finish(), Optional.of(part)).prior();
    String why = before.filter(b -> !b.shop().equals(shop)).isPresent() ? LEARNED : reason;
    PartPrediction made =
        new PartPrediction(
            job,
            Predictions.of(job, observations, now, reusable.flatMap(Watched::slopes), shop),
            observations,
            now);
    DueRows.Told told = rows.of(part, made, before.flatMap(Watched::basis), why);
    Optional<PartPrediction> basis =
        told.moved()
            ? Optional.of(made)
            : before.flatMap(Watched::basis).or(() -> Optional.of(made));
    parts.put(
        part,
        new Watched(
            Optional.of(made),
            basis,
            made.prediction().sensitivity(),
            reusable.map(Watched::slopesAt).orElse(now),
            shop,
            told.due()));
    return told.moved();
  }

  private static boolean isTest(Entry e) {
    Observation.What what = ((Observation) e.body()).what();
    return what != Observation.What.CLOUDED && what != Observation.What.CLEARED;
  }

  private static boolean slopesHold(Watched before, LaidJob job, Instant now) {
    if (before.last().isEmpty()) {
      return false;
    }
    PartPrediction last = before.last().get();
    Duration since = Duration.between(last.lastCoatAt(), before.slopesAt());
    Duration grown = Duration.between(before.slopesAt(), now);
    boolean young = grown.toSeconds() <= Math.max(900, SLOPES_AGE * since.toSeconds());
    return young && last.job().laid().equals(job.laid()) && last.job().sameCoats(job);
  }

  /** The milestones of a finish that are dates to act on. */
  static List<Milestone> dated(Finish finish) {
    return finish.drying() instanceof Curing curing
        ? DATED.stream().filter(curing.milestones()::contains).toList()
        : DATED;
  }
}
