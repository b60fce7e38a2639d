package coatwright.sensors;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * JSON by RFC 8259 and nothing more: a name stands once, nothing follows the value, depth and
 * length are limited, one byte order mark is allowed. Never repaired.
 */
final class JsonForm implements PayloadForm {
  private static final int DEEPEST = 32;
  private static final int MOST_PARTS = 256;
  private static final int LONGEST_NUMBER = 64;
  private static final int LONGEST_TEXT = 65_536;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private static final ObjectMapper STRICT =
      JsonMapper.builder(
              JsonFactory.builder()
                  .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxNumberLength(LONGEST_NUMBER)
                          .maxStringLength(LONGEST_TEXT)
                          .build())
                  .build())
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .build();

  private final Optional<String> each;

  JsonForm(Optional<String> each) {
    this.each = each;
  }

  @Override
  public Opened open(PayloadText payload) {
    Read read = read(payload);
    if (read.root().isEmpty()) {
      return new Opened.No(read.refusal());
    }
    List<Cells> parts = parts(read.root().get());
    return parts.size() > MOST_PARTS
        ? new Opened.No("more than %d members at each".formatted(MOST_PARTS))
        : new Opened.Parts(parts, flags(payload), "");
  }

  /**
   * The value a payload is.
   *
   * @param root empty when it is none
   * @param refusal why it is none
   */
  record Read(Optional<JsonNode> root, String refusal) {
    private static Read no(String refusal) {
      return new Read(Optional.empty(), refusal);
    }
  }

  /** Reads the payload as one JSON value, strictly. */
  static Read read(PayloadText payload) {
    String text = payload.text();
    if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
      text = text.substring(1);
    }
    try (JsonParser parser = STRICT.createParser(text)) {
      JsonNode root = STRICT.readTree(parser);
      if (root == null || root.isMissingNode()) {
        return Read.no("empty payload");
      }
      return followed(parser)
          ? Read.no("trailing data after JSON value; let the sender send one value a message")
          : new Read(Optional.of(root), "");
    } catch (IOException e) {
      return Read.no(refusal(payload, String.valueOf(e.getMessage())));
    }
  }

  static List<String> flags(PayloadText payload) {
    return payload.foreign() ? List.of("charset") : List.of();
  }

  private static boolean followed(JsonParser parser) {
    try {
      return parser.nextToken() != null;
    } catch (IOException e) {
      return true;
    }
  }

  private static String refusal(PayloadText payload, String message) {
    if (payload.foreign()) {
      return "invalid JSON, and not UTF-8: a compressed or binary payload? Narrow the filter";
    }
    if (message.contains("Duplicate field")) {
      return "invalid JSON: a name stands twice; mend it in the sender";
    }
    if (message.contains("NaN") || message.contains("INF")) {
      return "invalid JSON (bare NaN or infinity); the sender prints a failed read: look at its"
          + " sensor";
    }
    return message.contains("nesting depth")
        ? "invalid JSON: nested too deep"
        : "invalid JSON; mend it in the sender, nothing is repaired here";
  }

  private List<Cells> parts(JsonNode root) {
    if (each.isEmpty()) {
      return List.of(new Node(root, root));
    }
    String path = each.get();
    JsonNode parent = root.at(JsonPointer.compile(path.substring(0, path.length() - 2)));
    List<Cells> parts = new ArrayList<>();
    parent.forEach(child -> parts.add(new Node(child, root)));
    return parts;
  }

  private record Node(JsonNode node, JsonNode root) implements Cells {
    @Override
    public Cell at(String place) {
      return cell(node.at(JsonPointer.compile(place)));
    }

    @Override
    public Cell nearOrRoot(String place) {
      Cell near = at(place);
      return near instanceof Cell.Absent ? cell(root.at(JsonPointer.compile(place))) : near;
    }
  }

  /** What stands at a place. */
  static Cell cell(JsonNode found) {
    return switch (found.getNodeType()) {
      case MISSING -> Cell.ABSENT;
      case STRING -> new Cell.Words(found.textValue());
      case NUMBER -> new Cell.Figure(found.doubleValue(), found.asText());
      case NULL -> new Cell.Other("null");
      case BOOLEAN -> new Cell.Other("boolean " + found.booleanValue());
      case ARRAY -> new Cell.Other("array");
      default -> new Cell.Other("object");
    };
  }
}
