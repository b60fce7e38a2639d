package coatwright.store.influx;

import coatwright.climate.Readings;
import coatwright.store.SqliteStore;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** A program that writes readings and mirrors them until it is killed, and says how far it is. */
public final class Courier {
  private Courier() {}

  public static void main(String[] args) {
    MirrorSettings settings = Fixtures.mirror(args[1], args[2]);
    int run = Integer.parseInt(args[3]);
    SqliteStore store = Fixtures.open(Path.of(args[0]), settings);
    Mirror mirror = Fixtures.start(settings, store);
    Instant from = Instant.parse("2026-03-14T12:00:00Z").plus(run, ChronoUnit.DAYS);
    long before = mirror.status().standing().sent();
    for (int n = 0; ; n++) {
      for (int i = 0; i < 100; i++) {
        Instant at = from.plusMillis(100L * n + i);
        store.readings().append(Readings.air("wall", Fixtures.ROOM, at, 20 + (n % 7), 50));
      }
      store.readings().flush();
      System.out.print("sent " + (mirror.status().standing().sent() - before) + "\n");
      System.out.flush();
    }
  }
}
