package coatwright;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands until it is put forward. */
final class SetClock extends Clock {
  private volatile Instant now;

  SetClock(Instant now) {
    this.now = now;
  }

  void forward(Duration by) {
    now = now.plus(by);
  }

  void to(Instant instant) {
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
    return this;
  }
}
