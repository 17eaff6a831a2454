package org.airfit.select;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowCoefficients;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.ConduitRange;
import org.airfit.line.Wall;
import org.airfit.plant.Regulator;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.source.Source;

/** Small catalogues and jobs at random, from few values so that ties and near misses are common. */
final class Jumble {

  private static final List<String> ENDS = List.of(
      "3/8 NPT female",
      "3/8 NPT male",
      "3/8 NPT female",
      "3/8 NPT male",
      "1/4 NPT male",
      "1/4 NPT female",
      "3/8 NPSC female",
      "G 1/4 male",
      "10 mm barb");

  private final Random random;
  private final boolean isSpoiled;
  private final boolean isRanged;
  private int made;
  private int lines;

  Jumble(long seed) {
    this.random = new Random(seed);
    this.isSpoiled = random.nextInt(3) == 0;
    this.isRanged = random.nextInt(3) == 0;
  }

  @SafeVarargs
  private <T> T one(T... of) {
    return of[random.nextInt(of.length)];
  }

  private boolean rarely() {
    return random.nextInt(isSpoiled ? 4 : 30) == 0;
  }

  private boolean often() {
    return random.nextInt(isSpoiled ? 3 : 8) > 0;
  }

  private PartFacts facts() {
    made++;
    PartFacts facts = PartFacts.of("id" + random.nextInt(1000) + "-" + made, one("a", "b", "c"));
    if (!rarely()) {
      facts = facts.withMaterial(
          rarely() ? one(Material.values()) : one(Material.STAINLESS_STEEL, Material.BRASS));
    }
    if (!rarely()) {
      facts = facts.withRating(GaugePressure.ofBar(rarely() ? 6.0 : one(10.0, 16.0)));
    }
    if (often()) {
      facts = facts.withPrice(Money.parse(one("5 EUR", "5.00 EUR", "12.25 EUR", "30 EUR")));
    }
    if (rarely()) {
      facts = facts.withLubrication(one(Lubrication.values()));
    }
    if (rarely()) {
      facts = facts.withTemperatures(
          Temperature.ofCelsius(one(-30.0, 0.0)), Temperature.ofCelsius(one(40.0, 80.0)));
    }
    facts = often() ? facts.withSleeveGuarded() : facts;
    facts = often() ? facts.withVent() : facts;
    return rarely() ? facts.asExisting() : facts;
  }

  private End end() {
    return End.parse(ENDS.get(random.nextInt(ENDS.size())));
  }

  private Part.Socket socket() {
    return new Part.Socket(
        facts(),
        one(Set.of("finch"), Set.of("finch"), Set.of("wren"), Set.of("finch", "wren")),
        often() ? End.parse("3/8 NPT female") : end(),
        maybe(FlowCapacity.of(
                SonicConductance.ofCubicDecimetresPerSecondBar(one(2.5, 6.0, 9.0, 9.0)),
                one(0.2, 0.3, 0.45))
            .withSubsonicIndex(one(0.5, 0.5, 0.6))));
  }

  /** A capacity that is not always known. */
  private CapacityRange maybe(FlowCapacity capacity) {
    if (random.nextInt(isRanged ? 3 : 20) > 0) {
      return CapacityRange.exactly(capacity);
    }
    FlowCoefficients figures = capacity.figures();
    FlowCapacity wider = FlowCapacity.of(new FlowCoefficients(
        SonicConductance.ofCubicMetresPerSecondPascal(
            one(1.0, 1.5) * figures.conductance().cubicMetresPerSecondPascal()),
        figures.criticalPressureRatio() + one(0.0, 0.1),
        figures.subsonicIndex(),
        figures.crackingPressure()));
    return new CapacityRange(capacity, wider, Source.derived("made up"));
  }

  /** A regulator of which it is not always known what it is set to. */
  private Slot.Regulated maybe(Slot.Regulated regulated) {
    return random.nextInt(isRanged ? 2 : 20) > 0
        ? regulated
        : regulated.withSetRange(new Range<>(
            GaugePressure.ofBar(regulated.set().bar() - one(0.2, 0.5, 1.0)), regulated.set()));
  }

  /** A conduit that is not always known. */
  private ConduitRange maybe(Conduit conduit) {
    if (random.nextInt(isRanged ? 3 : 20) > 0) {
      return ConduitRange.exactly(conduit);
    }
    Conduit wider = Conduit.of(
            conduit.bore().times(one(1.0, 1.3)),
            conduit.length().times(one(1.0, 1.0, 0.9)),
            Length.ofMetres(0.0))
        .withFittings(conduit.fittingLoss());
    return new ConduitRange(conduit, wider, Source.derived("made up"));
  }

  private Part.Plug plug() {
    return new Part.Plug(
        facts(),
        one("finch", "finch", "wren"),
        often() ? End.parse(one("3/8 NPT female", "1/4 NPT male")) : end());
  }

  private Conduit conduit(double boreMm, double metres, double fittings) {
    return Conduit.of(
            Length.ofMillimetres(boreMm), Length.ofMetres(metres), Length.ofMillimetres(0.01))
        .withFittings(fittings);
  }

  private PartFacts hoseFacts() {
    PartFacts facts = facts();
    return often() ? facts.withStaticDissipative(!rarely()) : facts;
  }

  private Part.Hose hose() {
    double bore = one(6.0, 9.5, 9.5, 12.7);
    return walled(new Part.Hose(
        hoseFacts(),
        HoseBore.of(Length.ofMillimetres(bore)),
        maybe(conduit(bore, one(5.0, 10.0, 10.0, 20.0), one(0.0, 1.5))),
        often() ? End.parse("3/8 NPT male") : end(),
        often() ? End.parse("3/8 NPT male") : end()));
  }

  private Part.Hose walled(Part.Hose hose) {
    return often()
        ? Shelf.of(rarely() ? Wall.SMOOTH_PLASTIC : Wall.SMOOTH_RUBBER_HOSE, hose)
        : hose;
  }

  private Part.Adapter adapter() {
    return new Part.Adapter(
        facts(), end(), end(), conduit(one(4.0, 7.0, 9.0), 0.03, one(0.5, 1.5)));
  }

  List<Part> parts() {
    List<Part> parts = new ArrayList<>();
    if (!isSpoiled) {
      parts.add(new Part.Plug(facts(), "finch", End.parse("3/8 NPT female")));
      parts.add(new Part.Plug(facts(), "finch", End.parse("1/4 NPT male")));
      parts.add(Shelf.socket(facts(), "finch", "3/8 NPT female", one(6.0, 9.0)));
      parts.add(walled(Shelf.hose(hoseFacts(), one(9.5, 12.7), 10.0)));
    }
    for (int i = random.nextInt(4); i >= -1; i--) {
      parts.add(socket());
    }
    for (int i = random.nextInt(5); i >= -2; i--) {
      parts.add(plug());
    }
    for (int i = random.nextInt(3); i >= 0; i--) {
      parts.add(hose());
    }
    for (int i = random.nextInt(5); i > 0; i--) {
      parts.add(adapter());
    }
    for (int i = random.nextInt(3); i >= 0; i--) {
      parts.add(regulator());
    }
    for (int i = random.nextInt(4); i > 0; i--) {
      parts.add(device());
    }
    if (random.nextBoolean()) {
      parts.add(regulator().as(RegulatorKind.FILTER_REGULATOR));
    }
    return parts;
  }

  private Part.Device device() {
    return new Part.Device(
        facts(),
        one(DeviceKind.FILTER, DeviceKind.FILTER, DeviceKind.LUBRICATOR, DeviceKind.REEL),
        maybe(FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(one(4.0, 9.0)), one(0.2, 0.45))),
        End.parse(one("3/8 NPT female", "3/8 NPT male")),
        End.parse(one("3/8 NPT female", "3/8 NPT male")));
  }

  /** One of which nobody told the droop now and then. */
  private Part.Regulator regulator() {
    Part.Regulator told = toldRegulator();
    return random.nextInt(4) > 0
        ? told
        : new Part.Regulator(
            told.facts(),
            told.kind(),
            told.capacityRange(),
            Regulator.UNTOLD_DROOP,
            Optional.empty(),
            told.upstream(),
            told.downstream());
  }

  private Part.Regulator toldRegulator() {
    return new Part.Regulator(
        facts(),
        FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(one(4.0, 9.0)), one(0.2, 0.45)),
        PressureDrop.ofBar(one(0.0, 0.2, 0.5)),
        FreeAirFlow.ofAnrLitresPerSecond(one(10.0, 20.0)),
        End.parse(one("3/8 NPT female", "3/8 NPT male")),
        End.parse("3/8 NPT female"));
  }

  /** A job whose layout is not that of most jobs. */
  Requirement jobOfAnyLayout() {
    Slot.Coupling outlet = Slot.coupling("outlet");
    Slot.Coupling tool = Slot.coupling("tool");
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(one(5.0, 10.0)));
    Slot.Hose whip = Slot.whipHose("whip hose", Length.ofMetres(one(1.0, 10.0)));
    Slot.InLine device = Slot.inLine("device", device());
    GaugePressure set = GaugePressure.ofBar(one(5.0, 6.0, 6.5));
    Slot.Regulated regulated = maybe(Slot.regulator("regulator", set));
    Slot.InLine filter = Slot.inLine("filter", DeviceKind.FILTER);
    Slot.Regulated failing = regulated.failingAt(GaugePressure.ofBar(one(6.5, 7.5, 12.0)));
    List<Slot> slots = switch (random.nextInt(15)) {
      case 0 -> List.of(hose);
      case 1 -> List.of(outlet, hose);
      case 2 -> List.of(hose, tool.ofProfile(one("finch", "wren")));
      case 3 -> List.of(device, outlet, hose, tool);
      case 4 -> List.of(outlet, hose, device, tool.withPlug(plug()));
      case 5 -> List.of(outlet, tool, hose);
      case 6 -> List.of(regulated, outlet, hose);
      case 7 -> List.of(outlet, hose, regulated.with(regulator()));
      case 8 -> List.of(hose, regulated, device, Slot.regulator("second", set));
      case 9 -> List.of(filter, outlet, hose);
      case 10 -> List.of(outlet, hose, tool.ofSameProfileAs("outlet"));
      case 11 ->
        List.of(Slot.coupling("first"), hose, outlet.ofSameProfileAs("first").withPlug(plug()));
      case 12 -> List.of(failing, outlet, hose);
      case 13 ->
        List.of(Slot.regulator("filter regulator", RegulatorKind.FILTER_REGULATOR, set), hose);
      default -> List.of(outlet.withSocket(socket()), hose, whip);
    };
    Requirement.Builder job = job(true).layout(Layout.of(slots));
    return (Layout.of(slots).hasLubricator() ? job.lubrication(Lubrication.LUBRICATED) : job)
        .build();
  }

  /** A job with the slots of another, that does not know how far its hoses must reach, and may ask for bores. */
  Requirement inDoubtOfReach(Requirement job) {
    List<ToolLine> lines = new ArrayList<>();
    for (ToolLine line : job.layout().lines()) {
      lines.add(line.withSlots(this::inDoubt));
    }
    return job.toBuilder()
        .layout(Layout.of(inDoubt(job.layout().slots()), lines))
        .build();
  }

  private List<Slot> inDoubt(List<Slot> slots) {
    List<Slot> all = new ArrayList<>();
    for (Slot slot : slots) {
      if (slot instanceof Slot.Hose hose) {
        Slot.Hose doubtful = hose.reaching(new Range<>(
            Length.ofMetres(one(1.0, 5.0, 6.0)), Length.ofMetres(one(9.0, 10.0, 20.0))));
        all.add(
            random.nextInt(4) == 0 && hose.hose().isEmpty()
                ? doubtful.ofBore(HoseBore.of(Length.ofMillimetres(9.5)))
                : doubtful);
      } else {
        all.add(slot);
      }
    }
    return all;
  }

  private Range<FreeAirFlow> demand() {
    double most = one(4.0, 8.0, 12.0, 12.0);
    double least = isRanged ? most * one(0.4, 0.9, 1.0) : most;
    return new Range<>(
        FreeAirFlow.ofAnrLitresPerSecond(least), FreeAirFlow.ofAnrLitresPerSecond(most));
  }

  private Range<GaugePressure> least() {
    double most = one(4.0, 5.0, 5.5, 6.2);
    double least = isRanged ? most - one(0.0, 0.0, 0.5) : most;
    return new Range<>(GaugePressure.ofBar(least), GaugePressure.ofBar(most));
  }

  Requirement.Builder job() {
    return job(false);
  }

  private Requirement.Builder job(boolean hasLayout) {
    Requirement.Builder job = Requirement.forTool(demand(), least()).toolInlet(inlet());
    return told(job, hasLayout, /* isOfOneTool= */ true);
  }

  private End inlet() {
    return End.parse(one("1/4 NPT female", "1/4 NPT female", "1/4 NPT female", "3/8 NPT female"));
  }

  private Part.Splitter splitter() {
    String outlet = one("3/8 NPT female", "3/8 NPT male");
    String other = one(outlet, outlet, "1/4 NPT female");
    return new Part.Splitter(
        facts(),
        maybe(FlowCapacity.of(
            SonicConductance.ofCubicDecimetresPerSecondBar(one(9.0, 18.0)), one(0.2, 0.45))),
        End.parse(one("3/8 NPT female", "3/8 NPT male")),
        one(
            List.of(End.parse(outlet), End.parse(other)),
            List.of(End.parse(outlet), End.parse(outlet), End.parse(other)),
            List.of(End.parse(outlet), End.parse(outlet), End.parse(outlet), End.parse(other))));
  }

  /** One with an outlet for every line that can be. */
  private Part.Splitter largeSplitter() {
    return new Part.Splitter(
        facts(),
        FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(18.0), 0.3),
        End.parse(one("3/8 NPT female", "3/8 NPT male")),
        Collections.nCopies(6, End.parse(one("3/8 NPT female", "3/8 NPT male"))));
  }

  /** The same parts with some splitters. */
  List<Part> partsWithSplitters() {
    List<Part> parts = parts();
    for (int i = random.nextInt(3); i >= 0; i--) {
      parts.add(splitter());
    }
    if (!isSpoiled) {
      parts.add(new Part.Splitter(
          facts(),
          FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(18.0), 0.3),
          End.parse("3/8 NPT female"),
          Collections.nCopies(4, End.parse("3/8 NPT female"))));
      parts.add(new Part.Adapter(
          facts(),
          End.parse("3/8 NPT female"),
          End.parse("1/4 NPT male"),
          conduit(9.0, 0.03, 0.5)));
    }
    return parts;
  }

  private Range<FreeAirFlow> smallDemand() {
    double most = one(2.0, 4.0, 6.0);
    double least = isRanged ? most * one(0.4, 0.9, 1.0) : most;
    return new Range<>(
        FreeAirFlow.ofAnrLitresPerSecond(least), FreeAirFlow.ofAnrLitresPerSecond(most));
  }

  private ToolLine line(int number) {
    Slot.Hose hose = Slot.hose("hose " + number, Length.ofMetres(one(5.0, 10.0)));
    Slot.Coupling coupling = Slot.coupling("coupling " + number);
    List<Slot> slots = switch (random.nextInt(5)) {
      case 0 -> List.of(coupling);
      case 1 ->
        List.of(Slot.regulator("regulator " + number, GaugePressure.ofBar(one(5.0, 6.0))), hose);
      case 2 -> List.of(Slot.inLine("device " + number, device()), hose);
      default -> List.of(hose);
    };
    ToolLine line =
        ToolLine.to("tool " + number, smallDemand(), least(), inlet(), slots).alike(one(1, 1, 2));
    line = rarely() ? line.withImpactTool() : line;
    line = rarely() ? line.withToolRating(GaugePressure.ofBar(one(6.0, 7.0))) : line;
    return rarely() ? line.withBlowGun(GaugePressure.ofPsi(one(20, 40))) : line;
  }

  /** A job of two or three tools, of which some may be alike. */
  Requirement jobOfSeveralTools() {
    Slot.Splitter splitter = Slot.splitter("splitter");
    splitter = rarely() ? splitter.sharedWith(smallDemand()) : splitter;
    splitter = rarely() ? splitter.with(largeSplitter()) : splitter;
    List<Slot> shared = switch (random.nextInt(4)) {
      case 0 -> List.of(Slot.hose("hose", Length.ofMetres(5.0)), splitter);
      case 1 ->
        List.of(maybe(Slot.regulator("regulator", GaugePressure.ofBar(one(6.0, 6.5)))), splitter);
      default -> List.of(splitter);
    };
    List<ToolLine> lines = new ArrayList<>(List.of(line(1)));
    if (lines.get(0).count() == 1 || random.nextBoolean()) {
      lines.add(line(2));
    }
    if (lines.size() == 2 && random.nextInt(5) == 0) {
      lines.add(line(3));
    }
    Requirement.Builder job = Requirement.forTools(Layout.of(shared, lines));
    boolean isOiled = Layout.of(shared, lines).hasLubricator();
    job = told(job, /* hasLayout= */ true, /* isOfOneTool= */ false);
    return (isOiled ? job.lubrication(Lubrication.LUBRICATED) : job).build();
  }

  /** A job of several tools, some of them behind a second splitter, and now and then behind a third. */
  Requirement jobOfNestedSplitters() {
    Slot.Splitter splitter = Slot.splitter("splitter");
    splitter = often() ? splitter.with(largeSplitter()) : splitter;
    splitter = rarely() ? splitter.sharedWith(smallDemand()) : splitter;
    List<ToolLine> lines = new ArrayList<>(List.of(nested(2)));
    if (lines.get(0).count() == 1 || random.nextBoolean()) {
      lines.add(random.nextInt(2), shortLine());
    }
    Layout layout = Layout.of(List.of(splitter), lines);
    Requirement.Builder job =
        told(Requirement.forTools(layout), /* hasLayout= */ true, /* isOfOneTool= */ false);
    return (layout.hasLubricator() ? job.lubrication(Lubrication.LUBRICATED) : job).build();
  }

  /** A line to a splitter with lines to tools, or with one more that is like itself. */
  private ToolLine nested(int number) {
    Slot.Splitter open = Slot.splitter("splitter " + number);
    Slot.Splitter splitter = random.nextBoolean() ? open : open.with(largeSplitter());
    splitter = random.nextInt(4) == 0 ? splitter.sharedWith(smallDemand()) : splitter;
    Slot.Regulated regulator =
        maybe(Slot.regulator("regulator " + number, GaugePressure.ofBar(one(5.0, 6.0))));
    List<Slot> slots = switch (random.nextInt(4)) {
      case 0 -> List.of(Slot.inLine("device " + number, device()), splitter);
      case 1 -> List.of(regulator.with(regulator()), splitter);
      case 2 -> List.of(Slot.hose("hose " + number, Length.ofMetres(5.0)), splitter);
      default -> List.of(splitter);
    };
    List<ToolLine> lines = new ArrayList<>(List.of(shortLine()));
    if (number == 2 && random.nextInt(3) == 0) {
      lines.add(random.nextInt(2), nested(3));
      return ToolLine.toSplitter(slots, lines); // more of it would hold too many pieces
    } else if (lines.get(0).count() == 1 || random.nextBoolean()) {
      lines.add(shortLine());
    }
    return ToolLine.toSplitter(slots, lines).alike(one(1, 1, 2));
  }

  /** A line of one slot, most often with what is there. */
  private ToolLine shortLine() {
    int number = ++lines;
    Slot.Hose hose = Slot.hose("own hose " + number, Length.ofMetres(one(5.0, 10.0)));
    Slot slot = switch (random.nextInt(4)) {
      case 0 -> Slot.inLine("own device " + number, device());
      case 1 -> hose.with(hose());
      default -> hose;
    };
    ToolLine line = ToolLine.to("tool " + number, smallDemand(), least(), inlet(), List.of(slot));
    line = rarely() ? line.withImpactTool() : line;
    line = rarely() ? line.withToolRating(GaugePressure.ofBar(one(6.0, 7.0))) : line;
    return line.alike(one(1, 1, 2));
  }

  /** A job one of whose slots leads to others of whom only their air is known. */
  Requirement jobSharedWithOthers() {
    Slot.Splitter splitter = Slot.splitter("splitter").sharedWith(smallDemand());
    Slot.Hose hose = Slot.hose("hose", Length.ofMetres(one(5.0, 10.0)));
    List<Slot> slots = random.nextBoolean()
        ? List.of(splitter, hose)
        : List.of(hose, splitter, Slot.coupling("outlet"));
    return job(true).layout(Layout.of(slots)).build();
  }

  private Requirement.Builder told(
      Requirement.Builder toTool, boolean hasLayout, boolean isOfOneTool) {
    Requirement.Builder job = toTool
        .supply(
            AirState.of(
                Shelf.SUPPLY.pressure(),
                Temperature.ofCelsius(rarely() ? one(70.0, -5.0, 40.0) : 20.0)),
            Shelf.ATMOSPHERE)
        .outlet(End.parse(one("3/8 NPT male", "3/8 NPT male", "3/8 NPT male", "1/4 NPT male")))
        .highest(GaugePressure.ofBar(one(8.0, 8.0, 10.0)))
        .objective(one(Objective.values()));
    if (!hasLayout) {
      job = job.reach(Length.ofMetres(one(5.0, 5.0, 10.0)));
      job = rarely() ? job.outletSocket(socket()) : job;
      job = rarely() ? job.toolPlug(plug()) : job;
      job = rarely() ? job.hose(hose()) : job;
    }
    job = rarely() ? job.profile(one("finch", "wren")) : job;
    job = rarely() ? job.profilesInUse(Set.of("finch", "wren")) : job;
    job = rarely() ? job.environment(one(Environment.values())) : job;
    job =
        random.nextInt(isSpoiled ? 2 : 15) == 0 ? job.lubrication(one(Lubrication.values())) : job;
    job = rarely() ? job.dropped() : job;
    job = rarely() && isOfOneTool ? job.impactTool() : job;
    job = rarely() && isOfOneTool ? job.whipHose() : job;
    job = rarely() ? job.dragged() : job;
    job = rarely() ? job.ventRequired() : job;
    job = rarely() && isOfOneTool ? job.blowGun(GaugePressure.ofPsi(one(20, 30, 40))) : job;
    job = rarely() && isOfOneTool ? job.toolRating(GaugePressure.ofBar(one(6.0, 7.0))) : job;
    job = rarely() && isOfOneTool ? job.painting() : job;
    job = random.nextInt(5) == 0 ? job.rules(OwnRules.some(random)) : job;
    job = rarely() ? job.pipe("pipe", maybe(conduit(12.0, 40.0, 2.0))) : job;
    job = rarely()
        ? job.temperatures(Temperature.ofCelsius(-10.0), Temperature.ofCelsius(60.0))
        : job;
    job = random.nextInt(isRanged ? 3 : 20) == 0
        ? job.regulated().leastSetting(GaugePressure.ofBar(one(5.0, 6.0, 6.5)))
        : job;
    return rarely() ? job.lowest(GaugePressure.ofBar(one(5.5, 6.8))) : job;
  }
}
