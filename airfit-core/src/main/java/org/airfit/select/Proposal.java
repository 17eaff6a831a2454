package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.airfit.quantity.Money;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.safety.Situation;
import org.airfit.working.UnitSystem;
import org.airfit.working.Worked;
import org.airfit.working.Working;

/**
 * A set of parts between the outlet and the tool, with what the rules say of it.
 *
 * <p>This class is immutable and thread-safe.
 */
public final class Proposal implements Worked {

  private final Assembly assembly;
  private final List<Finding> findings;

  Proposal(Assembly assembly) {
    this.assembly = assembly;
    this.findings = findings(assembly, UnitSystem.SI);
  }

  private static List<Finding> findings(Assembly assembly, UnitSystem units) {
    return Stream.of(Rule.values())
        .map(rule -> Finding.of(rule, assembly, units))
        .toList();
  }

  /** {@return what was asked for} */
  public Requirement requirement() {
    return assembly.requirement();
  }

  /**
   * Finds the socket of a coupling.
   *
   * @param slot what the coupling is called in the {@link Layout}, such as "outlet"
   * @return the socket
   * @throws IllegalArgumentException if no coupling is called so
   */
  public Part.Socket socket(String slot) {
    return (Part.Socket) part(slot, "coupling", Position::isSocket);
  }

  /**
   * Finds the plug of a coupling.
   *
   * @param slot what the coupling is called in the {@link Layout}, such as "outlet"
   * @return the plug
   * @throws IllegalArgumentException if no coupling is called so
   */
  public Part.Plug plug(String slot) {
    return (Part.Plug) part(slot, "coupling", Position::isPlug);
  }

  /**
   * Finds a hose.
   *
   * @param slot what the hose is called in the {@link Layout}, such as "hose"
   * @return the hose
   * @throws IllegalArgumentException if no hose is called so
   */
  public Part.Hose hose(String slot) {
    return (Part.Hose) part(slot, "hose", Position::isHose);
  }

  /**
   * Finds a regulator.
   *
   * @param slot what the regulator is called in the {@link Layout}, such as "regulator"
   * @return the regulator
   * @throws IllegalArgumentException if no regulator is called so
   */
  public Part.Regulator regulator(String slot) {
    return (Part.Regulator) part(slot, "regulator", Position::isRegulator);
  }

  private Part part(String slot, String kind, Predicate<Position> wanted) {
    Objects.requireNonNull(slot, "slot");
    return assembly.placed().stream()
        .filter(each -> wanted.test(each.position()) && each.position().name().equals(slot))
        .map(Placed::part)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("slot must name a " + kind
            + " of the layout (" + requirement().layout() + "), was \"" + slot + "\""));
  }

  /**
   * Finds what stands in a slot among the elements of the {@link #run}.
   *
   * @param slot what the slot is called in the {@link Layout}, such as "hose"
   * @return what its part is called in the run, of a coupling the socket; empty where the run does not pass that slot
   */
  public Optional<String> element(String slot) {
    return assembly.element(Objects.requireNonNull(slot, "slot"));
  }

  /** {@return the joints from the outlet to the tool, with their adapters} */
  public List<Joint> joints() {
    return assembly.joints();
  }

  /**
   * Tells which line of a job of several tools a joint is in.
   *
   * @param joint one of the {@link #joints}
   * @return the line as its joints name it, such as "line 2, sander" or "line to bench manifold"; empty in front of all
   *     lines, and where there is one tool
   */
  public Optional<String> line(Joint joint) {
    String line = ByLine.line(assembly, Objects.requireNonNull(joint, "joint").where());
    return line.isEmpty() ? Optional.empty() : Optional.of(line.substring(0, line.length() - 2));
  }

  /**
   * {@return the way to each tool as a proposal of its own, with all that stands on it, what is asked of it and what
   * arrives. Of a job of one tool itself}
   */
  public List<Proposal> toEachTool() {
    return assembly.ways().isEmpty()
        ? List.of(this)
        : assembly.ways().stream().map(Proposal::new).toList();
  }

  /**
   * {@return the run from the supply to the tool; at worst where not all is known exactly. Of several tools that to the
   * one which has least to spare}
   */
  public Run run() {
    return assembly.run();
  }

  /**
   * {@return the same run at best: every part lets most through of what it can be. The same as {@link #run} where all is
   * known exactly}
   */
  public Run runAtBest() {
    return assembly.runAtBest();
  }

  /**
   * {@return what arrives at the tool; at worst where not all is known exactly. Of several tools at the one which has
   * least to spare}
   */
  public RunResult result() {
    return assembly.result();
  }

  /**
   * {@return what arrives at the tool at best: every part lets most through of what it can be, the tool takes the least
   * that it can take. The same as {@link #result} where all is known exactly}
   */
  public RunResult resultAtBest() {
    return assembly.atBest();
  }

  /**
   * {@return what is not known exactly and bears on the air at the tool, with the value at which the answer turns; what
   * would settle most stands first. Empty where the answer is the same whatever it is}
   */
  public List<Doubt> doubts() {
    return Doubts.of(assembly);
  }

  /** {@return what every rule says, in the order of {@link Rule}} */
  public List<Finding> findings() {
    return findings;
  }

  /**
   * Tells what every rule says, with its numbers in other units.
   *
   * @param units the units
   * @return the same outcomes as {@link #findings()}, their reasons in {@code units}
   */
  public List<Finding> findings(UnitSystem units) {
    return findings(assembly, Objects.requireNonNull(units, "units"));
  }

  /** What one rule says. */
  Finding of(Rule rule) {
    return findings.stream().filter(each -> each.rule() == rule).findFirst().orElseThrow();
  }

  /** {@return the findings that are not met} */
  public List<Finding> unmet() {
    return of(RuleOutcome.UNMET);
  }

  /**
   * {@return what must still be closed before it goes under pressure, such as "the outlets of manifold that no line
   * uses"; empty where nothing is left open}
   */
  public List<String> leftOpen() {
    return UnusedOutlets.of(assembly).stream().map(UnusedOutlets::inWords).toList();
  }

  /** {@return the same in a sentence, such as "Still open: what closes the outlets of manifold that no line uses."} */
  public String leftOpenInWords() {
    return leftOpen().isEmpty()
        ? ""
        : "Still open: what closes " + String.join(" and ", leftOpen()) + ".";
  }

  /** {@return the findings that wait for an answer: what is still to be asked of the customer} */
  public List<Finding> open() {
    return of(RuleOutcome.OPEN);
  }

  /** {@return the findings that are met only as long as a regulator works} */
  public List<Finding> metWhileRegulated() {
    return of(RuleOutcome.MET_WHILE_REGULATED);
  }

  private List<Finding> of(RuleOutcome outcome) {
    return findings.stream().filter(finding -> finding.outcome() == outcome).toList();
  }

  /** {@return whether no rule is unmet; something may still be {@link #open}} */
  public boolean fits() {
    return unmet().isEmpty();
  }

  /**
   * How many rules these parts leave open, by which proposals are put in order first: the questions of the job itself
   * are the same for all.
   */
  int partQuestions() {
    return PartQuestions.count(assembly);
  }

  /**
   * {@return every part from the outlet to the tool, adapters where they stand; of several tools line after line, a part
   * of lines that are alike once for each}
   */
  public List<Part> parts() {
    return assembly.pieces();
  }

  private List<Part> toBuy() {
    return parts().stream().filter(part -> !part.facts().isExisting()).toList();
  }

  /** How many pieces must be bought. */
  long pieces() {
    return toBuy().size();
  }

  /** {@return the parts to buy whose price is not known, each once} */
  public List<Part> unpriced() {
    return toBuy().stream()
        .filter(part -> part.facts().price().isEmpty())
        .distinct()
        .toList();
  }

  /** {@return what the parts to buy cost together, as far as prices are known; empty if none is} */
  public Optional<Money> price() {
    Money sum = null;
    for (Part part : toBuy()) {
      Money each = part.facts().price().orElse(null);
      if (each != null) {
        sum = sum == null ? each : sum.plus(each);
      }
    }
    return Optional.ofNullable(sum);
  }

  /**
   * {@return the price in words, such as "48.20 EUR" or "48.20 EUR without Hose 10 m, of unknown price"; empty if no
   * price is known}
   */
  public Optional<String> priceInWords() {
    String without =
        unpriced().stream().map(Part::name).distinct().collect(Collectors.joining(", "));
    return price()
        .map(known -> known.format(2)
            + (without.isEmpty() ? "" : " without " + without + ", of unknown price"));
  }

  /** The parts at their positions. */
  Assembly assembly() {
    return assembly;
  }

  /** {@return the warnings that go with these parts} */
  public List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the warnings that go with these parts
   */
  public List<Caution> cautions(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Set<Caution> ofWays = new LinkedHashSet<>();
    List<Caution> ofRules = List.of();
    for (Assembly way : assembly.toEachTool()) {
      ofRules = ofRules(way, units);
      ofWays.addAll(ofRules.subList(0, ofRules.size() - 1));
    }
    List<Caution> cautions = new ArrayList<>(ofWays);
    Caution deference = ofRules.get(ofRules.size() - 1);
    JobFindings.ifRegulatorFails(requirement(), findings(units)).ifPresent(cautions::add);
    Freezing.of(requirement(), units).ifPresent(cautions::add);
    Set<Caution> ofRuns = new LinkedHashSet<>();
    assembly.toEachTool().forEach(way -> ofRuns.addAll(way.result().cautions(units)));
    cautions.addAll(ofRuns);
    Set<Caution> ofJoints = new LinkedHashSet<>();
    joints().forEach(joint -> ofJoints.addAll(joint.cautions()));
    cautions.addAll(ofJoints);
    cautions.add(deference);
    return List.copyOf(cautions);
  }

  /** The warnings of the safety rules on the way to one tool, that codes and makers come first the last of them. */
  private static List<Caution> ofRules(Assembly way, UnitSystem units) {
    Requirement job = way.requirement();
    Situation.Builder situation = JobSituation.ofCautions(job);
    List<Part.Hose> hoses =
        way.hoses().stream().map(hose -> (Part.Hose) hose.part()).toList();
    if (!hoses.isEmpty()) {
      situation.toolOnHose(
          hoses.stream()
              .map(hose -> hose.conduit().bore())
              .min(Comparator.naturalOrder())
              .orElseThrow(),
          hoses.stream()
              .map(Part.Hose::widestBore)
              .max(Comparator.naturalOrder())
              .orElseThrow());
    }
    way.lowestRating().ifPresent(lowest -> situation.ratedParts(job.highest(), lowest));
    return job.rules().toldIn(units).cautions(situation.build());
  }

  /**
   * Tells the outcome of every rule and how the pressure at the tool was found.
   *
   * @param units the units to show numbers in
   * @return the working
   */
  @Override
  public Working working(UnitSystem units) {
    Working.Builder working = Working.titled("Parts from outlet to tool", units);
    findings(units).forEach(finding -> working.note(finding.toString()));
    String unmet = titles(unmet());
    String open = titles(open());
    for (Assembly way : assembly.toEachTool()) {
      way.requirement().way().ifPresent(name -> working.note("To the tool of " + name + ":"));
      working.include(way.result().working(units));
    }
    if (!assembly.isExact()) {
      working.note("So far all that is not known was taken at its worst. At its best:");
      for (Assembly way : assembly.toEachTool()) {
        way.requirement().way().ifPresent(name -> working.note("To the tool of " + name + ":"));
        working.include(way.atBest().working(units));
      }
      doubts().forEach(doubt -> working.note(doubt.inWords(units)));
    }
    return working
        .answer((unmet.isEmpty() ? "No rule is broken." : "Not met: " + unmet + ".")
            + (open.isEmpty() ? "" : " Still to be asked: " + open + "."))
        .build();
  }

  private static String titles(List<Finding> findings) {
    return findings.stream()
        .map(finding -> finding.rule().title())
        .collect(Collectors.joining(", "));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Proposal that && assembly.equals(that.assembly);
  }

  @Override
  public int hashCode() {
    return assembly.hashCode();
  }

  /** {@return the parts in one line, from the outlet to the tool} */
  @Override
  public String toString() {
    return String.join(" + ", parts().stream().map(Part::name).toList());
  }
}
