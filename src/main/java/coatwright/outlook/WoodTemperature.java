package coatwright.outlook;

import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.climate.WoodPoint;
import coatwright.journal.Journal;
import coatwright.journal.Observation;
import coatwright.journal.PartPath;
import coatwright.quantity.Show;
import coatwright.quantity.UnitSystem;
import coatwright.wood.Board;
import coatwright.wood.BoardLag;
import coatwright.wood.BoardWarming;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How warm the wood is: by a probe, by what was entered, or lagging behind the room's air as heat
 * creeps into a board.
 *
 * @param woodTempC °C
 * @param errorK standard uncertainty, K
 * @param from where it is from, in words, with its age
 * @param measured a probe or a person says so
 */
record WoodTemperature(double woodTempC, double errorK, String from, boolean measured) {
  private static final Duration PROBE_AGE = Duration.ofMinutes(60);
  private static final Duration ENTERED_AGE = Duration.ofMinutes(60);
  private static final Duration HISTORY = Duration.ofHours(24);

  /**
   * A probe against wood errs by several tenths of a kelvin at best; common practice, no source.
   */
  private static final double CONTACT_ERROR_K = 0.5;

  /** One board of the room stands for another. */
  private static final double OTHER_BOARD_ERROR_K = 1.0;

  /** How far two boards that lag alike may differ; assumed. */
  private static final double LAG_ERROR_K = 0.7;

  /** A board that came from elsewhere within the day; assumed. */
  private static final double START_ERROR_K = 5;

  /** Told how warm the wood is, how sure a person can be of it. */
  private static final double STORE_ERROR_K = 1.5;

  /**
   * When the wood came into the room, and how warm it was where it had been stored.
   *
   * @param storedTempC °C
   */
  record CarriedIn(double storedTempC, Instant at) {
    /** The newest such note on a part within a day before that instant. */
    static Optional<CarriedIn> noted(Journal journal, PartPath part, Instant before) {
      return journal.observations(part).stream()
          .filter(entry -> !entry.at().isAfter(before))
          .filter(entry -> entry.at().isAfter(before.minus(HISTORY)))
          .filter(entry -> ((Observation) entry.body()).storedTempC().isPresent())
          .reduce((first, second) -> second)
          .map(
              entry ->
                  new CarriedIn(
                      ((Observation) entry.body()).storedTempC().getAsDouble(), entry.at()));
    }
  }

  /** What a person entered. */
  record Entered(double woodTempC, Instant at) {}

  /**
   * The wood's temperature by the best that is known of it.
   *
   * @param entered on the coat itself or lately on the part
   * @return empty when neither probe, person nor the room's history can tell
   */
  static Optional<WoodTemperature> at(
      Climate climate,
      String room,
      Optional<String> part,
      Optional<Entered> entered,
      Optional<CarriedIn> carried,
      Instant at,
      PartWood wood) {
    Optional<WoodTemperature> told = entered.flatMap(e -> told(e, at));
    if (told.isPresent() && entered.get().at().equals(at)) {
      return told;
    }
    Optional<WoodTemperature> found = part.flatMap(p -> probe(climate, room, Optional.of(p), at));
    if (found.isEmpty()) {
      found = told;
    }
    if (found.isEmpty() && carried.isPresent()) {
      return carried(climate, room, carried.get(), at, wood);
    }
    if (found.isEmpty()) {
      found = probe(climate, room, Optional.empty(), at);
    }
    return found.isPresent() ? found : lagged(climate, room, at, wood);
  }

  /** Heat creeping into a board that was carried in from somewhere colder or warmer. */
  private static Optional<WoodTemperature> carried(
      Climate climate, String room, CarriedIn carried, Instant at, PartWood wood) {
    List<AirPoint> points = climate.series(room, carried.at(), at.plusMillis(1)).points();
    if (points.isEmpty()) {
      return Optional.empty();
    }
    Board board = wood.board();
    double since = Math.max(0, AirRecord.seconds(carried.at(), at));
    AirRecord.Knots knots = new AirRecord.Knots(carried.at());
    knots.add(0, points.get(0).airTempC(), points.get(0).rhPct() / 100);
    points.forEach(knots::add);
    double faceC;
    if (knots.size() < 2) {
      double airC = points.get(0).airTempC();
      faceC =
          carried.storedTempC()
              + BoardWarming.faceShare(board, since) * (airC - carried.storedTempC());
    } else {
      var air = knots.course(0);
      double[] faces =
          BoardLag.surfaceTempsC(board, air.timeS(), air.airTempC(), carried.storedTempC());
      faceC = faces[faces.length - 1];
    }
    double left = Math.exp(-since / BoardLag.timeConstantS(board));
    double error =
        Math.sqrt(
            sq(LAG_ERROR_K)
                + sq(STORE_ERROR_K * left)
                + sq(points.get(points.size() - 1).temperatureErrorK()));
    String from =
        "reckoned from where it was stored, %s, and %s of the room's air for %s (±%s K)"
            .formatted(
                Show.temperature(carried.storedTempC(), UnitSystem.METRIC),
                Show.duration(Duration.ofSeconds((long) since)),
                wood.words(),
                Show.fixed(error, 1));
    return Optional.of(new WoodTemperature(faceC, error, from, false));
  }

  private static Optional<WoodTemperature> told(Entered e, Instant at) {
    Duration age = Duration.between(e.at(), at);
    if (age.isNegative() || age.compareTo(ENTERED_AGE) > 0) {
      return Optional.empty();
    }
    double error = Math.hypot(CONTACT_ERROR_K, age.toMinutes() / 60.0);
    String when = age.isZero() ? "entered with the coat" : "entered " + ago(age);
    return Optional.of(new WoodTemperature(e.woodTempC(), error, when, true));
  }

  private static Optional<WoodTemperature> probe(
      Climate climate, String room, Optional<String> part, Instant at) {
    List<WoodPoint> points =
        climate.wood(room, part, at.minus(PROBE_AGE), at.plus(Duration.ofSeconds(1)));
    if (points.isEmpty()) {
      return Optional.empty();
    }
    WoodPoint newest = points.get(points.size() - 1);
    Duration age = Duration.between(newest.at(), at);
    double other = part.isPresent() ? 0 : OTHER_BOARD_ERROR_K;
    double error =
        Math.sqrt(
            sq(Math.max(CONTACT_ERROR_K, newest.errorK()))
                + sq(other)
                + sq(age.toMinutes() / 60.0));
    String whose = part.isPresent() ? "measured on the part " : "measured on a board in the room ";
    return Optional.of(new WoodTemperature(newest.woodTempC(), error, whose + ago(age), true));
  }

  private static double sq(double v) {
    return v * v;
  }

  private static String ago(Duration age) {
    return age.toMinutes() < 1 ? "just now" : Show.duration(age) + " before";
  }

  /** Heat creeping into a board that lies on its back in the room's air. */
  static Optional<WoodTemperature> lagged(Climate climate, String room, Instant at, PartWood wood) {
    AirSeries series = climate.series(room, at.minus(HISTORY), at.plusMillis(1));
    List<AirPoint> points = series.points();
    if (points.size() < 2) {
      return Optional.empty();
    }
    AirRecord.Knots knots = new AirRecord.Knots(at);
    points.forEach(knots::add);
    if (knots.size() < 2) {
      return Optional.empty();
    }
    var air = knots.course(0);
    air = knots.size() > 2 ? air.thinned(0.2, 0.5) : air;
    Board board = wood.board();
    double[] timeS = air.timeS();
    double[] airC = air.airTempC();
    double[] surfaceC = BoardLag.surfaceTempsC(board, timeS, airC, airC[0]);
    double known = timeS[timeS.length - 1] - timeS[0];
    double fromElsewhere = START_ERROR_K * Math.exp(-known / BoardLag.timeConstantS(board));
    AirPoint last = points.get(points.size() - 1);
    double error = Math.sqrt(sq(LAG_ERROR_K) + sq(fromElsewhere) + sq(last.temperatureErrorK()));
    String from =
        String.format(
            Locale.ROOT,
            "reckoned from %s of the room's air for %s (±%.1f K)",
            Show.duration(Duration.ofSeconds((long) known)),
            wood.words(),
            error);
    return Optional.of(new WoodTemperature(surfaceC[surfaceC.length - 1], error, from, false));
  }

  /** By how much the air moved between its warmest and its coldest over three hours, K. */
  static OptionalDouble airMovedK(Climate climate, String room, Instant at) {
    List<AirPoint> points =
        climate.series(room, at.minus(Duration.ofHours(3)), at.plusMillis(1)).points();
    if (points.isEmpty()) {
      return OptionalDouble.empty();
    }
    double low = points.stream().mapToDouble(AirPoint::airTempC).min().getAsDouble();
    double high = points.stream().mapToDouble(AirPoint::airTempC).max().getAsDouble();
    return OptionalDouble.of(high - low);
  }
}
