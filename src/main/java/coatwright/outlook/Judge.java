package coatwright.outlook;

import coatwright.film.CoatOutcome;
import coatwright.film.Finish;
import coatwright.film.ModelStamp;
import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.DryingLevel;
import coatwright.outlook.Outlook.OpenTimeLevel;
import coatwright.outlook.Outlook.Summary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Turns findings into the one verdict, with the one reason and number that decided it. */
final class Judge {
  /** Beyond this S is no coating any more and shown as "over 2". */
  private static final double MOST_SHOWN_S = 2;

  private final Findings findings;
  private final Coating coating;

  private Judge(Findings findings) {
    this.findings = findings;
    this.coating = findings.coating();
  }

  static Outlook judge(Findings findings, List<String> furtherActions) {
    return new Judge(findings).outlook(furtherActions);
  }

  /** No verdict, for want of air or wood that can be believed. */
  static Outlook cantTell(Finish finish, String by, String reason, List<String> actions) {
    ModelStamp stamp = finish.drying().stamp();
    return new Outlook(
        Summary.CANT_TELL,
        reason,
        by,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of(),
        OptionalDouble.empty(),
        List.of(),
        actions,
        Cautions.of(finish, false),
        new Outlook.Model(stamp.name(), stamp.version()));
  }

  private Outlook outlook(List<String> furtherActions) {
    Verdict d = decide();
    List<String> actions = new ArrayList<>(new Remedies(findings).actions());
    actions.addAll(furtherActions);
    ModelStamp stamp = findings.alone().model();
    return new Outlook(
        d.summary(),
        d.reason(),
        d.by(),
        d.deciding(),
        Optional.of(findings.clouding()),
        findings.drying(),
        findings.openTime(),
        Optional.empty(),
        findings.milestones(),
        OptionalDouble.of(findings.coat().dryFilmUm()),
        coating.assumptions(),
        d.summary() == Summary.BRUSH ? List.of() : actions,
        Cautions.of(coating.finish(), coating.coat().holdsButoxyethanol()),
        new Outlook.Model(stamp.name(), stamp.version()));
  }

  private Verdict decide() {
    if (findings.condensation()) {
      return Verdict.dew(coating.woodTempC(), coating.air().dewPointC());
    }
    Optional<Verdict> outside =
        Verdict.outside(coating.finish(), coating.air().airTempC(), coating.woodTempC());
    if (outside.isPresent()) {
      return outside.get();
    }
    if (findings.level() == CloudingLevel.LIKELY) {
      return hold("clouding", clouding());
    }
    if (findings.tooTacky()) {
      return tooTacky();
    }
    if (findings.dryingLevel() == DryingLevel.STALLED) {
      return hold("drying", stalled());
    }
    return careOrGo();
  }

  private Verdict careOrGo() {
    if (findings.level() == CloudingLevel.POSSIBLE || findings.coat().spiritTooWeak()) {
      return orWeakSpirit(Summary.TAKE_CARE, "clouding", clouding());
    }
    if (findings.dryingLevel() == DryingLevel.SLOW) {
      return new Verdict(Summary.TAKE_CARE, "drying", slow());
    }
    Optional<Outlook.OpenTime> open = findings.openTime();
    if (open.isPresent() && open.get().level() == OpenTimeLevel.SHORT) {
      return new Verdict(Summary.TAKE_CARE, "open-time", shortEdge(open.get()));
    }
    Optional<Verdict> window = Verdict.recoatWindow(coating.recoatLeftMin());
    return window.orElseGet(() -> new Verdict(Summary.BRUSH, "clouding", clear()));
  }

  private Verdict hold(String by, String reason) {
    return orWeakSpirit(Summary.HOLD_OFF, by, reason);
  }

  /** The jar is to blame before the weather. */
  private Verdict orWeakSpirit(Summary summary, String by, String reason) {
    boolean jar =
        by.equals("clouding") && findings.coat().spiritTooWeak() && !findings.closeToDew();
    return jar
        ? new Verdict(
            summary,
            "weak-spirit",
            weakSpirit(),
            new Outlook.Deciding(
                coating.coat().strengthVolPct(), "%", "strength of the spirit in the jar"))
        : new Verdict(summary, by, reason);
  }

  private String clouding() {
    CoatOutcome o = findings.coat();
    if (findings.closeToDew()) {
      return text(
          "The wood, %.1f °C, stands only %.1f K above the dew point of %.1f °C%s; under 1 K the"
              + " film clouds.",
          coating.woodTempC(),
          coating.spreadAtWoodK(),
          coating.air().dewPointC(),
          coating.dewErrorK() > 0 ? ", less what the sensors may err" : "");
    }
    String level =
        findings.level() == CloudingLevel.LIKELY ? "The film would cloud" : "The film may cloud";
    String side = findings.marginK() <= 0 ? "below" : "above";
    String clears =
        o.clearsAfterS().isPresent()
            ? text(
                "; it should clear by itself in about %.0f min (estimate)",
                o.clearsAfterS().getAsDouble() / 60)
            : o.hazeAt1h().isPresent() && o.hazeAt1h().getAsDouble() >= 0.05
                ? "; it may stay (estimate)"
                : "";
    return text(
        "%s: its water peaks at %s times what the %s bears (one time in ten %s), the film %.1f K"
            + " %s the dew point%s.",
        level,
        shown(findings.peakS()),
        bearer(),
        shown(findings.peakS90()),
        Math.abs(findings.marginK()),
        side,
        clears);
  }

  /** What the water has to stay in: shellac's resin gives way, of a lacquer the blend. */
  private String bearer() {
    return coating.coat().isSpirit() ? "resin" : "blend";
  }

  private static String shown(double s) {
    return s > MOST_SHOWN_S ? "over 2" : text("%.2f", s);
  }

  private String weakSpirit() {
    CoatOutcome o = findings.coat();
    return text(
        "The spirit is too weak, not the air too damp: at %.1f %% the liquid in the jar holds %s"
            + " times the water its resin bears before it meets the air (0.70 is the most).",
        coating.coat().strengthVolPct(), shown(o.jarS()));
  }

  private Verdict tooTacky() {
    OptionalDouble rest = findings.restNeededMin();
    return Verdict.rest(tacky(rest), rest);
  }

  private String tacky(OptionalDouble rest) {
    return text(
        "Too tacky to go on: %s; the film beneath is %.1f K above its glass transition, %.0f K is"
            + " the most.",
        rest.isPresent()
            ? text("rest it %.0f min more", rest.getAsDouble())
            : "rest it until it no longer drags",
        findings.softBeforeK().getAsDouble(),
        findings.recoatLimitK());
  }

  private String stalled() {
    double ratio = findings.ratioToReference();
    return ratio == 0
        ? "Drying stalls: in this air the film will not get hard enough to rub out within 60 days."
        : text("Drying stalls: rubbing out takes %.1f times as long as in %s.", 1 / ratio, usual());
  }

  private String slow() {
    return text(
        "Drying is slow: rubbing out takes %.1f times as long as in %s.",
        1 / findings.ratioToReference(), usual());
  }

  private String usual() {
    Finish f = coating.finish();
    return text("the usual %.0f °C and %.0f %%", f.referenceTempC(), f.referenceRhPct());
  }

  private String shortEdge(Outlook.OpenTime open) {
    String learned =
        coating.learnedBrushingMin().isPresent()
            ? text(
                " (this part took %.1f min to brush)", coating.learnedBrushingMin().getAsDouble())
            : "";
    return text("The wet edge stays open only %.1f min%s.", open.min(), learned);
  }

  private String clear() {
    return text(
        "Room to spare: at its coldest the film stays %.1f K above the dew point, its water at %s"
            + " of what the %s bears.",
        findings.marginK(), shown(findings.peakS()), bearer());
  }

  static String text(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
