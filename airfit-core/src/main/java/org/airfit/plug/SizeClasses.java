package org.airfit.plug;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.measure.PartSpread.Limits;
import org.airfit.quantity.LengthUnit;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * Which size classes some readings leave open. It never names a profile, whatever was read.
 *
 * @param readings the readings that were looked at
 */
public record SizeClasses(List<PlugReading> readings) implements Worked {

  static final Caution FROM_MEMORY = new Caution(
      "Size class from memory",
      "The ranges of the size classes are remembered orders of magnitude. They narrow down a size and never a "
          + "profile; nothing may be "
          + "connected on their word.",
      SizeClass.RANGES);

  /**
   * Keeps a copy of the list.
   *
   * @param readings the readings that were looked at
   */
  public SizeClasses {
    Objects.requireNonNull(readings, "readings");
    readings = List.copyOf(readings);
  }

  /**
   * Looks up which classes some readings leave open.
   *
   * @param readings the readings
   * @return the classes
   */
  public static SizeClasses of(Collection<PlugReading> readings) {
    Objects.requireNonNull(readings, "readings");
    return new SizeClasses(List.copyOf(readings));
  }

  /**
   * Obtains the classes whose remembered ranges hold every reading that has one.
   *
   * @return the classes; none for a typing error, or a plug that is no air-line plug; all of them where nothing was
   *     read that has a range
   */
  public List<SizeClass> open() {
    return Stream.of(SizeClass.values())
        .filter(size -> readings.stream().allMatch(reading -> holds(size, reading)))
        .toList();
  }

  private static boolean holds(SizeClass size, PlugReading reading) {
    return size.range(reading.dimension())
        .map(range -> reading.length().compareTo(range.low()) >= 0
            && reading.length().compareTo(range.high()) <= 0)
        .orElse(true);
  }

  /** {@return the warning that goes with it} */
  public List<Caution> cautions() {
    return List.of(FROM_MEMORY);
  }

  /** {@return one or two plain sentences} */
  public String inWords() {
    String from = " (ranges from memory, order of magnitude only).";
    if (open().isEmpty()) {
      return "Of none of the usual size classes" + from + " Check the readings and their unit.";
    }
    if (open().size() == SizeClass.values().length) {
      return "Of any size class" + from;
    }
    return "Size class "
        + open().stream().map(SizeClass::toString).collect(Collectors.joining(" or ")) + from;
  }

  /**
   * Sets the readings beside the ranges.
   *
   * @param units the units to show lengths in: millimetres or inches
   * @return the working
   */
  @Override
  public Working working(UnitSystem units) {
    Working.Builder out =
        Working.titled("Size class of a plug", Objects.requireNonNull(units, "units"));
    for (PlugReading reading : readings) {
      List<String> ranges = new ArrayList<>();
      for (SizeClass size : SizeClass.values()) {
        size.range(reading.dimension())
            .ifPresent(range -> ranges.add(size.label() + " " + inWords(range, units)));
      }
      out.note(reading.inWords(units)
          + (ranges.isEmpty()
              ? ": no range is remembered."
              : ": " + String.join(", ", ranges) + "."));
    }
    return out.note("Source: " + SizeClass.RANGES + ".").answer(inWords()).build();
  }

  private static String inWords(Limits range, UnitSystem units) {
    return units == UnitSystem.SI
        ? range.low().format(LengthUnit.MILLIMETRE) + " to "
            + range.high().format(LengthUnit.MILLIMETRE)
        : range.low().format(LengthUnit.INCH, 3) + " to " + range.high().format(LengthUnit.INCH, 3);
  }

  /** {@return the sentences} */
  @Override
  public String toString() {
    return inWords();
  }
}
