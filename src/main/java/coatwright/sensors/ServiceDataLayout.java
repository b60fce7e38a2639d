package coatwright.sensors;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Bluetooth service data 0xFCD2 in its version 2: one byte of device information, then object after
 * object, each a byte that names it and a number of fixed length, lowest byte first. An object that
 * is not known ends the reading, because its length is not known either.
 *
 * <p>Source: the open BTHome format, version 2, its table of objects.
 */
record ServiceDataLayout() implements ByteLayout {
  private static final int ENCRYPTED = 0x01;
  private static final int HAS_ADDRESS = 0x02;
  private static final int ADDRESS = 6;
  private static final int VERSION_SHIFT = 5;
  private static final int VERSION = 2;
  private static final int TEXT = 0x53;
  private static final int RAW = 0x54;
  private static final int BATTERY_LOW = 0x15;

  /** Where the sender's own word for a low battery stands. */
  static final String LOW = "battery-low";

  /** Lengths of objects by their byte; those of one kind lie together. */
  private static final Map<Integer, Integer> LENGTHS = lengths();

  /** An object this house reads: its place, and the power of ten it is counted in. */
  private record Value(String place, boolean signed, BigDecimal step) {}

  private static final Map<Integer, Value> VALUES =
      Map.ofEntries(
          Map.entry(0x01, new Value(BATTERY, false, BigDecimal.ONE)),
          Map.entry(0x02, new Value(TEMPERATURE, true, new BigDecimal("0.01"))),
          Map.entry(0x45, new Value(TEMPERATURE, true, new BigDecimal("0.1"))),
          Map.entry(0x57, new Value(TEMPERATURE, true, BigDecimal.ONE)),
          Map.entry(0x58, new Value(TEMPERATURE, true, new BigDecimal("0.35"))),
          Map.entry(0x03, new Value(HUMIDITY, false, new BigDecimal("0.01"))),
          Map.entry(0x2E, new Value(HUMIDITY, false, BigDecimal.ONE)),
          Map.entry(0x0C, new Value(VOLTAGE, false, new BigDecimal("0.001"))),
          Map.entry(0x4A, new Value(VOLTAGE, false, new BigDecimal("0.1"))),
          Map.entry(BATTERY_LOW, new Value(LOW, false, BigDecimal.ONE)));

  private static Map<Integer, Integer> lengths() {
    Map<Integer, Integer> lengths = new HashMap<>();
    int[][] byLength = {
      {1, 0x00, 0x01, 0x09, 0x2E, 0x2F, 0x3A, 0x46, 0x57, 0x58, 0x59, 0x60},
      {
        2, 0x02, 0x03, 0x06, 0x07, 0x08, 0x0C, 0x0D, 0x0E, 0x12, 0x13, 0x14, 0x3C, 0x3D, 0x3F, 0x40,
        0x41, 0x43, 0x44, 0x45, 0x47, 0x48, 0x49, 0x4A, 0x51, 0x52, 0x56, 0x5A, 0x5D, 0x5E, 0x5F,
        0xF0
      },
      {3, 0x04, 0x05, 0x0A, 0x0B, 0x42, 0x4B, 0xF2},
      {4, 0x3E, 0x4C, 0x4D, 0x4E, 0x4F, 0x50, 0x55, 0x5B, 0x5C, 0xF1}
    };
    for (int[] each : byLength) {
      for (int i = 1; i < each.length; i++) {
        lengths.put(each[i], each[0]);
      }
    }
    for (int yesOrNo = 0x0F; yesOrNo <= 0x2D; yesOrNo++) {
      lengths.putIfAbsent(yesOrNo, 1);
    }
    return Map.copyOf(lengths);
  }

  @Override
  public List<String> places() {
    return List.of(TEMPERATURE, HUMIDITY, BATTERY, VOLTAGE, LOW);
  }

  @Override
  public Decoded decode(List<Integer> bytes) {
    Optional<String> head = headFault(bytes);
    if (head.isPresent()) {
      return new Decoded.No(head.get(), false);
    }
    Map<String, Cell> cells = new HashMap<>();
    int at = (bytes.get(0) & HAS_ADDRESS) == 0 ? 1 : 1 + ADDRESS;
    while (at < bytes.size()) {
      int object = bytes.get(at);
      int length = length(object, at, bytes);
      if (length < 0) {
        break;
      }
      int from = at + 1;
      if (from + length > bytes.size()) {
        return new Decoded.No("service data ends in the middle of an object", false);
      }
      Value value = VALUES.get(object);
      if (value != null) {
        cells.merge(
            value.place(),
            number(bytes.subList(from, from + length), value),
            (first, second) ->
                first.equals(second)
                    ? first
                    : new Cell.Unusable("stands twice in one message; which is meant is not told"));
      }
      at = from + length;
    }
    boolean cut = at < bytes.size();
    return cells.isEmpty()
        ? new Decoded.No(
            cut
                ? "object 0x%02X is not known, so nothing behind it can be read"
                    .formatted(bytes.get(at))
                : "no temperature, humidity or battery in this message",
            true)
        : new Decoded.Values(cells);
  }

  private static Optional<String> headFault(List<Integer> bytes) {
    if (bytes.isEmpty()) {
      return Optional.of("no bytes");
    }
    if ((bytes.get(0) & ENCRYPTED) != 0) {
      return Optional.of("the service data are encrypted; switch that off in the sender");
    }
    int version = bytes.get(0) >> VERSION_SHIFT;
    return version == VERSION
        ? Optional.empty()
        : Optional.of(
            "not service data of version 2 (first byte 0x%02X); set another layout"
                .formatted(bytes.get(0)));
  }

  /** Length of the object's value; -1 where it is not known. Texts carry their own. */
  private static int length(int object, int at, List<Integer> bytes) {
    if (object == TEXT || object == RAW) {
      return at + 1 < bytes.size() ? 1 + bytes.get(at + 1) : 1;
    }
    return LENGTHS.getOrDefault(object, -1);
  }

  private static Cell number(List<Integer> bytes, Value value) {
    long raw = 0;
    for (int i = bytes.size() - 1; i >= 0; i--) {
      raw = raw << 8 | bytes.get(i);
    }
    int bits = 8 * bytes.size();
    if (value.signed() && raw >> (bits - 1) == 1) {
      raw -= 1L << bits;
    }
    BigDecimal number = BigDecimal.valueOf(raw).multiply(value.step());
    return new Cell.Figure(number.doubleValue(), number.toPlainString());
  }
}
