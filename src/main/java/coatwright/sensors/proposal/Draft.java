package coatwright.sensors.proposal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A source on its way to being proposed: its words, its readings, and what a person should know.
 * Belongs to the one call that makes it.
 */
final class Draft {
  private final Map<String, Object> words = new LinkedHashMap<>();
  private final List<Map<String, Object>> readings = new ArrayList<>();
  private final List<String> doubts = new ArrayList<>();
  private final Map<String, Map<String, Object>> filters = new LinkedHashMap<>();
  private final List<String> notes = new ArrayList<>();
  private final List<Overheard> heard;

  Draft(List<Overheard> heard) {
    this.heard = new ArrayList<>(heard);
  }

  List<Overheard> heard() {
    return heard;
  }

  void word(String word, Object value) {
    words.put(word, value);
  }

  Map<String, Object> words() {
    return words;
  }

  /** A reading and the doubt that goes with it. */
  void reading(Object at, Guess guess) {
    Map<String, Object> reading = reading(guess);
    Map<String, Object> whole = new LinkedHashMap<>();
    whole.put("quantity", reading.remove("quantity"));
    whole.put("at", at);
    whole.putAll(reading);
    readings.add(whole);
    doubts.add(guess.doubt().orElse(""));
  }

  void record(String name, String quantity, Optional<String> doubt) {
    Map<String, Object> record = new LinkedHashMap<>();
    record.put("name", name);
    record.put("quantity", quantity);
    readings.add(record);
    doubts.add(doubt.orElse(""));
  }

  /** The one reading of a payload that is the number itself. */
  void readingWithoutPlace(Guess guess) {
    readings.add(reading(guess));
    doubts.add(guess.doubt().orElse(""));
  }

  /** Takes over what another draft reads. */
  void takeFrom(Draft other) {
    readings.addAll(other.readings);
    filters.putAll(other.filters);
    doubts.addAll(other.doubts);
    other.notes.forEach(this::note);
  }

  void filter(String topic, Guess guess) {
    filters.put(topic, reading(guess));
    doubts.add(guess.doubt().orElse(""));
  }

  private static Map<String, Object> reading(Guess guess) {
    Map<String, Object> reading = new LinkedHashMap<>();
    reading.put("quantity", guess.quantity());
    if (guess.scale() != 1) {
      reading.put("scale", guess.scale());
    }
    reading.put("unit", guess.unit());
    if (guess.decimal() != '.') {
      reading.put("decimal", String.valueOf(guess.decimal()));
    }
    return reading;
  }

  /** Adds words to the last reading. */
  void toLast(String word, Object value) {
    readings.get(readings.size() - 1).put(word, value);
  }

  List<Map<String, Object>> readings() {
    return readings;
  }

  Map<String, Map<String, Object>> filters() {
    return filters;
  }

  List<String> doubts() {
    return doubts;
  }

  /** Something left out, or left open, and why. */
  void note(String note) {
    if (!notes.contains(note)) {
      notes.add(note);
    }
  }

  List<String> notes() {
    return notes;
  }

  boolean has(String quantity) {
    return readings.stream().anyMatch(each -> quantity.equals(each.get("quantity")))
        || filters.values().stream().anyMatch(each -> quantity.equals(each.get("quantity")));
  }

  boolean isEmpty() {
    return readings.isEmpty() && filters.isEmpty();
  }

  /** True when all it measures is wood. */
  boolean onlyWood() {
    boolean wood = has(Guess.WOOD);
    return wood && !has(Guess.AIR) && !has(Guess.RH);
  }
}
