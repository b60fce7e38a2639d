package coatwright.climate;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands until it is set, forward or back. */
public final class TestClock extends Clock {
  private Instant now;

  public TestClock(Instant now) {
    this.now = now;
  }

  public void set(Instant instant) {
    now = instant;
  }

  public void pass(Duration duration) {
    now = now.plus(duration);
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
