package coatwright.outlook;

import coatwright.climate.LiveClimate;
import coatwright.climate.MemoryReadingLog;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.config.SettingsFolder;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.film.SpiritDrying;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.Ledger;
import coatwright.journal.LiveJournal;
import coatwright.journal.MemoryLedger;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleUnaryOperator;

/** One room with a sensor, a journal and a clock that a test sets; outlooks over them. */
final class TestShop {
  static final Instant START = Instant.parse("2026-03-02T12:00:00Z");
  static final PartPath DOOR = PartPath.parse("cabinet/left-door");
  static final String ROOM = "bench";
  static final double LB = 119.826427;

  static final Finish PALE =
      new Finish(
          "shellac-pale",
          "Pale dewaxed shellac",
          Layer.SHELLAC,
          new SpiritDrying(FilmParameters.SHELLAC, 1.5 * LB, 0.2, 95),
          20,
          50,
          Map.of("brush", 75.0, "pad", 20.0, "wipe", 30.0, "spray", 60.0),
          0.2,
          5,
          35,
          OptionalDouble.empty(),
          6,
          100,
          "",
          List.of(),
          List.of(),
          List.of(),
          List.of("Read the safety data sheet of the spirit."));
  static final Map<String, Finish> FINISHES = Map.of("shellac-pale", PALE);

  /** The finishes that come with the program. */
  static final Map<String, Finish> SHIPPED = SettingsFolder.finishes(Path.of("config/finishes"));

  private final MemoryReadingLog log = new MemoryReadingLog();
  final Journal journal = new LiveJournal(new MemoryLedger());
  final MemoryPredictionLog predictions = new MemoryPredictionLog();
  private Instant now = START;
  final Clock clock =
      new Clock() {
        @Override
        public ZoneId getZone() {
          return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
          return this;
        }

        @Override
        public Instant instant() {
          return now;
        }
      };
  final LiveClimate climate = new LiveClimate(List.of(ROOM), log, clock, Duration.ofMinutes(1));
  final FilmOutlooks outlooks;
  private final String finish;
  private String jarEntry = "";

  TestShop() {
    this("shellac-pale", FINISHES);
  }

  /** A shop whose jar holds one of the finishes that come with the program. */
  static TestShop using(String finish) {
    return new TestShop(finish, SHIPPED);
  }

  private TestShop(String finish, Map<String, Finish> finishes) {
    this.finish = finish;
    this.outlooks =
        new FilmOutlooks(
            finishes,
            climate,
            journal,
            predictions,
            clock,
            OutlookSettings.usual(finish, ZoneOffset.UTC));
  }

  /** Keeps predictions in memory. */
  static final class MemoryPredictionLog implements PredictionLog {
    final List<Kept> kept = new ArrayList<>();

    @Override
    public void keep(Kept prediction) {
      kept.add(prediction);
    }

    @Override
    public List<Kept> history(String part, String milestone) {
      return kept.stream()
          .filter(k -> k.part().equals(part) && k.milestone().equals(milestone))
          .toList();
    }
  }

  TestShop at(Duration sinceStart) {
    now = START.plus(sinceStart);
    return this;
  }

  Instant now() {
    return now;
  }

  /** Readings every so many minutes, over [from, to) hours since the start. */
  TestShop air(
      double fromH,
      double toH,
      int everyMin,
      DoubleUnaryOperator tempC,
      DoubleUnaryOperator rhPct) {
    for (double min = fromH * 60; min < toH * 60; min += everyMin) {
      reading(
          START.plusSeconds(Math.round(min * 60)),
          Role.ROOM,
          OptionalDouble.of(tempC.applyAsDouble(min / 60)),
          OptionalDouble.of(rhPct.applyAsDouble(min / 60)),
          OptionalDouble.empty(),
          Optional.empty());
    }
    return this;
  }

  TestShop steadyAir(double fromH, double toH, double tempC, double rhPct) {
    return air(fromH, toH, 1, h -> tempC, h -> rhPct);
  }

  TestShop wood(double atH, double woodC) {
    reading(
        START.plusSeconds(Math.round(atH * 3600)),
        Role.PIECE,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.of(woodC),
        Optional.of(DOOR.toString()));
    return this;
  }

  private void reading(
      Instant at,
      Role role,
      OptionalDouble tempC,
      OptionalDouble rhPct,
      OptionalDouble surfaceC,
      Optional<String> part) {
    Instant was = now;
    now = at;
    climate.accept(
        new Reading(
            role == Role.ROOM ? "wall" : "probe",
            role == Role.ROOM ? "wall" : "probe",
            role,
            Optional.of(ROOM),
            part,
            at,
            tempC,
            rhPct,
            surfaceC,
            0.2,
            1,
            List.of()));
    now = was;
  }

  TestShop jar(OptionalDouble cutGPerL, OptionalDouble strengthPct) {
    write(
        START.minus(Duration.ofDays(3)),
        new Part(DOOR, OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty()));
    jarEntry =
        write(
                START.minus(Duration.ofDays(2)),
                new Jar("A", finish, cutGPerL, strengthPct, Optional.empty(), Optional.empty()))
            .id();
    return this;
  }

  /** The door written down of that wood; before {@link #jar()}, since the first entry counts. */
  TestShop of(String species, double thicknessMm) {
    write(
        START.minus(Duration.ofDays(4)),
        new Part(
            DOOR, OptionalDouble.empty(), OptionalDouble.of(thicknessMm), Optional.of(species)));
    return this;
  }

  TestShop jar() {
    return jar(OptionalDouble.of(1.5 * LB), OptionalDouble.of(95));
  }

  /** Another can, opened at that hour. */
  TestShop opens(String name, String finish, double atH) {
    write(
        START.plusSeconds(Math.round(atH * 3600)),
        new Jar(
            name,
            finish,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()));
    return this;
  }

  /** A can of a finish that is used as it comes. */
  TestShop can() {
    return jar(OptionalDouble.empty(), OptionalDouble.empty());
  }

  Entry coat(double atH, OptionalDouble wetUm, OptionalDouble woodC) {
    return coat(DOOR, atH, wetUm, woodC);
  }

  Entry coat(PartPath part, double atH, OptionalDouble wetUm, OptionalDouble woodC) {
    Instant at = START.plusSeconds(Math.round(atH * 3600));
    return write(
        at,
        new Coat(
            part,
            "A",
            jarEntry,
            at,
            Optional.empty(),
            ROOM,
            Method.BRUSH,
            wetUm,
            woodC,
            Optional.empty()));
  }

  /** The usual day: four coats a quarter of an hour apart, a rest, two more. */
  TestShop sixCoats(double woodC) {
    for (double min : new double[] {0, 15, 30, 45, 105, 145}) {
      coat(min / 60, OptionalDouble.empty(), OptionalDouble.of(woodC));
    }
    return this;
  }

  Entry note(double atH, Observation.What what, boolean passed) {
    return note(DOOR, atH, what, passed);
  }

  Entry note(PartPath part, double atH, Observation.What what, boolean passed) {
    return write(
        START.plusSeconds(Math.round(atH * 3600)),
        new Observation(
            part,
            Optional.empty(),
            what,
            OptionalInt.empty(),
            Optional.of(passed),
            Optional.empty()));
  }

  Entry write(Instant at, EntryBody body) {
    return journal.write(List.of(new Ledger.Line(at, at, Optional.empty(), body))).get(0);
  }

  /** Predicts again at that hour and gives the line of a milestone. */
  Due due(double atH, String milestone) {
    at(Duration.ofSeconds(Math.round(atH * 3600)));
    outlooks.refresh(now, "asked by the test");
    return listed(milestone);
  }

  Due listed(String milestone) {
    return outlooks.due(Optional.empty()).stream()
        .filter(d -> d.milestone().equals(milestone))
        .findFirst()
        .orElseThrow();
  }
}
