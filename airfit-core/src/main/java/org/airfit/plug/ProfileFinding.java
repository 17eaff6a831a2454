package org.airfit.plug;

import static org.airfit.plug.Dimension.BORE;
import static org.airfit.plug.Dimension.COLLAR_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_DIAMETER;
import static org.airfit.plug.Dimension.GROOVE_WIDTH;
import static org.airfit.plug.Dimension.INSERTION_LENGTH;
import static org.airfit.plug.Dimension.TIP_DIAMETER;
import static org.airfit.plug.Dimension.TIP_LENGTH;
import static org.airfit.plug.Dimension.TIP_TO_COLLAR;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.airfit.internal.Digits;
import org.airfit.measure.PartSpread;
import org.airfit.safety.Medium;
import org.jspecify.annotations.Nullable;

/**
 * Something wrong, or probably wrong, with the sizes typed in for a profile.
 *
 * @param severity whether it cannot be, or only should not be
 * @param message parameter, range, value and what to check
 */
public record ProfileFinding(Severity severity, String message) {

  /**
   * Checks that nothing is missing.
   *
   * @param severity whether it cannot be, or only should not be
   * @param message parameter, range, value and what to check
   */
  public ProfileFinding {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(message, "message");
  }

  /** How sure a finding is. */
  public enum Severity {
    /** No plug can have these sizes. */
    IMPOSSIBLE,
    /** Looks like a slip; refused until {@link PlugProfile.Builder#confirmUnusual()}. */
    DOUBTFUL
  }

  /**
   * Looks for what cannot be or should not be in the sizes of a profile, above all inches typed as millimetres. A tip
   * length to the edge is looked at more closely than one by a ball, which may end before the edge.
   */
  static List<ProfileFinding> search(
      String id,
      String words,
      Medium medium,
      @Nullable Provenance provenance,
      Map<Dimension, PartSpread> dimensions,
      boolean toEdge) {
    return new Search(id, words, medium, provenance, dimensions, toEdge).findings();
  }

  /** {@return the message} */
  @Override
  public String toString() {
    return message;
  }

  /** What is typed in for one profile, while it is looked through. */
  private record Search(
      String id,
      String words,
      Medium medium,
      @Nullable Provenance provenance,
      Map<Dimension, PartSpread> dimensions,
      boolean toEdge) {

    private static final double MM_PER_INCH = 25.4;

    /** No length of an air-line plug is this short; this project's judgement, no source. Used to find slips only. */
    private static final double TOO_SHORT_MM = 1.0;

    private static final List<String> NOT_AIR =
        List.of("iso 7289", "en 561", "welding", "iso 7241", "iso 14541", "iso 16028", "hydraulic");

    List<ProfileFinding> findings() {
      List<ProfileFinding> found = new ArrayList<>();
      requireBelow(found, BORE, GROOVE_DIAMETER, false, "a wall must remain under the groove");
      requireBelow(found, BORE, TIP_DIAMETER, false, "the tip needs a wall");
      requireBelow(
          found,
          TIP_DIAMETER,
          COLLAR_DIAMETER,
          true,
          "the collar is the largest diameter in front of the groove");
      requireBelow(
          found, GROOVE_DIAMETER, COLLAR_DIAMETER, false, "otherwise the balls cannot lock");
      if (toEdge) { // by a ball the length may end before the edge
        requireBelow(found, TIP_TO_COLLAR, TIP_LENGTH, true, "the collar starts before it ends");
      }
      requireBelow(
          found, TIP_LENGTH, INSERTION_LENGTH, true, "the groove lies in front of the stop face");
      requireGrooveInFront(found);
      requirePieces(found);
      dimensions.forEach((dimension, spread) -> doubt(found, dimension, spread));
      doubtMedium(found);
      return List.copyOf(found);
    }

    private void requireBelow(
        List<ProfileFinding> found,
        Dimension lesser,
        Dimension greater,
        boolean equalToo,
        String reason) {
      PartSpread small = dimensions.get(lesser);
      PartSpread large = dimensions.get(greater);
      if (small == null || large == null) {
        return;
      }
      double a = small.nominal().millimetres();
      double b = large.nominal().millimetres();
      if (!(a < b || (equalToo && a == b))) {
        found.add(new ProfileFinding(
            Severity.IMPOSSIBLE,
            lesser + " must be " + (equalToo ? "at most the " : "below the ") + greater + " of "
                + mm(b) + ", was " + mm(a) + ": " + reason + unitHint(lesser, a, greater, b)));
      }
    }

    /**
     * One of the two was typed in the other unit where a factor of 25.4 would put them right; sizes of plugs tell
     * which.
     */
    private static String unitHint(Dimension lesser, double a, Dimension greater, double b) {
      if (!(b * MM_PER_INCH >= a && b * 4.0 < a)) {
        return "; check both, and that they were not exchanged";
      }
      return lesser.isUsual(a / MM_PER_INCH) && !greater.isUsual(b * MM_PER_INCH)
          ? "; the " + lesser.label() + " looks like millimetres typed as inches, "
              + number(a / MM_PER_INCH) + " mm"
          : "; the " + greater.label() + " looks like inches typed as millimetres, " + number(b)
              + " in is " + mm(b * MM_PER_INCH);
    }

    private void requireGrooveInFront(List<ProfileFinding> found) {
      PartSpread length = dimensions.get(TIP_LENGTH);
      PartSpread width = dimensions.get(GROOVE_WIDTH);
      PartSpread insertion = dimensions.get(INSERTION_LENGTH);
      if (length == null || width == null || insertion == null) {
        return;
      }
      double groove = width.nominal().millimetres();
      double room = insertion.nominal().millimetres() - length.nominal().millimetres();
      if (room >= 0.0 && !(groove <= room * (1.0 + 1.0e-12))) {
        found.add(new ProfileFinding(
            Severity.IMPOSSIBLE,
            GROOVE_WIDTH + " must be at most " + mm(room) + ", the " + INSERTION_LENGTH
                + " less the " + TIP_LENGTH + ", was " + mm(groove)
                + ": the groove lies in front of the stop face; check all three"));
      }
    }

    private void requirePieces(List<ProfileFinding> found) {
      if (provenance == null || provenance.kind() != Provenance.Kind.USER_MEASURED) {
        return;
      }
      int claimed = provenance.pieces();
      dimensions.forEach((dimension, spread) -> {
        if (spread instanceof PartSpread.Sample sample && sample.pieces() < claimed) {
          found.add(new ProfileFinding(
              Severity.IMPOSSIBLE,
              "pieces measured must be at least " + claimed
                  + " for every dimension, as the provenance claims, was " + sample.pieces()
                  + " for the " + dimension + "; measure the rest or claim fewer"));
        }
      });
    }

    private static void doubt(List<ProfileFinding> found, Dimension dimension, PartSpread spread) {
      double size = spread.nominal().millimetres();
      if (dimension.isUsual(size * MM_PER_INCH) || size < TOO_SHORT_MM) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            dimension + " of an air-line plug is hardly " + mm(size)
                + ": it looks like inches typed as millimetres, " + number(size) + " in is "
                + mm(size * MM_PER_INCH) + "; type the unit, or confirm"));
      } else if (dimension.isUsual(size / MM_PER_INCH)) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            dimension + " of an air-line plug is hardly " + mm(size)
                + ": it looks like millimetres typed as inches, " + number(size / MM_PER_INCH)
                + " mm; type the unit, or confirm"));
      }
      double deviation = spread.standardDeviation().millimetres();
      if (deviation > 0.1 * size) {
        found.add(new ProfileFinding(
            Severity.DOUBTFUL,
            "part-to-part spread of the " + dimension + " should be far below its size of "
                + mm(size) + ", was " + mm(deviation)
                + "; give the standard deviation, not a size, or confirm"));
      }
    }

    private void doubtMedium(List<ProfileFinding> found) {
      if (medium != Medium.COMPRESSED_AIR) {
        return;
      }
      String written = words.toLowerCase(Locale.ROOT);
      for (String word : NOT_AIR) {
        if (written.contains(word)) {
          found.add(
              new ProfileFinding(
                  Severity.DOUBTFUL,
                  "medium of profile " + id
                      + " must not be compressed air if it is what its name or source says (\""
                      + word
                      + "\"): welding-gas and hydraulic plugs are never offered for air; set the medium, or confirm"));
          return;
        }
      }
    }

    private static String mm(double value) {
      return number(value) + " mm";
    }

    private static String number(double value) {
      return Digits.significant(value, 4);
    }
  }
}
