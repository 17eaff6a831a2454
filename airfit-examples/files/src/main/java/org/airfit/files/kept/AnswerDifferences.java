package org.airfit.files.kept;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is different in two answers that were kept. */
final class AnswerDifferences {

  private static final String BEFORE = "Without new parts";

  private final List<Difference> found = new ArrayList<>();

  private AnswerDifferences() {}

  static List<Difference> of(KeptAnswer then, KeptAnswer now) {
    if (then.answer().equals(now.answer())) {
      return List.of();
    }
    Answered renamed = Renaming.of(then, now).of(then.answered());
    Answered after = now.answered().asFarAs(renamed);
    Answered before = renamed.asFarAs(after);
    if (before.equals(after)) {
      return List.of();
    }
    AnswerDifferences all = new AnswerDifferences();
    all.answers(before, after);
    if (all.found.isEmpty()) {
      all.found.add(new Difference.OtherText("answer", false));
    }
    return all.found;
  }

  private void answers(Answered then, Answered now) {
    String plugThen = then.plug().map(AnswerDifferences::inWords).orElse("");
    String plugNow = now.plug().map(AnswerDifferences::inWords).orElse("");
    if (!plugThen.equals(plugNow)) {
      found.add(new Difference.OtherPlug(plugThen, plugNow));
    }
    if (then.kind() != now.kind()) {
      found.add(
          new Difference.VerdictTurned(then.kind().inWords(), now.kind().inWords(), now.toGive()));
    }
    air(
        BEFORE,
        then.before().map(List::of).orElse(List.of()),
        now.before().map(List::of).orElse(List.of()));
    if (!then.proposals().isEmpty() && !now.proposals().isEmpty()) {
      proposals(then, now);
    }
    cautions(then.cautions(), now.cautions());
    others(listed(then, now), then.proposals(), now.proposals());
    if (found.isEmpty()) {
      reasons(then.rules(), now.rules());
    }
  }

  /** Where one of them lists nothing, what the other lists counts. */
  private static Difference.Listed listed(Answered then, Answered now) {
    Answered before = then.proposals().isEmpty() ? now : then;
    Answered after = now.proposals().isEmpty() ? then : now;
    return Difference.Listed.of(
        before.kind() == Answered.Kind.NOTHING_FITS, after.kind() == Answered.Kind.NOTHING_FITS);
  }

  private void proposals(Answered then, Answered now) {
    Difference.Listed listed = listed(then, now);
    Answered.PartsTold first = then.proposals().get(0);
    Answered.PartsTold firstNow = now.proposals().get(0);
    if (!first.ids().equals(firstNow.ids())) {
      found.add(new Difference.OtherFirst(listed, names(first), names(firstNow)));
    }
    if (!first.price().equals(firstNow.price())) {
      found.add(new Difference.OtherTotal(listed, first.price(), firstNow.price()));
    }
    bill(listed, first.bill().orElse(List.of()), firstNow.bill().orElse(List.of()));
    air(listed.with(), first.air(), firstNow.air());
    rules(then.rules(), now.rules());
  }

  private void bill(
      Difference.Listed listed, List<Answered.LineTold> then, List<Answered.LineTold> now) {
    List<Answered.LineTold> gone = new ArrayList<>(then);
    List<Answered.LineTold> added = new ArrayList<>(now);
    now.forEach(gone::remove);
    then.forEach(added::remove);
    for (Answered.LineTold line : added) {
      Optional<Answered.LineTold> was =
          gone.stream().filter(each -> each.key().equals(line.key())).findFirst();
      was.ifPresent(gone::remove);
      found.add(new Difference.OtherBill(
          listed, was.map(Answered.LineTold::inWords).orElse(""), line.inWords()));
    }
    gone.forEach(line -> found.add(new Difference.OtherBill(listed, line.inWords(), "")));
  }

  private static String inWords(Answered.PlugTold plug) {
    return plug.verdict() + plug.profile().map(id -> ": " + id).orElse("");
  }

  private static List<String> names(Answered.PartsTold proposal) {
    return proposal.parts().stream().map(Answered.PartTold::inWords).toList();
  }

  private void air(String line, List<Answered.AirTold> then, List<Answered.AirTold> now) {
    Map<String, Answered.AirTold> before = new LinkedHashMap<>();
    then.forEach(each -> before.put(each.tool(), each));
    for (Answered.AirTold each : now) {
      Answered.AirTold was = before.get(each.tool());
      if (was == null) {
        continue; // another tool is asked for, which the question tells
      }
      if (!was.arrives().equals(each.arrives())) {
        found.add(new Difference.OtherPressure(line, each.tool(), was.arrives(), each.arrives()));
      }
      boolean isTurned = was.isEnough().isPresent()
          && each.isEnough().isPresent()
          && !was.isEnough().equals(each.isEnough());
      if (isTurned) {
        found.add(new Difference.EnoughTurned(
            line, each.tool(), each.arrives(), each.needs().orElseThrow()));
      }
      if (!was.restriction().equals(each.restriction())) {
        found.add(new Difference.OtherRestriction(
            line, each.tool(), was.restriction(), each.restriction()));
      }
    }
  }

  private void rules(List<Answered.RuleTold> then, List<Answered.RuleTold> now) {
    Map<String, Answered.RuleTold> before = new LinkedHashMap<>();
    then.forEach(rule -> before.put(rule.rule(), rule));
    for (Answered.RuleTold rule : now) {
      Answered.RuleTold was = before.remove(rule.rule());
      String outcome = was == null ? "" : was.outcome();
      if (!outcome.equals(rule.outcome())) {
        found.add(new Difference.RuleTurned(rule.rule(), outcome, rule.outcome(), rule.reason()));
      }
    }
    before
        .values()
        .forEach(rule -> found.add(new Difference.RuleTurned(rule.rule(), rule.outcome(), "", "")));
  }

  /** What is as it was may be so for another reason; told where there is nothing more to tell. */
  private void reasons(List<Answered.RuleTold> then, List<Answered.RuleTold> now) {
    now.stream()
        .filter(rule -> !then.contains(rule))
        .forEach(rule -> found.add(
            new Difference.RuleTurned(rule.rule(), rule.outcome(), rule.outcome(), rule.reason())));
  }

  /** A caution whose title stays is another one where its text is: its numbers may be what matters. */
  private void cautions(List<Answered.CautionTold> then, List<Answered.CautionTold> now) {
    List<Answered.CautionTold> gone =
        new ArrayList<>(then.stream().filter(each -> !now.contains(each)).toList());
    for (Answered.CautionTold caution : now) {
      if (!then.contains(caution)) {
        Optional<Answered.CautionTold> was =
            gone.stream().filter(each -> each.title().equals(caution.title())).findFirst();
        was.ifPresent(gone::remove);
        found.add(new Difference.OtherCaution(
            caution.title(), was.map(Answered.CautionTold::text).orElse(""), caution.text()));
      }
    }
    gone.forEach(each -> found.add(new Difference.OtherCaution(each.title(), each.text(), "")));
  }

  private void others(
      Difference.Listed listed, List<Answered.PartsTold> then, List<Answered.PartsTold> now) {
    List<List<String>> before =
        then.stream().skip(1).map(Answered.PartsTold::ids).toList();
    List<List<String>> after = now.stream().skip(1).map(Answered.PartsTold::ids).toList();
    int gone = (int) before.stream().filter(each -> !after.contains(each)).count();
    int added = (int) after.stream().filter(each -> !before.contains(each)).count();
    if (gone + added > 0) {
      found.add(new Difference.OtherProposals(listed, gone, added));
    }
  }
}
