package org.airfit.files.kept;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.files.Disk;
import org.airfit.files.Job;
import org.airfit.files.WrongFileException;
import org.airfit.plug.Identification;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Money;
import org.airfit.run.RunResult;
import org.airfit.safety.Caution;
import org.airfit.select.BillLine;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Proposal;
import org.airfit.select.Requirement;
import org.airfit.select.Selection;
import org.airfit.working.UnitSystem;
import org.junit.jupiter.api.Test;

/** One thing is changed in an example; the words must tell it, and what follows of it, as the library itself does. */
class AnswerComparisonTest {

  private static final String SUPPLY = "\"8.5 bar(g)\"";
  private static final String NEED = "\"90 psig\"";
  private static final String SET = "\"set\": \"7.4 bar(g)\"";

  private static <D extends Difference> D only(AnswerComparison compared, Class<D> kind) {
    List<D> found = all(compared, kind);
    assertThat(found).as(compared.inWords()).hasSize(1);
    return found.get(0);
  }

  private static <D extends Difference> List<D> all(AnswerComparison compared, Class<D> kind) {
    return compared.differences().stream()
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
  }

  private static Map<String, Object> groove(Map<String, Object> profile, String nominal) {
    Map<String, Object> dimensions = Claims.fields(profile.get("dimensions"));
    dimensions.put("groove width", Map.of("nominal", nominal, "deviation", "0.06 mm"));
    return dimensions;
  }

  /** At 8.5 bar the old line has 0.1 bar to spare, as the sheet says; at less it has too little. */
  @Test
  void that_what_is_there_no_longer_has_enough_is_told_and_the_other_way_round() throws Exception {
    Claims enough = Claims.asFiled().asked(NEED, "\"40 psig\"");
    Claims tooLittle = Claims.asFiled().asked(NEED, "\"100 psig\"");
    AnswerComparison worse = AnswerComparison.of(enough.kept(), tooLittle.kept());
    Difference.EnoughTurned turned = only(worse, Difference.EnoughTurned.class);
    RunResult now = tooLittle
        .job()
        .now()
        .orElseThrow()
        .run()
        .at(tooLittle.job().requirement().demand());
    assertThat(turned.arrives())
        .isEqualTo(now.<Optional<GaugePressure>>fold(
            there -> Optional.of(there.atToolGauge()), none -> Optional.empty()));
    assertThat(turned.needed()).isEqualTo(GaugePressure.ofPsi(100.0));
    assertThat(turned.isEnough()).isFalse();
    assertThat(worse.inWords())
        .containsPattern(
            "Without new parts, .* no longer has enough: it needs 6.89 bar\\(g\\), and");
    assertThat(AnswerComparison.of(tooLittle.kept(), enough.kept()).inWords())
        .containsPattern(
            "Without new parts, .* has enough now, which it had not then: it needs 2.76");
    assertThat(
            all(AnswerComparison.of(enough.kept(), enough.kept()), Difference.EnoughTurned.class))
        .isEmpty();
  }

  @Test
  void the_cautions_of_every_proposal_are_kept() throws Exception {
    Job job = Disk.job(Path.of("..", "jobs", "tyre-bay", "weak-impact-wrench.json"));
    KeptAnswer kept = KeptAnswer.of(job, Claims.THEN, Claims.FIRST);
    KeptAnswer read = KeptAnswer.read("kept.json", kept.toText());
    Requirement asked = job.settled(job.plug().flatMap(Identification::profile)).orElseThrow();
    List<Proposal> proposals = Selection.of(asked, job.catalogue().parts())
        .fold(Selection.Proposals::proposals, Selection.NothingFits::nearest);
    assertThat(proposals).hasSizeGreaterThan(1);
    int own = 0;
    for (int i = 0; i < proposals.size(); i++) {
      List<String> shown = read.cautions(i + 1);
      for (Caution caution : proposals.get(i).cautions(job.units().system())) {
        assertThat(shown).contains(caution.title() + ": " + caution.text());
      }
      assertThat(shown).containsAll(read.cautions());
      assertThat(shown.get(shown.size() - 1))
          .isEqualTo(read.cautions().get(read.cautions().size() - 1));
      own += shown.size() - read.cautions().size();
    }
    assertThat(own).as("some proposal has a caution that the first has not").isPositive();
    assertThatThrownBy(() -> read.cautions(proposals.size() + 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith("proposal must be in [1, " + proposals.size() + "], was ");
  }

  @Test
  void nothing_differs_where_nothing_was_changed() throws Exception {
    KeptAnswer then = Claims.asFiled().kept();
    AnswerComparison same = AnswerComparison.of(then, then.again(Claims.NOW, Claims.FIRST));
    assertThat(same.isSame()).isTrue();
    assertThat(same.isSameAnswer()).isTrue();
    assertThat(same.differences()).isEmpty();
    assertThat(same.inWords())
        .isEqualTo("The same version of the library, 0.1.0, answers the same question out of the"
            + " same reference set and catalogue. The answer is the same.");
    assertThat(same).isEqualTo(AnswerComparison.of(then, then)).hasToString(same.inWords());
  }

  @Test
  void another_version_of_the_library_is_told_and_that_it_answers_the_same() throws Exception {
    KeptAnswer then = Claims.asFiled().kept();
    AnswerComparison compared = AnswerComparison.of(then, then.again(Claims.NOW, "0.2.0"));
    assertThat(compared.differences())
        .containsExactly(new Difference.OtherLibrary("0.1.0", "0.2.0"));
    assertThat(compared.isSame()).isFalse();
    assertThat(compared.isSameAnswer()).isTrue();
    assertThat(compared.inWords())
        .isEqualTo(
            "Another version of the library: 0.1.0 then, 0.2.0 now.\nThe answer is the same.");
  }

  @Test
  void a_supply_that_fell_is_told_first_and_the_caution_with_its_numbers_behind() throws Exception {
    AnswerComparison compared = Claims.asFiled().asked(SUPPLY, "\"8.1 bar(g)\"").compared();
    assertThat(compared.differences().get(0))
        .isEqualTo(new Difference.OtherSupply(GaugePressure.ofBar(8.5), GaugePressure.ofBar(8.1)));
    assertThat(compared.inWords())
        .startsWith("The supply fell by 0.4 bar, from 8.5 bar(g) to 8.1 bar(g).\n");
    Difference.OtherCaution caution = only(compared, Difference.OtherCaution.class);
    assertThat(caution.then()).contains("8.5 bar(g) if it fails");
    assertThat(caution.now()).contains("8.1 bar(g) if it fails");
    assertThat(compared.isSameAnswer()).isFalse();
    assertThat(Claims.asFiled().asked(SUPPLY, "\"8.9 bar(g)\"").compared().inWords())
        .startsWith("The supply rose by 0.4 bar, from 8.5 bar(g) to 8.9 bar(g).");
  }

  @Test
  void pressures_are_told_in_the_units_of_the_job() throws Exception {
    Claims psi =
        Claims.asFiled().asked("\"airfitJob\": 2,", "\"airfitJob\": 2, \"units\": \"US\",");
    AnswerComparison compared = AnswerComparison.of(
        psi.asked(SUPPLY, "\"120 psig\"").kept(),
        psi.asked(SUPPLY, "\"110 psig\"").kept());
    assertThat(compared.inWords())
        .startsWith("The supply fell by 10 psi, from 120 psig to 110 psig.");
    assertThat(compared.differences().get(0).inWords(UnitSystem.SI)).contains("fell by 0.69 bar");
  }

  @Test
  void a_supply_that_is_a_range_is_told_as_it_was_typed() throws Exception {
    Difference.AskedOtherwise told = only(
        Claims.asFiled().asked(SUPPLY, "\"8 to 8.5 bar(g)\"").compared(),
        Difference.AskedOtherwise.class);
    assertThat(told.inWords(UnitSystem.SI))
        .isEqualTo("In the question, the field \"supply.pressure\" was 8.5 bar(g), is 8 to 8.5"
            + " bar(g) now.");
  }

  /** A rule turns, and a caution goes, where the supply cannot pass what the tool's maker allows any more. */
  @Test
  void a_verdict_of_a_rule_that_turned_and_a_caution_that_went_are_told() throws Exception {
    Claims lower = Claims.asFiled().asked(SUPPLY, "\"7.5 bar(g)\"");
    AnswerComparison compared = lower.compared();
    Difference.RuleTurned rule = only(compared, Difference.RuleTurned.class);
    assertThat(rule.then()).isEqualTo("met while the regulator holds");
    assertThat(rule.now()).isEqualTo("met");
    Difference.OtherCaution caution = only(compared, Difference.OtherCaution.class);
    assertThat(caution.title()).isEqualTo("If the regulator fails");
    assertThat(caution.now()).isEmpty();
    assertThat(compared.inWords()).contains("A caution is not told any more, If the regulator");

    AnswerComparison back = AnswerComparison.of(lower.kept(), Claims.asFiled().kept());
    assertThat(only(back, Difference.OtherCaution.class).then()).isEmpty();
    assertThat(back.inWords()).contains("A new caution, If the regulator fails: ");
    assertThat(only(back, Difference.RuleTurned.class).inWords(UnitSystem.SI))
        .startsWith("The rule \"Tool is not over-pressured\" was met, is now met while the"
            + " regulator holds: ");
  }

  @Test
  void an_answer_that_turned_to_nothing_fits_tells_what_would_have_to_give() throws Exception {
    Claims weak = Claims.asFiled().asked(SET, "\"set\": \"5 bar(g)\"");
    Selection none = Selection.of(
        weak.job().requirement().toBuilder().profile("gannet").build(),
        weak.catalogue().parts());
    List<String> toGive = none.fold(fits -> List.of(), nothing -> nothing.toGive());
    assertThat(toGive).isNotEmpty();

    AnswerComparison compared = weak.compared();

    assertThat(only(compared, Difference.VerdictTurned.class).toGive()).isEqualTo(toGive);
    assertThat(compared.inWords())
        .startsWith("In the question, the field \"line[1].set\" was 7.4 bar(g), is 5 bar(g) now.\n"
            + "The answer turned: then parts of the catalogue fit, now nothing in the catalogue"
            + " fits. " + toGive.get(0))
        .contains("Without new parts, the air asked for does not arrive at Orbital sander; then"
            + " 3.79 bar(g) arrived.");
    assertThat(all(compared, Difference.RuleTurned.class)).isEmpty();
  }

  @Test
  void a_price_is_told_and_what_the_whole_costs_more() throws Exception {
    AnswerComparison compared =
        Claims.asFiled().part("H-38", part -> part.put("price", "38.00")).compared();
    assertThat(compared.differences())
        .containsExactly(
            new Difference.OtherPrice(
                "Hose 3/8 in, 10 m (H-38)",
                Optional.of(Money.parse("36 USD")),
                Optional.of(Money.parse("38 USD"))),
            new Difference.OtherTotal(
                Difference.Listed.PROPOSALS,
                Optional.of(Money.parse("136.80 USD")),
                Optional.of(Money.parse("138.80 USD"))));
    assertThat(compared.inWords())
        .isEqualTo("In the catalogue, Hose 3/8 in, 10 m (H-38) costs 2.00 USD more than then:"
            + " 36.00 USD then, 38.00 USD now.\n"
            + "The first proposal costs 2.00 USD more than then: 136.80 USD then, 138.80 USD now.");
    assertThat(Claims.asFiled()
            .part("H-38", part -> part.put("price", "35.50"))
            .compared()
            .inWords())
        .contains("costs 0.50 USD less than then");
    assertThat(Claims.asFiled()
            .part("H-38", part -> part.remove("price"))
            .compared()
            .inWords())
        .startsWith("In the catalogue, Hose 3/8 in, 10 m (H-38) cost 36.00 USD then, costs an"
            + " amount that is not known now.");
  }

  @Test
  void a_rating_that_no_longer_does_is_told_and_the_part_that_stands_in_its_place()
      throws Exception {
    AnswerComparison compared =
        Claims.asFiled().part("H-38", part -> part.put("rated", "8 bar(g)")).compared();
    assertThat(compared.differences().get(0))
        .isEqualTo(new Difference.OtherRating(
            "Hose 3/8 in, 10 m (H-38)",
            Optional.of(GaugePressure.ofBar(15.0)),
            Optional.of(GaugePressure.ofBar(8.0))));
    assertThat(compared.inWords())
        .startsWith("In the catalogue, the rating of Hose 3/8 in, 10 m (H-38) was 15 bar(g), is 8"
            + " bar(g) now.\nAnother proposal is first: Hose 1/2 in, 10 m (H-12) stands in the place of"
            + " Hose 3/8 in, 10 m (H-38).\n")
        .contains("With the first proposal, the pressure at Orbital sander is 0.32 bar higher"
            + " than then: 6.80 bar(g) then, 7.12 bar(g) now.");
  }

  @Test
  void a_field_of_a_part_is_told_once_and_as_a_catalogue_file_has_it() throws Exception {
    String hose = "Hose 3/8 in, 10 m (H-38)";
    assertThat(all(
            Claims.asFiled()
                .part("H-38", part -> {
                  part.put("bore", "9.2 mm");
                  part.put("hose", "1/4 in");
                  part.put("end", "1/2 NPT male");
                  part.put("alreadyThere", true);
                })
                .compared(),
            Difference.OtherPart.class))
        .extracting(
            each -> each.part() + " " + each.field() + ": " + each.then() + ", " + each.now())
        .containsExactlyInAnyOrder(
            hose + " bore: 9.5 mm, 9.2 mm",
            hose + " hose: 3/8 in bore, 1/4 in bore",
            hose + " end: 3/8 NPT male, 1/2 NPT male",
            hose + " alreadyThere: false, true");
  }

  @Test
  void a_part_that_is_gone_is_told_by_its_name() throws Exception {
    Claims gone = Claims.asFiled().part("H-38", Map::clear);
    AnswerComparison compared = gone.compared();
    assertThat(compared.differences().get(0))
        .isEqualTo(new Difference.PartCameOrWent("Hose 3/8 in, 10 m (H-38)", false));
    assertThat(compared.inWords())
        .startsWith("The catalogue has no Hose 3/8 in, 10 m (H-38) any more.\n"
            + "Another proposal is first: ");
    AnswerComparison back = AnswerComparison.of(gone.kept(), Claims.asFiled().kept());
    assertThat(back.inWords())
        .startsWith("The catalogue has a new part, Hose 3/8 in, 10 m (H-38).\n");
    assertThat(only(back, Difference.OtherProposals.class))
        .isEqualTo(new Difference.OtherProposals(Difference.Listed.PROPOSALS, 0, 2));
  }

  @Test
  void articles_that_no_answer_proposes_are_counted() throws Exception {
    AnswerComparison compared = Claims.asFiled()
        .part("S-10", Map::clear)
        .part("P-20", part -> part.put("price", "1.00"))
        .compared();
    assertThat(compared.differences()).containsExactly(new Difference.OtherArticles(1, 1, 0));
    assertThat(compared.inWords())
        .isEqualTo("Of the articles of the catalogue that neither answer proposes, 1 changed, 1"
            + " went and 0 came.\nThe answer is the same.");
  }

  @Test
  void parts_in_another_order_are_another_catalogue() throws Exception {
    AnswerComparison compared = Claims.asFiled().turnedRound().compared();
    assertThat(compared.differences()).containsExactly(new Difference.OtherText("catalogue", true));
    assertThat(compared.isSame()).isFalse();
  }

  /** The tape is what the bill takes beside the parts, by hand: it is the cheapest sealant for taper threads. */
  @Test
  void what_a_proposal_takes_beside_its_parts_is_kept_and_compared() throws Exception {
    KeptAnswer then = Claims.asFiled().kept();
    KeptAnswer read = KeptAnswer.read("kept.json", then.toText());
    assertThat(read.bill(1))
        .isEqualTo(then.bill(1))
        .contains("1 x Sealing tape, roll (T-1), 2.40 USD");
    BillOfMaterials bill =
        BillOfMaterials.of(best(), Claims.asFiled().catalogue().parts());
    assertThat(then.bill(1))
        .hasSize(bill.lines().size() - bill.lines(BillLine.Kind.PART).size());

    AnswerComparison dearer =
        Claims.asFiled().accessory("T-1", tape -> tape.put("price", "2.90")).compared();
    assertThat(dearer.inWords())
        .isEqualTo(
            "In the catalogue, Sealing tape, roll (T-1) costs 0.50 USD more than then: 2.40 USD then,"
                + " 2.90 USD now.\nWith the first proposal, the bill of materials had 1 x Sealing tape, roll (T-1),"
                + " 2.40 USD then, has 1 x Sealing tape, roll (T-1), 2.90 USD now.");
    AnswerComparison gone = Claims.asFiled().accessory("T-1", Map::clear).compared();
    assertThat(gone.inWords())
        .contains(
            "the bill of materials has 1 x Sealing paste, bottle (T-2), 11.50 USD, which it had not then.")
        .contains("the bill of materials no longer has 1 x Sealing tape, roll (T-1), 2.40 USD.");
    assertThat(Claims.asFiled()
            .accessory("T-1", tape -> tape.put("name", "Tape"))
            .compared()
            .isSameAnswer())
        .isTrue();
    assertThat(Claims.asFiled()
            .accessory("W-12", washer -> washer.put("price", "9.00"))
            .compared()
            .isSameAnswer())
        .isTrue();
  }

  private static Proposal best() throws Exception {
    Job job = Claims.asFiled().job();
    Requirement asked = job.settled(job.plug().flatMap(Identification::profile)).orElseThrow();
    return ((Selection.Proposals) Selection.of(asked, job.catalogue().parts())).best();
  }

  /** The bill is taken out of the texts, as they were before it was kept. */
  @Test
  void what_was_kept_before_there_was_a_bill_is_read_and_compared_without() throws Exception {
    Claims dearer = Claims.asFiled().accessory("T-1", tape -> tape.put("price", "2.90"));
    Answered now = dearer.kept().answered();
    Answered earlier = AnswerText.of(withoutBill(AnswerText.toPlain(now)));
    assertThat(earlier.proposals()).allMatch(each -> each.bill().isEmpty());
    assertThat(now.asFarAs(earlier)).isEqualTo(earlier);
    assertThat(earlier.asFarAs(now)).isEqualTo(earlier);
    assertThat(now.proposals().get(0).bill()).isPresent();
  }

  private static Object withoutBill(Object plain) {
    if (plain instanceof Map<?, ?> fields) {
      Map<String, Object> rest = Claims.fields(fields);
      rest.remove("bill");
      rest.replaceAll((name, value) -> withoutBill(value));
      return rest;
    }
    return plain instanceof List<?> list
        ? list.stream().map(AnswerComparisonTest::withoutBill).toList()
        : plain;
  }

  /** What earlier versions kept has the profiles of a socket in the order of a salted set. */
  @Test
  void profiles_that_a_socket_takes_in_another_order_are_no_other_part() throws Exception {
    KeptAnswer then = taking(List.of("gannet", "tern", "skua")).kept();
    KeptAnswer now = taking(List.of("skua", "gannet", "tern")).kept();
    assertThat(AnswerComparison.of(then, now).differences())
        .containsExactly(new Difference.OtherText("catalogue", true));
    assertThat(taking(List.of("gannet", "tern")).compared().differences())
        .doesNotContain(new Difference.OtherText("catalogue", true));
    assertThat(then.catalogue()).contains("[\"gannet\",\"tern\",\"skua\"]");
    assertThat(now.catalogue()).contains("[\"skua\",\"gannet\",\"tern\"]");
  }

  private static Claims taking(List<String> profiles) throws Exception {
    return Claims.asFiled().part("S-10", part -> part.put("takes", profiles));
  }

  @Test
  void a_profile_that_changed_is_told_and_the_verdict_that_turned() throws Exception {
    AnswerComparison little = Claims.asFiled()
        .profile("gannet", profile -> profile.put("dimensions", groove(profile, "5.21 mm")))
        .compared();
    assertThat(little.inWords())
        .isEqualTo("In the reference set, the field \"dimensions.groove width.nominal\" of the"
            + " profile gannet was 5.2 mm, is 5.21 mm now.\nThe answer is the same.");

    Claims far = Claims.asFiled()
        .profile("gannet", profile -> profile.put("dimensions", groove(profile, "6.00 mm")));
    String verdict = far.job().plug().orElseThrow().verdict().label();
    AnswerComparison turned = far.compared();
    assertThat(only(turned, Difference.OtherPlug.class))
        .isEqualTo(new Difference.OtherPlug("candidate only: gannet", verdict));
    assertThat(only(turned, Difference.VerdictTurned.class).now())
        .contains("the profile is not known");

    AnswerComparison gone = Claims.asFiled()
        .profile("skua", profile -> profile.put("id", "skua-2"))
        .part("S-30", Map::clear)
        .compared();
    assertThat(all(gone, Difference.OtherProfile.class))
        .extracting(each -> each.inWords(UnitSystem.SI))
        .containsExactly(
            "The reference set has no profile skua any more.",
            "The reference set has a new profile, skua-2.");
  }

  /** What holds the air back is asked of the library itself, of the run as the job tells it. */
  @Test
  void another_biggest_restriction_is_told() throws Exception {
    Claims wide = Claims.asFiled().asked("\"bore\": \"7.9 mm\"", "\"bore\": \"12.9 mm\"");
    String then = bottleneck(Claims.asFiled().job());
    String now = bottleneck(wide.job());
    assertThat(now).isNotEqualTo(then);

    AnswerComparison compared = wide.compared();

    assertThat(only(compared, Difference.OtherRestriction.class))
        .isEqualTo(
            new Difference.OtherRestriction("Without new parts", "Orbital sander", then, now));
    assertThat(compared.inWords())
        .isEqualTo("In the question, the field \"now[2].bore\" was 7.9 mm, is 12.9 mm now.\n"
            + "Without new parts, the pressure at Orbital sander is 2.26 bar higher than then:"
            + " 3.79 bar(g) then, 6.05 bar(g) now.\n"
            + "Without new parts, coupling at the tool is now the biggest restriction on the way"
            + " to Orbital sander; then it was old hose, 5/16 in.");
  }

  private static String bottleneck(Job job) {
    RunResult result = job.now().orElseThrow().run().at(job.requirement().demand());
    return result.fold(delivered -> delivered.bottleneck().name(), starved -> starved.element());
  }

  @Test
  void what_bears_on_no_answer_is_told_too() throws Exception {
    AnswerComparison compared =
        Claims.asFiled().asked("Tern Creek", "Heron Creek").compared();
    assertThat(compared.inWords())
        .isEqualTo(
            "In the question, the field \"customer\" was \"Tern Creek Boatyard (invented)\", is"
                + " \"Heron Creek Boatyard (invented)\" now.\nThe answer is the same.");
  }

  @Test
  void a_rule_that_is_met_for_another_reason_is_told_where_nothing_else_is() throws Exception {
    AnswerComparison compared =
        Claims.asFiled().asked("    \"dropped\": true,\n", "").compared();
    assertThat(compared.differences().get(0))
        .isEqualTo(new Difference.AskedOtherwise("conditions.dropped", "true", ""));
    Difference.RuleTurned rule = only(compared, Difference.RuleTurned.class);
    assertThat(rule.then()).isEqualTo(rule.now());
    assertThat(rule.inWords(UnitSystem.SI)).contains("as then, for another reason: ");
    assertThat(compared.isSameAnswer()).isFalse();
  }

  @Test
  void inputs_stand_in_front_of_what_followed() throws Exception {
    AnswerComparison compared = AnswerComparison.of(
        Claims.asFiled().kept(),
        KeptAnswer.of(
            Claims.asFiled()
                .asked(SUPPLY, "\"7.5 bar(g)\"")
                .part("H-38", Map::clear)
                .profile("skua", profile -> profile.put("name", "Great skua"))
                .job(),
            Claims.NOW,
            "0.2.0"));
    List<Boolean> inputs =
        compared.differences().stream().map(Difference::isOfInput).toList();
    assertThat(inputs.subList(0, 4)).containsOnly(true);
    assertThat(inputs.subList(4, inputs.size())).isNotEmpty().containsOnly(false);
    assertThat(compared.differences())
        .extracting(each -> (Object) each.getClass())
        .startsWith(
            Difference.OtherLibrary.class,
            Difference.OtherSupply.class,
            Difference.OtherProfile.class,
            Difference.PartCameOrWent.class);
  }

  @Test
  void a_question_can_be_answered_again_out_of_another_catalogue() throws Exception {
    Claims today = Claims.asFiled().part("H-38", part -> part.put("price", "38.00"));
    KeptAnswer then = KeptAnswer.read("k", Claims.asFiled().kept().toText());
    KeptAnswer now = then.again(today.catalogue(), Claims.NOW, Claims.FIRST);
    assertThat(now.questionHash()).isEqualTo(then.questionHash());
    assertThat(now.setHash()).isEqualTo(then.setHash());
    assertThat(now.catalogueHash()).isNotEqualTo(then.catalogueHash());
    assertThat(now.catalogueHash()).isEqualTo(today.kept().catalogueHash());
    assertThat(AnswerComparison.of(then, now)).isEqualTo(today.compared());
  }

  @Test
  void a_catalogue_that_lacks_what_the_question_names_is_refused() throws Exception {
    KeptAnswer then = Claims.asFiled()
        .asked(
            "{\"kind\": \"coupling\", \"name\": \"coupling at the tool\"}",
            "{\"kind\": \"coupling\", \"name\": \"coupling at the tool\", \"socket\": \"S-11\"}")
        .kept();
    assertThatThrownBy(() -> then.again(
            Claims.asFiled().part("S-11", Map::clear).catalogue(), Claims.NOW, Claims.FIRST))
        .isInstanceOf(WrongFileException.class)
        .hasMessageContaining("S-11")
        .message()
        .hasLineCount(1);
  }

  /** Whatever differs is told: a sentence for every difference of texts, be it of the last kind. */
  @Test
  void no_difference_of_a_text_goes_untold() throws Exception {
    Map<String, Claims> changes = new LinkedHashMap<>();
    changes.put("place", Claims.asFiled().asked("\"outdoors\"", "\"indoors\""));
    changes.put("air", Claims.asFiled().asked("\"dry\"", "\"lubricated\""));
    changes.put("need", Claims.asFiled().asked("\"90 psig\"", "\"95 psig\""));
    changes.put("demand", Claims.asFiled().asked("\"22 scfm\"", "\"27 scfm\""));
    changes.put("worn", Claims.asFiled().asked("\"11.92 mm\"", "\"11.93 mm\""));
    changes.put("name", Claims.asFiled().part("H-38", part -> part.put("name", "Hose")));
    KeptAnswer then = Claims.asFiled().kept();
    for (Map.Entry<String, Claims> change : changes.entrySet()) {
      KeptAnswer now = change.getValue().kept();
      AnswerComparison compared = AnswerComparison.of(then, now);
      assertThat(compared.isSameAnswer())
          .as(change.getKey() + "\n" + compared)
          .isEqualTo(
              then.answerHash().equals(now.answerHash()) || change.getKey().equals("name"));
      assertThat(compared.differences()).as(change.getKey()).anyMatch(Difference::isOfInput);
      assertThat(compared.inWords().lines().toList())
          .as(change.getKey())
          .hasSizeGreaterThanOrEqualTo(compared.differences().size())
          .allSatisfy(line -> assertThat(line).endsWith("."));
    }
  }

  @Test
  void where_nothing_fits_the_nearest_misses_are_never_called_proposals() throws Exception {
    Claims none = Claims.asFiled()
        .part("H-38", part -> part.put("rated", "6 bar(g)"))
        .part("H-12", part -> part.put("rated", "6 bar(g)"))
        .part("H-13", part -> part.put("rated", "6 bar(g)"));
    assertThat(none.kept().answered().kind()).isEqualTo(Answered.Kind.NOTHING_FITS);
    String nearest = none.kept().answered().proposals().get(0).ids().get(0);
    AnswerComparison both = AnswerComparison.of(
        none.kept(), none.part(nearest, part -> part.put("price", "7.77")).kept());
    assertThat(all(both, Difference.OtherTotal.class)).as(both.inWords()).isNotEmpty();
    assertThat(both.inWords()).contains("The nearest miss costs ").doesNotContain("roposal");

    AnswerComparison other =
        AnswerComparison.of(none.kept(), none.part(nearest, Map::clear).kept());
    assertThat(all(other, Difference.OtherFirst.class)).as(other.inWords()).isNotEmpty();
    assertThat(other.inWords())
        .contains("Another miss is nearest: ", "With the nearest miss, the pressure at ")
        .doesNotContain("roposal");

    AnswerComparison turned = AnswerComparison.of(
        Claims.asFiled().kept(),
        none.part(nearest, part -> part.put("price", "7.77")).kept());
    assertThat(turned.inWords())
        .contains("The nearest miss costs ", " less than the first proposal then: ")
        .doesNotContain("The first proposal", "Another proposal");
    assertThat(Difference.Listed.MISSES_AFTER_PROPOSALS.with())
        .isEqualTo("With the nearest miss now and the first proposal then");
  }

  @Test
  void a_part_that_is_only_called_otherwise_is_a_difference_of_input_alone() throws Exception {
    Claims renamed = Claims.asFiled()
        .part("H-38", part -> part.put("name", "Hose acht"))
        .part("H-12", part -> part.put("name", "Hose 3/8 in, 10 m"));
    AnswerComparison compared = renamed.compared();
    assertThat(compared.isSameAnswer()).as(compared.inWords()).isTrue();
    assertThat(compared.inWords())
        .contains("the field \"name\" of Hose acht (H-38) was \"Hose 3/8 in, 10 m\", is \"Hose"
            + " acht\" now.")
        .endsWith("\nThe answer is the same.");
    assertThat(AnswerComparison.of(
                Claims.asFiled().kept(),
                renamed.part("H-38", part -> part.put("price", "38.00")).kept())
            .isSameAnswer())
        .isFalse();
  }

  @Test
  void a_quantity_that_was_computed_is_told_in_the_units_of_the_job() {
    Difference mean = new Difference.OtherProfile(
        "tern", "dimensions.tip diameter.mean", "0.011566666666666666 m", "0.0116 m");
    assertThat(mean.inWords(UnitSystem.SI))
        .isEqualTo("In the reference set, the field \"dimensions.tip diameter.mean\" of the"
            + " profile tern was 11.567 mm, is 11.6 mm now.");
    assertThat(mean.inWords(UnitSystem.US)).contains(" was 0.45538 in, is 0.45669 in now.");
    assertThat(new Difference.OtherProfile(
                "tern", "dimensions.tip diameter.mean", "0.01156666666 m", "0.01156666667 m")
            .inWords(UnitSystem.SI))
        .contains(" was 0.01156666666 m, is 0.01156666667 m now.");
    assertThat(new Difference.OtherProfile("tern", "provenance.kind", "userMeasured", "synthetic")
            .inWords(UnitSystem.SI))
        .contains("the field \"provenance.kind\" of the profile tern was \"userMeasured\", is"
            + " \"synthetic\" now.");
  }

  @Test
  void what_a_rule_said_reads_as_a_sentence() {
    assertThat(List.of(
            turned("does not apply", "unmet"),
            turned("open", "does not apply"),
            turned("met while the regulator holds", "")))
        .containsExactly(
            "The rule \"Parts are rated\" did not apply, is not met now: why.",
            "The rule \"Parts are rated\" was open, does not apply now: why.",
            "The rule \"Parts are rated\" was met while the regulator holds, is not told now: why.");
  }

  private static String turned(String then, String now) {
    return new Difference.RuleTurned("Parts are rated", then, now, "why.").inWords(UnitSystem.SI);
  }

  /** Just as much as is needed is enough. */
  @Test
  void what_arrives_is_enough_from_what_is_needed_on() {
    GaugePressure needed = GaugePressure.parse("90 psig");
    for (String there : List.of("89.9 psig", "90 psig", "90.1 psig")) {
      Difference.EnoughTurned turned = new Difference.EnoughTurned(
          "Without new parts", "", Optional.of(GaugePressure.parse(there)), needed);
      assertThat(turned.isEnough()).as(there).isEqualTo(!there.startsWith("89"));
      assertThat(turned.inWords(UnitSystem.US))
          .contains(turned.isEnough() ? "has enough now" : "no longer has enough")
          .contains("it needs 90 psig");
    }
    assertThat(new Difference.EnoughTurned("Without new parts", "", Optional.empty(), needed)
            .isEnough())
        .isFalse();
  }
}
