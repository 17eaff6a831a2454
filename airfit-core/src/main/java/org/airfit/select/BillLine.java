package org.airfit.select;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Labels;
import org.airfit.quantity.Money;
import org.airfit.source.Source;

/**
 * One line of a {@link BillOfMaterials}: an article of the catalogue, or in words what the catalogue lacks.
 *
 * @param kind what it is for
 * @param name what people call it
 * @param facts what the catalogue tells of it; empty where the catalogue has none
 * @param quantity how many of it
 * @param reason why it is on the list, in plain words
 * @param source what asks for it; empty of the parts that were chosen, of which the findings tell
 */
public record BillLine(
    Kind kind,
    String name,
    Optional<PartFacts> facts,
    int quantity,
    String reason,
    Optional<Source> source) {

  /** What a line of a bill is for. */
  public enum Kind {
    /** A part that was chosen for a slot. */
    PART,
    /** A piece between two ends. */
    ADAPTER,
    /** A clamp or ferrule that holds a hose on a barb. */
    CLAMP,
    /** Tape or paste for taper threads. */
    SEALANT,
    /** What seals on a face: a washer, bonded seal or ring. */
    SEAL,
    /** A clip or pin that keeps a claw coupling from turning back. */
    RETAINER,
    /** What holds a hose whose joint parts. */
    WHIP_RESTRAINT,
    /** What shuts off the air of a hose that failed. */
    HOSE_FUSE,
    /** A drain at a low point. */
    DRAIN,
    /** A cap for a plug. */
    END_CAP,
    /** A hook for a hose. */
    HOOK;

    /** {@return the kind in words, such as "whip restraint"} */
    @Override
    public String toString() {
      return Labels.of(this);
    }
  }

  /**
   * Checks the components.
   *
   * @param kind what it is for
   * @param name what people call it
   * @param facts what the catalogue tells of it; empty where the catalogue has none
   * @param quantity how many of it, at least 1
   * @param reason why it is on the list, in plain words
   * @param source what asks for it; empty of the parts that were chosen
   * @throws IllegalArgumentException if {@code quantity} is below 1, {@code name} or {@code reason} is blank, or
   *     {@code name} is not that of {@code facts}
   */
  public BillLine {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(facts, "facts");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(source, "source");
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a line must say what it is, was blank");
    }
    if (facts.isPresent() && !facts.get().name().equals(name)) {
      throw new IllegalArgumentException(
          "name of " + facts.get() + " must be that of its facts, was \"" + name + "\"");
    }
    if (quantity < 1) {
      throw new IllegalArgumentException(
          "quantity of " + name + " must be at least 1, was " + quantity);
    }
    if (reason.isBlank()) {
      throw new IllegalArgumentException(
          "reason of " + name + " must say why it is on the list, was blank");
    }
  }

  /** A line with an article of the catalogue. */
  static BillLine of(Kind kind, PartFacts facts, int quantity, String reason, Source source) {
    return new BillLine(
        kind, facts.name(), Optional.of(facts), quantity, reason, Optional.of(source));
  }

  /** A line with what the catalogue lacks. */
  static BillLine lacking(Kind kind, String name, int quantity, String reason, Source source) {
    return new BillLine(kind, name, Optional.empty(), quantity, reason, Optional.of(source));
  }

  /** {@return what the catalogue calls it; empty where the catalogue has none} */
  public Optional<String> id() {
    return facts.map(PartFacts::id);
  }

  /** {@return whether the customer has it and it need not be bought} */
  public boolean existing() {
    return facts.filter(PartFacts::isExisting).isPresent();
  }

  /** {@return what one piece costs, if that is known; empty where the customer has it} */
  public Optional<Money> priceEach() {
    return existing() ? Optional.empty() : facts.flatMap(PartFacts::price);
  }

  /** {@return what all pieces of this line cost, if that is known; empty where the customer has them} */
  public Optional<Money> price() {
    return priceEach().map(this::ofAll);
  }

  /** {@return whether it must be bought and its price is not known} */
  public boolean isUnpriced() {
    return !existing() && priceEach().isEmpty();
  }

  /** What the shop itself pays for all pieces, if that is known; empty where the customer has them. */
  Optional<Money> cost() {
    return existing() ? Optional.empty() : facts.flatMap(PartFacts::cost).map(this::ofAll);
  }

  private Money ofAll(Money each) {
    return new Money(each.amount().multiply(BigDecimal.valueOf(quantity)), each.currency());
  }

  /** {@return the line in words, such as "2 x Clamp 16 to 20 mm (C-16): holds the hose on its barb"} */
  @Override
  public String toString() {
    return quantity + " x " + name + id().map(id -> " (" + id + ")").orElse("") + ": " + reason;
  }
}
