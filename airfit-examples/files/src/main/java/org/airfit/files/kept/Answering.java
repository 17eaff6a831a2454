package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.files.AtHand;
import org.airfit.files.Job;
import org.airfit.plug.Identification;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.SocketAnswer;
import org.airfit.quantity.GaugePressure;
import org.airfit.run.ElementLoss;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.JobFindings;
import org.airfit.select.Part;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.RunNow;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;

/** Answers a job by the library, and takes from the answer what is kept. */
final class Answering {

  private final Job job;
  private final UnitSystem units;

  private Answering(Job job) {
    this.job = job;
    this.units = job.units().system();
  }

  static Answered of(Job job) {
    return new Answering(job).answered();
  }

  private Answered answered() {
    Requirement whole = job.requirement();
    Optional<String> refused = whole.medium().refusalInWords();
    if (refused.isPresent()) {
      return new Answered(
          Answered.Kind.REFUSED,
          units,
          refused.get(),
          Optional.empty(),
          Optional.empty(),
          List.of(),
          List.of(),
          List.of(),
          List.copyOf(told(withDeference(
              whole.medium().refusal().map(List::of).orElse(List.of()),
              whole.rules().toldIn(units).deference()))));
    }
    Optional<Identification> plug = job.plug();
    Optional<SocketAnswer> socket = job.atHand().flatMap(AtHand::socket);
    Optional<PlugProfile> profile = plug.flatMap(Identification::profile);
    Optional<Requirement> settled = job.settled(profile);
    Requirement asked = settled.orElse(whole);
    Optional<Selection> selection =
        settled.map(each -> Selection.of(each, job.catalogue().parts()));
    Optional<RunResult> before = job.now().map(RunNow::result);
    List<Proposal> proposals = selection
        .map(each -> each.<List<Proposal>>fold(
            Selection.Proposals::proposals, Selection.NothingFits::nearest))
        .orElse(List.of());

    Set<Caution> cautions = new LinkedHashSet<>();
    plug.map(Identification::cautions).ifPresent(cautions::addAll);
    socket.map(SocketAnswer::cautions).ifPresent(cautions::addAll);
    before.map(run -> run.cautions(units)).ifPresent(cautions::addAll);
    cautions.addAll(
        proposals.isEmpty()
            ? JobFindings.of(asked).cautions(units)
            : proposals.get(0).cautions(units));

    Set<Answered.CautionTold> shown =
        told(withDeference(cautions, asked.rules().toldIn(units).deference()));
    return new Answered(
        kind(selection),
        units,
        headline(selection, plug, socket),
        plug.map(this::told).or(() -> socket.map(Answering::told)),
        before.map(run -> told(job.toolName(), run, Optional.of(asked.least()))),
        proposals.stream().map(each -> told(each, shown)).toList(),
        proposals.isEmpty()
            ? List.of()
            : proposals.get(0).findings(units).stream()
                .map(finding -> new Answered.RuleTold(
                    finding.rule().title(), finding.outcome().toString(), finding.reason()))
                .toList(),
        selection
            .map(each -> each.<List<String>>fold(fits -> List.of(), none -> none.toGive(units)))
            .orElse(List.of()),
        List.copyOf(shown));
  }

  /** The cautions with that which defers to codes and makers as the last word. */
  private static Set<Caution> withDeference(Collection<Caution> cautions, Caution deference) {
    Set<Caution> all = new LinkedHashSet<>(cautions);
    all.remove(deference);
    all.add(deference);
    return all;
  }

  private static Set<Answered.CautionTold> told(Collection<Caution> cautions) {
    Set<Answered.CautionTold> told = new LinkedHashSet<>();
    for (Caution each : cautions) {
      told.add(new Answered.CautionTold(each.title(), each.text(), each.source().toString()));
    }
    return told;
  }

  private static Answered.Kind kind(Optional<Selection> selection) {
    return selection
        .map(each -> each.<Answered.Kind>fold(
            fits -> Answered.Kind.FITS, none -> Answered.Kind.NOTHING_FITS))
        .orElse(Answered.Kind.PROFILE_NOT_KNOWN);
  }

  private String headline(
      Optional<Selection> selection, Optional<Identification> plug, Optional<SocketAnswer> socket) {
    if (selection.isPresent()) {
      return selection
          .get()
          .fold(
              fits -> fits.whyBest(units),
              none -> "Nothing in the catalogue fits. " + String.join(" ", none.toGive(units)));
    }
    return "Not chosen yet: the profile must be known first. "
        + plug.map(each -> each.inWords(units))
            .or(() -> socket.map(SocketAnswer::reason))
            .orElse("");
  }

  private Answered.PlugTold told(Identification plug) {
    return new Answered.PlugTold(
        plug.verdict().label(), plug.profile().map(PlugProfile::id), plug.inWords(units));
  }

  private static Answered.PlugTold told(SocketAnswer socket) {
    return new Answered.PlugTold(socket.verdict().label(), Optional.empty(), socket.reason());
  }

  /** A proposal, with the cautions that are not among those shown anyway. */
  private Answered.PartsTold told(Proposal proposal, Set<Answered.CautionTold> shown) {
    List<Answered.AirTold> air = new ArrayList<>();
    for (Proposal way : proposal.toEachTool()) {
      air.add(told(way.requirement().way().orElse(job.toolName()), way.result(), Optional.empty()));
    }
    Set<Answered.CautionTold> own = told(proposal.cautions(units));
    own.removeAll(shown);
    return new Answered.PartsTold(
        proposal.parts().stream().map(Answering::told).toList(),
        proposal.price(),
        air,
        Optional.of(List.copyOf(own)),
        Optional.of(BillOfMaterials.of(proposal, job.catalogue().parts(), units).lines().stream()
            .filter(line -> line.kind() != BillLine.Kind.PART)
            .map(line -> new Answered.LineTold(
                line.kind().toString(), line.name(), line.id(), line.quantity(), line.price()))
            .toList()));
  }

  private static Answered.PartTold told(Part part) {
    return new Answered.PartTold(
        part.facts().id(),
        part.facts().name(),
        part.facts().price(),
        part.facts().rating());
  }

  private static Answered.AirTold told(String tool, RunResult run, Optional<GaugePressure> needs) {
    return run.fold(
        delivered -> new Answered.AirTold(
            tool,
            Optional.of(delivered.atToolGauge()),
            delivered.shares().isEmpty() ? "" : delivered.bottleneck().name(),
            losses(delivered.shares()),
            needs),
        starved -> new Answered.AirTold(
            tool, Optional.empty(), starved.element(), losses(starved.before()), needs));
  }

  private static List<Answered.LossTold> losses(List<ElementLoss> shares) {
    return shares.stream()
        .map(share -> new Answered.LossTold(share.name(), share.lost()))
        .toList();
  }
}
