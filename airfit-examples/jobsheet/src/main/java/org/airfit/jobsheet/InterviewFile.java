package org.airfit.jobsheet;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.airfit.files.Document;
import org.airfit.files.HoseQuestion;
import org.airfit.files.Job;
import org.airfit.files.JobFile;
import org.airfit.files.TypedUnits;
import org.airfit.files.WrongFileException;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.PressureUnit;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolMarking;
import org.airfit.select.Interview;
import org.airfit.select.Subject;
import org.airfit.select.ToolLine;
import org.airfit.select.Topic;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/**
 * The fields of a job file that answers fill, one after the other: the one place that knows which topic is which field.
 *
 * <p>What no field can say (that there is no regulator) is remembered beside them. Immutable.
 */
final class InterviewFile {

  /** What a file calls the uses of a tool, each a field that is true or false. */
  private static final Map<String, String> USES = Map.of(
      "hammers", "hammers",
      "cleans with air", "cleans",
      "sprays paint", "paints",
      "blasts", "blasts",
      "feeds fasteners", "feedsFasteners");

  private static final String NO = "no";
  private static final String TO = " to ";

  private final Map<String, Object> fields;
  private final Map<Topic, String> beside;

  private InterviewFile(Map<String, Object> fields, Map<Topic, String> beside) {
    this.fields = fields;
    this.beside = beside;
  }

  /** Begins with the fields of a file, which may lack any, and the catalogue as it is seen from the file to write. */
  static InterviewFile of(Map<String, Object> start, String catalogue) {
    Map<String, Object> fields = copy(start);
    fields.putIfAbsent("job", "a job at the counter");
    fields.putIfAbsent("customer", "the customer at the counter");
    fields.put("catalogue", catalogue);
    InterviewFile file = new InterviewFile(fields, new EnumMap<>(Topic.class));
    if (file.lines().isEmpty()) {
      file.object("tool").putIfAbsent("name", "the tool");
    }
    return file;
  }

  /** A line to one of several tools. */
  private record Line(String way, Map<String, Object> fields) {

    Map<String, Object> tool() {
      return into(fields.get("tool"));
    }
  }

  /**
   * The lines to tools behind a splitter, and behind a splitter in one of its lines, each by the name that questions
   * give it; none where there is one tool.
   */
  private List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    add(lines, items(), /* times= */ 1, /* number= */ 1);
    return lines;
  }

  /** Adds the lines behind the splitter among items that are there so many times; returns the number of the next. */
  private static int add(List<Line> lines, List<Map<String, Object>> items, int times, int number) {
    int next = number;
    for (Map<String, Object> line : linesOf(items)) {
      int count = times * (line.get("count") instanceof Number many ? many.intValue() : 1);
      List<Map<String, Object>> own = items(line.get("line"));
      if (!linesOf(own).isEmpty()) {
        next = add(lines, own, count, next);
      } else {
        Map<String, Object> tool = tool(line, next);
        lines.add(new Line(
            ToolLine.named(next, count, String.valueOf(tool.get("name")).strip()), line));
        next += count;
      }
    }
    return next;
  }

  /** The lines that a splitter among items has. */
  private static List<Map<String, Object>> linesOf(List<Map<String, Object>> items) {
    List<Map<String, Object>> lines = new ArrayList<>();
    for (Map<String, Object> item : items) {
      if (item.get("lines") instanceof List<?> told) {
        told.stream().filter(Map.class::isInstance).forEach(line -> lines.add(into(line)));
      }
    }
    return lines;
  }

  /** The items of the line and of all lines behind it. */
  private static List<Map<String, Object>> allItems(List<Map<String, Object>> items) {
    List<Map<String, Object>> all = new ArrayList<>(items);
    linesOf(items).forEach(line -> all.addAll(allItems(items(line.get("line")))));
    return all;
  }

  /** The tool of a line, with a name: that of a line which tells none is told now. */
  private static Map<String, Object> tool(Map<String, Object> line, int number) {
    if (!(line.get("tool") instanceof Map)) {
      line.put("tool", new LinkedHashMap<String, Object>());
    }
    Map<String, Object> tool = into(line.get("tool"));
    tool.putIfAbsent("name", "tool " + number);
    return tool;
  }

  /** Whether it has lines to several tools, and lacks something without which nothing can be chosen. */
  boolean lacksOfLines() {
    return !lines().isEmpty() && !isWhole();
  }

  /** What is missing without which nothing can be chosen. */
  List<Subject> missing() {
    List<Subject> missing = new ArrayList<>(missingOfLines());
    for (Topic topic : Topic.values()) {
      if (topic.isNecessary() && !isOfATool(topic) && told(topic).isEmpty()) {
        missing.add(Subject.ofJob(topic));
      }
    }
    return missing;
  }

  private List<Subject> missingOfLines() {
    List<Subject> missing = new ArrayList<>();
    for (Line line : lines()) {
      Map<String, Object> tool = line.tool();
      boolean isMarked = tool.containsKey("marking");
      if (!isMarked && !tool.containsKey("air")) {
        missing.add(Subject.of(Topic.AIR_NEEDED, line.way()));
      }
      if (!isMarked && !tool.containsKey("pressure")) {
        missing.add(Subject.of(Topic.PRESSURE_NEEDED, line.way()));
      }
      if (!tool.containsKey("inlet")) {
        missing.add(Subject.of(Topic.TOOL_INLET, line.way()));
      }
    }
    return missing;
  }

  private static Map<String, Object> copy(Map<?, ?> object) {
    Map<String, Object> copy = new LinkedHashMap<>();
    object.forEach((name, value) -> copy.put(String.valueOf(name), copied(value)));
    return copy;
  }

  private static Object copied(Object value) {
    if (value instanceof Map<?, ?> object) {
      return copy(object);
    }
    if (value instanceof List<?> list) {
      List<Object> items = new ArrayList<>();
      list.forEach(item -> items.add(copied(item)));
      return items;
    }
    return value;
  }

  /** The fields of a job. */
  Map<String, Object> fields() {
    return copy(fields);
  }

  /** Those that are read. */
  Job job(JobReading reading) throws WrongFileException {
    return reading.job(fields());
  }

  /** In which units the customer speaks. */
  UnitSystem units() {
    return TypedUnits.of(Document.of("answers", fields)).system();
  }

  /** The talk that these fields leave to be had. */
  Interview talk(JobReading reading, Interview begun, Set<Subject> notKnown)
      throws WrongFileException {
    Interview talk = begun;
    for (Topic topic : Topic.values()) {
      Optional<String> told = topic == Topic.MEDIUM || (topic.isNecessary() && !isOfATool(topic))
          ? told(topic)
          : Optional.empty();
      if (told.isPresent()) {
        talk = talk.with(topic, told.get());
      }
    }
    if (isWhole()) {
      Job job = job(reading);
      talk = Interview.of(job.requirement(), job.catalogue().parts());
      for (Topic topic : List.of(
          Topic.MEDIUM,
          Topic.USE,
          Topic.WHIP_HOSE,
          Topic.DROPPED,
          Topic.DRAGGED,
          Topic.VENTED,
          Topic.COLDEST,
          Topic.HOTTEST)) {
        Optional<String> told = isOfATool(topic) ? Optional.empty() : told(topic);
        if (told.isPresent()) {
          talk = talk.with(topic, told.get());
        }
      }
      for (Line line : lines()) {
        Optional<String> use = use(line.tool());
        if (use.isPresent()) {
          talk = talk.with(Subject.of(Topic.USE, line.way()), use.get());
        }
        if (line.tool().containsKey("whipHose")) {
          talk = talk.with(
              Subject.of(Topic.WHIP_HOSE, line.way()),
              yesOrNo(String.valueOf(line.tool().get("whipHose"))));
        }
      }
      Optional<String> profile = job.plug().flatMap(Identification::profile).map(PlugProfile::id);
      if (profile.isPresent()) {
        talk = talk.with(Topic.PROFILE, profile.get());
      }
      if (list("conditions", "profilesInUse").filter(List::isEmpty).isPresent()) {
        talk = talk.with(Topic.PROFILES_IN_USE, "only one");
      }
      for (Map.Entry<Topic, String> each : beside.entrySet()) {
        talk = talk.with(each.getKey(), each.getValue());
      }
    }
    for (Subject subject : notKnown) {
      talk = talk.withUnknown(subject);
    }
    return talk;
  }

  /** Whether a topic is asked of one item of the line, by its name. */
  private static boolean isNamed(Topic topic) {
    return topic == Topic.REACH
        || topic == Topic.SETTING
        || topic == Topic.REGULATOR_DROOP
        || topic.isOfPart();
  }

  /** Whether a topic is told by the lines of several tools, and not by the job. */
  private boolean isOfATool(Topic topic) {
    return topic.isOfTool() && !lines().isEmpty();
  }

  /** Whether all that a job file must have is told. */
  boolean isWhole() {
    return missing().isEmpty();
  }

  /** What the fields say of a topic. */
  private Optional<String> told(Topic topic) {
    return switch (topic) {
      case MEDIUM -> text("conditions", "medium");
      case AIR_NEEDED -> text("tool", "air").or(() -> marked(InterviewFile::air));
      case PRESSURE_NEEDED -> text("tool", "pressure").or(() -> marked(InterviewFile::pressure));
      case TOOL_INLET -> text("tool", "inlet");
      case SUPPLY -> text("supply", "pressure");
      case OUTLET -> outlet().map(item -> String.valueOf(item.get("end")));
      case REACH -> reach();
      case USE -> use(object("tool"));
      case WHIP_HOSE -> text("tool", "whipHose").map(InterviewFile::yesOrNo);
      case DROPPED -> text("conditions", "dropped").map(InterviewFile::yesOrNo);
      case DRAGGED -> text("conditions", "dragged").map(InterviewFile::yesOrNo);
      case VENTED -> text("conditions", "vented").map(InterviewFile::yesOrNo);
      case COLDEST -> told("coldest", "hottest");
      case HOTTEST -> told("hottest", "coldest");
      default -> Optional.empty();
    };
  }

  /** A temperature that is told without the other: of one that a shop has the job itself keeps no word. */
  private Optional<String> told(String temperature, String other) {
    return text("conditions", other).isPresent()
        ? Optional.empty()
        : text("conditions", temperature);
  }

  /** What is printed on the tool tells, where that can be read. */
  private Optional<String> marked(Function<ToolMarking, Optional<String>> what) {
    try {
      return text("tool", "marking").map(ToolMarking::parse).flatMap(what);
    } catch (QuantityFormatException unread) {
      return Optional.empty(); // told when the file is read
    }
  }

  private static Optional<String> air(ToolMarking marking) {
    return marking
        .air(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0))
        .map(Range::toString);
  }

  private static Optional<String> pressure(ToolMarking marking) {
    return marking.needed().or(marking::allowed).map(GaugePressure::toString);
  }

  private static String yesOrNo(String flag) {
    return flag.equals("true") ? "yes" : NO;
  }

  private static Optional<String> use(Map<String, Object> tool) {
    boolean isAsked = false;
    for (String field : USES.values()) {
      isAsked |= tool.get(field) != null;
      if (Boolean.TRUE.equals(tool.get(field))) {
        return Optional.empty(); // the job tells it
      }
    }
    return isAsked ? Optional.of("none of these") : Optional.empty();
  }

  private Optional<Map<String, Object>> outlet() {
    return items().stream().filter(item -> "outlet".equals(item.get("kind"))).findFirst();
  }

  /** How far it is, or anything else that stands behind the outlet. */
  private Optional<String> reach() {
    List<Map<String, Object>> items = items();
    return items.isEmpty() || "outlet".equals(items.get(items.size() - 1).get("kind"))
        ? Optional.empty()
        : Optional.of(items.stream()
            .map(item -> item.get("reach"))
            .filter(String.class::isInstance)
            .map(String.class::cast)
            .filter(reach -> !reach.strip().equalsIgnoreCase(HoseQuestion.Asked.LONGEST.toString()))
            .findFirst()
            .orElse("1 m"));
  }

  /**
   * Refuses an answer that would be lost or told twice: about a line or a hose that is not there, and whatever comes
   * before what it speaks of.
   */
  void requireOpen(Subject subject) {
    Topic topic = subject.topic();
    if (subject.of().isPresent()) {
      requireThere(topic, subject.of().get());
      return;
    }
    if (isOfATool(topic)) {
      throw new IllegalArgumentException("line must be told for the " + topic
          + " where there are several tools, was none; name one of: " + String.join("; ", ways()));
    }
    switch (topic) {
      case REACH -> {
        if (reach().isPresent()) {
          throw new IllegalArgumentException(
              "reach must be told once, was told before: the line goes on behind its outlet; leave it out");
        }
        requireTold(topic, Topic.OUTLET, outlet().isPresent());
      }
      case REGULATOR -> {
        requireTold(topic, Topic.SUPPLY, text("supply", "pressure").isPresent());
        requireTold(topic, Topic.HIGHEST, text("supply", "highest").isPresent());
        if (isRegulated()) {
          throw new IllegalArgumentException(
              "regulator must be told once, was told before: the line begins with one; leave it out");
        }
      }
      case REGULATOR_FAILED, REGULATOR_DROOP, SETTING ->
        requireTold(topic, Topic.REGULATOR, isRegulated());
      case HOSE_BORE,
          HOSE_LENGTH,
          AIR_OF_OTHERS,
          HOSE_RATING,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING ->
        throw new IllegalArgumentException("part must be told for the " + topic
            + ", was none; name one of: " + String.join("; ", namesOf(topic)));
      default -> {}
    }
  }

  private void requireThere(Topic topic, String name) {
    List<String> names = isNamed(topic) ? namesOf(topic) : topic.isOfTool() ? ways() : List.of();
    if (!names.contains(name)) {
      throw new IllegalArgumentException("line or hose of the " + topic
          + " must be one of the job, was \"" + name + "\"; "
          + (names.isEmpty() ? "leave it out" : "name one of: " + String.join("; ", names)));
    }
  }

  private static void requireTold(Topic topic, Topic first, boolean isTold) {
    if (!isTold) {
      throw new IllegalArgumentException("answer on the " + topic + " must come behind that on the "
          + first + ", came before it; answer that first");
    }
  }

  private boolean isRegulated() {
    List<Map<String, Object>> items = items();
    return !items.isEmpty() && String.valueOf(items.get(0).get("kind")).contains("regulator");
  }

  private List<String> ways() {
    return lines().stream().map(Line::way).toList();
  }

  /** The names of what a topic may be asked of. */
  private List<String> namesOf(Topic topic) {
    return itemsByName().entrySet().stream()
        .filter(each -> isOf(topic, each.getValue()))
        .map(Map.Entry::getKey)
        .toList();
  }

  private static boolean isOf(Topic topic, Map<String, Object> item) {
    String kind = String.valueOf(item.get("kind"));
    return switch (topic) {
      case SETTING -> kind.contains("regulator");
      case REGULATOR_DROOP -> kind.contains("regulator") && item.get("part") != null;
      case REACH -> kind.equals("hose");
      case AIR_OF_OTHERS -> item.get("othersTake") != null;
      case SOCKET_RATING -> item.get("socket") != null;
      case PLUG_RATING -> item.get("plug") != null;
      case PART_RATING -> !kind.endsWith("hose") && item.get("part") != null;
      default -> kind.endsWith("hose") && item.get("part") != null;
    };
  }

  /** This with an answer. */
  InterviewFile with(Subject subject, String answer) {
    InterviewFile fuller = new InterviewFile(copy(fields), new EnumMap<>(Topic.class));
    fuller.beside.putAll(beside);
    String told = answer.strip();
    if (subject.of().isEmpty()) {
      fuller.tell(subject.topic(), told);
    } else if (isNamed(subject.topic())) {
      fuller.tellItem(subject.of().get(), subject.topic(), told);
    } else {
      fuller.lines().stream()
          .filter(line -> line.way().equals(subject.of().get()))
          .forEach(line -> tell(line.tool(), subject.topic(), told));
    }
    return fuller;
  }

  /** Tells a hose or a regulator what was answered of it, by its name. */
  private void tellItem(String name, Topic topic, String answer) {
    Map<String, Object> item = itemsByName().getOrDefault(name, new LinkedHashMap<>());
    switch (topic) {
      case SETTING -> item.put("set", answer);
      case REGULATOR_DROOP -> item.put("measuredDroop", higher(answer));
      case AIR_OF_OTHERS -> item.put("othersTake", higher(answer));
      case HOSE_BORE -> tellPart(item, "part", "bore", "measuredBore", lower(answer));
      case HOSE_LENGTH -> tellPart(item, "part", "length", "measuredLength", answer);
      case HOSE_RATING, PART_RATING -> tellPart(item, "part", "rated", "rated", lower(answer));
      case SOCKET_RATING -> tellPart(item, "socket", "rated", "socketRated", lower(answer));
      case PLUG_RATING -> tellPart(item, "plug", "rated", "plugRated", lower(answer));
      default -> item.put("reach", answer);
    }
  }

  /** Tells what was read on a part: among its data where it has some, else beside its id or the words for it. */
  private static void tellPart(
      Map<String, Object> item, String part, String among, String beside, String answer) {
    if (item.get(part) instanceof Map) {
      into(item.get(part)).put(among, answer);
    } else {
      item.put(beside, answer);
    }
  }

  /** The items of the line and of all lines behind it, each by its name. */
  private Map<String, Map<String, Object>> itemsByName() {
    Map<String, Map<String, Object>> byName = new LinkedHashMap<>();
    put(byName, items(), "");
    return byName;
  }

  /** Puts the items of a line and of all lines behind it. */
  private static void put(
      Map<String, Map<String, Object>> byName, List<Map<String, Object>> items, String where) {
    for (Map<String, Object> item : items) {
      put(byName, item, where);
      for (Map<String, Object> line : linesOf(List.of(item))) {
        List<Map<String, Object>> own = items(line.get("line"));
        Object goal = linesOf(own).isEmpty()
            ? into(line.get("tool")).get("name")
            : own.get(own.size() - 1).get("name");
        put(byName, own, goal == null ? "" : " to " + String.valueOf(goal).strip());
      }
    }
  }

  /** Puts an item under the name that it has, or that the reader of the file gives it. */
  private static void put(
      Map<String, Map<String, Object>> byName, Map<String, Object> item, String where) {
    Object told = item.get("name");
    byName.put(
        told == null
            ? JobFile.nameOf(item.get("kind") + where, byName.keySet())
            : String.valueOf(told).strip(),
        item);
  }

  /** Tells a tool what was answered of it. */
  private static void tell(Map<String, Object> tool, Topic topic, String answer) {
    switch (topic) {
      case AIR_NEEDED -> tool.put("air", answer);
      case PRESSURE_NEEDED -> tool.put("pressure", answer);
      case DUTY -> tool.put("duty", lower(answer).strip());
      case EXACT_AIR -> {
        unmark(tool);
        tool.remove("duty");
        tool.put("air", higher(answer));
      }
      case EXACT_PRESSURE -> tool.put("pressure", higher(answer));
      case TOOL_INLET -> tool.put("inlet", answer);
      case USE -> USES.forEach((use, field) -> tool.put(field, use.equalsIgnoreCase(answer)));
      case WHIP_HOSE -> tool.put("whipHose", answer.equalsIgnoreCase("yes"));
      case BLOCKED_NOZZLE -> tool.put("atBlockedNozzle", higher(answer));
      default -> tool.put("notAbove", lower(answer));
    }
  }

  /** Tells beside each other what is printed on a tool: its air is told otherwise now. */
  private static void unmark(Map<String, Object> tool) {
    if (!(tool.get("marking") instanceof String printed)) {
      return;
    }
    ToolMarking marking = ToolMarking.parse(printed);
    boolean tellsAir = marking
        .air(AbsolutePressure.STANDARD_ATMOSPHERE, Temperature.ofCelsius(20.0))
        .isPresent();
    if (tellsAir) {
      PressureUnit unit =
          printed.toLowerCase(Locale.ROOT).contains("psi") ? PressureUnit.PSI : PressureUnit.BAR;
      tool.remove("marking");
      if (marking.isAllowedOfRange()) { // nobody told whether the end of the range is a limit
        tool.put(
            "marking",
            number(marking.needed().orElseThrow(), unit) + "-"
                + marking.allowed().orElseThrow().format(unit));
        return;
      }
      marking.needed().ifPresent(needed -> tool.putIfAbsent("pressure", needed.format(unit)));
      marking.allowed().ifPresent(most -> tool.putIfAbsent("notAbove", most.format(unit)));
    }
  }

  private static String number(GaugePressure pressure, PressureUnit unit) {
    String printed = pressure.format(unit);
    return printed.substring(0, printed.indexOf(' '));
  }

  private void tell(Topic topic, String answer) {
    boolean isYes = answer.equalsIgnoreCase("yes");
    switch (topic) {
      case MEDIUM -> object("conditions").put("medium", answer);
      case AIR_NEEDED,
          PRESSURE_NEEDED,
          TOOL_INLET,
          DUTY,
          EXACT_AIR,
          EXACT_PRESSURE,
          USE,
          WHIP_HOSE,
          BLOCKED_NOZZLE,
          TOOL_RATING -> tell(object("tool"), topic, answer);
      case SETTING -> items().get(0).put("set", answer);
      case DRYER -> object("supply").put("dryer", isYes);
      case HOSE_BORE,
          HOSE_LENGTH,
          AIR_OF_OTHERS,
          HOSE_RATING,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING -> {} // told of a part by its name
      case SUPPLY -> object("supply").put("pressure", answer);
      case OUTLET -> tellOutlet(answer);
      case REACH -> tellReach(answer);
      case HIGHEST, RELIEF_VALVE -> object("supply").put("highest", higher(answer));
      case REGULATOR -> {
        if (isYes) {
          tellRegulator();
        } else {
          beside.put(topic, answer);
        }
      }
      case REGULATOR_FAILED -> items().get(0).put("ifFails", higher(answer));
      case REGULATOR_DROOP -> items().get(0).put("droop", higher(answer));
      case PLACE -> object("conditions").put("place", answer.toLowerCase(Locale.ROOT));
      case CLEANER ->
        object("conditions").put("place", "wash down with " + answer.toLowerCase(Locale.ROOT));
      case AIR -> object("conditions").put("air", answer.toLowerCase(Locale.ROOT));
      case DROPPED -> object("conditions").put("dropped", isYes);
      case DRAGGED -> object("conditions").put("dragged", isYes);
      case VENTED -> object("conditions").put("vented", isYes);
      case PROFILE -> tellProfile(answer);
      case PROFILES_IN_USE ->
        object("conditions")
            .put(
                "profilesInUse",
                answer.equalsIgnoreCase("only one")
                    ? List.of()
                    : List.of(answer.split("\\s*,\\s*", -1)));
      case COLDEST -> object("conditions").put("coldest", lower(answer));
      case HOTTEST -> object("conditions").put("hottest", higher(answer));
    }
  }

  private void tellOutlet(String end) {
    List<Object> line = line();
    Optional<Map<String, Object>> outlet = outlet();
    if (outlet.isPresent()) {
      outlet.get().put("end", end);
    } else {
      line.add(object("kind", "outlet", "end", end));
    }
  }

  /** The layout of most jobs: a coupling, a hose, a coupling. */
  private void tellReach(String reach) {
    List<Object> line = line();
    line.add(object("kind", "coupling", "name", "coupling at the outlet"));
    line.add(object("kind", "hose", "reach", reach));
    line.add(object("kind", "coupling", "name", "coupling at the tool"));
  }

  /** What the gauge shows is what a regulator holds, and what can stand in the line stands in front of it. */
  private void tellRegulator() {
    Map<String, Object> supply = object("supply");
    String gauge = String.valueOf(supply.get("pressure"));
    String inFront = String.valueOf(supply.get("highest"));
    line().add(0, object("kind", "regulator", "set", higher(gauge)));
    supply.put("pressure", gauge.contains(TO) ? lower(gauge) + TO + inFront : inFront);
  }

  private void tellProfile(String id) {
    if (id.equalsIgnoreCase("another one")) {
      beside.put(Topic.PROFILE, id);
      object("atHand")
          .put("where", "the customer's; its profile is none of those of the catalogue");
      return;
    }
    for (Map<String, Object> item : allItems(items())) {
      if ("coupling".equals(item.get("kind"))) {
        item.put("profile", id);
      }
    }
  }

  /** This with what was read on a plug. */
  InterviewFile withReading(String instrument, String dimension, String length) {
    InterviewFile fuller = new InterviewFile(copy(fields), new EnumMap<>(Topic.class));
    fuller.beside.putAll(beside);
    Map<String, Object> hand = fuller.object("atHand");
    hand.putIfAbsent("where", "the customer's, measured at the counter");
    hand.put("instrument", instrument);
    if (!(hand.get("readings") instanceof Map)) {
      hand.put("readings", new LinkedHashMap<String, Object>());
    }
    into(hand.get("readings")).put(dimension, length);
    return fuller;
  }

  private static Map<String, Object> object(String... pairs) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      object.put(pairs[i], pairs[i + 1]);
    }
    return object;
  }

  /** An object among the fields, put there where it is missing. */
  private Map<String, Object> object(String name) {
    if (!(fields.get(name) instanceof Map)) {
      fields.put(name, new LinkedHashMap<String, Object>());
    }
    return into(fields.get(name));
  }

  @SuppressWarnings("unchecked") // copy() makes every object one with names
  private static Map<String, Object> into(@Nullable Object object) {
    return (Map<String, Object>) Objects.requireNonNull(object, "object");
  }

  private Optional<String> text(String object, String field) {
    return fields.get(object) instanceof Map<?, ?> found && found.get(field) != null
        ? Optional.of(String.valueOf(found.get(field)))
        : Optional.empty();
  }

  private Optional<List<?>> list(String object, String field) {
    return fields.get(object) instanceof Map<?, ?> found && found.get(field) instanceof List<?> list
        ? Optional.of(list)
        : Optional.empty();
  }

  @SuppressWarnings("unchecked") // copy() makes every list one of these
  private List<Object> line() {
    if (!(fields.get("line") instanceof List)) {
      fields.put("line", new ArrayList<Object>());
    }
    return (List<Object>) fields.get("line");
  }

  private List<Map<String, Object>> items() {
    return items(fields.get("line"));
  }

  private static List<Map<String, Object>> items(@Nullable Object told) {
    List<Map<String, Object>> items = new ArrayList<>();
    if (told instanceof List<?> line) {
      for (Object item : line) {
        if (item instanceof Map) {
          items.add(into(item));
        }
      }
    }
    return items;
  }

  /** Of "90 to 110 psig" the higher end, with its unit; of one value that value. */
  private static String higher(String text) {
    int to = text.indexOf(TO);
    return to < 0 ? text : text.substring(to + TO.length()).strip();
  }

  /** Of "90 to 110 psig" the lower end, with its own unit or that of the higher. */
  private static String lower(String text) {
    int to = text.indexOf(TO);
    if (to < 0) {
      return text;
    }
    String low = text.substring(0, to).strip();
    boolean hasUnit = low.chars().anyMatch(Character::isLetter) || low.contains("°");
    String high = higher(text);
    int unit = 0;
    while (unit < high.length() && "+-−0123456789.,/ ".indexOf(high.charAt(unit)) >= 0) {
      unit++;
    }
    return hasUnit ? low : low + " " + high.substring(unit);
  }
}
