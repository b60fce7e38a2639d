package coatwright.sensors.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One serial device, opened again for ever by the path a person gave.
 *
 * <p>The serial library resolves a stable path at the moment it is opened, and keeps saying "open"
 * after an unplug. So the first failed read is taken for an unplug, the port is closed at once on
 * another thread (closing can hang), and the configured path is opened afresh, after 2 s and then
 * ever longer waits up to 30 s. The port is locked against a second reader. The control lines are
 * never toggled, since that restarts many boards.
 */
final class SerialDevice {
  private static final Logger LOG = LoggerFactory.getLogger(SerialDevice.class);
  private static final Duration LONGEST = Duration.ofSeconds(30);
  private static final Duration CLOSING = Duration.ofSeconds(3);

  private final Path path;
  private final SerialSettings line;
  private final Duration reopenEvery;
  private final int readMs;
  private final Session session;
  private final Runnable changed;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread;
  private final AtomicLong opens = new AtomicLong();
  private volatile boolean open;
  private volatile @Nullable String trouble;

  /** What is done with the port while it is open. */
  interface Session {
    /** Uses the port until it is gone or the device is closing. */
    void use(SerialPort port);
  }

  /**
   * @param device a name under {@code /dev/serial} or an absolute path
   * @param readMs how long one read waits for a byte
   * @param changed is run when it was opened or closed, or is in another trouble than before
   */
  SerialDevice(
      String device,
      SerialSettings line,
      Duration reopenEvery,
      int readMs,
      Session session,
      Runnable changed) {
    this.path = device.startsWith("/") ? Path.of(device) : Path.of("/dev/serial", device);
    this.line = line;
    this.reopenEvery = reopenEvery;
    this.readMs = readMs;
    this.session = session;
    this.changed = changed;
    this.thread = new Thread(this::run, "serial-" + path.getFileName());
    this.thread.setDaemon(true);
  }

  void start() {
    thread.start();
  }

  Path path() {
    return path;
  }

  boolean isOpen() {
    return open;
  }

  long opens() {
    return opens.get();
  }

  Optional<String> trouble() {
    return Optional.ofNullable(trouble);
  }

  boolean isClosing() {
    return waits(Duration.ZERO);
  }

  /** Waits, and says whether the device was told to close meanwhile. */
  boolean waits(Duration howLong) {
    try {
      return closing.await(howLong.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  /** Whether the device node is still there; an unplugged one goes. */
  boolean isThere() {
    return Files.exists(path);
  }

  private void run() {
    Duration wait = reopenEvery;
    while (!isClosing()) {
      Optional<SerialPort> port = open();
      if (port.isPresent()) {
        wait = reopenEvery;
        use(port.get());
        if (isClosing()) {
          return;
        }
        say("device " + path + " is gone; plug it in again");
      }
      if (waits(wait)) {
        return;
      }
      wait = wait.multipliedBy(2).compareTo(LONGEST) > 0 ? LONGEST : wait.multipliedBy(2);
    }
  }

  private void use(SerialPort port) {
    try {
      session.use(port);
    } catch (RuntimeException e) {
      LOG.error("using {} failed", path, e);
    } finally {
      open = false;
      closeElsewhere(port);
    }
  }

  private Optional<SerialPort> open() {
    Optional<String> unusable = SerialTrouble.beforeOpening(path);
    if (unusable.isPresent()) {
      say(unusable.get());
      return Optional.empty();
    }
    try {
      SerialPort port = SerialPort.getCommPort(path.toString());
      port.setComPortParameters(
          line.baud(),
          line.dataBits(),
          line.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT,
          parity());
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, readMs, 0);
      if (!port.openPort()) {
        say(SerialTrouble.notOpened(path, port.getLastErrorCode()));
        return Optional.empty();
      }
      opens.incrementAndGet();
      open = true;
      say(null);
      LOG.info("listening to {} at {}", path, line);
      return Optional.of(port);
    } catch (SerialPortInvalidPortException e) {
      say("device " + path + " cannot be used as a serial line; check the path");
      return Optional.empty();
    }
  }

  private int parity() {
    return switch (line.parity()) {
      case NONE -> SerialPort.NO_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
    };
  }

  /** Says what is wrong; null when nothing is. */
  void say(@Nullable String sentence) {
    if (Objects.equals(sentence, trouble)) {
      return;
    }
    trouble = sentence;
    if (sentence != null) {
      LOG.info("{}", sentence);
    }
    try {
      changed.run();
    } catch (RuntimeException e) {
      LOG.error("a listener of {} failed", path, e);
    }
  }

  /** Closes a port that may hang, without waiting for it for ever. */
  void closeElsewhere(SerialPort port) {
    Thread closer = new Thread(port::closePort, "serial-close-" + path.getFileName());
    closer.setDaemon(true);
    closer.start();
    try {
      closer.join(CLOSING.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  void close() {
    closing.countDown();
    try {
      thread.join(CLOSING.multipliedBy(2).toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
