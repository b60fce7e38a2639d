package coatwright.demo;

import coatwright.air.SaturationPressure;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * The air of the invented shop, minute by minute: a mild coast outside, two rooms that follow it
 * through walls, a heater with working hours, and one evening of fog with the door open. The rooms
 * are first-order lags in temperature and vapour pressure; all figures are invented.
 *
 * <p>The same seed and start give the same air, however often and in whatever order it is asked.
 * Safe for many threads.
 */
final class InventedAir {
  private static final Duration STEP = Duration.ofMinutes(1);
  private static final LocalTime HEAT_ON = LocalTime.of(6, 30);
  private static final LocalTime HEAT_OFF = LocalTime.of(19, 0);
  private static final double WAVES_PER_DAY = 2 * Math.PI;
  private static final int WAVES = 3;
  private static final double MOST_RH = 0.97;

  private final Instant start;
  private final ZoneId zone;
  private final Instant workFrom;
  private final Instant fogFrom;
  private final Instant fogTo;
  private final double[] wavePhase = new double[2 * WAVES];
  private final Room finishing = new Room(20.0, 110, 1.3);
  private final Room bench = new Room(18.5, 160, 2.0);
  private final List<Moment> minutes = new ArrayList<>();
  private double woodTempC = 18;

  /** Both rooms and the wood on the rack at one minute. */
  record Moment(RoomMoment finishing, RoomMoment bench, double woodTempC) {}

  /** A room at one minute. */
  record RoomMoment(double airTempC, double rhPct) {}

  /**
   * @param start where the air begins
   * @param workFrom somebody is at work from here on, and keeps the heater on at any hour
   * @param fogFrom the evening of fog
   */
  InventedAir(
      long seed, Instant start, ZoneId zone, Instant workFrom, Instant fogFrom, Instant fogTo) {
    this.start = start;
    this.workFrom = workFrom;
    this.zone = zone;
    this.fogFrom = fogFrom;
    this.fogTo = fogTo;
    Random random = new Random(seed);
    for (int i = 0; i < wavePhase.length; i++) {
      wavePhase[i] = random.nextDouble() * 2 * Math.PI;
    }
  }

  /** The air of the minute an instant falls in; before the start, that of the start. */
  synchronized Moment at(Instant when) {
    int minute = Math.max(0, (int) Duration.between(start, when).toMinutes());
    while (minutes.size() <= minute) {
      minutes.add(next(start.plus(STEP.multipliedBy(minutes.size()))));
    }
    return minutes.get(minute);
  }

  private Moment next(Instant when) {
    boolean fog = !when.isBefore(fogFrom) && when.isBefore(fogTo);
    double outsideC = fog ? 17.5 : outsideTempC(when);
    double outsidePa =
        SaturationPressure.overWaterPa(fog ? 16.6 : Math.min(outsideDewPointC(when), outsideC));
    LocalTime time = when.atZone(zone).toLocalTime();
    boolean heated = (time.isAfter(HEAT_ON) && time.isBefore(HEAT_OFF)) || when.isAfter(workFrom);
    RoomMoment inFinishing = finishing.step(outsideC, outsidePa, heated, fog);
    RoomMoment inBench = bench.step(outsideC, outsidePa, heated, false);
    woodTempC += (inFinishing.airTempC() - woodTempC) / 45;
    return new Moment(inFinishing, inBench, woodTempC);
  }

  private double outsideTempC(Instant when) {
    ZonedDateTime local = when.atZone(zone);
    double hour = local.getHour() + local.getMinute() / 60.0;
    return 12.5 + 3.0 * Math.cos(WAVES_PER_DAY * (hour - 15) / 24) + weather(when, 0, 2.2);
  }

  private double outsideDewPointC(Instant when) {
    return 8.0 + weather(when, WAVES, 2.0);
  }

  /** Fronts passing: three waves of some days each. */
  private double weather(Instant when, int firstPhase, double amplitude) {
    double days = Duration.between(start, when).toMinutes() / 1440.0;
    double sum = 0;
    for (int i = 0; i < WAVES; i++) {
      double period = 3.1 + 2.3 * i;
      sum += Math.sin(WAVES_PER_DAY * days / period + wavePhase[firstPhase + i]) / (1 + 0.5 * i);
    }
    return amplitude * sum / 2;
  }

  /** One room: how warm it is kept, how much water is given off in it, how tight it is. */
  private static final class Room {
    private final double keptC;
    private final double givenOffPa;
    private final double tightness;
    private double airTempC;
    private double vapourPa = 1150;

    Room(double keptC, double givenOffPa, double tightness) {
      this.keptC = keptC;
      this.givenOffPa = givenOffPa;
      this.tightness = tightness;
      this.airTempC = keptC - 1;
    }

    RoomMoment step(double outsideC, double outsidePa, boolean heated, boolean doorOpen) {
      double goalC = heated || doorOpen ? keptC : Math.min(keptC, outsideC + 3.5);
      double warmingMin = heated ? 80 : 420;
      airTempC += (goalC - airTempC) / warmingMin;
      double airingMin = doorOpen ? 18 : 100 * tightness;
      vapourPa += (outsidePa + givenOffPa - vapourPa) / airingMin;
      double mostPa = MOST_RH * SaturationPressure.overWaterPa(airTempC);
      vapourPa = Math.min(vapourPa, mostPa);
      return new RoomMoment(airTempC, 100 * vapourPa / SaturationPressure.overWaterPa(airTempC));
    }
  }
}
