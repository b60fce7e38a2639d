package coatwright.sensors.outdoor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import coatwright.climate.RawText;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.quantity.RefusedInput;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutdoorForecastsTest {
  private static final Instant NOW = Instant.parse("2026-03-14T12:10:00Z");
  private static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  private static final OutdoorMapping LISTS = json("/hourly", "dew", false, Optional.empty());

  private final BlockingQueue<OutsideCourse> courses = new LinkedBlockingQueue<>();
  private final BlockingQueue<RawText> texts = new LinkedBlockingQueue<>();

  @TempDir Path folder;

  private static OutdoorMapping json(
      String rows, String dewPoint, boolean fahrenheit, Optional<ZoneId> zone) {
    return new OutdoorMapping(
        true, rows, "time", "temp", Optional.of(dewPoint), Optional.empty(), fahrenheit, zone);
  }

  /** Hours from noon on, 10 °C rising by half a kelvin an hour, dew point 4 °C. */
  private static String lists(int hours) {
    StringBuilder times = new StringBuilder();
    StringBuilder temps = new StringBuilder();
    StringBuilder dews = new StringBuilder();
    for (int i = 0; i < hours; i++) {
      String comma = i == 0 ? "" : ", ";
      Instant at = Instant.parse("2026-03-14T12:00:00Z").plus(Duration.ofHours(i));
      times.append(comma).append('"').append(at).append('"');
      temps.append(comma).append(10 + 0.5 * i);
      dews.append(comma).append(4.0);
    }
    return "{\"hourly\": {\"time\": [%s], \"temp\": [%s], \"dew\": [%s]}}"
        .formatted(times, temps, dews);
  }

  @Test
  void readsListsUnderWordsByTheMiddleOfEachHour() {
    OutsideCourse course = new OutdoorReader(LISTS).read(lists(48), NOW);

    assertThat(course.issuedHour()).isEqualTo(NOW.getEpochSecond() / 3600);
    assertThat(course.firstHour()).isEqualTo(course.issuedHour());
    assertThat(course.tempC()[0]).isCloseTo(10.25, within(1e-9));
    assertThat(course.tempC()[20]).isCloseTo(20.25, within(1e-9));
    // 4 °C: 813 Pa (ASHRAE Handbook Fundamentals 2017, chapter 1, table 3).
    assertThat(course.vapourPa()[5]).isCloseTo(813, within(1.0));
  }

  @Test
  void readsAListOfObjectsInFahrenheitOnAClockWithoutOffset() {
    StringBuilder rows = new StringBuilder("[");
    for (int i = 0; i < 12; i++) {
      rows.append(i == 0 ? "" : ",")
          .append(
              "{\"time\": \"2026-03-14 %02d:00\", \"temp\": \"50\", \"dew\": 41}"
                  .formatted(12 + i));
    }
    OutsideCourse course =
        new OutdoorReader(json("", "dew", true, Optional.of(ZoneOffset.UTC))).read(rows + "]", NOW);

    assertThat(course.tempC()[0]).isCloseTo(10, within(1e-9));
  }

  @Test
  void readsColumnsWithHumidityAndSecondsSince1970() {
    StringBuilder text = new StringBuilder("when,t,rh\n");
    for (int i = 0; i < 30; i++) {
      text.append(NOW.getEpochSecond() + 3600L * i).append(",20,50\n");
    }
    OutdoorMapping columns =
        new OutdoorMapping(
            false, "", "when", "t", Optional.empty(), Optional.of("rh"), false, Optional.empty());

    OutsideCourse course = new OutdoorReader(columns).read(text.toString(), NOW);

    // 20 °C saturated: 2339 Pa (ASHRAE Handbook Fundamentals 2017, chapter 1, table 3).
    assertThat(course.vapourPa()[3]).isCloseTo(0.5 * 2339, within(1.0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "not JSON",
        "{}",
        "{\"hourly\": {\"time\": [], \"temp\": [], \"dew\": []}}",
        "{\"hourly\": {\"time\": [1, 2], \"temp\": [1], \"dew\": [1, 2]}}",
        "{\"hourly\": [{\"time\": \"2026-03-14T12:00:00Z\", \"temp\": 10}]}",
        "{\"hourly\": [{\"time\": \"2026-03-14T12:00:00Z\", \"temp\": \"NaN\", \"dew\": 4}]}",
        "{\"hourly\": [{\"time\": \"2026-03-14T12:00\", \"temp\": 10, \"dew\": 4}]}",
        "{\"hourly\": [{\"time\": \"2026-03-14T12:00:00Z\", \"temp\": 10, \"dew\": 14}]}",
        "{\"hourly\": [{\"time\": \"2026-03-14T12:00:00Z\", \"temp\": 1000, \"dew\": 4}]}"
      })
  void refusesWhatItDoesNotUnderstandWhole(String text) {
    assertThatThrownBy(() -> new OutdoorReader(LISTS).read(text, NOW))
        .isInstanceOf(RefusedInput.class)
        .hasMessageStartingWith("outdoor forecast: ");
  }

  @Test
  void refusesAForecastThatIsOver() {
    Instant later = NOW.plus(Duration.ofDays(3));
    assertThatThrownBy(() -> new OutdoorReader(LISTS).read(lists(48), later))
        .isInstanceOf(RefusedInput.class)
        .hasMessageContaining("6 hours ahead");
  }

  @Test
  void aFileIsReadKeptAndHandedOn() throws IOException, InterruptedException {
    Path file = folder.resolve("weather.json");
    Files.writeString(file, lists(48));
    try (OutdoorForecasts forecasts = from(new OutdoorSource.OfFile(file))) {
      forecasts.start();

      assertThat(courses.poll(20, TimeUnit.SECONDS)).isNotNull();
      RawText kept = texts.poll(20, TimeUnit.SECONDS);
      assertThat(kept.verdict()).isEqualTo("accepted");
      assertThat(forecasts.status().state()).isEqualTo(SourceState.CURRENT);
      assertThat(forecasts.status().trouble()).isEmpty();
    }
  }

  @Test
  void anAddressIsAskedAndARefusalSaysWhy() throws IOException, InterruptedException {
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/weather",
        exchange -> {
          byte[] body = "{\"hourly\": 3}".getBytes(StandardCharsets.UTF_8);
          exchange.sendResponseHeaders(200, body.length);
          exchange.getResponseBody().write(body);
          exchange.close();
        });
    server.start();
    URI address =
        URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/weather?key=secret");
    try (OutdoorForecasts forecasts = from(new OutdoorSource.OfAddress(address))) {
      forecasts.start();

      RawText kept = texts.poll(20, TimeUnit.SECONDS);

      assertThat(kept.verdict()).isEqualTo("refused");
      assertThat(kept.reason().orElseThrow()).contains("list of objects");
      assertThat(kept.channel()).doesNotContain("secret");
      assertThat(courses).isEmpty();
    } finally {
      server.stop(0);
    }
  }

  @Test
  void whatWasKeptIsReadAgainAtAStartAndAStaleOneIsNamed() {
    RawText kept =
        new RawText(
            OutdoorForecasts.SOURCE,
            "weather.json",
            NOW.minus(Duration.ofHours(30)),
            lists(48),
            "accepted",
            Optional.empty());
    try (OutdoorForecasts forecasts = from(new OutdoorSource.OfFile(folder.resolve("none.json")))) {
      forecasts.recall(List.of(kept));

      SourceStatus status = forecasts.status();

      assertThat(courses).hasSize(1);
      assertThat(status.trouble().orElseThrow()).contains("no longer used");
    }
  }

  private OutdoorForecasts from(OutdoorSource source) {
    return new OutdoorForecasts(
        source, LISTS, Duration.ofHours(1), CLOCK, courses::add, texts::add);
  }
}
