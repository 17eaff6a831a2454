package org.airfit.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.airfit.internal.Later;
import org.airfit.quantity.PressureDrop;
import org.jspecify.annotations.Nullable;

/**
 * A run whose gauges are read at rest and while its tool runs, to find out what in it is other than told.
 *
 * <p>Gauges at rest and while the tool runs, and what explains them:
 *
 * <pre>{@code
 * import java.util.List;
 * import org.airfit.air.AirState;
 * import org.airfit.line.Conduit;
 * import org.airfit.line.Wall;
 * import org.airfit.quantity.AbsolutePressure;
 * import org.airfit.quantity.FreeAirFlow;
 * import org.airfit.quantity.GaugePressure;
 * import org.airfit.quantity.Length;
 * import org.airfit.quantity.PressureDrop;
 * import org.airfit.quantity.Temperature;
 * import org.airfit.run.Diagnosis;
 * import org.airfit.run.GaugeClass;
 * import org.airfit.run.GaugeReading;
 * import org.airfit.run.GaugeTest;
 * import org.airfit.run.PressureGauge;
 * import org.airfit.run.Run;
 * import org.airfit.run.ToolDemand;
 * import org.airfit.run.ToolState;
 *
 * class GaugesAtRestAndRunning {
 *   public static void main(String[] args) {
 *     AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
 *     AirState supply = AirState.of(
 *         GaugePressure.parse("7 bar(g)").absolute(atmosphere), Temperature.parse("20 °C"));
 *     Conduit hose = Conduit.of(Length.parse("3/8 in"), Length.parse("15 m"), Wall.SMOOTH_RUBBER_HOSE);
 *     PressureGauge gauge = PressureGauge.ofClass(
 *         "gauge A",
 *         GaugeClass.parse("1.6"),
 *         GaugePressure.parse("10 bar(g)"),
 *         PressureDrop.parse("0.1 bar"));
 *     Diagnosis found = GaugeTest.of(
 *             Run.from(supply, atmosphere).through("hose", hose),
 *             ToolDemand.fixed("sander", FreeAirFlow.parse("12 L/s ANR")))
 *         .read(List.of(
 *             new GaugeReading(gauge, "hose", ToolState.AT_REST, GaugePressure.parse("7.0 bar(g)")),
 *             new GaugeReading(gauge, "hose", ToolState.RUNNING, GaugePressure.parse("4.0 bar(g)"))));
 *     System.out.println(found.verdict()); // SEVERAL
 *   }
 * }
 * }</pre>
 *
 * <p>Each suspect is one explanation, with one unknown: the C of a part, the bore of a line, the droop of a regulator,
 * a leak, the air of the tool. Nothing else is then other than told, but for what is known roughly: the loss of each
 * element and the air of the tool to 10 %, the pressure of the supply to 0.3 bar and how it holds to 0.1 bar (one
 * standard deviation each, our choice unless told otherwise). Of an element that is unmarked the value told is a
 * guess: it is unknown in every explanation. How probable the readings are by each explanation decides between them;
 * a fault counts where it shifts some pressure by 0.1 bar or more.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class GaugeTest {

  private record Question(
      Run run,
      ToolDemand tool,
      Optional<List<Suspect>> suspects,
      Optional<Suspect> unmarked,
      GaugeTolerances tolerances) {}

  private final Question question;
  private final Later<GaugeModel> model;

  private GaugeTest(Question question) {
    this.question = question;
    this.model = Later.of(this::made);
  }

  /**
   * Begins with a run in which anything may be other than told.
   *
   * @param run the run as it was told
   * @param tool what the tool takes while it runs
   * @return the test
   * @throws IllegalArgumentException if the run has no elements, the tool takes nothing, or the supply is not above
   *     the atmosphere
   */
  public static GaugeTest of(Run run, ToolDemand tool) {
    Objects.requireNonNull(run, "run");
    Objects.requireNonNull(tool, "tool");
    if (run.names().isEmpty()) {
      throw new IllegalArgumentException(
          "run must have at least one element between supply and tool, had none; say through(…)");
    }
    if (run.names().contains(GaugeReading.SUPPLY)) {
      throw new IllegalArgumentException(
          "name of an element must not be \"supply\", which is the place in front of the first; rename it");
    }
    if (!(tool.load() > 0.0)) {
      throw new IllegalArgumentException("load of " + tool.name()
          + " must be above 0, so that it takes air while it runs, was " + tool.load());
    }
    if (run.stillAir().pressure().compareTo(run.atmosphere()) <= 0) {
      throw new IllegalArgumentException("pressure of the supply must be above the atmosphere "
          + run.atmosphere().shown() + ", was " + run.stillAir().pressure().shown());
    }
    return new GaugeTest(
        new Question(run, tool, Optional.empty(), Optional.empty(), GaugeTolerances.usual()));
  }

  /**
   * Tells what is suspected before anything is read. What is not remains possible with a tenth of the chance of a
   * suspect (our choice), so that a fault nobody thought of is not taken for one of these.
   *
   * @param suspects what is suspected, each once, at least one
   * @return this with these suspects
   * @throws IllegalArgumentException if a suspect is none of this run
   */
  public GaugeTest suspecting(List<Suspect> suspects) {
    List<Suspect> list = List.copyOf(Objects.requireNonNull(suspects, "suspects"));
    if (list.isEmpty()) {
      throw new IllegalArgumentException(
          "suspects must be at least one, were none; leave them out to suspect anything");
    }
    List<Suspect> any = any();
    for (Suspect suspect : list) {
      if (!any.contains(suspect)) {
        throw new IllegalArgumentException(
            "suspect must be one of this run, of " + any + ", was " + suspect);
      }
    }
    if (list.stream().distinct().count() < list.size()) {
      throw new IllegalArgumentException("suspects must differ, were " + list);
    }
    return new GaugeTest(new Question(
        question.run, question.tool, Optional.of(list), question.unmarked, question.tolerances));
  }

  /**
   * Tells that what was told of a part or a line is a guess: its C, or its bore, is unknown whatever else is.
   *
   * @param element the name of a part or a line of the run
   * @return this with that element unmarked, and no other
   * @throws IllegalArgumentException if it is no part and no line
   */
  public GaugeTest unmarked(String element) {
    Objects.requireNonNull(element, "element");
    Suspect suspect = any().stream()
        .filter(each -> each.place().equals(element)
            && (each.kind() == SuspectKind.PART || each.kind() == SuspectKind.BORE))
        .findFirst()
        .orElseThrow(() ->
            new IllegalArgumentException("unmarked element must be a part or a line of the run, of "
                + question.run.names() + ", was \"" + element + "\""));
    return new GaugeTest(new Question(
        question.run, question.tool, question.suspects, Optional.of(suspect), question.tolerances));
  }

  /**
   * Tells how well the loss of an element is known.
   *
   * @param element its name
   * @param share one standard deviation of its loss, as a part of it [-], in [0, 1]; 0.1 where it is not told
   * @return this with that
   * @throws IllegalArgumentException if the run has no such element, or the share is out of range
   */
  public GaugeTest withLossKnownWithin(String element, double share) {
    if (!question.run.names().contains(Objects.requireNonNull(element, "element"))) {
      throw new IllegalArgumentException("name must be that of an element of this run, of "
          + question.run.names() + ", was \"" + element + "\"");
    }
    requireShare("share of a loss", share);
    Map<String, Double> elements = new HashMap<>(question.tolerances.elements());
    elements.put(element, share);
    GaugeTolerances usual = question.tolerances;
    return with(new GaugeTolerances(elements, usual.toolAir(), usual.level(), usual.holding()));
  }

  /**
   * Tells how well the air of the tool is known.
   *
   * @param share one standard deviation of its air, as a part of it [-], in [0, 1]; 0.1 where it is not told
   * @return this with that
   * @throws IllegalArgumentException if the share is out of range
   */
  public GaugeTest withToolAirKnownWithin(double share) {
    requireShare("share of the tool's air", share);
    GaugeTolerances usual = question.tolerances;
    return with(new GaugeTolerances(usual.elements(), share, usual.level(), usual.holding()));
  }

  /**
   * Tells how well the supply holds its pressure between the readings at rest and those while the tool runs.
   *
   * @param holding one standard deviation, its droop aside, at most 10 bar; 0.1 bar where it is not told
   * @return this with that
   * @throws IllegalArgumentException if it is more than 10 bar
   */
  public GaugeTest withSupplyHolding(PressureDrop holding) {
    if (!(Objects.requireNonNull(holding, "holding").pascals() <= 1.0e6)) {
      throw new IllegalArgumentException(
          "what a supply holds within must be at most 10 bar, was " + holding.shown());
    }
    GaugeTolerances usual = question.tolerances;
    return with(
        new GaugeTolerances(usual.elements(), usual.toolAir(), usual.level(), holding.pascals()));
  }

  private GaugeTest with(GaugeTolerances tolerances) {
    return new GaugeTest(new Question(
        question.run, question.tool, question.suspects, question.unmarked, tolerances));
  }

  private static void requireShare(String what, double share) {
    if (!(share >= 0.0 && share <= 1.0)) {
      throw new IllegalArgumentException(
          what + " known must be in [0, 1], was " + share + "; 0.1 is a tenth");
    }
  }

  /** {@return the run as it was told} */
  public Run run() {
    return question.run;
  }

  /** {@return what the tool takes} */
  public ToolDemand tool() {
    return question.tool;
  }

  /** {@return what is suspected: as told, or all that can be other than told in such a run} */
  public List<Suspect> suspects() {
    return question.suspects.orElseGet(this::any);
  }

  /** {@return the suspect of the element that is unmarked; empty where there is none} */
  public Optional<Suspect> unmarkedElement() {
    return question.unmarked;
  }

  /** All that may be other than told in this run. */
  private List<Suspect> any() {
    List<Suspect> all = new ArrayList<>();
    RunPath path = question.run.path();
    all.add(Suspect.droop(GaugeReading.SUPPLY));
    for (int i = 0; i < path.elements().size(); i++) {
      Element element = path.elements().get(i);
      if (element.alone() instanceof Element.Line) {
        all.add(Suspect.bore(element.name()));
      } else if (GaugeUnknown.regulator(path, i + 1).isPresent()) {
        all.add(Suspect.droop(element.name()));
      } else {
        all.add(Suspect.part(element.name()));
      }
    }
    path.elements().forEach(element -> all.add(Suspect.leakBehind(element.name())));
    all.add(Suspect.toolAir());
    return List.copyOf(all);
  }

  private GaugeModel made() {
    @Nullable Suspect unmarked = question.unmarked.orElse(null);
    List<Suspect> possible =
        any().stream().filter(suspect -> !suspect.equals(unmarked)).toList();
    return new GaugeModel(
        GaugeScene.of(question.run.path(), question.tool),
        possible,
        suspects(),
        unmarked,
        question.tolerances);
  }

  /**
   * Judges readings.
   *
   * @param readings what gauges showed, at least one while the tool runs; at most 40
   * @return what they say
   * @throws IllegalArgumentException if there are none or too many, a place is none of this run, two gauges have one
   *     name, one gauge is read twice at one place in one state, or the run as told does not bring the tool its air
   */
  public Diagnosis read(List<GaugeReading> readings) {
    List<GaugeReading> list = List.copyOf(Objects.requireNonNull(readings, "readings"));
    requireReadings(list);
    GaugeModel made = model.get();
    if (!made.isFed()) {
      throw new IllegalArgumentException("run as told must bring " + question.tool.name()
          + " its air, does not; take its true air, or tell which element is unmarked");
    }
    return Diagnosis.of(made, list);
  }

  private static final int MOST_READINGS = 40;

  private void requireReadings(List<GaugeReading> readings) {
    if (readings.stream().noneMatch(reading -> reading.state() == ToolState.RUNNING)
        || readings.size() > MOST_READINGS) {
      throw new IllegalArgumentException(
          "readings must be one while the tool runs at least, and at most "
              + MOST_READINGS + " in all, were " + readings.size()
              + "; at rest a restriction does not show");
    }
    List<String> places = new ArrayList<>(question.run.names());
    places.add(0, GaugeReading.SUPPLY);
    for (int i = 0; i < readings.size(); i++) {
      GaugeReading one = readings.get(i);
      if (!places.contains(one.place())) {
        throw new IllegalArgumentException(
            "place of a reading must be one of " + places + ", was \"" + one.place() + "\"");
      }
      for (GaugeReading before : readings.subList(0, i)) {
        if (before.gauge().name().equals(one.gauge().name())) {
          requireOne(before, one);
        }
      }
    }
  }

  private static void requireOne(GaugeReading before, GaugeReading one) {
    if (!before.gauge().equals(one.gauge())) {
      throw new IllegalArgumentException(
          "gauges must have different names, were two called \"" + one.gauge().name() + "\"");
    }
    if (before.place().equals(one.place()) && before.state() == one.state()) {
      throw new IllegalArgumentException(
          "a gauge must be read once at a place at rest and once while"
              + " the tool runs, was " + one.gauge().name() + " twice "
              + GaugeReading.at(one.place())
              + " " + one.state() + "; give the mean");
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof GaugeTest that && question.equals(that.question);
  }

  @Override
  public int hashCode() {
    return question.hashCode();
  }

  /** {@return the test in one line, such as "8 bar(a) through coupling, hose with sander: …"} */
  @Override
  public String toString() {
    return "gauges on " + question.run + " to " + question.tool.name();
  }
}
