package coatwright.outlook;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Port: keeps every prediction that moved, with the date before and the reason. */
public interface PredictionLog {
  /** A kept prediction. */
  record Kept(
      String part,
      String milestone,
      Instant madeAt,
      Optional<Instant> p10,
      Optional<Instant> p50,
      Optional<Instant> p90,
      Optional<Instant> was,
      String reason) {}

  /** Keeps one. */
  void keep(Kept prediction);

  /** All kept for a part's milestone, oldest first. */
  List<Kept> history(String part, String milestone);
}
