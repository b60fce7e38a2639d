package coatwright.replay;

import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.film.SpiritDrying;
import coatwright.json.Json;
import coatwright.outlook.OutlookSettings;
import coatwright.sensors.MappingReader;
import coatwright.sensors.Setting;
import coatwright.sensors.SourceMapping;
import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;

/** Records and mappings for replays. */
final class Records {
  /** One reading a minute, with its time. */
  static final String BY_THE_MINUTE =
      """
      {"source": "wall", "payload": "columns", "header": true, "every": "PT1M", "room": "bench",
       "chip": "SHT31",
       "time": {"at": "time", "form": "rfc3339", "trust": "payload"},
       "readings": [{"quantity": "air-temperature", "at": "t", "unit": "Cel"},
                    {"quantity": "relative-humidity", "at": "rh", "unit": "%"}]}
      """;

  static final String REAL =
      """
      {"source": "mote", "payload": "columns", "header": true,
       "time": {"at": "elapsed_s", "form": "epoch-s", "trust": "payload"},
       "readings": [{"quantity": "air-temperature", "at": "t_C", "unit": "Cel"},
                    {"quantity": "relative-humidity", "at": "rh_pct", "unit": "%"}]}
      """;

  static final Instant START = Instant.parse("2026-03-02T09:00:00Z");

  private Records() {}

  static Replay replay() {
    return new Replay(
        Map.of("shellac-pale", PALE), OutlookSettings.usual("shellac-pale", ZoneOffset.UTC));
  }

  static SourceMapping mapping(String json) {
    try {
      return MappingReader.read(Setting.of(Json.mapper().readTree(json)), "record", false);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /** Air that stays as it is, by the minute. */
  static String steady(double tempC, double rhPct, int minutes) {
    StringBuilder csv = new StringBuilder("time,t,rh\n");
    for (int m = 0; m < minutes; m++) {
      csv.append(line(m, tempC, rhPct));
    }
    return csv.toString();
  }

  /** The air wanders by a few hundredths, as a live sensor's does. */
  static String line(int minute, double tempC, double rhPct) {
    double wander = 0.02 * Math.sin(minute * 0.7);
    return String.format(
        Locale.ROOT,
        "%s,%.2f,%.2f%n",
        START.plusSeconds(60L * minute),
        tempC + wander,
        Math.min(100, rhPct + 3 * wander));
  }

  static String resource(String name) {
    try (InputStream in = Records.class.getResourceAsStream("/reference/" + name)) {
      if (in == null) {
        throw new IllegalStateException("no such resource: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static final Finish PALE =
      new Finish(
          "shellac-pale",
          "Pale dewaxed shellac",
          Layer.SHELLAC,
          new SpiritDrying(FilmParameters.SHELLAC, 1.5 * 119.826427, 0.2, 95),
          20,
          50,
          Map.of("brush", 75.0),
          0.2,
          5,
          35,
          OptionalDouble.empty(),
          6,
          100,
          "",
          List.of(),
          List.of(),
          List.of(),
          List.of());
}
