package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Money;
import org.airfit.run.Run;
import org.airfit.run.RunResult;
import org.airfit.working.UnitSystem;

/** Reads every sentence of a selection back and holds each claim against the proposal that it stands beside. */
class WordsProperties {

  private static final Pattern PIECES = Pattern.compile(
      "(nothing|\\d+ pieces?) to buy in its line, (?:(.*), )?(?:at least )?(-?[0-9.]+) bar\\(g\\) at the tool\\.$");
  /** Less than half of the last digit is told as less than that digit. */
  private static final Pattern LOSS = Pattern.compile("pressure loss (?:(-?[0-9.]+)|< 0\\.01) bar");

  private static long pieces(Proposal p) {
    return p.parts().stream().filter(part -> !part.facts().isExisting()).count();
  }

  private static long unpriced(Proposal p) {
    return p.parts().stream()
        .filter(part -> !part.facts().isExisting() && part.facts().price().isEmpty())
        .count();
  }

  private static BigDecimal sum(Proposal p) {
    return p.parts().stream()
        .filter(part -> !part.facts().isExisting())
        .flatMap(part -> part.facts().price().stream())
        .map(Money::amount)
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  private static long pascals(Proposal p) {
    return (long) Math.floor(Shelf.pascalsAtTool(p));
  }

  private static double pascalsAtBest(Proposal p) {
    return p.resultAtBest()
        .<Double>fold(delivered -> delivered.atToolGauge().pascals(), starved -> -1.0);
  }

  /** Two draws in which others that cost less have enough air in fewer of the possible cases. */
  @Example
  void of_those_that_cost_less_none_has_enough_air_as_often() {
    the_headline_claims_nothing_that_another_combination_belies(377);
    the_headline_claims_nothing_that_another_combination_belies(-573);
  }

  @Property(tries = 30)
  void the_headline_claims_nothing_that_another_combination_belies(@ForAll long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    Requirement job = jumble.job().build();
    Selection answer = Selection.of(job, catalogue);
    EveryCombination every = new EveryCombination(job, catalogue);
    Assume.that(every.isSmall());
    List<Proposal> all = every.proposals();
    if (!(answer instanceof Selection.Proposals fitting)) {
      assertThat(all).as(answer.toString()).noneMatch(Proposal::fits);
      assertThat(answer.working().toText())
          .containsAnyOf(
              "No combination of parts meets every rule",
              "couplings, hoses and adapters do not change");
      return;
    }
    ToldOnceMore rules = new ToldOnceMore(job);
    String why = fitting.whyBest();
    Proposal best = fitting.best();
    List<Proposal> breakNone = all.stream().filter(Proposal::fits).toList();
    List<Proposal> allMet = breakNone.stream().filter(p -> p.open().isEmpty()).toList();
    List<Proposal> asFew = breakNone.stream()
        .filter(p -> rules.asked(p).size() <= rules.asked(best).size())
        .toList();
    boolean claimsAllMet =
        why.replace("whether it meets every rule depends", "").contains("meets every rule");
    if (why.contains("only combination that meets every rule")
        || why.contains("combinations that meet every rule")) {
      assertThat(best.open()).as(why).isEmpty();
    }
    if (claimsAllMet) {
      assertThat(allMet).as(why).hasSize(1);
    }
    if (why.contains("the others that break no rule leave something")) {
      assertThat(breakNone.size()).as(why).isGreaterThan(1);
    } else if (why.startsWith("It is the only combination that meets every rule")
        || why.contains("It is the only combination that breaks no rule")) {
      assertThat(breakNone).as(why).hasSize(1);
    }
    if (why.contains("leaves more questions about its parts open")) {
      assertThat(asFew).as(why).hasSize(1);
    }
    for (Finding open : best.open()) {
      assertThat(why).contains(open.rule().title() + ": " + open.reason());
    }
    assertThat(best.open().isEmpty()).isEqualTo(!why.contains("still to be asked"));
    List<Proposal> rivals = allMet.isEmpty() ? asFew : allMet;
    if (why.contains("leave as few questions about their parts open and ")) {
      rivals = rivals.stream().filter(p -> every.doubt(p) <= every.doubt(best)).toList();
    }
    if (why.contains("it needs the fewest pieces to buy")) {
      assertThat(rivals).allMatch(p -> pieces(p) >= pieces(best));
      rivals = rivals.stream().filter(p -> pieces(p) == pieces(best)).toList();
    }
    if (why.contains("of those its couplings have the fewest profiles")) {
      long profiles = EveryCombination.profiles(best.parts());
      assertThat(rivals).allMatch(p -> EveryCombination.profiles(p.parts()) >= profiles);
      rivals = rivals.stream()
          .filter(p -> EveryCombination.profiles(p.parts()) == profiles)
          .toList();
    }
    if (why.contains("it keeps the most pressure")) {
      assertThat(rivals).allMatch(p -> pascals(p) <= pascals(best));
    }
    if (why.contains("cost least")) {
      assertThat(unpriced(best)).as(why).isZero();
      assertThat(rivals)
          .filteredOn(p -> unpriced(p) == 0)
          .allMatch(p -> sum(p).compareTo(sum(best)) >= 0);
    }
    if (why.contains("of unknown price, and ")) {
      assertThat(unpriced(best)).as(why).isPositive();
      assertThat(rivals).allMatch(p -> unpriced(p) >= unpriced(best));
      assertThat(rivals)
          .filteredOn(p -> unpriced(p) == unpriced(best))
          .allMatch(p -> sum(p).compareTo(sum(best)) >= 0);
    }
    checkItself(best, why);
  }

  private static void checkItself(Proposal best, String why) {
    Matcher itself = PIECES.matcher(why);
    assertThat(itself.find()).as(why).isTrue();
    long pieces =
        itself.group(1).equals("nothing") ? 0 : Long.parseLong(firstWord(itself.group(1)));
    assertThat(pieces).isEqualTo(pieces(best));
    assertThat(itself.group(1).endsWith("pieces")).isEqualTo(pieces > 1);
    double printed = Double.parseDouble(itself.group(3)) * 1.0e5;
    double more = pascalsAtBest(best) - Shelf.pascalsAtTool(best);
    boolean isLeast = itself.group().contains("at least ");
    if (isLeast) {
      assertThat(Shelf.pascalsAtTool(best) - printed)
          .as("rounded down to 0.01 bar")
          .isBetween(-1.0e-6, 1000.0 + 1.0e-6);
    } else {
      assertThat(printed)
          .as("printed to 0.01 bar")
          .isCloseTo(Shelf.pascalsAtTool(best), within(501.0));
    }
    assertThat(isLeast || more < 1.0e3).as("told as the least: " + why).isTrue();
    assertThat(isLeast && !(more > 0.0)).as("told as the least: " + why).isFalse();
    if (itself.group(2) == null) {
      assertThat(unpriced(best)).isEqualTo(pieces);
    } else {
      assertThat(new BigDecimal(firstWord(itself.group(2)))).isEqualByComparingTo(sum(best));
      assertThat(itself.group(2).contains("unknown price")).isEqualTo(unpriced(best) > 0);
    }
  }

  private static List<Proposal> some(long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    EveryCombination every = new EveryCombination(jumble.job().build(), catalogue);
    Assume.that(every.isSmall());
    List<Proposal> all = every.proposals();
    List<Proposal> some = new ArrayList<>();
    for (int i = 0; i < all.size(); i += 1 + all.size() / 12) {
      some.add(all.get(i));
    }
    return some;
  }

  /** The pressure of the run behind each of its elements, each from a run that ends there. */
  private static Optional<Double> behind(Run run, Requirement job) {
    return run.at(job.demand())
        .fold(delivered -> Optional.of(delivered.atTool().pascals()), starved -> Optional.empty());
  }

  @Property(tries = 13)
  void the_parts_list_states_the_loss_of_the_part_it_names(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      Requirement job = p.requirement();
      Map<Part, List<Double>> lost = new HashMap<>();
      Run run = job.toOutlet();
      int passed = 0;
      Optional<Double> before = job.atOutlet(Known.AT_WORST).map(AbsolutePressure::pascals);
      for (Part part : p.parts()) {
        if (part instanceof Part.Plug) {
          continue;
        }
        String name = "element " + ++passed;
        run = part instanceof Part.Socket socket
            ? run.through(name, socket.capacity())
            : run.through(
                name,
                part instanceof Part.Hose hose ? hose.conduit() : ((Part.Adapter) part).conduit());
        Optional<Double> after = before.isEmpty() ? before : behind(run, job);
        List<Double> ofPart = lost.computeIfAbsent(part, any -> new ArrayList<>());
        if (after.isPresent()) {
          ofPart.add(before.get() - after.get());
        }
        before = after;
      }
      for (BillLine line : Shelf.lines(p)) {
        List<Double> said = new ArrayList<>();
        Matcher loss = LOSS.matcher(line.reason());
        while (loss.find()) {
          boolean isBelowThePrint = loss.group(1) == null;
          said.add(isBelowThePrint ? 0.0 : 1.0e5 * Double.parseDouble(loss.group(1)));
        }
        List<Double> known = lost.getOrDefault(part(p, line), List.of());
        assertThat(said).as(line.reason()).hasSameSizeAs(known);
        for (int i = 0; i < said.size(); i++) {
          assertThat(said.get(i)).as(line.reason()).isCloseTo(known.get(i), within(501.0));
        }
        assertThat(line.quantity())
            .isEqualTo((int) p.parts().stream().filter(part(p, line)::equals).count());
      }
    }
  }

  private static Part part(Proposal proposal, BillLine line) {
    return proposal.parts().stream()
        .filter(part -> part.facts().equals(line.facts().orElseThrow()))
        .findFirst()
        .orElseThrow();
  }

  @Property(tries = 13)
  void the_parts_list_says_what_goes_into_what(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      Map<Part, String> reasons = new HashMap<>();
      Shelf.lines(p).forEach(line -> reasons.put(part(p, line), line.reason()));
      boolean outlet = p.socket("outlet").profiles().contains(p.plug("outlet").profile());
      assertThat(reasons.get(p.socket("outlet")))
          .contains("at the outlet: " + (outlet ? "takes" : "does not take") + " profile "
              + p.plug("outlet").profile());
      assertThat(reasons.get(p.plug("outlet")))
          .contains("on the hose, " + (outlet ? "into " : "does not go into ")
              + p.socket("outlet").name());
      boolean tool = p.socket("tool").profiles().contains(p.plug("tool").profile());
      // the plug of a tool that hangs on a whip hose of its own is at the end of that
      assertThat(reasons.get(p.plug("tool")))
          .containsPattern("(at|on the whip hose of) the tool, "
              + (tool ? "into " : "does not go into ") + p.socket("tool").name());
      for (Joint joint : p.joints()) {
        for (Part.Adapter adapter : joint.adapters()) {
          assertThat(reasons.get(adapter)).contains("joins " + joint.where());
        }
      }
    }
  }

  @Property(tries = 13)
  void a_joint_reads_the_way_the_air_goes(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      for (Joint joint : p.joints()) {
        String words = joint.inWords();
        int place = words.indexOf(": ");
        for (String next : inAirOrder(joint)) {
          int found = words.indexOf(next, place);
          assertThat(found).as(words + ", " + next).isGreaterThanOrEqualTo(place);
          place = found + next.length();
        }
        assertThat(words.contains("are not joined")).isEqualTo(!joint.isSound());
        assertThat(words.contains(" straight to "))
            .isEqualTo(joint.isSound() && joint.adapters().isEmpty());
      }
    }
  }

  private static List<String> inAirOrder(Joint joint) {
    List<String> order = new ArrayList<>();
    order.add(joint.matings().get(0).one().label());
    order.add(joint.matings().get(joint.matings().size() - 1).other().label());
    joint.adapters().forEach(adapter -> order.add(adapter.name()));
    return order;
  }

  /** A name that the sentence lists as the reason must be that of a part which is so, and all such parts are listed. */
  private static void namesJust(Proposal p, String reason, Function<Placed, Boolean> isSo) {
    Set<String> so = new LinkedHashSet<>();
    for (Placed each : ToldOnceMore.slotParts(p)) {
      if (isSo.apply(each)) {
        so.add(each.part().id());
      }
    }
    assertThat(so).as(reason).isNotEmpty();
    Set<String> listed = new LinkedHashSet<>();
    for (Placed each : ToldOnceMore.slotParts(p)) {
      // names of the jumble repeat, so that a name is held against all parts of that name
      if (Pattern.compile("[ :,(]" + each.part().name() + "[ .,)]")
          .matcher(reason)
          .find()) {
        listed.add(each.part().name());
      }
    }
    Set<String> names = new LinkedHashSet<>();
    for (Placed each : ToldOnceMore.slotParts(p)) {
      if (so.contains(each.part().id())) {
        names.add(each.part().name());
      }
    }
    assertThat(listed).as(reason).containsAll(names);
  }

  private static Finding of(Proposal p, Rule rule) {
    return p.findings().stream().filter(f -> f.rule() == rule).findFirst().orElseThrow();
  }

  @Property(tries = 30)
  void a_rule_names_the_parts_that_break_it_or_leave_it_open(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      ToldOnceMore rules = new ToldOnceMore(p.requirement());
      for (Rule rule : List.of(
          Rule.TEMPERATURE_SUITS,
          Rule.SAFETY_RULES_ALLOW,
          Rule.MATERIAL_SUITS,
          Rule.STATIC_CARRIED_OFF)) {
        Finding finding = of(p, rule);
        boolean oneMustGive = finding.reason().contains("one of the two must give")
            || (rule == Rule.SAFETY_RULES_ALLOW && OwnRules.ofJob(p.requirement()) == '-');
        if (finding.outcome() == RuleOutcome.UNMET && !oneMustGive) {
          namesJust(
              p,
              " " + finding.reason(),
              each -> rules.broken(each.position(), each.part()).contains(rule));
        }
        if (finding.outcome() == RuleOutcome.OPEN && rules.asked(p).contains(rule)) {
          namesJust(
              p,
              " " + finding.reason(),
              each -> rules.asked(each.position(), each.part()).contains(rule));
        }
        if (finding.outcome() == RuleOutcome.MET) {
          assertThat(ToldOnceMore.slotParts(p))
              .as(finding.toString())
              .noneMatch(each -> rules.broken(each.position(), each.part()).contains(rule)
                  || rules.asked(each.position(), each.part()).contains(rule));
        }
      }
      checkAir(p);
      assertThat(of(p, Rule.MATERIAL_SUITS).reason()).doesNotContain("  ", "..", " .");
    }
  }

  /** Two printed pressures that are told apart must look it. */
  private static void checkAir(Proposal p) {
    Matcher numbers = Pattern.compile(
            "The tool has (only )?(-?[0-9.]+) bar\\(g\\), it needs ([0-9.]+) bar\\(g\\)")
        .matcher(of(p, Rule.AIR_AT_TOOL).reason());
    if (numbers.find()) {
      double has = Double.parseDouble(numbers.group(2));
      double needs = Double.parseDouble(numbers.group(3));
      assertThat(has < needs).as(numbers.group()).isEqualTo(numbers.group(1) != null);
    }
    assertThat(p.findings(UnitSystem.US))
        .extracting(Finding::reason)
        .noneMatch(reason -> reason.contains("bar(g)") || reason.contains("°C"));
  }

  @Property(tries = 30)
  void no_sentence_says_that_nothing_helps(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      assertThat(p.findings())
          .extracting(Finding::reason)
          .noneMatch(reason ->
              reason.contains("no part of the catalogue") || reason.contains("no part between"))
          .allMatch(reason -> !reason.isBlank() && reason.endsWith("."));
    }
  }

  /** Every element of the run has a name of its own, so that a sentence that names one means one. */
  @Property(tries = 13)
  void no_two_elements_of_a_run_bear_one_name(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      List<String> names =
          p.result().fold(RunResult.Delivered::shares, RunResult.Starved::before).stream()
              .map(share -> share.name())
              .sorted(Comparator.naturalOrder())
              .toList();
      assertThat(names).doesNotHaveDuplicates();
    }
  }

  private static String firstWord(String text) {
    int end = text.indexOf(' ');
    return end < 0 ? text : text.substring(0, end);
  }
}
