package coatwright.store;

import java.nio.file.Path;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * The open file: one handle that writes with every commit forced to the disk, one that writes
 * readings, and a few that read. SQLite lets one write at a time, so writers here take turns.
 */
final class Database implements AutoCloseable {
  private static final int READERS = 3;
  private static final int BUSY_MS = 10_000;

  private final Path file;
  private final ReentrantLock pen = new ReentrantLock(true);
  private final Handle durable;
  private final Handle quick;
  private final BlockingQueue<Handle> readers = new ArrayBlockingQueue<>(READERS);

  private Database(Path file, boolean writable) {
    this.file = file;
    try {
      this.durable = open(file, SQLiteConfig.SynchronousMode.FULL, writable);
      this.quick = writable ? open(file, SQLiteConfig.SynchronousMode.NORMAL, true) : durable;
      for (int i = 0; i < READERS; i++) {
        readers.add(open(file, SQLiteConfig.SynchronousMode.NORMAL, writable));
      }
    } catch (RuntimeException e) {
      throw StoreTrouble.of(file, "opening", e);
    }
  }

  static Database toWrite(Path file) {
    return new Database(file, true);
  }

  static Database toRead(Path file) {
    return new Database(file, false);
  }

  static SQLiteDataSource source(
      Path file, SQLiteConfig.SynchronousMode synchronous, boolean writable) {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(BUSY_MS);
    config.setSynchronous(synchronous);
    config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
    if (writable) {
      config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    } else {
      config.setReadOnly(true);
    }
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
  }

  private static Handle open(
      Path file, SQLiteConfig.SynchronousMode synchronous, boolean writable) {
    return Jdbi.create(source(file, synchronous, writable)).open();
  }

  Path file() {
    return file;
  }

  /** Runs a transaction that is on the disk when this returns. */
  <T> T writeDurably(String doing, Function<Handle, T> work) {
    return write(durable, doing, work);
  }

  /** Runs a transaction that survives the program, and the power within moments. */
  <T> T writeQuickly(String doing, Function<Handle, T> work) {
    return write(quick, doing, work);
  }

  private <T> T write(Handle handle, String doing, Function<Handle, T> work) {
    pen.lock();
    try {
      return handle.inTransaction(work::apply);
    } catch (RuntimeException e) {
      throw StoreTrouble.of(file, doing, e);
    } finally {
      pen.unlock();
    }
  }

  /** Runs a statement that must stand outside any transaction. */
  void alone(String doing, String sql) {
    pen.lock();
    try {
      durable.execute(sql);
    } catch (RuntimeException e) {
      throw StoreTrouble.of(file, doing, e);
    } finally {
      pen.unlock();
    }
  }

  /** Reads with whichever reading handle is free. */
  <T> T read(String doing, Function<Handle, T> work) {
    Handle handle;
    try {
      handle = readers.take();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StoreTrouble(file, doing + " was interrupted", "ask again", e);
    }
    try {
      return work.apply(handle);
    } catch (RuntimeException e) {
      throw StoreTrouble.of(file, doing, e);
    } finally {
      readers.add(handle);
    }
  }

  /**
   * A file opened to read has one handle for both, and it is that very handle that is asked about.
   */
  @SuppressWarnings("ReferenceEquality")
  @Override
  public void close() {
    for (int i = 0; i < READERS; i++) {
      try {
        readers.take().close();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return;
      }
    }
    if (quick != durable) {
      quick.close();
      durable.execute("pragma wal_checkpoint(truncate)");
    }
    durable.close();
  }
}
