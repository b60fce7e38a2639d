package coatwright.sensors.serial;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts the bytes of a stream together into lines. CR, LF or both end a line; an empty line is
 * passed over; a line longer than the limit is reported once and dropped to its end; a rest that
 * never ended is dropped, never handed on.
 */
public final class LineAssembler {
  /** The longest line a sensor may print, bytes. */
  public static final int LONGEST = 1024;

  private static final byte CR = '\r';
  private static final byte LF = '\n';

  private final StringBuilder rest = new StringBuilder();
  private boolean overlong;
  private boolean maybeCut;

  /**
   * @param firstMaybeCut listening may have begun in the middle of a line, so that the beginning of
   *     the first may be missing
   */
  public LineAssembler(boolean firstMaybeCut) {
    this.maybeCut = firstMaybeCut;
  }

  /**
   * What the bytes completed.
   *
   * @param octets the line without its end, one character a byte; empty when overlong
   * @param overlong it was longer than {@link #LONGEST} and is dropped
   * @param maybeCut its beginning may be missing: to be overheard, never to be read
   */
  public record Line(String octets, boolean overlong, boolean maybeCut) {}

  /** Takes the next bytes and gives the lines they complete. */
  public List<Line> take(byte[] bytes, int count) {
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      byte b = bytes[i];
      if (b == CR || b == LF) {
        endLine(lines);
      } else if (!overlong) {
        rest.append((char) (b & 0xFF));
        if (rest.length() > LONGEST) {
          overlong = true;
          rest.setLength(0);
          if (!maybeCut) {
            lines.add(new Line("", true, false));
          }
        }
      }
    }
    return lines;
  }

  /** The same for text whose characters are bytes. */
  public List<Line> take(String octets) {
    byte[] bytes = octets.getBytes(StandardCharsets.ISO_8859_1);
    return take(bytes, bytes.length);
  }

  private void endLine(List<Line> lines) {
    if (!overlong && rest.length() > 0) {
      lines.add(new Line(rest.toString(), false, maybeCut));
    }
    maybeCut = false;
    overlong = false;
    rest.setLength(0);
  }

  /** True while a line has begun and not ended. */
  public boolean unfinished() {
    return rest.length() > 0 || overlong;
  }

  /** Drops an unfinished line: the sender fell silent in the middle of it. */
  public void dropRest() {
    rest.setLength(0);
    overlong = false;
  }
}
