package org.airfit.select;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.airfit.safety.Caution;
import org.airfit.working.UnitSystem;

/**
 * What can be told of a job before its parts are chosen, and whatever parts are: whether the tool is over-pressured,
 * what the rules say of a tool that cleans, whether a rule forbids the work, and the warnings that go with the work.
 * It holds also where a plug is not known yet or only a socket is at hand.
 *
 * <p>This class is immutable, thread-safe and value-based.
 */
public final class JobFindings {

  private final Requirement job;

  private JobFindings(Requirement job) {
    this.job = job;
  }

  /**
   * Judges a job.
   *
   * @param job what the parts will have to do
   * @return what is told of it
   * @throws IllegalArgumentException if it carries anything but compressed air
   */
  public static JobFindings of(Requirement job) {
    Objects.requireNonNull(job, "job").medium().requireCompressedAir();
    return new JobFindings(job);
  }

  /** {@return what the rules on the job itself say, in the order of {@link Rule}} */
  public List<Finding> findings() {
    return findings(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return what the rules on the job itself say, in the order of {@link Rule}
   */
  public List<Finding> findings(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    return List.of(
        finding(Rule.TOOL_RATED, way -> RuleSentences.toolRated(way, units)),
        finding(Rule.CLEANING_PRESSURE, way -> RuleSentences.cleaning(way, units)),
        finding(Rule.SAFETY_RULES_ALLOW, way -> ForbiddenSentences.ofJob(way, units)));
  }

  private Finding finding(Rule rule, Function<Requirement, RuleAnswer> judging) {
    Map<String, RuleAnswer> answers = new LinkedHashMap<>();
    job.toEachTool().forEach(way -> answers.put(way.way().orElse(""), judging.apply(way)));
    return Finding.of(rule, SeveralTools.worst(answers));
  }

  /** {@return the warnings that go with the work, that codes and makers come first the last of them} */
  public List<Caution> cautions() {
    return cautions(UnitSystem.SI);
  }

  /**
   * Tells the same with the numbers in other units.
   *
   * @param units the units
   * @return the warnings that go with the work, that codes and makers come first the last of them
   */
  public List<Caution> cautions(UnitSystem units) {
    Objects.requireNonNull(units, "units");
    Set<Caution> ofWays = new LinkedHashSet<>();
    for (Requirement way : job.toEachTool()) {
      List<Caution> own =
          way.rules().toldIn(units).cautions(JobSituation.ofCautions(way).build());
      ofWays.remove(own.get(own.size() - 1));
      ofWays.addAll(own);
    }
    List<Caution> cautions = new ArrayList<>(ofWays);
    Caution deference = cautions.remove(cautions.size() - 1);
    ifRegulatorFails(job, findings(units)).ifPresent(cautions::add);
    Freezing.of(job, units).ifPresent(cautions::add);
    cautions.add(deference);
    return List.copyOf(cautions);
  }

  /** The warning where only a regulator keeps the tool within its maker's limit, or may do so by what it is set to. */
  static Optional<Caution> ifRegulatorFails(Requirement job, List<Finding> findings) {
    boolean dependsOnSetting =
        job.toEachTool().stream().anyMatch(PartChecks::mayBeSetTooHighForTool);
    return findings.stream()
        .filter(finding -> finding.outcome() == RuleOutcome.MET_WHILE_REGULATED
            || (finding.rule() == Rule.TOOL_RATED
                && finding.outcome() == RuleOutcome.OPEN
                && dependsOnSetting))
        .findFirst()
        .map(finding -> new Caution(
            "If the regulator fails",
            finding.reason() + " Shut the supply when the pressure at the tool rises by itself.",
            finding.source()));
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof JobFindings that && job.equals(that.job);
  }

  @Override
  public int hashCode() {
    return job.hashCode();
  }

  /** {@return the findings in one line} */
  @Override
  public String toString() {
    return String.join(" ", findings().stream().map(Finding::toString).toList());
  }
}
