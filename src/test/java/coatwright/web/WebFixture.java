package coatwright.web;

import coatwright.climate.Doubt;
import coatwright.climate.Happening;
import coatwright.climate.MemoryReadingLog;
import coatwright.climate.RawText;
import coatwright.climate.Reading;
import coatwright.climate.Role;
import coatwright.climate.SourceState;
import coatwright.climate.SourceStatus;
import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.Layer;
import coatwright.film.SpiritDrying;
import coatwright.journal.SaltBook;
import coatwright.outlook.Due;
import coatwright.outlook.OutlookRequest;
import coatwright.quantity.Quantities;
import coatwright.quantity.UnitSystem;
import coatwright.review.Why;
import coatwright.watch.Warning;
import coatwright.watch.Watch;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.UnaryOperator;

/** A small invented shop behind a real web door on a free port. */
final class WebFixture implements AutoCloseable {
  static final String FINISHING = "finishing room";
  static final String BENCH = "bench room";
  static final ZoneId ZONE = ZoneId.of("Europe/Dublin");

  final MovableClock clock = new MovableClock(Instant.parse("2026-07-14T14:20:30Z"));
  final InMemoryClimate climate = new InMemoryClimate(List.of(FINISHING, BENCH), clock);
  final InMemoryJournal journal = new InMemoryJournal(clock);
  final InMemoryOutlooks outlooks = new InMemoryOutlooks(climate, journal);
  final List<Warning> warnings = new CopyOnWriteArrayList<>();
  final StandingHygrometers hygrometers = new StandingHygrometers();
  final MemoryReadingLog readings = new MemoryReadingLog();
  final WebServer server;

  WebFixture() {
    this(WebSettings.loopback(0));
  }

  /** What a test has the review say instead. */
  volatile UnaryOperator<Why> reviewed = UnaryOperator.identity();

  static final List<Happening> HAPPENED =
      List.of(
          new Happening(
              Instant.parse("2026-03-14T07:00:00Z"),
              "away",
              "Coatwright did not run from 2026-03-14 06:00:00 to 2026-03-14 07:00:00"));

  volatile Optional<String> storeTrouble = Optional.empty();

  volatile List<MirrorView> mirrors = List.of();

  WebFixture(WebSettings settings) {
    server =
        new WebServer(
            new WebRooms(
                climate,
                journal,
                journal,
                new SaltBook(journal, hygrometers, clock, ZONE),
                readings,
                outlooks,
                watch(),
                coat -> reviewed.apply(why(coat)),
                Map.of("shellac-pale", shellac()),
                this::sources,
                () -> storeTrouble,
                () -> mirrors,
                () -> "none yet",
                (from, to) -> HAPPENED,
                WebFixture::request,
                "Harbour Lane workshop",
                ZONE,
                UnitSystem.METRIC,
                true,
                clock),
            settings);
    furnish();
    server.start();
  }

  /** A clock that stands until it is moved. */
  static final class MovableClock extends Clock {
    private volatile Instant now;

    MovableClock(Instant now) {
      this.now = now;
    }

    void moveTo(Instant instant) {
      now = instant;
    }

    void advance(Duration step) {
      now = now.plus(step);
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZONE;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return Clock.fixed(now, zone);
    }
  }

  String address() {
    return "http://127.0.0.1:" + server.port();
  }

  void reading(String room, Instant at, double tempC, double rhPct, OptionalDouble woodC) {
    climate.accept(
        new Reading(
            room + " wall",
            room + " wall",
            Role.ROOM,
            Optional.of(room),
            Optional.empty(),
            at,
            OptionalDouble.of(tempC),
            OptionalDouble.of(rhPct),
            woodC,
            0.2,
            2,
            List.of()));
  }

  /** A reading that jumped, and waits for the next to agree. */
  void jump(String room, Instant at, double tempC, double rhPct) {
    climate.doubt(
        new Doubt(
            new Reading(
                room + " wall",
                room + " wall",
                Role.ROOM,
                Optional.of(room),
                Optional.empty(),
                at,
                OptionalDouble.of(tempC),
                OptionalDouble.of(rhPct),
                OptionalDouble.empty(),
                0.2,
                2,
                List.of()),
            "step of 8.0 K in 10 s"));
  }

  private void furnish() {
    Instant now = clock.instant();
    for (long minute = 48 * 60; minute >= 0; minute -= 5) {
      Instant at = now.minus(Duration.ofMinutes(minute)).minusSeconds(12);
      double day = Math.sin(2 * Math.PI * (at.getEpochSecond() % 86_400 - 32_400) / 86_400);
      boolean silent = minute > 9 * 60 + 20 && minute < 11 * 60;
      if (!silent) {
        double airC = 19.2 + 2.6 * day;
        reading(FINISHING, at, airC, 56 - 9 * day, OptionalDouble.of(18.3 + 1.7 * day));
        reading(BENCH, at, 18.1 + 3.4 * day, 61 - 8 * day, OptionalDouble.empty());
      }
    }
    journal.jar(Map.of("name", "pale-2", "finish", "shellac-pale"));
    journal.piece(Map.of("name", "wall cabinet", "room", FINISHING));
    journal.part(Map.of("part", "wall cabinet/left door", "species", "cherry"));
    journal.part(Map.of("part", "wall cabinet/right door", "species", "cherry"));
    journal.part(Map.of("part", "wall cabinet/carcase", "species", "cherry"));
    journal.piece(Map.of("name", "stools", "room", BENCH));
    journal.part(Map.of("part", "stools/first", "species", "ash"));
    clock.moveTo(now.minus(Duration.ofHours(26)));
    journal.coat(
        Map.of("part", "wall cabinet/carcase,stools/first", "jar", "pale-2", "room", BENCH));
    clock.moveTo(now.minus(Duration.ofMinutes(75)));
    journal.coat(Map.of("part", "wall cabinet/left door,wall cabinet/right door", "jar", "pale-2"));
    clock.moveTo(now);
    outlooks.expect(milestones(now));
    warnings.add(
        new Warning(
            "w1",
            "slow-cure",
            now.minus(Duration.ofHours(3)),
            Optional.empty(),
            Optional.of(BENCH),
            Optional.of("stools/first"),
            "stools/first dries slowly in the bench room (0.4 of its usual pace); bring it to the"
                + " finishing room, or rub out no sooner than 24 July."));
  }

  static Due due(
      Instant now, String part, String milestone, double p10H, double p50H, double p90H) {
    return new Due(
        part,
        milestone,
        Optional.of(plus(now, p10H)),
        Optional.of(plus(now, p50H)),
        Optional.of(plus(now, p90H)),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        test(milestone),
        true,
        milestone.equals("dry hard") || milestone.equals("wrap"));
  }

  private static Optional<String> test(String milestone) {
    return switch (milestone) {
      case "dry to recoat" -> Optional.of("touch it, then sand a corner: it should powder");
      case "dry hard" -> Optional.of("press a thumbnail where it will not show: no dent");
      case "rub out" -> Optional.of("sand a corner to powder, and smell it close up");
      case "wrap" -> Optional.of("cloth and a weight overnight: no print");
      default -> Optional.empty();
    };
  }

  private static Instant plus(Instant now, double hours) {
    return now.plusSeconds(Math.round(hours * 3600));
  }

  private static List<Due> milestones(Instant now) {
    List<Due> all = new ArrayList<>();
    for (String part : List.of("wall cabinet/left door", "wall cabinet/right door")) {
      all.add(due(now, part, "dry to recoat", -0.6, -0.2, 0.3));
      all.add(due(now, part, "dry hard", 5, 8.5, 14));
      all.add(due(now, part, "rub out", 60, 96, 180));
      all.add(due(now, part, "wrap", 140, 230, 420));
      all.add(due(now, part, "full hardness", 300, 520, 900));
    }
    Due moved = due(now, "wall cabinet/carcase", "rub out", 40, 74, 130);
    all.add(
        new Due(
            moved.part(),
            moved.milestone(),
            moved.p10(),
            moved.p50(),
            moved.p90(),
            moved.until(),
            Optional.of(plus(now, 51)),
            Optional.of("two nights below 15 °C in the bench room"),
            moved.test(),
            true,
            false));
    all.add(
        new Due(
            "stools/first",
            "rub out",
            Optional.of(plus(now, 300)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of("the bench room has stood at 68 % since Sunday"),
            test("rub out"),
            false,
            false));
    return all;
  }

  private Watch watch() {
    return new Watch() {
      @Override
      public void judge(Instant now) {}

      @Override
      public List<Warning> open() {
        return List.copyOf(warnings);
      }

      @Override
      public List<Warning> between(Instant from, Instant to) {
        return warnings.stream().filter(warning -> warning.from().isBefore(to)).toList();
      }
    };
  }

  private Why why(String coat) {
    Instant start = clock.instant().minus(Duration.ofMinutes(75));
    List<Why.Air> air = new ArrayList<>();
    for (int minute = -30; minute <= 90; minute++) {
      air.add(
          new Why.Air(
              start.plus(Duration.ofMinutes(minute)),
              18.4 - 0.01 * minute,
              84 + 0.04 * minute,
              15.7,
              OptionalDouble.of(16.2)));
    }
    return new Why(
        coat,
        "wall cabinet/left door",
        "The film clouded because the wood stood only 0.5 K above the dew point when the spirit"
            + " chilled it.",
        Why.AirAtFault.YES,
        air,
        List.of(),
        Optional.of(
            new Why.Saw(
                "fixture", "1", "likely", told(18.9), told(13.4), 11.0, 15.7, 0.5, told(1900))),
        List.of(
            new Why.Counterfactual(
                "wood 5 K warmer", "16.2 °C", "21.2 °C", "possible", told(15.9), told(14.9), true),
            new Why.Counterfactual(
                "air dried", "84 %", "55 %", "none expected", told(11.9), told(15.8), true)),
        List.of("Jar pale-2 is 5 weeks old; its drop test is due at 6 months."),
        List.of("Never heat a wet spirit film."));
  }

  private static OptionalDouble told(double value) {
    return OptionalDouble.of(value);
  }

  private List<SourceStatus> sources() {
    Instant now = clock.instant();
    return List.of(
        source("finishing-wall", "mqtt", FINISHING, SourceState.CURRENT, now, Optional.empty()),
        source("bench-wall", "mqtt", BENCH, SourceState.CURRENT, now, Optional.empty()),
        source(
            "rack",
            "serial",
            FINISHING,
            SourceState.LOST,
            now.minus(Duration.ofHours(5)),
            Optional.of("unplugged 5 h ago; plug the adapter in again")));
  }

  private static SourceStatus source(
      String name,
      String transport,
      String room,
      SourceState state,
      Instant last,
      Optional<String> trouble) {
    return new SourceStatus(
        name,
        transport,
        Optional.of(room),
        Role.ROOM,
        state,
        Duration.ofMinutes(1),
        Optional.of(last.minusSeconds(12)),
        2_880,
        3,
        1,
        trouble,
        List.of(
            new RawText(
                name,
                "shop/" + name,
                last.minusSeconds(7_200),
                "{\"t\":851}",
                "refused",
                Optional.of("851 °C is above 125 °C, the most this chip can mean"))));
  }

  private static OutlookRequest request(Map<String, String> words, Map<String, Finish> finishes) {
    String[] air = words.getOrDefault("air", "").split(",", 2);
    return new OutlookRequest(
        finishes.values().iterator().next(),
        Quantities.temperatureC("air", air[0]),
        Quantities.relativeHumidityPct("air", air.length > 1 ? air[1] : ""),
        101_325,
        0.3,
        2,
        OptionalDouble.empty(),
        0.5,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "brush",
        OptionalDouble.empty(),
        0,
        Optional.empty(),
        0.1,
        0,
        15,
        19,
        OptionalDouble.empty(),
        List.of());
  }

  private static Finish shellac() {
    return new Finish(
        "shellac-pale",
        "Pale shellac, dewaxed",
        Layer.SHELLAC,
        new SpiritDrying(FilmParameters.SHELLAC, 180, 0.2, 95),
        20,
        50,
        Map.of("brush", 75.0),
        0.25,
        10,
        35,
        OptionalDouble.empty(),
        6,
        150,
        "dewaxed",
        List.of(Layer.BARE_WOOD),
        List.of(Layer.SHELLAC),
        List.of("common practice, no source"),
        List.of("Read the safety data sheet."));
  }

  @Override
  public void close() {
    server.close();
  }
}
