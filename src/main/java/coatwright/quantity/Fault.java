package coatwright.quantity;

import java.util.OptionalInt;

/**
 * One thing a person must put right: what was given, the rule it breaks, and what to write instead.
 *
 * @param input the offending input, named and quoted: {@code cut "2"}
 * @param rule the limit or form it should have kept
 * @param remedy what to do, beginning with a verb
 * @param line the line of the file it stands on, if it came from a file
 */
public record Fault(String input, String rule, String remedy, OptionalInt line) {
  /** A fault that is on no particular line. */
  public static Fault of(String input, String rule, String remedy) {
    return new Fault(input, rule, remedy, OptionalInt.empty());
  }

  /** The same fault, placed on a line of a file, counted from 1. */
  public Fault onLine(int lineNumber) {
    return new Fault(input, rule, remedy, OptionalInt.of(lineNumber));
  }

  /** The fault as one sentence for the person who has to mend it. */
  public String sentence() {
    String place = line.isPresent() ? "line " + line.getAsInt() + ": " : "";
    return place + input + ": " + rule + "; " + remedy;
  }
}
