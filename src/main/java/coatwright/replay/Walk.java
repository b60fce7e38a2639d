package coatwright.replay;

import coatwright.climate.LiveClimate;
import coatwright.climate.MemoryReadingLog;
import coatwright.climate.Reading;
import coatwright.film.Finish;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.Ledger;
import coatwright.journal.LiveJournal;
import coatwright.journal.MemoryLedger;
import coatwright.journal.Observation;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.FilmOutlooks;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookSettings;
import coatwright.outlook.Outlooks;
import coatwright.review.FilmReviews;
import coatwright.review.Why;
import coatwright.sensors.Intake;
import coatwright.watch.ShopWatch;
import coatwright.watch.Warning;
import coatwright.watch.WatchSettings;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** One walk of a record through the rooms of a house that stands in memory. */
final class Walk {
  private static final Duration MINUTE = Duration.ofMinutes(1);

  /** In a silence the watch looks every minute or interval at first, then every quarter hour. */
  private static final Duration SOON_SILENT = Duration.ofMinutes(20);

  private static final Duration LONG_SILENT_LOOK = Duration.ofMinutes(15);
  private static final Duration DUE_AT_LEAST_EVERY = Duration.ofHours(1);
  private static final int DUE_AT_MOST = 200;
  private static final Duration SEEN_AFTER = Duration.ofMinutes(20);

  private final Recording recording;
  private final List<ReplayCoat> coats;
  private final SteppedClock clock;
  private final LiveClimate climate;
  private final Journal journal = new LiveJournal(new MemoryLedger());
  private final MemoryWarnings warnings = new MemoryWarnings();
  private final Outlooks outlooks;
  private final ShopWatch watch;
  private final FilmReviews reviews;
  private final CoatAnswers answers;
  private final RecordedSource source;
  private final Intake intake;
  private final Duration look;
  private final Duration dueEvery;

  private final List<Replayed.Refused> refused;
  private final Map<ReplayCoat, Laid> laid = new LinkedHashMap<>();
  private final Map<List<Object>, Entry> jars = new LinkedHashMap<>();
  private Replayed.@Nullable Refused doubted;
  private int accepted;
  private Instant looked;
  private Instant dueMade = Instant.MIN;

  /** A coat, its entry and the outlook as it stood. */
  private record Laid(Entry entry, Outlook outlook) {}

  Walk(
      Recording recording,
      List<ReplayCoat> coats,
      Map<String, Finish> finishes,
      OutlookSettings settings) {
    this.recording = recording;
    this.coats = coats;
    Duration every = recording.every();
    String room = recording.room();
    this.clock = new SteppedClock(recording.from());
    this.climate =
        new LiveClimate(
            List.of(room), new MemoryReadingLog(), clock, every, settings.zone(), Map.of());
    this.intake = Intake.alone(recording.mapping());
    this.source =
        new RecordedSource(
            recording.mapping().source(), room, recording.mapping().placing().role(), every);
    FilmJobs jobs = new FilmJobs(journal, climate, finishes, settings);
    this.outlooks =
        new FilmOutlooks(finishes, climate, journal, new MemoryPredictions(), clock, settings);
    this.watch =
        new ShopWatch(
            outlooks,
            climate,
            journal,
            warnings,
            warnings,
            () -> List.of(source.status(clock.instant())),
            name -> Optional.ofNullable(finishes.get(name)),
            WatchSettings.usual(settings.zone()));
    this.reviews = new FilmReviews(jobs, journal, climate, settings.zone(), clock);
    this.answers = new CoatAnswers(climate, outlooks, jobs, settings, room);
    this.look = every.compareTo(MINUTE) < 0 ? MINUTE : every;
    Duration share = Duration.between(recording.from(), recording.to()).dividedBy(DUE_AT_MOST);
    this.dueEvery = share.compareTo(DUE_AT_LEAST_EVERY) < 0 ? DUE_AT_LEAST_EVERY : share;
    this.refused = new ArrayList<>(recording.refused());
    this.looked = recording.from();
  }

  Replayed walked() {
    recording.header().ifPresent(intake::take);
    int next = 0;
    for (Recording.Line line : recording.lines()) {
      while (next < coats.size() && coats.get(next).start().isBefore(line.at())) {
        lay(coats.get(next));
        next++;
      }
      hear(line);
    }
    while (next < coats.size()) {
      lay(coats.get(next));
      next++;
    }
    clock.set(recording.to());
    watch.judge(recording.to());
    return told();
  }

  private void hear(Recording.Line line) {
    silence(line.at());
    clock.set(line.at());
    Intake.Taken taken = intake.take(line.raw());
    boolean believed = !taken.readings().isEmpty();
    source.heard(line.at(), believed);
    taken.doubts().forEach(climate::doubt);
    if (believed) {
      accepted++;
      boolean borneOut =
          taken.readings().stream().anyMatch(reading -> reading.at().isBefore(line.at()));
      if (borneOut && refused.remove(doubted)) {
        accepted++;
      }
      for (Reading reading : taken.readings()) {
        climate.accept(reading);
      }
      // A line may hold one field that is believed and one that is not.
      taken
          .verdict()
          .reason()
          .ifPresent(reason -> refused.add(new Replayed.Refused(line.number(), reason)));
    } else {
      doubted =
          new Replayed.Refused(
              line.number(), taken.verdict().reason().orElse("nothing in it was believed"));
      refused.add(doubted);
    }
    if (!Duration.between(looked, line.at()).minus(look).isNegative()) {
      look(line.at());
    }
  }

  /** Time passes between two lines too, and the watch looks then as it does live. */
  private void silence(Instant until) {
    Instant from = looked;
    Instant at = from.plus(look);
    while (at.isBefore(until)) {
      clock.set(at);
      look(at);
      boolean soon = Duration.between(from, at).compareTo(SOON_SILENT) < 0;
      Duration step = soon || look.compareTo(LONG_SILENT_LOOK) > 0 ? look : LONG_SILENT_LOOK;
      at = at.plus(step);
    }
  }

  private void look(Instant at) {
    looked = at;
    if (!laid.isEmpty() && !at.isBefore(dueMade.plus(dueEvery))) {
      outlooks.refresh(at, "time");
      dueMade = at;
    }
    watch.judge(at);
  }

  private void lay(ReplayCoat coat) {
    silence(coat.start());
    clock.set(coat.start());
    Outlook outlook = answers.before(coat, journal.coats(coat.part()));
    Entry jar = jar(coat);
    Coat body =
        new Coat(
            coat.part(),
            ((Jar) jar.body()).name(),
            jar.id(),
            coat.start(),
            Optional.empty(),
            recording.room(),
            coat.method(),
            coat.wetFilmUm(),
            coat.woodTempC(),
            Optional.empty());
    laid.put(coat, new Laid(write(body, coat.start()), outlook));
    outlooks.refresh(coat.start(), "coat");
    dueMade = coat.start();
    look(coat.start());
  }

  /** Coats of equal contents come from one jar. */
  private Entry jar(ReplayCoat coat) {
    return jars.computeIfAbsent(
        List.of(coat.finish().name(), coat.cutGPerL(), coat.strengthVolPct(), coat.retarder()),
        contents ->
            write(
                new Jar(
                    "listed-" + (jars.size() + 1),
                    coat.finish().name(),
                    coat.cutGPerL(),
                    coat.strengthVolPct(),
                    Optional.empty(),
                    coat.retarder()),
                coat.start()));
  }

  private Entry write(EntryBody body, Instant at) {
    return journal.write(List.of(new Ledger.Line(at, at, Optional.empty(), body))).get(0);
  }

  private Replayed told() {
    List<Replayed.CoatAnswer> told = new ArrayList<>();
    List<Why> review = new ArrayList<>();
    Unmoved unmoved = new Unmoved(recording.moved());
    laid.forEach((coat, l) -> coat.seen().ifPresent(seen -> note(coat, l, seen)));
    laid.forEach(
        (coat, l) -> {
          told.add(
              new Replayed.CoatAnswer(
                  coat.id(),
                  coat.part().toString(),
                  unmoved.time(coat.start()),
                  l.outlook(),
                  unmoved.milestones(answers.milestones(l.entry(), recording.to()))));
          if (coat.seen().isPresent()) {
            review.add(unmoved.why(reviews.why(l.entry().id()), coat.id()));
          }
        });
    return new Replayed(readings(unmoved), told, said(unmoved), review);
  }

  private void note(ReplayCoat coat, Laid l, ReplayCoat.Seen seen) {
    Instant at = coat.start().plus(SEEN_AFTER);
    write(
        new Observation(
            coat.part(),
            Optional.of(l.entry().id()),
            seen.what(),
            seen.grade(),
            seen.passed(),
            Optional.empty()),
        at);
  }

  private Replayed.Readings readings(Unmoved unmoved) {
    List<Replayed.Gap> gaps =
        climate
            .series(recording.room(), recording.from(), recording.to().plusMillis(1))
            .gaps()
            .stream()
            .map(g -> new Replayed.Gap(unmoved.time(g.from()), unmoved.time(g.to())))
            .toList();
    refused.sort((a, b) -> Integer.compare(a.line(), b.line()));
    int count = recording.lines().size() + recording.refused().size();
    return new Replayed.Readings(count, accepted, refused, gaps);
  }

  private List<Replayed.Said> said(Unmoved unmoved) {
    List<Replayed.Said> said = new ArrayList<>();
    for (Warning w : warnings.all()) {
      said.add(
          new Replayed.Said(
              w.kind(), unmoved.time(w.from()), w.to().map(unmoved::time), w.message()));
    }
    return said;
  }
}
