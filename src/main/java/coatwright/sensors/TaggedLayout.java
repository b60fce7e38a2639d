package coatwright.sensors;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A radio frame of tagged objects, by a description of the tags. The frame: two bytes of frame
 * control (lowest first; bit 3 encrypted, bit 4 six bytes of address, bit 5 a byte of capability,
 * bit 6 objects follow), two of device type, a counter, then the address and the capability where
 * the bits say so. An object: its tag, a byte 0x10, a length, and so many bytes of value. Common
 * practice, no source.
 *
 * @param tags what each tag means: {@code battery}, {@code T}, {@code RH} or {@code T/RH}
 * @param step what the numbers are counted in
 */
record TaggedLayout(Map<Integer, String> tags, boolean lowFirst, BigDecimal step)
    implements ByteLayout {
  private static final int ENCRYPTED = 0x08;
  private static final int HAS_ADDRESS = 0x10;
  private static final int HAS_CAPABILITY = 0x20;
  private static final int HAS_OBJECTS = 0x40;
  private static final int HEAD = 5;
  private static final int ADDRESS = 6;
  private static final int KIND = 0x10;
  private static final String PAIR = "T/RH";
  private static final Pattern ENTRY =
      Pattern.compile("0x([0-9A-Fa-f]{2})\\s*=?\\s*(T/RH|T|RH|battery)\\b", Pattern.UNICODE_CASE);

  TaggedLayout {
    tags = Map.copyOf(tags);
  }

  /** The description's layout; empty when it names no tag or leaves order or step open. */
  static Optional<TaggedLayout> parse(String description) {
    Map<Integer, String> tags = new HashMap<>();
    Matcher entries = ENTRY.matcher(description);
    while (entries.find()) {
      tags.put(Integer.parseInt(entries.group(1), 16), entries.group(2));
    }
    String folded = description.toLowerCase(Locale.ROOT);
    boolean low = folded.contains("little-endian");
    boolean high = folded.contains("big-endian");
    boolean tenths = folded.contains("tenths");
    boolean hundredths = folded.contains("hundredths");
    if (tags.isEmpty() || low == high || tenths == hundredths) {
      return Optional.empty();
    }
    return Optional.of(new TaggedLayout(tags, low, new BigDecimal(tenths ? "0.1" : "0.01")));
  }

  @Override
  public List<String> places() {
    return List.of(TEMPERATURE, HUMIDITY, BATTERY, VOLTAGE);
  }

  @Override
  public Decoded decode(List<Integer> bytes) {
    if (bytes.size() < HEAD) {
      return new Decoded.No("%d bytes are too few for a frame".formatted(bytes.size()), false);
    }
    int control = bytes.get(0) | bytes.get(1) << 8;
    if ((control & ENCRYPTED) != 0) {
      return new Decoded.No("the frame is encrypted; switch that off in the sender", false);
    }
    if ((control & HAS_OBJECTS) == 0) {
      return new Decoded.No("the frame carries no values", true);
    }
    int at = HEAD;
    at += (control & HAS_ADDRESS) == 0 ? 0 : ADDRESS;
    at += (control & HAS_CAPABILITY) == 0 ? 0 : 1;
    Map<String, Cell> cells = new HashMap<>();
    while (at < bytes.size()) {
      int from = at + 3;
      if (from > bytes.size() || from + bytes.get(at + 2) > bytes.size()) {
        return new Decoded.No("the frame ends in the middle of an object", false);
      }
      int to = from + bytes.get(at + 2);
      if (bytes.get(at + 1) == KIND) {
        take(tags.getOrDefault(bytes.get(at), ""), bytes.subList(from, to), cells);
      }
      at = to;
    }
    return cells.isEmpty()
        ? new Decoded.No("no temperature, humidity or battery in this frame", true)
        : new Decoded.Values(cells);
  }

  private void take(String tag, List<Integer> value, Map<String, Cell> cells) {
    if (tag.equals("battery") && value.size() == 1) {
      cells.put(BATTERY, new Cell.Figure(value.get(0), value.get(0).toString()));
    } else if (tag.equals("T") && value.size() == 2) {
      cells.put(TEMPERATURE, number(Encoding.Type.INT16, value));
    } else if (tag.equals("RH") && value.size() == 2) {
      cells.put(HUMIDITY, number(Encoding.Type.UINT16, value));
    } else if (tag.equals(PAIR) && value.size() == 4) {
      cells.put(TEMPERATURE, number(Encoding.Type.INT16, value.subList(0, 2)));
      cells.put(HUMIDITY, number(Encoding.Type.UINT16, value.subList(2, 4)));
    }
  }

  private Cell number(Encoding.Type type, List<Integer> bytes) {
    double raw = new Encoding(type, !lowFirst).ofBytes(bytes);
    BigDecimal number = BigDecimal.valueOf((long) raw).multiply(step);
    return new Cell.Figure(number.doubleValue(), number.toPlainString());
  }
}
