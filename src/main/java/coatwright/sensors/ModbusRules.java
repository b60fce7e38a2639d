package coatwright.sensors;

import coatwright.sensors.modbus.ModbusRequest;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What is asked of a Modbus unit.
 *
 * @param address the unit; absent only in a mapping used to read recordings
 * @param function 3 or 4
 * @param start first register, counted from 0 as the protocol counts, whatever base the settings
 *     use
 * @param count how many
 */
public record ModbusRules(OptionalInt address, int function, int start, int count) {
  /** The request to send; empty where no unit is named. */
  public Optional<ModbusRequest> request() {
    return address.isEmpty()
        ? Optional.empty()
        : Optional.of(new ModbusRequest(address.getAsInt(), function, start, count));
  }
}
