package coatwright.sensors;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Says one thing to a broker and goes. */
public final class Publisher {
  private Publisher() {}

  public static void say(URI broker, String topic, String text) {
    send(broker, topic, text.getBytes(StandardCharsets.UTF_8), false);
  }

  public static void leave(URI broker, String topic, String text) {
    send(broker, topic, text.getBytes(StandardCharsets.UTF_8), true);
  }

  /** Says several things as fast as it can, as a gateway does that lets go what it kept. */
  public static void sayAll(URI broker, String topic, List<String> texts) {
    try (MqttClient client =
        new MqttClient(broker.toString(), MqttClient.generateClientId(), new MemoryPersistence())) {
      client.connect();
      for (String text : texts) {
        client.publish(topic, text.getBytes(StandardCharsets.UTF_8), 1, false);
      }
      client.disconnect(100);
    } catch (MqttException e) {
      throw new IllegalStateException("cannot publish to " + broker, e);
    }
  }

  public static void send(URI broker, String topic, byte[] bytes, boolean retained) {
    try (MqttClient client =
        new MqttClient(broker.toString(), MqttClient.generateClientId(), new MemoryPersistence())) {
      client.connect();
      client.publish(topic, bytes, 1, retained);
      client.disconnect(100);
    } catch (MqttException e) {
      throw new IllegalStateException("cannot publish to " + broker, e);
    }
  }
}
