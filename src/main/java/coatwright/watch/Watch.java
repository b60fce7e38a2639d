package coatwright.watch;

import java.time.Instant;
import java.util.List;

/** Judges the shop and rings the bell once when something begins and once when it ends. */
public interface Watch {
  /** Looks at everything anew; called after readings, entries and once a minute. */
  void judge(Instant now);

  /** What is being warned of now, gravest first. */
  List<Warning> open();

  /** Warnings that overlap [from, to). */
  List<Warning> between(Instant from, Instant to);
}
