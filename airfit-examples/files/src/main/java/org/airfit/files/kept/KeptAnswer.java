package org.airfit.files.kept;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.regex.Pattern;
import org.airfit.files.Document;
import org.airfit.files.Job;
import org.airfit.files.Json;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.files.json.AirfitModule;
import org.airfit.files.json.WrongJsonException;

/**
 * An answer with all that it rests on: the question, the reference set, the catalogue, the version of the library and
 * the day. It can be written, read back, computed again and compared, years later.
 *
 * <p>It holds everything whole, for the catalogue of the day is what nobody has any more when a claim comes. What is
 * kept of the answer is what decides: parts with prices and ratings, what they take beside them, pressures,
 * restrictions, what the rules say and the cautions of every proposal that is listed. A year's offers and the talk
 * about a receiver are computed from the same question, and are not kept.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class KeptAnswer {

  /** The form of file that is written and read. */
  private static final int FORM = 1;

  private static final String FORM_FIELD = "airfitKept";
  private static final String LIBRARY = "library";
  private static final String DAY = "day";
  private static final String QUESTION = "question";
  private static final String SET = "set";
  private static final String CATALOGUE = "catalogue";
  private static final String ANSWER = "answer";
  private static final String HASHES = "hashes";
  private static final String HASH = "sha256";
  private static final String PROFILES = "profiles";

  private static final List<String> HASHED = List.of(QUESTION, SET, CATALOGUE, ANSWER);
  private static final Set<String> FIELDS =
      Set.of(FORM_FIELD, LIBRARY, DAY, QUESTION, SET, CATALOGUE, ANSWER, HASHES, HASH);

  /** A job is read up to this length [signs]; {@link AirfitModule} reads no longer one. */
  private static final int LONGEST = 10 << 20;

  private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

  private static final JsonMapper MAPPER = AirfitModule.strictMapper();

  private final String library;
  private final LocalDate day;
  /** The canonical texts by their fields. */
  private final Map<String, String> texts;

  private final Map<String, String> hashes;
  private final String hash;
  private final Answered answered;

  private KeptAnswer(String library, LocalDate day, Map<String, String> texts, Answered answered) {
    this.library = library;
    this.day = day;
    this.texts = Map.copyOf(texts);
    Map<String, String> computed = new LinkedHashMap<>();
    HASHED.forEach(field -> computed.put(field, Canonical.sha256(text(field))));
    this.hashes = Map.copyOf(computed);
    this.hash = Canonical.sha256(Canonical.text(
        Map.of(FORM_FIELD, FORM, LIBRARY, library, DAY, day.toString(), HASHES, computed)));
    this.answered = answered;
  }

  /**
   * Answers a job, and keeps the answer.
   *
   * @param job the job, as it was read from its fields
   * @param day the day of the answer
   * @return the answer with all that it rests on
   * @throws IllegalArgumentException if the job was not read from the fields of a job file; if it asks how long a hose
   *     may be or how wide it must be (keep the job with the hose that was chosen); or if it is longer than 10 MB with
   *     its catalogue
   */
  public static KeptAnswer of(Job job, LocalDate day) {
    return of(job, day, LibraryVersion.ofCore());
  }

  static KeptAnswer of(Job job, LocalDate day, String library) {
    Objects.requireNonNull(job, "job");
    Objects.requireNonNull(day, "day");
    if (job.question().isPresent()) {
      throw new IllegalArgumentException(
          "job must ask for parts, but asks how long or how wide a hose must be;"
              + " keep the job with the hose that was chosen");
    }
    Map<String, Object> plain = plain(job);
    Object catalogue = plain.remove(CATALOGUE);
    Map<String, Object> parts = Document.fields(catalogue == null ? Map.of() : catalogue);
    Object set = parts.remove(PROFILES);
    Map<String, String> texts = new LinkedHashMap<>();
    texts.put(QUESTION, Canonical.text(plain));
    texts.put(SET, Canonical.text(set == null ? Map.of() : set));
    texts.put(CATALOGUE, Canonical.text(parts));
    Answered answered = Answering.of(job);
    texts.put(ANSWER, Canonical.text(AnswerText.toPlain(answered)));
    return new KeptAnswer(library, day, texts, answered);
  }

  /** A job as plain values: its fields, its catalogue with the profiles in it, and the rules that it names. */
  private static Map<String, Object> plain(Job job) {
    String text;
    try {
      text = MAPPER.writeValueAsString(job);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(
          "job must be one that was read from the fields of a job file: " + e.getOriginalMessage(),
          e);
    }
    if (text.length() > LONGEST) {
      throw new IllegalArgumentException("job must have at most " + LONGEST
          + " signs with its catalogue, has " + text.length()
          + "; give a catalogue of the parts that come into question");
    }
    try {
      return Document.fields(Json.read("job", text));
    } catch (WrongFileException e) {
      throw new IllegalStateException("what was written must be JSON", e);
    }
  }

  /**
   * Reads an answer that was kept.
   *
   * @param file the name of the file, for complaints
   * @param text what {@link #toText} wrote; spaces, line ends and the order of fields do not matter
   * @return the answer
   * @throws WrongFileException if it is none, or was changed after it was kept: the field whose hash is not that of its
   *     text is told
   */
  public static KeptAnswer read(String file, String text) throws WrongFileException {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(text, "text");
    if (!(Json.read(file, text) instanceof Map<?, ?> root)) {
      throw new WrongFileException(file, "", "holds no JSON object; give an answer as it was kept");
    }
    for (Object name : root.keySet()) {
      if (!FIELDS.contains(String.valueOf(name))) {
        throw new WrongFileException(
            file,
            String.valueOf(name),
            "is no field of a kept answer; give an answer as it was kept");
      }
    }
    if (!Integer.valueOf(FORM).equals(root.get(FORM_FIELD))) {
      throw new WrongFileException(
          file,
          FORM_FIELD,
          "must be " + FORM
              + ", a number without quotation marks, the form of kept answer that is read here, was "
              + Canonical.text(root.get(FORM_FIELD)));
    }
    Map<String, Object> hashes = Document.fields(told(file, root, HASHES));
    Map<String, String> texts = new LinkedHashMap<>();
    for (String field : HASHED) {
      String canonical;
      try {
        canonical = Canonical.text(told(file, root, field));
      } catch (IllegalArgumentException e) {
        throw new WrongFileException(file, field, String.valueOf(e.getMessage()));
      }
      requireUnchanged(
          file, field, Canonical.sha256(canonical), hashes.getOrDefault(field, "none"));
      texts.put(field, canonical);
    }
    LocalDate day;
    Answered answered;
    try {
      day = LocalDate.parse(String.valueOf(told(file, root, DAY)));
    } catch (DateTimeException e) {
      throw new WrongFileException(
          file, DAY, "was \"" + root.get(DAY) + "\"; accepted: a day such as 2026-11-29");
    }
    try {
      answered = AnswerText.of(told(file, root, ANSWER));
    } catch (IllegalArgumentException e) {
      throw new WrongFileException(
          file, ANSWER, "cannot be read: " + e.getMessage() + "; give an answer as it was kept");
    }
    KeptAnswer read =
        new KeptAnswer(String.valueOf(told(file, root, LIBRARY)), day, texts, answered);
    requireUnchanged(file, HASH, read.hash, told(file, root, HASH));
    return read;
  }

  private static Object told(String file, Map<?, ?> root, String field) throws WrongFileException {
    Object value = root.get(field);
    if (value == null) {
      throw new WrongFileException(file, field, "is missing; give an answer as it was kept, whole");
    }
    return value;
  }

  private static void requireUnchanged(String file, String field, String computed, Object written)
      throws WrongFileException {
    if (!computed.equals(written)) {
      throw new WrongFileException(
          file,
          field,
          (field.equals(HASH) ? "library, day or hashes were" : "was")
              + " changed after the answer was kept: its SHA-256 is " + computed + ", written is "
              + (SHA256.matcher(String.valueOf(written)).matches() ? written : "no SHA-256")
              + "; take an unchanged copy");
    }
  }

  /**
   * {@return the answer with all that it rests on, as JSON: {@code question}, {@code set}, {@code catalogue} and
   * {@code answer}, the hash of each in {@code hashes}, and {@code sha256}, the hash of {@code airfitKept},
   * {@code library}, {@code day} and {@code hashes} as one object}
   */
  public String toText() {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put(FORM_FIELD, FORM);
    root.put(LIBRARY, library);
    root.put(DAY, day.toString());
    Map<String, Object> inOrder = new LinkedHashMap<>();
    HASHED.forEach(field -> inOrder.put(field, hashOf(field)));
    root.put(HASHES, inOrder);
    root.put(HASH, hash);
    root.put(QUESTION, Canonical.plain(question()));
    root.put(ANSWER, Canonical.plain(answer()));
    root.put(SET, Canonical.plain(set()));
    root.put(CATALOGUE, Canonical.plain(catalogue()));
    return Json.write(root);
  }

  private String text(String field) {
    return Objects.requireNonNull(texts.get(field), field);
  }

  private String hashOf(String field) {
    return Objects.requireNonNull(hashes.get(field), field);
  }

  /** {@return the version of the library that answered, such as "0.1.0"} */
  public String library() {
    return library;
  }

  /** {@return the day of the answer} */
  public LocalDate day() {
    return day;
  }

  /**
   * {@return the question as canonical JSON: {@code job}, the fields of the job file, and {@code files} with its
   * rules}
   */
  public String question() {
    return text(QUESTION);
  }

  /** {@return the reference set as canonical JSON} */
  public String set() {
    return text(SET);
  }

  /** {@return the catalogue as canonical JSON, without the reference set} */
  public String catalogue() {
    return text(CATALOGUE);
  }

  /** {@return what was answered, as canonical JSON} */
  public String answer() {
    return text(ANSWER);
  }

  /** {@return the SHA-256 of the question} */
  public String questionHash() {
    return hashOf(QUESTION);
  }

  /** {@return the SHA-256 of the reference set} */
  public String setHash() {
    return hashOf(SET);
  }

  /** {@return the SHA-256 of the catalogue} */
  public String catalogueHash() {
    return hashOf(CATALOGUE);
  }

  /** {@return the SHA-256 of what was answered} */
  public String answerHash() {
    return hashOf(ANSWER);
  }

  /** {@return the SHA-256 of it all: worth keeping elsewhere too, such as on the invoice} */
  public String hash() {
    return hash;
  }

  /** {@return what was answered, in a sentence or two} */
  public String headline() {
    return answered.headline();
  }

  /**
   * {@return what must be shown with the answer, with the first of its proposals where there are some, title and text;
   * the one that defers to codes and makers stands last}
   */
  public List<String> cautions() {
    return answered.cautions().stream().map(Answered.CautionTold::inWords).toList();
  }

  /**
   * Tells what must be shown with any one of the proposals: what is shown with the first, and what is its own.
   *
   * @param proposal which of the proposals, from 1
   * @return the cautions, title and text; the one that defers to codes and makers stands last
   * @throws IllegalArgumentException if there is no such proposal
   */
  public List<String> cautions(int proposal) {
    List<String> all = new ArrayList<>(cautions());
    proposal(proposal)
        .cautions()
        .orElse(List.of())
        .forEach(own -> all.add(Math.max(0, all.size() - 1), own.inWords()));
    return List.copyOf(all);
  }

  /**
   * Tells what any one of the proposals takes beside its parts: clamps, sealant, adapters and the like.
   *
   * @param proposal which of the proposals, from 1
   * @return the lines of its bill of materials that are no parts, with pieces, name, number and price; empty also where
   *     it was kept by a version that kept none
   * @throws IllegalArgumentException if there is no such proposal
   */
  public List<String> bill(int proposal) {
    return proposal(proposal).bill().orElse(List.of()).stream()
        .map(Answered.LineTold::inWords)
        .toList();
  }

  private Answered.PartsTold proposal(int proposal) {
    int count = answered.proposals().size();
    if (proposal < 1 || proposal > count) {
      throw new IllegalArgumentException("proposal must be in [1, " + count + "], was " + proposal
          + "; the answer lists " + count);
    }
    return answered.proposals().get(proposal - 1);
  }

  Answered answered() {
    return answered;
  }

  /**
   * Reads the job that was answered.
   *
   * @return the job with its reference set and its catalogue
   * @throws WrongFileException if this version of the library refuses what was asked; the field is told
   */
  public Job job() throws WrongFileException {
    return job(wholeCatalogue());
  }

  private Map<String, Object> wholeCatalogue() {
    Map<String, Object> catalogue = Document.fields(Canonical.plain(catalogue()));
    catalogue.put(PROFILES, Canonical.plain(set()));
    return catalogue;
  }

  private Job job(Object catalogue) throws WrongFileException {
    Map<String, Object> whole = Document.fields(Canonical.plain(question()));
    whole.put(CATALOGUE, catalogue);
    try {
      return MAPPER.readValue(Canonical.text(whole), Job.class);
    } catch (WrongJsonException e) {
      throw new WrongFileException(QUESTION, e.field(), e.complaint());
    } catch (JsonProcessingException e) {
      throw new WrongFileException(QUESTION, "", e.getOriginalMessage());
    }
  }

  /**
   * Computes the answer again, by this version of the library: the same question, reference set and catalogue.
   *
   * @param today the day of the new answer
   * @return the new answer
   * @throws WrongFileException if this version of the library refuses what was asked; the field is told
   */
  public KeptAnswer again(LocalDate today) throws WrongFileException {
    return again(today, LibraryVersion.ofCore());
  }

  KeptAnswer again(LocalDate today, String version) throws WrongFileException {
    Objects.requireNonNull(today, "today");
    return of(job(), today, version);
  }

  /**
   * Computes the answer again out of another catalogue, such as the one of today.
   *
   * @param other the parts and the reference set to answer with
   * @param today the day of the new answer
   * @return the new answer
   * @throws WrongFileException if this version of the library refuses what was asked, or the question names a part or
   *     profile that is not in {@code other}; the field is told
   */
  public KeptAnswer again(ShopCatalogue other, LocalDate today) throws WrongFileException {
    return again(other, today, LibraryVersion.ofCore());
  }

  KeptAnswer again(ShopCatalogue other, LocalDate today, String version) throws WrongFileException {
    Objects.requireNonNull(other, "other");
    Objects.requireNonNull(today, "today");
    String text;
    try {
      text = MAPPER.writeValueAsString(other);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("every catalogue can be written", e);
    }
    return of(job(Json.read(CATALOGUE, text)), today, version);
  }

  /** Answers are equal if all of their texts are, and the library and the day. */
  @Override
  public boolean equals(Object other) {
    return other instanceof KeptAnswer that && hash.equals(that.hash) && texts.equals(that.texts);
  }

  @Override
  public int hashCode() {
    return hash.hashCode();
  }

  /** {@return the day, the version of the library and the answer in words} */
  @Override
  public String toString() {
    return day + ", airfit " + library + ": " + headline();
  }
}
