package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.line.ConduitRange;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NearWord;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.select.DeviceKind;
import org.airfit.select.Layout;
import org.airfit.select.Part;
import org.airfit.select.RegulatorKind;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.airfit.select.ToolLine;
import org.airfit.working.UnitSystem;
import org.jspecify.annotations.Nullable;

/** The line of a job: what stands between the supply and the tool, in the order the air goes. */
final class JobLine {

  private static final String PIPE = "pipe";
  private static final String OUTLET = "outlet";
  private static final String REGULATOR = "regulator";
  private static final String FILTER_REGULATOR = "filter regulator";
  private static final String COUPLING = "coupling";
  private static final String WHIP_HOSE = "whip hose";
  private static final String NAME = "name";
  private static final String PART = "part";
  private static final String REACH = "reach";
  private static final String BORE = "bore";
  private static final String RATED = "rated";

  /** The bore of a hose that is there, as it was measured. */
  private static final String TRUE_BORE = "measuredBore";

  /** The same of its length. */
  private static final String TRUE_LENGTH = "measuredLength";

  private static final String TRUE_DROOP = "measuredDroop";

  private static final String AT_MOST = "atMost";
  private static final String ACCEPTED_REACH =
      "how long it must be at least, such as \"10 m\", \"25 ft\" or \"25 to 30 ft\"; \"longest\" asks how long it may"
          + " be";

  private static final String ACCEPTED_AT_MOST =
      "how long it may be at most, such as \"6 ft\"; a whip hose is at most 10 ft unless told";

  private static final String ACCEPTED_BORE =
      "the bore that it is named by, such as \"3/8 in\"; \"least\" asks for the least that does";

  /** The reach of a hose while it is asked how long it may be: every hose has that. */
  private static final Length ANY = Length.of(0.1, LengthUnit.METRE);

  /** What is accepted as the tool of a line, and as the lines behind a splitter. */
  private static final String TOOL = "an object with name, air, pressure and inlet";

  private static final String LINES =
      "a list such as [{\"count\": 3, \"tool\": {…}, \"line\": […]}]";

  /** What is accepted as the pressure behind a failed regulator. */
  static final String IF_FAILS =
      "what its maker says stands behind a failed one, such as \"8 bar(g)\"";

  private final PartsThere parts;
  private final ShopCatalogue catalogue;
  private final List<String> remarks;
  private final AirState around;
  private final Map<String, String> placeOf;

  /** What a slot is called that has no name of its own: behind its kind. */
  private final String where;

  private final List<Slot> slots = new ArrayList<>();
  private @Nullable Entry regulator;
  private final List<Entry> pipes = new ArrayList<>();
  private @Nullable End outlet;
  private final List<ToolLine> lines = new ArrayList<>();
  private @Nullable HoseQuestion question;

  /** An item of the line that core has no slot for, with its name. */
  record Entry(Field item, String name) {}

  private JobLine(ShopCatalogue catalogue, AirState around, List<String> remarks) {
    this.catalogue = catalogue;
    this.parts = new PartsThere(catalogue, remarks);
    this.around = around;
    this.remarks = remarks;
    this.placeOf = new LinkedHashMap<>();
    this.where = "";
  }

  /** A line behind a splitter: names must differ from those of all others. */
  private JobLine(JobLine before, Optional<Field> goal) throws WrongFileException {
    this.catalogue = before.catalogue;
    this.parts = before.parts;
    this.around = before.around;
    this.remarks = before.remarks;
    this.placeOf = before.placeOf;
    this.where = goal.isPresent() ? " to " + goal.get().text().strip() : "";
    this.outlet = before.outlet;
    this.question = before.question;
  }

  /** Reads the list. */
  static JobLine of(Field list, ShopCatalogue catalogue, AirState around, List<String> remarks)
      throws WrongFileException {
    JobLine line = new JobLine(catalogue, around, remarks);
    for (Field item : list.items()) {
      line.add(item);
    }
    if (line.outlet == null) {
      throw list.wrong("holds no outlet; say where the piping ends, such as"
          + " {\"kind\": \"outlet\", \"end\": \"1/2 NPT female\"}, behind the last pipe");
    }
    if (line.slots.isEmpty()) {
      throw list.wrong("holds nothing behind the outlet; say what stands there or shall, such as"
          + " {\"kind\": \"coupling\"}, {\"kind\": \"hose\", \"reach\": \"10 m\"}");
    }
    return line;
  }

  /** What an item can be. */
  static List<String> kinds() {
    List<String> kinds =
        new ArrayList<>(List.of(PIPE, OUTLET, COUPLING, PartFields.HOSE, WHIP_HOSE));
    kinds.addAll(PartFields.regulators());
    kinds.add(PartFields.SPLITTER);
    for (DeviceKind device : DeviceKind.values()) {
      kinds.add(device.toString());
    }
    return kinds;
  }

  /** The regulator that stands first of all: the supply is what it holds. */
  Optional<Entry> regulator() {
    return Optional.ofNullable(regulator);
  }

  /** What is asked of a hose of the line. */
  Optional<HoseQuestion> question() {
    return Optional.ofNullable(question);
  }

  /** Tells the pipes, the outlet and what stands behind it. */
  void tell(Requirement.Builder requirement, Field supply) throws WrongFileException {
    for (Entry pipe : pipes) {
      ConduitRange conduit = FlowFields.conduitRange(pipe.item());
      FlowFields.remarkOnBore(pipe.item(), conduit, remarks);
      FlowFields.remarkOnSize(pipe.item(), conduit, remarks);
      pipe.item().requireNothingElse();
      requirement.pipe(pipe.name(), conduit);
    }
    requirement.outlet(Objects.requireNonNull(outlet));
    remarkOnSettings(supply);
  }

  /** A regulator, or the supply, with how a sentence calls it, what it is set to and what to look after. */
  private record Setting(String called, Range<GaugePressure> set, String look) {

    static Setting of(String name, Range<GaugePressure> set) {
      return new Setting("\"" + name + "\"", set, "Look whether the two are exchanged.");
    }
  }

  /** A regulator holds no more than stands in front of it: one that is set higher never regulates. */
  private void remarkOnSettings(Field supply) throws WrongFileException {
    Setting inFront = regulator == null
        ? new Setting(
            "the supply of " + supply.text().strip(),
            supply.range(GaugePressure::parse),
            "Look whether it is wanted, and what it is set to.")
        : Setting.of(regulator.name(), set(regulator.item()));
    remarkOnSettings(inFront, slots, lines);
  }

  private void remarkOnSettings(Setting before, List<Slot> inRow, List<ToolLine> behind) {
    Setting inFront = before;
    for (Slot slot : inRow) {
      if (!(slot instanceof Slot.Regulated regulated)) {
        continue;
      }
      if (regulated.setRange().least().compareTo(inFront.set().most()) > 0) {
        remarks.add("\"" + regulated.name() + "\" in " + placeOf.get(regulated.name())
            + " is set higher than " + inFront.called()
            + " in front of it: it never has so much to hold, and does nothing. " + inFront.look());
      } else {
        inFront = Setting.of(regulated.name(), regulated.setRange());
      }
    }
    for (ToolLine line : behind) {
      remarkOnSettings(inFront, line.slots(), line.lines());
    }
  }

  /** What stands behind the outlet. */
  Layout layout(Field list) throws WrongFileException {
    return list.build(() -> Layout.of(slots, lines));
  }

  /** The lines behind the last slot, each with its tool; empty where there is one tool. */
  List<ToolLine> lines() {
    return lines;
  }

  private void add(Field item) throws WrongFileException {
    String kind = item.field("kind", String.join(", ", kinds())).oneOf(kinds(), word -> word);
    String name = name(item, kind);
    if (outlet == null) {
      addBeforeOutlet(item, kind, name);
      return;
    }
    if (!lines.isEmpty()) {
      throw item.wrong("stands behind a splitter with lines; put it into one of its lines");
    }
    switch (kind) {
      case OUTLET ->
        throw item.wrong("is an outlet behind the outlet; the line has one, put pipes behind it"
            + " with the end that each has");
      case PIPE -> slots.add(pipe(item, name));
      case PartFields.SPLITTER -> slots.add(splitter(item, name));
      case COUPLING -> slots.add(coupling(item, name));
      case PartFields.HOSE, WHIP_HOSE -> slots.add(hose(item, kind.equals(WHIP_HOSE), name));
      default ->
        slots.add(
            PartFields.regulators().contains(kind)
                ? regulated(item, RegulatorKind.parse(kind), name)
                : device(item, DeviceKind.parse(kind), name));
    }
    item.requireNothingElse();
  }

  private void addBeforeOutlet(Field item, String kind, String name) throws WrongFileException {
    switch (kind) {
      case PIPE -> pipes.add(new Entry(item, name));
      case OUTLET -> {
        outlet = EndField.in(item.field("end", Accepted.END), remarks);
        item.requireNothingElse();
      }
      case REGULATOR, FILTER_REGULATOR -> {
        if (regulator != null || !pipes.isEmpty()) {
          throw item.wrong("is a " + kind
              + " behind a pipe and in front of the outlet; it may stand first of all, or"
              + " behind {\"kind\": \"outlet\", \"end\": …}");
        }
        regulator = new Entry(item, name);
      }
      default ->
        throw item.wrong("is a " + kind + " in front of the outlet, where only pipes stand;"
            + " put {\"kind\": \"outlet\", \"end\": …} in front of it");
    }
  }

  /** What an item is called: by its field, or by its kind, with a number where that is taken. */
  private String name(Field item, String kind) throws WrongFileException {
    Optional<Field> told = item.find(NAME, "what to call it");
    String name = told.isPresent() ? told.get().text().strip() : kind + where;
    if (told.isPresent() && placeOf.containsKey(name)) {
      throw told.get()
          .wrong("\"" + name + "\" is the name of " + placeOf.get(name)
              + " already; names must differ, say \"" + free(name) + "\" or what tells it apart");
    }
    String given = told.isPresent() ? name : free(name);
    placeOf.put(given, item.place());
    return given;
  }

  /** What an item is called that has no name, see {@link JobFile#nameOf}. */
  static String free(String called, Set<String> taken) {
    String free = called;
    for (int number = 2; taken.contains(free); number++) {
      free = called + " " + number;
    }
    return free;
  }

  private String free(String name) {
    return free(name, placeOf.keySet());
  }

  private Slot coupling(Field item, String name) throws WrongFileException {
    Optional<Field> profile = item.find("profile", "the id of a profile");
    Optional<String> id = profile.isPresent()
        ? Optional.of(PartFields.profileId(profile.get(), catalogue.profiles()))
        : Optional.empty();
    Optional<Field> same = item.find("sameAs", "the name of a coupling in front of it");
    if (profile.isPresent() && same.isPresent()) {
      throw same.get().wrong("stands beside profile; keep one of the two");
    }
    return new Slot.Coupling(
        name,
        id,
        same.isPresent() ? Optional.of(coupling(same.get())) : Optional.empty(),
        rated(
            item,
            PartFields.SOCKET,
            "socketRated",
            Part.Socket.class,
            parts.find(
                item,
                PartFields.SOCKET,
                Part.Socket.class,
                PartFields.SOCKET,
                "socket at " + name)),
        rated(
            item,
            PartFields.PLUG,
            "plugRated",
            Part.Plug.class,
            parts.find(
                item, PartFields.PLUG, Part.Plug.class, PartFields.PLUG, "plug at " + name)));
  }

  /** The name of a coupling that stands in front. */
  private String coupling(Field field) throws WrongFileException {
    String name = field.text().strip();
    List<String> couplings =
        slots.stream().filter(Slot.Coupling.class::isInstance).map(Slot::name).toList();
    if (!couplings.contains(name)) {
      throw field.wrong("\"" + name + "\" is no coupling in front of this one"
          + NearWord.named(name, couplings)
          + (couplings.isEmpty()
              ? "; the first coupling has its own profile, or any"
              : "; accepted: " + String.join(", ", couplings)));
    }
    return name;
  }

  private Slot hose(Field item, boolean isWhip, String name) throws WrongFileException {
    Optional<Part.Hose> there = seen(item, parts.hose(item, PART, name, reachTold(item)));
    boolean asks = asks(item, name, there.isPresent());
    Range<Length> reach;
    if (there.isPresent() && item.find(REACH).isEmpty()) {
      reach = Range.exactly(there.get().shortest());
    } else if (asks && question != null && question.asked() == HoseQuestion.Asked.LONGEST) {
      reach = Range.exactly(ANY);
    } else {
      reach = lengths(item.field(REACH, ACCEPTED_REACH));
    }
    Optional<HoseBore> bore = bore(item, there.isPresent());
    Optional<Field> longest = item.find(AT_MOST, ACCEPTED_AT_MOST);
    if (longest.isEmpty()) {
      return new Slot.Hose(name, reach, isWhip, Optional.empty(), bore, there);
    }
    Optional<Length> most =
        Optional.of(longest.get().one(Length::parse, "give the longest that will do"));
    if (there.isEmpty() && most.get().compareTo(reach.most()) < 0) {
      throw longest
          .get()
          .wrong("was " + longest.get().text().strip() + ", below the reach of "
              + item.field(REACH, ACCEPTED_REACH).text().strip()
              + "; give the longest that will do, or leave it out");
    }
    return longest.get().build(() -> new Slot.Hose(name, reach, isWhip, most, bore, there));
  }

  /** A hose that is told by an id or in words, with what was read on it or measured of it. */
  private Optional<Part.Hose> seen(Field item, Optional<Part.Hose> told) throws WrongFileException {
    Optional<Part.Hose> seen = rated(item, PART, RATED, Part.Hose.class, told);
    Optional<Field> bore = item.find(TRUE_BORE, "a length, such as \"6.3 mm\"");
    Optional<Field> length = item.find(TRUE_LENGTH, "a length, such as \"25 ft\"");
    requireReadable(bore, item, PART, "bore", told.isPresent());
    requireReadable(length, item, PART, "length", told.isPresent());
    if (length.isPresent()) {
      Part.Hose hose = seen.orElseThrow();
      Range<Length> measured = length.get().range(Length::parse);
      requireAboveZero(length.get(), measured.least().metres());
      seen = Optional.of(length.get().build(() -> hose.ofLength(measured)));
    }
    if (bore.isPresent()) {
      Part.Hose hose = seen.orElseThrow();
      Length measured = bore.get().least(Length::parse);
      requireAboveZero(bore.get(), measured.metres());
      Part.Hose exact = bore.get().build(() -> hose.ofTrueBore(measured));
      FlowFields.remarkOnMeasured(bore.get(), exact.bore(), exact.conduitRange(), remarks);
      seen = Optional.of(exact);
    }
    return seen;
  }

  /** A part that is there, with the rating that was read on it. */
  private <T extends Part> Optional<T> rated(
      Field item, String of, String field, Class<T> type, Optional<T> told)
      throws WrongFileException {
    Optional<Field> rated = item.find(field, Accepted.GAUGE);
    requireReadable(rated, item, of, RATED, told.isPresent());
    if (rated.isEmpty()) {
      return told;
    }
    T part = told.orElseThrow();
    GaugePressure rating = rated.get().least(GaugePressure::parse);
    requireAboveZero(rated.get(), rating.pascals());
    Part printed = rated.get().build(() -> part.withFacts(part.facts().rated(rating)));
    remarkOnRating(rated.get(), rating, printed);
    return Optional.of(type.cast(printed));
  }

  /** What is read on a part stands beside an id or words; the data of a part have it among them. */
  private static void requireReadable(
      Optional<Field> read, Field item, String of, String among, boolean isThere)
      throws WrongFileException {
    if (read.isPresent() && (!isThere || item.field(of, "").isObject())) {
      throw read.get()
          .wrong(
              isThere
                  ? "stands beside the data of the part; put it among them, as \"" + among + "\""
                  : "is read on a part that is there; tell its " + of + ", or leave it out");
    }
  }

  private static void requireAboveZero(Field told, double si) throws WrongFileException {
    if (!(si > 0.0)) {
      throw told.wrong("must be above 0, was " + told.text().strip());
    }
  }

  /** Of a rating above that of the catalogue the lower counts: one of the two is a slip, or it is another part. */
  private void remarkOnRating(Field told, GaugePressure rating, Part printed)
      throws WrongFileException {
    GaugePressure counts = printed.facts().rating().orElseThrow();
    if (counts.compareTo(rating) < 0) {
      String typed = told.text().strip();
      UnitSystem units = typed.contains("psi") ? UnitSystem.US : UnitSystem.SI;
      remarks.add("\"" + Printable.line(typed) + "\" in " + told.place() + " is above the "
          + units.sayBoth(counts) + " for which " + printed.name()
          + " is rated in the catalogue: the lower of the two counts. Look whether it is that"
          + (printed instanceof Part.Hose ? " hose." : " part."));
    }
  }

  private Slot pipe(Field item, String name) throws WrongFileException {
    List<End> ends = parts.ends(item);
    ConduitRange conduit = FlowFields.conduitRange(item);
    return item.build(() -> Slot.pipe(name, conduit, ends.get(0), ends.get(1)));
  }

  /** A splitter with what others take from it, and the lines behind it. */
  private Slot splitter(Field item, String name) throws WrongFileException {
    Optional<Part.Splitter> there = rated(
        item,
        PART,
        RATED,
        Part.Splitter.class,
        parts.find(item, PART, Part.Splitter.class, PartFields.SPLITTER, name));
    Optional<Field> taken = item.find("othersTake", "the air that others take from it");
    Optional<Range<FreeAirFlow>> others = taken.isPresent()
        ? Optional.of(AirField.readings(taken.get(), around, remarks))
        : Optional.empty();
    Optional<Field> told = item.find("lines", LINES);
    if (told.isPresent()) {
      for (Field line : told.get().items()) {
        lines.add(line(line));
      }
      refuseOneLine(told.get(), others.isPresent());
    } else if (others.isEmpty()) {
      throw item.wrong("leads nowhere but to the tool; say its \"lines\", " + LINES
          + ", or with \"othersTake\" what others take from it");
    }
    return item.build(() -> new Slot.Splitter(name, others, 0, there));
  }

  /** A splitter with one line splits nothing: the line belongs where the splitter stands. */
  private void refuseOneLine(Field told, boolean othersTake) throws WrongFileException {
    int begun = lines.stream().mapToInt(ToolLine::count).sum();
    if (begun + (othersTake ? 1 : 0) < 2) {
      throw told.wrong(
          lines.isEmpty()
              ? "is empty; a splitter leads to two lines or more, or to one where \"othersTake\" says what others take"
              : "holds one line only, to " + lines.get(0).goal()
                  + ": put what stands in that line in the place of the splitter and its tool into the \"tool\" of"
                  + " the job (or of the line that the splitter ends), or say with \"othersTake\" what others take, or with \"count\" that there"
                  + " are more alike");
    }
  }

  /** A line to a tool, or to a splitter with lines of its own. */
  private ToolLine line(Field field) throws WrongFileException {
    Optional<Field> tool = field.find("tool", TOOL);
    List<Field> items = field
        .field("line", "a list of what stands from the splitter to the tool")
        .items();
    JobLine behind = new JobLine(this, goal(tool, items));
    for (Field item : items) {
      behind.add(item);
    }
    question = behind.question;
    Optional<Field> told = field.find("count", "how many lines are alike, such as 3");
    int count = told.isPresent() ? told.get().wholeNumber() : 1;
    ToolLine line;
    if (behind.lines.isEmpty()) {
      line = JobTool.line(field.field("tool", TOOL), count, behind.slots, around, remarks);
    } else {
      if (tool.isPresent()) {
        throw tool.get()
            .wrong(
                "stands beside the lines of the splitter at the end of this line, each of which tells its"
                    + " tool; leave it out, or put it into one of those lines");
      }
      line = field.build(() -> ToolLine.toSplitter(behind.slots, behind.lines).alike(count));
    }
    field.requireNothingElse();
    return line;
  }

  /** What a line leads to, as far as it is told: its tool, or the splitter at its end. */
  private static Optional<Field> goal(Optional<Field> tool, List<Field> items)
      throws WrongFileException {
    if (tool.isPresent()) {
      return Optional.of(tool.get().field(NAME, "what the tool is"));
    }
    return items.isEmpty() ? Optional.empty() : items.get(items.size() - 1).find(NAME);
  }

  /** How long a hose must be, where that is a length. */
  private static Optional<Range<Length>> reachTold(Field item) throws WrongFileException {
    Optional<Field> reach = item.find(REACH, ACCEPTED_REACH);
    return reach.isEmpty() || isLongest(reach.get())
        ? Optional.empty()
        : Optional.of(lengths(reach.get()));
  }

  /** A length or a range of it; a word without a digit is most likely "longest", misspelt. */
  private static Range<Length> lengths(Field reach) throws WrongFileException {
    if (reach.isText() && reach.text().chars().noneMatch(Character::isDigit)) {
      throw reach.wrong("\"" + reach.text() + "\" is no length; accepted: " + ACCEPTED_REACH);
    }
    return reach.range(Length::parse);
  }

  private static boolean isLongest(Field reach) throws WrongFileException {
    return reach.isText()
        && reach.text().strip().equalsIgnoreCase(HoseQuestion.Asked.LONGEST.toString());
  }

  /** Reads what is asked of a hose: "reach": "longest", or "bore": "least". */
  private boolean asks(Field item, String name, boolean isThere) throws WrongFileException {
    Optional<Field> reach = item.find(REACH, ACCEPTED_REACH);
    boolean asksLength = reach.isPresent() && isLongest(reach.get());
    Optional<Field> bore = asksLeast(item) ? item.find(BORE, ACCEPTED_BORE) : Optional.empty();
    if (!asksLength && bore.isEmpty()) {
      return false;
    }
    Field asked = asksLength ? reach.get() : bore.get();
    if (asksLength && bore.isPresent()) {
      throw bore.get()
          .wrong("asks for the least bore beside the longest hose: a wider hose may always be"
              + " longer; give a reach in feet or metres, or leave out bore");
    }
    if (isThere) {
      throw asked.wrong("asks of a hose that is there and stays; leave out its part");
    }
    if (question != null) {
      throw asked.wrong("is a second question; \"" + question.slot()
          + "\" has one already, and one is answered at a time");
    }
    question = new HoseQuestion(
        name, asksLength ? HoseQuestion.Asked.LONGEST : HoseQuestion.Asked.LEAST_BORE);
    return true;
  }

  private static boolean asksLeast(Field item) throws WrongFileException {
    Optional<Field> bore = item.find(BORE, ACCEPTED_BORE);
    return bore.isPresent()
        && bore.get().isText()
        && bore.get().text().strip().equalsIgnoreCase(HoseQuestion.Asked.LEAST_BORE.toString());
  }

  /** The bore that a hose to be chosen must be named by, where it must. */
  private static Optional<HoseBore> bore(Field item, boolean isThere) throws WrongFileException {
    Optional<Field> bore = item.find(BORE, ACCEPTED_BORE);
    if (bore.isEmpty() || asksLeast(item)) {
      return Optional.empty();
    }
    if (isThere) {
      throw bore.get()
          .wrong(
              "is asked of a hose that is there and stays; its bore stands in the data of its part");
    }
    if (bore.get().isText() && bore.get().text().chars().noneMatch(Character::isDigit)) {
      throw bore.get()
          .wrong("\"" + bore.get().text() + "\" is no bore; accepted: " + ACCEPTED_BORE);
    }
    return Optional.of(bore.get().as(HoseBore::parse));
  }

  private Slot regulated(Field item, RegulatorKind kind, String name) throws WrongFileException {
    Range<GaugePressure> set = set(item);
    Optional<Part.Regulator> there = drooping(
        item,
        set,
        rated(
            item,
            PART,
            RATED,
            Part.Regulator.class,
            parts.find(item, PART, Part.Regulator.class, kind.toString(), name)));
    Optional<Field> fails = item.find("ifFails", IF_FAILS);
    Optional<GaugePressure> failed =
        fails.isPresent() ? Optional.of(fails.get().most(GaugePressure::parse)) : Optional.empty();
    if (fails.isPresent()) {
      requireFailedAtLeast(item, fails.get(), set.most());
    }
    return item.build(() -> new Slot.Regulated(name, kind, set, failed, there));
  }

  /** A regulator that is there and whose droop nobody told, with what its gauge showed while all worked. */
  private static Optional<Part.Regulator> drooping(
      Field item, Range<GaugePressure> set, Optional<Part.Regulator> told)
      throws WrongFileException {
    Optional<Field> read = item.find(TRUE_DROOP, "a loss, such as \"4 psi\"");
    if (read.isEmpty()) {
      return told;
    }
    Part.Regulator there = told.orElseThrow(() -> read.get()
        .wrong(
            "is read off the gauge of a regulator that is there; tell its part, or leave it out"));
    if (there.droopRange().isExact()) {
      throw read.get()
          .wrong("stands beside the droop or the curve that " + there.name()
              + " tells; keep one of the two");
    }
    PressureDrop droop = read.get().most(PressureDrop::parse);
    if (droop.pascals() >= set.least().pascals()) {
      throw read.get()
          .wrong("was " + read.get().text().strip() + ", not below the "
              + item.field("set", "").text().strip() + " that it is set to");
    }
    return Optional.of(there.ofDroop(droop));
  }

  /** What stands behind a failed regulator is not less than what stands behind one that holds. */
  static void requireFailedAtLeast(Field item, Field fails, GaugePressure set)
      throws WrongFileException {
    if (fails.most(GaugePressure::parse).compareTo(set) < 0) {
      throw fails.wrong("was " + fails.text().strip() + ", below the "
          + item.field("set", "").text().strip()
          + " that it is set to; leave it out where its maker does not tell it");
    }
  }

  /** A regulator does not lose by its droop all that it is set to. */
  static void requireDroopBelow(Field item, PressureDrop droop, GaugePressure set)
      throws WrongFileException {
    if (droop.pascals() >= set.pascals()) {
      Field told = item.field("droop", "");
      throw told.wrong("was " + told.text().strip() + ", not below the "
          + item.field("set", "").text().strip() + " that it is set to");
    }
  }

  /** What a regulator is set to, or between which pressures that lies. */
  static Range<GaugePressure> set(Field item) throws WrongFileException {
    Field told = item.field("set", "what it is set to, " + Accepted.GAUGE);
    Range<GaugePressure> set = told.range(GaugePressure::parse);
    if (!(set.least().pascals() > 0.0)) {
      throw told.wrong("must be above 0, was " + told.text().strip());
    }
    return set;
  }

  private Slot device(Field item, DeviceKind kind, String name) throws WrongFileException {
    Optional<Field> told = item.find(PART);
    if (kind == DeviceKind.REEL
        && told.isPresent()
        && told.get().isObject()
        && told.get().names().contains(PartFields.HOSE)) {
      return hose(item, false, name); // told by the hose on it
    }
    Optional<Part.Device> there = rated(
        item,
        PART,
        RATED,
        Part.Device.class,
        parts.find(item, PART, Part.Device.class, kind.toString(), name));
    return new Slot.InLine(name, kind, there);
  }
}
