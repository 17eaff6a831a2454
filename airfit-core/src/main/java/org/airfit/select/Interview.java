package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.BiPredicate;
import org.airfit.safety.Medium;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * A short talk with a customer: which question comes next, until no single answer can change the proposal.
 *
 * <p>First comes what the line carries, since anything but compressed air ends everything; then what no parts can be
 * chosen without (see {@link Topic#isNecessary}). From there on a question is asked only if it can change something:
 * each possible answer is put in and the parts are chosen with it, and the answer counts if the proposal, whether it
 * fits, a rule that is open, broken or met by a regulator only, or the title of a warning is other than before. Of an
 * amount the answers are the spans between the values at which a rule turns, which are known from the rules, ratings
 * and lengths themselves; where the air turns with the droop of a regulator is found by halving, to 1 mbar. The question
 * comes first of which an answer makes parts fit where none do; then that of which one may break a rule of safety; then
 * that whose answers settle most open rules on average, each answer taken as likely as another; then that of which most
 * answers change the parts; then by the order of {@link Topic}. That order is our own choice.
 *
 * <p>Where a rule stays broken whatever is answered to any one question, and to those that its answer opens (as whether
 * there is a regulator opens what stands behind it when it fails), nothing is asked any more but what the line carries:
 * {@link #brokenWhateverIsAnswered}.
 *
 * <p>What the customer does not know is not asked again, and stays open. The talk ends whatever the customer knows. At
 * its end no answer to any question changes something. Answers to two questions at once are not tried, but where the
 * air at a tool hangs on several values of which none settles it alone: each is asked for that does so with the others.
 *
 * <p><b>Cost:</b> {@link #questions} chooses parts once for each possible answer, of an amount twice for each value at
 * which a rule can turn, and of one that turns with the run some ten times for each: at most about a hundred times,
 * and a few hundred times where many ranges are told. A choice takes some milliseconds in a catalogue of tens of parts.
 *
 * <p>Of several tools, what a tool does and what its maker allows is asked of each, by the name of its line, and of a
 * hose whose reach is a range how far it is, by its name. Each rule about a tool counts for each of them by itself.
 *
 * <p>Of what was told as a range it asks for the value where that can change something: the duty of a tool whose air is
 * an average, what a tool takes and needs, what a regulator is set to and by how much one that is there droops, what
 * others take behind a splitter, and bore and length of a hose that is there. Of a part that is there without a rating
 * it asks what is printed on it. A supply that swings from cut-in to cut-out is no such range: both ends of it occur, and
 * both are judged.
 *
 * <p>What is not asked here: what else is there already and stays, the pipes, the atmosphere (the standard one unless the
 * job tells it), the air's temperature (20 °C unless told), the rules of the place, and by what the proposals are put in
 * order. Tell those to a {@link Requirement} and begin with that. This class is immutable, thread-safe and value-based.
 */
public final class Interview {

  /** How near to where it turns a pressure is told: less than any gauge shows; our own choice [Pa]. */
  private static final double PRESSURE_STEP = 100.0;

  /** The same of the bore of a hose: less than a caliper shows [m]. */
  private static final double BORE_STEP = 1.0e-5;

  /** The same of the length of a hose: less than a tape shows of one that is not straight [m]. */
  private static final double LENGTH_STEP = 0.01;

  /** The same of a flow and a share, as a part of the most that was told. */
  private static final double PART = 1.0e-4;

  /** What comes first of several questions. */
  private static final Comparator<Weighed> ORDER = Comparator.comparing(
          (Weighed each) -> each.question().topic() != Topic.MEDIUM)
      .thenComparing(each -> !each.mayMend())
      .thenComparing(each -> !each.mayForbid())
      .thenComparing(Comparator.comparingDouble(Weighed::settled).reversed())
      .thenComparing(Comparator.comparingDouble(Weighed::moved).reversed())
      .thenComparing(each -> each.question().topic());

  private final Catalogue catalogue;
  private final ToldSoFar told;

  private Interview(Catalogue catalogue, ToldSoFar told) {
    this.catalogue = catalogue;
    this.told = told;
  }

  /**
   * A question with what puts it in order: whether an answer makes parts fit where none do, how many rules its answers
   * settle, and how many change the parts, on average.
   */
  private record Weighed(
      Question question, boolean mayMend, boolean mayForbid, double settled, double moved) {}

  /**
   * One possible answer that was tried.
   *
   * @param others where it stands at other values of an amount, by which the same is met and other parts may be proposed
   * @param opens whether it opens a question of which an answer makes parts fit, while none fit with this alone
   */
  private record Tried(
      String text, String inWords, Standing standing, List<Standing> others, boolean opens) {

    Tried(String text, String inWords, Standing standing) {
      this(text, inWords, standing, List.of(), false);
    }

    Tried opening() {
      return new Tried(text, inWords, standing, others, true);
    }

    /** Whether a customer would notice no difference, whatever of it is told. */
    boolean isAs(Standing now) {
      return now.isAs(standing) && others.stream().allMatch(now::isAs) && !opens;
    }

    /** What it changes: of parts that go by the value, only that they do. */
    List<String> changes(Standing now) {
      List<String> changes = new ArrayList<>(
          others.stream().allMatch(standing::isAs)
              ? ChangeInWords.of(now, standing)
              : ChangeInWords.ofSeveral(now, standing));
      if (opens) {
        changes.add("parts may fit, by what is asked next");
      }
      return changes;
    }
  }

  /**
   * Begins with nothing told.
   *
   * @param catalogue the parts to choose from
   * @return the talk, its first question what the line carries
   */
  public static Interview begin(Catalogue catalogue) {
    return new Interview(Objects.requireNonNull(catalogue, "catalogue"), ToldSoFar.of(null));
  }

  /**
   * Begins with a job of which something is told already.
   *
   * @param job what is told
   * @param catalogue the parts to choose from
   * @return the talk; it asks for what the job does not tell. What it tells as not so (not dropped, not dragged) cannot
   *     be seen on it: {@link #with} says "no"
   */
  public static Interview of(Requirement job, Catalogue catalogue) {
    Objects.requireNonNull(job, "job");
    return new Interview(Objects.requireNonNull(catalogue, "catalogue"), ToldSoFar.of(job));
  }

  /**
   * Obtains this with an answer, in place of one given before.
   *
   * @param topic what was asked
   * @param answer what the customer says: the {@link PossibleAnswer#text}, or an amount with its unit, or a range of it
   *     such as "90 to 110 psig", of which the worst end counts; a reach, what the tool takes and needs, and what a
   *     regulator is set to stay ranges, and air that does not tell where it is counted ("11 CFM") has all its readings
   * @return the talk with the answer
   * @throws IllegalArgumentException if {@code answer} cannot be read, or is at odds with what was told before, or
   *     {@code topic} is asked of a part by its name ({@link Topic#isOfPart})
   */
  public Interview with(Topic topic, String answer) {
    return with(Subject.ofJob(topic), answer);
  }

  /**
   * Obtains this with an answer about one of several tools or hoses, or about the job, in place of one given before.
   *
   * @param subject what was asked
   * @param answer what the customer says, as {@link #with(Topic, String)}
   * @return the talk with the answer
   * @throws IllegalArgumentException if {@code answer} cannot be read, or is at odds with what was told before, or the
   *     job has no such tool or hose
   */
  public Interview with(Subject subject, String answer) {
    requireNamed(Objects.requireNonNull(subject, "subject"));
    AnswerText.check(subject.topic(), Objects.requireNonNull(answer, "answer"));
    return new Interview(catalogue, told.with(subject, answer));
  }

  /**
   * Obtains this where the customer does not know the answer.
   *
   * @param topic what was asked
   * @return the talk, which does not ask it again
   * @throws IllegalArgumentException if {@code topic} is asked of a part by its name ({@link Topic#isOfPart})
   */
  public Interview withUnknown(Topic topic) {
    return withUnknown(Subject.ofJob(topic));
  }

  /**
   * Obtains this where the customer does not know the answer about one of several tools or hoses, or about the job.
   *
   * @param subject what was asked
   * @return the talk, which does not ask it again
   * @throws IllegalArgumentException if {@code subject} names no part, and its topic is asked of one
   */
  public Interview withUnknown(Subject subject) {
    requireNamed(Objects.requireNonNull(subject, "subject"));
    return new Interview(catalogue, told.withUnknown(subject));
  }

  private static void requireNamed(Subject subject) {
    if (subject.topic().isOfPart() && subject.of().isEmpty()) {
      throw new IllegalArgumentException(subject.topic()
          + " is asked of a part by the name of its slot, was told of the job; answer the subject of the"
          + " question");
    }
  }

  /** {@return the answers about the job so far by topic, as they were given} */
  public Map<Topic, String> answers() {
    return told.answers();
  }

  /** {@return all answers so far, those about one of several tools or hoses too} */
  public Map<Subject, String> answersBySubject() {
    return told.answersBySubject();
  }

  /** {@return what of the job the customer was asked and does not know, in the order of {@link Topic}} */
  public Set<Topic> notKnown() {
    return told.notKnown();
  }

  /** {@return all that the customer was asked and does not know, of one of several tools or hoses too} */
  public Set<Subject> subjectsNotKnown() {
    return told.subjectsNotKnown();
  }

  /** {@return what is missing of that without which nothing can be chosen, in the order of {@link Topic}} */
  public List<Topic> missing() {
    return told.missing();
  }

  /** {@return the job as far as it is known; empty while something is {@link #missing}} */
  public Optional<Requirement> requirement() {
    return told.job();
  }

  /**
   * {@return the parts for what is known; empty while something is {@link #missing}}
   *
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public Optional<Selection> selection() {
    return told.job().map(job -> Selection.of(job, catalogue));
  }

  /** {@return why airfit does not advise on what the line carries, where that is not compressed air; else empty} */
  public Optional<String> refusal() {
    Medium medium = told.job()
        .map(Requirement::medium)
        .orElseGet(() -> Medium.parse(
            told.answers().getOrDefault(Topic.MEDIUM, Medium.COMPRESSED_AIR.toString())));
    return medium.refusalInWords();
  }

  /**
   * {@return the next question; empty where no single answer can change the proposal any more}
   *
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public Optional<Question> next() {
    return next(UnitSystem.SI);
  }

  /**
   * Tells the same with numbers in other units.
   *
   * @param units the units
   * @return the next question; empty where no single answer can change the proposal any more
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public Optional<Question> next(UnitSystem units) {
    return questions(units).stream().findFirst();
  }

  /**
   * {@return every question that can change the proposal, the one to ask first before the others}
   *
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public List<Question> questions() {
    return questions(UnitSystem.SI);
  }

  /**
   * Tells the same with numbers in other units.
   *
   * @param units the units
   * @return every question that can change the proposal, the one to ask first before the others; while something is
   *     {@link #missing}, what nothing can be chosen without
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public List<Question> questions(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    if (refusal().isPresent()) {
      return List.of();
    }
    if (told.job().isEmpty()) {
      return necessary(units);
    }
    Requirement job = told.job().get();
    Standing now = Standing.of(job, catalogue);
    Map<OpenSubject, List<Tried>> tried = triedEach(job, now, units);
    boolean isHopeless = !brokenStill(now, tried).isEmpty();
    List<Subject> together = now.isAirOpen() ? settlingTogether(tried.keySet(), job) : List.of();
    List<Weighed> weighed = new ArrayList<>();
    tried.forEach((asked, answers) -> {
      Weighed each = isHopeless && asked.subject().topic() != Topic.MEDIUM
          ? null
          : weighed(asked.subject(), now, answers, together);
      if (each != null) {
        weighed.add(each);
      }
    });
    return weighed.stream().sorted(ORDER).map(Weighed::question).toList();
  }

  /**
   * {@return the rules that stay broken whatever is answered to any one of the questions that are left and to those that
   * it opens, so that no question is asked any more; empty where something fits or may, and while something is {@link
   * #missing}. Answers to two questions that are both open now were not tried together}
   *
   * @throws CancellationException if the thread is interrupted before the answer is found; it stays interrupted
   */
  public List<Rule> brokenWhateverIsAnswered() {
    if (refusal().isPresent() || told.job().isEmpty()) {
      return List.of();
    }
    Requirement job = told.job().get();
    Standing now = Standing.of(job, catalogue);
    return brokenStill(now, triedEach(job, now, UnitSystem.SI));
  }

  private static List<Rule> brokenStill(Standing now, Map<OpenSubject, List<Tried>> tried) {
    List<Tried> answers = tried.values().stream().flatMap(List::stream).toList();
    return answers.stream().anyMatch(Tried::opens)
        ? List.of()
        : now.brokenStill(answers.stream().map(Tried::standing).toList());
  }

  /** What is open, with each possible answer tried. */
  private Map<OpenSubject, List<Tried>> triedEach(Requirement job, Standing now, UnitSystem units) {
    Map<OpenSubject, List<Tried>> tried = new LinkedHashMap<>();
    List<OpenSubject> open = OpenSubject.of(job, told);
    List<Subject> subjects = open.stream().map(OpenSubject::subject).toList();
    for (OpenSubject asked : open) {
      List<Tried> answers = tried(asked, job, units);
      if (!now.isFitting() && asked.subject().topic() != Topic.MEDIUM) {
        answers = answers.stream()
            .map(each -> opens(asked.subject(), each, subjects) ? each.opening() : each)
            .toList();
      }
      tried.put(asked, answers);
    }
    return tried;
  }

  /** Whether parts fit with an answer to a question that is asked only behind this one, and not with this alone. */
  private boolean opens(Subject subject, Tried answer, List<Subject> before) {
    if (answer.standing().isFitting()) {
      return false;
    }
    Interview after = with(subject, answer.text());
    Requirement job = after.told.job().orElseThrow(IllegalStateException::new);
    return OpenSubject.of(job, after.told).stream()
        .filter(asked -> !before.contains(asked.subject()))
        .flatMap(asked -> after.tried(asked, job, UnitSystem.SI).stream())
        .anyMatch(next -> next.standing().isFitting());
  }

  /** What must be told first, the medium before all. */
  private List<Question> necessary(UnitSystem units) {
    List<Question> questions = new ArrayList<>();
    if (!told.isAsked(Subject.ofJob(Topic.MEDIUM))) {
      questions.add(new Question(
          Subject.ofJob(Topic.MEDIUM),
          AnswerText.media().stream()
              .map(medium -> new PossibleAnswer(
                  medium,
                  medium,
                  Medium.parse(medium).refusalInWords().map(List::of).orElse(List.of())))
              .toList()));
    }
    for (Topic topic : told.missing()) {
      if (!told.isAsked(Subject.ofJob(topic))) {
        questions.add(new Question(Subject.ofJob(topic), reaches(topic, units)));
      }
    }
    return List.copyOf(questions);
  }

  /** What the reach decides, where nothing else is missing. */
  private List<PossibleAnswer> reaches(Topic topic, UnitSystem units) {
    if (topic != Topic.REACH || told.missing().size() > 1) {
      return List.of();
    }
    Subject subject = Subject.ofJob(topic);
    Requirement some =
        told.with(subject, Turns.text(topic, 1.0)).job().orElseThrow(IllegalStateException::new);
    return spans(
            new Amount(subject), Turns.spans(topic, some, catalogue), units, Interview::isToldAlike)
        .stream()
        .map(each ->
            new PossibleAnswer(each.text(), each.inWords(), ChangeInWords.of(each.standing())))
        .toList();
  }

  /** Whether two standings read alike where there was nothing before. */
  private static boolean isToldAlike(Standing one, Standing other) {
    return ChangeInWords.of(one).equals(ChangeInWords.of(other));
  }

  private List<Tried> tried(OpenSubject asked, Requirement job, UnitSystem units) {
    Subject subject = asked.subject();
    Topic topic = subject.topic();
    if (topic.isAmount()) {
      List<Span> spans = spans(subject, asked.of(), job);
      Amount amount = new Amount(subject);
      BiPredicate<Standing, Standing> alike =
          isPartedByRules(topic) ? Standing::isAlike : Standing::isAs;
      double step = step(topic, spans);
      return spans(amount, step > 0.0 ? amount.parted(spans, step, alike) : spans, units, alike);
    }
    List<String> words =
        topic == Topic.MEDIUM ? AnswerText.media() : AnswerText.words(topic, job, catalogue);
    return words.stream()
        .map(text -> new Tried(text, text, with(text, subject)))
        .toList();
  }

  private List<Span> spans(Subject subject, Requirement of, Requirement job) {
    Topic topic = subject.topic();
    if (topic == Topic.REACH) {
      return Turns.spans(hose(subject, job), job, catalogue);
    }
    if (topic == Topic.HOSE_BORE) {
      return Turns.boreSpans(hose(subject, job).hose().orElseThrow());
    }
    if (topic == Topic.HOSE_LENGTH) {
      Slot.Hose slot = hose(subject, job);
      return Turns.lengthSpans(slot, slot.hose().orElseThrow());
    }
    if (topic == Topic.AIR_OF_OTHERS) {
      Slot.Splitter splitter =
          (Slot.Splitter) job.layout().slot(subject.of().orElseThrow()).orElseThrow();
      return Turns.othersSpans(splitter.others().orElseThrow());
    }
    if (topic == Topic.SETTING && subject.of().isPresent()) {
      return Turns.settingSpans(regulated(subject, job).setRange());
    }
    if (topic == Topic.REGULATOR_DROOP && subject.of().isPresent()) {
      return Turns.droopSpans(regulated(subject, job).regulator().orElseThrow().droopRange());
    }
    return Turns.spans(topic, of, catalogue);
  }

  /**
   * How near to where it turns a value is told that the run decides, so that it is found by halving; 0 of one of which
   * the turns are known.
   */
  private static double step(Topic topic, List<Span> spans) {
    return switch (topic) {
      case REGULATOR_DROOP, EXACT_PRESSURE, SETTING -> PRESSURE_STEP;
      case HOSE_BORE -> BORE_STEP;
      case HOSE_LENGTH -> LENGTH_STEP;
      case DUTY, EXACT_AIR, AIR_OF_OTHERS -> PART * spans.get(spans.size() - 1).most();
      default -> 0.0;
    };
  }

  /**
   * Whether the answers to a topic are told apart by what is met alone: other parts would be proposed at so many values
   * that nobody would read them all.
   */
  private static boolean isPartedByRules(Topic topic) {
    return switch (topic) {
      case DUTY, EXACT_AIR, EXACT_PRESSURE, SETTING, HOSE_BORE, HOSE_LENGTH, AIR_OF_OTHERS -> true;
      default -> false;
    };
  }

  /**
   * The questions whose answers settle only together if a tool has its air; none where they do not. What arrives goes one
   * way with each of the values, so that it is enough to look at all of them at their best, and at their worst.
   */
  private List<Subject> settlingTogether(Set<OpenSubject> open, Requirement job) {
    List<OpenSubject> deciding =
        open.stream().filter(asked -> decidesAir(asked.subject().topic())).toList();
    boolean settles = deciding.size() > 1
        && (!withAll(deciding, job, /* atBest= */ true).isAirOpen()
            || !withAll(deciding, job, /* atBest= */ false).isAirOpen());
    return settles ? deciding.stream().map(OpenSubject::subject).toList() : List.of();
  }

  /** Where it stands with all that is asked for at its best, or at its worst. */
  private Standing withAll(List<OpenSubject> deciding, Requirement job, boolean atBest) {
    ToldSoFar all = told;
    for (OpenSubject asked : deciding) {
      Subject subject = asked.subject();
      List<Span> spans = spans(subject, asked.of(), job);
      int end = isBestAtMost(subject.topic()) == atBest ? spans.size() - 1 : 0;
      all = all.with(subject, Turns.text(subject.topic(), spans.get(end).inside()));
    }
    return Standing.of(all.job().orElseThrow(IllegalStateException::new), catalogue);
  }

  /** Whether the air at a tool hangs on the value that is asked for, of a range that is known. */
  private static boolean decidesAir(Topic topic) {
    return topic == Topic.REGULATOR_DROOP || isPartedByRules(topic);
  }

  private static boolean isBestAtMost(Topic topic) {
    return topic == Topic.DUTY || topic == Topic.SETTING || topic == Topic.HOSE_BORE;
  }

  private static Slot.Regulated regulated(Subject subject, Requirement job) {
    return (Slot.Regulated) job.layout().slot(subject.of().orElseThrow()).orElseThrow();
  }

  private static Slot.Hose hose(Subject subject, Requirement job) {
    return (Slot.Hose) job.layout().slot(subject.of().orElseThrow()).orElseThrow();
  }

  private Standing with(String text, Subject subject) {
    Requirement job = told.with(subject, text).job().orElseThrow(IllegalStateException::new);
    return Standing.of(job, catalogue);
  }

  /** The spans of an amount, those joined that a customer would not tell apart. */
  private List<Tried> spans(
      Amount amount, List<Span> spans, UnitSystem units, BiPredicate<Standing, Standing> alike) {
    Topic topic = amount.subject.topic();
    List<Tried> tried = new ArrayList<>();
    @Nullable Span open = null;
    @Nullable Standing standing = null;
    List<Standing> others = new ArrayList<>();
    for (Span span : spans) {
      Standing next = amount.at(span.inside());
      if (open != null && standing != null && alike.test(standing, next)) {
        open = open.joined(span);
        others.add(next);
      } else {
        add(tried, topic, open, standing, others, units);
        open = span;
        standing = next;
        others.clear();
      }
    }
    add(tried, topic, open, standing, others, units);
    return tried;
  }

  /**
   * Where an amount turns, as near as that is looked for: it is not said on which side a value in between lies.
   *
   * @param before the last value that was tried before it
   * @param behind the first that was tried behind it
   */
  private record Turn(double before, double behind) {}

  /** An amount tried value by value, in SI, each once. */
  private final class Amount {

    private final Subject subject;
    private final Map<Double, Standing> known = new HashMap<>();

    Amount(Subject subject) {
      this.subject = subject;
    }

    Standing at(double value) {
      return known.computeIfAbsent(value, any -> with(Turns.text(subject.topic(), value), subject));
    }

    /**
     * The spans, those parted within which it turns: how much droop the air allows follows from the flow, and where a
     * setting is a range too, it turns at another droop for each end of it.
     */
    List<Span> parted(List<Span> spans, double nearest, BiPredicate<Standing, Standing> alike) {
      List<Span> parted = new ArrayList<>();
      for (Span span : spans) {
        if (span.least() == span.most()) {
          parted.add(span);
          continue;
        }
        double step = Math.min(nearest, 0.5 * (span.most() - span.least()));
        List<Turn> turns = new ArrayList<>();
        addTurns(turns, span.least() + step, span.inside(), nearest, alike);
        addTurns(turns, span.inside(), span.most(), nearest, alike);
        double from = span.least();
        for (Turn turn : turns) {
          if (turn.before() > from) {
            parted.add(Span.between(from, turn.before()));
          }
          parted.add(Span.at(turn.before()));
          // what turns at the end of the span itself turns no sooner: the middle of what is left
          // tells
          from = turn.behind() < span.most() ? turn.behind() : turn.before();
        }
        if (span.most() > from) {
          parted.add(Span.between(from, span.most()));
        }
      }
      return List.copyOf(parted);
    }

    /** Halves what lies between two values as long as it stands otherwise at one than at the other. */
    private void addTurns(
        List<Turn> turns,
        double low,
        double high,
        double nearest,
        BiPredicate<Standing, Standing> alike) {
      if (alike.test(at(low), at(high))) {
        return;
      }
      if (high - low <= nearest) {
        turns.add(new Turn(low, high));
        return;
      }
      double middle = 0.5 * (low + high);
      addTurns(turns, low, middle, nearest, alike);
      addTurns(turns, middle, high, nearest, alike);
    }
  }

  private static void add(
      List<Tried> tried,
      Topic topic,
      @Nullable Span span,
      @Nullable Standing standing,
      List<Standing> others,
      UnitSystem units) {
    if (span != null && standing != null) {
      tried.add(new Tried(
          Turns.text(topic, span.inside()),
          span.inWords(topic, units),
          standing,
          List.copyOf(others),
          false));
    }
  }

  /** The question with its weight; null where no answer changes anything. */
  private static @Nullable Weighed weighed(
      Subject subject, Standing now, List<Tried> tried, List<Subject> together) {
    boolean settlesTogether = together.contains(subject);
    boolean changesNothing = tried.stream().allMatch(each -> each.isAs(now));
    if (changesNothing && !settlesTogether) {
      return null;
    }
    double settled = 0.0;
    double moved = 0.0;
    boolean mayMend = false;
    boolean mayForbid = false;
    List<PossibleAnswer> answers = new ArrayList<>();
    for (Tried each : tried) {
      settled += now.settledBy(each.standing());
      moved += now.parts().equals(each.standing().parts()) ? 0.0 : 1.0;
      mayMend |= !now.isFitting() && (each.standing().isFitting() || each.opens());
      mayForbid |= now.isForbiddenBy(each.standing());
      List<String> changes = each.changes(now);
      if (settlesTogether && each.standing().isFitting() && each.standing().isAirOpen()) {
        changes.add("with " + others(subject, together) + ", by the value, it may settle: "
            + Rule.AIR_AT_TOOL.title());
      }
      answers.add(new PossibleAnswer(each.text(), each.inWords(), changes));
    }
    return new Weighed(
        new Question(subject, answers),
        mayMend,
        mayForbid,
        settled / tried.size(),
        moved / tried.size());
  }

  /** What else is asked that settles with a subject, in words. */
  private static String others(Subject subject, List<Subject> together) {
    List<String> names = together.stream()
        .filter(each -> !each.equals(subject))
        .map(each -> "the " + each)
        .toList();
    int last = names.size() - 1;
    return last == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Interview that
        && catalogue.equals(that.catalogue)
        && told.equals(that.told);
  }

  @Override
  public int hashCode() {
    return Objects.hash(catalogue, told);
  }

  /** {@return what was told and what is not known} */
  @Override
  public String toString() {
    return "Interview " + told;
  }
}
