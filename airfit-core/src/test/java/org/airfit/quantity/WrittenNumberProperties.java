package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** The scanner written by hand against a grammar written as a regular expression. */
class WrittenNumberProperties {

  private static final String BLANKS = "[\\s\\h]";

  private static final Pattern GRAMMAR = Pattern.compile("(?<sign>[+\\-−]?)"
      + "(?:(?:(?<whole>\\d+)(?:B*[-‐‑–]B*|B+))?(?<top>\\d+)[/⁄∕](?<bottom>\\d+)"
          .replace("B", BLANKS)
      + "|(?:(?<before>\\d+)B*[-‐‑–]?B*)?(?<eighths>[⅛¼⅜½⅝¾⅞])".replace("B", BLANKS)
      + "|(?<decimal>(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?))");

  /** Pieces rather than characters, so that whole numbers come up often. */
  @Provide
  Arbitrary<String> scribbles() {
    return Arbitraries.of(
            "0", "1", "3", "8", "12", "16", "00", ".", ".5", "/", "⁄", "∕", " ", "  ", "\u00a0",
            "-", "–", "−", "+", "e", "E", "e-3", "E+2", "⅛", "½", "⅞", "mm", "in", "x", ",",
            "1-1/4", "1 1/4", "3/8", "1e400", "1e-400")
        .list()
        .ofMaxSize(7)
        .map(pieces -> String.join("", pieces));
  }

  @Property(tries = 5000)
  void a_number_is_found_where_the_grammar_finds_one(@ForAll("scribbles") String text) {
    Matcher expected = GRAMMAR.matcher(text);
    WrittenNumber found = WrittenNumber.at(text, 0);
    if (!expected.lookingAt()) {
      assertThat(found).isNull();
      return;
    }
    Objects.requireNonNull(found, "found");
    assertThat(found.end()).isEqualTo(expected.end());
    boolean isOverZero = expected.group("bottom") != null && number(expected, "bottom") == 0.0;
    double value = isOverZero ? 0.0 : value(expected);
    boolean isLost = value == 0.0 && !expected.group().matches("[^1-9eE/⁄∕]*([eE/⁄∕].*)?");
    if (isOverZero) {
      assertThat(found.problem()).isEqualTo("a fraction cannot be over zero");
      assertThat(found.problemAt()).isEqualTo(expected.start("bottom"));
    } else if (isLost) {
      assertThat(found.problem()).isEqualTo("this number is too small to hold");
      assertThat(found.problemAt()).isZero();
    } else {
      assertThat(found.problem()).isNull();
      assertThat(found.value()).isEqualTo(value);
    }
  }

  private static double value(Matcher number) {
    boolean isNegative =
        number.group("sign").equals("-") || number.group("sign").equals("−");
    return isNegative ? -magnitude(number) : magnitude(number);
  }

  private static double magnitude(Matcher number) {
    if (number.group("decimal") != null) {
      return number(number, "decimal");
    }
    if (number.group("eighths") != null) {
      double before = number.group("before") == null ? 0.0 : number(number, "before");
      return before + ("⅛¼⅜½⅝¾⅞".indexOf(number.group("eighths")) + 1) / 8.0;
    }
    double whole = number.group("whole") == null ? 0.0 : number(number, "whole");
    return whole + number(number, "top") / number(number, "bottom");
  }

  private static double number(Matcher matcher, String group) {
    return Double.parseDouble(matcher.group(group));
  }

  /** A decimal of few digits is the double that Java reads, to the last bit. */
  @Property(tries = 20_000)
  void a_decimal_is_the_nearest_double(
      @ForAll @IntRange(min = 0, max = 1_999_999_999) int digits,
      @ForAll @IntRange(min = 0, max = 12) int decimals) {
    String text = BigDecimal.valueOf(digits, decimals).toPlainString();
    WrittenNumber found = Objects.requireNonNull(WrittenNumber.at(text, 0), "found");
    assertThat(found.value()).isEqualTo(Double.parseDouble(text));
  }
}
