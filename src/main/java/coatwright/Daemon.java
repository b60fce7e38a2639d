package coatwright;

import coatwright.cli.Stop;
import coatwright.climate.SourceStatus;
import coatwright.config.Settings;
import coatwright.outlook.OutlookForm;
import coatwright.sensors.Sensors;
import coatwright.sensors.mqtt.Broker;
import coatwright.sensors.outdoor.OutdoorForecasts;
import coatwright.sensors.outdoor.OutdoorSource;
import coatwright.store.SqliteStore;
import coatwright.store.StoreTrouble;
import coatwright.web.WebBell;
import coatwright.web.WebException;
import coatwright.web.WebRooms;
import coatwright.web.WebServer;
import coatwright.web.WebSettings;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The running house: store, rooms, sensors, pages and the heartbeat, started in that order and
 * stopped in the reverse. A broker that is not there or a port that is unplugged does not keep it
 * from running; a database that cannot be opened or a taken web port does, with one clear sentence.
 */
final class Daemon implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Daemon.class);
  private static final int OUTDOORS_RECALLED = 1_000;
  private static final Duration SSE_HEARTBEAT = Duration.ofSeconds(10);

  private final Running running = new Running();
  private final Clock clock;
  private final Shop shop;

  private Daemon(Settings settings, Path data, Clock clock) {
    this.clock = clock;
    SqliteStore store;
    try {
      store = SqliteStore.open(data, clock);
    } catch (StoreTrouble trouble) {
      throw new Stop(Stop.INTERNAL, String.valueOf(trouble.getMessage()), trouble);
    }
    running.with(store);
    this.shop = new Shop(settings, store, clock);
  }

  /** Opens the store and the ground floor; nothing listens yet. */
  static Daemon open(Settings settings, Path data, Clock clock) {
    refuseTakenPort(settings.web());
    return new Daemon(settings, data, clock);
  }

  /** Before anything is opened: a second start beside a running one ends here. */
  private static void refuseTakenPort(Settings.Web web) {
    try (ServerSocket probe = new ServerSocket()) {
      probe.setReuseAddress(true);
      probe.bind(new InetSocketAddress(web.host(), web.port()));
    } catch (IOException taken) {
      throw portTaken(web, taken);
    }
  }

  private static Stop portTaken(Settings.Web web, Exception cause) {
    return new Stop(
        Stop.BAD_INPUT,
        "port %d is taken by another program; stop it, or set web.port in the settings (demo: --port)"
            .formatted(web.port()),
        cause);
  }

  Shop shop() {
    return shop;
  }

  /** Everything else. Returns the port of the pages. */
  int start(boolean invented) {
    Settings settings = shop.settings();
    Bells bells = new Bells();
    Sensors sensors =
        new Sensors(
            settings.sources(),
            brokers(settings),
            clock,
            shop.climate()::accept,
            shop.climate()::doubt,
            shop.store().readings()::keep);
    Optional<OutdoorForecasts> outdoors = outdoors(settings);
    Supplier<List<SourceStatus>> statuses = statuses(sensors, outdoors);
    Shop.Meaning meaning = shop.meaning(statuses, bells);
    Heartbeat heartbeat = new Heartbeat(meaning.outlooks(), meaning.watch(), clock);
    WebServer web = web(settings, statuses, meaning, invented);
    bells.add(new WebBell(web));
    shop.climate().onReading(reading -> heartbeat.reading());
    shop.climate().onDoubt(doubt -> heartbeat.reading());
    shop.journal().onEntry(entry -> heartbeat.entry(entry.id()));
    running.with(heartbeat);
    running.with(sensors);
    heartbeat.start();
    sensors.start();
    outdoors.ifPresent(
        forecasts -> {
          running.with(forecasts);
          forecasts.start();
        });
    LOG.info("running with {} sensors", settings.sources().size());
    return web.port();
  }

  private WebServer web(
      Settings settings,
      Supplier<List<SourceStatus>> statuses,
      Shop.Meaning meaning,
      boolean invented) {
    WebRooms rooms =
        new WebRooms(
            shop.climate(),
            shop.journal(),
            shop.forms(clock),
            meaning.outlooks(),
            meaning.watch(),
            meaning.reviews(),
            settings.finishes(),
            statuses,
            shop.store()::trouble,
            () -> Checkup.backup(shop.store().file().toAbsolutePath().resolveSibling("")),
            OutlookForm::read,
            settings.shop().name(),
            settings.shop().zone(),
            settings.shop().units(),
            invented,
            clock);
    Settings.Web web = settings.web();
    WebServer server =
        new WebServer(rooms, new WebSettings(web.host(), web.port(), Set.of(), SSE_HEARTBEAT));
    try {
      server.start();
    } catch (WebException taken) {
      LOG.debug("no pages", taken);
      throw portTaken(web, taken);
    }
    running.with(server);
    Path data = shop.store().file().toAbsolutePath().resolveSibling("");
    running.with(Whereabouts.leave(data, web.host(), server.port()));
    return server;
  }

  /** What was kept of an outdoor forecast is read again before anything is forecast from it. */
  private Optional<OutdoorForecasts> outdoors(Settings settings) {
    return settings
        .outdoor()
        .map(
            outdoor -> {
              OutdoorForecasts forecasts =
                  new OutdoorForecasts(
                      source(settings, outdoor),
                      outdoor.mapping(),
                      outdoor.every(),
                      clock,
                      shop::outdoors,
                      shop.store().readings()::keep);
              forecasts.recall(
                  shop.store().readings().raw(OutdoorForecasts.SOURCE, OUTDOORS_RECALLED));
              return forecasts;
            });
  }

  private static OutdoorSource source(Settings settings, Settings.Outdoor outdoor) {
    if (outdoor.file().isPresent()) {
      return new OutdoorSource.OfFile(outdoor.file().get());
    }
    return outdoor
        .url()
        .<OutdoorSource>map(OutdoorSource.OfAddress::new)
        .orElseGet(
            () ->
                new OutdoorSource.OfTopic(
                    // A name of its own at the broker: two with one name throw each other out.
                    outdoorBroker(brokers(settings).get(outdoor.broker().orElseThrow())),
                    outdoor.topic().orElseThrow()));
  }

  private static Broker outdoorBroker(@Nullable Broker broker) {
    if (broker == null) {
      throw new IllegalStateException("the settings were read without that broker");
    }
    return new Broker(
        broker.name() + " (outdoor forecast)",
        broker.url(),
        broker.user(),
        broker.passwordFile(),
        broker.ca(),
        broker.clientId() + "-outdoor");
  }

  private static Supplier<List<SourceStatus>> statuses(
      Sensors sensors, Optional<OutdoorForecasts> outdoors) {
    return () ->
        Stream.concat(sensors.statuses().stream(), outdoors.stream().map(OutdoorForecasts::status))
            .toList();
  }

  private static Map<String, Broker> brokers(Settings settings) {
    Map<String, Broker> brokers = new HashMap<>();
    settings
        .brokers()
        .forEach(
            (name, broker) ->
                brokers.put(
                    name,
                    new Broker(
                        name,
                        URI.create(broker.url()),
                        broker.user(),
                        broker.passwordFile(),
                        broker.ca(),
                        broker.clientId().orElseGet(() -> clientId(settings)))));
    return brokers;
  }

  private static String clientId(Settings settings) {
    String name = settings.shop().name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    return "coatwright-" + name.substring(0, Math.min(40, name.length()));
  }

  /** Stops what runs, the last started first. */
  @Override
  public void close() {
    running.close();
  }
}
