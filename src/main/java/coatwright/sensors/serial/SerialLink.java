package coatwright.sensors.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to one serial device for ever.
 *
 * <p>The serial library resolves a stable path at the moment it is opened, keeps saying "open"
 * after an unplug, and floods a listener with events until the port is closed. So there is no
 * listener here: one thread reads with a time limit, takes the first failed read for an unplug,
 * closes the port at once on another thread (closing can hang), and opens the configured path
 * afresh, waiting 2 s and then ever longer up to 30 s. It never toggles the control lines, since
 * that restarts many boards.
 */
public final class SerialLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(SerialLink.class);
  private static final int READ_MS = 500;
  private static final int BUFFER = 512;
  private static final Duration REST_DROPPED_AFTER = Duration.ofSeconds(2);
  private static final Duration NO_LINES_AFTER = Duration.ofSeconds(5);
  private static final int NO_LINES_BYTES = 256;
  private static final Duration TOO_QUICK = Duration.ofMillis(20);
  private static final int MANY_QUICK = 25;
  private static final Duration LONGEST = Duration.ofSeconds(30);
  private static final Duration CLOSING = Duration.ofSeconds(3);

  private final Path device;
  private final SerialSettings line;
  private final Duration settle;
  private final Duration reopenEvery;
  private final SerialListener listener;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread reader;
  private final AtomicLong opens = new AtomicLong();
  private final AtomicLong reads = new AtomicLong();
  private volatile boolean open;
  private volatile @Nullable String trouble;

  /**
   * @param device a name under {@code /dev/serial} ({@code by-id/...}, {@code by-path/...}) or an
   *     absolute path
   * @param settle how long after opening lines are boot text
   * @param reopenEvery the first wait before opening again, 2 s in the house
   */
  public SerialLink(
      String device,
      SerialSettings line,
      Duration settle,
      Duration reopenEvery,
      SerialListener listener) {
    this.device = device.startsWith("/") ? Path.of(device) : Path.of("/dev/serial", device);
    this.line = line;
    this.settle = settle;
    this.reopenEvery = reopenEvery;
    this.listener = listener;
    this.reader = new Thread(this::run, "serial-" + this.device.getFileName());
    this.reader.setDaemon(true);
  }

  /** Begins to listen; returns at once and needs no device to be there yet. */
  public void start() {
    reader.start();
  }

  /** True while the device is open. */
  public boolean isOpen() {
    return open;
  }

  /** How often it was opened. */
  public long opens() {
    return opens.get();
  }

  /** How often it was read, to show that a lost device is no busy loop. */
  public long reads() {
    return reads.get();
  }

  /** What is wrong and what to do, in one sentence. */
  public Optional<String> trouble() {
    return Optional.ofNullable(trouble);
  }

  private void run() {
    Duration wait = reopenEvery;
    while (!closed(Duration.ZERO)) {
      Optional<SerialPort> port = open();
      if (port.isPresent()) {
        wait = reopenEvery;
        boolean spoke = false;
        try {
          spoke = read(port.get());
        } catch (RuntimeException e) {
          LOG.error("reading {} failed", device, e);
        } finally {
          open = false;
          closeElsewhere(port.get());
        }
        if (closed(Duration.ZERO)) {
          return;
        }
        say("device " + device + " is gone; plug it in again");
        LOG.info("{} was lost {}", device, spoke ? "" : "before it said anything");
      }
      if (closed(wait)) {
        return;
      }
      wait = wait.multipliedBy(2).compareTo(LONGEST) > 0 ? LONGEST : wait.multipliedBy(2);
    }
  }

  /** Waits, and says whether the link was closed meanwhile. */
  private boolean closed(Duration wait) {
    try {
      return closing.await(wait.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  private Optional<SerialPort> open() {
    Optional<String> unusable = SerialTrouble.beforeOpening(device);
    if (unusable.isPresent()) {
      say(unusable.get());
      return Optional.empty();
    }
    try {
      SerialPort port = SerialPort.getCommPort(device.toString());
      port.setComPortParameters(
          line.baud(),
          line.dataBits(),
          line.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT,
          parity());
      port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MS, 0);
      if (!port.openPort()) {
        say(SerialTrouble.notOpened(device, port.getLastErrorCode()));
        return Optional.empty();
      }
      opens.incrementAndGet();
      open = true;
      say(null);
      LOG.info("listening to {} at {}", device, line);
      return Optional.of(port);
    } catch (SerialPortInvalidPortException e) {
      say("device " + device + " cannot be used as a serial line; check the path");
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

  /** Reads until the device is gone; true if anything came at all. */
  private boolean read(SerialPort port) {
    LineAssembler lines = new LineAssembler(true);
    Silence silence = new Silence();
    byte[] buffer = new byte[BUFFER];
    boolean spoke = false;
    int quick = 0;
    while (!closed(Duration.ZERO)) {
      long before = System.nanoTime();
      int count = port.readBytes(buffer, buffer.length);
      reads.incrementAndGet();
      long now = System.nanoTime();
      if (count < 0 || !Files.exists(device)) {
        return spoke;
      }
      quick = count == 0 && now - before < TOO_QUICK.toNanos() ? quick + 1 : 0;
      if (quick > MANY_QUICK) {
        return spoke;
      }
      spoke |= count > 0;
      int ended = hand(lines, buffer, count, silence.sinceOpened(now));
      if (silence.dropsRest(now, count) && lines.unfinished()) {
        lines.dropRest();
      }
      say(silence.noLines(now, count, ended) ? SerialTrouble.noLines(device, line) : null);
    }
    return spoke;
  }

  private int hand(LineAssembler lines, byte[] buffer, int count, Duration sinceOpened) {
    int ended = 0;
    boolean settling = sinceOpened.compareTo(settle) < 0;
    for (LineAssembler.Line each : lines.take(buffer, count)) {
      try {
        if (each.overlong()) {
          listener.overlong();
        } else {
          ended++;
          if (each.maybeCut()) {
            listener.firstLine(each.octets());
          } else {
            listener.line(each.octets(), settling);
          }
        }
      } catch (RuntimeException e) {
        LOG.error("a line of {} could not be handed on", device, e);
      }
    }
    return ended;
  }

  private void say(@Nullable String sentence) {
    if (java.util.Objects.equals(sentence, trouble)) {
      return;
    }
    trouble = sentence;
    if (sentence != null) {
      LOG.info("{}", sentence);
    }
    try {
      listener.changed();
    } catch (RuntimeException e) {
      LOG.error("a listener of {} failed", device, e);
    }
  }

  private void closeElsewhere(SerialPort port) {
    Thread closer = new Thread(port::closePort, "serial-close-" + device.getFileName());
    closer.setDaemon(true);
    closer.start();
    try {
      closer.join(CLOSING.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Stops listening and closes the device. */
  @Override
  public void close() {
    closing.countDown();
    try {
      reader.join(CLOSING.multipliedBy(2).toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Keeps the times that tell an unfinished line and a wrong speed. */
  private static final class Silence {
    private final long openedNanos = System.nanoTime();
    private long lastByteNanos = openedNanos;
    private long lastLineNanos = openedNanos;
    private long bytesSinceLine;

    Duration sinceOpened(long now) {
      return Duration.ofNanos(now - openedNanos);
    }

    boolean dropsRest(long now, int count) {
      if (count > 0) {
        lastByteNanos = now;
        return false;
      }
      return now - lastByteNanos > REST_DROPPED_AFTER.toNanos();
    }

    boolean noLines(long now, int count, int ended) {
      bytesSinceLine = ended > 0 ? 0 : bytesSinceLine + count;
      if (ended > 0) {
        lastLineNanos = now;
      }
      return bytesSinceLine > NO_LINES_BYTES && now - lastLineNanos > NO_LINES_AFTER.toNanos();
    }
  }
}
