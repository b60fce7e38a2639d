package coatwright.web;

import coatwright.air.Airing;
import coatwright.air.MoistAir;
import coatwright.climate.AirPoint;
import coatwright.climate.Doubt;
import coatwright.climate.RoomAir;
import coatwright.climate.SourceStatus;
import coatwright.climate.WoodPoint;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.Piece;
import coatwright.journal.Strike;
import coatwright.mix.Cut;
import coatwright.mix.ShelfAge;
import coatwright.outlook.Due;
import coatwright.outlook.Outlook;
import coatwright.outlook.SessionOutlook;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.watch.Warning;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;

/** What the routes answer with: the records of the rooms, flattened to the keys of the contract. */
final class Answers {
  private Answers() {}

  /** A room's air as a tile shows it. */
  record RoomView(
      String room,
      Optional<AirView> air,
      Optional<WoodView> wood,
      OptionalDouble spreadAtWoodK,
      OptionalDouble ageSeconds,
      List<String> sources,
      boolean disagree,
      Optional<String> trouble,
      Optional<String> mistrust,
      Optional<DoubtView> doubt,
      Optional<OutsideView> outside) {
    static RoomView of(RoomAir now, Optional<Doubt> doubt, Optional<AirPoint> outside, Instant at) {
      Optional<WoodView> wood = now.wood().map(point -> WoodView.of(point, at));
      OptionalDouble spread =
          now.air().isPresent() && wood.isPresent()
              ? OptionalDouble.of(wood.get().woodTempC() - now.air().get().dewPointC())
              : OptionalDouble.empty();
      return new RoomView(
          now.room(),
          now.air()
              .map(
                  air ->
                      new AirView(
                          air.at(),
                          air.airTempC(),
                          air.rhPct(),
                          air.dewPointC(),
                          air.temperatureErrorK(),
                          air.rhErrorPct())),
          wood,
          spread,
          now.age().map(age -> OptionalDouble.of(seconds(age))).orElse(OptionalDouble.empty()),
          now.sources(),
          now.disagree(),
          now.trouble(),
          now.mistrust(),
          doubt.map(DoubtView::of),
          outside.flatMap(air -> now.air().map(inside -> OutsideView.of(inside, air))));
    }
  }

  /**
   * The air outside against a room's: what opening the door would do.
   *
   * @param door {@code dries}, {@code wets} or {@code hardly}
   * @param rhOnceInsidePct what outside air reads once it is as warm as the room, at most 100 %
   */
  record OutsideView(
      Instant at,
      double airTempC,
      double rhPct,
      double dewPointC,
      String door,
      double rhOnceInsidePct,
      String sentence) {
    static OutsideView of(AirPoint inside, AirPoint outside) {
      MoistAir in = MoistAir.of(inside.airTempC(), inside.rhPct());
      MoistAir out = MoistAir.of(outside.airTempC(), outside.rhPct());
      double errorK = Math.hypot(inside.dewPointErrorK(), outside.dewPointErrorK());
      Airing.Door door = Airing.door(in, out, errorK);
      double pct = Math.min(100, Airing.rhOnceInsidePct(in, out));
      return new OutsideView(
          outside.at(),
          outside.airTempC(),
          outside.rhPct(),
          outside.dewPointC(),
          door.toString(),
          pct,
          sentence(door, inside, outside, pct));
    }

    private static String sentence(
        Airing.Door door, AirPoint inside, AirPoint outside, double pct) {
      String what =
          switch (door) {
            case DRIES -> "would dry the room";
            case WETS -> "would make the room damper";
            case HARDLY -> "would neither dry nor wet the room by what the sensors can tell";
          };
      return "Opening the door %s: dew point outside %s, inside %s; outside air at the room's warmth reads %s."
          .formatted(
              what,
              Show.temperature(outside.dewPointC(), UnitSystem.METRIC),
              Show.temperature(inside.dewPointC(), UnitSystem.METRIC),
              Show.relativeHumidity(pct));
    }
  }

  /** A room whole: its air now, and what the last hours were good for. */
  record RoomSheet(@JsonUnwrapped RoomView now, HoursView hours, List<HeaterView> heaters) {}

  /** How many hours of a stretch were warm and damp, and how cold the night was. */
  record HoursView(
      Instant from,
      Instant to,
      double warmC,
      double dampPct,
      double knownHours,
      double warmHours,
      double dampHours,
      OptionalDouble nightLowC,
      Optional<Instant> nightLowAt) {}

  /** What a heater without a flue puts into the room's air. */
  record HeaterView(String fuel, double waterKgPerKg) {}

  /**
   * What is shown and not relied on: a jump that waits for one more reading to agree, or, where it
   * did not jump, what a sensor in doubt says beside one that is not.
   */
  record DoubtView(
      String source,
      Instant at,
      OptionalDouble airTempC,
      OptionalDouble rhPct,
      OptionalDouble woodTempC,
      String reason,
      boolean jumped,
      String sentence) {
    static DoubtView of(Doubt doubt) {
      return new DoubtView(
          doubt.reading().source(),
          doubt.reading().at(),
          doubt.reading().temperatureC(),
          doubt.reading().rhPct(),
          doubt.reading().surfaceTemperatureC(),
          doubt.reason(),
          doubt.jumped(),
          doubt.sentence());
    }
  }

  record AirView(
      Instant at,
      double airTempC,
      double rhPct,
      double dewPointC,
      double temperatureErrorK,
      double rhErrorPct) {}

  record WoodView(Instant at, double woodTempC, double errorK, double ageSeconds) {
    static WoodView of(WoodPoint point, Instant now) {
      return new WoodView(
          point.at(),
          point.woodTempC(),
          point.errorK(),
          seconds(Duration.between(point.at(), now)));
    }
  }

  /** A source whole: how it does, and its last refused inputs. */
  record SourceSheet(@JsonUnwrapped SourceStatus status, double everySeconds) {
    static SourceSheet of(SourceStatus status) {
      return new SourceSheet(status, seconds(status.every()));
    }
  }

  record SourceView(
      String source,
      String transport,
      Optional<String> room,
      String role,
      String state,
      Duration every,
      double everySeconds,
      Optional<Instant> lastReadingAt,
      long accepted,
      long heldBack,
      long refused,
      Optional<String> trouble) {
    static SourceView of(SourceStatus status) {
      return new SourceView(
          status.source(),
          status.transport(),
          status.room(),
          status.role().toString(),
          status.state().toString(),
          status.every(),
          seconds(status.every()),
          status.lastReadingAt(),
          status.accepted(),
          status.heldBack(),
          status.refused(),
          status.trouble());
    }
  }

  /** Everything the Now page shows. */
  record NowView(
      Instant at,
      String shop,
      boolean invented,
      String units,
      String zone,
      String room,
      List<RoomView> rooms,
      List<SessionOutlook> sessions,
      List<CoatOn> coatOn,
      boolean wetFilm,
      List<PartView> parts,
      List<Todo> todo,
      List<Warning> warnings,
      List<SourceView> sources) {}

  /**
   * The coat one press would write: the last one on that part again.
   *
   * @param coat which coat it would be, counted from 1
   * @param form the words that write it, by their keys
   */
  record CoatOn(
      String room, String part, int coat, String jar, String method, Map<String, String> form) {}

  /** A test to make now or shortly. */
  record Todo(String part, String milestone, Instant from, String test) {}

  /** A part at the bench: what it has passed and what comes next. */
  record PartView(String part, int coats, Optional<Due> passed, Optional<Due> next) {}

  /** A stretch of a room's air. */
  record Readings(
      String room,
      Instant from,
      Instant to,
      OptionalDouble everySeconds,
      List<Point> points,
      List<WoodAt> wood,
      List<GapView> gaps,
      List<Point> expected) {}

  record Point(Instant at, double airTempC, double rhPct, double dewPointC) {}

  record WoodAt(Instant at, double woodTempC) {}

  record GapView(Instant from, Instant to) {}

  /** A line of the journal. */
  record EntryView(
      String entry,
      String kind,
      Instant at,
      Instant writtenAt,
      Optional<String> who,
      Optional<String> part,
      Optional<String> coat,
      Optional<Outlook> outlook,
      Optional<String> caution,
      Optional<List<EntryView>> entries) {
    static EntryView of(Entry entry) {
      return new EntryView(
          entry.id(),
          entry.body().kind(),
          entry.at(),
          entry.writtenAt(),
          entry.who(),
          partOf(entry),
          coatOf(entry),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }

    EntryView with(Optional<Outlook> seen, Optional<String> warned, Optional<List<EntryView>> all) {
      return new EntryView(entry, kind, at, writtenAt, who, part, coat, seen, warned, all);
    }

    private static Optional<String> partOf(Entry entry) {
      if (entry.body() instanceof Coat coat) {
        return Optional.of(coat.part().toString());
      }
      if (entry.body() instanceof Part part) {
        return Optional.of(part.path().toString());
      }
      if (entry.body() instanceof Observation seen) {
        return Optional.of(seen.part().toString());
      }
      return Optional.empty();
    }

    private static Optional<String> coatOf(Entry entry) {
      if (entry.body() instanceof Coat) {
        return Optional.of(entry.id());
      }
      return entry.body() instanceof Observation seen ? seen.coat() : Optional.empty();
    }
  }

  record PieceView(
      String name, Optional<String> room, Optional<LocalDate> promise, List<PartBrief> parts) {
    static PieceView of(Piece piece, List<PartBrief> parts) {
      return new PieceView(piece.name(), piece.room(), piece.promise(), parts);
    }
  }

  record PartBrief(
      String part,
      OptionalDouble areaM2,
      OptionalDouble thicknessMm,
      Optional<String> species,
      int coats,
      Optional<Instant> lastCoatAt) {}

  record PartSheet(
      String part,
      OptionalDouble areaM2,
      OptionalDouble thicknessMm,
      Optional<String> species,
      List<CoatView> coats,
      List<ObservationView> observations,
      List<Due> due) {}

  record CoatView(
      String coat,
      String part,
      String jar,
      String jarEntry,
      Instant start,
      Optional<Instant> end,
      String room,
      String method,
      OptionalDouble wetFilmUm,
      OptionalDouble woodTempC,
      Optional<String> who,
      Instant writtenAt,
      Optional<StruckView> struck) {
    static CoatView of(Entry entry, Coat coat, Optional<Entry> struckBy) {
      return new CoatView(
          entry.id(),
          coat.part().toString(),
          coat.jar(),
          coat.jarEntry(),
          coat.start(),
          coat.end(),
          coat.room(),
          coat.method().toString(),
          coat.wetFilmUm(),
          coat.woodTempC(),
          coat.who(),
          entry.writtenAt(),
          struckBy.flatMap(StruckView::of));
    }
  }

  record StruckView(String entry, String reason) {
    static Optional<StruckView> of(Entry strike) {
      return strike.body() instanceof Strike body
          ? Optional.of(new StruckView(strike.id(), body.reason()))
          : Optional.empty();
    }
  }

  record ObservationView(
      String entry,
      Instant at,
      Optional<String> coat,
      String what,
      OptionalInt grade,
      Optional<Boolean> passed,
      Optional<String> text,
      OptionalDouble residuePct,
      OptionalDouble storedTempC) {}

  /**
   * A jar's newest filling.
   *
   * @param solidsMassPct known only where the strength is
   * @param testDueOn day its test falls due: a date, not a verdict
   * @param test that test, in words
   */
  record JarView(
      String name,
      String finish,
      OptionalDouble cutGPerL,
      OptionalDouble cutLbPerUsGal,
      OptionalDouble solidsMassPct,
      OptionalDouble solidsVolumePct,
      OptionalDouble strengthVolPct,
      Optional<LocalDate> opened,
      Optional<LocalDate> testDueOn,
      Optional<String> test,
      Optional<String> retarder,
      String entry,
      Instant filledAt) {
    static Optional<JarView> of(Entry entry, Map<String, Finish> finishes) {
      if (!(entry.body() instanceof Jar jar)) {
        return Optional.empty();
      }
      Optional<Cut> cut =
          jar.cutGPerL().stream()
              .filter(gPerL -> gPerL <= Cut.MOST_G_PER_L)
              .mapToObj(Cut::new)
              .findFirst();
      return Optional.of(
          new JarView(
              jar.name(),
              jar.finish(),
              jar.cutGPerL(),
              figure(cut, Cut::lbPerUsGal),
              jar.strengthVolPct().isPresent()
                  ? figure(cut, c -> c.solidsMassPct(jar.strengthVolPct().getAsDouble()))
                  : OptionalDouble.empty(),
              solidsVolumePct(jar, cut, finishes),
              jar.strengthVolPct(),
              jar.opened(),
              testDueOn(jar, finishes),
              testDueOn(jar, finishes).flatMap(due -> test(jar, finishes)),
              jar.retarder(),
              entry.id(),
              entry.at()));
    }

    private static OptionalDouble figure(Optional<Cut> cut, ToDoubleFunction<Cut> of) {
      return cut.isPresent()
          ? OptionalDouble.of(of.applyAsDouble(cut.get()))
          : OptionalDouble.empty();
    }

    /** By its cut; a finish that is used as it comes has the solids its file states. */
    private static OptionalDouble solidsVolumePct(
        Jar jar, Optional<Cut> cut, Map<String, Finish> finishes) {
      Finish finish = finishes.get(jar.finish());
      return finish != null && finish.drying() instanceof Curing curing
          ? OptionalDouble.of(curing.facts().solidsVolPct())
          : figure(cut, Cut::solidsVolumePct);
    }

    private static Optional<String> test(Jar jar, Map<String, Finish> finishes) {
      return Optional.ofNullable(finishes.get(jar.finish()))
          .map(
              finish ->
                  finish.drying() instanceof SpiritDrying
                      ? ShelfAge.DROP_TEST
                      : ShelfAge.SCRAP_TEST);
    }

    private static Optional<LocalDate> testDueOn(Jar jar, Map<String, Finish> finishes) {
      return Optional.ofNullable(finishes.get(jar.finish()))
          .filter(finish -> finish.testDueMonths() > 0)
          .flatMap(
              finish ->
                  jar.opened().map(day -> new ShelfAge(day, finish.testDueMonths()).testDueOn()));
    }
  }

  static double seconds(Duration duration) {
    return duration.toMillis() / 1000.0;
  }
}
