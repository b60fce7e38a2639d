package coatwright.store;

import coatwright.climate.Readings;
import coatwright.journal.Ledger;
import coatwright.journal.Strike;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A program that writes entries and readings until it is killed, and says each entry it was
 * promised.
 */
public final class Scribe {
  private Scribe() {}

  public static void main(String[] args) {
    SqliteStore store = SqliteStore.open(Path.of(args[0]), Clock.systemUTC());
    Ledger ledger = store.ledger();
    System.out.println("ready");
    for (long n = 0; ; n++) {
      Instant now = Instant.now();
      for (int i = 0; i < 20; i++) {
        store
            .readings()
            .append(Readings.air("wall", "bench", now.plusMillis(i), 20.0 + (double) (n % 7), 50));
      }
      Strike body = new Strike("e0", args[1] + "-" + n);
      String id =
          ledger.append(List.of(new Ledger.Line(now, now, Optional.empty(), body))).get(0).id();
      System.out.print(id + " " + body.reason() + "\n");
      System.out.flush();
    }
  }
}
