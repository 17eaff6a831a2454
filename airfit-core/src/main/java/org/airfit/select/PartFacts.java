package org.airfit.select;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.NamedValues;
import org.airfit.internal.NamedValues.Name;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.Temperature;

/**
 * What every part of a catalogue tells of itself, whatever it is. What is not told is not known.
 *
 * <p>This class is immutable and thread-safe; {@code with} methods return a fuller one.
 */
public final class PartFacts {

  /** A price has at most as many decimals: more than any currency has, so that sums are exact. */
  static final int PRICE_DECIMALS = 4;

  private static final Name<GaugePressure> RATING = Name.of("rating");
  private static final Name<Money> PRICE = Name.of("price");
  private static final Name<Money> COST = Name.of("cost");
  private static final Name<Length> OUTSIDE_DIAMETER = Name.of("outside diameter");
  private static final Name<Material> MATERIAL = Name.of("material");
  private static final Name<Lubrication> LUBRICATION = Name.of("lubrication");
  private static final Name<Temperature> COLDEST = Name.of("coldest");
  private static final Name<Temperature> HOTTEST = Name.of("hottest");
  private static final Name<Boolean> STATIC_DISSIPATIVE = Name.of("static dissipative");
  private static final Name<Boolean> SLEEVE_GUARDED = Name.flag("sleeve guarded");
  private static final Name<Boolean> VENTED = Name.flag("vented");
  private static final Name<Boolean> EXISTING = Name.flag("existing");

  private static final BigDecimal DEAREST = BigDecimal.valueOf(100_000_000L);

  private final String id;
  private final String name;
  private final NamedValues told;

  private PartFacts(String id, String name, NamedValues told) {
    this.id = id;
    this.name = name;
    this.told = told;
  }

  private PartFacts with(NamedValues fuller) {
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
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
    if (id.isBlank()) {
      throw new IllegalArgumentException("id of a part must not be blank, was \"" + id + "\"");
    }
    if (name.isBlank()) {
      throw new IllegalArgumentException(
          "name of part " + id + " must not be blank, was \"" + name + "\"");
    }
    return new PartFacts(id, name, NamedValues.NONE);
  }

  /**
   * Tells the highest pressure its maker allows.
   *
   * @param pressure the rated pressure, above 0
   * @return fuller facts
   * @throws IllegalArgumentException if {@code pressure} is not above 0
   */
  public PartFacts withRating(GaugePressure pressure) {
    Objects.requireNonNull(pressure, "pressure");
    if (!(pressure.pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "rating of part " + id + " must be above 0 bar(g), was " + pressure.inFewestDigits());
    }
    return with(told.with(RATING, pressure));
  }

  /**
   * Tells the highest pressure that is printed on the piece itself.
   *
   * @param printed the pressure, above 0
   * @return fuller facts; these where its maker allows less: the lower of two counts
   * @throws IllegalArgumentException if {@code printed} is not above 0
   */
  public PartFacts rated(GaugePressure printed) {
    PartFacts read = withRating(printed);
    return rating().filter(maker -> maker.compareTo(printed) < 0).isPresent() ? this : read;
  }

  /**
   * Tells what one piece of it costs.
   *
   * @param each the price, from 0 to below 10⁸ and with at most four decimals, in the one currency of the catalogue
   * @return fuller facts
   * @throws IllegalArgumentException if {@code each} is out of range or has more decimals
   */
  public PartFacts withPrice(Money each) {
    requireAmount(PRICE, Objects.requireNonNull(each, "each"));
    return with(told.with(PRICE, each));
  }

  private void requireAmount(Name<Money> name, Money each) {
    BigDecimal amount = each.amount().stripTrailingZeros();
    if (amount.signum() < 0 || amount.compareTo(DEAREST) >= 0 || amount.scale() > PRICE_DECIMALS) {
      throw new IllegalArgumentException(name.text() + " of part " + id
          + " must be in [0, 10^8) with at most " + PRICE_DECIMALS + " decimals, was "
          + each.amount().toPlainString() + " " + each.currency());
    }
  }

  /**
   * Tells what one piece of it costs the shop itself.
   *
   * @param each what the shop pays, from 0 to below 10⁸ and with at most four decimals, in the currency of its price
   * @return fuller facts
   * @throws IllegalArgumentException if {@code each} is out of range or has more decimals
   */
  public PartFacts withCost(Money each) {
    requireAmount(COST, Objects.requireNonNull(each, "each"));
    return with(told.with(COST, each));
  }

  /**
   * Tells what a hose measures outside, by which clamps and ferrules are chosen.
   *
   * @param outside the outside diameter, above 0
   * @return fuller facts
   * @throws IllegalArgumentException if {@code outside} is not above 0
   */
  public PartFacts withOutsideDiameter(Length outside) {
    Objects.requireNonNull(outside, "outside");
    if (!(outside.metres() > 0.0)) {
      throw new IllegalArgumentException("outside diameter of part " + id
          + " must be above 0 mm, was " + outside.inFull(LengthUnit.MILLIMETRE));
    }
    return with(told.with(OUTSIDE_DIAMETER, outside));
  }

  /**
   * Tells what its body is made of; of a hose, what its end fittings are made of.
   *
   * @param body the material
   * @return fuller facts
   */
  public PartFacts withMaterial(Material body) {
    return with(told.with(MATERIAL, Objects.requireNonNull(body, "body")));
  }

  /**
   * Tells whether its maker calls a hose static-dissipative: whether it carries a charge off to its end fittings.
   *
   * @param dissipates whether it does; what is not told is asked for where sparks are a hazard
   * @return fuller facts
   */
  public PartFacts withStaticDissipative(boolean dissipates) {
    return with(told.with(STATIC_DISSIPATIVE, dissipates));
  }

  /**
   * Tells that it is kept for air of one kind, by whatever mark its owner uses.
   *
   * @param kind the kind of air
   * @return fuller facts
   */
  public PartFacts withLubrication(Lubrication kind) {
    return with(told.with(LUBRICATION, Objects.requireNonNull(kind, "kind")));
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
    Objects.requireNonNull(coldest, "coldest");
    Objects.requireNonNull(hottest, "hottest");
    if (hottest.compareTo(coldest) < 0) {
      throw new IllegalArgumentException("highest temperature of part " + id + " must be at least "
          + coldest.shown() + ", was " + hottest.shown());
    }
    return with(told.with(COLDEST, coldest).with(HOTTEST, hottest));
  }

  /**
   * Tells that its sleeve is guarded, so that dragging does not pull it back.
   *
   * @return fuller facts
   */
  public PartFacts withSleeveGuarded() {
    return with(told.with(SLEEVE_GUARDED));
  }

  /**
   * Tells that it lets the air out behind it before it parts.
   *
   * @return fuller facts
   */
  public PartFacts withVent() {
    return with(told.with(VENTED));
  }

  /**
   * Tells that the customer has it already, as many as the job takes: it need not be bought, and is not for sale.
   *
   * @return fuller facts
   */
  public PartFacts asExisting() {
    return with(told.with(EXISTING));
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
    return told.find(RATING);
  }

  /** {@return what one piece costs, if that is known} */
  public Optional<Money> price() {
    return told.find(PRICE);
  }

  /** {@return what one piece costs the shop itself, if that is known} */
  public Optional<Money> cost() {
    return told.find(COST);
  }

  /** {@return what the hose measures outside, if that is known} */
  public Optional<Length> outsideDiameter() {
    return told.find(OUTSIDE_DIAMETER);
  }

  /** {@return what its body is made of, of a hose its end fittings, if that is known} */
  public Optional<Material> material() {
    return told.find(MATERIAL);
  }

  /** {@return whether the hose is static-dissipative, if that is known} */
  public Optional<Boolean> staticDissipative() {
    return told.find(STATIC_DISSIPATIVE);
  }

  /** {@return the kind of air it is kept for, if its owner keeps it for one} */
  public Optional<Lubrication> lubrication() {
    return told.find(LUBRICATION);
  }

  /** {@return the lowest temperature its maker allows, if known} */
  public Optional<Temperature> coldest() {
    return told.find(COLDEST);
  }

  /** {@return the highest temperature its maker allows, if known} */
  public Optional<Temperature> hottest() {
    return told.find(HOTTEST);
  }

  /** {@return whether its sleeve is guarded} */
  public boolean isSleeveGuarded() {
    return told.is(SLEEVE_GUARDED);
  }

  /** {@return whether it lets the air out before it parts} */
  public boolean isVented() {
    return told.is(VENTED);
  }

  /** {@return whether the customer has it already} */
  public boolean isExisting() {
    return told.is(EXISTING);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof PartFacts that
        && id.equals(that.id)
        && name.equals(that.name)
        && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return Objects.hash(id, name, told);
  }

  /** {@return name and id, such as "Hose 1/2 in, 10 m (H-12)"} */
  @Override
  public String toString() {
    return name + " (" + id + ")";
  }
}
