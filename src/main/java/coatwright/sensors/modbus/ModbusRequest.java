package coatwright.sensors.modbus;

import coatwright.quantity.RefusedInput;

/**
 * A question for registers.
 *
 * @param address the unit asked, 1 to 247
 * @param function 3 (holding registers) or 4 (input registers)
 * @param start first register, counted from 0 as the protocol counts, 0 to 65535
 * @param count how many, 1 to 125
 */
public record ModbusRequest(int address, int function, int start, int count) {
  /** Registers one answer can carry at most. */
  public static final int MOST_REGISTERS = 125;

  private static final int HIGHEST_ADDRESS = 247;
  private static final int REGISTERS = 65_536;

  public ModbusRequest {
    if (address < 1 || address > HIGHEST_ADDRESS) {
      throw RefusedInput.of(
          "address " + address, "is not between 1 and 247", "see the sender's switches or sheet");
    }
    if (function != 3 && function != 4) {
      throw RefusedInput.of(
          "function " + function,
          "is neither 3 nor 4",
          "write 3 for holding registers or 4 for input registers");
    }
    if (count < 1 || count > MOST_REGISTERS) {
      throw RefusedInput.of(
          "count " + count, "is not between 1 and 125", "ask in several sources if it is more");
    }
    if (start < 0 || start + count > REGISTERS) {
      throw RefusedInput.of(
          "start " + start,
          "with count %d is not between 0 and 65535".formatted(count),
          "count registers from 0, as the protocol does");
    }
  }

  /** The bytes to send, checksum included. */
  public byte[] frame() {
    return ModbusRtu.request(address, function, start, count);
  }

  /** How long a whole answer is, bytes. */
  public int answerLength() {
    return ModbusRtu.FRAME_AROUND_DATA + 2 * count;
  }

  /** The registers in words: {@code registers 1 to 2}. */
  String registers() {
    return count == 1
        ? "register " + start
        : "registers %d to %d".formatted(start, start + count - 1);
  }
}
