package coatwright.sensors.fuzz;

import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The numbers that stand in a payload, found without any of the readers under test: by looking at
 * every run of digits, and at every 8, 16 and 32 bits of its bytes. A value that is believed must
 * be one of them, in one of the units and scales a mapping may name.
 */
final class SentNumbers {
  private static final List<Pattern> RUNS =
      List.of(
          Pattern.compile("[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d{1,3})?"),
          Pattern.compile("[+-]?(?:\\d+(?:,\\d*)?|,\\d+)(?:[eE][+-]?\\d{1,3})?"));
  private static final Pattern ESCAPED = Pattern.compile("\\\\u([0-9a-fA-F]{4})");
  private static final double[] SCALES = {1, 0.1, 0.01, 0.001, 100};
  private static final double CLOSE = 1e-5;
  private static final int MOST = 400;

  private SentNumbers() {}

  /** True when the value may stand in the payload as a temperature or humidity of a mapping. */
  static boolean hold(byte[] payload, double value) {
    List<Double> sent = inText(payload);
    return sent.stream().anyMatch(number -> means(number, value))
        || sumsTo(sent, value)
        || inBytes(payload).stream().anyMatch(number -> means(number, value));
  }

  private static List<Double> inText(byte[] payload) {
    String text =
        ESCAPED
            .matcher(new String(payload, StandardCharsets.ISO_8859_1))
            .replaceAll(
                escape ->
                    Matcher.quoteReplacement(
                        String.valueOf((char) Integer.parseInt(escape.group(1), 16))));
    List<Double> numbers = new ArrayList<>();
    for (Pattern runs : RUNS) {
      Matcher run = runs.matcher(text);
      while (run.find() && numbers.size() < MOST) {
        numbers.add(new BigDecimal(whole(run.group().replace(',', '.'))).doubleValue());
      }
    }
    return numbers;
  }

  /** The JDK's decimals want a digit on one side of the point at least; both is always right. */
  private static String whole(String number) {
    return number.replaceFirst("^([+-]?)\\.", "$10.").replaceFirst("\\.(?=[eE]|$)", ".0");
  }

  /** Base value and value of a pack of records are added. */
  private static boolean sumsTo(List<Double> sent, double value) {
    for (double first : sent) {
      for (double second : sent) {
        if (means(first + second, value)) {
          return true;
        }
      }
    }
    return false;
  }

  private static List<Double> inBytes(byte[] payload) {
    List<Double> numbers = new ArrayList<>();
    List<byte[]> ways = new ArrayList<>(List.of(payload));
    ways.add(digits(new String(payload, StandardCharsets.ISO_8859_1)));
    for (byte[] bytes : ways) {
      for (int at = 0; at < Math.min(bytes.length, MOST); at++) {
        numbers.add((double) bytes[at]);
        numbers.add((double) (bytes[at] & 0xFF));
        for (ByteOrder order : new ByteOrder[] {ByteOrder.BIG_ENDIAN, ByteOrder.LITTLE_ENDIAN}) {
          if (at + 2 <= bytes.length) {
            short word = ByteBuffer.wrap(bytes, at, 2).order(order).getShort();
            numbers.add((double) word);
            numbers.add((double) (word & 0xFFFF));
          }
        }
        if (at + 4 <= bytes.length) {
          ByteBuffer four = ByteBuffer.wrap(bytes, at, 4);
          int high = four.getShort(at) << 16 | (four.getShort(at + 2) & 0xFFFF);
          int low = four.getShort(at + 2) << 16 | (four.getShort(at) & 0xFFFF);
          for (int raw : new int[] {high, low}) {
            numbers.add((double) raw);
            numbers.add((double) Float.intBitsToFloat(raw));
          }
        }
      }
    }
    return numbers;
  }

  /** The hexadecimal digits of a text as bytes, for every row of them. */
  private static byte[] digits(String text) {
    List<Byte> bytes = new ArrayList<>();
    Matcher rows = Pattern.compile("[0-9A-Fa-f]{2}").matcher(text.replaceAll("0x|[ :,-]", ""));
    while (rows.find() && bytes.size() < MOST) {
      bytes.add((byte) Integer.parseInt(rows.group(), 16));
    }
    // A row may begin at an odd place of the text: the other half of the pairs counts as well.
    Matcher odd = Pattern.compile("(?<=.)[0-9A-Fa-f]{2}").matcher(text.replaceAll("0x|[ :,-]", ""));
    while (odd.find() && bytes.size() < 2 * MOST) {
      bytes.add((byte) Integer.parseInt(odd.group(), 16));
    }
    byte[] all = new byte[bytes.size()];
    for (int i = 0; i < all.length; i++) {
      all[i] = bytes.get(i);
    }
    return all;
  }

  private static boolean means(double sent, double value) {
    for (double scale : SCALES) {
      double number = sent * scale;
      if (close(number, value)
          || close((number - 32) / 1.8, value)
          || close(number - 273.15, value)
          || (value == 100 && number > 100 && number <= 103)
          || close(number * 0.35, value)) {
        return true;
      }
    }
    return false;
  }

  private static boolean close(double sent, double value) {
    return Math.abs(sent - value) <= CLOSE * Math.max(1, Math.abs(value));
  }
}
