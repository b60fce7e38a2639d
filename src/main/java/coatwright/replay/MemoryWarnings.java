package coatwright.replay;

import coatwright.watch.Bell;
import coatwright.watch.Warning;
import coatwright.watch.WarningLog;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Keeps warnings for as long as the replay runs, and rings nowhere. */
final class MemoryWarnings implements WarningLog, Bell {
  private final Map<String, Warning> byId = new LinkedHashMap<>();

  @Override
  public void keep(Warning warning) {
    byId.put(warning.id(), warning);
  }

  @Override
  public List<Warning> between(Instant from, Instant to) {
    return byId.values().stream()
        .filter(w -> w.from().isBefore(to) && w.to().map(t -> t.isAfter(from)).orElse(true))
        .toList();
  }

  @Override
  public List<Warning> open() {
    return byId.values().stream().filter(w -> w.to().isEmpty()).toList();
  }

  List<Warning> all() {
    return new ArrayList<>(byId.values());
  }

  @Override
  public void ring(Warning warning) {}

  @Override
  public void end(Warning warning) {}
}
