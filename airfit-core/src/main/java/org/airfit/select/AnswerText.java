package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.airfit.air.AirState;
import org.airfit.internal.Labels;
import org.airfit.joint.End;
import org.airfit.plant.Regulator;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolAir;
import org.airfit.safety.Medium;

/**
 * What a customer answers, as a text, and what it tells a job. Of a range the worst end counts: the lower rating, the
 * higher pressure. A reach, what the tool takes and needs, and what a regulator is set to stay ranges: a low setting
 * starves the tool and a high one may be more than it allows, so that no end alone is the worst.
 */
final class AnswerText {

  static final String YES = "yes";
  static final String NO = "no";
  static final String ONLY_ONE = "only one";

  /** A profile of which the catalogue has no part. */
  static final String ANOTHER = "another one";

  /** The air of a shop. Our own choice, without a source. */
  static final Temperature INDOORS = Temperature.ofCelsius(20.0);

  /** What a tool does, as far as it has rules of its own. */
  enum Use {
    HAMMERS,
    CLEANS_WITH_AIR,
    SPRAYS_PAINT,
    BLASTS,
    FEEDS_FASTENERS,
    NONE_OF_THESE;

    @Override
    public String toString() {
      return Labels.of(this);
    }
  }

  /** What hoses down. */
  enum Cleaner {
    WATER,
    CAUSTIC;

    @Override
    public String toString() {
      return Labels.of(this);
    }
  }

  /** The most share of the time of an average of which no duty was told; the least is {@link ToolAir#LEAST_DUTY}. */
  private static final double ALWAYS = 1.0;

  private static final Pattern SHARE = Pattern.compile("([0-9]*[.]?[0-9]+)\\s*(%?)");

  private AnswerText() {}

  /** Starts a job with what the tool takes. */
  static Requirement.Builder tool(String air, String pressure) {
    ToolAir told = ToolAir.parse(air);
    Range<FreeAirFlow> flow = told.flow().range(AbsolutePressure.STANDARD_ATMOSPHERE, INDOORS);
    Requirement.Builder tool = Requirement.forTool(flow, pressures(pressure));
    return told.isAverage() ? tool.average(flow, ToolAir.LEAST_DUTY, ALWAYS) : tool;
  }

  /** Refuses what cannot be read as an answer to a topic, before anything is built of it. */
  static void check(Topic topic, String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("answer on the " + topic
          + " must be told, was blank; such as \"" + topic.example() + "\"");
    }
    switch (topic) {
      case AIR_NEEDED -> flows(text);
      case DUTY -> duty(text);
      case SETTING, HOSE_RATING, SOCKET_RATING, PLUG_RATING, PART_RATING ->
        aboveZero(topic, pressures(text).least());
      case HOSE_BORE -> bore(text);
      case HOSE_LENGTH -> length(text);
      case AIR_OF_OTHERS -> exactAir(text);
      case PRESSURE_NEEDED -> tool("1 L/s ANR", text);
      case COLDEST, HOTTEST -> temperature(topic, text);
      case SUPPLY -> pressures(text);
      default ->
        tell(
            Requirement.forTool(
                FreeAirFlow.ofAnrLitresPerSecond(1.0), GaugePressure.ofPascals(1.0)),
            topic,
            text);
    }
  }

  /** Tells a job what was answered; what is told with another answer is left out. */
  static void tell(Requirement.Builder job, Topic topic, String text) {
    switch (topic) {
      case MEDIUM -> job.medium(Medium.parse(text));
      case TOOL_INLET -> job.toolInlet(End.parse(text));
      case SUPPLY -> supply(job, pressures(text));
      case OUTLET -> job.outlet(End.parse(text));
      case REACH -> job.reach(reach(text));
      case DUTY -> job.running(duty(text));
      case EXACT_AIR -> job.taking(exactAir(text));
      case EXACT_PRESSURE -> job.needingJust(pressures(text).most());
      case SETTING -> job.set(setting(text));
      case DRYER -> job.dryer(isYes(topic, text));
      case USE -> use(job, Labels.parse("use of the tool", text, Use.values()));
      case BLOCKED_NOZZLE -> job.blowGun(pressures(text).most());
      case TOOL_RATING -> job.toolRating(pressures(text).least());
      case HIGHEST, RELIEF_VALVE -> job.highest(pressures(text).most());
      case REGULATOR_FAILED -> job.regulated(pressures(text).most());
      case REGULATOR_DROOP -> job.droop(droop(text));
      case PLACE -> job.environment(Environment.parse(text));
      case CLEANER ->
        job.environment(
            Labels.parse("cleaner", text, Cleaner.values()) == Cleaner.WATER
                ? Environment.WASH_DOWN_WITH_WATER
                : Environment.WASH_DOWN_WITH_CAUSTIC);
      case AIR -> job.lubrication(Lubrication.parse(text));
      case WHIP_HOSE, REGULATOR, DROPPED, DRAGGED, VENTED -> {
        if (isYes(topic, text)) {
          flag(job, topic);
        } else if (topic == Topic.WHIP_HOSE) {
          job.noWhipHose();
        }
      }
      case PROFILE -> job.profile(text.strip());
      case PROFILES_IN_USE -> job.profilesInUse(ids(text));
      case AIR_NEEDED,
          PRESSURE_NEEDED,
          HOSE_BORE,
          HOSE_LENGTH,
          AIR_OF_OTHERS,
          HOSE_RATING,
          SOCKET_RATING,
          PLUG_RATING,
          PART_RATING,
          COLDEST,
          HOTTEST -> {}
    }
  }

  /** The line to a tool with what was answered of the tool. */
  static ToolLine told(ToolLine line, Topic topic, String text) {
    return switch (topic) {
      case DUTY -> line.running(duty(text));
      case EXACT_AIR -> line.taking(exactAir(text));
      case EXACT_PRESSURE -> line.needingJust(pressures(text).most());
      case USE -> used(line, Labels.parse("use of the tool", text, Use.values()));
      case WHIP_HOSE -> isYes(topic, text) ? line.withOwnWhipHose() : line.withoutOwnWhipHose();
      case BLOCKED_NOZZLE -> line.withBlowGun(pressures(text).most());
      case TOOL_RATING -> line.withToolRating(pressures(text).least());
      default ->
        throw new IllegalArgumentException(
            "topic of a line must be one of its tool, was " + topic + "; tell it of the job");
    };
  }

  private static ToolLine used(ToolLine line, Use use) {
    return switch (use) {
      case HAMMERS -> line.withImpactTool();
      case CLEANS_WITH_AIR -> line.withBlowGun();
      case SPRAYS_PAINT -> line.withPainting();
      case BLASTS -> line.withBlasting();
      case FEEDS_FASTENERS -> line.withAutomaticFeed();
      case NONE_OF_THESE -> line;
    };
  }

  /** How far a hose must reach. */
  static Range<Length> reach(String text) {
    return Range.parse(text, Length::parse);
  }

  private static Range<FreeAirFlow> flows(String text) {
    return ToolAir.parse(text).whileRunning(AbsolutePressure.STANDARD_ATMOSPHERE, INDOORS);
  }

  /** Of a range the most counts. */
  private static Range<PressureDrop> droop(String text) {
    return Range.exactly(Range.parse(text, PressureDrop::parse).most());
  }

  /** Which share of the time a tool runs; of a range the least counts, with which it takes most while it runs. */
  private static double duty(String text) {
    String[] ends = text.strip().split("\\s+to\\s+", 2);
    Matcher last = SHARE.matcher(ends[ends.length - 1]);
    Matcher first = SHARE.matcher(ends[0]);
    if (!first.matches() || !last.matches()) {
      throw new IllegalArgumentException(
          "answer on the duty must be a share of the time such as \"25 %\" or 0.25, was \"" + text
              + "\"");
    }
    boolean isPercent = !(first.group(2) + last.group(2)).isEmpty();
    double share = Double.parseDouble(first.group(1)) / (isPercent ? 100.0 : 1.0);
    if (!(share > 0.0 && share <= 1.0)) {
      throw new IllegalArgumentException("duty must be above 0 and at most 1 (100 %), was \"" + text
          + "\"; per cent are typed with their sign, such as \"25 %\"");
    }
    return share;
  }

  /** The air that a tool takes, counted somewhere; of a range the most counts. */
  private static Range<FreeAirFlow> exactAir(String text) {
    return Range.exactly(Range.parse(text, FreeAirFlow::parse).most());
  }

  /** A regulator with what was answered of it: what it is set to, or by how much the one that is there droops. */
  static Slot.Regulated told(Slot.Regulated slot, Topic topic, String text) {
    if (topic == Topic.SETTING) {
      return slot.withSetRange(setting(text));
    }
    Part.Regulator there = slot.regulator()
        .orElseThrow(() -> new IllegalArgumentException("regulator whose droop is asked about must"
            + " be one that is there, was \"" + slot.name() + "\", which is to be chosen"));
    return slot.with(there.ofDroop(droop(text).most()));
  }

  /** What a regulator is set to: the air is judged at the least of a range, the limits and ratings at the most. */
  private static Range<GaugePressure> setting(String text) {
    return pressures(text);
  }

  /**
   * A slot with what was answered of the part that is there in it, or of the air that others take; of a range the worst
   * end counts, but of a length, which may be too short and too long.
   */
  static Slot told(Slot slot, Topic topic, String text) {
    if (topic == Topic.AIR_OF_OTHERS && slot instanceof Slot.Splitter splitter) {
      return splitter.sharedWith(exactAir(text));
    }
    if (topic.isRating()) {
      return PartThere.rated(topic, slot, pressures(text).least());
    }
    if (!(slot instanceof Slot.Hose hose) || hose.hose().isEmpty()) {
      throw new IllegalArgumentException(
          "part that is asked about must be one that is there, was \"" + slot.name()
              + "\", which is to be chosen");
    }
    Part.Hose there = hose.hose().get();
    return hose.with(
        topic == Topic.HOSE_BORE ? there.ofTrueBore(bore(text)) : there.ofLength(length(text)));
  }

  private static Range<Length> length(String text) {
    Range<Length> length = Range.parse(text, Length::parse);
    if (!(length.least().metres() > 0.0)) {
      throw new IllegalArgumentException("answer on the " + Topic.HOSE_LENGTH
          + " must be above 0 m, was " + length.least().inFull(LengthUnit.METRE));
    }
    return length;
  }

  private static Length bore(String text) {
    return Range.parse(text, Length::parse).least();
  }

  private static void aboveZero(Topic topic, GaugePressure told) {
    if (!(told.pascals() > 0.0)) {
      throw new IllegalArgumentException(
          "answer on the " + topic + " must be above 0 bar(g), was " + told.inFewestDigits());
    }
  }

  private static Range<GaugePressure> pressures(String text) {
    return Range.parse(text, GaugePressure::parse);
  }

  /** Of a gauge that moves, flow is judged at the lowest and ratings at the highest. */
  private static void supply(Requirement.Builder job, Range<GaugePressure> gauge) {
    AbsolutePressure around = AbsolutePressure.STANDARD_ATMOSPHERE;
    job.supply(AirState.of(gauge.most().absolute(around), INDOORS), around);
    if (!gauge.isExact()) {
      job.lowest(gauge.least());
    }
  }

  private static void use(Requirement.Builder job, Use use) {
    switch (use) {
      case HAMMERS -> job.impactTool();
      case CLEANS_WITH_AIR -> job.blowGun();
      case SPRAYS_PAINT -> job.painting();
      case BLASTS -> job.blasting();
      case FEEDS_FASTENERS -> job.automaticFeed();
      case NONE_OF_THESE -> {}
    }
  }

  private static void flag(Requirement.Builder job, Topic topic) {
    switch (topic) {
      case WHIP_HOSE -> job.whipHose();
      case REGULATOR -> job.regulated().droop(Regulator.UNTOLD_DROOP);
      case DROPPED -> job.dropped();
      case DRAGGED -> job.dragged();
      default -> job.ventRequired();
    }
  }

  private static boolean isYes(Topic topic, String text) {
    String word = text.strip().toLowerCase(Locale.ROOT);
    if (!word.equals(YES) && !word.equals(NO)) {
      throw new IllegalArgumentException(
          "answer on the " + topic + " must be yes or no, was \"" + text + "\"");
    }
    return word.equals(YES);
  }

  /** Ids with commas between them; none where only one profile is used. */
  private static Set<String> ids(String text) {
    Set<String> ids = new LinkedHashSet<>();
    if (!text.strip().equalsIgnoreCase(ONLY_ONE)) {
      for (String id : text.split(",", -1)) {
        if (id.isBlank()) {
          throw new IllegalArgumentException("answer on the " + Topic.PROFILES_IN_USE
              + " must be \"" + ONLY_ONE + "\" or profiles with commas between them, was \"" + text
              + "\"");
        }
        ids.add(id.strip());
      }
    }
    return ids;
  }

  private static Temperature temperature(Topic topic, String text) {
    Range<Temperature> range = Range.parse(text, Temperature::parse);
    return topic == Topic.COLDEST ? range.least() : range.most();
  }

  /**
   * Tells how cold and how hot it gets, where that is more than a shop has. Of what was not told, or is what a shop
   * has, the usual bound stands; what the job told before stands until it is answered.
   */
  static void temperatures(
      Requirement.Builder job,
      Optional<Requirement> before,
      Optional<String> coldest,
      Optional<String> hottest) {
    if (coldest.isEmpty() && hottest.isEmpty()) {
      return;
    }
    Optional<Temperature> low = coldest
        .map(text -> temperature(Topic.COLDEST, text))
        .or(() -> before.flatMap(Requirement::coldest));
    Optional<Temperature> high = hottest
        .map(text -> temperature(Topic.HOTTEST, text))
        .or(() -> before.flatMap(Requirement::hottest));
    if (low.isEmpty() || high.isEmpty()) {
      low.ifPresent(job::coldest);
      high.ifPresent(job::hottest);
    } else if (before.flatMap(Requirement::coldest).isPresent()
        || low.get().compareTo(Requirement.USUAL_LOWEST) < 0
        || high.get().compareTo(Requirement.USUAL_HIGHEST) > 0) {
      job.temperatures(low.get(), high.get());
    }
  }

  /** The words that answer a topic; none where an amount or the name of a thread does. */
  static List<String> words(Topic topic, Requirement job, Catalogue catalogue) {
    return switch (topic) {
      case USE -> texts(Use.values());
      case PLACE -> texts(Environment.values());
      case CLEANER -> texts(Cleaner.values());
      case AIR -> texts(Lubrication.values());
      case WHIP_HOSE, REGULATOR, DROPPED, DRAGGED, VENTED, DRYER -> List.of(YES, NO);
      case PROFILE -> profiles(catalogue);
      case PROFILES_IN_USE -> inUse(job, catalogue);
      default -> List.of();
    };
  }

  static List<String> media() {
    return texts(Medium.values());
  }

  private static List<String> texts(Object[] values) {
    return List.of(values).stream().map(Object::toString).toList();
  }

  /** The profiles of the plugs and sockets of a catalogue, in order, and that there may be another. */
  private static List<String> profiles(Catalogue catalogue) {
    Set<String> profiles = new TreeSet<>();
    for (Part part : catalogue.parts()) {
      if (part instanceof Part.Plug plug) {
        profiles.add(plug.profile());
      } else if (part instanceof Part.Socket socket) {
        profiles.addAll(socket.profiles());
      }
    }
    List<String> answers = new ArrayList<>(profiles);
    answers.add(ANOTHER);
    return List.copyOf(answers);
  }

  /** Beside that of the shop each other one, and all that the catalogue has. */
  private static List<String> inUse(Requirement job, Catalogue catalogue) {
    List<String> all = profiles(catalogue);
    List<String> answers = new ArrayList<>(List.of(ONLY_ONE));
    String own = job.profile().map(id -> id + ", ").orElse("");
    List<String> others =
        all.stream().filter(id -> job.profile().filter(id::equals).isEmpty()).toList();
    others.forEach(id -> answers.add(own + id));
    if (others.size() > 2) {
      answers.add(own + String.join(", ", others.subList(0, others.size() - 1)));
    }
    return List.copyOf(answers);
  }
}
