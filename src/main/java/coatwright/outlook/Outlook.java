package coatwright.outlook;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What this air, on this wood, does to this coat: three separate answers and one verdict. The
 * component names are the JSON keys of the contract; absent means unknown.
 *
 * @param reason one sentence with the number that decided it
 * @param decidedBy the short name of the rule that decided it, such as {@code clouding}, {@code
 *     drying}, {@code no-air}
 * @param deciding the number that decided it, where none of the three answers carries it
 * @param cure what is told beside of a finish that cures
 * @param dryFilmUm dry film of this coat, µm
 */
public record Outlook(
    Summary summary,
    String reason,
    String decidedBy,
    Optional<Deciding> deciding,
    Optional<Clouding> clouding,
    Optional<Drying> drying,
    Optional<OpenTime> openTime,
    Optional<Cure> cure,
    List<Milestone> milestones,
    OptionalDouble dryFilmUm,
    List<String> assumptions,
    List<String> actions,
    List<String> cautions,
    Model model) {

  /** The same with other actions. */
  Outlook withActions(List<String> others) {
    return new Outlook(
        summary,
        reason,
        decidedBy,
        deciding,
        clouding,
        drying,
        openTime,
        cure,
        milestones,
        dryFilmUm,
        assumptions,
        others,
        cautions,
        model);
  }

  /** The same decided by another rule; its numbers stay. */
  Outlook decided(Verdict by) {
    return new Outlook(
        by.summary(),
        by.reason(),
        by.by(),
        by.deciding(),
        clouding,
        drying,
        openTime,
        cure,
        milestones,
        dryFilmUm,
        assumptions,
        actions,
        cautions,
        model);
  }

  /** The verdict. {@code toString} is the exact word of the contract. */
  public enum Summary {
    BRUSH("brush"),
    TAKE_CARE("take care"),
    HOLD_OFF("hold off"),
    CANT_TELL("can't tell");

    private final String word;

    Summary(String word) {
      this.word = word;
    }

    @Override
    public String toString() {
      return word;
    }
  }

  /**
   * A number and what it is of.
   *
   * @param unit {@code degC}, {@code min} or {@code %}
   * @param what in words, such as {@code of rest still needed}
   */
  public record Deciding(double value, String unit, String what) {}

  /** How far clouding is to be expected. */
  public enum CloudingLevel {
    LIKELY("likely"),
    POSSIBLE("possible"),
    NONE_EXPECTED("none expected");

    private final String word;

    CloudingLevel(String word) {
      this.word = word;
    }

    @Override
    public String toString() {
      return word;
    }
  }

  /** Drying against the finish's reference air. */
  public enum DryingLevel {
    BRISK,
    USUAL,
    SLOW,
    STALLED;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** Length of the wet edge. */
  public enum OpenTimeLevel {
    SHORT,
    COMFORTABLE,
    LONG;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Clouding. {@code waterPeakPct / waterLimitPct} is the film's water over the water at which the
   * resin gives way, at its peak; {@code clears} says whether the model's haze is gone within the
   * hour (an ordering, an estimate). The percentiles carry the sensors' error and the wood's;
   * {@code marginK} is the middle less its uncertainty, not a percentile.
   */
  public record Clouding(
      CloudingLevel level,
      OptionalDouble marginK,
      OptionalDouble filmLowC,
      double dewPointC,
      double spreadAtWoodK,
      OptionalDouble waterPeakPct,
      OptionalDouble waterLimitPct,
      OptionalDouble waterRatioP90,
      Optional<Boolean> clears,
      OptionalDouble clearsAfterMin,
      OptionalDouble bloomSeconds,
      OptionalDouble marginP10K,
      OptionalDouble marginP90K,
      OptionalDouble waterRatioP10,
      OptionalDouble waterRatioP50) {

    /** Clouding judged without a range. */
    public Clouding(
        CloudingLevel level,
        OptionalDouble marginK,
        OptionalDouble filmLowC,
        double dewPointC,
        double spreadAtWoodK,
        OptionalDouble waterPeakPct,
        OptionalDouble waterLimitPct,
        OptionalDouble waterRatioP90,
        Optional<Boolean> clears,
        OptionalDouble clearsAfterMin,
        OptionalDouble bloomSeconds) {
      this(
          level,
          marginK,
          filmLowC,
          dewPointC,
          spreadAtWoodK,
          waterPeakPct,
          waterLimitPct,
          waterRatioP90,
          clears,
          clearsAfterMin,
          bloomSeconds,
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty());
    }
  }

  /**
   * Drying; scalars are medians. {@code recoatUntilMin} is absent where the finish has no late end.
   */
  public record Drying(
      DryingLevel level,
      double ratioToReference,
      OptionalDouble dryToTouchMin,
      OptionalDouble recoatFromMin,
      OptionalDouble recoatUntilMin,
      OptionalDouble dryHardH,
      Optional<Range> rubOutDays) {}

  /** Tenth, fiftieth and ninetieth percentile; an absent one lies beyond the horizon. */
  public record Range(OptionalDouble p10, OptionalDouble p50, OptionalDouble p90) {}

  /** Open time, minutes. */
  public record OpenTime(OpenTimeLevel level, double min, double p10Min, double p90Min) {}

  /**
   * What a finish that cures has beside its dates.
   *
   * @param potLifeH how long a mixed pot stays workable at this temperature, hours
   * @param filmFormingMarginK wet film less its minimum film-forming temperature, K
   * @param wipeOffAfterMin when to wipe off what stands on it, minutes
   * @param bleedEveryMin how often to wipe while pores weep, minutes
   * @param slowCure every reason for a slow cure, a sentence each
   */
  public record Cure(
      OptionalDouble potLifeH,
      OptionalDouble filmFormingMarginK,
      OptionalDouble wipeOffAfterMin,
      OptionalDouble bleedEveryMin,
      List<String> slowCure) {
    public Cure {
      slowCure = List.copyOf(slowCure);
    }
  }

  /**
   * A milestone counted from this coat, minutes.
   *
   * @param name {@code dry to touch}, {@code dry to recoat}, {@code dry hard}, {@code rub out},
   *     {@code wrap}, {@code full hardness}
   * @param reached false when the median is not reached within the horizon
   * @param estimate whether it rests on a figure nobody measured
   */
  public record Milestone(
      String name,
      OptionalDouble p10Min,
      OptionalDouble p50Min,
      OptionalDouble p90Min,
      boolean reached,
      boolean estimate) {}

  /** The model's name and version; they travel with every number. */
  public record Model(String name, String version) {}
}
