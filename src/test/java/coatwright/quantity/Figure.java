package coatwright.quantity;

import java.util.List;

/**
 * A figure of the register: panels two abreast on a white card, drawn as SVG.
 *
 * @param name of its file, without the ending
 * @param alt what it shows, for those who do not see it
 */
public record Figure(String name, String alt, List<Panel> panels) {
  private static final String STYLE =
      "<style>text{font:12px system-ui,'DejaVu"
          + " Sans',sans-serif;fill:#333}.h{font-weight:600;font-size:13px;fill:#111}.m{text-anchor:middle}.n{text-anchor:end}.w{font-size:11px;font-weight:600;stroke:#fff;stroke-width:3px;paint-order:stroke}.g{stroke:#00000018;fill:none}.a{stroke:#555;fill:none}.c{shape-rendering:crispEdges}</style>\n";

  public String svg() {
    double width = Panel.WIDTH * Math.min(2, panels.size()) + 16;
    int rows = (panels.size() + 1) / 2;
    double height = Panel.HEIGHT * rows + 16;
    StringBuilder svg = new StringBuilder();
    svg.append(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" width=\"%s\" height=\"%s\""
            .formatted(width, height, width, height));
    svg.append(" role=\"img\">\n<title>%s</title>\n".formatted(Panel.escaped(alt))).append(STYLE);
    svg.append(
        "<rect x=\"0.5\" y=\"0.5\" width=\"%s\" height=\"%s\" rx=\"8\" fill=\"#ffffff\""
            .formatted(width - 1, height - 1));
    svg.append(" stroke=\"#cccccc\"/>\n");
    for (int i = 0; i < panels.size(); i++) {
      int row = i / 2;
      svg.append(panels.get(i).at(8 + i % 2 * Panel.WIDTH, 8 + row * Panel.HEIGHT));
    }
    return svg.append("</svg>\n").toString();
  }

  /** Its name, for the list of tests. */
  @Override
  public String toString() {
    return name;
  }
}
