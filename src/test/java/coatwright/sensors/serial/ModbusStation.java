package coatwright.sensors.serial;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;

/**
 * Stations at the far end of a line, which answer questions for registers, and misbehave when told
 * to. Written from the MODBUS over Serial Line Specification V1.02, on its own and not by the code
 * it tests.
 */
public final class ModbusStation implements AutoCloseable {
  /** How the stations behave. */
  public enum Manner {
    WELL,
    IN_TWO_PIECES,
    WITH_ECHO,
    AFTER_A_NOISE_BYTE,
    SILENT,
    REFUSING,
    WITH_A_WRONG_CHECKSUM
  }

  private static final int REQUEST = 8;
  private static final int CRC_FROM = 6;

  private final Path device;
  private final Map<Integer, int[]> registers = new ConcurrentHashMap<>();
  private final AtomicInteger asked = new AtomicInteger();
  private final AtomicInteger overlapping = new AtomicInteger();
  private final Thread thread = new Thread(this::run, "modbus-station");
  private volatile Manner manner = Manner.WELL;
  private volatile boolean closed;

  public ModbusStation(Path device) {
    this.device = device;
    thread.setDaemon(true);
    thread.start();
  }

  /** What a unit holds for a function. */
  public void holds(int unit, int function, int... words) {
    registers.put(unit * 256 + function, words);
  }

  public void behave(Manner how) {
    manner = how;
  }

  /** How many sound questions came. */
  public int asked() {
    return asked.get();
  }

  /** How often a further question came before the last one was answered. */
  public int overlapping() {
    return overlapping.get();
  }

  private void run() {
    while (!closed) {
      if (Files.exists(device)) {
        try (FileInputStream in = new FileInputStream(device.toFile());
            FileOutputStream out = new FileOutputStream(device.toFile())) {
          serve(in, out);
        } catch (IOException unplugged) {
          // The next turn finds it again.
        }
      }
      LockSupport.parkNanos(20_000_000);
    }
  }

  private void serve(FileInputStream in, FileOutputStream out) throws IOException {
    byte[] question = new byte[REQUEST];
    int come = 0;
    while (!closed) {
      int next = in.read();
      if (next < 0) {
        return;
      }
      question[come++] = (byte) next;
      if (come == REQUEST) {
        come = 0;
        if (crc(question, CRC_FROM)
            == ((question[CRC_FROM] & 0xFF) | (question[CRC_FROM + 1] & 0xFF) << 8)) {
          asked.incrementAndGet();
          answer(question, out);
          if (in.available() > 0) {
            overlapping.incrementAndGet();
          }
        }
      }
    }
  }

  private void answer(byte[] question, FileOutputStream out) throws IOException {
    int unit = question[0];
    int function = question[1];
    int start = ((question[2] & 0xFF) << 8) | (question[3] & 0xFF);
    int count = ((question[4] & 0xFF) << 8) | (question[5] & 0xFF);
    int[] words = registers.get(unit * 256 + function);
    if (manner == Manner.SILENT || words == null) {
      return;
    }
    byte[] data = new byte[3 + 2 * count];
    data[0] = (byte) unit;
    data[1] = (byte) function;
    data[2] = (byte) (2 * count);
    for (int i = 0; i < count; i++) {
      data[3 + 2 * i] = (byte) (words[start + i] >> 8);
      data[4 + 2 * i] = (byte) words[start + i];
    }
    byte[] good = sealed(data);
    switch (manner) {
      case IN_TWO_PIECES -> {
        out.write(good, 0, 4);
        out.flush();
        LockSupport.parkNanos(30_000_000);
        out.write(good, 4, good.length - 4);
      }
      case WITH_ECHO -> {
        out.write(question);
        out.write(good);
      }
      case AFTER_A_NOISE_BYTE -> {
        out.write(0);
        out.write(good);
      }
      case REFUSING -> out.write(sealed(new byte[] {(byte) unit, (byte) (function | 0x80), 2}));
      case WITH_A_WRONG_CHECKSUM -> {
        good[good.length - 1] ^= 1;
        out.write(good);
      }
      default -> out.write(good);
    }
    out.flush();
  }

  private static byte[] sealed(byte[] data) {
    byte[] frame = java.util.Arrays.copyOf(data, data.length + 2);
    int crc = crc(data, data.length);
    frame[data.length] = (byte) crc;
    frame[data.length + 1] = (byte) (crc >> 8);
    return frame;
  }

  /** Bit by bit, as section 6.2.2 of the specification has it. */
  private static int crc(byte[] bytes, int to) {
    int crc = 0xFFFF;
    for (int i = 0; i < to; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) != 0 ? crc >> 1 ^ 0xA001 : crc >> 1;
      }
    }
    return crc;
  }

  @Override
  public void close() {
    closed = true;
  }
}
