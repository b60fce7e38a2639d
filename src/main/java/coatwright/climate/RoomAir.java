package coatwright.climate;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * A room's air now, or the reason there is none to believe.
 *
 * @param air the combined air; empty when nothing current can be believed
 * @param wood the newest measured wood temperature in the room, whatever its age
 * @param age age of the newest reading that went in
 * @param sources names of the sources that went in
 * @param disagree true when two sensors differ by more than twice their combined uncertainty (the
 *     worse case is then used)
 * @param trouble one sentence when {@code air} is empty or doubtful
 * @param mistrust one sentence when nothing but sensors in doubt tell this air: it may begin a
 *     warning, and allows nothing
 */
public record RoomAir(
    String room,
    Optional<AirPoint> air,
    Optional<WoodPoint> wood,
    Optional<Duration> age,
    List<String> sources,
    boolean disagree,
    Optional<String> trouble,
    Optional<String> mistrust) {
  /** Air whose sensors are not in doubt. */
  public RoomAir(
      String room,
      Optional<AirPoint> air,
      Optional<WoodPoint> wood,
      Optional<Duration> age,
      List<String> sources,
      boolean disagree,
      Optional<String> trouble) {
    this(room, air, wood, age, sources, disagree, trouble, Optional.empty());
  }
}
