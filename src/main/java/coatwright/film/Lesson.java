package coatwright.film;

/**
 * What one part's tests say of its shop: how much sharper they made the two hardening numbers and
 * the clouding limit than they were before, and toward where. Precisions beyond the prior's, on
 * axes counted in the prior's standard deviations.
 *
 * @param dd of the diffusivity in the glass
 * @param dt of diffusivity and own limit together
 * @param tt of the own limit for rubbing out
 * @param towardD precision times mean, diffusivity
 * @param towardT the same, own limit
 * @param cc of the clouding limit
 * @param towardC precision times mean, clouding limit
 */
public record Lesson(
    double dd, double dt, double tt, double towardD, double towardT, double cc, double towardC) {

  /** Nothing was learned. */
  public static final Lesson NONE = new Lesson(0, 0, 0, 0, 0, 0, 0);

  /** From weighted members against the same members before they were weighed. */
  static Lesson ofHardening(Spread after, Spread before) {
    return new Lesson(
        after.precisionFirst() - before.precisionFirst(),
        after.precisionBoth() - before.precisionBoth(),
        after.precisionSecond() - before.precisionSecond(),
        after.towardFirst() - before.towardFirst(),
        after.towardSecond() - before.towardSecond(),
        0,
        0);
  }

  static Lesson ofClouding(double precision, double toward) {
    return new Lesson(0, 0, 0, 0, 0, Math.max(0, precision), precision > 0 ? toward : 0);
  }

  /** Both lessons of one part. */
  public Lesson and(Lesson other) {
    return new Lesson(
        dd + other.dd,
        dt + other.dt,
        tt + other.tt,
        towardD + other.towardD,
        towardT + other.towardT,
        cc + other.cc,
        towardC + other.towardC);
  }

  boolean teachesHardening() {
    return dd != 0 || tt != 0;
  }

  boolean teachesClouding() {
    return cc != 0;
  }

  /**
   * What it says of a part that differs from this one by so much variance: Λ (I + WΛ)⁻¹, directions
   * in which the tests said less than nothing (chance of the draw) left out.
   */
  Lesson ofAnotherPart(double variance) {
    double mean = (dd + tt) / 2;
    double half = Math.hypot((dd - tt) / 2, dt);
    double angle = 0.5 * Math.atan2(2 * dt, dd - tt);
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    double along = mean + half;
    double across = mean - half;
    double towardAlong = cos * towardD + sin * towardT;
    double towardAcross = -sin * towardD + cos * towardT;
    double sharpAlong = along > 0 ? along / (1 + variance * along) : 0;
    double sharpAcross = across > 0 ? across / (1 + variance * across) : 0;
    double meanAlong = along > 0 ? towardAlong / (1 + variance * along) : 0;
    double meanAcross = across > 0 ? towardAcross / (1 + variance * across) : 0;
    return new Lesson(
        cos * cos * sharpAlong + sin * sin * sharpAcross,
        cos * sin * (sharpAlong - sharpAcross),
        sin * sin * sharpAlong + cos * cos * sharpAcross,
        cos * meanAlong - sin * meanAcross,
        sin * meanAlong + cos * meanAcross,
        cc / (1 + variance * cc),
        towardC / (1 + variance * cc));
  }

  /** Mean and covariance of two coordinates over weighted members. */
  record Spread(double first, double second, double varFirst, double both, double varSecond) {
    private double det() {
      return varFirst * varSecond - both * both;
    }

    double precisionFirst() {
      return varSecond / det();
    }

    double precisionSecond() {
      return varFirst / det();
    }

    double precisionBoth() {
      return -both / det();
    }

    double towardFirst() {
      return precisionFirst() * first + precisionBoth() * second;
    }

    double towardSecond() {
      return precisionBoth() * first + precisionSecond() * second;
    }
  }
}
