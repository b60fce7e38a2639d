package coatwright.web;

import coatwright.journal.SaltBook;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/** Two hygrometers that say what they are told to. */
final class StandingHygrometers implements SaltBook.Live {
  volatile List<SaltBook.Sent> sent = List.of();

  @Override
  public Map<String, List<String>> sensors() {
    return Map.of("wall", List.of("wall"));
  }

  @Override
  public List<SaltBook.Sent> justSent(String source, String sensor) {
    return sent;
  }

  @Override
  public double corrected(String source, String sensor, double sentRhPct, Instant at) {
    return sentRhPct;
  }

  /** A quarter of an hour of the same, a reading a minute. */
  void settledAt(double rhPct, double tempC, Instant now) {
    sent =
        java.util.stream.LongStream.rangeClosed(-15, 0)
            .mapToObj(
                minute ->
                    new SaltBook.Sent(
                        now.plusSeconds(60 * minute), OptionalDouble.of(tempC), rhPct))
            .toList();
  }
}
