package coatwright.replay;

import coatwright.film.Finish;
import coatwright.outlook.OutlookSettings;
import coatwright.quantity.RefusedInput;
import coatwright.sensors.SourceMapping;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Runs a recorded stretch of air through the house: screen, climate, journal, outlook, watch,
 * review, with the record's own clock in place of the present. Nothing is kept.
 */
public final class Replay {
  private final Map<String, Finish> finishes;
  private final OutlookSettings settings;

  /**
   * @param finishes by name
   */
  public Replay(Map<String, Finish> finishes, OutlookSettings settings) {
    this.finishes = Map.copyOf(finishes);
    this.settings = settings;
  }

  /**
   * Runs one record.
   *
   * @param readings a CSV file's text; lines that begin with {@code #} are comments
   * @param mapping how to read it: columns, with a time
   * @param coatList CSV or JSON; see {@link CoatList}
   * @param schedule so many coats of the reference job from the first reading
   * @throws RefusedInput with every fault of mapping, readings or coat list
   */
  public Replayed run(
      String readings, SourceMapping mapping, Optional<String> coatList, OptionalInt schedule) {
    Recording recording = Recording.of(readings, mapping);
    CoatList reader =
        new CoatList(
            finishes,
            settings.usualFinish(),
            settings.zone(),
            recording.from().minus(recording.moved()));
    List<ReplayCoat> coats = new ArrayList<>();
    coatList.ifPresent(text -> coats.addAll(reader.read(text)));
    schedule.ifPresent(n -> coats.addAll(reader.schedule(n)));
    List<ReplayCoat> moved = new ArrayList<>();
    for (ReplayCoat coat : coats) {
      ReplayCoat there = coat.at(coat.start().plus(recording.moved()));
      if (there.start().isBefore(recording.from()) || there.start().isAfter(recording.to())) {
        throw RefusedInput.of(
            "coat " + coat.id() + ", start " + coat.start(),
            "lies outside the record, %s to %s"
                .formatted(
                    recording.from().minus(recording.moved()),
                    recording.to().minus(recording.moved())),
            "give a time within it, or +30min from its first reading");
      }
      moved.add(there);
    }
    moved.sort(Comparator.comparing(ReplayCoat::start));
    return new Walk(recording, moved, finishes, settings).walked();
  }
}
