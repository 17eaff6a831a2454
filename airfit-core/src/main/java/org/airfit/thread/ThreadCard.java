package org.airfit.thread;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.measure.PitchCount;
import org.airfit.quantity.Length;
import org.airfit.source.Source;
import org.airfit.working.CardComparison;
import org.airfit.working.CardTable;
import org.airfit.working.Formula;
import org.airfit.working.PencilCard;
import org.airfit.working.Symbol;
import org.airfit.working.UnitSystem;
import org.airfit.working.ValueKind;

/**
 * An identification as a pencil card: each reading against the limits of the threads it may belong to, and which
 * threads are left.
 *
 * <p>A thread is left if every reading lies within the limits that a firm answer asks for: see {@link ThreadFit}. One
 * that would be left but for a slip of the kind that the chances allow for is named with it. The chances of a {@link
 * ThreadIdentification} are no matter for a pencil; the card repeats its answer in words.
 */
final class ThreadCard {

  /** So many threads stand in the table. */
  private static final int ROWS = 10;

  private static final Symbol CREST = Symbol.of("d", ValueKind.SMALL_LENGTH);
  private static final Symbol LAST = Symbol.of("d2", ValueKind.SMALL_LENGTH);
  private static final Symbol OVER = Symbol.of("l", ValueKind.SMALL_LENGTH);
  private static final Symbol COUNT = Symbol.of("n", ValueKind.NUMBER);
  private static final Symbol PITCH = Symbol.of("P", ValueKind.SMALL_LENGTH);
  private static final Symbol READ = Symbol.of("Pr", ValueKind.SMALL_LENGTH);
  private static final Symbol LEAF_PITCH = Symbol.of("Pl", ValueKind.SMALL_LENGTH);
  private static final Symbol PER_INCH = Symbol.of("N", ValueKind.PER_INCH);
  private static final Symbol GROWTH = Symbol.of("Δd", ValueKind.SMALL_LENGTH);
  private static final Symbol ANGLE = Symbol.of("A", ValueKind.DEGREES);
  private static final Source DEFINITION = Source.handbook("definition");

  private static final Formula COUNTED =
      Formula.of("Pitch", "⟨P⟩ = ⟨l⟩ / ⟨n⟩", DEFINITION, PITCH, OVER, COUNT);
  private static final Formula THREADS =
      Formula.of("Threads per inch", "⟨N⟩ = [25.4|1] / ⟨P⟩", DEFINITION, PER_INCH, PITCH);
  private static final Formula GROWN = Formula.of(
      "Grown from first to last crest", "⟨Δd⟩ = ⟨d2⟩ − ⟨d⟩", DEFINITION, GROWTH, LAST, CREST);

  private final ThreadReadings readings;
  private final String words;
  private final UnitSystem units;
  private final PencilCard.Builder card;
  private final List<Check> checks = new ArrayList<>();
  private final Set<ThreadHypothesis> onTheLimit = new HashSet<>();
  private int unsettled;

  /** The limits that a thread sets to a reading, in the base of its kind. */
  private interface Allowed {
    double[] of(ThreadHypothesis thread);
  }

  /** A reading that is compared: its symbol, its exact value in the base of its kind, and the limits. */
  private record Check(String head, Symbol symbol, double exact, int decimals, Allowed limits) {

    boolean fits(ThreadHypothesis thread) {
      double[] allowed = limits.of(thread);
      return exact >= allowed[0] && exact <= allowed[1];
    }
  }

  private ThreadCard(ThreadReadings readings, String words, UnitSystem units) {
    this.readings = readings;
    this.words = words;
    this.units = units;
    this.card = PencilCard.titled(
        (readings.gender() == Gender.MALE ? "Male" : "Female") + " thread: which one it may be",
        units);
  }

  static PencilCard of(ThreadRanking answer, String words, UnitSystem units) {
    return new ThreadCard(answer.readings(), words, units).build();
  }

  private static double[] millimetres(double least, double most) {
    return new double[] {1.0e-3 * least, 1.0e-3 * most};
  }

  private PencilCard build() {
    readings();
    int all = checks.size();
    List<ThreadHypothesis> near = ThreadHypothesis.all(readings.gender()).stream()
        .sorted(Comparator.<ThreadHypothesis>comparingInt(thread ->
                all - (int) checks.stream().filter(check -> check.fits(thread)).count())
            .thenComparingDouble(thread -> thread.distance(readings)))
        .toList();
    List<ThreadHypothesis> left = near.stream()
        .filter(thread -> checks.stream().allMatch(check -> check.fits(thread)))
        .toList();
    List<List<String>> rows = new ArrayList<>();
    for (ThreadHypothesis thread :
        near.subList(0, Math.min(near.size(), Math.max(ROWS, left.size())))) {
      rows.add(row(thread, left.contains(thread)));
    }
    List<String> heads = new ArrayList<>(List.of("thread"));
    checks.forEach(check -> heads.add(check.head));
    heads.add("left");
    card.table(CardTable.of(
        (left.isEmpty()
                ? "Threads that come nearest, none of which allows all the readings,"
                : "Threads that the readings may belong to,")
            + " with the limits of each reading",
        heads,
        rows));
    List<ThreadHypothesis> perhaps = near.stream()
        .filter(thread -> !left.contains(thread) && ThreadFit.loosely(thread, readings))
        .toList();
    int others = near.size() - left.size() - perhaps.size();
    card.answer((left.isEmpty()
            ? "No thread is left: none that is known here allows all the readings."
            : "Left: " + left.stream().map(this::named).collect(Collectors.joining(", ")) + ".")
        + perhaps(perhaps)
        + (left.isEmpty() && perhaps.isEmpty()
            ? ""
            : " All others known here, " + others + ", fall out by one reading at least."));
    if (left.size() != 1 || !perhaps.isEmpty() || onTheLimit.contains(left.get(0))) {
      card.answer(
          "The limits settle no single thread: do not put it under pressure with one that seems to"
              + " fit. Threads of two standards can run in, hold for a while and come apart.");
    }
    card.answerOfComparisons(unsettled);
    return card.answer("By chances, which weigh how likely each thread and each reading is: "
            + words + (words.endsWith(".") ? "" : "."))
        .build();
  }

  /** A thread that is left, and whether it is so by rounding only. */
  private String named(ThreadHypothesis thread) {
    return thread.thread().label() + (onTheLimit.contains(thread) ? " (on the limit)" : "");
  }

  /** The threads that a slip would leave too, by what each of them takes. */
  private String perhaps(List<ThreadHypothesis> threads) {
    Map<String, List<String>> byReason = new LinkedHashMap<>();
    for (ThreadHypothesis thread : threads) {
      byReason
          .computeIfAbsent(reason(thread), any -> new ArrayList<>())
          .add(thread.thread().label());
    }
    return byReason.entrySet().stream()
        .map(each -> " Also " + String.join(", ", each.getValue()) + ", if " + each.getKey() + ".")
        .collect(Collectors.joining());
  }

  private String reason(ThreadHypothesis thread) {
    return ThreadFit.slip(thread, readings)
        .map(slip -> slip == ThreadSlip.LEAF_MISREAD
            ? "the leaf was misread"
            : "the first crest was not read at the end of the thread")
        .orElse(
            "the pitch is off by more than two of its standard uncertainties, as one good reading"
                + " in twenty is");
  }

  private List<String> row(ThreadHypothesis thread, boolean isLeft) {
    List<String> cells = new ArrayList<>(List.of(thread.thread().label()));
    for (Check check : checks) {
      double[] allowed = check.limits.of(thread);
      CardComparison compared =
          card.compare(check.symbol, check.exact, allowed[0], allowed[1], check.decimals);
      if (!compared.isSettled()) {
        unsettled++;
        onTheLimit.add(thread);
      }
      cells.add(compared.least() + " to " + compared.most()
          + (compared.isSettled() ? compared.fits() ? ": yes" : ": no" : ": on the limit"));
    }
    cells.add(isLeft ? "yes" : "no");
    return cells;
  }

  /** The readings as they are given, and what each thread allows them. */
  private void readings() {
    int lengths = units.either(2, 4);
    double margin = ThreadFit.margin(readings);
    double first = readings.firstCrest().metres();
    card.given(CREST, first, 6);
    String unit = " " + CREST.kind().unit(units);
    checks.add(new Check("first crest d," + unit, CREST, first, lengths, thread -> {
      double[] allowed = thread.crests().firstAllowed();
      return millimetres(Math.max(0.0, allowed[0] - margin), allowed[1] + margin);
    }));
    readings.lastCrest().map(Length::metres).ifPresent(last -> {
      double apart = Math.sqrt(2.0) * margin;
      card.given(LAST, last, 6).step(GROWN);
      checks.add(new Check("grown Δd," + unit, GROWTH, last - first, lengths, thread -> {
        double[] allowed = thread.crests().growthAllowed();
        return millimetres(allowed[0] - apart, allowed[1] + apart);
      }));
    });
    PitchCount count = readings.pitches().count();
    if (count != null) {
      counted(count, lengths);
    }
    ThreadReadings.Pitch other = readings.pitches().other();
    if (other != null) {
      double off = ThreadFit.COVERAGE * other.uncertainty().metres();
      card.given(READ, other.read().metres(), 6);
      checks.add(new Check(
          "pitch read Pr," + unit,
          READ,
          other.read().metres(),
          lengths + 1,
          thread -> new double[] {
            thread.thread().pitch().metres() - off, thread.thread().pitch().metres() + off
          }));
    }
    ThreadReadings.Leaf leaf = readings.pitches().leaf();
    if (leaf != null) {
      card.given(LEAF_PITCH, leaf.pitch().metres(), 6);
      checks.add(new Check(
          "leaf Pl," + unit,
          LEAF_PITCH,
          leaf.pitch().metres(),
          lengths + 1,
          thread -> millimetres(
              thread.pitch() * (1.0 - ThreadFit.LEAF), thread.pitch() * (1.0 + ThreadFit.LEAF))));
    }
    readings.flankAngleDegrees().ifPresent(angle -> {
      double off =
          ThreadFit.limit(readings) * readings.flankAngleUncertaintyDegrees().orElseThrow();
      card.given(ANGLE, angle, 6);
      checks.add(new Check("flanks A, °", ANGLE, angle, 1, thread -> new double[] {
        thread.thread().flankAngleDegrees() - off, thread.thread().flankAngleDegrees() + off
      }));
    });
    card.note("The limits of the first crest allow for wear of up to "
        + CREST.kind().format(1.0e-3 * CrestModel.WEAR, 2, units)
        + ", of a taper thread for one turn along the cone, and for "
        + CREST.kind().format(1.0e-3 * margin, 2, units) + " of reading."
        + (readings.lastCrest().isPresent()
            ? " Of Δd they allow for √2 of that, for two readings go into it."
            : "")
        + (count != null || other != null
            ? " A pitch that was measured may be off by two of its standard uncertainties."
            : "")
        + (leaf != null ? " A leaf fits within 2 %." : ""));
    if (count != null) {
      card.note("P and N tell what to look for; what is compared is l.");
    }
    readings
        .taperSeen()
        .ifPresent(seen -> card.note((seen ? "A taper" : "No taper")
            + " was seen: the eye is no reading, and is not compared."));
  }

  private void counted(PitchCount count, int decimals) {
    double off = ThreadFit.COVERAGE * count.uncertainty().metres();
    double exact = count.over().metres();
    card.given(OVER, exact, 6).given(COUNT, count.pitches()).step(COUNTED).step(THREADS);
    checks.add(new Check(
        "over " + count.pitches() + " pitches l, " + OVER.kind().unit(units),
        OVER,
        exact,
        decimals,
        thread -> {
          double over = count.pitches() * thread.thread().pitch().metres();
          return new double[] {over - off, over + off};
        }));
  }
}
