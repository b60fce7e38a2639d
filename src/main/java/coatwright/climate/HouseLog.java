package coatwright.climate;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Port: what the house notes of itself and of its clock, so that later "no sensor spoke" can be
 * told from "nobody listened", and readings of a clock that was not set can be dated afterwards.
 */
public interface HouseLog {
  /** A sign of life. */
  enum Beat {
    START,
    HOUR,
    STOP
  }

  /**
   * The newest sign of life.
   *
   * @param at by the clock as it stood
   */
  record Sign(Instant at, Beat kind, boolean trusted) {}

  /** Begins a stretch; every reading appended from now on belongs to it. */
  ClockStretch begin(ClockStretch stretch);

  /** Leaves a sign of life; durable at once. */
  void beat(Instant at, Beat kind);

  /** The newest sign of life of a trusted clock. */
  Optional<Sign> lastSign();

  /** When the newest dated reading was measured. */
  Optional<Instant> newestReading();

  /** Notes what befell the house; durable at once. */
  void happened(Happening happening);

  /** What befell the house in [from, to), in the order it was noted. */
  List<Happening> happenings(Instant from, Instant to);

  /**
   * Gives dates to the readings of this boot that have none: each stretch is shifted by what the
   * clock was wrong by in it, so that the readings keep their distances. To be called once the
   * stretch that has begun is a trusted one.
   *
   * @return how many readings got their dates
   */
  int redate();

  /** How many readings never got a date, all in all. */
  int undated();
}
