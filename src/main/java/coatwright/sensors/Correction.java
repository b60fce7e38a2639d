package coatwright.sensors;

import java.time.Instant;

/**
 * A dated calibration: true = gain × shown + offset, in the house's unit. Never edited, only
 * superseded by one with a later date; readings made before its date are left as they are.
 *
 * @param gain accepted from 0.5 to 2
 * @param offset °C, or points of RH
 * @param from the moment it begins to hold
 * @param note how it was found, for instance which salts
 */
public record Correction(Quantity quantity, double gain, double offset, Instant from, String note) {
  boolean changesNothing() {
    return Double.compare(gain, 1) == 0 && Double.compare(offset, 0) == 0;
  }

  double applyTo(double shown) {
    return gain * shown + offset;
  }
}
