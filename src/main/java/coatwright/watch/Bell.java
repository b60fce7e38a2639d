package coatwright.watch;

/** Port: carries a warning out, once when it begins and once when it ends. */
public interface Bell {
  /** A warning began. */
  void ring(Warning warning);

  /** A warning ended ({@code to} is set). */
  void end(Warning warning);
}
