package coatwright.sensors;

import coatwright.sensors.MappedPayload.Battery;
import coatwright.sensors.MappedPayload.HeldBack;
import coatwright.sensors.MappedPayload.Refused;
import coatwright.sensors.MappedPayload.Values;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One record on its way through the screen: values in the house's units, with what was found odd.
 * Belongs to the thread that reads the payload.
 */
final class Sample {
  private static final double SHOWN = 1e6;

  final Optional<String> sensor;
  final String key;
  final Instant at;
  final boolean timed;
  final boolean ownTime;
  final Optional<String> sequence;
  private Optional<Boolean> batteryLow;
  private final Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
  private final Map<Quantity, Double> sent = new EnumMap<>(Quantity.class);
  private final List<String> flags = new ArrayList<>();
  private final List<Refused> refused = new ArrayList<>();
  private Optional<String> held = Optional.empty();
  private boolean heldOtherwise;
  private boolean jumped;
  private final List<Sample> confirmed = new ArrayList<>();
  private boolean repeated;

  /**
   * @param key what tells this sensor's history from others of the source
   * @param timed the payload was to carry a time
   */
  Sample(
      Optional<String> sensor,
      String key,
      TimeReader.Found time,
      boolean timed,
      Optional<String> sequence,
      Optional<Boolean> batteryLow) {
    this.sensor = sensor;
    this.key = key;
    this.at = time.at();
    this.timed = timed;
    this.ownTime = time.own();
    this.sequence = sequence;
    this.batteryLow = batteryLow;
    flags.addAll(time.flags());
  }

  /** What a recording tells the sensor said earlier; empty until filled. */
  static Sample recalled(String key, Instant at) {
    return new Sample(
        Optional.empty(),
        key,
        new TimeReader.Found(at, false, List.of()),
        false,
        Optional.empty(),
        Optional.empty());
  }

  void put(Quantity quantity, double value) {
    Double before = values.put(quantity, value);
    if (before != null && Double.compare(before, value) != 0) {
      sent.putIfAbsent(quantity, before);
    }
  }

  /** The number as it was sent, in the house's unit, where something was done to it since. */
  OptionalDouble sent(Quantity quantity) {
    Double value = sent.get(quantity);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  boolean has(Quantity quantity) {
    return values.containsKey(quantity);
  }

  OptionalDouble value(Quantity quantity) {
    Double value = values.get(quantity);
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }

  Map<Quantity, Double> values() {
    return Map.copyOf(values);
  }

  boolean hasReading() {
    return values.keySet().stream().anyMatch(quantity -> !quantity.ofBattery());
  }

  boolean isEmpty() {
    return values.isEmpty() && batteryLow.isEmpty();
  }

  void flag(String word) {
    if (!flags.contains(word)) {
      flags.add(word);
    }
  }

  List<String> flags() {
    return List.copyOf(flags);
  }

  /** Takes one quantity out: what was sent can be no value of it. */
  void refuse(Quantity quantity, String reason) {
    values.remove(quantity);
    refused.add(new Refused(Optional.of(quantity.field()), reason));
  }

  /** Takes out all that was said about air and wood; the battery stands. */
  void refuseReadings(String reason) {
    List<Quantity> gone = values.keySet().stream().filter(each -> !each.ofBattery()).toList();
    gone.forEach(quantity -> refuse(quantity, reason));
  }

  /** Takes out everything, battery and all: the message as a whole is none. */
  void refuseAll(String reason) {
    values.clear();
    batteryLow = Optional.empty();
    refused.clear();
    refused.add(new Refused(Optional.empty(), reason));
  }

  void hold(String reason) {
    heldOtherwise = true;
    if (held.isEmpty()) {
      held = Optional.of(reason);
    }
  }

  /** Holds it back because it is a step from what was believed before. */
  void holdAsStep(String reason) {
    jumped = true;
    if (held.isEmpty()) {
      held = Optional.of(reason);
    }
  }

  boolean hasJumped() {
    return jumped;
  }

  /** True when nothing speaks against it but that it is a step. */
  boolean isDoubted() {
    return jumped && !heldOtherwise;
  }

  /** It bears out a step that was held back before it: both are believed. */
  void confirms(Sample doubted) {
    if (doubted.isDoubted() && !confirmed.contains(doubted)) {
      doubted.flag("step");
      confirmed.add(doubted);
    }
  }

  List<Sample> confirmed() {
    return List.copyOf(confirmed);
  }

  /** The same values, to be corrected and shown while this one waits as it was sent. */
  Sample copy() {
    Sample copy =
        new Sample(
            sensor, key, new TimeReader.Found(at, ownTime, flags), timed, sequence, batteryLow);
    copy.values.putAll(values);
    copy.sent.putAll(sent);
    return copy;
  }

  Optional<String> heldBecause() {
    return held;
  }

  /** Notes that it was already taken once. */
  void repeated() {
    repeated = true;
  }

  boolean isRepeated() {
    return repeated;
  }

  boolean isHeld() {
    return held.isPresent();
  }

  List<Refused> refused() {
    return List.copyOf(refused);
  }

  private Optional<Battery> battery() {
    OptionalDouble fraction = value(Quantity.BATTERY_LEVEL);
    OptionalDouble voltage = value(Quantity.BATTERY_VOLTAGE);
    return fraction.isEmpty() && voltage.isEmpty() && batteryLow.isEmpty()
        ? Optional.empty()
        : Optional.of(new Battery(fraction, voltage, batteryLow));
  }

  /** What of it is believed; empty when it is held back, or nothing of it is left. */
  Optional<Values> accepted() {
    if (held.isPresent() || isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Values(
            sensor,
            shown(Quantity.AIR_TEMPERATURE),
            shown(Quantity.RELATIVE_HUMIDITY),
            shown(Quantity.SURFACE_TEMPERATURE),
            battery(),
            time(),
            flags));
  }

  /** What of it is shown but not believed. */
  Optional<HeldBack> heldBack() {
    return held.filter(reason -> hasReading())
        .map(
            reason ->
                new HeldBack(
                    sensor,
                    shown(Quantity.AIR_TEMPERATURE),
                    shown(Quantity.RELATIVE_HUMIDITY),
                    shown(Quantity.SURFACE_TEMPERATURE),
                    battery(),
                    time(),
                    flags,
                    reason));
  }

  private Optional<Instant> time() {
    return timed ? Optional.of(at) : Optional.empty();
  }

  /** Binary noise of the unit conversions is not shown. */
  private OptionalDouble shown(Quantity quantity) {
    OptionalDouble value = value(quantity);
    return value.isEmpty()
        ? value
        : OptionalDouble.of(Math.round(value.getAsDouble() * SHOWN) / SHOWN);
  }
}
