package coatwright.outlook;

import coatwright.film.Milestone;
import coatwright.film.Percentiles;
import coatwright.film.Prediction;
import coatwright.journal.Entry;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the film model says of a part as it stands: its job, the ensemble's answer, and the dates.
 *
 * @param observations entries of the tests that went in
 * @param madeAt the present it was made for
 */
public record PartPrediction(
    LaidJob job, Prediction prediction, List<Entry> observations, Instant madeAt) {

  /** When the last coat went on; every date counts from here. */
  public Instant lastCoatAt() {
    return job.zero().plusMillis(Math.round(1000 * job.lastCoatS()));
  }

  /** The date of a percentile; absent where it is not reached. */
  public Optional<Instant> date(OptionalDouble secondsAfterLastCoat) {
    return secondsAfterLastCoat.isPresent()
        ? Optional.of(
            lastCoatAt().plusMillis(Math.round(1000 * secondsAfterLastCoat.getAsDouble())))
        : Optional.empty();
  }

  /**
   * When the recoat window closes, by its middle: by the clock of a finish that cures, else as its
   * file states; empty where it has no late end.
   */
  public Optional<Instant> recoatUntil() {
    if (job instanceof CuringJob) {
      return date(prediction.recoatUntilS().p50());
    }
    OptionalDouble statedMin = job.finish().recoatUntilMin();
    return statedMin.isPresent()
        ? date(OptionalDouble.of(60 * statedMin.getAsDouble()))
        : Optional.empty();
  }

  /** The dates of a milestone. */
  public Dates dates(Milestone m) {
    Percentiles p = prediction.milestone(m);
    return new Dates(date(p.p10()), date(p.p50()), date(p.p90()));
  }

  /** Nothing can be told: dew stood on the wood when a coat went on. */
  public boolean condensation() {
    return prediction.condensation();
  }

  /** Tenth, fiftieth and ninetieth percentile as dates. */
  public record Dates(Optional<Instant> p10, Optional<Instant> p50, Optional<Instant> p90) {
    /** No date can be told. */
    static final Dates NONE = new Dates(Optional.empty(), Optional.empty(), Optional.empty());

    /** Exactly then, because it was seen. */
    static Dates seen(Instant at) {
      return new Dates(Optional.of(at), Optional.of(at), Optional.of(at));
    }

    /** Not before then, because a test failed then. */
    Dates notBefore(Instant at) {
      return new Dates(later(p10, at), later(p50, at), later(p90, at));
    }

    private static Optional<Instant> later(Optional<Instant> date, Instant at) {
      return date.map(d -> d.isBefore(at) ? at : d);
    }
  }
}
