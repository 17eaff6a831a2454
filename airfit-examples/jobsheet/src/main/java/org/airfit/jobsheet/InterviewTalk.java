package org.airfit.jobsheet;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.airfit.files.TradeWord;
import org.airfit.files.WrongFileException;
import org.airfit.quantity.NearWord;
import org.airfit.run.ToolAir;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Subject;
import org.airfit.select.Topic;
import org.jspecify.annotations.Nullable;

/** Asks at a terminal, one question at a time, until nothing can change the proposal or the input ends. */
final class InterviewTalk {

  private static final String WHY = "?";
  private static final String BACK = "<";

  private final JobReading reading;
  private final BufferedReader in;
  private final PrintStream out;

  InterviewTalk(JobReading reading, BufferedReader in, PrintStream out) {
    this.reading = reading;
    this.in = in;
    this.out = out;
  }

  /** Asks until the end. */
  InterviewSoFar run(InterviewSoFar start) throws WrongFileException {
    Lines hint = new Lines();
    hint.wrapped(
        "",
        "Answer in words, with the number of an answer, or with an amount and its unit. \"?\" tells why it is asked,"
            + " \"<\" goes back, an empty line is \"I don't know\".");
    out.print(hint);
    Deque<InterviewSoFar> before = new ArrayDeque<>();
    InterviewSoFar known = start;
    while (true) {
      Optional<InterviewSoFar.Asking> next = known.questions().stream().findFirst();
      if (next.isEmpty()) {
        return known;
      }
      InterviewSoFar.Asking question = next.get();
      ask(question, before.size() + 1);
      Optional<InterviewSoFar> after = Optional.empty();
      boolean isBack = false;
      while (after.isEmpty() && !isBack) {
        String typed = heard(question);
        if (typed == null) {
          return known;
        }
        isBack = typed.equals(BACK);
        after = isBack ? Optional.empty() : answered(known, question, typed);
      }
      if (after.isPresent()) {
        before.push(known);
        known = after.get();
      } else if (!before.isEmpty()) {
        known = before.pop();
      }
    }
  }

  private void ask(InterviewSoFar.Asking question, int number) {
    Lines lines = new Lines();
    lines.line("");
    lines.wrapped(number + ". ", question.subject().question());
    boolean isMedium = question.subject().topic() == Topic.MEDIUM;
    int count = 0;
    for (PossibleAnswer answer : question.answers()) {
      count++;
      String label = question.subject().topic().isAmount() ? "   - " : "   " + count + "  ";
      lines.wrapped(
          label,
          answer.inWords()
              + (isMedium
                  ? ""
                  : ": "
                      + (answer.changes().isEmpty()
                          ? "nothing changes"
                          : String.join("; ", answer.changes()))));
    }
    if (question.answers().isEmpty() || question.subject().topic().isAmount()) {
      lines.wrapped("   ", "such as " + question.subject().topic().example());
    }
    out.print(lines);
  }

  /** The next line that is no question back; null at the end of the input. */
  private @Nullable String heard(InterviewSoFar.Asking question) {
    while (true) {
      String typed = prompted("> ");
      if (typed == null || !typed.equals(WHY)) {
        return typed;
      }
      Lines why = new Lines();
      why.wrapped("   ", question.subject().why());
      out.print(why);
    }
  }

  /** A line without blanks around it; null at the end of the input. */
  private @Nullable String prompted(String prompt) {
    out.print(prompt);
    out.flush();
    try {
      String line = in.readLine();
      if (line == null) {
        out.println();
      }
      return line == null ? null : line.strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What is known with the answer; empty where it cannot be used, which is told. */
  private Optional<InterviewSoFar> answered(
      InterviewSoFar known, InterviewSoFar.Asking question, String typed) {
    Topic topic = question.subject().topic();
    if (typed.isEmpty()) {
      return topic == Topic.PROFILE
          ? measured(known)
          : Optional.of(known.withUnknown(question.subject()));
    }
    try {
      String answer = chosen(question, typed);
      InterviewSoFar after = known.with(question.subject(), answer);
      if (topic == Topic.AIR_NEEDED) {
        sayHowRead(ToolAir.parse(answer));
      }
      return Optional.of(after);
    } catch (IllegalArgumentException | WrongFileException refused) {
      say(String.valueOf(refused.getMessage()));
      return Optional.empty();
    }
  }

  /** The words of an answer that was told by its number; of an amount a number alone is no answer. */
  private static String chosen(InterviewSoFar.Asking question, String typed) {
    List<PossibleAnswer> answers = question.answers();
    if (!question.subject().topic().isAmount() && !answers.isEmpty()) {
      for (int i = 0; i < answers.size(); i++) {
        if (typed.equals(String.valueOf(i + 1))
            || typed.equalsIgnoreCase(answers.get(i).inWords())) {
          return answers.get(i).text();
        }
      }
      String first =
          typed.equalsIgnoreCase("y") ? "yes" : typed.equalsIgnoreCase("n") ? "no" : typed;
      if (question.subject().topic() != Topic.PROFILE
          && question.subject().topic() != Topic.PROFILES_IN_USE) {
        return answers.stream()
            .map(PossibleAnswer::text)
            .filter(first::equalsIgnoreCase)
            .findFirst()
            .orElseThrow(() -> noneOf(answers, typed));
      }
    }
    return typed;
  }

  private static IllegalArgumentException noneOf(List<PossibleAnswer> answers, String typed) {
    List<String> words = answers.stream().map(PossibleAnswer::inWords).toList();
    String here = TradeWord.named(typed, words);
    return new IllegalArgumentException("\"" + typed + "\" is none of the answers"
        + (here.isEmpty() ? NearWord.named(typed, words) : here)
        + "; type one of them, or its number from 1 to " + answers.size());
  }

  /** The profile is not known: the plug may be measured. */
  private Optional<InterviewSoFar> measured(InterviewSoFar known) {
    try {
      InterviewFile read = new PlugTalk(reading, out, this::prompted).read(known.file());
      return Optional.of(known.with(read).withUnknown(Subject.ofJob(Topic.PROFILE)));
    } catch (WrongFileException refused) {
      say(String.valueOf(refused.getMessage()));
      return Optional.of(known.withUnknown(Subject.ofJob(Topic.PROFILE)));
    }
  }

  /** Tells every reading of air that does not tell where it is counted, and that an average is one. */
  private void sayHowRead(ToolAir air) {
    if (!air.flow().isCounted()) {
      say("That " + air.flow().openInWords() + ". All of these are judged.");
    }
    if (air.isAverage()) {
      say(
          "That is an average: while it runs the tool takes up to four times as much, if it runs a quarter of the time"
              + " (common practice, no source).");
    }
  }

  private void say(String text) {
    Lines lines = new Lines();
    lines.wrapped("   ", text);
    out.print(lines);
  }
}
