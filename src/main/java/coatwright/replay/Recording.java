package coatwright.replay;

import coatwright.quantity.RefusedInput;
import coatwright.sensors.PayloadKind;
import coatwright.sensors.RawReading;
import coatwright.sensors.SourceMapping;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The lines of a record with their times, ready to walk the house one after the other.
 *
 * <p>Sensors' rules hold clocks before 2015 for never set, and so they should; but a record may be
 * older than that, or count its seconds from zero. Such a record is moved by whole periods of 28
 * years, after which every date falls on the same weekday, and what it says is moved back.
 *
 * @param mapping the same, standing in a room and without the time, which is the line's own
 * @param header the header line, to be heard before the rest
 * @param moved by how much every time was moved
 */
record Recording(
    SourceMapping mapping,
    Optional<RawReading> header,
    List<Line> lines,
    List<Replayed.Refused> refused,
    Duration moved) {
  static final String ROOM = "recorded";
  private static final Instant CLOCKS_SET_SINCE = Instant.parse("2020-01-02T00:00:00Z");
  private static final Duration PERIOD = Duration.ofDays(10_227);
  private static final int MOST_LINES = 3_000_000;

  Recording {
    lines = List.copyOf(lines);
    refused = List.copyOf(refused);
  }

  /**
   * A line and when it was measured, moved.
   *
   * @param number in the file, from 1
   */
  record Line(int number, RawReading raw) {
    Instant at() {
      return raw.arrivedAt();
    }
  }

  String room() {
    return mapping.placing().room().orElse(ROOM);
  }

  Instant from() {
    return lines.get(0).at();
  }

  Instant to() {
    return lines.get(lines.size() - 1).at();
  }

  /**
   * @param csv the whole file
   * @throws RefusedInput when the mapping does not read columns with a time, or no line has one
   */
  static Recording of(String csv, SourceMapping mapping) {
    if (mapping.payload().kind() != PayloadKind.COLUMNS) {
      throw RefusedInput.of(
          "mapping",
          "reads " + mapping.payload().kind() + ", and a record is columns",
          "write payload: columns, header: true");
    }
    LineTimes times = new LineTimes(mapping.payload().time());
    List<String> texts = Arrays.asList(csv.split("\r?\n", -1));
    if (texts.size() > MOST_LINES) {
      throw RefusedInput.of(
          "readings", texts.size() + " lines are more than are read at once", "split the file");
    }
    return new Reader(mapping, times, texts).read();
  }

  /** The record's usual spacing: what the mapping says, else the middle of what is found. */
  Duration every() {
    if (mapping.everyGiven() || lines.size() < 3) {
      return mapping.every();
    }
    long[] gaps = new long[lines.size() - 1];
    for (int i = 1; i < lines.size(); i++) {
      gaps[i - 1] = Duration.between(lines.get(i - 1).at(), lines.get(i).at()).toMillis();
    }
    Arrays.sort(gaps);
    Duration middle = Duration.ofMillis(gaps[gaps.length / 2]);
    return middle.compareTo(Duration.ofSeconds(1)) < 0 ? Duration.ofSeconds(1) : middle;
  }

  /** Takes a file apart. */
  private static final class Reader {
    private final SourceMapping mapping;
    private final LineTimes times;
    private final List<String> texts;
    private final List<Replayed.Refused> refused = new ArrayList<>();
    private int timeColumn = -1;

    Reader(SourceMapping mapping, LineTimes times, List<String> texts) {
      this.mapping = mapping;
      this.times = times;
      this.texts = texts;
    }

    Recording read() {
      int first = 0;
      while (first < texts.size() && isComment(texts.get(first))) {
        first++;
      }
      if (first == texts.size()) {
        throw RefusedInput.of("readings", "the file holds no line", "name a file of readings");
      }
      Optional<String> header = Optional.empty();
      if (mapping.payload().form().header()) {
        header = Optional.of(texts.get(first).strip());
        first++;
      }
      timeColumn = timeColumn(header);
      List<Timed> timed = timed(first);
      if (timed.isEmpty()) {
        throw RefusedInput.of(
            "readings",
            "no line has a time that can be read in column " + times.column(),
            "check the time's form in the mapping: rfc3339, epoch-s, epoch-auto or local");
      }
      Duration moved = moved(timed.get(0).at());
      List<Line> lines = new ArrayList<>();
      for (Timed t : timed) {
        lines.add(new Line(t.number(), raw(t.text(), t.at().plus(moved))));
      }
      Optional<RawReading> heard = header.map(h -> raw(h, lines.get(0).at()));
      return new Recording(withoutTime(), heard, lines, refused, moved);
    }

    /** A line, its time as written, and its number. */
    private record Timed(int number, String text, Instant at) {}

    private List<Timed> timed(int first) {
      List<Timed> timed = new ArrayList<>();
      for (int i = first; i < texts.size(); i++) {
        String text = texts.get(i);
        if (isComment(text)) {
          continue;
        }
        List<String> cells = split(text);
        Optional<Instant> at =
            timeColumn < cells.size() ? times.read(cells.get(timeColumn)) : Optional.empty();
        if (at.isEmpty()) {
          refused.add(new Replayed.Refused(i + 1, "no time in column " + times.column()));
        } else if (!timed.isEmpty() && at.get().isBefore(timed.get(timed.size() - 1).at())) {
          refused.add(new Replayed.Refused(i + 1, "earlier than the line before"));
        } else {
          timed.add(new Timed(i + 1, text, at.get()));
        }
      }
      return timed;
    }

    private int timeColumn(Optional<String> header) {
      if (header.isEmpty()) {
        return Integer.parseInt(times.column()) - 1;
      }
      int column = split(header.get()).indexOf(times.column());
      if (column < 0) {
        throw RefusedInput.of(
            "column \"" + times.column() + "\"",
            "the header names no such column: " + header.get(),
            "put the name of the time's column in the mapping");
      }
      return column;
    }

    private List<String> split(String line) {
      String separator = Pattern.quote(String.valueOf(mapping.payload().form().separator()));
      return Arrays.stream(line.split(separator, -1)).map(String::strip).toList();
    }

    private RawReading raw(String text, Instant at) {
      return RawReading.of(
          "record", text.getBytes(StandardCharsets.UTF_8), at, RawReading.Way.LINE);
    }

    private static boolean isComment(String text) {
      return text.isBlank() || text.startsWith("#");
    }

    private static Duration moved(Instant first) {
      Duration moved = Duration.ZERO;
      while (first.plus(moved).isBefore(CLOCKS_SET_SINCE)) {
        moved = moved.plus(PERIOD);
      }
      return moved;
    }

    private SourceMapping withoutTime() {
      SourceMapping.Placing placing = mapping.placing();
      return new SourceMapping(
          mapping.source(),
          mapping.transport(),
          new SourceMapping.Placing(
              placing.role(),
              Optional.of(placing.room().orElse(ROOM)),
              placing.part(),
              placing.chip()),
          mapping.payload().withoutTime(),
          mapping.every(),
          mapping.everyGiven(),
          mapping.limits(),
          mapping.resolution(),
          mapping.corrections());
    }
  }
}
