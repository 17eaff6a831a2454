package org.airfit.select;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.quantity.Temperature;
import org.jspecify.annotations.Nullable;

/**
 * What every part of a catalogue tells of itself, whatever it is. What is not told is not known.
 *
 * <p>This class is immutable and thread-safe; {@code with} methods return a fuller one.
 */
public final class PartFacts {

  /** What was told so far; a copy is changed, never this one. */
  private static final class Told {
    private @Nullable GaugePressure rating;
    private @Nullable Money price;
    private @Nullable Material material;
    private @Nullable Lubrication air;
    private @Nullable Temperature coldest;
    private @Nullable Temperature hottest;
    private boolean sleeveGuarded;
    private boolean vented;
    private boolean there;

    private Told copy() {
      Told copy = new Told();
      copy.rating = rating;
      copy.price = price;
      copy.material = material;
      copy.air = air;
      copy.coldest = coldest;
      copy.hottest = hottest;
      copy.sleeveGuarded = sleeveGuarded;
      copy.vented = vented;
      copy.there = there;
      return copy;
    }
  }

  private static final BigDecimal DEAREST = BigDecimal.valueOf(1_000_000_000L);

  private final String id;
  private final String name;
  private final Told told;

  private PartFacts(String id, String name, Told told) {
    this.id = id;
    this.name = name;
    this.told = told;
  }

  private PartFacts with(Consumer<Told> telling) {
    Told fuller = told.copy();
    telling.accept(fuller);
    return new PartFacts(id, name, fuller);
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
    return new PartFacts(id, name, new Told());
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
    return with(facts -> facts.rating = pressure);
  }

  /**
   * Tells what one piece of it costs.
   *
   * @param each the price, from 0 to below 10⁹ and with at most four decimals, in the one currency of the catalogue
   * @return fuller facts
   * @throws IllegalArgumentException if {@code each} is out of range or has more decimals
   */
  public PartFacts withPrice(Money each) {
    BigDecimal amount = each.amount().stripTrailingZeros();
    if (amount.signum() < 0
        || amount.compareTo(DEAREST) >= 0
        || amount.scale() > Objective.DECIMALS) {
      throw new IllegalArgumentException("price of part " + id
          + " must be in [0, 10^9) with at most " + Objective.DECIMALS + " decimals, was "
          + each.amount().toPlainString() + " " + each.currency());
    }
    return with(facts -> facts.price = each);
  }

  /**
   * Tells what its body is made of.
   *
   * @param body the material
   * @return fuller facts
   */
  public PartFacts withMaterial(Material body) {
    Objects.requireNonNull(body);
    return with(facts -> facts.material = body);
  }

  /**
   * Tells that it is kept for air of one kind, by whatever mark its owner uses.
   *
   * @param kind the kind of air
   * @return fuller facts
   */
  public PartFacts withAir(Lubrication kind) {
    Objects.requireNonNull(kind);
    return with(facts -> facts.air = kind);
  }

  /**
   * Tells between which temperatures its maker allows it.
   *
   * @param coldest the lowest
   * @param hottest the highest, not below {@code coldest}
   * @return fuller facts
   * @throws IllegalArgumentException if {@code hottest} is below {@code coldest}
   */
  public PartFacts withTemperatures(Temperature coldest, Temperature hottest) {
    if (hottest.compareTo(coldest) < 0) {
      throw new IllegalArgumentException("highest temperature of part " + id + " must be at least "
          + coldest + ", was " + hottest);
    }
    return with(facts -> {
      facts.coldest = coldest;
      facts.hottest = hottest;
    });
  }

  /**
   * Tells that its sleeve is guarded, so that dragging does not pull it back.
   *
   * @return fuller facts
   */
  public PartFacts withSleeveGuarded() {
    return with(facts -> facts.sleeveGuarded = true);
  }

  /**
   * Tells that it lets the air out behind it before it parts.
   *
   * @return fuller facts
   */
  public PartFacts withVent() {
    return with(facts -> facts.vented = true);
  }

  /**
   * Tells that the customer has it already, as many as the job takes: it need not be bought, and is not for sale.
   *
   * @return fuller facts
   */
  public PartFacts alreadyThere() {
    return with(facts -> facts.there = true);
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
    return Optional.ofNullable(told.rating);
  }

  /** {@return what one piece costs, if that is known} */
  public Optional<Money> price() {
    return Optional.ofNullable(told.price);
  }

  /** {@return what its body is made of, if that is known} */
  public Optional<Material> material() {
    return Optional.ofNullable(told.material);
  }

  /** {@return the kind of air it is kept for, if its owner keeps it for one} */
  public Optional<Lubrication> air() {
    return Optional.ofNullable(told.air);
  }

  /** {@return the lowest temperature its maker allows, if known} */
  public Optional<Temperature> coldest() {
    return Optional.ofNullable(told.coldest);
  }

  /** {@return the highest temperature its maker allows, if known} */
  public Optional<Temperature> hottest() {
    return Optional.ofNullable(told.hottest);
  }

  /** {@return whether its sleeve is guarded} */
  public boolean isSleeveGuarded() {
    return told.sleeveGuarded;
  }

  /** {@return whether it lets the air out before it parts} */
  public boolean isVented() {
    return told.vented;
  }

  /** {@return whether the customer has it already} */
  public boolean isAlreadyThere() {
    return told.there;
  }

  /** {@return name and id, such as "Hose 1/2 in, 10 m (H-12)"} */
  @Override
  public String toString() {
    return name + " (" + id + ")";
  }
}
