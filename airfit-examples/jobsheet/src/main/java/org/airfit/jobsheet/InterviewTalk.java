package org.airfit.jobsheet;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.PlugProfile;
import org.airfit.select.Interview;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Question;
import org.airfit.select.Topic;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/** Asks at a terminal, one question at a time, until nothing can change the proposal or the input ends. */
final class InterviewTalk {

  private static final String WHY = "?";
  private static final String BACK = "<";

  private final ShopCatalogue shop;
  private final Path place;
  private final BufferedReader in;
  private final PrintStream out;

  /** What is known at a question. */
  record Known(InterviewFile file, Set<Topic> notKnown) {

    Known with(InterviewFile fuller) {
      return new Known(fuller, notKnown);
    }

    Known withUnknown(Topic topic) {
      Set<Topic> more = EnumSet.noneOf(Topic.class);
      more.addAll(notKnown);
      more.add(topic);
      return new Known(file, more);
    }
  }

  InterviewTalk(ShopCatalogue shop, Path place, BufferedReader in, PrintStream out) {
    this.shop = shop;
    this.place = place;
    this.in = in;
    this.out = out;
  }

  /** The talk that is left to be had. */
  Interview interview(Known known) throws WrongFileException {
    return known.file().talk(place, Interview.begin(shop.parts()), known.notKnown());
  }

  /** Asks until the end. */
  Known run(InterviewFile start) throws WrongFileException {
    Lines hint = new Lines();
    hint.wrapped(
        "",
        "Answer in words, with the number of an answer, or with an amount and its unit. \"?\" tells why it is asked,"
            + " \"<\" goes back, an empty line is \"I don't know\".");
    out.print(hint);
    Deque<Known> before = new ArrayDeque<>();
    Known known = new Known(start, EnumSet.noneOf(Topic.class));
    while (true) {
      UnitSystem units = known.file().units();
      Optional<Question> next = interview(known).next(units);
      if (next.isEmpty()) {
        return known;
      }
      Question question = next.get();
      ask(question, before.size() + 1);
      Optional<Known> after = Optional.empty();
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

  private void ask(Question question, int number) {
    Lines lines = new Lines();
    lines.line("");
    lines.wrapped(number + ". ", question.inWords());
    boolean isMedium = question.topic() == Topic.MEDIUM;
    int count = 0;
    for (PossibleAnswer answer : question.answers()) {
      count++;
      String label = question.topic().isAmount() ? "   - " : "   " + count + "  ";
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
    if (question.answers().isEmpty() || question.topic().isAmount()) {
      lines.wrapped("   ", "such as " + question.topic().example());
    }
    out.print(lines);
  }

  /** The next line that is no question back; null at the end of the input. */
  private @Nullable String heard(Question question) {
    while (true) {
      String typed = prompted("> ");
      if (typed == null || !typed.equals(WHY)) {
        return typed;
      }
      Lines why = new Lines();
      why.wrapped("   ", question.why());
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
  private Optional<Known> answered(Known known, Question question, String typed) {
    Topic topic = question.topic();
    if (typed.isEmpty()) {
      return topic == Topic.PROFILE ? measured(known) : Optional.of(known.withUnknown(topic));
    }
    try {
      String answer =
          topic == Topic.PROFILE ? profile(chosen(question, typed)) : chosen(question, typed);
      Interview.begin(shop.parts()).with(topic, answer);
      Known after = known.with(known.file().with(topic, answer));
      interview(after);
      return Optional.of(after);
    } catch (IllegalArgumentException | WrongFileException refused) {
      say(String.valueOf(refused.getMessage()));
      return Optional.empty();
    }
  }

  /** The words of an answer that was told by its number; of an amount a number alone is no answer. */
  private static String chosen(Question question, String typed) {
    List<PossibleAnswer> answers = question.answers();
    if (!question.topic().isAmount() && !answers.isEmpty()) {
      for (int i = 0; i < answers.size(); i++) {
        if (typed.equals(String.valueOf(i + 1))
            || typed.equalsIgnoreCase(answers.get(i).inWords())) {
          return answers.get(i).text();
        }
      }
      String first =
          typed.equalsIgnoreCase("y") ? "yes" : typed.equalsIgnoreCase("n") ? "no" : typed;
      if (question.topic() != Topic.PROFILE && question.topic() != Topic.PROFILES_IN_USE) {
        return answers.stream()
            .map(PossibleAnswer::text)
            .filter(first::equalsIgnoreCase)
            .findFirst()
            .orElseThrow(() -> new IllegalArgumentException("\"" + typed
                + "\" is none of the answers; type one of them, or its number from 1 to "
                + answers.size()));
      }
    }
    return typed;
  }

  /** The id of a profile by its name or letter. */
  private String profile(String word) {
    if (word.equalsIgnoreCase("another one") || shop.profiles().profile(word).isPresent()) {
      return word;
    }
    List<PlugProfile> found = shop.profiles().lookUp(word).profiles();
    if (found.size() != 1) {
      throw new IllegalArgumentException(shop.profiles().lookUp(word).warning());
    }
    return found.get(0).id();
  }

  /** The profile is not known: the plug may be measured. */
  private Optional<Known> measured(Known known) {
    try {
      InterviewFile read = new PlugTalk(place, out, this::prompted).read(known.file());
      return Optional.of(known.with(read).withUnknown(Topic.PROFILE));
    } catch (WrongFileException refused) {
      say(String.valueOf(refused.getMessage()));
      return Optional.of(known.withUnknown(Topic.PROFILE));
    }
  }

  private void say(String text) {
    Lines lines = new Lines();
    lines.wrapped("   ", text);
    out.print(lines);
  }
}
