package coatwright.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the people of the invented shop wrote down: a sound batch, one that stayed soft because its
 * jar was old, one that clouded on the foggy evening, and a session in progress.
 */
final class InventedJournal {
  private static final String ROOM = "finishing room";
  private static final String PALE = "shellac-pale";
  private static final List<String> DOOR_FACES =
      List.of(
          "wall-cabinet/left-door/front",
          "wall-cabinet/left-door/back",
          "wall-cabinet/right-door/front",
          "wall-cabinet/right-door/back");
  private static final List<String> SHELVES =
      List.of("wall-cabinet/shelf-1", "wall-cabinet/shelf-2", "wall-cabinet/shelf-3");
  private static final List<String> STOOLS = List.of("ash-stools/stool-1", "ash-stools/stool-2");

  private final ZoneId zone;
  private final LocalDate today;
  private final Instant now;
  private final List<InventedEntry> entries = new ArrayList<>();

  /**
   * @param now the session in progress ends here
   */
  InventedJournal(Instant now, ZoneId zone) {
    this.now = now;
    this.zone = zone;
    this.today = now.atZone(zone).toLocalDate();
  }

  /** Everything, oldest first. */
  List<InventedEntry> entries() {
    if (entries.isEmpty()) {
      soundBatch();
      softBatch();
      cloudedBatch();
      stools();
      cabinet();
      entries.sort(Comparator.comparing(InventedEntry::at));
    }
    return List.copyOf(entries);
  }

  /** Evening of the fog: the batch that clouded was brushed in it. */
  static Instant fogFrom(Instant now, ZoneId zone) {
    return now.atZone(zone).toLocalDate().minusDays(9).atTime(17, 0).atZone(zone).toInstant();
  }

  private void soundBatch() {
    Instant begun = day(27, 9, 0);
    jar(begun, "A", PALE, "1.5lb", "95%", today.minusDays(27));
    piece(begun.plusSeconds(60), "hall-table", today.minusDays(18));
    part(begun.plusSeconds(120), "hall-table/top", "0.55m2", "22mm", "oak");
    Instant first = day(26, 10, 0);
    coats(first, "A", List.of("hall-table/top"), 0, 20, 45, 150, 200);
    note(first.plus(Duration.ofHours(20)), "hall-table/top", "powder=pass", "");
    note(day(21, 10, 0), "hall-table/top", "thumbnail=pass", "");
    note(day(20, 11, 0), "hall-table/top", "rubbed-out=fine", "0000 and wax, even");
  }

  private void softBatch() {
    Instant begun = day(17, 9, 0);
    jar(begun, "old amber", "shellac-amber", "2lb", "95%", today.minusMonths(29));
    piece(begun.plusSeconds(60), "bedside-chest", today.minusDays(5));
    part(begun.plusSeconds(120), "bedside-chest/top", "0.20m2", "19mm", "walnut");
    Instant first = day(17, 10, 15);
    coats(first, "old amber", List.of("bedside-chest/top"), 0, 30, 70);
    note(day(10, 9, 30), "bedside-chest/top", "thumbnail=fail", "still takes a nail after a week");
    note(day(8, 9, 30), "bedside-chest/top", "tacky", "a cloth left its weave on it");
    note(day(8, 9, 40), "bedside-chest/top", "print=fail", "");
  }

  private void cloudedBatch() {
    Instant begun = day(9, 16, 30);
    piece(begun, "picture-frames", today.minusDays(2));
    part(begun.plusSeconds(60), "picture-frames/large", "0.18m2", "20mm", "lime");
    Instant first = day(9, 18, 40);
    coats(first, "A", List.of("picture-frames/large"), 0);
    note(
        first.plus(Duration.ofMinutes(7)),
        "picture-frames/large",
        "clouded=4",
        "went white while I watched; fog outside, door open");
    note(day(8, 8, 15), "picture-frames/large", "clouded=2", "paler this morning, still milky");
  }

  private void stools() {
    Instant begun = day(3, 14, 0);
    jar(begun.plusSeconds(-600), "B", PALE, "1.5lb", "95%", today.minusDays(3));
    piece(begun, "ash-stools", today.plusDays(6));
    for (String stool : STOOLS) {
      part(begun.plusSeconds(60), stool, "0.35m2", "25mm", "ash");
    }
    coats(day(2, 10, 0), "B", STOOLS, 0, 25, 60);
    coats(day(1, 14, 30), "B", STOOLS, 0, 40);
    note(day(1, 9, 0), STOOLS.get(0), "powder=pass", "");
  }

  /** The session in progress: doors and shelves in turn, the last brush put down minutes ago. */
  private void cabinet() {
    Instant begun = day(1, 9, 0);
    piece(begun, "wall-cabinet", today.plusDays(12));
    part(begun.plusSeconds(60), "wall-cabinet/carcase", "1.10m2", "19mm", "cherry");
    for (String face : DOOR_FACES) {
      part(begun.plusSeconds(90), face, "0.22m2", "20mm", "cherry");
    }
    for (String shelf : SHELVES) {
      part(begun.plusSeconds(120), shelf, "0.26m2", "18mm", "cherry");
    }
    part(begun.plusSeconds(150), "wall-cabinet/back-panel", "0.60m2", "8mm", "cherry");
    List<String> fronts = List.of(DOOR_FACES.get(0), DOOR_FACES.get(2));
    List<String> backs = List.of(DOOR_FACES.get(1), DOOR_FACES.get(3));
    coats(ago(150), "B", List.of("wall-cabinet/carcase"), 0, 35);
    coats(ago(140), "B", fronts, 0, 40);
    coats(ago(125), "B", backs, 0);
    coats(ago(85), "B", SHELVES, 0);
    coats(ago(26), "B", SHELVES, 0);
    coats(ago(9), "B", fronts, 0);
    note(ago(55), "wall-cabinet/carcase", "touch=pass", "");
  }

  private Instant day(int daysAgo, int hour, int minute) {
    return today.minusDays(daysAgo).atTime(LocalTime.of(hour, minute)).atZone(zone).toInstant();
  }

  private Instant ago(int minutes) {
    return now.minus(Duration.ofMinutes(minutes));
  }

  private void jar(
      Instant at, String name, String finish, String cut, String strength, LocalDate opened) {
    add(
        at,
        "jar",
        Map.of(
            "name", name,
            "finish", finish,
            "cut", cut,
            "strength", strength,
            "opened", opened.toString()));
  }

  private void piece(Instant at, String name, LocalDate promise) {
    add(at, "piece", Map.of("name", name, "room", ROOM, "promise", promise.toString()));
  }

  private void part(Instant at, String part, String area, String thickness, String species) {
    add(at, "part", Map.of("part", part, "area", area, "thickness", thickness, "species", species));
  }

  /** One coat on each part at each of these minutes after the first. */
  private void coats(Instant first, String jar, List<String> parts, int... minutesAfter) {
    for (int minutes : minutesAfter) {
      Instant start = first.plus(Duration.ofMinutes(minutes));
      Map<String, String> form = new LinkedHashMap<>();
      form.put("part", String.join(",", parts));
      form.put("jar", jar);
      form.put("start", start.toString());
      form.put("end", start.plusSeconds(100L * parts.size()).toString());
      form.put("room", ROOM);
      form.put("method", "brush");
      add(start.plusSeconds(100L * parts.size() + 20), "coat", form);
    }
  }

  private void note(Instant at, String part, String what, String text) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("part", part);
    form.put("what", what);
    form.put("at", at.toString());
    if (!text.isEmpty()) {
      form.put("text", text);
    }
    add(at.plusSeconds(30), "note", form);
  }

  private void add(Instant at, String kind, Map<String, String> form) {
    entries.add(new InventedEntry(at, kind, form));
  }
}
