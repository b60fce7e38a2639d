package coatwright.outlook;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * The hours to come in which a coat may be brushed: within what the finish is stated for, the wood
 * clear of the dew point and no clouding expected, in that hour and the one after it, because a
 * coat laid at the end of an hour is wet in the next.
 *
 * @param finish the finish's name
 * @param from the present
 * @param until as far as is looked
 * @param basis what the forecast rests on: {@code stays}, {@code learning}, {@code own errors}, or
 *     {@code none}
 * @param outdoors whether an outdoor forecast went in
 * @param leastShare a window is told from this share on
 * @param promised whether there is any
 * @param sentence the answer in words; also where none can be promised
 * @param hours every whole hour
 * @param windows hours that follow on each other, each of them of that share or more
 */
public record BrushingWindows(
    String room,
    String finish,
    String finishTitle,
    Optional<String> part,
    Optional<String> jar,
    Instant from,
    Instant until,
    String basis,
    boolean outdoors,
    double leastShare,
    boolean promised,
    String sentence,
    List<Hour> hours,
    List<Window> windows) {
  public BrushingWindows {
    hours = List.copyOf(hours);
    windows = List.copyOf(windows);
  }

  /**
   * One hour.
   *
   * @param share of the courses the air may take, 0 to 1, in which a coat may be brushed then;
   *     drawn, the farther ahead the more, towards how often that hour was so in the last 30 days
   * @param usual beyond 24 h ahead: what is usual for the hour rather than a forecast
   */
  public record Hour(Instant from, double share, boolean usual) {}

  /**
   * Hours that follow on each other.
   *
   * @param share of the worst of them
   */
  public record Window(Instant from, Instant until, double share, boolean usual) {}
}
