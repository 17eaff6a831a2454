package org.airfit.safety;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.airfit.internal.Capital;
import org.airfit.internal.Table;
import org.airfit.safety.SafetyRule.Asks;
import org.airfit.source.Basis;
import org.airfit.source.Source;
import org.jspecify.annotations.Nullable;

/**
 * Reads tables of rules, the bundled ones and those of a user alike. A refusal names row, column and what is accepted.
 */
final class RuleTable {

  private static final List<String> NEEDED = List.of("jurisdiction", "citation", "source", "basis");

  private static final List<String> COLUMNS = List.of(
      "jurisdiction",
      "citation",
      "scope",
      "text",
      "fact_paraphrased",
      "parameter",
      "operator",
      "limit",
      "unit",
      "source",
      "basis",
      "order",
      "title",
      "demand",
      "asks",
      "quantity",
      "when",
      "unless",
      "judged_by");

  private static final int USUAL_ORDER = 50;

  private final Table.Row row;

  private RuleTable(Table.Row row) {
    this.row = row;
  }

  /** A rule with its place among the others. */
  record Placed(int order, SafetyRule rule) {}

  static List<SafetyRule> bundled() {
    List<Table.Row> rows = new ArrayList<>();
    for (String file : List.of("rules.csv", "rules_more.csv", "rules_practice.csv")) {
      rows.addAll(Table.read(RuleTable.class, file));
    }
    return rules(rows);
  }

  static List<SafetyRule> parse(String text) {
    return checked(Table.of(text));
  }

  static List<SafetyRule> parse(List<List<String>> cells) {
    return checked(Table.ofCells(cells));
  }

  private static List<SafetyRule> checked(List<Table.Row> rows) {
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("table of rules must have at least one rule, was empty");
    }
    for (String column : NEEDED) {
      if (!rows.get(0).has(column)) {
        throw new IllegalArgumentException("row 1 must have a column " + column
            + ", was without; the columns are " + String.join(", ", COLUMNS));
      }
    }
    for (String column : rows.get(0).cells().keySet()) {
      if (!COLUMNS.contains(column)) {
        throw new IllegalArgumentException("row 1 must have columns of "
            + String.join(", ", COLUMNS) + ", was \"" + column + "\"");
      }
    }
    return rules(rows);
  }

  private static List<SafetyRule> rules(List<Table.Row> rows) {
    List<Placed> placed = new ArrayList<>();
    for (Table.Row row : rows) {
      placed.add(new RuleTable(row).read());
    }
    placed.sort(Comparator.comparingInt(Placed::order));
    return placed.stream().map(Placed::rule).toList();
  }

  private String text(String column) {
    return row.has(column) ? row.text(column).strip() : "";
  }

  private String needed(String column) {
    String text = text(column);
    if (text.isEmpty()) {
      throw wrong(column, "was empty; every rule needs one");
    }
    return text;
  }

  private IllegalArgumentException wrong(String column, String what) {
    return new IllegalArgumentException("row " + row.number() + ", column " + column + ": " + what);
  }

  private <T> T as(String column, String text, Function<String, T> reading) {
    try {
      return reading.apply(text);
    } catch (IllegalArgumentException e) {
      IllegalArgumentException told = wrong(column, String.valueOf(e.getMessage()));
      told.initCause(e);
      throw told;
    }
  }

  private Placed read() {
    String jurisdiction = needed("jurisdiction");
    String citation = needed("citation");
    String said = text("text").isEmpty() ? text("fact_paraphrased") : text("text");
    if (said.isEmpty()) {
      throw wrong("text", "was empty; say what the rule demands");
    }
    String demand = text("demand").isEmpty() ? sentence(said) : text("demand");
    String title = text("title").isEmpty() ? citation : text("title");
    Source source = new Source(basis(jurisdiction), inFull(jurisdiction, citation));
    SafetyRule.Statement statement = new SafetyRule.Statement(
        jurisdiction, citation, text("scope"), said, title, demand, source, needed("source"));
    String judgedBy = text("judged_by");
    SafetyRule.@Nullable Judging test = judgedBy.isEmpty() ? test() : null;
    int order =
        text("order").isEmpty() ? USUAL_ORDER : as("order", text("order"), RuleTable::wholeNumber);
    return new Placed(order, new SafetyRule(statement, test, judgedBy));
  }

  private static int wholeNumber(String text) {
    if (text.length() > 4 || !text.chars().allMatch(c -> c >= '0' && c <= '9')) {
      throw new IllegalArgumentException(
          "was \"" + text + "\"; accepted: a whole number up to 9999");
    }
    return Integer.parseInt(text);
  }

  private static String sentence(String text) {
    String end = text.endsWith(".") ? "" : ".";
    return Capital.first(text) + end;
  }

  /** What a citation means by itself stands alone; that of another place is told with the place. */
  private static String inFull(String jurisdiction, String citation) {
    return List.of("US", "ISO", SafetyRules.ANYWHERE).contains(jurisdiction)
        ? citation
        : jurisdiction + ", " + citation;
  }

  private SafetyRule.Judging test() {
    RuleQuantity quantity = quantity();
    boolean limited = !text("limit").isEmpty();
    RuleOperator operator = null;
    RuleLimit limit = null;
    if (quantity != null && !limited && quantity.kind() == RuleQuantity.Kind.SHARE) {
      operator = RuleOperator.AT_MOST; // "not above the maker's rating" has no number
      limit =
          as("limit", "100", n -> RuleLimit.of(quantity.kind(), RuleLimit.number(n), "percent"));
    } else if (limited) {
      if (quantity == null) {
        throw wrong(
            "quantity",
            "was empty, but the rule has a limit; say what is limited: one of "
                + List.of(RuleQuantity.values()));
      }
      operator = as("operator", text("operator"), RuleOperator::parse);
      var number = as("limit", text("limit"), RuleLimit::number);
      limit = as("unit", text("unit"), unit -> RuleLimit.of(quantity.kind(), number, unit));
    } else if (quantity != null || !text("operator").isEmpty()) {
      throw wrong("limit", "was empty; accepted: a number such as 30 or 0.5");
    }
    List<Fact> when = as("when", text("when"), Fact::parse);
    List<Fact> unless = as("unless", text("unless"), Fact::parse);
    return new SafetyRule.Judging(asks(operator), when, unless, quantity, operator, limit);
  }

  /** A table without a column of its own for it may name the quantity under parameter. */
  private @Nullable RuleQuantity quantity() {
    String column = row.has("quantity") ? "quantity" : "parameter";
    return as(column, text(column), RuleQuantity::parse).orElse(null);
  }

  private Asks asks(@Nullable RuleOperator operator) {
    String text = text("asks").toLowerCase(Locale.ROOT);
    if (text.isEmpty()) {
      return operator == RuleOperator.BELOW || operator == RuleOperator.AT_MOST
          ? Asks.FORBIDS
          : Asks.REQUIRES;
    }
    return as("asks", text, RuleTable::asks);
  }

  private static Asks asks(String text) {
    return switch (text) {
      case "requires" -> Asks.REQUIRES;
      case "forbids" -> Asks.FORBIDS;
      case "advises against" -> Asks.ADVISES_AGAINST;
      default ->
        throw new IllegalArgumentException(
            "was \"" + text + "\"; accepted: requires, forbids, advises against");
    };
  }

  private Basis basis(String jurisdiction) {
    return as("basis", needed("basis"), text -> basis(text, jurisdiction));
  }

  /** The words of the tables, and those that airfit prints; a remark may follow the word. */
  private static Basis basis(String text, String jurisdiction) {
    String word = text.split("[ ;,(]", 2)[0].toLowerCase(Locale.ROOT);
    return switch (word) {
      case "read" -> jurisdiction.equals("ISO") ? Basis.STANDARD : Basis.REGULATION;
      case "law", "regulation" -> Basis.REGULATION;
      case "standard" -> Basis.STANDARD;
      case "handbook" -> Basis.HANDBOOK;
      case "derived" -> Basis.DERIVED;
      case "measured" -> Basis.MEASURED;
      case "practice", "common" -> Basis.COMMON_PRACTICE;
      case "memory", "from" -> Basis.FROM_MEMORY;
      default ->
        throw new IllegalArgumentException("was \"" + text
            + "\"; accepted: read, law, standard, handbook, derived, measured, practice, memory");
    };
  }
}
