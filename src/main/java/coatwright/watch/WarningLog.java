package coatwright.watch;

import java.time.Instant;
import java.util.List;

/** Port: keeps warnings, so that a restart neither repeats nor forgets one. */
public interface WarningLog {
  /** Writes a warning, or its end. */
  void keep(Warning warning);

  /** Warnings that overlap [from, to), oldest first. */
  List<Warning> between(Instant from, Instant to);

  /** Warnings that have not ended. */
  List<Warning> open();
}
