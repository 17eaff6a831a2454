package org.airfit.line;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.airfit.line.PipeFitting.Method;
import org.airfit.quantity.Length;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;

/**
 * The elbows, tees and valves on a line as people count them, such as '4 elbows, 1 tee, 1 ball valve'.
 *
 * <p>A word that may mean several pieces has the one that loses least and the one that loses most: a tee may be gone
 * through or turned in, a check valve may swing or lift. Each piece has its source; see {@link PipeFitting}. Elbows are
 * threaded standard elbows unless "long" is said, a ball valve may have a full or a reduced port.
 *
 * <p>Quick couplings are none of these: they have a flow capacity.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class FittingList {

  /**
   * So many of one word.
   *
   * @param count how many, from 1 to 1000
   * @param name the word, such as "tee"
   * @param losesLeast the piece it may mean that loses least
   * @param losesMost the piece it may mean that loses most
   */
  public record Item(int count, String name, PipeFitting losesLeast, PipeFitting losesMost) {

    /**
     * Checks the components.
     *
     * @param count how many, from 1 to 1000
     * @param name the word, such as "tee"
     * @param losesLeast the piece it may mean that loses least
     * @param losesMost the piece it may mean that loses most
     * @throws IllegalArgumentException if {@code count} is out of range
     */
    public Item {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(losesLeast, "losesLeast");
      Objects.requireNonNull(losesMost, "losesMost");
      if (count < 1 || count > MOST) {
        throw new IllegalArgumentException(
            "count of a fitting must be from 1 to " + MOST + ", was " + count);
      }
    }

    /** {@return whether the word means one piece only} */
    public boolean isExact() {
      return losesLeast.equals(losesMost);
    }
  }

  private record Meaning(String name, PipeFitting losesLeast, PipeFitting losesMost) {}

  private static final int MOST = 1000;

  private static final Source UNION =
      Source.fromMemory("handbooks of chemical engineering, K 0.04 to 0.08 of a union or coupling");

  /** Loaded on first use. */
  private static final class Words {

    static final Map<Set<String>, Meaning> MEANINGS = new LinkedHashMap<>();

    static {
      PipeFitting elbow = crane("elbow 90°, standard, threaded");
      add("elbow", elbow, elbow, "elbow 90", "ell", "ell 90");
      PipeFitting half = crane("elbow 45°, standard, threaded");
      add("45° elbow", half, half, "elbow 45", "ell 45");
      PipeFitting sweep = crane("bend 90°, r/D 1.5");
      add("long elbow", sweep, sweep, "elbow long", "elbow long radius", "elbow long sweep", "ell long");
      add("bend", crane("bend 90°, r/D 2"), crane("bend 90°, r/D 10"), "bend 90");
      PipeFitting mitre = crane("mitre bend 90°");
      add("mitre bend", mitre, mitre, "mitre", "miter", "miter bend");
      PipeFitting turn = crane("close return bend 180°");
      add("return bend", turn, turn, "bend 180", "elbow 180");
      PipeFitting run = crane("tee, flow through run");
      PipeFitting branch = crane("tee, flow through branch");
      add("tee", run, branch, "t");
      add("tee run", run, run, "tee through", "tee straight", "tee run through");
      add("tee branch", branch, branch, "tee side", "tee turned");
      PipeFitting ball = crane("ball valve, full port");
      PipeFitting reduced = PipeFitting.of(Method.TWO_K, "valve, ball, reduced trim, β 0.9");
      add("ball valve", ball, reduced);
      add("full-port ball valve", ball, ball, "full bore ball valve");
      one("gate valve", "gate valve, full port");
      one("globe valve", "globe valve, full seat");
      add(
          "angle valve",
          crane("angle valve (styles 0 and 2)"),
          crane("angle valve (style 1)"));
      one("plug valve", "plug valve, straight");
      one("butterfly valve", "butterfly, centric 2-8 in");
      add(
          "diaphragm valve",
          crane("diaphragm valve, straight"),
          crane("diaphragm valve, weir"));
      PipeFitting swing = crane("swing check, straight");
      PipeFitting lift = crane("lift check, globe");
      add("check valve", swing, lift, "check", "non return valve");
      add("swing check", swing, crane("swing check, angled seat"), "swing check valve");
      add("lift check", crane("lift check, angle"), lift, "lift check valve");
      add(
          "union",
          PipeFitting.ofLossCoefficient("union", 0.04, UNION),
          PipeFitting.ofLossCoefficient("union", 0.08, UNION));
      PipeFitting entrance = PipeFitting.of(Method.CONSTANT, "entrance, sharp edge flush");
      add("entrance", entrance, entrance, "inlet");
      PipeFitting exit = PipeFitting.of(Method.CONSTANT, "pipe exit, sharp or rounded");
      add("exit", exit, exit);
    }

    private Words() {}

    private static PipeFitting crane(String name) {
      return PipeFitting.of(Method.LENGTH, name);
    }

    private static void one(String name, String fitting) {
      add(name, crane(fitting), crane(fitting));
    }

    private static void add(
        String name, PipeFitting losesLeast, PipeFitting losesMost, String... spellings) {
      MEANINGS.put(words(name), new Meaning(name, losesLeast, losesMost));
      for (String spelling : spellings) {
        MEANINGS.put(words(spelling), new Meaning(name, losesLeast, losesMost));
      }
    }

    static String accepted() {
      return MEANINGS.values().stream()
          .map(Meaning::name)
          .collect(Collectors.collectingAndThen(
              Collectors.toCollection(LinkedHashSet::new),
              names -> "a list such as \"4 elbows, 1 tee, 1 ball valve\" of "
                  + String.join(", ", names)));
    }
  }

  private final String text;
  private final List<Item> items;

  private FittingList(String text, List<Item> items) {
    this.text = text;
    this.items = List.copyOf(items);
  }

  /**
   * Reads what people type.
   *
   * @param text pieces with how many there are, such as "4 elbows, 1 tee, 1 ball valve"; one where no number stands
   * @return the list
   * @throws QuantityFormatException if the text is no such list; it tells where and what would be accepted
   */
  public static FittingList parse(String text) {
    Objects.requireNonNull(text, "text");
    List<Item> items = new ArrayList<>();
    int from = 0;
    for (int i = 0; i <= text.length(); i++) {
      if (i == text.length() || ",;+".indexOf(text.charAt(i)) >= 0) {
        items.add(item(text, from, i));
        from = i + 1;
      } else if (text.startsWith(" and ", i)) {
        items.add(item(text, from, i));
        from = i + 5;
      }
    }
    return new FittingList(text.strip(), items);
  }

  private static Item item(String text, int from, int to) {
    int start = from;
    while (start < to && text.charAt(start) == ' ') {
      start++;
    }
    int end = start;
    while (end < to && Character.isDigit(text.charAt(end))) {
      end++;
    }
    boolean isAngle = isAngle(text, start, end, to);
    int count = 1;
    int name = start;
    if (end > start && !isAngle) {
      String digits = text.substring(start, end);
      count = digits.length() > 4 ? 0 : Integer.parseInt(digits);
      name = end;
    }
    if (count < 1 || count > MOST) {
      throw wrong(text, start, "how many there are must be from 1 to " + MOST);
    }
    Set<String> words = words(text.substring(name, to));
    if (words.isEmpty()) {
      throw wrong(text, start, "the fitting is missing");
    }
    if (words.contains("coupling") || words.contains("coupler") || words.contains("socket")) {
      throw wrong(
          text,
          start,
          "a quick coupling is no pipe fitting: give it as an element with its capacity; a pipe coupling"
              + " loses as a \"union\"");
    }
    Meaning meaning = Words.MEANINGS.get(words);
    if (meaning == null) {
      throw wrong(text, start, "\"" + text.substring(name, to).strip() + "\" is no fitting known here");
    }
    return new Item(count, meaning.name(), meaning.losesLeast(), meaning.losesMost());
  }

  /** Whether a number at the front is an angle: "90° elbow", "45 deg elbow", "90 elbow". */
  private static boolean isAngle(String text, int start, int end, int to) {
    if (text.startsWith("°", end) || text.startsWith(" deg", end)) {
      return true;
    }
    boolean isUsual = Set.of("45", "90", "180").contains(text.substring(start, end));
    return isUsual && !text.substring(end, to).strip().endsWith("s");
  }

  /** The words of a name in any order, in the singular, without degree signs, "x" and hyphens. */
  private static Set<String> words(String name) {
    Set<String> words = new TreeSet<>();
    String plain =
        name.toLowerCase(Locale.ROOT).replace('°', ' ').replace('-', ' ').replace('×', ' ');
    for (String word : plain.split(" ")) {
      boolean isPlural = word.length() > 3 && word.endsWith("s");
      String one = isPlural ? word.substring(0, word.length() - 1) : word;
      if (!one.isEmpty() && !Set.of("x", "deg", "degree", "of", "a", "flow", "threaded").contains(one)) {
        words.add(one);
      }
    }
    return words;
  }

  private static QuantityFormatException wrong(String text, int at, String problem) {
    return new QuantityFormatException(text, at, problem, Words.accepted());
  }

  /** {@return how many of what, in the order they were typed} */
  public List<Item> items() {
    return items;
  }

  /** {@return whether every word means one piece only} */
  public boolean isExact() {
    return items.stream().allMatch(Item::isExact);
  }

  /**
   * Obtains the least sum of loss coefficients that the words leave open, in fully turbulent flow.
   *
   * @param bore the bore of the pipe, above 0.5 mm
   * @return ΣK on the velocity in {@code bore} [-]
   * @throws IllegalArgumentException if {@code bore} is not above 0.5 mm
   */
  public double leastLoss(Length bore) {
    Objects.requireNonNull(bore, "bore");
    return items.stream()
        .mapToDouble(item -> item.count() * item.losesLeast().k(bore))
        .sum();
  }

  /**
   * Obtains the largest sum of loss coefficients that the words leave open, in fully turbulent flow.
   *
   * @param bore the bore of the pipe, above 0.5 mm
   * @return ΣK on the velocity in {@code bore} [-]
   * @throws IllegalArgumentException if {@code bore} is not above 0.5 mm
   */
  public double mostLoss(Length bore) {
    Objects.requireNonNull(bore, "bore");
    return items.stream()
        .mapToDouble(item -> item.count() * item.losesMost().k(bore))
        .sum();
  }

  /** {@return where the coefficients come from, and which words mean more than one piece} */
  public List<Source> assumptions() {
    List<Source> all = new ArrayList<>();
    for (Item item : items) {
      Source least = item.losesLeast().source();
      Source most = item.losesMost().source();
      String pieces = item.isExact()
          ? item.name()
          : item.name() + " from \"" + item.losesLeast().name() + "\" to \""
              + item.losesMost().name() + "\"";
      String citation = least.equals(most) ? "" : least.citation() + " and ";
      Source source = new Source(
          least.basis().weaker(most.basis()), pieces + " by " + citation + most.citation());
      if (!all.contains(source)) {
        all.add(source);
      }
    }
    return List.copyOf(all);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof FittingList that && items.equals(that.items);
  }

  @Override
  public int hashCode() {
    return items.hashCode();
  }

  /** {@return the list as it was typed, which {@code parse} reads back} */
  @Override
  public String toString() {
    return text;
  }
}
