package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.List;
import org.airfit.files.MeasuredSet;
import org.airfit.measure.Instrument;
import org.airfit.measure.PartSpread;
import org.airfit.measure.ToleranceInterval;
import org.airfit.plug.BenchPath;
import org.airfit.plug.Dimension;
import org.airfit.plug.Identifier;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.Separation;
import org.airfit.plug.UniversalSocket;
import org.airfit.quantity.LengthUnit;

/** What a reference set can tell apart, what its pieces show and what to measure first, as plain text. */
public final class SetText {

  private static final double RISK = 0.01;

  /** Share and confidence of the tolerance limits: the usual 95 % twice, our choice. */
  private static final double SHARE = 0.95;

  /** Of more pairs than a sheet can hold, the hardest are printed. */
  private static final int MOST_PAIRS = 100;

  /** A path through more profiles is no sorting any more. */
  private static final int MOST_SORTED = 200;

  /** The working of the pieces is printed for as many dimensions. */
  private static final int MOST_WORKED = 30;

  private final Lines out = new Lines();
  private final StringBuilder worked = new StringBuilder();
  private int workings;

  private SetText() {}

  /**
   * Writes the text.
   *
   * @param set the set
   * @return its profiles and sockets, which pairs can be told apart, and the order of the readings
   */
  public static String of(ReferenceSet set) {
    return of(new MeasuredSet(set, List.of()));
  }

  /**
   * Writes the text with what the readings of the pieces show.
   *
   * @param measured the set and the readings of its pieces
   * @return its profiles and sockets, tolerance limits and pieces that stand out, which pairs can be told apart, and
   *     the order of the readings
   */
  public static String of(MeasuredSet measured) {
    SetText text = new SetText();
    text.write(measured);
    return text.out.toString();
  }

  /** What is longer than a line goes on under its first word. */
  private void line(String text) {
    String words = text.replaceFirst("^ *(- )?", "");
    out.wrapped(text.substring(0, text.length() - words.length()), words);
  }

  private void write(MeasuredSet measured) {
    ReferenceSet set = measured.set();
    line(set.toString());
    line("");
    for (PlugProfile profile : set.profiles()) {
      line(profile.id() + ": " + profile.displayName() + ", " + profile.provenance() + "; "
          + profile.dimensions().size()
          + (profile.dimensions().size() == 1 ? " dimension" : " dimensions"));
    }
    for (UniversalSocket socket : set.sockets()) {
      line("socket " + socket.name() + " takes " + String.join(", ", socket.profileIds()));
    }
    pieces(measured);
    writePairs(set);
    line("");
    if (set.profiles().size() > MOST_SORTED) {
      line("No order of readings for the bench: a sheet for more than " + MOST_SORTED
          + " profiles would not be followed. Give the readings to a job sheet.");
    } else {
      for (String row : BenchPath.of(Identifier.of(set)).toString().split("\n", -1)) {
        out.fitted(row);
      }
    }
    if (workings > 0) {
      line("");
      line("The working of what the pieces show"
          + (workings > MOST_WORKED ? ", the first " + MOST_WORKED + " of " + workings : ""));
      out.add(worked.toString());
    }
  }

  /**
   * Tells which pairs of profiles can be told apart, the hardest first.
   *
   * @param set the set
   * @return a sentence for each pair, a hundred at most
   */
  public static List<String> pairs(ReferenceSet set) {
    return Separation.hardest(set, Instrument.DIGITAL_CALIPER, MOST_PAIRS).stream()
        .map(pair -> pair.inWords(RISK))
        .toList();
  }

  private void writePairs(ReferenceSet set) {
    long profiles = set.profiles().size();
    long all = profiles * (profiles - 1) / 2;
    line("");
    line("Which pairs can be told apart");
    pairs(set).forEach(pair -> line("  " + pair));
    if (all == 0) {
      line("  There is one profile only.");
    } else if (all > MOST_PAIRS) {
      line("  These are the " + MOST_PAIRS + " hardest of " + all + " pairs.");
    }
  }

  private void pieces(MeasuredSet measured) {
    boolean headed = false;
    for (PlugProfile profile : measured.set().profiles()) {
      for (Dimension dimension : profile.dimensions().keySet()) {
        if (profile.dimensions().get(dimension) instanceof PartSpread.Sample sample
            && sample.pieces() <= ToleranceInterval.MOST_PIECES) {
          if (!headed) {
            line("");
            line(
                "What the measured pieces show (as the caliper reads them; its own error comes on top)");
            headed = true;
          }
          tolerance(profile, dimension, sample);
        }
      }
    }
    for (KnownPlugs record : measured.records()) {
      outliers(record);
    }
  }

  private void tolerance(PlugProfile profile, Dimension dimension, PartSpread.Sample sample) {
    ToleranceInterval limits = ToleranceInterval.between(sample, SHARE, SHARE);
    line("  " + profile.id() + ", " + dimension + ": mean "
        + sample.mean().format(LengthUnit.MILLIMETRE, 3) + ", deviation "
        + sample.sampleDeviation().format(LengthUnit.MILLIMETRE, 3) + ". " + limits.inWords());
    work(profile.id() + ", " + dimension, limits.working().toText());
  }

  private void outliers(KnownPlugs record) {
    line("");
    line("Pieces of " + record.profileId() + ", read with a " + record.instrument());
    standing(record).forEach(finding -> line("  " + finding));
    record.outliers().forEach(piece -> work(record.profileId(), piece.working().toText()));
  }

  /**
   * Tells which pieces stand out from the others of their profile, and from where on one more would.
   *
   * @param record the readings of the pieces
   * @return sentences
   */
  public static List<String> standing(KnownPlugs record) {
    List<String> told = new ArrayList<>();
    record.outliers().forEach(piece -> told.add(piece.inWords()));
    if (record.pieces().size() < 3) {
      told.add("Fewer than three pieces show none that stands out.");
    } else if (told.isEmpty()) {
      told.add("No piece stands out.");
      StringBuilder seen = new StringBuilder();
      for (Dimension dimension : record.dimensions()) {
        record
            .noticedFrom(dimension)
            .ifPresent(from -> seen.append(seen.length() == 0 ? "" : ", ")
                .append(dimension)
                .append(' ')
                .append(from.format(LengthUnit.MILLIMETRE, 2)));
      }
      told.add("One more would be noticed if it were off by: " + seen + ".");
    }
    return List.copyOf(told);
  }

  private void work(String of, String working) {
    workings++;
    if (workings <= MOST_WORKED) {
      worked.append('\n').append(of).append('\n').append(working);
    }
  }
}
