package org.airfit.select;

import java.util.Objects;
import java.util.Optional;
import org.airfit.quantity.GaugePressure;
import org.jspecify.annotations.Nullable;

/**
 * What every part of a catalogue tells of itself, whatever it is. What is not told is not known.
 *
 * <p>This class is immutable and thread-safe; {@code with} methods return a fuller one.
 */
public final class PartFacts {

  private final String id;
  private final String name;
  private final @Nullable GaugePressure rating;
  private final @Nullable Material material;
  private final @Nullable AirKind air;
  private final boolean sleeveGuarded;
  private final boolean vented;
  private final boolean there;

  private PartFacts(
      String id,
      String name,
      @Nullable GaugePressure rating,
      @Nullable Material material,
      @Nullable AirKind air,
      boolean sleeveGuarded,
      boolean vented,
      boolean there) {
    this.id = id;
    this.name = name;
    this.rating = rating;
    this.material = material;
    this.air = air;
    this.sleeveGuarded = sleeveGuarded;
    this.vented = vented;
    this.there = there;
  }

  /**
   * Starts the facts of a part.
   *
   * @param id what the catalogue calls it, unique there
   * @param name what people call it
   * @return facts of which nothing else is known
   * @throws IllegalArgumentException if one of them is blank
   */
  public static PartFacts of(String id, String name) {
    if (id.isBlank()) {
      throw new IllegalArgumentException("id of a part must not be blank, was \"" + id + "\"");
    }
    if (name.isBlank()) {
      throw new IllegalArgumentException(
          "name of part " + id + " must not be blank, was \"" + name + "\"");
    }
    return new PartFacts(id, name, null, null, null, false, false, false);
  }

  /**
   * Tells the highest pressure its maker allows.
   *
   * @param pressure the rated pressure, above 0
   * @return fuller facts
   * @throws IllegalArgumentException if {@code pressure} is not above 0
   */
  public PartFacts withRating(GaugePressure pressure) {
    if (!(pressure.pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "rating of part " + id + " must be above 0 Pa(g), was " + pressure);
    }
    return new PartFacts(id, name, pressure, material, air, sleeveGuarded, vented, there);
  }

  /**
   * Tells what its body is made of.
   *
   * @param body the material
   * @return fuller facts
   */
  public PartFacts withMaterial(Material body) {
    return new PartFacts(
        id, name, rating, Objects.requireNonNull(body), air, sleeveGuarded, vented, there);
  }

  /**
   * Tells that it is kept for air of one kind, by whatever mark its owner uses.
   *
   * @param kind the kind of air
   * @return fuller facts
   */
  public PartFacts withAir(AirKind kind) {
    return new PartFacts(
        id, name, rating, material, Objects.requireNonNull(kind), sleeveGuarded, vented, there);
  }

  /**
   * Tells that its sleeve is guarded, so that dragging does not pull it back.
   *
   * @return fuller facts
   */
  public PartFacts withSleeveGuarded() {
    return new PartFacts(id, name, rating, material, air, true, vented, there);
  }

  /**
   * Tells that it lets the air out behind it before it parts.
   *
   * @return fuller facts
   */
  public PartFacts withVent() {
    return new PartFacts(id, name, rating, material, air, sleeveGuarded, true, there);
  }

  /**
   * Tells that the customer has it already: it need not be bought, and is not for sale.
   *
   * @return fuller facts
   */
  public PartFacts alreadyThere() {
    return new PartFacts(id, name, rating, material, air, sleeveGuarded, vented, true);
  }

  /** {@return what the catalogue calls it} */
  public String id() {
    return id;
  }

  /** {@return what people call it} */
  public String name() {
    return name;
  }

  /** {@return the highest pressure its maker allows, if that is known} */
  public Optional<GaugePressure> rating() {
    return Optional.ofNullable(rating);
  }

  /** {@return what its body is made of, if that is known} */
  public Optional<Material> material() {
    return Optional.ofNullable(material);
  }

  /** {@return the kind of air it is kept for, if its owner keeps it for one} */
  public Optional<AirKind> air() {
    return Optional.ofNullable(air);
  }

  /** {@return whether its sleeve is guarded} */
  public boolean isSleeveGuarded() {
    return sleeveGuarded;
  }

  /** {@return whether it lets the air out before it parts} */
  public boolean isVented() {
    return vented;
  }

  /** {@return whether the customer has it already} */
  public boolean isAlreadyThere() {
    return there;
  }

  /** {@return name and id, such as "Hose 1/2 in, 10 m (H-12)"} */
  @Override
  public String toString() {
    return name + " (" + id + ")";
  }
}
