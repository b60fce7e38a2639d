package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class WebApiTest {
  private static WebFixture shop;
  private static Caller caller;

  @BeforeAll
  static void openTheDoor() {
    shop = new WebFixture();
    caller = new Caller(shop.address());
  }

  @AfterAll
  static void closeTheDoor() {
    shop.close();
  }

  @Test
  void nowSpeaksOfTheRoomWithAnOpenSession() {
    JsonNode now = caller.get("/api/v1/now").json();

    assertThat(now.path("room").asText()).isEqualTo("finishing room");
    assertThat(now.path("sessions").path(0).path("open").asBoolean()).isTrue();
    assertThat(now.path("sessions").path(0).path("outlook").path("summary").asText())
        .isIn("brush", "take care", "hold off", "can't tell");
    assertThat(now.path("coatOn").path(0).path("form").path("jar").asText()).isEqualTo("pale-2");
    assertThat(now.path("invented").asBoolean()).isTrue();
  }

  @Test
  void timesCarryTheOffsetOfTheShopsZone() {
    String at = caller.get("/api/v1/now").json().path("at").asText();

    assertThat(OffsetDateTime.parse(at).getOffset()).isEqualTo(ZoneOffset.ofHours(1));
  }

  @Test
  void readingsKeepTheirGapAndAreMarkedWhereTheyAreAGuess() {
    JsonNode day =
        caller
            .get(
                "/api/v1/rooms/finishing%20room/readings?from=2026-07-13T15:20&to=2026-07-14T21:00")
            .json();

    assertThat(day.path("gaps")).hasSize(1);
    assertThat(day.path("points").size()).isGreaterThan(200);
    assertThat(day.path("expected").size()).isGreaterThan(20);
    String lastMeasured =
        day.path("points").path(day.path("points").size() - 1).path("at").asText();
    assertThat(OffsetDateTime.parse(day.path("expected").path(0).path("at").asText()))
        .isAfter(OffsetDateTime.parse(lastMeasured));
  }

  @Test
  void thinnedReadingsAreMeasuredOnesAndNotAverages() {
    String stretch = "/api/v1/rooms/bench%20room/readings?from=2026-07-13T15:20";
    JsonNode all = caller.get(stretch).json().path("points");
    JsonNode hourly = caller.get(stretch + "&every=1h").json().path("points");

    assertThat(hourly.size()).isBetween(22, 26);
    assertThat(all).contains(hourly.path(3), hourly.path(11));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/api/v1/parts/wall%20cabinet/left%20door",
        "/api/v1/parts/wall%20cabinet%2Fleft%20door"
      })
  void aPartIsFoundWithItsSlashPlainOrEncoded(String path) {
    JsonNode part = caller.get(path).json();

    assertThat(part.path("part").asText()).isEqualTo("wall cabinet/left door");
    assertThat(part.path("coats")).isNotEmpty();
    assertThat(part.path("due")).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "/api/v1/rooms/finishin%20room/readings, finishing room",
    "/api/v1/parts/wall%20cabinet/left%20dor, wall cabinet/left door",
    "/api/v1/due?piece=stool, stools",
    "/api/v1/coats/e8888, e8",
    "/api/v1/now?room=bench, bench room"
  })
  void anUnknownNameIsAnsweredWithTheNearest(String path, String nearest) {
    Caller.Answer answer = caller.get(path);

    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.type()).startsWith("application/problem+json");
    assertThat(answer.json().path("nearest").path(0).asText()).isEqualTo(nearest);
  }

  @Test
  void aCoatIsWrittenAndReadBackWithTheAirItWasLaidIn() {
    Caller.Answer answer =
        caller.post(
            "/api/v1/coats", "{\"part\": \"wall cabinet/right door\", \"jar\": \"pale-2\"}");

    assertThat(answer.status()).isEqualTo(201);
    JsonNode coat = answer.json();
    assertThat(coat.path("kind").asText()).isEqualTo("coat");
    assertThat(coat.path("part").asText()).isEqualTo("wall cabinet/right door");
    assertThat(coat.path("coat").asText()).isEqualTo(coat.path("entry").asText());
    assertThat(coat.path("outlook").path("summary").asText()).isNotEmpty();
    assertThat(
            caller.get("/api/v1/coats/" + coat.path("coat").asText()).json().path("jar").asText())
        .isEqualTo("pale-2");
  }

  @Test
  void aSourceTellsItsIntervalInWordsAndInSecondsWhereverItIsShown() {
    for (String path : new String[] {"/api/v1/sources", "/api/v1/now"}) {
      JsonNode sources = caller.get(path).json().path("sources");
      assertThat(sources).as(path).hasSize(3);
      for (JsonNode source : sources) {
        assertThat(source.path("every").asText()).as(path).isEqualTo("PT1M");
        assertThat(source.path("everySeconds").asDouble()).as(path).isEqualTo(60);
      }
    }
  }

  @Test
  void severalPartsInOneFormAreSeveralEntries() {
    JsonNode written =
        caller
            .post(
                "/api/v1/coats",
                "{\"part\": \"wall cabinet/carcase,stools/first\", \"jar\": \"pale-2\"}")
            .json();

    assertThat(written.path("part").asText()).isEqualTo("wall cabinet/carcase");
    assertThat(written.path("entries")).hasSize(2);
  }

  @Test
  void aCoatSentTwiceUnderOneKeyIsOneCoat() {
    String form = "{\"part\": \"stools/first\", \"jar\": \"pale-2\"}";
    int before = shop.journal.coats().size();

    Caller.Answer first = caller.post("/api/v1/coats", form, "Idempotency-Key", "press-1");
    Caller.Answer again = caller.post("/api/v1/coats", form, "Idempotency-Key", "press-1");
    Caller.Answer other =
        caller.post(
            "/api/v1/coats",
            "{\"part\": \"wall cabinet/carcase\", \"jar\": \"pale-2\"}",
            "Idempotency-Key",
            "press-1");

    assertThat(again.status()).isEqualTo(201);
    assertThat(again.body()).isEqualTo(first.body());
    assertThat(other.status()).isEqualTo(409);
    assertThat(shop.journal.coats()).hasSize(before + 1);
  }

  @Test
  void aStruckCoatStaysReadableAndSaysWhy() {
    String coat =
        caller
            .post("/api/v1/coats", "{\"part\": \"stools/first\", \"jar\": \"pale-2\"}")
            .json()
            .path("coat")
            .asText();

    caller.post(
        "/api/v1/strikes", "{\"entry\": \"" + coat + "\", \"reason\": \"pressed by mistake\"}");

    assertThat(caller.get("/api/v1/coats/" + coat).json().path("struck").path("reason").asText())
        .isEqualTo("pressed by mistake");
  }

  @Test
  void everyFaultOfAFormIsReportedAtOnce() {
    Caller.Answer answer = caller.post("/api/v1/coats", "{}");

    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.type()).startsWith("application/problem+json");
    assertThat(answer.json().path("faults")).hasSize(2);
    assertThat(answer.json().path("faults").path(0).path("remedy").asText()).isNotEmpty();
  }

  @Test
  void aRefusalKeepsItsDegreeSign() {
    Caller.Answer answer = caller.get("/api/v1/parts/cabinet/20%C2%B0");

    assertThat(answer.type())
        .startsWith("application/problem+json")
        .endsWithIgnoringCase("charset=utf-8");
    assertThat(answer.json().path("detail").asText()).contains("20°");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "not json",
        "{\"part\": \"a/b\", \"part\": \"a/c\"}",
        "{\"wood\": 17}",
        "{\"part\": null}",
        "{\"part\": {\"piece\": \"a\"}}"
      })
  void aBodyThatIsNoFormIsRefusedWithTheReason(String body) {
    Caller.Answer answer = caller.post("/api/v1/coats", body);

    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.json().path("faults").path(0).path("rule").asText()).isNotEmpty();
  }

  @Test
  void aFormLongerThanItMayBeIsRefused() {
    Caller.Answer answer =
        caller.post("/api/v1/notes", "{\"text\": \"" + "x".repeat(70_000) + "\"}");

    assertThat(answer.status()).isEqualTo(413);
  }

  @Test
  void aLongFormSentWithoutItsLengthIsRefusedToo() {
    byte[] body = ("{\"text\": \"" + "x".repeat(70_000) + "\"}").getBytes(StandardCharsets.UTF_8);
    Caller.Answer answer =
        caller.send(
            caller
                .request("/api/v1/notes", "Content-Type", "application/json")
                .POST(
                    HttpRequest.BodyPublishers.ofInputStream(
                        () -> new java.io.ByteArrayInputStream(body)))
                .build());

    assertThat(answer.status()).isEqualTo(413);
  }

  @Test
  void theAirForADescribedCoatIsAnsweredAndNothingIsWritten() {
    int before = shop.journal.entries().size();

    Caller.Answer described =
        caller.post("/api/v1/outlook", "{\"finish\": \"shellac-pale\", \"air\": \"28C,80%\"}");
    Caller.Answer ofPart = caller.post("/api/v1/outlook", "{\"part\": \"wall cabinet/left door\"}");

    assertThat(described.status()).isEqualTo(200);
    assertThat(described.json().path("clouding").path("level").asText()).isNotEmpty();
    assertThat(ofPart.json().path("summary").asText()).isNotEmpty();
    assertThat(shop.journal.entries()).hasSize(before);
  }

  @ParameterizedTest
  @CsvSource({
    "Origin, http://elsewhere.example",
    "Origin, null",
    "Sec-Fetch-Site, cross-site",
    "Sec-Fetch-Site, same-site"
  })
  void aFormFromAnotherSitesPageIsTurnedAway(String header, String value) {
    int before = shop.journal.entries().size();

    Caller.Answer answer =
        caller.post(
            "/api/v1/coats", "{\"part\": \"stools/first\", \"jar\": \"pale-2\"}", header, value);

    assertThat(answer.status()).isEqualTo(403);
    assertThat(shop.journal.entries()).hasSize(before);
  }

  @Test
  void aFormThatIsNotJsonIsTurnedAway() {
    Caller.Answer answer =
        caller.send(
            caller
                .request("/api/v1/coats", "Content-Type", "text/plain")
                .POST(HttpRequest.BodyPublishers.ofString("{\"part\": \"stools/first\"}"))
                .build());

    assertThat(answer.status()).isEqualTo(415);
  }

  @Test
  void aNameThatIsNotOursIsNotAnsweredTo() throws IOException {
    assertThat(statusFor("shop.elsewhere.example")).contains("421");
    assertThat(statusFor("localhost:" + shop.server.port())).contains("200");
    assertThat(statusFor("[::1]:" + shop.server.port())).contains("200");
  }

  private static String statusFor(String host) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), shop.server.port())) {
      socket
          .getOutputStream()
          .write(
              ("GET /api/v1/rooms HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n")
                  .getBytes(StandardCharsets.US_ASCII));
      return new BufferedReader(
              new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII))
          .readLine();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/due", "/why", "/api/v1/now", "/css/base.css"})
  void everyAnswerSaysWhatMayRunAndLoads(String path) {
    Caller.Answer answer = caller.get(path);

    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("default-src 'self'")
        .contains("frame-ancestors 'none'")
        .doesNotContain("unsafe");
    assertThat(answer.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
    assertThat(answer.headers().firstValue("Referrer-Policy")).contains("no-referrer");
    assertThat(answer.headers().firstValue("Server")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/due", "/why", "/css/base.css", "/js/now.js", "/js/due.js"})
  void pagesNameNoOtherHostAndNoFolder(String path) {
    assertThat(caller.get(path).body())
        .doesNotContain("https://")
        .doesNotContainIgnoringCase("grafana")
        .doesNotContain("javascript:")
        .doesNotContainPattern("(?i)\\bsafe\\b");
  }

  @Test
  void anUnchangedPageIsNotSentAgain() {
    String tag = caller.get("/css/base.css").headers().firstValue("ETag").orElseThrow();

    assertThat(caller.get("/css/base.css", "If-None-Match", tag).status()).isEqualTo(304);
  }

  @Test
  void theChartLibraryComesFromHere() {
    Caller.Answer answer = caller.get("/lib/uplot/uPlot.esm.js");

    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.type()).startsWith("text/javascript");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/nothing",
        "/css/nothing.css",
        "/css/..%2f..%2flogback.xml",
        "/lib/uplot/..%2Fpackage.json",
        "/logback.xml",
        "/api/v1/nothing",
        "/api/v2/now"
      })
  void whatIsNotThereIsNotFound(String path) {
    assertThat(caller.get(path).status()).isIn(400, 404);
  }

  @Test
  void aRouteCalledTheWrongWaySaysSo() {
    assertThat(caller.post("/api/v1/now", "{}").status()).isEqualTo(405);
  }

  @Test
  void healthSaysReadyAndWhatIsAmiss() {
    JsonNode health = caller.get("/health").json();

    assertThat(health.path("alive").asBoolean()).isTrue();
    assertThat(health.path("ready").asBoolean()).isTrue();
    assertThat(health.path("reasons").path(0).asText()).contains("rack is lost");
    assertThat(caller.get("/health/ready").status()).isEqualTo(200);
  }

  @Test
  void notReadyWithoutAnyBelievableAir() {
    try (WebFixture silent = new WebFixture()) {
      silent.clock.advance(java.time.Duration.ofHours(1));
      Caller there = new Caller(silent.address());

      assertThat(there.get("/health").status()).isEqualTo(200);
      assertThat(there.get("/health/ready").status()).isEqualTo(503);
      assertThat(there.get("/health/ready").json().path("reasons").toString())
          .contains("no believable air in finishing room");
    }
  }

  @Test
  void notReadyWhileTheStoreCannotWrite() {
    try (WebFixture full = new WebFixture()) {
      full.storeTrouble = Optional.of("coatwright.db: the disk is full; make room");
      Caller there = new Caller(full.address());

      assertThat(there.get("/health/ready").status()).isEqualTo(503);
      assertThat(there.get("/health").json().path("reasons").toString()).contains("disk is full");
    }
  }

  @Test
  void aMirrorThatIsBehindIsToldInHealthAndFiguresAndLeavesItReady() {
    try (WebFixture shop = new WebFixture()) {
      Instant now = shop.clock.instant();
      Caller there = new Caller(shop.address());
      int readyWithout = there.get("/health/ready").status();
      String figuresWithout = there.get("/metrics").body();
      shop.mirrors =
          List.of(
              new MirrorView(
                  "house",
                  false,
                  "behind since 2026-07-14T12:20:30Z, 7 points wait",
                  120,
                  7,
                  1,
                  Optional.of(now.minusSeconds(7_200)),
                  Optional.of(now.minusSeconds(7_200))));

      assertThat(there.get("/health/ready").status()).isEqualTo(readyWithout);
      assertThat(there.get("/health").json().path("reasons").toString())
          .contains("mirror house: behind since 2026-07-14T12:20:30Z, 7 points wait");
      assertThat(there.get("/api/v1/mirrors").json().at("/mirrors/0/waiting").asInt()).isEqualTo(7);
      assertThat(figuresWithout).doesNotContain("coatwright_mirror");
      assertThat(there.get("/metrics").body())
          .contains("coatwright_mirror_sent_total{mirror=\"house\"} 120\n")
          .contains("coatwright_mirror_waiting{mirror=\"house\"} 7\n")
          .contains("coatwright_mirror_parked{mirror=\"house\"} 1\n")
          .contains("coatwright_mirror_behind_seconds{mirror=\"house\"} 7200\n");
    }
  }

  @Test
  void anEntryThatCouldNotBeWrittenSaysSoAndWhatToDo() {
    try (WebFixture full = new WebFixture()) {
      full.journal.full = true;
      Caller.Answer answer =
          new Caller(full.address()).post("/api/v1/pieces", "{\"name\": \"a tray\"}");

      assertThat(answer.status()).isEqualTo(503);
      assertThat(answer.json().path("detail").asText())
          .contains("disk is full")
          .contains("make room");
    }
  }

  @Test
  void figuresAreInThePrometheusTextFormat() {
    Caller.Answer answer = caller.get("/metrics");

    assertThat(answer.type()).startsWith("text/plain; version=0.0.4");
    assertThat(answer.body().lines().filter(line -> !line.startsWith("#")))
        .isNotEmpty()
        .allMatch(line -> line.matches("[a-z_]+(\\{[^}]*\\})? -?[0-9.]+"));
    assertThat(answer.body())
        .contains("coatwright_readings_total{source=\"rack\",verdict=\"refused\"} 1")
        .contains("coatwright_air_temperature_celsius{room=\"bench room\"}");
  }
}
