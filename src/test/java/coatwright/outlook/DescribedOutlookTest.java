package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import coatwright.outlook.Outlook.CloudingLevel;
import coatwright.outlook.Outlook.Summary;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The decision table for described coats. The figures of S and of the margin are those of an
 * independent program for the same model (docs/physics.md), which gives them to two decimals.
 */
class DescribedOutlookTest {
  private static Outlook outlook(String... keysAndValues) {
    Map<String, String> form = new HashMap<>(Map.of("finish", "shellac-pale"));
    for (int i = 0; i < keysAndValues.length; i += 2) {
      form.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return FilmOutlooks.described(OutlookForm.read(form, TestShop.FINISHES));
  }

  private static double s(Outlook o) {
    Outlook.Clouding c = o.clouding().orElseThrow();
    return c.waterPeakPct().getAsDouble() / c.waterLimitPct().getAsDouble();
  }

  @ParameterizedTest(name = "{0} with wood {1} and a {2} cut: S {3}, margin {4} K: {5}, {6}")
  @CsvSource({
    "'28C,80%', 28C, 1.5lb, 1.39, -2.4, likely, hold off",
    "'20C,50%', 20C, 1.5lb, 0.75, 5.2, none expected, brush",
    "'20C,70%', 20C, 1.5lb, 1.10, 0.4, possible, take care",
    "'20C,60%', 20C, 1lb, 1.22, 2.5, possible, take care",
    "'20C,50%', 10C, 1.5lb, 1.21, 0.7, likely, hold off",
  })
  void answersTheChecksOfTheDecisionTable(
      String air, String wood, String cut, double s, double margin, String level, String summary) {
    Outlook o = outlook("air", air, "wood", wood, "cut", cut);
    assertThat(s(o)).isCloseTo(s, within(0.01));
    assertThat(o.clouding().orElseThrow().marginK().getAsDouble()).isCloseTo(margin, within(0.06));
    assertThat(o.clouding().orElseThrow().level().toString()).isEqualTo(level);
    assertThat(o.summary().toString()).isEqualTo(summary);
  }

  @Test
  void callsWoodTenKelvinTooColdTooCloseToTheDewPoint() {
    Outlook o = outlook("air", "20C,50%", "wood", "10C");
    assertThat(o.clouding().orElseThrow().spreadAtWoodK()).isCloseTo(0.7, within(0.05));
    assertThat(o.decidedBy()).isEqualTo("clouding");
    assertThat(o.reason()).contains("0.7 K above the dew point");
  }

  @Test
  void saysCondensationAndGivesNoTimesBelowTheDewPoint() {
    Outlook o = outlook("air", "28C,80%", "wood", "22C");
    assertThat(o.summary()).isEqualTo(Summary.HOLD_OFF);
    assertThat(o.decidedBy()).isEqualTo("condensation");
    assertThat(o.reason()).contains("Condensation").contains("do not coat");
    assertThat(o.milestones()).isEmpty();
    assertThat(o.drying()).isEmpty();
    assertThat(o.openTime()).isEmpty();
    assertThat(s(o)).isCloseTo(1.93, within(0.01));
  }

  @Test
  void hasNoOpenTimeForAFourPoundCut() {
    assertThat(outlook("air", "20C,50%", "cut", "4lb").openTime()).isEmpty();
    assertThat(outlook("air", "20C,50%", "cut", "2lb").openTime()).isPresent();
  }

  @Test
  void blamesWeakSpiritAndNotTheWeather() {
    Outlook o = outlook("air", "25C,31%", "strength", "85%");
    assertThat(o.decidedBy()).isEqualTo("weak-spirit");
    assertThat(o.reason()).contains("too weak, not the air too damp");
    assertThat(o.summary()).isNotEqualTo(Summary.BRUSH);
    assertThat(o.actions()).anyMatch(a -> a.contains("spirit of 95 %"));
  }

  @Test
  void takesWoodAsWarmAsTheAirAndSaysSo() {
    assertThat(outlook("air", "20C,50%").assumptions())
        .anyMatch(a -> a.contains("Wood taken to be as warm as the air"));
    assertThat(outlook("air", "20C,50%", "wood", "20C").assumptions())
        .noneMatch(a -> a.contains("Wood taken"));
  }

  @Test
  void namesTheDriedSampleTestWhereTheCutIsUnknown() {
    assertThat(outlook("air", "20C,50%").assumptions())
        .anyMatch(a -> a.contains("1.5 lb") && a.contains("dried-sample test"));
    Outlook told = outlook("air", "20C,50%", "cut", "1.5lb");
    assertThat(told.assumptions()).noneMatch(a -> a.contains("dried-sample"));
    Outlook.Range untoldRange =
        outlook("air", "20C,50%").drying().orElseThrow().rubOutDays().orElseThrow();
    Outlook.Range toldRange = told.drying().orElseThrow().rubOutDays().orElseThrow();
    assertThat(untoldRange.p90().getAsDouble() / untoldRange.p10().getAsDouble())
        .isGreaterThan(toldRange.p90().getAsDouble() / toldRange.p10().getAsDouble());
  }

  @Test
  void offersOnlyWhatHelpsAndNeverHeatOnAWetFilm() {
    Outlook o = outlook("air", "28C,80%");
    assertThat(o.actions())
        .anyMatch(a -> a.startsWith("Warm the wood by"))
        .anyMatch(a -> a.startsWith("Dry the room to"))
        .noneMatch(a -> a.contains("2-butoxyethanol"));
    assertThat(o.actions())
        .filteredOn(a -> a.startsWith("Warm the wood"))
        .allMatch(a -> a.contains("Never heat on a wet spirit film"))
        .allMatch(a -> a.contains("before the jar is opened"));
    assertThat(outlook("air", "20C,50%").actions()).isEmpty();
  }

  @Test
  void whatItOffersHelpsWhenDone() {
    String warm =
        outlook("air", "20C,50%", "wood", "10C").actions().stream()
            .filter(a -> a.startsWith("Warm the wood"))
            .findFirst()
            .orElseThrow();
    int byK = Integer.parseInt(warm.replaceAll("Warm the wood by (\\d+) K.*", "$1"));
    Outlook warmed = outlook("air", "20C,50%", "wood", (10 + byK) + "C");
    assertThat(warmed.clouding().orElseThrow().level()).isEqualTo(CloudingLevel.NONE_EXPECTED);
  }

  @Test
  void alwaysTellsTheCautionsAndNeverTheForbiddenWord() {
    for (String air : new String[] {"20C,50%", "28C,80%", "7C,60%", "30C,90%", "3C,60%"}) {
      Outlook o = outlook("air", air);
      assertThat(o.cautions()).anyMatch(c -> c.contains("safety data sheet, follow local code"));
      assertThat(o.cautions()).anyMatch(c -> c.contains("flammable"));
      String everything = o.reason() + o.assumptions() + o.actions() + o.cautions().toString();
      assertThat(everything.toLowerCase(java.util.Locale.ROOT)).doesNotContainPattern("\\bsafe\\b");
    }
  }

  @Test
  void holdsOffWhereTheFilmBeneathIsTooTackyAndSaysHowLongToRest() {
    Outlook fourth = outlook("air", "20C,50%", "coatsBefore", "3", "interval", "15min");
    assertThat(fourth.decidedBy()).isNotEqualTo("too-tacky");
    Outlook fifth = outlook("air", "20C,50%", "coatsBefore", "4", "interval", "15min");
    assertThat(fifth.summary()).isEqualTo(Summary.HOLD_OFF);
    assertThat(fifth.decidedBy()).isEqualTo("too-tacky");
    assertThat(fifth.reason()).containsPattern("rest it \\d+ min more");
  }

  @Test
  void callsDryingStalledWhereTheAirIsTooDampToHarden() {
    Outlook.Drying drying = outlook("air", "30C,90%").drying().orElseThrow();
    assertThat(drying.level().toString()).isEqualTo("stalled");
    assertThat(drying.ratioToReference()).isZero();
  }

  @Test
  void callsCoolAirSlowAndBriskDraughtShort() {
    assertThat(outlook("air", "8C,40%").decidedBy()).isEqualTo("drying");
    Outlook draughty = outlook("air", "20C,40%", "draught", "brisk", "cut", "1.5lb");
    assertThat(draughty.decidedBy()).isEqualTo("open-time");
    assertThat(draughty.openTime().orElseThrow().level().toString()).isEqualTo("short");
  }

  @Test
  void staysWithinWhatTheFinishIsStatedFor() {
    Outlook o = outlook("air", "3C,40%");
    assertThat(o.summary()).isEqualTo(Summary.HOLD_OFF);
    assertThat(o.decidedBy()).isEqualTo("limits");
  }

  @Test
  void tellsTheNumberThatDecidedWhereNoneOfTheThreeAnswersHasIt() {
    Outlook.Deciding least = outlook("air", "3C,40%").deciding().orElseThrow();
    assertThat(least.value()).isEqualTo(TestShop.FINISHES.get("shellac-pale").lowestTempC());
    assertThat(least.unit()).isEqualTo("degC");
    assertThat(least.what()).isEqualTo("is the least for this finish; the air is below it");
    assertThat(outlook("air", "20C,25%", "wood", "3C").deciding().orElseThrow().what())
        .endsWith("the wood is below it");
    Outlook.Deciding most = outlook("air", "45C,20%").deciding().orElseThrow();
    assertThat(most.value()).isEqualTo(TestShop.FINISHES.get("shellac-pale").highestTempC());
    assertThat(most.what()).isEqualTo("is the most for this finish; the air is above it");

    Outlook.Deciding spirit = outlook("air", "25C,31%", "strength", "85%").deciding().orElseThrow();
    assertThat(spirit)
        .isEqualTo(new Outlook.Deciding(85, "%", "strength of the spirit in the jar"));
  }

  @ParameterizedTest
  @CsvSource({"'20C,50%', clouding", "'28C,80%', clouding", "'8C,40%', drying"})
  void tellsNoFurtherNumberWhereAnAnswerHasIt(String air, String decidedBy) {
    Outlook o = outlook("air", air);
    assertThat(o.decidedBy()).isEqualTo(decidedBy);
    assertThat(o.deciding()).isEmpty();
  }

  @Test
  void writesDropsDownAndDoesNotComputeThem() {
    Outlook drops = outlook("air", "20C,50%", "retarder", "drops:10/qt");
    assertThat(drops.assumptions())
        .anyMatch(a -> a.contains("drops:10/qt") && a.contains("not computed"));
    assertThat(s(drops)).isEqualTo(s(outlook("air", "20C,50%")));
    assertThat(s(outlook("air", "20C,50%", "retarder", "2-butoxyethanol:3%")))
        .isCloseTo(0.71, within(0.01));
  }
}
