package coatwright.watch;

import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.film.CureMoment;
import coatwright.film.CureSigns;
import coatwright.film.Curing;
import coatwright.film.Finish;
import coatwright.film.SolventDrying;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Jar;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.journal.Piece;
import coatwright.outlook.Due;
import coatwright.outlook.Outlooks;
import coatwright.quantity.Show;
import coatwright.watch.Sign.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/**
 * Slow cure: the air is colder than the date assumed while a film still hardens. A piece with a
 * promise is warned of when its rub-out falls behind the promise for that reason; a room whose
 * films have no promise when the cold alone makes a third more of the wait.
 *
 * <p>The date assumes the finish's reference air. Humidity is left out: in the models it hardly
 * moves the hardening.
 */
final class SlowCureSigns {
  private static final String KIND = "slow-cure";
  private static final String RUB_OUT = "rub out";
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double ZERO_CELSIUS_K = 273.15;
  private static final double USUAL_WET_UM = 75;

  private final Outlooks outlooks;
  private final Climate climate;
  private final Journal journal;
  private final Function<String, Optional<Finish>> finishes;
  private final WatchSettings settings;

  SlowCureSigns(
      Outlooks outlooks,
      Climate climate,
      Journal journal,
      Function<String, Optional<Finish>> finishes,
      WatchSettings settings) {
    this.outlooks = outlooks;
    this.climate = climate;
    this.journal = journal;
    this.finishes = finishes;
    this.settings = settings;
  }

  /** A film that still hardens, and where. */
  private record Hardening(Due due, PartPath part, String room, Finish finish) {}

  List<Sign> look(Instant now) {
    List<Hardening> films = curing(now);
    Map<String, OptionalDouble> airC = new LinkedHashMap<>();
    for (Hardening film : films) {
      airC.computeIfAbsent(film.room(), room -> meanAirC(room, now));
    }
    List<Sign> signs = new ArrayList<>();
    Set<String> promised = new LinkedHashSet<>();
    for (Piece piece : journal.pieces()) {
      if (piece.promise().isPresent()) {
        promised.add(piece.name());
        latest(films, piece.name())
            .ifPresent(film -> signs.add(promise(piece.promise().get(), film, airC)));
      }
    }
    Map<String, Hardening> byRoom = new LinkedHashMap<>();
    for (Hardening film : films) {
      if (!promised.contains(film.part().piece())) {
        byRoom.putIfAbsent(film.room(), film);
      }
    }
    byRoom.forEach((room, film) -> signs.add(unpromised(film, airC)));
    return signs;
  }

  private List<Hardening> curing(Instant now) {
    List<Hardening> films = new ArrayList<>();
    for (Due due : outlooks.due(Optional.empty())) {
      boolean ahead = due.p50().map(at -> at.isAfter(now)).orElse(!due.reached());
      if (!due.milestone().equals(RUB_OUT) || !ahead) {
        continue;
      }
      PartPath part = PartPath.parse(due.part());
      List<Entry> coats = journal.coats(part);
      if (!coats.isEmpty() && coats.get(coats.size() - 1).body() instanceof Coat coat) {
        finish(coat).ifPresent(finish -> films.add(new Hardening(due, part, coat.room(), finish)));
      }
    }
    return films;
  }

  private Optional<Finish> finish(Coat coat) {
    return journal
        .entry(coat.jarEntry())
        .flatMap(
            e -> e.body() instanceof Jar jar ? finishes.apply(jar.finish()) : Optional.empty());
  }

  /** Mean over the last hours; empty when more than half of them are not known. */
  private OptionalDouble meanAirC(String room, Instant now) {
    if (!climate.rooms().contains(room)) {
      return OptionalDouble.empty();
    }
    AirSeries series = climate.series(room, now.minus(settings.coldOver()), now.plusSeconds(1));
    Duration unknown =
        series.gaps().stream().map(g -> g.length()).reduce(Duration.ZERO, Duration::plus);
    if (unknown.multipliedBy(2).compareTo(settings.coldOver()) > 0) {
      return OptionalDouble.empty();
    }
    return series.points().stream().mapToDouble(AirPoint::airTempC).average();
  }

  private static Optional<Hardening> latest(List<Hardening> films, String piece) {
    Hardening latest = null;
    for (Hardening film : films) {
      if (film.part().piece().equals(piece)
          && (latest == null || date(film).isAfter(date(latest)))) {
        latest = film;
      }
    }
    return Optional.ofNullable(latest);
  }

  private static Instant date(Hardening film) {
    return film.due().p50().orElse(Instant.MAX);
  }

  private Sign promise(LocalDate promise, Hardening film, Map<String, OptionalDouble> airC) {
    Instant kept = promise.plusDays(1).atStartOfDay(settings.zone()).toInstant();
    OptionalDouble air = airC.getOrDefault(film.room(), OptionalDouble.empty());
    double coldK = air.isPresent() ? film.finish().referenceTempC() - air.getAsDouble() : 0;
    boolean inTime = date(film).isBefore(kept.minus(settings.promiseSlack()));
    Verdict verdict;
    if (air.isEmpty()) {
      verdict = Verdict.UNKNOWN;
    } else if (inTime || coldK < settings.coldEndK()) {
      verdict = Verdict.CLEAR;
    } else {
      boolean late = !date(film).isBefore(kept);
      verdict = late && coldK > settings.coldBeginK() ? Verdict.ON : Verdict.BETWEEN;
    }
    String when =
        film.due()
            .p50()
            .map(at -> "ready to rub out about " + ShopTime.day(at, settings.zone()))
            .orElse("not ready to rub out within the time looked ahead");
    String message =
        air.isEmpty()
            ? ""
            : "Slow cure: %s is %s, promised for %s; %s has been %s °C where the date assumed %s °C (a day there counts as %s); warm the room once no film is wet, or move the date"
                .formatted(
                    film.part(),
                    when,
                    ShopTime.day(
                        promise.atStartOfDay(settings.zone()).toInstant(), settings.zone()),
                    film.room(),
                    Show.fixed(air.getAsDouble(), 1),
                    Show.fixed(film.finish().referenceTempC(), 0),
                    Show.fixed(rate(film.finish(), air.getAsDouble()), 2));
    return sign("piece/" + film.part().piece(), film, verdict, message);
  }

  private Sign unpromised(Hardening film, Map<String, OptionalDouble> airC) {
    OptionalDouble air = airC.getOrDefault(film.room(), OptionalDouble.empty());
    if (air.isEmpty()) {
      return sign("room/" + film.room(), film, Verdict.UNKNOWN, "");
    }
    double coldK = film.finish().referenceTempC() - air.getAsDouble();
    Verdict verdict =
        coldK > settings.coldUnpromisedBeginK()
            ? Verdict.ON
            : coldK < settings.coldUnpromisedEndK() ? Verdict.CLEAR : Verdict.BETWEEN;
    String message =
        "Slow cure in %s: it has been %s °C over the last %s where the dates assumed %s °C, and a day there counts as %s; warm the room once no film is wet, or wait by the test, not the clock"
            .formatted(
                film.room(),
                Show.fixed(air.getAsDouble(), 1),
                Show.duration(settings.coldOver()),
                Show.fixed(film.finish().referenceTempC(), 0),
                Show.fixed(rate(film.finish(), air.getAsDouble()), 2));
    return sign("room/" + film.room(), film, verdict, message);
  }

  private Sign sign(String what, Hardening film, Verdict verdict, String message) {
    return new Sign(
        KIND + "/" + what,
        KIND,
        Optional.of(film.room()),
        Optional.of(film.part().toString()),
        verdict,
        0,
        message,
        settings.coldHold(),
        settings.coldHold());
  }

  /**
   * Hardening here over hardening at the reference: by the activation energy of the finish's set,
   * or by the clock of a finish that cures, in the humidity its dates assume.
   */
  static double rate(Finish finish, double airTempC) {
    double referenceTempC = finish.referenceTempC();
    if (finish.drying() instanceof SolventDrying drying) {
      double energy = drying.parameters().diffusion().glassEnergyJPerMol();
      return Math.exp(
          -energy
              / GAS_CONSTANT
              * (1 / (airTempC + ZERO_CELSIUS_K) - 1 / (referenceTempC + ZERO_CELSIUS_K)));
    }
    double wetUm = finish.wetFilmUmByMethod().getOrDefault("brush", USUAL_WET_UM);
    CureMoment there = CureMoment.of(airTempC, finish.referenceRhPct(), airTempC, wetUm);
    return CureSigns.at((Curing) finish.drying(), there).ratioToReference();
  }
}
