package coatwright.sensors;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What one payload (or one line of a stream) was read as. Printed as one line of {@code listen}.
 */
public record MappedPayload(
    @JsonInclude(JsonInclude.Include.NON_EMPTY) String id,
    List<Values> accepted,
    List<HeldBack> heldBack,
    List<Refused> refused) {
  public MappedPayload {
    accepted = List.copyOf(accepted);
    heldBack = List.copyOf(heldBack);
    refused = List.copyOf(refused);
  }

  /** The same verdict under another name. */
  public MappedPayload named(String newId) {
    return new MappedPayload(newId, accepted, heldBack, refused);
  }

  /** {@code accepted}, {@code heldBack} or {@code refused}: the best of what it holds. */
  public String verdict() {
    if (!accepted.isEmpty()) {
      return "accepted";
    }
    return heldBack.isEmpty() ? "refused" : "heldBack";
  }

  /** Every reason given, as one sentence; empty when nothing was wrong. */
  public Optional<String> reason() {
    List<String> reasons = new java.util.ArrayList<>();
    heldBack.forEach(held -> reasons.add(held.reason()));
    refused.forEach(
        no -> reasons.add(no.field().map(field -> field + ": ").orElse("") + no.reason()));
    return reasons.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", reasons));
  }

  /**
   * Believed values of one sensor.
   *
   * @param sensor where the payload names it
   * @param time where the payload carries one: when it was measured
   */
  public record Values(
      Optional<String> sensor,
      OptionalDouble temperatureC,
      OptionalDouble rhPct,
      OptionalDouble surfaceTemperatureC,
      Optional<Battery> battery,
      Optional<Instant> time,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> flags) {
    public Values {
      flags = List.copyOf(flags);
    }

    /** True when it says something about air or wood, not only about a battery. */
    public boolean hasReading() {
      return temperatureC.isPresent() || rhPct.isPresent() || surfaceTemperatureC.isPresent();
    }
  }

  /** Values kept but not believed, and why. */
  public record HeldBack(
      Optional<String> sensor,
      OptionalDouble temperatureC,
      OptionalDouble rhPct,
      OptionalDouble surfaceTemperatureC,
      Optional<Battery> battery,
      Optional<Instant> time,
      @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> flags,
      String reason) {
    public HeldBack {
      flags = List.copyOf(flags);
    }
  }

  /** What could not be a value, or not be this source's. */
  public record Refused(Optional<String> field, String reason) {}

  /**
   * State of a sensor's battery.
   *
   * @param fraction of full charge, 0 to 1
   * @param voltageV volt
   * @param low the sensor's own word for it
   */
  public record Battery(OptionalDouble fraction, OptionalDouble voltageV, Optional<Boolean> low) {}
}
