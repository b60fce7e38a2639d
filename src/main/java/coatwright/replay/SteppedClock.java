package coatwright.replay;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** The record's own clock: it stands until the walk moves it on. */
final class SteppedClock extends Clock {
  private volatile Instant now;

  SteppedClock(Instant start) {
    this.now = start;
  }

  void set(Instant instant) {
    now = instant;
  }

  @Override
  public Instant instant() {
    return now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("the shop's zone is handed in apart");
  }
}
