package coatwright.climate.forecast;

import coatwright.air.SaturationPressure;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;

/**
 * A simulated room of 60 m³ in steps of five minutes, driven by outdoor air: the air (0.7 MJ/K) and
 * the fabric (30 or 18 MJ/K) as two thermal nodes, sun through a window, air leaking in, a door
 * opened now and then, a person at work giving off 60 g of vapour an hour, and walls that hold
 * moisture in two depths (0.15 and 1 kg/m² per unit of relative humidity). Twelve holidays. A
 * sensor with noise of 0.05 K and 0.5 points reads it. Our own assumptions; no room of anybody.
 */
final class SimulatedRoom {
  enum Kind {
    /** Heated to 20 °C on workdays from 8 to 17, to 8 °C otherwise; 0.5 air changes an hour. */
    HEATED_SHOP(30e6, 170, 0.5, true),
    /** Unheated and leaky: 1.2 air changes an hour. */
    BARE(18e6, 420, 1.2, false);

    private final double fabricJPerK;
    private final double lossWPerK;
    private final double changesPerH;
    private final boolean heated;

    Kind(double fabricJPerK, double lossWPerK, double changesPerH, boolean heated) {
      this.fabricJPerK = fabricJPerK;
      this.lossWPerK = lossWPerK;
      this.changesPerH = changesPerH;
      this.heated = heated;
    }
  }

  private static final double STEP_S = 300;
  private static final int STEPS_PER_H = 12;
  private static final double VOLUME_M3 = 60;
  private static final double WALL_M2 = 90;
  private static final double AIR_J_PER_K = 0.7e6;
  private static final double WALL_W_PER_M2K = 2;
  private static final double HEATER_W = 6000;
  private static final double WINDOW_M2 = 5;

  /** Of a clear sky's sun, all year round. */
  private static final double SKY = 0.6;

  private static final double PERSON_KG_PER_S = 0.060 / 3600;
  private static final double WATER_GAS_J_PER_KG_K = 461.5;

  /** Vapour to the wall's face and on into its depth, kg/(m² s Pa). */
  private static final double TO_FACE = 5e-9;

  private static final double TO_DEPTH = 3e-10;

  /** The face of the walls stands nearer the air than their bulk. */
  private static final double FACE_SHARE = 0.6;

  private static final double FACE_KG_PER_M2 = 0.15;
  private static final double DEPTH_KG_PER_M2 = 1;

  private final Kind kind;
  private final HourlyOutdoors outdoors;
  private final ZoneId zone;
  private final SplittableRandom random;
  private final Set<Integer> holidays = new TreeSet<>();

  private double airC;
  private double fabricC;
  private double vapourPa;
  private double faceRh = 0.55;
  private double depthRh = 0.55;
  private double door;

  private SimulatedRoom(Kind kind, HourlyOutdoors outdoors, ZoneId zone, long seed) {
    this.kind = kind;
    this.outdoors = outdoors;
    this.zone = zone;
    this.random = new SplittableRandom(seed);
    while (holidays.size() < 12) {
      holidays.add(1 + random.nextInt(365));
    }
    airC = outdoors.tempC[0] + 3;
    fabricC = airC;
    vapourPa = outdoors.vapourPa[0];
  }

  /** The room's hourly air over the outdoors' hours, the first ten days left out to settle. */
  static List<HourAir> hours(Kind kind, HourlyOutdoors outdoors, ZoneId zone, long seed) {
    return new SimulatedRoom(kind, outdoors, zone, seed).run();
  }

  private List<HourAir> run() {
    List<HourAir> read = new ArrayList<>();
    for (int i = 0; i < outdoors.hours(); i++) {
      long hour = outdoors.firstHour + i;
      double sumC = 0;
      double sumPa = 0;
      double lastC = 0;
      double lastPa = 0;
      for (int step = 0; step < STEPS_PER_H; step++) {
        step(hour, step);
        double c = airC + 0.05 * random.nextGaussian();
        double saturatedPa = SaturationPressure.overWaterPa(airC);
        double rh = Math.min(1, vapourPa / saturatedPa + 0.005 * random.nextGaussian());
        double pa = Math.max(0.01, rh) * SaturationPressure.overWaterPa(c);
        sumC += c;
        sumPa += pa;
        if (step >= STEPS_PER_H - 2) {
          lastC += c / 2;
          lastPa += pa / 2;
        }
      }
      if (i >= 240) {
        read.add(new HourAir(hour, sumC / STEPS_PER_H, sumPa / STEPS_PER_H, lastC, lastPa));
      }
    }
    return read;
  }

  private void step(long hour, int step) {
    ZonedDateTime local = Instant.ofEpochSecond(hour * 3600 + (long) (step * STEP_S)).atZone(zone);
    boolean workday =
        local.getDayOfWeek().getValue() <= 5 && !holidays.contains(local.getDayOfYear());
    boolean atWork = workday && local.getHour() >= 8 && local.getHour() < 17;
    double outC = outdoors.tempAt(hour + (step + 0.5) / STEPS_PER_H);
    double outPa = outdoors.vapourAt(hour + (step + 0.5) / STEPS_PER_H);
    door = door > 0 ? door - 1 : atWork && random.nextDouble() < 0.02 ? random.nextInt(4) : 0;
    double changes = kind.changesPerH + (door > 0 ? 6 : 0);
    double flowM3PerS = changes * VOLUME_M3 / 3600;
    double sunW = WINDOW_M2 * sun(local) * SKY;
    double wantedC = kind.heated ? (atWork ? 20 : 8) : -100;
    double toFabricW = WALL_W_PER_M2K * WALL_M2 * (airC - fabricC);
    double personW = atWork ? 100 : 0;
    // The air answers within minutes: implicit in the walls and the leak, so that a step of five
    // minutes is stable.
    double leakWPerK = 1206 * flowM3PerS + 0.5 * kind.lossWPerK;
    double wallWPerK = WALL_W_PER_M2K * WALL_M2;
    double gainsW = personW + 0.5 * sunW;
    double holdsWPerK = AIR_J_PER_K / STEP_S;
    double allWPerK = holdsWPerK + leakWPerK + wallWPerK;
    double unheatedC =
        (airC * holdsWPerK + gainsW + leakWPerK * outC + wallWPerK * fabricC) / allWPerK;
    double heaterW = Math.min(HEATER_W, Math.max(0, (wantedC - unheatedC) * allWPerK));
    airC = unheatedC + heaterW / allWPerK;
    fabricC +=
        STEP_S
            * (toFabricW + 0.5 * sunW - 0.5 * kind.lossWPerK * (fabricC - outC))
            / kind.fabricJPerK;
    moisture(outPa, flowM3PerS, atWork);
  }

  private void moisture(double outPa, double flowM3PerS, boolean atWork) {
    double gas = WATER_GAS_J_PER_KG_K * (airC + 273.15);
    double wallPa = SaturationPressure.overWaterPa(FACE_SHARE * airC + (1 - FACE_SHARE) * fabricC);
    double leak = flowM3PerS / gas;
    double face = TO_FACE * WALL_M2;
    double holds = VOLUME_M3 / gas / STEP_S;
    double person = atWork ? PERSON_KG_PER_S : 0;
    vapourPa =
        (holds * vapourPa + leak * outPa + face * faceRh * wallPa + person) / (holds + leak + face);
    vapourPa = Math.min(vapourPa, SaturationPressure.overWaterPa(airC));
    double toFace = TO_FACE * (vapourPa - faceRh * wallPa);
    double toDepth = TO_DEPTH * (faceRh - depthRh) * wallPa;
    faceRh = Math.min(1, Math.max(0.05, faceRh + STEP_S * (toFace - toDepth) / FACE_KG_PER_M2));
    depthRh = Math.min(1, Math.max(0.05, depthRh + STEP_S * toDepth / DEPTH_KG_PER_M2));
  }

  /** Clear sky on a pane that looks south at 50° north, W/m²; plain geometry, no air mass. */
  private static double sun(ZonedDateTime local) {
    double day = 2 * Math.PI * (local.getDayOfYear() - 80) / 365.25;
    double declination = Math.toRadians(23.45) * Math.sin(day);
    double hour = local.getHour() + local.getMinute() / 60.0;
    double angle = Math.PI * (hour - 12) / 12;
    double latitude = Math.toRadians(50);
    double height =
        Math.sin(latitude) * Math.sin(declination)
            + Math.cos(latitude) * Math.cos(declination) * Math.cos(angle);
    return height > 0 ? 600 * Math.sqrt(height) : 0;
  }
}
