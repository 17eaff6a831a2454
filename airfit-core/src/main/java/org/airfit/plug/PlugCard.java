package org.airfit.plug;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.internal.ReadingDensity;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.working.CardComparison;
import org.airfit.working.CardTable;
import org.airfit.working.PencilCard;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;

/**
 * An identification as a pencil card: each reading against the limits of the profiles that it may belong to, and which
 * profiles are left.
 *
 * <pre>
 *   low − w − z σ ≤ y ≤ high + z σ where wear shrinks the size,   1 − (1 − 2 Q(z))ⁿ = 0.01
 * </pre>
 *
 * <p>y the reading, low and high what a new plug has (both the nominal where the profile tells a deviation), w the wear,
 * σ the scatter of such readings, n how many are compared, Q the upper tail of the normal distribution, or of Student's
 * where the profile was measured on few pieces. Where wear widens the size, w stands above high. A profile is left if all
 * its readings lie within: {@link ProfileCandidate#largestMisfitProbability} is then at least 0.01. The chances, which weigh
 * the readings by one caliper together, are no matter for a pencil; the card repeats their answer in words.
 */
final class PlugCard {

  /** So many profiles stand in the table. */
  private static final int ROWS = 10;

  /** What is less likely is not said, as in the answer itself. */
  private static final double SAID_ABOVE = 0.005;

  private static final int MOST_SAID = 4;

  private static final String NOT_KNOWN = "not known";

  /** What of an identification stands on the card. */
  record Answered(
      List<PlugReading> readings,
      Length wearAllowance,
      List<Clue> clues,
      List<ProfileCandidate> candidates,
      double unknownProbability,
      PlugVerdict verdict,
      List<ReadingSlip> slips,
      Optional<PlugProfile> ifWorn,
      List<String> open) {}

  private final Answered answer;
  private final UnitSystem units;
  private final PencilCard.Builder card;
  private final List<PlugReading> readings;
  private final Map<Dimension, Symbol> symbols = new LinkedHashMap<>();
  private final Set<String> onTheLimit = new HashSet<>();
  private int unsettled;

  private PlugCard(Answered answer, UnitSystem units) {
    this.answer = answer;
    this.units = units;
    this.readings = answer.readings();
    this.card = PencilCard.titled("Plug: which profile it may be", units);
  }

  static PencilCard of(Answered answer, UnitSystem units) {
    return new PlugCard(answer, units).build();
  }

  private PencilCard build() {
    for (PlugReading reading : readings) {
      Dimension dimension = reading.dimension();
      Symbol symbol = Symbol.of(dimension.symbol(), kind(unitOf(reading)));
      symbols.put(dimension, symbol);
      card.given(symbol, reading.length().metres(), 6);
    }
    if (!readings.isEmpty()) {
      notes();
      compared();
    } else {
      card.answer("No size was read: every profile that is known here is left.");
    }
    return card.answer(chances()).build();
  }

  /**
   * The unit that a reading was taken in, as well as its digits tell: that of the card, unless only the other one shows
   * it in the digits of a caliper. A mean of several readings may be short in neither.
   */
  private LengthUnit unitOf(PlugReading reading) {
    LengthUnit own = units.smallLengthUnit();
    LengthUnit other = units.other().smallLengthUnit();
    return !isShort(reading.length(), own) && isShort(reading.length(), other) ? other : own;
  }

  /** Whether a caliper shows the length so: to 0.001 mm or 0.0001 in. */
  private static boolean isShort(Length length, LengthUnit unit) {
    double scaled = length.in(unit) * (unit == LengthUnit.INCH ? 1.0e4 : 1.0e3);
    return Math.abs(scaled - Math.rint(scaled)) < 1.0e-6;
  }

  private static ValueKind kind(LengthUnit unit) {
    return unit == LengthUnit.INCH ? ValueKind.INCHES : ValueKind.MILLIMETRES;
  }

  private static int decimals(LengthUnit unit) {
    return unit == LengthUnit.INCH ? 4 : 2;
  }

  /** The limits of a reading of a profile, in metres, beside the reading as it was taken; empty where none is known. */
  private static Map<Dimension, double[]> limits(ProfileCandidate candidate, double wear) {
    Map<Dimension, double[]> limits = new LinkedHashMap<>();
    double tail = -0.5
        * Math.expm1(Math.log1p(-ProfileCandidate.REJECTED_BELOW) / candidate.degreesOfFreedom());
    for (Residual residual : candidate.residuals()) {
      PlugReading stated = residual.reading();
      ReadingDensity expected = CaliperGroup.density(
          residual.spread(),
          stated.standardUncertainty().millimetres(),
          wear,
          residual.dimension());
      double margin = expected.margin(tail);
      limits.put(
          residual.dimension(),
          new double[] {1.0e-3 * (expected.low() - margin), 1.0e-3 * (expected.high() + margin)});
    }
    return limits;
  }

  private void compared() {
    double wear = answer.wearAllowance().millimetres();
    List<ProfileCandidate> known = answer.candidates().stream()
        .filter(candidate -> candidate.degreesOfFreedom() > 0)
        .toList();
    List<ProfileCandidate> left = known.stream().filter(PlugCard::isLeft).toList();
    List<ProfileCandidate> shown = new ArrayList<>(left);
    known.stream()
        .filter(candidate -> !left.contains(candidate))
        .sorted(Comparator.comparingInt((ProfileCandidate candidate) -> misses(candidate, wear))
            .thenComparingInt(candidate -> -candidate.degreesOfFreedom()))
        .limit(Math.max(0, ROWS - left.size()))
        .forEach(shown::add);
    List<List<String>> rows = new ArrayList<>();
    for (ProfileCandidate candidate : shown) {
      rows.add(row(candidate, limits(candidate, wear), left.contains(candidate)));
    }
    List<String> heads = new ArrayList<>(List.of("profile"));
    readings.forEach(reading -> heads.add(reading.dimension().label() + " "
        + reading.dimension().symbol() + ", " + kind(unitOf(reading)).unit(units)));
    heads.add("left");
    if (!rows.isEmpty()) {
      card.table(CardTable.of(
          (left.isEmpty()
                  ? "Profiles that come nearest, none of which allows all the readings,"
                  : "Profiles that the readings may belong to,")
              + " with the limits of each reading",
          heads,
          rows));
    }
    left(left, known.size());
  }

  /** How many readings lie outside of what a profile allows. */
  private static int misses(ProfileCandidate candidate, double wear) {
    Map<Dimension, double[]> limits = limits(candidate, wear);
    int misses = 0;
    for (Residual residual : candidate.residuals()) {
      double[] allowed = limits.getOrDefault(residual.dimension(), new double[] {0.0, 0.0});
      double read = residual.reading().length().metres();
      if (!(read >= allowed[0] && read <= allowed[1])) {
        misses++;
      }
    }
    return misses;
  }

  private static boolean isLeft(ProfileCandidate candidate) {
    return candidate.largestMisfitProbability() >= ProfileCandidate.REJECTED_BELOW;
  }

  private void left(List<ProfileCandidate> left, int compared) {
    int others = compared - left.size();
    int unknown = answer.candidates().size() - compared;
    card.answer((left.isEmpty()
            ? "No profile is left: none that is known here allows all the readings."
            : "Left: " + left.stream().map(this::named).collect(Collectors.joining(", ")) + ".")
        + (left.isEmpty() || others == 0
            ? ""
            : " All others known here, " + others + ", fall out by one reading at least.")
        + (unknown == 0
            ? ""
            : " Of " + unknown + " known here nothing that was read is known: they stay open."));
    slip();
    if (left.size() != 1 || unknown > 0 || answer.verdict() != PlugVerdict.IDENTIFIED) {
      String open = left.size() == 1 ? String.join("; ", answer.open()) : "";
      card.answer((open.isEmpty()
              ? "The limits settle no profile"
              : "The limits alone settle no profile, because " + open)
          + ": do not put it under pressure with one that seems to fit.");
    }
    card.answerOfComparisons(unsettled);
  }

  /** What a reading looks like where it was probably a slip, or wear that would explain all, as the answer tells it. */
  private void slip() {
    if (!answer.slips().isEmpty()) {
      ReadingSlip slip = answer.slips().get(0);
      LengthUnit unit = unitOf(slip.readings().get(0));
      card.answer(slip.inWords(unit == LengthUnit.INCH ? UnitSystem.US : UnitSystem.SI)
          + " The chances below hold if it reads the same again.");
    } else if (answer.ifWorn().isPresent()) {
      card.answer("It may be " + answer.ifWorn().get().displayName() + ", worn by up to "
          + units.saySmall(Length.ofMillimetres(Assumptions.USUAL_WEAR_MM))
          + ": look at it, and allow for that wear. The chances below hold if it is as new.");
    }
  }

  /** A profile that is left, and whether it is so by rounding only. */
  private String named(ProfileCandidate candidate) {
    String name = candidate.profile().displayName();
    return name + (onTheLimit.contains(candidate.profile().id()) ? " (on the limit)" : "");
  }

  private List<String> row(
      ProfileCandidate candidate, Map<Dimension, double[]> limits, boolean isLeft) {
    List<String> cells = new ArrayList<>(List.of(candidate.profile().displayName()));
    Map<Dimension, PlugReading> stated = candidate.residuals().stream()
        .collect(Collectors.toMap(Residual::dimension, Residual::reading));
    for (PlugReading reading : readings) {
      double[] allowed = limits.get(reading.dimension());
      PlugReading converted = stated.get(reading.dimension());
      if (allowed == null || converted == null) {
        cells.add(NOT_KNOWN);
        continue;
      }
      // a size that the profile states over another ball: its limits are moved by as much as the
      // reading is
      double moved = reading.length().metres() - converted.length().metres();
      CardComparison compared = card.compare(
          symbol(reading),
          reading.length().metres(),
          allowed[0] + moved,
          allowed[1] + moved,
          decimals(unitOf(reading)));
      if (!compared.isSettled()) {
        unsettled++;
        onTheLimit.add(candidate.profile().id());
      }
      cells.add(compared.least() + " to " + compared.most()
          + (compared.isSettled() ? compared.fits() ? ": yes" : ": no" : ": on the limit"));
    }
    cells.add(isLeft ? "yes" : "no");
    return cells;
  }

  private Symbol symbol(PlugReading reading) {
    Symbol symbol = symbols.get(reading.dimension());
    if (symbol == null) {
      throw new IllegalStateException(reading.dimension() + " was not given on the card");
    }
    return symbol;
  }

  private void notes() {
    card.note(
        "The limits allow for what plugs of a profile differ by and for what a reading may be off:"
            + " of 100 genuine plugs one has a reading outside"
            + (answer.wearAllowance().metres() > 0.0
                ? ", and wear of up to "
                    + ValueKind.SMALL_LENGTH.format(answer.wearAllowance().metres(), 2, units)
                : "; no wear is allowed for")
            + ".");
    List<String> beside = readings.stream()
        .filter(reading -> unitOf(reading) != units.smallLengthUnit())
        .map(reading -> reading.dimension().symbol() + " is " + units.saySmall(reading.length()))
        .toList();
    if (!beside.isEmpty()) {
      String read = units.either("inches", "millimetres");
      card.note(
          "Read in " + read + ", and compared in " + read + ": " + String.join(", ", beside) + ".");
    }
    if (readings.stream().filter(reading -> reading.caliper().isPresent()).count() > 1) {
      card.note(
          "Readings by one caliper share its error. The limits take each reading by itself; the"
              + " chances weigh them together.");
    }
    if (!answer.clues().isEmpty()) {
      card.note("Clues are no readings, and are not compared: "
          + answer.clues().stream().map(Clue::toString).collect(Collectors.joining(", ")) + ".");
    }
  }

  private String chances() {
    List<ProfileCandidate> likeliest = answer.candidates().stream()
        .filter(candidate -> candidate.probability() >= SAID_ABOVE)
        .limit(MOST_SAID)
        .toList();
    List<String> said = likeliest.stream()
        .map(candidate ->
            candidate.profile().displayName() + " " + Digits.percent(candidate.probability()))
        .collect(Collectors.toCollection(ArrayList::new));
    if (answer.unknownProbability() >= SAID_ABOVE || said.isEmpty()) {
      said.add("none that is known here " + Digits.percent(answer.unknownProbability()));
    }
    String verdict = answer.verdict() == PlugVerdict.NO_MATCH
        ? "no match known here"
        : answer.verdict().label();
    return "By chances, which weigh all readings together: " + String.join(", ", said) + "; "
        + verdict + "."
        + (likeliest.stream().allMatch(PlugCard::isLeft)
            ? ""
            : " A profile falls out by one reading outside of its limits; the chances ask how far"
                + " outside that lies, and what else the plug could be, so one that fell out can"
                + " still be the likeliest.");
  }
}
