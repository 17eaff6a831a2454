package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.lang.reflect.Constructor;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.airfit.quantity.SonicConductance;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Medium;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Requirements, parts, catalogues and answers compare by value; answers are made by a selection only; labels read
 * back.
 */
class ValuesTest {

  private static final Temperature FROST = Temperature.ofCelsius(-20.0);
  private static final Temperature WARM = Temperature.ofCelsius(60.0);
  private static final Part.Socket SOCKET =
      Shelf.socket(Shelf.steel("wide"), "finch", "3/8 NPT female", 9.0);
  private static final Part.Plug PLUG = Shelf.plug(Shelf.steel("plug"), "finch", "1/4 NPT male");
  private static final Part.Hose HOSE = Shelf.hose(Shelf.steel("hose"), 9.5, 10.0);
  private static final Conduit PIPE =
      Conduit.of(Length.ofMillimetres(20.0), Length.ofMetres(5.0), Length.ofMillimetres(0.05));

  /** One more thing told than {@link Shelf#job} tells, each. */
  static Stream<Requirement.Builder> jobs() {
    return Stream.of(
        Shelf.job().toolRating(GaugePressure.ofBar(7.6)),
        Shelf.job().toolInlet(End.parse("3/8 NPT female")),
        Shelf.job().supply(Shelf.SUPPLY, AbsolutePressure.ofBar(1.01)),
        Shelf.job().highest(GaugePressure.ofBar(8.0)),
        Shelf.job().pipe("pipe", PIPE),
        Shelf.job().outlet(End.parse("1/2 NPT male")),
        Shelf.job().reach(Length.ofMetres(9.0)),
        Shelf.job().profile("finch"),
        Shelf.job().outletSocket(SOCKET),
        Shelf.job().toolPlug(PLUG),
        Shelf.job().hose(HOSE),
        Shelf.job().environment(Environment.OUTDOORS),
        Shelf.job().lubrication(Lubrication.LUBRICATED),
        Shelf.job().dropped(),
        Shelf.job().dragged(),
        Shelf.job().ventRequired(),
        Shelf.job().impactTool(),
        Shelf.job().whipHose(),
        Shelf.job().medium(Medium.WATER),
        Shelf.job().profilesInUse(Set.of("finch")),
        Shelf.job().temperatures(FROST, WARM),
        Shelf.job().marking("tape"),
        Shelf.job().blowGun(),
        Shelf.job().blowGun(GaugePressure.ofBar(1.0)),
        Shelf.job().objective(Objective.LOWEST_PRICE));
  }

  @ParameterizedTest
  @MethodSource("jobs")
  void a_requirement_differs_by_everything_that_is_told(Requirement.Builder told) {
    Requirement plain = Shelf.job().build();
    assertThat(told.build())
        .isEqualTo(told.build())
        .hasSameHashCodeAs(told.build())
        .isNotEqualTo(plain);
    assertThat(told.build().toString()).isNotEqualTo(plain.toString());
  }

  @Test
  void a_requirement_is_the_same_whoever_tells_what_holds_anyway() {
    assertThat(Shelf.job()
            .medium(Medium.COMPRESSED_AIR)
            .objective(Objective.FEWEST_PIECES)
            .profilesInUse(Set.of())
            .build())
        .isEqualTo(Shelf.job().build())
        .isNotEqualTo("a requirement");
    assertThat(Shelf.job().build()).asString().contains("least=", "tool inlet=", "reach=10.0 m");
  }

  /** The same facts with one more told, each. */
  static Stream<PartFacts> facts() {
    PartFacts plain = Shelf.steel("x");
    return Stream.of(
        plain.withRating(GaugePressure.ofBar(15.0)),
        plain.withPrice(Money.parse("3 EUR")),
        plain.withMaterial(Material.BRASS),
        plain.withLubrication(Lubrication.DRY),
        plain.withTemperatures(FROST, WARM),
        plain.withSleeveGuarded(),
        plain.withStaticDissipative(true),
        plain.withStaticDissipative(false),
        plain.withVent(),
        plain.asExisting(),
        PartFacts.of("x", "another name")
            .withRating(GaugePressure.ofBar(16.0))
            .withMaterial(Material.HARDENED_STEEL),
        Shelf.steel("y"));
  }

  @ParameterizedTest
  @MethodSource("facts")
  void facts_differ_by_everything_that_is_told(PartFacts other) {
    assertThat(Shelf.steel("x"))
        .isEqualTo(Shelf.steel("x"))
        .hasSameHashCodeAs(Shelf.steel("x"))
        .isNotEqualTo(other);
  }

  @Test
  void catalogues_of_equal_parts_are_equal_and_keep_no_list_of_the_callers() {
    List<Part> parts = new ArrayList<>(Shelf.parts());
    Catalogue catalogue = Catalogue.of(parts);
    parts.remove(0);
    assertThat(catalogue)
        .isEqualTo(Catalogue.of(Shelf.parts()))
        .hasSameHashCodeAs(Catalogue.of(Shelf.parts()))
        .isNotEqualTo(Catalogue.of(parts))
        .hasToString("Catalogue of 5 parts");
  }

  private static Selection select(Requirement.Builder job) {
    return Selection.of(job.build(), Catalogue.of(Shelf.parts()));
  }

  @Test
  void answers_to_one_question_are_equal_and_to_two_are_not() {
    Selection fits = select(Shelf.job());
    Selection nothing = select(Shelf.job().reach(Length.ofMetres(11.0)));
    assertThat(fits)
        .isEqualTo(select(Shelf.job()))
        .hasSameHashCodeAs(select(Shelf.job()))
        .isNotEqualTo(select(Shelf.job().toolRating(GaugePressure.ofBar(7.6))))
        .isNotEqualTo(nothing);
    assertThat(nothing)
        .isEqualTo(select(Shelf.job().reach(Length.ofMetres(11.0))))
        .hasSameHashCodeAs(select(Shelf.job().reach(Length.ofMetres(11.0))))
        .isNotEqualTo(select(Shelf.job().reach(Length.ofMetres(12.0))))
        .isNotEqualTo(fits);
    assertThat(fits.toString()).contains("part wide + ", "It");
    assertThat(nothing.toString()).startsWith("Nothing in the catalogue fits: ");
    Selection.Proposals proposals = (Selection.Proposals) fits;
    Proposal best = proposals.best();
    Proposal again = ((Selection.Proposals) select(Shelf.job())).best();
    Proposal priced =
        ((Selection.Proposals) select(Shelf.job().objective(Objective.LOWEST_PRICE))).best();
    assertThat(best).isEqualTo(again).isNotEqualTo(priced);
    assertThat(best.findings()).isEqualTo(again.findings());
    assertThat(best.findings().get(0)).isNotEqualTo(best.findings().get(1));
    assertThat(best.joints()).isEqualTo(again.joints());
    assertThat(best.joints().get(0))
        .isNotEqualTo(best.joints().get(1))
        .hasToString(best.joints().get(0).inWords());
    assertThat(Shelf.lines(best)).isEqualTo(Shelf.lines(again));
  }

  /** Today's answer to nothing at all would have been an index out of bounds. */
  @Test
  void nobody_but_a_selection_makes_an_answer() {
    for (Class<?> answer : List.of(
        Selection.Proposals.class,
        Selection.NothingFits.class,
        Proposal.class,
        Finding.class,
        Joint.class)) {
      assertThat(Arrays.stream(answer.getDeclaredConstructors())
              .map(Constructor::getModifiers)
              .filter(Modifier::isPublic))
          .as(answer.getName())
          .isEmpty();
    }
    Selection.Proposals fits = (Selection.Proposals) select(Shelf.job());
    assertThat(fits.proposals()).first().isEqualTo(fits.best());
    assertThat(fits.proposals()).isUnmodifiable();
    assertThat(fits.best().findings()).isUnmodifiable();
    assertThat(BillOfMaterials.of(fits.best(), Catalogue.of(List.of())).lines()).isUnmodifiable();
  }

  private static BillLine line(PartFacts facts, int quantity, String reason) {
    return new BillLine(
        BillLine.Kind.PART, facts.name(), Optional.of(facts), quantity, reason, Optional.empty());
  }

  private static BillLine lacking(String name) {
    return new BillLine(
        BillLine.Kind.CLAMP, name, Optional.empty(), 1, "holds the hose", Optional.empty());
  }

  @Test
  void a_line_of_a_parts_list_has_a_part_a_reason_and_says_whether_it_is_there() {
    PartFacts plug = PLUG.facts();
    assertThat(line(plug, 1, "in the tool").existing()).isFalse();
    assertThat(line(Shelf.steel("own").asExisting(), 1, "own").existing()).isTrue();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> line(plug, 0, "in the tool"))
        .withMessage("quantity of part plug must be at least 1, was 0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> line(plug, 1, " "))
        .withMessage("reason of part plug must say why it is on the list, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> lacking(" "))
        .withMessage("name of a line must say what it is, was blank");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new BillLine(
            BillLine.Kind.PART, "bolt", Optional.of(plug), 1, "in the tool", Optional.empty()))
        .withMessage("name of part plug (plug) must be that of its facts, was \"bolt\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.plug(Shelf.steel("plug"), " ", "1/4 NPT male"))
        .withMessage("profile of plug plug must not be blank, was \" \"");
    for (String bad : List.of("", "finch, tern")) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Shelf.socket(Shelf.steel("socket"), bad, "1/4 NPT male", 2.0))
          .withMessageStartingWith("profile of socket socket must ");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Shelf.job().profile(bad))
          .withMessageStartingWith("profile must ");
    }
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Shelf.plug(Shelf.steel("plug"), "finch,", "1/4 NPT male"))
        .withMessage("profile of plug plug must hold no comma, which parts the ids of a list, was"
            + " \"finch,\"");
  }

  @ParameterizedTest
  @EnumSource
  void a_material_reads_its_label(Material material) {
    assertThat(Material.parse(material.toString())).isEqualTo(material);
    assertThat(Material.parse("  " + material.toString().toUpperCase(Locale.ROOT)))
        .isEqualTo(material);
  }

  @ParameterizedTest
  @EnumSource
  void an_environment_reads_its_label(Environment environment) {
    assertThat(Environment.parse(environment.toString())).isEqualTo(environment);
  }

  @ParameterizedTest
  @EnumSource
  void a_kind_of_air_reads_its_label(Lubrication kind) {
    assertThat(Lubrication.parse(kind.toString())).isEqualTo(kind);
  }

  @ParameterizedTest
  @EnumSource
  void an_objective_reads_its_label(Objective objective) {
    assertThat(Objective.parse(objective.toString())).isEqualTo(objective);
  }

  @ParameterizedTest
  @EnumSource
  void an_outcome_reads_its_label(RuleOutcome outcome) {
    assertThat(RuleOutcome.parse(outcome.toString())).isEqualTo(outcome);
  }

  @Test
  void another_word_is_refused_with_those_that_are_known() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Material.parse("wood"))
        .withMessage("material must be one of steel, hardened steel, plated hardened steel,"
            + " stainless steel, brass, plated brass, aluminium, plastic, was \"wood\"");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Environment.parse(""))
        .withMessage(
            "environment must be one of indoors, outdoors, salt air, wash down, wash down with water,"
                + " wash down with caustic, sparking hazard, was \"\"");
  }

  /** What is missing is named, where it is handed over. */
  @Test
  @SuppressWarnings("NullAway") // what a caller without null checks could pass
  void what_is_missing_is_refused_by_name() {
    Requirement.Builder job = Shelf.job();
    assertThatNullPointerException().isThrownBy(() -> job.toolRating(null)).withMessage("rating");
    assertThatNullPointerException()
        .isThrownBy(() -> job.supply(Shelf.SUPPLY, null))
        .withMessage("around");
    assertThatNullPointerException()
        .isThrownBy(() -> job.pipe("pipe", (Conduit) null))
        .withMessage("conduit");
    assertThatNullPointerException().isThrownBy(() -> job.profilesInUse(null)).withMessage("ids");
    assertThatNullPointerException()
        .isThrownBy(() -> Requirement.forTool((FreeAirFlow) null, GaugePressure.ofBar(6.0)))
        .withMessage("demand");
    assertThatNullPointerException()
        .isThrownBy(() -> Shelf.steel("x").withRating(null))
        .withMessage("pressure");
    assertThatNullPointerException().isThrownBy(() -> PartFacts.of(null, "x")).withMessage("id");
    assertThatNullPointerException().isThrownBy(() -> Material.parse(null)).withMessage("text");
    assertThatNullPointerException()
        .isThrownBy(() -> new Part.Plug(null, "finch", PLUG.end()))
        .withMessage("facts");
    assertThatNullPointerException()
        .isThrownBy(() -> new Part.Hose(
            HOSE.facts(),
            HoseBore.parse("3/8 in"),
            (Conduit) null,
            HOSE.upstream(),
            HOSE.downstream()))
        .withMessage("conduit");
    assertThatNullPointerException()
        .isThrownBy(() -> new Part.Socket(
            SOCKET.facts(),
            null,
            SOCKET.end(),
            FlowCapacity.of(SonicConductance.ofCubicDecimetresPerSecondBar(2.0), 0.3)))
        .withMessage("profiles");
    assertThatNullPointerException()
        .isThrownBy(() -> new Part.Adapter(HOSE.facts(), PLUG.end(), null, PIPE))
        .withMessage("other");
    assertThatNullPointerException()
        .isThrownBy(() -> Selection.of(Shelf.job().build(), null))
        .withMessage("catalogue");
    assertThatNullPointerException().isThrownBy(() -> Catalogue.of(null)).withMessage("parts");
  }

  /** Whoever writes them writes the same in every run of a program; a salted set would not. */
  @Test
  void profiles_stay_in_the_order_given() {
    List<String> given = Stream.of(
            "wren", "finch", "tern", "knot", "heron", "egret", "crane", "stork", "swift")
        .flatMap(bird -> Stream.of("small-" + bird, bird))
        .toList();
    Set<String> ids = new LinkedHashSet<>(given);
    assertThat(new Part.Socket(SOCKET.facts(), ids, SOCKET.end(), SOCKET.capacity()).profiles())
        .containsExactlyElementsOf(given);
    assertThat(Shelf.job().profilesInUse(ids).build().profilesInUse())
        .containsExactlyElementsOf(given);
    assertThatNullPointerException()
        .isThrownBy(() -> Shelf.job().profilesInUse(Collections.singleton(null)));
  }
}
