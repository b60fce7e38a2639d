package coatwright.climate;

import java.time.Instant;

/** A measured wood or surface temperature. */
public record WoodPoint(Instant at, double woodTempC, double errorK) {}
