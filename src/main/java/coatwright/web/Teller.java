package coatwright.web;

import coatwright.climate.Doubt;
import coatwright.climate.Reading;
import coatwright.journal.Entry;
import coatwright.outlook.Due;
import coatwright.watch.Warning;
import coatwright.web.Answers.DoubtView;
import coatwright.web.Answers.EntryView;
import coatwright.web.Answers.RoomView;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hears what happens in the rooms and tells the open pages. Whoever speaks is not held up: the work
 * is done on this room's own thread. Of readings that come faster than a screen can show, the
 * newest of each sensor is told; the air for a room's coat is reckoned at most every 2 s.
 */
final class Teller implements AutoCloseable {
  private static final long READINGS_APART_NS = Duration.ofMillis(100).toNanos();
  private static final long OUTLOOKS_APART_NS = Duration.ofSeconds(2).toNanos();
  private static final Logger LOG = LoggerFactory.getLogger(Teller.class);

  private final WebRooms rooms;
  private final Board board;
  private final Events events;
  private final ShopJson json;
  private final ScheduledExecutorService worker =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread thread = new Thread(task, "web-teller");
            thread.setDaemon(true);
            return thread;
          });

  private final Object lock = new Object();
  private final Map<String, Heard> untold = new LinkedHashMap<>();
  private boolean readingsDue;
  private long readingsToldNs = System.nanoTime() - READINGS_APART_NS;
  private final Set<String> outlooksDue = ConcurrentHashMap.newKeySet();
  private final Map<String, Long> outlooksToldNs = new ConcurrentHashMap<>();

  /** A reading, or one still in doubt. */
  private record Heard(Reading reading, Optional<Doubt> doubt) {}

  /**
   * A reading as the page takes it: as measured, and the room's air with it taken in.
   *
   * @param doubt in place of the values, when it jumped and waits for the next to agree
   */
  record ReadingEvent(
      String source,
      String sensor,
      String role,
      Optional<String> room,
      Optional<String> part,
      java.time.Instant at,
      OptionalDouble temperatureC,
      OptionalDouble rhPct,
      OptionalDouble surfaceTemperatureC,
      Optional<DoubtView> doubt,
      Optional<RoomView> air) {}

  Teller(WebRooms rooms, Board board, Events events, ShopJson json) {
    this.rooms = rooms;
    this.board = board;
    this.events = events;
    this.json = json;
  }

  /** Begins to listen. */
  void listen() {
    rooms.climate().onReading(reading -> heard(new Heard(reading, Optional.empty())));
    rooms.climate().onDoubt(doubt -> heard(new Heard(doubt.reading(), Optional.of(doubt))));
    rooms.journal().onEntry(this::heard);
    rooms.outlooks().onDue(this::heard);
  }

  private void heard(Heard heard) {
    if (events.listening() == 0) {
      return;
    }
    synchronized (lock) {
      untold.put(heard.reading().source() + "\n" + heard.reading().sensor(), heard);
      if (readingsDue) {
        return;
      }
      readingsDue = true;
      later(this::tellReadings, READINGS_APART_NS - (System.nanoTime() - readingsToldNs));
    }
  }

  private void heard(Entry entry) {
    board.forget();
    tellLater("entry", EntryView.of(entry));
    rooms.climate().rooms().forEach(this::outlookSoon);
  }

  private void heard(List<Due> due) {
    tellLater("milestone", Map.of("due", List.copyOf(due)));
  }

  /** A warning began, or ended. */
  void tell(Warning warning) {
    tellLater("warning", warning);
  }

  private void tellLater(String event, Object data) {
    later(() -> events.send(event, json.line(data)), 0);
  }

  private void tellReadings() {
    List<Heard> now;
    synchronized (lock) {
      now = new ArrayList<>(untold.values());
      untold.clear();
      readingsDue = false;
      readingsToldNs = System.nanoTime();
    }
    for (Heard heard : now) {
      events.send("reading", json.line(eventOf(heard)));
      heard.reading().room().ifPresent(this::outlookSoon);
    }
  }

  private ReadingEvent eventOf(Heard heard) {
    Reading reading = heard.reading();
    boolean believed = heard.doubt().isEmpty();
    return new ReadingEvent(
        reading.source(),
        reading.sensor(),
        reading.role().toString(),
        reading.room(),
        reading.part(),
        reading.at(),
        believed ? reading.temperatureC() : OptionalDouble.empty(),
        believed ? reading.rhPct() : OptionalDouble.empty(),
        believed ? reading.surfaceTemperatureC() : OptionalDouble.empty(),
        heard.doubt().map(DoubtView::of),
        reading.room().map(board::room));
  }

  private void outlookSoon(String room) {
    if (events.listening() > 0 && outlooksDue.add(room)) {
      long toldNs = outlooksToldNs.getOrDefault(room, System.nanoTime() - OUTLOOKS_APART_NS);
      later(() -> tellOutlook(room), OUTLOOKS_APART_NS - (System.nanoTime() - toldNs));
    }
  }

  private void tellOutlook(String room) {
    outlooksDue.remove(room);
    outlooksToldNs.put(room, System.nanoTime());
    events.send("outlook", json.line(board.sessionAnew(room)));
  }

  /** What fails must not end this room's thread: it is logged whole, and the next is told. */
  private static void whole(Runnable work) {
    try {
      work.run();
    } catch (RuntimeException failed) {
      LOG.error("an event could not be told to the pages", failed);
    }
  }

  private void later(Runnable work, long delayNs) {
    try {
      Future<?> unused =
          worker.schedule(() -> whole(work), Math.max(0, delayNs), TimeUnit.NANOSECONDS);
    } catch (RejectedExecutionException stopping) {
      LOG.debug("not told: the door is closing");
    }
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
