package coatwright.store.influx;

import coatwright.climate.Readings;
import coatwright.store.SqliteStore;
import coatwright.store.influx.MirrorSettings.ReadBack;
import coatwright.store.influx.MirrorSettings.What;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;

/** A shop's store with a mirror, for tests. */
final class Fixtures {
  static final String SHOP = "Quay, no. 1";
  static final String ROOM = "finishing room";

  /** Everything as usual, only sooner. */
  static final Pace BRISK =
      new Pace(
          Duration.ofMillis(20),
          Duration.ofMillis(20),
          Duration.ofMillis(200),
          Duration.ofSeconds(4),
          Duration.ofSeconds(2),
          2_000_000);

  private Fixtures() {}

  static MirrorSettings mirror(String name, String url) {
    return mirror(name, url, ReadBack.NONE);
  }

  static MirrorSettings mirror(String name, String url, ReadBack readBack) {
    return new MirrorSettings(
        name,
        url,
        "-",
        name,
        Optional.empty(),
        EnumSet.allOf(What.class),
        true,
        500,
        Duration.ofMinutes(30),
        readBack);
  }

  static SqliteStore open(Path folder, MirrorSettings... mirrors) {
    return SqliteStore.open(
        folder, Clock.systemUTC(), List.of(mirrors).stream().map(MirrorSettings::wish).toList());
  }

  static Mirror start(MirrorSettings settings, SqliteStore store) {
    return start(settings, store, Clock.systemUTC());
  }

  static Mirror start(MirrorSettings settings, SqliteStore store, Clock clock) {
    Mirror mirror = new Mirror(settings, store.outbox(), SHOP, clock, BRISK);
    mirror.start();
    return mirror;
  }

  /** Readings a second apart, alike in nothing but their sensor. */
  static void readings(SqliteStore store, String source, Instant from, int count) {
    for (int i = 0; i < count; i++) {
      store
          .readings()
          .append(
              Readings.air(source, ROOM, from.plusSeconds(i), 18 + (i % 700) / 100.0, 45 + i % 20));
    }
    store.readings().flush();
  }

  /** Whether nothing is left to send. */
  static boolean allSent(Mirror mirror) {
    MirrorStatus status = mirror.status();
    return status.standing().waiting() == 0 && !status.standing().historyLeft();
  }
}
