package org.airfit.files;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.airfit.air.AirState;
import org.airfit.plug.Identification;
import org.airfit.plug.Identifier;
import org.airfit.plug.PlugProfile;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.select.PlantYear;
import org.airfit.select.Requirement;
import org.airfit.select.RunNow;
import org.airfit.select.Slot;

/**
 * What a customer asks.
 *
 * @param title the job in a line
 * @param label what the shop files it by
 * @param customer whose job it is
 * @param toolName the tool
 * @param catalogue the profiles and parts to work with
 * @param units in which units to answer
 * @param atHand the plug or socket on the counter; empty where there is none
 * @param supply the air at the supply
 * @param atmosphere the pressure around it
 * @param now the run of today; empty where it was not told
 * @param requirement what the parts must do, without the profile that the plug at hand must tell
 * @param year the figures of the customer's plant; empty where they were not told
 * @param receiver the receiver that the tool draws from now and then; empty where none is told
 * @param question what is asked of a hose of the line; empty where nothing is
 * @param remarks what the writer of the file ought to know: what was assumed, and ends that may be meant otherwise
 * @param asFiled what its file said; empty where something else is asked than there
 */
public record Job(
    String title,
    JobLabel label,
    String customer,
    String toolName,
    ShopCatalogue catalogue,
    TypedUnits units,
    Optional<AtHand> atHand,
    AirState supply,
    AbsolutePressure atmosphere,
    Optional<RunNow> now,
    Requirement requirement,
    Optional<PlantYear> year,
    Optional<JobReceiver> receiver,
    Optional<HoseQuestion> question,
    List<String> remarks,
    Optional<AsFiled> asFiled) {

  /**
   * Copies the list; refuses what is null.
   *
   * @param title the job in a line
   * @param label what the shop files it by
   * @param customer whose job it is
   * @param toolName the tool
   * @param catalogue the profiles and parts to work with
   * @param units in which units to answer
   * @param atHand the plug or socket on the counter; empty where there is none
   * @param supply the air at the supply
   * @param atmosphere the pressure around it
   * @param now the run of today; empty where it was not told
   * @param requirement what the parts must do, without the profile that the plug at hand must tell
   * @param year the figures of the customer's plant; empty where they were not told
   * @param receiver the receiver that the tool draws from now and then; empty where none is told
   * @param question what is asked of a hose of the line; empty where nothing is
   * @param remarks what the writer of the file ought to know: what was assumed, and ends that may be meant otherwise
   * @param asFiled what its file said; empty where something else is asked than there
   */
  public Job {
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(customer, "customer");
    Objects.requireNonNull(toolName, "toolName");
    Objects.requireNonNull(catalogue, "catalogue");
    Objects.requireNonNull(units, "units");
    Objects.requireNonNull(atHand, "atHand");
    Objects.requireNonNull(supply, "supply");
    Objects.requireNonNull(atmosphere, "atmosphere");
    Objects.requireNonNull(now, "now");
    Objects.requireNonNull(requirement, "requirement");
    Objects.requireNonNull(year, "year");
    Objects.requireNonNull(receiver, "receiver");
    Objects.requireNonNull(question, "question");
    remarks = List.copyOf(Objects.requireNonNull(remarks, "remarks"));
    Objects.requireNonNull(asFiled, "asFiled");
  }

  /**
   * Obtains the same job with something else asked of the parts.
   *
   * @param asked what the parts must do
   * @return the changed job
   */
  public Job withRequirement(Requirement asked) {
    return new Job(
        title,
        label,
        customer,
        toolName,
        catalogue,
        units,
        atHand,
        supply,
        atmosphere,
        now,
        asked,
        year,
        receiver,
        question,
        remarks,
        asked.equals(requirement) ? asFiled : Optional.empty());
  }

  /**
   * Tells what the plug at hand is, by the profiles of the catalogue and what the job says of wear and near copies.
   *
   * @return the answer; empty where no plug is at hand
   */
  public Optional<Identification> plug() {
    return atHand.filter(hand -> hand.socket().isEmpty()).map(hand -> {
      Identifier told = Identifier.of(catalogue.profiles()).withWearAllowance(hand.worn());
      Identifier identifier = hand.readings().stream()
          .flatMap(reading -> reading.caliper().stream())
          .findFirst()
          .map(told::withInstrument)
          .orElse(told);
      return (hand.nearCopies() ? identifier : identifier.withoutNearCopies())
          .identify(hand.readings());
    });
  }

  /**
   * Tells what the parts must do, with the profile of the plug at hand.
   *
   * @param plug the profile that the plug at hand told; empty where it told none
   * @return what the parts must do; empty while a coupling waits for the profile of the plug
   */
  public Optional<Requirement> settled(Optional<PlugProfile> plug) {
    Objects.requireNonNull(plug, "plug");
    if (plug.isPresent()) {
      return Optional.of(requirement.toBuilder().profile(plug.get().id()).build());
    }
    return atHand.isEmpty() || needsNoPlug() ? Optional.of(requirement) : Optional.empty();
  }

  /** Whether the couplings of the line need no plug to tell their profile: the first stays, or each has one told. */
  private boolean needsNoPlug() {
    return requirement.layout().firstSocket().isPresent()
        || requirement.layout().allSlots().stream()
            .allMatch(slot -> !(slot instanceof Slot.Coupling coupling)
                || coupling.profile().isPresent()
                || coupling.socket().isPresent()
                || coupling.plug().isPresent());
  }
}
