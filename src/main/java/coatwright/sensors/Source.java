package coatwright.sensors;

import coatwright.climate.Reading;
import coatwright.climate.SourceStatus;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Supplier;

/** One source of the running house: its path and how it is doing. */
final class Source {
  /** Takes what became of a payload. */
  interface Dealer {
    void deal(Source source, RawReading payload, Intake.Taken taken);
  }

  private final SourceMapping mapping;
  private final Intake intake;
  private final SourceWatch watch;
  private final Dealer dealer;
  private Supplier<Optional<String>> trouble = Optional::empty;

  Source(SourceMapping mapping, Neighbours neighbours, Upkeep upkeep, Clock clock, Dealer dealer) {
    this.mapping = mapping;
    this.intake = new Intake(mapping, neighbours, upkeep);
    this.watch = new SourceWatch(mapping, intake.calibration(), clock);
    this.dealer = dealer;
  }

  SourceMapping mapping() {
    return mapping;
  }

  SourceWatch watch() {
    return watch;
  }

  /** Whence the trouble of its link is asked; set before anything starts. */
  void trouble(Supplier<Optional<String>> asked) {
    trouble = asked;
  }

  /** Before anything starts. */
  void resume(Reading last) {
    intake.resume(last);
  }

  Calibration calibration() {
    return intake.calibration();
  }

  SourceStatus status(long nowNanos) {
    return watch.status(nowNanos, trouble.get());
  }

  /** On the reading thread. */
  void read(RawReading payload) {
    dealer.deal(this, payload, intake.take(payload));
  }

  /** On the reading thread: a line of boot text, or one whose beginning may be missing. */
  void overhear(RawReading payload, boolean maybeCut) {
    intake.overhear(payload, maybeCut);
  }

  /** On the reading thread: what was said before is no longer held against what comes. */
  void forget() {
    intake.forget();
  }
}
