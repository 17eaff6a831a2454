package org.airfit.files;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.joint.End;
import org.airfit.line.ConduitName;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;

/**
 * Reads a hose that is there and of which nobody knows more than its size and its length: "1/4 in hose, old, 25 ft", or
 * "1/4 in hose, old, 25 to 35 ft".
 *
 * <p>Its bore lies between the limits of its name, its wall between new and old, its rating is not known and stays to be
 * asked. It is taken to end as a cut hose, unless its ends are told behind its length.
 */
final class OldHose {

  private static final String UNIT = " *(?:ft|foot|feet|m|metres?|meters?)";

  private static final String NUMBER = "[0-9]+(?:[.][0-9]+)?";

  private static final Pattern LENGTH = Pattern.compile("(?i),? *((?:" + NUMBER + "(?:" + UNIT
      + ")? +to +)?" + NUMBER + UNIT + ") *(?:long)?(?=,|$)");

  private OldHose() {}

  /**
   * The hose in words; empty where the text does not begin with the size of a hose. Without a length it is as long as it
   * must be; of a reach that is a range, that is anything in between.
   */
  static Optional<Part.Hose> of(Field field, Optional<Range<Length>> reach)
      throws WrongFileException {
    String typed = field.text().strip();
    Matcher length = LENGTH.matcher(typed);
    String words = length.find() ? typed.substring(0, length.start()) : typed;
    ConduitName name;
    try {
      name = ConduitName.parse(words);
    } catch (QuantityFormatException e) {
      return Optional.empty();
    }
    Optional<HoseBore> size = size(words);
    if (name.bore().isEmpty() || size.isEmpty()) {
      return Optional.empty();
    }
    boolean tellsLength = length.reset().find();
    if (!tellsLength && reach.isEmpty()) {
      throw field.wrong("\"" + typed + "\" tells no length of the hose; accepted: \"" + words
          + ", 25 ft\", or an object with its data");
    }
    Range<Length> told = tellsLength
        ? field.build(() -> Range.parse(length.group(1), Length::parse))
        : reach.orElseThrow();
    String ends = tellsLength ? typed.substring(length.end()).replaceFirst("^,? *", "") : "";
    End end = field.build(() -> End.parse(ends.isEmpty() ? size.get().label() + " hose" : ends));
    ConduitRange conduit =
        field.build(() -> tellsLength ? over(name, told) : over(name, told).ofUntoldLength(told));
    PartFacts facts = field.build(() -> PartFacts.of(typed, typed)).asExisting();
    return Optional.of(new Part.Hose(facts, size.get(), conduit, end, end));
  }

  private static ConduitRange over(ConduitName name, Range<Length> length) {
    ConduitRange longest = name.over(name.bore().orElseThrow(), length.most());
    return length.isExact()
        ? longest
        : new ConduitRange(
            longest.least(),
            name.over(name.bore().orElseThrow(), length.least()).most(),
            longest.assumptions());
  }

  /** The bore that the words begin with. */
  private static Optional<HoseBore> size(String words) {
    int hose = words.toLowerCase(Locale.ROOT).indexOf("hose");
    if (hose < 0) {
      return Optional.empty();
    }
    try {
      return Optional.of(HoseBore.parse(words.substring(0, hose).strip()));
    } catch (QuantityFormatException e) {
      return Optional.empty();
    }
  }
}
