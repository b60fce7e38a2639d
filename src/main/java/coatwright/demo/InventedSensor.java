package coatwright.demo;

import coatwright.demo.InventedAir.Moment;
import coatwright.demo.InventedAir.RoomMoment;
import java.time.Instant;
import java.util.Locale;
import java.util.Random;
import java.util.function.Function;

/**
 * A sensor of the invented shop: what its payload says of a minute's air, with its own offset,
 * noise and rounding. The same minute always gives the same text.
 *
 * @param source the mapping that reads it
 * @param topic where it speaks
 */
record InventedSensor(String source, String topic, Kind kind, Function<Moment, RoomMoment> where) {
  private static final double NOISE_K = 0.04;
  private static final double NOISE_PCT = 0.25;
  private static final long GOLDEN = 0x9E3779B97F4A7C15L;

  /** How it writes what it measured. */
  enum Kind {
    JSON,
    LINE,
    WOOD
  }

  /** What it sends at that instant. */
  String payload(InventedAir air, Instant at) {
    Moment moment = air.at(at);
    Random noise = new Random(source.hashCode() * GOLDEN ^ at.getEpochSecond());
    double noiseK = NOISE_K * noise.nextGaussian() + offset(0, 0.12);
    double noisePct = NOISE_PCT * noise.nextGaussian() + offset(1, 0.8);
    RoomMoment room = where.apply(moment);
    double tempC = room.airTempC() + noiseK;
    double rhPct = Math.min(99.5, room.rhPct() + noisePct);
    return switch (kind) {
      case JSON -> json(tempC, rhPct, at);
      case LINE -> String.format(Locale.ROOT, "%.2f C, %.1f%%", tempC, rhPct);
      case WOOD -> sixteenths(moment.woodTempC() + noiseK);
    };
  }

  private static String json(double tempC, double rhPct, Instant at) {
    long batteryPct = 98L - Math.floorMod(at.getEpochSecond() / 86_400, 60);
    return String.format(
        Locale.ROOT,
        "{\"temperature\": %.2f, \"humidity\": %.2f, \"battery\": %d}",
        tempC,
        rhPct,
        batteryPct);
  }

  /** One-wire probes count in sixteenths of a degree. */
  private static String sixteenths(double tempC) {
    return String.format(Locale.ROOT, "%.4f", Math.rint(tempC * 16) / 16);
  }

  /** No two sensors agree; each keeps its own small difference. */
  private double offset(int which, double size) {
    return size * (2 * new Random(source.hashCode() + 31L * which).nextDouble() - 1);
  }
}
