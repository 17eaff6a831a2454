package org.airfit.files;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The share of the time that a tool runs: a number such as 0.25, or "30 %", "30 to 50 %" or "0.3 to 0.5". */
final class DutyField {

  private static final String ACCEPTED =
      "the share of the time that the tool runs, such as 0.25, \"30 %\" or \"30 to 50 %\"";

  private static final String NUMBER = "([0-9]*\\.?[0-9]+)";

  private static final Pattern SHARE =
      Pattern.compile(NUMBER + "\\s*(%?)(?:\\s+to\\s+" + NUMBER + "\\s*(%?))?");

  private final Field field;
  private final double least;
  private final double most;

  private DutyField(Field field, double least, double most) throws WrongFileException {
    this.field = field;
    this.least = least;
    this.most = most;
    for (double share : new double[] {least, most}) {
      if (!(share > 0.0 && share <= 1.0)) {
        throw field.wrong("must be above 0 and at most 1, was " + share
            + (!field.isText() && share > 1.0 && share <= 100.0
                ? "; per cent are typed as \"" + String.valueOf(share).replaceFirst("\\.0$", "")
                    + " %\""
                : ""));
      }
    }
    if (least > most) {
      throw field.wrong("was \"" + field.text() + "\"; the smaller value comes first");
    }
  }

  /** The duty of a tool, where it is told. */
  static Optional<DutyField> in(Field tool) throws WrongFileException {
    Optional<Field> told = tool.find("duty", ACCEPTED);
    return told.isPresent() ? Optional.of(of(told.get())) : Optional.empty();
  }

  private static DutyField of(Field field) throws WrongFileException {
    if (!field.isText()) {
      double share = field.number();
      return new DutyField(field, share, share);
    }
    Matcher share = SHARE.matcher(field.text().strip());
    if (!share.matches()) {
      throw field.wrong("was \"" + field.text() + "\"; accepted: " + ACCEPTED);
    }
    boolean isRange = share.group(3) != null;
    String last = isRange ? share.group(4) : share.group(2);
    double first =
        value(share.group(1), isRange && share.group(2).isEmpty() ? last : share.group(2));
    return new DutyField(field, first, isRange ? value(share.group(3), last) : first);
  }

  private static double value(String number, String unit) {
    return Double.parseDouble(number) / (unit.isEmpty() ? 1.0 : 100.0);
  }

  /** The least share [-]. */
  double least() {
    return least;
  }

  /** The largest share [-]. */
  double most() {
    return most;
  }

  String inWords() {
    return least == most ? String.valueOf(least) : least + " to " + most;
  }

  /** A complaint about this place. */
  WrongFileException wrong(String complaint) {
    return field.wrong(complaint);
  }
}
