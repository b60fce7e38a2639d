package coatwright.sensors;

import coatwright.quantity.StrictNumber;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Columns with a separator. Names come from a header line, which is learned when it passes and is
 * never re-learned in silence: a different header stops the source until a person has looked. Of
 * one whose beginning may be missing the first name is not believed, and the whole takes its place.
 * Without a header, a column's name is its number counted from 1.
 */
final class ColumnsForm implements PayloadForm {
  private static final int MOST_COLUMNS = 256;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final char separator;
  private final boolean wantsHeader;
  private final List<String> names;
  private final List<String> required;
  private List<String> header = List.of();
  private boolean maybeCut;
  private Optional<String> paused = Optional.empty();

  ColumnsForm(PayloadRules rules) {
    this.separator = rules.form().separator();
    this.wantsHeader = rules.form().header();
    this.names =
        Stream.concat(
                rules.readings().stream().map(ReadingRule::at),
                Stream.concat(rules.time().stream().map(TimeRule::at), rules.sensorAt().stream()))
            .distinct()
            .toList();
    this.required = rules.readings().stream().map(ReadingRule::at).distinct().toList();
  }

  @Override
  public Opened open(PayloadText payload) {
    List<String> cells = split(payload.withoutLineEnd());
    if (cells.size() > MOST_COLUMNS) {
      return new Opened.No("more than " + MOST_COLUMNS + " columns");
    }
    if (!wantsHeader) {
      return new Opened.Parts(List.of(place -> numbered(cells, place)));
    }
    if (looksLikeHeader(cells)) {
      return takeHeader(cells);
    }
    if (paused.isPresent()) {
      return new Opened.No(paused.get());
    }
    if (header.isEmpty()) {
      return new Opened.No("no header line seen yet; restart the sender so that it prints one");
    }
    if (cells.size() != header.size()) {
      return new Opened.No(
          "%d columns where the header names %d".formatted(cells.size(), header.size()));
    }
    if (names.stream().anyMatch(name -> namesColumn(at(cells, name)))) {
      return new Opened.No("not numeric; header changed?");
    }
    return new Opened.Parts(List.of(name -> cell(at(cells, name))));
  }

  @Override
  public void overhear(PayloadText payload, boolean cut) {
    List<String> cells = split(payload.withoutLineEnd());
    List<String> sure = cut ? cells.subList(1, cells.size()) : cells;
    if (wantsHeader && header.isEmpty() && looksLikeHeader(sure)) {
      takeHeader(cells);
      maybeCut = cut;
    }
  }

  private boolean looksLikeHeader(List<String> cells) {
    boolean allNamed = cells.containsAll(required);
    return allNamed && cells.stream().noneMatch(c -> StrictNumber.parse(c, '.').isPresent());
  }

  private Opened takeHeader(List<String> cells) {
    if (header.isEmpty() || header.equals(cells) || completes(cells)) {
      header = cells;
      maybeCut = false;
      return new Opened.No("header line", true);
    }
    paused =
        Optional.of(
            "header changed from %s to %s; check the mapping, then restart"
                .formatted(String.join(",", header), String.join(",", cells)));
    return new Opened.No(paused.get());
  }

  /** Whether it is the overheard header with the beginning that was missed. */
  private boolean completes(List<String> cells) {
    String mark = String.valueOf(separator);
    return maybeCut && String.join(mark, cells).endsWith(String.join(mark, header));
  }

  private boolean namesColumn(String cell) {
    return header.contains(cell);
  }

  private String at(List<String> cells, String name) {
    int column = header.indexOf(name);
    return column < 0 || column >= cells.size() ? "" : cells.get(column);
  }

  private static Cell numbered(List<String> cells, String place) {
    var number = StrictNumber.parse(place, '.');
    int column = number.isPresent() ? (int) number.getAsDouble() : 0;
    return column < 1 || column > cells.size() ? Cell.ABSENT : cell(cells.get(column - 1));
  }

  private static Cell cell(String text) {
    return text.isEmpty() ? Cell.ABSENT : new Cell.Words(text);
  }

  /** Cells may be quoted as in RFC 4180: a quote inside is written twice. */
  private List<String> split(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    int from = !line.isEmpty() && line.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
    for (int at = from; at < line.length(); at++) {
      char c = line.charAt(at);
      boolean pair = quoted && c == '"' && at + 1 < line.length() && line.charAt(at + 1) == '"';
      if (pair) {
        cell.append(c);
        at++;
      } else if (c == '"' && (quoted || cell.toString().isBlank())) {
        quoted = !quoted;
      } else if (c == separator && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString().strip());
    return List.copyOf(cells);
  }
}
