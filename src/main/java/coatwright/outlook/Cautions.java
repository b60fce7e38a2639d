package coatwright.outlook;

import coatwright.film.Finish;
import java.util.ArrayList;
import java.util.List;

/** What is always said beside an answer. */
final class Cautions {
  private Cautions() {}

  static List<String> of(Finish finish, boolean retarder) {
    List<String> said = new ArrayList<>();
    said.add(
        "Spirit vapour is flammable: a switch, charger, heater, dehumidifier, fan, phone or screen"
            + " can ignite it unless rated for it. Never heat on a wet spirit film.");
    said.add("Ventilation before comfort: never shut it while the spirit leaves the film.");
    said.add("Read the safety data sheet, follow local code.");
    said.add("Hardness dates say nothing about food contact or toys.");
    if (retarder) {
      said.add("2-butoxyethanol passes the skin.");
    }
    for (String caution : finish.cautions()) {
      if (!said.contains(caution)) {
        said.add(caution);
      }
    }
    return said;
  }
}
