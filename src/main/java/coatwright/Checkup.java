package coatwright;

import coatwright.cli.Hall.Check;
import coatwright.climate.Happening;
import coatwright.config.Settings;
import coatwright.sensors.SourceMapping;
import coatwright.sensors.Transport;
import coatwright.store.SqliteStore;
import coatwright.store.StoreTrouble;
import coatwright.store.influx.MirrorSettings;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Looks at a shop without its daemon: what is there, what can be reached, what cannot. */
final class Checkup {
  private static final Duration MISSED = Duration.ofDays(7);
  private static final int PATIENCE_MS = 2_000;
  private static final Path SERIAL = Path.of("/dev/serial");

  private final Settings settings;
  private final Path data;

  Checkup(Settings settings, Path data) {
    this.settings = settings;
    this.data = data;
  }

  void lookInto(List<Check> checks) {
    checks.add(
        new Check(
            "finishes",
            true,
            String.join(", ", settings.finishes().keySet().stream().sorted().toList())));
    checks.add(database());
    missed(checks);
    if (Files.isRegularFile(data.resolve(SqliteStore.FILE_NAME))) {
      checks.add(new Check("backup", true, backup(data)));
    }
    settings.brokers().forEach((name, broker) -> checks.add(broker(name, broker)));
    settings.mirrors().forEach(mirror -> checks.add(mirror(mirror)));
    if (settings.sources().isEmpty()) {
      checks.add(
          new Check(
              "sensors", false, "none; copy a file from config/sources/examples one folder up"));
    }
    settings.sources().forEach(source -> checks.add(sensor(source)));
  }

  private Check database() {
    if (!Files.isRegularFile(data.resolve(SqliteStore.FILE_NAME))) {
      return new Check("database", true, "none yet; it is made in " + data + " at the first run");
    }
    try (SqliteStore store = SqliteStore.openToRead(data)) {
      Optional<String> damage = store.damage();
      return new Check(
          "database",
          damage.isEmpty(),
          damage
              .map(what -> "damaged (" + what + "); restore the last backup")
              .orElse(store.file() + " is whole"));
    } catch (StoreTrouble trouble) {
      return new Check("database", false, String.valueOf(trouble.getMessage()));
    }
  }

  /** What befell the house in the last week, while someone may have been away. */
  private void missed(List<Check> checks) {
    if (!Files.isRegularFile(data.resolve(SqliteStore.FILE_NAME))) {
      return;
    }
    Instant now = Clock.systemUTC().instant();
    try (SqliteStore store = SqliteStore.openToRead(data)) {
      for (Happening one : store.houseLog().happenings(now.minus(MISSED), now.plus(MISSED))) {
        checks.add(
            new Check(
                "missed", true, one.at().truncatedTo(ChronoUnit.SECONDS) + ": " + one.says()));
      }
      int undated = store.houseLog().undated();
      if (undated > 0) {
        checks.add(
            new Check(
                "readings without a date",
                true,
                "%d; they came while the clock was not set and are kept aside".formatted(undated)));
      }
    } catch (StoreTrouble trouble) {
      // The database's own line says what is wrong with it.
      checks.add(new Check("missed", true, "cannot be told: " + trouble.getMessage()));
    }
  }

  /** When the last copy of a folder's database was made, and how to make one. */
  static String backup(Path data) {
    String how = "to make one, stop Coatwright and copy the folder " + data;
    return newestBackup(data.resolve(SqliteStore.BACKUPS))
        .map(
            file ->
                "the last was made at %s, before an update: %s; %s"
                    .formatted(madeAt(file).truncatedTo(ChronoUnit.MINUTES), file, how))
        .orElse("none yet; " + how);
  }

  private static Optional<Path> newestBackup(Path folder) {
    if (!Files.isDirectory(folder)) {
      return Optional.empty();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.toString().endsWith(".db"))
          .max(Comparator.comparing(Checkup::madeAt));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  private static Instant madeAt(Path file) {
    try {
      return Files.getLastModifiedTime(file).toInstant();
    } catch (IOException gone) {
      return Instant.EPOCH;
    }
  }

  private static Check broker(String name, Settings.Broker broker) {
    String what = "broker " + name;
    if (broker.ca().map(file -> !Files.isReadable(file)).orElse(false)) {
      return new Check(
          what, false, "cannot read " + broker.ca().orElseThrow() + "; see that ca is right");
    }
    Check check = reached(what, broker.url(), broker.passwordFile(), "brokers." + name);
    if (broker.own().isEmpty() || check.says().startsWith("cannot read")) {
      return check;
    }
    return new Check(
        what,
        true,
        check.fine()
            ? "inside Coatwright, " + check.says()
            : "inside Coatwright, at " + broker.url() + " once coatwright run is started");
  }

  private static Check mirror(MirrorSettings mirror) {
    return reached(
        "mirror " + mirror.name(), mirror.url(), mirror.tokenFile(), "mirrors." + mirror.name());
  }

  private static Check reached(String what, String address, Optional<Path> secret, String key) {
    if (secret.map(file -> !Files.isReadable(file)).orElse(false)) {
      return new Check(what, false, "cannot read " + secret.orElseThrow() + "; see its rights");
    }
    URI url = URI.create(address);
    int usual = address.startsWith("https:") ? 443 : 80;
    int port = url.getPort() < 0 ? usual : url.getPort();
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(url.getHost(), port), PATIENCE_MS);
      return new Check(what, true, "answers at " + address);
    } catch (IOException unreachable) {
      return new Check(
          what,
          false,
          "does not answer at %s (%s); start it, or mend %s.url"
              .formatted(address, unreachable.getMessage(), key));
    }
  }

  private static Check sensor(SourceMapping source) {
    String what = "sensor " + source.source();
    if (source.transport().orElse(null) instanceof Transport.Serial serial) {
      Path device = SERIAL.resolve(serial.device());
      return Files.exists(device)
          ? new Check(what, true, "its port " + device + " is there")
          : new Check(what, false, "no port " + device + "; plug it in, or mend device");
    }
    return new Check(what, true, "read by " + source.transportWord());
  }
}
