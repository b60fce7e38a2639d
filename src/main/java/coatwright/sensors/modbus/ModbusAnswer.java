package coatwright.sensors.modbus;

import java.util.List;

/** What came back to a {@link ModbusRequest}. */
public sealed interface ModbusAnswer {
  /**
   * The registers asked for.
   *
   * @param words one number a register, 0 to 65535, in the order asked for
   * @param echoed our own request came back before the answer
   * @param resync bytes that belong to nothing stood around the answer
   */
  record Registers(List<Integer> words, boolean echoed, boolean resync) implements ModbusAnswer {
    public Registers {
      words = List.copyOf(words);
    }
  }

  /**
   * No registers.
   *
   * @param incomplete true while more bytes may still make it an answer
   * @param reason what came instead and what to do, for a person
   */
  record Refusal(boolean incomplete, String reason) implements ModbusAnswer {}
}
