package coatwright.quantity;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A table of published or independently computed values from the test resources, with its header.
 */
public final class ReferenceTable {
  /** One row, asked by column name. */
  public record Row(Map<String, String> cells) {
    public String text(String column) {
      String cell = cells.get(column);
      if (cell == null) {
        throw new IllegalArgumentException("no column " + column + " in " + cells.keySet());
      }
      return cell;
    }

    public double number(String column) {
      return Double.parseDouble(text(column));
    }
  }

  private ReferenceTable() {}

  /**
   * Every row below the header; lines that begin with # say where the values come from.
   *
   * @param path below the folder of references: "moist_air/psychrolib_grid.csv"
   */
  public static List<Row> read(String path) {
    try (InputStream in = ReferenceTable.class.getResourceAsStream("/reference/" + path)) {
      if (in == null) {
        throw new IllegalArgumentException("no reference table " + path);
      }
      BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      return rows(lines.lines().filter(line -> !line.startsWith("#") && !line.isBlank()).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<Row> rows(List<String> lines) {
    List<String> header = cells(lines.get(0));
    List<Row> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = cells(line);
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.size(); i++) {
        row.put(header.get(i), cells.get(i));
      }
      rows.add(new Row(row));
    }
    return rows;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
