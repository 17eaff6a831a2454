package org.airfit.jobsheet;

import java.util.Optional;
import org.airfit.files.AtHand;
import org.airfit.files.Job;
import org.airfit.files.Refusal;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.SocketAnswer;
import org.airfit.run.RunResult;
import org.airfit.safety.Medium;
import org.airfit.select.Offers;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.RunNow;
import org.airfit.select.Selection;
import org.airfit.thread.ThreadIdentification;
import org.airfit.working.UnitSystem;

/**
 * What airfit answers to a job.
 *
 * @param job what was asked
 * @param requirement what the parts must do, with the profile as far as it is known
 * @param plug what the plug is; empty where none is at hand
 * @param socket what can be said of a socket alone; empty where a plug is at hand
 * @param profile the profile that the parts are chosen for; empty where it is not known
 * @param thread what thread the plug carries; empty where it was not read
 * @param now what arrives at the tool now, at worst where not all is known; empty where that was not told
 * @param selection the parts; empty until the plug is known
 * @param offers what else can be offered; empty where the job tells no figures of a year
 * @param hose how long a hose may be or how wide it must be; empty where the job does not ask
 * @param receiver whether a receiver carries the tool; empty where the job tells none
 */
public record JobSheet(
    Job job,
    Requirement requirement,
    Optional<Identification> plug,
    Optional<SocketAnswer> socket,
    Optional<PlugProfile> profile,
    Optional<ThreadIdentification> thread,
    Optional<RunResult> now,
    Optional<Selection> selection,
    Optional<Offers> offers,
    Optional<HoseAnswer> hose,
    Optional<ReceiverAnswer> receiver) {

  /**
   * Answers a job.
   *
   * @param job what was asked
   * @return the answers; none but {@link #refusal()} for another medium than compressed air
   */
  public static JobSheet of(Job job) {
    if (job.requirement().medium().refusal().isPresent()) {
      return new JobSheet(
          job,
          job.requirement(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
    }
    Optional<Identification> plug = job.plug();
    Optional<PlugProfile> profile = plug.flatMap(Identification::profile);
    Optional<Requirement> settled = job.settled(profile);
    boolean known = settled.isPresent();
    Requirement told = settled.orElse(job.requirement());
    Optional<HoseAnswer> hose = job.question()
        .filter(question -> known)
        .map(question -> HoseAnswer.of(question, told, job.catalogue().parts()));
    Requirement requirement = hose.map(HoseAnswer::requirement).orElse(told);
    Optional<Selection> selection = !known
        ? Optional.empty()
        : Optional.of(hose.map(HoseAnswer::selection)
            .orElseGet(() -> Selection.of(requirement, job.catalogue().parts())));
    return new JobSheet(
        job,
        requirement,
        plug,
        job.atHand().flatMap(AtHand::socket),
        profile,
        job.atHand().flatMap(AtHand::thread).map(ThreadIdentification::of),
        job.now().map(RunNow::result),
        selection,
        known ? offers(job, requirement) : Optional.empty(),
        hose,
        job.receiver()
            .map(receiver -> ReceiverAnswer.of(
                receiver, requirement, job.toolName(), selection.flatMap(JobSheet::shown))));
  }

  /** What can be offered, where the job tells the figures of a year. */
  private static Optional<Offers> offers(Job job, Requirement requirement) {
    return job.year().map(year -> Offers.of(requirement, job.catalogue().parts(), year));
  }

  /** {@return the units in which to tell all of it} */
  public UnitSystem units() {
    return job.units().system();
  }

  /** {@return the refusal of anything but compressed air, which is all the sheet says then; else empty} */
  public Optional<Refusal> refusal() {
    Medium medium = requirement.medium();
    return medium
        .refusal()
        .map(caution -> new Refusal(
            medium,
            job.title(),
            job.customer(),
            job.label(),
            medium.refusalInWords().orElseThrow(),
            caution));
  }

  /** The proposal to show: the best that fits, or the nearest miss. */
  static Optional<Proposal> shown(Selection selection) {
    return selection.fold(
        fitting -> Optional.of(fitting.best()),
        nothing -> nothing.nearest().stream().findFirst());
  }
}
