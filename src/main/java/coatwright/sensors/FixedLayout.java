package coatwright.sensors;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Every value lies at an offset of its own, counted from 0. */
record FixedLayout(List<ReadingRule> readings) implements ByteLayout {
  FixedLayout {
    readings = List.copyOf(readings);
  }

  @Override
  public Decoded decode(List<Integer> bytes) {
    Map<String, Cell> cells = new HashMap<>();
    for (ReadingRule rule : readings) {
      Encoding encoding = rule.encoding().orElseThrow();
      int from = Integer.parseInt(rule.at());
      int to = from + encoding.type().bytes();
      if (to > bytes.size()) {
        return new Decoded.No(
            "%d bytes, where %s is to lie in bytes %d to %d"
                .formatted(bytes.size(), rule.quantity(), from, to - 1),
            false);
      }
      double value = encoding.ofBytes(bytes.subList(from, to));
      cells.put(
          rule.place(),
          Double.isNaN(value)
              ? new Cell.Unusable("no value (NaN in the bytes)")
              : new Cell.Figure(value, Double.toString(value)));
    }
    return new Decoded.Values(cells);
  }

  @Override
  public List<String> places() {
    return List.of();
  }
}
