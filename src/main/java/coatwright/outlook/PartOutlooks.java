package coatwright.outlook;

import coatwright.air.MoistAir;
import coatwright.climate.AirPoint;
import coatwright.climate.Climate;
import coatwright.climate.RoomAir;
import coatwright.film.AirCourse;
import coatwright.film.BenchTest;
import coatwright.film.CureCoat;
import coatwright.film.CureJob;
import coatwright.film.CureMoment;
import coatwright.film.Curing;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.FilmJob;
import coatwright.film.Finish;
import coatwright.film.LaidCoat;
import coatwright.film.LayerStack;
import coatwright.film.Prediction;
import coatwright.film.Sensitivity;
import coatwright.film.ShopPrior;
import coatwright.film.Spreads;
import coatwright.film.Told;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.Summary;
import coatwright.quantity.OutOfRange;
import coatwright.quantity.RefusedInput;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/** The next coat on a part, or the first on a bare one, in its room's air now. */
final class PartOutlooks {
  private static final Duration SLOPES_KEPT = Duration.ofMinutes(10);
  private static final double RESTLESS_AIR_K = 3;
  private static final double UNTOLD_WOOD_ERROR_K = 1.5;

  /** Ninetieth percentile over the middle of a coat's water, where dew leaves none to compute. */
  private static final double USUAL_NINETY = 1.15;

  private final Map<String, Finish> finishes;
  private final Climate climate;
  private final Journal journal;
  private final OutlookSettings settings;
  private final FilmJobs jobs;
  private final ShopLearning learning;
  private final Map<PartPath, Slopes> slopes = new ConcurrentHashMap<>();
  private final CloudingSurfaces surfaces = new CloudingSurfaces();

  private record Slopes(
      List<String> laid, List<BenchTest.Seen> tests, Instant at, Optional<Sensitivity> slopes) {}

  PartOutlooks(
      Map<String, Finish> finishes,
      Climate climate,
      Journal journal,
      OutlookSettings settings,
      FilmJobs jobs,
      ShopLearning learning) {
    this.finishes = Map.copyOf(finishes);
    this.climate = climate;
    this.journal = journal;
    this.settings = settings;
    this.jobs = jobs;
    this.learning = learning;
  }

  /** An outlook and what the bench line needs beside it. */
  record Answer(
      Outlook outlook,
      Finish finish,
      Optional<String> jar,
      String method,
      Optional<Instant> nextBetter,
      OptionalDouble nextBetterShare,
      OptionalDouble airAgeSeconds,
      Optional<String> woodFrom) {}

  /**
   * What the coming hours are asked for.
   *
   * @param fitness what the coat needs of an hour; empty where no air or wood can be believed
   * @param trouble why, where it is empty
   */
  record Needs(
      Optional<PartPath> part,
      Optional<String> jar,
      Finish finish,
      String room,
      PartWood board,
      double woodTempC,
      Optional<WindowFinder.Fitness> fitness,
      String trouble) {}

  /** What a coat needs of the hours to come. */
  Needs needs(WindowQuestion q, Instant now) {
    q.part().ifPresent(this::checkKnown);
    Wanted wanted = wanted(q, now);
    RoomAir roomAir = climate.now(wanted.room());
    if (roomAir.air().isEmpty()) {
      String trouble = roomAir.trouble().orElse("no sensor in it has spoken lately");
      return needs(
          wanted,
          0,
          Optional.empty(),
          "No air to believe in " + wanted.room() + ": " + trouble + ".");
    }
    AirPoint air = roomAir.air().get();
    WoodTemperature wood = woodOrAir(wood(wanted, now), air);
    try {
      WindowFinder.Fitness fitness =
          wanted.finish().drying() instanceof Curing curing
              ? CureJudge.fitness(cureCoating(curing, wanted, roomAir, air, wood, now))
              : fitness(wanted, coating(wanted, roomAir, air, wood, now));
      return needs(wanted, wood.woodTempC(), Optional.of(fitness), "");
    } catch (OutOfRange outside) {
      return needs(
          wanted,
          0,
          Optional.empty(),
          "Outside what can be computed: " + outside.getMessage() + ".");
    }
  }

  private static Needs needs(
      Wanted wanted, double woodC, Optional<WindowFinder.Fitness> fitness, String trouble) {
    return new Needs(
        wanted.part(),
        wanted.jar().map(Jar::name),
        wanted.finish(),
        wanted.room(),
        wanted.wood(),
        woodC,
        fitness,
        trouble);
  }

  private WindowFinder.Fitness fitness(Wanted wanted, Coating coating) {
    Prediction alone = Ensemble.predict(coating.alone());
    double byRun = alone.condensation() ? 0 : alone.film().lastCoat().peakS();
    return fitness(
        wanted, coating, byRun > 0 ? alone.peakS().p90().orElse(byRun) / byRun : USUAL_NINETY);
  }

  /**
   * @param ninety by how much its water ratio may lie above the model's, one time in ten
   */
  private WindowFinder.Fitness fitness(Wanted wanted, Coating coating, double ninety) {
    return FilmFitness.of(
        coating.finish(),
        surfaces.of(coating, settings.draughtMPerS(), wanted.wood().thicknessMm()),
        ninety);
  }

  /** What is to be laid: the part if any, what lies on it, and from which jar. */
  private record Wanted(
      Optional<PartPath> part,
      List<Entry> laid,
      Optional<Jar> jar,
      Finish finish,
      String method,
      String room,
      PartWood wood) {}

  Outlook of(NextCoat next, Instant now) {
    checkKnown(next.part());
    Wanted wanted = wanted(Optional.of(next.part()), next.room(), next.jar(), now);
    return answer(wanted, climate.now(wanted.room()), now).outlook();
  }

  Answer answer(Optional<PartPath> part, Optional<String> room, Instant now) {
    part.ifPresent(this::checkKnown);
    Wanted wanted = wanted(part, room, Optional.empty(), now);
    return answer(wanted, climate.now(wanted.room()), now);
  }

  /** The same in the air that is given. */
  Answer answer(Optional<PartPath> part, String room, RoomAir air, Instant now) {
    part.ifPresent(this::checkKnown);
    return answer(wanted(part, Optional.of(room), Optional.empty(), now), air, now);
  }

  private Answer answer(Wanted wanted, RoomAir roomAir, Instant now) {
    OptionalDouble age =
        roomAir
            .age()
            .map(d -> OptionalDouble.of(d.toMillis() / 1000.0))
            .orElse(OptionalDouble.empty());
    if (roomAir.air().isEmpty()) {
      String trouble = roomAir.trouble().orElse("no sensor in it has spoken lately");
      return cantTell(
          wanted,
          age,
          "no-air",
          "No air to believe in " + wanted.room() + ": " + trouble + ".",
          List.of("See to the sensor, or read a hygrometer by hand and ask with --air."));
    }
    Answer answer = withAir(wanted, roomAir, roomAir.air().get(), age, now);
    return roomAir.mistrust().map(why -> unlessAllowed(answer, wanted, why)).orElse(answer);
  }

  /** Sensors in doubt may speak against a coat; none is allowed on the strength of them. */
  private Answer unlessAllowed(Answer answer, Wanted wanted, String why) {
    Outlook o = answer.outlook();
    if (o.summary() == Summary.BRUSH) {
      return cantTell(
          wanted,
          answer.airAgeSeconds(),
          "air-in-doubt",
          "Nothing speaks against it, but the air in "
              + wanted.room()
              + " is in doubt: "
              + why
              + ".",
          List.of("Read another hygrometer beside the piece and ask with --air."));
    }
    List<String> actions = new ArrayList<>(o.actions());
    actions.add("The air here is in doubt: " + why + ".");
    return new Answer(
        o.withActions(actions),
        answer.finish(),
        answer.jar(),
        answer.method(),
        answer.nextBetter(),
        answer.nextBetterShare(),
        answer.airAgeSeconds(),
        answer.woodFrom());
  }

  private Answer withAir(
      Wanted wanted, RoomAir roomAir, AirPoint air, OptionalDouble age, Instant now) {
    Optional<WoodTemperature> wood = wood(wanted, now);
    boolean measured = wood.isPresent() && wood.get().measured();
    OptionalDouble moved = WoodTemperature.airMovedK(climate, wanted.room(), now);
    if (!measured && moved.isPresent() && moved.getAsDouble() > RESTLESS_AIR_K) {
      return cantTell(
          wanted, age, "wood-unknown", restless(moved.getAsDouble(), wood), List.of(PROBE));
    }
    try {
      return judged(wanted, roomAir, air, wood, age, now);
    } catch (OutOfRange outside) {
      return cantTell(
          wanted,
          age,
          "outside-model",
          "Outside what can be computed: " + outside.getMessage() + ".",
          List.of());
    }
  }

  private Optional<WoodTemperature> wood(Wanted wanted, Instant now) {
    return WoodTemperature.at(
        climate,
        wanted.room(),
        wanted.part().map(PartPath::toString),
        entered(wanted),
        carriedIn(wanted, now),
        now,
        wanted.wood());
  }

  private static WoodTemperature woodOrAir(Optional<WoodTemperature> wood, AirPoint air) {
    return wood.orElseGet(
        () ->
            new WoodTemperature(
                air.airTempC(), UNTOLD_WOOD_ERROR_K, "taken equal to the air", false));
  }

  /** What no other hour helps: another jar does, or a rest of minutes. */
  private static final Set<String> NOT_OF_THE_HOUR = Set.of("weak-spirit", "too-tacky");

  private static final String PROBE =
      "Hold a probe flat to the coldest face of the wood and enter it.";

  private static String restless(double movedK, Optional<WoodTemperature> wood) {
    String reckoned =
        wood.map(
                w ->
                    Judge.text(
                        "; a board kept in this room should stand near %.1f °C, give or take %.1f"
                            + " K",
                        w.woodTempC(), w.errorK()))
            .orElse("");
    return Judge.text(
        "The air moved %.1f K within 3 h and nobody measured the wood%s.", movedK, reckoned);
  }

  private Answer cantTell(
      Wanted wanted, OptionalDouble age, String by, String reason, List<String> actions) {
    return new Answer(
        Judge.cantTell(wanted.finish(), by, reason, actions),
        wanted.finish(),
        wanted.jar().map(Jar::name),
        wanted.method(),
        Optional.empty(),
        OptionalDouble.empty(),
        age,
        Optional.empty());
  }

  private Answer judged(
      Wanted wanted,
      RoomAir roomAir,
      AirPoint air,
      Optional<WoodTemperature> wood,
      OptionalDouble age,
      Instant now) {
    WoodTemperature w = woodOrAir(wood, air);
    Judged judged =
        wanted.finish().drying() instanceof Curing curing
            ? cured(curing, wanted, roomAir, air, w, now)
            : filmed(wanted, roomAir, air, w, now);
    Outlook outlook = judged.outlook();
    Optional<BetterHour.Found> found = Optional.empty();
    if (outlook.summary() == Summary.HOLD_OFF && !NOT_OF_THE_HOUR.contains(outlook.decidedBy())) {
      found =
          new BetterHour(
                  climate,
                  wanted.room(),
                  settings.draughtMPerS(),
                  wanted.wood().thicknessMm(),
                  judged.laterHour())
              .after(now, judged.level(), hours(wanted, judged, w));
    }
    if (found.isPresent()) {
      List<String> actions = new ArrayList<>(outlook.actions());
      actions.add(
          "Wait until about "
              + Times.near(found.get().from(), now, settings.zone())
              + ": "
              + then(found.get()));
      outlook = outlook.withActions(actions);
    }
    return new Answer(
        layered(wanted, outlook),
        wanted.finish(),
        wanted.jar().map(Jar::name),
        wanted.method(),
        found.map(BetterHour.Found::from),
        found.map(BetterHour.Found::share).orElse(OptionalDouble.empty()),
        age,
        Optional.of(w.from()));
  }

  private List<BrushingWindows.Hour> hours(Wanted wanted, Judged judged, WoodTemperature wood) {
    return climate
        .forecast(wanted.room())
        .map(
            forecast ->
                new WindowFinder(
                        forecast,
                        judged.fitness().get(),
                        wood.woodTempC(),
                        wanted.wood(),
                        settings.zone())
                    .hours())
        .orElse(List.of());
  }

  private static String then(BetterHour.Found found) {
    String shares =
        found.share().isPresent()
            ? Judge.text(
                " (in %.0f of 100 courses this room's air may take, none is)",
                100 * found.share().getAsDouble())
            : "";
    return found.level() == CloudingLevel.NONE_EXPECTED
        ? "no clouding is then expected" + shares.replace(", none is)", ")") + "."
        : "clouding is then possible, no longer likely" + shares + ".";
  }

  /** What both files say of laying this finish on the one beneath; it never hides a worse fault. */
  private Outlook layered(Wanted wanted, Outlook o) {
    List<Entry> laid = wanted.laid();
    Optional<LayerStack.Warning> warning =
        laid.isEmpty()
            ? Optional.empty()
            : jobs.finishOf((Coat) laid.get(laid.size() - 1).body())
                .filter(beneath -> !beneath.name().equals(wanted.finish().name()))
                .flatMap(beneath -> LayerStack.check(beneath, wanted.finish()));
    return warning.map(w -> Verdict.onLayers(o, w.sentence())).orElse(o);
  }

  /** A verdict, the level of clouding in it, and the question to put to the hours to come. */
  private record Judged(
      Outlook outlook,
      CloudingLevel level,
      BetterHour.Question laterHour,
      Supplier<WindowFinder.Fitness> fitness) {}

  private Judged filmed(
      Wanted wanted, RoomAir roomAir, AirPoint air, WoodTemperature wood, Instant now) {
    Coating coating = coating(wanted, roomAir, air, wood, now);
    Findings findings = findings(wanted, coating, now);
    boolean dew = findings.condensation();
    double ratio = dew ? USUAL_NINETY : findings.peakS90() / findings.peakS();
    double ninety = dew ? USUAL_NINETY : findings.peakS90() / findings.coat().peakS();
    return new Judged(
        Judge.judge(findings, List.of()),
        findings.level(),
        BetterHour.film(coating, ratio),
        // Only a coat that is held off asks for it, and it takes some two hundred runs.
        () -> fitness(wanted, coating, ninety));
  }

  private Judged cured(
      Curing curing,
      Wanted wanted,
      RoomAir roomAir,
      AirPoint air,
      WoodTemperature wood,
      Instant now) {
    CureCoating coating = cureCoating(curing, wanted, roomAir, air, wood, now);
    Outlook outlook = CureJudge.judge(coating);
    CloudingLevel level =
        outlook.clouding().map(Outlook.Clouding::level).orElse(CloudingLevel.LIKELY);
    return new Judged(
        outlook, level, CureJudge.laterHour(coating), () -> CureJudge.fitness(coating));
  }

  /** This coat on those of the same finish that lie there, in the air that is taken to stay. */
  private CureCoating cureCoating(
      Curing curing,
      Wanted wanted,
      RoomAir roomAir,
      AirPoint air,
      WoodTemperature wood,
      Instant now) {
    Finish finish = wanted.finish();
    double wetUm = Described.usualWet(finish, wanted.method());
    List<String> said = new ArrayList<>(airAndWood(roomAir, wood));
    said.addAll(whereStored(wanted, wood));
    said.add(Described.usualWet(wetUm, wanted.method(), finish.wetFilmLnSd()));
    ShopLearned learned = learning.of(finish, wanted.part());
    said.addAll(learned.sentences(curing));
    Optional<CuringJob> under = curingBeneath(wanted, now);
    List<CureCoat> coats = new ArrayList<>(under.map(CuringJob::coats).orElse(List.of()));
    double nowS = under.map(j -> Math.max(j.onClockS(now), j.lastCoatS() + 1)).orElse(0.0);
    coats.add(CureCoat.unthinned(nowS, wetUm));
    Spreads spreads =
        new Spreads(
            finish.wetFilmLnSd(),
            0,
            0,
            Math.min(10, air.temperatureErrorK()),
            Math.min(40, air.rhErrorPct()),
            Math.min(15, wood.errorK()),
            0);
    CureJob job =
        new CureJob(
            curing,
            coats,
            under
                .map(CuringJob::air)
                .orElseGet(
                    () ->
                        AirCourse.steady(
                            air.airTempC(), air.rhPct() / 100, settings.draughtMPerS())),
            wood.woodTempC(),
            spreads,
            under.map(j -> Tests.of(journal, j)).orElse(List.of()),
            nowS,
            under.map(CuringJob::clockGaps).orElse(List.of()),
            under.map(CuringJob::gapK).orElse(0.0));
    return new CureCoating(
        finish,
        curing,
        new MoistAir(air.airTempC(), air.rhPct(), settings.pressurePa()),
        air.temperatureErrorK(),
        air.rhErrorPct(),
        wood.woodTempC(),
        wood.errorK(),
        job,
        new CureMoment(
            air.airTempC(),
            air.rhPct(),
            wood.woodTempC(),
            settings.draughtMPerS(),
            wetUm,
            0,
            CureMoment.AirExchange.UNKNOWN),
        learned.prior(),
        wanted.method(),
        said);
  }

  private Optional<CuringJob> curingBeneath(Wanted wanted, Instant now) {
    if (wanted.laid().isEmpty()) {
      return Optional.empty();
    }
    return jobs.forPart(wanted.part().orElseThrow(), now)
        .filter(Rebuilt.Known.class::isInstance)
        .map(known -> ((Rebuilt.Known) known).job())
        .filter(job -> job.finish().name().equals(wanted.finish().name()))
        .filter(CuringJob.class::isInstance)
        .map(CuringJob.class::cast);
  }

  private static List<String> airAndWood(RoomAir roomAir, WoodTemperature wood) {
    return roomAir.disagree()
        ? List.of(woodSaid(wood), "Sensors in the room disagree; the worse of them is used.")
        : List.of(woodSaid(wood));
  }

  private static String woodSaid(WoodTemperature wood) {
    return "Wood "
        + Show.temperature(wood.woodTempC(), UnitSystem.METRIC)
        + ": "
        + wood.from()
        + ".";
  }

  /** Slopes of a stack are found once and kept while the same coats lie there, for some minutes. */
  private Findings findings(Wanted wanted, Coating coating, Instant now) {
    if (coating.stack().isEmpty()) {
      return Findings.of(coating);
    }
    PartPath part = wanted.part().orElseThrow();
    List<String> laid = wanted.laid().stream().map(Entry::id).toList();
    List<BenchTest.Seen> tests = coating.stack().get().tests();
    Optional<Slopes> kept =
        Optional.ofNullable(slopes.get(part))
            .filter(k -> k.laid().equals(laid))
            .filter(k -> k.tests().equals(tests))
            .filter(k -> Duration.between(k.at(), now).abs().compareTo(SLOPES_KEPT) < 0);
    Findings found = Findings.of(coating, kept.flatMap(Slopes::slopes));
    if (kept.isEmpty()) {
      slopes.put(part, new Slopes(laid, tests, now, found.slopes()));
    }
    return found;
  }

  private Coating coating(
      Wanted wanted, RoomAir roomAir, AirPoint air, WoodTemperature wood, Instant now) {
    Finish finish = wanted.finish();
    InTheJar jar = InTheJar.of(finish, wanted.jar());
    List<String> said = new ArrayList<>(airAndWood(roomAir, wood));
    said.addAll(whereStored(wanted, wood));
    double wetUm = Described.usualWet(finish, wanted.method());
    said.add(Described.usualWet(wetUm, wanted.method(), finish.wetFilmLnSd()));
    said.addAll(jar.assumptions());
    LaidCoat coat = jar.coat(0, wetUm);
    Spreads spreads =
        jar.spreads(
            finish.wetFilmLnSd(),
            Math.min(10, air.temperatureErrorK()),
            Math.min(40, air.rhErrorPct()),
            Math.min(15, wood.errorK()));
    AirCourse steady = AirCourse.steady(air.airTempC(), air.rhPct() / 100, settings.draughtMPerS());
    FilmJob alone =
        Described.job(List.of(coat), steady, wood.woodTempC(), wanted.wood().thicknessMm());
    ShopLearned learned = learning.of(finish, wanted.part());
    said.addAll(learned.sentences(finish.drying()));
    Told told =
        new Told(learned.prior(), wanted.part().map(learning::seenOn).orElse(List.of()), List.of());
    Optional<EnsembleJob> stack = stack(wanted, coat, spreads, now, learned.prior());
    stack.ifPresent(s -> said.add(Described.AS_FIRST_COAT));
    return new Coating(
        finish,
        new MoistAir(air.airTempC(), air.rhPct(), settings.pressurePa()),
        air.temperatureErrorK(),
        air.rhErrorPct(),
        wood.woodTempC(),
        wood.errorK(),
        coat,
        EnsembleJob.untested(Sets.of(finish), alone, spreads).with(told),
        stack,
        Described.atReference(finish, stack.map(EnsembleJob::job).orElse(alone)),
        wanted.method(),
        learnedBrushing(wanted.laid()),
        volume(wanted.room()),
        recoatLeft(wanted, now),
        said);
  }

  private OptionalDouble volume(String room) {
    Double m3 = settings.roomVolumeM3().get(room);
    return m3 == null ? OptionalDouble.empty() : OptionalDouble.of(m3);
  }

  private static OptionalDouble recoatLeft(Wanted wanted, Instant now) {
    OptionalDouble until = wanted.finish().recoatUntilMin();
    if (until.isEmpty() || wanted.laid().isEmpty()) {
      return OptionalDouble.empty();
    }
    Instant last = FilmJobs.startOf(wanted.laid().get(wanted.laid().size() - 1));
    return OptionalDouble.of(until.getAsDouble() - Duration.between(last, now).toMinutes());
  }

  /**
   * The coats that lie there and melt together with the next one, in the air that really was; what
   * dries by another set is the ground this one stands on.
   */
  private Optional<EnsembleJob> stack(
      Wanted wanted, LaidCoat next, Spreads spreads, Instant now, ShopPrior shop) {
    if (wanted.laid().isEmpty()) {
      return Optional.empty();
    }
    Optional<Rebuilt> rebuilt = jobs.forPart(wanted.part().orElseThrow(), now);
    if (rebuilt.isEmpty()
        || !(rebuilt.get() instanceof Rebuilt.Known known)
        || !(known.job() instanceof CoatJob job)
        || !FilmJobs.hardensWith(job.finish(), wanted.finish())) {
      return Optional.empty();
    }
    List<LaidCoat> coats = new ArrayList<>(job.stack().coats());
    double nowS = Math.max(job.onClockS(now), coats.get(coats.size() - 1).atS() + 1);
    coats.add(next.at(nowS));
    FilmJob with =
        Described.job(
            coats, job.stack().air(), job.stack().woodTempC(), job.stack().boardThicknessMm());
    return Optional.of(
        new EnsembleJob(
            Sets.of(wanted.finish()),
            with,
            spreads,
            Tests.of(journal, job),
            nowS,
            job.clockGaps(),
            job.gapK(),
            new Told(shop, List.of(), Tests.weighed(journal.observations(job.part()), job))));
  }

  private Optional<WoodTemperature.CarriedIn> carriedIn(Wanted wanted, Instant now) {
    return wanted.part().flatMap(part -> WoodTemperature.CarriedIn.noted(journal, part, now));
  }

  /** What a person should be asked where the wood is only reckoned and nothing lies on it yet. */
  private static List<String> whereStored(Wanted wanted, WoodTemperature wood) {
    boolean asks = !wood.measured() && !wood.from().contains("stored") && wanted.laid().isEmpty();
    return asks
        ? wanted
            .part()
            .map(
                part ->
                    List.of(
                        "Where was it stored? The wood is taken to have stood in this room all day;"
                            + " if it came in since, note it: coatwright note "
                            + part
                            + " carried-in=8C --at 9:00."))
            .orElse(List.of())
        : List.of();
  }

  private static Optional<WoodTemperature.Entered> entered(Wanted wanted) {
    for (int i = wanted.laid().size() - 1; i >= 0; i--) {
      Coat coat = (Coat) wanted.laid().get(i).body();
      if (coat.woodTempC().isPresent()) {
        return Optional.of(
            new WoodTemperature.Entered(coat.woodTempC().getAsDouble(), coat.start()));
      }
    }
    return Optional.empty();
  }

  /** Median of the times the brush took on this part, where both ends were written down. */
  private static OptionalDouble learnedBrushing(List<Entry> laid) {
    double[] minutes =
        laid.stream()
            .map(e -> (Coat) e.body())
            .filter(c -> c.end().isPresent() && c.end().get().isAfter(c.start()))
            .mapToDouble(c -> Duration.between(c.start(), c.end().get()).toSeconds() / 60.0)
            .sorted()
            .toArray();
    return minutes.length == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(minutes[minutes.length / 2]);
  }

  private void checkKnown(PartPath part) {
    if (journal.part(part).isEmpty() && journal.coats(part).isEmpty()) {
      throw RefusedInput.of(
          "part \"" + part + "\"",
          "the journal knows no such part",
          "look it up under its piece, or write it in first");
    }
  }

  private Wanted wanted(WindowQuestion q, Instant now) {
    Wanted wanted = wanted(q.part(), q.room(), q.jar(), now);
    if (q.finish().isEmpty()) {
      return wanted;
    }
    String name = q.finish().get();
    Finish finish = finishes.get(name);
    if (finish == null) {
      throw RefusedInput.of(
          "finish \"" + name + "\"",
          "it has no file",
          "choose one of: " + String.join(", ", new TreeSet<>(finishes.keySet())));
    }
    boolean same = wanted.finish().name().equals(name);
    if (q.jar().isPresent() && !same) {
      throw RefusedInput.of(
          "finish \"" + name + "\" with jar \"" + q.jar().get() + "\"",
          "the jar holds " + wanted.finish().name(),
          "leave one of them out");
    }
    return new Wanted(
        wanted.part(),
        same ? wanted.laid() : List.of(),
        same ? wanted.jar() : Optional.empty(),
        finish,
        wanted.method(),
        wanted.room(),
        wanted.wood());
  }

  private Wanted wanted(
      Optional<PartPath> part, Optional<String> room, Optional<String> from, Instant now) {
    List<Entry> laid =
        part.map(
                p ->
                    journal.coats(p).stream()
                        .filter(e -> !FilmJobs.startOf(e).isAfter(now))
                        .toList())
            .orElse(List.of());
    Optional<Coat> last =
        laid.isEmpty() ? Optional.empty() : Optional.of((Coat) laid.get(laid.size() - 1).body());
    Optional<String> named = from.or(() -> last.map(Coat::jar));
    Optional<Jar> jar = named.isPresent() ? jarNamed(named.get()) : newestJar(part);
    if (from.isPresent() && jar.isEmpty()) {
      throw RefusedInput.of(
          "jar \"" + from.get() + "\"",
          "no jar of that name is written down",
          "write it down with: coatwright jar new " + from.get() + " --finish FINISH");
    }
    Finish finish =
        jar.map(j -> finishes.get(j.finish()))
            .orElseGet(() -> finishes.get(settings.usualFinish()));
    if (finish == null) {
      throw new OutOfRange(
          "finish \"" + settings.usualFinish() + "\" has no file in config/finishes; add one");
    }
    return new Wanted(
        part,
        laid,
        jar,
        finish,
        last.map(c -> c.method().toString()).orElse("brush"),
        room.or(() -> last.map(Coat::room)).or(() -> roomOf(part)).orElseGet(this::firstRoom),
        PartWood.of(part.flatMap(journal::part), settings.boardThicknessMm()));
  }

  private Optional<String> roomOf(Optional<PartPath> part) {
    return part.flatMap(
            p -> journal.pieces().stream().filter(x -> x.name().equals(p.piece())).findFirst())
        .flatMap(coatwright.journal.Piece::room);
  }

  private String firstRoom() {
    return climate.rooms().isEmpty() ? "the shop" : climate.rooms().get(0);
  }

  private Optional<Jar> jarNamed(String name) {
    return journal.jars().stream()
        .map(e -> (Jar) e.body())
        .filter(j -> j.name().equals(name))
        .findFirst();
  }

  /** For a bare part the jar last filled is the one that will be opened. */
  private Optional<Jar> newestJar(Optional<PartPath> part) {
    return part.isEmpty()
        ? Optional.empty()
        : journal.jars().stream().max(Comparator.comparing(Entry::at)).map(e -> (Jar) e.body());
  }
}
