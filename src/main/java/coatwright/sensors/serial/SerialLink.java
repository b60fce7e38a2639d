package coatwright.sensors.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to the lines of one serial device for ever. The serial library floods a listener with
 * events after an unplug, so there is none: one thread reads with a time limit.
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

  private final SerialDevice device;
  private final SerialSettings line;
  private final Duration settle;
  private final SerialListener listener;
  private final AtomicLong reads = new AtomicLong();

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
    this.line = line;
    this.settle = settle;
    this.listener = listener;
    this.device =
        new SerialDevice(device, line, reopenEvery, READ_MS, this::read, listener::changed);
  }

  /** Begins to listen; returns at once and needs no device to be there yet. */
  public void start() {
    device.start();
  }

  /** True while the device is open. */
  public boolean isOpen() {
    return device.isOpen();
  }

  /** How often it was opened. */
  public long opens() {
    return device.opens();
  }

  /** How often it was read, to show that a lost device is no busy loop. */
  public long reads() {
    return reads.get();
  }

  /** What is wrong and what to do, in one sentence. */
  public Optional<String> trouble() {
    return device.trouble();
  }

  /** Reads until the device is gone. */
  private void read(SerialPort port) {
    LineAssembler lines = new LineAssembler(true);
    Silence silence = new Silence();
    byte[] buffer = new byte[BUFFER];
    int quick = 0;
    while (!device.isClosing()) {
      long before = System.nanoTime();
      int count = port.readBytes(buffer, buffer.length);
      reads.incrementAndGet();
      long now = System.nanoTime();
      if (count < 0 || !device.isThere()) {
        return;
      }
      quick = count == 0 && now - before < TOO_QUICK.toNanos() ? quick + 1 : 0;
      if (quick > MANY_QUICK) {
        return;
      }
      int ended = hand(lines, buffer, count, silence.sinceOpened(now));
      if (silence.dropsRest(now, count) && lines.unfinished()) {
        lines.dropRest();
      }
      device.say(
          silence.noLines(now, count, ended) ? SerialTrouble.noLines(device.path(), line) : null);
    }
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
        LOG.error("a line of {} could not be handed on", device.path(), e);
      }
    }
    return ended;
  }

  /** Stops listening and closes the device. */
  @Override
  public void close() {
    device.close();
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
