package org.airfit.select;

import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The parts to choose from, those the customer has already among them.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Catalogue {

  /** An order that does not depend on how a catalogue was written down. */
  static final Comparator<Part> BY_NAME = Comparator.comparing(Part::name).thenComparing(Part::id);

  private final Map<String, Part> parts;

  private Catalogue(Map<String, Part> parts) {
    this.parts = Collections.unmodifiableMap(parts);
  }

  /**
   * Obtains a catalogue.
   *
   * @param parts its parts
   * @return the catalogue
   * @throws IllegalArgumentException if two parts have one id, or two prices are in two currencies
   */
  public static Catalogue of(Collection<? extends Part> parts) {
    Map<String, Part> byId = new LinkedHashMap<>();
    for (Part part : Objects.requireNonNull(parts, "parts")) {
      Part twin = byId.put(part.id(), part);
      if (twin != null) {
        throw new IllegalArgumentException("id of a part must be unique in its catalogue, was "
            + part.id() + " for \"" + twin.name() + "\" and \"" + part.name() + "\"");
      }
    }
    requireOneCurrency(byId.values());
    return new Catalogue(byId);
  }

  private static void requireOneCurrency(Collection<Part> parts) {
    Part first = null;
    for (Part part : parts) {
      if (part.facts().price().isEmpty()) {
        continue;
      }
      first = first == null ? part : first;
      String currency = first.facts().price().orElseThrow().currency();
      if (!part.facts().price().orElseThrow().currency().equals(currency)) {
        throw new IllegalArgumentException("prices of a catalogue must be in one currency, were "
            + first.facts().price().orElseThrow() + " for " + first.facts() + " and "
            + part.facts().price().orElseThrow() + " for " + part.facts()
            + "; airfit knows no rates, turn them into one currency first");
      }
    }
  }

  /** {@return all parts in the order they were given} */
  public List<Part> parts() {
    return List.copyOf(parts.values());
  }

  /**
   * Finds a part.
   *
   * @param id its id
   * @return the part, empty if there is none of that id
   */
  public Optional<Part> part(String id) {
    return Optional.ofNullable(parts.get(Objects.requireNonNull(id, "id")));
  }

  /** Catalogues are equal if they hold equal parts in the same order. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Catalogue that && parts().equals(that.parts());
  }

  @Override
  public int hashCode() {
    return parts().hashCode();
  }

  /** {@return how many parts it holds} */
  @Override
  public String toString() {
    return "Catalogue of " + parts.size() + " parts";
  }

  <T extends Part> List<T> all(Class<T> kind) {
    return parts.values().stream().filter(kind::isInstance).map(kind::cast).toList();
  }
}
