package coatwright.quantity;

import java.util.List;
import java.util.stream.Collectors;

/**
 * A person's input that cannot be used as it stands. Carries every fault found, not only the first.
 */
public final class RefusedInput extends RuntimeException {
  private final transient List<Fault> faults;

  /**
   * @param faults at least one
   */
  public RefusedInput(List<Fault> faults) {
    super(message(faults));
    this.faults = List.copyOf(faults);
  }

  /** A refusal for one fault. */
  public static RefusedInput of(String input, String rule, String remedy) {
    return new RefusedInput(List.of(Fault.of(input, rule, remedy)));
  }

  /** Every fault, in the order found. */
  public List<Fault> faults() {
    return faults;
  }

  private static String message(List<Fault> faults) {
    if (faults.isEmpty()) {
      throw new IllegalArgumentException("a refusal needs at least one fault");
    }
    if (faults.size() == 1) {
      return faults.get(0).sentence();
    }
    return faults.stream()
        .map(fault -> "  - " + fault.sentence())
        .collect(Collectors.joining("\n", faults.size() + " faults:\n", ""));
  }
}
