package coatwright.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.util.List;

/**
 * Writes comma-separated values as RFC 4180 describes them: lines end in CR LF, a cell with a
 * comma, quote or line break is quoted, a quote is doubled.
 *
 * <p>A cell of text that begins as a formula does (=, +, -, @, tab, CR) gets an apostrophe in
 * front, so that a spreadsheet shows it instead of running it. Numbers are left alone.
 */
final class Csv {
  private static final String FORMULA_STARTS = "=+-@\t\r";

  private final Writer out;

  Csv(Writer out) {
    this.out = out;
  }

  /** One line. Numbers are written as numbers, anything else as text; an empty cell is unknown. */
  void line(List<?> cells) {
    try {
      for (int i = 0; i < cells.size(); i++) {
        out.write(i == 0 ? "" : ",");
        Object cell = cells.get(i);
        out.write(cell instanceof Number ? cell.toString() : text(cell.toString()));
      }
      out.write("\r\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static String text(String cell) {
    boolean formula = !cell.isEmpty() && FORMULA_STARTS.indexOf(cell.charAt(0)) >= 0;
    String guarded = formula ? "'" + cell : cell;
    boolean quoted = guarded.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
    return quoted ? '"' + guarded.replace("\"", "\"\"") + '"' : guarded;
  }
}
