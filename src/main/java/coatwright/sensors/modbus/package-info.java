/**
 * MODBUS over a serial line, RTU form: what to send, and what an answer says. Pure functions on
 * bytes; nothing here opens a port or knows of readings.
 *
 * <p>Start at {@link coatwright.sensors.modbus.ModbusRtu}.
 *
 * <p>Source: MODBUS over Serial Line Specification and Implementation Guide V1.02 (frame, CRC-16);
 * MODBUS Application Protocol Specification V1.1b3 (functions 3 and 4, exception codes).
 */
@NullMarked
package coatwright.sensors.modbus;

import org.jspecify.annotations.NullMarked;
