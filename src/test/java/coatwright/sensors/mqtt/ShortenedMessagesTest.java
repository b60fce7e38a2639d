package coatwright.sensors.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketTimeoutException;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/**
 * The lengths are those of MQTT 3.1.1 (OASIS 2014), table 2.4: 127 = 7F, 128 = 80 01, 16384 = 80 80
 * 01.
 */
class ShortenedMessagesTest {
  private static final HexFormat HEX = HexFormat.of();

  private static byte[] through(byte[] sent, int most) throws IOException {
    return new ShortenedMessages(new ByteArrayInputStream(sent), most).readAllBytes();
  }

  private static byte[] packet(int header, String lengthHex, int size) {
    byte[] length = HEX.parseHex(lengthHex);
    byte[] all = new byte[1 + length.length + size];
    all[0] = (byte) header;
    System.arraycopy(length, 0, all, 1, length.length);
    for (int i = 0; i < size; i++) {
      all[1 + length.length + i] = (byte) i;
    }
    return all;
  }

  private static byte[] joined(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }

  @Test
  void leavesWhatIsShortEnoughAsItIs() throws IOException {
    byte[] sent =
        joined(
            packet(0x20, "02", 2),
            packet(0x30, "7f", 127),
            packet(0x32, "8001", 128),
            packet(0xD0, "00", 0));

    assertThat(through(sent, 128)).isEqualTo(sent);
  }

  @Test
  void cutsALongMessageAndFindsTheNextPacketBehindIt() throws IOException {
    byte[] sent =
        joined(packet(0x32, "808001", 16_384), packet(0xD0, "00", 0), packet(0x30, "02", 2));

    byte[] come = through(sent, 200);

    assertThat(come)
        .isEqualTo(joined(packet(0x32, "c801", 200), packet(0xD0, "00", 0), packet(0x30, "02", 2)));
  }

  @Test
  void cutsMessagesOnly() throws IOException {
    byte[] sent = packet(0x90, "8001", 128);

    assertThat(through(sent, 20)).isEqualTo(sent);
  }

  @Test
  void refusesALengthThatIsNone() {
    assertThatThrownBy(() -> through(HEX.parseHex("30ffffffff01"), 20))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("a length that MQTT does not allow");
  }

  /** However the bytes arrive, and wherever a read gives up waiting, the same comes out. */
  @Property(seed = "20261125", tries = 200)
  void keepsItsPlaceWhenAReadTimesOut(@ForAll @IntRange(min = 1, max = 40) int every)
      throws IOException {
    byte[] sent = joined(packet(0x32, "808001", 16_384), packet(0x30, "7f", 127));
    InputStream slow =
        new InputStream() {
          private final InputStream whole = new ByteArrayInputStream(sent);
          private int reads;

          @Override
          public int read() throws IOException {
            pause();
            return whole.read();
          }

          @Override
          public int read(byte[] to, int from, int most) throws IOException {
            pause();
            return whole.read(to, from, Math.min(most, every));
          }

          private void pause() throws IOException {
            if (++reads % (every + 1) == 0) {
              throw new SocketTimeoutException("not yet");
            }
          }
        };
    ShortenedMessages messages = new ShortenedMessages(slow, 300);
    ByteArrayOutputStream come = new ByteArrayOutputStream();
    byte[] buffer = new byte[64];
    for (int count = 0; count >= 0; ) {
      try {
        count = messages.read(buffer, 0, buffer.length);
        come.write(buffer, 0, Math.max(0, count));
      } catch (SocketTimeoutException again) {
        count = 0;
      }
    }

    assertThat(come.toByteArray()).isEqualTo(through(sent, 300));
  }
}
