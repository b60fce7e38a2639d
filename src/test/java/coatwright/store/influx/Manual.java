package coatwright.store.influx;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the manual tells people to type. */
final class Manual {
  private Manual() {}

  /** The query in the block of that language, on one line. */
  static String query(String language) throws IOException {
    String text = Files.readString(Path.of("docs", "operating.md"));
    Matcher block =
        Pattern.compile("```" + language + "\n(.*?)\n```", Pattern.DOTALL).matcher(text);
    if (!block.find()) {
      throw new AssertionError("docs/operating.md has no block of " + language);
    }
    return block.group(1).replaceAll("\\s+", " ");
  }
}
