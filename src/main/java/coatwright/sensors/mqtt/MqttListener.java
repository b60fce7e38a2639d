package coatwright.sensors.mqtt;

/** Who hears what comes over a link. Called on the link's threads: must hand on and return. */
public interface MqttListener {
  /**
   * A message came.
   *
   * @param retained the broker kept it from earlier
   */
  void message(String topic, byte[] bytes, boolean retained);

  /** A message was longer than the limit and was dropped unread. */
  void tooLong(String topic, int bytes);

  /** Connected and subscribed, or no longer so; {@code trouble} says what to do, if anything. */
  void changed();
}
