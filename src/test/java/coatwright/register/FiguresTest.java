package coatwright.register;

import static org.assertj.core.api.Assertions.assertThat;

import coatwright.air.AirFigure;
import coatwright.film.CloudingFigure;
import coatwright.film.CuringFigure;
import coatwright.film.DryingFigure;
import coatwright.film.LacquerFigure;
import coatwright.film.RangeFigure;
import coatwright.film.StepsFigure;
import coatwright.mix.MixFigure;
import coatwright.quantity.Figure;
import coatwright.solvent.SolventFigure;
import coatwright.wood.WoodFigure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The register's figures are drawn by the code they show; this draws them again. */
class FiguresTest {
  private static final Path FOLDER = Path.of("docs/figures");
  private static final String WRITE = "coatwright.register.write";

  private static final List<Figure> FIGURES =
      List.of(
          AirFigure.figure(),
          WoodFigure.figure(),
          SolventFigure.figure(),
          MixFigure.figure(),
          CloudingFigure.figure(),
          DryingFigure.figure(),
          StepsFigure.figure(),
          LacquerFigure.figure(),
          CuringFigure.figure(),
          RangeFigure.figure());

  static List<Figure> figures() {
    return FIGURES;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("figures")
  void everyFigureIsWhatTheCodeDrawsToday(Figure figure) throws IOException {
    Path file = FOLDER.resolve(figure.name() + ".svg");
    if (Boolean.getBoolean(WRITE)) {
      Files.writeString(file, figure.svg());
    }
    assertThat(file)
        .as(
            "%s is not what the code draws; if the change is meant, draw it again and look at it:"
                + " mvn -o -Dquick test -Dtest=FiguresTest -D%s=true",
            file, WRITE)
        .hasContent(figure.svg());
  }

  @Test
  void everyFigureIsShownInTheRegisterAndNoOtherLiesThere() throws IOException {
    String register = Files.readString(Path.of("docs/physics.md"));
    List<String> names = FIGURES.stream().map(figure -> figure.name() + ".svg").toList();
    assertThat(names).allMatch(name -> register.contains("(figures/" + name + ")"));
    try (Stream<Path> files = Files.list(FOLDER)) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(names);
    }
  }
}
