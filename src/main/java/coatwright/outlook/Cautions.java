package coatwright.outlook;

import coatwright.film.Curing;
import coatwright.film.Finish;
import java.util.ArrayList;
import java.util.List;

/** What is always said beside an answer. */
final class Cautions {
  private static final String SDS = "Read the safety data sheet";

  private Cautions() {}

  static List<String> of(Finish finish, boolean retarder) {
    List<String> said = new ArrayList<>();
    if (!(finish.drying() instanceof Curing)) {
      said.add(
          "Spirit vapour is flammable: a switch, charger, heater, dehumidifier, fan, phone or"
              + " screen can ignite it unless rated for it. Never heat on a wet spirit film.");
      said.add("Ventilation before comfort: never shut it while the spirit leaves the film.");
    } else {
      said.add("Ventilation before comfort: never shut it while the film gives off vapour.");
    }
    said.add(SDS + ", follow local code.");
    said.add("Hardness dates say nothing about food contact or toys.");
    if (retarder) {
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
