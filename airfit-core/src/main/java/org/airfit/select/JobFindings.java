package org.airfit.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
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
        Finding.of(Rule.TOOL_RATED, RuleSentences.toolRated(job, units)),
        Finding.of(Rule.CLEANING_PRESSURE, RuleSentences.cleaning(job, units)),
        Finding.of(Rule.SAFETY_RULES_ALLOW, ForbiddenSentences.ofJob(job, units)));
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
    List<Caution> cautions = new ArrayList<>(
        job.rules().toldIn(units).cautions(JobSituation.ofCautions(job).build()));
    Caution deference = cautions.remove(cautions.size() - 1);
    ifRegulatorFails(findings(units)).ifPresent(cautions::add);
    cautions.add(deference);
    return List.copyOf(cautions);
  }

  /** The warning where only a regulator keeps the tool within its maker's limit. */
  static Optional<Caution> ifRegulatorFails(List<Finding> findings) {
    return findings.stream()
        .filter(finding -> finding.outcome() == RuleOutcome.MET_WHILE_REGULATED)
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
