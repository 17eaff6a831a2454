package org.airfit.jobsheet;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.TradeWord;
import org.airfit.files.WrongFileException;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.NearWord;
import org.airfit.run.ToolAir;
import org.airfit.select.Interview;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Question;
import org.airfit.select.Subject;
import org.airfit.select.Topic;
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
  record Known(InterviewFile file, Set<Subject> notKnown) {

    Known with(InterviewFile fuller) {
      return new Known(fuller, notKnown);
    }

    Known withUnknown(Subject subject) {
      Set<Subject> more = new TreeSet<>(notKnown);
      more.add(subject);
      return new Known(file, more);
    }
  }

  /** A question as it is asked: what nothing can be chosen without has no answers to choose from. */
  private record Asked(Subject subject, List<PossibleAnswer> answers) {

    static Asked of(Question question) {
      return new Asked(question.subject(), question.answers());
    }

    static Asked of(Subject missing) {
      return new Asked(missing, List.of());
    }

    Topic topic() {
      return subject.topic();
    }
  }

  /** The next question; of several tools first what the lines lack without which nothing can be chosen. */
  private Optional<Asked> next(Known known) throws WrongFileException {
    Interview talk = interview(known);
    List<Question> open = talk.questions(known.file().units());
    boolean isMedium = !open.isEmpty() && open.get(0).topic() == Topic.MEDIUM;
    if (isMedium || talk.refusal().isPresent() || !known.file().lacksOfLines()) {
      return open.stream().findFirst().map(Asked::of);
    }
    return known.file().missing().stream()
        .filter(subject -> !known.notKnown().contains(subject))
        .findFirst()
        .map(Asked::of);
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
    Known known = new Known(start, Set.of());
    while (true) {
      Optional<Asked> next = next(known);
      if (next.isEmpty()) {
        return known;
      }
      Asked question = next.get();
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

  private void ask(Asked question, int number) {
    Lines lines = new Lines();
    lines.line("");
    lines.wrapped(number + ". ", question.subject().question());
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
  private @Nullable String heard(Asked question) {
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
  private Optional<Known> answered(Known known, Asked question, String typed) {
    Topic topic = question.topic();
    if (typed.isEmpty()) {
      return topic == Topic.PROFILE
          ? measured(known)
          : Optional.of(known.withUnknown(question.subject()));
    }
    try {
      String answer =
          topic == Topic.PROFILE ? profile(chosen(question, typed)) : chosen(question, typed);
      Interview.begin(shop.parts()).with(topic, answer);
      Known after = known.with(known.file().with(question.subject(), answer));
      interview(after);
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
  private static String chosen(Asked question, String typed) {
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

  /** Words that people put behind the name of a profile. */
  private static final List<String> BEHIND_PROFILE =
      List.of(" interchange profile", " interchange", " profile", " coupler", " plug", " style");

  /** The id of a profile by its name or letter. */
  private String profile(String typed) {
    String word = typed;
    for (String behind : BEHIND_PROFILE) {
      int end = word.length() - behind.length();
      if (end > 0 && word.regionMatches(true, end, behind, 0, behind.length())) {
        word = word.substring(0, end).strip();
      }
    }
    if (word.equalsIgnoreCase("another one") || shop.profiles().profile(word).isPresent()) {
      return word;
    }
    List<PlugProfile> found = shop.profiles().lookUp(word).profiles();
    if (found.size() != 1) {
      throw new IllegalArgumentException(shop.profiles().lookUp(word).warning()
          + " Type one of the answers, or an empty line to measure it"
          + NearWord.named(
              word, shop.profiles().profiles().stream().map(PlugProfile::id).toList())
          + ".");
    }
    return found.get(0).id();
  }

  /** The profile is not known: the plug may be measured. */
  private Optional<Known> measured(Known known) {
    try {
      InterviewFile read = new PlugTalk(place, out, this::prompted).read(known.file());
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
