package coatwright.outlook;

import coatwright.air.SaturationFunction;
import coatwright.climate.AirPoint;
import coatwright.climate.Climate;
import coatwright.climate.Gap;
import coatwright.film.AirCourse;
import coatwright.film.CureCoat;
import coatwright.film.Curing;
import coatwright.film.FilmJob;
import coatwright.film.FilmRun;
import coatwright.film.FilmSimulation;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.SimulationOptions;
import coatwright.film.Spreads;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Puts the film job of a coat together again from the journal and the climate: for the outlook of a
 * part, for the warning that compares, and for the case of a clouded coat.
 */
public final class FilmJobs {
  private static final Duration BEFORE = Duration.ofHours(3);
  private static final Duration AROUND = Duration.ofMinutes(60);
  private static final Duration SETTLED = Duration.ofHours(12);
  private static final SimulationOptions WET_HOUR =
      SimulationOptions.DEFAULT.withHaze(false, Double.POSITIVE_INFINITY);
  private static final double LEAST_GAP_K = 2;

  private final Journal journal;
  private final Climate climate;
  private final Map<String, Finish> finishes;
  private final OutlookSettings settings;

  /** Wood under coats laid long enough ago that no late reading changes it. */
  private final Map<String, WoodTemperature> settledWood = new ConcurrentHashMap<>();

  public FilmJobs(
      Journal journal, Climate climate, Map<String, Finish> finishes, OutlookSettings settings) {
    this.journal = journal;
    this.climate = climate;
    this.finishes = Map.copyOf(finishes);
    this.settings = settings;
  }

  /**
   * The job of one coat and of those beneath it.
   *
   * @param coat an entry whose body is a {@link Coat}
   * @param now the end of the air that was; the rest is expected
   */
  public Rebuilt forCoat(Entry coat, Instant now) {
    if (!(coat.body() instanceof Coat body)) {
      throw new IllegalArgumentException("entry " + coat.id() + " is not a coat");
    }
    List<Entry> laid = new ArrayList<>();
    for (Entry e : journal.coats(body.part())) {
      if (startOf(e).isBefore(body.start()) && !e.id().equals(coat.id())) {
        laid.add(e);
      }
    }
    laid.add(coat);
    return rebuild(body.part(), laid, now);
  }

  /** The blush number of a coat by itself, by the model's middle; absent where dew stood. */
  OptionalDouble peakS(CoatJob job) {
    double atS = job.alone().coats().get(0).atS();
    FilmRun run =
        new FilmSimulation(Sets.of(job.finish()), WET_HOUR)
            .run(job.alone(), atS + AROUND.toSeconds());
    return run.condensation() ? OptionalDouble.empty() : OptionalDouble.of(run.lastCoat().peakS());
  }

  /** The job of all coats that stand on a part; empty when there is none. */
  public Optional<Rebuilt> forPart(PartPath part, Instant now) {
    List<Entry> laid = journal.coats(part).stream().filter(e -> !startOf(e).isAfter(now)).toList();
    return laid.isEmpty() ? Optional.empty() : Optional.of(rebuild(part, laid, now));
  }

  static Instant startOf(Entry coat) {
    return ((Coat) coat.body()).start();
  }

  private Rebuilt rebuild(PartPath part, List<Entry> all, Instant now) {
    Entry last = all.get(all.size() - 1);
    List<Entry> laid = together(all);
    Coat body = (Coat) last.body();
    Instant zero = startOf(laid.get(0));
    Instant end = now.isBefore(body.start().plus(AROUND)) ? body.start().plus(AROUND) : now;
    for (Entry e : laid) {
      String room = ((Coat) e.body()).room();
      if (!climate.rooms().contains(room)) {
        return new Rebuilt.Unknown(
            "the room " + room + " of the coat is not in the settings; put it back under rooms");
      }
    }
    Optional<AirRecord> air =
        AirRecord.of(
            climate,
            stays(laid, zero, min(end, now)),
            zero,
            settings.draughtMPerS(),
            Sets.clockOf(finish(body)));
    if (air.isEmpty() || !knownAround(body)) {
      return new Rebuilt.Unknown(
          "nobody measured the air in "
              + body.room()
              + " within an hour of the coat at "
              + Times.show(body.start(), settings.zone())
              + "; put a sensor in the room, or enter readings for that day");
    }
    try {
      return new Rebuilt.Known(build(part, laid, zero, air.get(), now));
    } catch (OutOfRange outside) {
      return new Rebuilt.Unknown("the film model does not hold here: " + outside.getMessage());
    }
  }

  /**
   * The last coat and those beneath that harden with it: what melts together is one film, and a
   * finish that cures has its own coats beneath it. What lies deeper is the ground it stands on.
   */
  private List<Entry> together(List<Entry> laid) {
    return hardeningWith(finish((Coat) laid.get(laid.size() - 1).body()), laid);
  }

  /**
   * The newest of those coats that harden with a coat of this finish on them, down to the first
   * that does not.
   *
   * @param laid coats that lie there, oldest first
   */
  public List<Entry> hardeningWith(Finish top, List<Entry> laid) {
    int from = laid.size();
    while (from > 0 && hardensWith(finish((Coat) laid.get(from - 1).body()), top)) {
      from--;
    }
    return laid.subList(from, laid.size());
  }

  static boolean hardensWith(Finish beneath, Finish top) {
    return top.drying() instanceof Curing
        ? beneath.name().equals(top.name())
        : beneath.drying().stamp().equals(top.drying().stamp());
  }

  /** A part stands in the room of its coat until the next one goes on. */
  private static List<AirRecord.Stay> stays(List<Entry> laid, Instant zero, Instant end) {
    List<AirRecord.Stay> stays = new ArrayList<>();
    for (int i = 0; i < laid.size(); i++) {
      Instant from = i == 0 ? zero.minus(BEFORE) : startOf(laid.get(i));
      Instant to = i + 1 < laid.size() ? startOf(laid.get(i + 1)) : end;
      String room = ((Coat) laid.get(i).body()).room();
      boolean same = !stays.isEmpty() && stays.get(stays.size() - 1).room().equals(room);
      if (same) {
        from = stays.remove(stays.size() - 1).from();
      }
      stays.add(new AirRecord.Stay(room, from, to));
    }
    return stays;
  }

  private static Instant min(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }

  private boolean knownAround(Coat coat) {
    return !climate
        .series(coat.room(), coat.start().minus(AROUND), coat.start().plus(AROUND))
        .points()
        .isEmpty();
  }

  private LaidJob build(PartPath part, List<Entry> laid, Instant zero, AirRecord air, Instant now) {
    Finish finish = finish((Coat) laid.get(laid.size() - 1).body());
    return finish.drying() instanceof Curing curing
        ? cure(part, finish, curing, laid, zero, air, now)
        : film(part, laid, zero, air, now);
  }

  private CuringJob cure(
      PartPath part,
      Finish finish,
      Curing curing,
      List<Entry> laid,
      Instant zero,
      AirRecord air,
      Instant now) {
    Entry last = laid.get(laid.size() - 1);
    Inputs inputs = new Inputs();
    List<CureCoat> coats = new ArrayList<>();
    double atS = Double.NEGATIVE_INFINITY;
    for (Entry e : laid) {
      Coat coat = (Coat) e.body();
      atS = Math.max(AirRecord.seconds(zero, startOf(e)), atS + 1);
      double wetUm = wetFilmUm(coat, finish, inputs, e.equals(last));
      inputs.spread(wetLn(coat, finish), 0, 0, wetUm);
      coats.add(CureCoat.unthinned(atS, wetUm));
    }
    WoodTemperature wood =
        wood(last, PartWood.of(journal.part(part), settings.boardThicknessMm()), air, now);
    inputs.wood(wood);
    return new CuringJob(
        last,
        part,
        finish,
        laid,
        curing,
        coats,
        air.course(),
        wood.woodTempC(),
        zero,
        inputs.spreads(air, wood),
        Math.max(LEAST_GAP_K, air.halfRangeK()),
        gapsWithin(air, zero),
        inputs.list());
  }

  private CoatJob film(PartPath part, List<Entry> laid, Instant zero, AirRecord air, Instant now) {
    Entry last = laid.get(laid.size() - 1);
    Coat body = (Coat) last.body();
    Inputs inputs = new Inputs();
    PartWood board = PartWood.of(journal.part(part), settings.boardThicknessMm());
    double boardMm = board.thicknessMm();
    List<LaidCoat> coats = new ArrayList<>();
    double atS = Double.NEGATIVE_INFINITY;
    for (Entry e : laid) {
      atS = Math.max(AirRecord.seconds(zero, startOf(e)), atS + 1);
      coats.add(laidCoat((Coat) e.body(), atS, inputs, e.equals(last)));
    }
    WoodTemperature first = wood(laid.get(0), board, air, now);
    WoodTemperature wood = laid.size() == 1 ? first : wood(last, board, air, now);
    inputs.wood(wood);
    FilmJob stack = job(coats, air.course(), first.woodTempC(), boardMm);
    return new CoatJob(
        last,
        part,
        finish(body),
        laid,
        stack,
        zero,
        alone(body, coats.get(coats.size() - 1).at(0), wood.woodTempC(), boardMm, air),
        inputs.spreads(air, wood),
        Math.max(LEAST_GAP_K, air.halfRangeK()),
        gapsWithin(air, zero),
        inputs.list());
  }

  private FilmJob alone(Coat body, LaidCoat coat, double woodTempC, double boardMm, AirRecord air) {
    List<AirPoint> points =
        climate
            .series(
                body.room(), body.start().minus(AROUND), body.start().plus(AROUND.multipliedBy(3)))
            .points();
    AirRecord.Knots knots = new AirRecord.Knots(body.start());
    points.forEach(knots::add);
    AirCourse course = knots.size() == 0 ? air.course() : knots.course(settings.draughtMPerS());
    return job(List.of(coat), course, woodTempC, boardMm);
  }

  private static FilmJob job(
      List<LaidCoat> coats, AirCourse air, double woodTempC, double boardMm) {
    return new FilmJob(coats, air, woodTempC, boardMm, SaturationFunction.HYLAND_WEXLER_WATER);
  }

  private static List<Gap> gapsWithin(AirRecord air, Instant zero) {
    return air.gaps().stream().filter(g -> g.to().isAfter(zero)).toList();
  }

  private WoodTemperature wood(Entry entry, PartWood board, AirRecord air, Instant now) {
    Coat coat = (Coat) entry.body();
    WoodTemperature settled = settledWood.get(entry.id());
    if (settled != null) {
      return settled;
    }
    Optional<WoodTemperature.Entered> entered =
        coat.woodTempC().isPresent()
            ? Optional.of(new WoodTemperature.Entered(coat.woodTempC().getAsDouble(), coat.start()))
            : Optional.empty();
    Optional<WoodTemperature> found =
        WoodTemperature.at(
            climate,
            coat.room(),
            Optional.of(coat.part().toString()),
            entered,
            WoodTemperature.CarriedIn.noted(journal, coat.part(), coat.start()),
            coat.start(),
            board);
    boolean longAgo = coat.start().plus(SETTLED).isBefore(now);
    if (found.isPresent() && longAgo && !entry.id().isBlank()) {
      settledWood.put(entry.id(), found.get());
    }
    return found.orElseGet(
        () ->
            new WoodTemperature(
                air.course().airTempCAt(0), 3, "taken equal to the air, nobody measured", false));
  }

  /** The finish of a coat by its jar, where its file is still there. */
  Optional<Finish> finishOf(Coat coat) {
    return jar(coat).flatMap(jar -> Optional.ofNullable(finishes.get(jar.finish())));
  }

  private Finish finish(Coat coat) {
    Optional<Jar> jar = jar(coat);
    String name = jar.map(Jar::finish).orElse(settings.usualFinish());
    Finish finish = finishes.get(name);
    if (finish == null) {
      finish = finishes.get(settings.usualFinish());
    }
    if (finish == null) {
      throw new OutOfRange(
          "finish \"" + name + "\" has no file in config/finishes; add one, or name another");
    }
    return finish;
  }

  private Optional<Jar> jar(Coat coat) {
    return journal
        .entry(coat.jarEntry())
        .map(Entry::body)
        .filter(Jar.class::isInstance)
        .map(Jar.class::cast);
  }

  private LaidCoat laidCoat(Coat coat, double atS, Inputs inputs, boolean told) {
    Finish finish = finish(coat);
    InTheJar jar = InTheJar.of(finish, jar(coat));
    LaidCoat laid = jar.coat(atS, wetFilmUm(coat, finish, inputs, told));
    inputs.spread(wetLn(coat, finish), jar.resinLnSd(), jar.strengthErrorPct(), laid.dryFilmUm());
    if (told) {
      inputs.addAll(jar.inputs());
    }
    return laid;
  }

  private static double wetFilmUm(Coat coat, Finish finish, Inputs inputs, boolean told) {
    double wetUm = coat.wetFilmUm().orElse(Described.usualWet(finish, coat.method().toString()));
    if (told) {
      inputs.add(
          "wet film",
          Show.film(wetUm, UnitSystem.METRIC),
          coat.wetFilmUm().isPresent()
              ? "gauged or reckoned"
              : "usual of " + finish.title() + " by " + coat.method(),
          coat.wetFilmUm().isEmpty());
    }
    return wetUm;
  }

  private static double wetLn(Coat coat, Finish finish) {
    return coat.wetFilmUm().isPresent() ? Spreads.GAUGED_WET_LN : finish.wetFilmLnSd();
  }

  /** Inputs as they are found, and their spreads weighted by the resin they brought. */
  private static final class Inputs {
    private final List<Provenance> list = new ArrayList<>();
    private double weight;
    private double wetLn;
    private double resinLn;
    private double strengthPct;

    void add(String input, String value, String from, boolean assumed) {
      list.add(new Provenance(input, value, from, assumed));
    }

    void addAll(List<Provenance> more) {
      list.addAll(more);
    }

    void wood(WoodTemperature wood) {
      add(
          "wood temperature",
          Show.temperature(wood.woodTempC(), UnitSystem.METRIC),
          wood.from(),
          !wood.measured());
    }

    void spread(double coatWetLn, double coatResinLn, double coatStrengthPct, double resin) {
      weight += resin;
      wetLn += resin * coatWetLn;
      resinLn += resin * coatResinLn;
      strengthPct = coatStrengthPct;
    }

    Spreads spreads(AirRecord air, WoodTemperature wood) {
      return new Spreads(
          wetLn / weight,
          resinLn / weight,
          strengthPct,
          Math.min(10, air.meanErrorK()),
          Math.min(40, air.meanRhErrorPct()),
          Math.min(15, wood.errorK()),
          air.comingErrorK());
    }

    List<Provenance> list() {
      return list;
    }
  }
}
