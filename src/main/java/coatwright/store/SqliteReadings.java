package coatwright.store;

import coatwright.climate.ClockStretch;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.ReadingLog;
import coatwright.climate.RollUp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.TimeUnit;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Readings in the file. They are handed to a thread of their own, which commits what has gathered
 * at most half a second after the first of it came. When the file cannot be written the thread
 * keeps what it holds and tries again; when more has gathered than it may hold, {@link #append}
 * says so.
 */
final class SqliteReadings implements ReadingLog, AutoCloseable {
  /** What waits to be written. */
  private sealed interface Item {
    /**
     * @param stretch of the clock in which it came; empty where nobody keeps stretches
     */
    record OfReading(Reading reading, Optional<ClockStretch> stretch) implements Item {}

    record Redate(CompletableFuture<Integer> redated) implements Item {}

    record OfRaw(RawText raw) implements Item {}

    record Done(CompletableFuture<Boolean> written) implements Item {}

    record Stop() implements Item {}
  }

  private static final int MOST_WAITING = 50_000;
  private static final int LARGEST_BATCH = 5_000;
  private static final Duration GATHER = Duration.ofMillis(500);
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final Database database;
  private final ReadingTables tables;
  private final UndatedTable undated;
  private final BlockingQueue<Item> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private final @Nullable Thread writer;
  private volatile @Nullable StoreTrouble trouble;
  private volatile Optional<ClockStretch> stretch = Optional.empty();

  private SqliteReadings(Database database, boolean writable, boolean outbox) {
    this.database = database;
    this.tables = new ReadingTables(outbox);
    this.undated = new UndatedTable(tables);
    this.writer = writable ? new Thread(this::writeUntilStopped, "readings-writer") : null;
  }

  /**
   * @param outbox whether there is a mirror that wants to be told the readings
   */
  static SqliteReadings toWrite(Database database, boolean outbox) {
    SqliteReadings readings = new SqliteReadings(database, true, outbox);
    if (readings.writer != null) {
      readings.writer.start();
    }
    return readings;
  }

  static SqliteReadings toRead(Database database) {
    return new SqliteReadings(database, false, false);
  }

  @Override
  public void append(Reading reading) {
    put(new Item.OfReading(reading, stretch));
  }

  @Override
  public void keep(RawText raw) {
    put(new Item.OfRaw(raw));
  }

  /** What is appended from now on belongs to that stretch of the clock. */
  void begin(ClockStretch begun) {
    stretch = Optional.of(begun);
  }

  /** The stretch that has begun; 0 before the first. */
  long stretch() {
    return stretch.map(ClockStretch::id).orElse(0L);
  }

  /** Dates the undated readings of this boot; in turn with the readings that wait. */
  int redate() {
    CompletableFuture<Integer> redated = new CompletableFuture<>();
    put(new Item.Redate(redated));
    try {
      return redated.join();
    } catch (CompletionException e) {
      throw StoreTrouble.of(database.file(), "dating readings", causeOf(e));
    }
  }

  private void put(Item item) {
    if (writer == null) {
      throw new StoreTrouble(
          database.file(), "the file was opened to read only", "open it to write", null);
    }
    try {
      Duration patience = trouble == null ? PATIENCE : Duration.ZERO;
      if (!waiting.offer(item, patience.toMillis(), TimeUnit.MILLISECONDS)) {
        StoreTrouble known = trouble;
        throw known != null
            ? known
            : new StoreTrouble(
                database.file(),
                "the disk is too slow for the readings that come",
                "check the disk",
                null);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreTrouble(
          database.file(), "a reading was interrupted on its way", "send it again", e);
    }
  }

  /** What keeps the file from being written, while it lasts. */
  Optional<StoreTrouble> trouble() {
    return Optional.ofNullable(trouble);
  }

  @Override
  public void flush() {
    if (writer == null) {
      return;
    }
    CompletableFuture<Boolean> written = new CompletableFuture<>();
    put(new Item.Done(written));
    try {
      written.join();
    } catch (CompletionException e) {
      throw StoreTrouble.of(database.file(), "writing readings", causeOf(e));
    }
  }

  private static Throwable causeOf(CompletionException e) {
    Throwable cause = e.getCause();
    return cause == null ? e : cause;
  }

  private void writeUntilStopped() {
    List<Item> batch = new ArrayList<>();
    boolean stopping = false;
    try {
      while (!stopping) {
        gather(batch);
        stopping = batch.stream().anyMatch(Item.Stop.class::isInstance);
        boolean written = tryToWrite(batch);
        if (!written && !stopping) {
          TimeUnit.SECONDS.sleep(1);
        }
      }
    } catch (InterruptedException e) {
      tryToWrite(batch);
    }
  }

  /** Adds what comes until half a second has passed, the batch is full, or someone waits for it. */
  private void gather(List<Item> batch) throws InterruptedException {
    if (batch.isEmpty()) {
      batch.add(waiting.take());
    }
    long until = System.nanoTime() + GATHER.toNanos();
    while (batch.size() < LARGEST_BATCH && !isAwaited(batch.get(batch.size() - 1))) {
      long left = until - System.nanoTime();
      Item next = left > 0 ? waiting.poll(left, TimeUnit.NANOSECONDS) : waiting.poll();
      if (next == null) {
        return;
      }
      batch.add(next);
    }
  }

  private static boolean isAwaited(Item item) {
    return item instanceof Item.Done || item instanceof Item.Stop || item instanceof Item.Redate;
  }

  /** Writes the batch and empties it; on trouble keeps the readings for the next try. */
  private boolean tryToWrite(List<Item> batch) {
    try {
      int redated = write(batch);
      trouble = null;
      batch.forEach(item -> done(item, redated, null));
      batch.clear();
      return true;
    } catch (StoreTrouble e) {
      trouble = e;
      batch.forEach(item -> done(item, 0, e));
      batch.removeIf(item -> item instanceof Item.Done || item instanceof Item.Redate);
      return false;
    }
  }

  private static void done(Item item, int redated, @Nullable StoreTrouble failure) {
    if (item instanceof Item.Redate asked) {
      if (failure == null) {
        asked.redated().complete(redated);
      } else {
        asked.redated().completeExceptionally(failure);
      }
    }
    if (item instanceof Item.Done waited) {
      if (failure == null) {
        waited.written().complete(true);
      } else {
        waited.written().completeExceptionally(failure);
      }
    }
  }

  /** Writes readings and texts; answers how many readings got a date. */
  private int write(List<Item> batch) {
    List<Item.OfReading> readings = new ArrayList<>();
    List<RawText> raws = new ArrayList<>();
    boolean redate = false;
    for (Item item : batch) {
      if (item instanceof Item.OfReading one) {
        readings.add(one);
      } else if (item instanceof Item.OfRaw one) {
        raws.add(one.raw());
      } else if (item instanceof Item.Redate) {
        redate = true;
      }
    }
    if (readings.isEmpty() && raws.isEmpty() && !redate) {
      return 0;
    }
    Optional<ClockStretch> dating = redate ? stretch : Optional.empty();
    try {
      return database.writeQuickly(
          "writing readings",
          handle -> {
            for (int from = 0; from < readings.size(); ) {
              int to = endOfStretch(readings, from);
              write(handle, readings.subList(from, to));
              from = to;
            }
            tables.keep(handle, raws);
            return dating.map(now -> undated.redate(handle, now)).orElse(0);
          });
    } catch (StoreTrouble e) {
      tables.forget();
      throw e;
    }
  }

  private static int endOfStretch(List<Item.OfReading> readings, int from) {
    int to = from + 1;
    while (to < readings.size()
        && readings.get(to).stretch().equals(readings.get(from).stretch())) {
      to++;
    }
    return to;
  }

  /** Readings of one stretch: with their dates, or aside until the date is known. */
  private void write(Handle handle, List<Item.OfReading> items) {
    Optional<ClockStretch> of = items.get(0).stretch();
    List<Reading> readings = items.stream().map(Item.OfReading::reading).toList();
    if (of.map(ClockStretch::trusted).orElse(true)) {
      tables.write(handle, readings, of.map(ClockStretch::id));
    } else {
      undated.write(handle, readings, of.orElseThrow().id());
    }
  }

  @Override
  public List<Reading> readings(String room, Instant from, Instant to) {
    return database.read(
        "reading readings", handle -> ReadingRows.ofRoom(handle, room, millis(from), millis(to)));
  }

  @Override
  public List<Reading> readingsOf(String source, Instant from, Instant to) {
    return database.read(
        "reading readings",
        handle -> ReadingRows.ofSource(handle, source, millis(from), millis(to)));
  }

  @Override
  public Optional<Instant> heardSince(String source) {
    return database.read(
        "reading readings",
        handle ->
            handle
                .createQuery(
                    "select (select min(at_ms) from reading where sensor = sensor.id) as first"
                        + " from sensor where source = ?")
                .bind(0, source)
                .map((row, context) -> row.getLong("first"))
                .stream()
                .filter(first -> first != 0)
                .min(Long::compare)
                .map(Instant::ofEpochMilli));
  }

  @Override
  public List<RollUp> rollUps(String room, Instant from, Instant to, Duration every) {
    if (every.toMillis() < 1000) {
      throw new IllegalArgumentException("roll-ups are of a second or longer, not of " + every);
    }
    boolean kept = RollUpTable.isKept(every);
    return kept
        ? database.read(
            "reading roll-ups",
            handle -> RollUpTable.rollUps(handle, room, millis(from), millis(to), every))
        : RollUp.of(readings(room, from, to), every);
  }

  @Override
  public List<RawText> raw(String source, int atMost) {
    return database.read("reading payloads", handle -> ReadingTables.raw(handle, source, atMost));
  }

  static long millis(Instant instant) {
    try {
      return instant.toEpochMilli();
    } catch (ArithmeticException e) {
      return instant.getEpochSecond() < 0 ? Long.MIN_VALUE : Long.MAX_VALUE;
    }
  }

  /** Writes what waits and ends the thread. */
  @Override
  public void close() {
    if (writer == null) {
      return;
    }
    try {
      waiting.put(new Item.Stop());
      writer.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
