package coatwright.watch;

import coatwright.air.MoistAir;
import coatwright.climate.AirForecast;
import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.climate.Doubt;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.climate.RoomAir;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.climate.WoodPoint;
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
import coatwright.journal.Method;
import coatwright.journal.Part;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.outlook.BrushingWindows;
import coatwright.outlook.Due;
import coatwright.outlook.NextCoat;
import coatwright.outlook.Outlook;
import coatwright.outlook.OutlookRequest;
import coatwright.outlook.Outlooks;
import coatwright.outlook.SessionOutlook;
import coatwright.outlook.WindowQuestion;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * A shop of one room whose air, wood, outlook and sensors the test sets by hand, so that the watch
 * is seen alone.
 */
final class InventedShop implements Outlooks, Climate, Journal, WarningLog, Bell {
  static final Instant START = Instant.parse("2026-03-02T09:00:00Z");
  static final PartPath DOOR = PartPath.parse("cabinet/left-door");

  private final List<Entry> entries = new ArrayList<>();
  private final List<Due> due = new ArrayList<>();
  private final List<SourceStatus> sources = new ArrayList<>();
  private Optional<MoistAir> air = Optional.of(MoistAir.of(20, 50));
  private Optional<WoodPoint> wood = Optional.empty();
  private Outlook outlook = outlook(Outlook.CloudingLevel.NONE_EXPECTED, 2.4, 3.2);
  private Optional<Instant> better = Optional.empty();
  private Optional<Doubt> doubt = Optional.empty();
  private Optional<Outlook> ifDoubtHolds = Optional.empty();
  private boolean disagree;
  private boolean nudged;

  final List<Warning> kept = new ArrayList<>();
  final List<String> rung = new ArrayList<>();
  final WatchSettings settings = WatchSettings.usual(ZoneOffset.UTC);
  private ShopWatch watch = newWatch();

  InventedShop() {
    write(
        new Jar(
            "a",
            "shellac-pale",
            OptionalDouble.of(180),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty()),
        START);
  }

  private ShopWatch newWatch() {
    return new ShopWatch(
        this,
        this,
        this,
        this,
        this,
        () -> List.copyOf(sources),
        name -> Optional.of(FINISH),
        settings);
  }

  /** A new daemon over the same log. */
  InventedShop restarted() {
    watch = newWatch();
    return this;
  }

  InventedShop lookAt(Duration sinceStart) {
    watch.judge(START.plus(sinceStart));
    return this;
  }

  /** Looks once a minute, both ends included. */
  InventedShop lookEveryMinute(int fromMin, int toMin) {
    for (int minute = fromMin; minute <= toMin; minute++) {
      lookAt(Duration.ofMinutes(minute));
    }
    return this;
  }

  List<Warning> openNow() {
    return watch.open();
  }

  List<String> openKinds() {
    return watch.open().stream().map(Warning::kind).toList();
  }

  // What the test sets.

  /** The wall sensor jumps; if it were right, clouding would stand so. */
  InventedShop jump(
      double tempC, double rhPct, Outlook.CloudingLevel level, double peakPct, double limitPct) {
    ifDoubtHolds = Optional.of(outlook(level, peakPct, limitPct));
    Reading jumped =
        new Reading(
            "wall",
            "wall",
            Role.ROOM,
            Optional.of("bench"),
            Optional.empty(),
            START,
            OptionalDouble.of(tempC),
            OptionalDouble.of(rhPct),
            OptionalDouble.empty(),
            0.3,
            2,
            List.of());
    doubt(new Doubt(jumped, "step of 8.0 K in 10 s"));
    return this;
  }

  /** The next reading was back where the air was. */
  InventedShop jumpWasASpike() {
    doubt = Optional.empty();
    ifDoubtHolds = Optional.empty();
    return this;
  }

  InventedShop coatAt(int minute) {
    Instant start = START.plus(Duration.ofMinutes(minute));
    return write(
        new Coat(
            DOOR,
            "a",
            "e1",
            start,
            Optional.empty(),
            "bench",
            Method.BRUSH,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty()),
        start);
  }

  InventedShop promise(LocalDate date) {
    return write(new Piece("cabinet", Optional.of("bench"), Optional.of(date)), START);
  }

  private InventedShop write(EntryBody body, Instant at) {
    entries.add(new Entry("e" + (entries.size() + 1), at, at, Optional.empty(), body));
    return this;
  }

  InventedShop due(String milestone, Instant p50) {
    due.removeIf(d -> d.milestone().equals(milestone));
    due.add(
        new Due(
            DOOR.toString(),
            milestone,
            Optional.of(p50),
            Optional.of(p50),
            Optional.of(p50),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            true,
            false));
    return this;
  }

  InventedShop air(double tempC, double rhPct) {
    air = Optional.of(MoistAir.of(tempC, rhPct));
    return this;
  }

  InventedShop noAir() {
    air = Optional.empty();
    outlook = cantTell();
    return this;
  }

  InventedShop woodC(double tempC, int atMinute) {
    wood = Optional.of(new WoodPoint(START.plus(Duration.ofMinutes(atMinute)), tempC, 0.3));
    return this;
  }

  InventedShop clouding(Outlook.CloudingLevel level, double waterPct, double limitPct) {
    outlook = outlook(level, waterPct, limitPct);
    // Another outlook comes of other air: it moves by half a kelvin to and fro.
    air = air.map(a -> MoistAir.of(a.airTempC() + (nudged ? -0.5 : 0.5), a.rhPct()));
    nudged = !nudged;
    return this;
  }

  InventedShop betterAt(int minute) {
    better = Optional.of(START.plus(Duration.ofMinutes(minute)));
    return this;
  }

  InventedShop disagreeing(boolean now) {
    disagree = now;
    return this;
  }

  InventedShop source(String name, SourceState state) {
    sources.removeIf(s -> s.source().equals(name));
    sources.add(
        new SourceStatus(
            name,
            "mqtt",
            Optional.of("bench"),
            Role.ROOM,
            state,
            Duration.ofMinutes(1),
            Optional.of(START),
            1,
            0,
            0,
            Optional.empty(),
            List.of()));
    return this;
  }

  InventedShop withoutSource(String name) {
    sources.removeIf(s -> s.source().equals(name));
    return this;
  }

  // WarningLog and Bell.

  @Override
  public void keep(Warning warning) {
    kept.removeIf(w -> w.id().equals(warning.id()));
    kept.add(warning);
  }

  @Override
  public List<Warning> between(Instant from, Instant to) {
    return kept.stream()
        .filter(w -> w.from().isBefore(to) && w.to().map(t -> t.isAfter(from)).orElse(true))
        .toList();
  }

  @Override
  public List<Warning> open() {
    return kept.stream().filter(w -> w.to().isEmpty()).toList();
  }

  @Override
  public void ring(Warning warning) {
    rung.add("begins " + warning.kind());
  }

  @Override
  public void end(Warning warning) {
    rung.add("ends " + warning.kind());
  }

  // Outlooks.

  @Override
  public SessionOutlook session(String room, Instant now) {
    return session(room, outlook);
  }

  @Override
  public Optional<SessionOutlook> sessionIfDoubtHolds(String room, Instant now) {
    return ifDoubtHolds.map(unsure -> session(room, unsure));
  }

  private SessionOutlook session(String room, Outlook outlook) {
    return new SessionOutlook(
        room,
        true,
        "shellac-pale",
        "Pale shellac",
        Optional.of("a"),
        Optional.of(DOOR.toString()),
        "brush",
        "",
        better,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Optional.empty(),
        outlook);
  }

  @Override
  public List<Due> due(Optional<String> piece) {
    return List.copyOf(due);
  }

  @Override
  public Outlook of(OutlookRequest request) {
    return outlook;
  }

  @Override
  public Outlook ofPart(NextCoat next, Instant now) {
    return outlook;
  }

  @Override
  public BrushingWindows windows(WindowQuestion question, Instant now) {
    throw new UnsupportedOperationException("nothing is warned of by windows");
  }

  @Override
  public Optional<AirForecast> forecast(String room) {
    return Optional.empty();
  }

  @Override
  public void refresh(Instant now, String reason) {}

  @Override
  public void onDue(Consumer<List<Due>> listener) {}

  // Climate.

  @Override
  public List<String> rooms() {
    return List.of("bench");
  }

  @Override
  public RoomAir now(String room) {
    return new RoomAir(
        room,
        air.map(a -> point(a, START)),
        wood,
        Optional.of(Duration.ZERO),
        List.of("wall", "rack"),
        disagree,
        Optional.empty());
  }

  @Override
  public AirSeries series(String room, Instant from, Instant to) {
    return new AirSeries(
        room,
        from,
        to,
        air.map(a -> List.of(point(a, from))).orElse(List.of()),
        air.isPresent() ? List.of() : List.of(new coatwright.climate.Gap(from, to)));
  }

  private static AirPoint point(MoistAir a, Instant at) {
    return new AirPoint(at, a.airTempC(), a.rhPct(), a.dewPointC(), a.vapourPressurePa(), 0.2, 2);
  }

  @Override
  public void accept(Reading reading) {
    throw new UnsupportedOperationException("the test sets the air");
  }

  @Override
  public List<WoodPoint> wood(String room, Optional<String> part, Instant from, Instant to) {
    return wood.map(List::of).orElse(List.of());
  }

  @Override
  public Optional<AirSeries> expected(String room, Instant from, Instant to) {
    return Optional.empty();
  }

  @Override
  public void onReading(Consumer<Reading> listener) {}

  @Override
  public void doubt(Doubt doubtful) {
    doubt = Optional.of(doubtful);
  }

  @Override
  public Optional<Doubt> doubted(String room) {
    return doubt;
  }

  @Override
  public void onDoubt(Consumer<Doubt> listener) {}

  // Journal.

  @Override
  public List<Entry> entries() {
    return List.copyOf(entries);
  }

  @Override
  public Optional<Entry> entry(String id) {
    return entries.stream().filter(e -> e.id().equals(id)).findFirst();
  }

  @Override
  public Optional<Entry> struckBy(String id) {
    return Optional.empty();
  }

  @Override
  public List<Piece> pieces() {
    return entries.stream()
        .flatMap(
            e ->
                e.body() instanceof Piece piece
                    ? List.of(piece).stream()
                    : java.util.stream.Stream.empty())
        .toList();
  }

  @Override
  public List<Part> parts(String piece) {
    return List.of();
  }

  @Override
  public Optional<Part> part(PartPath path) {
    return Optional.empty();
  }

  @Override
  public List<Entry> jars() {
    return List.of();
  }

  @Override
  public List<Entry> coats(PartPath path) {
    return coats();
  }

  @Override
  public List<Entry> coats() {
    return entries.stream().filter(e -> e.body() instanceof Coat).toList();
  }

  @Override
  public List<Entry> observations(PartPath path) {
    return List.of();
  }

  @Override
  public List<Entry> write(List<Ledger.Line> lines) {
    throw new UnsupportedOperationException("the test writes");
  }

  @Override
  public void onEntry(Consumer<Entry> listener) {}

  // Ready-made parts.

  private static Outlook outlook(Outlook.CloudingLevel level, double waterPct, double limitPct) {
    return outlook(
        level == Outlook.CloudingLevel.LIKELY ? Outlook.Summary.HOLD_OFF : Outlook.Summary.BRUSH,
        Optional.of(
            new Outlook.Clouding(
                level,
                OptionalDouble.of(-2.4),
                OptionalDouble.of(21.8),
                24.2,
                3.8,
                OptionalDouble.of(waterPct),
                OptionalDouble.of(limitPct),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty())));
  }

  private static Outlook cantTell() {
    return outlook(Outlook.Summary.CANT_TELL, Optional.empty());
  }

  private static Outlook outlook(Outlook.Summary summary, Optional<Outlook.Clouding> clouding) {
    return new Outlook(
        summary,
        "",
        "clouding",
        Optional.empty(),
        clouding,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        OptionalDouble.empty(),
        List.of(),
        List.of(),
        List.of(),
        new Outlook.Model("film/shellac", "1"));
  }

  static final Finish FINISH =
      new Finish(
          "shellac-pale",
          "Pale shellac",
          Layer.SHELLAC,
          new SpiritDrying(FilmParameters.SHELLAC, 180, 0.2, 95),
          20,
          50,
          Map.of("brush", 75.0),
          0.2,
          10,
          35,
          OptionalDouble.empty(),
          6,
          100,
          "",
          List.of(),
          List.of(),
          List.of(),
          List.of());
}
