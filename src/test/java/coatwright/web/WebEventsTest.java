package coatwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.watch.Warning;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class WebEventsTest {
  private WebFixture shop;

  @BeforeEach
  void openTheDoor() {
    shop = new WebFixture(new WebSettings("127.0.0.1", 0, Set.of(), Duration.ofSeconds(1)));
  }

  @AfterEach
  void closeTheDoor() {
    shop.close();
  }

  @Test
  void anAcceptedReadingIsToldAtOnceAndTheAirForTheCoatAfterIt() throws Exception {
    try (EventListener listener = new EventListener(shop.address())) {
      listener.nextComment();
      long publishedNs = System.nanoTime();
      shop.reading(WebFixture.FINISHING, shop.clock.instant(), 24.5, 71, OptionalDouble.of(17));

      EventListener.Heard reading = listener.next("reading");
      EventListener.Heard outlook = listener.next("outlook");

      assertThat(reading.data().path("temperatureC").asDouble()).isEqualTo(24.5);
      assertThat(reading.data().path("air").path("air").path("rhPct").asDouble()).isEqualTo(71);
      assertThat(Duration.ofNanos(reading.atNs() - publishedNs)).isLessThan(Duration.ofSeconds(1));
      assertThat(Duration.ofNanos(outlook.atNs() - publishedNs)).isLessThan(Duration.ofSeconds(1));
      assertThat(outlook.data().path("outlook").path("summary").asText()).isEqualTo("hold off");
    }
  }

  @Test
  void aJumpIsToldAsOneInDoubtBesideTheAirLastBelieved() throws Exception {
    try (EventListener listener = new EventListener(shop.address())) {
      listener.nextComment();
      double believed = shop.climate.now(WebFixture.FINISHING).air().orElseThrow().airTempC();
      shop.jump(WebFixture.FINISHING, shop.clock.instant(), 28, 80);

      EventListener.Heard reading = listener.next("reading");

      assertThat(reading.data().has("temperatureC")).isFalse();
      assertThat(reading.data().path("doubt").path("airTempC").asDouble()).isEqualTo(28);
      assertThat(reading.data().path("doubt").path("sentence").asText())
          .isEqualTo("just read 28.0 °C, 80 %: a jump, waiting for one more reading to agree");
      assertThat(reading.data().path("air").path("air").path("airTempC").asDouble())
          .isCloseTo(believed, within(1e-9));
    }
  }

  @Test
  void manyReadingsAskForTheAirForTheCoatAtMostEveryTwoSeconds() throws Exception {
    try (EventListener listener = new EventListener(shop.address())) {
      listener.nextComment();
      int before = shop.outlooks.asked.get();
      long startedNs = System.nanoTime();
      burst();
      listener.next("outlook");
      burst();
      EventListener.Heard second = listener.next("outlook");

      assertThat(Duration.ofNanos(second.atNs() - startedNs))
          .isGreaterThan(Duration.ofMillis(1_900));
      assertThat(shop.outlooks.asked.get() - before).isLessThanOrEqualTo(3);
    }
  }

  private void burst() {
    for (int i = 0; i < 300; i++) {
      shop.reading(
          WebFixture.FINISHING, shop.clock.instant(), 20 + i / 1000.0, 50, OptionalDouble.empty());
    }
  }

  @Test
  void entriesMilestonesAndWarningsAreTold() throws Exception {
    try (EventListener listener = new EventListener(shop.address())) {
      listener.nextComment();

      shop.journal.jar(java.util.Map.of("name", "amber", "finish", "shellac-pale"));
      assertThat(listener.next("entry").data().path("kind").asText()).isEqualTo("jar");

      shop.outlooks.refresh(shop.clock.instant(), "an hour passed");
      assertThat(listener.next("milestone").data().path("due")).isNotEmpty();

      new WebBell(shop.server)
          .ring(
              new Warning(
                  "w9",
                  "clouding",
                  shop.clock.instant(),
                  Optional.empty(),
                  Optional.of(WebFixture.FINISHING),
                  Optional.empty(),
                  "the film would cloud"));
      assertThat(listener.next("warning").data().path("id").asText()).isEqualTo("w9");
    }
  }

  @Test
  void whoeverNamesNoFormTakesTheStreamAndWhoNamesAnotherIsTold() throws Exception {
    for (String accept : new String[] {"", "*/*"}) {
      try (Socket plain = new Socket(InetAddress.getLoopbackAddress(), shop.server.port())) {
        String header = accept.isEmpty() ? "" : "Accept: " + accept + "\r\n";
        plain
            .getOutputStream()
            .write(
                ("GET /api/v1/events HTTP/1.1\r\nHost: localhost\r\n" + header + "\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
        plain.setSoTimeout(10_000);
        BufferedReader lines =
            new BufferedReader(
                new InputStreamReader(plain.getInputStream(), StandardCharsets.US_ASCII));
        StringBuilder head = new StringBuilder();
        while (head.indexOf("still here") < 0) {
          head.append(lines.readLine()).append('\n');
        }
        assertThat(head.toString()).containsIgnoringCase("content-type: text/event-stream");
      }
    }
    Caller.Answer json =
        new Caller(shop.address()).get("/api/v1/events", "Accept", "application/json");
    assertThat(json.status()).isEqualTo(406);
    assertThat(json.json().path("detail").asText()).contains("text/event-stream");
  }

  @Test
  void aSilentStreamShowsItStands() throws Exception {
    try (EventListener listener = new EventListener(shop.address())) {
      assertThat(List.of(listener.nextComment(), listener.nextComment(), listener.nextComment()))
          .hasSize(3);
    }
  }

  @Test
  void aListenerThatStopsTakingEventsIsDroppedAndTheOthersHearOn() throws Exception {
    try (Socket deaf = new Socket(InetAddress.getLoopbackAddress(), shop.server.port());
        EventListener listener = new EventListener(shop.address())) {
      deaf.setReceiveBufferSize(1024);
      String request =
          String.join(
              "\r\n",
              "GET /api/v1/events HTTP/1.1",
              "Host: localhost",
              "Accept: text/event-stream",
              "",
              "");
      deaf.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      deaf.getOutputStream().flush();
      listener.nextComment();
      waitUntilListening(2);

      String longMessage = "x".repeat(40_000);
      for (int i = 0; i < 4_000 && (i % 25 != 0 || listening() > 1); i++) {
        shop.server.tell(
            new Warning(
                "w" + i,
                "sensor",
                shop.clock.instant(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                longMessage));
        listener.next("warning");
      }

      waitUntilListening(1);
      shop.journal.jar(java.util.Map.of("name", "amber", "finish", "shellac-pale"));
      assertThat(listener.next("entry").data().path("kind").asText()).isEqualTo("jar");
    }
  }

  @Test
  void closingEndsEveryStreamAndLeavesNoThread() throws Exception {
    try (EventListener one = new EventListener(shop.address());
        EventListener other = new EventListener(shop.address())) {
      one.nextComment();
      other.nextComment();

      shop.close();

      assertThat(one.endsWithin(5)).isTrue();
      assertThat(other.endsWithin(5)).isTrue();
    }
    assertThat(threadsLeft("web-sender", "web-pulse", "web-teller")).isEmpty();
  }

  private static List<String> threadsLeft(String... names) throws InterruptedException {
    for (Thread thread : Thread.getAllStackTraces().keySet()) {
      if (List.of(names).contains(thread.getName())) {
        thread.join(TimeUnit.SECONDS.toMillis(3));
      }
    }
    return Thread.getAllStackTraces().keySet().stream()
        .filter(Thread::isAlive)
        .map(Thread::getName)
        .filter(List.of(names)::contains)
        .toList();
  }

  private int listening() {
    String figures = new Caller(shop.address()).get("/metrics").body();
    return figures
        .lines()
        .filter(line -> line.startsWith("coatwright_web_listeners "))
        .mapToInt(line -> Integer.parseInt(line.substring(line.indexOf(' ') + 1)))
        .findFirst()
        .orElseThrow();
  }

  private void waitUntilListening(int count) throws IOException {
    long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
    while (listening() != count) {
      assertThat(System.nanoTime()).as("listeners: %s", listening()).isLessThan(until);
      Thread.onSpinWait();
    }
  }
}
