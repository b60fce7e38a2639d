package coatwright.store.influx;

import coatwright.store.Outbox;
import coatwright.store.Outbox.Batch;
import coatwright.store.Outbox.Parked;
import coatwright.store.Outbox.Standing;
import coatwright.store.Outbox.Stream;
import coatwright.store.StoreTrouble;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One mirror. Its thread sends what is new first and a batch of the history in between; it moves
 * its place in a stream only when the server has said that it has the batch, so that whatever ends
 * it in between, a batch is sent twice rather than never.
 */
final class Mirror implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Mirror.class);
  private static final Duration PARKED_KEPT = Duration.ofDays(30);
  private static final Duration REMEMBER_EVERY = Duration.ofMinutes(1);
  private static final int MOST_PARKED = 10_000;
  private static final int LOOKS_TO_BE_LATE = 10;

  private final MirrorSettings settings;
  private final Outbox outbox;
  private final Lines lines;
  private final Server server;
  private final Clock clock;
  private final Pace pace;
  private final Backoff backoff;
  private final Reckoning reckoning;
  private final Thread thread;
  private final CountDownLatch stop = new CountDownLatch(1);
  private final Instant started;

  private boolean historyLeft;
  private boolean parkedTriedAgain;
  private Instant remembered;
  private boolean alarmTold;

  private volatile Instant caughtUp;
  private volatile @Nullable Instant lastSuccess;
  private volatile @Nullable String trouble;
  private volatile @Nullable String lastRefusal;

  Mirror(MirrorSettings settings, Outbox outbox, String shop, Clock clock, Pace pace) {
    this.settings = settings;
    this.outbox = outbox;
    this.lines = new Lines(shop);
    this.server = new Server(settings);
    this.clock = clock;
    this.pace = pace;
    this.backoff = new Backoff(pace.firstRetry(), pace.longestRetry(), ThreadLocalRandom.current());
    this.started = clock.instant();
    Standing standing = outbox.standing(settings.name());
    this.historyLeft = standing.historyLeft();
    this.caughtUp = standing.caughtUp();
    this.remembered = caughtUp;
    this.lastRefusal =
        outbox.parked(settings.name(), 1).stream().findFirst().map(Parked::reason).orElse(null);
    this.reckoning = new Reckoning(settings, outbox, shop, clock, pace, this::deliver);
    this.thread = new Thread(this::run, "mirror-" + settings.name());
  }

  void start() {
    thread.start();
  }

  MirrorStatus status() {
    Standing standing = outbox.standing(settings.name());
    Optional<String> keeps = Optional.ofNullable(trouble);
    boolean behind = standing.waiting() > 0 || (standing.historyLeft() && keeps.isPresent());
    boolean late =
        behind
            && (keeps.isPresent() || isBefore(caughtUp, pace.look().multipliedBy(LOOKS_TO_BE_LATE)));
    // After days switched off it is behind for the seconds it takes to catch up; that is no alarm.
    boolean triedLong = keeps.isPresent() || isBefore(started, settings.alarmAfter());
    boolean tooLong = behind && triedLong && isBefore(caughtUp, settings.alarmAfter());
    return new MirrorStatus(
        settings.name(),
        standing,
        Optional.ofNullable(lastSuccess),
        late ? Optional.of(caughtUp) : Optional.empty(),
        keeps,
        Optional.ofNullable(lastRefusal),
        reckoning.trouble(),
        tooLong || standing.parked() > 0 || reckoning.trouble().isPresent());
  }

  private boolean isBefore(Instant then, Duration by) {
    return Duration.between(then, clock.instant()).compareTo(by) > 0;
  }

  private void run() {
    LOG.info("mirror {} at {}: {}", settings.name(), settings.url(), settings.what());
    try {
      boolean stopping = false;
      while (!stopping) {
        stopping = pause(round());
      }
    } catch (InterruptedException stopped) {
      LOG.debug("mirror {} stopped", settings.name(), stopped);
    } finally {
      server.close();
    }
  }

  private boolean pause(Duration pause) throws InterruptedException {
    return stop.await(pause.toMillis(), TimeUnit.MILLISECONDS);
  }

  /** Sends one batch of every stream. Returns the pause before the next round. */
  private Duration round() throws InterruptedException {
    try {
      boolean more = false;
      for (Stream stream : List.of(Stream.READINGS, Stream.COATS, Stream.OUTLOOKS)) {
        more |= send(stream);
      }
      if (!more) {
        upToDate();
      }
      more |= sendHistory();
      well();
      if (!more) {
        tryParkedAgain();
        reckoning.look();
      }
      return more ? Duration.ZERO : pace.look();
    } catch (Gone gone) {
      return hindered(gone.why.reason(), gone.why.asksFor());
    } catch (StoreTrouble full) {
      return hindered(String.valueOf(full.getMessage()), Optional.empty());
    } catch (RuntimeException unforeseen) {
      // A mirror that stops for good would fall behind for ever; it tries again, and says so.
      LOG.error("mirror {} met what it does not know", settings.name(), unforeseen);
      return hindered("an error of the program, " + unforeseen + "; see the log", Optional.empty());
    }
  }

  private boolean send(Stream stream) throws Gone {
    Batch batch = outbox.next(settings.name(), stream, settings.batch());
    if (batch.rows() == 0) {
      return false;
    }
    Delivery delivery =
        deliver(batch.things().stream().flatMap(thing -> lines.of(thing).stream()).toList());
    outbox.advance(
        settings.name(),
        stream,
        batch,
        delivery.stored(),
        delivery.tooOld(),
        delivery.refused(),
        clock.instant());
    return batch.rows() == settings.batch();
  }

  private boolean sendHistory() throws Gone {
    if (!historyLeft) {
      return false;
    }
    if (send(Stream.HISTORY)) {
      return true;
    }
    outbox.endHistory(settings.name());
    historyLeft = false;
    Standing standing = outbox.standing(settings.name());
    LOG.info(
        "mirror {}: the history is there, {} readings", settings.name(), standing.historySent());
    reckoning.wholeHistory();
    return false;
  }

  /** Delivers lines, or throws when the server does not take them now. */
  private Delivery deliver(List<String> some) throws Gone {
    Delivery delivery = Delivery.of(some, server::send);
    if (delivery.away().isPresent()) {
      throw new Gone(delivery.away().get());
    }
    if (!some.isEmpty()) {
      lastSuccess = clock.instant();
    }
    if (!delivery.refused().isEmpty()) {
      String reason = delivery.refused().get(0).reason();
      long parked = outbox.standing(settings.name()).parked() + delivery.refused().size();
      if (parked > MOST_PARKED) {
        throw new Gone(
            new Answer.Away(
                "the server refuses more than %d points: %s; mend it there"
                    .formatted(MOST_PARKED, reason),
                Optional.empty()));
      }
      lastRefusal = reason;
      LOG.warn(
          "mirror {}: {} points refused and parked: {}",
          settings.name(),
          delivery.refused().size(),
          reason);
    }
    return delivery;
  }

  /** Once in a run: what a server refused before, it may take by now. */
  private void tryParkedAgain() throws Gone {
    if (parkedTriedAgain) {
      return;
    }
    outbox.unparkBefore(settings.name(), clock.instant().minus(PARKED_KEPT));
    List<Parked> parked = outbox.parked(settings.name(), MOST_PARKED);
    for (int begin = 0; begin < parked.size(); begin += settings.batch()) {
      tryAgain(parked.subList(begin, Math.min(parked.size(), begin + settings.batch())));
    }
    parkedTriedAgain = true;
  }

  private void tryAgain(List<Parked> parked) throws Gone {
    Delivery delivery = Delivery.of(parked.stream().map(Parked::line).toList(), server::send);
    if (delivery.away().isPresent()) {
      throw new Gone(delivery.away().get());
    }
    Set<String> still = delivery.refused().stream().map(Parked::line).collect(Collectors.toSet());
    List<Parked> taken = parked.stream().filter(one -> !still.contains(one.line())).toList();
    outbox.unpark(settings.name(), taken);
    if (!taken.isEmpty()) {
      LOG.info("mirror {}: {} parked points were taken now", settings.name(), taken.size());
    }
  }

  private void upToDate() {
    Instant now = clock.instant();
    caughtUp = now;
    if (isBefore(remembered, REMEMBER_EVERY)) {
      outbox.caughtUp(settings.name(), now);
      remembered = now;
    }
  }

  private void well() {
    backoff.succeeded();
    alarmTold = false;
    if (trouble != null) {
      trouble = null;
      LOG.info("mirror {} goes on", settings.name());
    }
  }

  private Duration hindered(String why, Optional<Duration> wait) {
    if (stop.getCount() == 0) {
      // Broken off, not hindered.
      return Duration.ZERO;
    }
    if (!why.equals(trouble)) {
      LOG.warn("mirror {} waits: {}", settings.name(), why);
    }
    trouble = why;
    try {
      boundOutbox();
      tellAlarm();
    } catch (StoreTrouble full) {
      LOG.debug("mirror {}: the data file is in trouble, too", settings.name(), full);
    }
    return backoff.afterFailure(wait);
  }

  private void tellAlarm() {
    MirrorStatus status = status();
    if (status.alarm() && !alarmTold) {
      alarmTold = true;
      LOG.warn("mirror {}: {}", settings.name(), status.sentence());
    }
  }

  private void boundOutbox() {
    if (outbox.bound(settings.name(), pace.mostWaiting())) {
      historyLeft = true;
      LOG.warn(
          "mirror {}: more than {} readings wait; it will go through the history instead",
          settings.name(),
          pace.mostWaiting());
    }
  }

  void stopSoon() {
    stop.countDown();
    thread.interrupt();
    server.breakOff();
  }

  @Override
  public void close() {
    stopSoon();
    try {
      thread.join();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  /** The server does not take anything now. */
  static final class Gone extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Answer.Away why;

    Gone(Answer.Away why) {
      super(why.reason());
      this.why = why;
    }
  }
}
