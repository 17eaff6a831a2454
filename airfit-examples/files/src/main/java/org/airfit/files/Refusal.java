package org.airfit.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.safety.Caution;
import org.airfit.safety.Medium;
import org.jspecify.annotations.Nullable;

/**
 * What is answered to a file that speaks of anything but compressed air: no, and why. It is looked for before anything
 * else of the file is read, so that no other fault of it, and no answer, comes first.
 *
 * @param medium what it speaks of, by which a program knows the refusal; the reason is for people
 * @param title what the file is about; empty where it does not say
 * @param customer whose it is; empty where it does not say
 * @param label the number and the day of a job; empty where the file does not tell them, or not in their form
 * @param reason why airfit does not advise on it
 * @param caution what stands against it, which whoever asked must be shown
 */
public record Refusal(
    Medium medium, String title, String customer, JobLabel label, String reason, Caution caution) {

  private static final String MEDIUM = "medium";

  /** By what a cylinder is marked. */
  private static final Map<String, String> SYMBOLS = Map.of(
      "n2", Medium.NITROGEN.toString(),
      "o2", Medium.OXYGEN.toString(),
      "h2o", Medium.WATER.toString());

  private static final int LONGEST_WORD = 60;

  /**
   * Refuses what is null.
   *
   * @param medium what it speaks of, by which a program knows the refusal; the reason is for people
   * @param title what the file is about; empty where it does not say
   * @param customer whose it is; empty where it does not say
   * @param label the number and the day of a job; empty where the file does not tell them, or not in their form
   * @param reason why airfit does not advise on it
   * @param caution what stands against it, which whoever asked must be shown
   * @throws IllegalArgumentException if {@code medium} is compressed air
   */
  public Refusal {
    Objects.requireNonNull(medium, "medium");
    if (medium == Medium.COMPRESSED_AIR) {
      throw new IllegalArgumentException(
          "medium of a refusal must be another than compressed air, was " + medium);
    }
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(caution, "caution");
  }

  /**
   * Looks whether a job, a network or a set is for anything but compressed air.
   *
   * @param document the file
   * @return the refusal; empty for compressed air, and where the file does not tell a medium
   */
  public static Optional<Refusal> of(Document document) {
    Object content = document.content();
    if (content instanceof Map<?, ?> root) {
      List<@Nullable Object> media = new ArrayList<>();
      add(media, root.get(MEDIUM));
      for (String part : List.of("conditions", "supply", "tool", "atHand")) {
        if (root.get(part) instanceof Map<?, ?> object) {
          add(media, object.get(MEDIUM));
        }
      }
      if (root.get("profiles") instanceof List<?> profiles) {
        for (Object profile : profiles) {
          add(media, profile instanceof Map<?, ?> object ? object.get(MEDIUM) : null);
        }
      }
      String title = text(root.get(root.containsKey("job") ? "job" : "set"));
      return refusal(media, title, text(root.get("customer")), JobLabel.found(root));
    }
    return content instanceof List<?> rows ? ofTable(rows) : Optional.empty();
  }

  /** A medium may stand in a list by mistake: each of the list counts. */
  private static void add(List<@Nullable Object> media, @Nullable Object medium) {
    if (medium instanceof List<?> several) {
      media.addAll(several);
    } else {
      media.add(medium);
    }
  }

  private static Optional<Refusal> ofTable(List<?> rows) {
    if (rows.isEmpty() || !(rows.get(0) instanceof List<?> heading)) {
      return Optional.empty();
    }
    List<@Nullable Object> media = new ArrayList<>();
    String title = "";
    String customer = "";
    for (Object row : rows.subList(1, rows.size())) {
      if (row instanceof List<?> cells) {
        media.add(cell(heading, cells, MEDIUM));
        if (List.of("network", "set").contains(cell(heading, cells, "record"))) {
          title = cell(heading, cells, "name");
          customer = cell(heading, cells, "customer");
        }
      }
    }
    return refusal(media, title, customer, JobLabel.NONE);
  }

  private static String cell(List<?> heading, List<?> cells, String column) {
    int at = heading.indexOf(column);
    return at >= 0 && at < cells.size() ? text(cells.get(at)) : "";
  }

  private static String text(@Nullable Object value) {
    return value instanceof String text ? text : "";
  }

  private static Optional<Refusal> refusal(
      List<@Nullable Object> media, String title, String customer, JobLabel label) {
    for (Object told : media) {
      String word = text(told).strip();
      Medium medium = medium(word);
      Optional<Caution> caution = word.isEmpty() ? Optional.empty() : medium.refusal();
      if (caution.isPresent()) {
        return Optional.of(
            new Refusal(medium, title, customer, label, reason(medium, word), caution.get()));
      }
    }
    return Optional.empty();
  }

  /** The word of a medium that a word or symbol means. */
  private static String named(String word) {
    String plain = word.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    return SYMBOLS.getOrDefault(plain, plain);
  }

  /** A word that is no medium airfit knows is another medium, or compressed air misspelt. */
  private static Medium medium(String word) {
    String named = named(word);
    for (Medium medium : Medium.values()) {
      if (medium.toString().equals(named)) {
        return medium;
      }
    }
    return Medium.OTHER;
  }

  private static String reason(Medium medium, String word) {
    return medium.toString().equals(named(word))
        ? medium.refusalInWords().orElseThrow()
        : medium.refusalInWords("\"" + shown(word) + "\"").orElseThrow()
            + " If it is compressed air, type compressed air.";
  }

  /** A word is told, a whole text is not. */
  private static String shown(String word) {
    return word.length() > LONGEST_WORD ? word.substring(0, LONGEST_WORD) + "…" : word;
  }

  /** Refuses a file that gives no sheet of its own for it. */
  static void requireNone(Document document) throws WrongFileException {
    Optional<Refusal> refusal = of(document);
    if (refusal.isPresent()) {
      throw new WrongFileException(document.name(), MEDIUM, refusal.get().reason());
    }
  }
}
