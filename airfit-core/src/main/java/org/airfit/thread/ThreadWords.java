package org.airfit.thread;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.airfit.internal.Digits;
import org.airfit.working.UnitSystem;

/** Says in plain words what an identification found. */
final class ThreadWords {

  private ThreadWords() {}

  /** The answer, with what to do about a doubt. */
  static String of(ThreadRanking answer, List<String> requests, UnitSystem units) {
    return switch (answer.verdict()) {
      case IDENTIFIED -> named(answer.candidates().get(0));
      case FOREIGN -> foreign(answer);
      case NO_MATCH -> noMatch(answer, units);
      case AMBIGUOUS -> ambiguous(answer, requests);
    };
  }

  private static String named(ThreadCandidate candidate) {
    return candidate.thread().label() + " (" + candidate.percent() + ")";
  }

  private static String withoutGender(ThreadDesignation thread) {
    String label = thread.label();
    return label.substring(0, label.length() - thread.gender().label().length() - 1);
  }

  private static String foreign(ThreadRanking answer) {
    ForeignThread thread = answer.foreign().orElseThrow();
    return "looks like " + named(answer.candidates().get(0)) + ", "
        + thread.standard().label()
        + thread.use().map(use -> " (" + use + ")").orElse("")
        + ": it does not mate with " + withoutGender(answer.lookalike())
        + " or any other thread of an air part, even where it goes in for some turns";
  }

  private static String ambiguous(ThreadRanking answer, List<String> requests) {
    List<ThreadCandidate> contenders = answer.contenders();
    String names = contenders.stream().map(ThreadWords::named).collect(Collectors.joining(", "));
    double unknown = answer.unknownProbability();
    boolean alone = contenders.size() == 1 && unknown < ThreadRanking.CONTENDER;
    List<String> parts = new ArrayList<>();
    parts.add((alone
            ? "likely " + names + " of the threads compared, which these readings do not prove"
            : "ambiguous between " + names)
        + (unknown >= ThreadRanking.CONTENDER
            ? " and none of these (" + Digits.percent(unknown) + ")"
            : ""));
    if (contenders.stream().noneMatch(each -> each.pipeThread().isPresent())) {
      parts.add("none of them is a pipe thread of air parts");
    }
    if (answer.explanations().stream()
        .anyMatch(each -> each.thread().equals(answer.candidates().get(0).thread()))) {
      parts.add("the readings fit " + answer.explanations().get(0));
    }
    parts.addAll(requests);
    return String.join("; ", parts);
  }

  private static String noMatch(ThreadRanking answer, UnitSystem units) {
    List<String> parts = new ArrayList<>();
    parts.add("none of the known threads fits the readings as they were taken");
    if (!answer.explanations().isEmpty()) {
      parts.add("it would be "
          + answer.explanations().stream()
              .map(SlipCandidate::toString)
              .collect(Collectors.joining(", or ")));
    }
    parts.add(check(answer.readings()));
    ThreadDesignation nearest = answer.nearest();
    parts.add("the nearest is " + nearest.label() + ", which has "
        + Digits.plain(nearest.threadsPerInch()) + " threads per inch and a first crest of "
        + nearest
            .geometry()
            .orElseThrow()
            .firstCrest(nearest.gender())
            .format(units.smallLengthUnit()));
    return String.join("; ", parts);
  }

  /** What to check when nothing fits, as far as it was read at all. */
  private static String check(ThreadReadings readings) {
    List<String> questions = new ArrayList<>();
    questions.add("is it metric or a thread of another kind?");
    questions.add(
        readings.lastCrest().isPresent()
            ? "are the diameters swapped, first for last or outside for inside?"
            : "are the diameters swapped, outside for inside?");
    if (readings.pitchCount().isPresent()) {
      questions.add("were threads counted as pitches (over six threads there are five pitches)?");
    }
    if (readings.leafPitch().isPresent()) {
      questions.add("was the leaf of the gauge misread?");
    }
    return "check: " + String.join(" ", questions);
  }
}
