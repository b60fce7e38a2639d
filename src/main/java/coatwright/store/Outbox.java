package coatwright.store;

import coatwright.store.Outgoing.OfEntry;
import coatwright.store.Outgoing.OfPrediction;
import coatwright.store.Outgoing.OfReading;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/**
 * What mirrors take from the file, in the order it was committed, and how far each of them has
 * come.
 *
 * <p>Entries and predictions are only ever added and carry the number of their commit, so a mirror
 * needs no more than the last number it has sent. Readings lie by sensor and time, where a late one
 * slips in among older ones; so the transaction that writes a reading also writes its key to the
 * table {@code outbox}, if there is a mirror for readings. Keys are dropped when every mirror has
 * passed them.
 *
 * <p>Safe for many threads; one thread a mirror.
 */
public final class Outbox {
  /** What a mirror can be given. */
  public enum Stream {
    /** Readings as they come. */
    READINGS,
    /** Readings from before the mirror was set up, sensor by sensor. */
    HISTORY,
    /** Coats, what was seen on them, and what was struck of both. */
    COATS,
    /** Dates that moved. */
    OUTLOOKS
  }

  /**
   * A mirror as it is set up.
   *
   * @param target where it lies; under another target it begins anew
   * @param streams what it takes; {@link Stream#HISTORY} gives it what was there before, too
   */
  public record Wish(String mirror, String target, Set<Stream> streams) {
    public Wish {
      streams = Set.copyOf(streams);
    }
  }

  /**
   * A place in a stream.
   *
   * @param number of the commit; in the history, the sensor
   */
  record Place(long number, long atMs, long nth) {
    static final Place START = new Place(0, Long.MIN_VALUE, 0);
  }

  /**
   * Things to send next.
   *
   * @param rows how many rows they come from: some rows give nothing to send
   * @param after the place to go on from once they are there
   */
  public record Batch(List<Outgoing> things, int rows, Place after) {}

  /** A point a server refused for good. */
  public record Parked(long number, String line, String reason) {}

  /**
   * How a mirror stands.
   *
   * @param sent points taken by the server since it was set up
   * @param tooOld points the server did not want because they are too old for it
   * @param waiting readings, entries and predictions that are still to be sent, without the history
   * @param parked points refused for good
   * @param historyLeft whether some of the history is still to be sent
   * @param historySent readings of the history that are there
   * @param historyTotal how many there were, about
   * @param caughtUp when nothing was left to send, last; when it was set up, before that
   */
  public record Standing(
      long sent,
      long tooOld,
      long waiting,
      long parked,
      boolean historyLeft,
      long historySent,
      long historyTotal,
      Instant caughtUp) {}

  private final Database database;

  Outbox(Database database) {
    this.database = database;
  }

  /**
   * Takes up the mirrors as they are set up now. One that is not among them is forgotten: should it
   * come back, it cannot know what it missed and begins anew.
   */
  static void setUp(Database database, Collection<Wish> wishes, Clock clock) {
    database.writeDurably(
        "setting up mirrors",
        handle -> {
          List<String> known = handle.select("select name from mirror").mapTo(String.class).list();
          Set<String> gone = new HashSet<>(known);
          wishes.forEach(wish -> gone.remove(wish.mirror()));
          gone.forEach(name -> forget(handle, name));
          wishes.forEach(wish -> setUp(handle, wish, clock));
          prune(handle);
          return true;
        });
  }

  private static void forget(Handle handle, String name) {
    handle.execute("delete from mirror where name = ?", name);
    handle.execute("delete from mirror_place where mirror = ?", name);
    handle.execute("delete from parked where mirror = ?", name);
  }

  private static void setUp(Handle handle, Wish wish, Clock clock) {
    boolean moved =
        handle
            .select("select target from mirror where name = ?", wish.mirror())
            .mapTo(String.class)
            .findOne()
            .filter(target -> !target.equals(wish.target()))
            .isPresent();
    if (moved) {
      forget(handle, wish.mirror());
    }
    handle.execute(
        "insert or ignore into mirror (name, target, caught_up_ms) values (?, ?, ?)",
        wish.mirror(),
        wish.target(),
        clock.millis());
    boolean history = wish.streams().contains(Stream.HISTORY);
    for (Stream stream : List.of(Stream.READINGS, Stream.COATS, Stream.OUTLOOKS)) {
      if (!wish.streams().contains(stream)) {
        leave(handle, wish.mirror(), stream);
      } else if (place(handle, wish.mirror(), stream).isEmpty()) {
        boolean all = history && stream != Stream.READINGS;
        put(
            handle,
            wish.mirror(),
            stream,
            all ? Place.START : new Place(last(handle, stream), 0, 0));
        if (history && stream == Stream.READINGS && anyReading(handle)) {
          beginHistory(handle, wish.mirror());
        }
      }
    }
    if (!history || !wish.streams().contains(Stream.READINGS)) {
      leave(handle, wish.mirror(), Stream.HISTORY);
    }
  }

  private static boolean anyReading(Handle handle) {
    return handle.select("select 1 from reading limit 1").mapTo(Long.class).findOne().isPresent();
  }

  private static void beginHistory(Handle handle, String mirror) {
    put(handle, mirror, Stream.HISTORY, Place.START);
    // Hourly roll-ups count quicker than rows; a reading that lacks one quantity has another.
    handle.execute(
        "update mirror set history_sent = 0, history_total = (select coalesce(sum(max("
            + "coalesce(temp_count, 0), coalesce(rh_count, 0), coalesce(surface_count, 0))), 0)"
            + " from roll_up where every_s = 3600) where name = ?",
        mirror);
  }

  private static void leave(Handle handle, String mirror, Stream stream) {
    handle.execute(
        "delete from mirror_place where mirror = ? and stream = ?", mirror, stream.name());
  }

  private static void put(Handle handle, String mirror, Stream stream, Place place) {
    handle.execute(
        "insert or replace into mirror_place (mirror, stream, number, at_ms, nth)"
            + " values (?, ?, ?, ?, ?)",
        mirror,
        stream.name(),
        place.number(),
        place.atMs(),
        place.nth());
  }

  private static Optional<Place> place(Handle handle, String mirror, Stream stream) {
    return handle
        .select(
            "select number, at_ms, nth from mirror_place where mirror = ? and stream = ?",
            mirror,
            stream.name())
        .map((row, context) -> new Place(row.getLong(1), row.getLong(2), row.getLong(3)))
        .findOne();
  }

  /** The number of the last commit of a stream. */
  private static long last(Handle handle, Stream stream) {
    String sql =
        switch (stream) {
          case READINGS ->
              "select coalesce((select seq from sqlite_sequence where name = 'outbox'), 0)";
          case COATS -> "select coalesce(max(number), 0) from entry";
          case OUTLOOKS -> "select coalesce(max(number), 0) from prediction";
          case HISTORY -> throw new IllegalArgumentException("history has no last number");
        };
    return handle.select(sql).mapTo(Long.class).one();
  }

  private static void prune(Handle handle) {
    handle.execute(
        "delete from outbox where number <= (select coalesce(min(number), ?) from mirror_place"
            + " where stream = ?)",
        Long.MAX_VALUE,
        Stream.READINGS.name());
  }

  /** The next things a mirror has not sent; no rows when there are none. */
  public Batch next(String mirror, Stream stream, int atMost) {
    return database.read(
        "reading what mirrors wait for",
        handle ->
            place(handle, mirror, stream)
                .map(place -> next(handle, stream, place, atMost))
                .orElse(new Batch(List.of(), 0, Place.START)));
  }

  private static Batch next(Handle handle, Stream stream, Place place, int atMost) {
    List<ReadingRows.Row> readings = List.of();
    List<Outgoing> things = new ArrayList<>();
    switch (stream) {
      case READINGS -> readings = ReadingRows.committedAfter(handle, place.number(), atMost);
      case HISTORY -> readings = ReadingRows.lyingAfter(handle, place, atMost);
      case COATS -> {
        List<OfEntry> entries = SqliteLedger.after(handle, place.number(), atMost);
        long to = entries.isEmpty() ? 0 : entries.get(entries.size() - 1).number();
        return new Batch(List.copyOf(entries), entries.size(), new Place(to, 0, 0));
      }
      case OUTLOOKS -> {
        List<OfPrediction> kept = SqlitePredictions.after(handle, place.number(), atMost);
        long to = kept.isEmpty() ? 0 : kept.get(kept.size() - 1).number();
        return new Batch(List.copyOf(kept), kept.size(), new Place(to, 0, 0));
      }
    }
    readings.forEach(row -> things.add(new OfReading(row.reading(), row.place().nth())));
    Place to = readings.isEmpty() ? Place.START : readings.get(readings.size() - 1).placeIn(stream);
    return new Batch(things, readings.size(), to);
  }

  /**
   * Remembers that a batch is with the server, in one transaction with the points it refused.
   *
   * @param sent points taken
   * @param tooOld points not wanted because of their age
   */
  public void advance(
      String mirror,
      Stream stream,
      Batch batch,
      long sent,
      long tooOld,
      List<Parked> refused,
      Instant now) {
    database.writeQuickly(
        "remembering what a mirror has",
        handle -> {
          put(handle, mirror, stream, batch.after());
          handle.execute(
              "update mirror set sent = sent + ?, too_old = too_old + ?,"
                  + " history_sent = history_sent + ? where name = ?",
              sent,
              tooOld,
              stream == Stream.HISTORY ? batch.rows() : 0,
              mirror);
          park(handle, mirror, refused, now);
          if (stream == Stream.READINGS) {
            prune(handle);
          }
          return true;
        });
  }

  private static void park(Handle handle, String mirror, List<Parked> refused, Instant now) {
    for (Parked one : refused) {
      handle.execute(
          "insert into parked (mirror, parked_ms, line, reason) values (?, ?, ?, ?)",
          mirror,
          now.toEpochMilli(),
          one.line(),
          one.reason());
    }
  }

  /** The history is with the server; what comes from now on comes by the other streams. */
  public void endHistory(String mirror) {
    database.writeQuickly(
        "remembering what a mirror has",
        handle -> {
          leave(handle, mirror, Stream.HISTORY);
          return true;
        });
  }

  /**
   * Keeps the list of keys from growing without end: where more wait for a mirror than may, it is
   * put back to the history, which holds the same readings and costs no room.
   *
   * @return whether it was put back
   */
  public boolean bound(String mirror, long mostWaiting) {
    return database.writeQuickly(
        "bounding what mirrors wait for",
        handle -> {
          long last = last(handle, Stream.READINGS);
          boolean over =
              place(handle, mirror, Stream.READINGS)
                  .filter(place -> last - place.number() > mostWaiting)
                  .isPresent();
          if (over) {
            put(handle, mirror, Stream.READINGS, new Place(last, 0, 0));
            beginHistory(handle, mirror);
            prune(handle);
          }
          return over;
        });
  }

  /** Remembers that nothing is left to send, the history aside. */
  public void caughtUp(String mirror, Instant at) {
    database.writeQuickly(
        "remembering what a mirror has",
        handle ->
            handle.execute(
                "update mirror set caught_up_ms = ? where name = ?", at.toEpochMilli(), mirror));
  }

  /** How a mirror stands. */
  public Standing standing(String mirror) {
    return database.read(
        "reading how a mirror stands",
        handle -> {
          long waiting = 0;
          for (Stream stream : List.of(Stream.READINGS, Stream.COATS, Stream.OUTLOOKS)) {
            waiting +=
                place(handle, mirror, stream)
                    .map(place -> last(handle, stream) - place.number())
                    .orElse(0L);
          }
          long waits = waiting;
          boolean historyLeft = place(handle, mirror, Stream.HISTORY).isPresent();
          long parked =
              handle
                  .select("select count(*) from parked where mirror = ?", mirror)
                  .mapTo(Long.class)
                  .one();
          return handle
              .select(
                  "select sent, too_old, history_sent, history_total, caught_up_ms from mirror"
                      + " where name = ?",
                  mirror)
              .map(
                  (row, context) ->
                      new Standing(
                          row.getLong(1),
                          row.getLong(2),
                          waits,
                          parked,
                          historyLeft,
                          row.getLong(3),
                          Math.max(row.getLong(3), row.getLong(4)),
                          Instant.ofEpochMilli(row.getLong(5))))
              .one();
        });
  }

  /** Points refused for good, the newest first. */
  public List<Parked> parked(String mirror, int atMost) {
    return database.read(
        "reading parked points",
        handle ->
            handle
                .select(
                    "select number, line, reason from parked where mirror = ?"
                        + " order by number desc limit ?",
                    mirror,
                    atMost)
                .map(
                    (row, context) ->
                        new Parked(row.getLong(1), row.getString(2), row.getString(3)))
                .list());
  }

  /** Takes parked points away: the server has them now, or they were kept long enough. */
  public void unpark(String mirror, Collection<Parked> points) {
    Set<Long> numbers = points.stream().map(Parked::number).collect(Collectors.toSet());
    database.writeQuickly(
        "taking parked points away",
        handle -> {
          numbers.forEach(
              number ->
                  handle.execute(
                      "delete from parked where mirror = ? and number = ?", mirror, number));
          return true;
        });
  }

  /** Takes away what was parked before an instant. */
  public void unparkBefore(String mirror, Instant before) {
    database.writeQuickly(
        "taking parked points away",
        handle ->
            handle.execute(
                "delete from parked where mirror = ? and parked_ms < ?",
                mirror,
                before.toEpochMilli()));
  }

  /** Air temperatures, humidities and surface temperatures measured in [from, to). */
  public long values(Instant from, Instant to) {
    return database.read(
        "counting readings",
        handle ->
            handle
                .select(
                    "select coalesce(sum(n), 0) from (select (select count(temp) + count(rh) +"
                        + " count(surface) from reading r where r.sensor = s.id and r.at_ms >= ?"
                        + " and r.at_ms < ?) as n from sensor s)",
                    from.toEpochMilli(),
                    to.toEpochMilli())
                .mapTo(Long.class)
                .one());
  }

  /** The days of UTC on which anything was measured, by their begin. */
  public List<Instant> daysMeasured() {
    return database.read(
        "looking for days with readings",
        handle ->
            handle
                .select(
                    "select distinct from_s / 86400 from roll_up where every_s = 3600 order by 1")
                .map((row, context) -> Instant.ofEpochSecond(86_400 * row.getLong(1)))
                .list());
  }

  /** Readings measured in [from, to), sensor by sensor, for counting and sending again. */
  public List<OfReading> measured(Instant from, Instant to) {
    return database.read(
        "reading readings",
        handle ->
            ReadingRows.measured(handle, from.toEpochMilli(), to.toEpochMilli()).stream()
                .map(row -> new OfReading(row.reading(), row.place().nth()))
                .toList());
  }
}
