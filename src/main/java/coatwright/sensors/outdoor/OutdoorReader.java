package coatwright.sensors.outdoor;

import coatwright.air.SaturationPressure;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.json.Json;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Reads an outdoor forecast's text into a course by the hour, or refuses all of it. */
final class OutdoorReader {
  private static final int FEWEST_ROWS = 6;
  private static final int MOST_ROWS = 2_000;
  private static final long LONGEST_STEP_S = 6 * 3600;
  private static final int LEAST_AHEAD_H = 6;
  private static final int MOST_AHEAD_H = 100;
  private static final int COLDEST_C = -60;
  private static final int HOTTEST_C = 60;

  /** A dew point may lie above its temperature by rounding, not by more, K. */
  private static final double ROUNDING_K = 0.6;

  private final OutdoorMapping mapping;

  private record Row(long atS, double tempC, double vapourPa) {}

  OutdoorReader(OutdoorMapping mapping) {
    this.mapping = mapping;
  }

  /**
   * The course a text tells.
   *
   * @param fetchedAt when it came
   * @throws RefusedInput with the reason
   */
  OutsideCourse read(String text, Instant fetchedAt) {
    List<Row> rows = mapping.json() ? json(text) : columns(text);
    if (rows.size() < FEWEST_ROWS || rows.size() > MOST_ROWS) {
      throw refused(
          rows.size() + " hours", "it holds " + FEWEST_ROWS + " to " + MOST_ROWS + " of them");
    }
    for (int i = 1; i < rows.size(); i++) {
      long stepS = rows.get(i).atS() - rows.get(i - 1).atS();
      if (stepS <= 0 || stepS > LONGEST_STEP_S) {
        throw refused(
            "time " + Instant.ofEpochSecond(rows.get(i).atS()),
            "times rise, by six hours at most from one to the next");
      }
    }
    return course(rows, fetchedAt);
  }

  private static OutsideCourse course(List<Row> rows, Instant fetchedAt) {
    long issued = Math.floorDiv(fetchedAt.getEpochSecond(), 3600L);
    long last = Math.floorDiv(rows.get(rows.size() - 1).atS() - 1800, 3600L);
    long first = Math.max(issued, Math.floorDiv(rows.get(0).atS() + 1800, 3600L));
    int hours = (int) Math.min(MOST_AHEAD_H, last - first + 1);
    if (last < issued + LEAST_AHEAD_H || hours < LEAST_AHEAD_H) {
      throw refused(
          "a forecast to " + Instant.ofEpochSecond(rows.get(rows.size() - 1).atS()),
          "it reaches " + LEAST_AHEAD_H + " hours ahead or more");
    }
    double[] tempC = new double[hours];
    double[] vapourPa = new double[hours];
    int row = 0;
    for (int i = 0; i < hours; i++) {
      double middleS = (first + i) * 3600 + 1800;
      while (row + 2 < rows.size() && rows.get(row + 1).atS() <= middleS) {
        row++;
      }
      Row a = rows.get(row);
      Row b = rows.get(row + 1);
      double share = Math.min(1, Math.max(0, (middleS - a.atS()) / (double) (b.atS() - a.atS())));
      tempC[i] = a.tempC() + share * (b.tempC() - a.tempC());
      vapourPa[i] = a.vapourPa() + share * (b.vapourPa() - a.vapourPa());
    }
    return new OutsideCourse(issued, first, tempC, vapourPa);
  }

  private List<Row> json(String text) {
    JsonNode holds;
    try {
      holds = Json.mapper().readTree(text);
    } catch (JsonProcessingException notJson) {
      throw refused("the text", "it is not JSON: " + notJson.getOriginalMessage());
    }
    JsonNode hours = mapping.rows().isEmpty() ? holds : holds.at(mapping.rows());
    List<Row> rows = new ArrayList<>();
    if (hours.isArray()) {
      for (JsonNode hour : hours) {
        rows.add(
            row(
                text(hour, mapping.time()),
                text(hour, mapping.temperature()),
                text(hour, mapping.dewPoint().or(mapping::humidity).orElseThrow())));
      }
      return rows;
    }
    JsonNode times = hours.path(mapping.time());
    JsonNode temps = hours.path(mapping.temperature());
    JsonNode damps = hours.path(mapping.dewPoint().or(mapping::humidity).orElseThrow());
    if (!times.isArray() || !temps.isArray() || !damps.isArray()) {
      throw refused(
          "rows \"" + mapping.rows() + "\"",
          "it is a list of objects, or an object that holds a list under each of the words");
    }
    if (times.size() != temps.size() || times.size() != damps.size()) {
      throw refused("the lists", "they are of one length");
    }
    for (int i = 0; i < times.size() && i <= MOST_ROWS; i++) {
      rows.add(row(scalar(times.get(i)), scalar(temps.get(i)), scalar(damps.get(i))));
    }
    return rows;
  }

  private static String text(JsonNode hour, String word) {
    JsonNode value = word.startsWith("/") ? hour.at(word) : hour.path(word);
    if (value.isMissingNode()) {
      throw refused("an hour without \"" + word + "\"", "every hour has it");
    }
    return scalar(value);
  }

  private static String scalar(JsonNode value) {
    if (!value.isNumber() && !value.isTextual()) {
      throw refused("\"" + value + "\"", "a number or a text is expected");
    }
    return value.asText();
  }

  private List<Row> columns(String text) {
    List<String> lines = text.lines().filter(line -> !line.isBlank()).toList();
    if (lines.isEmpty()) {
      throw refused("the text", "it is empty");
    }
    List<String> head = cells(lines.get(0));
    int time = column(head, mapping.time());
    int temp = column(head, mapping.temperature());
    int damp = column(head, mapping.dewPoint().or(mapping::humidity).orElseThrow());
    List<Row> rows = new ArrayList<>();
    for (String line : lines.subList(1, Math.min(lines.size(), MOST_ROWS + 2))) {
      List<String> cells = cells(line);
      if (cells.size() != head.size()) {
        throw refused("the line " + line, "it has as many cells as the header");
      }
      rows.add(row(cells.get(time), cells.get(temp), cells.get(damp)));
    }
    return rows;
  }

  private static List<String> cells(String line) {
    return Arrays.stream(line.split(",", -1)).map(String::strip).toList();
  }

  private static int column(List<String> head, String word) {
    int at = head.indexOf(word);
    if (at < 0) {
      throw refused("no column \"" + word + "\"", "the header has: " + String.join(", ", head));
    }
    return at;
  }

  private Row row(String time, String temp, String damp) {
    double tempC = celsius(number(mapping.temperature(), temp));
    if (!(tempC >= COLDEST_C && tempC <= HOTTEST_C)) {
      throw refused("temperature " + temp, "outdoors it is -60 to 60 °C");
    }
    double saturatedPa = SaturationPressure.overWaterPa(tempC);
    double vapourPa;
    if (mapping.humidity().isPresent()) {
      double rhPct = number(mapping.humidity().get(), damp);
      if (!(rhPct >= 1 && rhPct <= 100)) {
        throw refused("humidity " + damp, "it is 1 to 100 %");
      }
      vapourPa = rhPct / 100 * saturatedPa;
    } else {
      double dewC = celsius(number(mapping.dewPoint().orElseThrow(), damp));
      if (!(dewC >= COLDEST_C && dewC <= tempC + ROUNDING_K)) {
        throw refused("dew point " + damp + " at " + temp, "it is no higher than the temperature");
      }
      vapourPa = SaturationPressure.overWaterPa(Math.min(dewC, tempC));
    }
    return new Row(seconds(time), tempC, vapourPa);
  }

  private double celsius(double read) {
    return mapping.fahrenheit() ? (read - 32) / 1.8 : read;
  }

  private static double number(String word, String text) {
    // Plain decimal numbers only: what a language would also take (1d, NaN, 0x1p3) is no reading.
    if (!text.matches("[+-]?\\d{1,9}(\\.\\d{1,20})?([eE][+-]?\\d{1,2})?")) {
      throw refused(word + " \"" + text + "\"", "it is a number");
    }
    return Double.parseDouble(text);
  }

  private long seconds(String text) {
    if (text.matches("\\d{9,10}")) {
      return Long.parseLong(text);
    }
    if (text.matches("\\d{12,13}")) {
      return Long.parseLong(text) / 1000;
    }
    try {
      return OffsetDateTime.parse(text.replace(' ', 'T')).toEpochSecond();
    } catch (DateTimeException withoutOffset) {
      return local(text);
    }
  }

  private long local(String text) {
    try {
      LocalDateTime local = LocalDateTime.parse(text.replace(' ', 'T'));
      return local
          .atZone(
              mapping
                  .zone()
                  .orElseThrow(
                      () ->
                          refused(
                              "time \"" + text + "\"",
                              "it has no offset; say its zone with outdoor-forecast.zone")))
          .toEpochSecond();
    } catch (DateTimeException unreadable) {
      throw refused("time \"" + text + "\"", "it is a date and a time, or seconds since 1970");
    }
  }

  private static RefusedInput refused(String what, String rule) {
    return RefusedInput.of(
        "outdoor forecast: " + what, rule, "see outdoor-forecast in the settings");
  }
}
