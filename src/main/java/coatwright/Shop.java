package coatwright;

import coatwright.air.StandardAtmosphere;
import coatwright.climate.LiveClimate;
import coatwright.climate.Reading;
import coatwright.climate.SourceStatus;
import coatwright.climate.forecast.OutsideCourse;
import coatwright.config.Settings;
import coatwright.config.Settings.Room;
import coatwright.film.SpiritDrying;
import coatwright.journal.FinishNames;
import coatwright.journal.Forms;
import coatwright.journal.Journal;
import coatwright.journal.LiveJournal;
import coatwright.journal.ShopForms;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.FilmOutlooks;
import coatwright.outlook.OutlookSettings;
import coatwright.review.FilmReviews;
import coatwright.review.Reviews;
import coatwright.sensors.SourceMapping;
import coatwright.store.SqliteStore;
import coatwright.watch.ShopWatch;
import coatwright.watch.Watch;
import coatwright.watch.WatchSettings;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;

/**
 * The rooms of one shop, wired over its store: ground floor and first floor, without the doors that
 * bring readings in and carry answers out.
 *
 * <p>The climate, journal and forms stand at once. The rest is made when it is first asked for, so
 * that a history can be written before anyone judges it.
 */
final class Shop {
  private static final Duration REMEMBERED = Duration.ofDays(1);
  private static final Duration USUAL_INTERVAL = Duration.ofMinutes(1);
  private static final double USUAL_BOARD_MM = 18;
  private static final double STILL_AIR_M_PER_S = 0.1;

  private final Settings settings;
  private final SqliteStore store;
  private final Clock clock;
  private final LiveClimate climate;
  private final Journal journal;
  private final SensorUpkeep upkeep;

  Shop(Settings settings, SqliteStore store, Clock clock) {
    this.settings = settings;
    this.store = store;
    this.clock = clock;
    this.climate =
        new LiveClimate(
            rooms(settings),
            store.readings(),
            clock,
            interval(settings),
            settings.shop().zone(),
            heatingChanged(settings));
    this.journal = new LiveJournal(store.ledger());
    this.upkeep =
        new SensorUpkeep(
            journal, store.readings(), settings.finishes(), clock, settings.shop().zone());
  }

  /** The newest reading of every sensor over the last day. */
  List<Reading> newestReadings() {
    Instant now = clock.instant();
    Map<String, Reading> newest = new LinkedHashMap<>();
    for (SourceMapping source : settings.sources()) {
      store
          .readings()
          .readingsOf(source.source(), now.minus(REMEMBERED), now)
          .forEach(reading -> newest.put(reading.source() + "\n" + reading.sensor(), reading));
    }
    return List.copyOf(newest.values());
  }

  /** What the shop's books say of its sensors. */
  SensorUpkeep upkeep() {
    return upkeep;
  }

  Settings settings() {
    return settings;
  }

  SqliteStore store() {
    return store;
  }

  LiveClimate climate() {
    return climate;
  }

  /** Takes an outdoor forecast. */
  void outdoors(OutsideCourse course) {
    climate.outdoors(course);
  }

  Journal journal() {
    return journal;
  }

  private FinishNames finishNames() {
    Set<String> dissolved = new TreeSet<>();
    settings
        .finishes()
        .forEach(
            (name, finish) -> {
              if (finish.drying() instanceof SpiritDrying) {
                dissolved.add(name);
              }
            });
    return new FinishNames(settings.finishes().keySet(), dissolved);
  }

  /** The forms by a clock; history is written by its own. */
  Forms forms(Clock by) {
    List<String> rooms = rooms(settings);
    return new ShopForms(
        journal,
        by,
        settings.shop().zone(),
        finishNames(),
        rooms,
        // The last room named is where the finishing is done.
        rooms.get(rooms.size() - 1));
  }

  /** First floor: what it all means. */
  Meaning meaning(Supplier<List<SourceStatus>> sources, Bells bells) {
    return meaning(sources, Optional::empty, bells);
  }

  /**
   * The same.
   *
   * @param clockTrouble why the machine's clock is not to be trusted
   */
  Meaning meaning(
      Supplier<List<SourceStatus>> sources, Supplier<Optional<String>> clockTrouble, Bells bells) {
    FilmJobs jobs = new FilmJobs(journal, climate, settings.finishes(), outlookSettings(settings));
    FilmOutlooks outlooks =
        new FilmOutlooks(
            settings.finishes(),
            climate,
            journal,
            store.predictions(),
            clock,
            outlookSettings(settings));
    ShopWatch watch =
        new ShopWatch(
            outlooks,
            climate,
            journal,
            store.warnings(),
            bells,
            sources,
            name -> Optional.ofNullable(settings.finishes().get(name)),
            WatchSettings.usual(settings.shop().zone()));
    watch.alsoWatch("clock", clockTrouble);
    Reviews reviews = new FilmReviews(jobs, journal, climate, settings.shop().zone(), clock);
    return new Meaning(outlooks, watch, reviews);
  }

  /** The first floor's three rooms that answer. */
  record Meaning(FilmOutlooks outlooks, Watch watch, Reviews reviews) {}

  static List<String> rooms(Settings settings) {
    return settings.rooms().stream().map(Room::name).toList();
  }

  private static Map<String, Instant> heatingChanged(Settings settings) {
    Map<String, Instant> changed = new HashMap<>();
    for (Room room : settings.rooms()) {
      room.heatingChanged().ifPresent(at -> changed.put(room.name(), at));
    }
    return changed;
  }

  /** The slowest sensor says how long a silence is usual. */
  private static Duration interval(Settings settings) {
    return settings.sources().stream()
        .map(source -> source.every())
        .max(Duration::compareTo)
        .orElse(USUAL_INTERVAL);
  }

  static OutlookSettings outlookSettings(Settings settings) {
    Map<String, Double> volumes = new HashMap<>();
    for (Room room : settings.rooms()) {
      room.volumeM3().ifPresent(m3 -> volumes.put(room.name(), m3));
    }
    return new OutlookSettings(
        StandardAtmosphere.pressurePa(settings.shop().altitudeM()),
        settings.shop().usualFinish(),
        USUAL_BOARD_MM,
        STILL_AIR_M_PER_S,
        settings.shop().zone(),
        volumes);
  }
}
