package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.Money;
import org.airfit.quantity.PressureUnit;
import org.airfit.run.ElementLoss;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.safety.SafetyRule;
import org.airfit.safety.Situation;
import org.airfit.working.Working;

/**
 * A set of parts between the wall outlet and the tool, with what the rules say of it.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Proposal {

  private final Requirement requirement;
  private final Part.Socket wallSocket;
  private final Part.Plug hosePlug;
  private final Part.Hose hose;
  private final Part.Socket toolSocket;
  private final Part.Plug toolPlug;
  private final List<Joint> joints;
  private final Run run;
  private final RunResult result;
  private final List<Finding> findings;

  Proposal(
      Requirement requirement,
      Coupling atWall,
      Part.Hose hose,
      Coupling atTool,
      List<Joint> joints) {
    this.requirement = requirement;
    this.wallSocket = atWall.socket();
    this.hosePlug = atWall.plug();
    this.hose = hose;
    this.toolSocket = atTool.socket();
    this.toolPlug = atTool.plug();
    this.joints = List.copyOf(joints);
    Run way = through(requirement.toOutlet(), joints.get(0));
    way = way.through("wall coupling, " + wallSocket.name(), wallSocket.capacity());
    way = through(way, joints.get(1)).through(hose.name(), hose.conduit());
    way = through(way, joints.get(2));
    way = way.through("tool coupling, " + toolSocket.name(), toolSocket.capacity());
    this.run = through(way, joints.get(3));
    this.result = run.at(requirement.demand());
    this.findings = Stream.of(Rule.values()).map(rule -> rule.judge(this)).toList();
  }

  /** A socket and the plug that goes into it. */
  record Coupling(Part.Socket socket, Part.Plug plug) {

    boolean mates() {
      return socket.profiles().contains(plug.profile());
    }
  }

  private static Run through(Run run, Joint joint) {
    Run longer = run;
    for (Part.Adapter adapter : joint.adapters()) {
      longer = longer.through(adapter.name(), adapter.conduit());
    }
    return longer;
  }

  /** {@return what was asked for} */
  public Requirement requirement() {
    return requirement;
  }

  /** {@return the socket at the wall} */
  public Part.Socket wallSocket() {
    return wallSocket;
  }

  /** {@return the plug at the hose's upstream end} */
  public Part.Plug hosePlug() {
    return hosePlug;
  }

  /** {@return the hose} */
  public Part.Hose hose() {
    return hose;
  }

  /** {@return the socket at the hose's downstream end} */
  public Part.Socket toolSocket() {
    return toolSocket;
  }

  /** {@return the plug in the tool} */
  public Part.Plug toolPlug() {
    return toolPlug;
  }

  /** {@return the four joints from the wall to the tool, with their adapters} */
  public List<Joint> joints() {
    return joints;
  }

  /** {@return the run from the supply to the tool} */
  public Run run() {
    return run;
  }

  /** {@return what arrives at the tool} */
  public RunResult result() {
    return result;
  }

  /** {@return what every rule says, in the order of {@link Rule}} */
  public List<Finding> findings() {
    return findings;
  }

  /** {@return the findings that are not met} */
  public List<Finding> unmet() {
    return of(Finding.Verdict.UNMET);
  }

  /** {@return the findings that wait for an answer: what is still to be asked of the customer} */
  public List<Finding> open() {
    return of(Finding.Verdict.OPEN);
  }

  private List<Finding> of(Finding.Verdict verdict) {
    return findings.stream().filter(finding -> finding.verdict() == verdict).toList();
  }

  /** {@return whether no rule is unmet} */
  public boolean fits() {
    return unmet().isEmpty();
  }

  /** A part and where it sits. */
  record Seated(Slot seat, Part part) {}

  /** Every part from the wall to the tool, adapters in their places. */
  List<Part> parts() {
    return seated().stream().map(Seated::part).toList();
  }

  List<Seated> seated() {
    List<Seated> seated = new ArrayList<>();
    seatAdapters(seated, 0);
    seated.add(new Seated(Slot.WALL_SOCKET, wallSocket));
    seated.add(new Seated(Slot.HOSE_PLUG, hosePlug));
    seatAdapters(seated, 1);
    seated.add(new Seated(Slot.HOSE, hose));
    seatAdapters(seated, 2);
    seated.add(new Seated(Slot.TOOL_SOCKET, toolSocket));
    seated.add(new Seated(Slot.TOOL_PLUG, toolPlug));
    seatAdapters(seated, 3);
    return seated;
  }

  private void seatAdapters(List<Seated> seated, int joint) {
    joints.get(joint).adapters().forEach(part -> seated.add(new Seated(Slot.ADAPTER, part)));
  }

  Optional<GaugePressure> lowestRating() {
    return parts().stream()
        .flatMap(part -> part.facts().rating().stream())
        .min(Comparator.naturalOrder());
  }

  /** How many pieces must be bought. */
  long pieces() {
    return parts().stream().filter(part -> !part.facts().isAlreadyThere()).count();
  }

  /** {@return the parts to buy whose price is not known, each once} */
  public List<Part> unpriced() {
    return parts().stream()
        .filter(part -> !part.facts().isAlreadyThere())
        .filter(part -> part.facts().price().isEmpty())
        .distinct()
        .toList();
  }

  /** {@return what the parts to buy cost together, as far as prices are known; empty if none is} */
  public Optional<Money> price() {
    return parts().stream()
        .filter(part -> !part.facts().isAlreadyThere())
        .flatMap(part -> part.facts().price().stream())
        .reduce(Money::plus);
  }

  /** {@return the price in words, such as "48.20 EUR" or "48.20 EUR without Hose 10 m, whose price is not known"; empty if no price is known} */
  public Optional<String> priceInWords() {
    String without =
        unpriced().stream().map(Part::name).distinct().collect(Collectors.joining(", "));
    return price()
        .map(known -> known.format(2)
            + (without.isEmpty() ? "" : " without " + without + ", of unknown price"));
  }

  /** The pressure at the tool [Pa above atmosphere]; below every other where it starves. */
  double pascalsAtTool() {
    return result.fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
  }

  /** {@return the parts with their quantities and a reason each, from the wall to the tool} */
  public List<PartsLine> partsList() {
    Map<Part, List<String>> reasons = new LinkedHashMap<>();
    adapters(reasons, 0);
    note(
        reasons,
        wallSocket,
        "at the wall: takes profile " + hosePlug.profile() + taken("wall coupling, "));
    note(reasons, hosePlug, "on the hose, into " + wallSocket.name());
    adapters(reasons, 1);
    note(
        reasons,
        hose,
        "reaches " + hose.conduit().length().format(LengthUnit.METRE) + " with "
            + hose.conduit().bore().format(LengthUnit.MILLIMETRE) + " of bore" + taken(""));
    adapters(reasons, 2);
    note(
        reasons,
        toolSocket,
        "on the hose: takes profile " + toolPlug.profile() + taken("tool coupling, "));
    note(reasons, toolPlug, "in the tool, into " + toolSocket.name());
    adapters(reasons, 3);
    return reasons.entrySet().stream()
        .map(entry -> new PartsLine(
            entry.getKey(),
            entry.getValue().size(),
            entry.getKey().facts().isAlreadyThere(),
            String.join("; ", entry.getValue())))
        .toList();
  }

  private void adapters(Map<Part, List<String>> reasons, int joint) {
    for (Part.Adapter adapter : joints.get(joint).adapters()) {
      note(reasons, adapter, "joins " + joints.get(joint).where());
    }
  }

  private static void note(Map<Part, List<String>> reasons, Part part, String reason) {
    reasons.computeIfAbsent(part, any -> new ArrayList<>()).add(reason);
  }

  /** What the element of that name takes of the pressure, as the end of a sentence. */
  private String taken(String place) {
    String name = place.isEmpty()
        ? hose.name()
        : place + (place.startsWith("wall") ? wallSocket : toolSocket).name();
    return shares().stream()
        .filter(share -> share.name().equals(name))
        .findFirst()
        .map(share -> ", costs " + share.drop().format(PressureUnit.BAR, 2))
        .orElse("");
  }

  private List<ElementLoss> shares() {
    return result.fold(delivered -> delivered.shares(), starved -> starved.before());
  }

  /** {@return the warnings that go with these parts} */
  public List<Caution> cautions() {
    Situation.Builder situation =
        Situation.describe().quickCouplers().toolOnHose(hose.conduit().bore());
    lowestRating().ifPresent(lowest -> situation.ratedParts(requirement.highest(), lowest));
    if (requirement.isImpactTool()) {
      situation.impactTool();
    }
    requirement.cleaningDeadEnd().ifPresent(situation::cleaning);
    List<Caution> cautions = new ArrayList<>(SafetyRule.cautions(situation.build()));
    Caution deference = cautions.remove(cautions.size() - 1);
    cautions.addAll(result.cautions());
    joints.stream().flatMap(joint -> joint.cautions().stream()).distinct().forEach(cautions::add);
    cautions.add(deference);
    return List.copyOf(cautions);
  }

  /** {@return the verdict of every rule and the working of the pressure at the tool} */
  public Working working() {
    Working.Builder working = Working.titled("Parts from wall to tool");
    findings.forEach(finding -> working.note(finding.toString()));
    return working.include(result.working()).build();
  }

  /** {@return the parts in one line, from the wall to the tool} */
  @Override
  public String toString() {
    return String.join(" + ", parts().stream().map(Part::name).toList());
  }
}
