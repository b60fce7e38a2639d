package coatwright.store.influx;

import coatwright.climate.Reading;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.journal.Strike;
import coatwright.outlook.PredictionLog.Kept;
import coatwright.store.Outgoing;
import coatwright.store.Outgoing.OfEntry;
import coatwright.store.Outgoing.OfPrediction;
import coatwright.store.Outgoing.OfReading;
import com.influxdb.client.domain.WritePrecision;
import com.influxdb.client.write.Point;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the house knows, as lines of line protocol: names and units as docs/data-format.md has them,
 * times in milliseconds, every number a float, what is unknown left out.
 *
 * <p>No point ever stands where another stood with other values: two readings of one sensor in one
 * millisecond differ in the tag {@code nth}, coats and notes carry their entry. So a line may be
 * sent again without harm, and a strike only adds a field.
 */
final class Lines {
  static final String READING = "coatwright_reading";
  static final String COAT = "coatwright_coat";
  static final String NOTE = "coatwright_note";
  static final String OUTLOOK = "coatwright_outlook";
  static final String TEMPERATURE = "temperature_c";
  static final String HUMIDITY = "rh_pct";
  static final String SURFACE = "surface_temperature_c";

  private static final double YES = 1;

  private final String shop;

  /**
   * @param shop the shop's name, so that several can share a database
   */
  Lines(String shop) {
    this.shop = shop;
  }

  /** The line for a thing; none for an entry that is neither a coat nor a note, nor strikes one. */
  Optional<String> of(Outgoing thing) {
    Optional<Point> point =
        thing instanceof OfReading reading
            ? Optional.of(reading(reading.reading(), reading.nth()))
            : thing instanceof OfPrediction kept
                ? Optional.of(outlook(kept.kept(), kept.nth()))
                : entry((OfEntry) thing);
    return point.map(Point::toLineProtocol).filter(line -> !line.isEmpty());
  }

  private Point reading(Reading reading, long nth) {
    Point point = at(reading.at(), READING, nth);
    tag(point, "source", reading.source());
    tag(point, "sensor", reading.sensor());
    tag(point, "role", reading.role().toString());
    reading.room().ifPresent(room -> tag(point, "room", room));
    reading.part().ifPresent(part -> tag(point, "part", part));
    field(point, TEMPERATURE, reading.temperatureC());
    field(point, HUMIDITY, reading.rhPct());
    field(point, SURFACE, reading.surfaceTemperatureC());
    if (reading.temperatureC().isPresent() || reading.surfaceTemperatureC().isPresent()) {
      point.addField("temperature_error_k", reading.temperatureErrorK());
    }
    if (reading.rhPct().isPresent()) {
      point.addField("rh_error_pct", reading.rhErrorPct());
    }
    if (!reading.flags().isEmpty()) {
      point.addField("flags", String.join(" ", reading.flags()));
    }
    return point;
  }

  private Optional<Point> entry(OfEntry of) {
    Entry entry = of.entry();
    if (entry.body() instanceof Coat coat) {
      Point point = coat(entry, coat).addField("laid", YES);
      field(point, "wet_film_um", coat.wetFilmUm());
      field(point, "wood_temp_c", coat.woodTempC());
      coat.end().ifPresent(end -> point.addField("brushing_min", minutes(coat.start(), end)));
      return Optional.of(point);
    }
    if (entry.body() instanceof Observation seen) {
      Point point = note(entry, seen).addField("noted", YES);
      seen.grade().ifPresent(grade -> point.addField("grade", (double) grade));
      seen.passed().ifPresent(passed -> point.addField("passed", passed ? YES : 0));
      field(point, "residue_pct", seen.residuePct());
      return Optional.of(point);
    }
    return entry.body() instanceof Strike ? of.struck().flatMap(this::struck) : Optional.empty();
  }

  private Optional<Point> struck(Entry entry) {
    if (entry.body() instanceof Coat coat) {
      return Optional.of(coat(entry, coat).addField("struck", YES));
    }
    return entry.body() instanceof Observation seen
        ? Optional.of(note(entry, seen).addField("struck", YES))
        : Optional.empty();
  }

  private Point coat(Entry entry, Coat coat) {
    Point point = at(coat.start(), COAT, 0);
    tag(point, "entry", entry.id());
    tag(point, "part", coat.part().toString());
    tag(point, "jar", coat.jar());
    tag(point, "room", coat.room());
    tag(point, "method", coat.method().toString());
    return point;
  }

  private Point note(Entry entry, Observation seen) {
    Point point = at(entry.at(), NOTE, 0);
    tag(point, "entry", entry.id());
    tag(point, "part", seen.part().toString());
    tag(point, "what", seen.what().toString());
    seen.coat().ifPresent(coat -> tag(point, "coat", coat));
    return point;
  }

  private Point outlook(Kept kept, long nth) {
    Point point = at(kept.madeAt(), OUTLOOK, nth);
    tag(point, "part", kept.part());
    tag(point, "milestone", kept.milestone());
    date(point, "p10_at_s", kept.p10());
    date(point, "p50_at_s", kept.p50());
    date(point, "p90_at_s", kept.p90());
    date(point, "was_at_s", kept.was());
    return point.addField("dated", kept.p50().isPresent() ? YES : 0);
  }

  private Point at(Instant at, String measurement, long nth) {
    Point point = Point.measurement(measurement).time(at.toEpochMilli(), WritePrecision.MS);
    tag(point, "shop", shop);
    return nth == 0 ? point : point.addTag("nth", Long.toString(nth));
  }

  private static void tag(Point point, String name, String value) {
    point.addTag(name, tagged(value));
  }

  /**
   * A text as it stands in a tag. A backslash before a blank or at the end would swallow what
   * follows it, and a line break would end the line; neither can be escaped there.
   */
  static String tagged(String text) {
    return text.replace('\\', '/').replaceAll("\\s", " ");
  }

  private static void field(Point point, String name, OptionalDouble value) {
    value.ifPresent(number -> point.addField(name, number));
  }

  private static void date(Point point, String name, Optional<Instant> date) {
    date.ifPresent(at -> point.addField(name, at.toEpochMilli() / 1e3));
  }

  private static double minutes(Instant from, Instant to) {
    return Duration.between(from, to).toMillis() / 6e4;
  }
}
