package coatwright.sensors.serial;

/** Who hears what a serial line says. Called on the line's own thread. */
public interface SerialListener {
  /**
   * A whole line came.
   *
   * @param octets without its end, one character a byte
   * @param settling the device was opened so lately that this is boot text
   */
  void line(String octets, boolean settling);

  /** The first line after opening, whose beginning may be missing; passed over unless wanted. */
  default void firstLine(String octets) {}

  /** A line was longer than {@link LineAssembler#LONGEST} bytes and was dropped. */
  void overlong();

  /** Opened or closed, or in another trouble than before. */
  void changed();
}
