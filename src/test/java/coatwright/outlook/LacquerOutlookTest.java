package coatwright.outlook;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.film.FilmParameters;
import coatwright.film.Finish;
import coatwright.film.LacquerBlend;
import coatwright.film.LacquerDrying;
import coatwright.film.Layer;
import coatwright.outlook.Outlook.CloudingLevel;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A described coat of lacquer: the blend decides (common practice, no source). */
class LacquerOutlookTest {
  private static Finish finish(LacquerBlend blend) {
    return new Finish(
        "lacquer",
        "Lacquer",
        Layer.LACQUER,
        new LacquerDrying(FilmParameters.LACQUER, blend, 20, 0.15),
        25,
        50,
        Map.of("brush", 100.0),
        0.2,
        5,
        35,
        OptionalDouble.empty(),
        12,
        90,
        "",
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static Outlook outlook(LacquerBlend blend, String... keysAndValues) {
    Map<String, String> form = new HashMap<>(Map.of("finish", "lacquer"));
    for (int i = 0; i < keysAndValues.length; i += 2) {
      form.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return FilmOutlooks.described(OutlookForm.read(form, Map.of("lacquer", finish(blend))));
  }

  private static CloudingLevel level(Outlook o) {
    return o.clouding().orElseThrow().level();
  }

  @ParameterizedTest(name = "{0} at {1}: {2}")
  @CsvSource({
    "fast, '28C,80%', likely",
    "regular, '28C,80%', possible",
    "fast, '20C,50%', none expected",
    "regular, '20C,50%', none expected",
    "slowed, '20C,50%', none expected",
  })
  void cloudsInDampWarmAirTheQuickBlendFirst(String blend, String air, String level) {
    Outlook o = outlook(LacquerBlend.named(blend).orElseThrow(), "air", air);
    assertThat(level(o).toString()).isEqualTo(level);
    assertThat(o.assumptions()).anyMatch(s -> s.contains(blend + " blend"));
    assertThat(o.model().name()).isEqualTo("film/lacquer");
  }

  @Test
  void offersWarmthADrierRoomOrASlowerBlendButNoSpirit() {
    Outlook o = outlook(LacquerBlend.FAST, "air", "28C,80%");
    assertThat(o.actions()).anyMatch(s -> s.contains("slower blend"));
    assertThat(o.actions()).noneMatch(s -> s.contains("spirit of") || s.contains("heavier cut"));
  }

  @Test
  void aSlowedBlendTellsThatItsSlowSolventPassesTheSkin() {
    String skin = "2-butoxyethanol passes the skin.";
    assertThat(outlook(LacquerBlend.SLOWED, "air", "25C,50%").cautions()).contains(skin);
    assertThat(outlook(LacquerBlend.REGULAR, "air", "25C,50%").cautions()).doesNotContain(skin);
  }

  @Test
  void tellsAStackOfLacquerToo() {
    Outlook o =
        outlook(LacquerBlend.REGULAR, "air", "25C,50%", "coatsBefore", "2", "interval", "60min");
    assertThat(o.assumptions()).anyMatch(s -> s.contains("2 coats before"));
    assertThat(o.milestones()).isNotEmpty();
  }
}
