package coatwright.review;

import coatwright.film.Finish;
import coatwright.film.SpiritDrying;

/** What the sentences of a case call the liquid of a film, and what of it gives way to water. */
enum Carrier {
  SPIRIT("spirit", "resin"),
  BLEND("thinner", "blend");

  private final String liquid;
  private final String givesWay;

  Carrier(String liquid, String givesWay) {
    this.liquid = liquid;
    this.givesWay = givesWay;
  }

  static Carrier of(Finish finish) {
    return finish.drying() instanceof SpiritDrying ? SPIRIT : BLEND;
  }

  /** What may have been poured into the jar: {@code spirit}. */
  String liquid() {
    return liquid;
  }

  /** What holds so much water and no more: {@code resin}. */
  String givesWay() {
    return givesWay;
  }
}
