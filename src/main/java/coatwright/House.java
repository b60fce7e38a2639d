package coatwright;

import coatwright.cli.Hall;
import coatwright.cli.Stop;
import coatwright.climate.RawText;
import coatwright.config.RefusedSettings;
import coatwright.config.Settings;
import coatwright.config.SettingsFolder;
import coatwright.film.Finish;
import coatwright.outlook.FilmOutlooks;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookForm;
import coatwright.outlook.OutlookSettings;
import coatwright.quantity.RefusedInput;
import coatwright.replay.DescribedCases;
import coatwright.replay.Replay;
import coatwright.sensors.Intake;
import coatwright.sensors.MappedPayload;
import coatwright.sensors.MappingReader;
import coatwright.sensors.RawReading;
import coatwright.sensors.Recorded;
import coatwright.sensors.SourceMapping;
import coatwright.store.Export;
import coatwright.store.SqliteStore;
import coatwright.store.StoreTrouble;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the commands ask of the house: settings found, rooms wired, the daemon started. */
final class House implements Hall {
  private static final String SETTINGS = "coatwright.yaml";

  private final Clock clock;

  House(Clock clock) {
    this.clock = clock;
  }

  @Override
  public ShopFacts shop(Place place) {
    Optional<Settings> settings = settingsIfAny(place);
    Settings.Web web = settings.map(Settings::web).orElse(Settings.Web.DEFAULT);
    Settings.Shop shop = settings.map(Settings::shop).orElse(Settings.Shop.DEFAULT);
    Path data =
        place
            .data()
            .orElseGet(() -> settings.map(Settings::store).orElse(Settings.Store.DEFAULT).folder());
    Whereabouts.Address daemon =
        Whereabouts.of(data).orElse(new Whereabouts.Address(web.host(), web.port()));
    return new ShopFacts(daemon.host(), daemon.port(), shop.units(), shop.zone());
  }

  /** None where nobody named settings and the usual place has none. */
  private static Optional<Settings> settingsIfAny(Place place) {
    return place.config().isEmpty() && !Files.exists(settingsFile(place))
        ? Optional.empty()
        : Optional.of(settings(place));
  }

  @Override
  public Map<String, Finish> finishes(Place place) {
    return refusing(() -> SettingsFolder.finishesOf(settingsFile(place)));
  }

  @Override
  public Outlook outlook(Place place, Map<String, String> form) {
    return FilmOutlooks.described(OutlookForm.read(form, finishes(place)));
  }

  @Override
  public void run(Place place, Consumer<String> say) {
    Settings settings = settings(place);
    Daemon daemon = Daemon.open(settings, dataFolder(place, settings), clock);
    CountDownLatch stopped = stoppedBySignal(daemon);
    try {
      int port = daemon.start(false);
      say.accept("Coatwright is up: http://%s:%d".formatted(settings.web().host(), port));
      stopped.await();
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    } finally {
      daemon.close();
    }
  }

  @Override
  public void demo(Place place, DemoWish wish, Consumer<String> say) {
    new Demo(clock, say).run(place.data(), wish);
  }

  /** Stops the daemon when the machine or a person says so; the latch opens when it has. */
  static CountDownLatch stoppedBySignal(AutoCloseable daemon) {
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime()
        .addShutdownHook(
            new Thread(
                () -> {
                  try {
                    daemon.close();
                  } catch (Exception trouble) {
                    throw new IllegalStateException("stopping failed", trouble);
                  } finally {
                    stopped.countDown();
                  }
                },
                "stop"));
    return stopped;
  }

  @Override
  public List<Check> checkup(Place place) {
    List<Check> checks = new ArrayList<>();
    Settings settings;
    try {
      settings = SettingsFolder.read(settingsFile(place));
    } catch (RefusedSettings refused) {
      checks.add(new Check("settings", false, String.valueOf(refused.getMessage())));
      return checks;
    }
    checks.add(new Check("settings", true, "read from " + settingsFile(place)));
    new Checkup(settings, dataFolder(place, settings)).lookInto(checks);
    return checks;
  }

  @Override
  public void listen(Path mappings, Path payloads, Consumer<Object> tell) {
    Recorded recorded =
        refusing(
            () ->
                new Recorded(
                    MappingReader.readForRecordings(SettingsFolder.document(mappings)), clock));
    try (Stream<String> lines = Files.lines(payloads)) {
      lines.filter(line -> !line.isBlank()).forEach(line -> judge(recorded, line, tell));
    } catch (IOException unreadable) {
      throw unreadable(payloads, unreadable);
    } catch (UncheckedIOException noText) {
      throw unreadable(payloads, new IOException(noText));
    }
  }

  @Override
  public Proposed propose(
      Place place, EarWish wish, String name, Optional<String> room, Consumer<String> heard) {
    return new SetUpAid(settingsIfAny(place), settingsFile(place))
        .propose(wish, name, room, heard, source -> kept(place, source, SetUpAid.MOST_KEPT));
  }

  @Override
  public Path accept(Place place, String name, String yaml) {
    return new SetUpAid(settingsIfAny(place), settingsFile(place)).accept(name, yaml);
  }

  /** A line that is no recording is answered for like any other; the rest still are. */
  private static void judge(Recorded recorded, String line, Consumer<Object> tell) {
    try {
      recorded.judge(line).forEach(tell);
    } catch (RefusedInput refused) {
      MappedPayload.Refused reason =
          new MappedPayload.Refused(Optional.empty(), String.valueOf(refused.getMessage()));
      tell.accept(new MappedPayload("", List.of(), List.of(), List.of(reason)));
    }
  }

  @Override
  public Object replay(Place place, ReplayWish wish) {
    OutlookSettings settings =
        settingsIfAny(place)
            .map(Shop::outlookSettings)
            .orElseGet(
                () ->
                    OutlookSettings.usual(
                        Settings.Shop.DEFAULT.usualFinish(), Settings.Shop.DEFAULT.zone()));
    SourceMapping mapping =
        refusing(
            () -> MappingReader.read(SettingsFolder.document(wish.mapping()), "recording", false));
    return new Replay(finishes(place), settings)
        .run(text(wish.readings()), mapping, wish.coats().map(House::text), wish.schedule());
  }

  @Override
  public Object describedCase(Place place, Path described) {
    String usual =
        settingsIfAny(place)
            .map(settings -> settings.shop().usualFinish())
            .orElse(Settings.Shop.DEFAULT.usualFinish());
    return new DescribedCases(finishes(place), usual).answer(text(described));
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException unreadable) {
      throw unreadable(file, unreadable);
    }
  }

  private static Stop unreadable(Path file, IOException why) {
    String says =
        why instanceof NoSuchFileException
            ? " is not there; check its name and folder"
            : " cannot be read; see that it is a text file";
    return new Stop(Stop.BAD_INPUT, file + says, why);
  }

  @Override
  public List<Path> export(Place place, Path folder) {
    Settings settings = settings(place);
    return reading(
        dataFolder(place, settings),
        store ->
            new Export(store, settings.shop().zone())
                .to(folder).stream().map(Export.Written::file).toList());
  }

  @Override
  public List<Heard> kept(Place place, @Nullable String source, int atMost) {
    Settings settings = settings(place);
    List<String> known = settings.sources().stream().map(mapping -> mapping.source()).toList();
    if (source != null && !known.contains(source)) {
      throw new Stop(
          Stop.BAD_INPUT,
          "no sensor \"%s\"; %s"
              .formatted(
                  source,
                  known.isEmpty()
                      ? "the settings name none"
                      : "there are: " + String.join(", ", known)));
    }
    return reading(
        dataFolder(place, settings),
        store ->
            settings.sources().stream()
                .filter(mapping -> source == null || mapping.source().equals(source))
                .flatMap(mapping -> heard(mapping, store.readings().raw(mapping.source(), atMost)))
                .sorted(Comparator.comparing(Heard::arrivedAt))
                .toList());
  }

  /** Read again in the order they came, so that what needs the ones before has them. */
  private static Stream<Heard> heard(SourceMapping mapping, List<RawText> newestFirst) {
    Intake intake = Intake.alone(mapping);
    List<Heard> heard = new ArrayList<>();
    for (int i = newestFirst.size() - 1; i >= 0; i--) {
      RawText text = newestFirst.get(i);
      MappedPayload read = intake.take(RawReading.kept(mapping, text)).verdict();
      heard.add(
          new Heard(
              text.source() + "@" + text.arrivedAt(),
              text.source(),
              text.channel(),
              text.arrivedAt(),
              text.text(),
              text.verdict(),
              text.reason(),
              read.accepted(),
              read.heldBack(),
              read.refused()));
    }
    return heard.stream();
  }

  private static <T> T reading(Path data, java.util.function.Function<SqliteStore, T> work) {
    try (SqliteStore store = SqliteStore.openToRead(data)) {
      return work.apply(store);
    } catch (StoreTrouble trouble) {
      throw new Stop(Stop.INTERNAL, String.valueOf(trouble.getMessage()), trouble);
    }
  }

  private static Settings settings(Place place) {
    return refusing(() -> SettingsFolder.read(settingsFile(place)));
  }

  private static Path dataFolder(Place place, Settings settings) {
    return place.data().orElse(settings.store().folder());
  }

  /** The settings named, else those of the checkout or installation. */
  private static Path settingsFile(Place place) {
    return place
        .config()
        .map(named -> Files.isDirectory(named) ? named.resolve(SETTINGS) : named)
        .orElseGet(
            () ->
                home()
                    .map(home -> home.resolve("config"))
                    .orElse(Path.of("config"))
                    .resolve(SETTINGS));
  }

  private static Optional<Path> home() {
    return Optional.ofNullable(System.getProperty("coatwright.home")).map(Path::of);
  }

  private static <T> T refusing(Supplier<T> reading) {
    try {
      return reading.get();
    } catch (RefusedSettings refused) {
      throw new Stop(Stop.BAD_INPUT, String.valueOf(refused.getMessage()), refused);
    }
  }
}
