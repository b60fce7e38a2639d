package coatwright.store.influx;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.sensors.Eventually;
import coatwright.store.Outbox;
import coatwright.store.SqliteStore;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
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
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a mirror makes of a server's answers, told by a server that answers as it is set to. */
class MirrorTest {
  private static final Instant NOON = Instant.parse("2026-03-14T12:00:00Z");
  private static final Duration SOON = Duration.ofSeconds(20);

  @TempDir Path folder;

  private final List<String> lines = new CopyOnWriteArrayList<>();
  private final List<String> tokens = new CopyOnWriteArrayList<>();
  private final AtomicInteger status = new AtomicInteger(204);
  private final AtomicReference<String> body = new AtomicReference<>("");
  private final AtomicInteger asked = new AtomicInteger();
  private HttpServer server;

  @BeforeEach
  void listen() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/api/v2/write", this::answer);
    server.start();
  }

  @AfterEach
  void stopListening() {
    server.stop(0);
  }

  private void answer(HttpExchange exchange) throws IOException {
    asked.incrementAndGet();
    String text = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
    tokens.add(String.valueOf(exchange.getRequestHeaders().getFirst("Authorization")));
    if (status.get() == 204) {
      lines.addAll(text.lines().toList());
    }
    byte[] says = body.get().getBytes(StandardCharsets.UTF_8);
    exchange.sendResponseHeaders(status.get(), says.length == 0 ? -1 : says.length);
    exchange.getResponseBody().write(says);
    exchange.close();
  }

  private String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  @Test
  void keepsEverythingWhileTheServerIsOverloadedAndGoesOnAfterwards() {
    MirrorSettings settings = Fixtures.mirror("house", url());
    status.set(503);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "wall", NOON, 30);
      Eventually.within(SOON, "it was tried again and again", () -> asked.get() > 3);
      MirrorStatus waiting = mirror.status();
      status.set(204);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));
      // What was sent is on record a moment before the trouble is told to be over.
      Eventually.within(SOON, "the trouble is over", () -> mirror.status().trouble().isEmpty());

      assertThat(waiting.standing().waiting()).isEqualTo(30);
      assertThat(waiting.sentence()).contains("30 points wait").contains("answers 503");
      assertThat(lines).hasSize(30).doesNotHaveDuplicates();
    }
  }

  @Test
  void saysThatNobodyAnswersAndWhichSettingToMend() {
    MirrorSettings settings = Fixtures.mirror("house", "http://127.0.0.1:1");
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "wall", NOON, 1);
      Eventually.within(SOON, "it was tried", () -> mirror.status().trouble().isPresent());

      assertThat(mirror.status().trouble().orElseThrow())
          .contains("nobody answers at http://127.0.0.1:1")
          .contains("mirrors.house.url");
    }
  }

  @Test
  void takesAnotherTokenFromItsFileWithoutANewStart() throws IOException {
    Path tokenFile = Files.writeString(folder.resolve("token"), "first-secret\n");
    MirrorSettings usual = Fixtures.mirror("house", url());
    MirrorSettings settings =
        new MirrorSettings(
            usual.name(),
            usual.url(),
            usual.org(),
            usual.bucket(),
            Optional.of(tokenFile),
            usual.what(),
            usual.history(),
            usual.batch(),
            usual.alarmAfter(),
            usual.readBack());
    status.set(401);
    try (SqliteStore store = Fixtures.open(folder.resolve("data"), settings);
        Mirror mirror = Fixtures.start(settings, store)) {
      Fixtures.readings(store, "wall", NOON, 1);
      Eventually.within(SOON, "it was refused", () -> mirror.status().trouble().isPresent());
      String told = mirror.status().sentence();
      Files.writeString(tokenFile, "second-secret\n");
      Eventually.within(SOON, "the new one is used", () -> tokens.contains("Token second-secret"));
      status.set(204);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      assertThat(told).contains("does not let us write").contains("token-file");
      assertThat(told).doesNotContain("secret");
      assertThat(tokens).contains("Token first-secret");
      assertThat(settings.toString()).doesNotContain("secret");
    }
  }

  @Test
  void parksARefusedPointWithTheServersReasonAndSendsItAgainAtTheNextStart() {
    MirrorSettings settings = Fixtures.mirror("house", url());
    status.set(400);
    body.set("{\"code\":\"invalid\",\"message\":\"field type conflict dropped=1\"}");
    try (SqliteStore store = Fixtures.open(folder, settings)) {
      try (Mirror mirror = Fixtures.start(settings, store)) {
        Fixtures.readings(store, "wall", NOON, 1);
        Eventually.within(SOON, "it is parked", () -> mirror.status().standing().parked() == 1);

        assertThat(mirror.status().alarm()).isTrue();
        assertThat(mirror.status().sentence())
            .contains("1 point refused by the server and parked: field type conflict dropped=1");
        assertThat(store.outbox().parked("house", 9).get(0).line())
            .startsWith("coatwright_reading,");
      }
      status.set(204);
      body.set("");
      try (Mirror mirror = Fixtures.start(settings, store)) {
        Eventually.within(SOON, "it is taken now", () -> mirror.status().standing().parked() == 0);

        assertThat(lines).hasSize(1);
        assertThat(mirror.status().alarm()).isFalse();
      }
    }
  }

  @Test
  void isAnAlarmWhenItHasBeenBehindForTooLong() {
    MovedClock clock = new MovedClock();
    MirrorSettings settings = Fixtures.mirror("house", url());
    status.set(500);
    try (SqliteStore store = SqliteStore.open(folder, clock, List.of(settings.wish()));
        Mirror mirror = Fixtures.start(settings, store, clock)) {
      Fixtures.readings(store, "wall", NOON, 2);
      Eventually.within(SOON, "it was refused", () -> mirror.status().trouble().isPresent());
      clock.now = NOON.plus(settings.alarmAfter());
      boolean before = mirror.status().alarm();
      clock.now = clock.now.plusSeconds(1);
      MirrorStatus after = mirror.status();
      status.set(204);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));
      Eventually.within(SOON, "the alarm is over", () -> !mirror.status().alarm());
      Eventually.within(SOON, "the trouble is over", () -> mirror.status().trouble().isEmpty());

      assertThat(before).isFalse();
      assertThat(after.alarm()).isTrue();
      assertThat(after.sentence()).startsWith("behind since 2026-03-14T12:00:00Z, 2 points wait");
      assertThat(mirror.status().sentence()).isEqualTo("up to date, 2 points sent");
    }
  }

  @Test
  void goesThroughTheHistoryInsteadWhenTooMuchWaits() {
    MirrorSettings settings = Fixtures.mirror("house", url());
    Pace tight =
        new Pace(
            Duration.ofMillis(20),
            Duration.ofMillis(20),
            Duration.ofMillis(50),
            Duration.ofSeconds(1),
            Duration.ofSeconds(1),
            100);
    status.set(503);
    try (SqliteStore store = Fixtures.open(folder, settings);
        Mirror mirror =
            new Mirror(settings, store.outbox(), Fixtures.SHOP, Clock.systemUTC(), tight)) {
      mirror.start();
      Fixtures.readings(store, "wall", NOON, 1_200);
      Eventually.within(
          SOON, "the list is emptied", () -> mirror.status().standing().historyLeft());
      long waiting = mirror.status().standing().waiting();
      status.set(204);
      Eventually.within(SOON, "all is sent", () -> Fixtures.allSent(mirror));

      assertThat(waiting).isLessThanOrEqualTo(100);
      assertThat(Set.copyOf(lines)).hasSize(1_200);
    }
  }

  @Test
  void sendsToEveryMirrorAndForgetsOneThatIsNoLongerSetUp() {
    MirrorSettings house = Fixtures.mirror("house", url());
    MirrorSettings barn = Fixtures.mirror("barn", "http://127.0.0.1:1");
    try (SqliteStore store = Fixtures.open(folder, house, barn);
        Mirror mirror = Fixtures.start(house, store)) {
      Fixtures.readings(store, "wall", NOON, 5);
      Eventually.within(SOON, "one has all", () -> Fixtures.allSent(mirror));

      assertThat(store.outbox().standing("barn").waiting()).isEqualTo(5);
    }
    Fixtures.open(folder, barn).close();
    try (SqliteStore store = Fixtures.open(folder, house, barn)) {
      Outbox.Standing anew = store.outbox().standing("house");

      assertThat(anew.historyLeft()).as("it may have missed something").isTrue();
      assertThat(store.outbox().standing("barn").waiting()).isEqualTo(5);
    }
  }

  @Test
  void stopsAtOnceWhileAServerLetsItWait() throws IOException {
    try (ServerSocket mute = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      MirrorSettings settings = Fixtures.mirror("house", "http://127.0.0.1:" + mute.getLocalPort());
      try (SqliteStore store = Fixtures.open(folder, settings)) {
        Fixtures.readings(store, "wall", NOON, 1);
        Mirror mirror = Fixtures.start(settings, store);
        try (Socket asking = mute.accept()) {
          assertThat(asking.getInputStream().read()).as("it asks").isPositive();
          mirror.close();
        }

        assertThat(mirror.status().standing().waiting()).isEqualTo(1);
      }
    }
  }

  /** A clock that is put. */
  private static final class MovedClock extends Clock {
    private volatile Instant now = NOON;

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }
}
