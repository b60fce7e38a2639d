package coatwright.review;

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
import coatwright.journal.EntryBody;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.Ledger;
import coatwright.journal.LiveJournal;
import coatwright.journal.MemoryLedger;
import coatwright.journal.Method;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.OutlookSettings;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One room, its record and its journal, as a test writes them; the reviews read them back. */
final class CaseShop {
  static final Instant LAID = Instant.parse("2026-03-02T14:00:00Z");
  static final String DOOR = "cabinet/left-door";
  private static final String ROOM = "bench";

  private final MemoryReadingLog log = new MemoryReadingLog();
  private final Journal journal = new LiveJournal(new MemoryLedger());
  private final Clock clock;
  private final LiveClimate climate;

  CaseShop() {
    this(Duration.ofDays(30));
  }

  /**
   * @param askedAfter how long after the coat the question is put
   */
  CaseShop(Duration askedAfter) {
    clock = Clock.fixed(LAID.plus(askedAfter), ZoneOffset.UTC);
    climate = new LiveClimate(List.of(ROOM), log, clock, Duration.ofMinutes(1));
  }

  Reviews reviews() {
    FilmJobs jobs =
        new FilmJobs(
            journal, climate, FINISHES, OutlookSettings.usual("shellac-pale", ZoneOffset.UTC));
    return new FilmReviews(jobs, journal, climate, ZoneOffset.UTC, clock);
  }

  Why why() {
    return reviews().why(DOOR);
  }

  /** Steady air, a reading every so many minutes, from and to counted from the coat. */
  CaseShop air(double tempC, double rhPct, Duration from, Duration to, int everyMin) {
    for (Instant at = LAID.plus(from);
        at.isBefore(LAID.plus(to));
        at = at.plus(Duration.ofMinutes(everyMin))) {
      log.append(
          new Reading(
              "wall",
              "wall",
              Role.ROOM,
              Optional.of(ROOM),
              Optional.empty(),
              at,
              OptionalDouble.of(tempC),
              OptionalDouble.of(rhPct),
              OptionalDouble.empty(),
              0.2,
              2,
              List.of()));
    }
    return this;
  }

  /** Six hours of it around the coat, by the minute. */
  CaseShop air(double tempC, double rhPct) {
    return air(tempC, rhPct, Duration.ofHours(-3), Duration.ofHours(4), 1);
  }

  CaseShop jar(String name, double strengthPct, LocalDate opened) {
    write(
        new Jar(
            name,
            "shellac-pale",
            OptionalDouble.of(1.5 * 119.826427),
            OptionalDouble.of(strengthPct),
            Optional.of(opened),
            Optional.empty()),
        LAID.minus(Duration.ofDays(1)));
    return this;
  }

  /** A can of one of the finishes that come with the program, used as it comes. */
  CaseShop can(String name, String finish) {
    write(
        new Jar(
            name,
            finish,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()),
        LAID.minus(Duration.ofDays(1)));
    return this;
  }

  CaseShop coat(String part, String jar, Duration after, OptionalDouble woodC) {
    String jarEntry =
        journal.jars().stream()
            .filter(e -> ((Jar) e.body()).name().equals(jar))
            .findFirst()
            .orElseThrow()
            .id();
    write(
        new Coat(
            PartPath.parse(part),
            jar,
            jarEntry,
            LAID.plus(after),
            Optional.empty(),
            ROOM,
            Method.BRUSH,
            OptionalDouble.of(75),
            woodC,
            Optional.empty()),
        LAID.plus(after));
    return this;
  }

  CaseShop note(String part, Observation.What what, int grade, Duration after) {
    write(
        new Observation(
            PartPath.parse(part),
            Optional.empty(),
            what,
            what == Observation.What.CLOUDED ? OptionalInt.of(grade) : OptionalInt.empty(),
            what == Observation.What.CLOUDED || what == Observation.What.TACKY
                ? Optional.empty()
                : Optional.of(grade > 0),
            Optional.empty()),
        LAID.plus(after));
    return this;
  }

  private static Map<String, Finish> finishes() {
    Map<String, Finish> all = new HashMap<>(SettingsFolder.finishes(Path.of("config/finishes")));
    all.put("shellac-pale", PALE);
    return all;
  }

  private void write(EntryBody body, Instant at) {
    journal.write(List.of(new Ledger.Line(at, at, Optional.empty(), body)));
  }

  static final Finish PALE =
      new Finish(
          "shellac-pale",
          "Pale dewaxed shellac",
          Layer.SHELLAC,
          new SpiritDrying(FilmParameters.SHELLAC, 1.5 * 119.826427, 0.2, 95),
          20,
          50,
          Map.of("brush", 75.0),
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
          List.of());

  private static final Map<String, Finish> FINISHES = finishes();
}
