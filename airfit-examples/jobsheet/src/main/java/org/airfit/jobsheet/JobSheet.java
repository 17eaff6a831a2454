package org.airfit.jobsheet;

import java.util.Optional;
import org.airfit.files.AtHand;
import org.airfit.files.Job;
import org.airfit.files.Refusal;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.SocketAnswer;
import org.airfit.run.RunResult;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.thread.ThreadIdentification;

/**
 * What airfit answers to a job.
 *
 * @param job what was asked
 * @param requirement what the parts must do, with the profile as far as it is known
 * @param plug what the plug is; empty where none is at hand
 * @param socket what can be said of a socket alone; empty where a plug is at hand
 * @param profile the profile that the parts are chosen for; empty where it is not known
 * @param thread what thread the plug carries; empty where it was not read
 * @param now what arrives at the tool now; empty where that was not told
 * @param selection the parts; empty until the plug is known
 */
public record JobSheet(
    Job job,
    Requirement requirement,
    Optional<Identification> plug,
    Optional<SocketAnswer> socket,
    Optional<PlugProfile> profile,
    Optional<ThreadIdentification> thread,
    Optional<RunResult> now,
    Optional<Selection> selection) {

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
          Optional.empty());
    }
    Optional<Identification> plug = job.plug();
    Optional<PlugProfile> profile = plug.flatMap(Identification::profile);
    Requirement requirement = profile
        .map(found -> job.requirement().toBuilder().profile(found.id()).build())
        .orElse(job.requirement());
    boolean known = job.atHand().isEmpty() || profile.isPresent() || isSettled(requirement);
    return new JobSheet(
        job,
        requirement,
        plug,
        job.atHand().flatMap(AtHand::socket),
        profile,
        job.atHand().flatMap(AtHand::thread).map(ThreadIdentification::of),
        job.now().map(run -> run.at(requirement.demand())),
        known ? Optional.of(Selection.of(requirement, job.catalogue().parts())) : Optional.empty());
  }

  /** Whether the couplings of a line need no plug to tell their profile: the first stays, or each has one told. */
  private static boolean isSettled(Requirement requirement) {
    return requirement.layout().firstSocket().isPresent()
        || requirement.layout().slots().stream()
            .allMatch(slot -> !(slot instanceof Slot.Coupling coupling)
                || coupling.profile().isPresent()
                || coupling.socket().isPresent()
                || coupling.plug().isPresent());
  }

  /** {@return the refusal of anything but compressed air, which is all the sheet says then; else empty} */
  public Optional<Refusal> refusal() {
    return requirement
        .medium()
        .refusalInWords()
        .map(reason -> new Refusal(job.title(), job.customer(), reason));
  }
}
