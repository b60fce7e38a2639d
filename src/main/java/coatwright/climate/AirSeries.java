package coatwright.climate;

import java.time.Instant;
import java.util.List;

/** A room's air from one instant to another: points oldest first, and the gaps between them. */
public record AirSeries(
    String room, Instant from, Instant to, List<AirPoint> points, List<Gap> gaps) {
  public AirSeries {
    points = List.copyOf(points);
    gaps = List.copyOf(gaps);
  }
}
