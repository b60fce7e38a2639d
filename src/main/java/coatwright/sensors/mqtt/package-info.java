/**
 * The MQTT link: one client a broker, which keeps trying for ever, subscribes again after every
 * connect, and hands bytes on without ever working on the client's own threads. Knows nothing of
 * readings.
 */
@NullMarked
package coatwright.sensors.mqtt;

import org.jspecify.annotations.NullMarked;
