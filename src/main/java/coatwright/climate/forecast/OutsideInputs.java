package coatwright.climate.forecast;

/** What an outdoor forecast adds to the inputs of one series; all nought where there is none. */
final class OutsideInputs {
  static final OutsideInputs NONE = new OutsideInputs();

  private final double[] then = new double[SeriesModel.LEADS + 1];
  private final double[] until = new double[SeriesModel.LEADS + 1];

  /** How far the outside will depart from its usual day at that lead. */
  double then(int lead) {
    return then[lead];
  }

  /** Mean of that departure up to the lead. */
  double until(int lead) {
    return until[lead];
  }

  /** From departures lead by lead; what is not forecast departs as the hour before it. */
  static OutsideInputs of(double[] departures) {
    OutsideInputs inputs = new OutsideInputs();
    double sum = 0;
    for (int lead = 1; lead <= SeriesModel.LEADS; lead++) {
      sum += departures[lead];
      inputs.then[lead] = departures[lead];
      inputs.until[lead] = sum / lead;
    }
    return inputs;
  }
}
