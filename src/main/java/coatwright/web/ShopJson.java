package coatwright.web;

import coatwright.json.Json;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;

/** The shop's JSON: as everywhere, with times in the shop's zone and their offset. */
final class ShopJson {
  private final ObjectMapper mapper;

  ShopJson(ZoneId zone) {
    SimpleModule times = new SimpleModule("shop times");
    times.addSerializer(Instant.class, new ZonedTime(zone));
    mapper = Json.mapper().copy().registerModule(times);
  }

  /** The record on one line. */
  String line(Object value) {
    try {
      return mapper.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("cannot write " + value.getClass().getName() + " as JSON", e);
    }
  }

  private static final class ZonedTime extends StdSerializer<Instant> {
    private final transient ZoneId zone;

    ZonedTime(ZoneId zone) {
      super(Instant.class);
      this.zone = zone;
    }

    @Override
    public void serialize(Instant at, JsonGenerator out, SerializerProvider provider)
        throws IOException {
      out.writeString(
          DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
              at.truncatedTo(ChronoUnit.MILLIS).atZone(zone)));
    }
  }
}
