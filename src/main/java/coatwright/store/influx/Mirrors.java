package coatwright.store.influx;

import coatwright.store.Outbox;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;

/** Every mirror that is set up, each on a thread of its own. */
public final class Mirrors implements AutoCloseable {
  private final List<Mirror> mirrors = new ArrayList<>();

  /**
   * Starts them.
   *
   * @param outbox of a store that was opened with the wishes of these settings
   * @param shop the shop's name, which stands on every point
   */
  public Mirrors(List<MirrorSettings> settings, Outbox outbox, String shop, Clock clock) {
    for (MirrorSettings one : settings) {
      mirrors.add(new Mirror(one, outbox, shop, clock, Pace.USUAL));
    }
    mirrors.forEach(Mirror::start);
  }

  /** How each does now. */
  public List<MirrorStatus> statuses() {
    return mirrors.stream().map(Mirror::status).toList();
  }

  /** Stops them; what is under way is sent again next time. */
  @Override
  public void close() {
    mirrors.forEach(Mirror::stopSoon);
    mirrors.forEach(Mirror::close);
  }
}
