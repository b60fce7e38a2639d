package coatwright.air;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs {@link AirBench} and prints it beside the peer's times and the peer's answers. */
final class AirVersus {
  private static final List<String> FUNCTIONS =
      List.of("dewPoint", "wetBulb", "humidityRatio", "enthalpy", "allFour");

  private AirVersus() {}

  public static void main(String[] args) throws IOException, RunnerException {
    Locale.setDefault(Locale.ROOT);
    Map<String, Double> peerNs = new HashMap<>();
    for (String line : Files.readAllLines(Path.of(args[0]))) {
      String[] field = line.split("\t", -1);
      peerNs.put(field[0], Double.parseDouble(field[1]));
    }
    Map<String, Double> ownNs = new HashMap<>();
    for (RunResult result :
        new Runner(
                new OptionsBuilder()
                    .include(AirBench.class.getName())
                    .jvmArgs("-XX:+UseSerialGC")
                    .verbosity(VerboseMode.SILENT)
                    .build())
            .run()) {
      String method = result.getParams().getBenchmark().replaceFirst(".*\\.", "");
      double fastest = result.getPrimaryResult().getStatistics().getMin();
      ownNs.put(method, fastest / AirBench.STATES);
    }
    System.out.println(
        "| moist air, ns a state, minimum | Coatwright | psychrolib under node | ratio |\n"
            + "|---|---|---|---|");
    for (String f : FUNCTIONS) {
      row(f.equals("allFour") ? "all four" : f, ownNs.get(f), peerNs.get(f));
    }
    limit("all four", ownNs.get("allFour"), ownNs.get("allFourTight"));
    limit("humidity ratio", ownNs.get("humidityRatio"), ownNs.get("humidityRatioTight"));
    System.out.println();
    deviations(Files.readAllLines(Path.of(args[1])));
  }

  private static void row(String name, double own, double peer) {
    System.out.printf("| %s | %.0f | %.0f | %.1f |%n", name, own, peer, peer / own);
  }

  private static void limit(String name, double own, double tight) {
    System.out.printf(
        "| the limit: %s in one tight loop | %.0f | | ours takes %.1f times the limit |%n",
        name, tight, own / tight);
  }

  private static void deviations(List<String> lines) {
    double[] worst = new double[5];
    for (String line : lines) {
      String[] f = line.split("\t", -1);
      double[] v = new double[f.length];
      for (int i = 0; i < v.length; i++) {
        v[i] = Double.parseDouble(f[i]);
      }
      MoistAir air = MoistAir.of(v[0], v[1]);
      double tight = TightAir.allFour(v[0], v[1]);
      double[] own = {
        air.dewPointC(), air.wetBulbC(), air.humidityRatio(), air.enthalpyKjKg(),
      };
      for (int i = 0; i < own.length; i++) {
        worst[i] = Math.max(worst[i], Math.abs(own[i] - v[i + 2]));
      }
      worst[4] = Math.max(worst[4], Math.abs(own[0] + own[1] + own[2] + own[3] - tight));
    }
    System.out.printf(
        "Furthest from psychrolib over %d states: dew point %.1e K, wet bulb %.1e K (it stops at"
            + " 1e-3 K, ours at 1e-11 K), humidity ratio %.1e, enthalpy %.1e kJ/kg; from the tight"
            + " loop %.1e.%n",
        lines.size(), worst[0], worst[1], worst[2], worst[3], worst[4]);
  }
}
