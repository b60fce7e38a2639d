package coatwright.watch;

import coatwright.climate.Climate;
import coatwright.climate.SourceStatus;
import coatwright.film.Finish;
import coatwright.journal.Journal;
import coatwright.outlook.Outlooks;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * The shop's watch. Each look gathers signs (what stands where, against two limits), and what has
 * been said turns them into beginnings and ends, each written before it is rung.
 *
 * <p>Air that cannot be believed ends nothing and begins nothing but the sensor's own warning. Safe
 * for many threads; one look at a time.
 */
public final class ShopWatch implements Watch {
  private final WarningLog log;
  private final Bell bell;
  private final Supplier<List<SourceStatus>> sources;
  private final CloudingSigns clouding;
  private final SlowCureSigns cure;
  private final WoodSigns wood;
  private final SensorSigns sensors;
  private final Said said;
  private final Map<String, Supplier<Optional<String>>> houseTroubles = new LinkedHashMap<>();

  /**
   * @param log read once here, so that a restart neither repeats nor forgets a warning
   * @param sources the sensors as they stand when asked
   * @param finishes a finish by its name
   */
  public ShopWatch(
      Outlooks outlooks,
      Climate climate,
      Journal journal,
      WarningLog log,
      Bell bell,
      Supplier<List<SourceStatus>> sources,
      Function<String, Optional<Finish>> finishes,
      WatchSettings settings) {
    this.log = log;
    this.bell = bell;
    this.sources = sources;
    this.clouding = new CloudingSigns(outlooks, climate, journal, settings);
    this.cure = new SlowCureSigns(outlooks, climate, journal, finishes, settings);
    this.wood = new WoodSigns(climate, settings);
    this.sensors = new SensorSigns(climate, settings);
    this.said = new Said(log.open());
  }

  /**
   * Warns of something of the house itself while it lasts.
   *
   * @param kind the warning's kind
   * @param trouble one sentence saying what is wrong and what to do, when something is
   */
  public synchronized void alsoWatch(String kind, Supplier<Optional<String>> trouble) {
    houseTroubles.put(kind, trouble);
  }

  private List<Sign> houseSigns() {
    List<Sign> signs = new ArrayList<>();
    houseTroubles.forEach(
        (kind, asked) -> {
          Optional<String> trouble = asked.get();
          signs.add(
              new Sign(
                  kind + "/house",
                  kind,
                  Optional.empty(),
                  Optional.empty(),
                  trouble.isPresent() ? Sign.Verdict.ON : Sign.Verdict.CLEAR,
                  0,
                  trouble.orElse("all is well again"),
                  Duration.ZERO,
                  Duration.ZERO));
        });
    return signs;
  }

  @Override
  public synchronized void judge(Instant now) {
    List<Sign> signs = new ArrayList<>(clouding.look(now));
    signs.addAll(houseSigns());
    signs.addAll(wood.look(now));
    signs.addAll(sensors.look(sources.get(), said, now));
    signs.addAll(cure.look(now));
    Said.Changes changes = said.look(signs, now);
    // Told before it is kept: a full disk must not silence a warning.
    changes.ended().forEach(bell::end);
    changes.begun().forEach(bell::ring);
    changes.ended().forEach(log::keep);
    changes.begun().forEach(log::keep);
    changes.reworded().forEach(log::keep);
  }

  @Override
  public synchronized List<Warning> open() {
    return said.open();
  }

  @Override
  public List<Warning> between(Instant from, Instant to) {
    return log.between(from, to);
  }
}
