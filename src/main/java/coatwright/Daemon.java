package coatwright;

import coatwright.cli.Stop;
import coatwright.climate.SourceStatus;
import coatwright.config.Settings;
import coatwright.outlook.OutlookForm;
import coatwright.sensors.Sensors;
import coatwright.sensors.mqtt.Broker;
import coatwright.sensors.outdoor.OutdoorForecasts;
import coatwright.sensors.outdoor.OutdoorSource;
import coatwright.sensors.simulated.InProcessBroker;
import coatwright.store.SqliteStore;
import coatwright.store.StoreTrouble;
import coatwright.store.influx.MirrorSettings;
import coatwright.store.influx.MirrorStatus;
import coatwright.store.influx.Mirrors;
import coatwright.web.MirrorView;
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
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
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
  private final List<Runnable> onClock = new CopyOnWriteArrayList<>();

  private Daemon(Settings settings, Path data, Clock clock) {
    this.clock = clock;
    SqliteStore store;
    try {
      store =
          SqliteStore.open(
              data, clock, settings.mirrors().stream().map(MirrorSettings::wish).toList());
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
    openOwnBrokers(settings);
    ClockWatch clockWatch = clockWatch(settings);
    clockWatch.begin();
    if (!clockWatch.trusted()) {
      shop.climate().clockChanged(false);
    }
    Bells bells = new Bells();
    Sensors sensors =
        new Sensors(
            settings.sources(),
            brokers(settings, dataFolder()),
            clock,
            reading -> {
              clockWatch.beforeReading();
              shop.climate().accept(reading);
            },
            shop.climate()::doubt,
            shop.store().readings()::keep,
            shop.upkeep());
    shop.upkeep().serves(sensors);
    sensors.resume(shop.newestReadings());
    sensors.storedBy(shop.store().readings()::flush);
    onClock.add(sensors::clockChanged);
    Optional<OutdoorForecasts> outdoors = outdoors(settings);
    Supplier<List<SourceStatus>> statuses = statuses(sensors, outdoors);
    Shop.Meaning meaning = shop.meaning(statuses, clockWatch::trouble, bells);
    Heartbeat heartbeat = new Heartbeat(meaning.outlooks(), meaning.watch(), clock);
    WebServer web = web(settings, statuses, meaning, clockWatch, mirrors(settings), invented);
    bells.add(new WebBell(web));
    shop.climate().onReading(reading -> heartbeat.reading());
    shop.climate().onDoubt(doubt -> heartbeat.reading());
    shop.journal().onEntry(entry -> heartbeat.entry(entry.id()));
    running.with(clockWatch);
    running.with(heartbeat);
    running.with(sensors);
    clockWatch.start();
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

  private ClockWatch clockWatch(Settings settings) {
    return new ClockWatch(
        MachineClock.ofThisMachine(clock),
        shop.store().houseLog(),
        settings.shop().zone(),
        settings.shop().clockSetByHand(),
        stretch -> {
          shop.climate().clockChanged(stretch.trusted());
          onClock.forEach(Runnable::run);
        });
  }

  /** Nothing of the mirrors' libraries is loaded where there are none. */
  private Supplier<List<MirrorView>> mirrors(Settings settings) {
    if (settings.mirrors().isEmpty()) {
      return List::of;
    }
    Mirrors mirrors =
        running.with(
            new Mirrors(settings.mirrors(), shop.store().outbox(), settings.shop().name(), clock));
    return () -> mirrors.statuses().stream().map(Daemon::view).toList();
  }

  private static MirrorView view(MirrorStatus status) {
    return new MirrorView(
        status.name(),
        !status.alarm(),
        status.sentence(),
        status.standing().sent(),
        status.standing().waiting(),
        status.standing().parked(),
        status.lastSuccess(),
        status.behindSince());
  }

  private Path dataFolder() {
    return shop.store().file().toAbsolutePath().resolveSibling("");
  }

  private WebServer web(
      Settings settings,
      Supplier<List<SourceStatus>> statuses,
      Shop.Meaning meaning,
      ClockWatch clockWatch,
      Supplier<List<MirrorView>> mirrors,
      boolean invented) {
    WebRooms rooms =
        new WebRooms(
            shop.climate(),
            shop.journal(),
            new DatedForms(
                shop::forms,
                clockWatch::trouble,
                shop.store().houseLog(),
                clock,
                settings.shop().zone()),
            shop.upkeep().book(),
            shop.store().readings(),
            meaning.outlooks(),
            meaning.watch(),
            meaning.reviews(),
            settings.finishes(),
            statuses,
            shop.store()::trouble,
            mirrors,
            () -> Checkup.backup(dataFolder()),
            (from, to) -> shop.store().houseLog().happenings(from, to),
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
    running.with(Whereabouts.leave(dataFolder(), web.host(), server.port()));
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

  private OutdoorSource source(Settings settings, Settings.Outdoor outdoor) {
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
                    outdoorBroker(
                        brokers(settings, dataFolder()).get(outdoor.broker().orElseThrow())),
                    outdoor.topic().orElseThrow()));
  }

  private static Broker outdoorBroker(@Nullable Broker broker) {
    if (broker == null) {
      throw new IllegalStateException("the settings were read without that broker");
    }
    return broker.forOutdoorForecast();
  }

  private static Supplier<List<SourceStatus>> statuses(
      Sensors sensors, Optional<OutdoorForecasts> outdoors) {
    return () ->
        Stream.concat(sensors.statuses().stream(), outdoors.stream().map(OutdoorForecasts::status))
            .toList();
  }

  private static Map<String, Broker> brokers(Settings settings, Path data) {
    String usualId = ClientId.of(settings.shop().name(), data);
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
                        broker.clientId().orElse(usualId))));
    return brokers;
  }

  /** The broker inside this program, where the settings ask for one. */
  private void openOwnBrokers(Settings settings) {
    for (Settings.Broker broker : settings.brokers().values()) {
      if (broker.own().isPresent()) {
        Settings.Own own = broker.own().get();
        try {
          running.with(
              InProcessBroker.open(
                  own.host(),
                  own.port(),
                  broker
                      .user()
                      .flatMap(
                          user ->
                              broker
                                  .passwordFile()
                                  .map(file -> new InProcessBroker.Login(user, file)))));
        } catch (InProcessBroker.CannotStart cannot) {
          throw new Stop(Stop.BAD_INPUT, String.valueOf(cannot.getMessage()), cannot);
        }
      }
    }
  }

  /** Stops what runs, the last started first. */
  @Override
  public void close() {
    running.close();
  }
}
