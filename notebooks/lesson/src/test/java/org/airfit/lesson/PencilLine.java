package org.airfit.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line such as {@code k = \frac{0.02535 \times 124.67}{0.06867} = 46.02}, worked once more: every part that holds
 * numbers only is reckoned, and the number behind it must be its value, rounded.
 */
final class PencilLine {

  private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
  private static final Pattern UNIT = Pattern.compile("\\\\text\\{([^}]*)\\}(?:\\^2\\))?");
  private static final String POWERS = "²³⁴⁵";

  private final String text;
  private int at;

  private PencilLine(String text) {
    this.text = text;
  }

  /** Two neighbouring parts of a line that do not agree, each told in words. */
  static List<String> disagreements(String line) {
    List<String> found = new ArrayList<>();
    checked(line, found);
    return found;
  }

  /** The number of neighbouring parts that could be compared. */
  static int compared(String line) {
    return checked(line, new ArrayList<>());
  }

  private static int checked(String line, List<String> found) {
    int compared = 0;
    double last = Double.NaN;
    String lastUnit = "";
    for (String part : line.split("=", -1)) {
      String unit = unit(part);
      String plain = plain(part);
      double value = value(plain);
      boolean isNumber = plain.matches("-?\\d+(\\.\\d+)?");
      if (isNumber && !Double.isNaN(last) && (lastUnit.isEmpty() || lastUnit.equals(unit))) {
        compared++;
        double scale = "%".equals(unit) && !"%".equals(lastUnit) ? 100.0 : 1.0;
        if (Math.abs(value - scale * last) > 0.505 * lastDigit(plain)) {
          found.add(line.strip() + ": " + last + " is not " + plain);
        }
      }
      last = value;
      lastUnit = unit;
    }
    return compared;
  }

  private static String unit(String part) {
    Matcher unit = UNIT.matcher(part);
    String found = part.contains("%") ? "%" : "";
    return unit.find() ? unit.group(1).strip() : found;
  }

  private static double lastDigit(String number) {
    if (number.contains(".")) {
      return Math.pow(10.0, number.indexOf('.') + 1.0 - number.length());
    }
    return number.endsWith("00") ? 100.0 : 1.0;
  }

  private static String plain(String part) {
    return UNIT.matcher(part)
        .replaceAll("")
        .replaceAll("(?<=\\d)\\\\,(?=\\d{3})", "")
        .replaceAll("\\\\(?:left|right)|\\\\q?quad|\\\\[,;:! %]|[&%]", "")
        .replaceAll("\\\\times|\\\\cdot|[×·]", "*")
        .replaceAll("\\\\pi|π", "(3.14159265)")
        .replace('−', '-')
        .replaceAll("\\s+", "");
  }

  /** The value, or NaN where more stands there than numbers. */
  private static double value(String plain) {
    PencilLine line = new PencilLine(plain);
    double value = line.sum();
    return line.at == plain.length() ? value : Double.NaN;
  }

  private boolean eats(String sign) {
    boolean there = text.startsWith(sign, at);
    at += there ? sign.length() : 0;
    return there;
  }

  private double within(String open, String close) {
    if (!eats(open)) {
      return Double.NaN;
    }
    double value = sum();
    return eats(close) ? value : Double.NaN;
  }

  private double sum() {
    double value = eats("-") ? -product() : product();
    while (true) {
      if (eats("+")) {
        value += product();
      } else if (eats("-")) {
        value -= product();
      } else {
        return value;
      }
    }
  }

  private double product() {
    double value = power();
    int before = -1;
    while (at < text.length() && at > before) {
      before = at;
      if (eats("*")) {
        value *= power();
      } else if (eats("/")) {
        value /= power();
      } else if ("(\\√[".indexOf(text.charAt(at)) >= 0) {
        value *= power();
      } else {
        break;
      }
    }
    return value;
  }

  private double power() {
    double value = factor();
    if (eats("^")) {
      return Math.pow(value, text.startsWith("{", at) ? within("{", "}") : factor());
    }
    int power = at < text.length() ? POWERS.indexOf(text.charAt(at)) : -1;
    if (power >= 0) {
      at++;
      return Math.pow(value, power + 2.0);
    }
    return value;
  }

  private double factor() {
    if (eats("-")) {
      return -power();
    }
    if (eats("\\frac")) {
      double above = within("{", "}");
      return above / within("{", "}");
    }
    if (eats("\\sqrt")) {
      return Math.sqrt(within("{", "}"));
    }
    if (eats("√")) {
      return Math.sqrt(factor());
    }
    if (eats("\\log_{10}")) {
      return Math.log10(factor());
    }
    if (eats("\\ln")) {
      return Math.log(factor());
    }
    for (String brackets : List.of("()", "[]", "{}")) {
      if (text.startsWith(brackets.substring(0, 1), at)) {
        return within(brackets.substring(0, 1), brackets.substring(1));
      }
    }
    Matcher number = NUMBER.matcher(text).region(at, text.length());
    if (!number.lookingAt()) {
      return Double.NaN;
    }
    at = number.end();
    return Double.parseDouble(number.group());
  }
}
