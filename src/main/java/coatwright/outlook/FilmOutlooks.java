package coatwright.outlook;

import coatwright.climate.Climate;
import coatwright.film.Finish;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * The outlooks of a shop, by the film model. Safe for many threads: the answers to questions are
 * computed where they are asked; the due list is computed by one thread at a time and read by all.
 */
public final class FilmOutlooks implements Outlooks {
  private final PartOutlooks parts;
  private final ShopWindows windows;
  private final Sessions sessions;
  private final DueList due;
  private final Clock clock;

  /**
   * Outlooks over a shop's air and journal.
   *
   * @param finishes by name
   * @param log keeps every prediction that moved
   */
  public FilmOutlooks(
      Map<String, Finish> finishes,
      Climate climate,
      Journal journal,
      PredictionLog log,
      Clock clock,
      OutlookSettings settings) {
    this.clock = clock;
    FilmJobs jobs = new FilmJobs(journal, climate, finishes, settings);
    ShopLearning learning = new ShopLearning(journal, jobs);
    this.parts = new PartOutlooks(finishes, climate, journal, settings, jobs, learning);
    this.windows = new ShopWindows(climate, parts, settings);
    this.sessions = new Sessions(climate, journal, parts);
    this.due = new DueList(jobs, learning, journal, log, settings);
  }

  /** The outlook of a described coat; needs no shop. */
  public static Outlook described(OutlookRequest request) {
    return Described.outlook(request);
  }

  @Override
  public Outlook of(OutlookRequest request) {
    return described(request);
  }

  @Override
  public Outlook ofPart(NextCoat next, Instant now) {
    return parts.of(next, now);
  }

  @Override
  public BrushingWindows windows(WindowQuestion question, Instant now) {
    return windows.of(question, now);
  }

  /** What the due list last rested on, for a part. */
  public Optional<PartPrediction> prediction(PartPath part) {
    return due.prediction(part);
  }

  @Override
  public SessionOutlook session(String room, Instant now) {
    return sessions.of(room, now);
  }

  @Override
  public Optional<SessionOutlook> sessionIfDoubtHolds(String room, Instant now) {
    return sessions.ifDoubtHolds(room, now);
  }

  @Override
  public List<Due> due(Optional<String> piece) {
    return due.list(piece, clock.instant());
  }

  @Override
  public void refresh(Instant now, String reason) {
    due.refresh(now, reason);
  }

  @Override
  public void onDue(Consumer<List<Due>> listener) {
    due.onDue(listener);
  }
}
