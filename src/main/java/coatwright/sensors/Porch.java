package coatwright.sensors;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.LongSupplier;

/**
 * Where messages without a time of their own wait a moment after a connect, until it is seen
 * whether more of them stand behind. A single one is live; several at once were kept somewhere on
 * the way, a bridge or a gateway, and only their order is known. Safe for several threads.
 */
final class Porch {
  private static final Duration OPEN = Duration.ofSeconds(3);
  private static final long LOOK_MS = 300;
  private static final Duration TOGETHER = Duration.ofMillis(200);

  /** Who waits, by what topic. */
  private record Place(Source source, String topic) {}

  private final ScheduledExecutorService turns;
  private final LongSupplier nanos;
  private final BiConsumer<Source, RawReading> deliver;
  private final Map<Place, List<RawReading>> waiting = new HashMap<>();
  private final Map<Place, Long> crowdEndedNanos = new HashMap<>();
  private boolean open;
  private boolean entered;
  private long closesNanos;

  /**
   * @param deliver takes each message in, in order
   */
  Porch(
      ScheduledExecutorService turns, LongSupplier nanos, BiConsumer<Source, RawReading> deliver) {
    this.turns = turns;
    this.nanos = nanos;
    this.deliver = deliver;
  }

  /** A connect begins. */
  synchronized void open() {
    open = true;
    entered = false;
    crowdEndedNanos.clear();
  }

  /** Lets the message wait; false when the porch is closed and it may go straight in. */
  synchronized boolean waits(Source source, RawReading raw) {
    long now = nanos.getAsLong();
    Place place = new Place(source, raw.channel());
    if (open && !entered) {
      entered = true;
      closesNanos = now + OPEN.toNanos();
    }
    if (open && now - closesNanos > 0) {
      open = false;
    }
    List<RawReading> ahead = waiting.get(place);
    if (ahead != null) {
      ahead.add(raw);
      return true;
    }
    if (!open) {
      return false;
    }
    waiting.put(place, new ArrayList<>(List.of(raw)));
    try {
      Future<?> unused = turns.schedule(() -> letIn(place), LOOK_MS, TimeUnit.MILLISECONDS);
    } catch (RejectedExecutionException closing) {
      waiting.remove(place);
      return false;
    }
    return true;
  }

  private synchronized void letIn(Place place) {
    List<RawReading> here = waiting.remove(place);
    if (here == null) {
      return;
    }
    long now = nanos.getAsLong();
    Long ended = crowdEndedNanos.get(place);
    boolean behindACrowd =
        ended != null && now - Duration.ofMillis(LOOK_MS).toNanos() - ended < TOGETHER.toNanos();
    boolean crowd = here.size() >= Deliveries.BURST || behindACrowd;
    if (crowd) {
      crowdEndedNanos.put(place, now);
    }
    for (RawReading raw : here) {
      deliver.accept(place.source(), crowd ? raw.fromBacklog() : raw);
    }
  }
}
