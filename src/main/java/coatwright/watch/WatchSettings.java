package coatwright.watch;

import coatwright.quantity.OutOfRange;
import java.time.Duration;
import java.time.ZoneId;

/**
 * When a warning begins and when it ends. Every figure here is ours, chosen so that a value that
 * wanders about a limit does not ring twice; none is a published rule.
 *
 * @param zone the shop's own time, for the hours told in messages
 * @param wetFor how long after the brush is put down a film counts as wet; ours, 20 min: the film
 *     model finds its coldest moment and its peak of water within 12 minutes from 12 to 30 °C
 * @param plannedWithin a next coat that comes due within this is a coat planned; ours, 3 h
 * @param cloudingClearRatio water over its limit must fall to this before clouding is over; it
 *     begins at 1.2 by the outlook's own rule, so the band is 0.1 wide; ours
 * @param cloudingClearFor and stay there this long; ours, 5 min
 * @param woodBeginK wood less dew point, less its own uncertainty, at which the warning begins, K;
 *     1 K is the outlook's own rule for clouding
 * @param woodEndK and at which it ends, K; ours, 2 K
 * @param woodClearFor and stay there this long; ours, 10 min
 * @param woodFreshFor a wood temperature older than this says nothing; ours, 30 min
 * @param coldBeginK air below what the date assumed, K, at which slow cure begins where a promise
 *     is missed; ours, 2 K
 * @param coldEndK and at which it ends; ours, 1 K
 * @param coldUnpromisedBeginK the same where no date was promised; ours, 5 K, which by the film
 *     model makes three days into four
 * @param coldUnpromisedEndK and at which it ends; ours, 4 K
 * @param coldOver the air is meant over this; ours, 3 h, so that an opened door does not ring
 * @param coldHold slow cure must hold, or be over, this long; ours, 30 min
 * @param promiseSlack a promise counts as kept again when the date falls this far inside it; ours,
 *     6 h
 * @param sensorClearFor a sensor must speak sense this long before its warning ends; ours, 2 min
 * @param disagreeFor two sensors must disagree, or agree, this long; ours, 10 min
 */
public record WatchSettings(
    ZoneId zone,
    Duration wetFor,
    Duration plannedWithin,
    double cloudingClearRatio,
    Duration cloudingClearFor,
    double woodBeginK,
    double woodEndK,
    Duration woodClearFor,
    Duration woodFreshFor,
    double coldBeginK,
    double coldEndK,
    double coldUnpromisedBeginK,
    double coldUnpromisedEndK,
    Duration coldOver,
    Duration coldHold,
    Duration promiseSlack,
    Duration sensorClearFor,
    Duration disagreeFor) {
  public WatchSettings {
    OutOfRange.check("watch: clouding is over below", cloudingClearRatio, "", 0.5, 1.2);
    OutOfRange.check("watch: wood above dew point, begin", woodBeginK, "K", 0, 10);
    OutOfRange.check("watch: wood above dew point, end", woodEndK, "K", woodBeginK, 15);
    OutOfRange.check("watch: cold for the promise, begin", coldBeginK, "K", 0, 20);
    OutOfRange.check("watch: cold for the promise, end", coldEndK, "K", 0, coldBeginK);
    OutOfRange.check("watch: cold, begin", coldUnpromisedBeginK, "K", 0, 20);
    OutOfRange.check("watch: cold, end", coldUnpromisedEndK, "K", 0, coldUnpromisedBeginK);
  }

  /** The usual figures. */
  public static WatchSettings usual(ZoneId zone) {
    return new WatchSettings(
        zone,
        Duration.ofMinutes(20),
        Duration.ofHours(3),
        1.1,
        Duration.ofMinutes(5),
        1,
        2,
        Duration.ofMinutes(10),
        Duration.ofMinutes(30),
        2,
        1,
        5,
        4,
        Duration.ofHours(3),
        Duration.ofMinutes(30),
        Duration.ofHours(6),
        Duration.ofMinutes(2),
        Duration.ofMinutes(10));
  }
}
