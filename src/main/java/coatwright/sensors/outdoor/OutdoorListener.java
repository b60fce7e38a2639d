package coatwright.sensors.outdoor;

import coatwright.sensors.mqtt.MqttListener;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;

/** Hands a message's text on. */
record OutdoorListener(Consumer<String> text) implements MqttListener {
  @Override
  public void message(String topic, byte[] bytes, boolean retained) {
    text.accept(new String(bytes, StandardCharsets.UTF_8));
  }

  @Override
  public void tooLong(String topic, int bytes) {
    // The link has logged it; a forecast that long is none.
  }

  @Override
  public void changed() {
    // The last forecast holds until it is stale, connected or not.
  }
}
