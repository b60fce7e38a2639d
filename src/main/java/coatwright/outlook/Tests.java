package coatwright.outlook;

import coatwright.film.BenchTest;
import coatwright.film.Told;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Bench tests as the ensemble reads them, from what was noted on a part. */
final class Tests {
  private Tests() {}

  static List<BenchTest.Seen> of(Journal journal, LaidJob job) {
    return of(journal.observations(job.part()), job);
  }

  static List<BenchTest.Seen> of(List<Entry> observations, LaidJob job) {
    List<BenchTest.Seen> seen = new ArrayList<>();
    for (Entry e : observations) {
      read(e, job).ifPresent(seen::add);
    }
    seen.sort(java.util.Comparator.comparingDouble(BenchTest.Seen::atS));
    return seen;
  }

  /** Residues that were weighed, in the order of time. */
  static List<Told.Weighed> weighed(List<Entry> observations, LaidJob job) {
    List<Told.Weighed> weighed = new ArrayList<>();
    for (Entry e : observations) {
      Observation o = (Observation) e.body();
      if (o.what() == Observation.What.WEIGHED && o.residuePct().isPresent()) {
        double share = o.residuePct().getAsDouble() / 100;
        weighed.add(new Told.Weighed(job.onClockS(e.at()), share));
      }
    }
    weighed.sort(java.util.Comparator.comparingDouble(Told.Weighed::atS));
    return weighed;
  }

  /** Clouding and clearing tell of water, not of hardness: they move no date. */
  private static Optional<BenchTest.Seen> read(Entry e, LaidJob job) {
    Observation o = (Observation) e.body();
    double atS = job.onClockS(e.at());
    Optional<BenchTest> test = test(o.what());
    boolean passed = o.what() != Observation.What.TACKY && o.passed().orElse(false);
    boolean told = o.what() == Observation.What.TACKY || o.passed().isPresent();
    return test.isPresent() && told
        ? Optional.of(new BenchTest.Seen(test.get(), atS, passed))
        : Optional.empty();
  }

  private static Optional<BenchTest> test(Observation.What what) {
    return switch (what) {
      case TACKY -> Optional.of(BenchTest.TACK_FREE);
      case TOUCH -> Optional.of(BenchTest.TOUCH);
      case THUMBNAIL -> Optional.of(BenchTest.THUMBNAIL);
      case POWDER -> Optional.of(BenchTest.POWDER);
      case SMELL -> Optional.of(BenchTest.SMELL);
      case PRINT -> Optional.of(BenchTest.PRINT);
      case RUBBED_OUT -> Optional.of(BenchTest.RUBBED_OUT);
      case CLOUDED, CLEARED, WEIGHED, CARRIED_IN -> Optional.empty();
    };
  }
}
