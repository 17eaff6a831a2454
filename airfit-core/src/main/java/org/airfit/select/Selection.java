package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.airfit.quantity.PressureUnit;
import org.airfit.safety.Caution;
import org.airfit.select.Proposal.Coupling;
import org.airfit.working.Working;

/** Which parts of a catalogue solve a job: proposals that fit, best first, or none and the nearest miss. */
public sealed interface Selection {

  /** Above this many combinations a catalogue should be narrowed first. */
  int MOST_COMBINATIONS = 250_000;

  /**
   * Handles both cases.
   *
   * @param <R> what is made of them
   * @param fitting what to make of proposals that fit
   * @param nothingFits what to make of none
   * @return what was made
   */
  <R> R fold(
      Function<? super Fitting, ? extends R> fitting,
      Function<? super NothingFits, ? extends R> nothingFits);

  /** {@return how the answer was reached} */
  Working working();

  /**
   * At least one proposal meets every rule.
   *
   * @param ranking the proposals that fit, best first: fewest pieces to buy, then most pressure at the tool
   */
  record Fitting(List<Proposal> ranking) implements Selection {

    /** {@return the best} */
    public Proposal best() {
      return ranking.get(0);
    }

    /** {@return why the best wins, in plain words} */
    public String whyBest() {
      String own = best().pieces() + " pieces to buy and "
          + best().result().fold(d -> d.atToolGauge().format(PressureUnit.BAR, 2), s -> "no air")
          + " at the tool";
      return ranking.size() == 1
          ? "It is the only combination that meets every rule: " + own + "."
          : "Of " + ranking.size()
              + " combinations that meet every rule it needs the fewest pieces to buy, and of those it keeps "
              + "the most pressure: " + own + ".";
    }

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothingFits) {
      return fitting.apply(this);
    }

    @Override
    public Working working() {
      return best().working();
    }
  }

  /**
   * No proposal meets every rule.
   *
   * @param nearest the proposals with the fewest rules unmet, most pressure first; empty where a kind of part is missing altogether
   * @param toGive what would have to give, in plain words
   */
  record NothingFits(List<Proposal> nearest, List<String> toGive) implements Selection {

    @Override
    public <R> R fold(
        Function<? super Fitting, ? extends R> fitting,
        Function<? super NothingFits, ? extends R> nothingFits) {
      return nothingFits.apply(this);
    }

    @Override
    public Working working() {
      Working.Builder working = Working.titled("Nothing in the catalogue fits");
      toGive.forEach(working::note);
      nearest.stream().findFirst().ifPresent(miss -> working.include(miss.working()));
      return working.build();
    }
  }

  /**
   * Tries every combination of parts.
   *
   * @param requirement what the job asks
   * @param catalogue the parts to choose from
   * @return the proposals that fit, or the nearest miss; for another medium than compressed air, nothing and why
   * @throws IllegalArgumentException if there are more than {@link #MOST_COMBINATIONS} combinations
   */
  static Selection of(Requirement requirement, Catalogue catalogue) {
    Optional<Caution> refusal = requirement.medium().refusal();
    if (refusal.isPresent()) {
      return new NothingFits(
          List.of(),
          List.of("airfit advises on compressed air for tools only, not on " + requirement.medium()
              + ". " + refusal.get()));
    }
    List<Coupling> atWall = couplings(
        requirement.wallSocket().map(List::of).orElseGet(() -> catalogue.all(Part.Socket.class)),
        catalogue.all(Part.Plug.class),
        requirement);
    List<Coupling> atTool = couplings(
        catalogue.all(Part.Socket.class),
        requirement.toolPlug().map(List::of).orElseGet(() -> catalogue.all(Part.Plug.class)),
        requirement);
    List<Part.Hose> hoses =
        requirement.hose().map(List::of).orElseGet(() -> catalogue.all(Part.Hose.class));
    List<String> missing = new ArrayList<>();
    if (atWall.isEmpty() || atTool.isEmpty()) {
      missing.add("The catalogue has no socket and plug for both ends of the hose: add them.");
    }
    if (hoses.isEmpty()) {
      missing.add("The catalogue has no hose: add one.");
    }
    if (!missing.isEmpty()) {
      return new NothingFits(List.of(), missing);
    }
    long combinations = (long) atWall.size() * hoses.size() * atTool.size();
    if (combinations > MOST_COMBINATIONS) {
      throw new IllegalArgumentException("combinations of parts must be at most "
          + MOST_COMBINATIONS + ", was " + combinations
          + "; name the profile, or give a catalogue of the parts you would sell");
    }
    return ranked(proposals(requirement, catalogue, atWall, hoses, atTool));
  }

  /** Pairs that mate and are of the wanted profile; where there are none, every pair, so that a miss can be shown. */
  private static List<Coupling> couplings(
      List<Part.Socket> sockets, List<Part.Plug> plugs, Requirement requirement) {
    List<Coupling> all = new ArrayList<>();
    for (Part.Socket socket : sockets) {
      for (Part.Plug plug : plugs) {
        all.add(new Coupling(socket, plug));
      }
    }
    List<Coupling> mating = all.stream()
        .filter(Coupling::mates)
        .filter(pair -> requirement.profile().map(pair.plug().profile()::equals).orElse(true))
        .toList();
    return mating.isEmpty() ? all : mating;
  }

  private static List<Proposal> proposals(
      Requirement job,
      Catalogue catalogue,
      List<Coupling> atWall,
      List<Part.Hose> hoses,
      List<Coupling> atTool) {
    List<Part.Adapter> stock = catalogue.all(Part.Adapter.class);
    List<Proposal> proposals = new ArrayList<>();
    for (Coupling wall : atWall) {
      Joint first =
          Joint.of("wall outlet to socket", job.outlet(), wall.socket().end(), stock);
      for (Part.Hose hose : hoses) {
        Joint second = Joint.of("plug to hose", wall.plug().end(), hose.upstream(), stock);
        for (Coupling tool : atTool) {
          Joint third =
              Joint.of("hose to socket", hose.downstream(), tool.socket().end(), stock);
          Joint fourth = Joint.of("plug to tool", tool.plug().end(), job.toolInlet(), stock);
          proposals.add(new Proposal(job, wall, hose, tool, List.of(first, second, third, fourth)));
        }
      }
    }
    return proposals;
  }

  private static Selection ranked(List<Proposal> proposals) {
    Comparator<Proposal> order = Comparator.<Proposal>comparingInt(
            p -> p.unmet().size())
        .thenComparingLong(Proposal::pieces)
        .thenComparing(Comparator.comparingDouble(Proposal::pascalsAtTool).reversed())
        .thenComparing(Proposal::toString);
    List<Proposal> ranking = proposals.stream().sorted(order).toList();
    List<Proposal> fitting = ranking.stream().filter(Proposal::fits).toList();
    if (!fitting.isEmpty()) {
      return new Fitting(fitting);
    }
    int fewest = ranking.get(0).unmet().size();
    List<Proposal> nearest = ranking.stream()
        .filter(p -> p.unmet().size() == fewest)
        .sorted(Comparator.comparingDouble(Proposal::pascalsAtTool).reversed())
        .toList();
    return new NothingFits(
        nearest, nearest.get(0).unmet().stream().map(Finding::toString).toList());
  }
}
