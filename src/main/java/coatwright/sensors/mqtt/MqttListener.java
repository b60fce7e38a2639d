package coatwright.sensors.mqtt;

/** Who hears what comes over a link. Called on the link's threads: must hand on and return. */
public interface MqttListener {
  /**
   * A message came.
   *
   * @param retained the broker kept it from earlier
   */
  void message(String topic, byte[] bytes, boolean retained);

  /**
   * A message came that the broker keeps until it hears that it is stored.
   *
   * @param stored to be run, on any thread, once what the message says is durable or refused for
   *     good; a link whose session is a clean one does nothing then. By default at once
   */
  default void message(String topic, byte[] bytes, boolean retained, Runnable stored) {
    message(topic, bytes, retained);
    stored.run();
  }

  /** A connect begins; what is heard from here on may have waited somewhere. */
  default void connecting() {}

  /** A message was longer than the limit and was dropped unread. */
  void tooLong(String topic, int bytes);

  /** Connected and subscribed, or no longer so; {@code trouble} says what to do, if anything. */
  void changed();
}
