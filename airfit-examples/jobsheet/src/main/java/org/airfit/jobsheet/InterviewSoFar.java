package org.airfit.jobsheet;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.airfit.files.Document;
import org.airfit.files.Refusal;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.NearWord;
import org.airfit.select.Interview;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Question;
import org.airfit.select.Subject;
import org.airfit.select.Topic;

/**
 * A talk with a customer as far as it got: a job file that fills, and what the customer does not know.
 *
 * <p>What can be asked comes from {@link Interview}; here the answers fill the fields of the file, so that its sheet
 * gives the same answer. This class is immutable.
 */
public final class InterviewSoFar {

  /** Words that people put behind the name of a profile. */
  private static final List<String> BEHIND_PROFILE =
      List.of(" interchange profile", " interchange", " profile", " coupler", " plug", " style");

  private static final String FILE = "job.json";

  private final ShopCatalogue shop;
  private final JobReading reading;
  private final InterviewFile file;
  private final Set<Subject> notKnown;

  private InterviewSoFar(
      ShopCatalogue shop, JobReading reading, InterviewFile file, Set<Subject> notKnown) {
    this.shop = shop;
    this.reading = reading;
    this.file = file;
    this.notKnown = notKnown;
  }

  /**
   * A question as it is asked.
   *
   * @param subject what it is about
   * @param answers what may be answered and what it changes; empty where nothing can be chosen yet
   */
  public record Asking(Subject subject, List<PossibleAnswer> answers) {

    /**
     * Takes what may be answered.
     *
     * @param subject what it is about
     * @param answers what may be answered and what it changes; empty where nothing can be chosen yet
     */
    public Asking {
      Objects.requireNonNull(subject, "subject");
      answers = List.copyOf(answers);
    }

    static Asking of(Question question) {
      return new Asking(question.subject(), question.answers());
    }
  }

  /**
   * Begins with the fields of a job file, which may lack any.
   *
   * @param start the fields, docs/job-file.md
   * @param catalogue what the job calls the catalogue
   * @param shop the catalogue of that name
   * @param reading reads a job whose fields are whole
   * @return the talk
   */
  public static InterviewSoFar begin(
      Map<String, Object> start, String catalogue, ShopCatalogue shop, JobReading reading) {
    return new InterviewSoFar(
        Objects.requireNonNull(shop, "shop"),
        Objects.requireNonNull(reading, "reading"),
        InterviewFile.of(
            Objects.requireNonNull(start, "start"), Objects.requireNonNull(catalogue, "catalogue")),
        Set.of());
  }

  InterviewFile file() {
    return file;
  }

  InterviewSoFar with(InterviewFile fuller) {
    return new InterviewSoFar(shop, reading, fuller, notKnown);
  }

  /** {@return the talk that is left to be had}
   *
   * @throws WrongFileException if something in the job is refused
   * @throws IllegalArgumentException if something in a job that is not whole yet cannot be read
   */
  public Interview talk() throws WrongFileException {
    return file.talk(reading, Interview.begin(shop.parts()), notKnown);
  }

  /**
   * Tells every question that can change the proposal.
   *
   * @return the questions, the one to ask first before the others; of several tools first what the lines lack without
   *     which nothing can be chosen; none where all was asked, and for anything but compressed air
   * @throws WrongFileException if something in the job is refused
   * @throws IllegalArgumentException if something in a job that is not whole yet cannot be read
   */
  public List<Asking> questions() throws WrongFileException {
    Interview talk = talk();
    List<Question> open = talk.questions(file.units());
    boolean isMedium = !open.isEmpty() && open.get(0).topic() == Topic.MEDIUM;
    if (isMedium || talk.refusal().isPresent() || !file.lacksOfLines()) {
      return open.stream().map(Asking::of).toList();
    }
    return file.missing().stream()
        .filter(subject -> !notKnown.contains(subject))
        .map(subject -> new Asking(subject, List.of()))
        .toList();
  }

  /**
   * Obtains this with an answer.
   *
   * @param subject what was asked
   * @param answer what the customer says: the text of one of the answers, or an amount with its unit, or a range of it;
   *     of a profile its name or letter too
   * @return the talk with the answer
   * @throws WrongFileException if the job is refused with it
   * @throws IllegalArgumentException if {@code answer} cannot be read, is at odds with what was told before, or speaks
   *     of what is not there
   */
  public InterviewSoFar with(Subject subject, String answer) throws WrongFileException {
    String told = subject.topic() == Topic.PROFILE ? profile(answer) : answer;
    Interview.begin(shop.parts()).with(subject.topic(), told);
    file.requireOpen(subject);
    InterviewSoFar after = with(file.with(subject, told));
    after.talk();
    return after;
  }

  /**
   * Obtains this where the customer does not know the answer.
   *
   * @param subject what was asked
   * @return the talk, which does not ask it again
   */
  public InterviewSoFar withUnknown(Subject subject) {
    Set<Subject> more = new TreeSet<>(notKnown);
    more.add(Objects.requireNonNull(subject, "subject"));
    return new InterviewSoFar(shop, reading, file, Collections.unmodifiableSet(more));
  }

  /** The id of a profile by its name or letter. */
  private String profile(String typed) {
    String word = typed.strip();
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

  /** {@return the fields of the job file, as far as they are filled} */
  public Map<String, Object> fields() {
    return file.fields();
  }

  /** {@return whether all is told without which nothing can be chosen} */
  public boolean isWhole() {
    return file.isWhole();
  }

  /** {@return what is missing without which nothing can be chosen} */
  public List<Subject> missing() {
    return file.missing();
  }

  /** {@return what the customer was asked and does not know, and is better asked before anything is connected} */
  public List<Subject> stillToAsk() {
    return notKnown.stream()
        .sorted()
        .filter(subject -> !subject.topic().isNecessary()
            || (subject.topic() == Topic.REACH && subject.of().isPresent()))
        .toList();
  }

  /** {@return the refusal of anything but compressed air; empty for compressed air} */
  public Optional<Refusal> refusal() {
    return Refusal.of(Document.of(FILE, fields()));
  }
}
