package coatwright.sensors;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * A regular expression that cannot hang the house: anchored at the start, no back references, look-
 * ahead only at the start, no repeat of a repeat; and matched under a time limit all the same.
 */
public final class SafePattern {
  private static final long LIMIT_NANOS = 50_000_000;
  private static final int LONGEST = 1024;

  private final Pattern pattern;

  private SafePattern(Pattern pattern) {
    this.pattern = pattern;
  }

  /** The pattern, or nothing and a sentence in {@code faults} for each rule it breaks. */
  static Optional<SafePattern> of(String text, List<String> faults) {
    int before = faults.size();
    if (text.length() > LONGEST) {
      faults.add("is longer than " + LONGEST + " characters");
    }
    if (!text.startsWith("^")) {
      faults.add("does not begin with ^, so it could match in the middle of another text");
    }
    faults.addAll(new Scan(text).faults());
    try {
      Pattern compiled = Pattern.compile(text);
      return faults.size() == before ? Optional.of(new SafePattern(compiled)) : Optional.empty();
    } catch (PatternSyntaxException e) {
      faults.add("is not a regular expression: " + e.getDescription());
      return Optional.empty();
    }
  }

  /** True when the pattern names this group. */
  boolean hasGroup(String name) {
    return pattern.pattern().contains("(?<" + name + ">");
  }

  /** The match at the start of the text; empty when there is none or the time ran out. */
  Optional<Matcher> match(String text) {
    Matcher matcher = pattern.matcher(new Timed(text, System.nanoTime() + LIMIT_NANOS));
    try {
      return matcher.find() ? Optional.of(matcher) : Optional.empty();
    } catch (OutOfTime e) {
      return Optional.empty();
    }
  }

  @Override
  public String toString() {
    return pattern.pattern();
  }

  /** Walks the expression once and notes what could make matching slow. */
  private static final class Scan {
    private final String text;
    private final List<String> faults = new ArrayList<>();
    private final List<Boolean> openGroupsRepeat = new ArrayList<>();
    private boolean consumed;

    Scan(String text) {
      this.text = text;
    }

    List<String> faults() {
      boolean lastGroupRepeats = false;
      for (int at = 0; at < text.length(); at++) {
        char c = text.charAt(at);
        if (c == '\\') {
          checkEscape(at);
          at++;
          lastGroupRepeats = false;
          consumed |= openGroupsRepeat.isEmpty();
        } else if (c == '[') {
          at = endOfClass(at);
          lastGroupRepeats = false;
          consumed |= openGroupsRepeat.isEmpty();
        } else if (c == '(') {
          checkOpening(at);
          openGroupsRepeat.add(false);
        } else if (c == ')' && !openGroupsRepeat.isEmpty()) {
          lastGroupRepeats = openGroupsRepeat.remove(openGroupsRepeat.size() - 1);
          keepRepeat(lastGroupRepeats);
        } else if (unbounded(at)) {
          if (lastGroupRepeats) {
            faults.add("repeats a group that itself repeats without limit");
          }
          keepRepeat(true);
          lastGroupRepeats = false;
        } else if (c != '^') {
          consumed |= openGroupsRepeat.isEmpty();
          lastGroupRepeats = false;
        }
      }
      return faults;
    }

    private void keepRepeat(boolean repeats) {
      if (repeats && !openGroupsRepeat.isEmpty()) {
        openGroupsRepeat.set(openGroupsRepeat.size() - 1, true);
      }
    }

    private void checkEscape(int at) {
      char next = at + 1 < text.length() ? text.charAt(at + 1) : ' ';
      if ((next >= '1' && next <= '9') || next == 'k') {
        faults.add("uses a back reference");
      }
    }

    private void checkOpening(int at) {
      if (text.startsWith("(?<=", at) || text.startsWith("(?<!", at)) {
        faults.add("looks behind");
      }
      boolean looksAhead = text.startsWith("(?=", at) || text.startsWith("(?!", at);
      if (looksAhead && (consumed || !openGroupsRepeat.isEmpty())) {
        faults.add("looks ahead elsewhere than at the start");
      }
      if (!looksAhead && openGroupsRepeat.isEmpty()) {
        consumed = true;
      }
    }

    private boolean unbounded(int at) {
      char c = text.charAt(at);
      if (c == '*' || c == '+') {
        return true;
      }
      int close = c == '{' ? text.indexOf('}', at) : -1;
      return close > at && text.charAt(close - 1) == ',';
    }

    private int endOfClass(int from) {
      int at = from + 1;
      if (at < text.length() && text.charAt(at) == '^') {
        at++;
      }
      if (at < text.length() && text.charAt(at) == ']') {
        at++;
      }
      while (at < text.length() && text.charAt(at) != ']') {
        at += text.charAt(at) == '\\' ? 2 : 1;
      }
      return at;
    }
  }

  /** A text that stops answering when its time is up. */
  private record Timed(CharSequence text, long deadlineNanos) implements CharSequence {
    @Override
    public int length() {
      return text.length();
    }

    @Override
    public char charAt(int index) {
      if (System.nanoTime() - deadlineNanos > 0) {
        throw new OutOfTime();
      }
      return text.charAt(index);
    }

    @Override
    public CharSequence subSequence(int start, int end) {
      return new Timed(text.subSequence(start, end), deadlineNanos);
    }

    @Override
    public String toString() {
      return text.toString();
    }
  }

  private static final class OutOfTime extends RuntimeException {
    OutOfTime() {
      super("the pattern took too long", null, false, false);
    }
  }
}
