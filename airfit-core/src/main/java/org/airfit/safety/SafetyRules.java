package org.airfit.safety;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.airfit.working.UnitSystem;

/**
 * Rules of safety from tables: those that come with airfit, and those of a user.
 *
 * <p>A table is CSV with a heading. Columns, of which the first, {@code citation}, {@code text}, {@code source} and
 * {@code basis} are needed:
 *
 * <table class="striped">
 * <caption>Columns of a table of rules</caption>
 * <thead><tr><th>column</th><th>what stands in it</th></tr></thead>
 * <tbody>
 * <tr><td>jurisdiction</td><td>where the rule holds: US, US-CA, GB, ISO, the name of a works; any for
 * practice</td></tr>
 * <tr><td>citation, scope</td><td>where it stands, and the work it is on</td></tr>
 * <tr><td>text (or fact_paraphrased)</td><td>what it demands</td></tr>
 * <tr><td>quantity (or parameter)</td><td>what is limited, such as cleaning pressure, hose bore; empty for
 * none</td></tr>
 * <tr><td>operator, limit, unit</td><td>such as &lt; 30 psi; a unit may have the same limit in another one behind it:
 * psi (16 bar)</td></tr>
 * <tr><td>asks</td><td>forbids: the operator says what is allowed. requires: it says from where on something is asked
 * for. Left out, &lt; and &lt;= forbid, all else requires</td></tr>
 * <tr><td>when, unless</td><td>facts that must be told, or that except it, such as percussion tool; quick
 * couplers</td></tr>
 * <tr><td>title, demand, order</td><td>its name, what it demands in a sentence, and its place among cautions</td></tr>
 * <tr><td>judged_by</td><td>of a rule that airfit does not judge, what stands for it</td></tr>
 * <tr><td>source, basis</td><td>where it was read; read, standard, handbook, practice, memory …</td></tr>
 * </tbody>
 * </table>
 *
 * <p>What comes with airfit is US federal law with some rules of other places, standards, and general practice. No
 * table is whole: other places have other rules.
 *
 * <p>One rule by its citation, and those of a place:
 *
 * <pre>{@code
 * import org.airfit.safety.SafetyRule;
 * import org.airfit.safety.SafetyRules;
 *
 * class RulesOfAPlace {
 *   public static void main(String[] args) {
 *     SafetyRules rules = SafetyRules.bundled().in("US-CA");
 *     SafetyRule cleaning = rules.rule("29 CFR 1910.242(b)");
 *     System.out.println(cleaning.operator().orElseThrow() + " " + cleaning.limit().orElseThrow());
 *     // < 30 psig
 *   }
 * }
 * }</pre>
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class SafetyRules {

  /** The jurisdiction of general practice. */
  static final String ANYWHERE = "any";

  private static final String STANDARDS = "ISO";

  private static final Source DEFERS =
      Source.commonPractice("deference to codes, makers and licensed practice");

  private final List<SafetyRule> rules;

  private SafetyRules(List<SafetyRule> rules) {
    this.rules = List.copyOf(rules);
  }

  private static final class Bundled {
    static final SafetyRules ALL = new SafetyRules(RuleTable.bundled());
    static final SafetyRules US_FEDERAL = ALL.in("US");
  }

  /** {@return all rules that come with airfit, of whatever place} */
  public static SafetyRules bundled() {
    return Bundled.ALL;
  }

  /** {@return the rules that are judged unless told otherwise: US federal law, standards and general practice} */
  public static SafetyRules usFederal() {
    return Bundled.US_FEDERAL;
  }

  /**
   * Reads a table of rules.
   *
   * @param csv the text of the table, with the columns named above
   * @return its rules
   * @throws IllegalArgumentException if a cell is missing or refused; the message names row, column, what was there
   *     and what is accepted
   */
  public static SafetyRules ofTable(String csv) {
    return new SafetyRules(RuleTable.parse(Objects.requireNonNull(csv, "csv")));
  }

  /**
   * Reads a table of rules that a program has split into cells already.
   *
   * @param rows the cells of each row, the heading first
   * @return its rules
   * @throws IllegalArgumentException if a cell is missing or refused, as {@link #ofTable} says it
   */
  public static SafetyRules ofRows(List<List<String>> rows) {
    List<List<String>> copy = new ArrayList<>();
    for (List<String> row : Objects.requireNonNull(rows, "rows")) {
      copy.add(List.copyOf(row));
    }
    return new SafetyRules(RuleTable.parse(copy));
  }

  /**
   * Obtains these rules as far as they hold at a place: those of the place, of what it is a part of, of standards and
   * of general practice.
   *
   * @param jurisdiction the place, such as "US-CA", a part of "US", in capital letters or small ones
   * @return the rules that hold there; where none is of the place itself, standards and practice alone
   */
  public SafetyRules in(String jurisdiction) {
    Objects.requireNonNull(jurisdiction, "jurisdiction");
    List<SafetyRule> there = rules.stream()
        .filter(rule -> rule.jurisdiction().equals(STANDARDS)
            || rule.jurisdiction().equals(ANYWHERE)
            || holds(rule.jurisdiction(), jurisdiction))
        .toList();
    return new SafetyRules(there);
  }

  /** Whether a place is that of a rule or a part of it; "us-ca" is California however it is typed. */
  private static boolean holds(String of, String place) {
    return place.equalsIgnoreCase(of) || place.regionMatches(true, 0, of + "-", 0, of.length() + 1);
  }

  /**
   * Obtains these rules with more.
   *
   * @param more such as those of one's own works
   * @return both; a rule that is in both once
   */
  public SafetyRules with(SafetyRules more) {
    Set<SafetyRule> all = new LinkedHashSet<>(rules);
    all.addAll(Objects.requireNonNull(more, "more").rules);
    return new SafetyRules(List.copyOf(all));
  }

  /**
   * Obtains these rules with their limits told in a system of units, for cautions that speak in them.
   *
   * @param units the units
   * @return the same rules, {@link SafetyRule#toldIn told in these units}
   */
  public SafetyRules toldIn(UnitSystem units) {
    return new SafetyRules(rules.stream().map(rule -> rule.toldIn(units)).toList());
  }

  /** {@return the rules, in the order in which their cautions are shown} */
  public List<SafetyRule> rules() {
    return rules;
  }

  /**
   * Finds a rule.
   *
   * @param citation where it stands, such as "29 CFR 1910.242(b)"
   * @return the first rule of that citation
   * @throws IllegalArgumentException if there is none
   */
  public SafetyRule rule(String citation) {
    Objects.requireNonNull(citation, "citation");
    return rules.stream()
        .filter(rule -> rule.citation().equals(citation))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("citation must be that of one of "
            + rules.size() + " rules, such as \""
            + rules.stream().findFirst().map(SafetyRule::citation).orElse("") + "\", was \""
            + citation + "\""));
  }

  /**
   * Judges a situation by every rule.
   *
   * @param situation what is known
   * @return what each rule says, those that do not apply among them
   */
  public List<Ruling> rulings(Situation situation) {
    Objects.requireNonNull(situation, "situation");
    return rules.stream().map(rule -> Ruling.of(rule, situation)).toList();
  }

  /**
   * Tells the cautions for a situation.
   *
   * @param situation what is known
   * @return a caution for each rule that calls for one, rules of one title together, that lines are depressurised
   *     first of all, and last, always, that codes, makers and licensed practice come first
   */
  public List<Caution> cautions(Situation situation) {
    Map<String, List<Ruling>> byTitle = new LinkedHashMap<>();
    for (Ruling ruling : rulings(situation)) {
      if (ruling.caution().isPresent()) {
        byTitle.computeIfAbsent(ruling.rule().title(), any -> new ArrayList<>()).add(ruling);
      }
    }
    List<Caution> cautions = new ArrayList<>();
    byTitle.values().forEach(alike -> cautions.add(together(alike)));
    cautions.add(deference());
    return List.copyOf(cautions);
  }

  /** One caution of rules that ask for the same: the words of the first, the reasons and citations of all. */
  private static Caution together(List<Ruling> alike) {
    Set<String> reasons = new LinkedHashSet<>();
    for (Ruling ruling : alike) {
      String reason = ruling.reason();
      reasons.add(reason.endsWith(".") ? reason.substring(0, reason.length() - 1) : reason);
    }
    SafetyRule first = alike.get(0).rule();
    return Caution.of(
        first.title(),
        first.demand(),
        String.join("; ", reasons) + ".",
        source(alike.stream().map(Ruling::rule).toList()));
  }

  /** The strongest basis, on which the demand stands already; what is weaker says so. */
  private static Source source(List<SafetyRule> alike) {
    Basis strongest = alike.get(0).source().basis();
    for (SafetyRule rule : alike) {
      Basis basis = rule.source().basis();
      strongest = basis.compareTo(strongest) < 0 ? basis : strongest;
    }
    Set<String> citations = new LinkedHashSet<>();
    for (SafetyRule rule : alike) {
      Source source = rule.source();
      citations.add(source.basis() == strongest ? source.citation() : source.toString());
    }
    return new Source(strongest, String.join("; ", citations));
  }

  /**
   * Tells what the rules of a title demand, without a situation to judge.
   *
   * @param title what they are about, such as "Receiver protection"
   * @return the demand of the first with the citations of all
   * @throws IllegalArgumentException if no rule that is judged has that title
   */
  public Caution reminder(String title) {
    Objects.requireNonNull(title, "title");
    List<SafetyRule> alike = rules.stream()
        .filter(rule -> rule.isJudged() && rule.title().equals(title))
        .toList();
    if (alike.isEmpty()) {
      throw new IllegalArgumentException(
          "title must be that of a rule, such as \"Receiver protection\", was \"" + title + "\"");
    }
    return new Caution(title, alike.get(0).demand(), source(alike));
  }

  /** {@return the caution that stands under every list: whose rules were judged, and what comes before them} */
  public Caution deference() {
    return new Caution(
        "Before anyone connects this",
        "This is a calculation, not an approval. " + places()
            + " Local codes, the makers' ratings and"
            + " instructions, and a licensed person's judgement come first.",
        DEFERS);
  }

  /** {@return whose rules these are, and that other places have others, in two sentences} */
  public String places() {
    Set<String> names = new LinkedHashSet<>();
    for (SafetyRule rule : rules) {
      if (!rule.jurisdiction().equals(STANDARDS) && !rule.jurisdiction().equals(ANYWHERE)) {
        names.add(rule.jurisdiction().equals("US") ? "US federal law" : rule.jurisdiction());
      }
    }
    return (names.isEmpty()
            ? "It was judged by general practice alone, by the law of no place."
            : "It was judged by rules of " + String.join(", ", names)
                + ", as far as airfit holds them.")
        + " Other places have other rules.";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof SafetyRules that && rules.equals(that.rules);
  }

  @Override
  public int hashCode() {
    return rules.hashCode();
  }

  /** {@return how many rules these are, and whose} */
  @Override
  public String toString() {
    return rules.size() + " rules. " + places();
  }
}
