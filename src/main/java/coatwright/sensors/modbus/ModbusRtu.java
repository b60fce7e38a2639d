package coatwright.sensors.modbus;

import coatwright.sensors.modbus.ModbusAnswer.Refusal;
import coatwright.sensors.modbus.ModbusAnswer.Registers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Requests for registers and the answers to them.
 *
 * <p>An answer is believed only with the right unit, function and byte count and a checksum that
 * holds. Our own request, which half-duplex adapters give back, is taken off; bytes before the
 * frame are noise from the turn of the line, and the frame is searched for behind them.
 *
 * <p>Source: MODBUS over Serial Line Specification V1.02, sections 2.5.1 (frame) and 6.2.2
 * (CRC-16); MODBUS Application Protocol Specification V1.1b3, sections 6.3, 6.4 and 7.
 */
public final class ModbusRtu {
  /** Unit, function, byte count and two bytes of checksum. */
  static final int FRAME_AROUND_DATA = 5;

  private static final int REQUEST_LENGTH = 8;
  private static final int EXCEPTION_LENGTH = 5;
  private static final int EXCEPTION_BIT = 0x80;
  private static final int CRC_START = 0xFFFF;
  private static final int CRC_POLYNOMIAL = 0xA001;

  /** A frame is at most 256 bytes; no line needs more than an echo, an answer and some noise. */
  private static final int LONGEST = 1024;

  private ModbusRtu() {}

  /**
   * The bytes that ask for registers.
   *
   * @param address the unit asked, 1 to 247
   * @param function 3 or 4
   * @param start first register, counted from 0
   * @param count how many, 1 to 125
   * @throws coatwright.quantity.RefusedInput out of these ranges
   */
  public static byte[] request(int address, int function, int start, int count) {
    ModbusRequest checked = new ModbusRequest(address, function, start, count);
    byte[] frame = new byte[REQUEST_LENGTH];
    frame[0] = (byte) checked.address();
    frame[1] = (byte) checked.function();
    putWord(frame, 2, checked.start());
    putWord(frame, 4, checked.count());
    int crc = crc16(frame, 0, 6);
    frame[6] = (byte) crc;
    frame[7] = (byte) (crc >> 8);
    return frame;
  }

  /** The request these bytes are; empty when they are none, or its checksum fails. */
  public static Optional<ModbusRequest> requestIn(byte[] bytes) {
    if (bytes.length != REQUEST_LENGTH || !checked(bytes, 0, REQUEST_LENGTH)) {
      return Optional.empty();
    }
    int address = bytes[0] & 0xFF;
    int function = bytes[1] & 0xFF;
    int start = word(bytes, 2);
    int count = word(bytes, 4);
    boolean sound =
        address >= 1
            && address <= 247
            && (function == 3 || function == 4)
            && count >= 1
            && count <= ModbusRequest.MOST_REGISTERS
            && start + count <= 65_536;
    return sound
        ? Optional.of(new ModbusRequest(address, function, start, count))
        : Optional.empty();
  }

  /** What the bytes that came after a request say. Never throws for what a line may carry. */
  public static ModbusAnswer answer(byte[] bytes, ModbusRequest request) {
    if (bytes.length == 0) {
      return new Refusal(
          true,
          "no answer from unit %d: check its power, its address and the two wires"
              .formatted(request.address()));
    }
    byte[] seen = bytes.length > LONGEST ? Arrays.copyOf(bytes, LONGEST) : bytes;
    byte[] echo = request.frame();
    int at = startsWith(seen, 0, echo) ? echo.length : 0;
    boolean echoed = at > 0;
    int from = at;
    while (at < seen.length) {
      Optional<ModbusAnswer> found = answerAt(seen, at, request, echoed, at > from);
      if (found.isPresent()) {
        return found.get();
      }
      boolean ownRequest = startsWith(seen, at, echo);
      echoed |= ownRequest;
      at += ownRequest ? echo.length : 1;
    }
    return refused(seen, from, request);
  }

  private static Optional<ModbusAnswer> answerAt(
      byte[] bytes, int at, ModbusRequest request, boolean echoed, boolean noiseBefore) {
    if ((bytes[at] & 0xFF) != request.address() || at + EXCEPTION_LENGTH > bytes.length) {
      return Optional.empty();
    }
    int function = bytes[at + 1] & 0xFF;
    if (function == (request.function() | EXCEPTION_BIT) && checked(bytes, at, EXCEPTION_LENGTH)) {
      return Optional.of(new Refusal(false, exception(bytes[at + 2] & 0xFF, request)));
    }
    int length = request.answerLength();
    boolean whole =
        function == request.function()
            && (bytes[at + 2] & 0xFF) == 2 * request.count()
            && at + length <= bytes.length
            && checked(bytes, at, length);
    if (!whole) {
      return Optional.empty();
    }
    List<Integer> words = new ArrayList<>();
    for (int i = 0; i < request.count(); i++) {
      words.add(word(bytes, at + 3 + 2 * i));
    }
    boolean noiseAfter = at + length < bytes.length;
    return Optional.of(new Registers(words, echoed, noiseBefore || noiseAfter));
  }

  /** No frame fits; says the nearest thing it could be. */
  private static Refusal refused(byte[] bytes, int from, ModbusRequest request) {
    int came = bytes.length - from;
    if (came == 0) {
      return new Refusal(
          true,
          "only our own request came back, no answer from unit %d: check its power and address"
              .formatted(request.address()));
    }
    Optional<String> foreign = foreign(bytes, from, request);
    if (foreign.isPresent()) {
      // A late answer to someone else; ours may still come behind it.
      return new Refusal(true, foreign.get());
    }
    int length = request.answerLength();
    if (came < length) {
      return new Refusal(
          true, "short frame: %d of %d bytes before the time ran out".formatted(came, length));
    }
    return new Refusal(
        begun(bytes, from, request),
        "checksum does not hold in %d bytes: noise, a wrong speed or parity, or two units with one "
                .formatted(came)
            + "address");
  }

  /** True when an answer may have begun in these bytes and not ended. */
  private static boolean begun(byte[] bytes, int from, ModbusRequest request) {
    int length = request.answerLength();
    for (int at = Math.max(from, bytes.length - length + 1); at < bytes.length; at++) {
      boolean unit = (bytes[at] & 0xFF) == request.address();
      boolean function =
          at + 1 == bytes.length || (bytes[at + 1] & 0xFF & ~EXCEPTION_BIT) == request.function();
      if (unit && function) {
        return true;
      }
    }
    return false;
  }

  /** A sound frame, but not the answer to this request. */
  private static Optional<String> foreign(byte[] bytes, int from, ModbusRequest request) {
    for (int at = from; at + EXCEPTION_LENGTH <= bytes.length; at++) {
      int function = bytes[at + 1] & 0xFF;
      int plain = function & ~EXCEPTION_BIT;
      boolean exception = function != plain;
      int data = bytes[at + 2] & 0xFF;
      int length = exception ? EXCEPTION_LENGTH : FRAME_AROUND_DATA + data;
      boolean sound =
          (plain == 3 || plain == 4)
              && at + length <= bytes.length
              && checked(bytes, at, length)
              && (bytes[at] & 0xFF) != 0;
      if (sound) {
        return Optional.of(foreign(bytes[at] & 0xFF, plain, exception, data, request));
      }
    }
    return Optional.empty();
  }

  private static String foreign(
      int address, int function, boolean exception, int data, ModbusRequest request) {
    if (address != request.address()) {
      return "answer from unit %d where unit %d was asked: a late answer, or a wrong address"
          .formatted(address, request.address());
    }
    if (function != request.function()) {
      return "answer to function %d where function %d was asked: a late answer"
          .formatted(function, request.function());
    }
    return exception
        ? exception(data, request)
        : "answer of %d bytes where %s make %d: a late answer to another request"
            .formatted(data, request.registers(), 2 * request.count());
  }

  private static String exception(int code, ModbusRequest request) {
    return switch (code) {
      case 1 ->
          "exception 01 illegal function: unit %d does not know function %d; try function %d (%s)"
              .formatted(
                  request.address(),
                  request.function(),
                  request.function() == 4 ? 3 : 4,
                  request.function() == 4 ? "holding registers" : "input registers");
      case 2 ->
          ("exception 02 illegal data address: unit %d has no %s; check start, count and whether "
                  + "its sheet counts registers from 0, from 1 or from 30001 or 40001")
              .formatted(request.address(), request.registers());
      case 3 -> "exception 03 illegal data value: ask for fewer registers";
      case 4 ->
          "exception 04 device failure: unit %d could not read its element; look at the sensor"
              .formatted(request.address());
      case 5 -> "exception 05 acknowledge: unit %d needs longer".formatted(request.address());
      case 6 -> "exception 06 device busy: ask less often";
      case 8 -> "exception 08 memory parity error in unit %d".formatted(request.address());
      case 10, 11 -> "exception %02d: the gateway does not reach its unit".formatted(code);
      default -> "exception %02d from unit %d".formatted(code, request.address());
    };
  }

  /** The checksum of a part of the bytes, low byte first on the line. */
  public static int crc16(byte[] bytes, int from, int length) {
    int crc = CRC_START;
    for (int i = from; i < from + length; i++) {
      crc ^= bytes[i] & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ CRC_POLYNOMIAL;
      }
    }
    return crc;
  }

  private static boolean checked(byte[] bytes, int at, int length) {
    int sent = (bytes[at + length - 2] & 0xFF) | (bytes[at + length - 1] & 0xFF) << 8;
    return crc16(bytes, at, length - 2) == sent;
  }

  private static boolean startsWith(byte[] bytes, int at, byte[] start) {
    return at + start.length <= bytes.length
        && Arrays.equals(bytes, at, at + start.length, start, 0, start.length);
  }

  private static int word(byte[] bytes, int at) {
    return (bytes[at] & 0xFF) << 8 | (bytes[at + 1] & 0xFF);
  }

  private static void putWord(byte[] bytes, int at, int word) {
    bytes[at] = (byte) (word >> 8);
    bytes[at + 1] = (byte) word;
  }
}
