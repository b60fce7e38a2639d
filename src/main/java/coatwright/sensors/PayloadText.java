package coatwright.sensors;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/**
 * The text of a payload. Bytes that are not of the charset are read as ISO-8859-1, one character
 * each, so that a stray degree sign cannot break a line; the text says so.
 *
 * @param foreign the bytes were not of the charset asked for
 * @param nulTrimmed one NUL stood at the end and was taken off
 */
record PayloadText(String text, boolean foreign, boolean nulTrimmed) {
  static PayloadText of(RawReading raw, Charset charset) {
    String octets = raw.octets();
    boolean nul = octets.endsWith("\0");
    String body = nul ? octets.substring(0, octets.length() - 1) : octets;
    byte[] bytes = body.getBytes(StandardCharsets.ISO_8859_1);
    try {
      String text =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString();
      return new PayloadText(text, false, nul);
    } catch (CharacterCodingException e) {
      return new PayloadText(body, true, nul);
    }
  }

  /** The text without the line end a sender may have put after it. */
  String withoutLineEnd() {
    int end = text.length();
    while (end > 0 && (text.charAt(end - 1) == '\r' || text.charAt(end - 1) == '\n')) {
      end--;
    }
    return text.substring(0, end);
  }

  /** The text without ASCII white space around it; no other kind is taken off. */
  String trimmed() {
    int from = 0;
    int end = text.length();
    while (from < end && blank(text.charAt(from))) {
      from++;
    }
    while (end > from && blank(text.charAt(end - 1))) {
      end--;
    }
    return text.substring(from, end);
  }

  private static boolean blank(char c) {
    return c == ' ' || c == '\t' || c == '\r' || c == '\n';
  }

  /** A payload of bytes for a person to read. */
  static String hexadecimal(RawReading raw) {
    byte[] bytes = raw.octets().getBytes(StandardCharsets.ISO_8859_1);
    return HexFormat.ofDelimiter(" ").formatHex(bytes);
  }

  /** Any payload's text for a person to read: what cannot be printed is shown escaped. */
  static String forReading(RawReading raw) {
    String text = of(raw, StandardCharsets.UTF_8).text();
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            c -> {
              if (c >= ' ' && c != 0x7F && !(c >= 0x80 && c < 0xA0)) {
                shown.appendCodePoint(c);
              } else {
                shown.append("\\x%02X".formatted(c));
              }
            });
    return shown.toString();
  }
}
