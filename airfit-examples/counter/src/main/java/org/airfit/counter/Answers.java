package org.airfit.counter;

import java.sql.SQLException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.calls.Calls;
import org.airfit.calls.RefusedException;
import org.airfit.counter.stock.Reservation;
import org.airfit.counter.stock.ReserveAnswer;
import org.airfit.counter.stock.Shelf;
import org.airfit.counter.stock.Stock;
import org.airfit.counter.stock.StockLevel;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.NetworkFile;
import org.airfit.files.NetworkJob;
import org.airfit.files.Printable;
import org.airfit.files.Refusal;
import org.airfit.files.WrongFileException;
import org.airfit.jobsheet.NetworkSheet;
import org.airfit.jobsheet.NetworkText;
import org.airfit.safety.Medium;
import org.jspecify.annotations.Nullable;

/** What is answered, whoever asks in whatever way. */
final class Answers implements Answering {

  private static final System.Logger LOG = System.getLogger("org.airfit.counter.answers");

  private static final String CATALOGUE = "catalogue";
  private static final String NETWORK_FILE = "network.csv";
  private static final String SET = "set";
  private static final String MEDIUM = "medium";
  private static final String WHOLE = "whole";
  private static final String FILE = "file";
  private static final String ONLY = "only";

  private final Stock stock;
  private final Shelf shelf;
  private final House house;

  Answers(Stock stock, Shelf shelf) {
    this.stock = stock;
    this.shelf = shelf;
    this.house = new House(stock);
  }

  @Override
  public Answer answer(Endpoint endpoint, String word, Map<String, Object> body) throws Problem {
    try {
      return switch (endpoint) {
        case HEALTH -> ok(Map.of("status", "up", "stockVersion", stock.version()));
        case CATALOGUE -> ok(house.now().file());
        case STOCK -> ok(level(word));
        case IDENTIFY, MATING, RUN, SELECT -> ok(computed(endpoint, body));
        case NETWORK -> ok(network(body));
        case DAY -> ok(desk("day", body));
        case DIAGNOSIS -> ok(desk("diagnosis", body));
        case WATER -> ok(desk("water", body));
        case LEAKS -> ok(desk("leaks", body));
        case INVENTORY -> ok(desk("inventory", body));
        case PRICE_LIST -> ok(desk("priceList", body));
        case CARD -> ok(cards(body));
        case CONDENSATE -> ok(desk("condensate", body));
        case LEAK -> ok(desk("leak", body));
        case INTERVIEW -> ok(NextQuestions.answer(body, house));
        case RESERVE -> reserve(body);
        case RESERVATION -> ok(reservation(shelf.find(word)));
        case SELL -> ended(body, Reservation.State.SOLD, shelf.sell(word));
        case RELEASE -> ended(body, Reservation.State.RELEASED, shelf.release(word));
        case PAGE, METRICS, OPENAPI -> throw new IllegalStateException(endpoint + " has no work");
      };
    } catch (RefusedException e) {
      String besides = besides(endpoint, body, e);
      boolean isWholeJob =
          endpoint == Endpoint.SELECT && e.file().isEmpty() && e.field().isEmpty();
      throw new Problem(422, e.file().isEmpty() ? "field" : "file", told(e) + besides)
          .with("field", isWholeJob ? "job" : e.field())
          .with("file", e.file())
          .with("accepted", e.accepted() + besides);
    } catch (WrongFileException e) {
      throw new Problem(422, "file", String.valueOf(e.getMessage()))
          .with("field", e.place())
          .with("file", e.file())
          .with("accepted", e.accepted());
    } catch (SQLException | House.StockAwayException e) {
      throw away(e);
    }
  }

  /** Asks one of each before others do: the first answers of a program are slow. */
  void warmUp() {
    for (Endpoint endpoint : List.of(Endpoint.CATALOGUE, Endpoint.MATING, Endpoint.IDENTIFY)) {
      try {
        answer(
            endpoint,
            "",
            endpoint == Endpoint.MATING
                ? Map.of("one", "1/4 NPT male", "other", "G 1/4 female")
                : Map.of());
      } catch (Problem e) {
        LOG.log(System.Logger.Level.DEBUG, "whoever asks the same is told the same", e);
      }
    }
  }

  /** The fields that a question over HTTP has beside those of its call, for a complaint about an unknown one. */
  private static String besides(
      Endpoint endpoint, Map<String, Object> body, RefusedException refused) {
    boolean isUnknown = refused.file().isEmpty()
        && body.containsKey(refused.field())
        && told(refused).startsWith(refused.field() + ": is no field here; accepted: ");
    return switch (endpoint) {
      case IDENTIFY, MATING, RUN -> isUnknown ? ", " + MEDIUM + ", " + WHOLE : "";
      case SELECT -> isUnknown ? ", " + WHOLE : "";
      default -> "";
    };
  }

  private static String told(RefusedException refused) {
    return String.valueOf(refused.getMessage());
  }

  private static Problem away(Exception cause) {
    return new Problem(
        503,
        "stock",
        "The stock does not answer, or holds no shop yet; try again, or tell who runs it.",
        cause);
  }

  private static Answer ok(Map<String, Object> object) {
    return new Answer(200, object);
  }

  /** What the calls of the page answer; of that what a till needs, unless the whole is wanted. */
  private Map<String, Object> computed(Endpoint endpoint, Map<String, Object> body)
      throws Problem, RefusedException, SQLException, WrongFileException {
    Map<String, Object> asked = new LinkedHashMap<>(body);
    Object whole = asked.remove(WHOLE);
    if (whole != null && !(whole instanceof Boolean)) {
      throw Problem.field(WHOLE, "is no truth value", "true, false");
    }
    if (endpoint != Endpoint.SELECT) {
      Optional<Refusal> refusal = refusal(asked);
      if (refusal.isPresent()) {
        return refused(refusal.get());
      }
      requireWord(
          asked.remove(MEDIUM)); // then it is compressed air, which every call takes for granted
    }
    Map<String, Object> answer = switch (endpoint) {
      case IDENTIFY -> identify(asked);
      case RUN -> run(asked);
      case SELECT -> select(asked);
      default -> Calls.answer("willItGo", asked);
    };
    return Boolean.TRUE.equals(whole) ? answer : Plainly.forTill(answer);
  }

  /** What is told as the medium and is no word may mean another medium. */
  private static void requireWord(@Nullable Object medium) throws Problem {
    if (medium != null && !(medium instanceof String word && !word.isBlank())) {
      throw Problem.field(
          MEDIUM,
          medium instanceof String ? "is blank" : "is no text",
          Medium.COMPRESSED_AIR.toString());
    }
  }

  /** Looks whether a question, or the set in it, is of anything but compressed air. */
  private static Optional<Refusal> refusal(Map<String, Object> asked) {
    Optional<Refusal> refusal = Refusal.of(Document.of("question", asked));
    if (refusal.isPresent() || !asked.containsKey(SET)) {
      return refusal;
    }
    Object set = Objects.requireNonNull(asked.get(SET), SET);
    try {
      return Refusal.of(Document.of(SET, set instanceof String text ? read(text) : set));
    } catch (WrongFileException e) {
      return Optional.empty(); // whoever reads it for the answer tells what is wrong
    }
  }

  private static Object read(String text) throws WrongFileException {
    return text.stripLeading().startsWith("{") || text.startsWith("\ufeff{")
        ? Json.read("set.json", text)
        : Csv.read("set.csv", text);
  }

  private static Map<String, Object> refused(Refusal refusal) {
    Map<String, Object> answer = new LinkedHashMap<>();
    answer.put("kind", "refused");
    answer.put("headline", refusal.reason());
    answer.put("cautions", Plainly.cautionsOf(refusal));
    return answer;
  }

  /** The profiles of the shop are compared with, where no others are told. */
  private Map<String, Object> identify(Map<String, Object> body)
      throws RefusedException, SQLException, WrongFileException {
    Map<String, Object> asked = new LinkedHashMap<>(body);
    if (!asked.containsKey(SET)) {
      asked.put(SET, house.set());
    }
    return Calls.answer("identify", asked);
  }

  /** The parts of the shop are known by their ids, where no others are told. */
  private Map<String, Object> run(Map<String, Object> body)
      throws Problem, RefusedException, SQLException, WrongFileException {
    Map<String, Object> asked = new LinkedHashMap<>(body);
    Map<String, String> named = new LinkedHashMap<>();
    if (asked.get("elements") instanceof List<?> elements) {
      for (int i = 0; i < elements.size(); i++) {
        if (elements.get(i) instanceof Map<?, ?> fields
            && fields.get("part") instanceof String id) {
          named.putIfAbsent(id, "elements[" + (i + 1) + "].part");
        }
      }
    }
    if (!named.isEmpty() && !asked.containsKey(CATALOGUE)) {
      Map<String, Object> some = house.only(named.keySet());
      requireThere(named, some);
      asked.put(CATALOGUE, some);
    }
    return Calls.answer("run", asked);
  }

  /** A catalogue of those parts alone that are named would be said to have no others. */
  private static void requireThere(Map<String, String> named, Map<String, Object> some)
      throws Problem {
    Set<String> missing = new LinkedHashSet<>(named.keySet());
    if (some.get("parts") instanceof List<?> parts) {
      for (Object part : parts) {
        if (part instanceof Map<?, ?> fields) {
          missing.remove(String.valueOf(fields.get("id")));
        }
      }
    }
    for (String id : missing) {
      throw Problem.field(
          String.valueOf(named.get(id)),
          "\"" + Printable.line(id) + "\" is no part of the stock that air goes through",
          "the id of one of the parts in /stock/catalogue.json");
    }
  }

  /** The parts are chosen from the stock of the shop, where the job names no other catalogue. */
  private Map<String, Object> select(Map<String, Object> body) throws RefusedException {
    AskedFor asked = AskedFor.ofShop(body);
    House.Files files = house.files(asked.job());
    Map<String, Object> answer =
        new LinkedHashMap<>(Calls.answer("select", asked.question(), files));
    files.tellLeftOut(answer);
    return answer;
  }

  /** What is asked at a desk; text and page come only where they are asked for. */
  private Map<String, Object> desk(String call, Map<String, Object> body) throws RefusedException {
    Map<String, Object> asked = new LinkedHashMap<>(body);
    asked.putIfAbsent(ONLY, List.of());
    House.Files files = house.files(Objects.requireNonNullElse(body.get(FILE), Map.of()));
    Map<String, Object> answer = new LinkedHashMap<>(Calls.answer(call, asked, files));
    files.tellLeftOut(answer);
    return answer;
  }

  /** The cards of a job, which has the parts of the shop where it names no other catalogue. */
  private Map<String, Object> cards(Map<String, Object> body) throws RefusedException {
    Map<String, Object> question = new LinkedHashMap<>();
    body.forEach((field, value) -> question.put(field.equals(FILE) ? "job" : field, value));
    Map<String, Object> asked = new LinkedHashMap<>();
    AskedFor.ofShop(question)
        .question()
        .forEach((field, value) -> asked.put(field.equals("job") ? FILE : field, value));
    return desk("cards", asked);
  }

  private static Map<String, Object> network(Map<String, Object> body)
      throws Problem, WrongFileException {
    requireOnly(body, Set.of("network"));
    if (!(body.get("network") instanceof String text)) {
      throw Problem.field(
          "network", "is missing or no text", "the text of a network file, docs/network-file.md");
    }
    Document document = Document.of(NETWORK_FILE, Csv.read(NETWORK_FILE, text));
    Optional<Refusal> refusal = Refusal.of(document);
    Map<String, Object> answer = new LinkedHashMap<>();
    if (refusal.isPresent()) {
      answer.putAll(refused(refusal.get()));
      answer.put("title", refusal.get().title());
      answer.put("customer", refusal.get().customer());
      answer.put("text", "");
      return answer;
    }
    NetworkJob job = NetworkFile.read(document);
    NetworkSheet sheet = NetworkSheet.of(job);
    answer.put("kind", sheet.all().<String>fold(solved -> "solved", none -> "noSolution"));
    answer.put("headline", NetworkText.headline(sheet));
    answer.put("title", job.title());
    answer.put("customer", job.customer());
    answer.put("text", NetworkText.of(sheet));
    answer.put("cautions", Plainly.cautions(sheet.cautions()));
    return answer;
  }

  private Map<String, Object> level(String number) throws SQLException, Problem {
    StockLevel level = shelf
        .level(number)
        .orElseThrow(
            () -> new Problem(404, "no-such-article", "The shop has no article of this number."));
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("number", level.number());
    told.put("quantity", level.quantity());
    told.put("reserved", level.reserved());
    told.put("available", level.available());
    return told;
  }

  private Answer reserve(Map<String, Object> body) throws SQLException, Problem {
    requireOnly(body, Set.of("reference", "pieces"));
    if (!(body.get("reference") instanceof String reference)) {
      throw Problem.field(
          "reference", "is missing or no text", "a text of 1 to 100 letters of your own");
    }
    if (!isStep(reference)) {
      throw Problem.field(
          "reference",
          "cannot stand in a path, by which it is found again",
          "a text of 1 to 100 letters without / \\ % and control characters, other than . and ..");
    }
    if (!(body.get("pieces") instanceof Map<?, ?> pieces)) {
      throw Problem.field("pieces", "is missing or no object", "an object such as {\"S-10\": 1}");
    }
    Map<String, Integer> wanted = new LinkedHashMap<>();
    for (Map.Entry<?, ?> each : pieces.entrySet()) {
      if (!(each.getValue() instanceof Integer count)) {
        throw Problem.field(
            "pieces." + each.getKey(), "is no whole number", "a whole number from 1");
      }
      wanted.put(String.valueOf(each.getKey()), count);
    }
    ReserveAnswer answer;
    try {
      answer = shelf.reserve(reference, wanted);
    } catch (IllegalArgumentException e) {
      String message = String.valueOf(e.getMessage());
      throw new Problem(422, "field", message)
          .with("field", message.startsWith("reference") ? "reference" : "pieces");
    }
    if (answer instanceof ReserveAnswer.Held held) {
      return new Answer(held.isNew() ? 201 : 200, told(held.reservation()));
    }
    throw answer.<Problem>fold(
        held -> new Problem(500, "fault", "Something failed here."),
        few -> new Problem(
            409,
            "too-few-pieces",
            few.shortages().stream()
                .map(Answers::inWords)
                .reduce("Nothing is reserved:", (before, next) -> before + " " + next)),
        taken -> new Problem(
            409,
            "reference-taken",
            "Nothing is reserved: this reference belongs to a reservation of other pieces."));
  }

  /** Whether a text can be one step of a path. */
  private static boolean isStep(String text) {
    return text.chars().noneMatch(c -> "/\\%".indexOf(c) >= 0 || Character.isISOControl(c))
        && !text.equals(".")
        && !text.equals("..");
  }

  private static String inWords(ReserveAnswer.Shortage shortage) {
    return shortage.available().isEmpty()
        ? "There is no article " + shortage.number() + "."
        : shortage.wanted() + " of " + shortage.number() + " wanted, "
            + shortage.available().get() + " available.";
  }

  private static Map<String, Object> reservation(Optional<Reservation> reservation) throws Problem {
    return told(reservation.orElseThrow(() ->
        new Problem(404, "no-such-reservation", "There is no reservation of this reference.")));
  }

  private static Answer ended(
      Map<String, Object> body, Reservation.State wanted, Optional<Reservation> reservation)
      throws Problem {
    requireOnly(body, Set.of());
    Map<String, Object> told = reservation(reservation);
    if (reservation.orElseThrow().state() != wanted) {
      throw new Problem(
          409,
          "ended-before",
          "This reservation has ended before: it is " + told.get("state") + ".");
    }
    return ok(told);
  }

  private static Map<String, Object> told(Reservation reservation) {
    Map<String, Object> told = new LinkedHashMap<>();
    told.put("reference", reservation.reference());
    told.put("state", reservation.state().name().toLowerCase(Locale.ROOT));
    told.put("pieces", new LinkedHashMap<>(reservation.pieces()));
    return told;
  }

  private static void requireOnly(Map<String, Object> body, Set<String> known) throws Problem {
    for (String name : body.keySet()) {
      if (!known.contains(name)) {
        throw Problem.field(name, "is no field here", String.join(", ", known));
      }
    }
  }
}
