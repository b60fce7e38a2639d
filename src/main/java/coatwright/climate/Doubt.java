package coatwright.climate;

import coatwright.air.SaturationPressure;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A reading that is shown but not built upon: a step from the one before that waits for the next to
 * agree, or what a sensor in doubt says beside one that is not. It may raise a warning; no outlook
 * or prediction rests on it.
 *
 * @param reason what speaks against it, such as {@code step of 8.0 K in 10 s}
 * @param jumped it is a step, and the next reading will tell
 */
public record Doubt(Reading reading, String reason, boolean jumped) {
  /** A step from the reading before. */
  public Doubt(Reading reading, String reason) {
    this(reading, reason, true);
  }

  /** What a sensor says that is in doubt. */
  static Doubt of(Reading reading, Mistrust mistrust) {
    return new Doubt(reading, mistrust.sentence(), false);
  }

  /**
   * The air it would be, where it speaks of the room's air; what it does not tell is taken from the
   * air believed before: the humidity from its vapour, the temperature as it was.
   */
  public Optional<AirPoint> air(Optional<AirPoint> believed) {
    OptionalDouble rh = reading.rhPct();
    OptionalDouble temp = reading.temperatureC();
    boolean told = temp.isPresent() && rh.isPresent();
    if (!RoomHistory.speaksOfRoomAir(reading)
        || (temp.isEmpty() && rh.isEmpty())
        || (!told && believed.isEmpty())) {
      return Optional.empty();
    }
    double tempC = temp.orElseGet(() -> believed.orElseThrow().airTempC());
    double vapourPa =
        rh.isPresent()
            ? rh.getAsDouble() / 100 * SaturationPressure.overWaterPa(tempC)
            : believed.orElseThrow().vapourPressurePa();
    return Optional.of(
        SensorAir.point(
            reading.at(), tempC, vapourPa, reading.temperatureErrorK(), reading.rhErrorPct()));
  }

  /** True when the reading tells a quantity that this one is in doubt of. */
  boolean isSettledBy(Reading later) {
    return (reading.temperatureC().isPresent() && later.temperatureC().isPresent())
        || (reading.rhPct().isPresent() && later.rhPct().isPresent())
        || (reading.surfaceTemperatureC().isPresent() && later.surfaceTemperatureC().isPresent());
  }

  /** What a person reads where it is shown. */
  public String sentence() {
    return sentence(UnitSystem.METRIC);
  }

  /** The same in those units. */
  public String sentence(UnitSystem units) {
    List<String> read = new ArrayList<>();
    reading.temperatureC().ifPresent(t -> read.add(Show.temperature(t, units)));
    reading.rhPct().ifPresent(rh -> read.add(Show.relativeHumidity(rh)));
    reading.surfaceTemperatureC().ifPresent(t -> read.add("wood " + Show.temperature(t, units)));
    return jumped
        ? "just read %s: a jump, waiting for one more reading to agree"
            .formatted(String.join(", ", read))
        : "reads %s, in doubt: %s".formatted(String.join(", ", read), reason);
  }
}
