package coatwright.sensors.serial;

import java.io.IOException;
import java.time.Duration;

/** A program that only tries to listen to a device, and says what is in the way. */
public final class LonelySerial {
  private LonelySerial() {}

  public static void main(String[] args) throws IOException {
    SerialLink[] link = new SerialLink[1];
    SerialListener listener =
        new SerialListener() {
          @Override
          public void line(String octets, boolean settling) {}

          @Override
          public void overlong() {}

          @Override
          public void changed() {
            System.out.print(link[0].trouble().orElse("open") + "\n");
            System.out.flush();
          }
        };
    link[0] =
        new SerialLink(
            args[0], SerialSettings.USUAL, Duration.ZERO, Duration.ofMillis(200), listener);
    link[0].start();
    while (System.in.read() >= 0) {
      // Until whoever started this closes its end.
    }
    link[0].close();
  }
}
