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
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.line.Wall;
import org.airfit.quantity.Temperature;
import org.airfit.run.Run;

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
    return asked;
  }

  /** The rules that the parts and threads of a proposal leave open. */
  Set<Rule> asked(Proposal p) {
    Set<Rule> asked = EnumSet.noneOf(Rule.class);
    Set<Rule> broken = EnumSet.noneOf(Rule.class);
    Set<Lubrication> kept = EnumSet.noneOf(Lubrication.class);
    for (Placed each : slotParts(p)) {
      asked.addAll(asked(each.position(), each.part()));
      broken.addAll(broken(each.position(), each.part()));
      each.part().facts().lubrication().ifPresent(kept::add);
    }
    for (Joint joint : p.joints()) {
      for (Mating mating : joint.matings()) {
        if (!mating.verdict().isSound()) {
          broken.add(Rule.ENDS_MATE);
        } else if (mating.isForLowPressure()) {
          asked.add(Rule.ENDS_MATE);
        }
      }
    }
    if (kept.size() == 2) {
      broken.add(Rule.AIR_KEPT_APART);
    }
    if (job.isDropped() && job.environment().equals(Optional.of(Environment.SPARKING_HAZARD))) {
      broken.add(Rule.MATERIAL_SUITS);
    }
    if (OwnRules.ofJob(job) == '-') {
      broken.add(Rule.SAFETY_RULES_ALLOW);
    }
    double atWorst = Shelf.pascalsAtTool(p);
    if (atBest(p) >= job.leastRange().least().pascals()
        && atWorst < job.leastRange().most().pascals()) {
      asked.add(Rule.AIR_AT_TOOL);
    }
    asked.removeAll(broken);
    return asked;
  }

  /** What arrives with all that is not known at its best [Pa above atmosphere], -1 for nothing. */
  double atBest(Proposal p) {
    Run run = p.run();
    List<String> names = run.names();
    int element = 0;
    for (Requirement.Piping pipe : job.pipes()) {
      run = run.replacing(names.get(element++), pipe.conduit().most());
    }
    for (Part part : p.parts()) {
      if (part instanceof Part.Plug) {
        continue;
      }
      String name = names.get(element++);
      if (part instanceof Part.Hose hose) {
        run = run.replacing(name, hose.conduitRange().most());
      } else if (part instanceof Part.Socket socket) {
        run = run.replacing(name, socket.capacityRange().most());
      } else if (part instanceof Part.Device device) {
        run = run.replacing(name, device.capacityRange().most());
      }
    }
    return run.at(job.demandRange().least())
        .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
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
