package coatwright.review;

import coatwright.climate.AirPoint;
import coatwright.climate.AirSeries;
import coatwright.climate.Climate;
import coatwright.climate.WoodPoint;
import coatwright.film.CoatOutcome;
import coatwright.film.Ensemble;
import coatwright.film.EnsembleJob;
import coatwright.film.ModelStamp;
import coatwright.film.Percentiles;
import coatwright.film.SpiritDrying;
import coatwright.journal.Coat;
import coatwright.journal.Entry;
import coatwright.journal.Journal;
import coatwright.journal.PartPath;
import coatwright.outlook.CoatJob;
import coatwright.outlook.CuringJob;
import coatwright.outlook.FilmJobs;
import coatwright.outlook.LaidJob;
import coatwright.outlook.Provenance;
import coatwright.outlook.Rebuilt;
import coatwright.quantity.RefusedInput;
import coatwright.review.Why.AirAtFault;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * The case of a coat, made anew from the record at every asking: the air around it, what the film
 * model sees in it, and the same film run again with one thing changed.
 */
public final class FilmReviews implements Reviews {
  private static final Pattern ENTRY = Pattern.compile("e[0-9]+");
  private static final Duration BEFORE = Duration.ofMinutes(30);
  private static final Duration AFTER = Duration.ofMinutes(60);
  private static final Duration WOOD_NEAR = Duration.ofMinutes(5);

  /** The film takes up its water in this time; a gap here leaves nothing to compute from. */
  private static final Duration DECISIVE = Duration.ofMinutes(10);

  private final FilmJobs jobs;
  private final Journal journal;
  private final Climate climate;
  private final ZoneId zone;
  private final Clock clock;

  public FilmReviews(FilmJobs jobs, Journal journal, Climate climate, ZoneId zone, Clock clock) {
    this.jobs = jobs;
    this.journal = journal;
    this.climate = climate;
    this.zone = zone;
    this.clock = clock;
  }

  @Override
  public Why why(String coatOrPart) {
    String name = coatOrPart.strip();
    return ofCoat(ENTRY.matcher(name).matches() ? coat(name) : newest(PartPath.parse(name)));
  }

  private Entry coat(String id) {
    Optional<Entry> entry = journal.entry(id);
    if (entry.isEmpty() || !(entry.get().body() instanceof Coat)) {
      String is = entry.map(e -> "it is a " + e.body().kind()).orElse("there is no such entry");
      throw RefusedInput.of(
          "coat \"" + id + "\"", is, "name a coat by its entry, or a part like cabinet/left-door");
    }
    return entry.get();
  }

  /** The newest clouded coat, else the newest with any fault, else the newest. */
  private Entry newest(PartPath path) {
    List<Entry> coats = new ArrayList<>(journal.coats(path));
    if (coats.isEmpty() && path.face().isEmpty()) {
      journal.coats().stream()
          .filter(e -> ((Coat) e.body()).part().whole().equals(path))
          .forEach(coats::add);
    }
    if (coats.isEmpty()) {
      throw RefusedInput.of(
          "part \"" + path + "\"", "no coat stands on it", "name a part that has been coated");
    }
    Entry newest = coats.get(coats.size() - 1);
    Optional<Entry> faulty = Optional.empty();
    for (int i = coats.size() - 1; i >= 0; i--) {
      CoatNotes notes = CoatNotes.of(journal, coats.get(i));
      if (notes.clouded().isPresent()) {
        return coats.get(i);
      }
      if (faulty.isEmpty() && notes.hasFault()) {
        faulty = Optional.of(coats.get(i));
      }
    }
    return faulty.orElse(newest);
  }

  private Why ofCoat(Entry entry) {
    Coat coat = (Coat) entry.body();
    if (!climate.rooms().contains(coat.room())) {
      return new Page(entry, coat, List.of(), List.of())
          .cantTell("the shop has no readings of a room " + coat.room());
    }
    Instant from = coat.start().minus(BEFORE);
    Instant to = coat.start().plus(AFTER);
    AirSeries series = climate.series(coat.room(), from, to);
    Rebuilt rebuilt = jobs.forCoat(entry, clock.instant());
    Page page = new Page(entry, coat, minutes(coat, series), gaps(series));
    if (rebuilt instanceof Rebuilt.Unknown unknown) {
      return page.cantTell(unknown.reason());
    }
    Optional<String> blind = blind(series, coat.start());
    if (blind.isPresent()) {
      return page.cantTell(blind.get());
    }
    LaidJob job = ((Rebuilt.Known) rebuilt).job();
    return job instanceof CuringJob cure ? page.told(cure) : page.told((CoatJob) job);
  }

  private static Optional<String> blind(AirSeries series, Instant laid) {
    return series.gaps().stream()
        .filter(g -> g.from().isBefore(laid.plus(DECISIVE)) && g.to().isAfter(laid))
        .findFirst()
        .map(
            g ->
                String.format(
                    Locale.ROOT,
                    "nothing was read for %d min just as the coat was laid, and the film takes up"
                        + " its water in ten",
                    g.length().toMinutes()));
  }

  private List<Why.Air> minutes(Coat coat, AirSeries series) {
    List<WoodPoint> wood =
        climate.wood(
            coat.room(),
            Optional.of(coat.part().toString()),
            series.from().minus(WOOD_NEAR),
            series.to().plus(WOOD_NEAR));
    if (wood.isEmpty()) {
      wood =
          climate.wood(
              coat.room(),
              Optional.empty(),
              series.from().minus(WOOD_NEAR),
              series.to().plus(WOOD_NEAR));
    }
    List<Why.Air> air = new ArrayList<>();
    for (AirPoint point : series.points()) {
      air.add(
          new Why.Air(
              point.at(),
              point.airTempC(),
              point.rhPct(),
              point.dewPointC(),
              nearest(wood, point.at())));
    }
    return air;
  }

  private static OptionalDouble nearest(List<WoodPoint> wood, Instant at) {
    return wood.stream()
        .filter(w -> Duration.between(w.at(), at).abs().compareTo(WOOD_NEAR) <= 0)
        .min(Comparator.comparing(w -> Duration.between(w.at(), at).abs()))
        .map(w -> OptionalDouble.of(w.woodTempC()))
        .orElse(OptionalDouble.empty());
  }

  private static List<Why.Gap> gaps(AirSeries series) {
    return series.gaps().stream().map(g -> new Why.Gap(g.from(), g.to())).toList();
  }

  /** One case being written. */
  private final class Page {
    private final Entry entry;
    private final Coat coat;
    private final List<Why.Air> air;
    private final List<Why.Gap> gaps;
    private final CoatNotes notes;

    Page(Entry entry, Coat coat, List<Why.Air> air, List<Why.Gap> gaps) {
      this.entry = entry;
      this.coat = coat;
      this.air = air;
      this.gaps = gaps;
      this.notes = CoatNotes.of(journal, entry);
    }

    Why cantTell(String reason) {
      String sentence = "Whether the air was the cause can't be told: " + reason;
      return why(
          new Finding(sentence, AirAtFault.CANT_TELL),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of());
    }

    Why told(CoatJob known) {
      double spread = spread(known);
      CloudingRun base = CloudingRun.of(known.parameters(), known.alone(), spread);
      JarStory jar = JarStory.of(journal, entry, known.finish(), zone);
      List<Tried> tried = new ArrayList<>();
      for (Change change : Change.all(known)) {
        CloudingRun run = CloudingRun.of(known.parameters(), change.job(), spread);
        if (run.outcome().isPresent()) {
          tried.add(new Tried(change, run));
        }
      }
      tried.sort(Comparator.comparingDouble(t -> t.run().s()));
      List<Why.Counterfactual> changes =
          new ArrayList<>(tried.stream().map(t -> t.told(base)).toList());
      Finding finding = clouding(known, base, tried, jar);
      if (notes.soft().isPresent() && notes.clouded().isEmpty()) {
        FilmSoftness soft = new FilmSoftness(known);
        finding = new SoftCause(soft.softness(), softAgeS(), jar).find();
        // Nobody asked what clouds a film that stayed clear.
        changes = soft.counterfactuals(softAgeS(), spread);
      }
      changes.sort(Comparator.comparing(change -> !change.helps()));
      return why(
          finding,
          saw(base, known.finish().drying().stamp()),
          changes,
          jar.told(),
          cautions(known));
    }

    Why told(CuringJob known) {
      CureCase cure = new CureCase(known);
      JarStory jar = JarStory.of(journal, entry, known.finish(), zone);
      boolean soft = notes.soft().isPresent() && notes.clouded().isEmpty();
      Finding finding =
          soft
              ? new SoftCause(cure.softness(), softAgeS(), jar).find()
              : new CureCause(cure, notes.clouded().isPresent(), jar).find();
      List<Why.Counterfactual> changes = new ArrayList<>(cure.counterfactuals(soft));
      changes.sort(Comparator.comparing(change -> !change.helps()));
      return why(finding, Optional.of(cure.saw()), changes, jar.told(), assumed(known));
    }

    private double softAgeS() {
      Instant seen = notes.soft().orElseThrow().at();
      return Math.max(0, Duration.between(coat.start(), seen).toSeconds());
    }

    private Finding clouding(CoatJob known, CloudingRun base, List<Tried> tried, JarStory jar) {
      var course = known.alone().air();
      // The air that counts is the air at the film's peak of water, not at the first brush stroke.
      double peakS = base.outcome().map(CoatOutcome::peakAfterS).orElse(0.0);
      return new CloudingCause(
              coat.part().toString(),
              notes.clouded().isPresent(),
              Carrier.of(known.finish()),
              base,
              tried,
              jar,
              course.airTempCAt(peakS),
              100 * course.rhFractionAt(peakS))
          .find();
    }

    /** What the model assumed, and what must not be forgotten beside a spoiled piece. */
    private List<String> cautions(CoatJob known) {
      List<String> cautions = assumed(known);
      if (notes.clouded().isPresent()) {
        cautions.add(
            "Bring no heat and no spark near it while "
                + (known.finish().drying() instanceof SpiritDrying ? "spirit" : "solvent")
                + " is leaving the film; read the safety data sheet");
      }
      return cautions;
    }

    private List<String> assumed(LaidJob known) {
      List<String> assumed = new ArrayList<>();
      for (Provenance input : known.inputs()) {
        if (input.assumed()) {
          assumed.add("Assumed: " + input.sentence());
        }
      }
      return assumed;
    }

    private Why why(
        Finding finding,
        Optional<Why.Saw> saw,
        List<Why.Counterfactual> changes,
        List<String> jar,
        List<String> cautions) {
      return new Why(
          entry.id(),
          coat.part().toString(),
          finding.sentence(),
          finding.airAtFault(),
          air,
          gaps,
          saw,
          changes,
          jar,
          cautions);
    }
  }

  /** How far the water ratio of such a coat may lie above its middle: p90 over p50. */
  private static double spread(CoatJob known) {
    Percentiles s =
        Ensemble.predict(EnsembleJob.untested(known.parameters(), known.alone(), known.spreads()))
            .peakS();
    return s.p50().isPresent() && s.p90().isPresent()
        ? s.p90().getAsDouble() / s.p50().getAsDouble()
        : 1;
  }

  private static Optional<Why.Saw> saw(CloudingRun base, ModelStamp stamp) {
    if (base.outcome().isEmpty()) {
      return Optional.empty();
    }
    CoatOutcome outcome = base.outcome().get();
    return Optional.of(
        new Why.Saw(
            stamp.name(),
            stamp.version(),
            base.level().toString(),
            OptionalDouble.of(outcome.waterPeakPct()),
            OptionalDouble.of(outcome.waterLimitPct()),
            outcome.filmLowC(),
            outcome.dewPointC(),
            base.spreadAtWoodK(),
            OptionalDouble.of(outcome.bloomS().orElse(0))));
  }
}
