package coatwright.replay;

import coatwright.outlook.PredictionLog;
import java.util.ArrayList;
import java.util.List;

/** Keeps predictions for as long as the replay runs. */
final class MemoryPredictions implements PredictionLog {
  private final List<Kept> kept = new ArrayList<>();

  @Override
  public synchronized void keep(Kept prediction) {
    kept.add(prediction);
  }

  @Override
  public synchronized List<Kept> history(String part, String milestone) {
    return kept.stream()
        .filter(k -> k.part().equals(part) && k.milestone().equals(milestone))
        .toList();
  }
}
