package coatwright.web;

import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.PartPath;
import coatwright.outlook.Due;
import coatwright.outlook.SessionOutlook;
import coatwright.web.Answers.CoatOn;
import coatwright.web.Answers.NowView;
import coatwright.web.Answers.PartView;
import coatwright.web.Answers.RoomView;
import coatwright.web.Answers.SourceView;
import coatwright.web.Answers.Todo;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Lays out what Now shows: every room, the air for its coat, and what asks to be done. Reads only.
 * Safe for many threads.
 */
final class Board {
  /** A session's outlook younger than this is shown again instead of reckoned anew. */
  private static final long FRESH_NS = Duration.ofSeconds(2).toNanos();

  /** A milestone this near asks to be done. */
  private static final Duration SOON = Duration.ofMinutes(15);

  /** One passed longer ago was seen, or the bench has moved on. */
  private static final Duration STILL_ASKS = Duration.ofHours(24);

  /** Without a predicted touch time a film counts as wet this long. Common practice, no source. */
  private static final Duration WET = Duration.ofMinutes(15);

  private static final int MOST_PARTS = 12;
  private static final String TOUCH = "dry to touch";

  private final WebRooms rooms;
  private final Map<String, Seen> sessions = new ConcurrentHashMap<>();

  private record Seen(SessionOutlook outlook, long atNs) {}

  Board(WebRooms rooms) {
    this.rooms = rooms;
  }

  /** The air for a room's coat, at most 2 s old. */
  SessionOutlook session(String room) {
    Seen seen =
        sessions.compute(
            room,
            (name, before) ->
                before != null && System.nanoTime() - before.atNs() < FRESH_NS
                    ? before
                    : look(name));
    return seen.outlook();
  }

  /** The air for a room's coat, reckoned now. */
  SessionOutlook sessionAnew(String room) {
    Seen seen = look(room);
    sessions.put(room, seen);
    return seen.outlook();
  }

  /** The journal changed: the next look is a new one. */
  void forget() {
    sessions.clear();
  }

  private Seen look(String room) {
    SessionOutlook outlook = rooms.outlooks().session(room, rooms.clock().instant());
    return new Seen(outlook, System.nanoTime());
  }

  RoomView room(String name) {
    return RoomView.of(
        rooms.climate().now(name),
        rooms.climate().doubted(name),
        rooms.climate().outside(),
        rooms.clock().instant());
  }

  List<RoomView> rooms() {
    return rooms.climate().rooms().stream().map(this::room).toList();
  }

  /** All of Now; {@code wanted} picks the room spoken of, else the one with an open session. */
  NowView now(Optional<String> wanted) {
    Instant at = rooms.clock().instant();
    List<SessionOutlook> all = rooms.climate().rooms().stream().map(this::session).toList();
    String room = wanted.orElseGet(() -> spokenOf(all));
    List<Due> due = rooms.outlooks().due(Optional.empty());
    return new NowView(
        at,
        rooms.shop(),
        rooms.invented(),
        rooms.units().name().toLowerCase(Locale.ROOT),
        rooms.zone().getId(),
        room,
        rooms(),
        all,
        coatOn(all),
        wetFilm(due, at),
        atTheBench(all, room, due, at),
        todo(due, at),
        rooms.watch().open(),
        rooms.sources().get().stream().map(SourceView::of).toList());
  }

  private String spokenOf(List<SessionOutlook> all) {
    return all.stream()
        .filter(SessionOutlook::open)
        .findFirst()
        .or(() -> all.stream().findFirst())
        .map(SessionOutlook::room)
        .orElse("");
  }

  private List<CoatOn> coatOn(List<SessionOutlook> all) {
    List<CoatOn> presses = new ArrayList<>();
    for (SessionOutlook session : all) {
      lastCoatFor(session).ifPresent(coat -> presses.add(again(session, coat)));
    }
    return presses;
  }

  /** The newest coat on the session's part; without a part, the newest laid in the room. */
  private Optional<Coat> lastCoatFor(SessionOutlook session) {
    List<Entry> coats =
        session
            .part()
            .map(part -> rooms.journal().coats(PartPath.parse(part)))
            .orElseGet(
                () ->
                    rooms.journal().coats().stream()
                        .filter(
                            entry ->
                                entry.body() instanceof Coat coat
                                    && coat.room().equals(session.room()))
                        .toList());
    return coats.isEmpty()
        ? Optional.empty()
        : Optional.of(coats.get(coats.size() - 1).body())
            .filter(Coat.class::isInstance)
            .map(Coat.class::cast);
  }

  private CoatOn again(SessionOutlook session, Coat last) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("part", last.part().toString());
    form.put("jar", last.jar());
    form.put("room", session.room());
    form.put("method", last.method().toString());
    last.wetFilmUm().ifPresent(um -> form.put("wetFilm", String.format(Locale.ROOT, "%.1fum", um)));
    last.who().ifPresent(who -> form.put("who", who));
    int next = rooms.journal().coats(last.part()).size() + 1;
    return new CoatOn(
        session.room(), last.part().toString(), next, last.jar(), last.method().toString(), form);
  }

  private boolean wetFilm(List<Due> due, Instant at) {
    boolean predictedWet =
        due.stream()
            .filter(one -> one.milestone().equals(TOUCH))
            .anyMatch(one -> one.p90().map(p90 -> p90.isAfter(at)).orElse(!one.reached()));
    return predictedWet
        || rooms.journal().coats().stream()
            .anyMatch(
                entry -> entry.body() instanceof Coat coat && coat.start().plus(WET).isAfter(at));
  }

  /**
   * The session's piece, part by part; with no session, the parts with something coming soonest.
   */
  private List<PartView> atTheBench(
      List<SessionOutlook> all, String room, List<Due> due, Instant at) {
    Optional<String> piece =
        all.stream()
            .filter(session -> session.room().equals(room) && session.open())
            .findFirst()
            .flatMap(SessionOutlook::part)
            .map(part -> PartPath.parse(part).piece());
    Map<String, List<Due>> byPart = new LinkedHashMap<>();
    for (Due one : due) {
      if (piece.isEmpty() || PartPath.parse(one.part()).piece().equals(piece.get())) {
        byPart.computeIfAbsent(one.part(), part -> new ArrayList<>()).add(one);
      }
    }
    return byPart.entrySet().stream()
        .map(part -> standing(part.getKey(), part.getValue(), at))
        .limit(MOST_PARTS)
        .toList();
  }

  private PartView standing(String part, List<Due> milestones, Instant at) {
    Comparator<Due> byTime = Comparator.comparing(one -> one.p50().orElse(Instant.MAX));
    Optional<Due> passed = milestones.stream().filter(one -> passed(one, at)).max(byTime);
    Optional<Due> next = milestones.stream().filter(one -> !passed(one, at)).min(byTime);
    return new PartView(part, rooms.journal().coats(PartPath.parse(part)).size(), passed, next);
  }

  private static boolean passed(Due one, Instant at) {
    return one.p50().map(p50 -> !p50.isAfter(at)).orElse(false);
  }

  /** For each part the latest test to make now or shortly; empty: nothing needs doing. */
  private static List<Todo> todo(List<Due> due, Instant at) {
    Map<String, Todo> tests = new LinkedHashMap<>();
    for (Due one : due) {
      boolean near =
          one.p50()
              .map(p50 -> p50.isBefore(at.plus(SOON)) && p50.isAfter(at.minus(STILL_ASKS)))
              .orElse(false);
      boolean late = one.until().map(until -> until.isBefore(at)).orElse(false);
      if (near && !late && one.test().isPresent()) {
        tests.put(
            one.part(),
            new Todo(one.part(), one.milestone(), one.p50().orElse(at), one.test().get()));
      }
    }
    return List.copyOf(tests.values());
  }
}
