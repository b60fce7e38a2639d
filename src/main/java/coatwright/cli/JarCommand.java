package coatwright.cli;

import coatwright.quantity.Show;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Jars of finish. */
@Command(
    name = "jar",
    synopsisSubcommandLabel =
        "(new | list | show | mix | thin | residue | cup | strength | retard | coverage | vapour)",
    description = {
      "Jars of finish: write a filling down, list them, show one; and the arithmetic of mixing,",
      "which needs no daemon."
    },
    footer = {
      "",
      "Example: coatwright jar new A --finish shellac-pale --cut 1.5lb",
      "         coatwright jar mix --volume 1L --cut 2lb"
    })
final class JarCommand {
  @Mixin Help help = new Help();

  /** Writes a filling down. */
  @Command(
      name = "new",
      description = "Write down a jar, or a new filling of one.",
      footer = {
        "",
        "Example: coatwright jar new A --finish shellac-pale --cut 1.5lb --strength 95%%"
            + " --opened 2026-03-01"
      })
  static final class New extends FormCommand {
    @Parameters(paramLabel = "NAME", description = "What stands on the jar.")
    String name = "";

    @Option(
        names = "--finish",
        required = true,
        paramLabel = "F",
        description = "What is in it: shellac-pale, lacquer-nitrocellulose, varnish-alkyd.")
    String finish = "";

    @Option(names = "--cut", paramLabel = "C", description = "Its cut: 1.5lb, 180g/L, or unknown.")
    @Nullable String cut;

    @Option(names = "--strength", paramLabel = "S", description = "Its spirit's strength: 95%%.")
    @Nullable String strength;

    @Option(names = "--opened", paramLabel = "DATE", description = "Day it was mixed or opened.")
    @Nullable String opened;

    @Option(
        names = "--retarder",
        paramLabel = "NAME:DOSE",
        description = "Slow solvent in it: 2-butoxyethanol:3%%.")
    @Nullable String retarder;

    @Option(names = "--who", paramLabel = "W", description = "Who writes this.")
    @Nullable String who;

    New(Shared shared) {
      super(shared, "jars");
    }

    @Override
    void fill() {
      put("name", name);
      put("finish", finish);
      put("cut", cut);
      put("strength", strength);
      put("opened", opened);
      put("retarder", retarder);
      put("who", who);
    }

    @Override
    String readBack(JsonNode entry) {
      return "%s: jar %s, %s, written down".formatted(entry.path("entry").asText(), name, finish);
    }
  }

  /** Lists the jars. */
  @Command(
      name = "list",
      description = "List the jars with their newest filling.",
      footer = {"", "Example: coatwright jar list"})
  static final class Listing implements Callable<Integer> {
    @Mixin Help help = new Help();
    private final Shared shared;

    Listing(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      JsonNode answer = shared.daemon().get("jars");
      if (shared.json) {
        shared.printJson(answer);
        return 0;
      }
      if (answer.path("jars").isEmpty()) {
        shared.out.println("No jar is written down yet; begin with: coatwright jar new NAME");
      }
      answer.path("jars").forEach(jar -> shared.out.println(line(jar, shared)));
      return 0;
    }

    static String line(JsonNode jar, Shared shared) {
      StringBuilder line = new StringBuilder(jar.path("name").asText());
      line.append(": ").append(jar.path("finish").asText());
      line.append(
          jar.has("cutGPerL")
              ? ", " + Show.cut(jar.path("cutGPerL").asDouble(), shared.unitSystem())
              : jar.has("solidsVolumePct") ? "" : ", cut unknown");
      if (jar.has("strengthVolPct")) {
        line.append(", spirit ")
            .append(Show.fixed(jar.path("strengthVolPct").asDouble(), 1))
            .append(" %");
      }
      if (jar.has("retarder")) {
        line.append(", with ").append(jar.path("retarder").asText());
      }
      if (jar.has("opened")) {
        line.append(", opened ").append(jar.path("opened").asText());
      }
      if (jar.has("testDueOn")) {
        line.append(", test due ").append(jar.path("testDueOn").asText());
      }
      return line.toString();
    }
  }

  /** Shows one jar. */
  @Command(
      name = "show",
      description = "Show one jar's newest filling.",
      footer = {"", "Example: coatwright jar show A"})
  static final class Showing implements Callable<Integer> {
    @Parameters(paramLabel = "NAME", description = "What stands on the jar.")
    String name = "";

    @Mixin Help help = new Help();
    private final Shared shared;

    Showing(Shared shared) {
      this.shared = shared;
    }

    @Override
    public Integer call() {
      for (JsonNode jar : shared.daemon().get("jars").path("jars")) {
        if (jar.path("name").asText().equals(name)) {
          if (shared.json) {
            shared.printJson(jar);
          } else {
            print(jar);
          }
          return 0;
        }
      }
      throw new Stop(
          Stop.BAD_INPUT, "no jar \"%s\"; coatwright jar list names them".formatted(name));
    }

    private void print(JsonNode jar) {
      JarText text = new JarText(shared);
      text.figure(Listing.line(jar, shared));
      if (jar.has("solidsVolumePct")) {
        String byVolume = JarText.pct(jar.path("solidsVolumePct").asDouble()) + " by volume";
        text.line(
            "solids",
            jar.has("solidsMassPct")
                ? JarText.pct(jar.path("solidsMassPct").asDouble()) + " by weight, " + byVolume
                : jar.has("cutGPerL")
                    ? byVolume + "; by weight once the spirit's strength is known"
                    : byVolume);
      } else {
        text.line("solids", "unknown; weigh a sample: coatwright jar residue");
      }
      if (jar.has("test")) {
        text.line("the test", jar.path("test").asText());
      }
    }
  }
}
