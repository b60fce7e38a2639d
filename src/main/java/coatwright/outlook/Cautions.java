package coatwright.outlook;

import coatwright.film.Curing;
import coatwright.film.Drying;
import coatwright.film.Finish;
import coatwright.film.SpiritDrying;
import java.util.ArrayList;
import java.util.List;

/** What is always said beside an answer. */
final class Cautions {
  private static final String SDS = "Read the safety data sheet";
  private static final String IGNITES =
      ": a switch, charger, heater, dehumidifier, fan, phone or screen can ignite it unless rated"
          + " for it.";

  private Cautions() {}

  private static List<String> ofVapour(Drying drying) {
    if (drying instanceof Curing) {
      return List.of("Ventilation before comfort: never shut it while the film gives off vapour.");
    }
    return drying instanceof SpiritDrying
        ? List.of(
            "Spirit vapour is flammable" + IGNITES + " Never heat on a wet spirit film.",
            "Ventilation before comfort: never shut it while the spirit leaves the film.")
        : List.of(
            "Solvent vapour is highly flammable" + IGNITES + " Never heat on a wet lacquer film.",
            "Ventilation before comfort: never shut it while solvent leaves the film.");
  }

  /**
   * @param butoxyethanol whether the coat holds any
   */
  static List<String> of(Finish finish, boolean butoxyethanol) {
    List<String> said = new ArrayList<>();
    said.addAll(ofVapour(finish.drying()));
    said.add(SDS + ", follow local code.");
    said.add("Hardness dates say nothing about food contact or toys.");
    if (butoxyethanol) {
      said.add("2-butoxyethanol passes the skin.");
    }
    for (String caution : finish.cautions()) {
      if (!caution.startsWith(SDS) && !said.contains(caution)) {
        said.add(caution);
      }
    }
    return said;
  }
}
