package coatwright.climate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The shop's air: takes readings from the screen, answers for every room. Safe for many readers,
 * one writer at a time.
 */
public interface Climate {
  /** Names of the rooms, in the settings' order. */
  List<String> rooms();

  /** Takes a believed reading: at once in memory and to listeners, durable within a second. */
  void accept(Reading reading);

  /** The room's air at this instant, by readings no older than they may be. */
  RoomAir now(String room);

  /**
   * The air that was, over [from, to): sensors of a room combined in vapour pressure; gaps kept.
   */
  AirSeries series(String room, Instant from, Instant to);

  /** The air outside at this instant, where a sensor outside told it within the hour. */
  default Optional<AirPoint> outside() {
    return Optional.empty();
  }

  /** Wood temperatures measured in the room (or on the part, where given) over [from, to). */
  List<WoodPoint> wood(String room, Optional<String> part, Instant from, Instant to);

  /**
   * The middle of what is expected of the air over [from, to), at most 72 h ahead, from the room's
   * own past; empty while fewer than 24 h are known.
   */
  Optional<AirSeries> expected(String room, Instant from, Instant to);

  /**
   * The next 72 h with the courses the air may take, from the room's own past and, where there is
   * one, an outdoor forecast; empty where nothing of the last weeks is known.
   */
  Optional<AirForecast> forecast(String room);

  /**
   * Shows a reading that jumped until its sensor is believed again, whether that bears it out or
   * not, or it is too old to be the air now. It joins no series.
   */
  void doubt(Doubt doubt);

  /** The newest reading of the room that is still in doubt. */
  Optional<Doubt> doubted(String room);

  /** Called after each reading in doubt, on the thread that brings it. */
  void onDoubt(Consumer<Doubt> listener);

  /** Called after each accepted reading, on the accepting thread. */
  void onReading(Consumer<Reading> listener);
}
