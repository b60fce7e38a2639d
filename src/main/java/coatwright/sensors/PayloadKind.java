package coatwright.sensors;

import java.util.Locale;

/** The form a payload has. */
public enum PayloadKind {
  NUMBER,
  JSON,
  PATTERN,
  COLUMNS,
  SENML,
  HEX,
  MODBUS_RTU,
  WORD;

  /** Bytes that are no text: nothing is trimmed off them. */
  boolean binary() {
    return this == MODBUS_RTU;
  }

  /** Its places are JSON Pointers. */
  boolean ofJson() {
    return this == JSON || this == HEX;
  }

  /** The word used in settings. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
