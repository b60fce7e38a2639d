package coatwright.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.flywaydb.core.api.MigrationVersion;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;

/** Brings the file to this program's form: forward only, and after a backup of what was there. */
final class Migrations {
  private static final String WHERE = "classpath:coatwright/store/migrations";
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private Migrations() {}

  /**
   * Migrates if need be.
   *
   * @return the backup made before an existing file was changed
   */
  static Optional<Path> run(Path file, Clock clock) {
    return run(file, clock, MigrationVersion.LATEST);
  }

  static Optional<Path> run(Path file, Clock clock, MigrationVersion target) {
    try {
      Flyway flyway =
          Flyway.configure()
              .dataSource(Database.source(file, SQLiteConfig.SynchronousMode.NORMAL, true))
              .locations(WHERE)
              .target(target)
              .table("schema_history")
              .load();
      MigrationInfo[] all = flyway.info().all();
      refuseNewer(file, all);
      boolean anyApplied = Arrays.stream(all).anyMatch(one -> one.getState().isApplied());
      boolean anyPending = flyway.info().pending().length > 0;
      Optional<Path> backup =
          anyApplied && anyPending ? Optional.of(backUp(file, clock)) : Optional.empty();
      if (anyPending) {
        flyway.migrate();
      }
      return backup;
    } catch (RuntimeException e) {
      throw StoreTrouble.of(file, "bringing the data file up to date", e);
    }
  }

  private static void refuseNewer(Path file, MigrationInfo[] all) {
    boolean newer =
        Arrays.stream(all).anyMatch(one -> one.getState() == MigrationState.FUTURE_SUCCESS);
    if (newer) {
      throw new StoreTrouble(
          file,
          "a newer Coatwright wrote this file",
          "install that version, or name another data folder",
          null);
    }
  }

  private static Path backUp(Path file, Clock clock) {
    Path folder = file.resolveSibling(SqliteStore.BACKUPS);
    Path backup = folder.resolve("before-update-" + STAMP.format(clock.instant()) + ".db");
    try (Handle handle =
        Jdbi.create(Database.source(file, SQLiteConfig.SynchronousMode.NORMAL, true)).open()) {
      Files.createDirectories(folder);
      handle.execute("vacuum into ?", backup.toString());
      return backup;
    } catch (IOException e) {
      throw new StoreTrouble(
          folder, "no backup could be made before the update", "check the folder's rights", e);
    }
  }
}
