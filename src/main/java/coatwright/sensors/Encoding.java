package coatwright.sensors;

import java.util.List;
import java.util.Locale;

/**
 * How a number lies in registers or bytes.
 *
 * @param highFirst the word (of registers) or byte (of bytes) that counts most comes first
 */
public record Encoding(Type type, boolean highFirst) {
  private static final int WORD_BITS = 16;
  private static final int BYTE_BITS = 8;

  /** A kind of number. */
  public enum Type {
    INT8(1),
    UINT8(1),
    INT16(2),
    UINT16(2),
    INT32(4),
    FLOAT32(4);

    private final int bytes;

    Type(int bytes) {
      this.bytes = bytes;
    }

    int bytes() {
      return bytes;
    }

    /** How many registers it takes. */
    int registers() {
      return (bytes + 1) / 2;
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** The number in whole registers, each 0 to 65535. */
  double ofWords(List<Integer> words) {
    return number(words, WORD_BITS);
  }

  /** The number in bytes, each 0 to 255. */
  double ofBytes(List<Integer> bytes) {
    return number(bytes, BYTE_BITS);
  }

  private double number(List<Integer> pieces, int bits) {
    int raw = 0;
    for (int i = 0; i < pieces.size(); i++) {
      raw = raw << bits | pieces.get(highFirst ? i : pieces.size() - 1 - i);
    }
    return switch (type) {
      case INT8 -> (byte) raw;
      case UINT8 -> raw & 0xFF;
      case INT16 -> (short) raw;
      case UINT16 -> raw & 0xFFFF;
      case INT32 -> raw;
      // By its shortest decimal: 46.2 sent as a float is meant as 46.2, not as 46.200000762939.
      case FLOAT32 -> Double.parseDouble(Float.toString(Float.intBitsToFloat(raw)));
    };
  }

  Encoding otherOrder() {
    return new Encoding(type, !highFirst);
  }

  @Override
  public String toString() {
    return type + " " + (highFirst ? "high-first" : "low-first");
  }
}
