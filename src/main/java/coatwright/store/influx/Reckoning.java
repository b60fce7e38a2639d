package coatwright.store.influx;

import coatwright.store.Outbox;
import coatwright.store.Outbox.Parked;
import coatwright.store.Outgoing.OfReading;
import coatwright.store.influx.MirrorSettings.ReadBack;
import coatwright.store.influx.MirrorSettings.What;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Counts what a server has against what it was given, a day of UTC at a time: today and yesterday
 * again and again, and every day once when the history has been sent. A server may take its time
 * until it counts what it has taken; a day that lacks something after that is sent again, and what
 * then still differs is told.
 */
final class Reckoning {
  /** Sends lines. */
  interface Sender {
    Delivery deliver(List<String> lines) throws Mirror.Gone;
  }

  private static final Logger LOG = LoggerFactory.getLogger(Reckoning.class);
  private static final Duration FRESH = Duration.ofSeconds(60);
  private static final int LOOKS_WHILE_IN_DOUBT = 4;
  private static final int COUNTS_BETWEEN_SENDING_AGAIN = 6;

  private final MirrorSettings settings;
  private final Outbox outbox;
  private final Lines lines;
  private final Counter counter;
  private final Clock clock;
  private final Pace pace;
  private final Sender sender;
  private final SortedSet<Instant> daysToCount = new TreeSet<>();
  private final Map<Instant, Instant> inDoubtSince = new HashMap<>();
  private final Map<Instant, Instant> sentAgainAt = new HashMap<>();
  private final SortedMap<Instant, String> differing = new ConcurrentSkipListMap<>();
  private Instant next = Instant.MIN;
  private volatile Optional<String> mute = Optional.empty();

  Reckoning(
      MirrorSettings settings, Outbox outbox, String shop, Clock clock, Pace pace, Sender sender) {
    this.settings = settings;
    this.outbox = outbox;
    this.lines = new Lines(shop);
    this.counter = new Counter(settings, shop);
    this.clock = clock;
    this.pace = pace;
    this.sender = sender;
  }

  /** What a person should know of the counts. */
  Optional<String> trouble() {
    List<String> told = List.copyOf(differing.values());
    if (told.isEmpty()) {
      return mute;
    }
    int more = told.size() - 1;
    return Optional.of(
        told.get(0)
            + (more == 0 ? "" : ", and on %d more day%s".formatted(more, more == 1 ? "" : "s")));
  }

  /** Every day with readings is to be counted. */
  void wholeHistory() {
    daysToCount.addAll(outbox.daysMeasured());
  }

  /** Counts what is due. To be called when nothing waits to be sent. */
  void look() throws Mirror.Gone, InterruptedException {
    Instant now = clock.instant();
    if (settings.readBack() == ReadBack.NONE
        || !settings.what().contains(What.READINGS)
        || now.isBefore(next)) {
      return;
    }
    Instant today = now.truncatedTo(ChronoUnit.DAYS);
    daysToCount.add(today.minus(1, ChronoUnit.DAYS));
    daysToCount.add(today);
    try {
      for (Iterator<Instant> days = daysToCount.iterator(); days.hasNext(); ) {
        if (isSettled(days.next(), now)) {
          days.remove();
        }
      }
      mute = Optional.empty();
    } catch (Counter.CannotCount silent) {
      mute =
          Optional.of(
              "the server cannot be asked how many points it has (%s); mend or leave out mirrors.%s.read-back"
                  .formatted(silent.getMessage(), settings.name()));
      daysToCount.clear();
    } catch (IOException away) {
      // If it stays away, that shows where lines are sent.
      LOG.debug("mirror {}: the server was not there to be asked", settings.name(), away);
    }
    next =
        now.plus(
            daysToCount.isEmpty()
                ? pace.counting()
                : pace.settle().dividedBy(LOOKS_WHILE_IN_DOUBT));
  }

  /** Counts a day; false while it is too early to say. */
  private boolean isSettled(Instant day, Instant now)
      throws Counter.CannotCount, Mirror.Gone, IOException, InterruptedException {
    Instant end = day.plus(1, ChronoUnit.DAYS);
    Instant latest = now.minus(FRESH);
    Instant to = end.isBefore(latest) ? end : latest;
    long lacking = day.isBefore(to) ? expected(day, to) - counter.values(day, to) : 0;
    if (lacking == 0) {
      inDoubtSince.remove(day);
      sentAgainAt.remove(day);
      differing.remove(day);
      return true;
    }
    inDoubtSince.putIfAbsent(day, now);
    if (Duration.between(inDoubtSince.get(day), now).compareTo(pace.settle()) < 0) {
      return false;
    }
    if (lacking > 0 && maySendAgain(day, now)) {
      LOG.warn(
          "mirror {}: of {} the server lacks {} values; the day is sent again",
          settings.name(),
          date(day),
          lacking);
      sendAgain(day, to);
      sentAgainAt.put(day, now);
      inDoubtSince.put(day, now);
      return false;
    }
    inDoubtSince.remove(day);
    differing.put(day, lacking > 0 ? tooFew(day, lacking) : tooMany(day, -lacking));
    return true;
  }

  private boolean maySendAgain(Instant day, Instant now) {
    Duration between = pace.counting().multipliedBy(COUNTS_BETWEEN_SENDING_AGAIN);
    Instant last = sentAgainAt.get(day);
    return last == null || Duration.between(last, now).compareTo(between) > 0;
  }

  private static String tooFew(Instant day, long values) {
    return "on %s the server still lacks %d values after they were sent again; does it keep days that old?"
        .formatted(date(day), values);
  }

  private static String tooMany(Instant day, long values) {
    return "on %s the server counts %d values too many; does it drop doubles, or does another program write them?"
        .formatted(date(day), values);
  }

  private static String date(Instant day) {
    return day.toString().substring(0, 10);
  }

  private long expected(Instant from, Instant to) {
    long values = outbox.values(from, to);
    for (Parked parked : outbox.parked(settings.name(), Integer.MAX_VALUE)) {
      values -= parkedValues(parked.line(), from, to);
    }
    return values;
  }

  private static long parkedValues(String line, Instant from, Instant to) {
    String[] parts = line.split("(?<!\\\\) ", 3);
    long atMs = Long.parseLong(line.substring(line.lastIndexOf(' ') + 1));
    boolean counts =
        line.startsWith(Lines.READING + ",")
            && atMs >= from.toEpochMilli()
            && atMs < to.toEpochMilli();
    return counts
        ? List.of(Lines.TEMPERATURE, Lines.HUMIDITY, Lines.SURFACE).stream()
            .filter(name -> ("," + parts[1]).contains("," + name + "="))
            .count()
        : 0;
  }

  private void sendAgain(Instant from, Instant to) throws Mirror.Gone {
    List<OfReading> readings = outbox.measured(from, to);
    for (int begin = 0; begin < readings.size(); begin += settings.batch()) {
      int end = Math.min(readings.size(), begin + settings.batch());
      sender.deliver(
          readings.subList(begin, end).stream()
              .flatMap(reading -> lines.of(reading).stream())
              .toList());
    }
  }
}
