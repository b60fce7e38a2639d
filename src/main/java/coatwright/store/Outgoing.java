package coatwright.store;

import coatwright.climate.Reading;
import coatwright.journal.Entry;
import coatwright.outlook.PredictionLog;
import java.util.Optional;

/** One thing a mirror is given. */
public sealed interface Outgoing {
  /**
   * A reading.
   *
   * @param nth tells apart two readings of one sensor in the same millisecond, from 0
   */
  record OfReading(Reading reading, long nth) implements Outgoing {}

  /**
   * An entry of the journal.
   *
   * @param struck for a strike, the entry it strikes out, where that is there
   */
  record OfEntry(long number, Entry entry, Optional<Entry> struck) implements Outgoing {}

  /**
   * A date that moved.
   *
   * @param nth tells apart two of one part and milestone in the same millisecond, from 0
   */
  record OfPrediction(long number, PredictionLog.Kept kept, long nth) implements Outgoing {}
}
