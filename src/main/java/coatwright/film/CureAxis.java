package coatwright.film;

/**
 * One thing a curing film's dates depend on and nobody knows exactly. All spreads that do not come
 * with the job are assumed; product and own threshold together make 0.35 on every threshold.
 */
enum CureAxis {
  WET_FILM,
  PRODUCT,
  OWN_EARLY,
  OWN_LATE,
  ENERGY,
  SURFACE,
  FILM_FORMING,
  AIR_TEMPERATURE,
  HUMIDITY,
  COMING_AIR;

  static final double PRODUCT_LN = 0.28;
  static final double OWN_LN = 0.21;

  /** Its place in the members' coordinates; lives in memory only. */
  @SuppressWarnings("EnumOrdinal")
  int index() {
    return ordinal();
  }

  /** One standard deviation, in the axis' own unit; 0 = known. */
  double sd(Spreads s) {
    return switch (this) {
      case WET_FILM -> s.wetFilmLn();
      case PRODUCT -> PRODUCT_LN;
      case OWN_EARLY, OWN_LATE -> OWN_LN;
      case ENERGY -> 0.15;
      case SURFACE -> 0.2;
      case FILM_FORMING -> 1;
      case AIR_TEMPERATURE -> s.airTempK();
      case HUMIDITY -> s.rhPct() / 100;
      case COMING_AIR -> s.comingAirK();
    };
  }

  /** A member of the drawn ensemble. */
  static CureMember member(Members members, int i, Spreads s) {
    return new CureMember(
        factor(members, i, PRODUCT, s),
        factor(members, i, OWN_EARLY, s),
        factor(members, i, OWN_LATE, s),
        factor(members, i, ENERGY, s),
        factor(members, i, WET_FILM, s),
        factor(members, i, SURFACE, s),
        moved(members, i, FILM_FORMING, s),
        moved(members, i, AIR_TEMPERATURE, s),
        moved(members, i, HUMIDITY, s),
        moved(members, i, COMING_AIR, s));
  }

  private static double moved(Members members, int i, CureAxis axis, Spreads s) {
    return axis.sd(s) * members.z(i, axis.index());
  }

  private static double factor(Members members, int i, CureAxis axis, Spreads s) {
    return Math.exp(moved(members, i, axis, s));
  }
}
