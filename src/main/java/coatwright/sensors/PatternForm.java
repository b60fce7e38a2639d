package coatwright.sensors;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;

/** A line of text with named groups. */
final class PatternForm implements PayloadForm {
  private static final int LONGEST = 1024;
  private static final String REPLACEMENT = "\uFFFD";

  private final SafePattern pattern;

  PatternForm(SafePattern pattern) {
    this.pattern = pattern;
  }

  @Override
  public Opened open(PayloadText payload) {
    String line = payload.withoutLineEnd();
    if (line.length() > LONGEST) {
      return new Opened.No("line longer than " + LONGEST + " bytes");
    }
    Optional<Matcher> match = pattern.match(line);
    if (match.isPresent()) {
      return new Opened.Parts(List.of(cells(match.get())));
    }
    String readable = withoutBinaryHead(line);
    Optional<Matcher> second =
        readable.length() < line.length() ? pattern.match(readable) : Optional.empty();
    if (second.isPresent()) {
      return new Opened.Parts(
          List.of(cells(second.get())), List.of(), "binary before text on the line");
    }
    return new Opened.No(LineTrouble.of(line));
  }

  private Cells cells(Matcher match) {
    return place -> {
      if (!pattern.hasGroup(place)) {
        return Cell.ABSENT;
      }
      String caught = match.group(place);
      if (caught == null) {
        return Cell.ABSENT;
      }
      return caught.contains(REPLACEMENT)
          ? new Cell.Other("text of another charset")
          : new Cell.Words(caught);
    };
  }

  private static String withoutBinaryHead(String line) {
    int at = 0;
    while (at < line.length() && !printable(line.charAt(at))) {
      at++;
    }
    return line.substring(at);
  }

  private static boolean printable(char c) {
    return c == '\t' || (c >= ' ' && c < 0x7F);
  }
}
