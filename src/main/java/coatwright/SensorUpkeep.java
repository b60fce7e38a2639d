package coatwright;

import coatwright.climate.ReadingLog;
import coatwright.film.Finish;
import coatwright.film.WaterborneCure;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import coatwright.journal.SaltBook;
import coatwright.journal.SaltFit;
import coatwright.sensors.Correction;
import coatwright.sensors.Quantity;
import coatwright.sensors.Sensors;
import coatwright.sensors.Upkeep;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Tells the sensors what journal and store know of their upkeep: checks against salts, hours of
 * finishing in their room, clouded batches. Read anew after every entry. Safe for many threads.
 *
 * <p>The air of a room is taken to hold vapour from the start of a coat until half an hour after
 * its end, or after its first quarter of an hour where no end was written; assumed. Waterborne
 * finishes do not count.
 */
final class SensorUpkeep implements Upkeep, SaltBook.Live {
  private static final Duration USUAL_COAT = Duration.ofMinutes(15);
  private static final Duration VAPOUR_AFTER = Duration.ofMinutes(30);
  private static final int CLOUDED_GRADE = 2;

  private final Journal journal;
  private final ReadingLog log;
  private final Map<String, Finish> finishes;
  private final Clock clock;
  private final SaltBook book;
  private final Map<String, Optional<Instant>> firstHeard = new ConcurrentHashMap<>();
  private volatile @Nullable Read read;
  private volatile @Nullable Sensors sensors;

  /** A stretch of time. */
  private record Stretch(Instant from, Instant to) {}

  private record Key(String source, String sensor) {}

  /** What the journal says, as it was last read. */
  private record Read(
      Map<String, List<Stretch>> vapour,
      Map<String, List<Instant>> clouded,
      Map<Key, List<Check>> checks,
      Map<Key, Boolean> everBoxed) {}

  SensorUpkeep(
      Journal journal, ReadingLog log, Map<String, Finish> finishes, Clock clock, ZoneId zone) {
    this.journal = journal;
    this.log = log;
    this.finishes = Map.copyOf(finishes);
    this.clock = clock;
    this.book = new SaltBook(journal, this, clock, zone);
    journal.onEntry(entry -> read = null);
  }

  SaltBook book() {
    return book;
  }

  /** The sensors it serves, once they stand. */
  void serves(Sensors running) {
    sensors = running;
  }

  private Read read() {
    Read known = read;
    if (known == null) {
      known = readAnew();
      read = known;
    }
    return known;
  }

  private Read readAnew() {
    Map<String, List<Stretch>> vapour = new HashMap<>();
    for (Entry entry : journal.coats()) {
      Coat coat = (Coat) entry.body();
      if (!isWaterborne(coat)) {
        Instant end = coat.end().orElse(coat.start().plus(USUAL_COAT)).plus(VAPOUR_AFTER);
        vapour
            .computeIfAbsent(coat.room(), room -> new ArrayList<>())
            .add(new Stretch(coat.start(), end));
      }
    }
    vapour.replaceAll((room, stretches) -> joined(stretches));
    Map<String, List<Instant>> clouded = new HashMap<>();
    journal.entries().stream()
        .filter(entry -> journal.struckBy(entry.id()).isEmpty())
        .forEach(
            entry ->
                cloudedIn(entry)
                    .ifPresent(
                        room ->
                            clouded
                                .computeIfAbsent(room, each -> new ArrayList<>())
                                .add(entry.at())));
    Map<Key, List<Check>> checks = new HashMap<>();
    Map<Key, Boolean> everBoxed = new HashMap<>();
    for (Entry entry : book.lines()) {
      if (entry.body() instanceof coatwright.journal.SaltCheck line) {
        Key key = new Key(line.source(), line.sensor());
        everBoxed.put(key, true);
        checks.computeIfAbsent(key, k -> checks(k.source(), k.sensor(), book));
      }
    }
    return new Read(vapour, clouded, checks, everBoxed);
  }

  private static List<Check> checks(String source, String sensor, SaltBook book) {
    return book.found(source, sensor).stream()
        .filter(found -> found.fit().isPassed())
        .map(found -> new Check(found.at(), correction(found)))
        .toList();
  }

  private static Correction correction(SaltBook.Found found) {
    SaltFit fit = found.fit();
    return new Correction(
        Quantity.RELATIVE_HUMIDITY, fit.gain(), fit.offsetPct(), found.at(), "salt check");
  }

  private boolean isWaterborne(Coat coat) {
    return journal
        .entry(coat.jarEntry())
        .map(Entry::body)
        .filter(Jar.class::isInstance)
        .map(jar -> finishes.get(((Jar) jar).finish()))
        .filter(finish -> finish.drying() instanceof WaterborneCure)
        .isPresent();
  }

  private static List<Stretch> joined(List<Stretch> stretches) {
    List<Stretch> sorted = stretches.stream().sorted(Comparator.comparing(Stretch::from)).toList();
    List<Stretch> joined = new ArrayList<>();
    for (Stretch next : sorted) {
      Stretch last = joined.isEmpty() ? null : joined.get(joined.size() - 1);
      if (last == null || next.from().isAfter(last.to())) {
        joined.add(next);
      } else if (next.to().isAfter(last.to())) {
        joined.set(joined.size() - 1, new Stretch(last.from(), next.to()));
      }
    }
    return joined;
  }

  /** The room a coat clouded in, where the entry says that one did. */
  private Optional<String> cloudedIn(Entry entry) {
    if (!(entry.body() instanceof Observation seen)
        || seen.what() != Observation.What.CLOUDED
        || seen.grade().orElse(CLOUDED_GRADE) < CLOUDED_GRADE) {
      return Optional.empty();
    }
    Optional<Entry> named = seen.coat().flatMap(journal::entry);
    return named
        .or(
            () ->
                journal.coats(seen.part()).stream()
                    .filter(coat -> !coat.at().isAfter(entry.at()))
                    .reduce((first, second) -> second))
        .map(Entry::body)
        .filter(Coat.class::isInstance)
        .map(coat -> ((Coat) coat).room());
  }

  @Override
  public List<Check> checks(String source, String sensor) {
    return read().checks().getOrDefault(new Key(source, sensor), List.of());
  }

  @Override
  public Optional<Instant> boxedSince(String source, String sensor, Instant at) {
    return read().everBoxed().containsKey(new Key(source, sensor))
        ? book.boxedSince(source, sensor, at)
        : Optional.empty();
  }

  /** From the store, once it is there; until then since now. */
  @Override
  public Optional<Instant> heardSince(String source) {
    Optional<Instant> known = firstHeard.computeIfAbsent(source, log::heardSince);
    if (known.isEmpty()) {
      firstHeard.put(source, Optional.of(clock.instant()));
    }
    return known;
  }

  @Override
  public Duration inVapour(String room, Instant from, Instant to) {
    Duration sum = Duration.ZERO;
    for (Stretch stretch : read().vapour().getOrDefault(room, List.of())) {
      Instant start = stretch.from().isAfter(from) ? stretch.from() : from;
      Instant end = stretch.to().isBefore(to) ? stretch.to() : to;
      sum = start.isBefore(end) ? sum.plus(Duration.between(start, end)) : sum;
    }
    return sum;
  }

  @Override
  public Optional<Instant> cloudedAfter(String room, Instant from) {
    return read().clouded().getOrDefault(room, List.of()).stream()
        .filter(at -> at.isAfter(from))
        .min(Comparator.naturalOrder());
  }

  @Override
  public Map<String, List<String>> sensors() {
    Sensors running = sensors;
    return running == null ? Map.of() : running.hygrometers();
  }

  @Override
  public List<SaltBook.Sent> justSent(String source, String sensor) {
    Sensors running = sensors;
    return running == null
        ? List.of()
        : running.justSent(source, sensor).stream()
            .map(sent -> new SaltBook.Sent(sent.at(), sent.temperatureC(), sent.rhPct()))
            .toList();
  }

  @Override
  public double corrected(String source, String sensor, double sentRhPct, Instant at) {
    Sensors running = sensors;
    return running == null ? sentRhPct : running.corrected(source, sensor, sentRhPct, at);
  }
}
