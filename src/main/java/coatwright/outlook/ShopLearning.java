package coatwright.outlook;

import coatwright.film.CureEnsemble;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmFailure;
import coatwright.film.Finish;
import coatwright.film.Lesson;
import coatwright.film.Sensitivity;
import coatwright.film.ShopPrior;
import coatwright.film.Spreads;
import coatwright.film.Told;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import coatwright.journal.Observation.What;
import coatwright.journal.PartPath;
import coatwright.quantity.OutOfRange;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What the shop's own journal teaches of its next part. Nothing is stored: every part's lesson is
 * read from its coats, its air and its notes, kept in memory while these stay, and put together
 * anew when an entry is written. A part is never taught by itself: its own tests count on it
 * directly. Readings that arrive late are taken up with the part's next note or the next start.
 */
final class ShopLearning {
  /** How well a part is usually known; slopes are brought to what is known of each. */
  private static final Spreads USUAL = new Spreads(0.2, 0.1, 0.7, 0.5, 3, 1, 1);

  private final Journal journal;
  private final FilmJobs jobs;
  private final AtomicLong written = new AtomicLong();
  private long read = -1;
  private final Map<PartPath, Taught> parts = new HashMap<>();
  private final Map<String, Sensitivity> slopes = new HashMap<>();

  /** A part's lesson and the entries it was read from. */
  private record Taught(List<String> entries, Optional<Part> part) {}

  /** What one part taught of one finish. */
  private record Part(
      String finish, Lesson lesson, int rubOuts, int fine, int lookedAt, int clouded) {}

  ShopLearning(Journal journal, FilmJobs jobs) {
    this.journal = journal;
    this.jobs = jobs;
    journal.onEntry(entry -> written.incrementAndGet());
  }

  /**
   * What the shop's other parts of that finish have taught.
   *
   * @param except the part that is asked about
   */
  synchronized ShopLearned of(Finish finish, Optional<PartPath> except) {
    readAgain();
    List<Lesson> lessons = new ArrayList<>();
    int rubOuts = 0;
    int fine = 0;
    int lookedAt = 0;
    int clouded = 0;
    for (Map.Entry<PartPath, Taught> e : parts.entrySet()) {
      Optional<Part> taught = e.getValue().part().filter(p -> p.finish().equals(finish.name()));
      if (taught.isEmpty() || except.equals(Optional.of(e.getKey()))) {
        continue;
      }
      Part p = taught.get();
      lessons.add(p.lesson());
      rubOuts += p.rubOuts();
      fine += p.fine();
      lookedAt += p.lookedAt();
      clouded += p.clouded();
    }
    return new ShopLearned(ShopPrior.of(lessons), rubOuts, fine, lookedAt, clouded);
  }

  private void readAgain() {
    long now = written.get();
    if (now == read) {
      return;
    }
    Set<PartPath> coated = new LinkedHashSet<>();
    for (Entry e : journal.coats()) {
      coated.add(((Coat) e.body()).part());
    }
    parts.keySet().retainAll(coated);
    for (PartPath part : coated) {
      List<Entry> notes = journal.observations(part);
      if (notes.isEmpty()) {
        parts.remove(part);
        continue;
      }
      List<Entry> coats = journal.coats(part);
      List<String> entries = new ArrayList<>();
      coats.forEach(e -> entries.add(e.id()));
      notes.forEach(e -> entries.add(e.id()));
      Taught known = parts.get(part);
      if (known == null || !known.entries().equals(entries)) {
        parts.put(part, new Taught(entries, taught(part, coats, notes)));
      }
    }
    read = now;
  }

  private Optional<Part> taught(PartPath part, List<Entry> coats, List<Entry> notes) {
    try {
      return lesson(part, coats, notes);
    } catch (OutOfRange | FilmFailure outside) {
      // What the model cannot compute teaches it nothing.
      return Optional.empty();
    }
  }

  private Optional<Part> lesson(PartPath part, List<Entry> coats, List<Entry> notes) {
    Instant lastAt = notes.get(notes.size() - 1).at();
    Optional<Rebuilt> rebuilt = jobs.forPart(part, lastAt);
    if (rebuilt.isEmpty() || !(rebuilt.get() instanceof Rebuilt.Known known)) {
      return Optional.empty();
    }
    LaidJob job = known.job();
    Map<Entry, Boolean> looks = looks(coats, notes);
    Lesson learned =
        job instanceof CuringJob cure
            ? CureEnsemble.lesson(cure.asked(Tests.of(notes, cure), cure.onClockS(lastAt)))
            : hardening((CoatJob) job, notes).and(clouding(looks, job.finish()));
    int rubOuts = 0;
    int fine = 0;
    for (Entry e : notes) {
      Observation o = (Observation) e.body();
      if (o.what() == What.RUBBED_OUT && o.passed().isPresent()) {
        rubOuts++;
        fine += o.passed().get() ? 1 : 0;
      }
    }
    int clouded = (int) looks.values().stream().filter(c -> c).count();
    return Optional.of(
        new Part(job.finish().name(), learned, rubOuts, fine, looks.size(), clouded));
  }

  private Lesson hardening(CoatJob job, List<Entry> notes) {
    EnsembleJob asked =
        new EnsembleJob(
            Sets.of(job.finish()),
            job.stack(),
            job.spreads(),
            Tests.of(notes, job),
            job.onClockS(notes.get(notes.size() - 1).at()),
            job.clockGaps(),
            job.gapK(),
            told(List.of(), Tests.weighed(notes, job)));
    boolean tested = !asked.tests().isEmpty() || !asked.told().weighed().isEmpty();
    return tested ? Ensemble.lesson(asked, slopes(job.finish(), asked)) : Lesson.NONE;
  }

  private Lesson clouding(Map<Entry, Boolean> looks, Finish finish) {
    List<Told.Clouded> seen = new ArrayList<>();
    Optional<EnsembleJob> last = Optional.empty();
    for (Map.Entry<Entry, Boolean> look : looks.entrySet()) {
      Optional<CoatJob> job = jobOf(look.getKey());
      Optional<Told.Clouded> clouded = job.flatMap(j -> seen(j, look.getValue()));
      if (clouded.isPresent()) {
        seen.add(clouded.get());
        CoatJob coat = job.orElseThrow();
        last = Optional.of(EnsembleJob.untested(Sets.of(finish), coat.alone(), coat.spreads()));
      }
    }
    return last.map(job -> Ensemble.lesson(job.with(told(seen, List.of())), slopes(finish, job)))
        .orElse(Lesson.NONE);
  }

  private static Told told(List<Told.Clouded> clouding, List<Told.Weighed> weighed) {
    return new Told(ShopPrior.UNTAUGHT, clouding, weighed);
  }

  /** A coat on dew, or out of the model's range, says nothing of how much water a film bears. */
  private Optional<Told.Clouded> seen(CoatJob job, boolean clouded) {
    try {
      OptionalDouble peakS = jobs.peakS(job);
      return peakS.isPresent()
          ? Optional.of(new Told.Clouded(peakS.getAsDouble(), clouded))
          : Optional.empty();
    } catch (OutOfRange | FilmFailure outside) {
      return Optional.empty();
    }
  }

  private Optional<CoatJob> jobOf(Entry coat) {
    Instant start = FilmJobs.startOf(coat);
    return jobs.forCoat(coat, start.plusSeconds(3600)) instanceof Rebuilt.Known known
            && known.job() instanceof CoatJob job
        ? Optional.of(job)
        : Optional.empty();
  }

  /** Clouding seen on a part's earlier coats, for its own next coat. */
  List<Told.Clouded> seenOn(PartPath part) {
    List<Told.Clouded> seen = new ArrayList<>();
    Map<Entry, Boolean> looks = looks(journal.coats(part), journal.observations(part));
    for (Map.Entry<Entry, Boolean> look : looks.entrySet()) {
      jobOf(look.getKey()).flatMap(job -> seen(job, look.getValue())).ifPresent(seen::add);
    }
    return seen;
  }

  /** Which coats were looked at for clouding, and whether they did; one answer a coat. */
  private static Map<Entry, Boolean> looks(List<Entry> coats, List<Entry> notes) {
    Map<Entry, Boolean> looks = new LinkedHashMap<>();
    for (Entry note : notes) {
      Observation o = (Observation) note.body();
      if (o.what() != What.CLOUDED && o.what() != What.CLEARED) {
        continue;
      }
      boolean clouded = o.what() == What.CLEARED || o.grade().orElse(1) > 0;
      coatOf(o, note.at(), coats).ifPresent(c -> looks.merge(c, clouded, Boolean::logicalOr));
    }
    return looks;
  }

  /** The coat a note names, else the newest when it was seen. */
  private static Optional<Entry> coatOf(Observation o, Instant at, List<Entry> coats) {
    Optional<Entry> found = Optional.empty();
    for (Entry coat : coats) {
      boolean named = o.coat().map(coat.id()::equals).orElse(!FilmJobs.startOf(coat).isAfter(at));
      if (named) {
        found = Optional.of(coat);
      }
    }
    return found;
  }

  /** One set of slopes serves every part of a finish with as many coats. */
  private Sensitivity slopes(Finish finish, EnsembleJob job) {
    return slopes.computeIfAbsent(
        finish.name() + "/" + job.job().coats().size(),
        key -> Ensemble.slopes(EnsembleJob.untested(job.parameters(), job.job(), USUAL)));
  }
}
