package coatwright.replay;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What finishers look for beside a spoiled piece, as weights: which causes a fault may have, and
 * what in a description speaks for or against each. Common practice, no source; the weights are
 * ours, and order causes rather than measure them.
 */
final class CaseRules {
  /** What was seen. */
  enum Fault {
    INSTRUMENT,
    NONE,
    BUBBLES,
    CRACKED,
    CLOUDED,
    SOFT,
    PRINTS,
    QUICK,
    UNKNOWN
  }

  /**
   * A possible cause.
   *
   * @param weight how common it is among such faults before anything is known
   * @param air whether it is the air's, or the temperature's, doing
   */
  record Possible(Fault fault, String cause, double weight, boolean air) {}

  /**
   * Words that speak for a cause, or against it where the weight is negative.
   *
   * @param says what they say, as told back
   */
  record Clue(String cause, double weight, Pattern words, String says) {}

  static final String DAMP_AIR = "water taken up from damp air";
  static final String COLD_WOOD = "wood colder than the air's dew point allows";
  static final String COLD_CURE = "cold slowed the hardening";
  static final String HOT_DRY = "hot or dry air shortened the wet edge";
  private static final String OVER_RETARDED = "too much slow solvent, a film on the surface";
  private static final String IN_SERVICE = "water or steam on a film that was already hard";
  static final String WET_SPIRIT = "water in the spirit";
  private static final String LAYER = "what lies beneath, or under-dried beneath";
  private static final String DAMP_CURE = "damp air slowed the hardening";
  private static final String OLD_STOCK = "old stock";
  private static final String WOOD_OILS = "the wood's own oils or resins";
  private static final String NO_DRIER = "a slow oil, or one without driers";
  private static final String SLOW_SOLVENT = "the slow solvent added, its kind or dose";
  private static final String HEAVY = "coats too heavy or too close";
  private static final String SHUT_IN = "no exchange of air, an enclosed part";
  private static final String MIX = "the mix of the two parts";
  private static final String BUILD = "too much film in all";
  private static final String SWING = "a swing of temperature after it dried";
  private static final String COLD_DAMP = "coated or recoated too cold or damp";
  private static final String WARMED = "warmed after coating, so that air and solvent rose";
  private static final String PORES = "air in open pores";
  private static final String POP = "solvent caught under a skin";
  private static final String PACKED = "packed before it could bear it";
  private static final String HOT_TRANSIT = "softened by warmth on the way";
  private static final String HANDLING = "brush, cut or pace";
  private static final String METER = "the instrument, not the air";
  private static final String AIR_AS_READ = "the air as it was read";

  static final List<Possible> CAUSES =
      List.of(
          new Possible(Fault.CLOUDED, DAMP_AIR, 0.5, true),
          new Possible(Fault.CLOUDED, COLD_WOOD, -1, true),
          new Possible(Fault.CLOUDED, OVER_RETARDED, -1.5, false),
          new Possible(Fault.CLOUDED, IN_SERVICE, -2, false),
          new Possible(Fault.CLOUDED, WET_SPIRIT, -1.5, false),
          new Possible(Fault.CLOUDED, LAYER, -2, false),
          new Possible(Fault.SOFT, COLD_CURE, -0.3, true),
          new Possible(Fault.SOFT, DAMP_CURE, -2, true),
          new Possible(Fault.SOFT, OLD_STOCK, -1, false),
          new Possible(Fault.SOFT, WOOD_OILS, -1.5, false),
          new Possible(Fault.SOFT, NO_DRIER, -2, false),
          new Possible(Fault.SOFT, SLOW_SOLVENT, -2, false),
          new Possible(Fault.SOFT, HEAVY, -0.7, false),
          new Possible(Fault.SOFT, SHUT_IN, -2, false),
          new Possible(Fault.SOFT, LAYER, -1.5, false),
          new Possible(Fault.SOFT, MIX, -2, false),
          new Possible(Fault.CRACKED, BUILD, 0, false),
          new Possible(Fault.CRACKED, SWING, -0.5, true),
          new Possible(Fault.CRACKED, LAYER, -0.3, false),
          new Possible(Fault.CRACKED, COLD_DAMP, -1, true),
          new Possible(Fault.BUBBLES, WARMED, 0, true),
          new Possible(Fault.BUBBLES, HEAVY, -0.5, false),
          new Possible(Fault.BUBBLES, PORES, -1, false),
          new Possible(Fault.BUBBLES, POP, -1, false),
          new Possible(Fault.PRINTS, PACKED, 1, false),
          new Possible(Fault.PRINTS, HOT_TRANSIT, -1, true),
          new Possible(Fault.QUICK, HOT_DRY, 0, true),
          new Possible(Fault.QUICK, HANDLING, 0, false),
          new Possible(Fault.INSTRUMENT, METER, 3, false),
          new Possible(Fault.INSTRUMENT, AIR_AS_READ, -1, true));

  static final List<Clue> CLUES =
      List.of(
          clue(
              DAMP_AIR,
              1.5,
              "(?<!de)humid(?!ifier)|tropic|damp|\\brain|storm|\\bfog|\\bmist|dawn|coast|swamp|muggy",
              "damp weather is told of"),
          clue(DAMP_AIR, -1.5, "dry air|low rh|desert|\\barid", "the air is told to be dry"),
          clue(
              COLD_WOOD,
              2.5,
              "air.?condition|brought in|cold (wood|piece|top|board|panel)|from (a |the"
                  + " )?(cold|cool|unheated)",
              "the piece came from somewhere colder"),
          clue(
              DAMP_AIR,
              -1,
              "wipes? off|wiped? away",
              "it wipes off, and water caught in the film does not"),
          clue(OVER_RETARDED, 2.5, "wipes? off|wiped? away", "it wipes off"),
          clue(OVER_RETARDED, 0.5, "retarder", "a retarder was used"),
          clue(
              IN_SERVICE,
              4,
              "steam|kettle|in service|hot (dish|cup|mug|pan)|wet glass|months? (later|after|on)",
              "it happened in use, to a film long dry"),
          clue(
              WET_SPIRIT,
              2,
              "weak spirit|old alcohol|water in the (spirit|alcohol)|wet alcohol|open(ed)?"
                  + " (can|jug) of alcohol",
              "the spirit may hold water"),
          clue(
              LAYER,
              1.5,
              "over (a |an )?[a-z]*\\s?(stain|oil|sealer|shellac)|pure tung",
              "it lies over something else"),
          clue(
              LAYER,
              2,
              "\\b(oil|stain|varnish|polish|sealer)\\b[^.;]{0,40}(day before|yesterday|the same"
                  + " day|hours? (ago|before|earlier)|not dry|(still|was) (wet|soft|tacky|oily))",
              "what lies beneath had little time to dry"),
          clue(
              COLD_CURE,
              2,
              "(?<!stored in an )(?<!stored in )(?<!stored"
                  + " )\\b(unheated|december|january|february|winter(?!s)|cold|not heated|heating"
                  + " off|below 6\\d)",
              "cold is told of"),
          clue(COLD_CURE, -1, "\\bwarm shop|heated shop|hot spell", "it was warm"),
          clue(DAMP_CURE, 0.7, "(?<!de)humid|damp", "damp is told of"),
          clue(
              OLD_STOCK,
              3,
              "\\d+[- ]years?[- ]old|date code|out of date|expired|past (its|the)|old"
                  + " (can|jar|stock|tin)|shelf",
              "the stock is old or undated"),
          clue(
              OLD_STOCK,
              3,
              "(mixed|dissolved|opened|bought|made)( up)? (about |over )?(a|one|two|three|four|five"
                  + "|six|several|\\d+) years? ago",
              "the stock was made up years ago"),
          clue(
              WOOD_OILS,
              2,
              "cocobolo|rosewood|ebony|teak|padauk|oily wood|exotic|cedar|bubinga|ipe\\b",
              "the wood is an oily or resinous one"),
          clue(
              WOOD_OILS,
              2,
              "except|only (that|the) one|one wood|end grain|other (parts|woods)|everywhere but",
              "its neighbours in the same air are sound"),
          clue(
              NO_DRIER,
              3.5,
              "without drier|no drier|raw (linseed|oil)|boiled out",
              "the oil has no driers"),
          clue(NO_DRIER, 1, "pure tung|walnut oil", "the oil is a slow one"),
          clue(SLOW_SOLVENT, 3, "retarder|slow solvent", "a slow solvent was added"),
          clue(
              SLOW_SOLVENT,
              0.7,
              "different (can|kind|brand)|kind changed|fine the day before|labell?ed",
              "the can was another"),
          clue(
              HEAVY,
              1.5,
              "thick|heavy|excess|flooded|too soon|same day|min(utes)? apart",
              "coats were heavy or close"),
          clue(
              SHUT_IN,
              2.5,
              "drawer|inside (a |the )?(case|cupboard|cabinet|chest)|enclosed|\\bclosed",
              "the part is shut in"),
          clue(MIX, 1.2, "catal|hardener|two.part", "it has two parts"),
          clue(BUILD, 1, "thick|heavy|mil\\b|[4-9] coats|\\d\\d coats", "there is much film"),
          clue(
              SWING,
              2,
              "\\bcar\\b|\\bvan\\b|truck|freez|\\bcold|below (20|30|0|10)|heat(ing)?"
                  + " off|empty|register|swing",
              "its temperature swung"),
          clue(COLD_DAMP, 1.2, "below 6\\d|damp|humid|\\bcold|unheated", "cold or damp is told of"),
          clue(WARMED, 2, "\\bsun\\b|sun-?warm|warmed|heat|\\bhot\\b", "it was warmed"),
          clue(PORES, 1, "\\boak|\\bash\\b|open.?por", "the wood has open pores"),
          clue(POP, 1.2, "lacquer|\\bfast", "the finish skins fast"),
          clue(HOT_TRANSIT, 1.5, "\\bhot|heat|warm", "it was warm"),
          clue(HANDLING, 0.7, "brush", "it shows in the brush marks"));

  private static Clue clue(String cause, double weight, String words, String says) {
    return new Clue(cause, weight, Pattern.compile(words), says);
  }

  private CaseRules() {}

  static Fault fault(DescribedCase c) {
    if (c.says("hygrometer|\\bmeter\\b|salt test")) {
      return Fault.INSTRUMENT;
    }
    if (c.saw("came out fine|no fault|nothing wrong|turned out (well|fine)")) {
      return Fault.NONE;
    }
    if (c.saw("bubbl|pinprick|blister")) {
      return Fault.BUBBLES;
    }
    if (c.saw("crack|craz|alligator|check(ed|ing)")) {
      return Fault.CRACKED;
    }
    if (c.saw("white|milky|blush|bloom|haz[ey]|cloud|foggy")) {
      return Fault.CLOUDED;
    }
    if (c.saw(
        "sticky|tacky|gummy|not dry|never (dried|cured)|not"
            + " cured|\\bsoft|smell|oily|fingerprint|sticks|off-gas|not hard")) {
      return Fault.SOFT;
    }
    if (c.saw("print|stuck")) {
      return Fault.PRINTS;
    }
    if (c.saw("brush marks|lap marks|dr(y|ies|ied) in")) {
      return Fault.QUICK;
    }
    return c.saw("dry everywhere except") ? Fault.SOFT : Fault.UNKNOWN;
  }
}
