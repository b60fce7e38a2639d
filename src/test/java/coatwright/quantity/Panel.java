package coatwright.quantity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * One picture of a figure: two axes with their units, curves of ours, and the points others
 * published. Coordinates are rounded to a tenth of a pixel, so that no machine's last digit shows.
 */
public final class Panel {
  /** Colours that stay apart for most eyes, and from grey. */
  public static final List<String> COLOURS =
      List.of("#0072b2", "#d55e00", "#009e73", "#8e4585", "#7a5c00", "#444444");

  static final double WIDTH = 440;
  static final double HEIGHT = 340;
  private static final double LEFT = 58;
  private static final double RIGHT = 18;
  private static final double TOP = 34;
  private static final double BOTTOM = 46;
  private static final int STEPS = 120;

  private final String title;
  private final Scale x;
  private final Scale y;
  private final StringBuilder below = new StringBuilder();
  private final StringBuilder lines = new StringBuilder();
  private final StringBuilder dots = new StringBuilder();
  private final StringBuilder words = new StringBuilder();

  /** An axis: what and in which unit, its ends, the marks on it, and whether it is logarithmic. */
  public record Scale(String what, double from, double to, boolean log, List<Double> marks) {
    public static Scale of(String what, double from, double to, double step) {
      List<Double> marks = new ArrayList<>();
      for (int i = 0; from + i * step <= to + 1e-9 * step; i++) {
        marks.add(from + i * step);
      }
      return new Scale(what, from, to, false, marks);
    }

    public static Scale log(String what, double from, double to, double... marks) {
      return new Scale(what, from, to, true, Arrays.stream(marks).boxed().toList());
    }

    double share(double value) {
      return log ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
    }

    double at(double share) {
      return log ? from * Math.pow(to / from, share) : from + share * (to - from);
    }
  }

  public Panel(String title, Scale x, Scale y) {
    this.title = title;
    this.x = x;
    this.y = y;
  }

  /** A curve of ours over the whole axis. */
  public Panel curve(int colour, DoubleUnaryOperator ours) {
    return curve(colour, x.from, x.to, ours);
  }

  /** A curve of ours between two values. */
  public Panel curve(int colour, double from, double to, DoubleUnaryOperator ours) {
    List<double[]> points = new ArrayList<>();
    double first = x.share(from);
    double last = x.share(to);
    for (int i = 0; i <= STEPS; i++) {
      double between = x.at(first + (last - first) * i / STEPS);
      double at = i == 0 ? from : i == STEPS ? to : between;
      points.add(new double[] {at, ours.applyAsDouble(at)});
    }
    return line(colour, false, points);
  }

  /** Straight lines from point to point; a dashed one is a limit or an aid, not a result. */
  public Panel line(int colour, boolean dashed, List<double[]> points) {
    lines.append("<polyline fill=\"none\" stroke=\"").append(COLOURS.get(colour)).append('"');
    lines.append(dashed ? " stroke-width=\"1.2\" stroke-dasharray=\"5 4\"" : " stroke-width=\"2\"");
    lines.append(" points=\"");
    for (double[] point : points) {
      lines.append(px(point[0])).append(',').append(py(point[1])).append(' ');
    }
    lines.setLength(lines.length() - 1);
    lines.append("\"/>\n");
    return this;
  }

  public Panel dashed(int colour, double fromX, double fromY, double toX, double toY) {
    return line(colour, true, List.of(new double[] {fromX, fromY}, new double[] {toX, toY}));
  }

  /** A published point; ours is the curve under it. */
  public Panel dot(int colour, double atX, double atY) {
    if (inside(x, atX) && inside(y, atY)) {
      dots.append("<circle cx=\"%s\" cy=\"%s\" r=\"2.9\" ".formatted(px(atX), py(atY)));
      dots.append("fill=\"#ffffff\" stroke=\"%s\" stroke-width=\"1.4\"/>\n".formatted(hex(colour)));
    }
    return this;
  }

  /** A filled cell of a map. */
  public Panel cell(String fill, double fromX, double fromY, double toX, double toY) {
    double left = left(fromX);
    double top = top(toY);
    below.append(
        "<rect class=\"c\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\"/>\n"
            .formatted(
                tenth(left), tenth(top), tenth(left(toX) - left), tenth(top(fromY) - top), fill));
    return this;
  }

  /** A word beside a curve, starting at a point. */
  public Panel word(int colour, double atX, double atY, String text) {
    words.append(
        "<text class=\"w\" x=\"%s\" y=\"%s\" style=\"fill:%s\">%s</text>\n"
            .formatted(px(atX), py(atY), hex(colour), escaped(text)));
    return this;
  }

  /** The panel with its top left corner moved to a place on the sheet. */
  String at(double offsetX, double offsetY) {
    StringBuilder svg = new StringBuilder();
    svg.append("<g transform=\"translate(%s %s)\">\n".formatted(tenth(offsetX), tenth(offsetY)));
    svg.append("<text class=\"h\" x=\"%s\" y=\"20\">%s</text>\n".formatted(LEFT, escaped(title)));
    svg.append(below);
    for (double mark : x.marks) {
      String at = px(mark);
      svg.append(
          "<path class=\"g\" d=\"M%s %sV%s\"/><text class=\"m\" x=\"%s\" y=\"%s\">%s</text>\n"
              .formatted(at, TOP, HEIGHT - BOTTOM, at, HEIGHT - BOTTOM + 15, number(mark)));
    }
    for (double mark : y.marks) {
      svg.append(
          "<path class=\"g\" d=\"M%s %sH%s\"/><text class=\"n\" x=\"%s\" y=\"%s\">%s</text>\n"
              .formatted(
                  LEFT, py(mark), WIDTH - RIGHT, LEFT - 6, tenth(top(mark) + 4), number(mark)));
    }
    svg.append(lines).append(dots).append(words);
    svg.append(
        "<path class=\"a\" d=\"M%s %sV%sH%s\"/>\n"
            .formatted(LEFT, TOP, HEIGHT - BOTTOM, WIDTH - RIGHT));
    svg.append(
        "<text class=\"m\" x=\"%s\" y=\"%s\">%s</text>\n"
            .formatted(tenth((LEFT + WIDTH - RIGHT) / 2), HEIGHT - 10, escaped(x.what)));
    svg.append(
        "<text class=\"m\" transform=\"translate(14 %s) rotate(-90)\">%s</text>\n</g>\n"
            .formatted(tenth((TOP + HEIGHT - BOTTOM) / 2), escaped(y.what)));
    return svg.toString();
  }

  private static boolean inside(Scale scale, double value) {
    double share = scale.share(value);
    return share >= -1e-9 && share <= 1 + 1e-9;
  }

  private double left(double value) {
    return LEFT + x.share(value) * (WIDTH - LEFT - RIGHT);
  }

  private double top(double value) {
    return HEIGHT - BOTTOM - y.share(value) * (HEIGHT - TOP - BOTTOM);
  }

  private String px(double value) {
    return tenth(left(value));
  }

  private String py(double value) {
    return tenth(top(value));
  }

  private static String hex(int colour) {
    return COLOURS.get(colour);
  }

  static String tenth(double pixels) {
    return String.format(Locale.ROOT, "%.1f", pixels);
  }

  private static String number(double mark) {
    double size = Math.abs(mark);
    if (size > 0 && (size < 2e-3 || size >= 1e4)) {
      int power = (int) Math.round(Math.log10(size));
      return "10<tspan dy=\"-4\" font-size=\"8\">"
          + (power < 0 ? "−" : "")
          + Math.abs(power)
          + "</tspan>";
    }
    String text = String.format(Locale.ROOT, "%.4f", size).replaceFirst("\\.?0+$", "");
    return mark < 0 ? "−" + text : text;
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
