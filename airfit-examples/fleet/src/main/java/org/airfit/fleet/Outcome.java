package org.airfit.fleet;

import java.util.Optional;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** What every row comes out with: a verdict, or as a reject. */
final class Outcome {

  /** The column that tells which of the two; answers are stored in a folder for each. */
  static final String COLUMN = "outcome";

  static final String VERDICT = "verdict";
  static final String REJECT = "reject";

  /** The last columns of every table of answers. */
  static final String REJECT_COLUMNS = "field STRING, value STRING, reason STRING";

  /** So much of a value is told. */
  private static final int LONGEST = 200;

  private Outcome() {}

  /** Why a row is not looked at: its line is corrupt, or it has no key. */
  static Optional<Refused> unread(
      @Nullable String key, @Nullable String corrupt, String keyColumn) {
    if (corrupt != null) {
      return Optional.of(new Refused(
          "",
          corrupt,
          "has not as many cells as the heading; put cells with a separator in quotation marks,"
              + " and double those inside"));
    }
    return key == null || key.isBlank()
        ? Optional.of(new Refused(keyColumn, "", "is empty; each row has a key"))
        : Optional.empty();
  }

  /** Makes a row a reject. */
  static void reject(@Nullable Object[] cells, StructType schema, Refused refused) {
    int last = schema.size();
    cells[schema.fieldIndex(COLUMN)] = REJECT;
    cells[last - 3] = refused.field();
    cells[last - 2] = refused.value().length() > LONGEST
        ? refused.value().substring(0, LONGEST) + "…"
        : refused.value();
    cells[last - 1] = refused.reason();
  }
}
