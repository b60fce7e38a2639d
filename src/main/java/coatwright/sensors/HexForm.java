package coatwright.sensors;

import coatwright.sensors.ByteLayout.Decoded;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Bytes written as hexadecimal digits, either alone or in a member of a JSON payload, in a layout
 * the settings name.
 */
final class HexForm implements PayloadForm {
  private static final int MOST_BYTES = 512;

  /** Matching a longer one would go too deep; it is no list of a reading's bytes. */
  private static final int LONGEST_LIST = 1024;

  private static final Pattern DECIMAL_LIST =
      Pattern.compile("^\\[?\\s*\\d{1,3}(?:[,; ]+\\d{1,3})+\\s*\\]?$");

  private final JsonForm json;
  private final String at;
  private final ByteLayout layout;
  private final Set<String> wanted;

  HexForm(PayloadRules rules) {
    this.json = new JsonForm(rules.each());
    this.at = rules.form().hexAt();
    this.layout = rules.form().layout().orElseThrow();
    this.wanted =
        Stream.concat(
                rules.readings().stream().map(ReadingRule::place),
                rules.batteryLow().stream().map(PayloadRules.Condition::at))
            .collect(Collectors.toSet());
  }

  @Override
  public Opened open(PayloadText payload) {
    String text = payload.trimmed();
    if (text.length() <= LONGEST_LIST && DECIMAL_LIST.matcher(text).matches()) {
      return new Opened.No(
          "layout not configured: bytes printed as a decimal list, where hexadecimal digits are"
              + " due");
    }
    if (at.isEmpty()) {
      return one(text, place -> Cell.ABSENT);
    }
    Opened opened = json.open(payload);
    if (!(opened instanceof Opened.Parts parts)) {
      return opened;
    }
    List<Opened> all = new ArrayList<>();
    for (Cells cells : parts.cells()) {
      if (cells.at(at) instanceof Cell.Words digits) {
        all.add(one(digits.text(), cells));
      } else if (!(cells.at(at) instanceof Cell.Absent)) {
        all.add(new Opened.No("the member at " + at + " holds no text of hexadecimal digits"));
      }
    }
    if (all.size() == 1) {
      return all.get(0);
    }
    List<Cells> read = new ArrayList<>();
    for (Opened each : all) {
      if (each instanceof Opened.Parts good) {
        read.addAll(good.cells());
      }
    }
    return read.isEmpty() && !all.isEmpty()
        ? all.get(0)
        : new Opened.Parts(read, parts.flags(), "");
  }

  private Opened one(String digits, Cells around) {
    Optional<List<Integer>> bytes = bytes(digits);
    if (bytes.isEmpty()) {
      return new Opened.No(
          "\"%s\" is not a row of bytes in hexadecimal digits".formatted(Text.shortened(digits)));
    }
    Decoded decoded = layout.decode(bytes.get());
    if (decoded instanceof Decoded.No no) {
      return new Opened.No(no.reason(), no.harmless());
    }
    var values = ((Decoded.Values) decoded).cells();
    if (Collections.disjoint(values.keySet(), wanted)) {
      return new Opened.No("carries nothing this source reads", true);
    }
    return new Opened.Parts(List.of(new Around(values, around)));
  }

  /** The bytes' own places first, then those of the payload around them. */
  private record Around(Map<String, Cell> values, Cells payload) implements Cells {
    @Override
    public Cell at(String place) {
      Cell own = values.get(place);
      return own != null ? own : place.startsWith("/") ? payload.at(place) : Cell.ABSENT;
    }

    @Override
    public Cell nearOrRoot(String place) {
      Cell own = values.get(place);
      return own != null ? own : place.startsWith("/") ? payload.nearOrRoot(place) : Cell.ABSENT;
    }
  }

  /** Blanks, colons and dashes may part the bytes, 0x may stand before them. */
  static Optional<List<Integer>> bytes(String digits) {
    if (digits.length() > MOST_BYTES * 5) {
      return Optional.empty();
    }
    String plain = digits.toLowerCase(Locale.ROOT).replace("0x", "").replaceAll("[ :,-]", "");
    boolean rows =
        !plain.isEmpty()
            && plain.length() % 2 == 0
            && plain.length() <= 2 * MOST_BYTES
            && plain.chars().allMatch(c -> Character.digit(c, 16) >= 0 && c < 0x80);
    if (!rows) {
      return Optional.empty();
    }
    List<Integer> bytes = new ArrayList<>();
    for (int i = 0; i < plain.length(); i += 2) {
      bytes.add(Integer.parseInt(plain.substring(i, i + 2), 16));
    }
    return Optional.of(bytes);
  }
}
