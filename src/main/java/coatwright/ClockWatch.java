package coatwright;

import coatwright.climate.ClockStretch;
import coatwright.climate.Happening;
import coatwright.climate.HouseLog;
import coatwright.climate.HouseLog.Beat;
import coatwright.store.StoreTrouble;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Watches the machine's clock beside its steady clock, and leaves a sign of life every hour.
 *
 * <p>A clock is not to be trusted when it stands before this program was made, before the newest
 * thing the house has on record, or when the system says that network time has not set it yet,
 * unless a person has said that they set it. Meanwhile readings are collected and shown; their
 * dates follow once it can be trusted.
 */
final class ClockWatch implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(ClockWatch.class);

  /** Before this the program was not made. */
  static final Instant MADE = Instant.parse("2026-01-01T00:00:00Z");

  /** From here on a difference is told to a person. */
  private static final Duration WORTH_TELLING = Duration.ofSeconds(60);

  /** From here on a new stretch begins: within one, times must rise as readings come. */
  private static final Duration IN_STEP = Duration.ofSeconds(1);

  private static final Duration SLACK = Duration.ofMinutes(2);
  private static final Duration ASK_EVERY = Duration.ofSeconds(30);
  private static final Duration HOUR = Duration.ofHours(1);
  private static final long LOOK_MS = 1_000;
  private static final long TO_STOP_S = 5;
  private static final DateTimeFormatter SHOWN =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);

  private final MachineClock clock;
  private final HouseLog log;
  private final ZoneId zone;
  private final boolean setByHand;
  private final Consumer<ClockStretch> changed;
  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "clock"));
  private Instant newestOnRecord = Instant.MIN;
  private Duration askedAt = Duration.ZERO;
  private Duration beatAt = Duration.ZERO;
  private Duration sleptBefore = Duration.ZERO;
  private boolean running;
  private volatile @Nullable ClockStretch stretch;
  private volatile @Nullable String doubt;

  /**
   * @param setByHand a person has said that the clock is right though no network sets it
   * @param changed hears of every stretch that begins after the first, once it is written down
   */
  ClockWatch(
      MachineClock clock,
      HouseLog log,
      ZoneId zone,
      boolean setByHand,
      Consumer<ClockStretch> changed) {
    this.clock = clock;
    this.log = log;
    this.zone = zone;
    this.setByHand = setByHand;
    this.changed = changed;
  }

  /**
   * Judges the clock before anything else is started, and tells how long the house was away. A disk
   * that is full does not keep the house from starting; it is tried again.
   */
  synchronized void begin() {
    try {
      beginOnRecord();
    } catch (StoreTrouble cannotWrite) {
      LOG.warn("the clock's watch could not write: {}", cannotWrite.getMessage());
    }
  }

  private void beginOnRecord() {
    Optional<HouseLog.Sign> last = log.lastSign();
    newestOnRecord =
        later(
            last.map(HouseLog.Sign::at).orElse(Instant.MIN),
            log.newestReading().orElse(Instant.MIN));
    NetworkTime.Sync sync = clock.network().get();
    askedAt = clock.steady().get();
    sleptBefore = slept();
    beginStretch(sync);
    beat(Beat.START);
    tellAway(last);
    String why = doubt;
    if (why != null) {
      happened("clock", why);
    }
  }

  /** From here on it looks every second. */
  void start() {
    running = true;
    Future<?> unused =
        thread.scheduleWithFixedDelay(this::lookAndGoOn, LOOK_MS, LOOK_MS, TimeUnit.MILLISECONDS);
  }

  /** Whether dates by the machine's clock are to be believed. */
  boolean trusted() {
    return doubt == null;
  }

  /** Why the clock is not to be trusted, and what to do. */
  Optional<String> trouble() {
    return Optional.ofNullable(doubt);
  }

  private void lookAndGoOn() {
    try {
      look();
    } catch (StoreTrouble cannotWrite) {
      LOG.warn("the clock's watch could not write: {}", cannotWrite.getMessage());
    } catch (RuntimeException trouble) {
      LOG.error("looking at the clock failed; trying again", trouble);
    }
  }

  /** Before a reading is taken: a clock that has just been set must not date it by the old one. */
  void beforeReading() {
    ClockStretch before = stretch;
    if (before != null && by(before, clock.steady().get()).abs().compareTo(IN_STEP) > 0) {
      lookAndGoOn();
    }
  }

  private Duration by(ClockStretch before, Duration steady) {
    return Duration.between(Instant.EPOCH, clock.now()).minus(steady).minus(before.ahead());
  }

  /** One look at both clocks. */
  synchronized void look() {
    ClockStretch before = stretch;
    if (before == null) {
      beginOnRecord();
      return;
    }
    Duration steady = clock.steady().get();
    Duration by = by(before, steady);
    boolean moved = by.abs().compareTo(IN_STEP) > 0;
    boolean asks = !before.trusted() && steady.minus(askedAt).compareTo(ASK_EVERY) >= 0;
    if (moved || asks) {
      askedAt = steady;
      NetworkTime.Sync sync = clock.network().get();
      boolean trustworthy = reason(sync).isEmpty();
      if (moved || trustworthy) {
        moved(by, before, sync);
      }
    }
    if (steady.minus(beatAt).compareTo(HOUR) >= 0) {
      beat(Beat.HOUR);
    }
  }

  private void moved(Duration by, ClockStretch before, NetworkTime.Sync sync) {
    ClockStretch now = beginStretch(sync);
    if (by.abs().compareTo(WORTH_TELLING) > 0) {
      tellMoved(by);
    }
    if (!before.trusted() && now.trusted()) {
      int dated = log.redate();
      happened(
          "clock",
          "the machine's clock can be trusted again; %d readings that had no date %s"
              .formatted(
                  dated,
                  by.abs().compareTo(IN_STEP) > 0
                      ? "were put " + shifted(by)
                      : "have it as the clock stood"));
    } else if (before.trusted() && !now.trusted()) {
      happened("clock", String.valueOf(doubt));
    }
    changed.accept(now);
  }

  private void tellMoved(Duration by) {
    Duration slept = slept();
    Duration asleep = slept.minus(sleptBefore);
    sleptBefore = slept;
    if (asleep.minus(by).abs().compareTo(WORTH_TELLING) <= 0) {
      happened(
          "slept", "the machine slept for %s; nothing was heard meanwhile".formatted(words(by)));
      return;
    }
    happened(
        "clock",
        "the machine's clock was put %s, from %s to %s"
            .formatted(shifted(by), shown(clock.now().minus(by)), shown(clock.now())));
  }

  /** How long the machine has slept since it was started. */
  private Duration slept() {
    return clock.sinceBoot().get().minus(clock.steady().get());
  }

  private ClockStretch beginStretch(NetworkTime.Sync sync) {
    Optional<String> why = reason(sync);
    doubt = why.orElse(null);
    ClockStretch begun =
        log.begin(
            new ClockStretch(0, clock.boot(), clock.now(), clock.steady().get(), why.isEmpty()));
    stretch = begun;
    why.ifPresent(LOG::warn);
    return begun;
  }

  /** Why the clock as it stands is not to be trusted; empty when it is. */
  private Optional<String> reason(NetworkTime.Sync sync) {
    Instant now = clock.now();
    String advice =
        "; set it, or wait until the network does; until then give coats their full date";
    if (now.isBefore(MADE)) {
      return Optional.of(
          "the machine's clock is not to be trusted: it says %s, before this program was made%s"
              .formatted(shown(now), advice));
    }
    if (setByHand || sync == NetworkTime.Sync.YES) {
      return Optional.empty();
    }
    if (now.isBefore(newestOnRecord.minus(slack(newestOnRecord)))) {
      return Optional.of(
          "the machine's clock is not to be trusted: it says %s, and the newest on record is of %s%s"
              .formatted(shown(now), shown(newestOnRecord), advice));
    }
    if (sync == NetworkTime.Sync.NO) {
      return Optional.of(
          "the machine's clock is not to be trusted: it says %s, and no network time has set it%s; if you set it yourself, write clock: by-hand under shop"
              .formatted(shown(now), advice));
    }
    return Optional.empty();
  }

  private static Duration slack(Instant of) {
    return of.equals(Instant.MIN) ? Duration.ZERO : SLACK;
  }

  private void tellAway(Optional<HouseLog.Sign> last) {
    if (last.isEmpty() || !trusted()) {
      return;
    }
    Instant from = newestOnRecord;
    Duration away = Duration.between(from, clock.now());
    if (away.compareTo(WORTH_TELLING) > 0) {
      happened(
          "away",
          "Coatwright did not run from %s to %s (%s): %s; nothing was heard meanwhile"
              .formatted(
                  shown(from),
                  shown(clock.now()),
                  words(away),
                  last.get().kind() == Beat.STOP ? "it was stopped" : "it ended without a word"));
    }
  }

  private void happened(String kind, String says) {
    LOG.warn("{}", says);
    log.happened(new Happening(clock.now(), kind, says));
  }

  private void beat(Beat kind) {
    log.beat(clock.now(), kind);
    beatAt = clock.steady().get();
  }

  private String shown(Instant at) {
    return SHOWN.format(at.atZone(zone));
  }

  private static String shifted(Duration by) {
    return (by.isNegative() ? "back by " : "forward by ") + words(by.abs());
  }

  private static String words(Duration span) {
    Duration size = span.abs().plusMillis(500);
    if (size.toDays() >= 2) {
      return size.toDays() + " days " + size.toHoursPart() + " h";
    }
    if (size.toHours() >= 1) {
      return size.toHours() + " h " + size.toMinutesPart() + " min";
    }
    return size.toMinutes() >= 1
        ? size.toMinutes() + " min " + size.toSecondsPart() + " s"
        : size.toSeconds() + " s";
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  @Override
  public void close() {
    thread.shutdown();
    try {
      if (!thread.awaitTermination(TO_STOP_S, TimeUnit.SECONDS)) {
        thread.shutdownNow();
      }
    } catch (InterruptedException stopped) {
      thread.shutdownNow();
      Thread.currentThread().interrupt();
    }
    if (running) {
      try {
        beat(Beat.STOP);
      } catch (StoreTrouble cannotWrite) {
        LOG.warn("no last sign of life: {}", cannotWrite.getMessage());
      }
    }
  }
}
