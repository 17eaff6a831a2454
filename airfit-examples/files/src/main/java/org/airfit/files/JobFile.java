package org.airfit.files;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.airfit.air.AirState;
import org.airfit.safety.SafetyRules;
import org.airfit.select.Extra;
import org.airfit.select.Layout;
import org.airfit.select.Lubrication;
import org.airfit.select.Objective;
import org.airfit.select.PlantYear;
import org.airfit.select.Requirement;
import org.airfit.select.RunNow;

/** What a job file says, and a job file from what a program knows; docs/job-file.md has the fields. */
public final class JobFile {

  /** The form of job file that is read and written. */
  static final int FORM = 2;

  static final String VERSION = "airfitJob";

  /** The fields of a job in the order in which the documentation tells them. */
  private static final List<String> ORDER = List.of(
      VERSION,
      "job",
      "number",
      "date",
      "customer",
      "catalogue",
      "units",
      "atHand",
      "supply",
      "receiver",
      "line",
      "now",
      "tool",
      "conditions",
      "rules",
      "rankedBy",
      "extras",
      "year");

  private JobFile() {}

  /**
   * Reads a job and the catalogue it names.
   *
   * @param document a JSON file
   * @return the job
   * @throws WrongFileException if a field is missing, misspelt or refused, in the job or in the catalogue
   */
  public static Job read(Document document) throws WrongFileException {
    Field root = Field.of(document);
    requireForm(root);
    return root.build(() -> read(root, document));
  }

  /**
   * Tells what an item of a line is called that has no name: what it is, with a number where that is taken.
   *
   * @param called what it is, with what it leads to behind a splitter, such as "hose to sander"
   * @param taken the names that others have
   * @return a name that no other has, such as "hose 2"
   */
  public static String nameOf(String called, Set<String> taken) {
    return JobLine.free(
        Objects.requireNonNull(called, "called"), Objects.requireNonNull(taken, "taken"));
  }

  /**
   * Reads a job that is answered out of a catalogue which a program has, such as one out of a database.
   *
   * @param document the fields of a job file; {@code airfitJob} and {@code catalogue} may be left out
   * @param catalogue the catalogue, whatever the field {@code catalogue} says
   * @return the job
   * @throws WrongFileException if a field is missing, misspelt or refused
   */
  public static Job read(Document document, ShopCatalogue catalogue) throws WrongFileException {
    Objects.requireNonNull(catalogue, "catalogue");
    Object content = document.content();
    if (content instanceof Map) {
      Map<String, Object> fields = Document.fields(content);
      fields.putIfAbsent(VERSION, FORM);
      fields.putIfAbsent("catalogue", catalogue.name());
      content = toObject(fields);
    }
    Document.Shelf files = document.shelf();
    return read(new Document(document.name(), content, new CatalogueShelf() {
      @Override
      public ShopCatalogue catalogue(String path) {
        return catalogue;
      }

      @Override
      public Document open(String path) throws WrongFileException {
        return files.open(path);
      }
    }));
  }

  /**
   * Puts the fields of a job as its file has them: the number of its form first, the others in the order in which
   * docs/job-file.md lists them. {@link Disk#writeJob} writes them, and so does any JSON library.
   *
   * @param fields the fields, of maps, lists, texts, numbers and truth values
   * @return the same in order; what is no field of a job stands last, and is refused when it is read
   */
  public static Map<String, Object> toObject(Map<String, ?> fields) {
    Map<String, Object> inOrder = new LinkedHashMap<>();
    inOrder.put(VERSION, FORM);
    for (String field : ORDER) {
      if (fields.containsKey(field)) {
        inOrder.put(field, fields.get(field));
      }
    }
    fields.forEach(inOrder::putIfAbsent);
    return inOrder;
  }

  private static void requireForm(Field root) throws WrongFileException {
    Optional<Field> form = root.find(VERSION);
    if (form.isEmpty()) {
      throw root.wrong(FirstForm.whatToChange(root));
    }
    int number = form.get().wholeNumber();
    if (number != FORM) {
      throw form.get()
          .wrong("must be " + FORM + ", the form of job file that is read here, was " + number);
    }
  }

  private static Job read(Field root, Document document) throws WrongFileException {
    String title = root.field("job", "the job in one line").text();
    JobLabel label = JobLabel.of(root);
    String customer = root.field("customer", "whose job it is").text();
    Field place = root.field("catalogue", "the path of a catalogue file, seen from this one");
    TypedUnits units = TypedUnits.in(root, document);
    ShopCatalogue catalogue = catalogue(place, document);
    Optional<Field> hand = root.find("atHand", "the plug at hand and its readings");
    Optional<AtHand> atHand =
        hand.isPresent() ? Optional.of(HandFields.of(hand.get(), catalogue)) : Optional.empty();

    List<String> remarks = new ArrayList<>();
    Field supplied = root.field("supply", "an object such as {\"pressure\": \"90 to 110 psig\"}");
    List<String> assumed = new ArrayList<>();
    AirState around = JobSupply.around(supplied, units.system(), assumed);
    String toolName = "";
    Optional<Requirement.Builder> ofTool = Optional.empty();
    Optional<Field> tool = root.find("tool", "an object with name, air, pressure and inlet");
    if (tool.isPresent()) {
      toolName = tool.get().field("name", "what the tool is").text();
      ofTool = Optional.of(JobTool.of(tool.get(), around, remarks));
    }
    Field list = root.field(
        "line",
        "a list of what stands from the supply to the tool, such as {\"kind\": \"outlet\", …}");
    JobLine line = JobLine.of(list, catalogue, around, remarks);
    Layout layout = line.layout(list);
    Requirement.Builder requirement;
    if (line.lines().isEmpty()) {
      root.field("tool", "an object with name, air, pressure and inlet");
      requirement = ofTool.orElseThrow().layout(layout);
    } else {
      if (tool.isPresent()) {
        throw tool.get()
            .wrong("stands beside the lines of a splitter, each of which tells its tool;"
                + " leave it out, or put it into one of the lines");
      }
      toolName = layout.toolLines().stream()
          .map(each ->
              (each.count() == 1 ? "" : each.count() + " × ") + each.tool().orElseThrow())
          .collect(Collectors.joining(", "));
      requirement = Requirement.forTools(layout);
    }
    Optional<JobReceiver> receiver = JobReceiver.in(root, supplied, around, remarks);
    UsualValues.askOfSupply(
        JobSupply.pressureField(supplied), JobSupply.pressure(supplied), remarks);
    JobSupply supply = JobSupply.tell(
        supplied,
        line.regulator(),
        receiver.flatMap(JobReceiver::to),
        requirement,
        around,
        remarks);
    line.tell(requirement, JobSupply.pressureField(supplied));
    Optional<Field> conditions =
        root.find("conditions", "an object such as {\"place\": \"indoors\"}");
    if (conditions.isPresent()) {
      JobTool.conditions(conditions.get(), catalogue, requirement);
      refuseDry(conditions.get(), layout);
    }
    Map<String, Object> files = new LinkedHashMap<>();
    rules(root, AsFiled.noting(document, files), requirement);
    Optional<Field> ranking = root.find("rankedBy");
    if (ranking.isPresent()) {
      requirement.objective(ranking
          .get()
          .oneOf(
              List.of(Objective.values()),
              order -> order.name().toLowerCase(Locale.ROOT).replace('_', ' ')));
    }
    extras(root, requirement);
    Optional<Field> today = root.find("now", "a list of what is connected to the outlet today");
    Requirement asked = JobSupply.drooping(
        line.regulator(), root.build(requirement::build), units.system(), remarks);
    Optional<RunNow> now = today.isPresent()
        ? Optional.of(NowFields.run(today.get(), catalogue, asked, units.system(), remarks))
        : Optional.empty();
    Optional<PlantYear> year = YearFields.in(root, asked, assumed);
    remarks.addAll(assumed);
    root.requireNothingElse();
    return new Job(
        title,
        label,
        customer,
        toolName,
        catalogue,
        units,
        atHand,
        supply.air(),
        supply.atmosphere(),
        now,
        asked,
        year,
        receiver,
        line.question(),
        remarks,
        Optional.of(new AsFiled(document.content(), files)));
  }

  /** The catalogue that the job names; where it is not there, the complaint is about the name. */
  private static ShopCatalogue catalogue(Field place, Document document) throws WrongFileException {
    try {
      return CatalogueFile.named(place.text(), document.shelf());
    } catch (WrongFileException e) {
      throw e.isMissing() && e.file().endsWith(place.text())
          ? place.wrong("was \"" + place.text() + "\"; there is no such file: " + e.file())
          : e;
    }
  }

  /** Where a lubricator stands in the line the air is not dry. */
  private static void refuseDry(Field conditions, Layout layout) throws WrongFileException {
    Optional<Field> air = conditions.find("air");
    if (layout.hasLubricator()
        && air.isPresent()
        && air.get().text().strip().equals(Lubrication.DRY.toString())) {
      throw air.get()
          .wrong(
              "was dry, but a lubricator stands in the line; type lubricated, or leave the lubricator out");
    }
  }

  /** What is wanted beside what the job needs. */
  private static void extras(Field root, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> wanted = root.find("extras", "a list such as [\"hook\"]");
    if (wanted.isEmpty()) {
      return;
    }
    Set<Extra> extras = EnumSet.noneOf(Extra.class);
    for (Field item : wanted.get().items()) {
      extras.add(item.oneOf(List.of(Extra.values()), Extra::toString));
    }
    requirement.extras(extras);
  }

  /** The rules of a place, federal law if left out, and those of the works. */
  private static void rules(Field root, Document document, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> found = root.find("rules");
    if (found.isEmpty()) {
      return;
    }
    SafetyRules rules = RulesFile.of(found.get().find("place"), found.get().find("own"), document);
    found.get().requireNothingElse();
    requirement.rules(rules);
  }
}
