package org.airfit.files;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.ReferenceState;
import org.airfit.working.UnitSystem;

/**
 * What a tool and its supply have as a rule. A value outside is asked about among the remarks, as it is most likely a
 * slip of the decimal point or the unit; it is judged as it was typed, and nothing is refused.
 *
 * <p>The limits are this project's choice, wide of what is known: a table of the air that tools take at 90 psig (a
 * handbook of a trade institute, from memory) goes from 7 to 95 cfm, and most tools need 70 psig at least (training
 * notes of a US Industrial Training and Assessment Center).
 */
final class UsualValues {

  /** Which pressures [bar] or flows [scfm] are usual, and how that is said in SI and in US units. */
  private record Usual(double least, double most, String si, String us) {

    boolean holds(double value) {
      return value >= least && value <= most;
    }
  }

  private static final Usual NEEDED = new Usual(
      1.0,
      10.5,
      "a tool needs 1 to 10 bar(g) (15 to 150 psig)",
      "a tool needs 15 to 150 psig (1 to 10 bar(g))");

  private static final Usual ALLOWED = new Usual(
      2.0,
      16.5,
      "a tool is made for 2 to 16 bar(g) (30 to 230 psig) at most",
      "a tool is made for 30 to 230 psig (2 to 16 bar(g)) at most");

  private static final Usual SUPPLIED = new Usual(
      3.0,
      16.5,
      "a supply stands at 3 to 16 bar(g) (45 to 230 psig)",
      "a supply stands at 45 to 230 psig (3 to 16 bar(g))");

  private static final Usual TAKEN = new Usual(
      2.0,
      120.0,
      "a tool takes 57 to 3400 L/min (2 to 120 scfm) of free air",
      "a tool takes 2 to 120 scfm (57 to 3400 L/min) of free air");

  private static final Usual BLASTING = new Usual(
      2.0,
      700.0,
      "blasting takes 57 to 20 000 L/min (2 to 700 scfm) of free air",
      "blasting takes 2 to 700 scfm (57 to 20 000 L/min) of free air");

  private UsualValues() {}

  /** Asks about the air and the pressure of a tool, where they are no usual values. */
  static void askOfTool(
      Field tool, Range<FreeAirFlow> air, Range<GaugePressure> pressure, List<String> remarks)
      throws WrongFileException {
    ask(told(tool, "pressure"), NEEDED, pressure, remarks);
    Usual usual = tool.flag("blasts") ? BLASTING : TAKEN;
    double least = scfm(air.least());
    double most = scfm(air.most());
    if (most < usual.least() || least > usual.most()) {
      double factor = most < usual.least() ? 10.0 : 0.1;
      FreeAirFlow meant =
          FreeAirFlow.from(air.least().massFlow().times(factor), air.least().reference());
      boolean isSlip = usual.holds(scfm(meant));
      Field field = told(tool, "air");
      UnitSystem units = typedIn(field);
      remarks.add(question(
          field,
          units.either(usual.si(), usual.us()),
          isSlip ? Optional.of(units.sayBoth(meant)) : Optional.empty()));
    }
  }

  /** Asks about the highest pressure that the maker of a tool allows; one below what it needs cannot be meant. */
  static void askOfRating(
      Field field, GaugePressure allowed, GaugePressure needed, List<String> remarks)
      throws WrongFileException {
    ask(
        field,
        ALLOWED,
        Range.exactly(allowed),
        meant -> meant.compareTo(needed) >= 0,
        remarks);
  }

  /** Asks about the pressure of a supply. */
  static void askOfSupply(Field field, Range<GaugePressure> pressure, List<String> remarks)
      throws WrongFileException {
    ask(field, SUPPLIED, pressure, remarks);
  }

  private static void ask(Field field, Usual usual, Range<GaugePressure> told, List<String> remarks)
      throws WrongFileException {
    ask(field, usual, told, meant -> true, remarks);
  }

  /** Asks of a value, and names one that may be meant where that can be. */
  private static void ask(
      Field field,
      Usual usual,
      Range<GaugePressure> told,
      Predicate<GaugePressure> canBe,
      List<String> remarks)
      throws WrongFileException {
    boolean isLow = told.most().bar() < usual.least();
    if (!isLow && told.least().bar() <= usual.most()) {
      return;
    }
    GaugePressure meant = GaugePressure.ofBar(
        isLow ? 10.0 * told.least().bar() : 0.1 * told.least().bar());
    boolean isSlip = usual.holds(meant.bar()) && canBe.test(meant);
    UnitSystem units = typedIn(field);
    remarks.add(question(
        field,
        units.either(usual.si(), usual.us()),
        isSlip ? Optional.of(units.sayBoth(meant)) : Optional.empty()));
  }

  /** A value is asked about in the units in which it was typed. */
  private static UnitSystem typedIn(Field field) throws WrongFileException {
    return field.isText() && UnitWords.in(field.text()).contains(UnitSystem.US)
        ? UnitSystem.US
        : UnitSystem.SI;
  }

  /** What is asked of a field: whether a usual value was meant, where a slip of the decimal point gives one. */
  private static String question(Field field, String usual, Optional<String> meant)
      throws WrongFileException {
    return typed(field) + ": " + usual + " as a rule. "
        + meant
            .map(value -> "Is " + value + " meant, or another unit?")
            .orElse("Is its unit right?");
  }

  /** The field that tells something of a tool: its own, or the marking. */
  private static Field told(Field tool, String what) throws WrongFileException {
    Optional<Field> marking = tool.find("marking");
    return tool.find(what).or(() -> marking).orElse(tool);
  }

  private static double scfm(FreeAirFlow flow) {
    return flow.at(ReferenceState.SCFM_60F).cubicFeetPerMinute();
  }

  private static String typed(Field field) throws WrongFileException {
    return (field.isText() ? "\"" + Printable.line(field.text().strip()) + "\" in " : "")
        + field.place();
  }
}
