package org.airfit.select;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.Money;

/**
 * The parts to choose from, those the customer has already among them, and the accessories that go with them. Parts are
 * searched for combinations, accessories never: they are chosen for a combination that was found.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Catalogue {

  /** An order that does not depend on how a catalogue was written down. */
  static final Comparator<Part> BY_NAME = Comparator.comparing(Part::name).thenComparing(Part::id);

  private final Map<String, Part> parts;

  /** Those of each kind by name, for searches, which ask for each position. */
  private final Map<Class<?>, List<Part>> byKind;

  private final List<Accessory> accessories;

  private Catalogue(Map<String, Part> parts, List<Accessory> accessories) {
    this.parts = Collections.unmodifiableMap(parts);
    this.byKind = new HashMap<>();
    for (Part part : parts.values().stream().sorted(BY_NAME).toList()) {
      byKind.computeIfAbsent(part.getClass(), any -> new ArrayList<>()).add(part);
    }
    this.accessories = accessories;
  }

  /**
   * Obtains a catalogue without accessories.
   *
   * @param parts its parts
   * @return the catalogue
   * @throws IllegalArgumentException if two parts have one id, or two prices are in two currencies
   */
  public static Catalogue of(Collection<? extends Part> parts) {
    return of(parts, List.of());
  }

  /**
   * Obtains a catalogue.
   *
   * @param parts its parts
   * @param accessories what goes with them on a {@link BillOfMaterials}, such as clamps and sealant
   * @return the catalogue
   * @throws IllegalArgumentException if two articles have one id, or two prices or costs are in two currencies
   */
  public static Catalogue of(
      Collection<? extends Part> parts, Collection<? extends Accessory> accessories) {
    Map<String, PartFacts> byId = new LinkedHashMap<>();
    Map<String, Part> partsById = new LinkedHashMap<>();
    for (Part part : Objects.requireNonNull(parts, "parts")) {
      put(byId, part.facts());
      partsById.put(part.id(), part);
    }
    for (Accessory accessory : Objects.requireNonNull(accessories, "accessories")) {
      put(byId, accessory.facts());
    }
    requireOneCurrency(byId.values());
    return new Catalogue(partsById, List.copyOf(accessories));
  }

  private static void put(Map<String, PartFacts> byId, PartFacts facts) {
    PartFacts twin = byId.put(facts.id(), facts);
    if (twin != null) {
      throw new IllegalArgumentException("id of a part must be unique in its catalogue, was "
          + facts.id() + " for \"" + twin.name() + "\" and \"" + facts.name() + "\"");
    }
  }

  private static void requireOneCurrency(Collection<PartFacts> articles) {
    PartFacts firstPriced = null;
    Money first = null;
    for (PartFacts facts : articles) {
      for (Optional<Money> told : List.of(facts.price(), facts.cost())) {
        if (told.isEmpty()) {
          continue;
        }
        if (first == null || firstPriced == null) {
          first = told.get();
          firstPriced = facts;
        }
        if (!told.get().currency().equals(first.currency())) {
          throw new IllegalArgumentException("prices of a catalogue must be in one currency, were "
              + first + " for " + firstPriced + " and " + told.get() + " for " + facts
              + "; airfit knows no rates, turn them into one currency first");
        }
      }
    }
  }

  /** {@return all parts in the order they were given} */
  public List<Part> parts() {
    return List.copyOf(parts.values());
  }

  /** {@return what goes with the parts on a bill, in the order it was given; no combination is searched in these} */
  public List<Accessory> accessories() {
    return accessories;
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

  /** Catalogues are equal if they hold equal articles in the same order. */
  @Override
  public boolean equals(Object other) {
    return other instanceof Catalogue that
        && parts().equals(that.parts())
        && accessories.equals(that.accessories);
  }

  @Override
  public int hashCode() {
    return Objects.hash(parts(), accessories);
  }

  /** {@return how many parts and accessories it holds} */
  @Override
  public String toString() {
    return "Catalogue of " + parts.size() + " parts"
        + (accessories.isEmpty() ? "" : " and " + accessories.size() + " accessories");
  }

  /** Those of a kind, by name; not to be changed. */
  @SuppressWarnings("unchecked") // a list of a kind holds nothing else
  <T extends Part> List<T> all(Class<T> kind) {
    return (List<T>) byKind.getOrDefault(kind, List.of());
  }
}
