package org.airfit.files;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.working.UnitSystem;

/**
 * In which units an answer is told: those that the file says, or those in which most of its values are typed.
 *
 * <p>Counted are the values with a unit of the file itself, not those of a catalogue that it names: the catalogue is
 * the shop's, the file says what a customer said. As many in US units as in SI units are told in SI units; that is our
 * choice.
 *
 * @param said what the field {@code units} of the file says; empty where it is left out
 * @param us how many values are typed in US units
 * @param si how many values are typed in SI units
 */
public record TypedUnits(Optional<UnitSystem> said, int us, int si) {

  /** The name of the field. */
  static final String FIELD = "units";

  /** Fields that hold words of people, in which "3/8 in" is a name. */
  private static final Set<String> WORDS = Set.of(
      "job",
      "network",
      "customer",
      "catalogue",
      "name",
      "where",
      "part",
      "socket",
      "plug",
      "sameAs",
      "profile",
      "kind",
      "number",
      "date",
      "id",
      "source",
      "text",
      "title",
      FIELD);

  /**
   * Checks the components.
   *
   * @param said what the field {@code units} of the file says; empty where it is left out
   * @param us how many values are typed in US units, at least 0
   * @param si how many values are typed in SI units, at least 0
   * @throws IllegalArgumentException if a count is negative
   */
  public TypedUnits {
    Objects.requireNonNull(said, "said");
    if (us < 0 || si < 0) {
      throw new IllegalArgumentException(
          "us and si must be counts of at least 0, were " + us + " and " + si);
    }
  }

  /**
   * Counts the values of a file, whatever its field {@code units} says.
   *
   * @param document the file
   * @return the counts, with nothing said
   */
  public static TypedUnits of(Document document) {
    Map<UnitSystem, Integer> counts = new EnumMap<>(UnitSystem.class);
    count(document.content(), "", counts);
    return new TypedUnits(
        Optional.empty(),
        counts.getOrDefault(UnitSystem.US, 0),
        counts.getOrDefault(UnitSystem.SI, 0));
  }

  /** Reads the field {@code units}, and counts the values of the file. */
  static TypedUnits in(Field root, Document document) throws WrongFileException {
    TypedUnits counted = of(document);
    return new TypedUnits(told(root), counted.us, counted.si);
  }

  /** The units that a file tells; empty where it leaves them out. */
  static Optional<UnitSystem> told(Field root) throws WrongFileException {
    Optional<Field> field = root.find(FIELD);
    return field.isPresent()
        ? Optional.of(field.get().oneOf(List.of(UnitSystem.values()), UnitSystem::name))
        : Optional.empty();
  }

  /** The units in which a pressure was typed. */
  static UnitSystem ofPressure(Field pressure) throws WrongFileException {
    return pressure.text().contains("psi") ? UnitSystem.US : UnitSystem.SI;
  }

  private static void count(Object value, String name, Map<UnitSystem, Integer> counts) {
    if (value instanceof Map<?, ?> object) {
      object.forEach((part, field) -> {
        String key = String.valueOf(part);
        if (!key.startsWith("//")
            && field != null
            && !(field instanceof String && isWords(name, key))) {
          count(field, key, counts);
        }
      });
    } else if (value instanceof List<?> list) {
      list.stream().filter(Objects::nonNull).forEach(item -> count(item, name, counts));
    } else if (value instanceof String text) {
      UnitWords.in(text).forEach(system -> counts.merge(system, 1, Integer::sum));
    }
  }

  /** What is printed on a tool has units; the marking of a shop's own is words. */
  private static boolean isWords(String object, String field) {
    return WORDS.contains(field) || (field.equals("marking") && !object.equals("tool"));
  }

  /** {@return the units in which to tell the answer} */
  public UnitSystem system() {
    return said.orElse(us > si ? UnitSystem.US : UnitSystem.SI);
  }

  /**
   * {@return which units these are, why, and how to change it, such as "US units, in which 9 of 12 values of the file
   * are typed. To have SI units, add "units": "SI" to the file."}
   */
  public String inWords() {
    String name = system() + " units";
    if (said.isPresent()) {
      return name + ", as the file says.";
    }
    String other = system().either("US", "SI");
    String change =
        ". To have " + other + " units, add \"" + FIELD + "\": \"" + other + "\" to the file.";
    int all = us + si;
    if (us == si) {
      return name
          + (all == 0
              ? ", as no value of the file has a unit"
              : ", as half of the " + all + " values of the file are typed in either")
          + change;
    }
    if (all == 1) {
      return name + ", in which the one value of the file is typed" + change;
    }
    return name + ", in which " + Math.max(us, si) + " of " + all + " values of the file are typed"
        + change;
  }
}
