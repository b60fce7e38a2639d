package coatwright.film;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A table of {@code src/test/resources/reference/film}: a header line, then numbers. */
final class ReferenceTable {
  private ReferenceTable() {}

  record Row(Map<String, String> cells) {
    double number(String column) {
      String text = cells.get(column);
      return "inf".equals(text) ? Double.POSITIVE_INFINITY : Double.parseDouble(text);
    }

    String text(String column) {
      return cells.get(column);
    }
  }

  static List<Row> read(String file) {
    String path = "/reference/film/" + file;
    try (InputStream in = ReferenceTable.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalArgumentException("no " + path);
      }
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      String[] header = lines.get(0).split(",", -1);
      List<Row> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.length; i++) {
          row.put(header[i], cells[i]);
        }
        rows.add(new Row(row));
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
