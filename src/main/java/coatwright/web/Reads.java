package coatwright.web;

import coatwright.air.Airing;
import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Gap;
import coatwright.climate.Happening;
import coatwright.climate.RoomDay;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Observation;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.outlook.BrushingWindows;
import coatwright.outlook.Due;
import coatwright.outlook.WindowQuestion;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import coatwright.watch.Warning;
import coatwright.web.Answers.CoatView;
import coatwright.web.Answers.GapView;
import coatwright.web.Answers.HeaterView;
import coatwright.web.Answers.HoursView;
import coatwright.web.Answers.JarView;
import coatwright.web.Answers.ObservationView;
import coatwright.web.Answers.PartBrief;
import coatwright.web.Answers.PartSheet;
import coatwright.web.Answers.PieceView;
import coatwright.web.Answers.Point;
import coatwright.web.Answers.Readings;
import coatwright.web.Answers.RoomSheet;
import coatwright.web.Answers.SourceSheet;
import coatwright.web.Answers.WoodAt;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/** The routes that read. */
final class Reads {
  private static final Duration MISSED = Duration.ofDays(7);
  private static final Duration USUAL_STRETCH = Duration.ofHours(24);
  private static final Duration LONGEST_STRETCH = Duration.ofDays(400);

  /** An hour this warm counts as warm, this damp as damp; common practice, no source. */
  private static final double USUAL_WARM_C = 18;

  private static final double USUAL_DAMP_PCT = 65;
  private static final Duration LONGEST_AGAIN = Duration.ofDays(14);

  /** Points in one answer without {@code every}; more are thinned. */
  private static final int MOST_POINTS = 20_000;

  private final WebRooms rooms;
  private final Board board;
  private final ShopJson json;
  private final CalibrationViews calibrations;

  Reads(WebRooms rooms, Board board, ShopJson json) {
    this.rooms = rooms;
    this.calibrations = new CalibrationViews(rooms);
    this.board = board;
    this.json = json;
  }

  void addTo(RoutesConfig routes) {
    String api = WebServer.API;
    routes.get(api + "/now", ctx -> answer(ctx, board.now(given(ctx, "room").map(this::room))));
    routes.get(api + "/rooms", ctx -> answer(ctx, Map.of("rooms", board.rooms())));
    routes.get(api + "/rooms/{room}", ctx -> answer(ctx, roomSheet(ctx)));
    routes.get(api + "/rooms/{room}/readings", ctx -> answer(ctx, readings(ctx)));
    routes.get(api + "/rooms/{room}/forecast", ctx -> answer(ctx, forecast(ctx)));
    routes.get(api + "/windows", ctx -> answer(ctx, windows(ctx)));
    routes.get(
        api + "/finishes",
        ctx ->
            answer(
                ctx,
                Map.of(
                    "finishes", rooms.finishes().values().stream().map(FinishView::of).toList())));
    routes.get(api + "/jars", ctx -> answer(ctx, Map.of("jars", jars())));
    routes.get(api + "/pieces", ctx -> answer(ctx, Map.of("pieces", pieces())));
    routes.get(api + "/parts/<part>", ctx -> answer(ctx, part(ctx.pathParam("part"))));
    routes.get(api + "/coats/{coat}", ctx -> answer(ctx, coat(ctx.pathParam("coat"))));
    routes.get(api + "/due", ctx -> answer(ctx, Map.of("due", due(given(ctx, "piece")))));
    routes.get(api + "/why/<coat>", ctx -> answer(ctx, why(ctx.pathParam("coat"))));
    routes.get(api + "/warnings", ctx -> answer(ctx, Map.of("warnings", warnings(ctx))));
    routes.get(api + "/mirrors", ctx -> answer(ctx, Map.of("mirrors", rooms.mirrors().get())));
    routes.get(api + "/backup", ctx -> answer(ctx, Map.of("backup", rooms.backup().get())));
    routes.get(api + "/calibrations", ctx -> answer(ctx, calibrations.all()));
    routes.get(api + "/calibrations/{source}/readings", ctx -> answer(ctx, again(ctx)));
    routes.get(api + "/missed", ctx -> answer(ctx, Map.of("missed", missed(ctx))));
    routes.get(api + "/sources", ctx -> answer(ctx, Map.of("sources", sources())));
  }

  private Object again(Context ctx) {
    Instant now = rooms.clock().instant();
    Instant to = given(ctx, "to").map(text -> time("to", text)).orElse(now);
    Instant from =
        given(ctx, "from").map(text -> time("from", text)).orElseGet(() -> to.minus(USUAL_STRETCH));
    if (!from.isBefore(to) || Duration.between(from, to).compareTo(LONGEST_AGAIN) > 0) {
      throw RefusedInput.of(
          "from " + from + " to " + to,
          "a stretch runs forward and lasts at most " + LONGEST_AGAIN.toDays() + " days",
          "give an earlier from or a nearer to");
    }
    return calibrations.again(ctx.pathParam("source"), from, to);
  }

  private List<Happening> missed(Context ctx) {
    Instant now = rooms.clock().instant();
    Instant from = given(ctx, "from").map(text -> time("from", text)).orElse(now.minus(MISSED));
    // What a clock that has since been put back dated ahead is not to be hidden.
    return rooms.missed().apply(from, Instant.MAX);
  }

  private List<SourceSheet> sources() {
    return rooms.sources().get().stream().map(SourceSheet::of).toList();
  }

  private void answer(Context ctx, Object record) {
    ctx.contentType("application/json; charset=utf-8").result(json.line(record));
  }

  private static Optional<String> given(Context ctx, String key) {
    return Optional.ofNullable(ctx.queryParam(key)).filter(text -> !text.isBlank());
  }

  private String room(String name) {
    if (!rooms.climate().rooms().contains(name)) {
      throw Unknown.of("room", name, rooms.climate().rooms());
    }
    return name;
  }

  private RoomSheet roomSheet(Context ctx) {
    String room = room(ctx.pathParam("room"));
    Instant now = rooms.clock().instant();
    Instant to = given(ctx, "to").map(text -> time("to", text)).orElse(now);
    Instant from =
        given(ctx, "from").map(text -> time("from", text)).orElseGet(() -> to.minus(USUAL_STRETCH));
    if (!from.isBefore(to) || Duration.between(from, to).compareTo(LONGEST_STRETCH) > 0) {
      throw RefusedInput.of(
          "from " + from + " to " + to,
          "a stretch runs forward and lasts at most " + LONGEST_STRETCH.toDays() + " days",
          "give an earlier from or a nearer to");
    }
    double warmC =
        given(ctx, "warm").map(text -> Quantities.temperatureC("warm", text)).orElse(USUAL_WARM_C);
    double dampPct =
        given(ctx, "damp")
            .map(text -> Quantities.relativeHumidityPct("damp", text))
            .orElse(USUAL_DAMP_PCT);
    RoomDay day = RoomDay.of(rooms.climate().series(room, from, to), warmC, dampPct, rooms.zone());
    return new RoomSheet(
        board.room(room),
        new HoursView(
            from,
            to,
            warmC,
            dampPct,
            day.knownHours(),
            day.warmHours(),
            day.dampHours(),
            day.nightLowC(),
            day.nightLowAt()),
        Stream.of(Airing.Fuel.values())
            .map(fuel -> new HeaterView(fuel.toString(), fuel.waterKgPerKg()))
            .toList());
  }

  private Readings readings(Context ctx) {
    String room = room(ctx.pathParam("room"));
    Instant now = rooms.clock().instant();
    Instant to = given(ctx, "to").map(text -> time("to", text)).orElse(now);
    Instant from =
        given(ctx, "from").map(text -> time("from", text)).orElseGet(() -> to.minus(USUAL_STRETCH));
    if (!from.isBefore(to) || Duration.between(from, to).compareTo(LONGEST_STRETCH) > 0) {
      throw RefusedInput.of(
          "from " + from + " to " + to,
          "a stretch runs forward and lasts at most " + LONGEST_STRETCH.toDays() + " days",
          "give an earlier from or a nearer to");
    }
    OptionalDouble every =
        given(ctx, "every")
            .map(text -> OptionalDouble.of(everySeconds(text)))
            .orElse(OptionalDouble.empty());
    Instant known = to.isBefore(now) ? to : now;
    AirSeries air =
        from.isBefore(known)
            ? rooms.climate().series(room, from, known)
            : new AirSeries(room, from, to, List.of(), List.of());
    Optional<AirSeries> expected =
        to.isAfter(now)
            ? rooms.climate().expected(room, from.isAfter(now) ? from : now, to)
            : Optional.empty();
    double step = every.orElse(thinning(air.points().size(), Duration.between(from, to)));
    return new Readings(
        room,
        from,
        to,
        every,
        thinned(air.points(), AirPoint::at, step).stream().map(Reads::point).toList(),
        thinned(
                from.isBefore(known)
                    ? rooms.climate().wood(room, Optional.empty(), from, known)
                    : List.of(),
                point -> point.at(),
                step)
            .stream()
            .map(point -> new WoodAt(point.at(), point.woodTempC()))
            .toList(),
        air.gaps().stream().map(Reads::gap).toList(),
        expected.stream()
            .flatMap(series -> thinned(series.points(), AirPoint::at, step).stream())
            .map(Reads::point)
            .toList());
  }

  private ForecastView forecast(Context ctx) {
    String room = room(ctx.pathParam("room"));
    return rooms
        .climate()
        .forecast(room)
        .map(ForecastView::of)
        .orElseGet(() -> ForecastView.none(room, rooms.clock().instant()));
  }

  private BrushingWindows windows(Context ctx) {
    Optional<String> finish = given(ctx, "finish");
    finish
        .filter(name -> !rooms.finishes().containsKey(name))
        .ifPresent(
            name -> {
              throw Unknown.of("finish", name, rooms.finishes().keySet());
            });
    return rooms
        .outlooks()
        .windows(
            new WindowQuestion(
                given(ctx, "part").map(this::knownPart),
                finish,
                given(ctx, "jar"),
                given(ctx, "room").map(this::room)),
            rooms.clock().instant());
  }

  private static Point point(AirPoint air) {
    return new Point(air.at(), air.airTempC(), air.rhPct(), air.dewPointC());
  }

  private static GapView gap(Gap gap) {
    return new GapView(gap.from(), gap.to());
  }

  private static double thinning(int points, Duration stretch) {
    return points <= MOST_POINTS ? 0 : Answers.seconds(stretch) / MOST_POINTS;
  }

  /** The last point measured in each interval; measured ones only, nothing averaged. */
  private static <T> List<T> thinned(List<T> points, Function<T, Instant> at, double everySeconds) {
    if (everySeconds <= 0) {
      return points;
    }
    long everyMs = Math.max(1, Math.round(everySeconds * 1000));
    List<T> kept = new ArrayList<>();
    for (int i = 0; i < points.size(); i++) {
      boolean lastOfAll = i == points.size() - 1;
      if (lastOfAll
          || Math.floorDiv(at.apply(points.get(i)).toEpochMilli(), everyMs)
              != Math.floorDiv(at.apply(points.get(i + 1)).toEpochMilli(), everyMs)) {
        kept.add(points.get(i));
      }
    }
    return kept;
  }

  /** An instant with its offset, or a date and time in the shop's zone. */
  private Instant time(String what, String text) {
    try {
      return OffsetDateTime.parse(text).toInstant();
    } catch (DateTimeException notWithOffset) {
      try {
        return LocalDateTime.parse(text).atZone(rooms.zone()).toInstant();
      } catch (DateTimeException unreadable) {
        throw RefusedInput.of(
            what + " \"" + text + "\"",
            "a time is a date and a time of day, with or without an offset",
            "write it like 2026-03-14T16:20 or 2026-03-14T16:20:00Z");
      }
    }
  }

  private static double everySeconds(String text) {
    double seconds = Answers.seconds(Quantities.duration("every", text));
    if (seconds < 1) {
      throw RefusedInput.of(
          "every \"" + text + "\"", "an interval is 1 s or longer", "write it like 5min");
    }
    return seconds;
  }

  private List<JarView> jars() {
    return rooms.journal().jars().stream()
        .flatMap(jar -> JarView.of(jar, rooms.finishes()).stream())
        .toList();
  }

  private List<PieceView> pieces() {
    return rooms.journal().pieces().stream()
        .map(
            piece ->
                PieceView.of(
                    piece, rooms.journal().parts(piece.name()).stream().map(this::brief).toList()))
        .toList();
  }

  private PartBrief brief(Part part) {
    List<Entry> coats = rooms.journal().coats(part.path());
    return new PartBrief(
        part.path().toString(),
        part.areaM2(),
        part.thicknessMm(),
        part.species(),
        coats.size(),
        coats.isEmpty() ? Optional.empty() : Optional.of(coats.get(coats.size() - 1).at()));
  }

  private PartSheet part(String text) {
    PartPath path = knownPart(text);
    Optional<Part> part = rooms.journal().part(path);
    return new PartSheet(
        path.toString(),
        part.map(Part::areaM2).orElse(OptionalDouble.empty()),
        part.map(Part::thicknessMm).orElse(OptionalDouble.empty()),
        part.flatMap(Part::species),
        rooms.journal().coats(path).stream().flatMap(entry -> coatView(entry).stream()).toList(),
        rooms.journal().observations(path).stream()
            .flatMap(entry -> observation(entry).stream())
            .toList(),
        rooms.outlooks().due(Optional.of(path.piece())).stream()
            .filter(one -> one.part().equals(path.toString()))
            .toList());
  }

  private PartPath knownPart(String text) {
    PartPath path = PartPath.parse(text);
    if (rooms.journal().part(path).isEmpty() && rooms.journal().coats(path).isEmpty()) {
      throw Unknown.of(
          "part",
          text,
          rooms.journal().pieces().stream()
              .flatMap(piece -> rooms.journal().parts(piece.name()).stream())
              .map(part -> part.path().toString())
              .toList());
    }
    return path;
  }

  private Optional<CoatView> coatView(Entry entry) {
    return entry.body() instanceof Coat coat
        ? Optional.of(CoatView.of(entry, coat, rooms.journal().struckBy(entry.id())))
        : Optional.empty();
  }

  private static Optional<ObservationView> observation(Entry entry) {
    return entry.body() instanceof Observation seen
        ? Optional.of(
            new ObservationView(
                entry.id(),
                entry.at(),
                seen.coat(),
                seen.what().toString(),
                seen.grade(),
                seen.passed(),
                seen.text(),
                seen.residuePct(),
                seen.storedTempC()))
        : Optional.empty();
  }

  private CoatView coat(String id) {
    return rooms
        .journal()
        .entry(id)
        .flatMap(this::coatView)
        .orElseThrow(
            () -> Unknown.of("coat", id, rooms.journal().coats().stream().map(Entry::id).toList()));
  }

  private List<Due> due(Optional<String> piece) {
    List<String> known = rooms.journal().pieces().stream().map(Piece::name).toList();
    piece
        .filter(name -> !known.contains(name))
        .ifPresent(
            name -> {
              throw Unknown.of("piece", name, known);
            });
    return rooms.outlooks().due(piece);
  }

  private Object why(String coatOrPart) {
    if (coatOrPart.contains("/")) {
      knownPart(coatOrPart);
    } else {
      coat(coatOrPart);
    }
    return rooms.reviews().why(coatOrPart);
  }

  private List<Warning> warnings(Context ctx) {
    Optional<String> from = given(ctx, "from");
    Optional<String> to = given(ctx, "to");
    if (from.isEmpty() && to.isEmpty()) {
      return rooms.watch().open();
    }
    Instant until = to.map(text -> time("to", text)).orElse(rooms.clock().instant());
    Instant since =
        from.map(text -> time("from", text)).orElseGet(() -> until.minus(USUAL_STRETCH));
    return rooms.watch().between(since, until);
  }
}
