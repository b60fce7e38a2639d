package coatwright.outlook;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The outlooks of the shop. Safe for many threads; long work runs on its own thread and is told
 * through listeners.
 */
public interface Outlooks {
  /** The outlook of a described coat; pure, needs no shop. */
  Outlook of(OutlookRequest request);

  /** The outlook of the next coat on a part in its room's air now. */
  Outlook ofPart(NextCoat next, Instant now);

  /** The hours of the next 72 in which a coat may be brushed. */
  BrushingWindows windows(WindowQuestion question, Instant now);

  /** What Now shows for a room. */
  SessionOutlook session(String room, Instant now);

  /**
   * What Now would show for a room if its reading in doubt were right; empty when none is, or it
   * does not speak of the air. Nothing may be permitted on the strength of it.
   */
  Optional<SessionOutlook> sessionIfDoubtHolds(String room, Instant now);

  /** What is due, of one piece or of all, soonest first, as last predicted. */
  List<Due> due(Optional<String> piece);

  /**
   * Predicts again every part whose film still changes; called when readings, entries or time ask
   * for it.
   */
  void refresh(Instant now, String reason);

  /** Called after a refresh that changed a part's milestones. */
  void onDue(Consumer<List<Due>> listener);
}
