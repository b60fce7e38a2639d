package coatwright.sensors.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayDeque;
import java.util.Deque;

/**
 * What a broker sends, with every message cut to a length. MQTT allows a message of 256 MB, and the
 * client library takes it whole into memory before anybody can refuse it; on a small machine that
 * ends the program. Cut short, it is still a message, is refused for its length, and can be
 * acknowledged, so that a broker that keeps it does not send it for ever.
 *
 * <p>Source: MQTT 3.1.1 (OASIS 2014), section 2.2: fixed header and remaining length. Keeps its
 * place when a read times out. Belongs to one thread.
 */
final class ShortenedMessages extends InputStream {
  private static final int PUBLISH = 3;
  private static final int TYPE_SHIFT = 4;
  private static final int MORE = 0x80;
  private static final int SEVEN = 7;
  private static final int LENGTH_BYTES = 4;
  private static final int SCRATCH = 8 * 1024;

  private enum Place {
    HEADER,
    LENGTH,
    BODY,
    REST
  }

  private final InputStream in;
  private final int mostBytes;
  private final Deque<Integer> rewritten = new ArrayDeque<>();
  private final byte[] scratch = new byte[SCRATCH];
  private Place place = Place.HEADER;
  private int header;
  private int length;
  private int lengthBytes;
  private int body;
  private int rest;

  ShortenedMessages(InputStream in, int mostBytes) {
    this.in = in;
    this.mostBytes = mostBytes;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    int count = read(one, 0, 1);
    return count < 0 ? -1 : one[0] & 0xFF;
  }

  @Override
  public int read(byte[] to, int from, int most) throws IOException {
    if (most == 0) {
      return 0;
    }
    while (rewritten.isEmpty() && place != Place.BODY) {
      if (place == Place.REST) {
        int count = in.read(scratch, 0, Math.min(rest, scratch.length));
        if (count < 0) {
          return -1;
        }
        rest -= count;
        place = rest == 0 ? Place.HEADER : Place.REST;
      } else {
        int next = in.read();
        if (next < 0) {
          return -1;
        }
        take(next);
      }
    }
    if (!rewritten.isEmpty()) {
      to[from] = rewritten.removeFirst().byteValue();
      return 1;
    }
    int count = in.read(to, from, Math.min(most, body));
    if (count > 0) {
      body -= count;
      place = body > 0 ? Place.BODY : afterBody();
    }
    return count;
  }

  private Place afterBody() {
    return rest > 0 ? Place.REST : Place.HEADER;
  }

  private void take(int next) throws IOException {
    if (place == Place.HEADER) {
      header = next;
      length = 0;
      lengthBytes = 0;
      place = Place.LENGTH;
      return;
    }
    length |= (next & ~MORE) << (SEVEN * lengthBytes);
    lengthBytes++;
    if ((next & MORE) != 0) {
      if (lengthBytes == LENGTH_BYTES) {
        throw new IOException("the broker sent a length that MQTT does not allow");
      }
      return;
    }
    boolean tooLong = header >> TYPE_SHIFT == PUBLISH && length > mostBytes;
    body = tooLong ? mostBytes : length;
    rest = length - body;
    rewritten.addLast(header);
    int left = body;
    do {
      int digit = left & ~MORE & 0xFF;
      left >>= SEVEN;
      rewritten.addLast(left > 0 ? digit | MORE : digit);
    } while (left > 0);
    place = body > 0 ? Place.BODY : afterBody();
  }

  @Override
  public int available() throws IOException {
    return rewritten.size() + (place == Place.BODY ? Math.min(body, in.available()) : 0);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
