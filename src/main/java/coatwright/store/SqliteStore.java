package coatwright.store;

import coatwright.climate.HouseLog;
import coatwright.climate.ReadingLog;
import coatwright.journal.Ledger;
import coatwright.outlook.PredictionLog;
import coatwright.watch.WarningLog;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The shop's memory: one SQLite file in the data folder, held by one program at a time.
 *
 * <p>Journal entries and warnings are forced to the disk before they are acknowledged; readings and
 * predictions are committed within a second and may lose the last moments when the power goes, not
 * when the program does.
 */
public final class SqliteStore implements AutoCloseable {
  /** The data file's name in its folder. */
  public static final String FILE_NAME = "coatwright.db";

  /** Folder beside it with the copies made before an update. */
  public static final String BACKUPS = "backups";

  private static final String LOCK_NAME = "coatwright.lock";

  private final Path file;
  private final Database database;
  private final SqliteReadings readings;
  private final @Nullable FileChannel lock;
  private final Optional<Path> backup;

  private SqliteStore(
      Path file,
      Database database,
      SqliteReadings readings,
      @Nullable FileChannel lock,
      Optional<Path> backup) {
    this.file = file;
    this.database = database;
    this.readings = readings;
    this.lock = lock;
    this.backup = backup;
  }

  /**
   * Opens the data folder, makes it if it is not there, brings the file up to date.
   *
   * @throws StoreTrouble if another program holds it or the file cannot be used
   */
  public static SqliteStore open(Path folder, Clock clock) {
    return open(folder, clock, List.of());
  }

  /**
   * The same, with mirrors to be told what is written. One that is left out is forgotten.
   *
   * @throws StoreTrouble if another program holds it or the file cannot be used
   */
  public static SqliteStore open(Path folder, Clock clock, List<Outbox.Wish> mirrors) {
    Path file = folder.resolve(FILE_NAME);
    FileChannel lock = lock(folder);
    try {
      Optional<Path> backup = Migrations.run(file, clock);
      Database database = Database.toWrite(file);
      Outbox.setUp(database, mirrors, clock);
      boolean told =
          mirrors.stream().anyMatch(one -> one.streams().contains(Outbox.Stream.READINGS));
      SqliteReadings readings = SqliteReadings.toWrite(database, told);
      return new SqliteStore(file, database, readings, lock, backup);
    } catch (RuntimeException e) {
      release(folder, lock);
      throw e;
    }
  }

  /**
   * Opens the file beside the program that holds it, to read only.
   *
   * @throws StoreTrouble if there is no file or it cannot be read
   */
  public static SqliteStore openToRead(Path folder) {
    Path file = folder.resolve(FILE_NAME);
    if (!Files.isRegularFile(file)) {
      throw new StoreTrouble(file, "there is no data file", "name the folder with --data", null);
    }
    Database database = Database.toRead(file);
    return new SqliteStore(file, database, SqliteReadings.toRead(database), null, Optional.empty());
  }

  private static FileChannel lock(Path folder) {
    Path file = folder.resolve(LOCK_NAME);
    FileChannel channel = null;
    try {
      Files.createDirectories(folder);
      channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock held = channel.tryLock();
      if (held != null) {
        return channel;
      }
      release(folder, channel);
      throw inUse(folder, null);
    } catch (OverlappingFileLockException e) {
      release(folder, channel);
      throw inUse(folder, e);
    } catch (IOException e) {
      throw new StoreTrouble(
          folder, "the data folder cannot be written", "check who owns it and its rights", e);
    }
  }

  private static StoreTrouble inUse(Path folder, @Nullable Throwable cause) {
    return new StoreTrouble(
        folder,
        "another Coatwright holds this data folder",
        "stop that one, or name another folder with --data",
        cause);
  }

  private static void release(Path folder, @Nullable FileChannel lock) {
    if (lock == null) {
      return;
    }
    try {
      lock.close();
    } catch (IOException e) {
      throw new StoreTrouble(folder, "the folder's lock cannot be let go", "check the disk", e);
    }
  }

  /** The data file. */
  public Path file() {
    return file;
  }

  /** The backup made before this opening changed the file's form, if it did. */
  public Optional<Path> backupBeforeUpdate() {
    return backup;
  }

  /** The journal's entries. */
  public Ledger ledger() {
    return new SqliteLedger(database);
  }

  /** Readings, roll-ups and payloads. */
  public ReadingLog readings() {
    return readings;
  }

  /** What the house notes of itself and its clock. */
  public HouseLog houseLog() {
    return new SqliteHouseLog(database, readings);
  }

  /** Predictions that moved. */
  public PredictionLog predictions() {
    return new SqlitePredictions(database);
  }

  /** What mirrors take, and how far each has come. */
  public Outbox outbox() {
    return new Outbox(database);
  }

  /** Warnings. */
  public WarningLog warnings() {
    return new SqliteWarnings(database, readings);
  }

  /** What keeps readings from being written, in a sentence, while it lasts. */
  public Optional<String> trouble() {
    return readings.trouble().map(StoreTrouble::getMessage);
  }

  /** Looks the whole file through; says what is damaged, or nothing. */
  public Optional<String> damage() {
    String verdict =
        database.read(
            "checking the file",
            handle -> handle.createQuery("pragma integrity_check").mapTo(String.class).first());
    return verdict.equals("ok") ? Optional.empty() : Optional.of(verdict);
  }

  /** Copies the file, whole and consistent, while it is in use. The target must not exist. */
  public void backUpTo(Path target) {
    if (Files.exists(target)) {
      throw new StoreTrouble(target, "there is a file already", "choose another name", null);
    }
    readings.flush();
    database.alone("backing up", "vacuum into '" + target.toString().replace("'", "''") + "'");
  }

  Database database() {
    return database;
  }

  /** Writes what waits and lets the folder go. */
  @Override
  public void close() {
    readings.close();
    database.close();
    release(file, lock);
  }
}
