package org.airfit.counter;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.calls.Calls;
import org.airfit.calls.RefusedException;
import org.airfit.counter.stock.Stock;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Document;
import org.airfit.files.JobFile;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.InterviewSoFar;
import org.airfit.safety.SafetyRules;
import org.airfit.select.PossibleAnswer;
import org.airfit.select.Subject;
import org.airfit.select.Topic;
import org.jspecify.annotations.Nullable;

/** What a customer is to be asked next. Nothing is kept between questions: the caller sends all answers each time. */
final class NextQuestions {

  /** Nobody is asked so much. */
  private static final int MOST_ANSWERS = 100;

  private static final String JOB = "job";
  private static final String FILES = "files";
  private static final String ANSWERS = "answers";
  private static final String CATALOGUE = "catalogue";

  private static final String ANSWER_FORM =
      "an object such as {\"topic\": \"place\", \"answer\": \"outdoors\"}; {\"topic\": \"place\", \"notKnown\":"
          + " true} where the customer does not know it";

  private NextQuestions() {}

  static Map<String, Object> answer(Map<String, Object> body, House house)
      throws Problem, SQLException, WrongFileException, RefusedException {
    for (String name : body.keySet()) {
      if (!Set.of(JOB, FILES, ANSWERS).contains(name)) {
        throw Problem.field(name, "is no field here", "job, files, answers");
      }
    }
    Map<String, Object> start =
        object(body, JOB, "the fields of a job file, of which any may lack");
    House.Files shelf = house.files(files(body), start);
    requireForms(start);
    Optional<Refusal> refusal = Refusal.of(Document.of("job.json", start));
    if (refusal.isPresent()) {
      return refused(refusal.get(), start);
    }
    String catalogue =
        start.get(CATALOGUE) == null ? Stock.FILE : String.valueOf(start.get(CATALOGUE));
    InterviewSoFar talk = InterviewSoFar.begin(
        start,
        catalogue,
        shelf.catalogue(catalogue),
        fields -> JobFile.read(new Document("job.json", JobFile.toObject(fields), shelf)));
    requireReadable(talk);
    talk = answered(talk, body.get(ANSWERS));
    refusal = talk.refusal();
    if (refusal.isPresent()) {
      return refused(refusal.get(), talk.fields());
    }
    Map<String, Object> answer = told(talk, talk.questions(), shelf);
    shelf.tellLeftOut(answer);
    return answer;
  }

  /** What is told of the job, with its field where it cannot be read. */
  private static void requireReadable(InterviewSoFar talk) throws Problem {
    try {
      talk.talk();
    } catch (WrongFileException e) {
      throw ofJob(e);
    } catch (IllegalArgumentException e) {
      throw Problem.field(JOB, String.valueOf(e.getMessage()), "");
    }
  }

  private static Problem ofJob(WrongFileException wrong) {
    String place = wrong.place();
    return Problem.field(JOB + (place.isEmpty() ? "" : "." + place), wrong.complaint(), "")
        .with("accepted", wrong.accepted());
  }

  private static InterviewSoFar answered(InterviewSoFar start, @Nullable Object told)
      throws Problem {
    if (told == null) {
      return start;
    }
    if (!(told instanceof List<?> list) || list.size() > MOST_ANSWERS) {
      throw Problem.field(
          ANSWERS,
          told instanceof List<?> many ? "are " + many.size() : "are no list",
          "a list of at most " + MOST_ANSWERS + " answers, each " + ANSWER_FORM);
    }
    InterviewSoFar talk = start;
    List<Subject> before = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      talk = answered(talk, list.get(i), ANSWERS + "[" + (i + 1) + "]", before);
    }
    return talk;
  }

  private static InterviewSoFar answered(
      InterviewSoFar talk, Object one, String place, List<Subject> before) throws Problem {
    if (!(one instanceof Map<?, ?> fields)
        || !(fields.get("topic") instanceof String topic)
        || !Set.of("topic", "of", "answer", "notKnown").containsAll(fields.keySet())) {
      throw Problem.field(place, "is no answer", ANSWER_FORM);
    }
    Object answer = fields.get("answer");
    boolean isNotKnown = Boolean.TRUE.equals(fields.get("notKnown"));
    if (isNotKnown == answer instanceof String
        || (fields.containsKey("notKnown") && !(fields.get("notKnown") instanceof Boolean))) {
      throw Problem.field(place, "tells no text as answer, nor that it is not known", ANSWER_FORM);
    }
    Subject subject = subject(topic, fields.get("of"), place);
    if (before.contains(subject)) {
      throw Problem.field(place, "was answered before; keep one of the two", "");
    }
    before.add(subject);
    if (isNotKnown) {
      return talk.withUnknown(subject);
    }
    try {
      return talk.with(subject, String.valueOf(answer));
    } catch (WrongFileException e) {
      throw Problem.field(place + ".answer", e.place() + ": " + e.complaint(), "")
          .with("accepted", e.accepted());
    } catch (IllegalArgumentException e) {
      throw Problem.field(place + ".answer", String.valueOf(e.getMessage()), "")
          .with("accepted", "such as " + subject.topic().example());
    }
  }

  private static Subject subject(String topic, @Nullable Object of, String place) throws Problem {
    Topic named;
    try {
      named = Topic.parse(topic);
    } catch (IllegalArgumentException e) {
      throw Problem.field(place + ".topic", String.valueOf(e.getMessage()), "");
    }
    if (of == null) {
      return Subject.ofJob(named);
    }
    if (!(of instanceof String name) || name.isBlank()) {
      throw Problem.field(
          place + ".of", "is no name", "the name of a line or hose, as it was asked");
    }
    return Subject.of(named, name);
  }

  /** A job is written over where it is not whole: what is of another form must not get lost. */
  private static void requireForms(Map<String, Object> job) throws Problem {
    for (String name : List.of("tool", "supply", "conditions", "atHand")) {
      if (job.containsKey(name) && !(job.get(name) instanceof Map)) {
        throw Problem.field(JOB + "." + name, "is no object", "an object, docs/job-file.md");
      }
    }
    if (job.containsKey("line") && !(job.get("line") instanceof List)) {
      throw Problem.field(JOB + ".line", "is no list", "a list of objects, docs/job-file.md");
    }
    if (job.containsKey(CATALOGUE) && !(job.get(CATALOGUE) instanceof String)) {
      throw Problem.field(JOB + ".catalogue", "is no text", "the name of one of the files");
    }
  }

  private static Map<String, Object> refused(Refusal refusal, Map<String, Object> job) {
    Map<String, Object> answer = begun("refused", refusal.reason(), job);
    answer.put("cautions", Plainly.cautionsOf(refusal));
    return answer;
  }

  private static Map<String, Object> begun(String kind, String headline, Map<String, Object> job) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", kind);
    answer.put("headline", headline);
    answer.put("questions", List.of());
    answer.put("toAsk", List.of());
    answer.put(JOB, JobFile.toObject(job));
    return answer;
  }

  private static Map<String, Object> told(
      InterviewSoFar talk, List<InterviewSoFar.Asking> open, CatalogueShelf shelf)
      throws RefusedException {
    List<Object> deference = Plainly.cautions(List.of(SafetyRules.usFederal().deference()));
    Map<String, Object> answer;
    if (!open.isEmpty()) {
      answer = begun("question", open.get(0).subject().question(), talk.fields());
      List<Object> questions = new ArrayList<>();
      open.forEach(each -> questions.add(question(each)));
      answer.put("questions", questions);
      answer.put("cautions", deference);
    } else if (!talk.isWhole()) {
      answer = begun("notEnough", "Nothing can be chosen before this is known.", talk.fields());
      answer.put("cautions", deference);
    } else {
      Map<String, Object> selected =
          Calls.answer("select", Map.of(JOB, JobFile.toObject(talk.fields())), shelf);
      answer = begun("done", String.valueOf(selected.get("headline")), talk.fields());
      answer.put("selected", Plainly.forTill(selected));
      answer.put("cautions", selected.get("cautions"));
    }
    List<Object> toAsk = new ArrayList<>();
    (talk.isWhole() ? talk.stillToAsk() : talk.missing())
        .forEach(subject -> toAsk.add(subject.question()));
    answer.put("toAsk", toAsk);
    return answer;
  }

  private static Map<String, Object> question(InterviewSoFar.Asking asking) {
    Subject subject = asking.subject();
    Topic topic = subject.topic();
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("topic", topic.toString());
    subject.of().ifPresent(name -> told.put("of", name));
    told.put("question", subject.question());
    told.put("why", subject.why());
    boolean isFree = topic.isAmount() || asking.answers().isEmpty();
    told.put(
        "accepted",
        isFree
            ? "such as " + topic.example()
            : String.join(
                ", ", asking.answers().stream().map(PossibleAnswer::text).toList()));
    List<Object> answers = new ArrayList<>();
    for (PossibleAnswer each : asking.answers()) {
      Map<String, Object> one = new LinkedHashMap<>();
      one.put("answer", each.text());
      one.put("words", each.inWords());
      one.put("changes", each.changes());
      answers.add(one);
    }
    told.put("answers", answers);
    return told;
  }

  private static Map<String, String> files(Map<String, Object> body) throws Problem {
    Map<String, String> files = new LinkedHashMap<>();
    for (Map.Entry<String, Object> each :
        object(body, FILES, "texts of files by name").entrySet()) {
      if (!(each.getValue() instanceof String text)) {
        throw Problem.field(FILES + "." + each.getKey(), "is no text", "the text of a file");
      }
      files.put(each.getKey(), text);
    }
    return files;
  }

  private static Map<String, Object> object(Map<String, Object> body, String name, String accepted)
      throws Problem {
    Object told = body.get(name);
    if (told != null && !(told instanceof Map)) {
      throw Problem.field(name, "is no object", accepted);
    }
    return Document.fields(told == null ? Map.of() : told);
  }
}
