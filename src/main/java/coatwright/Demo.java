package coatwright;

import coatwright.cli.Hall.DemoWish;
import coatwright.cli.Stop;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.demo.InventedShop;
import coatwright.sensors.simulated.InProcessBroker;
import coatwright.sensors.simulated.SimulatedSensor;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The demo: the daemon as it is, over an invented shop. Its past is written first, then its sensors
 * speak over a broker of its own, and from there on nothing knows that it is not a real shop.
 */
final class Demo {
  private static final Logger LOG = LoggerFactory.getLogger(Demo.class);
  private static final int USUAL_BROKER_PORT = 18_883;

  /** Oftener than the minute its settings tell, so that a page moves while one looks. */
  private static final Duration SPEAKS_EVERY = Duration.ofSeconds(40);

  /** By then the house has subscribed. */
  private static final Duration FIRST_WORD = Duration.ofSeconds(2);

  /** A running house keeps a source's last thousand texts; at one a minute, these. */
  private static final Duration TEXTS_KEPT = Duration.ofMinutes(1000);

  private final Clock clock;
  private final Consumer<String> say;

  Demo(Clock clock, Consumer<String> say) {
    this.clock = clock;
    this.say = say;
  }

  void run(Optional<Path> kept, DemoWish wish) {
    Path folder = kept.orElseGet(Demo::temporary);
    try (Running running = new Running(kept.isPresent() ? Optional.empty() : Optional.of(folder))) {
      CountDownLatch stopped = House.stoppedBySignal(running);
      start(folder, wish, running);
      if (wish.stopAfter().isEmpty()) {
        stopped.await();
      } else {
        boolean early = stopped.await(wish.stopAfter().get().toMillis(), TimeUnit.MILLISECONDS);
        say.accept(early ? "Stopped." : "Stopped as asked.");
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void start(Path folder, DemoWish wish, Running running) {
    say.accept(InventedShop.BANNER);
    InProcessBroker broker = running.with(broker(wish));
    Settings settings = settings(folder, wish, broker.port());
    Daemon daemon = running.with(Daemon.open(settings, folder, clock));
    InventedShop invented = new InventedShop(clock.instant(), settings.shop().zone());
    if (daemon.shop().journal().entries().isEmpty()) {
      write(daemon.shop(), invented);
    }
    int port = daemon.start(true);
    speak(invented, broker, running);
    say.accept("Its pages: http://%s:%d".formatted(settings.web().host(), port));
    say.accept("Its MQTT broker: 127.0.0.1:" + broker.port() + ", all its sensors speak there");
    say.accept("Its data: " + folder + (running.goes() ? ", gone when it stops" : ""));
  }

  private static InProcessBroker broker(DemoWish wish) {
    try {
      return InProcessBroker.start(wish.brokerPort().orElse(USUAL_BROKER_PORT));
    } catch (InProcessBroker.CannotStart taken) {
      throw new Stop(Stop.BAD_INPUT, String.valueOf(taken.getMessage()), taken);
    }
  }

  private void write(Shop shop, InventedShop invented) {
    Instant until = clock.instant();
    long beganNs = System.nanoTime();
    new HistoryWriter(shop, invented, HistoryWriter.mapped(shop, until.minus(TEXTS_KEPT)))
        .write(until);
    LOG.info(
        "{} days of invented history written in {} ms",
        InventedShop.HISTORY.toDays(),
        TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - beganNs));
  }

  /** The sensors speak in turn, so that something moves every few seconds. */
  private void speak(InventedShop invented, InProcessBroker broker, Running running) {
    ScheduledExecutorService turns =
        Executors.newSingleThreadScheduledExecutor(task -> new Thread(task, "demo-turns"));
    running.with(turns::shutdownNow);
    long firstMs = FIRST_WORD.toMillis();
    for (InventedShop.Voice voice : invented.voices()) {
      SimulatedSensor sensor =
          running.with(
              new SimulatedSensor(
                  voice.source(), broker.url(), voice.topic(), SPEAKS_EVERY, voice.text(), clock));
      Future<?> turn = turns.schedule(sensor::start, firstMs, TimeUnit.MILLISECONDS);
      running.with(() -> turn.cancel(false));
      firstMs += SPEAKS_EVERY.toMillis() / invented.voices().size();
    }
  }

  private static Settings settings(Path folder, DemoWish wish, int brokerPort) {
    try {
      Settings written =
          SettingsFolder.read(InventedShop.writeSettings(folder.resolve("settings")));
      Settings.Broker demo =
          new Settings.Broker(
              "tcp://127.0.0.1:" + brokerPort,
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              Optional.of("coatwright-demo"));
      Settings.Web web =
          new Settings.Web(written.web().host(), wish.port().orElse(written.web().port()));
      return new Settings(
          written.shop(),
          written.rooms(),
          Map.of("demo", demo),
          written.mirrors(),
          web,
          written.store(),
          written.sources(),
          written.finishes(),
          written.outdoor());
    } catch (IOException unwritable) {
      throw new Stop(
          Stop.INTERNAL,
          "cannot write to %s (%s); name another folder with --data"
              .formatted(folder, unwritable.getMessage()),
          unwritable);
    }
  }

  private static Path temporary() {
    try {
      return Files.createTempDirectory("coatwright-demo-");
    } catch (IOException full) {
      throw new Stop(Stop.INTERNAL, "no temporary folder can be made; name one with --data", full);
    }
  }
}
