package org.airfit.select;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.airfit.air.AirState;
import org.airfit.flow.CapacityRange;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Wall;
import org.airfit.plant.RegulatorElement;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.MassFlow;
import org.airfit.quantity.PressureDrop;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;
import org.jspecify.annotations.Nullable;

/**
 * The rules about single parts said once more, as tables and from the facts alone: what a part breaks and what must be
 * asked of it. The code under test takes no part in it.
 */
final class ToldOnceMore {

  /** In the order of {@link Material}: suits (+), depends on the cleaner (?), does not suit (-). */
  private static final Map<Environment, String> TO_BUY = new EnumMap<>(Map.of(
      Environment.INDOORS, "++++++++",
      Environment.OUTDOORS, "--++++--",
      Environment.SALT_AIR, "---+++--",
      Environment.WASH_DOWN, "---+?+--",
      Environment.WASH_DOWN_WITH_WATER, "---+++--",
      Environment.WASH_DOWN_WITH_CAUSTIC, "---+-+--",
      Environment.SPARKING_HAZARD, "----+---"));

  private static final Map<Environment, String> THERE = new EnumMap<>(Map.of(
      Environment.INDOORS, "++++++++",
      Environment.OUTDOORS, "++++++++",
      Environment.SALT_AIR, "++++++++",
      Environment.WASH_DOWN, "++++?+?+",
      Environment.WASH_DOWN_WITH_WATER, "++++++++",
      Environment.WASH_DOWN_WITH_CAUSTIC, "++++-+-+",
      Environment.SPARKING_HAZARD, "----+---"));

  private static final String DROPPED = "-+++----";
  private static final String PERCUSSION = "+++++++-";

  private final Requirement job;

  ToldOnceMore(Requirement job) {
    this.job = job;
  }

  /** What a row of signs, one for each material in order, says of one. */
  private static char of(String signs, Material material) {
    return signs.charAt(List.of(Material.values()).indexOf(material));
  }

  /** Of a material: the worst of what place, knocks and tool say. */
  private char material(Position position, boolean isThere, Material material) {
    String said = ""
        + job.environment()
            .map(place ->
                of(Objects.requireNonNull((isThere ? THERE : TO_BUY).get(place)), material))
            .orElse('+');
    if (job.isDropped() && !isThere && isCoupling(position)) {
      said += of(DROPPED, material);
    }
    if (job.isImpactTool()) {
      said += of(PERCUSSION, material);
    }
    return said.contains("-") ? '-' : said.contains("?") ? '?' : '+';
  }

  private char material(Position position, Part part) {
    boolean isThere = part.facts().isExisting();
    Optional<Material> told = part.facts().material();
    char body;
    if (part instanceof Part.Hose hose
        && hose.upstream() instanceof End.HoseEnd
        && hose.downstream() instanceof End.HoseEnd) {
      body = '+';
    } else if (told.isPresent()) {
      body = material(position, isThere, told.get());
    } else {
      Set<Character> any = new LinkedHashSet<>();
      for (Material material : Material.values()) {
        any.add(material(position, isThere, material));
      }
      boolean isNewCoupling = !isThere && isCoupling(position);
      body = any.size() == 1 ? any.iterator().next() : isNewCoupling ? '-' : '?';
    }
    char wall = '+';
    if (job.isImpactTool() && part instanceof Part.Hose hose) {
      Optional<Wall> of = hose.conduit().wall();
      wall = of.isEmpty() ? '?' : of.get() == Wall.SMOOTH_PLASTIC ? '-' : '+';
    }
    if (wall == '+'
        && part instanceof Part.Hose
        && job.environment().equals(Optional.of(Environment.WASH_DOWN_WITH_CAUSTIC))) {
      wall = '?'; // only its maker knows whether it stands the cleaner
    }
    return body == '-' || wall == '-' ? '-' : body == '?' || wall == '?' ? '?' : '+';
  }

  /** The rules of one part that it breaks in its position, as far as a part breaks them alone. */
  Set<Rule> broken(Position position, Part part) {
    PartFacts facts = part.facts();
    Set<Rule> broken = EnumSet.noneOf(Rule.class);
    if (facts.rating().isEmpty()
        ? !facts.isExisting()
        : facts.rating().get().compareTo(job.highest()) < 0) {
      broken.add(Rule.PARTS_RATED);
    }
    for (double kelvins : temperatures()) {
      if (facts.coldest().isPresent()
          && (facts.coldest().get().kelvins() > kelvins
              || facts.hottest().get().kelvins() < kelvins)) {
        broken.add(Rule.TEMPERATURE_SUITS);
      }
    }
    if (material(position, part) == '-') {
      broken.add(Rule.MATERIAL_SUITS);
    }
    if (position.isHose()
        && job.environment().equals(Optional.of(Environment.SPARKING_HAZARD))
        && facts.staticDissipative().equals(Optional.of(false))) {
      broken.add(Rule.STATIC_CARRIED_OFF);
    }
    if (job.lubrication().isPresent()
        && facts.lubrication().isPresent()
        && !facts.lubrication().equals(job.lubrication())) {
      broken.add(Rule.AIR_KEPT_APART);
    }
    if (OwnRules.ofPart(job, part).contains("-")) {
      broken.add(Rule.SAFETY_RULES_ALLOW);
    }
    if (part instanceof Part.Hose hose
        && position.slot() instanceof Slot.Hose slot
        && slot.isWhip()
        && slot.hose().isEmpty()
        && hose.conduitRange().most().length().metres()
            > Math.max(10 * 0.3048, slot.reachRange().most().metres())) {
      broken.add(Rule.HOSE_SHORT_ENOUGH);
    }
    return broken;
  }

  private List<Double> temperatures() {
    List<Double> kelvins = new ArrayList<>();
    kelvins.add(job.toOutlet().stillAir().temperature().kelvins());
    job.coldest().map(Temperature::kelvins).ifPresent(kelvins::add);
    job.hottest().map(Temperature::kelvins).ifPresent(kelvins::add);
    return kelvins;
  }

  private boolean isUnusual() {
    double supply = job.toOutlet().stillAir().temperature().kelvins();
    return job.coldest().isPresent() || supply < 273.15 + 5.0 || supply > 273.15 + 40.0;
  }

  /** The rules that one part leaves open in its slot. */
  Set<Rule> asked(Position position, Part part) {
    PartFacts facts = part.facts();
    Set<Rule> asked = EnumSet.noneOf(Rule.class);
    if (facts.rating().isEmpty() && facts.isExisting()) {
      asked.add(Rule.PARTS_RATED);
    }
    if (isUnusual() && facts.coldest().isEmpty()) {
      asked.add(Rule.TEMPERATURE_SUITS);
    }
    if (material(position, part) == '?') {
      asked.add(Rule.MATERIAL_SUITS);
    }
    if (position.isHose()
        && job.environment().equals(Optional.of(Environment.SPARKING_HAZARD))
        && facts.staticDissipative().isEmpty()) {
      asked.add(Rule.STATIC_CARRIED_OFF);
    }
    if (job.lubrication().isEmpty() && facts.lubrication().isPresent()) {
      asked.add(Rule.AIR_KEPT_APART);
    }
    if (OwnRules.ofPart(job, part).contains("?")) {
      asked.add(Rule.SAFETY_RULES_ALLOW);
    }
    if (part instanceof Part.Hose hose && position.slot() instanceof Slot.Hose slot) {
      double shortest = hose.conduitRange().most().length().metres();
      double longest = hose.conduitRange().least().length().metres();
      if (shortest < slot.reachRange().most().metres()
          && longest >= slot.reachRange().least().metres()) {
        asked.add(Rule.HOSE_REACHES);
      }
      double whip = Math.max(10 * 0.3048, slot.reachRange().most().metres());
      if (slot.isWhip() && slot.hose().isEmpty() && shortest <= whip && longest > whip) {
        asked.add(Rule.HOSE_SHORT_ENOUGH);
      }
    }
    return asked;
  }

  /** What is remembered of the ways to several tools. */
  private static final class Said {
    private final Set<Rule> asked = EnumSet.noneOf(Rule.class);
    private final Set<Rule> broken = EnumSet.noneOf(Rule.class);
    private final Set<Lubrication> kept = EnumSet.noneOf(Lubrication.class);
    private boolean isEnoughAtBest = true;
    private boolean isEnoughAtWorst = true;
  }

  /** The rules that the parts and threads of a proposal leave open. */
  Set<Rule> asked(Proposal p) {
    Said said = new Said();
    for (Proposal way : p.toEachTool()) {
      new ToldOnceMore(way.requirement()).said(way, said);
    }
    if (said.kept.size() == 2) {
      said.broken.add(Rule.AIR_KEPT_APART);
    }
    if (said.isEnoughAtBest && !said.isEnoughAtWorst) {
      said.asked.add(Rule.AIR_AT_TOOL);
    }
    said.asked.removeAll(said.broken);
    return said.asked;
  }

  private void said(Proposal p, Said said) {
    Set<Lubrication> here = EnumSet.noneOf(Lubrication.class);
    for (Placed each : slotParts(p)) {
      said.asked.addAll(asked(each.position(), each.part()));
      said.broken.addAll(broken(each.position(), each.part()));
      if (each.part() instanceof Part.Hose hose
          && each.position().slot() instanceof Slot.Hose slot
          && hose.conduitRange().least().length().metres()
              < slot.reachRange().least().metres()) {
        said.broken.add(Rule.HOSE_REACHES);
      }
      each.part().facts().lubrication().ifPresent(here::add);
    }
    if (job.lubrication().isEmpty()) {
      said.kept.addAll(here);
    }
    for (Joint joint : p.joints()) {
      for (Mating mating : joint.matings()) {
        if (!mating.verdict().isSound()) {
          said.broken.add(Rule.ENDS_MATE);
        } else if (mating.isForLowPressure()) {
          said.asked.add(Rule.ENDS_MATE);
        }
      }
    }
    if (here.size() == 2) {
      said.broken.add(Rule.AIR_KEPT_APART);
    }
    if (job.isDropped() && job.environment().equals(Optional.of(Environment.SPARKING_HAZARD))) {
      said.broken.add(Rule.MATERIAL_SUITS);
    }
    if (OwnRules.ofJob(job) == '-') {
      said.broken.add(Rule.SAFETY_RULES_ALLOW);
    }
    said.isEnoughAtBest &= atBest(p) >= job.leastRange().least().pascals();
    said.isEnoughAtWorst &= Shelf.pascalsAtTool(p) >= job.leastRange().most().pascals();
  }

  /**
   * What arrives with all that is not known at its best [Pa above atmosphere], -1 for nothing. The flow of others is
   * added up here once more, element by element, and each element is a run of its own.
   */
  double atBest(Proposal p) {
    return arriving(p, /* isAtBest= */ true);
  }

  /** The same at worst. */
  double atWorst(Proposal p) {
    return arriving(p, /* isAtBest= */ false);
  }

  private double arriving(Proposal p, boolean isAtBest) {
    List<Slot> slots = job.layout().slots();
    double flow = kilogramsPerSecond(job.demandRange(), isAtBest);
    for (Slot slot : slots) {
      flow += others(slot, isAtBest);
    }
    AirState air = job.toOutlet(isAtBest ? Known.AT_BEST : Known.AT_WORST)
        .supply()
        .at(MassFlow.ofKilogramsPerSecond(flow))
        .orElseThrow();
    for (Requirement.Piping pipe : job.pipes()) {
      air = behind(
          air,
          flow,
          run -> run.through(
              "pipe", isAtBest ? pipe.conduit().most() : pipe.conduit().least()));
      if (air == null) {
        return -1.0;
      }
    }
    int slot = 0;
    for (Part part : p.parts()) {
      if (part instanceof Part.Plug) {
        slot++;
        continue;
      }
      air = behind(air, flow, through(part, slots.get(Math.min(slot, slots.size() - 1)), isAtBest));
      if (air == null) {
        return -1.0;
      }
      if (part instanceof Part.Splitter) {
        flow -= others(slots.get(slot), isAtBest);
      }
      slot += part instanceof Part.Adapter || part instanceof Part.Socket ? 0 : 1;
    }
    return air.pressure().pascals() - job.toOutlet().atmosphere().pascals();
  }

  private static double kilogramsPerSecond(Range<FreeAirFlow> air, boolean isAtBest) {
    return (isAtBest ? air.least() : air.most()).massFlow().kilogramsPerSecond();
  }

  private static double others(Slot slot, boolean isAtBest) {
    return slot instanceof Slot.Splitter splitter
        ? splitter.others().map(air -> kilogramsPerSecond(air, isAtBest)).orElse(0.0)
        : 0.0;
  }

  private UnaryOperator<Run> through(Part part, Slot slot, boolean isAtBest) {
    if (part instanceof Part.Hose hose) {
      return run -> run.through(
          "hose", isAtBest ? hose.conduitRange().most() : hose.conduitRange().least());
    }
    if (part instanceof Part.Adapter adapter) {
      return run -> run.through("adapter", adapter.conduit());
    }
    if (part instanceof Part.Regulator regulator) {
      Range<GaugePressure> set = ((Slot.Regulated) slot).setRange();
      RegulatorElement still = RegulatorElement.of(
          regulator.capacity(),
          (isAtBest ? set.most() : set.least()).absolute(job.toOutlet().atmosphere()));
      PressureDrop droop =
          isAtBest ? regulator.droopRange().least() : regulator.droopRange().most();
      RegulatorElement element = regulator.atFlow().isPresent()
          ? still.withDroop(droop, regulator.atFlow().get())
          : still.withDroopAtAnyFlow(droop);
      return run -> run.through("regulator", element);
    }
    CapacityRange capacity = part instanceof Part.Socket socket
        ? socket.capacityRange()
        : part instanceof Part.Splitter splitter
            ? splitter.capacityRange()
            : ((Part.Device) part).capacityRange();
    return run -> run.through("part", isAtBest ? capacity.most() : capacity.least());
  }

  private @Nullable AirState behind(AirState air, double flow, UnaryOperator<Run> through) {
    Run run = through.apply(Run.from(air, job.toOutlet().atmosphere()));
    return run.at(MassFlow.ofKilogramsPerSecond(flow))
        .fold(delivered -> air.at(delivered.atTool()), starved -> null);
  }

  private static boolean isCoupling(Position position) {
    return position.kind() == Position.Kind.SOCKET || position.kind() == Position.Kind.PLUG;
  }

  /** The parts of a proposal with their positions, by the layout alone, the adapters at the end. */
  static List<Placed> slotParts(Proposal p) {
    List<Placed> parts = new ArrayList<>();
    List<Part> placed =
        p.parts().stream().filter(part -> !(part instanceof Part.Adapter)).toList();
    List<Position> positions = Position.of(p.requirement());
    for (int i = 0; i < positions.size(); i++) {
      parts.add(new Placed(positions.get(i), placed.get(i)));
    }
    p.joints()
        .forEach(joint ->
            joint.adapters().forEach(adapter -> parts.add(new Placed(Position.ADAPTER, adapter))));
    return parts;
  }
}
