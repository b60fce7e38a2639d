package coatwright.film;

/**
 * One film of the ensemble: what is different in it from the film as described.
 *
 * @param product factor on every threshold: this product, this shop
 * @param ownEarly factor on touch and recoat: what this person calls dry
 * @param ownLate factor on everything later: what this person calls hard
 * @param energy factor on the activation energy
 * @param wetFilm factor on every wet film
 * @param surface factor on how fast water leaves
 * @param filmFormingK added to the minimum film-forming temperature, K
 * @param airTempK error of the thermometer, K
 * @param rhFraction error of the hygrometer, fraction
 * @param comingAirK how much warmer the air to come is than expected, K
 */
record CureMember(
    double product,
    double ownEarly,
    double ownLate,
    double energy,
    double wetFilm,
    double surface,
    double filmFormingK,
    double airTempK,
    double rhFraction,
    double comingAirK) {
  /** The film as described. */
  static final CureMember MIDDLE = new CureMember(1, 1, 1, 1, 1, 1, 0, 0, 0, 0);

  /** This person's own factor on a milestone. */
  double own(Milestone milestone) {
    return milestone.compareTo(Milestone.DRY_HARD) < 0 ? ownEarly : ownLate;
  }
}
