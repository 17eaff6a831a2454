package org.airfit.files;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.Rating;
import org.airfit.joint.StandardHose;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitName;
import org.airfit.line.ConduitRange;
import org.airfit.line.FittingList;
import org.airfit.line.Wall;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.thread.Limits;

/**
 * The fields of what air goes through, alike in a job, a catalogue and a network: pipe, tube or hose, and flow
 * capacity.
 */
final class FlowFields {

  /**
   * The range of an atmosphere people work in [bar(a)]: our own choice, from the highest mountain (0.33 bar, from
   * memory) to the deepest works under compressed air (4.5 bar, from memory).
   */
  private static final double THINNEST = 0.3;

  private static final double DENSEST = 5.0;

  private static final SonicConductance ANY_CONDUCTANCE =
      SonicConductance.ofCubicDecimetresPerSecondBar(1.0);

  private FlowFields() {}

  /** The pressure around the shop: a vacuum or a pressure in a wrong unit is none. */
  static AbsolutePressure atmosphere(Field field) throws WrongFileException {
    AbsolutePressure atmosphere = field.least(AbsolutePressure::parse);
    if (atmosphere.bar() < THINNEST || atmosphere.bar() > DENSEST) {
      throw field.wrong("atmosphere must be in [" + THINNEST + ", " + DENSEST
          + "] bar(a), was " + atmosphere.inFewestDigits()
          + "; check the unit: 1.013 bar(a) or 14.7 psia is usual at sea level");
    }
    return atmosphere;
  }

  /** Refuses temperatures of air that are not within those that are reckoned with [°C]. */
  static void requireWithin(
      Field told, Range<Temperature> air, int coldest, int hottest, String what)
      throws WrongFileException {
    if (!(air.least().celsius() >= coldest && air.most().celsius() <= hottest)) {
      throw told.refused(what + " must be in [" + coldest + ", " + hottest + "] °C, ["
          + fahrenheit(coldest) + ", " + fahrenheit(hottest) + "] °F");
    }
  }

  private static long fahrenheit(int celsius) {
    return Math.round(32.0 + 1.8 * celsius);
  }

  /**
   * The bore, length, roughness and fittings of a pipe, tube or hose; of a range the end that lets least through, as
   * the worst case is judged.
   */
  static Conduit conduit(Field item) throws WrongFileException {
    return conduitOfOneLength(item).least();
  }

  /** The same as well as its wall, its bore and its fittings are known. */
  static ConduitRange conduitOfOneLength(Field item) throws WrongFileException {
    lengthField(item).one(Length::parse, "give the longest that it can be");
    return conduitRange(item);
  }

  private static Field lengthField(Field item) throws WrongFileException {
    return item.field("length", "a length such as \"10 m\" or \"25 ft\"");
  }

  /** A pipe, tube or hose as well as its fields tell it. */
  static ConduitRange conduitRange(Field item) throws WrongFileException {
    return conduitRange(item, Optional.empty());
  }

  /** A hose as well as its fields tell it; its name tells the bore where nothing else does. */
  static ConduitRange conduitRange(Field item, Optional<HoseBore> hose) throws WrongFileException {
    Optional<Field> wall = item.find("wall");
    Optional<Wall> madeOf = wall.isPresent() ? exactWall(wall.get()) : Optional.empty();
    Optional<ConduitName> called =
        wall.isPresent() && madeOf.isEmpty() ? Optional.of(name(wall.get())) : Optional.empty();
    Optional<Field> size = item.find("size");
    Optional<ConduitName> sized = size.isPresent() ? sized(size.get(), wall) : Optional.empty();
    Optional<ConduitName> name = named(item, sized.isPresent() ? sized : called, hose);
    Limits bore = bore(item, name);
    Range<Length> length = lengthField(item).range(Length::parse);
    ConduitRange longest = item.build(() -> range(item, bore, length.most(), madeOf, name));
    ConduitRange plain = length.isExact()
        ? longest
        : item.build(() -> new ConduitRange(
            longest.least(),
            range(item, bore, length.least(), madeOf, name).most(),
            longest.assumptions()));
    Optional<Field> fittings = item.find("fittings");
    return fittings.isPresent() ? withFittings(fittings.get(), plain) : plain;
  }

  /** Of a hose of which neither the bore nor the size was told, all that its name may mean. */
  private static Optional<ConduitName> named(
      Field item, Optional<ConduitName> told, Optional<HoseBore> hose) throws WrongFileException {
    if (hose.isEmpty()
        || told.flatMap(ConduitName::bore).isPresent()
        || item.find("bore").isPresent()) {
      return told;
    }
    String whole = hose.get().label() + " hose"
        + (told.isPresent() ? ", " + item.field("wall", "").text().strip() : "");
    return Optional.of(item.build(() -> ConduitName.parse(whole)));
  }

  /** A bore wider than this [mm] is hardly meant on a run to one tool: our own choice. */
  private static final double WIDEST = 155.0;

  /** Keeps a word on a bore that is most likely a slip of its unit. */
  static void remarkOnBore(Field item, ConduitRange conduit, List<String> remarks)
      throws WrongFileException {
    Optional<Field> bore = item.find("bore");
    Length most = conduit.most().bore();
    if (bore.isEmpty()
        || (most.millimetres() <= WIDEST && most.compareTo(conduit.most().length()) < 0)) {
      return;
    }
    remarks.add(
        "\"" + Printable.line(bore.get().text().strip()) + "\" in " + bore.get().place()
            + " is a bore of " + most.format(LengthUnit.INCH) + " ("
            + most.format(LengthUnit.MILLIMETRE)
            + ")"
            + (most.millimetres() > WIDEST
                ? ", wider than a run to one tool ever is"
                : ", as wide as the pipe is long")
            + ": look at its unit again.");
  }

  /** What rounding an inch to hundredths may do to a bore [mm], so that no such bore is questioned. */
  private static final double ROUNDING_MM = 0.13;

  /** Keeps a word on a hose whose bore is none that its name may mean: one of the two is a slip. */
  static void remarkOnName(Field item, HoseBore named, ConduitRange conduit, List<String> remarks)
      throws WrongFileException {
    Optional<Field> bore = item.find("bore");
    Optional<Field> told = bore.isPresent() ? bore : item.find("size");
    if (told.isPresent()) {
      remarkOnMeasured(told.get(), named, conduit, remarks);
    }
  }

  /** The same of the field that tells the bore. */
  static void remarkOnMeasured(
      Field told, HoseBore named, ConduitRange conduit, List<String> remarks)
      throws WrongFileException {
    Optional<StandardHose> standard = StandardHose.calledBy(named);
    if (standard.isEmpty()) {
      return;
    }
    Limits limits = standard.get().anyBore();
    if (!isWithin(conduit, limits)) {
      remarks.add(quoted(told) + " is no bore of a hose named " + named.label() + ", which "
          + measures(limits, told.text())
          + " by ISO 1307: one of the two is a slip, measure the hose."
          + RECKONED);
    }
  }

  private static final String RECKONED = " The bore is what the air is reckoned with.";

  /** Keeps a word on a pipe, tube or hose whose bore is none that its size may mean: one of the two is a slip. */
  static void remarkOnSize(Field item, ConduitRange conduit, List<String> remarks)
      throws WrongFileException {
    Optional<Field> bore = item.find("bore");
    Optional<Field> size = item.find("size");
    if (bore.isEmpty() || size.isEmpty()) {
      return;
    }
    Optional<Limits> limits = sized(size.get(), item.find("wall")).flatMap(ConduitName::bore);
    if (limits.isPresent() && !isWithin(conduit, limits.get())) {
      remarks.add(quoted(bore.get()) + " is no bore of " + quoted(size.get()) + ", which "
          + measures(limits.get(), bore.get().text()) + ": one of the two is a slip, measure it."
          + RECKONED);
    }
  }

  private static boolean isWithin(ConduitRange conduit, Limits limits) {
    return conduit.most().bore().millimetres() >= limits.least().millimetres() - ROUNDING_MM
        && conduit.least().bore().millimetres() <= limits.most().millimetres() + ROUNDING_MM;
  }

  /** What a bore may measure, first in the unit in which it was typed. */
  private static String measures(Limits limits, String typed) {
    boolean isTypedInMillimetres = typed.contains("m");
    LengthUnit first = isTypedInMillimetres ? LengthUnit.MILLIMETRE : LengthUnit.INCH;
    LengthUnit other = isTypedInMillimetres ? LengthUnit.INCH : LengthUnit.MILLIMETRE;
    return "measures " + between(limits, first) + " (" + between(limits, other) + ")";
  }

  private static String between(Limits limits, LengthUnit unit) {
    String most = limits.most().format(unit);
    return limits.least().equals(limits.most())
        ? most
        : limits.least().format(unit) + " to " + most;
  }

  private static String quoted(Field field) throws WrongFileException {
    return "\"" + Printable.line(field.text().strip()) + "\" in " + field.place();
  }

  /** A wall that has one roughness to calculate with, by its whole name. */
  private static Optional<Wall> exactWall(Field wall) throws WrongFileException {
    String typed = wall.text().strip();
    return Arrays.stream(Wall.values())
        .filter(one -> word(one).equalsIgnoreCase(typed))
        .findFirst();
  }

  /** A wall as people call it. */
  private static ConduitName name(Field wall) throws WrongFileException {
    try {
      return ConduitName.parse(wall.text());
    } catch (QuantityFormatException e) {
      throw wall.wrong("\"" + wall.text().strip() + "\": " + e.problem() + "; accepted: "
          + Arrays.stream(Wall.values()).map(FlowFields::word).collect(Collectors.joining(", "))
          + ", or words such as \"rubber hose\", \"steel pipe, old\", \"hose\"");
    }
  }

  /** A size such as "1/2 in sch 40" or "1/4 in hose", with what the wall says of the kind. */
  private static Optional<ConduitName> sized(Field size, Optional<Field> wall)
      throws WrongFileException {
    String typed = size.text().strip();
    String whole = wall.isPresent() ? typed + ", " + wall.get().text().strip() : typed;
    ConduitName name;
    try {
      name = ConduitName.parse(whole);
    } catch (QuantityFormatException e) {
      throw size.wrong(
          "\"" + typed + "\": " + e.problem()
              + "; accepted: a size by name, such as \"1/2 in sch 40\", \"1/4 in hose\" or \"8 x 1 mm tube\"");
    }
    if (name.bore().isEmpty()) {
      throw size.wrong("\"" + typed + "\": the size is missing; accepted: a size by name, such as"
          + " \"1/2 in sch 40\", \"1/4 in hose\" or \"8 x 1 mm tube\"");
    }
    return Optional.of(name);
  }

  /** The bore that was measured, or that of the name. */
  private static Limits bore(Field item, Optional<ConduitName> name) throws WrongFileException {
    Optional<Limits> byName = name.flatMap(ConduitName::bore);
    Optional<Field> measured = item.find("bore");
    if (measured.isEmpty() && byName.isPresent()) {
      return byName.get();
    }
    Length bore = item.field("bore", Accepted.LENGTH + "; or the size, such as \"1/2 in sch 40\"")
        .least(Length::parse);
    return new Limits(bore, bore);
  }

  private static ConduitRange range(
      Field item, Limits bore, Length length, Optional<Wall> madeOf, Optional<ConduitName> name)
      throws WrongFileException {
    Optional<Field> told = item.find("roughness");
    if (told.isEmpty() && madeOf.isEmpty() && name.isPresent()) {
      return name.get().over(bore, length);
    }
    Length roughness = told.isEmpty() && madeOf.isPresent()
        ? madeOf.get().roughness()
        : item.field(
                "roughness",
                "the roughness of the wall, such as \"0.045 mm\" for new steel pipe; or give the wall")
            .most(Length::parse);
    Optional<Wall> wall = madeOf.isPresent() ? madeOf : name.flatMap(ConduitName::wall);
    Conduit least = walled(Conduit.of(bore.least(), length, roughness), wall);
    if (bore.least().equals(bore.most())) {
      return ConduitRange.exactly(least);
    }
    Conduit most = walled(Conduit.of(bore.most(), length, roughness), wall);
    return new ConduitRange(least, most, name.orElseThrow().assumptions());
  }

  private static Conduit walled(Conduit conduit, Optional<Wall> wall) {
    return wall.map(conduit::withWall).orElse(conduit);
  }

  /** The sum of K, or the fittings as people count them. */
  private static ConduitRange withFittings(Field fittings, ConduitRange plain)
      throws WrongFileException {
    if (fittings.isWords()) {
      FittingList list;
      try {
        list = FittingList.parse(fittings.text());
      } catch (QuantityFormatException e) {
        throw fittings.wrong("\"" + fittings.text().strip() + "\": " + e.problem()
            + "; accepted: the sum of K as a number, or " + e.accepted());
      }
      return fittings.build(() -> plain.withFittings(list));
    }
    double k = fittings.number();
    return fittings.build(() -> new ConduitRange(
        plain.least().withFittings(k), plain.most().withFittings(k), plain.assumptions()));
  }

  /** What a wall is called in a file, such as "smooth plastic". */
  private static String word(Wall wall) {
    return wall.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** A flow capacity; what is only a range is refused, with what would make it one. */
  static FlowCapacity capacity(Field field) throws WrongFileException {
    CapacityRange range = capacityRange(field);
    if (!range.isExact()) {
      throw field.wrong("is only a range, " + range.least() + " to " + range.most() + " ("
          + range.assumption().citation()
          + "); accepted here: one capacity, so add b to it, or xT to Cv or Kv");
    }
    return range.least();
  }

  /** A flow capacity as well as it is told: a text as a catalogue prints it, or an object. */
  static CapacityRange capacityRange(Field field) throws WrongFileException {
    if (field.isWords()) {
      return field.as(Rating::parse).capacity();
    }
    Optional<Field> conductance = field.find("conductance");
    CapacityRange capacity = conductance.isPresent() ? conductanceRange(field) : ofRating(field);
    field.build(() -> Bounds.within(capacity));
    field.requireNothingElse();
    return capacity;
  }

  /** A flow capacity among other fields: a rating as a catalogue prints it, or the conductance and ratio. */
  static FlowCapacity ofRow(Field row) throws WrongFileException {
    Optional<Field> rating = ratingOfRow(row);
    return rating.isPresent() ? capacity(rating.get()) : ofConductance(row);
  }

  /** The same as well as it is told. */
  static CapacityRange rangeOfRow(Field row) throws WrongFileException {
    Optional<Field> rating = ratingOfRow(row);
    CapacityRange range = rating.isPresent() ? capacityRange(rating.get()) : conductanceRange(row);
    row.build(() -> Bounds.within(range));
    return range;
  }

  private static Optional<Field> ratingOfRow(Field row) throws WrongFileException {
    Optional<Field> rating = row.find("capacity");
    Optional<Field> conductance = row.find("conductance");
    if (rating.isPresent() && conductance.isPresent()) {
      throw conductance.get().wrong("stands beside a capacity; accepted: one of them");
    }
    return rating;
  }

  /** A flow capacity by the conductance and ratio that stand among other fields. */
  static FlowCapacity ofConductance(Field field) throws WrongFileException {
    SonicConductance c = conductance(field);
    double b = ratio(field);
    return field.build(() -> FlowCapacity.of(c, b));
  }

  private static SonicConductance conductance(Field field) throws WrongFileException {
    return field
        .field("conductance", "a sonic conductance such as \"6.0 dm3/(s bar)\"")
        .least(SonicConductance::parse);
  }

  private static CapacityRange conductanceRange(Field field) throws WrongFileException {
    if (field.find("criticalPressureRatio").isPresent()) {
      return CapacityRange.exactly(ofConductance(field));
    }
    SonicConductance c = conductance(field);
    return field.build(() -> CapacityRange.ofConductance(c));
  }

  private static CapacityRange ofRating(Field field) throws WrongFileException {
    FreeAirFlow rated = field
        .field("flow", "a free-air flow such as \"34 scfm\"; or give the conductance instead")
        .least(FreeAirFlow::parse);
    AbsolutePressure inlet = field
        .field("inlet", "the absolute pressure in front of the part, such as \"7.2 bar(a)\"")
        .most(AbsolutePressure::parse);
    PressureDrop drop = field
        .field("drop", "the pressure loss across the part, such as \"5 psi\"")
        .most(PressureDrop::parse);
    Temperature temperature = field
        .field("temperature", "the temperature of the rating, such as \"20 °C\"")
        .least(Temperature::parse);
    if (field.find("criticalPressureRatio").isEmpty()) {
      return field.build(() -> CapacityRange.ofRatedFlow(rated, inlet, drop, temperature));
    }
    double b = ratio(field);
    return field.build(
        () -> CapacityRange.exactly(FlowCapacity.ofRatedFlow(rated, inlet, drop, temperature, b)));
  }

  private static double ratio(Field field) throws WrongFileException {
    Field told = field.field("criticalPressureRatio", "b of ISO 6358, a number such as 0.3");
    double ratio = told.number();
    told.build(() -> FlowCapacity.of(ANY_CONDUCTANCE, ratio)); // the bounds are core's
    return ratio;
  }
}
