package coatwright.replay;

import coatwright.json.Json;
import coatwright.quantity.Quantities;
import coatwright.quantity.RefusedInput;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A case as someone describes it: {@code {kind, conditions {finish, method, temp, rh, wood, ...},
 * assumed_for_numbers, materials, seen, cleared}}, most of it in words. Numbers are taken only
 * where they carry a unit; a per cent counts as humidity only under {@code rh}, beside a
 * temperature ("75 F / 85 %") or before RH.
 *
 * @param finishText what it says of the finish
 * @param seenText what was seen, and what kind of fault it is called
 * @param words all of it that describes, lower case
 */
record DescribedCase(
    String finishText,
    String seenText,
    String words,
    OptionalDouble airTempC,
    OptionalDouble rhPct,
    OptionalDouble woodTempC) {

  /**
   * What is judged on is the description. Remedies tried speak of their own damp and heat, and an
   * answer that comes along is not read.
   */
  private static final Set<String> DESCRIBES =
      Set.of("kind", "conditions", "assumed_for_numbers", "materials", "seen", "what");

  private static final String NUMBER = "(-?\\d+(?:\\.\\d+)?)";
  private static final Pattern DEGREES =
      Pattern.compile(
          NUMBER + "(?:\\s*(?:-|to|–)\\s*" + NUMBER + ")?\\s*(s)?\\s*°?\\s*([FC])\\b",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern PAIR =
      Pattern.compile(
          NUMBER + "\\s*°?\\s*([FC])\\s*[/,]\\s*" + NUMBER + "\\s*%", Pattern.CASE_INSENSITIVE);
  private static final Pattern PER_CENT = Pattern.compile(NUMBER + "\\s*%");
  private static final Pattern PER_CENT_RH =
      Pattern.compile(NUMBER + "\\s*%\\s*(?:rh|relative|humid)", Pattern.CASE_INSENSITIVE);
  private static final Pattern WOOD =
      Pattern.compile(
          "(?:wood|piece|board|surface|substrate)\\s*(?:at|was|is|of)?\\s*"
              + NUMBER
              + "\\s*°?\\s*([FC])\\b",
          Pattern.CASE_INSENSITIVE);

  static DescribedCase read(String json) {
    JsonNode root;
    try {
      root = Json.mapper().readTree(json);
    } catch (JsonProcessingException e) {
      throw RefusedInput.of(
          "case",
          "is no JSON: " + Json.fault(e),
          "write {\"conditions\": {...}, \"seen\": \"...\"}");
    }
    JsonNode conditions = root.path("conditions");
    if (!root.isObject() || (!conditions.isObject() && !root.has("seen"))) {
      throw RefusedInput.of(
          "case",
          "describes neither conditions nor what was seen",
          "write {\"conditions\": {\"finish\": \"...\", \"temp\": \"75 F\"}, \"seen\": \"...\"}");
    }
    List<String> all = new ArrayList<>();
    root.properties().stream()
        .filter(field -> DESCRIBES.contains(field.getKey()))
        .forEach(field -> texts(field.getValue(), all));
    String everything = String.join(". ", all);
    String assumed = text(root, "assumed_for_numbers");
    String told = text(conditions, "temp") + ". " + assumed + ". " + everything;
    Optional<Matcher> pair = first(PAIR, assumed).or(() -> first(PAIR, everything));
    return new DescribedCase(
        text(conditions, "finish") + " " + text(root, "materials"),
        (text(root, "seen") + ". " + text(root, "kind")).toLowerCase(Locale.ROOT),
        everything.toLowerCase(Locale.ROOT),
        pair.isPresent()
            ? OptionalDouble.of(celsius(pair.get().group(1), pair.get().group(2)))
            : degrees(text(conditions, "temp")),
        pair.isPresent()
            ? OptionalDouble.of(Double.parseDouble(pair.get().group(3)))
            : humidity(text(conditions, "rh"), everything),
        wood(text(conditions, "wood"), told));
  }

  private static void texts(JsonNode node, List<String> into) {
    if (node.isValueNode() && !node.isNull()) {
      into.add(node.asText());
    }
    node.forEach(child -> texts(child, into));
  }

  private static String text(JsonNode node, String key) {
    List<String> texts = new ArrayList<>();
    texts(node.path(key), texts);
    return String.join(", ", texts);
  }

  private static Optional<Matcher> first(Pattern pattern, String text) {
    Matcher matcher = pattern.matcher(text);
    return matcher.find() ? Optional.of(matcher) : Optional.empty();
  }

  /** The middle of a range; "50s F" is 55. */
  private static OptionalDouble degrees(String text) {
    Optional<Matcher> found = first(DEGREES, text);
    if (found.isEmpty()) {
      return OptionalDouble.empty();
    }
    Matcher m = found.get();
    double low = Double.parseDouble(m.group(1));
    double high = m.group(2) == null ? low : Double.parseDouble(m.group(2));
    double middle = m.group(3) == null ? (low + high) / 2 : low + 5;
    return OptionalDouble.of(celsius(Double.toString(middle), m.group(4)));
  }

  private static double celsius(String number, String unit) {
    return Quantities.temperatureC("temperature", number + unit);
  }

  private static OptionalDouble humidity(String rh, String everything) {
    Optional<Matcher> found = first(PER_CENT, rh).or(() -> first(PER_CENT_RH, everything));
    return found
        .map(m -> OptionalDouble.of(Double.parseDouble(m.group(1))))
        .filter(v -> v.getAsDouble() > 0 && v.getAsDouble() <= 100)
        .orElse(OptionalDouble.empty());
  }

  private static OptionalDouble wood(String wood, String told) {
    OptionalDouble own = degrees(wood);
    if (own.isPresent()) {
      return own;
    }
    return first(WOOD, told)
        .map(m -> OptionalDouble.of(celsius(m.group(1), m.group(2))))
        .orElse(OptionalDouble.empty());
  }

  boolean says(String regex) {
    return Pattern.compile(regex).matcher(words).find();
  }

  boolean saw(String regex) {
    return Pattern.compile(regex).matcher(seenText).find();
  }
}
