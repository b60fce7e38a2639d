package coatwright.sensors.proposal;

import coatwright.quantity.StrictNumber;
import coatwright.sensors.proposal.Guess.Numbers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** What lines of text have in common, made into columns or a pattern. */
final class LineShape {
  private static final int MOST_NUMBERS = 16;
  private static final String POINT = "[+-]?\\d{1,7}(?:\\.\\d{1,6})?";
  private static final String COMMA = "[+-]?\\d{1,7}(?:,\\d{1,6})?";
  private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])[+-]?\\d+(?:\\.\\d+)?");
  private static final Pattern NUMBER_COMMA = Pattern.compile("(?<![\\w,])[+-]?\\d+(?:,\\d+)?");
  private static final Set<String> IDENTITIES =
      Set.of("id", "node", "board", "sensor", "probe", "ch", "channel", "no", "nr");
  private static final char[] SEPARATORS = {'\t', ';', '|', ','};

  private final List<String> lines;
  private final Draft draft;

  LineShape(List<String> lines, Draft draft) {
    this.lines = lines.stream().map(LineShape::withoutEnd).filter(l -> !l.isBlank()).toList();
    this.draft = draft;
  }

  private static String withoutEnd(String line) {
    return line.replaceAll("[\\r\\n]+$", "");
  }

  /** Fills the draft; false when no form was found. */
  boolean propose() {
    for (char separator : SEPARATORS) {
      if (columns(separator)) {
        return true;
      }
    }
    return pattern(NUMBER, '.') || pattern(NUMBER_COMMA, ',');
  }

  private boolean columns(char separator) {
    List<List<String>> rows = new ArrayList<>();
    for (String line : lines) {
      List<String> cells =
          List.of(line.split(Pattern.quote(String.valueOf(separator)), -1)).stream()
              .map(String::strip)
              .toList();
      rows.add(cells);
    }
    int width = mostCommon(rows.stream().map(List::size).toList()).orElse(1);
    rows.removeIf(row -> row.size() != width);
    if (width < 2 || rows.size() * 3 < lines.size() * 2) {
      return false;
    }
    Optional<List<String>> header =
        rows.stream().filter(row -> row.stream().noneMatch(LineShape::isNumber)).findFirst();
    List<List<String>> data =
        rows.stream().filter(row -> row.stream().anyMatch(LineShape::isNumber)).toList();
    if (data.isEmpty()) {
      return false;
    }
    draft.word("payload", "columns");
    draft.word("separator", String.valueOf(separator));
    header.ifPresent(names -> draft.word("header", true));
    for (int column = 0; column < width; column++) {
      column(header, data, column);
    }
    if (draft.isEmpty() && header.isEmpty()) {
      unnamed(data, width);
    }
    return !draft.isEmpty();
  }

  private static boolean isNumber(String cell) {
    return StrictNumber.parse(cell, '.').isPresent() || StrictNumber.parse(cell, ',').isPresent();
  }

  private void column(Optional<List<String>> header, List<List<String>> data, int column) {
    Optional<Numbers> numbers = Numbers.of(data.stream().map(row -> row.get(column)).toList());
    if (header.isEmpty() || numbers.isEmpty()) {
      return;
    }
    String name = header.get().get(column);
    Optional<Guess> guess = Guess.of(name, Optional.empty(), numbers.get());
    if (guess.isPresent() && !draft.has(guess.get().quantity())) {
      draft.reading(name, guess.get());
    } else {
      draft.note(
          "Not taken: column %s = %s. If it is a reading, add it with its quantity and unit."
              .formatted(name, Guess.shown(numbers.get().last())));
    }
  }

  /** No names at all: what the numbers would do as. */
  private void unnamed(List<List<String>> data, int width) {
    List<Integer> columns = new ArrayList<>();
    List<Numbers> all = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      int at = column;
      Optional<Numbers> numbers = Numbers.of(data.stream().map(row -> row.get(at)).toList());
      if (numbers.isPresent() && !isCounter(numbers.get())) {
        columns.add(column + 1);
        all.add(numbers.get());
      }
    }
    List<Optional<Guess>> guesses = Guess.unnamed(all);
    for (int i = 0; i < guesses.size(); i++) {
      if (guesses.get(i).isPresent()) {
        draft.reading(columns.get(i), guesses.get(i).get());
      } else {
        draft.note(
            "Not taken: column %d = %s.".formatted(columns.get(i), Guess.shown(all.get(i).last())));
      }
    }
  }

  private static boolean isCounter(Numbers numbers) {
    return numbers.whole() && (numbers.last() > 1100 || numbers.last() < -50);
  }

  private boolean pattern(Pattern number, char mark) {
    Map<String, List<String>> bySkeleton = new HashMap<>();
    for (String line : lines) {
      bySkeleton
          .computeIfAbsent(number.matcher(line).replaceAll("#"), any -> new ArrayList<>())
          .add(line);
    }
    Optional<List<String>> usual =
        bySkeleton.entrySet().stream()
            .filter(each -> each.getKey().contains("#"))
            .max(Comparator.comparingInt(each -> each.getValue().size()))
            .map(Map.Entry::getValue);
    if (usual.isEmpty() || usual.get().size() * 3 < lines.size()) {
      return false;
    }
    List<Field> fields = fields(usual.get(), number, mark);
    Draft target = draft;
    StringBuilder pattern = new StringBuilder("^");
    Map<String, Guess> chosen = new LinkedHashMap<>();
    boolean named = false;
    for (Field field : fields) {
      Optional<Guess> guess = Guess.of(field.label(), field.unit(), field.numbers());
      named |= guess.isPresent();
    }
    List<Optional<Guess>> unnamed = Guess.unnamed(fields.stream().map(Field::numbers).toList());
    for (int i = 0; i < fields.size(); i++) {
      Field field = fields.get(i);
      Optional<Guess> guess =
          named ? Guess.of(field.label(), field.unit(), field.numbers()) : unnamed.get(i);
      String group =
          guess.filter(found -> !holds(chosen, found.quantity())).map(LineShape::group).orElse("");
      String form = mark == ',' ? COMMA : POINT;
      if (guess.isEmpty() && isIdentity(field) && !target.words().containsKey("sensorAt")) {
        pattern.append(literal(field.before())).append("(?<id>\\d{1,4})");
        target.word("sensorAt", "id");
        continue;
      }
      pattern.append(literal(field.before()));
      pattern.append(group.isEmpty() ? form : "(?<" + group + ">" + form + ")");
      if (!group.isEmpty()) {
        chosen.put(group, guess.orElseThrow());
      } else {
        target.note(
            "Not taken: %s = %s."
                .formatted(
                    field.label().isBlank() ? "a number" : field.label().strip(),
                    Guess.shown(field.numbers().last())));
      }
    }
    if (chosen.isEmpty()) {
      return false;
    }
    String tail = tail(usual.get().get(0), number);
    pattern.append(literal(tail)).append('$');
    target.word("payload", "pattern");
    if (lines.stream().anyMatch(line -> line.chars().anyMatch(c -> c > 0x7E))) {
      target.word("charset", "iso-8859-1");
    }
    target.word("pattern", pattern.toString());
    chosen.forEach(
        (group, guess) ->
            target.reading(
                group,
                new Guess(guess.quantity(), guess.unit(), guess.scale(), mark, guess.doubt())));
    return true;
  }

  /** A small whole number behind a word for a sender. */
  private static boolean isIdentity(Field field) {
    List<String> words = Guess.words(field.label());
    return IDENTITIES.contains(words.get(words.size() - 1))
        && field.numbers().whole()
        && field.numbers().within(0, 9999);
  }

  private static boolean holds(Map<String, Guess> chosen, String quantity) {
    return chosen.values().stream().anyMatch(guess -> guess.quantity().equals(quantity));
  }

  private static String group(Guess guess) {
    return switch (guess.quantity()) {
      case Guess.RH -> "h";
      case Guess.LEVEL -> "b";
      case Guess.VOLTAGE -> "v";
      default -> "t";
    };
  }

  /** A number of a line with what stands before it, its label and the unit behind it. */
  private record Field(String before, String label, Optional<String> unit, Numbers numbers) {}

  private static List<Field> fields(List<String> lines, Pattern number, char mark) {
    List<List<String>> columns = new ArrayList<>();
    for (String line : lines) {
      Matcher match = number.matcher(line);
      int column = 0;
      while (match.find() && column < MOST_NUMBERS) {
        if (columns.size() <= column) {
          columns.add(new ArrayList<>());
        }
        columns.get(column).add(match.group());
        column++;
      }
    }
    List<Field> fields = new ArrayList<>();
    String first = lines.get(0);
    Matcher match = number.matcher(first);
    int end = 0;
    while (match.find() && fields.size() < MOST_NUMBERS) {
      String before = first.substring(end, match.start());
      String behind = first.substring(match.end());
      Matcher unit = Pattern.compile("^\\s?([^0-9A-Za-z\\s]{0,2}[CFK]\\b|%)").matcher(behind);
      Numbers numbers =
          Numbers.of(columns.get(fields.size())).orElse(new Numbers(List.of(0.0), mark));
      fields.add(
          new Field(
              before,
              label(before),
              unit.find() ? Optional.of(unit.group(1).replaceAll("[^A-Z%]", "")) : Optional.empty(),
              numbers));
      end = match.end();
    }
    return fields;
  }

  /** The last words before a number, without the unit of the number before it. */
  private static String label(String before) {
    String plain = before.replaceFirst("^\\s?[^0-9A-Za-z\\s]{0,2}[CFK]?\\b%?", " ");
    return plain.replaceAll("[^A-Za-z_ ]+", " ").strip();
  }

  private static String tail(String line, Pattern number) {
    Matcher match = number.matcher(line);
    int end = 0;
    for (int count = 0; count < MOST_NUMBERS && match.find(); count++) {
      end = match.end();
    }
    return line.substring(end);
  }

  /** Literal text as a pattern; bytes beyond ASCII, such as a degree sign, may be another's. */
  private static String literal(String text) {
    StringBuilder pattern = new StringBuilder();
    boolean odd = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c > 0x7E || (c < ' ' && c != '\t')) {
        if (!odd) {
          pattern.append("[^0-9A-Za-z]{0,2}");
        }
        odd = true;
        continue;
      }
      odd = false;
      if (c == '\t') {
        pattern.append("\\t");
      } else if ("\\^$.|?*+()[]{}".indexOf(c) >= 0) {
        pattern.append('\\').append(c);
      } else {
        pattern.append(c);
      }
    }
    return pattern.toString();
  }

  private static Optional<Integer> mostCommon(List<Integer> sizes) {
    return sizes.stream()
        .collect(Collectors.groupingBy(size -> size, Collectors.counting()))
        .entrySet()
        .stream()
        .max(Map.Entry.comparingByValue())
        .map(Map.Entry::getKey);
  }
}
